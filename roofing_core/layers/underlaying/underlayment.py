"""Underlayment: rows, laps, trims, the rolls they are cut from and what fastens them.

One layer at 4:12 and up, two from 2:12 to under 4:12. What goes below it along a cold eave is
`ice_barrier`; how rows lie is `rows`, how they are cut is `rolls`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum

from roofing_core.layers.underlaying import end_laps as _laps
from roofing_core.layers.underlaying import sheet_fasteners as _fasteners
from roofing_core.layers.underlaying.end_laps import Cutting
from roofing_core.layers.underlaying.rolls import RollUsed, SheetRow, cut_rows
from roofing_core.layers.underlaying.rows import (
    LEAST_EXPOSED,
    Band,
    half_lap,
    half_lapped_rows,
    lapped_rows,
    refuse_too_many,
    row_faults,
)
from roofing_core.layers.underlaying.sheet_fasteners import (
    FastenerLine,
    fastener_lines,
    spacing_faults,
)
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, fault, refuse_if_any
from roofing_core.measures.sentences import Amount, length, shown
from roofing_core.measures.units import Inches, Pitch, SquareInches
from roofing_core.roof.pitch import STEEPEST

#: IRC R905.2.2: no asphalt shingles below this pitch.
LEAST_PITCH = 2 / 12
#: IBC 1507.1.1: two layers below this pitch, one at it (the table's wording is from memory).
SINGLE_LAYER_PITCH = 4 / 12

#: No. 15 felt as it is sold: 36 in x 144 ft.
ROLL_WIDTH, ROLL_LENGTH = 36.0, 1728.0

#: Ontario Building Code 9.26.6 asks 100 mm or more; 4 in is 101.6 mm.
OVER_ICE_BARRIER = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Underlayment:
    """The underlayment of one plane.

    Attributes:
        layers: How many layers lie over every point above an ice barrier, by the pitch: 1 or 2.
        head_lap: How far each row lies over the one below.
        exposure: How much of each row shows below the next.
        rows: The rows in the order of laying; none where an ice barrier covers the whole plane.
        rolls: How many rolls are opened.
        left_over: Length left on the last roll.
        roll_plan: The rolls in the order in which they are opened, with their cuts.
        end_laps: How many end laps there are.
        area_cut: Area of the pieces as cut, laps and what is trimmed off included.
        area_laid: Area that stays on the roof once it is trimmed, laps included.
        eave_edge_length: Length of fastened eave edge.
        head_lap_length: Length of fastened head laps.
        end_lap_length: Length of fastened end laps.
        field_length: Length of the fastened lines in the field.
        fastener_lines: The lines of fasteners, lowest first, end laps last.
        fasteners: How many fasteners; where two lines meet, once.
    """

    layers: int
    head_lap: Inches
    exposure: Inches
    rows: tuple[SheetRow, ...]
    rolls: int
    left_over: Inches
    roll_plan: tuple[RollUsed, ...]
    end_laps: int
    area_cut: SquareInches
    area_laid: SquareInches
    eave_edge_length: Inches
    head_lap_length: Inches
    end_lap_length: Inches
    field_length: Inches
    fastener_lines: tuple[FastenerLine, ...]
    fasteners: int


def underlayment_layers(pitch: Pitch) -> int:
    """Give the layers of underlayment that a slope asks for: 2 below 4:12, 1 from there on.

    Args:
        pitch: Rise over run, 2:12 or more.

    Returns:
        1 or 2; exactly 4:12 is 1.

    Raises:
        Refused: The pitch is under 2:12, not finite, or a wall.

    Source:
        IBC 1507.2.2 and 1507.1.1; IRC R905.2.2 and table R905.1.1(2): "4:12 or greater" for one
        layer (the table's wording is from memory).

    >>> underlayment_layers(4 / 12), underlayment_layers(3.99 / 12)
    (1, 2)
    """
    refuse_if_any([_pitch_fault(pitch)])
    return 1 if pitch >= SINGLE_LAYER_PITCH - DUST else 2


def _pitch_fault(pitch: float) -> Fault | None:
    if LEAST_PITCH - DUST <= pitch <= STEEPEST:
        return None
    wanted = "2:12 or more and at most 1000:12: asphalt shingles are not laid on a lower slope"
    return fault("pitch", shown(Amount(pitch, "pitch")), wanted)


def underlayment(  # noqa: PLR0913 - each is asked for by its own name
    eave_length: Inches,
    *,
    slope_length: Inches,
    pitch: Pitch,
    roll_width: Inches = ROLL_WIDTH,
    roll_length: Inches = ROLL_LENGTH,
    head_lap: Inches = _laps.HEAD_LAP,
    end_lap: Inches = _laps.END_LAP,
    end_lap_stagger: Inches = _laps.END_LAP_STAGGER,
    past_metal: Inches = _laps.PAST_METAL,
    trim_allowance: Inches = _laps.TRIM_ALLOWANCE,
    least_piece: Inches = _laps.LEAST_PIECE,
    ice_barrier_top: Inches = 0.0,
    over_ice_barrier: Inches = OVER_ICE_BARRIER,
    lap_spacing: Inches = _fasteners.LAP_SPACING,
    field_spacing: Inches = _fasteners.FIELD_SPACING,
    field_lines: int = _fasteners.FIELD_LINES,
) -> Underlayment:
    """Lay the underlayment of one plane and cut it from real rolls.

    One layer: row k from 1 starts at ``-past_metal + (k - 1) * (roll_width - head_lap)``, until
    the top edge is covered. Two layers: a starter strip ``roll_width / 2 + 1`` wide, full sheets
    lapped by as much, and a strip along the top that doubles the last sheet. Rows go on along the
    eave from roll to roll with end laps; rolls are counted from the cuts, never from the area.

    Args:
        eave_length: Along the eave, rake to rake.
        slope_length: Up the slope, outer face of the eave metal to top edge.
        pitch: Rise over run, 2:12 or more.
        roll_width: Width of the roll.
        roll_length: Length of the roll.
        head_lap: Of each row over the one below, for one layer; two layers set their own.
        end_lap: Where one roll goes on from another within a row.
        end_lap_stagger: Least distance between end laps of neighbouring rows.
        past_metal: How far the first row stands past the eave metal, where no ice barrier is laid.
        trim_allowance: How much longer than the roof each row is cut, at each rake.
        least_piece: No piece of a lapped row is shorter; a shorter rest of a roll is set aside.
        ice_barrier_top: v of the upper edge of an ice barrier below; 0 where there is none.
        over_ice_barrier: How far the first row laps over the ice barrier.
        lap_spacing: Between fasteners along eave and laps, at most.
        field_spacing: Between fasteners along the lines in the field, at most.
        field_lines: Lines of fasteners in the field, between one lap and the next.

    Returns:
        The rows with their pieces, the rolls with their cuts, laps, areas and fasteners.

    Raises:
        Refused: The pitch is under 2:12, a measurement is negative or not finite, a lap is wider
            than the roll leaves, the roll is too short for the stagger; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        IRC table R905.1.1(2), 2018: head lap 2 in or more, end lap 4 in, 6 ft apart; 19 in strip
        and 19 in laps below 4:12. The default head lap, allowances and fasteners are common
        practice, no published source.

    >>> laid = underlayment(168, slope_length=112, pitch=3 / 12)
    >>> laid.layers, len(laid.rows), laid.rolls
    (2, 8, 1)
    """
    positive = {
        "eave_length": eave_length,
        "slope_length": slope_length,
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
        "ice_barrier_top": ice_barrier_top,
        "over_ice_barrier": over_ice_barrier,
    }
    refuse_if_any(
        [
            _pitch_fault(pitch),
            *row_faults(positive=positive, not_negative=not_negative),
            _half_lap_fault(pitch, roll_width),
            _barrier_fault(ice_barrier_top, over_ice_barrier, roll_width),
            *spacing_faults(
                lap_spacing=lap_spacing, field_spacing=field_spacing, field_lines=field_lines
            ),
        ]
    )
    layers = underlayment_layers(pitch)
    lap = head_lap if layers == 1 else half_lap(roll_width)
    lower, first_lap = (
        (ice_barrier_top - over_ice_barrier, over_ice_barrier)
        if ice_barrier_top
        else (-past_metal, 0.0)
    )
    cutting = Cutting(
        roll_width=roll_width,
        roll_length=roll_length,
        end_lap=end_lap,
        end_lap_stagger=end_lap_stagger,
        trim_allowance=trim_allowance,
        least_piece=least_piece,
    )
    refuse_too_many(
        eave_length=eave_length,
        slope_length=slope_length,
        pieces=(slope_length - lower) / (roll_width - lap) * cutting.pieces_in(eave_length),
    )
    covered = ice_barrier_top >= slope_length
    bands = (
        ()
        if covered
        else _bands(layers, lower, top=slope_length, width=roll_width, lap=lap, first_lap=first_lap)
    )
    cut = cut_rows(bands, eave_length=eave_length, cutting=cutting)
    lines = fastener_lines(
        cut.rows,
        eave_length=eave_length,
        top=slope_length,
        lap_spacing=lap_spacing,
        field_spacing=field_spacing,
        field_lines=field_lines,
    )
    return Underlayment(
        layers=layers,
        head_lap=lap,
        exposure=roll_width - lap,
        rows=cut.rows,
        rolls=cut.rolls,
        left_over=cut.left_over,
        roll_plan=cut.roll_plan,
        end_laps=cut.end_laps,
        area_cut=cut.area_cut,
        area_laid=cut.area_laid,
        eave_edge_length=_length_of(lines, "eave_edge"),
        head_lap_length=_length_of(lines, "head_lap"),
        end_lap_length=_length_of(lines, "end_lap"),
        field_length=_length_of(lines, "field"),
        fastener_lines=lines,
        fasteners=sum(line.count for line in lines),
    )


def _bands(
    layers: int, lower: float, *, top: float, width: float, lap: float, first_lap: float
) -> tuple[Band, ...]:
    if layers == 2:  # noqa: PLR2004 - two layers are two layers
        return half_lapped_rows(lower=lower, top=top, width=width, first_lap=first_lap)
    return lapped_rows(
        "full", lower=lower, cover=top, top=top, width=width, lap=lap, first_lap=first_lap
    )


def _half_lap_fault(pitch: float, roll_width: float) -> Fault | None:
    if pitch >= SINGLE_LAYER_PITCH - DUST or roll_width - half_lap(roll_width) >= LEAST_EXPOSED:
        return None
    least = length(2 * LEAST_EXPOSED + 2)
    return fault("roll_width", length(roll_width), least, " or more, for two layers")


def _barrier_fault(top: float, lap: float, roll_width: float) -> Fault | None:
    most = min(top, roll_width - LEAST_EXPOSED)
    if top <= 0 or most <= 0 or not lap > most:
        return None
    wanted = ", within the ice barrier and 1 in less than the roll's width"
    return fault("over_ice_barrier", length(lap), "at most ", length(most), wanted)


def _length_of(lines: Iterable[FastenerLine], kind: str) -> float:
    return fsum(line.length for line in lines if line.kind == kind)
