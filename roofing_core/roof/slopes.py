"""Slopes: slope length, run, rise and pitch, any two of which give the others, and the area.

Which roof a slope belongs to is `planes`.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

from roofing_core.measures.faults import (
    Fault,
    Refused,
    fault,
    negative,
    not_positive,
    refuse_if_any,
    require_positive,
    together,
)
from roofing_core.measures.sentences import Exact, length, shown
from roofing_core.measures.units import SQUARE, Inches, Pitch, SquareInches, Squares
from roofing_core.roof.pitch import pitch_fault, slope_factor

#: The longest eave and the longest slope of any roof: 10,000 ft.
LONGEST = 120_000.0

#: A tape reads no less.
SHORTEST = 1 / 16

#: The measurements of a slope; any two of them give the others.
SLOPE_MEASURES = ("slope_length", "run", "rise", "pitch")

_TWO = "two of slope_length, run, rise and pitch"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """One slope, from the eave to its top edge, in every way that it is measured.

    Attributes:
        slope_length: Up the slope.
        run: Level, from the eave to below the top edge.
        rise: Upright, from the eave to the top edge.
        pitch: Rise over run.
    """

    slope_length: Inches
    run: Inches
    rise: Inches
    pitch: Pitch


def slope(
    *,
    slope_length: Inches | None = None,
    run: Inches | None = None,
    rise: Inches | None = None,
    pitch: Pitch | None = None,
) -> Slope:
    """Give a slope in full from any two of its measurements.

    ``slope_length ** 2 = run ** 2 + rise ** 2`` and ``pitch = rise / run``.

    Args:
        slope_length: Up the slope, over 0.
        run: Level, over 0.
        rise: Upright, 0 or more; over 0 when the run has to come from it.
        pitch: Rise over run, 0 or more; over 0 when the run has to come from the rise.

    Returns:
        All four.

    Raises:
        Refused: Fewer or more than two are given, one of them cannot be, or the slope length is
            not longer than the run or the rise that goes with it.

    Source:
        Geometry.

    >>> slope(run=108, rise=45).slope_length  # 5:12 is 13 up the slope for 12 of run
    117.0
    """
    given = _given(slope_length, run, rise, pitch)
    refuse_if_any(_slope_faults(given, f"exactly {_TWO}"))
    if pitch is not None:
        measured = _from_pitch(pitch, slope_length, run, rise)
    else:
        measured = _from_lengths(slope_length, run, rise)
    refuse_if_any([too_long("slope_length", measured.slope_length)])
    return measured


def too_long(at: str, came: Inches) -> Fault | None:
    """Give the fault of a length that no roof has.

    Args:
        at: The name to put into the fault.
        came: The length.

    Returns:
        The fault, or ``None`` for a length up to 10,000 ft.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> too_long("eave_length", 168) is None
    True
    """
    if came <= LONGEST:
        return None
    return fault(at, length(came), "at most ", length(LONGEST))


def too_short(at: str, came: Inches) -> Fault | None:
    """Give the fault of a length that no tape reads: over 0, but under 1/16 in.

    Args:
        at: The name to put into the fault.
        came: The length.

    Returns:
        The fault, or ``None`` for a length from 1/16 in up, or not over 0.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> too_short("eave_length", 0.0625) is None
    True
    """
    if not 0 < came < SHORTEST:
        return None
    return fault(at, shown(Exact(came, "in")), length(SHORTEST), " or more")


def _from_pitch(
    pitch: float, slope_length: float | None, run: float | None, rise: float | None
) -> Slope:
    """Give the slope of a pitch and one length."""
    factor = slope_factor(pitch)
    if slope_length is not None:
        run = slope_length / factor
    elif rise is not None:
        run = rise / pitch
    level = run or 0.0  # one of the three was given, and over 0
    return Slope(
        slope_length=level * factor if slope_length is None else slope_length,
        run=level,
        rise=level * pitch if rise is None else rise,
        pitch=pitch,
    )


def _from_lengths(slope_length: float | None, run: float | None, rise: float | None) -> Slope:
    """Give the slope of two lengths."""
    if slope_length is None:
        level, upright = run or 0.0, rise or 0.0
        slope_length = hypot(level, upright)
    elif run is not None:
        level, upright = run, _other_leg("run", run, slope_length)
    else:
        upright = rise or 0.0
        level = _other_leg("rise", upright, slope_length)
    refuse_if_any([pitch_fault(upright / level)])
    return Slope(slope_length=slope_length, run=level, rise=upright, pitch=upright / level)


def _other_leg(name: str, leg: float, slant: float) -> float:
    """Give the leg that goes with a leg and a slope length."""
    if leg >= slant:
        raise Refused(fault(name, length(leg), "less than the slope length, ", length(slant)))
    return sqrt((slant - leg) * (slant + leg))


def _given(*measures: float | None) -> dict[str, float]:
    """Give those of the four that are given, by their names."""
    named = zip(SLOPE_MEASURES, measures, strict=True)
    return {name: value for name, value in named if value is not None}


def _slope_faults(given: dict[str, float], wanted: str) -> list[Fault | None]:
    faults: list[Fault | None] = []
    if len(given) != 2:  # noqa: PLR2004 - any two of the four
        faults.append(fault("slope_length", ", ".join(given) or "none of them", wanted))
    for name, value in given.items():
        if name == "pitch":
            faults.append(pitch_fault(value))
            if value == 0 and "run" not in given and "slope_length" not in given:
                faults.append(fault("pitch", "0:12", "over 0:12 where only the rise is known"))
        elif name == "rise" and ("run" in given or "slope_length" in given):
            faults.append(negative(name, value))
        else:
            faults.append(not_positive(name, value))
    return faults


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """The area of one rectangular slope.

    Attributes:
        area: On the slope.
        squares: The same in squares of 100 ft2.
        slope_length: Up the slope.
        eave_length: Along the eave.
    """

    area: SquareInches
    squares: Squares
    slope_length: Inches
    eave_length: Inches


def roof_area(
    eave_length: Inches,
    *,
    slope_length: Inches | None = None,
    run: Inches | None = None,
    rise: Inches | None = None,
    pitch: Pitch | None = None,
) -> Area:
    """Give the area of one rectangular slope, in squares too.

    ``area = eave_length * slope_length``; a square is 100 ft2.

    Args:
        eave_length: Along the eave, edge to edge of the deck, over 0.
        slope_length: Up the slope, eave to top edge. Enough by itself; or leave it out and give
            two of the others.
        run: Level, from the eave to below the top edge.
        rise: Upright, from the eave to the top edge.
        pitch: Rise over run.

    Returns:
        Area, squares, and the slope length that they come from.

    Raises:
        Refused: The slope is not measured by its slope length alone or by two measurements, or
            something is zero, negative or not finite; names each.

    Source:
        Geometry. A square of 100 ft2 is the trade's unit (Navy Builder manual, NAVEDTRA 14044).

    >>> roof_area(168, slope_length=112).squares  # 14 ft by 9 ft 4 in
    1.3066666666666666
    """
    given = _given(slope_length, run, rise, pitch)
    _, up = together(
        lambda: require_positive("in", eave_length=eave_length), lambda: _slope_length(given)
    )
    area = eave_length * up
    return Area(area=area, squares=area / SQUARE, slope_length=up, eave_length=eave_length)


def _slope_length(given: dict[str, float]) -> float:
    """Give the slope length that was measured, or that follows from two other measurements."""
    if given.keys() == {"slope_length"}:
        require_positive("in", **given)
        return given["slope_length"]
    refuse_if_any(_slope_faults(given, f"slope_length alone, or {_TWO}"))
    return slope(**given).slope_length
