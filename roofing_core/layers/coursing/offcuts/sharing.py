"""Sharing: which pieces can be cut from one shingle, and where they lie on it.

Everything here is in grains, whole numbers of 2^-20 in, so that sums and comparisons are exact.
A piece counts a grain or two short and a shingle is rounded up: widths that fill a shingle but for
float dust fit into it, and nobody can measure what is forgiven.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Literal

from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches

Keeps = Literal["both", "left", "right", "neither"]
"""Which of its ends must be the factory's: of a piece between two others, of one that closes a
course, of one that starts it, and of one that meets no other."""

#: From a shingle with tabs no more pieces than this are cut that keep neither end: where each may
#: begin depends on the others.
MOST_FREE = 6

#: Grains in an inch.
GRAIN = 2**20


@dataclass(frozen=True, slots=True)
class Kind:
    """Pieces that are alike: any can take the place of another.

    Attributes:
        keeps: Which of its ends must be the factory's.
        width: Along the shingle.
        starts: Where it may begin on a shingle with tabs, from the left; none where it keeps an
            end, and none where there are no tabs.
    """

    keeps: Keeps
    width: int
    starts: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Stock:
    """What pieces are cut from.

    Attributes:
        length: Of a shingle.
        kerf: What a cut between two pieces takes.
        tabs: Into how many tabs a shingle is divided; 0 where a piece may come from anywhere.
    """

    length: int
    kerf: int
    tabs: int

    @property
    def room(self) -> int:
        """Give what the sizes of pieces that share a shingle come to at most."""
        return self.length + self.kerf

    def size(self, kind: Kind) -> int:
        """Give what a piece takes of the room: itself and a cut."""
        return kind.width + self.kerf

    def fit(self, kinds: Sequence[Kind]) -> bool:
        """Tell whether pieces can be cut from one shingle together."""
        if sum(map(self.size, kinds)) > self.room:
            return False
        ends = [kind.keeps for kind in kinds]
        if ends.count("left") > 1 or ends.count("right") > 1 or ("both" in ends and ends[1:]):
            return False
        if not self.tabs:
            return True
        return ends.count("neither") <= MOST_FREE and bool(self.places(kinds))

    def places(self, kinds: Sequence[Kind]) -> tuple[int, ...]:
        """Give where each of some pieces begins on their shingle; empty where they do not fit."""
        lefts = [kind for kind in kinds if kind.keeps in {"left", "both"}]
        rights = [kind for kind in kinds if kind.keeps == "right"]
        free = [kind for kind in kinds if kind.keeps == "neither"]
        begin = sum(map(self.size, lefts))
        end = self.room - sum(map(self.size, rights))
        found = self._along(free, begin, end, set())
        if found is None:
            return ()
        where = {"left": [0], "both": [0], "right": [end], "neither": found}
        return tuple(where[kind.keeps].pop(0) for kind in kinds)

    def _along(
        self, free: Sequence[Kind], begin: int, end: int, failed: set[object]
    ) -> list[int] | None:
        """Give where pieces with no factory end begin between two places, in their order."""
        if not free:
            return []
        left = (begin, frozenset(Counter(free).items()))
        if left in failed or sum(map(self.size, free)) > end - begin:
            return None
        for kind in dict.fromkeys(free):
            start = self._next_start(kind, begin)
            place, after = free.index(kind), start + self.size(kind)
            others = [*free[:place], *free[place + 1 :]]
            rest = self._along(others, after, end, failed) if after <= end else None
            if rest is not None:
                return [*rest[:place], start, *rest[place:]]
        failed.add(left)
        return None

    def _next_start(self, kind: Kind, begin: int) -> int:
        """Give the first place at or after another where a piece may begin."""
        if not self.tabs:
            return begin
        k = bisect_left(kind.starts, begin)
        return kind.starts[k] if k < len(kind.starts) else self.room


def stock_of(shingle_length: Inches, *, kerf: Inches, tabs: int) -> Stock:
    """Give a shingle in grains.

    Args:
        shingle_length: Length of a shingle.
        kerf: What a cut between two pieces takes.
        tabs: Into how many tabs it is divided, 0 for none.

    Returns:
        The shingle, its length rounded up and the cut down.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> stock_of(36, kerf=0, tabs=3).length // GRAIN
    36
    """
    return Stock(ceil(shingle_length * GRAIN), floor(kerf * GRAIN), tabs)


def kind_of(
    width: Inches, *, keeps: Keeps, shingle_from: Inches, shingle_length: Inches, tabs: int
) -> Kind:
    """Give a piece in grains.

    A piece with no factory end, of a shingle with tabs, may begin at ``shingle_from`` and at every
    whole number of tabs from there, so that its cutouts stay where they are.

    Args:
        width: Along the course.
        keeps: Which of its ends must be the factory's.
        shingle_from: Where it begins on the shingle of its place in the course.
        shingle_length: Length of a shingle.
        tabs: Into how many tabs a shingle is divided, 0 for none.

    Returns:
        The piece, its width rounded down.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> piece = kind_of(12, keeps="neither", shingle_from=18, shingle_length=36, tabs=3)
    >>> [start // GRAIN for start in piece.starts]
    [6, 18]
    """
    grains = max(1, floor(width * GRAIN) - 1)
    if keeps != "neither" or not tabs:
        return Kind(keeps, grains)
    tab = shingle_length / tabs
    first = shingle_from - floor(shingle_from / tab + DUST) * tab
    starts = (round((first + k * tab) * GRAIN) for k in range(tabs))
    end = ceil(shingle_length * GRAIN)
    return Kind(keeps, grains, tuple(start for start in starts if start + grains <= end))


def counted(kinds: Iterable[Kind], stock: Stock) -> dict[Kind, int]:
    """Count pieces that are alike, the largest first.

    Args:
        kinds: The pieces.
        stock: What they are cut from.

    Returns:
        How many there are of each kind.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> stock = Stock(36, 0, 0)
    >>> [*counted([Kind("left", 6), Kind("right", 30), Kind("left", 6)], stock).values()]
    [1, 2]
    """
    counts: dict[Kind, int] = {}
    for kind in sorted(kinds, key=lambda one: (-stock.size(one), one.keeps, one.starts)):
        counts[kind] = counts.get(kind, 0) + 1
    return counts
