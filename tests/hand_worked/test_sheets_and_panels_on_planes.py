"""Underlayment, ice barrier, valley lining and deck on hips, ridges, valleys and breaks, by hand.

Roofs at 9:12 have a slope factor of 5/4: 120 in of run are 150 in of slope, and a hip rises 5 for
every 4 along the eave. 6 in square to such a hip are 6 x sqrt(41)/5 = 7.68375 in along the eave.
"""

from __future__ import annotations

from math import sqrt

import pytest

from roofing_core import (
    DeckWay,
    Footprint,
    Gable,
    Gambrel,
    Hip,
    Pyramid,
    SheetWay,
    UnderlaymentWay,
    deck_on,
    ice_barrier_on,
    ice_barrier_reaches,
    surfaces,
    underlayment_on,
    valley_lining,
)
from roofing_core.layers.decking.panel_cuts import Blank, cut_panels, least_panels

FELT = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
ICE = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25, end_lap=6)
LAP = 6 * sqrt(41) / 5

#: Worked to a thousandth of an inch, and areas to 1 in2.
THOUSANDTH = 0.001


@pytest.fixture(scope="module")
def pyramid():
    """Give four triangles, 240 in along the eave and 150 in up the slope."""
    return surfaces(Pyramid(length=240, width=240, pitch=9 / 12)).planes


def ends(rows, plane):
    return [
        (row.lower, row.upper, row.pieces[0].left, row.pieces[-1].right)
        for row in rows
        if row.plane == plane
    ]


# ---- Hips ----------------------------------------------------------------------------------------


def test_rows_on_a_hip_end_grow_shorter_and_run_over_the_hips(pyramid):
    """From -1/4 in every 32 in; at v the plane with its laps reaches from 0.8 v - 7.684.

    Five rows: 255.768, 204.568, 153.368, 102.168 and 50.968 in long, the last up to the tip.
    """
    laid = underlayment_on(pyramid, way=FELT)
    rows = ends(laid.rows, "front")
    assert [row[0] for row in rows] == [-0.25, 31.75, 63.75, 95.75, 127.75]
    assert [row[1] for row in rows] == [35.75, 67.75, 99.75, 131.75, 150]
    lengths = [right - left for _, _, left, right in rows]
    worked = [255.768, 204.568, 153.368, 102.168, 50.968]
    assert lengths == pytest.approx(worked, abs=THOUSANDTH)
    assert rows[0][2] == pytest.approx(-0.2 - LAP)


def test_one_roll_goes_on_from_plane_to_plane(pyramid):
    """A plane takes 766.838 in, four 3067.35: two rolls of 1728, though one plane alone opens one.

    Two planes leave 194.325 in of the first roll. It begins the third plane; its other 61.443 in,
    and 4 in of lap, come off the second roll, of which 3456 - 3067.35 - 4 are left.
    """
    laid = underlayment_on(pyramid, way=FELT)
    assert (laid.rolls, laid.end_laps) == (2, 1)
    assert laid.left_over == pytest.approx(384.65, abs=THOUSANDTH)
    (lapped,) = [row for row in laid.rows if row.end_laps]
    assert (lapped.plane, lapped.number, lapped.lower) == ("back", 11, -0.25)
    assert [piece.length for piece in lapped.pieces] == pytest.approx(
        [194.325, 65.443], abs=THOUSANDTH
    )
    assert [piece.roll for piece in lapped.pieces] == [1, 2]


def test_what_stays_on_a_hip_roof_is_what_is_within_its_laps(pyramid):
    """Rows lie 36 in high, the plane with its laps 255.368 - 1.6 v wide: at mid-height of each

    226.968, 175.768, 124.568 and 73.368 in, and 33.168 in over the 22 1/4 in of the last: 22,362
    in2. One end lap of 4 by 36 in lies double.
    """
    laid = underlayment_on(pyramid, way=FELT)
    assert laid.area_laid == pytest.approx(4 * 22362.1 + 144, abs=1)
    assert laid.area_cut == pytest.approx(36 * (3067.35 + 4), abs=1)


