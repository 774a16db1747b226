"""Underlayment, ice barrier and deck on every plane of random roofs: nothing is left uncovered.

Hips, valleys, gables, breaks of pitch and eaves at several heights come with the random outlines.
"""

from __future__ import annotations

from itertools import groupby, pairwise
from math import fsum, hypot

import pytest
from shapely import LineString, Polygon, box, unary_union

from roofing_core import (
    DeckWay,
    Footprint,
    Refused,
    SheetWay,
    SingleSlope,
    UnderlaymentWay,
    deck,
    deck_on,
    ice_barrier,
    ice_barrier_on,
    ice_barrier_reaches,
    surfaces,
    underlayment,
    underlayment_on,
)
from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.roof.outlines import RoofPlane
from tests.laws.covering import Box, least_cover
from tests.roof.plans import hip_roof, mixed_roof, stepped_roof

DUST = 1e-6

#: Rolls so short that most rows go on from one to the next.
FELT = UnderlaymentWay(roll_width=36, roll_length=400, head_lap=4, past_metal=0.25)
ICE = SheetWay(roll_width=36, roll_length=400, head_lap=4, past_metal=0.25, end_lap=6)


def planes_of(roof: Footprint) -> list[RoofPlane]:
    """Give the planes of a random roof that take shingles; none where it does not close."""
    try:
        planes = surfaces(roof).planes
    except Refused:
        return []
    return [plane for plane in planes if plane.pitch >= 2 / 12]


ROOFS = [
    planes
    for planes in map(
        planes_of,
        [
            *(hip_roof(seed) for seed in range(25)),
            *(mixed_roof(seed) for seed in range(25)),
            *(stepped_roof(seed) for seed in range(40)),
        ],
    )
    if planes
]


@pytest.fixture(params=ROOFS, ids=lambda planes: f"{len(planes)} planes")
def planes(request: pytest.FixtureRequest) -> list[RoofPlane]:
    found: list[RoofPlane] = request.param
    return found


def boxes(rows: tuple[SheetRow, ...], plane: RoofPlane) -> list[Box]:
    """Give the rows of a plane as they are cut: one rectangle each."""
    return [
        (row.pieces[0].left, row.pieces[-1].right, row.lower, row.upper)
        for row in rows
        if row.plane == plane.name
    ]


def sides(plane: RoofPlane):
    """Give each edge of a plane: place, start, end."""
    ahead = (*plane.corners[1:], plane.corners[0])
    return zip(range(len(ahead)), plane.corners, ahead, strict=True)


def test_the_random_roofs_have_all_kinds_of_edges():
    kinds = {kind for planes in ROOFS for plane in planes for kind in plane.edges}
    assert kinds >= {"eave", "rake", "ridge", "hip", "valley", "pitch_break", "sidewall"}
    assert len(ROOFS) > 60


# ---- Underlayment --------------------------------------------------------------------------------


def test_every_point_of_every_plane_lies_under_as_many_sheets_as_its_pitch_asks(planes):
    laid = underlayment_on(planes, way=FELT)
    for plane, laps in zip(planes, laid.planes, strict=True):
        assert laps.layers == (2 if plane.pitch < 4 / 12 - 1e-9 else 1)
        assert least_cover(plane.corners, boxes(laid.rows, plane)) >= laps.layers


def test_sheets_run_over_hips_ridges_and_valleys(planes):
    """A point 5.99 in beyond the middle of each, square to it, lies under a row.

    Short ones are left out: where a rake goes on at the end of a hip, the lap is trimmed to it.
    """
    laid = underlayment_on(planes, way=FELT)
    for plane in planes:
        rows = boxes(laid.rows, plane)
        top = max(v for _, v in plane.corners)
        for k, (au, av), (bu, bv) in sides(plane):
            if plane.edges[k] not in {"hip", "valley", "ridge"} or not plane.beyond[k]:
                continue
            long = hypot(bu - au, bv - av)
            u = (au + bu) / 2 + (bv - av) / long * 5.99
            v = (av + bv) / 2 + (au - bu) / long * 5.99
            if long > 60 and (plane.edges[k] == "ridge" or v <= top):
                assert any(a <= u <= b and c <= v <= d for a, b, c, d in rows)


