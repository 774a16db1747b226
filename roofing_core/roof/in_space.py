"""From surfaces in space to planes as somebody would have measured them, with a kind on each edge.

The kinds follow from how the surfaces lie: level or not, above or below, alone, against a wall, or
along which other surface. Each way of reading a drawing ends here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import dist

from roofing_core.measures.faults import Fault, Refused, each_made, negative, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches
from roofing_core.roof.facets import Facet, FlatFacet, Segment, flat_facet
from roofing_core.roof.given_planes import (
    MOST_PLANES,
    GivenPlane,
    GivenPlanes,
    given_surfaces,
)
from roofing_core.roof.meetings import MEET_WITHIN, along, meetings
from roofing_core.roof.outlines import EdgeKind
from roofing_core.roof.polygons import Point

#: The most sides of all surfaces together, and the most lines of walls. A limit of this library: it
#: keeps the answer within a few seconds.
MOST_SIDES = 1_000

#: Two surfaces whose slopes differ by less than this along a line are one plane: 0.06 in 12.
ONE_PLANE = 0.005

#: Digits of an inch after the point.
DIGITS = 9

#: What lies along a part of a side, where it is no other surface.
NOTHING, WALL = -1, -2


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a side, and what lies along it."""

    side: int
    start: Inches
    end: Inches
    other: int = NOTHING
    other_side: int = NOTHING


def planes_in_space(facets: Sequence[Facet], *, eave_overhang: Inches = 0.0) -> GivenPlanes:
    """Give the planes of a roof drawn surface by surface in space.

    A side along which another surface lies only in part is split there. A level side that nothing
    lies along is an eave below its plane and a ridge above it; any other is a rake. Against a
    wall it is a headwall or a sidewall. Where two surfaces meet in a level line, it is a ridge
    above both, a valley below both, and a pitch break between them; any other line is a hip where
    the roof bends down across it, and a valley where it bends up.

    Args:
        facets: The surfaces, in any order.
        eave_overhang: How far the deck reaches past the walls at the eaves, level.

    Returns:
        A roof that `given_surfaces` and a job take as it is; one plane per surface, in their
        order, each from the left end of its lowest eave or pitch break. Corners are given to a
        thousand-millionth of an inch, so that no float dust is handed on; an edge has the length
        that its own surface gives it.

    Raises:
        Refused: A surface is none of a roof, two lie in one plane or three along one line, a lower
            edge runs against a wall, or the planes would not be taken; names each by where it
            stands in the document.

    Source:
        Geometry. Tolerances and limits are this library's own: corners to 1/2 in off the plane,
        sides to 1 in off level, surfaces to 1 in apart where they meet.

    >>> roof = planes_in_space([
    ...     Facet(name="front", corners=((0, 0, 0), (96, 0, 0), (96, 48, 24), (0, 48, 24))),
    ...     Facet(name="back", corners=((60, 96, 0), (30, 96, 0), (30, 48, 24), (60, 48, 24)))])
    >>> roof.planes[0].edges  # the back slope meets a part of the top edge
    ('eave', 'rake', 'ridge', 'ridge', 'ridge', 'rake')
    >>> roof.planes[0].beyond
    ('', '', '', 'back', '', '')
    """
    refuse_if_any([negative("eave_overhang", eave_overhang)])
    _check_counts(facets)
    flat = each_made(_flat_at, facets)
    parts = _parts(facets, flat)
    planes = each_made(
        lambda place: _plane(place, facets, flat=flat, parts=parts), range(len(facets))
    )
    taken = _taken(planes, facets)
    return GivenPlanes(planes=taken, eave_overhang=eave_overhang)


def _check_counts(facets: Sequence[Facet]) -> None:
    count, sides = len(facets), sum(len(facet.corners) for facet in facets)
    if not 1 <= count <= MOST_PLANES:
        wanted = f"from 1 to {MOST_PLANES} surfaces"
        raise Refused(Fault((), f"{count} surfaces", say(wanted)))
    if sides > MOST_SIDES:
        raise Refused(Fault((), f"{sides} sides", say(f"at most {MOST_SIDES} sides in all")))


def _flat_at(facet: Facet) -> FlatFacet:
    try:
        return flat_facet(facet)
    except Refused as refused:
        raise refused.below(*facet.at) from None


def _parts(facets: Sequence[Facet], flat: Sequence[FlatFacet]) -> Mapping[int, list[_Part]]:
    """Give the parts of the sides of each surface along which something lies, in order."""
    parts: dict[int, list[_Part]] = {place: [] for place in range(len(flat))}
    for place, (facet, one) in enumerate(zip(facets, flat, strict=True)):
        parts[place] += _walled(one, facet.walls)
    met = meetings([one.points for one in flat])
    walled = {
        each.line
        for each in met
        for wall in parts[each.one]
        if wall.side == each.side and each.lies_over(wall.start, wall.end)
    }
    for each in met:
        if each.line not in walled:
            parts[each.one].append(
                _Part(each.side, each.start, each.end, each.other, each.other_side)
            )
    for found in parts.values():
        found.sort(key=lambda part: (part.side, part.start))
    return parts


