"""Reuse: the fewest shingles for the pieces of a roof, where what one leaves serves another.

Of every shingle one piece at most keeps the factory's left end, and one its right end; pieces that
meet no other may come from between. Shingles are shared along their length alone: what is ripped
off the top of one is not used again, and a piece that a hip or a valley cuts counts as wide as it
is at its widest.

Any offcut is there when it is needed: whichever piece of a shingle comes up first opens it, and the
rest waits. What has to be cut to length before it is nailed, and not where it lies, is told.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import fsum

from roofing_core.layers.coursing.joints import limit_pieces
from roofing_core.layers.coursing.needs import NeededPiece, check_needs
from roofing_core.layers.coursing.offcuts.fewest import fewest
from roofing_core.layers.coursing.offcuts.pairing import paired_in_order
from roofing_core.layers.coursing.offcuts.sharing import (
    GRAIN,
    Kind,
    Stock,
    counted,
    kind_of,
    stock_of,
)
from roofing_core.layers.coursing.offcuts.weighing import Weighing, apart
from roofing_core.measures.units import Inches

#: A search for fewer shingles looks at so many sets of pieces at most.
MOST_STEPS = 100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPiece:
    """A piece as it is cut from a shingle.

    Attributes:
        piece: The piece.
        begins: Where it begins on the shingle that it is cut from, from the shingle's left end.
    """

    piece: NeededPiece
    begins: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class CutShingle:
    """A shingle that is cut, and what comes from it.

    Attributes:
        number: From 1, in the order in which they are opened.
        pieces: One entry per piece, in the order in which they come up in the work.
        left_over: What is left of it, in one strip or several.
        ahead: Whether a piece cut at its right end comes up before the last one: it is then cut to
            length before it is nailed, not trimmed in place when the courses are up.
    """

    number: int
    pieces: tuple[CutPiece, ...]
    left_over: Inches
    ahead: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """Why the pieces cannot be cut from fewer shingles, for anybody to check.

    Every piece has a weight. No pieces that can be cut from one shingle weigh more than the limit
    together, so that no fewer will do than all the weights over the limit, rounded up. Where all
    the weights are 0 or 1 and the limit is 1, no two of those that weigh 1 can share a shingle.

    Attributes:
        shingles: The shingles that it proves to be needed at least.
        limit: What the pieces from one shingle weigh together at most.
        weights: One entry per piece, in the order in which they were given.
    """

    shingles: int
    limit: int
    weights: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reuse:
    """The shingles for the pieces of a roof, offcuts used again.

    Attributes:
        shingles: How many, whole ones included.
        simply: How many with each piece from a shingle of its own.
        whole: Of the shingles, those that are laid whole between two others.
        least: The fewest that are proved to be needed, by the proof or by a search to the end.
        proved: Whether no fewer shingles will do: as many are proved to be needed.
        proof: What is proved by weights alone.
        cut: One entry per shingle that is not laid whole between two others, in the order in which
            they are opened.
        cut_ahead: Shingles of which a piece is cut to length before it is nailed.
        most_kept: Most shingles at one time that are opened and wait to be used again.
    """

    shingles: int
    simply: int
    whole: int
    least: int
    proved: bool
    proof: Proof
    cut: tuple[CutShingle, ...]
    cut_ahead: int
    most_kept: int


def reuse(
    pieces: Sequence[NeededPiece],
    *,
    shingle_length: Inches,
    kerf: Inches = 0.0,
    tabs: int = 0,
    steps: int = MOST_STEPS,
) -> Reuse:
    """Cut the pieces of a roof from the fewest shingles.

    From one shingle come at most one piece that keeps its left end, one that keeps its right end
    and any that keep neither, where ``widths + kerf * (pieces - 1) <= shingle_length``. Of a
    shingle with tabs, a piece that keeps neither end begins a whole number of tabs from where it
    began on the shingle of its place, and no more than six such pieces come from one.

    Starting and closing pieces alone are paired exactly, and as many of them prove it of which no
    two can share a shingle. Where pieces that keep no end are among them, the best cutting is held
    against the prices of a linear program, and a search goes on while they differ.

    Args:
        pieces: In the order in which they come up in the work.
        shingle_length: Length of a shingle.
        kerf: What a cut between two pieces of one shingle takes.
        tabs: Into how many tabs a shingle is divided; 0 where it has none, and a piece may come
            from anywhere.
        steps: How many sets of pieces a search may look at.

    Returns:
        The count with its proof, and which shingle is cut into which pieces. Where it is not proved
        to be the fewest, it says so, and how many are needed at least.

    Raises:
        Refused: A piece is no part of a shingle, or a size cannot be; names each.
        TooManyPieces: There are more pieces than the limit.

    Source:
        Maximum matching (D. Konig, 1931) and bin packing, exact.

    >>> starts = NeededPiece(plane="front", row="course", course=2, number=1, width=28.375,
    ...                      keeps="right", shingle_from=11)
    >>> closes = NeededPiece(plane="front", row="course", course=1, number=5, width=11,
    ...                      keeps="left", shingle_from=0)
    >>> reuse([closes, starts], shingle_length=39.375).shingles  # 28 3/8 and 11 in: all of it
    1
    >>> reuse([closes, starts], shingle_length=39.375, kerf=0.125).shingles
    2
    """
    limit_pieces(len(pieces))
    check_needs(pieces, shingle_length=shingle_length, kerf=kerf, tabs=tabs)
    stock = stock_of(shingle_length, kerf=kerf, tabs=tabs)
    kinds = [
        kind_of(
            piece.width,
            keeps=piece.keeps,
            shingle_from=piece.shingle_from,
            shingle_length=shingle_length,
            tabs=tabs,
        )
        for piece in pieces
    ]
    shared, weighing, least = _shared(kinds, stock, steps)
    whole = sum(kind.keeps == "both" for kind in kinds)
    cut = sorted(shared)
    cutter = _Cutter(shingle_length, kerf, stock)
    shingles = tuple(
        cutter.shingle(k + 1, [pieces[i] for i in places], [kinds[i] for i in places])
        for k, places in enumerate(cut)
    )
    return Reuse(
        shingles=whole + len(shingles),
        simply=len(pieces),
        whole=whole,
        least=whole + least,
        proved=least == len(shingles),
        proof=_proof(kinds, stock, weighing),
        cut=shingles,
        cut_ahead=sum(shingle.ahead for shingle in shingles),
        most_kept=_most_kept(cut, len(pieces)),
    )


def _shared(
    kinds: Sequence[Kind], stock: Stock, steps: int
) -> tuple[list[tuple[int, ...]], Weighing, int]:
    """Give the places of the pieces of each shingle that is cut, and what proves how few."""
    counts = counted((kind for kind in kinds if kind.keeps != "both"), stock)
    if all(kind.keeps != "neither" for kind in counts):
        pairs = [tuple(sorted(pair)) for pair in paired_in_order(kinds, stock)]
        weighing = apart(counts, stock)
        return pairs, weighing, weighing.least(counts)
    found = fewest(counts, stock, steps=steps)
    return list(_dealt(found.shingles, kinds)), found.weighing, found.least


def _dealt(shingles: Sequence[Sequence[Kind]], kinds: Sequence[Kind]) -> Iterator[tuple[int, ...]]:
    """Give the pieces of each kind out to the shingles, the first to come up first."""
    waiting: dict[Kind, deque[int]] = {}
    for place, kind in enumerate(kinds):
        waiting.setdefault(kind, deque()).append(place)
    for each in shingles:
        yield tuple(sorted(waiting[kind].popleft() for kind in each))


class _Cutter:
    """Tells where on its shingle each piece begins."""

    def __init__(self, shingle_length: float, kerf: float, stock: Stock) -> None:
        self.length, self.kerf, self.stock = shingle_length, kerf, stock

    def shingle(
        self, number: int, pieces: Sequence[NeededPiece], kinds: Sequence[Kind]
    ) -> CutShingle:
        begins = self._begins(pieces, self.stock.places(kinds))
        used = fsum(piece.width + self.kerf for piece in pieces) - self.kerf
        return CutShingle(
            number=number,
            pieces=tuple(
                CutPiece(piece=piece, begins=begin)
                for piece, begin in zip(pieces, begins, strict=True)
            ),
            left_over=max(0.0, self.length - used),
            ahead=any(piece.keeps != "right" for piece in pieces[:-1]),
        )

    def _begins(self, pieces: Sequence[NeededPiece], starts: Sequence[int]) -> list[float]:
        """Give in inches, exactly, what is known to the grain."""
        begins = [0.0] * len(pieces)
        cursor = 0.0
        for k in sorted(range(len(pieces)), key=lambda k: starts[k]):
            begins[k] = self._begin(pieces[k], starts[k], cursor)
            cursor = begins[k] + pieces[k].width + self.kerf
        return begins

    def _begin(self, piece: NeededPiece, start: int, cursor: float) -> float:
        if piece.keeps == "left":
            return 0.0
        if piece.keeps == "right":
            return self.length - piece.width
        if not self.stock.tabs:
            return cursor
        tab = self.length / self.stock.tabs
        return piece.shingle_from + round((start / GRAIN - piece.shingle_from) / tab) * tab


def _proof(kinds: Sequence[Kind], stock: Stock, weighing: Weighing) -> Proof:
    """Give the weight of every piece; one that is laid whole weighs as much as a shingle yields."""
    counts = counted((kind for kind in kinds if kind.keeps != "both"), stock)
    of = dict(zip(counts, weighing.weights, strict=True))
    weights = tuple(of.get(kind, weighing.limit) for kind in kinds)
    return Proof(shingles=-(-sum(weights) // weighing.limit), limit=weighing.limit, weights=weights)


def _most_kept(cut: Sequence[tuple[int, ...]], pieces: int) -> int:
    """Count the most shingles at one time between their first and their last piece."""
    steps = [0] * (pieces + 1)
    for places in cut:
        steps[places[0]] += 1
        steps[places[-1]] -= 1
    return max(accumulate(steps))
