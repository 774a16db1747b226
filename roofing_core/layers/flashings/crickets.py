"""Crickets: the small roof behind a chimney that turns water to both sides of it.

Its ridge runs level from the middle of the chimney's back to the roof, and its two planes slope as
the roof does. Its valleys are laid as any others are.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.faults import not_positive, refuse_if_any
from roofing_core.measures.units import Inches, Pitch, SquareInches
from roofing_core.roof.footprints import pitch_range_fault
from roofing_core.roof.pitch import hip_valley_factor, slope_factor

#: Residential code R903.2.2 and R1003.20: a chimney wider than this has one.
NONE_UP_TO = 30.0

#: A wood shingle bureau's manual: the metal of a saddle reaches 10 in or more under the covering.
UNDER_COVERING = 10.0

#: Up the chimney: Ontario Building Code 9.26.4.8 has 150 mm or more.
WALL_LEG = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Cricket:
    """A cricket behind a chimney.

    Attributes:
        required: Whether the chimney is so wide that it must have one.
        height: Of its ridge, above where the roof meets the chimney's back.
        ridge_length: Of its ridge, level.
        valley_length: Of each of its two valleys.
        wall_length: Along the chimney's back, from each corner up to the ridge.
        up_slope: How far it reaches up the roof, from the chimney's back.
        plane_area: Of each of its two planes.
        area: Of both, which is also the area of the roof that they cover.
        metal_area: Of the metal that covers it, with what lies under the courses beside its valleys
            and what stands up the chimney.
    """

    required: bool
    height: Inches
    ridge_length: Inches
    valley_length: Inches
    wall_length: Inches
    up_slope: Inches
    plane_area: SquareInches
    area: SquareInches
    metal_area: SquareInches


def cricket(
    width: Inches,
    *,
    pitch: Pitch,
    under_covering: Inches = UNDER_COVERING,
    wall_leg: Inches = WALL_LEG,
) -> Cricket:
    """Measure the cricket behind a chimney.

    With half the width ``h``: ``height = h * pitch``, ``ridge_length = h``, ``valley_length = h *
    hip_valley_factor``, ``wall_length = up_slope = h * slope_factor``, ``plane_area = h * up_slope
    / 2``, ``metal_area = area + 2 * valley_length * under_covering + 2 * wall_length * wall_leg``.

    Args:
        width: Of the chimney, along the eave; over 0.
        pitch: Of the roof, 0.1:12 or more; the cricket has the same.
        under_covering: How far its metal reaches under the courses, from each valley; over 0.
        wall_leg: How far its metal stands up the chimney, over 0.

    Returns:
        The cricket, measured also where the chimney is so narrow that none is required.

    Raises:
        Refused: Something is zero, negative or not finite, or the roof is flatter; names each.

    Source:
        Geometry. The heights are those of table R1003.20 of the residential code (12:12 half of the
        width, 6:12 a quarter), which come to the roof's own pitch.

    >>> cricket(36, pitch=4 / 12).height
    6.0
    """
    refuse_if_any(
        [
            not_positive("width", width),
            pitch_range_fault(("pitch",), pitch),
            not_positive("under_covering", under_covering),
            not_positive("wall_leg", wall_leg),
        ]
    )
    half, up_slope = width / 2, width / 2 * slope_factor(pitch)
    valley_length, area = half * hip_valley_factor(pitch), half * up_slope
    flanges = 2 * valley_length * under_covering + 2 * up_slope * wall_leg
    return Cricket(
        required=width > NONE_UP_TO,
        height=half * pitch,
        ridge_length=half,
        valley_length=valley_length,
        wall_length=up_slope,
        up_slope=up_slope,
        plane_area=area / 2,
        area=area,
        metal_area=area + flanges,
    )
