"""Sweeping: which layers lie over every point of a plane, exactly, from the lowest point up.

A plane is cut at every height at which a side of anything begins, ends or crosses another. Between
two such heights it falls into cells, over each of which the same layers lie everywhere.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from operator import le
from typing import NamedTuple

from roofing_core.auditing.shapes import DUST, TOUCHING, Span, Trapezoid

#: A ledge narrower than this is none: finer than anyone cuts.
_LEDGE = 1 / 16


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """Something that lies on a plane.

    Attributes:
        order: Its place in the order of laying.
        shape: Its trapezoids, each height covered once.
    """

    order: int
    shape: tuple[Trapezoid, ...]


class Cell(NamedTuple):
    """A part of a plane over which the same layers lie everywhere.

    Attributes:
        lies: Where it lies.
        layers: The orders of the layers that lie over it, lowest first.
    """

    lies: Trapezoid
    layers: tuple[int, ...]


def joined(shapes: Iterable[Trapezoid]) -> tuple[Trapezoid, ...]:
    """Join the pieces of one layer where they touch, so that joints are no gaps.

    Args:
        shapes: The trapezoids of its pieces.

    Returns:
        What they cover together, lowest first, from the left.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> joined([Trapezoid(0, 5, 0, 0, 8, 8), Trapezoid(0, 5, 8, 8, 9, 9)])
    (Trapezoid(lower=0, upper=5, lower_left=0, upper_left=0, lower_right=9, upper_right=9),)
    """
    every = list(shapes)
    marks = sorted({v for one in every for v in one[:2]})
    if not marks[2:]:  # all of one height
        return tuple(_beside(every))
    return tuple(_grown_up([*_beside(row)] for row in _slabs(every, marks)))


def _slabs(shapes: Iterable[Trapezoid], marks: Sequence[float]) -> Iterator[list[Trapezoid]]:
    """Give what lies between each two heights; each shape is looked at only where it lies."""
    waiting = sorted(shapes, key=lambda one: one[0], reverse=True)
    standing: list[Trapezoid] = []
    for low, high in pairwise(marks):
        while waiting and waiting[-1].lower <= low:
            standing.append(waiting.pop())
        standing = [one for one in standing if one.upper > low]
        if high - low > DUST:
            yield [one.between(low, high) for one in standing]


def region(
    rows: Iterable[tuple[Cell, ...]], belongs: Callable[[Cell], bool]
) -> tuple[Trapezoid, ...]:
    """Give where the cells of one kind lie, as one shape.

    Args:
        rows: The rows of cells, from `cells`.
        belongs: Tells whether a cell is of that kind.

    Returns:
        What they cover together, lowest first, from the left.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> deck = Layer(order=0, shape=(Trapezoid(0, 9, 0, 0, 9, 9),))
    >>> strip = Layer(order=1, shape=(Trapezoid(0, 4, 0, 0, 9, 9),))
    >>> [one.lower for one in region(cells([deck, strip]), lambda cell: len(cell.layers) == 1)]
    [4]
    """
    return tuple(
        _grown_up([*_beside([cell.lies for cell in row if belongs(cell)])] for row in rows)
    )


def _grown_up(rows: Iterable[list[Trapezoid]]) -> Iterator[Trapezoid]:
    """Join rows, each above the one before it, where all sides go straight on."""
    standing: list[Trapezoid] = []
    for row in rows:
        grown = _grown(standing, row)
        if not grown:
            yield from standing
        standing = grown or row
    yield from standing


def _grown(below: list[Trapezoid], above: list[Trapezoid]) -> list[Trapezoid]:
    """Give two rows as one where all sides go straight on from one to the other, else nothing.

    Where a hip crosses a joint both pieces have a corner, the course has none: fewer rows to sweep.
    """
    if len(below) != len(above) or not all(map(_goes_on, below, above)):
        return []
    return [
        one._replace(upper=other.upper, upper_left=other.upper_left, upper_right=other.upper_right)
        for one, other in zip(below, above, strict=True)
    ]


def _goes_on(one: Trapezoid, other: Trapezoid) -> bool:
    if other.lower - one.upper > DUST:
        return False
    share = (one.upper - one.lower) / (other.upper - one.lower)
    left = one.lower_left + (other.upper_left - one.lower_left) * share
    right = one.lower_right + (other.upper_right - one.lower_right) * share
    off = (left - one.upper_left, left - other.lower_left, right - one.upper_right,
           right - other.lower_right)  # fmt: skip
    return max(off) <= DUST and min(off) >= -DUST


def _beside(shapes: list[Trapezoid]) -> Iterator[Trapezoid]:
    """Join trapezoids of one height where they touch and none leans over another."""
    if not shapes:
        return
    shapes.sort(key=lambda one: one.lower_left + one.upper_left)
    found = shapes[0]
    for one in shapes[1:]:
        if _follows(found, one):
            found = found._replace(
                lower_right=max(found.lower_right, one.lower_right),
                upper_right=max(found.upper_right, one.upper_right),
            )
        else:
            yield found
            found = one
    yield found


def _follows(one: Trapezoid, other: Trapezoid) -> bool:
    """Tell whether the union of two trapezoids is one, to the right of the first one's left."""
    starts = other.lower_left >= one.lower_left - DUST and other.upper_left >= one.upper_left - DUST
    touches = (
        other.lower_left - one.lower_right <= TOUCHING
        and other.upper_left - one.upper_right <= TOUCHING
    )
    below, above = other.lower_right - one.lower_right, other.upper_right - one.upper_right
    return starts and touches and (min(below, above) >= -DUST or max(below, above) <= DUST)


