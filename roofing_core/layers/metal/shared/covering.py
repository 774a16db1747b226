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


#: So many reaches are kept just as they are, and about so many more not quite.
_MOST_EXACT, _MOST_COARSE = 10_000, 5_000

#: No more beginnings of purchases than this are looked at in one go.
_MOST_LOOKED_AT = 50_000


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
        # The length that reaches farthest for its cost is taken last, in one go.
        order = sorted(range(len(offered)), key=lambda k: -offered[k].cost / self.reach[k])
        self.order = order
        self.rate = offered[order[-1]].cost / self.reach[order[-1]] * (1 - 1e-12)
        self.exact_to, self.lost = farthest, 0.0
        self.looked_at, self.ended = 0, False
        self.reaches, self.costs, self.steps = self._cheapest(farthest)

    def _cheapest(self, farthest: float) -> tuple[list[float], list[int], list[tuple[int, int]]]:
        """Give every reach that costs less than any farther one, and its cost, nearest first.

        And for each of them, from which one it comes by which length. From so many on, those that
        reach hardly farther than one before are left out.
        """
        reaches, costs, steps = [0.0], [0], [(0, 0)]
        heap, met = [(0, 0.0, 0, 0)], set[tuple[int, float]]()
        grain, best = self.dust, -1.0
        while best < farthest - self.dust:
            cost, nearer, before, by = heappop(heap)
            if -nearer <= best + grain:
                continue
            best = -nearer
            if cost:
                reaches.append(best)
                costs.append(cost)
                steps.append((before, by))
            if len(reaches) == _MOST_EXACT:
                grain = (farthest - best) / _MOST_COARSE
                self.exact_to, self.lost = best, grain * (farthest / min(self.reach) + 1)
            for k, (one, reach) in enumerate(zip(self.offered, self.reach, strict=True)):
                more = (cost + one.cost, nearer - reach)
                if more not in met:
                    met.add(more)
                    heappush(heap, (*more, len(reaches) - 1, k))
        return reaches, costs, steps

    def _place(self, far: float) -> int:
        return max(1, bisect_left(self.reaches, far - self.dust))

    def least(self, far: Inches) -> int:
        """Give the least cost of one or more lengths that reach so far beyond a lap.

        Far out where not all are known, what they cost at least.
        """
        known = far if far <= self.exact_to else max(self.exact_to, far - self.lost)
        return self.costs[self._place(known)]

    def cheapest(self, far: Inches) -> Bought:
        """Give the cheapest lengths, of those known, that reach so far beyond a lap."""
        return next(self.reaching(far))

    def reaching(self, far: Inches) -> Iterator[Bought]:
        """Give lengths that reach so far beyond a lap, cheapest first, and more without end."""
        place = self._place(far)
        for k in range(place, len(self.reaches)):
            yield self._traced(k)
        last = [*self._traced(len(self.reaches) - 1)]
        while True:
            last[self.order[-1]] += 1
            yield tuple(last)

    def _traced(self, place: int) -> Bought:
        bought = [0] * len(self.offered)
        while place:
            place, by = self.steps[place]
            bought[by] += 1
        return tuple(bought)

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
        """Give every purchase of exactly this cost that reaches so far beyond a lap.

        Where there are too many to look at, `ended` says so from then on.
        """
        *dear, last = self.order
        each = self.offered[last].cost
        for counts, spent, rest in self._beginnings(dear, far, lambda: cost):
            many, over = divmod(cost - spent, each)
            if not over and rest <= many * self.reach[last] + self.dust:
                yield self._bought(counts, many)

    def next_after(self, cost: int, far: Inches) -> int:
        """Give the least cost above one at which something reaches so far beyond a lap.

        Where there is too much to look at, a cost that is less.
        """
        *dear, last = self.order
        each = self.offered[last].cost
        best = [cost + self.least(far) + max(one.cost for one in self.offered)]
        for _, spent, rest in self._beginnings(dear, far, lambda: best[0]):
            reaching = whole_pieces(max(0.0, rest - self.dust) / self.reach[last])
            many = max(reaching, (cost - spent) // each + 1, 0 if spent else 1)
            best[0] = min(best[0], spent + many * each)
        return cost + 1 if self.looked_at > _MOST_LOOKED_AT else best[0]

    def _too_many(self) -> bool:
        """Tell whether too many beginnings were looked at in this go."""
        self.ended = self.ended or self.looked_at > _MOST_LOOKED_AT
        return self.looked_at > _MOST_LOOKED_AT

    def _beginnings(
        self, dear: Sequence[int], far: float, most: Callable[[], int]
    ) -> Iterator[tuple[list[int], int, float]]:
        """Give counts of all lengths but the last with what they cost and leave to reach.

        `most` is asked again and again: what costs more, however it goes on, is left out.
        """
        counts = [0] * len(dear)
        self.looked_at = 0

        def go(k: int, spent: int, rest: float) -> Iterator[tuple[list[int], int, float]]:
            self.looked_at += 1
            if k == len(dear):
                yield counts, spent, rest
                return
            one, reach = self.offered[dear[k]], self.reach[dear[k]]
            counts[k] = 0
            # Whole: what many dear lengths cost is more than a float holds exactly.
            while spent + int(self.rate * max(0.0, rest - self.dust)) <= most():
                if self._too_many():
                    return
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
