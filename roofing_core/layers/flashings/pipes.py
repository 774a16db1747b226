"""Flashing for pipes: a collar on a flat base, under the courses above and over those below."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.faults import Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.pitch import pitch_fault, slope_factor

#: One near each corner of the base: common practice, no published source.
NAILS_EACH = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class PipeFlashed:
    """A flashing on its pipe.

    Attributes:
        hole_width: Of the hole in the deck, along the eave.
        hole_length: Of the hole in the deck, up the slope.
        side_flange: From the pipe to each side of the base.
        slope_flange: From the pipe to the upper and to the lower edge of the base.
        least_flange: The lesser of the two.
        nails: Nails in the base.
    """

    hole_width: Inches
    hole_length: Inches
    side_flange: Inches
    slope_flange: Inches
    least_flange: Inches
    nails: int


def pipe_flashing(
    diameter: Inches,
    *,
    pitch: Pitch,
    base_width: Inches,
    base_length: Inches,
    largest_pipe: Inches,
    nails: int = NAILS_EACH,
) -> PipeFlashed:
    """Set a flashing over a pipe through the roof, its collar in the middle of its base.

    ``hole_length = diameter * slope_factor``; each flange is half of what the hole leaves of the
    base.

    Args:
        diameter: Of the pipe, outside; over 0.
        pitch: Of the roof, 0:12 or more.
        base_width: Of the base along the eave, more than the hole.
        base_length: Of the base up the slope, more than the hole.
        largest_pipe: Diameter of the largest pipe that the collar goes round.
        nails: Nails in the base.

    Returns:
        The hole and the flanges round it.

    Raises:
        Refused: Something is zero, negative or not finite, the pipe is too large for the collar or
            the hole for the base; names each.

    Source:
        Geometry: an upright pipe cuts a slope in an ellipse.

    >>> laid = pipe_flashing(4, pitch=9 / 12, base_width=14, base_length=17, largest_pipe=4.5)
    >>> laid.hole_length, laid.side_flange, laid.slope_flange
    (5.0, 5.0, 6.0)
    """
    alone = [
        not_positive("diameter", diameter),
        pitch_fault(pitch),
        not_positive("base_width", base_width),
        not_positive("base_length", base_length),
        not_positive("largest_pipe", largest_pipe),
        not_positive("nails", nails, "count"),
    ]
    refuse_if_any(alone)
    hole_length = diameter * slope_factor(pitch)
    refuse_if_any(
        [
            _most("diameter", diameter, largest_pipe),
            _more("base_width", base_width, diameter),
            _more("base_length", base_length, hole_length),
        ]
    )
    side, slope = (base_width - diameter) / 2, (base_length - hole_length) / 2
    return PipeFlashed(
        hole_width=diameter,
        hole_length=hole_length,
        side_flange=side,
        slope_flange=slope,
        least_flange=min(side, slope),
        nails=nails,
    )


def _most(at: str, size: float, most: float) -> Fault | None:
    if size <= most:
        return None
    return fault(at, length(size), "at most ", length(most), ", the largest that the collar takes")


def _more(at: str, size: float, hole: float) -> Fault | None:
    if size > hole:
        return None
    return fault(at, length(size), "more than ", length(hole), ", the hole in the deck")
