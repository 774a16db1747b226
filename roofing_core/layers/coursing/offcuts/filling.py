"""Filling: pieces cut from shingles one after the other, each from the one that it fits best.

Quick, and often the fewest; whether it is, `weighing` and `pricing` say, and where they do not,
`searching` looks further.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterator

from roofing_core.layers.coursing.offcuts.sharing import Keeps, Kind, Stock
from roofing_core.layers.coursing.offcuts.weighing import Counts

#: Of the shingles with enough room, so many are tried whether a piece with its tabs fits.
_TRIES = 100


def filled(counts: Counts, stock: Stock) -> list[list[Kind]]:
    """Cut pieces from shingles, the largest first, each from the one with least room that fits it.

    Done twice: with all pieces together, and with starting and closing pieces paired first.

    Args:
        counts: The pieces, none of which keeps both ends.
        stock: What they are cut from.

    Returns:
        The pieces of each shingle: of the two ways, that with fewer shingles.

    Raises:
        Nothing.

    Source:
        Best fit decreasing, which is quick and need not be the fewest.

    >>> counts = {Kind("right", 20): 1, Kind("neither", 15): 1, Kind("left", 14): 1}
    >>> len(filled(counts, Stock(36, 0, 0)))
    2
    """
    together, paired = _Shingles(stock), _Shingles(stock)
    together.take(counts)
    for kinds in _tight_pairs(counts, stock):
        paired.open(kinds)
    paired.take({kind: count for kind, count in counts.items() if kind.keeps == "neither"})
    return min(together.pieces, paired.pieces, key=len)


def _tight_pairs(counts: Counts, stock: Stock) -> Iterator[list[Kind]]:
    """Pair starting and closing pieces, each starting piece with the widest that fits it."""
    closing = list(_each(counts, "left"))
    waiting: list[Kind] = []
    for kind in _each(counts, "right"):
        while closing and stock.size(closing[-1]) + stock.size(kind) <= stock.room:
            waiting.append(closing.pop())
        yield [kind, waiting.pop()] if waiting else [kind]
    yield from ([kind] for kind in (*closing, *waiting))


def _each(counts: Counts, keeps: Keeps) -> Iterator[Kind]:
    for kind, count in counts.items():
        if kind.keeps == keeps:
            yield from [kind] * count


class _Shingles:
    """Shingles with pieces cut from them, by the ends that are taken and by the room that is left.

    Ends are counted 1 for the left and 2 for the right one.
    """

    def __init__(self, stock: Stock) -> None:
        self.stock = stock
        self.pieces: list[list[Kind]] = []
        self.room: tuple[list[tuple[int, int]], ...] = ([], [], [], [])

    def take(self, counts: Counts) -> None:
        for kind, count in counts.items():
            for _ in range(count):
                found = self._best(kind)
                if found is None:
                    self.open([kind])
                else:
                    self._add(kind, *found)

    def open(self, kinds: list[Kind]) -> None:
        taken = sum(map(_end, kinds))
        space = self.stock.room - sum(map(self.stock.size, kinds))
        insort(self.room[taken], (space, len(self.pieces)))
        self.pieces.append(kinds)

    def _best(self, kind: Kind) -> tuple[int, int] | None:
        """Give where the shingle stands that has least room and fits a piece."""
        found: list[tuple[int, int, int]] = []
        for taken, room in enumerate(self.room):
            if not taken & _end(kind):
                first = bisect_left(room, (self.stock.size(kind), -1))
                for k in range(first, min(len(room), first + _TRIES)):
                    space, shingle = room[k]
                    if not self.stock.tabs or self.stock.fit([*self.pieces[shingle], kind]):
                        found.append((space, taken, k))
                        break
        return min(found)[1:] if found else None

    def _add(self, kind: Kind, taken: int, k: int) -> None:
        space, shingle = self.room[taken].pop(k)
        self.pieces[shingle].append(kind)
        insort(self.room[taken | _end(kind)], (space - self.stock.size(kind), shingle))


def _end(kind: Kind) -> int:
    """Give the end that a piece takes: 1 for the left one, 2 for the right one, 0 for neither."""
    return {"left": 1, "right": 2}.get(kind.keeps, 0)
