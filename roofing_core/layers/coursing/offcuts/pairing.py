"""Pairing: starting and closing pieces, two by two from one shingle, as many pairs as there can be.

A wider piece never fits where a narrower one does not: what fits the widest starting piece fits
every other. So the widest are served first, each by any closing piece that fits, and no other
choice pairs more. The proof is a set of pieces of which no two can share a shingle.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Sequence

from roofing_core.layers.coursing.offcuts.sharing import Kind, Stock


def paired_in_order(kinds: Sequence[Kind], stock: Stock) -> list[tuple[int, ...]]:
    """Pair starting with closing pieces, each with the next one to come up that fits.

    Args:
        kinds: The pieces in the order of the work, each keeping its left or its right end.
        stock: What they are cut from.

    Returns:
        The places of the pieces of each shingle, fewest shingles.

    Raises:
        Nothing.

    Source:
        Maximum matching where the partners of one piece are among those of every narrower one.

    >>> stock = Stock(36, 0, 0)
    >>> paired_in_order([Kind("right", 30), Kind("left", 6), Kind("left", 7)], stock)
    [(0, 1), (2,)]
    """
    closing = _by_width(kinds, "left")
    waiting: list[int] = []
    found: list[tuple[int, ...]] = []
    for piece in _by_width(kinds, "right"):
        space = stock.room - stock.size(kinds[piece])
        while closing and stock.size(kinds[closing[-1]]) <= space:
            insort(waiting, closing.pop())
        if waiting:
            next_up = bisect_left(waiting, piece) % len(waiting)
            found.append((piece, waiting.pop(next_up)))
        else:
            found.append((piece,))
    return [*found, *((piece,) for piece in (*waiting, *closing))]


def _by_width(kinds: Sequence[Kind], keeps: str) -> list[int]:
    """Give the places of the pieces that keep an end, the widest first."""
    places = [place for place, kind in enumerate(kinds) if kind.keeps == keeps]
    return sorted(places, key=lambda place: -kinds[place].width)
