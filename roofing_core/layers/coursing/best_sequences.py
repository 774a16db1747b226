"""Best sequences: the trims that lay a field of courses from the fewest shingles.

The field is a rectangle, or several alike, laid course by course from one rake to the other. To
shift all of it along the eave is to add the shift to every trim, so that the trims are all there is
to choose. Which of them come into question is said in `trim_rules`, how they are gone through in
`sequence_search`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf
from typing import NoReturn

from roofing_core.layers.coursing.joints import STARTER_TRIM, limit_pieces
from roofing_core.layers.coursing.sequence_search import (
    FoundSequence,
    SequenceCount,
    Tally,
    best_of,
    counted,
    least,
)
from roofing_core.layers.coursing.sequences import (
    MINIMUM_CLEARANCE,
    MINIMUM_END_PIECE,
    sequence_faults,
    trim_fault,
)
from roofing_core.layers.coursing.trim_rules import TrimRules, least_turns
from roofing_core.layers.coursing.windings import MakeUp
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.faults import (
    Fault,
    Refused,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: Trims in sixteenths of an inch, as a tape is marked.
TAPE_MARK = 1 / 16

#: No more trims than this to a sequence.
MOST_TRIMS = 24

#: For each number of trims, the search looks at so many beginnings of sequences at most.
MOST_BEGINNINGS = 20_000


@dataclass(frozen=True, slots=True, kw_only=True)
class BestSequence:
    """The best sequences for a field, and what they save.

    Attributes:
        asked: The sequence that was asked for.
        by_trims: With offcuts used again: the best sequence found of as many trims as were asked
            for, and of each number of trims that could do with fewer shingles than fewer trims,
            fewest trims first.
        best: Of these, the one with fewest shingles; of such, with fewest trims.
        simply: With no offcut used again: the sequence with fewest shingles and trims.
        least: Shingles that any sequence of whatever trims takes, offcuts used again.
        saved: Shingles that the best one saves, offcuts used again in both.
        saved_simply: Shingles that the best one with no offcut used again saves.
    """

    asked: SequenceCount
    by_trims: tuple[FoundSequence, ...]
    best: FoundSequence
    simply: FoundSequence
    least: int
    saved: int
    saved_simply: int


def best_sequence(  # noqa: PLR0913 - each is asked for by its own name
    width: Inches,
    *,
    shingle_length: Inches,
    courses: int,
    sequence: tuple[Inches, ...],
    planes: int = 1,
    most_trims: int = 8,
    minimum_clearance: Inches = MINIMUM_CLEARANCE,
    minimum_clearance_two: Inches = 0.0,
    minimum_end_piece: Inches = MINIMUM_END_PIECE,
    starter_length: Inches | None = None,
    starter_trim: Inches = STARTER_TRIM,
    starter_shares: bool = False,
    kerf: Inches = 0.0,
    mark: Inches = TAPE_MARK,
    most: int = MOST_BEGINNINGS,
) -> BestSequence:
    """Find the trim sequences that lay a field from the fewest shingles.

    A course ``width = m * shingle_length + rest`` takes m shingles, and over them 1, or 2 where its
    trim is over ``shingle_length - rest``; less one wherever the strip cut off its first shingle
    closes a course, its own or another. A sequence holds where neighbouring courses, the starter
    and the first among them, clear each other round the shingle, and all end pieces are wide
    enough.

    Args:
        width: Of a course, trim line to trim line, a shingle or more.
        shingle_length: Length of a shingle.
        courses: How many courses, up each plane.
        sequence: The trims asked for, to compare with.
        planes: How many planes alike, all laid with the same sequence.
        most_trims: Sequences of 1 to so many trims are looked for, and of as many as asked for.
        minimum_clearance: Least distance between joints of neighbouring courses.
        minimum_clearance_two: Least distance between joints of courses two apart; 0 lets them line
            up every other course.
        minimum_end_piece: Least width of the first and of the last piece of a course, over 0.
        starter_length: Length of a starter piece; that of a shingle unless given.
        starter_trim: Length trimmed from the first starter piece.
        starter_shares: Whether starters are cut from the same shingles, and counted with them; they
            are then as long as these.
        kerf: What a cut between two pieces of one shingle takes.
        mark: Trims are multiples of this; 0 for any.
        most: How many beginnings of sequences are looked at for each number of trims.

    Returns:
        The best of each number of trims, with what is proved of it (for trims on the marks), and
        what they save.

    Raises:
        Refused: A length cannot be, the sequence is no sequence, or no sequence holds; names each.
        TooManyPieces: The field has more pieces than the limit.

    Source:
        Geometry; see `windings` and `trim_rules`.

    >>> shed = best_sequence(168.5, shingle_length=39.375, courses=20, sequence=(0, 6, 11, 17))
    >>> shed.asked.simply, shed.asked.shingles, shed.best.count.shingles, shed.least
    (100, 90, 86, 86)
    """
    starter = shingle_length if starter_length is None else starter_length
    refuse_if_any(
        [
            *_size_faults(width, shingle_length),
            *_half_faults(
                shingle_length,
                minimum_clearance=minimum_clearance,
                minimum_clearance_two=minimum_clearance_two,
                minimum_end_piece=minimum_end_piece,
            ),
            *_count_faults(courses=courses, planes=planes, most_trims=most_trims, most=most),
            *sequence_faults(sequence, shingle_length=shingle_length),
            *_starter_faults(starter, starter_trim, shingle_length if starter_shares else starter),
            negative("kerf", kerf),
            negative("mark", mark),
        ]
    )
    limit_pieces(courses * planes * (width / shingle_length + 2))
    make_up = MakeUp(
        width=width,
        shingle_length=shingle_length,
        kerf=kerf,
        least_end=minimum_end_piece,
        mark=mark,
    )
    rules = TrimRules(
        make_up=make_up,
        courses=courses,
        planes=planes,
        clearance=minimum_clearance,
        clearance_two=minimum_clearance_two,
        starter=tuple(_trims_over(make_up, starter, starter_trim)),
        shared=(starter_trim,) if starter_shares else (),
    )
    return _best(rules, sequence, most_trims=most_trims, most=most)


def _size_faults(width: float, shingle_length: float) -> Iterator[Fault | None]:
    yield not_positive("width", width)
    yield not_positive("shingle_length", shingle_length)
    if 0 < width < shingle_length:
        wanted = ("a shingle or more, ", length(shingle_length), ": a shorter course has no joint")
        yield fault("width", length(width), *wanted)


def _half_faults(shingle_length: float, **lengths: float) -> Iterator[Fault | None]:
    """Give the faults of lengths of which none can be held where it is over half a shingle."""
    for name, value in lengths.items():
        yield (not_positive if name == "minimum_end_piece" else negative)(name, value)
        if 0 < shingle_length < 2 * value:
            yield fault(name, length(value), "at most half a shingle, ", length(shingle_length / 2))


def _count_faults(**counts: int) -> Iterator[Fault | None]:
    for name, value in counts.items():
        most = {"most_trims": MOST_TRIMS}.get(name, value)
        if not 1 <= value <= most:
            wanted = f"1 to {MOST_TRIMS}" if name == "most_trims" else "1 or more"
            yield fault(name, str(value), wanted)


def _starter_faults(starter: float, trim: float, shares: float) -> Iterator[Fault | None]:
    yield not_positive("starter_length", starter)
    yield trim_fault("starter_trim", trim, shingle_length=starter)
    if starter != shares:
        wanted = ("as long as a shingle, ", length(shares), ", to be cut from one")
        yield fault("starter_length", length(starter), *wanted)


def _trims_over(make_up: MakeUp, starter: float, trim: float) -> Iterator[float]:
    """Give the trims with which the first course would have a joint over one of the starter's."""
    long, first = make_up.shingle_length, starter - trim
    more = whole_pieces(max(0.0, make_up.width - first) / starter)
    over = (-(first + k * starter) % long for k in range(max(1, more)))
    yield from {round(place / make_up.dust / 2): place for place in over}.values()


