"""The single slope as measured, and the plane that everything is laid on.

It comes from its eave length and any two of slope length, run, rise and pitch. Other forms are
`forms`, every form measured is `measuring`. Plane coordinates: u along the eave from the left
corner, seen from the ground facing the roof, and v up the slope.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
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
from roofing_core.roof.outlines import RoofLine, RoofPlane, Surfaces, rectangle, surfaces_of
from roofing_core.roof.pitch import slope_factor
from roofing_core.roof.slopes import LONGEST, Slope, slope, too_long, too_short

RoofForm = Literal[
    "single_slope", "gable", "saltbox", "gambrel", "hip", "pyramid", "footprint", "planes"
]


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
    """A roof with every measurement worked out, edge to edge of its deck.

    A roof of several planes is described by its main plane, the largest one.

    Attributes:
        form: The form of the roof.
        eave_length: Along the eave; of a roof of several, all of them together.
        slope_length: Up the slope of the main plane, eave to top edge.
        run: Level, from the eave to below the top edge of the main plane.
        rise: Upright, from the eave to the top edge of the main plane.
        pitch: Rise over run of the main plane.
        slope_factor: Length up the slope for each unit of run of the main plane.
        eave_overhang: How far the deck reaches past the wall at the eave, level.
        area: On the slopes.
        squares: The same in squares of 100 ft2.
        plan_area: As seen from above.
        lowest_pitch: Rise over run of the flattest plane.
        steepest_pitch: Rise over run of the steepest plane.
    """

    form: RoofForm
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
    lowest_pitch: Pitch
    steepest_pitch: Pitch


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
    faults = [
        not_positive("eave_length", eave)
        or too_long("eave_length", eave)
        or too_short("eave_length", eave)
    ]
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
    refuse_if_any([*faults, too_short("slope_length", measured.slope_length)])
    eave_length = roof.eave_length
    if roof.measured == "walls":
        eave_length, measured = _with_overhangs(roof, measured)
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
        lowest_pitch=measured.pitch,
        steepest_pitch=measured.pitch,
    )


def _with_overhangs(roof: SingleSlope, walls: Slope) -> tuple[Inches, Slope]:
    """Give the eave length and the slope of the deck over walls that were measured."""
    eave_length = roof.eave_length + 2 * roof.rake_overhang
    run = walls.run + roof.eave_overhang + roof.ridge_overhang
    up = run * slope_factor(walls.pitch)
    further = "eave" if roof.eave_overhang >= roof.ridge_overhang else "ridge"
    refuse_if_any([_too_far(roof, "rake", eave_length), _too_far(roof, further, up)])
    return eave_length, slope(run=run, pitch=walls.pitch)


def _too_far(roof: SingleSlope, edge: str, deck: Inches) -> Fault | None:
    if deck <= LONGEST:
        return None
    at = f"{edge}_overhang"
    wanted = ("less: the deck would come to ", length(deck), ", and at most ", length(LONGEST))
    return fault(at, length(getattr(roof, at)), *wanted)


def planes(roof: Roof) -> tuple[RoofPlane, ...]:
    """Give the planes of a single slope: one, with its edges named.

    The top edge of a single slope is a ridge with nothing on its far side.

    Args:
        roof: The roof, measured.

    Returns:
        One plane, its corners in plane coordinates and in space.

    Raises:
        Nothing: A measured roof has its planes.

    Source:
        Geometry.

    >>> planes(measure(SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))[0].edges
    ('eave', 'rake', 'ridge', 'rake')
    """
    wide, run, rise = roof.eave_length, roof.run, roof.rise
    return (
        replace(
            rectangle(wide, slope_length=roof.slope_length, pitch=roof.pitch),
            points=((0.0, 0.0, 0.0), (wide, 0.0, 0.0), (wide, run, rise), (0.0, run, rise)),
            area=roof.area,
            plan_area=roof.plan_area,
        ),
    )


def single_surface(roof: Roof) -> Surfaces:
    """Give the one surface of a single slope, with its four lines.

    Args:
        roof: The roof, measured.

    Returns:
        Its plane and lines.

    Raises:
        Nothing: A measured roof has its planes.

    Source:
        Geometry.

    >>> roof = measure(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> [line.kind for line in single_surface(roof).lines]
    ['eave', 'rake', 'ridge', 'rake']
    """
    (plane,) = planes(roof)
    ahead = (*plane.points[1:], plane.points[0])
    lines = [
        RoofLine(kind=kind, length=long, planes=(plane.name,), ends=(start, end))
        for kind, long, start, end in zip(
            plane.edges, plane.lengths, plane.points, ahead, strict=True
        )
    ]
    return surfaces_of([plane], lines)
