"""Worked drawings: one roof in each format. They show, and are tested."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

#: A porch at sea, 14 ft along a wall to its north.
PORCH: dict[str, Any] = {
    "type": "FeatureCollection",
    "features": [
        {
            "type": "Feature",
            "properties": {"name": "porch", "pitch": "3:12", "fall": 180, "walls": [2]},
            "geometry": {
                "type": "Polygon",
                "coordinates": [
                    [
                        [-30.0, 45.0],
                        [-29.999945872, 45.0],
                        [-29.999945872, 45.000021941],
                        [-30.0, 45.000021941],
                        [-30.0, 45.0],
                    ]
                ],
            },
        }
    ],
}

#: A shed 20 ft long under a gable roof 16 ft wide, at 6:12, in tenths of a millimetre.
SHED: dict[str, Any] = {
    "type": "CityJSON",
    "version": "2.0",
    "transform": {"scale": [0.0001, 0.0001, 0.0001], "translate": [0.0, 0.0, 0.0]},
    "CityObjects": {
        "shed": {
            "type": "Building",
            "geometry": [
                {
                    "type": "MultiSurface",
                    "lod": "2.2",
                    "boundaries": [[[0, 1, 2, 3]], [[4, 5, 3, 2]]],
                    "semantics": {
                        "surfaces": [
                            {"type": "RoofSurface", "name": "front"},
                            {"type": "RoofSurface", "name": "back"},
                        ],
                        "values": [0, 1],
                    },
                }
            ],
        }
    },
    "vertices": [
        [0, 0, 24384],
        [60960, 0, 24384],
        [60960, 24384, 36576],
        [0, 24384, 36576],
        [60960, 48768, 24384],
        [0, 48768, 24384],
    ],
}

DRAWINGS: Mapping[str, Any] = {"geojson": PORCH, "cityjson": SHED}
