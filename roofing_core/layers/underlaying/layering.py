"""Layers of underlayment: one or two, by the pitch, and where their rows lie.

What the rows are cut from is `rolls`.
"""

from __future__ import annotations

from collections.abc import Sequence

from roofing_core.layers.underlaying.limits import LEAST_EXPOSED
from roofing_core.layers.underlaying.rows import Band, half_lap, half_lapped_rows, lapped_rows
from roofing_core.layers.underlaying.sheeting import SheetedPlane, SheetWay
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, fault, refuse_if_any
from roofing_core.measures.sentences import Amount, length, shown
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.pitch import STEEPEST

#: IRC R905.2.2: no asphalt shingles below this pitch.
LEAST_PITCH = 2 / 12
#: IBC 1507.1.1: two layers below this pitch, one at it (the table, as restated of New York State's
#: code of 2025, which follows the edition of 2024).
SINGLE_LAYER_PITCH = 4 / 12


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
        layer (the table as restated).

    >>> underlayment_layers(4 / 12), underlayment_layers(3.99 / 12)
    (1, 2)
    """
    refuse_if_any([_pitch_fault(pitch)])
    return 1 if pitch >= SINGLE_LAYER_PITCH - DUST else 2


def layer_faults(pitches: Sequence[Pitch], *, roll_width: Inches) -> tuple[Fault | None, ...]:
    """Give the faults of pitches that take no underlayment, or none from a roll so narrow.

    Args:
        pitches: Rise over run of each plane.
        roll_width: Width of the roll.

    Returns:
        A fault of the first pitch that is too low or too steep, one of the roll's width where a
        plane takes two layers, and None for what is right.

    Raises:
        Refused: Never; it gives the faults to be raised together with others.

    Source:
        As `underlayment_layers`; the width that two layers take is a limit of this library.

    >>> [one.at for one in layer_faults([1 / 12, 3 / 12], roll_width=3) if one]
    [('pitch',), ('roll_width',)]
    """
    wrong = (found for found in map(_pitch_fault, pitches) if found)
    return next(wrong, None), _half_lap_fault(min(pitches, default=1.0), roll_width)


def _pitch_fault(pitch: float) -> Fault | None:
    if LEAST_PITCH - DUST <= pitch <= STEEPEST:
        return None
    wanted = "2:12 or more and at most 1000:12: asphalt shingles are not laid on a lower slope"
    return fault("pitch", shown(Amount(pitch, "pitch")), wanted)


def _half_lap_fault(pitch: float, roll_width: float) -> Fault | None:
    if pitch >= SINGLE_LAYER_PITCH - DUST or roll_width - half_lap(roll_width) >= LEAST_EXPOSED:
        return None
    least = length(2 * LEAST_EXPOSED + 2)
    return fault("roll_width", length(roll_width), least, " or more, for two layers")


def head_lap_of(pitch: Pitch, *, way: SheetWay) -> Inches:
    """Give the head lap of rows on a plane: as asked, or for two layers a half lap.

    Args:
        pitch: Rise over run of the plane.
        way: How sheets lie.

    Returns:
        How far each row lies over the one below.

    Raises:
        Refused: As `underlayment_layers`.

    Source:
        `half_lap`.

    >>> felt = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> head_lap_of(4 / 12, way=felt), head_lap_of(3 / 12, way=felt)
    (4, 19.0)
    """
    return way.head_lap if underlayment_layers(pitch) == 1 else half_lap(way.roll_width)


def rows_up(
    laid: SheetedPlane, *, way: SheetWay, lower: Inches, first_lap: Inches
) -> tuple[Band, ...]:
    """Place the rows of underlayment up a plane, in as many layers as its pitch asks for.

    Args:
        laid: The plane and what the sheet covers.
        way: How sheets lie.
        lower: v of the lower edge of the first row.
        first_lap: How far the first row lies over what is below it.

    Returns:
        The rows in the order of laying.

    Raises:
        Refused: As `underlayment_layers`.

    Source:
        `lapped_rows` and `half_lapped_rows`.

    >>> from roofing_core.layers.underlaying.sheeting import sheeted
    >>> from roofing_core.roof.outlines import rectangle
    >>> felt = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> shed = sheeted(rectangle(168, slope_length=112, pitch=3 / 12), way=felt)
    >>> len(rows_up(shed, way=felt, lower=-0.25, first_lap=0))
    8
    """
    top, edge, width = laid.region.highest, laid.deck.highest, way.roll_width
    if underlayment_layers(laid.plane.pitch) == 1:
        return lapped_rows(
            "full",
            lower=lower,
            cover=top,
            top=top,
            width=width,
            lap=way.head_lap,
            first_lap=first_lap,
            edge=edge,
        )
    return half_lapped_rows(lower=lower, top=top, width=width, first_lap=first_lap, edge=edge)
