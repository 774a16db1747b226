"""Valleys: metal or lining along a valley, long enough for the eave and for the ridge.

It is laid from the eave up, each length over the one below, and nailed along both its edges. How
near to it the shingles stand is left to `coursing`.
"""

from __future__ import annotations

from math import pi, tan

from roofing_core.layers.metal.run_limits import run_faults
from roofing_core.layers.metal.runs import (
    END_DISTANCE,
    LAP,
    LEAST_PIECE,
    NAIL_SPACING,
    STOCK_LENGTHS,
    MetalRun,
    metal_run,
)
from roofing_core.measures.faults import Refused, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, shown
from roofing_core.measures.units import Inches, Radians

#: As far as the outer edges of 24 in metal need at a square corner of the flattest roof, and more
#: than they need on any other: see `valley_reach`. It is cut off along the eaves.
PAST_EAVE = 12.0

#: Bent over the ridge, or over the metal of the other valley that ends there: common practice, no
#: published source.
OVER_RIDGE = 6.0


def valley_reach(leg: Inches, *, surface_angle: Radians) -> Inches:
    """Give how far below a valley's foot its metal starts for its outer edges to reach the eave.

    ``leg / tan(surface_angle)``, at least 0: an edge of the metal runs beside the valley at the
    width of the leg, and comes to the eave so much later than the valley does.

    Args:
        leg: Width of the metal on one side of the valley, over 0.
        surface_angle: Angle on the roof surface between the eave's line and the valley, as
            `hip_line` gives it; over 0 and under 180 deg.

    Returns:
        The length, along the valley; 0 where the valley stands square to the eave or leans back
        over it.

    Raises:
        Refused: The leg is zero, negative or not finite, or the angle is none; names each.

    Source:
        Geometry.

    >>> from roofing_core.roof.hips import hip_line
    >>> round(valley_reach(12, surface_angle=hip_line(9 / 12, pitch_2=9 / 12).surface_angle), 9)
    9.6
    """
    wrong = not 0 < surface_angle < pi
    came, wanted = shown(Amount(surface_angle, "rad")), "over 0 deg and under 180 deg"
    refuse_if_any(
        [
            not_positive("leg", leg),
            fault("surface_angle", came, wanted) if wrong else None,
        ]
    )
    return leg / tan(surface_angle) if surface_angle < pi / 2 else 0.0


def valley_run(
    valley_length: Inches,
    *,
    past_eave: Inches = PAST_EAVE,
    over_ridge: Inches = OVER_RIDGE,
    stock_length: tuple[Inches, ...] = STOCK_LENGTHS,
    lap: Inches = LAP,
    nail_spacing: Inches = NAIL_SPACING,
    end_distance: Inches = END_DISTANCE,
    least_piece: Inches = LEAST_PIECE,
) -> MetalRun:
    """Cut and nail the metal of one valley, or the lining under a closed one.

    `metal_run` of ``past_eave + valley_length + over_ridge``, upper over lower, with a line of
    nails along each edge. A roll of lining is one stock length.

    Args:
        valley_length: From the foot of the valley to its top; over 0.
        past_eave: How far the metal starts below the foot, to be cut off along the eaves;
            `valley_reach` gives the least that will do.
        over_ridge: How far it goes on above the top, bent over the ridge.
        stock_length: The lengths that the metal is on offer in, one or more.
        lap: How far each length laps the one below.
        nail_spacing: Most from nail to nail along each edge.
        end_distance: From each end of the metal to its first nails.
        least_piece: No piece of several is shorter.

    Returns:
        The cut list, the laps and the nails, their places measured from the lower end of the
        metal, ``past_eave`` below the foot of the valley.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, or does not fit
            the shortest stock length; names each.
        TooManyPieces: The run would take more pieces or nails than the stated limit.

    Source:
        Geometry. The residential code asks for end laps of 4 in (R905.7.6, under wood shingles).
        The defaults are common practice, no published source.

    >>> valley_run(222).lengths  # 18 ft 6 in of valley, 240 in of metal
    (120.0, 120.0, 12.0)
    """
    own = [
        not_positive("valley_length", valley_length),
        negative("past_eave", past_eave),
        negative("over_ridge", over_ridge),
    ]
    cutting = run_faults(
        stock_length,
        lap=lap,
        nail_spacing=nail_spacing,
        end_distance=end_distance,
        tab=0.0,
        least_piece=least_piece,
    )
    refuse_if_any([*own, *cutting])
    try:
        return metal_run(
            past_eave + valley_length + over_ridge,
            stock_length=stock_length,
            lap=lap,
            nail_spacing=nail_spacing,
            end_distance=end_distance,
            least_piece=least_piece,
            lap_direction="upper_over_lower",
            nail_lines=2,
        )
    except Refused as refusal:
        raise refusal.renamed({"run_length": "valley_length"}) from None