def cells(layers: Sequence[Layer]) -> Iterator[tuple[Cell, ...]]:
    """Give the cells of a plane, from the lowest up, one row between two heights at a time.

    Args:
        layers: Everything that lies on it, the deck among them.

    Returns:
        Rows of cells from the left; where nothing lies there is no cell.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> deck = Layer(order=0, shape=(Trapezoid(0, 9, 0, 0, 9, 9),))
    >>> strip = Layer(order=1, shape=(Trapezoid(0, 4, 0, 0, 9, 9),))
    >>> [(row[0].lies.upper, row[0].layers) for row in cells([deck, strip])]
    [(4, (0, 1)), (9, (0,))]
    """
    every = sorted(
        ((one, layer.order) for layer in layers for one in layer.shape), key=lambda pair: pair[0][0]
    )
    marks = sorted({v for one, _ in every for v in one[:2]})
    standing: list[tuple[Trapezoid, int]] = []
    begun = 0
    for low, high in pairwise(marks):
        while begun < len(every) and every[begun][0].lower <= low:
            standing.append(every[begun])
            begun += 1
        standing = [pair for pair in standing if pair[0].upper >= high]
        if high - low > DUST and standing:
            yield from _rows(_sides(standing, low, high), low, high)


#: A side of something between two heights: the sum of its ends, by which it stands further left or
#: right; its u at both; the order of its layer; 1 for a left side, -1 for a right one.
_Side = tuple[float, float, float, int, int]


def _sides(standing: Iterable[tuple[Trapezoid, int]], low: float, high: float) -> list[_Side]:
    """Give the sides of what stands between two heights, from the left."""
    sides: list[_Side] = []
    for one, order in standing:
        _, _, left, left_high, right, right_high = one.between(low, high)
        sides.append((left + left_high, left, left_high, order, 1))
        sides.append((right + right_high, right, right_high, order, -1))
    sides.sort()
    return sides


def _rows(sides: list[_Side], low: float, high: float) -> Iterator[tuple[Cell, ...]]:
    """Give the rows of cells of one slab: one, or several where sides cross within it."""
    crossings = _crossings(sides)
    if not crossings:
        if row := tuple(_row(sides, low, high)):
            yield row
        return
    for lower, upper in pairwise([0.0, *sorted(crossings), 1.0]):
        v, to = low + (high - low) * lower, low + (high - low) * upper
        if to - v > DUST and (row := tuple(_row(_cut(sides, lower, upper), v, to))):
            yield row


