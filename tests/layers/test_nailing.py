"""How many nails and spots of cement hold a strip, and where the nails go."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.layers.coursing.nailing import (
    hand_sealed,
    hand_sealing_dabs,
    nail_positions,
    nails_on_piece,
    nails_per_strip,
)
from roofing_core.measures.faults import Refused

DUST = 1e-9  # inches; no strip in these tests is over 100 in

# Nails of a 39 3/8 in strip, by hand: 37 3/8 in between the end nails, three spaces of 12.458333.
STRIP = (1.0, 13.458333, 25.916667, 38.375)


def refused(call, *args, **asked) -> list[str]:
    with pytest.raises(Refused) as caught:
        call(*args, **asked)
    return [fault.written() for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("rise", "high_wind", "nails"),
    [(3, False, 4), (3, True, 6), (21, False, 4), (21, True, 6), (21.01, False, 6), (24, False, 6)],
)
def test_nails_in_a_full_strip(rise, high_wind, nails):
    assert nails_per_strip(rise / 12, high_wind=high_wind) == nails


def test_strips_are_sealed_by_hand_above_21_in_12_alone():
    assert [hand_sealed(rise / 12) for rise in (0, 20, 21, 21.01, 30)] == [False] * 3 + [True] * 2


def test_21_in_12_as_a_quotient_is_still_21_in_12():
    assert not hand_sealed(2.1 / 1.2)  # 1.7500000000000002
    assert nails_per_strip(2.1 / 1.2) == 4


# Shingle makers' association, bulletin on slopes over 21:12: laminated strips 4 spots of cement,
# three-tab strips 2 under each tab. Printed as whole numbers.
def test_spots_of_cement_are_those_of_the_bulletin():
    assert hand_sealing_dabs(1, kind="laminated") == 4
    assert hand_sealing_dabs(1, kind="three_tab") == 3 * 2
    assert hand_sealing_dabs(80, kind="three_tab") == 480


def test_the_four_nails_of_a_metric_strip():
    assert nail_positions(39.375, nails=4, end_distance=1) == pytest.approx(STRIP, abs=1e-6)


# Ontario Building Code 9.26.7: nails 25 to 40 mm from each end, the rest evenly, and no fewer than
# 4 to 1000 mm. Printed to the millimetre.
def test_a_metre_of_strip_nailed_as_the_ontario_code_has_it():
    placed = [
        at * 254 / 10 for at in nail_positions(1000 * 10 / 254, nails=4, end_distance=40 / 25.4)
    ]
    assert placed == pytest.approx([40, 346.667, 653.333, 960], abs=0.5)


@given(st.floats(1, 100), st.integers(2, 12), st.floats(0.001, 0.49))
def test_nails_are_equally_spaced_and_the_same_from_either_end(strip, nails, part):
    end = strip * part
    placed = nail_positions(strip, nails=nails, end_distance=end)
    assert len(placed) == nails
    assert placed[0] == end
    gaps = [b - a for a, b in pairwise(placed)]
    assert gaps == pytest.approx([gaps[0]] * (nails - 1), abs=DUST)
    assert gaps[0] > 0
    assert [strip - at for at in reversed(placed)] == pytest.approx(placed, abs=DUST)


# By hand from the four nails above; the trims of the repeating sequence 0, 6, 11, 17 in.
@pytest.mark.parametrize(
    ("left", "right", "placed"),
    [
        (0, 39.375, STRIP),
        (6, 39.375, STRIP[1:]),
        (11, 39.375, STRIP[1:]),
        (17, 39.375, STRIP[2:]),
        (0, 22, STRIP[:2]),
        (0, 11, (1, 10)),  # one of its own: two new ones, 1 in from each end
        (26, 37, (27, 36)),  # none of its own
        (30, 33, (30.75, 32.25)),  # under 4 in: a quarter of it from each end
    ],
)
def test_a_cut_piece_keeps_the_nails_still_on_it_and_never_under_two(left, right, placed):
    positions = nail_positions(39.375, nails=4)
    assert nails_on_piece(left, right=right, positions=positions) == pytest.approx(placed, abs=1e-6)


@given(st.floats(0, 39), st.floats(0.01, 39.375), st.integers(2, 8))
def test_nails_on_any_piece_lie_on_it(left, width, nails):
    right = left + width
    positions = nail_positions(39.375, nails=nails)
    placed = nails_on_piece(left, right=right, positions=positions)
    own = [at for at in positions if left < at < right]
    assert len(placed) == max(2, len(own))
    assert all(left < at < right for at in placed)
    assert all(a < b for a, b in pairwise(placed))
    if len(own) >= 2:
        assert list(placed) == own


def test_refusals_name_every_bad_field():
    assert refused(nail_positions, 36, nails=1, end_distance=18) == [
        "nails came as 1: 2 or more and at most 1000",
        "end_distance came as 18 in: under half of the strip, 18 in",
    ]
    assert refused(nails_on_piece, 12, right=12, positions=(1.0,), end_distance=-1) == [
        "right came as 12 in: more than the left edge, 12 in",
        "end_distance came as -1 in: zero or more and at most 100000 ft",
    ]
    assert refused(nails_per_strip, -0.25) == [
        "pitch came as -3:12: zero or more and at most 120000000000:12"
    ]
    assert refused(hand_sealing_dabs, -1, kind="slate") == [
        "strips came as -1: zero or more and at most 10000000000",
        "kind came as slate: one of laminated, three_tab",
    ]


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf")])
def test_no_strip_of_such_a_length(bad):
    [sentence] = refused(nail_positions, bad, nails=4, end_distance=1)
    assert sentence.startswith("shingle_length came as ")
