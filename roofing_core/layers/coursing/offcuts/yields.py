"""Yields: what can be cut from one shingle that weighs most, each piece having a weight."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from roofing_core.layers.coursing.offcuts.sharing import Keeps, Kind, Stock

Yield = tuple[int, tuple[int, ...]]
"""What pieces weigh together, and their places among the kinds."""

Ladder = tuple[list[int], list[Yield]]
"""Heaviest yields by the room that they take: the room from which each is to be had."""

#: A longer ladder than this is thinned: yields are taken to need a little less room than they do.
_MOST_STEPS = 400


class Yields:
    """The heaviest yields of a shingle, under one set of weights after another.

    None is heavier than what is given. What is given may be heavier than what can be cut: with
    tabs, a kind may be taken more often than there are pieces; without, where very many sets of
    pieces come into question, some of them fit only nearly.

    Attributes:
        work: A measure of the work done so far.
    """

    def __init__(self, kinds: Sequence[Kind], amounts: Sequence[int], stock: Stock) -> None:
        """Take what is to be cut: the kinds, the largest first, how many of each, and from what."""
        self.kinds, self.stock = kinds, stock
        self.sizes = [stock.size(kind) for kind in kinds]
        self.places = {
            keeps: [k for k, kind in enumerate(kinds) if kind.keeps == keeps] for keeps in _KEEPS
        }
        self.lots = [
            (k, many) for k in self.places["neither"] for many in _doubled(
                min(amounts[k], stock.room // self.sizes[k])
            )
        ]  # fmt: skip
        self.work = 0

    def heaviest(self, weights: Sequence[int]) -> Yield:
        """Give the pieces from one shingle that weigh most together.

        At most one piece that keeps its left end and one that keeps its right, and between them
        what fits.
        """
        rights = list(self._ends(weights, "right"))
        ladder = self.free(weights)
        best: Yield = (0, ())
        for begin, at_left in self._ends(weights, "left"):
            if self.stock.tabs:
                ladder = self._along_tabs(weights, begin)
            self.work += len(rights)
            for size, at_right in rights:
                end = self.stock.room - size
                if end < begin:
                    break
                middle = up_to(ladder, end if self.stock.tabs else end - begin)
                weight = at_left[0] + at_right[0] + middle[0]
                if weight > best[0]:
                    best = weight, at_left[1] + middle[1] + at_right[1]
        return best

    def _ends(self, weights: Sequence[int], keeps: Keeps) -> Iterator[tuple[int, Yield]]:
        """Give no piece, and each that keeps an end and is heavier than all smaller ones."""
        yield 0, (0, ())
        most = 0
        for k in reversed(self.places[keeps]):
            if weights[k] > most:
                most = weights[k]
                yield self.sizes[k], (most, (k,))

    def free(self, weights: Sequence[int]) -> Ladder:
        """Give the heaviest yields of pieces that keep no end, wherever they lie."""
        steps: list[tuple[int, Yield]] = [(0, (0, ()))]
        for k, many in self.lots:
            if weights[k] > 0:
                size, weight, chosen = self.sizes[k] * many, weights[k] * many, (k,) * many
                more = [
                    (at + size, (before + weight, pieces + chosen))
                    for at, (before, pieces) in steps
                    if at + size <= self.stock.room
                ]
                self.work += len(steps)
                steps = list(_rising(self._thinned([*steps, *more])))
        return [at for at, _ in steps], [chosen for _, chosen in steps]

    def _thinned(self, steps: list[tuple[int, Yield]]) -> list[tuple[int, Yield]]:
        if len(steps) <= 2 * _MOST_STEPS:
            return steps
        apart = -(-self.stock.room // _MOST_STEPS)
        return [(at // apart * apart, chosen) for at, chosen in steps]

    def _along_tabs(self, weights: Sequence[int], begin: int) -> Ladder:
        """Give the heaviest yields of pieces that keep no end, by where they end on the shingle."""
        lying = sorted(
            (start + self.sizes[k], start, k)
            for k in self.places["neither"]
            if weights[k] > 0
            for start in self.kinds[k].starts
            if start >= begin
        )
        self.work += len(lying)
        ladder: Ladder = [begin], [(0, ())]
        for end, start, k in lying:
            weight, chosen = up_to(ladder, start)
            if weight + weights[k] > ladder[1][-1][0]:
                ladder[0].append(end)
                ladder[1].append((weight + weights[k], (*chosen, k)))
        return ladder


_KEEPS: tuple[Keeps, ...] = ("left", "right", "neither")


def _doubled(many: int) -> Iterator[int]:
    """Give 1, 2, 4, ... that come to a number, and of which any smaller one can be made up."""
    lot = 1
    while many > 0:
        yield min(lot, many)
        many -= lot
        lot *= 2


def _rising(steps: list[tuple[int, Yield]]) -> Iterator[tuple[int, Yield]]:
    """Keep the yields that are heavier than all that take no more room."""
    most = -1
    for at, chosen in sorted(steps, key=lambda step: (step[0], -step[1][0])):
        if chosen[0] > most:
            most = chosen[0]
            yield at, chosen


def up_to(ladder: Ladder, room: int) -> Yield:
    """Give the heaviest yield within some room.

    Args:
        ladder: The heaviest yields by the room that they take.
        room: What they may take, at least as much as the first of them.

    Returns:
        What it weighs, and the places of its pieces among the kinds.

    Raises:
        Nothing.

    Source:
        None: looking it up.

    >>> up_to(([0, 7], [(0, ()), (2, (0,))]), 6)
    (0, ())
    """
    return ladder[1][bisect_right(ladder[0], room) - 1]
