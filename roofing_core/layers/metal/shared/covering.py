"""Covering: the least cost of stock lengths that reach as far as a group of runs asks for.

Lengths laid end to end, each over the next by a lap, reach ``sum(S - lap) + lap``. What a purchase
costs is one whole number, so that nothing is rounded: its price, and of equal prices its count.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches

#: A length as a whole number of parts: each 1/64 in is 127,000 of them, a mm 320,000.
PARTS_OF_AN_INCH = 8_128_000

Bought = tuple[int, ...]
"""How many of each stock length, in the order of the offers."""


class Offered(NamedTuple):
    """A stock length on offer, as it is reckoned with."""

    length: Inches
    cost: int


class Covering:
    """What reaching so far costs at least, and with which stock lengths."""

    def __init__(self, offered: Sequence[Offered], *, lap: Inches, farthest: Inches) -> None:
        """Work out the cheapest reach for each cost, up to the farthest that will be asked for.

        Args:
            offered: The stock lengths on offer.
            lap: Of one length over the next.
            farthest: The most that `least` is asked for.
        """
        self.offered, self.lap = tuple(offered), lap
        self.reach = [one.length - lap for one in offered]
        self.dust = 1e-9 * max(one.length for one in offered)
        self.reaches, self.costs = self._cheapest(farthest)
        # The length that reaches farthest for its cost is taken last, in one go.
        order = sorted(range(len(offered)), key=lambda k: -offered[k].cost / self.reach[k])
        self.order = order
        self.rate = offered[order[-1]].cost / self.reach[order[-1]] * (1 - 1e-12)

    def _cheapest(self, farthest: float) -> tuple[list[float], list[int]]:
        """Give every reach that costs less than any farther one, and its cost, nearest first."""
        reaches: list[float] = []
        costs: list[int] = []
        heap, met = [(0, 0.0)], {(0, 0.0)}
        best = -1.0
        while best < farthest - self.dust:
            cost, nearer = heappop(heap)
            if -nearer <= best + self.dust:
                continue
            best = -nearer
            reaches.append(best)
            costs.append(cost)
            for one, reach in zip(self.offered, self.reach, strict=True):
                more = (cost + one.cost, nearer - reach)
                if more not in met:
                    met.add(more)
                    heappush(heap, more)
        return reaches[1:], costs[1:]

    def least(self, far: Inches) -> int:
        """Give the least cost of one or more lengths that reach so far beyond a lap."""
        return self.costs[max(0, bisect_left(self.reaches, far - self.dust))]

    def over(self, far: Inches) -> Inches:
        """Give how much farther than asked for the cheapest lengths reach."""
        return self.reaches[max(0, bisect_left(self.reaches, far - self.dust))] - far

    def cheapest(self, far: Inches) -> Bought:
        """Give the cheapest lengths that reach so far beyond a lap."""
        return next(self.at(self.least(far), far))

    def cost(self, bought: Bought) -> int:
        """Give what a purchase costs."""
        return sum(many * one.cost for many, one in zip(bought, self.offered, strict=True))

    def lengths(self, bought: Bought) -> list[Inches]:
        """Give every length of a purchase, longest offers first."""
        each = [
            one.length for one, many in zip(self.offered, bought, strict=True) for _ in range(many)
        ]
        return sorted(each, reverse=True)

    def at(self, cost: int, far: Inches) -> Iterator[Bought]:
        """Give every purchase of exactly this cost that reaches so far beyond a lap."""
        *dear, last = self.order
        each = self.offered[last].cost
        for counts, spent, rest in self._beginnings(dear, far, lambda: cost):
            many, over = divmod(cost - spent, each)
            if not over and rest <= many * self.reach[last] + self.dust:
                yield self._bought(counts, many)

    def next_after(self, cost: int, far: Inches) -> int:
        """Give the least cost above one at which something reaches so far beyond a lap."""
        *dear, last = self.order
        each = self.offered[last].cost
        best = [cost + self.least(far) + max(one.cost for one in self.offered)]
        for _, spent, rest in self._beginnings(dear, far, lambda: best[0]):
            reaching = whole_pieces(max(0.0, rest - self.dust) / self.reach[last])
            many = max(reaching, (cost - spent) // each + 1, 0 if spent else 1)
            best[0] = min(best[0], spent + many * each)
        return best[0]

    def _beginnings(
        self, dear: Sequence[int], far: float, most: Callable[[], int]
    ) -> Iterator[tuple[list[int], int, float]]:
        """Give counts of all lengths but the last with what they cost and leave to reach.

        `most` is asked again and again: what costs more, however it goes on, is left out.
        """
        counts = [0] * len(dear)

        def go(k: int, spent: int, rest: float) -> Iterator[tuple[list[int], int, float]]:
            if k == len(dear):
                yield counts, spent, rest
                return
            one, reach = self.offered[dear[k]], self.reach[dear[k]]
            counts[k] = 0
            # Whole: what many dear lengths cost is more than a float holds exactly.
            while spent + int(self.rate * max(0.0, rest - self.dust)) <= most():
                yield from go(k + 1, spent, rest)
                counts[k] += 1
                spent, rest = spent + one.cost, rest - reach
            counts[k] = 0

        return go(0, 0, far)

    def _bought(self, counts: Sequence[int], last: int) -> Bought:
        bought = [0] * len(self.offered)
        for k, count in zip(self.order, [*counts, last], strict=True):
            bought[k] = count
        return tuple(bought)
