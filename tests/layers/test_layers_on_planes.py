"""Layers on several planes: what is refused, and by which name; the lining of valleys."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby
from math import ceil, fsum, inf, nan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from roofing_core import (
    DeckWay,
    Footprint,
    Gable,
    Hip,
    Refused,
    SheetWay,
    Side,
    TooManyPieces,
    UnderlaymentWay,
    deck_on,
    ice_barrier_on,
    ice_barrier_reaches,
    surfaces,
    underlayment_on,
    valley_lining,
)
from roofing_core.layers.underlaying.end_laps import Cutting, fill_row
from roofing_core.roof.outlines import RoofPlane, rectangle
from roofing_core.roof.slicing import Region
from roofing_core.roof.uprights import upright

FELT = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
ICE = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25, end_lap=6)
HIP = surfaces(Hip(length=480, width=240, pitch=6 / 12)).planes


def told(call) -> dict[str, str]:
    """Give the sentence of each fault by its place."""
    with pytest.raises(Refused) as refusal:
        call()
    return {
        ".".join(map(str, fault.at)): fault.written().partition(" came as ")[2]
        for fault in refusal.value.faults
    }


# ---- Refusals ------------------------------------------------------------------------------------


def test_one_plane_too_flat_for_shingles_is_refused():
    flat = surfaces(Hip(length=480, width=240, pitch=6 / 12, end_pitch=1.9 / 12)).planes
    wanted = (
        "1.9:12: 2:12 or more and at most 1000:12: asphalt shingles are not laid on a lower slope"
    )
    assert told(lambda: underlayment_on(flat, way=FELT)) == {"pitch": wanted}


def test_one_plane_of_two_layers_needs_a_roll_wide_enough_for_them():
    mixed = surfaces(Hip(length=480, width=240, pitch=6 / 12, end_pitch=3 / 12)).planes
    narrow = replace(FELT, roll_width=3.9, head_lap=1)
    assert list(told(lambda: underlayment_on(mixed, way=narrow))) == ["roll_width"]
    assert underlayment_on(HIP, way=replace(FELT, roll_width=6)).layers == 1


SHEET_FAULTS = {
    "roll_width": (0.0, "0 in: more than zero and at most 100000 ft"),
    "roll_length": (
        150.0,
        "12 ft 6 in: 26 ft 4 in or more, so that end laps can stand as far apart",
    ),
    "head_lap": (36.0, "36 in: at most 35 in, 1 in less than the roll's width"),
    "over_edges": (-6.0, "-6 in: zero or more and at most 100000 ft"),
    "past_metal": (nan, "nan: zero or more and at most 100000 ft"),
    "trim_allowance": (inf, "inf: zero or more and at most 100000 ft"),
    "least_piece": (2.0, "2 in: 7 in or more, 1 in more than end lap and trim allowance together"),
}


@pytest.mark.parametrize(("name", "came", "said"), [(k, *v) for k, v in SHEET_FAULTS.items()])
def test_a_measurement_of_a_sheet_that_cannot_be_is_named(name, came, said):
    found = told(lambda: underlayment_on(HIP, way=replace(FELT, **{name: came})))
    assert list(found) == [name]
    assert found[name].startswith(said)
    assert list(
        told(lambda: ice_barrier_on(HIP, reaches=[40] * 4, way=replace(ICE, **{name: came})))
    ) == [name]


def test_all_that_is_wrong_with_a_sheet_is_said_at_once():
    way = replace(FELT, head_lap=-1, over_ice_barrier=40, lap_spacing=0.5, field_lines=13)
    found = told(lambda: underlayment_on(HIP, way=way, ice_barrier_tops=[67.75, 0, 0, -1]))
    assert list(found) == [
        "head_lap",
        "ice_barrier_top",
        "over_ice_barrier",
        "lap_spacing",
        "field_lines",
    ]


def test_there_is_one_top_and_one_reach_for_each_plane():
    assert told(lambda: underlayment_on(HIP, way=FELT, ice_barrier_tops=[67.75])) == {
        "ice_barrier_tops": "1 of them: 4, one a plane"
    }
    assert told(lambda: ice_barrier_on(HIP, reaches=[40, 40], way=ICE)) == {
        "reaches": "2 of them: 4, one for each plane"
    }
    assert list(told(lambda: ice_barrier_on(HIP, reaches=[40, -1, 40, nan], way=ICE))) == [
        "reaches"
    ]


def test_a_reach_that_cannot_be_is_refused():
    assert list(
        told(lambda: ice_barrier_reaches(HIP, eave_overhang=-1, edition="1999", inside_wall=nan))  # type: ignore[arg-type]
    ) == ["eave_overhang", "edition", "inside_wall"]


def test_more_pieces_than_the_limit_are_refused_before_any_is_laid():
    long = surfaces(Gable(length=1.2e6, width=1e5, pitch=6 / 12)).planes
    for call in (
        lambda: underlayment_on(long, way=FELT),
        lambda: ice_barrier_on(long, reaches=[5e4, 5e4], way=ICE),
        lambda: valley_lining((1e6,) * 9),
    ):
        with pytest.raises(
            TooManyPieces, match=r"pieces came as .* at most 10000 pieces of one sheet"
        ):
            call()
    with pytest.raises(TooManyPieces, match=r"panels came as .* at most 5000 panels on one roof"):
        deck_on(long, way=DeckWay())


def test_what_a_deck_cannot_be_is_named():
    way = DeckWay(panel_width=0, support_spacing=97, joint_stagger=-1, field_spacing=0.5)
    assert list(told(lambda: deck_on(HIP, way=way))) == [
        "panel_width",
        "support_spacing",
        "joint_stagger",
        "field_spacing",
    ]


def test_a_stagger_that_no_layout_keeps_is_refused_on_any_plane():
    assert list(told(lambda: deck_on(HIP, way=DeckWay(support_spacing=48)))) == ["joint_stagger"]


def test_a_roof_of_no_planes_is_none():
    for call in (
        lambda: underlayment_on([], way=FELT),
        lambda: ice_barrier_on([], reaches=[], way=ICE),
        lambda: deck_on([], way=DeckWay()),
    ):
        assert told(call) == {"planes": "none: one plane or more"}


# ---- End laps ------------------------------------------------------------------------------------


def test_a_row_over_end_laps_that_leave_no_place_is_refused():
    """Every 30 in up to 470: none of its own laps could be 72 in from all of them."""
    cutting = Cutting(roll_width=36, roll_length=300)
    laps = tuple(range(0, 471, 30))
    found = told(lambda: fill_row(480, rest=0, laps_below=laps, cutting=cutting))
    assert list(found) == ["end_lap_stagger"]
    assert len(fill_row(480, rest=0, laps_below=(), cutting=cutting).lengths) == 2


# ---- Planes with jogs ----------------------------------------------------------------------------


def step_plane() -> RoofPlane:
    """Give a plane with a second eave, 40 in up, to the right of the first."""
    return RoofPlane(
        name="step",
        corners=((0, 0), (100, 0), (100, 40), (180, 40), (180, 112), (0, 112)),
        edges=("eave", "rake", "eave", "rake", "ridge", "rake"),
        lengths=(100, 40, 80, 72, 180, 112),
        beyond=("",) * 6,
        points=(),
        pitch=0.5,
        area=100 * 112 + 80 * 72,
        plan_area=0.0,
    )


def test_rows_begin_anew_at_a_second_eave():
    """Rows from -1/4, 31 3/4, 63 3/4 and 95 3/4; the second is 180 in wide where the eave is."""
    laid = underlayment_on([step_plane()], way=FELT)
    assert [(row.lower, row.pieces[0].left, row.pieces[-1].right) for row in laid.rows] == [
        (-0.25, -2, 102),
        (31.75, -2, 182),
        (63.75, -2, 182),
        (95.75, -2, 182),
    ]
    # To 39 3/4 only the left part is there, 100 in wide: the row stands 1/4 in past the eave.
    assert laid.area_laid == 36 * 100 + (36 * 100 + 28 * 80) + 36 * 180 + 16.25 * 180
    eaves = [line for line in laid.fastener_lines if line.kind == "eave_edge"]
    assert [(line.left, line.right, line.lower, line.count) for line in eaves] == [
        (0, 100, -0.25, 10),
        (100, 180, 39.75, 8),
    ]


def test_an_ice_barrier_runs_along_both_eaves():
    """30 in up from each: one row from -1/4 and, since it ends at 35 3/4, one from 39 3/4."""
    laid = ice_barrier_on([step_plane()], reaches=[30], way=ICE)
    assert [(row.lower, row.upper) for row in laid.rows] == [(-0.25, 35.75), (39.75, 75.75)]
    assert laid.upper == 35.75
    # 40 in up: the second eave is reached, so that rows go on to 80.
    whole = ice_barrier_on([step_plane()], reaches=[40], way=ICE)
    assert [row.lower for row in whole.rows] == [-0.25, 31.75, 63.75]
    assert whole.upper == 99.75


def test_a_joint_goes_no_further_than_both_its_pieces():
    """At u = 96 the joint of the second row, from 48 to 96, is whole; at 100 a side is no joint."""
    laid = deck_on([step_plane()], way=DeckWay(support_spacing=20, panel_length=80))
    rows = [list(row) for _, row in groupby(laid.pieces, key=lambda piece: piece.row)]
    assert fsum(piece.area for piece in laid.pieces) == 100 * 112 + 80 * 72
    assert [min(piece.left for piece in row) for row in rows] == [0, 0, 0]
    assert [max(piece.right for piece in row) for row in rows] == [180, 180, 180]
    assert laid.long_joint_length == 2 * 180


def test_nails_recounted_piece_by_piece_on_a_hip_roof():
    """Both ends of a piece at joints, the supports between, and each row along its two hips."""
    planes = surfaces(Hip(length=400, width=240, pitch=9 / 12)).planes
    laid = deck_on(planes, way=DeckWay())
    nails = 0
    for piece in laid.pieces:
        shape = (
            Polygon(piece.corners)
            if piece.corners
            else box(piece.left, piece.lower, piece.right, piece.upper)
        )
        for k in range(20):
            inside = shape.intersection(LineString([(24 * k, 0), (24 * k, 150)])).length
            if inside > 1e-6:
                at_joint = min(abs(24 * k - piece.left), abs(24 * k - piece.right)) < 1e-6
                nails += ceil(inside / (6 if at_joint else 12) - 1e-9) + 1
    rows = {(one.plane, one.row) for one in laid.pieces}
    for _, row in rows:
        height = min(48.0, 150 - 48 * (row - 1))
        nails += 2 * (ceil(height * sqrt(1 + 0.8**2) / 6 - 1e-9) + 1)
    assert laid.nails == nails
    assert laid.end_joints > 0


@pytest.mark.parametrize(
    ("long", "spans", "stagger"),
    [(480, 1, 2), (425, 2, 1), (430, 2, 1), (475, 2, 1), (435, 3, 0), (460, 3, 0), (485, 3, 0)],
)
def test_pieces_at_rakes_are_long_enough_also_where_those_at_hips_are_not(long, spans, stagger):
    """A gable on the left and a hip on the right: front and back have one of each."""
    sides = (Side(pitch=9 / 12), Side(pitch=9 / 12), Side(pitch=9 / 12), Side(end="gable"))
    corners = ((0.0, 0.0), (long, 0.0), (long, 420.0), (0.0, 420.0))
    planes = surfaces(Footprint(corners=corners, sides=sides)).planes
    laid = deck_on(planes, way=DeckWay(least_spans=spans, joint_stagger=stagger))
    square = [piece for piece in laid.pieces if not piece.corners and piece.plane != "side 2"]
    assert min(piece.right - piece.left for piece in square) >= 24 * spans
    assert laid.shortest_piece < 24 * spans


def test_an_upright_crosses_a_stretch_in_as_many_parts_as_there_are():
    """A notch 20 in wide, from 10 to 20 in up: the line through it is cut in two."""
    notched = Region(
        [[(0, 0), (60, 0), (60, 30), (0, 30)], [(20, 10), (20, 20), (40, 20), (40, 10)]]
    )
    (whole,) = notched.between(0, 30)
    assert upright(whole, 30) == ((0, 10), (20, 30))
    assert upright(whole, 10) == ((0, 30),)
    assert upright(whole, 0) == upright(whole, 60) == ()  # along a side is not within


# ---- Valley lining -------------------------------------------------------------------------------


def test_a_valley_longer_than_a_roll_is_lapped_with_no_short_piece():
    """500 + 24 = 524 in of rolls of 432 lapped 6: 432 and 98. Of 430 + 24: 432 and 28.

    Of 410 + 24 = 434 the second would be 8 in: the first gives it 16.
    """
    cut = [[p.length for p in valley_lining((long,)).pieces] for long in (500, 430, 410, 408)]
    assert cut == [[432, 98], [432, 28], [416, 24], [432]]
    assert [piece.lap for piece in valley_lining((500,)).pieces] == [0, 6]


def test_the_longest_pieces_are_cut_first_each_from_the_rest_it_fits_best():
    """Of 432: 300 leaves 132, 224 leaves 208. The 132 in go to the piece of 124, 200 into 208."""
    lined = valley_lining((100, 276, 200, 176))
    assert [(piece.valley, piece.length, piece.roll) for piece in lined.pieces] == [
        (1, 124, 1),
        (2, 300, 1),
        (3, 224, 2),
        (4, 200, 2),
    ]
    assert (lined.rolls, lined.least_rolls, lined.left_over) == (2, 2, 864 - 848)
    assert (lined.valleys_length, lined.area_cut) == (752, 36 * 848)


def test_a_roof_without_valleys_takes_no_lining():
    none = valley_lining(())
    assert (none.pieces, none.rolls, none.least_rolls, none.left_over) == ((), 0, 0, 0)


LENGTHS = st.lists(st.integers(1, 16 * 900).map(lambda n: n / 16), max_size=12)


@given(lengths=LENGTHS, end_lap=st.sampled_from([0, 4, 6, 12]))
def test_pieces_make_up_their_valley_and_rolls_hold_them(lengths, end_lap):
    lined = valley_lining(tuple(lengths), end_lap=end_lap)
    for k, long in enumerate(lengths, 1):
        pieces = [piece for piece in lined.pieces if piece.valley == k]
        covered = fsum(piece.length - piece.lap for piece in pieces)
        assert covered == pytest.approx(18 + long + 6)
        assert len(pieces) == 1 or min(piece.length for piece in pieces) >= 24 - 1e-9
        assert (len(pieces) == 1) == (long + 24 <= 432)
    held = [fsum(p.length for p in lined.pieces if p.roll == n + 1) for n in range(lined.rolls)]
    assert max(held, default=0) <= 432 + 1e-6
    assert lined.left_over == pytest.approx(432 * lined.rolls - fsum(held))
    assert ceil(fsum(held) / 432 - 1e-9) == lined.least_rolls <= lined.rolls


@pytest.mark.parametrize(
    ("changed", "place"),
    [
        ({"lengths": (100.0, 0.0)}, "lengths.1"),
        ({"lengths": (nan,)}, "lengths.0"),
        ({"roll_width": 0}, "roll_width"),
        ({"roll_length": -1}, "roll_length"),
        ({"past_foot": -1}, "past_foot"),
        ({"over_top": inf}, "over_top"),
        ({"end_lap": nan}, "end_lap"),
        ({"end_lap": 24}, "least_piece"),
        ({"roll_length": 47}, "least_piece"),
    ],
)
def test_a_lining_that_cannot_be_is_refused_by_name(changed, place):
    assert list(told(lambda: valley_lining(**{"lengths": (100.0,), **changed}))) == [place]


def test_a_rectangle_is_a_plane_with_a_lone_ridge():
    assert rectangle(168, slope_length=112).beyond == ("", "", "", "")
