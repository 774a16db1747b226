"""Sequence search: among the trims that come into question, the sequence that comes to least."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import gcd, inf
from typing import Literal

from roofing_core.layers.coursing.trim_rules import TrimRules, candidates, least_over, least_turns
from roofing_core.layers.coursing.windings import round_from
from roofing_core.measures.units import Inches

Tally = Literal["shingles", "simply"]
"""What is to be least: shingles with offcuts used again, or with each piece from its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SequenceCount:
    """A trim sequence and the shingles that it takes.

    Attributes:
        sequence: The trims, one per course, repeating.
        shingles: With offcuts used again, and the starter's among them where it shares them.
        simply: The same with each piece from a shingle of its own.
        clearance: Least distance between joints of neighbouring courses and of the starter and the
            first course, as if the courses ran on past the rakes.
        clearance_two: The same between courses two apart.
        narrowest_end: Width of the narrowest piece at either rake.
        holds: Whether clearance and end pieces are what was asked for.
    """

    sequence: tuple[Inches, ...]
    shingles: int
    simply: int
    clearance: Inches
    clearance_two: Inches
    narrowest_end: Inches
    holds: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundSequence:
    """The best sequence found of some number of trims.

    Attributes:
        count: The sequence and its shingles.
        least: Shingles that are proved to be needed for any sequence of as many trims that holds.
        proved: Whether no such sequence takes fewer: as many are proved to be needed.
    """

    count: SequenceCount
    least: int
    proved: bool


def counted(rules: TrimRules, sequence: tuple[Inches, ...]) -> SequenceCount:
    """Count what a sequence takes.

    Args:
        rules: The field.
        sequence: The trims.

    Returns:
        Its shingles, and whether it holds.

    Raises:
        Nothing.

    Source:
        As `turns_of`.

    >>> from roofing_core.layers.coursing.windings import MakeUp
    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> rules = TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                   starter=(), shared=())
    >>> counted(rules, (0, 11, 22)).shingles
    87
    """
    shares = [rules.make_up.shares(trim) for trim in sequence]
    return SequenceCount(
        sequence=sequence,
        shingles=rules.whole + rules.turns(shares, len(sequence)),
        simply=rules.whole + rules.simply(shares, len(sequence)),
        clearance=rules.least_clearance(sequence),
        clearance_two=rules.least_clearance_two(sequence),
        narrowest_end=rules.narrowest_end(sequence),
        holds=rules.holds(sequence),
    )


def least(rules: TrimRules, trims: int, *, by: Tally) -> int:
    """Give what any sequence of so many trims comes to at least, over whole shingles.

    Args:
        rules: The field.
        trims: How many.
        by: What is to be least.

    Returns:
        Shingles over the whole ones in the width of each course.

    Raises:
        Nothing.

    Source:
        `least_turns` and `least_over`.

    >>> from roofing_core.layers.coursing.windings import MakeUp
    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> rules = TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                   starter=(), shared=())
    >>> least(rules, 4, by="shingles"), least(rules, 4, by="simply")
    (10, 20)
    """
    return least_turns(rules, trims) if by == "shingles" else least_over(rules)


def best_of(
    rules: TrimRules,
    trims: int,
    *,
    by: Tally,
    known: tuple[Inches, ...] = (),
    most: int,
) -> tuple[FoundSequence, ...]:
    """Find the best sequence of so many trims.

    First those in which each strip closes the course before it, round the shingle, laid in several
    orders; then every sequence of candidates, trim by trim, where its beginning does not already
    come to as much as the best.

    Args:
        rules: The field.
        trims: How many.
        by: What is to be least.
        known: A sequence that may be as good; passed over where it does not hold or has another
            number of trims.
        most: How many beginnings of sequences are looked at.

    Returns:
        One entry; none where no sequence was found that holds.

    Raises:
        Nothing.

    Source:
        Exhaustion, within its limit.

    >>> from roofing_core.layers.coursing.windings import MakeUp
    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> rules = TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                   starter=(), shared=())
    >>> [found.count.shingles for found in best_of(rules, 3, by="shingles", most=1000)]
    [87]
    """
    search = _Search(rules, trims, by=by, most=most)
    for sequence in (known, *_rounds(rules, trims)):
        if len(sequence) == trims:
            search.offer(sequence)
    search.run(())
    if not search.best:
        return ()
    ended = search.least <= search.enough or search.looked < most
    return (
        FoundSequence(
            count=counted(rules, search.best),
            least=rules.whole + (int(search.least) if ended else search.enough),
            proved=ended,
        ),
    )


def _rounds(rules: TrimRules, trims: int) -> Iterator[tuple[float, ...]]:
    """Give the trims of each round, in every order of even strides."""
    for start in candidates(rules, 1):
        along = round_from(rules.make_up, start, trims=trims)
        for stride in range(1, trims + 1):
            if along and gcd(stride, trims) == 1:
                for first in range(trims):
                    yield tuple(along[(first + k * stride) % trims] for k in range(trims))


class _Search:
    """The search for one number of trims."""

    def __init__(self, rules: TrimRules, trims: int, *, by: Tally, most: int) -> None:
        self.rules, self.trims = rules, trims
        tallies = rules.turns, rules.simply
        self.tally, self.then = tallies if by == "shingles" else tallies[::-1]
        self.enough, self.most, self.looked = least(rules, trims, by=by), most, 0
        self.shares = {trim: rules.make_up.shares(trim) for trim in candidates(rules, trims)}
        self.best: tuple[float, ...] = ()
        self.least, self.rank = inf, (inf, inf, 0.0)

    def offer(self, sequence: tuple[float, ...]) -> None:
        """Keep a sequence that holds if it is the best so far, or as good and simpler."""
        if not self.rules.holds(sequence):
            return
        shares = [self.rules.make_up.shares(trim) for trim in sequence]
        comes_to = self.tally(shares, self.trims)
        simpler = self.then(shares, self.trims)
        rank = comes_to, simpler, -self.rules.least_clearance(sequence)
        if rank < self.rank:
            self.best, self.least, self.rank = sequence, comes_to, rank

    def run(self, begun: tuple[float, ...]) -> None:
        """Try every trim that can follow some, while less could be found."""
        for trim in self.shares:
            if self.least <= self.enough or self.looked >= self.most:
                return
            if not self.rules.follows(begun, trim):
                continue
            self.looked += 1
            longer = (*begun, trim)
            if self.tally([self.shares[one] for one in longer], self.trims) >= self.least:
                continue
            if len(longer) < self.trims:
                self.run(longer)
            else:
                self.offer(longer)
