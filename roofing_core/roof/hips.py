"""Hips and valleys in general: between any two pitches, at any corner of the eaves.

For equal pitches at a square corner `pitch.hip_valley_factor` is the short way.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan, atan2, cos, pi, sin, sqrt, tan

from roofing_core.measures.faults import SMALLEST, Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, shown
from roofing_core.measures.units import Inches, Pitch, Radians, Ratio
from roofing_core.roof.pitch import STEEPEST, slope_factor


@dataclass(frozen=True, slots=True, kw_only=True)
class HipLine:
    """The line in which two slopes meet, seen from the first of them.

    Attributes:
        plan_angle_1: Angle in plan between the first eave and the line.
        plan_angle_2: Angle in plan between the second eave and the line.
        slope: Rise of the line over its own run in plan.
        angle: Angle of the line with the level.
        surface_angle: Angle on the first roof surface between its eave and the line: the cut of
            every course that ends on it.
        plan_factor: Length of the line in plan for each unit of the first slope's run.
        factor: Length of the line for each unit of the first slope's run.
    """

    plan_angle_1: Radians
    plan_angle_2: Radians
    slope: Pitch
    angle: Radians
    surface_angle: Radians
    plan_factor: Ratio
    factor: Ratio


def hip_line(pitch_1: Pitch, *, pitch_2: Pitch, corner: Radians = pi / 2) -> HipLine:
    """Give the hip or valley between two slopes whose eaves meet at a corner.

    ``tan a1 = sin t / (pitch_1 / pitch_2 + cos t)``, ``a2 = t - a1``, slope of the line
    ``pitch_1 * sin a1``, angle on the surface ``tan = tan a1 * slope_factor(pitch_1)``.

    Args:
        pitch_1: Rise over run of the first slope, over 0.
        pitch_2: Rise over run of the second slope, over 0.
        corner: Angle in plan between the two eaves, over 0 and under 180 deg; square unless given.

    Returns:
        The line's direction, its slope and its lengths.

    Raises:
        Refused: A pitch is not over 0, or the corner is none; names each.

    Source:
        Geometry: a point of the line has the same height on both slopes. Checked against a
        published worked example between 8:12 and 10:12 at 120 deg.

    >>> round(hip_line(6 / 12, pitch_2=6 / 12).factor, 12)  # as hip_valley_factor: exactly 3/2
    1.5
    """
    refuse_if_any(_faults(pitch_1, pitch_2, corner))
    plan_angle = atan2(sin(corner), pitch_1 / pitch_2 + cos(corner))
    # The height of the line at a run of 1 from the first eave is pitch_1; its run there is this:
    plan_factor = 1 / sin(plan_angle)
    slope = pitch_1 * sin(plan_angle)
    along = slope_factor(pitch_1)
    run_on_eave = cos(plan_angle) / sin(plan_angle)
    return HipLine(
        plan_angle_1=plan_angle,
        plan_angle_2=corner - plan_angle,
        slope=slope,
        angle=atan(slope),
        surface_angle=atan2(along, run_on_eave),
        plan_factor=plan_factor,
        factor=sqrt(1 + run_on_eave**2 + pitch_1**2),
    )


def _faults(pitch_1: float, pitch_2: float, corner: float) -> Iterator[Fault]:
    for name, pitch in (("pitch_1", pitch_1), ("pitch_2", pitch_2)):
        if not SMALLEST <= pitch <= STEEPEST:
            yield fault(name, shown(Amount(pitch, "pitch")), "over 0:12 and at most 1000:12")
    if not SMALLEST <= corner <= pi - SMALLEST:
        yield fault("corner", shown(Amount(corner, "rad")), "over 0 deg and under 180 deg")


def jack_difference(
    spacing: Inches, *, pitch_1: Pitch, pitch_2: Pitch, corner: Radians = pi / 2
) -> Inches:
    """Give the difference in length of neighbouring jack rafters of the first slope.

    ``spacing * tan a1 * slope_factor(pitch_1)`` with a1 the plan angle of `hip_line`. At a square
    corner of equal pitches the first jack from the corner has this length too.

    Args:
        spacing: Of the jacks along the first eave, over 0.
        pitch_1: Rise over run of the first slope, over 0.
        pitch_2: Rise over run of the second slope, over 0.
        corner: Angle in plan between the two eaves, over 0 and under 180 deg; square unless given.

    Returns:
        The difference.

    Raises:
        Refused: Something is zero, negative or not finite, or the hip leans back over the first
            eave's corner so that the slope has no jacks; names each.

    Source:
        Geometry; by example in Navy Builder manual (NAVEDTRA 14044) ch. 2 and older carpenters'
        guides.

    >>> round(jack_difference(16, pitch_1=10 / 12, pitch_2=10 / 12), 2)
    20.83
    """
    refuse_if_any([not_positive("spacing", spacing), *_faults(pitch_1, pitch_2, corner)])
    line = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    if line.plan_angle_1 >= pi / 2:
        came = f"a hip at {Amount(line.plan_angle_1, 'rad').written()} to the first eave"
        wanted = "under 90 deg, so that the first slope has jacks"
        refuse_if_any([fault("pitch_2", came, wanted)])
    return spacing * tan(line.plan_angle_1) * slope_factor(pitch_1)
