"""Slicing: what part of a plane lies between two heights, exactly.

Everything on a roof is laid in level bands: courses, rows of underlayment, rows of panels. A region
is cut once into slabs at the heights of its corners; within a slab its sides are straight, so that
a band is made of trapezoids. How a region comes from a plane is `regions`.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from copy import copy
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeVar

from roofing_core.measures.units import Inches, SquareInches

Point = tuple[Inches, Inches]
Thing = TypeVar("Thing")

#: Slabs thinner than this, in inches, are float dust.
_THIN = 1e-9


@dataclass(frozen=True, slots=True)
class Side:
    """One straight side of a region.

    Attributes:
        start: Its end (u, v) from which it is walked, with the region on its left.
        end: Its other end.
        edge: Place of the edge that it comes from, in the outline that the region was made of.
    """

    start: Point
    end: Point
    edge: int

    def at(self, v: Inches) -> Inches:
        """Give u at a height within the side, exact at its ends and on an upright side."""
        (au, av), (bu, bv) = self.start, self.end
        if au == bu or v == av:
            return au
        if v == bv:
            return bu
        return au + (bu - au) * ((v - av) / (bv - av))


@dataclass(frozen=True, slots=True)
class Trapezoid:
    """A part of a region between two heights and two sides.

    Attributes:
        lower: v of its lower edge.
        upper: v of its upper edge.
        left: The side on its left.
        right: The side on its right.
        lower_left: u of its lower left corner.
        lower_right: u of its lower right corner.
        upper_left: u of its upper left corner.
        upper_right: u of its upper right corner.
    """

    lower: Inches
    upper: Inches
    left: Side
    right: Side
    lower_left: Inches
    lower_right: Inches
    upper_left: Inches
    upper_right: Inches

    def area(self) -> SquareInches:
        """Give its area."""
        below, above = self.lower_right - self.lower_left, self.upper_right - self.upper_left
        return (below + above) / 2 * (self.upper - self.lower)

    def between(self, lower: Inches, upper: Inches) -> Trapezoid:
        """Give its part between two heights within it."""
        if lower == self.lower and upper == self.upper:
            return self
        return _trapezoid(lower, upper, self.left, self.right)


def _trapezoid(lower: float, upper: float, left: Side, right: Side) -> Trapezoid:
    return Trapezoid(
        lower=lower,
        upper=upper,
        left=left,
        right=right,
        lower_left=left.at(lower),
        lower_right=right.at(lower),
        upper_left=left.at(upper),
        upper_right=right.at(upper),
    )


@dataclass(frozen=True, slots=True)
class Stretch:
    """One connected part of a region between two heights.

    Attributes:
        left: u of its leftmost point.
        right: u of its rightmost point.
        lower: v of its lowest point.
        upper: v of its highest point.
        parts: What it is made of, from the lowest up.
    """

    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    parts: tuple[Trapezoid, ...]

    def is_rectangle(self) -> bool:
        """Tell whether it is a plain rectangle."""
        first = self.parts[0]
        return (
            len(self.parts) == 1
            and first.lower_left == first.upper_left
            and first.lower_right == first.upper_right
        )

    def area(self) -> SquareInches:
        """Give its area."""
        return sum(part.area() for part in self.parts)


class Region:
    """A part of a plane, cut into slabs: a polygon, or several, with or without holes.

    A point belongs to it when the rings go round it to the left at least once more than to the
    right: holes run clockwise, and a loop that turns over itself encloses nothing.

    Args:
        rings: The corners (u, v) of each ring in order.
        edges: For each ring, the place of the edge that leaves each corner; its own place unless
            given.
    """

    __slots__ = ("_marks", "_slabs", "highest", "lowest")

    def __init__(
        self, rings: Sequence[Sequence[Point]], edges: Sequence[Sequence[int]] = ()
    ) -> None:
        sides = list(_sides([*_levelled(rings)], edges))
        marks = _marks({v for side in sides for _, v in (side.start, side.end)}, _crossings(sides))
        upright = [side for side in sides if side.start[1] != side.end[1]]
        pairs = [(a, b) for a, b in pairwise(marks) if b - a > _THIN]
        self._slabs = [tuple(_across(upright, lower, upper)) for lower, upper in pairs]
        self._marks = [(lower, upper) for lower, upper in pairs]
        filled = [pair for pair, slab in zip(pairs, self._slabs, strict=True) if slab]
        self.lowest: Inches = filled[0][0] if filled else 0.0
        self.highest: Inches = filled[-1][1] if filled else 0.0

    def up_to(self, v: Inches) -> Region:
        """Give the part of the region below a height."""
        part = copy(self)
        kept = [(mark, slab) for mark, slab in zip(self._marks, self._slabs, strict=True)]
        kept = [((low, min(high, v)), slab) for (low, high), slab in kept if v - low > _THIN]
        part._marks = [mark for mark, _ in kept]
        part._slabs = [tuple(one.between(*mark) for one in slab) for mark, slab in kept]
        part.highest = min(self.highest, v)
        return part

    def at(self, v: Inches) -> tuple[tuple[Inches, Inches], ...]:
        """Give where the region lies at one height: (left, right) from the left.

        At a height where a corner stands, what lies above it.
        """
        k = bisect_right(self._marks, (v, float("inf"))) - 1
        if k < 0 or not self._marks[k][0] <= v <= self._marks[k][1]:
            return ()
        return tuple((part.left.at(v), part.right.at(v)) for part in self._slabs[k])

    def between(self, lower: Inches, upper: Inches) -> tuple[Stretch, ...]:
        """Give the connected parts of the region between two heights, from the left."""
        layers = list(self._layers(lower, upper))
        if len(layers) == 1:
            return tuple(stretch_of([part]) for part in layers[0])
        return tuple(sorted(map(stretch_of, _joined(layers)), key=lambda one: one.left))

    def area(self) -> SquareInches:
        """Give the area of the region."""
        return sum(part.area() for slab in self._slabs for part in slab)

    def _layers(self, lower: float, upper: float) -> Iterator[list[Trapezoid]]:
        first = max(0, bisect_right(self._marks, (lower, float("inf"))) - 1)
        for k in range(first, bisect_left(self._marks, (upper,))):
            low, high = self._marks[k]
            low, high = max(low, lower), min(high, upper)
            if high - low > _THIN and self._slabs[k]:
                yield [part.between(low, high) for part in self._slabs[k]]


def stretch_of(parts: Sequence[Trapezoid]) -> Stretch:
    """Give connected trapezoids as one stretch.

    Args:
        parts: The trapezoids, from the lowest up; one or more.

    Returns:
        The stretch with its extremes.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> square = Region([[(0, 0), (6, 0), (6, 4), (0, 4)]]).between(1, 9)[0]
    >>> square.upper, square.area()
    (4, 18.0)
    """
    return Stretch(
        left=min(min(part.lower_left, part.upper_left) for part in parts),
        right=max(max(part.lower_right, part.upper_right) for part in parts),
        lower=parts[0].lower,
        upper=max(part.upper for part in parts),
        parts=tuple(parts),
    )


def _levelled(rings: Sequence[Sequence[Point]]) -> Iterator[list[Point]]:
    """Give rings whose corners are at one height where they are but for float dust."""
    level: dict[float, float] = {}
    at = float("-inf")
    for v in sorted({v for ring in rings for _, v in ring}):
        at = v if v - at > _THIN else at
        level[v] = at
    for ring in rings:
        yield [(u, level[v]) for u, v in ring]


def _marks(corners: set[float], crossings: set[float]) -> list[float]:
    """Give the heights at which a region is cut, but for crossings that are at another one."""
    found = sorted(corners)
    for v in sorted(crossings):
        k = bisect_left(found, v)
        if all(abs(v - at) > _THIN for at in found[max(0, k - 1) : k + 1]):
            found.insert(k, v)
    return found


def _sides(rings: Sequence[Sequence[Point]], edges: Sequence[Sequence[int]]) -> Iterator[Side]:
    for n, ring in enumerate(rings):
        named = edges[n] if edges else range(len(ring))
        for k, (start, edge) in enumerate(zip(ring, named, strict=True)):
            yield Side(start, ring[(k + 1) % len(ring)], edge)


def _crossings(sides: Sequence[Side]) -> set[float]:
    """Give the heights at which two sides cross between their ends."""
    found = set()
    for k, one in enumerate(sides):
        (au, av), (bu, bv) = one.start, one.end
        for other in sides[k + 1 :]:
            (cu, cv), (du, dv) = other.start, other.end
            if max(av, bv) <= min(cv, dv) or max(cv, dv) <= min(av, bv):
                continue
            if max(au, bu) < min(cu, du) or max(cu, du) < min(au, bu):
                continue
            across = (bu - au) * (dv - cv) - (bv - av) * (du - cu)
            if across:
                s = ((cu - au) * (dv - cv) - (cv - av) * (du - cu)) / across
                t = ((cu - au) * (bv - av) - (cv - av) * (bu - au)) / across
                if 0 < s < 1 and 0 < t < 1:
                    found.add(av + s * (bv - av))
    return found


def _across(sides: Sequence[Side], lower: float, upper: float) -> Iterator[Trapezoid]:
    """Give the trapezoids of one slab from the left: between sides, where the region is."""
    crossing = [
        side
        for side in sides
        if min(side.start[1], side.end[1]) <= lower and max(side.start[1], side.end[1]) >= upper
    ]
    crossing.sort(key=lambda side: side.at(lower) + side.at(upper))
    turns, left = 0, None
    for side in crossing:
        before = turns
        turns += 1 if side.end[1] < side.start[1] else -1
        if before <= 0 < turns:
            left = side
        elif turns <= 0 < before and left is not None:
            made = _trapezoid(lower, upper, left, side)
            if made.area() > 0:
                yield made


def _joined(layers: Sequence[Sequence[Trapezoid]]) -> list[list[Trapezoid]]:
    """Gather trapezoids of neighbouring layers that lie over each other, lowest first."""
    flat = [part for layer in layers for part in layer]
    return [[flat[k] for k in group] for group in gathered(flat, _touch)]


def _touch(one: Trapezoid, other: Trapezoid) -> bool:
    """Tell whether one trapezoid stands on another by more than a point."""
    under, over = (one, other) if one.lower < other.lower else (other, one)
    left = max(under.upper_left, over.lower_left)
    right = min(under.upper_right, over.lower_right)
    return abs(over.lower - under.upper) <= _THIN and right - left > _THIN


def gathered(things: Sequence[Thing], touch: Callable[[Thing, Thing], bool]) -> list[list[int]]:
    """Gather what touches, directly or by way of others.

    Args:
        things: The things.
        touch: Whether two of them touch.

    Returns:
        The places of the things in each group, in order.

    Raises:
        Nothing.

    Source:
        The connected components of a graph.

    >>> gathered([1, 5, 2, 9], lambda one, other: abs(one - other) == 1)
    [[0, 2], [1], [3]]
    """
    groups: list[list[int]] = []
    for k, thing in enumerate(things):
        joined = [group for group in groups if any(touch(things[i], thing) for i in group)]
        groups = [group for group in groups if group not in joined]
        groups.append(sorted([k, *(i for group in joined for i in group)]))
    return sorted(groups)
