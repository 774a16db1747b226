"""Nailing: how many nails or spots of cement hold a strip, and where along it the nails go.

How high above the butt they stand is `courses`; how long they are, what they weigh and what is
bought is `fasteners`.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import (
    Fault,
    fault,
    negative,
    not_positive,
    refuse_if_any,
    require_not_negative,
)
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches, Pitch

StripKind = Literal["laminated", "three_tab"]

#: Nails in a full strip: usual, and in high wind or above the steep limit. No piece has fewer
#: than two.
USUAL_NAILS = 4
MORE_NAILS = 6
LEAST_NAILS = 2

#: Above 21:12 a strip takes more nails, and is sealed by hand.
STEEP = 21 / 12

#: Spots of cement under each strip that is sealed by hand.
HAND_SEALING: Mapping[StripKind, int] = MappingProxyType({"laminated": 4, "three_tab": 6})

#: No nail nearer than this to the end of a strip.
END_DISTANCE = 1.0

#: More nails than this along one strip are refused.
MOST_NAILS = 1_000


def nails_per_strip(pitch: Pitch, *, high_wind: bool = False) -> int:
    """Count the nails in one full strip.

    4; 6 in high wind or above 21:12.

    Args:
        pitch: Rise over run, 0 or more.
        high_wind: Whether the roof stands where high wind is to be reckoned with.

    Returns:
        Nails, 4 or 6.

    Raises:
        Refused: The pitch is negative or not finite.

    Source:
        At least 4 a strip, special fastening above 21:12 (IRC R905.2.6, 2018); six in high wind
        (FEMA P-499; Navy Builder manual, NAVEDTRA 14044 ch. 3: "may require six"). Where the
        printed instructions with the shingle ask for more, they go first.

    >>> nails_per_strip(21 / 12), nails_per_strip(22 / 12)  # the limit itself is not above it
    (4, 6)
    """
    return MORE_NAILS if high_wind or hand_sealed(pitch) else USUAL_NAILS


def hand_sealed(pitch: Pitch) -> bool:
    """Tell whether strips are sealed by hand because the slope is steep: above 21:12.

    Args:
        pitch: Rise over run, 0 or more.

    Returns:
        Whether it is above the steep limit.

    Raises:
        Refused: The pitch is negative or not finite.

    Source:
        IRC R905.2.6, 2018, and the shingle makers' association's bulletin on slopes over 21:12;
        the IRC of about 2000 to 2003 has 20:12.

    >>> hand_sealed(21 / 12)
    False
    """
    require_not_negative("pitch", pitch=pitch)
    return pitch > STEEP + DUST


def hand_sealing_dabs(strips: int, *, kind: StripKind) -> int:
    """Count the spots of cement that seal strips by hand on a slope above 21:12.

    4 for each laminated strip; 2 under each tab, 6 in all, for each three-tab strip.

    Args:
        strips: How many strips; 0 or more.
        kind: The kind of strip.

    Returns:
        Spots, each about 1 in across.

    Raises:
        Refused: The count is negative, or the kind is none of these; names each.

    Source:
        The shingle makers' association's bulletin on slopes over 21:12.

    >>> hand_sealing_dabs(80, kind="three_tab")  # one square of 36 in strips
    480
    """
    known = kind in HAND_SEALING
    wanted = f"one of {', '.join(HAND_SEALING)}"
    refuse_if_any(
        [
            negative("strips", strips, "count"),
            None if known else fault("kind", str(kind), wanted),
        ]
    )
    return strips * HAND_SEALING[kind]


def nail_positions(
    shingle_length: Inches, *, nails: int = USUAL_NAILS, end_distance: Inches = END_DISTANCE
) -> tuple[Inches, ...]:
    """Place the nails along one full strip: one near each end, the rest equally spaced.

    ``end_distance + k * (shingle_length - 2 * end_distance) / (nails - 1)``, k from 0.

    Args:
        shingle_length: Length of the strip; over 0.
        nails: How many; 2 or more.
        end_distance: From each end to its nail; over 0 and under half the length.

    Returns:
        Distance from the left end, one entry per nail, left to right.

    Raises:
        Refused: The length is not over 0, the end distance is not over 0 or leaves no room, or the
            nails are too few or too many; names each.

    Source:
        1 in from each end (as restated by roofers and inspectors); 25 to 40 mm from each end and
        the rest evenly (Ontario Building Code 9.26.7).

    >>> nail_positions(36, nails=2, end_distance=1)
    (1.0, 35.0)
    """
    refuse_if_any(
        [
            not_positive("shingle_length", shingle_length),
            _nails_fault("nails", nails),
            not_positive("end_distance", end_distance) or _no_room(end_distance, shingle_length),
        ]
    )
    room = shingle_length - 2 * end_distance
    return tuple(end_distance + room * k / (nails - 1) for k in range(nails))


def _no_room(end_distance: float, shingle_length: float) -> Fault | None:
    if not end_distance >= shingle_length / 2 > 0:
        return None
    half = length(shingle_length / 2)
    return fault("end_distance", length(end_distance), "under half of the strip, ", half)


def _nails_fault(at: str, nails: int) -> Fault | None:
    if LEAST_NAILS <= nails <= MOST_NAILS:
        return None
    return fault(at, Amount(nails, "count"), f"{LEAST_NAILS} or more and at most {MOST_NAILS}")


def nails_on_piece(
    left: Inches,
    *,
    right: Inches,
    positions: tuple[Inches, ...],
    end_distance: Inches = END_DISTANCE,
) -> tuple[Inches, ...]:
    """Place the nails on a piece cut from a strip: those of the strip that are still on it.

    Where fewer than two are left, one near each end instead, ``end_distance`` in, or a quarter of
    the piece where that is less.

    Args:
        left: Left edge of the piece, from the left end of the strip; 0 or more.
        right: Right edge of the piece, from the left end of the strip.
        positions: Nail positions of the full strip.
        end_distance: From each end to its nail, where the strip's own do not serve.

    Returns:
        Distance from the left end of the strip, one entry per nail, never fewer than two.

    Raises:
        Refused: The left edge or the end distance is negative, or the right edge is not to the
            right of the left; names each.

    Source:
        Never fewer than two nails in a cut piece: trade press, as restated; 2 in a single shingle
        (IRC R905.2.6, 2018).

    >>> nails_on_piece(0, right=11, positions=(1, 13, 25, 37))  # only one would be left
    (1.0, 10.0)
    """
    refuse_if_any(
        [
            negative("left", left),
            not_positive("right", right) or _not_right_of(right, left),
            negative("end_distance", end_distance),
        ]
    )
    own = tuple(position for position in positions if left + DUST < position < right - DUST)
    if len(own) >= LEAST_NAILS:
        return own
    inset = min(end_distance, (right - left) / 4)
    return (left + inset, right - inset)


def _not_right_of(right: float, left: float) -> Fault | None:
    if not right <= left:
        return None
    return fault("right", length(right), "more than the left edge, ", length(left))
