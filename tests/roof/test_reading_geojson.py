"""GeoJSON: what is read of it, what is refused, and in which words."""

from __future__ import annotations

from copy import deepcopy
from math import pi, radians
from typing import Any

import mpmath
import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.given_planes import given_surfaces
from roofing_core.roof.reading_geojson import planes_from_geojson
from roofing_core.roof.tangent_plane import on_tangent_plane
from tests.roof.drawings import RADIUS, SQUARED, position

#: A porch 14 ft along a wall that looks south, 8 ft deep.
SOUTH: tuple[tuple[float, float], ...] = ((0, -96), (168, -96), (168, 0), (0, 0))


def ring(*corners: tuple[float, float]) -> list[list[float]]:
    made = [position(x, y, longitude=10.0, latitude=50.0) for x, y in corners]
    return [*made, made[0]]


def feature(*corners: tuple[float, float], **properties: Any) -> dict[str, Any]:
    shape = {"type": "Polygon", "coordinates": [ring(*corners)]}
    return {"type": "Feature", "properties": properties, "geometry": shape}


def collection(*features: Any, **more: Any) -> dict[str, Any]:
    return {"type": "FeatureCollection", "features": list(features), **more}


PORCH = collection(feature(*SOUTH, pitch="3:12", fall=180, walls=[2], name="porch"))


def test_a_porch_against_a_wall():
    (porch,) = given_surfaces(planes_from_geojson(PORCH, eave_overhang=6)).planes
    assert porch.edges == ("eave", "rake", "headwall", "rake")
    # 96 in of run at 3:12.
    assert porch.lengths == pytest.approx((168, 98.954535, 168, 98.954535), abs=1e-4)
    assert planes_from_geojson(PORCH, eave_overhang=6).eave_overhang == 6


def test_the_eave_by_its_place_is_the_one_by_the_fall():
    told = deepcopy(PORCH)
    del told["features"][0]["properties"]["fall"]
    told["features"][0]["properties"]["eave"] = 0
    assert planes_from_geojson(told) == planes_from_geojson(PORCH)


def test_which_way_the_ring_runs_does_not_matter():
    # RFC 7946, 3.1.6: parsers should not reject polygons that do not follow the right-hand rule.
    turned = deepcopy(PORCH)
    turned["features"][0]["geometry"]["coordinates"][0].reverse()
    turned["features"][0]["properties"]["walls"] = [1]  # now from the last corner but one
    found, before = (given_surfaces(planes_from_geojson(one)).planes[0] for one in (turned, PORCH))
    assert found.edges == before.edges
    assert found.lengths == pytest.approx(before.lengths, abs=1e-6)


def test_heights_and_other_properties_are_passed_over():
    more = deepcopy(PORCH)
    for corner in more["features"][0]["geometry"]["coordinates"][0]:
        corner.append(123.4)
    more["features"][0]["properties"]["colour"] = {"red": 1}
    more["features"][0]["id"] = 7
    more["bbox"] = [9, 49, 11, 51]
    more["crs"] = {"type": "name", "properties": {"name": "urn:ogc:def:crs:OGC:1.3:CRS84"}}
    assert planes_from_geojson(more) == planes_from_geojson(PORCH)


def test_a_lean_to_below_the_eave_of_the_house():
    # Drawn edge to edge, 3 ft lower; only the lean-to says that it ends against a wall.
    house = feature((0, 0), (168, 0), (168, 120), (0, 120), pitch="6:12", fall=180, name="house")
    porch = PORCH["features"][0]
    found = planes_from_geojson(collection(house, porch))
    assert [plane.edges for plane in found.planes] == [
        ("eave", "rake", "ridge", "rake"),
        ("eave", "rake", "headwall", "rake"),
    ]
    assert all(not any(plane.beyond) for plane in found.planes)


