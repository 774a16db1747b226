"""Levels: every way of buying at one cost after another, where the cheapest one will not do."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.layers.metal.shared.grouping import Group, Parting

#: Looking at a part of the runs takes as long as so many steps.
_A_PART = 20


class Levels:
    """Goes through all groupings, purchases and cut plans of one cost, and tells the next cost."""

    def __init__(self, parting: Parting) -> None:
        self.parting, self.cutting = parting, parting.cutting
        self.whole, self.beyond = 0, 0

    def at(self, cost: int) -> Iterator[list[Group]]:
        """Give every way of buying that costs just so much, those of fewest pieces first.

        Once all are given, `beyond` is the next cost at which there is another one, or less. Raises
        `StepsUsedUp`.
        """
        self.whole, self.beyond, self.cutting.most_more = cost, 0, 0
        more = 0
        while more <= self.cutting.most_more * len(self.cutting.kinds):
            yield from self._at(self.parting.all, cost, more)
            more += 1

    def _at(self, runs: int, cost: int, more: int) -> Iterator[list[Group]]:
        if not runs:
            if not more:
                yield []
            return
        for part, rest in zip(*self.parting.parts(runs), strict=True):
            self.cutting.steps.left -= _A_PART
            self.cutting.steps.take()
            counts, others = self.parting.counts(part), self.parting.least[rest]
            price = self.parting.alone[part]
            while price + others <= cost:
                if rest or price == cost:
                    for its, group in self.cutting.all(counts, price, more):
                        for groups in self._at(rest, cost - price, more - its):
                            yield [group, *groups]
                price = self.cutting.next_after(price, counts)
            dearer = self.whole - cost + price + others
            self.beyond = min(self.beyond or dearer, dearer)
