"""Offsets: where the butt joints of every course fall, and how far they stand from each other.

Which trims the courses begin with is `sequences`; what each piece is cut to is `pieces`.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.layers.coursing.joints import (
    SHINGLE_PAST_RAKE,
    STARTER_TRIM,
    JointRow,
    joint_pattern,
)
from roofing_core.layers.coursing.sequences import MINIMUM_CLEARANCE, period_of
from roofing_core.measures.units import Inches


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
        period=period_of(pattern.sequence),
        least_clearance=pattern.least_clearance(courses),
        starter_clearance=pattern.starter_clearance,
        narrowest_end_piece=pattern.narrowest_end_piece(courses),
        start_line=pattern.start_line,
        trim_line=pattern.trim_line,
        pieces=pattern.pieces(courses),
        starter=pattern.starter,
        courses=tuple(_numbered(k + 1, *rows[k % len(rows)]) for k in range(courses)),
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
