"""The named forms: published and hand-worked examples, what they share, and what is refused."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.roof.footprints import Footprint, Side, deck_outline
from roofing_core.roof.forms import Form, Gable, Gambrel, Hip, Pyramid, Saltbox
from roofing_core.roof.hips import hip_line
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.planes import SingleSlope, measure, planes
from roofing_core.roof.whole_roof import surfaces

FT = 12.0
FT2 = 144.0

#: The last place of the published and hand-worked numbers, halved.
HUNDREDTH = 0.005
TEN_THOUSANDTH = 0.00005

#: Part of a length or area.
ROUNDING = 1e-9


def lengths(found: Surfaces, kind: str) -> list[float]:
    """Give the lengths of all lines of a kind in feet, shortest first."""
    return sorted(line.length / FT for line in found.lines if line.kind == kind)


def highest(found: Surfaces) -> float:
    return max(height for plane in found.planes for *_, height in plane.points) / FT


def test_hip_roof_24_by_36_ft():
    # 6:12 all round, exact counting: two triangles of 161.00 ft2, two trapezoids of 321.99; ridge
    # 36 - 24 = 12 ft; hips 12 x 3/2 = 18 ft exactly.
    found = surfaces(Hip(length=36 * FT, width=24 * FT, pitch=6 / 12))
    areas = sorted(plane.area / FT2 for plane in found.planes)
    assert areas == pytest.approx([161.00, 161.00, 321.99, 321.99], abs=HUNDREDTH)
    assert found.area / FT2 == pytest.approx(965.98, abs=HUNDREDTH)
    assert found.squares == found.area / FT2 / 100
    assert lengths(found, "ridge") == [12]
    assert lengths(found, "hip") == [18, 18, 18, 18]
    assert [plane.name for plane in found.planes] == ["front", "right end", "back", "left end"]


def test_hip_over_a_half_span_of_15_ft():
    # Navy Builder manual (NAVEDTRA 14044) ch. 2, hips: 8 in of rise per ft, total rise 10 ft; run
    # 21.21 ft, length 23.45 ft.
    found = surfaces(Hip(length=40 * FT, width=30 * FT, pitch=8 / 12))
    assert highest(found) == pytest.approx(10)
    assert lengths(found, "hip") == pytest.approx([23.45] * 4, abs=HUNDREDTH)
    (hip, *_) = (line for line in found.lines if line.kind == "hip")
    (ax, ay, _), (bx, by, _) = hip.ends
    assert sqrt((bx - ax) ** 2 + (by - ay) ** 2) / FT == pytest.approx(21.21, abs=HUNDREDTH)


def test_hip_over_a_run_of_13_ft_6_in():
    # Carpentry cyclopedia, Hips: rise 9 in per ft. Worked out: hip 259.3265 in; common rafter
    # 162 x 5/4 = 202 1/2 in, the height of the triangle over an end.
    found = surfaces(Hip(length=40 * FT, width=27 * FT, pitch=9 / 12))
    assert lengths(found, "hip") == pytest.approx([259.3265 / FT] * 4, abs=TEN_THOUSANDTH)
    ends = [plane for plane in found.planes if plane.name.endswith(" end")]
    assert [max(v for _, v in plane.corners) for plane in ends] == [202.5, 202.5]


def test_ridge_of_a_hip_roof_75_by_32_ft():
    # Roof-framing notes: 900 - 2 x 192 = 516 in, at any pitch.
    for pitch in (3 / 12, 6 / 12, 17 / 12):
        found = surfaces(Hip(length=900, width=32 * FT, pitch=pitch))
        assert lengths(found, "ridge") == pytest.approx([43], rel=ROUNDING)


def test_four_hips_that_meet_over_an_oblong():
    # Steel-square book, about 1900: plan 18 x 28 ft, rise 9 ft, no ridge. Worked out: hips 18.9209
    # ft, rafters 16.6433 (run 14) and 12.7279 (run 9).
    found = surfaces(Pyramid(length=28 * FT, width=18 * FT, rise=9 * FT))
    assert Counter(line.kind for line in found.lines) == {"eave": 4, "hip": 4}
    assert lengths(found, "hip") == pytest.approx([18.9209] * 4, abs=TEN_THOUSANDTH)
    tops = {plane.name: max(v for _, v in plane.corners) / FT for plane in found.planes}
    assert tops["front"] == pytest.approx(12.7279, abs=TEN_THOUSANDTH)
    assert tops["left end"] == pytest.approx(16.6433, abs=TEN_THOUSANDTH)
    # The same by the pitch of its front, 9 in 9.
    again = surfaces(Pyramid(length=28 * FT, width=18 * FT, pitch=12 / 12))
    assert again.area == pytest.approx(found.area, rel=ROUNDING)


def test_one_wall_2_ft_higher():
    # Trade journal, question and answer: 24 ft wide, 6:12, one wall 2 ft higher; runs 14 and 10 ft,
    # rafters 15.6525 and 11.1803 ft, the ridge 7 ft above the low wall, 5 above the high.
    by_drop = Saltbox(length=30 * FT, width=24 * FT, pitch=6 / 12, back_eave_drop=2 * FT)
    by_run = Saltbox(length=30 * FT, width=24 * FT, pitch=6 / 12, ridge_run=10 * FT)
    for roof in (by_drop, by_run):
        found = surfaces(roof)
        assert highest(found) == 7
        front, back = found.planes
        assert (front.name, back.name) == ("front", "back")
        assert front.corners[2][1] / FT == pytest.approx(11.1803, abs=TEN_THOUSANDTH)
        assert back.corners[2][1] / FT == pytest.approx(15.6525, abs=TEN_THOUSANDTH)
        assert front.points[0][2] / FT == 2
        assert lengths(found, "ridge") == [30]


def test_gambrel_by_hand():
    # 24 ft wide: 5 ft of run at 24:12, 10 ft up and 5 x root 5 = 11.1803 ft long; then 7 ft at
    # 6:12, 3.5 ft up and 7 x 1.118034 = 7.8262 ft long.
    found = surfaces(Gambrel(length=40 * FT, width=24 * FT, pitch=2, upper_pitch=0.5,
                             break_run=5 * FT))  # fmt: skip
    tops = {plane.name: plane.corners[2][1] / FT for plane in found.planes}
    assert tops == {
        "front": pytest.approx(11.1803, abs=TEN_THOUSANDTH),
        "front upper": pytest.approx(7.8262, abs=TEN_THOUSANDTH),
        "back": pytest.approx(11.1803, abs=TEN_THOUSANDTH),
        "back upper": pytest.approx(7.8262, abs=TEN_THOUSANDTH),
    }
    assert highest(found) == 13.5
    assert lengths(found, "pitch_break") == [40, 40]
    breaks = [line.planes for line in found.lines if line.kind == "pitch_break"]
    assert breaks == [("front", "front upper"), ("back", "back upper")]
    assert found.planes[0].edges == ("eave", "rake", "pitch_break", "rake")
    assert found.planes[1].edges == ("pitch_break", "rake", "ridge", "rake")


def test_a_single_slope_is_the_plane_it_always_was():
    shed = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
    (plane,) = surfaces(shed).planes
    (before,) = planes(measure(shed))
    assert (plane.name, plane.edges, plane.pitch) == (before.name, before.edges, before.pitch)
    for new, old in zip(plane.corners, before.corners, strict=True):
        assert new == pytest.approx(old, rel=ROUNDING)
    assert plane.area == pytest.approx(before.area, rel=ROUNDING)
    assert set(plane.beyond) == {""}


SIZES = st.floats(96, 2400)
PITCHES = st.floats(0.1, 3)


@given(SIZES, SIZES, PITCHES, PITCHES)
def test_gables_of_any_pitches_by_hand(long, wide, pitch, back_pitch):
    # The ridge divides the width so that both runs rise as high.
    found = surfaces(Gable(length=long, width=wide, pitch=pitch, back_pitch=back_pitch))
    front, back = found.planes
    run = wide * back_pitch / (pitch + back_pitch)
    assert front.area == pytest.approx(long * run * sqrt(1 + pitch**2), rel=ROUNDING)
    other = long * (wide - run) * sqrt(1 + back_pitch**2)
    assert back.area == pytest.approx(other, rel=ROUNDING)
    (ridge,) = (line for line in found.lines if line.kind == "ridge")
    assert ridge.length == pytest.approx(long, rel=ROUNDING)
    assert ridge.planes == ("front", "back")
    assert ridge.ends[0][2] == pytest.approx(pitch * run, rel=ROUNDING)


@given(SIZES, SIZES, PITCHES, PITCHES)
def test_hips_of_any_pitches_are_those_of_hip_line(long, wide, pitch, end_pitch):
    found = surfaces(Hip(length=long, width=wide, pitch=pitch, end_pitch=end_pitch))
    line = hip_line(pitch, pitch_2=end_pitch)
    # The hips run to the ridge, which lies along the length or, over short plans, across it.
    run = min(wide / 2, long / 2 * end_pitch / pitch)
    hips = [each.length for each in found.lines if each.kind == "hip"]
    assert hips == pytest.approx([line.factor * run] * 4, rel=1e-8)


@given(SIZES, SIZES, PITCHES, st.floats(0, 36), st.floats(0, 36))
def test_overhangs_are_added_to_walls(long, wide, pitch, eave, rake):
    from_walls = Gable(length=long, width=wide, pitch=pitch, measured="walls",
                       eave_overhang=eave, rake_overhang=rake)  # fmt: skip
    deck = Gable(length=long + 2 * rake, width=wide + 2 * eave, pitch=pitch)
    assert surfaces(from_walls).area == pytest.approx(surfaces(deck).area, rel=ROUNDING)
    # What was measured as deck has its overhang already.
    same = Gable(length=long, width=wide, pitch=pitch, eave_overhang=eave, rake_overhang=rake)
    assert surfaces(same).area == surfaces(Gable(length=long, width=wide, pitch=pitch)).area


@given(SIZES, st.floats(200, 800), PITCHES, PITCHES, st.floats(0.05, 0.95))
def test_a_saltbox_has_its_ridge_where_it_was_put(long, wide, pitch, back_pitch, part):
    run = part * wide
    roof = Saltbox(length=long, width=wide, pitch=pitch, back_pitch=back_pitch, ridge_run=run,
                   measured="walls", eave_overhang=12.0)  # fmt: skip
    (ridge,) = (line for line in surfaces(roof).lines if line.kind == "ridge")
    assert [y for _, y, _ in ridge.ends] == pytest.approx([run, run], abs=1e-6)


def test_overhangs_at_inside_corners():
    # An L of 30 x 20 ft walls, wing 10 ft wide: 1 ft at eaves, 6 in at the two gables.
    walls = tuple(
        (FT * x, FT * y) for x, y in ((0, 0), (30, 0), (30, 10), (10, 10), (10, 20), (0, 20))
    )
    sides = tuple(Side(end="gable") if k in {1, 4} else Side() for k in range(6))
    roof = Footprint(corners=walls, pitch=0.5, sides=sides, measured="walls", eave_overhang=FT,
                     rake_overhang=6)  # fmt: skip
    assert deck_outline(roof).corners == tuple(
        (FT * x, FT * y)
        for x, y in ((-1, -1), (30.5, -1), (30.5, 11), (11, 11), (11, 20.5), (-1, 20.5))
    )
    # Both wings are 12 ft wide over the eaves: hip and valley run 6 ft in, 9 ft long at 6:12.
    found = surfaces(roof)
    assert lengths(found, "valley") == pytest.approx([9])
    assert lengths(found, "hip") == pytest.approx([9])
    assert lengths(found, "ridge") == pytest.approx([15.5, 25.5])


def test_heights_are_above_the_lowest_eave():
    square = tuple((FT * x, FT * y) for x, y in ((0, 0), (10, 0), (10, 10), (0, 10)))
    raised = Footprint(corners=square, pitch=1, sides=(Side(eave_height=24.0),) * 4)
    assert surfaces(raised) == surfaces(Footprint(corners=square, pitch=1))


def test_a_pitch_break_is_measured_from_what_was_measured():
    # 5 ft in from walls with 1 ft of overhang is 6 ft in from the eave: 12 ft up at 24:12.
    deck = Gambrel(length=40 * FT, width=24 * FT, pitch=2, upper_pitch=0.5, break_run=5 * FT)
    walls = replace(deck, measured="walls", eave_overhang=FT)
    for roof, high in ((walls, 12), (deck, 10)):
        breaks = [line for line in surfaces(roof).lines if line.kind == "pitch_break"]
        assert {height / FT for line in breaks for *_, height in line.ends} == {high}


def test_a_gable_stays_one_beside_an_eave_to_come():
    # A house with a wing in the middle of its back, 4 ft wide, so that its roof has closed 2 ft up.
    # Left of it the back is a gable, right of it an eave 4 ft up: by then they are one wall.
    corners = tuple(
        (FT * x, FT * y)
        for x, y in ((0, 0), (12, 0), (12, 6), (8, 6), (8, 10), (4, 10), (4, 6), (0, 6))
    )
    sides = [Side() for _ in corners]
    sides[6], sides[2] = Side(end="gable"), Side(eave_height=48.0)
    with pytest.raises(Refused) as refused:
        surfaces(Footprint(corners=corners, pitch=1, sides=tuple(sides)))
    assert [fault.at for fault in refused.value.faults] == [("sides", 2, "eave_height")]


ALL = [
    (Gable, {"length": 480, "width": 288, "pitch": 0.5}),
    (Saltbox, {"length": 480, "width": 288, "pitch": 0.5, "ridge_run": 100}),
    (Gambrel, {"length": 480, "width": 288, "pitch": 2, "upper_pitch": 0.5, "break_run": 60}),
    (Hip, {"length": 480, "width": 288, "pitch": 0.5}),
    (Pyramid, {"length": 480, "width": 288, "rise": 90}),
]


@pytest.mark.parametrize(("form", "sizes"), ALL, ids=[form.__name__ for form, _ in ALL])
def test_each_wrong_measurement_is_named(form, sizes):
    assert surfaces(form(**sizes)).area > 480 * 288
    for name in sizes:
        for wrong in (0.0, -1.0, float("nan"), float("inf"), 1e9):
            with pytest.raises(Refused) as refused:
                surfaces(form(**{**sizes, name: wrong}))
            assert (name,) in [fault.at for fault in refused.value.faults], (name, wrong)
    with pytest.raises(Refused) as refused:
        surfaces(form(**dict.fromkeys(sizes, -1.0), eave_overhang=-1.0))
    assert {fault.at for fault in refused.value.faults} >= {
        *((n,) for n in sizes),
        ("eave_overhang",),
    }


REFUSED: list[tuple[Form, str]] = [
    (
        Gable(length=480, width=288, pitch=0, back_pitch=1001 / 12),
        "pitch came as 0:12: at least 0.1:12 and at most 1000:12; "
        "back_pitch came as 1001:12: at least 0.1:12 and at most 1000:12",
    ),
    (Hip(length=0.2, width=288, pitch=0.5), "length came as 3/16 in: at least 1/4 in"),
    (
        Saltbox(length=480, width=288, pitch=0.5),
        "back_eave_drop came as none: one of back_eave_drop and ridge_run",
    ),
    (
        Saltbox(length=480, width=288, pitch=0.5, back_eave_drop=12, ridge_run=100),
        "back_eave_drop came as back_eave_drop and ridge_run: one of back_eave_drop and ridge_run",
    ),
    (
        # At 144 in the back slope comes to the front eave itself: less 1/4 in of run on each side.
        Saltbox(length=480, width=288, pitch=0.5, back_eave_drop=144),
        "back_eave_drop came as 12 ft: at most 11 ft 11 3/4 in",
    ),
    (
        Saltbox(length=480, width=288, pitch=0.5, ridge_run=288),
        "ridge_run came as 24 ft: at most 23 ft 11 3/4 in",
    ),
    (
        Gambrel(length=480, width=288, pitch=2, upper_pitch=0.5, break_run=144),
        "break_run came as 12 ft: at most 11 ft 11 3/4 in",
    ),
    (
        Pyramid(length=480, width=288),
        "rise came as none: one of rise and pitch",
    ),
    (
        Pyramid(length=480, width=288, rise=1),
        "rise came as 0.05:12: at least 0.1:12 and at most 1000:12; "
        "rise came as 0.08:12: at least 0.1:12 and at most 1000:12",
    ),
]


@pytest.mark.parametrize(("roof", "said"), REFUSED, ids=lambda each: str(each)[:40])
def test_what_a_form_refuses_and_how_it_says_so(roof, said):
    with pytest.raises(Refused) as refused:
        surfaces(roof)
    assert str(refused.value) == said


SQUARE = ((0.0, 0.0), (120.0, 0.0), (120.0, 120.0), (0.0, 120.0))

BAD_FOOTPRINTS: list[tuple[Footprint, str]] = [
    (Footprint(corners=SQUARE[:2], pitch=1), "corners came as 2 corners: from 3 to 100 corners"),
    (
        Footprint(corners=tuple((float(k), float(k * k)) for k in range(101)), pitch=1),
        "corners came as 101 corners: from 3 to 100 corners",
    ),
    (
        Footprint(corners=(*SQUARE[:3], (0.0, float("nan"))), pitch=1),
        "corners.3 came as (0.0, nan): two lengths, each at most 100000 ft",
    ),
    (
        Footprint(corners=(SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]), pitch=1),
        "corners came as sides 1 and 3 crossing or touching: sides that meet only at their corners",
    ),
    (
        Footprint(corners=(SQUARE[0], (60.0, 0.0), *SQUARE[1:]), pitch=1),
        "corners.1 came as a corner on a straight line: "
        "left out, or moved to where the outline turns",
    ),
    (
        Footprint(corners=(*SQUARE[:2], (240.0, 0.0), *SQUARE[2:]), pitch=1),
        "corners.1 came as a corner on a straight line: "
        "left out, or moved to where the outline turns",
    ),
    (
        Footprint(corners=(SQUARE[0], (150.0, 0.0), *SQUARE[1:]), pitch=1),
        "corners.1 came as a corner that turns back: left out, or moved to where the outline turns",
    ),
    (
        Footprint(corners=(SQUARE[0], (0.0, 0.125), *SQUARE[1:]), pitch=1),
        "corners.0 came as 1/8 in: a side 1, from here to the next corner, of at least 1/4 in",
    ),
    (
        Footprint(corners=(SQUARE[0], SQUARE[1], (60.0, 0.125), SQUARE[3]), pitch=1),
        "corners came as sides 1 and 3 crossing or touching: sides that meet only at their corners",
    ),
    (
        Footprint(corners=SQUARE),
        "pitch came as none: a pitch, for the sides that have none of their own",
    ),
    (
        Footprint(corners=SQUARE, pitch=1, sides=(Side(),) * 3),
        "sides came as 3 sides: 4, one for each corner, or none",
    ),
    (
        Footprint(corners=SQUARE, pitch=1, sides=(Side(end="gable"),) * 4),
        "sides came as gables only: at least one eave, from which a plane rises",
    ),
    (
        Footprint(corners=SQUARE, pitch=1, sides=(Side(name="a"), Side(name="a"), Side(), Side())),
        "sides came as one name for two of them: a name of its own for each",
    ),
    (
        Footprint(corners=SQUARE, pitch=1, sides=(
            Side(end="gable", pitch=1.0),
            Side(upper_pitch=0.5),
            Side(break_run=-1.0, eave_height=-1.0),
            Side(pitch=0.0, name=80 * "x"),
        ), eave_overhang=-1),
        "eave_overhang came as -1 in: zero or more and at most 100000 ft; "
        "sides.0.pitch came as 12:12: left out: no plane rises over a gable; "
        "sides.1.break_run came as none: given too, where upper_pitch is; "
        "sides.2.eave_height came as -1 in: zero or more and at most 100000 ft; "
        "sides.2.upper_pitch came as none: given too, where break_run is; "
        "sides.2.break_run came as -1 in: more than zero and at most 100000 ft; "
        "sides.3.pitch came as 0:12: at least 0.1:12 and at most 1000:12; "
        "sides.3.name came as a name of 80 characters: at most 60 printable characters",
    ),
    (
        Footprint(corners=SQUARE, sides=(Side(pitch=1.0, upper_pitch=0.5, break_run=60.0),) * 4),
        "; ".join(
            f"sides.{k}.break_run came as 5 ft: "
            "less: the other planes close over the plan below this pitch break"
            for k in range(4)
        ),
    ),
    (
        # A recess 20 in wide between walls, and 12 in of overhang from either side.
        Footprint(corners=((0, 0), (100, 0), (100, 90), (60, 90), (60, 40), (40, 40), (40, 90),
                           (0, 90)), pitch=1, measured="walls", eave_overhang=12),
        "eave_overhang came as 12 in: an overhang that leaves every recess between two walls open",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("roof", "said"), BAD_FOOTPRINTS, ids=lambda each: str(each)[:40])
def test_what_a_footprint_refuses_and_how_it_says_so(roof, said):
    with pytest.raises(Refused) as refused:
        surfaces(roof)
    assert str(refused.value) == said
