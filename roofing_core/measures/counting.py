"""Counting whole pieces: the one place where the library rounds up."""

from __future__ import annotations

from math import ceil

from roofing_core.measures.faults import LARGEST, require_not_negative, require_positive

#: What is forgiven as float dust, in pieces. Lengths added up in inches stray by about 1e-13.
DUST = 1e-9


def whole_pieces(pieces: float) -> int:
    """Count the whole pieces that make up a fractional number of pieces.

    The least n with ``n >= pieces - 1e-9``.

    Args:
        pieces: A fractional number of pieces, 0 or more.

    Returns:
        Whole pieces, 0 only for (nearly) none.

    Raises:
        Refused: The number is negative or not finite.

    Source:
        Arithmetic. A plain ceiling over 1 m lengths added up in inches buys one too many for
        820 of the first 1,999 multiples; 1e-9 of a piece is far below any cut.

    >>> whole_pieces(sum([0.1] * 30))  # float dust: the sum is 3.0000000000000004
    3
    """
    if not -DUST <= pieces <= LARGEST:
        require_not_negative("count", pieces=pieces)
    return ceil(pieces - DUST) if pieces > DUST else 0


def whole_packs(needed: float, per_pack: float) -> int:
    """Count the whole packs that hold what is needed.

    The least n with ``n * per_pack >= needed``, forgiving 1e-9 of a pack.

    Args:
        needed: What is needed, 0 or more, in the unit of the pack.
        per_pack: What one pack holds, over 0.

    Returns:
        Whole packs, 0 when nothing is needed.

    Raises:
        Refused: Something is negative or not finite, or the pack holds nothing.

    Source:
        Arithmetic.

    >>> whole_packs(105, 21)
    5
    """
    if not 0 < per_pack <= LARGEST:
        require_positive("count", per_pack=per_pack)
    return whole_pieces(needed / per_pack)