def test_fasteners_on_a_hip_end_stand_on_the_plane_alone(pyramid):
    """Eave 240 in: 21. Laps of 189.2, 138, 86.8 and 35.6 in: 17, 13, 9 and 4.

    Field lines half-way between: 214.8, 163.6, 112.4, 61.2 and 17.8 in: 10, 8, 6, 4 and 2. That is
    94 a plane, and 2 between the ends of the one end lap.
    """
    laid = underlayment_on(pyramid, way=FELT)
    front = [line for line in laid.fastener_lines if line.plane == "front"]
    assert [line.count for line in front if line.kind == "eave_edge"] == [21]
    assert [line.count for line in front if line.kind == "head_lap"] == [17, 13, 9, 4]
    assert [line.count for line in front if line.kind == "field"] == [10, 8, 6, 4, 2]
    assert laid.fasteners == 4 * 94 + 2
    assert laid.eave_edge_length == 4 * 240
    assert laid.head_lap_length == pytest.approx(4 * (189.2 + 138 + 86.8 + 35.6))


def test_an_ice_barrier_runs_round_a_hip_roof(pyramid):
    """36 in level are 45 in up the slope: two rows, 255.768 and 204.568 in long, on each side.

    Off rolls of 800 in: 460.335, then 255.768 and 83.898 in of the next row; off the second its
    other 126.67, 460.335 and 212.995; off the third 48.773 and 204.568, of which 546.66 are left.
    """
    reaches = ice_barrier_reaches(pyramid, eave_overhang=12)
    assert reaches == (45, 45, 45, 45)
    ice = ice_barrier_on(pyramid, reaches=reaches, way=ICE)
    assert [(one.plane, one.upper) for one in ice.planes][:2] == [
        ("front", 67.75),
        ("right end", 67.75),
    ]
    assert (ice.rolls, len(ice.rows), ice.end_laps) == (3, 8, 2)
    assert ice.left_over == pytest.approx(546.66, abs=THOUSANDTH)
    tops = [one.upper for one in ice.planes]
    felt = underlayment_on(pyramid, way=FELT, ice_barrier_tops=tops)
    assert [row[0] for row in ends(felt.rows, "front")] == [63.75, 95.75, 127.75]
    assert felt.eave_edge_length == 0


def test_each_plane_is_laid_by_its_own_pitch():
    """Sides at 3:12 take two layers with 19 in laps, ends at 6:12 one with 4 in."""
    laid = underlayment_on(
        surfaces(Hip(length=480, width=240, pitch=3 / 12, end_pitch=6 / 12)).planes, way=FELT
    )
    assert (laid.layers, laid.head_lap, laid.exposure) == (2, 19, 17)
    assert [(one.plane, one.layers, one.head_lap, one.exposure) for one in laid.planes] == [
        ("front", 2, 19, 17),
        ("right end", 1, 4, 32),
        ("back", 2, 19, 17),
        ("left end", 1, 4, 32),
    ]


# ---- Ridges --------------------------------------------------------------------------------------


def test_rows_on_a_gable_run_over_the_ridge_from_both_sides():
    """120 in of slope, so up to 126: four rows, the last trimmed at 126. Rakes 2 in long."""
    laid = underlayment_on(surfaces(Gable(length=240, width=192, pitch=9 / 12)).planes, way=FELT)
    for plane in ("front", "back"):
        assert ends(laid.rows, plane) == [
            (-0.25, 35.75, -2, 242),
            (31.75, 67.75, -2, 242),
            (63.75, 99.75, -2, 242),
            (95.75, 126, -2, 242),
        ]
    assert laid.rows[3].trim == 5.75
    assert laid.area_laid == 2 * 240 * (3 * 36 + 30.25)
    assert max(line.upper for line in laid.fastener_lines) < 120


def test_a_row_that_would_start_past_the_ridge_starts_a_lap_below_it():
    """127 in of slope: the fourth row ends at 131 3/4, 1 1/4 in short of 133.

    The fifth would start at 127 3/4, beyond the ridge; from 123 it laps the fourth by 8 3/4.
    """
    laid = underlayment_on(surfaces(Gable(length=240, width=203.2, pitch=9 / 12)).planes, way=FELT)
    rows = [row for row in laid.rows if row.plane == "front"]
    assert [row.lower for row in rows] == pytest.approx([-0.25, 31.75, 63.75, 95.75, 123])
    assert rows[-1].head_lap == pytest.approx(8.75)
    assert rows[-1].upper == pytest.approx(133)


