"""Placing: whether so many stock lengths can be cut into all the pieces of a group of runs.

A run of several pieces takes some lengths whole, or what is left of them, and one piece more that
is cut from a length whose rest another run takes. Linked like this, runs and lengths make a tree:
lengths + runs - 1 pieces, the fewest there can be. Taken from its ends inwards every piece is
known: it covers what its run lacks, or is as short as a piece may be, and what is left over for the
next run is then the most there can be.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
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
    alone: int = -1
    """A number of its own, for a run that another of the same length cannot stand in for."""


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
    cut: bool = False

    def like(self, other: Bin) -> bool:
        """Tell whether one may stand in for the other: whole lengths do."""
        return self.length == other.length and not (self.cut or other.cut)


class Move(NamedTuple):
    """What one run takes: bins whole, the longest of them shortened; and a piece of one more."""

    wasted: float
    whole: tuple[Bin, ...]
    cut: Bin
    piece: float


class Placing:
    """Looks for the pieces of one group of runs from given lengths, all linked."""

    def __init__(
        self,
        needs: Sequence[Need],
        lengths: Sequence[Inches],
        *,
        lap: Inches,
        steps: Steps,
        cut: Container[int] = (),
    ) -> None:
        """Make ready; lengths that are `cut` already are alike to no other."""
        self.needs, self.lengths, self.cut = list(needs), list(lengths), cut
        self.lap, self.steps = lap, steps
        self.dust = 1e-9 * max(lengths)
        # Of a tree any run may come last; the one with most pieces bends most.
        self.last = max(range(len(needs)), key=lambda k: needs[k].length)
        self.dead: set[tuple[object, ...]] = set()

    def all(self) -> Iterator[Placed]:
        """Give every cut plan that links all runs. Raises `StepsUsedUp`."""
        left = tuple(k for k in range(len(self.needs)) if k != self.last)
        bins = [Bin(one, k, k in self.cut) for k, one in enumerate(self.lengths)]
        for moves in self._search(left, tuple(sorted(bins, reverse=True))):
            pieces: Placed = [[] for _ in self.needs]
            for k, taken in moves:
                pieces[k] = taken
            yield pieces

    def _search(
        self, left: tuple[int, ...], bins: tuple[Bin, ...]
    ) -> Iterator[list[tuple[int, list[Piece]]]]:
        if not left:
            yield from self._finish(bins)
            return
        state = (
            tuple(sorted(self.needs[k] for k in left)),
            tuple(round(one.length / self.dust / 8) for one in bins),
        )
        if state in self.dead:
            return
        none = True
        spare = self._spare(left, bins)
        if spare >= -self.dust:
            for k in dict.fromkeys(self._first_of_each(left)):
                others = tuple(one for one in left if one != k)
                for move in sorted(self._moves(k, others, bins, spare)):
                    for found in self._search(others, self._after(bins, move)):
                        none = False
                        yield [(k, self._pieces(k, move)), *found]
        if none:
            self.dead.add(state)

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
            taken = {one.source for one in whole}
            free = [one for one in bins if one.source not in taken]
            for j, one in enumerate(free):
                if j and one.like(free[j - 1]):
                    continue
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
                if j > k and bins[j - 1].like(one):
                    continue
                after = lacking - one.length + self.lap
                if one.length >= need.least - self.dust and after >= least_lacking:
                    more = slack + one.length - need.least
                    stack.append(((*whole, one), after, more, j + 1))

    def _after(self, bins: tuple[Bin, ...], move: Move) -> tuple[Bin, ...]:
        gone = {one.source for one in move.whole}
        rest = Bin(move.cut.length - move.piece, move.cut.source, cut=True)
        kept = [one for one in bins if one.source not in gone and one.source != rest.source]
        return tuple(sorted((*kept, rest), reverse=True))

    def _pieces(self, k: int, move: Move) -> list[Piece]:
        whole = shortened(
            [Piece(one.source, one.length) for one in move.whole],
            by=move.wasted,
            least=self.needs[k].least,
        )
        return [*whole, Piece(move.cut.source, move.piece)]

    def _finish(self, bins: tuple[Bin, ...]) -> Iterator[list[tuple[int, list[Piece]]]]:
        """Give the last run all that is left, if it can be made of that."""
        self.steps.take()
        need = self.needs[self.last]
        over = sum(one.length for one in bins) - (len(bins) - 1) * self.lap - need.length
        least = 0.0 if len(bins) == 1 and not need.begun else need.least
        gives = sum(one.length - least for one in bins)
        short = min(one.length for one in bins) < least - self.dust
        if not short and -self.dust <= over <= gives + self.dust:
            pieces = [Piece(one.source, one.length) for one in bins]
            yield [(self.last, shortened(pieces, by=over, least=least))]


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
