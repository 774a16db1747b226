"""Measuring: any roof, in whatever form it was given, as its planes and its main measurements."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.roof.forms import Form
from roofing_core.roof.given_planes import GivenPlanes
from roofing_core.roof.outlines import RoofPlane, Surfaces
from roofing_core.roof.pitch import slope_factor
from roofing_core.roof.planes import Roof, SingleSlope, measure, single_surface
from roofing_core.roof.whole_roof import surfaces

AnyRoof = Form | GivenPlanes


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredRoof:
    """A roof with every measurement worked out, and all its planes.

    Attributes:
        roof: Its main measurements.
        surfaces: Its planes and lines.
    """

    roof: Roof
    surfaces: Surfaces


def measured(roof: AnyRoof) -> MeasuredRoof:
    """Work out every measurement and every plane of a roof of any form.

    Args:
        roof: What was measured.

    Returns:
        The roof from edge to edge of its deck.

    Raises:
        Refused: As `surfaces`.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Gable
    >>> barn = measured(Gable(length=240, width=192, pitch=9 / 12))
    >>> barn.roof.slope_length, barn.roof.eave_length, len(barn.surfaces.planes)
    (120.0, 480.0, 2)
    """
    if isinstance(roof, SingleSlope):
        whole = measure(roof)
        return MeasuredRoof(roof=whole, surfaces=single_surface(whole))
    found = surfaces(roof)
    return MeasuredRoof(roof=_described(roof, found), surfaces=found)


def main_plane(surfaces: Surfaces) -> RoofPlane:
    """Give the largest plane of a roof; of equals, the first.

    Args:
        surfaces: The planes of the roof.

    Returns:
        The plane.

    Raises:
        Nothing: A roof has a plane.

    Source:
        None needed.

    >>> from roofing_core.roof.forms import Hip
    >>> main_plane(surfaces(Hip(length=400, width=240, pitch=0.5))).name
    'front'
    """
    return max(surfaces.planes, key=lambda plane: round(plane.area, 6))


def _described(given: AnyRoof, found: Surfaces) -> Roof:
    main = main_plane(found)
    heights = [v for _, v in main.corners]
    slope_length = max(heights) - min(heights)
    factor = slope_factor(main.pitch)
    pitches = [plane.pitch for plane in found.planes]
    return Roof(
        form=given.form,
        eave_length=sum(line.length for line in found.lines if line.kind == "eave"),
        slope_length=slope_length,
        run=slope_length / factor,
        rise=slope_length / factor * main.pitch,
        pitch=main.pitch,
        slope_factor=factor,
        eave_overhang=given.eave_overhang,
        area=found.area,
        squares=found.squares,
        plan_area=found.plan_area,
        lowest_pitch=min(pitches),
        steepest_pitch=max(pitches),
    )
