"""Regions: what of a plane a layer covers, each edge moved outwards or inwards by its kind.

Shingles stand past the eave and the rakes and stop short of an open valley; openings are cut out.
How a region is cut into level bands is `slicing`.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from math import hypot

from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import EdgeKind, RoofPlane
from roofing_core.roof.slicing import Point, Region

#: How far an edge is moved outwards at its start and at its end.
Moved = tuple[Inches, Inches]

#: Sine of the angle under which two neighbouring edges are taken for one straight line.
_STRAIGHT = 1e-9

#: The place that the sides of holes have in a region: minus one less the place of the hole.
FIRST_HOLE = -1

Hole = tuple[Inches, Inches, Inches, Inches]


def region_of(
    plane: RoofPlane,
    *,
    past: Mapping[EdgeKind, Inches] | Sequence[Moved] | None = None,
    holes: Sequence[Hole] = (),
    square_at: Collection[int] = (),
) -> Region:
    """Give the region of a plane, each edge moved outwards by as much as its kind asks.

    Args:
        plane: The plane.
        past: How far each kind of edge is moved outwards, negative for inwards, 0 where a kind is
            not named; or for each edge how far at its start and at its end.
        holes: What is cut out, each as (left, right, lower, upper).
        square_at: Places of corners at which both moved edges end square, beside the corner, and
            do not go on to where they would meet.

    Returns:
        The region. Its sides have the places of the plane's edges, those of hole n from 0 the
        place -1 - n.

    Raises:
        Nothing.

    Source:
        Geometry: a moved corner is where its two moved edges meet, but for those that end square.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> front = surfaces(Hip(length=400, width=240, pitch=3 / 4)).planes[0]
    >>> region_of(front, past={"eave": 0.5}).lowest  # hips go on down past the eave
    -0.5
    """
    if isinstance(past, Mapping):
        past = [(past.get(kind, 0.0),) * 2 for kind in plane.edges]
    moved = past or [(0.0, 0.0)] * len(plane.edges)
    walked = list(_moved(plane.corners, moved, square_at))
    rings = [[point for point, _ in walked], *map(_clockwise, holes)]
    edges = [[edge for _, edge in walked]]
    return Region(rings, [*edges, *([FIRST_HOLE - n] * 4 for n in range(len(holes)))])


def _clockwise(hole: Hole) -> list[Point]:
    left, right, lower, upper = hole
    return [(left, lower), (left, upper), (right, upper), (right, lower)]


def _moved(
    corners: Sequence[Point], moved: Sequence[Moved], square_at: Collection[int]
) -> Iterator[tuple[Point, int]]:
    """Give the corners where moved edges meet, each with the place of the edge that leaves it."""
    lines = [
        _line(start, corners[(k + 1) % len(corners)], *moved[k]) for k, start in enumerate(corners)
    ]
    for k, line in enumerate(lines):
        before, last = lines[k - 1], (k - 1) % len(lines)
        if k in square_at:
            yield before[1], last
            yield corners[k], last
            yield line[0], k
        elif (met := _meeting(before, line)) is not None:
            yield met, k
        elif before[1] == line[0]:
            yield line[0], k
        else:
            yield before[1], last
            yield line[0], k


_Line = tuple[Point, Point]


def _line(start: Point, end: Point, at_start: float, at_end: float) -> _Line:
    """Move an edge to its right, which is outwards."""
    (au, av), (bu, bv) = start, end
    long = hypot(bu - au, bv - av)
    out_u, out_v = (bv - av) / long, (au - bu) / long
    return (au + out_u * at_start, av + out_v * at_start), (
        bu + out_u * at_end,
        bv + out_v * at_end,
    )


def _meeting(one: _Line, other: _Line) -> Point | None:
    """Give where two lines meet: exactly on a level or an upright one; None for a straight line."""
    (au, av), (bu, bv) = one
    (cu, cv), (du, dv) = other
    across = (bu - au) * (dv - cv) - (bv - av) * (du - cu)
    if abs(across) < _STRAIGHT * hypot(bu - au, bv - av) * hypot(du - cu, dv - cv):
        return None
    if (bu, bv) == (cu, cv):
        return bu, bv
    t = ((cu - au) * (dv - cv) - (cv - av) * (du - cu)) / across
    u, v = au + t * (bu - au), av + t * (bv - av)
    for (su, sv), (eu, ev) in (one, other):
        u = su if su == eu else u
        v = sv if sv == ev else v
    return u, v
