"""Side by side: the least cost at which laps of runs beside each other stand apart.

The cheapest way of buying nearly always has an order of pieces that will do. Where it has none,
some way that costs more is made up, and all ways that cost less are gone through, one cost after
another: the first that will do is the cheapest, as far as the steps go.
"""

from __future__ import annotations

from contextlib import suppress
from typing import NamedTuple

from roofing_core.layers.metal.shared.cuts import Pieces
from roofing_core.layers.metal.shared.grouping import (
    MOST_PARTS,
    Cutting,
    Group,
    Parted,
    Parting,
    parts_to_try,
)
from roofing_core.layers.metal.shared.levels import Levels
from roofing_core.layers.metal.shared.listing import Source
from roofing_core.layers.metal.shared.many import cheaply_parted
from roofing_core.layers.metal.shared.members import Members, cost_of
from roofing_core.layers.metal.shared.placing import Piece, Steps, StepsUsedUp
from roofing_core.layers.metal.shared.staggering import Staggering

#: A way of buying that shares nothing is tried with so many lengths more for each run.
_LENGTHS_MORE = 2

#: Runs that are in the way are bought for as if they were longer by so many staggers, or fewer.
RESERVED = 4

#: Each other way that is tried takes such a part of the steps at most.
_TRIES = 10


class Bought(NamedTuple):
    """What is bought: the pieces of each run, in the order of laying."""

    pieces: list[list[Source]]
    least: int
    """No way of buying costs less."""


_Graph = tuple[tuple[float, tuple[int, ...]], ...]


def _graph(pieces: Pieces) -> _Graph:
    """Give which runs are cut from each length: cut plans of which that is the same are alike."""
    runs: dict[tuple[int, float], list[int]] = {}
    for run, its in enumerate(pieces):
        for one in its:
            runs.setdefault((one.number, one.stock_length), []).append(run)
    return tuple(sorted((stock, tuple(its)) for (_, stock), its in runs.items()))


class SideBySide:
    """Looks for the cheapest way of buying with which laps stand apart."""

    def __init__(self, members: Members, cutting: Cutting, staggering: Staggering) -> None:
        self.members, self.cutting, self.staggering = members, cutting, staggering

    def bought(self, parted: Parted) -> Bought | None:
        """Begin with the cheapest way of buying; give nothing where no way is found."""
        with suppress(StepsUsedUp):
            pieces = self.staggering.staggered(self._pieces(parted.groups))
            if pieces is not None:
                return Bought(pieces, parted.least)
        best = self._with_more(parted.groups)
        if best is not None and self._cost(best) == parted.least:
            return Bought(best, parted.least)
        if parts_to_try(self.cutting.kinds) <= MOST_PARTS:
            return self._next_cheapest(parted.least, best)
        return None if best is None else Bought(best, parted.least)

    def _cost(self, pieces: Pieces) -> int:
        return cost_of(pieces, self.cutting.covering)

    def _pieces(self, groups: list[Group]) -> Pieces:
        return self.members.sources(groups, self.cutting.covering)

    def _next_cheapest(self, cost: int, best: Pieces | None) -> Bought | None:
        """Go through one cost after another, up to that of the best way known."""
        levels, known = Levels(Parting(self.cutting)), cost
        self.staggering.steps = self.cutting.steps
        with suppress(StepsUsedUp):
            while best is None or known < self._cost(best):
                pieces = self._at(levels, known)
                if pieces is not None:
                    return Bought(pieces, known)
                known = levels.beyond
            return Bought(best, self._cost(best))
        return None if best is None else Bought(best, known)

    def _at(self, levels: Levels, cost: int) -> Pieces | None:
        met: set[_Graph] = set()
        for groups in levels.at(cost):
            cut = self._pieces(groups)
            graph = _graph(cut)
            pieces = None if graph in met else self.staggering.staggered(cut)
            if pieces is not None:
                return pieces
            met.add(graph)
        return None

    def _with_more(self, groups: list[Group]) -> Pieces | None:
        """Buy as if runs that are in the way were longer, and for each run by itself.

        That leaves lengths over to slide the cuts by; the real runs take what they need of them.
        """
        covering, found = self.cutting.covering, list[Pieces]()
        blocked = self.staggering.blocked(self._pieces(groups))
        for more in range(1, RESERVED + 1):
            longer = self._longer(blocked, more * self.staggering.stagger)
            found += self._tried(cheaply_parted(longer).groups)
        for lengths in range(_LENGTHS_MORE + 1):
            found += self._tried(self._each_alone(lengths * min(covering.reach)))
        return min(found, key=self._cost, default=None)

    def _tried(self, groups: list[Group]) -> list[Pieces]:
        self.staggering.steps = Steps(self.staggering.allowed // _TRIES)
        try:
            found = self.staggering.slid(self._pieces(groups))
        except StepsUsedUp:
            return []
        return [] if found is None else [found]

    def _longer(self, blocked: set[int], more: float) -> Cutting:
        kinds = [
            kind._replace(need=kind.need._replace(length=kind.need.length + more))
            if kind.need.alone in blocked
            else kind
            for kind in self.cutting.kinds
        ]
        return Cutting(kinds, self.cutting.covering, steps=Steps(self.staggering.allowed // _TRIES))

    def _each_alone(self, spare: float) -> list[Group]:
        covering, groups = self.cutting.covering, list[Group]()
        for k, kind in enumerate(self.cutting.kinds):
            counts = tuple(int(one == k) for one in range(len(self.cutting.kinds)))
            more = spare if kind.need.alone >= 0 else 0.0
            bought = covering.cheapest(kind.need.length - covering.lap + more)
            lengths = enumerate(covering.lengths(bought))
            pieces = [Piece(source, long) for source, long in lengths]
            groups += [Group(counts, bought, [pieces])] * kind.many
        return groups
