"""Underlayment: rows, laps, trims, the rolls they are cut from and what fastens them.

One layer at 4:12 and up, two from 2:12 to under 4:12. What goes below it along a cold eave is
`ice_barrier`; how it is laid and what comes out is `underlaid`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.layers.underlaying import end_laps as _laps
from roofing_core.layers.underlaying import sheet_fasteners as _fasteners
from roofing_core.layers.underlaying.layering import head_lap_of, layer_faults
from roofing_core.layers.underlaying.limits import (
    LEAST_EXPOSED,
    highest,
    limit_sheets,
    pieces_needed,
    sheet_faults,
    widest,
)
from roofing_core.layers.underlaying.sheet_fasteners import spacing_faults
from roofing_core.layers.underlaying.underlaid import (
    OVER_ICE_BARRIER,
    Underlayment,
    UnderlaymentWay,
    first_start,
    lay_underlayment,
)
from roofing_core.measures.faults import Fault, fault, negative, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.outlines import RoofPlane, rectangle, require_planes

#: No. 15 felt as it is sold: 36 in x 144 ft.
ROLL_WIDTH, ROLL_LENGTH = 36.0, 1728.0


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
    way = UnderlaymentWay(
        roll_width=roll_width,
        roll_length=roll_length,
        end_lap=end_lap,
        end_lap_stagger=end_lap_stagger,
        trim_allowance=trim_allowance,
        least_piece=least_piece,
        head_lap=head_lap,
        past_metal=past_metal,
        over_ice_barrier=over_ice_barrier,
        lap_spacing=lap_spacing,
        field_spacing=field_spacing,
        field_lines=field_lines,
    )
    faults = _faults(
        way,
        pitches=[pitch],
        eave_length=eave_length,
        slope_length=slope_length,
        tops=[ice_barrier_top],
    )
    refuse_if_any(faults)
    plane = rectangle(eave_length, slope_length=slope_length, pitch=pitch)
    return _limited([plane], [ice_barrier_top], way)


def underlayment_on(
    planes: Sequence[RoofPlane],
    *,
    way: UnderlaymentWay,
    ice_barrier_tops: Sequence[Inches] = (),
) -> Underlayment:
    """Lay the underlayment of several planes and cut it from the same rolls.

    As `underlayment` on each plane, by its own pitch; the next plane goes on with the roll in hand.
    Each row is as long as its plane is at its widest within the row, cut long at rakes and walls,
    and runs over hips, ridges and valleys; the first row of a plane above a pitch break laps over
    the plane below.

    Args:
        planes: The planes.
        way: The roll, and how rows lie and are fastened.
        ice_barrier_tops: For each plane v of the upper edge of an ice barrier below, 0 where there
            is none; none at all unless given.

    Returns:
        The rows of all planes with their pieces, the rolls with their cuts, laps, areas and
        fasteners.

    Raises:
        Refused: There is no plane, a pitch is under 2:12, a measurement is negative or not finite,
            a lap is wider than the roll leaves, the roll is too short for the stagger; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        As `underlayment`. Over hips and ridges 6 in from each side: Navy Builder manual, NAVEDTRA
        14044, chapter 3.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> felt = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> laid = underlayment_on(surfaces(Hip(length=400, width=240, pitch=0.75)).planes, way=felt)
    >>> [row.plane for row in laid.rows].count("front"), laid.rolls
    (5, 3)
    """
    require_planes(planes)
    tops = list(ice_barrier_tops) or [0.0] * len(planes)
    refuse_if_any(
        [
            *_faults(
                way,
                pitches=[plane.pitch for plane in planes],
                eave_length=widest(planes),
                slope_length=highest(planes),
                tops=tops,
            ),
            None
            if len(tops) == len(planes)
            else fault("ice_barrier_tops", f"{len(tops)} of them", f"{len(planes)}, one a plane"),
        ]
    )
    return _limited(planes, tops, way)


def _limited(
    planes: Sequence[RoofPlane], tops: Sequence[float], way: UnderlaymentWay
) -> Underlayment:
    """Lay the underlayment, unless it takes too many pieces."""
    pieces = sum(_pieces(*one, way) for one in zip(planes, tops, strict=True))
    limit_sheets(pieces, planes=planes)
    return lay_underlayment(planes, way=way, ice_barrier_tops=tops)


def _faults(
    way: UnderlaymentWay,
    *,
    pitches: Sequence[float],
    eave_length: float,
    slope_length: float,
    tops: Sequence[float],
) -> Iterator[Fault | None]:
    in_pitch, in_width = layer_faults(pitches, roll_width=way.roll_width)
    wrong_tops = [top for top in tops if negative("ice_barrier_top", top)]
    wrong_laps = (barrier_lap_fault(top, way.over_ice_barrier, way.roll_width) for top in tops)
    yield in_pitch
    yield from sheet_faults(
        way,
        eave_length=eave_length,
        slope_length=slope_length,
        not_negative={
            "ice_barrier_top": wrong_tops[0] if wrong_tops else 0.0,
            "over_ice_barrier": way.over_ice_barrier,
        },
    )
    yield in_width
    yield next((found for found in wrong_laps if found), None)
    yield from spacing_faults(
        lap_spacing=way.lap_spacing,
        field_spacing=way.field_spacing,
        field_lines=way.field_lines,
    )


def _pieces(plane: RoofPlane, top: float, way: UnderlaymentWay) -> float:
    return pieces_needed(
        plane,
        lower=first_start(-way.past_metal, ice_barrier_top=top, way=way),
        upper=highest([plane]),
        lap=head_lap_of(plane.pitch, way=way),
        way=way,
    )


def barrier_lap_fault(top: Inches, lap: Inches, roll_width: Inches) -> Fault | None:
    """Give the fault of a first row that laps further over an ice barrier than that reaches.

    Args:
        top: v of the upper edge of the ice barrier; 0 where there is none.
        lap: How far the first row laps over it.
        roll_width: Width of the roll.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        Geometry, and a limit of this library.

    >>> barrier_lap_fault(36, 4, 36) is None, barrier_lap_fault(3, 4, 36) is None
    (True, False)
    """
    most = min(top, roll_width - LEAST_EXPOSED)
    if top <= 0 or most <= 0 or not lap > most:
        return None
    less = (", within the ice barrier and ", length(LEAST_EXPOSED), " less than the roll's width")
    return fault("over_ice_barrier", length(lap), "at most ", length(most), *less)
