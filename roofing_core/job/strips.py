"""Strips: what the courses and starters of a job are cut from, and the nails of a whole one."""

from __future__ import annotations

from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.coursing.nailing import nail_positions, nails_per_strip
from roofing_core.layers.coursing.pieces import Strip
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import RoofPlane

_POSITIONS = Wired(
    nail_positions, shingle_length="shingle.length", end_distance="nailing.end_distance"
)


def nails_on(site: Site, plane: RoofPlane) -> int:
    """Count the nails in each whole strip of a plane.

    Args:
        site: The roof with its choices.
        plane: The plane.

    Returns:
        Nails.

    Raises:
        Nothing: A measured plane has its pitch.

    Source:
        `nails_per_strip`.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> steep = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=2))
    >>> nails_on(steep, steep.surfaces.planes[0])
    6
    """
    return nails_per_strip(plane.pitch, high_wind=site.choices.nailing.high_wind)


def strip_on(site: Site, plane: RoofPlane) -> Strip:
    """Give what the courses of a plane are cut from: a shingle with its nails.

    Args:
        site: The roof with its choices.
        plane: The plane.

    Returns:
        The strip.

    Raises:
        Refused: The nails do not fit on it; names the caller's fields.

    Source:
        `nails_per_strip` and `nail_positions`.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> len(strip_on(shed, shed.surfaces.planes[0]).nails)
    4
    """
    return Strip(
        length=site.choices.shingle.length,
        nails=_POSITIONS(site, nails=nails_on(site, plane)),
        end_distance=site.choices.nailing.end_distance,
    )


def starter_strip_on(site: Site, plane: RoofPlane) -> Strip:
    """Give what starters are cut from: shingles, or ready-made pieces nailed as a shingle is.

    Args:
        site: The roof with its choices.
        plane: The plane.

    Returns:
        The strip.

    Raises:
        Refused: The nails do not fit on it.

    Source:
        `nails_per_strip` and `nail_positions`.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> starter_strip_on(shed, shed.surfaces.planes[0]).length
    39.375
    """
    starter = site.choices.starter
    if starter.made == "self_made":
        return strip_on(site, plane)
    nails = nail_positions(
        starter.length,
        nails=nails_on(site, plane),
        end_distance=min(site.choices.nailing.end_distance, starter.length / 4),
    )
    return Strip(length=starter.length, nails=nails, end_distance=site.choices.nailing.end_distance)


def starter_height(site: Site) -> Inches:
    """Give the height of the starter: of a self-made one, the shingle's without its exposure.

    Args:
        site: The roof with its choices.

    Returns:
        The height.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> starter_height(site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    7.625
    """
    starter, shingle = site.choices.starter, site.choices.shingle
    self_made = starter.made == "self_made"
    return shingle.height - shingle.exposure if self_made else starter.height
