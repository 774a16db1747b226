"""Reading GeoJSON (RFC 7946): planes of a roof in plan, each with its pitch and where it falls."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from math import cos, dist, hypot, radians, sin

from roofing_core.measures.faults import Fault, Refused, each_made, refuse_if_any, together
from roofing_core.measures.reading import read_pitch
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.documents import At, a_list, a_number, an_index, an_object, wrong
from roofing_core.roof.footprints import name_faults
from roofing_core.roof.given_planes import MOST_PLANES, GivenPlanes
from roofing_core.roof.in_space import planes_in_space
from roofing_core.roof.lifting import PlanFacet, facets_over
from roofing_core.roof.polygons import Point, corner_faults, signed_area
from roofing_core.roof.tangent_plane import inches, on_tangent_plane

#: A bearing says which side is the eave: the longest of those that face it this nearly.
FALL_WITHIN = radians(5)

#: All of a roof lies this near to its first corner.
REACH = inches(1_000.0)

#: The one reference system of GeoJSON. Writers from before the RFC name it.
_LONGITUDE_LATITUDE = "CRS84"


def planes_from_geojson(document: object, *, eave_overhang: Inches = 0.0) -> GivenPlanes:
    """Give the planes of a roof from a GeoJSON feature collection, one plane a feature.

    A feature is a polygon without holes. Its properties: ``pitch``, a text such as ``"6:12"``;
    ``eave``, the side that lies level below the plane, by the number of the position that it
    leaves, or in its place ``fall``, the compass bearing downhill in degrees, which picks the
    longest side that faces it within 5 degrees; where some sides end against a wall, ``walls``, a
    list of them; and ``name``. Other properties are passed over, and so are heights.

    Args:
        document: The collection, as parsed from JSON: longitude and latitude in degrees.
        eave_overhang: How far the deck reaches past the walls at the eaves, level.

    Returns:
        A roof that a job takes as it is, its planes in the order of the features.

    Raises:
        Refused: It is no such collection, or `facets_over` or `planes_in_space` refuse what it
            shows; names each by where it stands in the document.

    Source:
        RFC 7946, section 3.1.6 for polygons, 4 for the reference system. A seventh digit after the
        point is 7/16 in on the ground: positions want 8 digits, those that two planes share in the
        same digits.

    >>> shed = {"type": "FeatureCollection", "features": [{"type": "Feature", "properties":
    ...     {"pitch": "3:12", "fall": 180, "walls": [2]}, "geometry": {"type": "Polygon",
    ...     "coordinates": [[[0, 0], [5e-5, 0], [5e-5, 3e-5], [0, 3e-5], [0, 0]]]}}]}
    >>> planes_from_geojson(shed).planes[0].edges
    ('eave', 'rake', 'headwall', 'rake')
    """
    top = an_object(document, ())
    if top.get("type") != "FeatureCollection":
        raise wrong(("type",), top.get("type"), "FeatureCollection, of RFC 7946")
    _check_system(top)
    features = a_list(top.get("features"), ("features",))
    if not 1 <= len(features) <= MOST_PLANES:
        raise wrong(("features",), features, f"from 1 to {MOST_PLANES} features")
    shapes = each_made(lambda place: _ring(place, features[place]), range(len(features)))
    plan = _in_plan(shapes)
    drawn = each_made(
        lambda place: _drawn(place, features[place], plan[place]), range(len(features))
    )
    try:
        return planes_in_space(facets_over(drawn), eave_overhang=eave_overhang)
    except Refused as refused:
        raise Refused(*(replace(fault, at=_at(fault.at)) for fault in refused.faults)) from None


def _check_system(top: Mapping[str, object]) -> None:
    """Refuse another reference system than that of the RFC."""
    system = top.get("crs")
    if system is None:
        return
    named = an_object(an_object(system, ("crs",)).get("properties", {}), ("crs", "properties"))
    name = named.get("name")
    if not (isinstance(name, str) and name.endswith(_LONGITUDE_LATITUDE)):
        at = ("crs", "properties", "name")
        raise wrong(at, name, "left out: GeoJSON is in longitude and latitude on WGS 84")


def _ring(place: int, feature: object) -> tuple[tuple[float, float], ...]:
    """Give the corners of a feature in radians, the last not again."""
    at: At = ("features", place)
    shape = an_object(an_object(feature, at).get("geometry"), (*at, "geometry"))
    if shape.get("type") != "Polygon":
        raise wrong((*at, "geometry", "type"), shape.get("type"), "Polygon, one a plane")
    at = (*at, "geometry", "coordinates")
    rings = a_list(shape.get("coordinates"), at)
    if len(rings) != 1:
        raise wrong(at, rings, "one ring: openings are not read")
    at = (*at, 0)
    ring = a_list(rings[0], at)
    corners = each_made(lambda k: _position(ring[k], (*at, k)), range(len(ring)))
    if len(corners) < 4 or corners[0] != corners[-1]:  # noqa: PLR2004 - a triangle, closed
        raise wrong(at, ring, "4 or more positions, the last the same as the first")
    return corners[:-1]


def _position(value: object, at: At) -> tuple[float, float]:
    position = a_list(value, at)
    if len(position) < 2:  # noqa: PLR2004 - longitude and latitude
        raise wrong(at, position, "longitude and latitude")
    longitude, latitude = (a_number(position[k], (*at, k)) for k in (0, 1))
    refuse_if_any(
        Fault((*at, k), f"{value:.9g}", say(f"from -{most} to {most} degrees"))
        for k, value, most in ((0, longitude, 180), (1, latitude, 90))
        if abs(value) > most
    )
    return radians(longitude), radians(latitude)


def _in_plan(shapes: Sequence[Sequence[tuple[float, float]]]) -> list[tuple[Point, ...]]:
    """Give the corners of all features in one plan."""
    flat = on_tangent_plane([corner for shape in shapes for corner in shape])
    plan, faults, taken = [], [], 0
    for place, shape in enumerate(shapes):
        corners = flat[taken : taken + len(shape)]
        taken += len(shape)
        plan.append(corners)
        far = max(hypot(*corner) for corner in corners)
        if far > REACH:
            wanted = say("at most ", length(REACH), " from the first corner of the roof")
            faults.append(Fault(("features", place, "geometry"), length(far), wanted))
    refuse_if_any(faults)
    return plan


def _drawn(place: int, feature: object, corners: tuple[Point, ...]) -> PlanFacet:
    """Give a surface with what its properties say."""
    at: At = ("features", place, "properties")
    refuse_if_any(
        replace(fault, at=_at((*at[:2], *fault.at)))
        for fault in corner_faults(corners, straight=True)
    )
    said = an_object(an_object(feature, at[:2]).get("properties"), at)
    count = len(corners)
    walls = a_list(said.get("walls", ()), (*at, "walls"))
    name, pitch, eave, sides = together(
        lambda: _name(said, place, at),
        lambda: _pitch(said, at),
        lambda: _eave(said, corners, at),
        lambda: each_made(
            lambda k: an_index(walls[k], count, (*at, "walls", k)), range(len(walls))
        ),
    )
    return PlanFacet(
        name=name, corners=corners, pitch=pitch, eave=eave, walls=sides, at=at[:2]
    )  # fmt: skip


def _name(said: Mapping[str, object], place: int, at: At) -> str:
    name = said.get("name")
    if name is None:
        return f"plane {place + 1}"
    if not (isinstance(name, str) and name):
        raise wrong((*at, "name"), name, "a text")
    refuse_if_any(Refused(*name_faults(name)).below(*at).faults)
    return name


def _pitch(said: Mapping[str, object], at: At) -> Pitch:
    pitch = said.get("pitch")
    if not isinstance(pitch, str):
        raise wrong((*at, "pitch"), pitch, 'a text, such as "6:12", "26.57 deg" or "50 %"')
    try:
        return read_pitch(pitch)
    except Refused as refused:
        raise refused.below(*at) from None


def _eave(said: Mapping[str, object], corners: Sequence[Point], at: At) -> int:
    """Give the side that is the eave, as told or as the fall tells."""
    if (said.get("eave") is None) == (said.get("fall") is None):
        both = "nothing" if said.get("eave") is None else "eave and fall"
        raise Refused(Fault((*at, "fall"), both, say("one of eave, a side, and fall, a bearing")))
    if said.get("eave") is not None:
        return an_index(said["eave"], len(corners), (*at, "eave"))
    fall = a_number(said["fall"], (*at, "fall"))
    facing = list(_facing(corners, (sin(radians(fall)), cos(radians(fall)))))
    if not facing or not 0 <= fall <= 360:  # noqa: PLR2004 - once round
        wanted = "degrees clockwise from north, within 5 of square to a side below the plane"
        raise wrong((*at, "fall"), fall, wanted)
    return max(facing)[1]


def _facing(corners: Sequence[Point], way: Point) -> Iterator[tuple[Inches, int]]:
    """Give the sides that face a way, with their lengths."""
    around = 1 if signed_area(corners) > 0 else -1
    for side, (a, b) in enumerate(zip(corners, [*corners[1:], corners[0]], strict=True)):
        long = dist(a, b)
        out = ((b[1] - a[1]) * way[0] - (b[0] - a[0]) * way[1]) * around
        if out >= long * cos(FALL_WITHIN) and long:
            yield long, side


def _at(at: At) -> At:
    """Give the place in the document of what a plan facet names."""
    inner = at[2:]
    if inner[:1] == ("corners",):
        return (*at[:2], "geometry", "coordinates", 0, *inner[1:])
    return (*at[:2], "properties", *inner) if inner else at
