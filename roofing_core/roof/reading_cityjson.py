"""Reading CityJSON (OGC): the roof surfaces of buildings modelled in space."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import hypot
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.faults import Fault, Refused, each_made
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches
from roofing_core.roof.city_surfaces import ROOF, WALL, CitySurface, city_surfaces
from roofing_core.roof.documents import At, a_list, a_number, an_index, an_object, wrong
from roofing_core.roof.facets import Facet, Segment, SpacePoint, area_vector
from roofing_core.roof.given_planes import MOST_PLANES, GivenPlanes
from roofing_core.roof.in_space import MOST_SIDES, planes_in_space

#: Versions that are read; what is read here is the same in both.
VERSIONS = ("1.1", "2.0")

CoordinateUnit = Literal["m", "ft", "us_ft"]

#: Inches in one of each unit: what it is multiplied by, and then divided.
_INCHES = MappingProxyType({"m": (10_000, 254), "ft": (12, 1), "us_ft": (12_000_000, 999_998)})

#: Codes of reference systems in degrees or around the centre of the Earth, the common ones: WGS 84,
#: ETRS89, NAD83 and NAD83(2011), by the EPSG registry. Others are found out by the roof's size.
_NO_PLAN = frozenset(
    {"4326", "4979", "4978", "4258", "4937", "4936", "4269", "6317", "6318", "6319"}
)
_SYSTEM = re.compile(r"\b(EPSG|OGC)\b.*?([0-9A-Za-z]+)$", re.ASCII)

#: A roof smaller than this in both directions was drawn in degrees, or is a mistake.
LEAST_ROOF = 12.0

#: A line of a wall rises with it whose run is more than this part of it; else it is upright.
_LEANING = 0.05


def planes_from_cityjson(
    document: object,
    *,
    building: str = "",
    lod: str = "",
    unit: CoordinateUnit = "m",
    eave_overhang: Inches = 0.0,
) -> GivenPlanes:
    """Give the planes of a roof from the surfaces that a CityJSON model calls ``RoofSurface``.

    Of each city object, those of its highest level of detail that has any. Sides from which a
    ``WallSurface`` rises end against a wall. A plane is called what its semantics say as ``name``,
    or else ``roof 1`` and so on, as they come in the document.

    Args:
        document: The model, as parsed from JSON.
        building: The identifier of a city object; its children belong to it. All of the document
            unless given.
        lod: The level of detail to take, such as ``2.2``, in place of the highest.
        unit: What the coordinates are in: metres, feet or survey feet. Systems are not looked up
            by their codes, so that one in feet has to be told.
        eave_overhang: How far the deck reaches past the walls at the eaves, level.

    Returns:
        A roof that a job takes as it is.

    Raises:
        Refused: It is no model of a version that is read, it is in degrees, a roof surface has a
            hole, there are none or too many, or `planes_in_space` refuses them; names each by
            where it stands in the document.

    Source:
        CityJSON 1.1 and 2.0 (OGC 20-072): 3.2 for boundaries, 3.3 for semantics, 4 for the
        transform, whose translation a roof does not need.

    >>> shed = {"type": "CityJSON", "version": "2.0", "transform": {"scale": [0.0254] * 3,
    ...     "translate": [0, 0, 0]}, "vertices": [[0, 0, 0], [168, 0, 0], [168, 96, 24],
    ...     [0, 96, 24]], "CityObjects": {"shed": {"type": "Building", "geometry": [{"type":
    ...     "MultiSurface", "lod": "2", "boundaries": [[[0, 1, 2, 3]]], "semantics":
    ...     {"surfaces": [{"type": "RoofSurface"}], "values": [0]}}]}}}
    >>> planes_from_cityjson(shed).planes[0].edges
    ('eave', 'rake', 'ridge', 'rake')
    """
    top = an_object(document, ())
    if top.get("type") != "CityJSON":
        raise wrong(("type",), top.get("type"), "CityJSON")
    if top.get("version") not in VERSIONS:
        raise wrong(("version",), top.get("version"), " or ".join(VERSIONS))
    _check_system(top)
    surfaces = city_surfaces(top, building=building, lod=lod)
    points = _points(top, unit)
    facets = _facets(surfaces, points)
    _check_size(facets)
    return planes_in_space(facets, eave_overhang=eave_overhang)


def _check_system(top: Mapping[str, object]) -> None:
    """Refuse a reference system in which no roof is measured."""
    at: At = ("metadata", "referenceSystem")
    system = an_object(top.get("metadata", {}), at[:1]).get("referenceSystem")
    if system is None:
        return
    found = _SYSTEM.search(system) if isinstance(system, str) else None
    if found is None:
        raise wrong(at, system, "an OGC name, such as https://www.opengis.net/def/crs/EPSG/0/7415")
    if found[1] != "EPSG" or found[2] in _NO_PLAN:
        raise wrong(at, system, "a projected system: degrees are not read here")


@dataclass(frozen=True, slots=True)
class _Points:
    """The vertices of a model, and what one unit of each of their coordinates is, in inches."""

    vertices: Sequence[object]
    scale: tuple[float, float, float]

    def ring(self, ring: object, at: At) -> tuple[SpacePoint, ...]:
        """Give the corners of a ring of indices, from the origin of the vertices."""
        indices = a_list(ring, at)
        if not 3 <= len(indices) <= MOST_SIDES:  # noqa: PLR2004 - a triangle
            raise wrong(at, indices, f"from 3 to {MOST_SIDES} corners")
        return tuple(self._point(index, (*at, k)) for k, index in enumerate(indices))

    def _point(self, index: object, at: At) -> SpacePoint:
        which = an_index(index, len(self.vertices), at)
        place: At = ("vertices", which)
        vertex = a_list(self.vertices[which], place)
        if len(vertex) != len(self.scale):
            raise wrong(place, vertex, "x, y and height")
        x, y, z = (
            a_number(value, (*place, k)) * scale
            for k, (value, scale) in enumerate(zip(vertex, self.scale, strict=True))
        )
        return x, y, z


def _points(top: Mapping[str, object], unit: CoordinateUnit) -> _Points:
    at: At = ("transform", "scale")
    scale = a_list(an_object(top.get("transform"), at[:1]).get("scale"), at)
    if len(scale) != 3:  # noqa: PLR2004 - x, y and height
        raise wrong(at, scale, "three numbers")
    times, over = _INCHES[unit]
    x, y, z = (a_number(value, (*at, k)) * times / over for k, value in enumerate(scale))
    if min(x, y, z) <= 0:
        raise wrong(at, scale, "three numbers over zero")
    return _Points(a_list(top.get("vertices"), ("vertices",)), (x, y, z))


def _facets(surfaces: Sequence[CitySurface], points: _Points) -> list[Facet]:
    """Give the roof surfaces with the lines from which walls rise."""
    roof = [surface for surface in surfaces if surface.kind == ROOF]
    if not 1 <= len(roof) <= MOST_PLANES:
        came = f"{len(roof)} surfaces of type {ROOF}"
        wanted = f"from 1 to {MOST_PLANES} in the semantics; a building and a lod can be picked"
        raise Refused(Fault(("CityObjects",), came, say(wanted)))
    walls = [surface for surface in surfaces if surface.kind == WALL]
    rising = tuple(
        line for found in each_made(lambda one: _rising(one, points), walls) for line in found
    )
    if len(rising) > MOST_SIDES:
        came = f"{len(rising)} lines under walls"
        raise Refused(Fault(("CityObjects",), came, say(f"at most {MOST_SIDES}, in one building")))
    outlines = each_made(lambda one: _outline(one, points), roof)
    return [
        Facet(name=name, corners=corners, walls=rising, at=surface.at)
        for name, corners, surface in zip(_names(roof), outlines, roof, strict=True)
    ]


def _outline(surface: CitySurface, points: _Points) -> tuple[SpacePoint, ...]:
    rings = a_list(surface.rings, surface.at)
    if len(rings) != 1:
        raise wrong(surface.at, rings, "one ring: openings are not read")
    return points.ring(rings[0], (*surface.at, 0))


def _names(roof: Sequence[CitySurface]) -> Iterator[str]:
    """Give each surface a name of its own."""
    names: list[str] = []
    for place, surface in enumerate(roof):
        name = surface.name or f"roof {place + 1}"
        same = sum(other == name or other.startswith(f"{name} #") for other in names)
        names.append(f"{name} #{same + 1}" if same else name)
    return iter(names)


def _rising(wall: CitySurface, points: _Points) -> list[Segment]:
    """Give the lines that a wall stands on: walked round it, it lies on their left and above."""
    rings = [
        points.ring(ring, (*wall.at, place))
        for place, ring in enumerate(a_list(wall.rings, wall.at))
    ]
    out_x, out_y, _ = area_vector(rings[0]) if rings else (0.0, 0.0, 0.0)
    return [
        (start, end)
        for ring in rings
        for start, end in zip(ring, [*ring[1:], ring[0]], strict=True)
        if _stands_on(out_x, out_y, (start, end))
    ]


def _stands_on(out_x: float, out_y: float, line: Segment) -> bool:
    (ax, ay, az), (bx, by, bz) = line
    left_up = out_x * (by - ay) - out_y * (bx - ax)
    return left_up > _LEANING * hypot(out_x, out_y) * hypot(bx - ax, by - ay, bz - az)


def _check_size(facets: Sequence[Facet]) -> None:
    """Refuse a roof that is too small to have been drawn in a unit of length."""
    corners = [corner for facet in facets for corner in facet.corners]
    wide, deep = (max(axis) - min(axis) for axis in list(zip(*corners, strict=True))[:2])
    if max(wide, deep) < LEAST_ROOF:
        came = length(max(wide, deep))
        wanted = say("a roof at least ", length(LEAST_ROOF), " long: coordinates in metres or feet")
        raise Refused(Fault(("vertices",), came, wanted))
