"""The planes of random roofs against a computational-geometry package and a mesh library.

Neither is shipped with this library or needed by it: each test is skipped where they are missing.
The straight skeleton is that of CGAL, by way of compas_cgal; areas and closedness are trimesh's.
"""

from __future__ import annotations

from math import dist
from typing import Any

import pytest
from shapely import Polygon, constrained_delaunay_triangles

from roofing_core.measures.faults import Refused
from roofing_core.roof.footprints import Footprint
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.whole_roof import surfaces
from tests.roof.plans import (
    Corners,
    hip_roof,
    mixed_roof,
    round_about,
    square_cornered,
    stepped_roof,
)

#: Part of a length or area.
ROUNDING = 1e-9

SEEDS = range(1000)


def counter_clockwise(corners: Corners) -> Corners:
    """Give corners in the order in which CGAL wants them."""
    return corners if Polygon(corners).exterior.is_ccw else corners[::-1]


def inner_nodes(found: Surfaces) -> set[tuple[float, float]]:
    return {(x, y) for line in found.lines for x, y, height in line.ends if height > 0}


def theirs(package: Any, corners: Corners) -> set[tuple[float, float]]:
    """Give the inner nodes of CGAL's skeleton."""
    graph = package.interior_straight_skeleton([[x, y, 0.0] for x, y in corners])
    inside: set[Any] = set()
    rim: set[Any] = set()
    for edge in graph.edges():
        (rim if graph.edge_attribute(edge, "boundary") else inside).update(edge)
    return {tuple(graph.node_attributes(node, "xy")) for node in inside - rim}


def farthest(points: set[tuple[float, float]], others: set[tuple[float, float]]) -> float:
    """Give the farthest that a point lies from the nearest of others."""
    return max(float(min(dist(point, other) for other in others)) for point in points)


def in_line(corners: Corners) -> bool:
    """Tell whether two sides of an outline with square corners lie on one line."""
    ahead = corners[1:] + corners[:1]
    along = [a[0] for a, b in zip(corners, ahead, strict=True) if a[0] == b[0]]
    across = [a[1] for a, b in zip(corners, ahead, strict=True) if a[1] == b[1]]
    return len(set(along)) < len(along) or len(set(across)) < len(across)


@pytest.fixture(scope="module")
def package() -> Any:
    return pytest.importorskip("compas_cgal.straight_skeleton_2")


@pytest.mark.parametrize("draw", [square_cornered, round_about], ids=lambda each: each.__name__)
def test_nodes_are_those_of_the_straight_skeleton(package, draw):
    worst, both_ways = 0.0, 0
    for seed in SEEDS:
        corners = counter_clockwise(draw(seed))
        extent = max(map(dist, corners, corners[1:] + corners[:1]))
        ours = inner_nodes(surfaces(Footprint(corners=corners, pitch=1.0)))
        cgal = theirs(package, corners)
        worst = max(worst, farthest(ours, cgal) / extent)
        # The plane over two sides in line is one for us and divided for CGAL, with more nodes.
        if not in_line(corners):
            both_ways += 1
            worst = max(worst, farthest(cgal, ours) / extent)
    print(f"{draw.__name__}: farthest {worst:.1e} of the longest side")  # seen with pytest -rP
    assert both_ways > 400
    assert worst < ROUNDING


def test_what_is_compared_can_differ(package):
    corners = counter_clockwise(square_cornered(2))
    (x, y), *rest = corners
    ours = inner_nodes(surfaces(Footprint(corners=((x + 1, y), *rest), pitch=1.0)))
    assert farthest(ours, theirs(package, corners)) > 0.1


def triangles_of(outline: Polygon, *, from_above: bool = True) -> list[Any]:
    """Divide a polygon into triangles without more corners, counter-clockwise as they are seen."""
    found = []
    for triangle in constrained_delaunay_triangles(outline).geoms:
        assert isinstance(triangle, Polygon)
        corners = list(triangle.exterior.coords)[:3]
        found.append(corners if triangle.exterior.is_ccw == from_above else corners[::-1])
    return found


def mesh_of(trimesh: Any, found: Surfaces, floor: Polygon | None = None) -> Any:
    """Give the planes of a roof, and a floor below them, as a mesh of triangles."""
    triangles = []
    for plane in found.planes:
        heights = {(x, y): height for x, y, height in plane.points}
        for corners in triangles_of(Polygon(list(heights))):
            triangles.append([(x, y, heights[x, y]) for x, y in corners])
    for corners in triangles_of(floor, from_above=False) if floor else []:
        triangles.append([(x, y, 0.0) for x, y in corners])
    points = [point for triangle in triangles for point in triangle]
    each = [range(k, k + 3) for k in range(0, len(points), 3)]
    return trimesh.Trimesh(points, [list(three) for three in each], process=False)


@pytest.mark.parametrize("draw", [hip_roof, mixed_roof, stepped_roof], ids=lambda f: f.__name__)
def test_areas_are_those_of_a_mesh(draw):
    trimesh = pytest.importorskip("trimesh")
    worst, compared = 0.0, 0
    for seed in SEEDS:
        try:
            found = surfaces(draw(seed))
        except Refused:
            continue
        compared += 1
        area = float(mesh_of(trimesh, found).area)
        worst = max(worst, abs(area - found.area) / area)
    print(f"{draw.__name__}: {compared} roofs, {worst:.1e} of the area")
    assert compared > 400
    assert worst < ROUNDING


def test_a_hip_roof_and_its_plan_enclose_a_space():
    trimesh = pytest.importorskip("trimesh")
    for seed in SEEDS[:300]:
        roof = hip_roof(seed)
        whole = mesh_of(trimesh, surfaces(roof), Polygon(roof.corners))
        whole.merge_vertices()
        assert whole.is_watertight
        assert whole.is_winding_consistent
        assert whole.volume > 0
        # What this asks can fail: without its floor the same roof is open.
        alone = mesh_of(trimesh, surfaces(roof))
        alone.merge_vertices()
        assert not alone.is_watertight