def test_two_layers_run_over_the_ridge_too():
    """3:12 over 120 in of run: 123.693 in, so up to 129.693. Sheets every 17 in from -1/4.

    The seventh, from 101 3/4, reaches 137 3/4; the strip from 118 3/4 doubles it from 120 3/4 on.
    """
    laid = underlayment_on(surfaces(Gable(length=240, width=240, pitch=3 / 12)).planes, way=FELT)
    rows = [row for row in laid.rows if row.plane == "front"]
    assert [row.kind for row in rows] == ["starter_strip", *["full"] * 7, "top_strip"]
    assert (rows[-2].lower, rows[-1].lower) == (101.75, 118.75)
    assert rows[-1].upper == pytest.approx(129.693, abs=THOUSANDTH)
    assert rows[-1].width == pytest.approx(10.943, abs=THOUSANDTH)


def test_what_is_left_beside_the_strips_of_one_plane_serves_the_next():
    """Each plane has a strip of 19 in and one of 10.943 in, as long as each other.

    Beside the first strip 17 in are left, of which the top strip of its plane takes 10.943; so with
    the second plane.
    """
    laid = underlayment_on(surfaces(Gable(length=240, width=240, pitch=3 / 12)).planes, way=FELT)
    ripped = [
        (cut.row, cut.width)
        for used in laid.roll_plan
        for cut in used.cuts
        if cut.taken_from == "rest_of_width"
    ]
    assert [row for row, _ in ripped] == [9, 18]
    assert (
        laid.left_over
        == 1728 * laid.rolls
        - 16 * 244
        - sum(used.offcut for used in laid.roll_plan[:-1])
        - 4 * laid.end_laps
    )


# ---- Breaks of pitch -----------------------------------------------------------------------------

#: 40 in of run at 9:12 is 50 in of slope; the upper slope, 6:12, goes on from there.
BARN = Gambrel(length=240, width=200, pitch=9 / 12, upper_pitch=6 / 12, break_run=40)


def test_rows_above_a_break_start_over_the_plane_below():
    laid = underlayment_on(surfaces(BARN).planes, way=FELT)
    assert [row[:2] for row in ends(laid.rows, "front")] == [(-0.25, 35.75), (31.75, 50)]
    first = next(row for row in laid.rows if row.plane == "front upper")
    assert (first.lower, first.head_lap) == (-4, 4)
    assert first.number == 3
    starts = [line for line in laid.fastener_lines if line.lower in {-0.25, -4}]
    assert [(line.plane, line.kind, line.count) for line in starts] == [
        ("front", "eave_edge", 21),
        ("front upper", "head_lap", 21),
        ("back", "eave_edge", 21),
        ("back upper", "head_lap", 21),
    ]


def test_planes_given_from_above_are_laid_from_below():
    planes = surfaces(BARN).planes
    assert underlayment_on(planes[::-1], way=FELT).rows[0].plane == "back"
    assert [one.plane for one in underlayment_on(planes[::-1], way=FELT).planes] == [
        plane.name for plane in planes[::-1]
    ]


@pytest.mark.parametrize(
    ("pitch", "edition", "above"),
    [
        (9 / 12, "2024", (36 - 32) * sqrt(1.25)),  # 32 of 36 in level lie below the break
        (9 / 12, "2021", (36 - 32) * sqrt(1.25)),  # 36 in up the slope end below it, at 40
        (8 / 12, "2021", (36 - 32) * sqrt(1.25)),
    ],
)
def test_an_ice_barrier_goes_on_above_a_break(pitch, edition, above):
    barn = Gambrel(length=240, width=200, pitch=pitch, upper_pitch=6 / 12, break_run=32)
    lower, upper, *_ = ice_barrier_reaches(surfaces(barn).planes, eave_overhang=12, edition=edition)
    assert lower == pytest.approx(36 * sqrt(1 + pitch**2))
    assert upper == pytest.approx(above)


def test_the_36_in_of_a_steep_slope_go_on_above_a_break_too():
    """10 in of run at 18:12 is 18.028 in: 17.972 of 36 in are left; 14 in level would be 15.652."""
    barn = Gambrel(length=240, width=200, pitch=18 / 12, upper_pitch=6 / 12, break_run=10)
    lower, upper, *_ = ice_barrier_reaches(surfaces(barn).planes, eave_overhang=0)
    assert lower == pytest.approx(24 * sqrt(3.25))
    assert upper == pytest.approx(17.972, abs=THOUSANDTH)
    ice = ice_barrier_on(surfaces(barn).planes[:2], reaches=(lower, upper), way=ICE)
    assert [(row.plane, row.lower) for row in ice.rows] == [("front", -0.25), ("front upper", -4)]


# ---- Valleys -------------------------------------------------------------------------------------

