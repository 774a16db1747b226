"""Searching: whether pieces can be cut from so many shingles, tried to the end.

Shingle by shingle: the largest piece that is left is cut from the next one, with each set of others
that could matter. A set matters if nothing more fits beside it, if no piece of it can change places
with a larger one (what can be cut with that set can be cut with the other), and if it wastes no
more, by any weighing, than so many shingles allow. Where the same pieces were left before, after as
many shingles or fewer, nothing is tried again.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence

from roofing_core.layers.coursing.offcuts.sharing import Keeps, Kind, Stock
from roofing_core.layers.coursing.offcuts.weighing import Counts, Weighing, apart_count
from roofing_core.layers.coursing.offcuts.yields import Yields, up_to

#: Looking at so many pieces takes as long as a step.
_A_STEP = 50


class SearchEnded(Exception):  # noqa: N818 - it is not an error, it is an answer
    """The search took as many steps as it was given, and does not know."""


_ENDS: tuple[Keeps, ...] = ("left", "right", "neither")

_Cut = tuple[int, ...]
"""The pieces of one shingle, by their places among the kinds."""


class Search:
    """Looks for a way of cutting pieces from a given number of shingles."""

    def __init__(
        self, counts: Counts, stock: Stock, *, weighings: Sequence[Weighing], steps: int
    ) -> None:
        """Make ready.

        Args:
            counts: The pieces, none of which keeps both ends.
            stock: What they are cut from.
            weighings: Proofs; the first one guides the search.
            steps: How many sets of pieces it may look at for one number of shingles.
        """
        self.counts, self.stock = counts, stock
        self.kinds, self.amounts = [*counts], [*counts.values()]
        self.sizes = [stock.size(kind) for kind in self.kinds]
        self.weighings, self.weights = weighings, weighings[0].weights
        self.allowed = self.steps = steps
        self.free = Yields(self.kinds, self.amounts, stock).free(self.weights)
        self.places = {
            keeps: [k for k, kind in enumerate(self.kinds) if kind.keeps == keeps]
            for keeps in _ENDS
        }

    def cut_from(self, shingles: int) -> list[list[Kind]]:
        """Cut all pieces from so many shingles; give nothing where that cannot be.

        Raises `SearchEnded` where the steps are used up.
        """
        self.amounts = [*self.counts.values()]
        self.steps = self.allowed
        spare = [shingles * one.limit - one.total(self.counts) for one in self.weighings]
        if min(spare) < 0:
            return []
        cut: list[_Cut] = []
        met: dict[tuple[int, ...], int] = {}
        levels = [(self._sets(spare[0]), spare)]
        while levels:
            one = next(levels[-1][0], None)
            if one is None:
                levels.pop()
                self._put_back(cut)
                continue
            self._take(one, cut)
            spare = self._spare(levels[-1][1], one)
            left = tuple(self.amounts)
            if not any(left):
                return [[self.kinds[k] for k in each] for each in cut]
            in_vain = min(spare) < 0 or met.get(left, shingles) <= len(cut)
            if in_vain or len(cut) + self._apart() > shingles:
                self._put_back(cut)
            else:
                met[left] = len(cut)
                levels.append((self._sets(spare[0]), spare))
        return []

    def _spare(self, spare: Sequence[int], one: _Cut) -> list[int]:
        """Give what may still be wasted, by each weighing, after one more shingle."""
        return [
            before - weighing.limit + sum([weighing.weights[k] for k in one])
            for before, weighing in zip(spare, self.weighings, strict=True)
        ]

    def _take(self, one: _Cut, cut: list[_Cut]) -> None:
        cut.append(one)
        for k in one:
            self.amounts[k] -= 1

    def _put_back(self, cut: list[_Cut]) -> None:
        for k in cut.pop() if cut else ():
            self.amounts[k] += 1

    def _apart(self) -> int:
        left = {kind: n for kind, n in zip(self.kinds, self.amounts, strict=True) if n}
        return apart_count(left, self.stock)[0]

    def _sets(self, spare: int) -> Iterator[_Cut]:
        """Give the sets that matter with the largest piece that is left, the heaviest first."""
        first = next(k for k, amount in enumerate(self.amounts) if amount)
        needed = self.weighings[0].limit - spare
        self.amounts[first] -= 1
        found = [
            (sum([self.weights[k] for k in chosen]), self._taken(chosen), chosen)
            for ends in self._with_ends(first)
            for chosen in self._filled(ends, 0, needed)
            if self._matters(chosen)
        ]
        self.amounts[first] += 1
        found.sort(key=lambda one: (-one[0], -one[1], one[2]))
        return iter([chosen for _, _, chosen in found])

    def _taken(self, chosen: _Cut) -> int:
        return sum([self.sizes[k] for k in chosen])

    def _with_ends(self, first: int) -> Iterator[_Cut]:
        """Give the first piece with at most one more for each end."""
        keeps = self.kinds[first].keeps
        lefts = [()] if keeps == "left" else [(), *self._at_hand("left")]
        rights = [()] if keeps == "right" else [(), *self._at_hand("right")]
        for left in lefts:
            self._spend(len(rights))
            for right in rights:
                chosen = (first, *left, *right)
                if self._taken(chosen) <= self.stock.room:
                    yield chosen

    def _at_hand(self, keeps: Keeps) -> Iterator[_Cut]:
        for k in self.places[keeps]:
            if self.amounts[k]:
                yield (k,)

    def _filled(self, chosen: _Cut, begin: int, needed: int) -> Iterator[_Cut]:
        """Give a set with any pieces beside it that keep no end, and waste too little to miss."""
        self._spend(len(self.places["neither"]) - begin)
        weight = sum([self.weights[k] for k in chosen])
        room = self.stock.room - self._taken(chosen)
        if weight + up_to(self.free, room)[0] < needed:
            return
        free = self.places["neither"]
        for i in range(begin, len(free)):
            k = free[i]
            if self.amounts[k] and self.sizes[k] <= room:
                self.amounts[k] -= 1
                yield from self._filled((*chosen, k), i, needed)
                self.amounts[k] += 1
        if weight >= needed:
            yield chosen

    def _spend(self, looked_at: int) -> None:
        """Take a step, and more of them for every so many pieces that are looked at."""
        self.steps -= 1 + looked_at // _A_STEP
        if self.steps < 0:
            raise SearchEnded

    def _matters(self, chosen: _Cut) -> bool:
        """Tell whether a set can be cut, with nothing beside it and nothing larger in it."""
        if self.stock.tabs and not self._fit(chosen):
            return False
        ends = {self.kinds[k].keeps for k in chosen}
        room = self.stock.room - self._taken(chosen)
        for keeps, places in self.places.items():
            if (keeps == "neither" or keeps not in ends) and self._any(chosen, places, room):
                return False
        return not any(self._is_outdone(chosen, c, room) for c in {*chosen[1:]})

    def _is_outdone(self, chosen: _Cut, c: int, room: int) -> bool:
        """Tell whether a larger piece could take the place of one, which then takes its."""
        keeps, size = self.kinds[c].keeps, self.sizes[c]
        if self.stock.tabs and keeps == "neither":
            return False
        others = list(chosen)
        others.remove(c)
        places = self.places[keeps]
        larger = places[: bisect_left(places, -size, key=lambda k: -self.sizes[k])]
        return self._any(tuple(others), larger, room + size)

    def _any(self, chosen: _Cut, places: Sequence[int], room: int) -> bool:
        """Tell whether any piece that is left fits beside some others, the smallest first."""
        for k in reversed(places):
            if self.amounts[k]:
                if self.sizes[k] > room:
                    return False
                if not self.stock.tabs or self._fit((*chosen, k)):
                    return True
        return False

    def _fit(self, chosen: _Cut) -> bool:
        return self.stock.fit([self.kinds[k] for k in chosen])
