"""Simple polygons: area, and what is wrong with corners that make none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from roofing_core.measures.faults import LARGEST_LENGTH, Fault, is_number
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches, Ratio, SquareInches

Point = tuple[Inches, Inches]

#: The most corners of one outline. A limit of this library: it keeps the answer within a second.
MOST_CORNERS = 100

#: Sides shorter than this, and necks narrower, are taken for slips of the tape.
LEAST_SIDE = 0.25

#: Sine of the least angle by which an outline turns at a corner, about 1/16 in over 50 ft.
LEAST_TURN = 1e-4


def signed_area(corners: Sequence[Point]) -> SquareInches:
    """Give the area of a polygon, negative when its corners run clockwise.

    ``(x1 * y2 - x2 * y1 + ...) / 2``, from the first corner.

    Args:
        corners: In order round the polygon.

    Returns:
        Over 0 for corners that run counter-clockwise.

    Raises:
        Nothing: Any corners enclose something, if only nothing.

    Source:
        Geometry, the surveyors' area formula.

    >>> signed_area([(0, 0), (0, 5), (4, 5), (4, 0)])
    -20.0
    """
    x, y = corners[0]
    return 0.5 * sum(
        (ax - x) * (by - y) - (bx - x) * (ay - y)
        for (ax, ay), (bx, by) in zip(corners, [*corners[1:], corners[0]], strict=True)
    )


def corner_faults(
    corners: Sequence[Point], at: str = "corners", *, straight: bool = False
) -> list[Fault]:
    """Give all that is wrong with corners that should make a simple polygon.

    Args:
        corners: In order round the polygon, either way.
        at: The name to put into the faults.
        straight: Whether the outline may go straight on at a corner, from one kind of edge to
            another.

    Returns:
        None for a simple polygon; else faults of the corners alone, or of how they lie.

    Raises:
        Nothing: The faults are the answer.

    Source:
        The limits are this library's own.

    >>> [fault.written() for fault in corner_faults([(0, 0), (9, 9), (9, 0), (0, 9)])]
    ['corners came as sides 1 and 3 crossing or touching: sides that meet only at their corners']
    """
    count = len(corners)
    if not 3 <= count <= MOST_CORNERS:  # noqa: PLR2004 - a triangle
        came = "1 corner" if count == 1 else f"{count} corners"
        return [Fault((at,), came, say(f"from 3 to {MOST_CORNERS} corners"))]
    faults = [
        Fault((at, k), _written(corner), say("two lengths, each at most ", length(LARGEST_LENGTH)))
        for k, corner in enumerate(corners)
        if not all(is_number(value) and abs(value) <= LARGEST_LENGTH for value in corner)
    ]
    # What is wrong with the corners one by one would be said again by the later searches.
    faults = faults or list(_short_sides(corners, at))
    faults = faults or list(_straight_corners(corners, at, straight=straight))
    return faults or list(_meetings(corners, at))


def _written(corner: Sequence[object]) -> str:
    return f"({', '.join(str(value) for value in corner)})"


def _sides(corners: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(corners, [*corners[1:], corners[0]], strict=True))


def least_side(corners: Sequence[Point]) -> Inches:
    """Give the least length that a side of a polygon may have.

    ``max(1/4 in, extent / 1,000,000)``.

    Args:
        corners: In order round the polygon.

    Returns:
        The length; also the least width of a neck.

    Raises:
        Nothing: Any corners have an extent.

    Source:
        A limit of this library.

    >>> least_side([(0, 0), (480, 0), (480, 360)])
    0.25
    """
    across = [x for x, _ in corners]
    along = [y for _, y in corners]
    extent = max(max(across) - min(across), max(along) - min(along))
    return max(LEAST_SIDE, extent * 1e-6)


def _short_sides(corners: Sequence[Point], at: str) -> Iterator[Fault]:
    """Give a fault for each side that is too short to be one."""
    least = least_side(corners)
    for k, ((ax, ay), (bx, by)) in enumerate(_sides(corners)):
        long = hypot(bx - ax, by - ay)
        if long < least:
            wanted = say(f"a side {k + 1}, from here to the next corner, of at least ",
                         length(least))  # fmt: skip
            yield Fault((at, k), length(long), wanted)


def _straight_corners(corners: Sequence[Point], at: str, *, straight: bool) -> Iterator[Fault]:
    """Give a fault for each corner at which the outline goes straight on or straight back."""
    ways = [_way(*side) for side in _sides(corners)]
    for k, (dx, dy) in enumerate(ways):
        before_x, before_y = ways[k - 1]
        if abs(before_x * dy - before_y * dx) < LEAST_TURN:
            goes_on = before_x * dx + before_y * dy > 0
            came = "a corner on a straight line" if goes_on else "a corner that turns back"
            if not (goes_on and straight):
                yield Fault((at, k), came, say("left out, or moved to where the outline turns"))


def _way(start: Point, end: Point) -> tuple[Ratio, Ratio]:
    """Give the direction from one point to another."""
    long = hypot(end[0] - start[0], end[1] - start[1])
    return (end[0] - start[0]) / long, (end[1] - start[1]) / long


def _meetings(corners: Sequence[Point], at: str) -> Iterator[Fault]:
    """Give a fault for each two sides that are no neighbours and cross, or come too near."""
    sides = _sides(corners)
    near = least_side(corners)
    for one, first in enumerate(sides):
        for other in range(one + 2, len(sides) - (one == 0)):
            if _come_near(first, sides[other], near):
                came = f"sides {one + 1} and {other + 1} crossing or touching"
                yield Fault((at,), came, say("sides that meet only at their corners"))


def _come_near(one: tuple[Point, Point], other: tuple[Point, Point], near: float) -> bool:
    """Tell whether two lines cross, or an end of one comes near the other."""
    if any(
        max(a[axis] for a in one) + near < min(b[axis] for b in other)
        or max(b[axis] for b in other) + near < min(a[axis] for a in one)
        for axis in (0, 1)
    ):
        return False
    ends = [(end, line) for line, ends in ((one, other), (other, one)) for end in ends]
    if any(distance_from(end, line) < near for end, line in ends):
        return True
    of = [signed_area((*line, end)) for end, line in ends]
    return of[0] * of[1] < 0 and of[2] * of[3] < 0


def distance_from(point: Point, line: tuple[Point, Point]) -> Inches:
    """Give the distance of a point from a straight line between two points.

    Args:
        point: The point.
        line: Its two ends, apart from each other.

    Returns:
        The distance from the nearest point of the line.

    Raises:
        Nothing: Any points have a distance.

    Source:
        Geometry.

    >>> distance_from((7, 4), ((0, 0), (4, 0)))  # beyond the end: 3 across, 4 up
    5.0
    """
    (ax, ay), _ = line
    dx, dy = _way(*line)
    long = hypot(line[1][0] - ax, line[1][1] - ay)
    off_x, off_y = point[0] - ax, point[1] - ay
    along = min(max(off_x * dx + off_y * dy, 0.0), long)
    return hypot(off_x - along * dx, off_y - along * dy)