def test_rows_start_past_the_metal_of_an_eave_and_over_the_plane_below_a_break(planes):
    laid = underlayment_on(planes, way=FELT)
    for plane in planes:
        lowest = min(row.lower for row in laid.rows if row.plane == plane.name)
        first = {plane.edges[k] for k, start, end in sides(plane) if start[1] == end[1] == 0}
        assert lowest == pytest.approx(-4 if "pitch_break" in first else -0.25)


def test_end_laps_stand_apart_from_those_below_on_the_same_plane(planes):
    laid = underlayment_on(planes, way=FELT)
    assert all(row.number == k for k, row in enumerate(laid.rows, 1))
    for _, rows in groupby(laid.rows, key=lambda row: row.plane):
        bands = [list(band) for _, band in groupby(rows, key=lambda row: (row.kind, row.lower))]
        for below, above in pairwise(bands):
            laps = [at for row in below for at in row.end_laps]
            apart = [abs(at - lap) for row in above for at in row.end_laps for lap in laps]
            assert min(apart, default=72) >= 72 - DUST


def test_rolls_are_cut_across_all_planes_and_never_fewer_than_the_area_takes(planes):
    laid = underlayment_on(planes, way=FELT)
    by_length = 0.0
    for used in laid.roll_plan:
        own = [cut.length for cut in used.cuts if cut.taken_from == "length"]
        assert fsum([*own, used.offcut]) == pytest.approx(400)
        by_length += fsum(own)
        # What is ripped from beside a strip lies there once.
        assert fsum(cut.length * cut.width for cut in used.cuts) <= 36 * fsum(own) + DUST
    assert by_length <= 400 * laid.rolls - laid.left_over + DUST
    pieces = fsum(piece.length * row.width for row in laid.rows for piece in row.pieces)
    assert laid.area_cut == pytest.approx(pieces)
    asked = sum(plane.area * laps.layers for plane, laps in zip(planes, laid.planes, strict=True))
    assert asked <= laid.area_laid <= laid.area_cut
    assert laid.rolls * 400 * 36 >= laid.area_cut
    # One roof takes no more rolls than its planes one by one: a roll in hand is gone on with.
    apart = sum(underlayment_on([plane], way=FELT).rolls for plane in planes)
    assert laid.rolls <= apart


def test_lines_of_fasteners_lie_on_their_plane_as_far_as_it_reaches(planes):
    laid = underlayment_on(planes, way=FELT)
    for plane in planes:
        outline = Polygon(plane.corners)
        lines = [line for line in laid.fastener_lines if line.plane == plane.name]
        assert lines
        for line in lines:
            assert line.length == pytest.approx(
                hypot(line.right - line.left, line.upper - line.lower)
            )
            drawn = LineString([(line.left, line.lower), (line.right, line.upper)])
            # What lies along an eave or a break stands past it.
            assert outline.buffer(DUST if line.kind == "field" else 4 + DUST).contains(drawn)
        for v, level in groupby(
            sorted((one for one in lines if one.kind == "field"), key=lambda one: one.lower),
            key=lambda one: one.lower,
        ):
            across = outline.intersection(LineString([(-1e4, v), (1e4, v)])).length
            assert fsum(one.length for one in level) == pytest.approx(across, abs=DUST)
    eaves = [
        plane.lengths[k] for plane in planes for k, kind in enumerate(plane.edges) if kind == "eave"
    ]
    assert laid.eave_edge_length == pytest.approx(fsum(eaves))


# ---- Ice barrier ---------------------------------------------------------------------------------


def test_ice_barrier_and_underlayment_together_leave_nothing_bare(planes):
    reaches = ice_barrier_reaches(planes, eave_overhang=12)
    ice = ice_barrier_on(planes, reaches=reaches, way=ICE)
    tops = [one.upper for one in ice.planes]
    felt = underlayment_on(planes, way=FELT, ice_barrier_tops=tops)
    for plane, reach, top in zip(planes, reaches, tops, strict=True):
        barrier = boxes(ice.rows, plane)
        high = max(v for _, v in plane.corners)
        assert bool(barrier) == bool(reach)
        kind = "eave" if "eave" in plane.edges else "pitch_break"
        starts = [start[1] for k, start, end in sides(plane) if plane.edges[k] == kind]
        for v in [v for v in starts if reach and v < high - DUST]:
            assert least_cover(plane.corners, barrier, above=v, below=v + reach) >= 1
        layers = 2 if plane.pitch < 4 / 12 - 1e-9 else 1
        both = [*barrier, *boxes(felt.rows, plane)]
        assert least_cover(plane.corners, both) >= 1
        if top < high - DUST:
            over = boxes(felt.rows, plane)
            assert least_cover(plane.corners, over, above=max(top, 0)) >= layers


