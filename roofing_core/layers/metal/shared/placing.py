"""Placing: whether so many stock lengths can be cut into all the pieces of a group of runs.

A run of several pieces takes some lengths whole, or what is left of them, and one piece more that
is cut from a length whose rest another run takes. Linked like this, runs and lengths make a tree:
lengths + runs - 1 pieces, the fewest there can be. Taken from its ends inwards every piece is
known: it covers what its run lacks, or is as short as a piece may be, and what is left over for the
next run is then the most there can be.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from roofing_core.measures.units import Inches


class Need(NamedTuple):
    """What a run asks for."""

    length: Inches
    """What is to be covered, tabs and all."""
    least: Inches
    """No piece is shorter, unless it is the only one."""
    begun: int = 0
    """How many pieces, as short as may be, it has already: then no other is the only one."""


class Piece(NamedTuple):
    """A piece: from which of the group's lengths, numbered from 0, and how long."""

    source: int
    length: Inches


Placed = list[list[Piece]]
"""The pieces of each run, in the order of the runs."""


class StepsUsedUp(Exception):  # noqa: N818 - it is not an error, it is an answer
    """The search took as many steps as it was given, and does not know."""


class Steps:
    """How many more combinations may be looked at."""

    def __init__(self, most: int) -> None:
        self.left = most

    def take(self) -> None:
        """Take a step, or raise `StepsUsedUp`."""
        self.left -= 1
        if self.left < 0:
            raise StepsUsedUp


class Bin(NamedTuple):
    """A length, or what is left of one."""

    length: Inches
    source: int


class Move(NamedTuple):
    """What one run takes: bins whole, the longest of them shortened; and a piece of one more."""

    wasted: float
    whole: tuple[Bin, ...]
    cut: Bin
    piece: float


