"""What holds for the planes over any outline, on some thousands of random ones, and a few by hand.

The roofs are drawn in `plans`. Heights are recomputed here from the outline alone, areas in plan
by shapely.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from math import cos, dist, hypot, sin, sqrt
from random import Random

import pytest
from shapely import Polygon, unary_union

from roofing_core.measures.faults import Refused
from roofing_core.roof.covering import planes_over, uncovered_fault
from roofing_core.roof.footprints import Deck, Footprint, Side, deck_outline
from roofing_core.roof.outlines import RoofPlane, Surfaces
from roofing_core.roof.skeleton import skeleton
from roofing_core.roof.whole_roof import surfaces
from tests.roof.plans import (
    convex,
    hip_roof,
    mixed_roof,
    round_about,
    stepped_roof,
)

#: Part of a length or area.
ROUNDING = 1e-9

HIP_ROOFS = range(1200)
MIXED_ROOFS = range(1500)
STEPPED_ROOFS = range(600)
OTHER_ROOFS = range(600)


def build(roof: Footprint) -> Surfaces | None:
    """Give the surfaces of a roof; none where its gables, heights or breaks do not go together."""
    try:
        return surfaces(roof)
    except Refused as refusal:
        if {fault.at[0] for fault in refusal.faults} == {"sides"}:
            return None
        raise


def built(roofs: list[Footprint]) -> list[tuple[Footprint, Surfaces]]:
    """Give the roofs that can be built, with their surfaces."""
    return [(roof, found) for roof in roofs if (found := build(roof)) is not None]


@cache
def hip_roofs() -> list[tuple[Footprint, Surfaces]]:
    return built([hip_roof(seed) for seed in HIP_ROOFS])


@cache
def mixed_roofs() -> list[tuple[Footprint, Surfaces]]:
    return built([mixed_roof(seed) for seed in MIXED_ROOFS])


@cache
def stepped_roofs() -> list[tuple[Footprint, Surfaces]]:
    return built([stepped_roof(seed) for seed in STEPPED_ROOFS])


@cache
def other_roofs() -> list[tuple[Footprint, Surfaces]]:
    roofs = []
    for seed in OTHER_ROOFS:
        corners = (round_about if seed % 2 else convex)(seed)
        pitches = [Random(seed + k).uniform(0.2, 1.5) for k in range(len(corners))]
        sides = tuple(Side(pitch=pitch) for pitch in pitches) if seed % 3 else ()
        roofs.append(Footprint(corners=corners, pitch=0.5, sides=sides))
    return built(roofs)


KINDS = pytest.mark.parametrize(
    "roofs", [hip_roofs, mixed_roofs, stepped_roofs, other_roofs], ids=lambda each: each.__name__
)


def plan_of(plane: RoofPlane) -> Polygon:
    return Polygon([(x, y) for x, y, _ in plane.points])


def height_over(deck: Deck, side: int, x: float, y: float, level: int = 0) -> float:
    """Give the height of the plane of a side over a point, from the outline alone."""
    (ax, ay), (bx, by) = deck.corners[side], deck.corners[(side + 1) % len(deck.corners)]
    run = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / hypot(bx - ax, by - ay)
    height, pitch = deck.sides[side].rises[0]
    if level:
        upper, upper_pitch = deck.sides[side].rises[1]
        return upper + upper_pitch * (run - (upper - height) / pitch)
    return height + pitch * run


def sides_of(plane: RoofPlane, deck: Deck) -> list[int]:
    names = plane.name.partition(" #")[0].removesuffix(" upper").split(" and ")
    return [[side.name for side in deck.sides].index(name) for name in names]


def test_there_are_enough_of_each():
    assert len(hip_roofs()) == len(HIP_ROOFS)
    assert len(mixed_roofs()) > 0.95 * len(MIXED_ROOFS)
    assert len(stepped_roofs()) > 0.85 * len(STEPPED_ROOFS)
    assert len(other_roofs()) == len(OTHER_ROOFS)
    corners = Counter(len(roof.corners) for roof, _ in hip_roofs())
    assert min(corners) == 4
    assert max(corners) == 16
    kinds = Counter(line.kind for _, found in mixed_roofs() for line in found.lines)
    assert set(kinds) >= {"eave", "rake", "ridge", "hip", "valley", "sidewall"}
    assert any(line.kind == "pitch_break" for _, found in stepped_roofs() for line in found.lines)
    together = [p for _, found in hip_roofs() for p in found.planes if " and " in p.name]
    assert len(together) > 50


@KINDS
def test_the_planes_cover_the_plan_once(roofs):
    for roof, found in roofs():
        plan = Polygon(roof.corners).area
        level = sum(plane.area / sqrt(1 + plane.pitch**2) for plane in found.planes)
        assert level == pytest.approx(plan, rel=ROUNDING)
        assert found.plan_area == pytest.approx(plan, rel=ROUNDING)
        # Nothing is covered twice, since together they are no smaller than their sum.
        assert unary_union([plan_of(p) for p in found.planes]).area == pytest.approx(plan, rel=1e-8)


@KINDS
def test_each_plane_is_a_simple_polygon_with_the_area_it_says(roofs):
    for _, found in roofs():
        for plane in found.planes:
            outline = Polygon(plane.corners)
            assert outline.is_valid
            assert outline.exterior.is_ccw
            assert outline.area == pytest.approx(plane.area, rel=ROUNDING)
            assert plan_of(plane).area == pytest.approx(plane.plan_area, rel=ROUNDING)
        assert found.area == pytest.approx(sum(plane.area for plane in found.planes))


@KINDS
def test_a_plane_lies_where_its_side_and_pitch_put_it(roofs):
    for roof, found in roofs():
        deck = deck_outline(roof)
        tall = sqrt(found.plan_area) * max(1, *(plane.pitch for plane in found.planes))
        for plane in found.planes:
            level = int(" upper" in plane.name)
            sides = sides_of(plane, deck)
            if level:  # of planes that have run into one, one pitch break holds for all
                foot = pytest.approx(plane.points[0][2])
                sides = [side for side in sides if deck.sides[side].rises[level:][:1]
                         and deck.sides[side].rises[level][0] == foot]  # fmt: skip
                assert sides
            for side in sides:
                assert plane.pitch == deck.sides[side].rises[level][1]
                for x, y, height in plane.points:
                    on_plane = height_over(deck, side, x, y, level)
                    assert height == pytest.approx(on_plane, abs=ROUNDING * tall)


@KINDS
def test_plane_coordinates_are_those_of_space(roofs):
    for _, found in roofs():
        for plane in found.planes:
            assert plane.corners[0] == (0, 0)
            assert plane.edges[0] in {"eave", "pitch_break"}
            rise = plane.pitch / sqrt(1 + plane.pitch**2)
            for (_, v), (*_, height) in zip(plane.corners, plane.points, strict=True):
                assert height - plane.points[0][2] == pytest.approx(rise * v, abs=1e-7)
                assert v >= -1e-7
            for k, long in enumerate(plane.lengths):
                after = (k + 1) % len(plane.corners)
                seen = dist(plane.corners[k], plane.corners[after])
                assert seen == pytest.approx(long, rel=ROUNDING, abs=1e-9)
                assert dist(plane.points[k], plane.points[after]) == long


@KINDS
def test_the_surface_is_closed_and_both_planes_see_a_line_alike(roofs):
    for _, found in roofs():
        lines = {frozenset(line.ends): line for line in found.lines}
        assert len(lines) == len(found.lines)
        owners: dict[frozenset, list[str]] = {}
        for plane in found.planes:
            for k, kind in enumerate(plane.edges):
                after = (k + 1) % len(plane.points)
                ends = frozenset((plane.points[k], plane.points[after]))
                owners.setdefault(ends, []).append(plane.name)
                line = lines[ends]
                assert line.kind == kind
                seen = dist(plane.corners[k], plane.corners[after])
                assert seen == pytest.approx(line.length, rel=ROUNDING, abs=1e-9)
                assert plane.name in line.planes
                assert plane.beyond[k] in {"", *line.planes} - {plane.name}
                assert bool(plane.beyond[k]) == (len(line.planes) == 2)
        for ends, line in lines.items():
            assert sorted(owners[ends]) == sorted(line.planes)
            if line.kind in {"hip", "valley"}:
                assert len(line.planes) == 2
            elif line.kind in {"eave", "rake", "sidewall"}:
                assert len(line.planes) == 1


@KINDS
def test_edges_lie_as_their_kinds_do(roofs):
    for roof, found in roofs():
        square = all(
            ax == bx or ay == by
            for (ax, ay), (bx, by) in zip(
                roof.corners, roof.corners[1:] + roof.corners[:1], strict=True
            )
        )
        for plane in found.planes:
            for k, kind in enumerate(plane.edges):
                (au, av), (bu, bv) = plane.corners[k], plane.corners[(k + 1) % len(plane.corners)]
                if kind in {"eave", "ridge", "pitch_break"}:
                    assert av == pytest.approx(bv, abs=1e-7)
                    assert kind == "pitch_break" or (bu > au) == (kind == "eave")
                elif square:
                    assert abs(bv - av) > 1e-6
                    # Planes narrow upwards to a hip and widen to a valley.
                    assert kind not in {"hip", "valley"} or (bu < au) == (kind == "hip")


@KINDS
def test_every_eave_is_whole_on_the_planes_that_touch_it(roofs):
    for roof, found in roofs():
        deck = deck_outline(roof)
        eaves = [line for line in found.lines if line.kind == "eave"]
        for k, side in enumerate(deck.sides):
            if not side.rises or side.rises[0][0] > 0:
                continue  # the lower planes beside a higher eave may run along its wall
            ends = {(*deck.corners[k], 0.0), (*deck.corners[(k + 1) % len(deck.corners)], 0.0)}
            (eave,) = (line for line in eaves if set(line.ends) == ends)
            (name,) = eave.planes
            (plane,) = (plane for plane in found.planes if plane.name == name)
            assert k in sides_of(plane, deck)


def test_a_roof_over_outside_corners_is_the_lowest_of_its_planes():
    # Over a convex outline there is no need of any construction: nothing can lie above a plane.
    for seed in OTHER_ROOFS:
        chance = Random(seed)
        corners = convex(seed)
        sides = tuple(Side(pitch=chance.uniform(0.2, 1.5)) for _ in corners)
        roof = Footprint(corners=corners, sides=sides)
        found, deck = surfaces(roof), deck_outline(roof)
        assert {plane.name for plane in found.planes} <= {side.name for side in deck.sides}
        for plane in found.planes:
            (side,) = sides_of(plane, deck)
            for x, y, height in plane.points:
                lowest = min(height_over(deck, k, x, y) for k in range(len(corners)))
                assert height == pytest.approx(lowest, abs=1e-7)
            inside = plan_of(plane).representative_point()
            heights = [height_over(deck, k, inside.x, inside.y) for k in range(len(corners))]
            assert heights.index(min(heights)) == side


def test_a_hip_roof_is_as_large_as_a_gable_roof_of_its_plan_and_pitch():
    compared = 0
    for (roof, hipped), (other, gabled) in zip(hip_roofs(), _gabled_hip_roofs(), strict=True):
        assert roof.corners == other.corners
        if gabled is not None:
            compared += 1
            assert hipped.area == pytest.approx(gabled.area, rel=ROUNDING)
    assert compared > 1000


def _gabled_hip_roofs() -> list[tuple[Footprint, Surfaces | None]]:
    """Give the hip roofs again, with a gable on every third side."""
    found: list[tuple[Footprint, Surfaces | None]] = []
    for roof, _ in hip_roofs():
        ends = [Side(end="gable") if k % 3 == 1 else Side() for k in range(len(roof.corners))]
        gabled = Footprint(corners=roof.corners, pitch=roof.pitch, sides=tuple(ends))
        found.append((gabled, build(gabled)))
    return found


def turned(roof: Footprint, angle: float, start: int) -> Footprint:
    """Give a roof turned in plan, moved, and counted from another corner."""
    corners = [
        (x * cos(angle) - y * sin(angle) + 1000, x * sin(angle) + y * cos(angle) - 500)
        for x, y in roof.corners
    ]
    sides = roof.sides and roof.sides[start:] + roof.sides[:start]
    return Footprint(
        corners=tuple(corners[start:] + corners[:start]), pitch=roof.pitch, sides=sides
    )


@pytest.mark.parametrize("roofs", [hip_roofs, mixed_roofs], ids=lambda each: each.__name__)
def test_a_roof_is_the_same_however_it_is_turned_and_counted(roofs):
    # Turned by an odd angle, sides in line are so only to float dust.
    for number, (roof, found) in enumerate(roofs()[:400]):
        other = surfaces(turned(roof, 0.1 + number, number % len(roof.corners)))
        assert other.area == pytest.approx(found.area, rel=ROUNDING)
        assert sorted(line.kind for line in other.lines) == sorted(
            each.kind for each in found.lines
        )
        for kind in ("ridge", "hip", "valley", "rake"):
            lengths = [
                sum(line.length for line in each.lines if line.kind == kind)
                for each in (found, other)
            ]
            assert lengths[1] == pytest.approx(lengths[0], rel=1e-7, abs=1e-5)


def test_corners_may_run_either_way():
    for roof, found in mixed_roofs()[:300]:
        # The side that leaves corner k ends, walked back, in the corner before it.
        sides = tuple(reversed(roof.sides[:-1])) + roof.sides[-1:]
        back = Footprint(corners=tuple(reversed(roof.corners)), sides=sides)
        other = surfaces(back)
        assert other.area == pytest.approx(found.area, rel=ROUNDING)
        eaves = [
            {frozenset(line.ends) for line in each.lines if line.kind == "eave"}
            for each in (found, other)
        ]
        assert eaves[0] == eaves[1]


def hair_off(roof: Footprint, seed: int, off: float) -> Footprint:
    """Give a roof with each corner a little off where it was."""
    chance = Random(seed)
    return replace(
        roof,
        corners=tuple(
            (x + chance.uniform(-off, off), y + chance.uniform(-off, off)) for x, y in roof.corners
        ),
    )


@pytest.mark.parametrize("off", [1e-12, 1e-10, 1e-9, 1e-8, 1e-7, 1e-6, 1e-4, 1e-2])
def test_corners_a_hair_off_a_line_give_the_same_roof(off):
    # The worst that is asked of tolerances: every corner a little off the grid, by any little.
    for seed in range(1, 400, 2):
        roof = hip_roof(seed)
        moved = hair_off(roof, seed, off)
        exact, found = surfaces(roof), surfaces(moved)
        assert found.area == pytest.approx(exact.area, rel=ROUNDING + off)
        assert found.plan_area == pytest.approx(Polygon(moved.corners).area, rel=ROUNDING)


@pytest.mark.parametrize("off", [1e-9, 1e-8, 1e-7, 1e-6])
def test_mixed_roofs_a_hair_off_a_line_are_whole_or_refused(off):
    # The last seeds are those among some thousands that ask for most.
    refused = 0
    for seed in (*range(1, 400, 2), 541, 1035, 1501, 2821):
        roof = hair_off(mixed_roof(seed), seed, off)
        try:
            found = surfaces(roof)
        except Refused as refusal:
            refused += refusal.faults[0].at == ("corners",)
            continue
        plan = Polygon(roof.corners).area
        whole = unary_union([plan_of(plane) for plane in found.planes]).area
        assert whole == pytest.approx(plan, rel=1e-8)
        for plane in found.planes:
            beside = list(zip(plane.edges, plane.beyond, strict=True))
            for one, other in zip(beside, beside[1:] + beside[:1], strict=True):
                assert one != other or not one[1]  # one line, one edge
    assert refused == (1 if off == 1e-8 else 0)


def nodes_of(corners, **more) -> set[tuple[float, float]]:
    """Give where the lines of a roof at 12:12 meet, in plan, without the corners of the deck."""
    found = surfaces(Footprint(corners=corners, pitch=1.0, **more))
    return {
        (round(x / 12, 9), round(y / 12, 9))
        for line in found.lines
        for x, y, height in line.ends
        if height > 0
    }


def feet(*corners: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    return tuple((12.0 * x, 12.0 * y) for x, y in corners)


L_SHAPE = feet((0, 0), (12, 0), (12, 6), (4, 6), (4, 10), (0, 10))
L_EQUAL = feet((0, 0), (12, 0), (12, 4), (4, 4), (4, 10), (0, 10))
T_SHAPE = feet((0, 0), (12, 0), (12, 6), (8, 6), (8, 10), (4, 10), (4, 6), (0, 6))
T_EQUAL = feet((0, 0), (12, 0), (12, 4), (8, 4), (8, 8), (4, 8), (4, 4), (0, 4))
CROSS = feet(
    (4, 0), (8, 0), (8, 4), (12, 4), (12, 8), (8, 8),
    (8, 12), (4, 12), (4, 8), (0, 8), (0, 4), (4, 4),
)  # fmt: skip
U_SHAPE = feet((0, 0), (12, 0), (12, 10), (8, 10), (8, 4), (4, 4), (4, 10), (0, 10))

# Worked by hand. Where two wings of one width meet, each ridge runs on to the middle.
BY_HAND = {
    "square": (feet((0, 0), (10, 0), (10, 10), (0, 10)), {(5, 5)}),
    "L": (L_SHAPE, {(2, 8), (2, 4), (3, 3), (9, 3)}),
    "L of one width": (L_EQUAL, {(2, 2), (10, 2), (2, 8)}),
    # Under the back slope, which lies on both sides of the wing, the valleys end at (6, 4).
    "T": (T_SHAPE, {(6, 8), (6, 4), (3, 3), (9, 3)}),
    "T of one width": (T_EQUAL, {(6, 6), (6, 2), (2, 2), (10, 2)}),
    "cross": (CROSS, {(6, 6), (6, 2), (10, 6), (6, 10), (2, 6)}),
    "U": (U_SHAPE, {(2, 2), (10, 2), (2, 8), (10, 8)}),
}


@pytest.mark.parametrize(("corners", "nodes"), BY_HAND.values(), ids=BY_HAND.keys())
def test_nodes_worked_out_by_hand(corners, nodes):
    assert nodes_of(corners) == nodes


def test_planes_in_one_plane_are_one_plane():
    # Both back eaves of the T belong to one slope, from hip to hip and round the wing's valleys.
    found = surfaces(Footprint(corners=T_SHAPE, pitch=1.0))
    assert len(found.planes) == 7
    (back,) = (plane for plane in found.planes if plane.name == "side 3 and side 7")
    assert Counter(back.edges) == {"eave": 2, "valley": 2, "hip": 2, "ridge": 1}
    # With the wing as wide as the house its slopes only touch in a point, and stay two.
    assert len(surfaces(Footprint(corners=T_EQUAL, pitch=1.0)).planes) == 8


def test_gables_by_hand():
    # The L with gables at both wing ends: the ridges run out to them.
    ends = tuple(Side(end="gable") if k in {1, 4} else Side() for k in range(6))
    assert nodes_of(L_SHAPE, sides=ends) == {(2, 10), (2, 4), (3, 3), (12, 3)}
    arms = tuple(Side(end="gable") if k in {0, 3, 6, 9} else Side() for k in range(12))
    assert nodes_of(CROSS, sides=arms) == {(6, 6), (6, 0), (12, 6), (6, 12), (0, 6)}


def test_planes_are_listed_in_the_order_of_the_sides_as_given():
    given = tuple(reversed(L_SHAPE))  # clockwise
    found = surfaces(Footprint(corners=given, pitch=1.0))
    assert [plane.name for plane in found.planes] == [f"side {k}" for k in range(1, 7)]
    for k, plane in enumerate(found.planes):
        ends = {(*given[k], 0.0), (*given[(k + 1) % 6], 0.0)}
        assert set(plane.points[:2]) == ends


def test_a_lower_wing_in_line_ends_at_a_wall():
    # A house 12 x 8 ft and a wing 4 x 6 ft in the middle of its gable: the wing's ridge, 3 ft up,
    # stops at the gable wall, which stands from there to the main ridge, 4 ft up.
    corners = feet((0, 0), (12, 0), (12, 1), (16, 1), (16, 7), (12, 7), (12, 8), (0, 8))
    ends = tuple(Side(end="gable") if k % 2 else Side() for k in range(8))
    found = surfaces(Footprint(corners=corners, pitch=1.0, sides=ends))
    ridges = [line.length / 12 for line in found.lines if line.kind == "ridge"]
    assert ridges == [12, 4]
    walls = [line for line in found.lines if line.kind == "sidewall"]
    assert [line.length / 12 for line in walls] == [pytest.approx(sqrt(18))] * 2
    assert [line.planes for line in walls] == [("side 3",), ("side 5",)]
    rakes = sorted(line.length / 12 for line in found.lines if line.kind == "rake")
    assert rakes == pytest.approx(2 * [sqrt(18)] + 4 * [sqrt(32)])


def test_pitches_change_where_they_are_told_to():
    # A mansard 20 ft square: 12 ft up over 4 ft of run, then 6 ft more up to the middle.
    sides = (Side(pitch=3.0, upper_pitch=1.0, break_run=48.0),) * 4
    found = surfaces(
        Footprint(corners=feet((0, 0), (20, 0), (20, 20), (0, 20)), sides=sides)
    )  # fmt: skip
    assert [plane.name for plane in found.planes][:2] == ["side 1", "side 1 upper"]
    breaks = [line for line in found.lines if line.kind == "pitch_break"]
    assert [line.length / 12 for line in breaks] == pytest.approx([12, 12, 12, 12])
    assert {height / 12 for line in breaks for *_, height in line.ends} == {12}
    assert max(height for plane in found.planes for *_, height in plane.points) == 18 * 12
    hips = sorted(line.length / 12 for line in found.lines if line.kind == "hip")
    assert hips == pytest.approx(4 * [sqrt(36 + 36 + 36)] + 4 * [sqrt(16 + 16 + 144)])


@pytest.mark.parametrize("breaks", [(27.0, 27.0), (27.0, 30.0), (30.0, 27.0), (27.0, None)])
def test_of_two_pitch_breaks_over_one_plane_the_lower_holds(breaks):
    # The T at 12:12. Its back eaves lie in line and share a plane from the wing's ridge, 24 in up,
    # to the main one, 36 in up; from 27 in up it is told to go on at 2:12. The end slopes are 27 in
    # in by then from either end of 12 ft: the break is 144 - 54 = 90 in long.
    sides = [Side() for _ in T_SHAPE]
    for place, run in zip((2, 6), breaks, strict=True):
        sides[place] = Side(upper_pitch=run and 1 / 6, break_run=run)
    found = surfaces(Footprint(corners=T_SHAPE, pitch=1.0, sides=tuple(sides)))
    (line,) = (line for line in found.lines if line.kind == "pitch_break")
    assert line.planes == ("side 3 and side 7", "side 3 and side 7 upper")
    assert line.length == pytest.approx(90)
    assert {height for *_, height in line.ends} == {27}


def test_the_lower_of_two_slopes_in_line_goes_on_over_the_steeper():
    # A house 12 ft wide, its back in two: a gabled wing 4 ft wide between eaves of two pitches that
    # the wing's ridge meets at unlike heights. All that is asked here is that it closes.
    sides = [Side() for _ in T_SHAPE]
    sides[2], sides[4], sides[6] = Side(pitch=0.5), Side(end="gable"), Side(pitch=2.0)
    found = surfaces(Footprint(corners=T_SHAPE, pitch=1.0, sides=tuple(sides)))
    assert found.plan_area == pytest.approx(Polygon(T_SHAPE).area)
    # All sides of a cross but one stand still: its slope runs out of its arm and on over the rest.
    walls = (Side(pitch=1.0), *[Side(end="gable")] * 11)
    found = surfaces(Footprint(corners=CROSS, sides=walls))
    assert {plane.name.partition(" #")[0] for plane in found.planes} == {"side 1"}
    assert found.plan_area == pytest.approx(Polygon(CROSS).area)


def test_what_nothing_closes_over_is_said():
    # One eave, on the inner side of the L's long wing: its slope runs down over that wing alone,
    # and the four sides round the other stand still for ever.
    alone = skeleton(L_SHAPE, [((0.0, 1.0),) if k == 2 else () for k in range(6)])
    assert alone.open_sides == (0, 3, 4, 5)
    assert alone.reached == (0, 0, 1, 0, 0, 0)
    assert skeleton(L_SHAPE, [((0.0, 1.0),)] * 6).open_sides == ()
    sides = tuple(Side() if k == 2 else Side(end="gable") for k in range(6))
    with pytest.raises(Refused) as refused:
        surfaces(Footprint(corners=L_SHAPE, pitch=1.0, sides=sides))
    assert str(refused.value) == (
        "sides came as gables round a part of the plan: "
        "one more eave: nothing closes over the plan between sides 1, 4, 5, 6"
    )


def test_planes_that_do_not_cover_the_plan_are_found_out():
    deck = deck_outline(Footprint(corners=L_SHAPE, pitch=1.0))
    drawn = skeleton(deck.corners, [side.rises for side in deck.sides])
    assert uncovered_fault(deck, planes_over(deck, drawn)) is None
    # One joint short, the two planes beside it have no outline, and the rest leaves a gap.
    broken = replace(drawn, joints=drawn.joints[:-1])
    fault = uncovered_fault(deck, planes_over(deck, broken))
    assert fault is not None
    assert fault.at == ("corners",)
    assert fault.wanted.written() == "corners that lie on a line exactly or clearly not"


def test_an_eave_that_the_roof_has_closed_over_is_refused():
    # 10 ft square at 12:12: the three low slopes meet 5 ft up, so an eave 6 ft up has no plane.
    def four(high: float) -> Footprint:
        sides = (Side(), Side(), Side(eave_height=high), Side())
        return Footprint(corners=feet((0, 0), (10, 0), (10, 10), (0, 10)), pitch=1.0, sides=sides)

    found = surfaces(four(48.0))
    (high,) = (line for line in found.lines if line.kind == "eave" and line.planes == ("side 3",))
    assert high.length == pytest.approx(2 * 12)  # the side slopes have taken 4 ft at either end
    assert {height for *_, height in high.ends} == {48}
    with pytest.raises(Refused) as refused:
        surfaces(four(72.0))
    assert str(refused.value) == (
        "sides.2.eave_height came as 6 ft: "
        "less: the other planes close over the plan below this eave"
    )


def test_an_eave_that_a_flatter_slope_has_reached_is_refused():
    # The right slope at 6:12 has run 8 ft when it is 4 ft up: there it lies in line with side 5,
    # whose steeper slope would start at that very height. The flatter one goes on over both.
    corners = feet((64, 32), (64, 8), (20, 8), (20, 44), (56, 44), (56, 32))
    sides = (
        Side(pitch=0.5),
        Side(pitch=0.5, eave_height=24.0),
        Side(pitch=2 / 3, eave_height=48.0),
        Side(end="gable"),
        Side(pitch=1.0, eave_height=48.0),
        Side(pitch=0.5),
    )
    with pytest.raises(Refused) as refused:
        surfaces(Footprint(corners=corners, sides=sides))
    assert [fault.at for fault in refused.value.faults] == [("sides", 4, "eave_height")]
    # A hair lower, it has its own plane.
    lower = replace(sides[4], eave_height=47.0)
    found = surfaces(Footprint(corners=corners, sides=(*sides[:4], lower, sides[5])))
    assert "side 5" in [plane.name for plane in found.planes]
