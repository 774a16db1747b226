"""The roof as measured, and the plane that everything is laid on.

A single slope comes from its eave length and any two of slope length, run, rise and pitch.
Plane coordinates: u along the eave from the left corner, seen from the ground facing the roof,
and v up the slope.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt
from typing import Literal

from roofing_core.measures.faults import (
    Fault,
    Refused,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length
from roofing_core.measures.units import SQUARE, Inches, Pitch, Ratio, SquareInches, Squares
from roofing_core.roof.pitch import pitch_fault, slope_factor

Edge = Literal["eave", "rake", "ridge"]

#: The longest eave and the longest slope of any roof: 10,000 ft.
LONGEST = 120_000.0

#: The measurements of a slope; any two of them give the others.
SLOPE_MEASURES = ("slope_length", "run", "rise", "pitch")


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
    given = {
        name: value
        for name, value in zip(SLOPE_MEASURES, (slope_length, run, rise, pitch), strict=True)
        if value is not None
    }
    refuse_if_any(_slope_faults(given))
    if pitch is not None:
        measured = _from_pitch(pitch, slope_length, run, rise)
    else:
        measured = _from_lengths(slope_length, run, rise)
    refuse_if_any([_too_long("slope_length", measured.slope_length)])
    return measured


def _too_long(at: str, came: float) -> Fault | None:
    if came <= LONGEST:
        return None
    return fault(at, length(came), "at most ", length(LONGEST))


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


def _slope_faults(given: dict[str, float]) -> list[Fault | None]:
    faults: list[Fault | None] = []
    if len(given) != 2:  # noqa: PLR2004 - any two of the four
        came = ", ".join(given) or "none of them"
        faults.append(
            fault("slope_length", came, "exactly two of slope_length, run, rise and pitch")
        )
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
    faults: list[Fault | None] = [not_positive("eave_length", eave_length)]
    if slope_length is not None and run is None and rise is None and pitch is None:
        faults.append(not_positive("slope_length", slope_length))
        refuse_if_any(faults)
    else:
        try:
            measured = slope(slope_length=slope_length, run=run, rise=rise, pitch=pitch)
        except Refused as refusal:
            refuse_if_any([*faults, *refusal.faults])
            raise
        refuse_if_any(faults)
        slope_length = measured.slope_length
    area = eave_length * slope_length
    return Area(
        area=area, squares=area / SQUARE, slope_length=slope_length, eave_length=eave_length
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SingleSlope:
    """A single-slope roof as somebody measured it: the eave length and two more measurements.

    Attributes:
        form: The form of the roof.
        eave_length: Along the eave.
        slope_length: Up the slope, eave to top edge.
        run: Level, from the eave to below the top edge.
        rise: Upright, from the eave to the top edge.
        pitch: Rise over run.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhangs are then added.
        eave_overhang: How far the deck reaches past the wall at the eave, level. An ice barrier
            is measured from that wall.
        ridge_overhang: How far the deck reaches past the wall at the top edge, level.
        rake_overhang: How far the deck reaches past the wall at each rake.
    """

    form: Literal["single_slope"] = "single_slope"
    eave_length: Inches
    slope_length: Inches | None = None
    run: Inches | None = None
    rise: Inches | None = None
    pitch: Pitch | None = None
    measured: Literal["deck", "walls"] = "deck"
    eave_overhang: Inches = 0.0
    ridge_overhang: Inches = 0.0
    rake_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Roof:
    """A single-slope roof with every measurement worked out, edge to edge of its deck.

    Attributes:
        form: The form of the roof.
        eave_length: Along the eave.
        slope_length: Up the slope, eave to top edge.
        run: Level, from the eave to below the top edge.
        rise: Upright, from the eave to the top edge.
        pitch: Rise over run.
        slope_factor: Length up the slope for each unit of run.
        eave_overhang: How far the deck reaches past the wall at the eave, level.
        area: On the slope.
        squares: The same in squares of 100 ft2.
        plan_area: As seen from above.
    """

    form: Literal["single_slope"]
    eave_length: Inches
    slope_length: Inches
    run: Inches
    rise: Inches
    pitch: Pitch
    slope_factor: Ratio
    eave_overhang: Inches
    area: SquareInches
    squares: Squares
    plan_area: SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """One flat roof surface: a simple polygon with a kind on each edge.

    Attributes:
        name: What it is called in findings and steps.
        corners: Corners (u, v), from the left end of the eave round by the right.
        edges: The kind of each edge, from the edge that leaves the first corner.
        pitch: Rise over run.
        area: On the slope.
    """

    name: str
    corners: tuple[tuple[Inches, Inches], ...]
    edges: tuple[Edge, ...]
    pitch: Pitch
    area: SquareInches


def measure(roof: SingleSlope) -> Roof:
    """Work out every measurement of a single-slope roof.

    Two of slope length, run, rise and pitch give the rest; where the walls were measured, the
    overhangs are added: level ones to the run, one at each rake to the eave length.

    Args:
        roof: What was measured.

    Returns:
        The roof from edge to edge of its deck.

    Raises:
        Refused: A measurement is missing, one too many, or cannot be; names each.

    Source:
        Geometry.

    >>> measure(SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)).squares
    1.3066666666666666
    """
    eave = roof.eave_length
    faults = [not_positive("eave_length", eave) or _too_long("eave_length", eave)]
    faults += [
        negative(name, getattr(roof, name))
        for name in ("eave_overhang", "ridge_overhang", "rake_overhang")
    ]
    try:
        measured = slope(
            slope_length=roof.slope_length, run=roof.run, rise=roof.rise, pitch=roof.pitch
        )
    except Refused as refusal:
        refuse_if_any([*faults, *refusal.faults])
        raise
    refuse_if_any(faults)
    eave_length = roof.eave_length
    if roof.measured == "walls":
        run = measured.run + roof.eave_overhang + roof.ridge_overhang
        measured = slope(run=run, pitch=measured.pitch)
        eave_length = eave_length + 2 * roof.rake_overhang
    area = eave_length * measured.slope_length
    return Roof(
        form=roof.form,
        eave_length=eave_length,
        slope_length=measured.slope_length,
        run=measured.run,
        rise=measured.rise,
        pitch=measured.pitch,
        slope_factor=slope_factor(measured.pitch),
        eave_overhang=roof.eave_overhang,
        area=area,
        squares=area / SQUARE,
        plan_area=eave_length * measured.run,
    )


def planes(roof: Roof) -> tuple[Plane, ...]:
    """Give the planes of a roof: one for a single slope, with its edges named.

    The top edge of a single slope is a ridge with nothing on its far side.

    Args:
        roof: The roof, measured.

    Returns:
        One plane, its corners in plane coordinates.

    Raises:
        Nothing: A measured roof has its planes.

    Source:
        Geometry.

    >>> planes(measure(SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))[0].edges
    ('eave', 'rake', 'ridge', 'rake')
    """
    wide, high = roof.eave_length, roof.slope_length
    return (
        Plane(
            name="slope",
            corners=((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)),
            edges=("eave", "rake", "ridge", "rake"),
            pitch=roof.pitch,
            area=roof.area,
        ),
    )
