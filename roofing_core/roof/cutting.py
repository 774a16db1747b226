"""Cutting: what is left of a stretch of roof between two upright lines, as a person would cut it.

A piece of a course or of a panel is a rectangle until a hip, a valley or an opening cuts it. Here
its outline is found, also where it comes apart or goes round something.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.slicing import Point, Stretch, Trapezoid, gathered

Ring = tuple[Point, ...]

#: Parts of less than this area, in square inches, are float dust.
_SPECK = 1e-9

#: Sine of the angle under which an outline goes straight on at a corner.
_STRAIGHT = 1e-9


@dataclass(frozen=True, slots=True)
class Cut:
    """A connected part of a stretch between two upright lines.

    Attributes:
        left: u of its leftmost point.
        right: u of its rightmost point.
        lower: v of its lowest point.
        upper: v of its highest point.
        corners: Its outline, counter-clockwise from its lower left corner.
        cutouts: The outlines of what is cut out of its inside, clockwise.
        parts: The trapezoids of the stretch that it lies in, lowest first.
    """

    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    corners: Ring
    cutouts: tuple[Ring, ...]
    parts: tuple[Trapezoid, ...]

    def area(self) -> SquareInches:
        """Give its area."""
        return sum(_area(ring) for ring in (self.corners, *self.cutouts))

    def at(self, v: Inches) -> list[tuple[Inches, Inches]]:
        """Give where it lies at one height, from the left."""
        found = []
        for part in self.parts:
            if part.lower <= v < part.upper or v == part.upper == self.upper:
                left = max(self.left, part.left.at(v))
                right = min(self.right, part.right.at(v))
                if left < right:
                    found.append((left, right))
        return sorted(found)


def cut_between(stretch: Stretch, left: Inches, right: Inches) -> tuple[Cut, ...]:
    """Cut a stretch off at two upright lines.

    Args:
        stretch: The stretch.
        left: u of the line on the left.
        right: u of the line on the right; more than ``left``.

    Returns:
        What lies between them: one part or several that do not hang together, from the left.

    Raises:
        Nothing.

    Source:
        Geometry: each trapezoid is cut by both lines, and what adjoins is one piece.

    >>> from roofing_core.roof.slicing import Region
    >>> end = Region([[(0, 0), (24, 0), (12, 12)]]).between(0, 6)[0]
    >>> cut_between(end, 0, 4)[0].corners  # the hip cuts off all but a triangle
    ((0, 0), (4, 0), (4, 4.0))
    """
    cut = [(part, _convex(part, left, right)) for part in stretch.parts]
    kept = [(part, ring) for part, ring in cut if _area(ring) > _SPECK]
    if len(kept) == 1:
        return (_made(kept, left, right),)
    groups = gathered([ring for _, ring in kept], _adjoin)
    made = [_made([kept[k] for k in group], left, right) for group in groups]
    return tuple(sorted(made, key=lambda one: (one.left, one.lower)))


def _convex(part: Trapezoid, left: float, right: float) -> Ring:
    """Give a trapezoid cut off at two upright lines, from its lower left corner."""
    ring: Ring = (
        (part.lower_left, part.lower),
        (part.lower_right, part.lower),
        (part.upper_right, part.upper),
        (part.upper_left, part.upper),
    )
    if min(part.lower_left, part.upper_left) < left:
        ring = tuple(_beyond(ring, left, 1))
    if max(part.lower_right, part.upper_right) > right:
        ring = tuple(_beyond(ring, right, -1))
    return _from_lower_left(_without_doubles(ring))


def _beyond(ring: Ring, line: float, way: int) -> Iterator[Point]:
    """Give the part of a convex ring right of an upright line, or with ``way`` -1 left of it."""
    for k, (u, v) in enumerate(ring):
        before_u, before_v = ring[k - 1]
        inside, was_inside = way * (u - line) >= 0, way * (before_u - line) >= 0
        if inside != was_inside:
            crossing = before_v + (v - before_v) * ((line - before_u) / (u - before_u))
            yield line, v if v == before_v else crossing
        if inside:
            yield u, v


def _without_doubles(ring: Sequence[Point]) -> Ring:
    return tuple(point for k, point in enumerate(ring) if point != ring[k - 1])


def _from_lower_left(ring: Ring) -> Ring:
    if not ring:
        return ring
    k = min(range(len(ring)), key=lambda n: (ring[n][1], ring[n][0]))
    return ring[k:] + ring[:k]


def _area(ring: Sequence[Point]) -> float:
    return 0.5 * sum((ring[k - 1][0] * v - u * ring[k - 1][1]) for k, (u, v) in enumerate(ring))


def _adjoin(one: Ring, other: Ring) -> bool:
    """Tell whether one ring stands on the other, along more than a point."""
    lower, upper = (one, other) if one[0][1] < other[0][1] else (other, one)
    top, bottom = max(v for _, v in lower), upper[0][1]
    if abs(top - bottom) > _SPECK:
        return False
    above = [u for u, v in upper if v == bottom]
    below = [u for u, v in lower if v == top]
    return min(max(above), max(below)) - max(min(above), min(below)) > _SPECK


def _made(kept: Sequence[tuple[Trapezoid, Ring]], left: float, right: float) -> Cut:
    rings = [kept[0][1]] if len(kept) == 1 else _outlines([ring for _, ring in kept])
    outer, *inner = sorted(rings, key=_area, reverse=True)
    return Cut(
        left=max(left, min(u for u, _ in outer)),
        right=min(right, max(u for u, _ in outer)),
        lower=min(v for _, v in outer),
        upper=max(v for _, v in outer),
        corners=_straightened(outer),
        cutouts=tuple(map(_straightened, inner)),
        parts=tuple(part for part, _ in kept),
    )


def _outlines(rings: Sequence[Ring]) -> list[Ring]:
    """Join rings that adjoin along level lines into the outlines of what they make together."""
    ahead: dict[Point, list[Point]] = {}
    level: dict[float, list[tuple[float, int]]] = {}
    for ring in rings:
        for (au, av), (bu, bv) in pairwise((*ring, ring[0])):
            if av == bv:
                level.setdefault(av, []).extend([(au, 1), (bu, -1)])
            else:
                ahead.setdefault((au, av), []).append((bu, bv))
    for v, ends in level.items():
        for start, end in _left_over(ends):
            ahead.setdefault((start, v), []).append((end, v))
    return list(_walked(ahead))


def _left_over(ends: Sequence[tuple[float, int]]) -> Iterator[tuple[float, float]]:
    """Give the level edges that are left where those walked to and fro have cancelled out."""
    marks = sorted({u for u, _ in ends})
    running = 0
    for u, next_u in pairwise(marks):
        running += sum(way for at, way in ends if at == u)
        if running > 0:
            yield u, next_u
        elif running < 0:
            yield next_u, u


def _walked(ahead: dict[Point, list[Point]]) -> Iterator[Ring]:
    """Walk along directed edges until each ring is closed."""
    while ahead:
        start = min(ahead, key=lambda point: (point[1], point[0]))
        ring, at = [], start
        while True:
            ring.append(at)
            choices = ahead[at]
            following = choices.pop()
            if not choices:
                del ahead[at]
            at = following
            if at == start:
                break
        yield tuple(ring)


def _straightened(ring: Ring) -> Ring:
    """Leave out corners on a straight line, and start at the lower left."""
    apart = [point for k, point in enumerate(ring) if not _near(point, ring[k - 1])]
    kept = [point for k, point in enumerate(apart) if not _is_straight(apart, k)]
    return _from_lower_left(tuple(kept))


def _near(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) <= _SPECK and abs(one[1] - other[1]) <= _SPECK


def _is_straight(ring: Sequence[Point], k: int) -> bool:
    (au, av), (bu, bv), (cu, cv) = ring[k - 1], ring[k], ring[(k + 1) % len(ring)]
    across = (bu - au) * (cv - bv) - (bv - av) * (cu - bu)
    return abs(across) <= _STRAIGHT * hypot(bu - au, bv - av) * hypot(cu - bu, cv - bv)
