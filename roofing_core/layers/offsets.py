"""Offsets: where the butt joints of every course fall, and how far they stand from each other.

A sequence gives the length trimmed from the first shingle of each course, repeating. What each
piece is cut to is `pieces`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches

#: From memory, shingle standards and trade practice: joints of neighbouring courses stand this far
#: apart unless the material says more.
MINIMUM_CLEARANCE = 4.0

#: Common practice, no published source: no end piece at a rake under this width.
MINIMUM_END_PIECE = 3.0

#: Common practice, no published source: shingles stand this far past the rake metal.
SHINGLE_PAST_RAKE = 0.25

#: Common practice, no published source: the first starter piece is shortened by this.
STARTER_TRIM = 4.0

#: A roof that needs more pieces than this is refused before any is laid.
MOST_PIECES = 200_000

#: Six steps to a shingle: 6 in for 36 in strips, 6 1/2 in for 39 3/8 in strips.
_STEPS_PER_SHINGLE = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class JointRow:
    """The joints of one course, or of the starter.

    Attributes:
        trim: Length trimmed from the left of its first shingle.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        left_end: Width of its first piece.
        right_end: Width of its last piece as it lies, trimmed at the rake.
        overhang: How far the last shingle runs past its trim line before it is trimmed.
    """

    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    left_end: Inches
    right_end: Inches
    overhang: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPattern:
    """The joints of one turn of a trim sequence, which every further turn repeats.

    Attributes:
        start_line: Where every course starts, negative past the left rake.
        trim_line: Where every course is trimmed, past the right rake.
        rows: One entry per trim.
        clearances: For each trim, least distance from its joints to those of the next one, round
            the sequence.
        clearances_two: The same to the second next.
        starter: The starter's joints.
        starter_clearance: Least distance between joints of the starter and of the first trim.
    """

    start_line: Inches
    trim_line: Inches
    rows: tuple[JointRow, ...]
    clearances: tuple[Inches, ...]
    clearances_two: tuple[Inches, ...]
    starter: JointRow
    starter_clearance: Inches

    def pieces(self, courses: int) -> int:
        """Count the pieces of so many courses."""
        turns, rest = divmod(courses, len(self.rows))
        each = [row.pieces for row in self.rows]
        return turns * sum(each) + sum(each[:rest])

    def least_clearance(self, courses: int) -> float:
        """Give the least clearance among so many courses, the starter included."""
        return min([self.starter_clearance, *self.clearances[: courses - 1]])

    def narrowest_end_piece(self, courses: int) -> float:
        """Give the width of the narrowest piece at either rake among so many courses."""
        return min(min(row.left_end, row.right_end) for row in self.rows[:courses])


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseOffsets:
    """The joints of one course and how far they stand from those of the courses above.

    Attributes:
        number: From 1 at the eave.
        trim: Length trimmed from the left of its first shingle.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        clearance: Least distance from one of its joints to one of the next course up, as the
            sequence goes on; the width of the course where one of the two has no joint.
        clearance_two: The same to the second course up.
        left_end: Width of its first piece.
        right_end: Width of its last piece as it lies, trimmed at the rake.
        overhang: How far the last shingle runs past its trim line before it is trimmed.
    """

    number: int
    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    clearance: Inches
    clearance_two: Inches
    left_end: Inches
    right_end: Inches
    overhang: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Offsets:
    """The joints of all courses on one plane.

    Attributes:
        period: After how many courses the pattern of joints repeats.
        least_clearance: Least distance between joints of neighbouring courses that are laid, the
            starter included.
        starter_clearance: Least distance between joints of the starter and of the first course.
        narrowest_end_piece: Width of the narrowest piece at either rake.
        start_line: Where every course starts, negative past the left rake.
        trim_line: Where every course is trimmed, past the right rake.
        pieces: Pieces in all courses together, the starter not among them.
        starter: The starter's joints.
        courses: One entry per course, eave first.
    """

    period: int
    least_clearance: Inches
    starter_clearance: Inches
    narrowest_end_piece: Inches
    start_line: Inches
    trim_line: Inches
    pieces: int
    starter: JointRow
    courses: tuple[CourseOffsets, ...]


def generated_sequence(
    shingle_length: Inches, *, minimum_clearance: Inches = MINIMUM_CLEARANCE
) -> tuple[float, ...]:
    """Make a trim sequence that climbs in even steps and starts again before a shingle is used up.

    The step is a sixth of the shingle, down to the 1/2 in, or the least clearance if that is more;
    the trims are 0, 1, 2, ... steps while another step still fits into the shingle.

    Args:
        shingle_length: Length of a shingle, over 0.
        minimum_clearance: Least distance between joints of neighbouring courses, over 0, at most
            half a shingle.

    Returns:
        One trim per course, repeating. Neighbours clear each other by the step or more, the last
        and the first too.

    Raises:
        Refused: A length is zero, negative or not finite, or no two joints can clear each other.

    Source:
        Trade-journal layouts for 36 in strips (0 to 30 in by 6); for metric strips half a tab
        instead of 6 in, 6 1/2 in usual, restarted after six.

    >>> generated_sequence(39.375)
    (0.0, 6.5, 13.0, 19.5, 26.0, 32.5)
    """
    refuse_if_any(
        [
            not_positive("shingle_length", shingle_length),
            not_positive("minimum_clearance", minimum_clearance),
        ]
    )
    if minimum_clearance > shingle_length / 2:
        wanted = ("at most half a shingle, ", length(shingle_length / 2))
        refuse_if_any([fault("minimum_clearance", length(minimum_clearance), *wanted)])
    step = max(floor(shingle_length / _STEPS_PER_SHINGLE * 2) / 2, minimum_clearance)
    return tuple(k * step for k in range(int(shingle_length // step)))


def joint_row(
    trim: Inches, *, shingle_length: Inches, start_line: Inches, trim_line: Inches, edge: Inches
) -> JointRow:
    """Lay out the joints of one course.

    Joint i stands at ``start_line + shingle_length - trim + i * shingle_length``.

    Args:
        trim: Length trimmed from the left of the first shingle, under a shingle.
        shingle_length: Length of a shingle.
        start_line: Where the course starts.
        trim_line: Where it is trimmed.
        edge: The right end of the deck; joints beyond it are not on the deck.

    Returns:
        The joints on the deck, the count of pieces and both end pieces.

    Raises:
        Nothing: `offsets` checks its arguments.

    Source:
        Geometry.

    >>> joint_row(0, shingle_length=36, start_line=0, trim_line=72, edge=72).pieces
    2
    """
    first = shingle_length - trim
    width = trim_line - start_line
    more = whole_pieces((width - first) / shingle_length) if width > first else 0
    joints = [start_line + first + i * shingle_length for i in range(more)]
    last_start = joints[-1] if joints else start_line
    laid_end = last_start + shingle_length if joints else start_line + first
    return JointRow(
        trim=trim,
        pieces=more + 1,
        joints=tuple(joint for joint in joints if 0 < joint < edge),
        left_end=min(first, width),
        right_end=trim_line - last_start,
        overhang=max(0.0, laid_end - trim_line),
    )


def clearance_between(lower: Sequence[Inches], upper: Sequence[Inches], *, none: Inches) -> float:
    """Give the least distance between any joint of one course and any of another.

    Args:
        lower: Joints of one course, from left to right.
        upper: Joints of the other, from left to right.
        none: What to give where one of them has no joint.

    Returns:
        The least distance.

    Raises:
        Nothing.

    Source:
        Geometry: of two sorted rows, the nearest pair is met by walking both from the left.

    >>> clearance_between((36, 72), (30, 66), none=100)
    6
    """
    least = none
    i = j = 0
    while i < len(lower) and j < len(upper):
        least = min(least, abs(lower[i] - upper[j]))
        if lower[i] < upper[j]:
            i += 1
        else:
            j += 1
    return least


def offsets(
    eave_length: Inches,
    *,
    shingle_length: Inches,
    sequence: tuple[Inches, ...] | None = None,
    courses: int,
    shingle_past_rake: Inches = SHINGLE_PAST_RAKE,
    starter_length: Inches | None = None,
    starter_trim: Inches = STARTER_TRIM,
    minimum_clearance: Inches = MINIMUM_CLEARANCE,
) -> Offsets:
    """Place the joints of every course and of the starter, and measure how they clear each other.

    A course starts ``shingle_past_rake`` past the left rake and is trimmed as far past the right
    one. Joint i of a course stands at ``start + (shingle_length - trim) + i * shingle_length``. The
    clearance is the least distance between any two joints on the deck.

    Args:
        eave_length: Along the eave, edge to edge of the deck, over 0.
        shingle_length: Length of a shingle, over 0.
        sequence: Length trimmed from the first shingle of each course, repeating; each 0 or more
            and under a shingle. Made from the shingle and the least clearance unless given.
        courses: How many courses, 1 or more.
        shingle_past_rake: How far shingles stand past the rake metal.
        starter_length: Length of a starter piece; that of a shingle unless given.
        starter_trim: Length trimmed from the first starter piece, under a piece.
        minimum_clearance: Least distance between joints that a made sequence keeps.

    Returns:
        One entry per course, eave first, the starter, and the least figures of them all.

    Raises:
        Refused: A length is zero, negative or not finite, the sequence is empty or has a trim that
            is not on a shingle, there are no courses, or more pieces than the limit; names each.

    Source:
        Geometry. Four trims for 39 3/8 in strips (0, 6, 11, 17 in), 1/4 in past the rake and 4 in
        off the starter are common practice, no published source.

    >>> laid = offsets(168, shingle_length=39.375, sequence=(0, 6, 11, 17), courses=4)
    >>> [course.clearance for course in laid.courses], laid.pieces
    ([6.0, 5.0, 6.0, 17.0], 20)
    """
    pattern = joint_pattern(
        eave_length,
        shingle_length=shingle_length,
        sequence=sequence,
        courses=courses,
        shingle_past_rake=shingle_past_rake,
        starter_length=starter_length,
        starter_trim=starter_trim,
        minimum_clearance=minimum_clearance,
    )
    rows = tuple(zip(pattern.rows, pattern.clearances, pattern.clearances_two, strict=True))
    return Offsets(
        period=period_of(tuple(row.trim for row in pattern.rows)),
        least_clearance=pattern.least_clearance(courses),
        starter_clearance=pattern.starter_clearance,
        narrowest_end_piece=pattern.narrowest_end_piece(courses),
        start_line=pattern.start_line,
        trim_line=pattern.trim_line,
        pieces=pattern.pieces(courses),
        starter=pattern.starter,
        courses=tuple(_numbered(k + 1, *rows[k % len(rows)]) for k in range(courses)),
    )


def joint_pattern(
    eave_length: Inches,
    *,
    shingle_length: Inches,
    sequence: tuple[Inches, ...] | None = None,
    courses: int,
    shingle_past_rake: Inches = SHINGLE_PAST_RAKE,
    starter_length: Inches | None = None,
    starter_trim: Inches = STARTER_TRIM,
    minimum_clearance: Inches = MINIMUM_CLEARANCE,
) -> JointPattern:
    """Place the joints of one turn of a trim sequence, and of the starter.

    As `offsets`, which repeats the turn for every course; here each trim is laid out once.

    Args:
        eave_length: As in `offsets`, and so are all the others.
        shingle_length: Length of a shingle.
        sequence: Length trimmed from the first shingle of each course, repeating.
        courses: How many courses, for the limit of pieces.
        shingle_past_rake: How far shingles stand past the rake metal.
        starter_length: Length of a starter piece.
        starter_trim: Length trimmed from the first starter piece.
        minimum_clearance: Least distance between joints that a made sequence keeps.

    Returns:
        One entry per trim, with its clearances round the sequence.

    Raises:
        Refused: As `offsets`.
        TooManyPieces: As `offsets`.

    Source:
        As `offsets`.

    >>> joint_pattern(168, shingle_length=39.375, sequence=(0, 6, 11, 17), courses=20).pieces(20)
    100
    """
    if sequence is None:
        sequence = generated_sequence(shingle_length, minimum_clearance=minimum_clearance)
    starter_length = shingle_length if starter_length is None else starter_length
    refuse_if_any(
        [
            not_positive("eave_length", eave_length),
            not_positive("shingle_length", shingle_length),
            not_positive("starter_length", starter_length),
            negative("shingle_past_rake", shingle_past_rake),
            *sequence_faults(sequence, shingle_length=shingle_length),
            _trim_fault("starter_trim", starter_trim, starter_length),
            None if courses >= 1 else fault("courses", str(courses), "1 or more"),
        ]
    )
    limit_pieces(eave_length + 2 * shingle_past_rake, shingle_length, courses)
    start, stop = -shingle_past_rake, eave_length + shingle_past_rake
    lines = {"start_line": start, "trim_line": stop, "edge": eave_length}
    rows = tuple(joint_row(trim, shingle_length=shingle_length, **lines) for trim in sequence)
    starter = joint_row(starter_trim, shingle_length=starter_length, **lines)

    def clearances(up: int) -> tuple[float, ...]:
        above = (rows[(k + up) % len(rows)].joints for k in range(len(rows)))
        return tuple(
            clearance_between(row.joints, joints, none=stop - start)
            for row, joints in zip(rows, above, strict=True)
        )

    return JointPattern(
        start_line=start,
        trim_line=stop,
        rows=rows,
        clearances=clearances(1),
        clearances_two=clearances(2),
        starter=starter,
        starter_clearance=clearance_between(starter.joints, rows[0].joints, none=stop - start),
    )


def _numbered(number: int, row: JointRow, clearance: float, clearance_two: float) -> CourseOffsets:
    return CourseOffsets(
        number=number,
        trim=row.trim,
        pieces=row.pieces,
        joints=row.joints,
        clearance=clearance,
        clearance_two=clearance_two,
        left_end=row.left_end,
        right_end=row.right_end,
        overhang=row.overhang,
    )


def period_of(sequence: Sequence[Inches]) -> int:
    """Count the courses after which a repeating sequence comes round.

    The least p that divides the length of the sequence and by which it can be shifted.

    Args:
        sequence: Trims, one per course.

    Returns:
        Courses, at least 1. The trade counts "every n courses" inclusively, one more than this.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> period_of((0, 6, 0, 6))
    2
    """
    size = len(sequence)
    return next(
        p
        for p in range(1, size + 1)
        if size % p == 0 and all(sequence[i] == sequence[i - p] for i in range(size))
    )


def sequence_with_wide_ends(
    sequence: tuple[Inches, ...],
    *,
    width: Inches,
    shingle_length: Inches,
    minimum_end_piece: Inches = MINIMUM_END_PIECE,
    step: Inches = 0.5,
) -> tuple[float, ...]:
    """Shift a trim sequence along the shingle until no end piece is under a width.

    Every trim grows by the same amount, counted round the shingle, so that the joints keep their
    distances from each other; the least such amount in steps is taken.

    Args:
        sequence: The trims to shift.
        width: Of a course, trim line to trim line.
        shingle_length: Length of a shingle.
        minimum_end_piece: Least width of the first and of the last piece of a course.
        step: The amounts tried are multiples of this.

    Returns:
        The shifted trims; empty where no shift does it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> sequence_with_wide_ends((0.0,), width=73, shingle_length=36)  # 0 would leave 1 in
    (2.0,)
    """
    for k in range(whole_pieces(shingle_length / step)):
        shifted = tuple((trim + k * step) % shingle_length for trim in sequence)
        if all(_ends_are_wide(t, width, shingle_length, minimum_end_piece) for t in shifted):
            return shifted
    return ()


def _ends_are_wide(trim: float, width: float, shingle_length: float, least: float) -> bool:
    row = joint_row(
        trim, shingle_length=shingle_length, start_line=0.0, trim_line=width, edge=width
    )
    return row.left_end >= least and row.right_end >= least


def sequence_faults(sequence: tuple[Inches, ...], *, shingle_length: Inches) -> list[Fault | None]:
    """Give the faults of a trim sequence: empty, or a trim that is not on the shingle.

    Args:
        sequence: Trims, one per course.
        shingle_length: Length of a shingle.

    Returns:
        Faults, or ``None`` in their place.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Geometry.

    >>> sequence_faults((0.0, 6.0), shingle_length=36)
    [None, None]
    """
    if not sequence:
        return [fault("sequence", "empty", "at least one length to trim, such as 0 in")]
    return [_trim_fault("sequence", trim, shingle_length) for trim in sequence]


def _trim_fault(name: str, trim: float, shingle_length: float) -> Fault | None:
    if 0 <= trim < shingle_length or not shingle_length > 0:
        return None
    wanted = ("zero or more, and less than the piece it is cut from, ", length(shingle_length))
    return fault(name, length(trim), *wanted)


def limit_pieces(width: Inches, shingle_length: Inches, courses: int) -> None:
    """Refuse a roof whose pieces would be more than the limit, before any is laid.

    Args:
        width: Of a course.
        shingle_length: Length of a shingle.
        courses: How many courses.

    Raises:
        TooManyPieces: About ``courses * (width / shingle_length + 1)`` is over the limit.

    Source:
        A limit of this library.

    >>> limit_pieces(168.5, 39.375, 20)
    """
    pieces = courses * (width / shingle_length + 1)
    if pieces > MOST_PIECES:
        came = Amount(float(floor(pieces)), "count")
        wanted = f"at most {MOST_PIECES} pieces on one plane: a smaller roof or larger shingles"
        raise TooManyPieces(fault("pieces", came, wanted))