def test_a_pitch_break_where_the_porch_goes_on_below_the_house():
    house = feature((0, 0), (168, 0), (168, 120), (0, 120), pitch="6:12", fall=180, name="house")
    porch = feature(*SOUTH, pitch="3:12", fall=180, name="porch")
    found = planes_from_geojson(collection(porch, house))
    assert found.planes[0].edges[2] == found.planes[1].edges[0] == "pitch_break"


def changed(*at: Any, value: Any = ..., top: Any = PORCH) -> Any:
    """Give the porch with one member changed, or left out."""
    made = deepcopy(top)
    inner = made
    for part in at[:-1]:
        inner = inner[part]
    if value is ...:
        del inner[at[-1]]
    else:
        inner[at[-1]] = value
    return made


FIRST = ("features", 0)
SAID = (*FIRST, "properties")
CORNERS = (*FIRST, "geometry", "coordinates", 0)
CLOSED = "4 or more positions, the last the same as the first"

REFUSED = [
    (7, "the request came as 7: an object"),
    ({}, "type came as null: FeatureCollection, of RFC 7946"),
    (PORCH["features"][0], "type came as 'Feature': FeatureCollection, of RFC 7946"),
    (collection(), "features came as a list of 0: from 1 to 200 features"),
    (changed("features", value={}), "features came as an object: a list"),
    (
        changed("crs", value={"type": "name", "properties": {"name": "EPSG:3857"}}),
        "crs.properties.name came as 'EPSG:3857': "
        "left out: GeoJSON is in longitude and latitude on WGS 84",
    ),
    (changed(*FIRST, value=None), "features.0 came as null: an object"),
    (changed(*FIRST, "geometry", value=None), "features.0.geometry came as null: an object"),
    (
        changed(*FIRST, "geometry", "type", value="MultiPolygon"),
        "features.0.geometry.type came as 'MultiPolygon': Polygon, one a plane",
    ),
    (
        changed(*CORNERS[:-1], value=[ring(*SOUTH)] * 2),
        "features.0.geometry.coordinates came as a list of 2: one ring: openings are not read",
    ),
    (
        changed(*CORNERS, value=ring(*SOUTH)[:-1]),
        f"features.0.geometry.coordinates.0 came as a list of 4: {CLOSED}",
    ),
    (
        changed(*CORNERS, value=ring(*SOUTH[:2])),
        f"features.0.geometry.coordinates.0 came as a list of 3: {CLOSED}",
    ),
    (
        changed(*CORNERS, 1, value=[10.0]),
        "features.0.geometry.coordinates.0.1 came as a list of 1: longitude and latitude",
    ),
    (
        changed(*CORNERS, 1, value=[True, "50"]),
        "features.0.geometry.coordinates.0.1.0 came as true: a number",
    ),
    (
        changed(*CORNERS, 1, value=[float("nan"), 50]),
        "features.0.geometry.coordinates.0.1.0 came as nan: a number",
    ),
    (
        changed(*CORNERS, 1, value=[10**400, 50]),
        f"features.0.geometry.coordinates.0.1.0 came as {str(10**400)[:60]}: a number",
    ),
    (
        changed(*CORNERS, 1, value=[181, -91.5]),
        "features.0.geometry.coordinates.0.1.0 came as 181: from -180 to 180 degrees; "
        "features.0.geometry.coordinates.0.1.1 came as -91.5: from -90 to 90 degrees",
    ),
    (
        changed(*CORNERS, 1, value=[10.1, 50]),
        "features.0.geometry came as 23522 ft 2 3/4 in: "
        "at most 3280 ft 10 1/16 in from the first corner of the roof",
    ),
    (
        changed(*CORNERS, value=ring(SOUTH[0], SOUTH[2], SOUTH[1], SOUTH[3])),
        "features.0.geometry.coordinates.0 came as sides 1 and 3 crossing or touching: "
        "sides that meet only at their corners",
    ),
    (changed(*SAID, value=None), "features.0.properties came as null: an object"),
    (
        changed(*SAID, value={"name": 7, "pitch": 0.25, "fall": 180, "eave": 0, "walls": [4, -1]}),
        "features.0.properties.name came as 7: a text; "
        'features.0.properties.pitch came as 0.25: a text, such as "6:12", "26.57 deg" or "50 %"; '
        "features.0.properties.fall came as eave and fall: "
        "one of eave, a side, and fall, a bearing; "
        "features.0.properties.walls.0 came as 4: a whole number from 0 to 3; "
        "features.0.properties.walls.1 came as -1: a whole number from 0 to 3",
    ),
    (
        changed(*SAID, "name", value="half a pair \ud800"),
        "features.0.properties.name came as a name of 13 characters: "
        "at most 60 printable characters",
    ),
    (
        changed(*SAID, "pitch", value="steep"),
        "features.0.properties.pitch came as steep: "
        "a pitch, such as 4:12, 4/12, 18.43 deg or 33.3 %",
    ),
    (
        changed(*SAID, "pitch", value="0.05:12"),
        "features.0.properties.pitch came as 0.05:12: at least 0.1:12 and at most 1000:12",
    ),
    (
        changed(*SAID, "fall"),
        "features.0.properties.fall came as nothing: one of eave, a side, and fall, a bearing",
    ),
    (
        changed(*SAID, "fall", value=174),
        "features.0.properties.fall came as 174: "
        "degrees clockwise from north, within 5 of square to a side below the plane",
    ),
    (
        changed(*SAID, "fall", value=540),
        "features.0.properties.fall came as 540: "
        "degrees clockwise from north, within 5 of square to a side below the plane",
    ),
    (
        changed(*SAID, "walls", value=[0]),
        "features.0.properties.walls came as the eave: sides that do not lie below the surface",
    ),
    (
        collection(
            feature(*SOUTH, pitch="3:12", fall=180, name="porch"),
            feature(*SOUTH[:2], (168, -200), (0, -200), pitch="3:12", fall=90, name="deck"),
        ),
        "features.1 came as a surface off porch along the line that both have: "
        "one height there, not 21 in apart, or its side among walls",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("document", "said"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_refused_and_how_it_is_said(document, said):
    with pytest.raises(Refused) as refused:
        planes_from_geojson(document)
    assert str(refused.value) == said


@pytest.mark.parametrize("value", ["174.9", "185.1"])
def test_a_fall_within_five_degrees_picks_the_eave(value):
    off = changed(*SAID, "fall", value=float(value))
    with pytest.raises(Refused):
        planes_from_geojson(off)
    near = changed(*SAID, "fall", value=180 + 0.98 * (float(value) - 180))
    assert planes_from_geojson(near) == planes_from_geojson(PORCH)


@pytest.mark.parametrize("latitude", [-75, -30, 0, 15, 45, 60, 89])
def test_lengths_on_the_plane_are_those_on_the_ellipsoid(latitude):
    # The arc of the meridian by its integral, that of the parallel by its radius: 30 digits.
    lat, step = radians(latitude), 0.0001 * pi / 180
    with mpmath.workdps(30):
        meridian = mpmath.quad(
            lambda t: RADIUS * (1 - SQUARED) / (1 - SQUARED * mpmath.sin(t) ** 2) ** 1.5,
            [lat, lat + step],
        )
        parallel = RADIUS * mpmath.cos(lat) / mpmath.sqrt(1 - SQUARED * mpmath.sin(lat) ** 2) * step
    _, (_, north), (east, _) = on_tangent_plane([(1.0, lat), (1.0, lat + step), (1.0 + step, lat)])
    assert north * 0.0254 == pytest.approx(float(meridian), rel=1e-9)
    assert east * 0.0254 == pytest.approx(float(parallel), rel=1e-9)


def test_a_kilometre_is_short_by_as_little_as_is_said():
    # Straight through the Earth, between points 1 km from the first and on either side of it.
    step = 1000 / RADIUS
    _, (west, _), (east, _) = on_tangent_plane([(0.0, 0.0), (-step, 0.0), (step, 0.0)])
    assert 0 < 1 - (east - west) * 0.0254 / 2000 < 13e-9
