"""Pitch: slope factor, hip and valley factor, angle and percent, between all ways of writing it.

Inside, a pitch is rise over run: 4:12 is 1/3. The closed formulas take a float or a NumPy column
and give the same kind back, bit for bit the same numbers.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import partial
from typing import Any

from roofing_core.measures.columns import Column, column_faults
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, shown
from roofing_core.measures.units import Percent, Pitch, Radians, Ratio


def _each(function: str, value: Column) -> Column:
    """Apply a function of `math` to a number, or its namesake of NumPy to a column."""
    if isinstance(value, int | float):
        of_one: Column = getattr(math, function)(value)
        return of_one
    import numpy  # noqa: PLC0415 - only a column needs it, and then it is loaded already

    of_each: Column = getattr(numpy, function)(value)
    return of_each


#: A pitch of 1000 in 12 stands 89.3 degrees up: a wall.
STEEPEST = 1000 / 12


def pitch_fault(pitch: Pitch, at: str = "pitch") -> Fault | None:
    """Give the fault of a pitch that no roof has: negative, not finite, or a wall.

    Args:
        pitch: Rise over run.
        at: The name to put into the fault.

    Returns:
        The fault, or ``None`` for a pitch from 0:12 to 1000:12.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> pitch_fault(4 / 12) is None
    True
    """
    if 0 <= pitch <= STEEPEST:
        return None
    return fault(at, shown(Amount(pitch, "pitch")), "0:12 or more and at most 1000:12")


def _pitch_fault_at(at: str, pitch: Pitch) -> Fault | None:
    return pitch_fault(pitch, at)


def _check_pitch(pitch: Any, at: str = "pitch") -> None:
    refuse_if_any(column_faults(at, pitch, _pitch_fault_at))


def slope_factor(pitch: Column) -> Column:
    """Give the length up the slope for each unit of run.

    ``sqrt(1 + pitch ** 2)``.

    Args:
        pitch: Rise over run, 0 or more; a number, or a column of them.

    Returns:
        At least 1; one for each pitch.

    Raises:
        Refused: A pitch is negative, not finite, or a wall.

    Source:
        Geometry; the "length of common rafters per foot of run" on a framing square is 12 times it.

    >>> slope_factor(5 / 12) == 13 / 12
    True
    """
    _check_pitch(pitch)
    return _each("sqrt", 1 + pitch * pitch)


def hip_valley_factor(pitch: Column) -> Column:
    """Give the length of a hip or valley for each unit of common run, equal pitches, square corner.

    ``sqrt(2 + pitch ** 2)``. The run is the common rafter's, as on a framing square, not the
    hip's own.

    Args:
        pitch: Rise over run, 0 or more; a number, or a column of them.

    Returns:
        At least sqrt 2; one for each pitch.

    Raises:
        Refused: A pitch is negative, not finite, or a wall.

    Source:
        Geometry; the "length of hip or valley per foot of run" on a framing square is 12 times it.

    >>> hip_valley_factor(6 / 12)
    1.5
    """
    _check_pitch(pitch)
    return _each("sqrt", 2 + pitch * pitch)


def pitch_angle(pitch: Column) -> Column:
    """Give the angle of a slope with the level: ``atan(pitch)``.

    Args:
        pitch: Rise over run, 0 or more; a number, or a column of them.

    Returns:
        Radians; one for each pitch.

    Raises:
        Refused: A pitch is negative, not finite, or a wall.

    Source:
        Geometry.

    >>> math.degrees(pitch_angle(12 / 12))
    45.0
    """
    _check_pitch(pitch)
    if isinstance(pitch, int | float):
        return math.atan(pitch)
    import numpy  # noqa: PLC0415 - see _each; its own arctan gives other last bits

    return numpy.reshape([math.atan(one) for one in pitch.flat], pitch.shape)


def pitch_of(*, rise: Column, run: Column) -> Column:
    """Give the pitch of a rise over a run: ``rise / run``.

    Args:
        rise: How far it goes up, 0 or more, in the unit of the run.
        run: How far it goes along, level, over 0. It is half the span of a two-sided roof: the old
            handbooks' "pitch" is rise over span, half of this one.

    Returns:
        Rise over run.

    Raises:
        Refused: The run is 0, or one of them is negative or not finite.

    Source:
        Geometry; Navy Builder manual (NAVEDTRA 14044) ch. 3 for the two meanings of the word.

    >>> pitch_of(rise=4, run=12) == 1 / 3
    True
    """
    refuse_if_any(
        [
            *column_faults("rise", rise, partial(negative, unit="1")),
            *column_faults("run", run, partial(not_positive, unit="1")),
        ]
    )
    pitch = rise / run
    _check_pitch(pitch, "rise")
    return pitch


@dataclass(frozen=True, slots=True, kw_only=True)
class PitchFactors:
    """A pitch in every way that it is written, with its factors.

    Attributes:
        pitch: Rise in 12 of run.
        slope_factor: Length up the slope for each unit of run.
        hip_valley_factor: Length of a hip or valley, for each unit of common run, between two
            slopes of this pitch that meet at a square corner.
        angle: Angle with the level.
        percent: Rise in 100 of run.
    """

    pitch: Pitch
    slope_factor: Ratio
    hip_valley_factor: Ratio
    angle: Radians
    percent: Percent


def pitch_factors(pitch: Pitch) -> PitchFactors:
    """Give a pitch in every way that it is written, with its slope factor and hip factor.

    ``slope_factor = sqrt(1 + pitch ** 2)``, ``hip_valley_factor = sqrt(2 + pitch ** 2)``,
    ``angle = atan(pitch)``, ``percent = 100 * pitch``.

    Args:
        pitch: Rise over run, 0 or more, such as 4:12.

    Returns:
        The pitch, its factors, angle and percent.

    Raises:
        Refused: The pitch is negative, not finite, or a wall.

    Source:
        Geometry; agrees with the rafter tables of a framing square.

    >>> pitch_factors(9 / 12).slope_factor
    1.25
    """
    return PitchFactors(
        pitch=pitch,
        slope_factor=slope_factor(pitch),
        hip_valley_factor=hip_valley_factor(pitch),
        angle=pitch_angle(pitch),
        percent=100 * pitch,
    )
