"""Cuts: the pieces of a cut plan as lengths that can be slid, in orders that can be changed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

from roofing_core.layers.metal.shared.listing import Source
from roofing_core.layers.metal.shared.sliding import AtMost, slid
from roofing_core.measures.units import Inches

Pieces = list[list[Source]]
"""The pieces of each run, in the order of laying."""


class Laid(NamedTuple):
    """What is known of a run beside its pieces."""

    cut_length: Inches
    least: Inches
    starts_at: Inches


Orders = dict[int, list[Source]]
Near = tuple[tuple[int, int], tuple[int, int]]
"""Two laps beside each other, the first one nearer to the start, by their runs and numbers."""


def all_orders(pieces: Sequence[Source], cut: Counter[int]) -> Iterator[list[Source]]:
    """Give all orders of pieces; those that are all that is cut from alike lengths are alike.

    Args:
        pieces: The pieces of a run.
        cut: How many pieces are cut from each length, by its number.

    Returns:
        One order after another.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> pieces = [Source(0, 120, 120), Source(1, 120, 90), Source(2, 96, 70)]
    >>> [len([*all_orders(pieces, Counter(cut))]) for cut in ([0, 1, 2], [0, 1, 1, 2])]
    [3, 6]
    """
    alike = [one.stock_length if cut[one.number] == 1 else -1.0 - n for n, one in enumerate(pieces)]
    return orders_of(pieces, alike)


def interleaved(one: tuple[int, int], other: tuple[int, int]) -> Iterator[list[Near]]:
    """Give every way in which the laps of two runs can follow each other.

    Args:
        one: A run, by its place, and how many pieces it has.
        other: The other one.

    Returns:
        Each as the pairs of laps that stand beside each other, those of one run not told.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> [*interleaved((0, 2), (1, 2))]
    [[((0, 1), (1, 1))], [((1, 1), (0, 1))]]
    """
    first = [(one[0], n) for n in range(1, one[1])]
    second = [(other[0], n) for n in range(1, other[1])]
    many = len(first) + len(second)
    for places in combinations(range(many), len(first)):
        ones, others = iter(first), iter(second)
        row = [next(ones if place in places else others) for place in range(many)]
        yield [pair for pair in pairwise(row) if pair[0][0] != pair[1][0]]


def orders_of(pieces: Sequence[Source], alike: Sequence[Inches]) -> Iterator[list[Source]]:
    """Give every order of pieces, those of which the same is known taken for one.

    Args:
        pieces: The pieces of a run.
        alike: What is known of each.

    Returns:
        One order after another.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> pieces = [Source(0, 120, 120), Source(1, 120, 120), Source(2, 120, 60)]
    >>> [[one.piece for one in order] for order in orders_of(pieces, [120, 120, 60])]
    [[120, 120, 60], [120, 60, 120], [60, 120, 120]]
    """
    if not pieces:
        yield []
        return
    for k, piece in enumerate(pieces):
        if alike[k] not in alike[:k]:
            rest, still = [*pieces[:k], *pieces[k + 1 :]], [*alike[:k], *alike[k + 1 :]]
            for order in orders_of(rest, still):
                yield [piece, *order]


def linked_with(pieces: Pieces, runs: Sequence[int]) -> list[int]:
    """Give runs and all that share lengths with them, however far.

    Args:
        pieces: The pieces of all runs.
        runs: Some of these, by their places.

    Returns:
        The places, in order.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> linked_with([[Source(0, 120, 60)], [Source(0, 120, 50)], [Source(1, 120, 60)]], [1])
    [0, 1]
    """
    found, shared = {*runs}, set[int]()
    while True:
        shared |= {one.number for run in found for one in pieces[run]}
        more = {k for k, its in enumerate(pieces) if any(one.number in shared for one in its)}
        if more <= found:
            return sorted(found)
        found |= more


class Cuts:
    """The pieces of a cut plan as numbers to find: how much longer than the least each is."""

    def __init__(
        self,
        pieces: Pieces,
        runs: Sequence[Laid],
        linked: Sequence[int],
        *,
        lap: Inches,
        stagger: Inches,
    ) -> None:
        """Make ready to slide the cuts of linked runs, of all that there are pieces of."""
        self.pieces, self.runs, self.linked = pieces, runs, linked
        self.lap, self.stagger = lap, stagger
        cut = [piece for run in self.linked for piece in pieces[run]]
        self.places = {id(piece): k for k, piece in enumerate(cut)}
        self.least = [self._least(run) for run in self.linked for _ in pieces[run]]
        self.fixed = [*self._spanned(), *self._cut_from(cut)]
        #: Sliding takes as long as so many steps.
        self.steps = len(self.fixed) * len(self.least)

    def _least(self, run: int) -> float:
        known = self.runs[run]
        return known.cut_length if len(self.pieces[run]) == 1 else known.least

    def _spanned(self) -> Iterator[AtMost]:
        """Each run is just as long as it is."""
        for linked in self.linked:
            run, pieces = self.runs[linked], self.pieces[linked]
            places = [self.places[id(piece)] for piece in pieces]
            long = run.cut_length + (len(pieces) - 1) * self.lap
            over = long - sum(self.least[k] for k in places)
            yield AtMost(dict.fromkeys(places, 1.0), over)
            yield AtMost(dict.fromkeys(places, -1.0), -over)

    def _cut_from(self, pieces: Sequence[Source]) -> Iterator[AtMost]:
        """No length gives more than it has."""
        cut: dict[int, list[Source]] = {}
        for piece in pieces:
            cut.setdefault(piece.number, []).append(piece)
        for from_one in cut.values():
            places = [self.places[id(piece)] for piece in from_one]
            over = from_one[0].stock_length - sum(self.least[k] for k in places)
            yield AtMost(dict.fromkeys(places, 1.0), over)

    def slid(
        self,
        orders: Orders,
        near: Sequence[Near],
    ) -> Pieces | None:
        """Give the pieces cut so that one lap of each pair stands off before the other."""
        limits = [*self.fixed, *(self._before(orders, *pair) for pair in near)]
        found = slid(len(self.least), limits)
        if found is None:
            return None
        cut = [*self.pieces]
        for run in self.linked:
            places = [(one, self.places[id(one)]) for one in orders.get(run, self.pieces[run])]
            cut[run] = [one._replace(piece=self.least[k] + found[k]) for one, k in places]
        return cut

    def _before(self, orders: Orders, lap: tuple[int, int], after: tuple[int, int]) -> AtMost:
        factors: dict[int, float] = {}
        apart = -self.stagger
        for (run, many), sign in ((lap, 1.0), (after, -1.0)):
            apart -= sign * self.runs[run].starts_at
            for piece in orders[run][:many]:
                k = self.places[id(piece)]
                factors[k] = factors.get(k, 0.0) + sign
                apart -= sign * (self.least[k] - self.lap)
        return AtMost(factors, apart)
