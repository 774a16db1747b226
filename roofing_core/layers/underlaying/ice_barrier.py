"""Ice barrier: how far it reaches up the slope, its rows and the rolls they are cut from.

Asked for where the area has a history of ice damming; the underlayment then starts on it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from roofing_core.layers.underlaying import end_laps as _laps
from roofing_core.layers.underlaying.end_laps import Cutting
from roofing_core.layers.underlaying.rolls import RollUsed, SheetRow, cut_rows
from roofing_core.layers.underlaying.rows import lapped_rows, refuse_too_many, row_faults
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, fault, negative, refuse_if_any
from roofing_core.measures.sentences import Amount, shown
from roofing_core.measures.units import Inches, Pitch, SquareInches
from roofing_core.roof.pitch import STEEPEST, slope_factor

Edition = Literal["2015", "2018", "2021", "2024"]

#: IRC R905.1.2: this far inside the exterior wall line, measured level.
INSIDE_WALL = 24.0

#: From this pitch on the barrier also reaches at least so far up the slope, by the edition of the
#: IRC: the sentence came with 2015 and went with 2024.
STEEP_PITCH = 8 / 12
STEEP_REACH: Mapping[Edition, Inches] = MappingProxyType(
    {"2015": 36.0, "2018": 36.0, "2021": 36.0, "2024": 0.0}
)

#: A self-adhering roll as it is sold: 36 in x 66 ft 8 in (from memory).
ROLL_WIDTH, ROLL_LENGTH = 36.0, 800.0
#: 150 mm (5.9 in) in the details of the British Columbia roofing association.
END_LAP = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class IceBarrier:
    """The ice barrier along the eave of one plane.

    Attributes:
        reach: How far up the slope it has to reach.
        upper: v of its upper edge; 0 where none is laid.
        rows: Its rows in the order of laying.
        rolls: How many rolls are opened.
        left_over: Length left on the last roll.
        roll_plan: The rolls in the order in which they are opened, with their cuts.
        end_laps: How many end laps there are.
        area_cut: Area of the pieces as cut, laps and what is trimmed off included.
        area_laid: Area that stays on the roof once it is trimmed, laps included.
    """

    reach: Inches
    upper: Inches
    rows: tuple[SheetRow, ...]
    rolls: int
    left_over: Inches
    roll_plan: tuple[RollUsed, ...]
    end_laps: int
    area_cut: SquareInches
    area_laid: SquareInches


def no_ice_barrier() -> IceBarrier:
    """Give the ice barrier of a roof that has none: no rows, no rolls.

    Returns:
        All zero.

    Raises:
        Refused: Never.

    Source:
        None needed.

    >>> no_ice_barrier().rolls
    0
    """
    return IceBarrier(
        reach=0.0,
        upper=0.0,
        rows=(),
        rolls=0,
        left_over=0.0,
        roll_plan=(),
        end_laps=0,
        area_cut=0.0,
        area_laid=0.0,
    )


def ice_barrier_reach(
    eave_overhang: Inches,
    *,
    pitch: Pitch,
    edition: Edition = "2021",
    inside_wall: Inches = INSIDE_WALL,
) -> Inches:
    """Give how far up the slope an ice barrier has to reach from the eave.

    ``(eave_overhang + inside_wall) * slope_factor(pitch)``; at 8:12 and steeper, by the editions
    2015 to 2021, at least 36 in.

    Args:
        eave_overhang: From the exterior wall line to the eave, level; 0 or more.
        pitch: Rise over run, 0 or more.
        edition: Of the residential code.
        inside_wall: From the exterior wall line inwards, level. Where a rule measures from the
            inner face of the wall, add the wall's thickness.

    Returns:
        Up the slope from the eave.

    Raises:
        Refused: A length or the pitch is negative or not finite, or the edition is not known;
            names each.

    Source:
        IRC R905.1.2, as restated: from the lowest edges to 24 in inside the exterior wall line.
        Others measure otherwise: 12 in inside (UBC), from the inner face (MIL-HDBK-1001/5A 9.4).

    >>> ice_barrier_reach(0, pitch=8 / 12), ice_barrier_reach(0, pitch=0, edition="2024")
    (36.0, 24.0)
    """
    refuse_if_any(
        [
            negative("eave_overhang", eave_overhang),
            _pitch_fault(pitch),
            _edition_fault(edition),
            negative("inside_wall", inside_wall),
        ]
    )
    reach = (eave_overhang + inside_wall) * slope_factor(pitch)
    return max(reach, STEEP_REACH[edition]) if pitch >= STEEP_PITCH - DUST else reach


def _pitch_fault(pitch: float) -> Fault | None:
    if 0 <= pitch <= STEEPEST:
        return None
    return fault("pitch", shown(Amount(pitch, "pitch")), "0:12 or more and at most 1000:12")


def _edition_fault(edition: str) -> Fault | None:
    if edition in STEEP_REACH:
        return None
    return fault("edition", edition, f"one of {', '.join(STEEP_REACH)}")


def ice_barrier(
    eave_length: Inches,
    *,
    slope_length: Inches,
    reach: Inches,
    roll_width: Inches = ROLL_WIDTH,
    roll_length: Inches = ROLL_LENGTH,
    head_lap: Inches = _laps.HEAD_LAP,
    end_lap: Inches = END_LAP,
    end_lap_stagger: Inches = _laps.END_LAP_STAGGER,
    past_metal: Inches = _laps.PAST_METAL,
    trim_allowance: Inches = _laps.TRIM_ALLOWANCE,
    least_piece: Inches = _laps.LEAST_PIECE,
) -> IceBarrier:
    """Lay the ice barrier of one plane in whole rows and cut it from real rolls.

    Row k from 1 starts at ``-past_metal + (k - 1) * (roll_width - head_lap)``, until ``reach``, or
    the top edge where that is lower, is covered.

    Args:
        eave_length: Along the eave, rake to rake.
        slope_length: Up the slope, outer face of the eave metal to top edge.
        reach: How far up the slope it has to reach, from `ice_barrier_reach`.
        roll_width: Width of the roll.
        roll_length: Length of the roll.
        head_lap: Of each row over the one below.
        end_lap: Where one roll goes on from another within a row.
        end_lap_stagger: Least distance between end laps of neighbouring rows.
        past_metal: How far the first row stands past the eave metal.
        trim_allowance: How much longer than the roof each row is cut, at each rake.
        least_piece: No piece of a lapped row is shorter; a shorter rest of a roll is set aside.

    Returns:
        The rows with their pieces, and the rolls with their cuts.

    Raises:
        Refused: A measurement is zero, negative or not finite, a lap is wider than the roll
            leaves, the roll is too short for the stagger; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        IRC R905.1.2 for where; the head lap is common practice, no published source; end laps of
        150 mm in the details of the British Columbia roofing association.

    >>> reach = ice_barrier_reach(12, pitch=4 / 12)  # 37.95 in: more than one row of 36 in
    >>> len(ice_barrier(168, slope_length=112, reach=reach).rows)
    2
    """
    positive = {
        "eave_length": eave_length,
        "slope_length": slope_length,
        "reach": reach,
        "roll_width": roll_width,
        "roll_length": roll_length,
        "least_piece": least_piece,
    }
    not_negative = {
        "head_lap": head_lap,
        "end_lap": end_lap,
        "end_lap_stagger": end_lap_stagger,
        "past_metal": past_metal,
        "trim_allowance": trim_allowance,
    }
    refuse_if_any(row_faults(positive=positive, not_negative=not_negative))
    cutting = Cutting(
        roll_width=roll_width,
        roll_length=roll_length,
        end_lap=end_lap,
        end_lap_stagger=end_lap_stagger,
        trim_allowance=trim_allowance,
        least_piece=least_piece,
    )
    cover = min(reach, slope_length)
    refuse_too_many(
        eave_length=eave_length,
        slope_length=slope_length,
        pieces=(cover + past_metal) / (roll_width - head_lap) * cutting.pieces_in(eave_length),
    )
    bands = lapped_rows(
        "ice_barrier",
        lower=-past_metal,
        cover=cover,
        top=slope_length,
        width=roll_width,
        lap=head_lap,
    )
    cut = cut_rows(bands, eave_length=eave_length, cutting=cutting)
    return IceBarrier(
        reach=reach,
        upper=cut.rows[-1].upper,
        rows=cut.rows,
        rolls=cut.rolls,
        left_over=cut.left_over,
        roll_plan=cut.roll_plan,
        end_laps=cut.end_laps,
        area_cut=cut.area_cut,
        area_laid=cut.area_laid,
    )
