"""How often rectangles lie over every point of a polygon: counted cell by cell, in fractions.

Nothing of the library is used here. The polygon is cut into slabs at the heights of its corners and
of the rectangles' edges; within a slab its sides are straight, so that what it reaches to the left
and to the right it reaches at the slab's lower or upper edge.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

Point = tuple[float, float]
#: Left, right, lower, upper.
Box = tuple[float, float, float, float]

#: What is narrower or lower than this, in inches, is float dust.
DUST = Fraction(1, 10**6)


def least_cover(
    corners: Sequence[Point],
    boxes: Sequence[Box],
    *,
    above: float = float("-inf"),
    below: float = float("inf"),
) -> int:
    """Count how many of the boxes lie over the point of a polygon that has the fewest.

    Only points between two heights are looked at, where such are given.
    """
    counts = [
        sum(left <= u <= right for left, right in spans)
        for lower, upper in _slabs(corners, boxes, above, below)
        for spans in [_over(boxes, lower, upper)]
        for reach in _reaches(corners, lower, upper)
        for u in _points(reach, spans)
    ]
    return min(counts)


def _slabs(
    corners: Sequence[Point], boxes: Sequence[Box], above: float, below: float
) -> Iterator[tuple[Fraction, Fraction]]:
    heights = [v for _, v in corners]
    low, high = max(min(heights), above), min(max(heights), below)
    marks = {low, high, *heights, *(v for box in boxes for v in box[2:])}
    for lower, upper in pairwise(sorted(Fraction(v) for v in marks if low <= v <= high)):
        if upper - lower > DUST:
            yield lower, upper


def _over(
    boxes: Sequence[Box], lower: Fraction, upper: Fraction
) -> list[tuple[Fraction, Fraction]]:
    """Give left and right of the boxes that lie over the whole height of a slab."""
    return [
        (Fraction(left), Fraction(right))
        for left, right, bottom, top in boxes
        if bottom <= lower + DUST and top >= upper - DUST
    ]


def _reaches(
    corners: Sequence[Point], lower: Fraction, upper: Fraction
) -> Iterator[tuple[Fraction, Fraction]]:
    """Give how far the polygon reaches left and right in a slab, one entry for each part of it."""
    sides = []
    for (au, av), (bu, bv) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if min(av, bv) <= lower and max(av, bv) >= upper:
            lean = (Fraction(bu) - Fraction(au)) / (Fraction(bv) - Fraction(av))
            sides.append(tuple(Fraction(au) + lean * (v - Fraction(av)) for v in (lower, upper)))
    sides.sort(key=sum)
    for left, right in zip(sides[::2], sides[1::2], strict=True):
        yield min(left), max(right)


def _points(
    reach: tuple[Fraction, Fraction], spans: Sequence[tuple[Fraction, Fraction]]
) -> Iterator[Fraction]:
    """Give a point in every gap between the ends of the spans within a reach."""
    left, right = reach
    marks = {left, right, *(u for span in spans for u in span if left < u < right)}
    for one, other in pairwise(sorted(marks)):
        if other - one > DUST:
            yield (one + other) / 2
