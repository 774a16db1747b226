"""Roofs as a designer's program would write them: drawn in plan, and modelled in space.

Both are made from the corners in space of the planes that a form of roof has, turned so that
nothing lies along an axis.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, degrees, radians, sin, sqrt, tan
from typing import Any

from roofing_core.roof.outlines import RoofPlane, Surfaces

Points = tuple[tuple[float, float, float], ...]

#: Turns that are no part of a right angle, in radians.
TURNS = (0.0, 0.7, 2.0, 3.9)

#: A metre in ten thousand million parts: so finely, a roof is written within 1e-9 in.
FINEST = 1e-10


def turned(points: Points, by: float) -> Points:
    return tuple((x * cos(by) - y * sin(by), x * sin(by) + y * cos(by), z) for x, y, z in points)


def city_model(planes: Sequence[RoofPlane], *, turn: float = 0.0, step: float = FINEST) -> Any:
    """Write planes as the roof surfaces of a building, each vertex once, in steps of a metre."""
    vertices: list[list[int]] = []
    places: dict[tuple[int, ...], int] = {}
    surfaces = []
    for plane in planes:
        ring = []
        for point in turned(plane.points, turn):
            vertex = tuple(round(value * 0.0254 / step) for value in point)
            if vertex not in places:
                places[vertex] = len(vertices)
                vertices.append(list(vertex))
            ring.append(places[vertex])
        surfaces.append([ring])
    semantics = {
        "surfaces": [{"type": "RoofSurface", "name": plane.name} for plane in planes],
        "values": list(range(len(planes))),
    }
    shape = {
        "type": "MultiSurface", "lod": "2.2", "boundaries": surfaces, "semantics": semantics
    }  # fmt: skip
    return {
        "type": "CityJSON",
        "version": "2.0",
        "metadata": {"referenceSystem": "https://www.opengis.net/def/crs/EPSG/0/7415"},
        "transform": {"scale": [step] * 3, "translate": [85_000.0, 446_000.0, 3.5]},
        "CityObjects": {"house": {"type": "Building", "geometry": [shape]}},
        "vertices": vertices,
    }


RADIUS, FLATTENING = 6_378_137.0, 1 / 298.257223563
SQUARED = FLATTENING * (2 - FLATTENING)


def position(x: float, y: float, *, longitude: float, latitude: float) -> list[float]:
    """Give the longitude and latitude of a place some inches east and north of another.

    By the radii of curvature there, with the terms of second order: for 100 ft, within 1e-4 in.
    """
    east, north, lat = x * 0.0254, y * 0.0254, radians(latitude)
    across = RADIUS / sqrt(1 - SQUARED * sin(lat) ** 2)
    along = across * (1 - SQUARED) / (1 - SQUARED * sin(lat) ** 2)
    up = north / along - east**2 * tan(lat) / (2 * along * across)
    right = east / (across * cos(lat)) * (1 + north * tan(lat) / across)
    return [longitude + degrees(right), latitude + degrees(up)]


def plan_drawing(
    found: Surfaces, *, turn: float = 0.0, digits: int = 15, fall: bool = False,
    longitude: float = -96.7, latitude: float = 40.8,
) -> Any:  # fmt: skip
    """Write planes in plan, the eave by its place or by the way that the plane falls."""
    features = []
    for plane in found.planes:
        corners = turned(plane.points, turn)
        ring = [
            [
                round(value, digits)
                for value in position(x, y, longitude=longitude, latitude=latitude)
            ]
            for x, y, _ in corners
        ]
        (ax, ay, _), (bx, by, _) = corners[:2]
        bearing = degrees(atan2(by - ay, ax - bx)) % 360
        walls = [k for k, kind in enumerate(plane.edges) if kind in {"sidewall", "headwall"}]
        properties = {
            "name": plane.name,
            "pitch": f"{12 * plane.pitch:.12f}:12",
            **({"fall": round(bearing)} if fall else {"eave": 0}),
            **({"walls": walls} if walls else {}),
        }
        shape = {"type": "Polygon", "coordinates": [[*ring, ring[0]]]}
        features.append({"type": "Feature", "properties": properties, "geometry": shape})
    return {"type": "FeatureCollection", "features": features}
