"""Pricing: the weights of pieces that prove most, as the prices of a linear program.

The program asks for the least number of shingles, fractions allowed, cut in any of the ways in
which one can be; its prices are weights that no way of cutting a shingle exceeds. Ways of cutting
are made as they are needed: the heaviest yield of a shingle under the prices so far. The prices are
floats on the way; the weights given are whole numbers, held against the heaviest yield once more.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import inf
from operator import mul

from roofing_core.layers.coursing.offcuts.sharing import Kind, Stock
from roofing_core.layers.coursing.offcuts.weighing import Counts, Weighing
from roofing_core.layers.coursing.offcuts.yields import Yields

#: Kinds are brought together into no more than this many before they are priced.
_GROUPS = 100

#: The prices are taken as they are after so many ways of cutting.
_MOST_WAYS = 1500

#: And after so much work, where there are very many ways.
_MOST_WORK = 2_000_000

#: What a shingle weighs in whole numbers, before the heaviest yield is known.
_WEIGHT = 10**7

#: A way of cutting that gains no more than this, in weight, changes nothing.
_GAIN = 10

#: Smaller numbers than this in the tableau are none.
_NONE = 1e-9


def priced(counts: Counts, stock: Stock, *, enough: int) -> Weighing:
    """Weigh pieces by the prices of the linear program.

    Args:
        counts: The pieces, none of which keeps both ends.
        stock: What they are cut from.
        enough: The shingles that a way of cutting them all is known to take: prices that prove as
            many are as good as any.

    Returns:
        The weights that prove most of those on the way to the prices.

    Raises:
        Nothing.

    Source:
        P. C. Gilmore and R. E. Gomory, 1961; a bound from any prices: A. A. Farley, 1990.

    >>> counts = {Kind("neither", 13): 5}
    >>> priced(counts, Stock(39, 0, 0), enough=2).least(counts)
    2
    """
    groups = list(_grouped(counts))
    program = _Program(
        [kind for kind, _ in groups],
        [sum(counts[one] for one in ones) for _, ones in groups],
        stock,
    )
    best = program.weights(enough)
    weights = {
        one: weight for (_, ones), weight in zip(groups, best, strict=True) for one in ones
    }  # fmt: skip
    each = tuple(weights[kind] for kind in counts)
    limit, _ = Yields([*counts], [*counts.values()], stock).heaviest(each)
    return Weighing(limit, each)


def _grouped(counts: Counts) -> Iterator[tuple[Kind, list[Kind]]]:
    """Bring kinds of like width together, each as narrow as the narrowest of them.

    What can be cut from a shingle can also be cut where some pieces are narrower, so that what is
    proved of the groups is true of the pieces. They are divided where their widths are farthest
    apart.
    """
    kinds = sorted(counts, key=lambda kind: (kind.keeps, -kind.width))
    steps = [a.width - b.width if a.keeps == b.keeps else inf for a, b in pairwise(kinds)]
    widest = sorted(range(len(steps)), key=lambda k: -steps[k])[: _GROUPS - 1]
    begin = 0
    for last in [*sorted(widest), len(kinds) - 1]:
        group = kinds[begin : last + 1]
        starts = {start for one in group for start in one.starts}
        yield Kind(group[-1].keeps, group[-1].width, tuple(sorted(starts))), group
        begin = last + 1


class _Program:
    """The linear program, as the inverse of its basis: one way of cutting for each kind."""

    def __init__(self, kinds: Sequence[Kind], amounts: Sequence[int], stock: Stock) -> None:
        self.kinds, self.amounts, self.stock = kinds, amounts, stock
        self.yields = Yields(kinds, amounts, stock)
        each = [self._alone(k) for k in range(len(kinds))]
        self.inverse = [
            [1 / many if i == k else 0.0 for i in range(len(kinds))] for k, many in enumerate(each)
        ]
        self.cut = [amount / many for amount, many in zip(amounts, each, strict=True)]
        self.prices = [1 / many for many in each]

    def _alone(self, k: int) -> int:
        """Give how many of one kind a shingle yields."""
        kind = self.kinds[k]
        many = min(self.amounts[k], self.stock.room // self.stock.size(kind))
        if kind.keeps != "neither":
            return 1
        return next(n for n in range(many, 0, -1) if n == 1 or self.stock.fit([kind] * n))

    def weights(self, enough: int) -> list[int]:
        """Give the best weights met on the way to the prices."""
        best, most = [0] * len(self.kinds), 0.0
        for _ in range(_MOST_WAYS):
            weights = [max(0, int(price * _WEIGHT)) for price in self.prices]
            limit, way = self.yields.heaviest(weights)
            proved = sum(map(mul, weights, self.amounts)) / max(1, limit)
            if proved > most:
                best, most = weights, proved
            if most > enough - 1 or limit <= _WEIGHT + _GAIN or self.yields.work > _MOST_WORK:
                break
            if not self._enter(way):
                break
        return best

    def _enter(self, way: tuple[int, ...]) -> bool:
        """Take a way of cutting into the basis, for the one that it replaces first, if any."""
        many = Counter(way)
        column = [sum(row[k] * n for k, n in many.items()) for row in self.inverse]
        gain = sum(self.prices[k] * n for k, n in many.items()) - 1
        shares = [
            (self.cut[i] / amount, i) for i, amount in enumerate(column) if amount > _NONE
        ]  # fmt: skip
        if not shares:
            return False
        share, leaves = min(shares)
        pivot = column[leaves]
        row = [value / pivot for value in self.inverse[leaves]]
        for i, amount in enumerate(column):
            if amount:
                self.cut[i] -= share * amount
                old = self.inverse[i]
                self.inverse[i] = [a - amount * b for a, b in zip(old, row, strict=True)]
        self.inverse[leaves], self.cut[leaves] = row, share
        self.prices = [price - gain * b for price, b in zip(self.prices, row, strict=True)]
        return True
