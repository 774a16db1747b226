"""Reading a drawing of a roof, in whichever of the formats it comes."""

from __future__ import annotations

from dataclasses import dataclass, fields

from roofing_core.measures.faults import fault, refuse_if_any
from roofing_core.measures.units import Inches
from roofing_core.roof.documents import an_object, told, wrong
from roofing_core.roof.given_planes import GivenPlanes
from roofing_core.roof.reading_cityjson import CoordinateUnit, planes_from_cityjson
from roofing_core.roof.reading_geojson import planes_from_geojson


@dataclass(frozen=True, slots=True, kw_only=True)
class Picked:
    """What is taken of a drawing.

    Attributes:
        building: The identifier of a city object of a CityJSON model; its children belong to it.
            All of them unless given.
        lod: The level of detail of a CityJSON model to take, such as ``2.2``. Of each city object
            the highest that has roof surfaces, unless given.
        unit: What the coordinates of a CityJSON model are in: metres, feet or survey feet.
        eave_overhang: How far the deck reaches past the walls at the eaves, level.
    """

    building: str = ""
    lod: str = ""
    unit: CoordinateUnit = "m"
    eave_overhang: Inches = 0.0


def planes_from_drawing(document: object, picked: Picked = Picked()) -> GivenPlanes:
    """Give the planes of a roof from a drawing in GeoJSON or CityJSON.

    A GeoJSON feature collection shows them in plan: each feature a polygon without holes, with a
    ``pitch`` such as ``"6:12"``, the ``eave`` by its place in the ring or the ``fall`` as a
    compass bearing, and where sides end against a wall, ``walls``, by their places. A CityJSON
    model has them in space, as surfaces of the type ``RoofSurface``. Where planes meet, and what
    each edge is, follows from how they lie.

    Args:
        document: The drawing, as parsed from JSON. Its ``type`` tells the format.
        picked: What to take of it.

    Returns:
        A roof that a job takes as it is.

    Raises:
        Refused: As `planes_from_geojson` or `planes_from_cityjson`, or it is neither; names each
            fault by where it stands in the document.

    Source:
        RFC 7946; CityJSON 1.1 and 2.0 (OGC 20-072).

    >>> planes_from_drawing({"type": "Topology"})
    Traceback (most recent call last):
    roofing_core.measures.faults.Refused: type came as 'Topology': FeatureCollection or CityJSON
    """
    kind = an_object(document, ()).get("type")
    if kind == "CityJSON":
        return planes_from_cityjson(
            document,
            building=picked.building,
            lod=picked.lod,
            unit=picked.unit,
            eave_overhang=picked.eave_overhang,
        )
    if kind != "FeatureCollection":
        raise wrong(("type",), kind, "FeatureCollection or CityJSON")
    refuse_if_any(
        fault(one.name, told(getattr(picked, one.name)), "left out: it is of CityJSON alone")
        for one in fields(picked)
        if one.name != "eave_overhang" and getattr(picked, one.name) != one.default
    )
    return planes_from_geojson(document, eave_overhang=picked.eave_overhang)