def _cut(sides: Iterable[_Side], lower: float, upper: float) -> list[_Side]:
    """Give sides between two shares of their height."""
    found = []
    for _, low, high, order, turn in sides:
        begin, end = low + (high - low) * lower, low + (high - low) * upper
        found.append((begin + end, begin, end, order, turn))
    return sorted(found)


def _crossings(sides: list[_Side]) -> set[float]:
    """Give at which shares of their height sides cross."""
    lows, highs = [side[1] for side in sides], [side[2] for side in sides]
    if all(map(le, lows, lows[1:])) and all(map(le, highs, highs[1:])):
        return set()
    found: set[float] = set()
    ordered = sorted(set(zip(lows, highs, strict=True)))
    for k, (a_low, a_high) in enumerate(ordered):
        for b_low, b_high in ordered[k + 1 :]:
            apart, past = b_low - a_low, a_high - b_high
            if apart > DUST and past > DUST:
                found.add(apart / (apart + past))
    return found


def _row(sides: list[_Side], lower: float, upper: float) -> Iterator[Cell]:
    """Give the cells between two heights, between which no sides cross."""
    times: dict[int, int] = {}  # of each layer how many parts stand here
    _, left_low, left_high, _, _ = sides[0]
    layers: tuple[int, ...] = ()  # of the cell that is not given yet: it may go on
    begun, ended = (left_low, left_high), (left_low, left_high)
    for _, low, high, order, turn in sides:
        if low - left_low > TOUCHING or high - left_high > TOUCHING:
            here = tuple(sorted(times)) if times else ()
            if here != layers:
                if layers:
                    yield Cell(_between(lower, upper, begun, ended), layers)
                layers, begun = here, (left_low, left_high)
            left_low, left_high = ended = low, high
        elif not times:
            left_low, left_high = low, high
        times[order] = times.get(order, 0) + turn
        if not times[order]:
            del times[order]
    if layers:
        yield Cell(_between(lower, upper, begun, ended), layers)


def _between(lower: float, upper: float, left: Span, right: Span) -> Trapezoid:
    return Trapezoid(lower, upper, *left, *right)


def stacked(rows: Iterable[tuple[Cell, ...]]) -> Iterator[tuple[Cell, Cell]]:
    """Give every two cells of which one stands on the other, or leans over it.

    Args:
        rows: The rows of cells, from `cells`.

    Returns:
        Pairs: the cell below, and the cell right above it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> deck = Layer(order=0, shape=(Trapezoid(0, 9, 0, 0, 9, 9),))
    >>> strip = Layer(order=1, shape=(Trapezoid(0, 4, 0, 0, 9, 9),))
    >>> [(below.layers, above.layers) for below, above in stacked(cells([deck, strip]))]
    [((0, 1), (0,))]
    """
    before: tuple[Cell, ...] = ()
    for row in rows:
        if before and row[0].lies.lower - before[0].lies.upper <= DUST:
            yield from _standing(before, row)
        yield from _leaning(row)
        before = row


def _standing(below: tuple[Cell, ...], above: tuple[Cell, ...]) -> Iterator[tuple[Cell, Cell]]:
    k = 0
    for cell in above:
        left, right = cell.lies.lower_left, cell.lies.lower_right
        while k < len(below) and below[k].lies.upper_right <= left + TOUCHING:
            k += 1
        j = k
        while j < len(below) and below[j].lies.upper_left < right - TOUCHING:
            if min(right, below[j].lies.upper_right) - max(left, below[j].lies.upper_left) > _LEDGE:
                yield below[j], cell
            j += 1


def _leaning(row: tuple[Cell, ...]) -> Iterator[tuple[Cell, Cell]]:
    """Give neighbours of a row, where the side between them leans: one lies over the other."""
    for one, other in pairwise(row):
        lean = one.lies.upper_right - one.lies.lower_right
        if abs(other.lies.lower_left - one.lies.lower_right) <= TOUCHING and abs(lean) > _LEDGE:
            yield (one, other) if lean < 0 else (other, one)