class Placing:
    """Looks for the pieces of one group of runs from given lengths, all linked."""

    def __init__(
        self, needs: Sequence[Need], lengths: Sequence[Inches], *, lap: Inches, steps: Steps
    ) -> None:
        self.needs, self.lengths = list(needs), list(lengths)
        self.lap, self.steps = lap, steps
        self.dust = 1e-9 * max(lengths)
        # Of a tree any run may come last; the one with most pieces bends most.
        self.last = max(range(len(needs)), key=lambda k: needs[k].length)
        self.dead: set[tuple[object, ...]] = set()

    def placed(self) -> Placed | None:
        """Give the pieces; nothing where it cannot be. Raises `StepsUsedUp`."""
        left = tuple(k for k in range(len(self.needs)) if k != self.last)
        bins = tuple(sorted((Bin(one, k) for k, one in enumerate(self.lengths)), reverse=True))
        moves = self._search(left, bins)
        if moves is None:
            return None
        pieces: Placed = [[] for _ in self.needs]
        for k, taken in moves:
            pieces[k] = taken
        return pieces

    def _search(
        self, left: tuple[int, ...], bins: tuple[Bin, ...]
    ) -> list[tuple[int, list[Piece]]] | None:
        if not left:
            return self._finish(bins)
        state = (
            tuple(sorted(self.needs[k] for k in left)),
            tuple(round(one.length / self.dust / 8) for one in bins),
        )
        if state in self.dead:
            return None
        spare = self._spare(left, bins)
        if spare >= -self.dust:
            for k in dict.fromkeys(self._first_of_each(left)):
                others = tuple(one for one in left if one != k)
                for move in sorted(self._moves(k, others, bins, spare)):
                    found = self._search(others, self._after(bins, move))
                    if found is not None:
                        return [(k, self._pieces(k, move)), *found]
        self.dead.add(state)
        return None

    def _first_of_each(self, left: tuple[int, ...]) -> Iterator[int]:
        met: set[Need] = set()
        for k in left:
            if self.needs[k] not in met:
                met.add(self.needs[k])
                yield k

    def _spare(self, left: Sequence[int], bins: Sequence[Bin]) -> float:
        """Give how far what is left reaches beyond the runs that are left."""
        reach = sum(one.length for one in bins) - (len(bins) - 1) * self.lap
        return reach - sum(self.needs[k].length for k in left) - self.needs[self.last].length

    def _moves(
        self, k: int, others: tuple[int, ...], bins: tuple[Bin, ...], spare: float
    ) -> Iterator[Move]:
        """Give what a run may take, so that what is left of one length goes on to others."""
        need = self.needs[k]
        least_left = min(self._least_left(one) for one in (*others, self.last))
        most = max(one.length for one in bins) - least_left
        for whole, lacking, slack in self._wholes(need, bins, spare, most):
            alone = not whole and not need.begun
            piece = lacking if alone else max(lacking, need.least)
            wasted = max(0.0, piece - lacking)
            if wasted > min(spare, slack) + self.dust:
                continue
            met: set[float] = set()
            taken = {one.source for one in whole}
            for one in bins:
                if one.length in met or one.source in taken:
                    continue
                met.add(one.length)
                if piece <= one.length - least_left + self.dust:
                    yield Move(wasted, whole, one, piece)

    def _least_left(self, k: int) -> float:
        """Give the shortest piece that a run can use, if it need not be its only one."""
        need = self.needs[k]
        return min(need.least, need.length) if not need.begun else need.least

    def _wholes(
        self, need: Need, bins: tuple[Bin, ...], spare: float, most: float
    ) -> Iterator[tuple[tuple[Bin, ...], float, float]]:
        """Give sets of bins that a run takes whole, what it then lacks, and how much they can give.

        Of bins of one length the first ones are taken.
        """
        least_lacking = need.least - spare - self.dust
        # The set, what is lacking, what it can give, the next bin.
        stack: list[tuple[tuple[Bin, ...], float, float, int]] = [((), need.length, 0.0, 0)]
        while stack:
            whole, lacking, slack, k = stack.pop()
            self.steps.take()
            if lacking <= most + self.dust:
                yield whole, lacking, slack
            for j in range(len(bins) - 1, k - 1, -1):
                one = bins[j]
                if j > k and bins[j - 1].length == one.length:
                    continue
                after = lacking - one.length + self.lap
                if one.length >= need.least - self.dust and after >= least_lacking:
                    more = slack + one.length - need.least
                    stack.append(((*whole, one), after, more, j + 1))

    def _after(self, bins: tuple[Bin, ...], move: Move) -> tuple[Bin, ...]:
        gone = {one.source for one in move.whole}
        rest = Bin(move.cut.length - move.piece, move.cut.source)
        kept = [one for one in bins if one.source not in gone and one.source != rest.source]
        return tuple(sorted((*kept, rest), reverse=True))

    def _pieces(self, k: int, move: Move) -> list[Piece]:
        whole = shortened(
            [Piece(one.source, one.length) for one in move.whole],
            by=move.wasted,
            least=self.needs[k].least,
        )
        return [*whole, Piece(move.cut.source, move.piece)]

    def _finish(self, bins: tuple[Bin, ...]) -> list[tuple[int, list[Piece]]] | None:
        """Give the last run all that is left."""
        self.steps.take()
        need = self.needs[self.last]
        over = sum(one.length for one in bins) - (len(bins) - 1) * self.lap - need.length
        if over < -self.dust:
            return None
        least = 0.0 if len(bins) == 1 and not need.begun else need.least
        if min(one.length for one in bins) < least - self.dust:
            return None
        if sum(one.length - least for one in bins) < over - self.dust:
            return None
        pieces = [Piece(one.source, one.length) for one in bins]
        return [(self.last, shortened(pieces, by=over, least=least))]


def shortened(pieces: list[Piece], *, by: Inches, least: Inches) -> list[Piece]:
    """Cut pieces shorter by so much in all, the last ones first, none below the least.

    Args:
        pieces: The pieces.
        by: How much, in all.
        least: No piece is cut shorter.

    Returns:
        The pieces.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> shortened([Piece(0, 120), Piece(1, 15)], by=5, least=12)
    [Piece(source=0, length=118), Piece(source=1, length=12)]
    """
    cut: list[Piece] = []
    for one in reversed(pieces):
        less = min(max(0.0, by), max(0.0, one.length - least))
        by -= less
        cut.append(Piece(one.source, one.length - less))
    return cut[::-1]
