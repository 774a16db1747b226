"""Pieces: every piece of every course and of the starter, and how many shingles they take.

Counted here is what a person alone with a hook blade uses: each piece from a shingle of its own,
no offcut used again.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.layers.coursing.joints import JointRow
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.faults import require_positive
from roofing_core.measures.units import Inches, SquareInches

End = Literal["factory", "cut"]

#: A cut nearer than this to a factory end is that end.
_SAME = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece of a course as it lies, and the part of its shingle that it is.

    Attributes:
        number: From 1 at the left rake.
        left: Where it begins, from the left corner of the deck.
        right: Where it ends.
        left_end: Whether its left end is the factory's or cut.
        right_end: Whether its right end is the factory's or cut, at the trim line.
        shingle_from: Where it begins on its shingle, from the shingle's left end.
        shingle_to: Where it ends on its shingle.
    """

    number: int
    left: Inches
    right: Inches
    left_end: End
    right_end: End
    shingle_from: Inches
    shingle_to: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class ShingleCount:
    """Shingles for the courses of one plane, and what an area would have said.

    Attributes:
        shingles: One for each piece, no offcut used again.
        least_by_length: What the length laid would take with nothing wasted.
        least_by_area: What the exposed area would take with nothing wasted.
    """

    shingles: int
    least_by_length: int
    least_by_area: int


def pieces_of(
    row: JointRow, *, shingle_length: Inches, start_line: Inches, trim_line: Inches
) -> tuple[Piece, ...]:
    """Cut the pieces of one course.

    The first piece is a shingle without its trim; each next one is a whole shingle; the last is
    trimmed at the trim line.

    Args:
        row: The course's trim and count of pieces.
        shingle_length: Length of a shingle.
        start_line: Where the course starts.
        trim_line: Where it is trimmed.

    Returns:
        One entry per piece, from the left.

    Raises:
        Nothing: `offsets` checks what it is given.

    Source:
        Geometry.

    >>> from roofing_core.layers.coursing.joints import joint_row
    >>> row = joint_row(6, shingle_length=36, start_line=0, trim_line=60, edge=60)
    >>> [p.right_end for p in pieces_of(row, shingle_length=36, start_line=0, trim_line=60)]
    ['factory', 'cut']
    """
    first_end = start_line + shingle_length - row.trim
    made = []
    left, from_left = start_line, row.trim
    for i in range(row.pieces):
        whole_to = first_end + i * shingle_length
        right = min(whole_to, trim_line)
        made.append(
            Piece(
                number=i + 1,
                left=left,
                right=right,
                left_end="cut" if from_left > _SAME else "factory",
                right_end="cut" if whole_to - trim_line > _SAME else "factory",
                shingle_from=from_left,
                shingle_to=from_left + (right - left),
            )
        )
        left, from_left = whole_to, 0.0
    return tuple(made)


def shingle_count(
    pieces: int,
    *,
    courses: int,
    course_width: Inches,
    slope_area: SquareInches,
    shingle_length: Inches,
    exposure: Inches,
) -> ShingleCount:
    """Count shingles piece by piece, beside what the length and the area would have said.

    ``least_by_length = courses * course_width / shingle_length`` and
    ``least_by_area = slope_area / (shingle_length * exposure)``, in whole shingles.

    Args:
        pieces: Pieces laid.
        courses: How many courses.
        course_width: Start line to trim line.
        slope_area: Of the deck.
        shingle_length: Length of a shingle.
        exposure: How much of each course shows.

    Returns:
        The three counts.

    Raises:
        Refused: A length is zero, negative or not finite.

    Source:
        Arithmetic.

    >>> shingle_count(100, courses=20, course_width=168.5, slope_area=168 * 112,
    ...               shingle_length=39.375, exposure=5.625)
    ShingleCount(shingles=100, least_by_length=86, least_by_area=85)
    """
    require_positive("in", shingle_length=shingle_length, exposure=exposure)
    return ShingleCount(
        shingles=pieces,
        least_by_length=whole_pieces(courses * course_width / shingle_length),
        least_by_area=whole_pieces(slope_area / (shingle_length * exposure)),
    )
