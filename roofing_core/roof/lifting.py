"""From planes drawn in plan, with their pitches and eaves, to surfaces in space.

A plan says how a roof rises and not from where: each surface is lifted until it meets the one that
was lifted before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import dist

from roofing_core.measures.faults import Fault, Refused, each_made, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches, Pitch, Ratio
from roofing_core.roof.facets import Facet, Segment, SpacePoint
from roofing_core.roof.footprints import pitch_range_fault
from roofing_core.roof.meetings import MEET_WITHIN, Meeting, meetings
from roofing_core.roof.polygons import Point, corner_faults, signed_area


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFacet:
    """A surface of a roof as a plan shows it.

    Attributes:
        name: What it is called.
        corners: Corners (x, y), level, in order round the surface, either way.
        pitch: Rise over run.
        eave: The side that lies level below the surface, by the number of the corner that it
            leaves, from 0.
        walls: Sides that end against a wall, likewise.
        at: Where it stands in the document that it was read from.
    """

    name: str
    corners: tuple[Point, ...]
    pitch: Pitch
    eave: int
    walls: tuple[int, ...] = ()
    at: tuple[str | int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Rising:
    """A surface whose corners run counter-clockwise, and how it rises from its eave."""

    corners: tuple[Point, ...]
    from_eave: Point
    rise: tuple[Ratio, Ratio]
    walls: frozenset[int]

    def height(self, x: float, y: float) -> Inches:
        """How far a point of it lies above its own eave."""
        from_x, from_y = self.from_eave
        return self.rise[0] * (x - from_x) + self.rise[1] * (y - from_y)


def facets_over(plan: Sequence[PlanFacet]) -> tuple[Facet, ...]:
    """Lift the surfaces of a plan into space.

    Each rises from its eave: a point at a run r from the line of the eave lies ``pitch * r`` above
    it. Surfaces that share a line in plan get one height along it, unless one of them ends against
    a wall there.

    Args:
        plan: The surfaces, in any order.

    Returns:
        The same, in space; those that nothing ties to the first lie at its height.

    Raises:
        Refused: A surface is no simple polygon, its pitch or a side of it cannot be, or two that
            share a line come to different heights along it; names each.

    Source:
        Geometry; the tolerance of 1 in is this library's own.

    >>> front = PlanFacet(name="front", corners=((0, 0), (96, 0), (96, 48), (0, 48)), pitch=0.5,
    ...     eave=0)
    >>> back = PlanFacet(name="back", corners=((96, 80), (0, 80), (0, 48), (96, 48)), pitch=0.5,
    ...     eave=0)
    >>> [corner[2] for facet in facets_over((front, back)) for corner in facet.corners]
    [0.0, 0.0, 24.0, 24.0, 8.0, 8.0, 24.0, 24.0]
    """
    rising = each_made(_rising, plan)
    met = _met(rising)
    lifts = _lifts(rising, met)
    refuse_if_any(_apart(plan, rising, lifts=lifts, met=met))
    return tuple(
        _lifted(surface, one, lifts[place])
        for place, (surface, one) in enumerate(zip(plan, rising, strict=True))
    )


def _plan_faults(surface: PlanFacet) -> Iterator[Fault]:
    """Give what is wrong with one surface."""
    yield from corner_faults(surface.corners, straight=True)
    if (found := pitch_range_fault(("pitch",), surface.pitch)) is not None:
        yield found
    count = len(surface.corners)
    for name, sides in (("eave", (surface.eave,)), ("walls", surface.walls)):
        for side in sides:
            if not 0 <= side < count:
                yield Fault((name,), str(side), say(f"a side, from 0 to {count - 1}"))
    if surface.eave in surface.walls:
        yield Fault(("walls",), "the eave", say("sides that do not lie below the surface"))


def _rising(surface: PlanFacet) -> _Rising:
    refuse_if_any(Refused(*_plan_faults(surface)).below(*surface.at).faults)
    corners, eave, walls = surface.corners, surface.eave, surface.walls
    if signed_area(corners) < 0:
        corners, last = corners[::-1], len(corners) - 2
        eave, walls = (last - eave) % len(corners), tuple((last - k) % len(corners) for k in walls)
    (ax, ay), (bx, by) = corners[eave], corners[eave + 1 - len(corners)]
    long = dist((ax, ay), (bx, by))
    rise = (surface.pitch * (ay - by) / long, surface.pitch * (bx - ax) / long)
    return _Rising(corners, (ax, ay), rise, frozenset(walls))


def _met(rising: Sequence[_Rising]) -> list[Meeting]:
    """Give the meetings in plan of sides that do not end against a wall."""
    found = meetings([[(x, y, 0.0) for x, y in one.corners] for one in rising])
    return [
        met
        for met in found
        if met.side not in rising[met.one].walls and met.other_side not in rising[met.other].walls
    ]


def _met_at(rising: Sequence[_Rising], met: Meeting) -> tuple[Point, Point]:
    """Give both ends of a meeting in plan."""
    corners = rising[met.one].corners
    (ax, ay), (bx, by) = corners[met.side], corners[met.side + 1 - len(corners)]
    long = dist((ax, ay), (bx, by))
    start, end = met.start / long, met.end / long
    return (
        (ax + (bx - ax) * start, ay + (by - ay) * start),
        (ax + (bx - ax) * end, ay + (by - ay) * end),
    )


def _higher(rising: Sequence[_Rising], met: Meeting) -> tuple[Inches, Inches]:
    """Give how far the one lies above the other before both are lifted, at both ends."""
    one, other = rising[met.one], rising[met.other]
    start, end = (one.height(*at) - other.height(*at) for at in _met_at(rising, met))
    return start, end


def _lifts(rising: Sequence[_Rising], met: Sequence[Meeting]) -> Mapping[int, Inches]:
    """Give how far to lift each surface so that it meets those before it."""
    lifts: dict[int, float] = {}
    for first in range(len(rising)):
        lifts.setdefault(first, 0.0)
        reached = [first]
        for one in reached:
            for each in met:
                if each.one == one and each.other not in lifts:
                    lifts[each.other] = lifts[one] + sum(_higher(rising, each)) / 2
                    reached.append(each.other)
    return lifts


def _apart(
    plan: Sequence[PlanFacet],
    rising: Sequence[_Rising],
    *,
    lifts: Mapping[int, Inches],
    met: Sequence[Meeting],
) -> Iterator[Fault]:
    """Give the surfaces that come to another height than the next along a line of the plan."""
    for each in met:
        by = lifts[each.one] - lifts[each.other]
        off = max(abs(higher + by) for higher in _higher(rising, each))
        if off > MEET_WITHIN and each.one > each.other:
            came = f"a surface off {plan[each.other].name} along the line that both have"
            wanted = say("one height there, not ", length(off), " apart, or its side among walls")
            yield Fault(plan[each.one].at, came, wanted)


def _lifted(surface: PlanFacet, one: _Rising, lift: Inches) -> Facet:
    points: tuple[SpacePoint, ...] = tuple((x, y, one.height(x, y) + lift) for x, y in one.corners)
    walls: tuple[Segment, ...] = tuple(
        (points[k], points[k + 1 - len(points)]) for k in sorted(one.walls)
    )
    return Facet(name=surface.name, corners=points, walls=walls, at=surface.at)
