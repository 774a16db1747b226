"""Staggering: pieces in such an order, and cut so, that laps of runs side by side stand apart.

First orders are tried with the pieces as they are; then the cuts are slid for orders of all the
pieces and for each way in which the laps of two runs can follow each other. Runs that neither share
lengths nor lie side by side are seen to by themselves.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import accumulate

from roofing_core.layers.metal.shared.cuts import (
    Cuts,
    Laid,
    Near,
    Orders,
    Pieces,
    all_orders,
    interleaved,
    linked_with,
    orders_of,
)
from roofing_core.layers.metal.shared.listing import Source
from roofing_core.layers.metal.shared.placing import Steps
from roofing_core.measures.units import Inches

#: So many orders of pieces as they are come first; that is enough where there is much to choose.
_MOST_AS_THEY_ARE = 2_000

Pair = tuple[int, int]
"""Two runs side by side, by their places."""


class Staggering:
    """Orders and slides the pieces of runs that lie side by side."""

    def __init__(
        self,
        runs: Sequence[Laid],
        beside: Sequence[Pair],
        *,
        lap: Inches,
        stagger: Inches,
        steps: Steps,
    ) -> None:
        """Make ready.

        Args:
            runs: The runs.
            beside: Which of them lie side by side.
            lap: Of each piece over the next.
            stagger: How far their laps are to stand apart at least.
            steps: How many orders may be looked at.
        """
        self.runs, self.beside = runs, beside
        self.lap, self.stagger, self.steps = lap, stagger, steps
        self.allowed = steps.left

    def staggered(self, pieces: Pieces) -> Pieces | None:
        """Give the pieces such that laps stand apart; nothing where no order and cut does it.

        Raises `StepsUsedUp` where the steps do not suffice to know.
        """
        return self._each_settled(pieces, as_they_are=True)

    def slid(self, pieces: Pieces) -> Pieces | None:
        """Give pieces such that laps stand apart, of lengths that need not be right to begin with.

        Raises `StepsUsedUp` where the steps do not suffice to know.
        """
        return self._each_settled(pieces, as_they_are=False)

    def blocked(self, pieces: Pieces) -> set[int]:
        """Give the second run of each pair that by itself has no order of pieces that will do."""
        return {pair[1] for pair in self.beside if self._as_they_are(pieces, [pair]) is None}

    def _each_settled(self, pieces: Pieces, *, as_they_are: bool) -> Pieces | None:
        settled: Pieces | None = pieces
        for linked, pairs in self._linked(pieces):
            found = self._as_they_are(settled, pairs) if as_they_are and settled else None
            if found is None and settled is not None:
                found = self._slid(settled, pairs, linked)
            settled = found
        return settled

    def _linked(self, pieces: Pieces) -> list[tuple[list[int], list[Pair]]]:
        """Give pairs that have to do with each other, and all runs that share lengths with them."""
        found: list[tuple[list[int], list[Pair]]] = []
        for pair in self.beside:
            linked, pairs = set(linked_with(pieces, pair)), [pair]
            for one in [one for one in found if linked.intersection(one[0])]:
                found.remove(one)
                linked.update(one[0])
                pairs = [*one[1], *pairs]
            found.append((sorted(linked), pairs))
        return found

    def _laps(self, run: int, pieces: Sequence[Source]) -> list[float]:
        ends = (piece.piece - self.lap for piece in pieces[:-1])
        return [*accumulate(ends, initial=self.runs[run].starts_at)][1:]

    def _clear(self, laps: Sequence[float], others: Sequence[float]) -> bool:
        least = self.stagger - 1e-9 * self.lap
        return all(abs(one - other) >= least for one in laps for other in others)

    def _as_they_are(self, pieces: Pieces, pairs: Sequence[Pair]) -> Pieces | None:
        """Put the pieces of run after run in an order that clears those before, if one is met."""
        steps, laid = Steps(_MOST_AS_THEY_ARE), [*pieces]
        members = sorted({run for pair in pairs for run in pair})

        def go(k: int) -> bool:
            if k == len(members):
                return True
            run, before = members[k], set(members[:k])
            beside = before.intersection(one for pair in pairs if run in pair for one in pair)
            laps = [lap for other in beside for lap in self._laps(other, laid[other])]
            for order in orders_of(pieces[run], [one.piece for one in pieces[run]]):
                steps.left -= 1
                if steps.left < 0:
                    return False
                laid[run] = order
                if self._clear(self._laps(run, order), laps) and go(k + 1):
                    return True
            return False

        done = go(0)
        self.steps.left -= _MOST_AS_THEY_ARE - max(0, steps.left)
        return laid if done else None

    def _slid(self, pieces: Pieces, pairs: Sequence[Pair], linked: list[int]) -> Pieces | None:
        """Slide the cuts, for orders of the pieces and of laps beside each other."""
        cuts = Cuts(pieces, self.runs, linked, lap=self.lap, stagger=self.stagger)
        cut = Counter(one.number for its in pieces for one in its)

        def go(k: int, orders: Orders, near: list[Near]) -> Pieces | None:
            if k == len(pairs):
                return cuts.slid(orders, near)
            one, other = pairs[k]
            firsts = [orders[one]] if one in orders else all_orders(pieces[one], cut)
            for first in firsts:
                seconds = [orders[other]] if other in orders else all_orders(pieces[other], cut)
                for second in seconds:
                    both = {**orders, one: first, other: second}
                    for row in interleaved((one, len(first)), (other, len(second))):
                        self.steps.left -= cuts.steps
                        self.steps.take()
                        if cuts.slid(both, [*near, *row]) is not None:
                            found = go(k + 1, both, [*near, *row])
                            if found is not None:
                                return found
            return None

        return go(0, {}, [])