def _best(
    rules: TrimRules, asked: tuple[float, ...], *, most_trims: int, most: int
) -> BestSequence:
    known = asked[: rules.courses]
    numbers = sorted({*range(1, min(most_trims, rules.courses) + 1), len(known)})
    sharing = list(_worth_looking_at(rules, numbers, known, "shingles", most))
    simply = list(_worth_looking_at(rules, numbers, known, "simply", most))
    if not sharing or not simply:
        _refuse(rules, numbers)
    best = min(sharing, key=lambda one: one.count.shingles)
    simplest = min(simply, key=lambda one: one.count.simply)
    count = counted(rules, asked)
    return BestSequence(
        asked=count,
        by_trims=tuple(sharing),
        best=best,
        simply=simplest,
        least=rules.whole + least_turns(rules, rules.courses),
        saved=count.shingles - best.count.shingles,
        saved_simply=count.simply - simplest.count.simply,
    )


def _worth_looking_at(
    rules: TrimRules, numbers: Sequence[int], known: tuple[float, ...], by: Tally, most: int
) -> Iterator[FoundSequence]:
    """Give the best sequence of each number of trims that could take fewer than fewer trims."""
    fewest = inf
    for trims in numbers:
        if rules.whole + least(rules, trims, by=by) < fewest or trims == len(known):
            for found in best_of(rules, trims, by=by, known=known, most=most):
                fewest = min(fewest, getattr(found.count, by))
                yield found


def _refuse(rules: TrimRules, numbers: Sequence[int]) -> NoReturn:
    wanted = (
        f"less, or more trims than {numbers[-1]}: with end pieces of ",
        length(rules.make_up.least_end),
        " no such sequence was found",
    )
    raise Refused(fault("minimum_clearance", length(rules.clearance), *wanted))
