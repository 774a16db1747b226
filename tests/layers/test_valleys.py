"""The metal of a valley: how far it reaches, how it is cut and nailed, what is refused."""

from __future__ import annotations

from math import cos, pi, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import hip_line, valley_reach, valley_run
from roofing_core.measures.faults import Refused, TooManyPieces

DUST = 1e-9


def test_a_valley_of_14_ft_worked_by_hand():
    # 12 in below the foot and 6 in over the ridge: 186 in. Two lengths of 10 ft lapped 6 in make
    # 234; the first reaches 120 in, the lap lies from 114 to 120, the rest is 186 - 114 = 72.
    run = valley_run(168)
    assert run.run_length == 186
    assert (run.lengths, run.laps) == ((120.0, 72.0), (114.0,))
    assert (run.lap_direction, run.tab_nails) == ("upper_over_lower", 0)
    # At 1 in, at 117, at 185: 116 takes ten spaces, 68 six. On each side: 1 + 10 + 6.
    assert run.nails == 2 * 17


def test_a_roll_of_lining_is_one_stock_length():
    # 36 ft of roll; 432 in of valley and its ends take two pieces with a lap of 12 in.
    run = valley_run(432, stock_length=(432,), lap=12)
    assert (run.stock, run.lengths) == (2, (432.0, 30.0))


def test_the_reach_at_a_square_corner_of_equal_pitches():
    # tan of the surface angle is then the slope factor: 9:12 has 5/4, 5:12 has 13/12.
    for pitch, factor in ((9 / 12, 5 / 4), (5 / 12, 13 / 12)):
        angle = hip_line(pitch, pitch_2=pitch).surface_angle
        assert valley_reach(12, surface_angle=angle) == pytest.approx(12 / factor, abs=DUST)


@given(st.floats(1, 40), st.floats(5, 85))
def test_the_outer_edge_of_the_metal_meets_the_eave_just_there(leg, degrees):
    # The eave comes along u from the left and ends at the origin, where the valley starts up at the
    # angle. The metal's left edge runs beside it; so far down, it stands on the eave's line.
    angle = radians(degrees)
    reach = valley_reach(leg, surface_angle=angle)
    u = -reach * cos(angle) - leg * sin(angle)
    v = -reach * sin(angle) + leg * cos(angle)
    assert v == pytest.approx(0, abs=DUST * leg)
    assert u == pytest.approx(-leg / sin(angle))


@pytest.mark.parametrize("degrees", [90, 120, 179])
def test_no_reach_where_the_valley_stands_square_to_the_eave_or_leans_back(degrees):
    assert valley_reach(12, surface_angle=radians(degrees)) == 0


def test_the_default_covers_every_square_corner_of_equal_pitches():
    # The flattest needs most: 12 / slope factor.
    for rise in range(1, 25):
        angle = hip_line(rise / 12, pitch_2=rise / 12).surface_angle
        run = valley_run(100, past_eave=valley_reach(12, surface_angle=angle))
        assert run.run_length < valley_run(100).run_length


@given(st.integers(16, 16_000), st.integers(0, 1_600))
def test_a_longer_valley_never_takes_fewer_lengths(sixteenths, more):
    one, longer = valley_run(sixteenths / 16), valley_run((sixteenths + more) / 16)
    assert one.pieces <= longer.pieces
    assert one.nails <= longer.nails + 2 * longer.pieces  # a lap may take the place of a nail
    assert sum(one.lengths) - (one.pieces - 1) * one.lap == pytest.approx(one.run_length)


@given(st.integers(300, 60_000))
def test_metric_and_us_agree(length):
    # 3 m lengths lapped 150 mm, 300 mm and 150 mm past the ends.
    pieces, reach = 1, 3000
    while reach < length + 450:
        pieces, reach = pieces + 1, reach + 2850
    run = valley_run(
        length * 10 / 254,
        stock_length=(3000 * 10 / 254,),
        lap=150 * 10 / 254,
        past_eave=300 * 10 / 254,
        over_ridge=150 * 10 / 254,
    )
    assert run.pieces == pieces


def refused(*args, **asked) -> dict[str, str]:
    with pytest.raises(Refused) as caught:
        valley_run(*args, **asked)
    return {str(one.at[0]): one.written() for one in caught.value.faults}


def test_every_bad_measurement_is_named_at_once():
    for bad in (-1, float("nan"), float("inf")):
        names = ("past_eave", "over_ridge", "lap", "nail_spacing", "end_distance", "least_piece")
        wrong = refused(bad, stock_length=(bad,), **dict.fromkeys(names, bad))
        assert set(wrong) == {"valley_length", "stock_length", *names}


def test_a_valley_is_named_a_valley_also_where_the_run_is_too_long():
    with pytest.raises(TooManyPieces) as caught:
        valley_run(115_000)
    assert [one.at for one in caught.value.faults] == [("valley_length",)]
    assert set(refused(1_199_990.0, stock_length=(1e6,))) == {"valley_length"}


def test_an_angle_that_is_none():
    for angle in (0, pi, -1, float("nan")):
        with pytest.raises(Refused) as caught:
            valley_reach(0, surface_angle=angle)
        assert [one.at[0] for one in caught.value.faults] == ["leg", "surface_angle"]
