"""Trim sequences: how much is cut off the first shingle of each course, course after course.

A sequence given, made, or shifted until no end piece is too narrow. Where its joints then fall is
`offsets`.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: From memory, shingle standards and trade practice: joints of neighbouring courses stand this far
#: apart unless the material says more.
MINIMUM_CLEARANCE = 4.0

#: Common practice, no published source: no end piece at a rake under this width.
MINIMUM_END_PIECE = 3.0

#: Six steps to a shingle: 6 in for 36 in strips, 6 1/2 in for 39 3/8 in strips.
_STEPS_PER_SHINGLE = 6

#: No more shifts of a sequence than this are tried.
_MOST_SHIFTS = 2_000


def generated_sequence(
    shingle_length: Inches, *, minimum_clearance: Inches = MINIMUM_CLEARANCE
) -> tuple[Inches, ...]:
    """Make a trim sequence that climbs in even steps and starts again before a shingle is used up.

    The step is a sixth of the shingle, down to the 1/2 in where that leaves any, or the least
    clearance if that is more;
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
    sixth = shingle_length / _STEPS_PER_SHINGLE
    step = max(floor(sixth * 2) / 2 or sixth, minimum_clearance)
    return tuple(k * step for k in range(int(shingle_length // step)))


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
    starter_trim: Inches = 0.0,
    minimum_clearance: Inches = 0.0,
    step: Inches = 0.5,
) -> tuple[Inches, ...]:
    """Shift a trim sequence along the shingle until no end piece is under a width.

    Every trim grows by the same amount, counted round the shingle, so that the joints keep their
    distances from each other; the least such amount in steps is taken.

    Args:
        sequence: The trims to shift.
        width: Of a course, trim line to trim line.
        shingle_length: Length of a shingle.
        minimum_end_piece: Least width of the first and of the last piece of a course.
        starter_trim: Length trimmed from the first piece of a starter as long as the shingles.
        minimum_clearance: Least distance from the starter's joints to those of the first course.
        step: The amounts tried are multiples of this, or of 1/2000 of the shingle if that is more.

    Returns:
        The shifted trims; empty where no shift does it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> sequence_with_wide_ends((0.0,), width=73, shingle_length=36)  # 0 would leave 1 in
    (2.0,)
    """
    step = max(step, shingle_length / _MOST_SHIFTS)
    for k in range(whole_pieces(shingle_length / step)):
        shifted = tuple((trim + k * step) % shingle_length for trim in sequence)
        apart = (shifted[0] - starter_trim) % shingle_length
        clear = min(apart, shingle_length - apart) >= minimum_clearance
        if clear and all(
            _ends_are_wide(trim, width, shingle_length, minimum_end_piece) for trim in shifted
        ):
            return shifted
    return ()


def _ends_are_wide(trim: float, width: float, shingle_length: float, least: float) -> bool:
    first = min(shingle_length - trim, width)
    beyond = width - first
    last = beyond - (whole_pieces(beyond / shingle_length) - 1) * shingle_length
    return first >= least and (beyond <= DUST or last >= least)


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
        return [fault("sequence", "empty", "at least one length to trim, such as ", length(0))]
    return [
        trim_fault(f"sequence.{k}", trim, shingle_length=shingle_length)
        for k, trim in enumerate(sequence)
    ]


def trim_fault(at: str, trim: Inches, *, shingle_length: Inches) -> Fault | None:
    """Give the fault of a trim that is not on the piece it is cut from.

    Args:
        at: The name to put into the fault.
        trim: Length trimmed.
        shingle_length: Length of the piece.

    Returns:
        The fault, or ``None`` for a trim from 0 to under the piece.

    Raises:
        Nothing: The fault is the answer.

    Source:
        Geometry.

    >>> trim_fault("starter_trim", 4.0, shingle_length=36) is None
    True
    """
    if 0 <= trim < shingle_length or not shingle_length > 0:
        return None
    wanted = ("zero or more, and less than the piece it is cut from, ", length(shingle_length))
    return fault(at, length(trim), *wanted)