def _walled(flat: FlatFacet, walls: Sequence[Segment]) -> Iterator[_Part]:
    """Give the parts of sides from which walls rise, those that follow on as one."""
    points = flat.points
    for side, ends in enumerate(zip(points, [*points[1:], points[0]], strict=True)):
        each = (along(ends, wall, either_way=True) for wall in walls)
        found = sorted(part for part in each if part is not None)
        while found:
            start, end, _ = found.pop(0)
            while found and found[0][0] <= end + MEET_WITHIN:
                end = max(end, found.pop(0)[1])
            yield _Part(side, start, end, WALL)


def _plane(
    place: int,
    facets: Sequence[Facet],
    *,
    flat: Sequence[FlatFacet],
    parts: Mapping[int, Sequence[_Part]],
) -> GivenPlane:
    """Give one plane, each of its sides split into parts."""
    one, facet = flat[place], facets[place]
    try:
        whole = [
            part
            for side in range(len(one.points))
            for part in _whole_side(one, side, [p for p in parts[place] if p.side == side])
        ]
        edges = [_kind(part, one, flat[part.other] if part.other >= 0 else None) for part in whole]
    except Refused as refused:
        raise refused.below(*facet.at) from None
    return GivenPlane(
        name=facet.name,
        corners=tuple(_along(one, part.side, part.start) for part in whole),
        edges=tuple(edges),
        pitch=one.pitch,
        beyond=tuple(facets[part.other].name if part.other >= 0 else "" for part in whole),
    )


def _whole_side(flat: FlatFacet, side: int, found: Sequence[_Part]) -> list[_Part]:
    """Give parts that follow on from one end of a side to the other."""
    long = dist(flat.points[side], flat.points[side + 1 - len(flat.points)])
    whole: list[_Part] = []
    reached = 0.0
    for part in found:
        if part.start < reached - 2 * MEET_WITHIN:
            came = say("side ", side + 1, " of it, along which two others lie").written()
            raise Refused(Fault((), came, say("surfaces that meet in twos")))
        if part.start > reached + MEET_WITHIN:
            whole.append(_Part(side, reached, part.start))
            reached = part.start
        whole.append(_Part(side, reached, part.end, part.other, part.other_side))
        reached = part.end
    if not whole or long > reached + MEET_WITHIN:
        whole.append(_Part(side, reached, long))
    return whole


def _ends(flat: FlatFacet, side: int) -> tuple[Point, Point]:
    return flat.corners[side], flat.corners[side + 1 - len(flat.corners)]


def _along(flat: FlatFacet, side: int, at: Inches) -> Point:
    """Give the corner (u, v) at a length along a side in space."""
    (au, av), (bu, bv) = _ends(flat, side)
    part = at / dist(flat.points[side], flat.points[side + 1 - len(flat.points)])
    return au + (bu - au) * part, av + (bv - av) * part


def _kind(part: _Part, one: FlatFacet, other: FlatFacet | None) -> EdgeKind:
    """Give the kind of a part of a side by how it lies and what lies along it."""
    lie = _lie(one, part.side)
    if part.other == WALL:
        if lie == "below":
            raise Refused(Fault((), "a lower edge against a wall", say("an eave free of walls")))
        return "headwall" if lie == "above" else "sidewall"
    if other is None:
        alone: Mapping[str, EdgeKind] = {"below": "eave", "above": "ridge", "sloping": "rake"}
        return alone[lie]
    bend = _bend(one, other, part.side)
    if abs(bend) < ONE_PLANE:
        raise Refused(Fault((), "a surface in one plane with the next", say("both drawn as one")))
    lies = {lie, _lie(other, part.other_side)}
    if "sloping" in lies:
        if lies != {"sloping"}:
            came = say("side ", part.side + 1, " of it, level on one of two planes").written()
            raise Refused(
                Fault((), came, say("level on both, to ", length(1), " and 1 part in 50"))
            )
        return "hip" if bend < 0 else "valley"
    if len(lies) > 1:
        return "pitch_break"
    return "ridge" if lie == "above" else "valley"


def _lie(flat: FlatFacet, side: int) -> str:
    (au, av), (bu, bv) = _ends(flat, side)
    if av != bv:
        return "sloping"
    return "below" if bu > au else "above"


def _bend(one: FlatFacet, other: FlatFacet, side: int) -> float:
    """Give how much the roof bends up across a side: both slopes away from it, added."""
    (ax, ay, _), (bx, by, _) = one.points[side], one.points[side + 1 - len(one.points)]
    long = dist((ax, ay), (bx, by))
    left_x, left_y = (ay - by) / long, (bx - ax) / long
    return (one.rise[0] - other.rise[0]) * left_x + (one.rise[1] - other.rise[1]) * left_y


def _taken(planes: Sequence[GivenPlane], facets: Sequence[Facet]) -> tuple[GivenPlane, ...]:
    """Give the planes from where they start, or tell what keeps them from being a roof.

    That is told at the surfaces that they came from.
    """
    try:
        found = given_surfaces(GivenPlanes(planes=tuple(planes)))
    except Refused as refused:
        raise Refused(*(_at_surface(each, facets) for each in refused.faults)) from None
    return tuple(
        GivenPlane(
            name=plane.name,
            corners=tuple((round(u, DIGITS), round(v, DIGITS)) for u, v in plane.corners),
            edges=plane.edges,
            pitch=plane.pitch,
            beyond=plane.beyond,
        )
        for plane in found.planes
    )


def _at_surface(fault: Fault, facets: Sequence[Facet]) -> Fault:
    return replace(fault, at=facets[int(fault.at[1])].at)
