"""Trim rules: which trim sequences hold for a field of courses, and what they come to.

Of the endless many trims only so many come into question; see `candidates`. Which sequence of them
is best is `best_sequences`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from roofing_core.layers.coursing.windings import MakeUp, Shares, fewest_turns, turns
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimRules:
    """A field of courses, and what a trim sequence for it must hold.

    Attributes:
        make_up: How a course is made up.
        courses: Up each plane.
        planes: How many planes alike.
        clearance: Least distance between joints of neighbouring courses.
        clearance_two: Least distance between joints of courses two apart.
        starter: The trims with which a first course would have a joint over one of the starter's.
        shared: The trims of the starters that are cut from the same shingles; none or one.
    """

    make_up: MakeUp
    courses: int
    planes: int
    clearance: Inches
    clearance_two: Inches
    starter: tuple[Inches, ...]
    shared: tuple[Inches, ...]

    def counts(self, trims: int) -> list[int]:
        """Count the courses that have each of so many trims."""
        turn, rest = divmod(self.courses, trims)
        return [self.planes * (turn + (k < rest)) for k in range(trims)]

    def turns(self, shares: Sequence[Shares], trims: int) -> int:
        """Give the turns of the first courses of a sequence of so many trims, or of all."""
        counts = self.counts(trims)[: len(shares)]
        starters = [self.make_up.shares(trim) for trim in self.shared]
        return turns([*shares, *starters], [*counts, *(self.planes for _ in starters)])

    def simply(self, shares: Sequence[Shares], trims: int) -> int:
        """Give the pieces over the whole shingles in the width of each course, as `turns`."""
        counts = self.counts(trims)[: len(shares)]
        starters = sum(self.make_up.shares(trim).over for trim in self.shared)
        over = sum(one.over * n for one, n in zip(shares, counts, strict=True))
        return over + starters * self.planes

    @property
    def whole(self) -> int:
        """Give the whole shingles that the width of all courses holds, course by course."""
        return (self.courses + len(self.shared)) * self.planes * self.make_up.whole

    def apart(self, one: Inches, other: Inches) -> float:
        """Give how far the joints of courses with two trims stand apart."""
        long = self.make_up.shingle_length
        off = abs(one - other) % long
        return min(off, long - off)

    def follows(self, begun: Sequence[Inches], trim: Inches) -> bool:
        """Tell whether a course with some trim may be laid over others."""
        dust = self.make_up.dust
        if len(begun) > 1 and self.apart(begun[-2], trim) < self.clearance_two - dust:
            return False
        below = begun[-1:] or self.starter
        return all(self.apart(one, trim) >= self.clearance - dust for one in below)

    def least_clearance(self, sequence: Sequence[Inches]) -> float:
        """Give the least clearance of a sequence as it is laid; a shingle where there is none."""
        laid = list(sequence[: self.courses])
        above = (laid * 2)[1 : self.courses]
        pairs = [*zip(laid, above, strict=False), *((over, laid[0]) for over in self.starter)]
        return min((self.apart(*pair) for pair in pairs), default=self.make_up.shingle_length)

    def least_clearance_two(self, sequence: Sequence[Inches]) -> float:
        """Give the least clearance of courses two apart; a shingle where there are none."""
        laid = list(sequence[: self.courses])
        above = (laid * 3)[2 : self.courses]
        pairs = zip(laid, above, strict=False)
        return min((self.apart(*pair) for pair in pairs), default=self.make_up.shingle_length)

    def narrowest_end(self, sequence: Sequence[Inches]) -> float:
        """Give the width of the narrowest end piece of a sequence as it is laid."""
        return min(map(self.make_up.narrowest_end, sequence[: self.courses]))

    def holds(self, sequence: Sequence[Inches]) -> bool:
        """Tell whether a sequence holds."""
        dust = self.make_up.dust
        return (
            self.least_clearance(sequence) >= self.clearance - dust
            and self.least_clearance_two(sequence) >= self.clearance_two - dust
            and all(map(self.make_up.holds, sequence[: self.courses]))
        )


def least_turns(rules: TrimRules, trims: int) -> int:
    """Give turns that any sequence of so many trims takes at least.

    With c courses on p planes and n trims there are ``c // n`` times p rounds of all n of them, and
    one more p times of the first ``c % n``. Leaving courses out saves turns or none, and where each
    of some trims is laid k times, their turns are k times those of laying each once.

    Args:
        rules: The field.
        trims: How many; as many as courses, or more, for any trims whatever.

    Returns:
        The most of what all courses, the whole rounds alone, and one more of the first trims prove.

    Raises:
        Nothing.

    Source:
        Matchings of equal copies are copies of one matching (integrality of bipartite matching).

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> rules = TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                   starter=(), shared=())
    >>> [least_turns(rules, trims) for trims in (3, 4, 7)]
    [7, 10, 6]
    """
    make_up, courses, planes = rules.make_up, rules.courses, rules.planes
    turn, rest = divmod(courses, trims)
    rows = (courses + len(rules.shared)) * planes
    return max(
        whole_pieces(rows * make_up.rest / make_up.shingle_length),
        fewest_turns(make_up, courses * planes),
        planes * turn * fewest_turns(make_up, trims) if turn else 0,
        planes * (turn + 1) * fewest_turns(make_up, rest),
    )


def least_over(rules: TrimRules) -> int:
    """Give what `simply` comes to at least.

    Args:
        rules: The field.

    Returns:
        One piece over the whole shingles in the width of each course, unless these fill it.

    Raises:
        Nothing.

    Source:
        A course is no shorter than its pieces.

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> least_over(TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                      starter=(), shared=()))
    20
    """
    over = rules.courses * rules.planes if rules.make_up.rest > rules.make_up.dust else 0
    return over + rules.simply((), 1)


def candidates(rules: TrimRules, trims: int) -> tuple[Inches, ...]:
    """Give the trims that come into question for a sequence of so many.

    Where a sequence holds and its closing pieces come from certain strips, lower each trim as far
    as that stays so. Each is then held by an end piece, by the starter, or by another trim: it
    stands a clearance, or the rest of the width and a cut, on from it, round the shingle. So each
    is at most ``trims - 1`` such steps on from an end or from the starter. The lowered trims hold
    and share as before: among them is a best sequence.

    Args:
        rules: The field.
        trims: How many.

    Returns:
        The trims from the least up.

    Raises:
        Nothing.

    Source:
        Systems of differences: their least solution is made of longest paths.

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> rules = TrimRules(make_up=shed, courses=20, planes=1, clearance=4, clearance_two=0,
    ...                   starter=(), shared=())
    >>> candidates(rules, 2)
    (0.0, 3.0, 4.0, 11.0, 31.375, 35.375)
    """
    make_up = rules.make_up
    step = make_up.rest + make_up.kerf
    steps = (step, rules.clearance, rules.clearance_two)
    begins = [
        *make_up.lowest(),
        *(make_up.marked(make_up.within(over + rules.clearance)) for over in rules.starter),
        *(make_up.marked(make_up.within(trim + step)) for trim in rules.shared),
    ]
    found = dict(_holding(make_up, begins))
    newest = list(found.values())
    for _ in range(trims - 1):
        further = (make_up.marked(make_up.within(trim + by)) for trim in newest for by in steps)
        fresh = {key: trim for key, trim in _holding(make_up, further) if key not in found}
        found |= fresh
        newest = list(fresh.values())
    return tuple(sorted(found.values()))


def _holding(
    make_up: MakeUp, trims: Sequence[float] | Iterator[float]
) -> Iterator[tuple[int, float]]:
    """Give the trims that leave wide ends, each with a key that float dust leaves alone."""
    for trim in trims:
        if trim < make_up.shingle_length - make_up.dust and make_up.holds(trim):
            yield round(trim / make_up.dust / 2), trim
