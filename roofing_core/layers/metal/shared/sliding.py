"""Sliding: whether the cuts of a cut plan can be moved so that laps come to stand apart.

How long the pieces are is a system of linear inequalities; whether it has a solution is found by
the simplex method, with the rule that keeps it from going round in circles (Bland's).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from roofing_core.measures.units import Inches

#: What is under this, in inches, is taken for nothing.
_DUST = 1e-9


class AtMost(NamedTuple):
    """A sum of numbers, each times a factor, that is at most so much."""

    factors: Mapping[int, float]
    most: float


def slid(many: int, limits: Sequence[AtMost]) -> list[Inches] | None:
    """Find numbers of 0 or more that keep to limits.

    Args:
        many: How many numbers.
        limits: What each sum of them is at most, by their places from 0.

    Returns:
        The numbers; nothing where there are none.

    Raises:
        Nothing.

    Source:
        The simplex method; R. G. Bland, New finite pivoting rules, 1977 (from memory).

    >>> slid(2, [AtMost({0: 1, 1: 1}, 10), AtMost({0: -1}, -4), AtMost({1: -1}, -6)])
    [4.0, 6.0]
    >>> slid(1, [AtMost({0: 1}, 3), AtMost({0: -1}, -4)]) is None
    True
    """
    table = _Table(many, limits)
    while True:
        row = table.most_broken()
        if row is None:
            return table.numbers()
        column = table.mending(row)
        if column is None:
            return None
        table.swap(row, column)


class _Table:
    """The limits, each with what it leaves over; one that leaves nothing stands for a number."""

    def __init__(self, many: int, limits: Sequence[AtMost]) -> None:
        self.many = many
        self.rows = [
            [float(limit.factors.get(k, 0.0)) for k in range(many)] + [float(limit.most)]
            for limit in limits
        ]
        #: What each row and each column stands for: the numbers, then what limits leave over.
        self.named = [many + k for k in range(len(limits))]
        self.columns = [*range(many)]

    def most_broken(self) -> int | None:
        """Give the broken limit that stands for the first of all names."""
        broken = [k for k, row in enumerate(self.rows) if row[-1] < -_DUST]
        return min(broken, key=self.named.__getitem__, default=None)

    def mending(self, row: int) -> int | None:
        """Give the first column that mends a broken limit."""
        able = [k for k in range(self.many) if self.rows[row][k] < -_DUST]
        return min(able, key=self.columns.__getitem__, default=None)

    def swap(self, row: int, column: int) -> None:
        """Let a row and a column change places."""
        pivot = self.rows[row][column]
        turned = [value / pivot for value in self.rows[row]]
        turned[column] = 1 / pivot
        for k, other in enumerate(self.rows):
            factor = other[column]
            if k != row and factor:
                self.rows[k] = [a - factor * b for a, b in zip(other, turned, strict=True)]
                self.rows[k][column] = -factor / pivot
        self.rows[row] = turned
        self.named[row], self.columns[column] = self.columns[column], self.named[row]

    def numbers(self) -> list[float]:
        """Give the numbers that the table stands for."""
        found = [0.0] * self.many
        for name, row in zip(self.named, self.rows, strict=True):
            if name < self.many:
                found[name] = row[-1]
        return found
