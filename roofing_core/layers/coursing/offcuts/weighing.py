"""Weighing: proofs that pieces take so many shingles at least.

Each piece is given a weight, such that no pieces that one shingle yields weigh more together than
a limit: the weight of all of them over the limit, rounded up, is a number of shingles that they
cannot do with less than. Anybody can check such a proof; how the weights were found is of no
account. Here each piece weighs what it is long, or pieces of which no two can share a shingle weigh
the limit each. The best weights of all are in `pricing`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from operator import mul

from roofing_core.layers.coursing.offcuts.sharing import Keeps, Kind, Stock

Counts = Mapping[Kind, int]
"""How many pieces there are of each kind, the largest first."""


@dataclass(frozen=True, slots=True)
class Weighing:
    """Weights of pieces.

    Attributes:
        limit: What all pieces from one shingle weigh at most.
        weights: Of each kind, in the order of the counts.
    """

    limit: int
    weights: tuple[int, ...]

    def total(self, counts: Counts) -> int:
        """Give what all pieces weigh."""
        return sum(map(mul, self.weights, counts.values()))

    def least(self, counts: Counts) -> int:
        """Give the shingles that all pieces take at least."""
        return -(-self.total(counts) // self.limit)


def by_length(counts: Counts, stock: Stock) -> Weighing:
    """Weigh pieces by their length.

    Args:
        counts: The pieces.
        stock: What they are cut from.

    Returns:
        Each weighs what it takes of a shingle, a cut included.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> by_length({Kind("left", 20): 3}, Stock(36, 0, 0)).least({Kind("left", 20): 3})
    2
    """
    return Weighing(stock.room, tuple(map(stock.size, counts)))


def apart(counts: Counts, stock: Stock) -> Weighing:
    """Weigh most starting and closing pieces of which no two can share a shingle, all else nothing.

    Two starting pieces never share one, nor do two closing ones. Beside the starting pieces from
    some width up stand the closing ones that are too wide for any of them.

    Args:
        counts: The pieces.
        stock: What they are cut from.

    Returns:
        Each of those weighs 1, as much as a shingle yields.

    Raises:
        Nothing.

    Source:
        As many as starting and closing pieces need shingles where no others are among them:
        D. Konig, 1931.

    >>> counts = {Kind("right", 30): 2, Kind("left", 7): 1, Kind("left", 6): 1}
    >>> apart(counts, Stock(36, 0, 0)).weights
    (1, 1, 0)
    """
    _, narrowest = apart_count(counts, stock)
    return Weighing(
        1,
        tuple(
            int(
                (kind.keeps == "right" and stock.size(kind) >= narrowest)
                or (kind.keeps == "left" and stock.size(kind) > stock.room - narrowest)
            )
            for kind in counts
        ),
    )


def apart_count(counts: Counts, stock: Stock) -> tuple[int, int]:
    """Count the most starting and closing pieces of which no two can share a shingle.

    Args:
        counts: The pieces, some of which may be used up.
        stock: What they are cut from.

    Returns:
        How many, and the size from which starting pieces are among them.

    Raises:
        Nothing.

    Source:
        As `apart`.

    >>> apart_count({Kind("right", 30): 2, Kind("left", 7): 1}, Stock(36, 0, 0))
    (3, 30)
    """
    closing = list(_sized(counts, stock, "left"))
    together = sum(count for _, count in closing)
    most, narrowest = together, stock.room + 1
    for size, count in _sized(counts, stock, "right"):
        together += count
        while closing and closing[-1][0] <= stock.room - size:
            together -= closing.pop()[1]
        if together > most:
            most, narrowest = together, size
    return most, narrowest


def _sized(counts: Counts, stock: Stock, keeps: Keeps) -> Iterator[tuple[int, int]]:
    """Give the size and count of each kind that keeps an end, the largest first."""
    for kind, count in counts.items():
        if kind.keeps == keeps and count:
            yield stock.size(kind), count
