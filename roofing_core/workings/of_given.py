"""The working of planes and openings from where they were measured."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from roofing_core.roof.given_planes import GivenPlane, GivenPlanes
from roofing_core.roof.openings import Chimney, Skylight
from roofing_core.workings.at import GEOMETRY, At, Table, same, table, under
from roofing_core.workings.deck_sides import roof_measured
from roofing_core.workings.expressions import Constant, Expression, Figure
from roofing_core.workings.of_points import pitch_of
from roofing_core.workings.slopes import slope_factor


def plane_pitch(at: At) -> Expression | None:
    """Give the pitch of a plane.

    Args:
        at: The plan, at the pitch.

    Returns:
        The formula; nothing where the plan does not keep what was measured.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, run=108, rise=45)))
    >>> plane_pitch(At(shed, ("planes", 0, "pitch"))).name
    'pitch of the roof'
    """
    if at.plan.roof.form == "single_slope":
        return at("roof/pitch")
    number = int(at.path[1])
    if at.plan.roof.form == "planes":
        given = given_plane(at, number)
        return None if given is None else roof_measured(at, "planes", given, "pitch")
    return pitch_of(at, number)


def given_plane(at: At, number: int) -> int | None:
    """Find a plane among those that were measured by hand.

    Args:
        at: The plan.
        number: The plane, from 0.

    Returns:
        Its place among them, from 0; nothing where the plan does not keep them.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, run=108, rise=45)))
    >>> given_plane(At(shed, ()), 0) is None
    True
    """
    roof, name = at.plan.as_measured.roof, at.plan.planes[number].name
    if not isinstance(roof, GivenPlanes):
        return None
    return next((k for k, one in enumerate(roof.planes) if one.name == name), None)


def given_corner(at: At) -> Expression | None:
    """Give a corner of a plane measured by hand, from the left end of its lowest edge.

    Args:
        at: The plan, at one of the corner's two numbers.

    Returns:
        The formula; nothing where the plan does not keep what was measured.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.workings.expressions import evaluated
    >>> porch = GivenPlane(name="porch", pitch=0.25, edges=("eave", "rake", "headwall", "rake"),
    ...     corners=((5, 0), (173, 0), (173, 112), (5, 112)))
    >>> planned = plan(Job(roof=GivenPlanes(planes=(porch,))))
    >>> evaluated(given_corner(At(planned, ("planes", 0, "corners", 1, 0))))
    168
    """
    number, corner, axis = (int(at.path[k]) for k in (1, 3, 4))
    k = given_plane(at, number)
    roof = at.plan.as_measured.roof
    if k is None or not isinstance(roof, GivenPlanes):
        return None
    walked = _walked(roof.planes[k], at.plan.planes[number].corners)
    if not walked:
        return None
    if walked[corner] == walked[0]:
        return Constant(0, "in", "the corner that all others are measured from")
    place, start = (roof_measured(at, "planes", k, "corners", walked[n], axis) for n in (corner, 0))
    return place - start if start.value else place


def _walked(given: GivenPlane, corners: Sequence[tuple[float, float]]) -> list[int]:
    """Give which corner as measured each corner of the plane is."""
    count = len(given.corners)
    for start in range(count):
        for way in (1, -1):
            order = [(start + way * k) % count for k in range(count)]
            u0, v0 = given.corners[start]
            if all(
                same(given.corners[n][0] - u0, u) and same(given.corners[n][1] - v0, v)
                for n, (u, v) in zip(order, corners, strict=True)
            ):
                return order
    return []


def _opening(at: At, name: str) -> Figure | None:
    k = int(at.path[1])
    measured = at.plan.as_measured.openings
    return at.figure(("as_measured", "openings", k, name)) if k < len(measured) else None


def _pitch(at: At) -> Figure:
    names = [plane.name for plane in at.plan.planes]
    return at("planes/*/pitch", names.index(at.thing().plane))


def _half_pipe(at: At, *, up: bool) -> Expression:
    half = at.figure(("as_measured", "openings", int(at.path[1]), "diameter")) / 2
    return half * slope_factor(_pitch(at)) if up else half


def _is_pipe(at: At) -> bool:
    one = at.plan.as_measured.openings[int(at.path[1])]
    return not isinstance(one, Chimney | Skylight)


def _near_side(at: At, name: str, *, up: bool) -> Expression | None:
    place = _opening(at, name)
    if place is None:
        return None
    return place - _half_pipe(at, up=up) if _is_pipe(at) else place


def _far_side(at: At, name: str, *, up: bool) -> Expression | None:
    place = _opening(at, name)
    if place is None:
        return None
    if _is_pipe(at):
        return place + _half_pipe(at, up=up)
    if not up:
        return place + at.figure((*place.path[:-1], "width"))
    if isinstance(at.plan.as_measured.openings[int(at.path[1])], Chimney):
        return place + at.figure((*place.path[:-1], "depth")) * slope_factor(_pitch(at))
    return place + at.figure((*place.path[:-1], "height"))


#: The sides of openings, where these were measured.
OPENING_SIDES: Final[Table] = under(
    "/openings/*",
    table(
        GEOMETRY,
        left=lambda at: _near_side(at, "from_left", up=False),
        right=lambda at: _far_side(at, "from_left", up=False),
        lower=lambda at: _near_side(at, "up_slope", up=True),
        upper=lambda at: _far_side(at, "up_slope", up=True),
    ),
)
