"""Shapes: outlines cut into trapezoids between level lines, exactly.

The audit's own geometry. Nothing here is shared with what lays pieces out.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import hypot, inf
from typing import NamedTuple

from roofing_core.measures.units import Inches, SquareInches

Point = tuple[Inches, Inches]
Span = tuple[Inches, Inches]

#: Edges nearer than this touch: no one cuts or measures closer.
TOUCHING = 1 / 64

#: What float arithmetic strays by, with room to spare.
DUST = 1e-7


class Trapezoid(NamedTuple):
    """A shape between two level lines and two straight sides.

    Attributes:
        lower: v of its lower edge.
        upper: v of its upper edge.
        lower_left: u of its lower left corner.
        upper_left: u of its upper left corner.
        lower_right: u of its lower right corner.
        upper_right: u of its upper right corner.
    """

    lower: Inches
    upper: Inches
    lower_left: Inches
    upper_left: Inches
    lower_right: Inches
    upper_right: Inches

    def between(self, lower: Inches, upper: Inches) -> Trapezoid:
        """Give its part between two heights within it."""
        if lower <= self.lower and upper >= self.upper:
            return self
        low, high = max(lower, self.lower), min(upper, self.upper)
        if self.lower_left == self.upper_left and self.lower_right == self.upper_right:
            return Trapezoid(low, high, *self[2:])
        return Trapezoid(low, high, *self._across(low, high))

    def area(self) -> SquareInches:
        """Give its area."""
        below, above = self.lower_right - self.lower_left, self.upper_right - self.upper_left
        return (below + above) / 2 * (self.upper - self.lower)

    def at(self, v: Inches) -> Span:
        """Give from where to where it lies at a height within it."""
        left, _, right, _ = self._across(v, v)
        return left, right

    def _across(self, low: float, high: float) -> tuple[float, float, float, float]:
        tall = self.upper - self.lower
        below, above = (low - self.lower) / tall, (high - self.lower) / tall
        lean, other = self.upper_left - self.lower_left, self.upper_right - self.lower_right
        return (
            self.lower_left + lean * below,
            self.lower_left + lean * above,
            self.lower_right + other * below,
            self.lower_right + other * above,
        )


def rectangle(left: Inches, right: Inches, lower: Inches, upper: Inches) -> Trapezoid:
    """Give a rectangle.

    Args:
        left: u of its left side.
        right: u of its right side.
        lower: v of its lower edge.
        upper: v of its upper edge.

    Returns:
        The trapezoid that it is.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> rectangle(0, 36, -0.5, 12).at(5)
    (0.0, 36.0)
    """
    return Trapezoid(lower, upper, left, left, right, right)


def trapezoids(*rings: Sequence[Point]) -> tuple[Trapezoid, ...]:
    """Cut an outline, with what is cut from its inside, into trapezoids.

    A point belongs to it when a line from there to the outside crosses the rings an odd number of
    times. It is cut at the height of every corner, and wherever sides cross.

    Args:
        rings: The corners (u, v) of the outline in order, then of each ring within it.

    Returns:
        The trapezoids, lowest first, from the left.

    Raises:
        Nothing: Any rings enclose something, if only nothing.

    Source:
        Geometry.

    >>> trapezoids([(0, 0), (10, 0), (10, 5), (5, 5)])[0].at(5)
    (5.0, 10.0)
    """
    match rings:
        case [[_, _, _, _] as corners] if plain := _level_quad(*corners):
            return (plain,)
    sides = [
        (one, other) if one[1] < other[1] else (other, one)
        for ring in rings
        for one, other in pairwise((*ring, ring[0]))
        if one[1] != other[1]
    ]
    heights = {v for ring in rings for _, v in ring}
    if not (len(rings) == 1 and _is_convex(rings[0])):
        heights |= {*_crossings(sides)}
    marks = sorted(heights)
    return tuple(
        one for low, high in pairwise(marks) if high - low > DUST for one in _slab(sides, low, high)
    )


#: A side of an outline, from its lower end to its upper one.
_Side = tuple[Point, Point]


def _level_quad(a: Point, b: Point, c: Point, d: Point) -> Trapezoid | None:
    """Give four corners from the lower left one round as the one trapezoid that most are."""
    if a[1] == b[1] < c[1] == d[1] and a[0] <= b[0] and d[0] <= c[0]:
        return Trapezoid(a[1], c[1], float(a[0]), float(d[0]), float(b[0]), float(c[0]))
    return None


def _is_convex(ring: Sequence[Point]) -> bool:
    """Tell whether an outline turns one way, and round once: it goes up once and down once."""
    turns: set[bool] = set()
    changes, before = 0, ring[-1][1] - ring[-2][1]
    (bu, bv), (au, av) = ring[-1], ring[-2]
    for u, v in ring:
        turn = (bu - au) * (v - bv) - (bv - av) * (u - bu)
        turns |= {turn > 0} if turn else set()
        rise = v - bv
        changes += rise * before < 0
        before = rise or before
        (au, av), (bu, bv) = (bu, bv), (u, v)
    return len(turns) == 1 and changes <= _ONCE


#: A line round something convex goes up once and down once.
_ONCE = 2


def _slab(sides: Iterable[_Side], low: float, high: float) -> Iterator[Trapezoid]:
    across = sorted(
        (_at(side, low), _at(side, high))
        for side in sides
        if side[0][1] <= low and side[1][1] >= high
    )
    if across[2:]:
        across.sort(key=sum)
    for left, right in zip(across[::2], across[1::2], strict=False):
        if right[0] - left[0] > DUST or right[1] - left[1] > DUST:
            yield Trapezoid(low, high, *left, *right)


def _at(side: _Side, v: float) -> float:
    (au, av), (bu, bv) = side
    if au == bu or v == av:
        return float(au)
    return float(bu) if v == bv else au + (bu - au) * ((v - av) / (bv - av))


def _crossings(sides: Sequence[_Side]) -> Iterator[float]:
    """Give the heights at which sides cross between their ends."""
    for k, one in enumerate(sides):
        for other in sides[k + 1 :]:
            low, high = max(one[0][1], other[0][1]), min(one[1][1], other[1][1])
            if high - low > DUST:
                below = _at(one, low) - _at(other, low)
                above = _at(one, high) - _at(other, high)
                if below * above < 0 and min(abs(below), abs(above)) > DUST:
                    yield low + (high - low) * below / (below - above)


def strip_beside(start: Point, end: Point, width: Inches) -> tuple[Point, ...]:
    """Give the strip along the left of a line: what a leg of metal or half a cap covers.

    Args:
        start: One end of the line; edges of a plane are walked with the plane on the left.
        end: Its other end.
        width: Of the strip.

    Returns:
        Its corners.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> strip_beside((168, 112), (0, 112), 6)
    ((168, 112), (0, 112), (0.0, 106.0), (168.0, 106.0))
    """
    (au, av), (bu, bv) = start, end
    out = width / hypot(bu - au, bv - av)
    in_u, in_v = (av - bv) * out, (bu - au) * out
    return start, end, (bu + in_u, bv + in_v), (au + in_u, av + in_v)


def nearest(places: Sequence[Inches], u: Inches, *, none: Inches = inf) -> Inches:
    """Give how far the nearest of several places is.

    Args:
        places: Where there is something, from the left.
        u: From where it is measured.
        none: What is given where there are no places.

    Returns:
        How far it is, to either side.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> nearest([0, 4, 9], 7), nearest([], 7)
    (2, inf)
    """
    k = bisect_left(places, u)
    return min([abs(at - u) for at in places[max(0, k - 1) : k + 1]], default=none)


def overlaps(some: Sequence[Span], others: Sequence[Span]) -> list[Span]:
    """Give where stretches of two rows lie over each other.

    Args:
        some: Stretches.
        others: Stretches.

    Returns:
        Their overlaps, in the order of the first.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> overlaps([(0, 4), (6, 9)], [(3, 7)])
    [(3, 4), (6, 7)]
    """
    return [
        (max(low, from_), min(high, to))
        for low, high in some
        for from_, to in others
        if max(low, from_) < min(high, to)
    ]


def column(shape: Iterable[Trapezoid], u: Inches) -> list[Span]:
    """Give where a shape lies over one point of the eave: from how far up to how far up.

    Args:
        shape: The trapezoids of a shape.
        u: The place along the eave.

    Returns:
        The stretches, lowest first; those that touch are one.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> column(trapezoids([(0, 0), (10, 0), (10, 5), (5, 5)]), 4)
    [(0.0, 4.0)]
    """
    found: list[Span] = []
    for span in sorted(_column_of(one, u) for one in shape):
        if span[1] - span[0] <= DUST:
            continue
        if found and span[0] - found[-1][1] <= DUST:
            below = found.pop()
            found.append((below[0], max(below[1], span[1])))
        else:
            found.append(span)
    return found


def _column_of(one: Trapezoid, u: float) -> Span:
    """Give where the line at u runs within a trapezoid; nowhere is a span of no length."""
    low, high = 0.0, 1.0
    for at, to in (
        (u - one.lower_left, u - one.upper_left),
        (one.lower_right - u, one.upper_right - u),
    ):
        if at < 0 and to < 0:
            return 0.0, 0.0
        if at < 0:
            low = max(low, at / (at - to))
        elif to < 0:
            high = min(high, at / (at - to))
    tall = one.upper - one.lower
    return one.lower + low * tall, one.lower + max(low, high) * tall
