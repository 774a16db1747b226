"""Where sides of surfaces lie along each other, in part or whole, in space or in plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist

from roofing_core.measures.units import Inches
from roofing_core.roof.facets import Segment, SpacePoint

#: Two sides meet that lie this close along each other; as much as the lengths of an edge may
#: differ that was measured from both of its planes.
MEET_WITHIN = 1.0

#: And along at least this much, or where both are shorter, nearly all of each. A limit of this
#: library, so that corners that touch do not meet.
LEAST_MEETING, NEARLY_ALL = 2.0, 0.9

#: Of two that lie along one side, one is meant that is nearer by this. Likewise.
CLEARLY_FURTHER = 0.25

#: Cosine of the largest angle between two sides that meet. Likewise.
NEARLY_ALONG = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """A part of a side of one surface along which another one lies.

    Attributes:
        one: Place of the surface among those given.
        side: The side of it that leaves its corner of this number, from 0.
        start: Where the part starts, from that corner.
        end: Where it ends.
        other: Place of the other surface.
        other_side: The side of that one.
        apart: How far apart they are at most.
    """

    one: int
    side: int
    start: Inches
    end: Inches
    other: int
    other_side: int
    apart: Inches

    @property
    def line(self) -> frozenset[tuple[int, int]]:
        """The two sides that meet, the same from either."""
        return frozenset({(self.one, self.side), (self.other, self.other_side)})

    def lies_over(self, start: Inches, end: Inches) -> bool:
        """Tell whether it has more in common with a part of its side than a corner."""
        return min(self.end, end) - max(self.start, start) > MEET_WITHIN


@dataclass(frozen=True, slots=True)
class _Side:
    """A side with the box that it lies in."""

    ring: int
    place: int
    ends: Segment
    low: SpacePoint
    high: SpacePoint


def meetings(rings: Sequence[Sequence[SpacePoint]]) -> tuple[Meeting, ...]:
    """Find every part of a side along which another surface lies.

    Args:
        rings: The corners of each surface, counter-clockwise seen from above.

    Returns:
        Each twice, once from either surface; by surface, side and where the parts start.

    Raises:
        Nothing: No surfaces meet nowhere.

    Source:
        Geometry; the tolerances are this library's own.

    >>> front = ((0, 0, 0), (96, 0, 0), (96, 48, 24), (0, 48, 24))
    >>> back = ((60, 96, 0), (30, 96, 0), (30, 48, 24.5), (60, 48, 24.5))
    >>> for meeting in meetings((front, back)):
    ...     print(meeting.side, meeting.start, meeting.end, meeting.other_side)
    2 36.0 66.0 2
    2 0.0 30.0 2
    """
    found = sorted(_found(rings), key=lambda met: (met.one, met.side, met.start, met.other))
    return tuple(_nearest(found))


def _found(rings: Sequence[Sequence[SpacePoint]]) -> list[Meeting]:
    """Find every meeting, going through the sides from left to right."""
    sides = sorted(_sides(rings), key=lambda side: side.low[0])
    found: list[Meeting] = []
    open_sides: list[_Side] = []
    for side in sides:
        open_sides = [one for one in open_sides if one.high[0] >= side.low[0]]
        for other in open_sides:
            if other.ring != side.ring and _near(other, side):
                found += _both_ways(side, other)
        open_sides.append(side)
    return found


def _nearest(found: Sequence[Meeting]) -> list[Meeting]:
    """Leave out what is clearly further away than another one along the same part of a side."""
    lines: dict[frozenset[tuple[int, int]], list[Meeting]] = {}
    for met in found:
        lines.setdefault(met.line, []).append(met)
    nearest: dict[tuple[int, int], list[Meeting]] = {}
    for line in sorted(lines.values(), key=lambda line: line[0].apart):
        if not any(_further(met, nearest.get((met.one, met.side), ())) for met in line):
            for met in line:
                nearest.setdefault((met.one, met.side), []).append(met)
    kept = {met.line for taken in nearest.values() for met in taken}
    return [met for met in found if met.line in kept]


def _further(met: Meeting, taken: Sequence[Meeting]) -> bool:
    return any(
        met.apart > one.apart + CLEARLY_FURTHER and met.lies_over(one.start, one.end)
        for one in taken
    )


def along(
    side: Segment, other: Segment, *, either_way: bool = False
) -> tuple[Inches, Inches, Inches] | None:
    """Give the part of a line along which another one lies that runs the other way.

    Args:
        side: The line.
        other: The other one.
        either_way: Whether it may run the same way too.

    Returns:
        Where the part starts and ends, from the start of the line, and how far apart they are at
        most; ends within 1 in of those of the line are those. None where there is no such part.

    Raises:
        Nothing.

    Source:
        Geometry; the tolerances are this library's own.

    >>> along(((0, 0, 0), (96, 0, 0)), ((95.5, 0.5, 0), (40, 0, 0)))
    (40.0, 96.0, 0.5)
    """
    start, end = side
    long = dist(start, end)
    way = ((end[0] - start[0]) / long, (end[1] - start[1]) / long, (end[2] - start[2]) / long)
    far, near = _run(start, way, other[0]), _run(start, way, other[1])
    if either_way and far < near:
        far, near, other = near, far, other[::-1]
    first, last = max(near, 0.0), min(far, long)
    if last - first <= 0 or last - first < min(LEAST_MEETING, NEARLY_ALL * max(long, far - near)):
        return None
    apart = max(
        dist(_at(side, at / long), _at(other, (far - at) / (far - near))) for at in (first, last)
    )
    if apart > MEET_WITHIN or far - near < NEARLY_ALONG * dist(*other):
        return None
    return (
        0.0 if first <= MEET_WITHIN else first,
        long if long - last <= MEET_WITHIN else last,
        apart,
    )


def _run(start: SpacePoint, way: SpacePoint, point: SpacePoint) -> Inches:
    """Give how far a point lies from another one along a way."""
    return (
        (point[0] - start[0]) * way[0]
        + (point[1] - start[1]) * way[1]
        + (point[2] - start[2]) * way[2]
    )


def _at(line: Segment, part: float) -> SpacePoint:
    (ax, ay, az), (bx, by, bz) = line
    return ax + (bx - ax) * part, ay + (by - ay) * part, az + (bz - az) * part


def _sides(rings: Sequence[Sequence[SpacePoint]]) -> Iterator[_Side]:
    for ring, points in enumerate(rings):
        for place, ends in enumerate(zip(points, [*points[1:], points[0]], strict=True)):
            x, y, z = (sorted(pair) for pair in zip(*ends, strict=True))
            low = (x[0] - MEET_WITHIN, y[0] - MEET_WITHIN, z[0] - MEET_WITHIN)
            yield _Side(ring, place, ends, low, (x[1], y[1], z[1]))


def _near(one: _Side, other: _Side) -> bool:
    return all(
        a <= d and c <= b
        for a, b, c, d in zip(one.low, one.high, other.low, other.high, strict=True)
    )


def _both_ways(one: _Side, other: _Side) -> Iterator[Meeting]:
    for side, met in ((one, other), (other, one)):
        part = along(side.ends, met.ends)
        if part is not None:
            yield Meeting(
                one=side.ring,
                side=side.place,
                start=part[0],
                end=part[1],
                other=met.ring,
                other_side=met.place,
                apart=part[2],
            )