def test_only_eaves_and_what_lies_close_above_them_take_an_ice_barrier(planes):
    reaches = ice_barrier_reaches(planes, eave_overhang=12)
    for plane, reach in zip(planes, reaches, strict=True):
        if "eave" in plane.edges:
            assert reach >= 36 * (1 + plane.pitch**2) ** 0.5 - DUST
        elif "pitch_break" not in plane.edges:
            assert reach == 0


# ---- Deck ----------------------------------------------------------------------------------------


def test_panels_tile_every_plane_with_joints_on_supports_and_apart(planes):
    laid = deck_on(planes, way=DeckWay())
    for plane in planes:
        pieces = [piece for piece in laid.pieces if piece.plane == plane.name]
        parts = [
            Polygon(one.corners) if one.corners else box(one.left, one.lower, one.right, one.upper)
            for one in pieces
        ]
        for one, part in zip(pieces, parts, strict=True):
            assert part.area == pytest.approx(one.area)
            assert part.bounds == pytest.approx((one.left, one.lower, one.right, one.upper))
            assert one.right - one.left <= 96 + DUST
            assert one.upper - one.lower <= 48 + DUST
        assert fsum(part.area for part in parts) == pytest.approx(plane.area)
        assert unary_union(parts).area == pytest.approx(plane.area)
        joints: dict[int, set[float]] = {one.row: set() for one in pieces}
        for one, part in zip(pieces, parts, strict=True):
            for other, beside in zip(pieces, parts, strict=True):
                shared = part.intersection(beside)
                if one.row == other.row and one is not other and shared.length > DUST:
                    joints[one.row].add(round(shared.bounds[0], 6))
                    assert shared.bounds[0] == pytest.approx(shared.bounds[2])
        assert all(abs(at / 24 - round(at / 24)) < DUST for row in joints.values() for at in row)
        for row, row_joints in joints.items():
            for at in joints.get(row + 1, set()):
                assert all(abs(at - joint) >= 48 - DUST for joint in row_joints)
    assert laid.area == pytest.approx(sum(plane.area for plane in planes))


def test_panels_are_bounded_and_hold_what_is_cut_from_them(planes):
    laid = deck_on(planes, way=DeckWay())
    assert laid.panels_by_area <= laid.least_panels <= laid.panels <= len(laid.pieces)
    assert {piece.panel for piece in laid.pieces} == set(range(1, laid.panels + 1))
    held = dict.fromkeys(range(1, laid.panels + 1), 0.0)
    for piece in laid.pieces:
        held[piece.panel] += piece.area
    assert max(held.values()) <= 96 * 48 + DUST
    assert laid.left_over == pytest.approx(96 * 48 * laid.panels - laid.area)


def test_tape_covers_the_joints_that_two_pieces_share(planes):
    """Each joint is an edge of two pieces, and the outline is an edge of one."""
    laid = deck_on(planes, way=DeckWay())
    around = fsum(
        (
            Polygon(one.corners) if one.corners else box(one.left, one.lower, one.right, one.upper)
        ).length
        for one in laid.pieces
    )
    outlines = fsum(Polygon(plane.corners).length for plane in planes)
    assert (around - outlines) / 2 == pytest.approx(laid.tape_length)


# ---- One rectangle is one plane ------------------------------------------------------------------


@pytest.mark.parametrize("pitch", [3 / 12, 6 / 12])
@pytest.mark.parametrize(("eave", "slope"), [(168, 112), (900, 260), (61.3, 400.7)])
def test_a_single_slope_is_a_roof_of_one_plane(eave, slope, pitch):
    planes = surfaces(SingleSlope(eave_length=eave, slope_length=slope, pitch=pitch)).planes
    assert deck_on(planes, way=DeckWay()) == deck(eave, slope_length=slope)
    felt = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    whole = underlayment(eave, slope_length=slope, pitch=pitch)
    assert underlayment_on(planes, way=felt) == whole
    ice = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25, end_lap=6)
    barrier = ice_barrier(eave, slope_length=slope, reach=40)
    assert ice_barrier_on(planes, reaches=[40], way=ice) == barrier
