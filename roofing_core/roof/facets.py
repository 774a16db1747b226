"""A surface in space as somebody drew it, brought into its own coordinates.

No drawing is quite true: corners on a straight line are left out here, and sides a hair off level
are made level. What is no surface of a roof is refused.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist, hypot

from roofing_core.measures.faults import LARGEST_LENGTH, Fault, refuse_if_any
from roofing_core.measures.sentences import Amount, length, say
from roofing_core.measures.units import Inches, Pitch, Ratio, SquareInches
from roofing_core.roof.footprints import FLATTEST
from roofing_core.roof.given_planes import LEVEL_WITHIN
from roofing_core.roof.pitch import STEEPEST
from roofing_core.roof.polygons import LEAST_SIDE, Point, corner_faults

SpacePoint = tuple[Inches, Inches, Inches]
Segment = tuple[SpacePoint, SpacePoint]

#: How far a corner may lie off the plane through all of them. This and the next are limits of this
#: library, a little over what models of whole streets keep: there, corners lie within 7 mm.
FLAT_WITHIN = 0.5

#: A corner this close to the line between its neighbours is none.
STRAIGHT_WITHIN = 0.25

#: A side is taken for level that rises no more than this, and no more than one part in so many; or
#: no more than counts for nothing in planes measured by hand.
NEARLY_LEVEL, LEVEL_IN = 1.0, 50


@dataclass(frozen=True, slots=True, kw_only=True)
class Facet:
    """A flat surface of a roof in space, as it was drawn.

    Attributes:
        name: What it is called.
        corners: Corners (x, y, height), in order round the surface, either way.
        walls: Lines in space from which a wall rises: a side that lies along one ends against it.
        at: Where it stands in the document that it was read from.
    """

    name: str
    corners: tuple[SpacePoint, ...]
    walls: tuple[Segment, ...] = ()
    at: tuple[str | int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatFacet:
    """The same in its own coordinates.

    Attributes:
        points: Corners (x, y, height) that are left, counter-clockwise seen from above.
        corners: The same (u, v), seen from outside: u to the right, level, and v up the slope.
        rise: How steeply it rises towards x, and towards y; with the pitch as its length.
    """

    points: tuple[SpacePoint, ...]
    corners: tuple[Point, ...]
    rise: tuple[Ratio, Ratio]

    @property
    def pitch(self) -> Pitch:
        """Rise over run."""
        return hypot(*self.rise)


def flat_facet(facet: Facet) -> FlatFacet:
    """Bring a surface into its own coordinates.

    The plane is the one whose area and direction are the polygon's: its normal is half the sum of
    ``p[k] x p[k + 1]``, and it goes through the mean of the corners. The level sides that are
    left are at one height from end to end: the middle between their highest and lowest corner.

    Args:
        facet: The surface as drawn.

    Returns:
        The surface without corners that say nothing.

    Raises:
        Refused: It is level, upright or not flat, or its corners make no simple polygon.

    Source:
        Geometry (Newell's formula for the normal); the limits are this library's own.

    >>> flat = flat_facet(Facet(name="porch", corners=((0, 0, 0), (-40, 0, 30), (-40, 48, 30.1),
    ...     (-40, 96, 30), (0, 96, 0))))  # it rises to the west; drawn clockwise
    >>> [tuple(round(c) for c in corner) for corner in flat.corners]
    [(48, -30), (48, 20), (-48, 20), (-48, -30)]
    """
    points = facet.corners
    refuse_if_any([*_count_fault(points)])
    middle, normal = _middle(points), area_vector(points)
    refuse_if_any(_slope_faults(normal))
    if normal[2] < 0:
        points, normal = points[::-1], (-normal[0], -normal[1], -normal[2])
    rise = (-normal[0] / normal[2], -normal[1] / normal[2])
    refuse_if_any(_flat_faults(points, middle, rise))
    drawn = [_within(point, middle, rise) for point in points]
    turning = _turning(drawn)
    corners = _levelled([drawn[k] for k in turning])
    left = _turning(corners)  # what was level to a hair may now go straight on
    corners = tuple(corners[k] for k in left)
    refuse_if_any(Fault((), fault.came, fault.wanted) for fault in corner_faults(corners))
    return FlatFacet(
        points=tuple(points[turning[k]] for k in left), corners=corners, rise=rise
    )  # fmt: skip


def _count_fault(points: Sequence[SpacePoint]) -> Iterator[Fault]:
    if len(points) < 3:  # noqa: PLR2004 - a triangle
        yield Fault((), f"{len(points)} corners", say("at least 3 corners"))
    elif max(dist(points[0], point) for point in points) > LARGEST_LENGTH:
        came = length(max(dist(points[0], point) for point in points))
        yield Fault((), came, say("at most ", length(LARGEST_LENGTH), " across"))


def _middle(points: Sequence[SpacePoint]) -> SpacePoint:
    x, y, z = (sum(values) / len(points) for values in zip(*points, strict=True))
    return x, y, z


def area_vector(points: Sequence[SpacePoint]) -> tuple[SquareInches, SquareInches, SquareInches]:
    """Give a vector upright on a surface, as long as the surface has area.

    Half the sum of ``p[k] x p[k + 1]``, from the first corner.

    Args:
        points: Corners (x, y, height), in order round the surface.

    Returns:
        The vector; from where it points to, the corners run counter-clockwise.

    Raises:
        Nothing: Any corners have one, if only of no length.

    Source:
        Geometry (Newell's formula).

    >>> area_vector(((0, 0, 0), (5, 0, 0), (5, 0, 4), (0, 0, 4)))
    (0.0, -20.0, 0.0)
    """
    x0, y0, z0 = points[0]
    near = [(x - x0, y - y0, z - z0) for x, y, z in points]
    pairs = list(zip(near, [*near[1:], near[0]], strict=True))
    return (
        sum(a[1] * b[2] - a[2] * b[1] for a, b in pairs) / 2,
        sum(a[2] * b[0] - a[0] * b[2] for a, b in pairs) / 2,
        sum(a[0] * b[1] - a[1] * b[0] for a, b in pairs) / 2,
    )


def _slope_faults(normal: tuple[float, float, float]) -> Iterator[Fault]:
    """Give the fault of a surface that is no slope."""
    across, up = hypot(normal[0], normal[1]), abs(normal[2])
    if across == up == 0:
        yield Fault((), "corners on one line", say("corners round a surface"))
    elif across > STEEPEST * up:
        yield Fault((), "an upright surface", say("a slope of at most 1000:12"))
    elif across < FLATTEST * up:
        wanted = say("at least ", Amount(FLATTEST, "pitch"), ": level surfaces are not read")
        yield Fault((), Amount(across / up, "pitch"), wanted)


def _flat_faults(
    points: Sequence[SpacePoint], middle: SpacePoint, rise: tuple[float, float]
) -> Iterator[Fault]:
    """Give the fault of corners that lie in no one plane."""
    off = max(abs(_above(point, middle, rise)) for point in points) / hypot(1, *rise)
    if off > FLAT_WITHIN:
        yield Fault((), length(off), say("corners within ", length(FLAT_WITHIN), " of one plane"))


def _above(point: SpacePoint, middle: SpacePoint, rise: tuple[float, float]) -> Inches:
    """Give how far a point lies above the plane, upright."""
    x, y, z = (a - b for a, b in zip(point, middle, strict=True))
    return z - rise[0] * x - rise[1] * y


def _within(point: SpacePoint, middle: SpacePoint, rise: tuple[float, float]) -> Point:
    """Give (u, v) of a point, from the middle, of its foot on the plane."""
    pitch = hypot(*rise)
    factor = hypot(1, pitch)
    up_x, up_y = rise[0] / pitch, rise[1] / pitch
    x, y, z = (a - b for a, b in zip(point, middle, strict=True))
    return x * up_y - y * up_x, (x * up_x + y * up_y + z * pitch) / factor


def _turning(corners: Sequence[Point]) -> list[int]:
    """Give the corners but those at which the outline stands still or goes straight on."""
    kept = list(range(len(corners)))

    def off(k: int) -> Inches:
        before, at, after = (kept[(k + step) % len(kept)] for step in (-1, 0, 1))
        return _off(corners[before], corners[at], corners[after])

    offs = [off(k) for k in range(len(kept))]
    while len(kept) > 3 and min(offs) <= STRAIGHT_WITHIN:  # noqa: PLR2004 - a triangle
        least = offs.index(min(offs))
        del kept[least], offs[least]
        for k in (least - 1, least % len(kept)):
            offs[k] = off(k)
    return kept


def _off(before: Point, at: Point, after: Point) -> Inches:
    """Give how far a corner lies from where it would say nothing."""
    if min(dist(before, at), dist(at, after)) < LEAST_SIDE:
        return min(dist(before, at), dist(at, after))
    (ax, ay), (bx, by) = (
        (at[0] - before[0], at[1] - before[1]),
        (after[0] - at[0], after[1] - at[1]),
    )
    if ax * bx + ay * by < 0:
        return LARGEST_LENGTH
    return abs(ax * by - ay * bx) / dist(before, after)


def is_level(start: Point, end: Point) -> bool:
    """Tell whether a side is meant to be level.

    It rises at most 1/8 in, or at most 1 in and at most one part in 50 of its run.

    Args:
        start: One end (u, v).
        end: The other.

    Returns:
        Whether it is.

    Raises:
        Nothing.

    Source:
        A limit of this library.

    >>> is_level((0, 0), (50, 1)), is_level((0, 0), (50, 1.01)), is_level((0, 0), (25, 0.51))
    (True, False, False)
    """
    rises = abs(end[1] - start[1])
    slightly = rises <= NEARLY_LEVEL and rises * LEVEL_IN <= abs(end[0] - start[0])
    return slightly or rises <= LEVEL_WITHIN


def _levelled(corners: Sequence[Point]) -> tuple[Point, ...]:
    """Give both ends of every level side one height, and all of level sides that follow on."""
    count = len(corners)
    level = [is_level(corners[k - 1], corners[k]) for k in range(count)]
    start = level.index(False) if False in level else 0
    runs: list[list[int]] = []
    for k in (*range(start, count), *range(start)):
        if not (level[k] and runs):
            runs.append([])
        runs[-1].append(k)
    made = list(corners)
    for run in runs:
        heights = [corners[k][1] for k in run]
        if max(heights) - min(heights) <= NEARLY_LEVEL:
            middle = min(heights) + (max(heights) - min(heights)) / 2
            for k in run:
                made[k] = (corners[k][0], middle)
    return tuple(made)
