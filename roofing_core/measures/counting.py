"""Counting whole pieces: the one place where the library rounds up."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, isfinite

from roofing_core.measures.faults import (
    LARGEST,
    SMALLEST,
    Fault,
    fault,
    not_positive,
    refuse_if_any,
    require_not_negative,
)
from roofing_core.measures.sentences import Amount, shown

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
        Refused: Something is negative or not finite, the pack holds nothing, or the packs are more
            than the limit; names each.

    Source:
        Arithmetic.

    >>> whole_packs(105, 21)
    5
    """
    if not (SMALLEST <= per_pack <= LARGEST and 0 <= needed / per_pack <= LARGEST):
        refuse_if_any(_uncountable_faults(needed, per_pack))
    return whole_pieces(needed / per_pack)


def uncountable_fault(at: str, per_pack: float, unit: str, *, needed: float) -> Fault | None:
    """Give the fault of a pack so small that no one could count how many are needed.

    Args:
        at: The name to put into the fault.
        per_pack: What one pack holds, over 0.
        unit: The unit of what it holds and of what is needed.
        needed: What is needed, 0 or more.

    Returns:
        The fault, or ``None`` when `whole_packs` can count them.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> uncountable_fault("can", 231.0, "in3", needed=1848.0) is None
    True
    """
    if needed <= LARGEST * per_pack:
        return None
    wanted = f"more: what is needed would take over {LARGEST:.0f} of them"
    return fault(at, Amount(per_pack, unit), wanted)


def _uncountable_faults(needed: float, per_pack: float) -> Iterator[Fault | None]:
    nothing = not_positive("per_pack", per_pack, "count")
    came, dust = shown(Amount(needed, "count")), 0.0 if nothing else DUST * per_pack
    if not (isfinite(needed) and needed >= -dust):
        yield fault("needed", came, "zero or more")
    elif not nothing and needed / per_pack > LARGEST:
        yield fault("needed", came, f"at most {LARGEST:.0f} packs")
    yield nothing
