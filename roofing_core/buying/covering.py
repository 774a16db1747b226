"""Covering: the packs of several sizes that together hold what is needed, and cost least.

A small covering knapsack, solved exactly. Sizes and costs are whole numbers here, made of floats
and decimals without rounding either, so that nothing is lost and equals are equal.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cmp_to_key
from heapq import heappop, heappush
from typing import NamedTuple

#: States looked at before the search stops. Lists of prices as yards print them take some tens.
MOST_STEPS = 20_000


class Size(NamedTuple):
    """One size of pack, in whole numbers.

    Attributes:
        holds: What one holds, over 0.
        costs: What one costs.
        ties: What is counted where cost and amount are the same: 1 for every size, or anything
            where every size costs the same.
    """

    holds: int
    costs: int
    ties: int


class Covered(NamedTuple):
    """A choice of packs, in the order by which choices are compared.

    Attributes:
        cost: What they cost.
        amount: What they hold.
        ties: What is counted where cost and amount are the same.
        packs: How many of each size.
    """

    cost: int
    amount: int
    ties: int
    packs: tuple[int, ...]


def covered(needed: int, sizes: Sequence[Size]) -> tuple[Covered, bool]:
    """Choose packs that hold what is needed at the least cost.

    Of all choices the one that costs least; of these the one that holds least; of these the one
    with the least `ties`. The size with the lowest cost for what it holds sets the bound: what is
    needed costs at least ``needed * costs / holds`` of it, and each pack of another size adds its
    own loss to that. Choices of other sizes are looked at from the least loss up, each filled up
    with the best size, until the bound passes the best choice found. One that is another and whole
    packs of the best size is passed over.

    Args:
        needed: What is needed, 0 or more.
        sizes: The sizes on offer, one or more.

    Returns:
        The choice, and whether it is proved that none goes before it: it is, unless the search
        stopped at its limit of steps.

    Raises:
        Nothing.

    Source:
        Arithmetic: the linear relaxation of a covering knapsack bounds it.

    >>> small, large = Size(13, 13, 1), Size(21, 20, 1)
    >>> [covered(needed, [small, large])[0].packs for needed in (30, 26, 43)]
    [(1, 1), (2, 0), (2, 1)]
    """
    return _Search(needed, sizes).run()


class _Search:
    """One search: the best size, the others with their losses, and the best choice so far."""

    __slots__ = ("best", "best_place", "found", "heap", "needed", "others", "sizes")

    def __init__(self, needed: int, sizes: Sequence[Size]) -> None:
        self.needed, self.sizes = needed, sizes
        useful = _useful(sizes)
        self.best_place = _best_value(useful, sizes)
        best = self.best = sizes[self.best_place]
        # What is lost by a pack, times what the best size holds, which keeps it whole.
        self.others = [
            (k, sizes[k], sizes[k].costs * best.holds - sizes[k].holds * best.costs)
            for k in useful
            if k != self.best_place
        ]
        none = (0,) * len(sizes)
        self.heap = [(0, 0, 0, 0, none)]
        # A good choice to begin with: whole packs of the best size, and the rest of one size.
        self.found = min(self._filled(0, 0, none), *map(self._rest_of, useful))

    def run(self) -> tuple[Covered, bool]:
        least_amounts: dict[int, int] = {}
        steps = 0
        while self.heap and steps < MOST_STEPS:
            loss, _, cost, amount, packs = heappop(self.heap)
            if loss > self._most_loss():
                return self.found, True
            steps += 1
            rest = amount % self.best.holds
            if least_amounts.get(rest, amount + 1) > amount:
                least_amounts[rest] = amount
                self.found = min(self.found, self._filled(cost, amount, packs))
                if amount < self.needed:
                    self._grow(loss, cost, amount, packs)
        return self.found, not self.heap

    def _most_loss(self) -> int:
        """Give the most that may be lost by a choice that costs no more than the best so far."""
        return self.found.cost * self.best.holds - self.needed * self.best.costs

    def _grow(self, loss: int, cost: int, amount: int, packs: tuple[int, ...]) -> None:
        """Add one pack of each other size to a choice."""
        most = self._most_loss()
        for k, size, lost in self.others:
            if loss + lost <= most:
                grown = (*packs[:k], packs[k] + 1, *packs[k + 1 :])
                holds = amount + size.holds
                ties = self._ties(grown) - holds // self.best.holds * self.best.ties
                heappush(self.heap, (loss + lost, ties, cost + size.costs, holds, grown))

    def _filled(self, cost: int, amount: int, packs: tuple[int, ...]) -> Covered:
        """Fill a choice up with packs of the best size until it holds what is needed."""
        k, best = self.best_place, self.best
        more = max(0, -((amount - self.needed) // best.holds))
        full = (*packs[:k], packs[k] + more, *packs[k + 1 :])
        holds = amount + more * best.holds
        return Covered(cost + more * best.costs, holds, self._ties(full), full)

    def _rest_of(self, k: int) -> Covered:
        """Cover what whole packs of the best size leave with packs of another."""
        size = self.sizes[k]
        count = -(-(self.needed % self.best.holds) // size.holds)
        packs = tuple(count if place == k else 0 for place in range(len(self.sizes)))
        return self._filled(count * size.costs, count * size.holds, packs)

    def _ties(self, packs: tuple[int, ...]) -> int:
        return sum(count * size.ties for count, size in zip(packs, self.sizes, strict=True))


def _useful(sizes: Sequence[Size]) -> list[int]:
    """Give the places of the sizes that are there once and that no larger one undersells."""
    kept: list[int] = []
    for k in sorted(range(len(sizes)), key=lambda k: (-sizes[k].holds, *sizes[k][1:], k)):
        twice = bool(kept) and sizes[kept[-1]].holds == sizes[k].holds
        undersold = any(sizes[other].costs < sizes[k].costs for other in kept)
        if not (twice or undersold):
            kept.append(k)
    return kept


def _best_value(places: Sequence[int], sizes: Sequence[Size]) -> int:
    """Give the size that costs least for what it holds; of equals the largest."""

    def compare(one: int, other: int) -> int:
        a, b = sizes[one], sizes[other]
        return a.costs * b.holds - b.costs * a.holds or b.holds - a.holds

    return min(places, key=cmp_to_key(compare))
