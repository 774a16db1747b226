"""Joints: where the butt joints of one turn of a trim sequence fall, and the starter's.

Every further turn repeats the first. Course by course they are listed in `offsets`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from roofing_core.layers.coursing.sequences import (
    MINIMUM_CLEARANCE,
    generated_sequence,
    sequence_faults,
    trim_fault,
)
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount
from roofing_core.measures.units import Inches

#: Common practice, no published source: shingles stand this far past the rake metal.
SHINGLE_PAST_RAKE = 0.25

#: Common practice, no published source: the first starter piece is shortened by this.
STARTER_TRIM = 4.0

#: A roof that needs more pieces than this is refused before any is laid.
MOST_PIECES = 200_000


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
        sequence: The trims, one per course, repeating.
        start_line: Where every course starts, negative past the left rake.
        trim_line: Where every course is trimmed, past the right rake.
        rows: One entry per trim, as many as the courses come to.
        clearances: For each trim, least distance from its joints to those of the next one, round
            the sequence.
        clearances_two: The same to the second next.
        starter: The starter's joints.
        starter_clearance: Least distance between joints of the starter and of the first trim.
    """

    sequence: tuple[Inches, ...]
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
        joints=tuple(joint for joint in joints if DUST < joint < edge - DUST),
        left_end=min(first, width),
        right_end=trim_line - last_start,
        overhang=max(0.0, laid_end - trim_line),
    )


def clearance_between(lower: Sequence[Inches], upper: Sequence[Inches], *, none: Inches) -> Inches:
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
            *_joint_faults(
                shingle_length=shingle_length,
                sequence=sequence,
                shingle_past_rake=shingle_past_rake,
                starter_length=starter_length,
                starter_trim=starter_trim,
            ),
            None if courses >= 1 else fault("courses", str(courses), "1 or more"),
        ]
    )
    limit_pieces(courses * ((eave_length + 2 * shingle_past_rake) / shingle_length + 1))
    start, stop = -shingle_past_rake, eave_length + shingle_past_rake
    lines = {"start_line": start, "trim_line": stop, "edge": eave_length}
    # A course is held against the two above it, so no more trims than these come into it.
    used = sequence[: courses + 2]
    rows = tuple(joint_row(trim, shingle_length=shingle_length, **lines) for trim in used)
    starter = joint_row(starter_trim, shingle_length=starter_length, **lines)

    def clearances(up: int) -> tuple[float, ...]:
        above = (rows[(k + up) % len(rows)].joints for k in range(len(rows)))
        return tuple(
            clearance_between(row.joints, joints, none=stop - start)
            for row, joints in zip(rows, above, strict=True)
        )

    return JointPattern(
        sequence=sequence,
        start_line=start,
        trim_line=stop,
        rows=rows,
        clearances=clearances(1),
        clearances_two=clearances(2),
        starter=starter,
        starter_clearance=clearance_between(starter.joints, rows[0].joints, none=stop - start),
    )


def check_joints(
    *,
    shingle_length: Inches,
    sequence: tuple[Inches, ...],
    shingle_past_rake: Inches,
    starter_length: Inches,
    starter_trim: Inches,
) -> None:
    """Refuse what rows cannot be cut by: lengths not over 0, trims that are on no piece.

    Args:
        shingle_length: As in `offsets`, and so are all the others.
        sequence: Length trimmed from the first shingle of each course, repeating.
        shingle_past_rake: How far shingles stand past the rake metal.
        starter_length: Length of a starter piece.
        starter_trim: Length trimmed from the first starter piece.

    Raises:
        Refused: A length or a trim cannot be; names each.

    Source:
        Geometry.

    >>> check_joints(shingle_length=36, sequence=(0, 6), shingle_past_rake=0, starter_length=36,
    ...              starter_trim=35.9)
    """
    refuse_if_any(
        _joint_faults(
            shingle_length=shingle_length,
            sequence=sequence,
            shingle_past_rake=shingle_past_rake,
            starter_length=starter_length,
            starter_trim=starter_trim,
        )
    )


def _joint_faults(
    *,
    shingle_length: float,
    sequence: tuple[float, ...],
    shingle_past_rake: float,
    starter_length: float,
    starter_trim: float,
) -> list[Fault | None]:
    return [
        not_positive("shingle_length", shingle_length),
        not_positive("starter_length", starter_length),
        negative("shingle_past_rake", shingle_past_rake),
        *sequence_faults(sequence, shingle_length=shingle_length),
        trim_fault("starter_trim", starter_trim, shingle_length=starter_length),
    ]


def limit_pieces(pieces: float) -> None:
    """Refuse more pieces than the limit, before any is laid.

    Args:
        pieces: About how many would be needed.

    Raises:
        TooManyPieces: They are over the limit.

    Source:
        A limit of this library.

    >>> limit_pieces(105)
    """
    if pieces > MOST_PIECES:
        came = Amount(float(floor(pieces)), "count")
        wanted = f"at most {MOST_PIECES} pieces on one roof: a smaller roof or larger shingles"
        raise TooManyPieces(fault("pieces", came, wanted))
