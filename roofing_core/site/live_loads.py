"""Live loads: what a roof is designed to carry at least, people and what they set down."""

from __future__ import annotations

from typing import Literal

from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import not_one_of, not_positive, refuse_if_any
from roofing_core.measures.units import Pitch, PoundsPerSquareFoot, SquareInches
from roofing_core.roof.pitch import pitch_fault

SQUARE_FOOT = 144.0

LoadCode = Literal["irc", "asce_7"]

#: IRC Table R301.6: by pitch up to which it holds, the load for a tributary area of up to 200 ft2,
#: up to 600 ft2 and above. 20, 16, 12 of the first column as restated of New York State's code of
#: 2025, after the edition of 2024; 14 and the last as restated for 2018; the rest from memory.
LIVE_LOADS = (
    (4 / 12, (20.0, 16.0, 12.0)),
    (1.0, (16.0, 14.0, 12.0)),
    (float("inf"), (12.0, 12.0, 12.0)),
)

#: Where the columns of that table, and the factors of ASCE 7, end.
SMALL_AREA, LARGE_AREA = 200 * SQUARE_FOOT, 600 * SQUARE_FOOT


def roof_live_load(
    pitch: Pitch, *, tributary_area: SquareInches = SMALL_AREA, by: LoadCode = "irc"
) -> PoundsPerSquareFoot:
    """Give the live load that a roof is designed for at least, on each unit of plan.

    By the residential code 20, 16 or 12 lb/ft2 for the least areas and less for larger ones; by
    ASCE 7 ``20 * R1 * R2``, at least 12: R1 = 1 to 200 ft2, ``1.2 - 0.001 A`` to 600, then 0.6;
    R2 = 1 to 4:12, ``1.2 - 0.05 F`` to 12:12, then 0.6.

    Args:
        pitch: Rise over run.
        tributary_area: Area of roof, on plan, that one member carries.
        by: The residential code's table, or the formula of ASCE 7.

    Returns:
        The load. Snow may ask for more.

    Raises:
        Refused: An area or pitch cannot be, or a word is none of these; names each.

    Source:
        IRC Table R301.6, in part as restated and in part from memory; ASCE 7-05 eq. 4-2 by an
        example, its factors and their limits as restated of ASCE 7-22, 4.8.1.

    >>> roof_live_load(5 / 12), round(roof_live_load(5 / 12, by="asce_7"), 9)
    (16.0, 19.0)
    """
    refuse_if_any(
        [
            pitch_fault(pitch),
            not_positive("tributary_area", tributary_area, "in2"),
            not_one_of("by", by, ("irc", "asce_7")),
        ]
    )
    feet = tributary_area / SQUARE_FOOT
    if by == "asce_7":
        by_area = min(1.0, max(0.6, 1.2 - 0.001 * feet))
        by_pitch = min(1.0, max(0.6, 1.2 - 0.05 * pitch * 12))
        return max(12.0, 20 * by_area * by_pitch)
    column = (tributary_area > SMALL_AREA) + (tributary_area > LARGE_AREA)
    return next(loads[column] for below, loads in LIVE_LOADS if pitch < below - DUST)
