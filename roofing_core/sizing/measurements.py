"""Measurements: what was read off a tape or a level to give a roof, and each of them a little off.

Every length and pitch of a form is one, as it was given: run and pitch, not the slope length that
follows. Of an outline each side is one, moved square to itself; of planes measured by hand the
width and the height of each, the plane stretched.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, replace
from functools import partial
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from roofing_core.measures.faults import Refused, fault
from roofing_core.measures.sentences import Amount
from roofing_core.measures.units import Inches, Unit
from roofing_core.roof.footprints import Footprint, Side
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.planes import SingleSlope, measure
from roofing_core.roof.polygons import Point, signed_area
from roofing_core.roof.slopes import slope

Kind = Literal["length", "pitch"]

_KINDS: tuple[tuple[str, Kind], ...] = (("in", "length"), ("pitch", "pitch"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurement:
    """One measurement of a roof.

    Attributes:
        name: Its dotted place in the roof.
        kind: A length or a pitch.
        value: What was measured.
        off: Gives the roof, in its own form, as it would be if the measurement were so much off.
    """

    name: str
    kind: Kind
    value: Amount
    off: Callable[[Inches], Any]


def measurements_of(roof: AnyRoof) -> tuple[Measurement, ...]:
    """Give every measurement that a roof was given by.

    Args:
        roof: The roof as it was measured.

    Returns:
        Lengths and pitches in the order of the form's fields; what was not given, or given as 0, is
        none.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, run=96, pitch=0.25, eave_overhang=12)
    >>> [one.name for one in measurements_of(shed)]
    ['eave_length', 'run', 'pitch', 'eave_overhang']
    >>> measurements_of(shed)[1].off(-1).run
    95
    """
    found = [
        _measurement(roof, name, unit, partial(_off, roof, name)) for name, unit in _given(roof)
    ]
    if isinstance(roof, Footprint):
        found += _of_outline(roof)
    if isinstance(roof, GivenPlanes):
        found += _of_planes(roof)
    return tuple(found)


def plan_sizes(roof: AnyRoof) -> tuple[Measurement, ...]:
    """Give the two sizes that a roof grows in.

    Args:
        roof: The roof as it was measured.

    Returns:
        Of a single slope its eave length and its slope length, at the same pitch; length and width
        of a form that has them; of an outline its extents, of planes measured by hand how far they
        reach along their eaves and up their slopes, stretched.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.roof.forms import Hip
    >>> [one.off(6) for one in plan_sizes(Hip(length=400, width=240, pitch=0.5))][1].width
    246
    """
    if isinstance(roof, SingleSlope):
        return _of_single_slope(roof)
    if isinstance(roof, Footprint):
        return tuple(_extent(roof, axis, name) for axis, name in enumerate(_EXTENTS))
    if isinstance(roof, GivenPlanes):
        return tuple(_reach(roof, axis, name) for axis, name in enumerate(_REACHES))
    return tuple(one for one in measurements_of(roof) if one.name in _EXTENTS)


_EXTENTS = ("length", "width")
_REACHES = ("along the eaves", "up the slopes")


def _of_single_slope(roof: SingleSlope) -> tuple[Measurement, Measurement]:
    found = measure(roof)
    walls = slope(slope_length=roof.slope_length, run=roof.run, rise=roof.rise, pitch=roof.pitch)

    def longer(by: float) -> SingleSlope:
        times = (walls.slope_length + by) / walls.slope_length
        given = {name: getattr(roof, name) for name in ("slope_length", "run", "rise")}
        return replace(roof, **{name: size * times for name, size in given.items() if size})

    return (
        Measurement(
            name="eave_length",
            kind="length",
            value=Amount(found.eave_length, "in"),
            off=partial(_off, roof, "eave_length"),
        ),
        Measurement(
            name="slope_length", kind="length", value=Amount(found.slope_length, "in"), off=longer
        ),
    )


def _measurement(
    whole: Any, name: str, unit: str, off: Callable[[float], AnyRoof], *, at: str = ""
) -> Measurement:
    kind = dict(_KINDS)[unit]
    value = Amount(float(getattr(whole, name)), unit)
    return Measurement(name=f"{at}{name}", kind=kind, value=value, off=off)


def _given(whole: Any) -> Iterator[tuple[str, str]]:
    """Give the names and units of the fields of a form that hold a measurement."""
    hints = get_type_hints(type(whole), include_extras=True)
    for field in fields(whole):
        unit, value = _unit(hints[field.name]), getattr(whole, field.name)
        if unit in dict(_KINDS) and value:
            yield field.name, unit


def _unit(hint: Any) -> str:
    if get_origin(hint) in (Union, UnionType):
        return next(filter(None, map(_unit, get_args(hint))), "")
    if get_origin(hint) is not Annotated:
        return ""
    return next((one.name for one in hint.__metadata__ if isinstance(one, Unit)), "")


def _off(roof: Any, name: str, by: float) -> Any:
    return replace(roof, **{name: getattr(roof, name) + by})


def _of_outline(roof: Footprint) -> Iterator[Measurement]:
    for k in range(len(roof.corners)):
        along = Amount(_length(roof.corners, k), "in")
        yield Measurement(
            name=f"side {k + 1} outwards",
            kind="length",
            value=along,
            off=partial(_side_moved, roof, k),
        )
    for k, side in enumerate(roof.sides):
        for name, unit in _given(side):
            off = partial(_of_side, roof, k, name)
            yield _measurement(side, name, unit, off, at=f"sides.{k}.")


def _of_side(roof: Footprint, k: int, name: str, by: float) -> Footprint:
    changed: Side = _off(roof.sides[k], name, by)
    return replace(roof, sides=(*roof.sides[:k], changed, *roof.sides[k + 1 :]))


def _length(corners: tuple[Point, ...], k: int) -> float:
    (ax, ay), (bx, by) = corners[k], corners[(k + 1) % len(corners)]
    return float(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5)


def _side_moved(roof: Footprint, k: int, by: float) -> Footprint:
    """Move a side outwards, square to itself; its ends slide along the sides beside it."""
    corners, n = list(roof.corners), len(roof.corners)
    turn = 1.0 if signed_area(roof.corners) > 0 else -1.0
    (ax, ay), (bx, by_) = corners[k], corners[(k + 1) % n]
    long = _length(roof.corners, k)
    out = (turn * (by_ - ay) / long * by, turn * (ax - bx) / long * by)
    corners[k] = _slid(corners[k], corners[k - 1], (bx - ax, by_ - ay), out)
    corners[(k + 1) % n] = _slid((bx, by_), corners[(k + 2) % n], (bx - ax, by_ - ay), out)
    return replace(roof, corners=tuple(corners))


def _slid(corner: Point, towards: Point, along: Point, out: Point) -> Point:
    """Slide a corner along its other side until it lies on the moved one."""
    side = corner[0] - towards[0], corner[1] - towards[1]
    across = along[0] * side[1] - along[1] * side[0]
    if not across:
        at = f"corners came as {corner}"
        raise Refused(fault("corners", at, "no corner on a straight side, which cannot be moved"))
    t = (along[0] * out[1] - along[1] * out[0]) / across
    return corner[0] + t * side[0], corner[1] + t * side[1]


def _of_planes(roof: GivenPlanes) -> Iterator[Measurement]:
    for k, plane in enumerate(roof.planes):
        yield _measurement(
            plane, "pitch", "pitch", partial(_of_plane, roof, k, "pitch"), at=f"planes.{k}."
        )
        for axis, name in enumerate(("width", "height")):
            us = [corner[axis] for corner in plane.corners]
            yield Measurement(
                name=f"planes.{k}.{name}",
                kind="length",
                value=Amount(max(us) - min(us), "in"),
                off=partial(_plane_stretched, roof, k, axis),
            )


def _of_plane(roof: GivenPlanes, k: int, name: str, by: float) -> GivenPlanes:
    return _with_plane(roof, k, _off(roof.planes[k], name, by))


def _plane_stretched(roof: GivenPlanes, k: int, axis: int, by: float) -> GivenPlanes:
    plane = roof.planes[k]
    return _with_plane(roof, k, replace(plane, corners=_stretched(plane.corners, axis, by)))


def _with_plane(roof: GivenPlanes, k: int, plane: GivenPlane) -> GivenPlanes:
    return replace(roof, planes=(*roof.planes[:k], plane, *roof.planes[k + 1 :]))


def _stretched(corners: tuple[Point, ...], axis: int, by: float) -> tuple[Point, ...]:
    """Stretch an outline along one axis until it is so much longer."""
    places = [corner[axis] for corner in corners]
    start, long = min(places), max(places) - min(places)
    times = (long + by) / long if long else 1.0
    moved = [start + (place - start) * times for place in places]
    return tuple(
        (at, corner[1]) if axis == 0 else (corner[0], at)
        for at, corner in zip(moved, corners, strict=True)
    )


def _extent(roof: Footprint, axis: int, name: str) -> Measurement:
    places = [corner[axis] for corner in roof.corners]
    return Measurement(
        name=name,
        kind="length",
        value=Amount(max(places) - min(places), "in"),
        off=lambda by: replace(roof, corners=_stretched(roof.corners, axis, by)),
    )


def _reach(roof: GivenPlanes, axis: int, name: str) -> Measurement:
    places = [corner[axis] for plane in roof.planes for corner in plane.corners]
    longest = max(
        max(c[axis] for c in plane.corners) - min(c[axis] for c in plane.corners)
        for plane in roof.planes
    )

    def off(by: float) -> GivenPlanes:
        times = (longest + by) / longest
        planes = (
            replace(
                plane,
                corners=tuple(
                    (u * times, v) if axis == 0 else (u, v * times) for u, v in plane.corners
                ),
            )
            for plane in roof.planes
        )
        return replace(roof, planes=tuple(planes))

    return Measurement(
        name=name, kind="length", value=Amount(max(places) - min(places), "in"), off=off
    )