#: Two wings 240 in wide. Of the six planes the third runs from a hip to the valley: 240 in wide at
#: every height, its hip and its valley both leaning 0.8 in for every inch up.
ELL = Footprint(
    corners=((0, 0), (480, 0), (480, 240), (240, 240), (240, 480), (0, 480)), pitch=9 / 12
)


def test_rows_at_a_valley_are_as_long_as_they_are_at_their_upper_edge():
    """From 0.8 x lower - 7.684 to 240 + 0.8 x upper + 7.684: 284.168 in, at the ridge 277.968."""
    laid = underlayment_on(surfaces(ELL).planes, way=FELT)
    rows = ends(laid.rows, "side 3")
    assert [row[1] for row in rows] == [35.75, 67.75, 99.75, 131.75, 156]
    lengths = [right - left for _, _, left, right in rows]
    assert lengths == pytest.approx([284.168] * 4 + [277.968], abs=THOUSANDTH)
    assert rows[1][3] == pytest.approx(240 + 0.8 * 67.75 + LAP)


def test_a_valley_is_lined_by_its_length_and_what_goes_past_its_ends():
    """120 in of run: 120 x sqrt(2.5625) = 192.094 in, 18 in more at the foot and 6 at the top."""
    valleys = tuple(line.length for line in surfaces(ELL).lines if line.kind == "valley")
    lined = valley_lining(valleys)
    assert [piece.length for piece in lined.pieces] == pytest.approx([216.094], abs=THOUSANDTH)
    assert (lined.rolls, lined.laps) == (1, 0)
    assert lined.left_over == pytest.approx(432 - 216.094, abs=THOUSANDTH)


# ---- Deck ----------------------------------------------------------------------------------------


def test_the_deck_of_a_small_pyramid():
    """Four triangles, 96 in wide and 60 in high: a row of 48 in and the tip of 12 in.

    The first row is one panel, 96 in at its foot and 19.2 at its top, on supports at 24, 48 and 72,
    where it is 30, 48 and 30 in high: 4 + 5 + 4 nails in the field; along each hip, 61.47 in,
    12. The tip is 19.2 in wide on a support at 48: 2 nails, and 4 along each hip. Four first rows
    take a panel each; of the tips, 12 in high, four lie side by side in one more.
    """
    laid = deck_on(surfaces(Pyramid(length=96, width=96, pitch=9 / 12)).planes, way=DeckWay())
    front = [piece for piece in laid.pieces if piece.plane == "front"]
    assert [(one.row, one.left, one.right, one.lower, one.upper) for one in front] == [
        (1, 0, 96, 0, 48),
        pytest.approx((2, 38.4, 57.6, 48, 60)),
    ]
    assert [one.area for one in front] == pytest.approx([(96 + 19.2) / 2 * 48, 19.2 * 12 / 2])
    assert [len(one.corners) for one in front] == [4, 3]
    assert (laid.panels, laid.least_panels, laid.panels_by_area) == (5, 3, 3)
    assert (laid.rows, laid.end_joints) == (8, 0)
    assert laid.nails == 4 * (4 + 5 + 4 + 2 * 12 + 2 + 2 * 4)
    assert laid.clips == 4 * 2
    assert laid.tape_length == pytest.approx(4 * 19.2)


def trapezoid(long: float, slant: float) -> Blank:
    return Blank(length=long, height=48, area=48 * (long - abs(slant) / 2), slant=slant)


SIZE = {"panel_length": 96, "panel_width": 48}


def test_one_slanting_cut_makes_two_pieces_of_one_panel():
    """60 in at the foot and 36 at the top: turned about, the second lies beside it in 96 in."""
    two = [trapezoid(60, 24), trapezoid(60, 24)]
    assert cut_panels(two, **SIZE).on == (1, 1)
    assert least_panels(two, **SIZE) == 1


def test_pieces_that_lean_the_other_way_or_are_too_long_take_a_panel_each():
    assert cut_panels([trapezoid(60, 24), trapezoid(60, -24)], **SIZE).panels == 2
    assert cut_panels([trapezoid(60, 24), trapezoid(60.125, 24)], **SIZE).panels == 2
    assert cut_panels([trapezoid(60, 24), trapezoid(60, 20)], **SIZE).panels == 2


def test_the_longest_is_paired_with_the_shortest_that_fits_beside_it():
    """90 with 30, 70 with 50: two panels. 90 with 50 or 70 with 60 would not fit."""
    sizes = [trapezoid(long, 24) for long in (50, 90, 30, 70)]
    assert cut_panels(sizes, **SIZE).on == (2, 1, 1, 2)
