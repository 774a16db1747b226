"""One house of an open city model: see city_model/README.md for its source and licence.

Printed: whole millimetres for each vertex, so that a length between two of them is known to 1 mm.
Worked out from those by hand. Its makers fitted the planes to laser points: the eaves come 1 mm
and 4 mm out of level over 10 m, and each line of the roof has corners of the walls on it.
"""

from __future__ import annotations

import json
from math import sqrt
from pathlib import Path

import pytest
from shapely import Polygon

from roofing_core.measures.faults import Refused
from roofing_core.roof.given_planes import given_surfaces
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.reading_cityjson import planes_from_cityjson

MODEL = json.loads(
    Path(__file__).with_name("city_model").joinpath("one_building.city.json").read_text("utf-8")
)
IDENTIFIER = "NL.IMBAG.Pand.0503100000033923"
MM = 10 / 254

#: Vertices are printed to 1 mm; lengths along lines with corners a little off them, twice that.
PRINTED = 1 * MM


def house(building: str = "", lod: str = "") -> Surfaces:
    return given_surfaces(planes_from_cityjson(MODEL, building=building, lod=lod))


def test_the_gable_of_its_finest_level_of_detail_is_taken():
    # Its coarser ones, 1.2 and 1.3, have a flat roof.
    found = house()
    for plane in found.planes:
        assert sorted(plane.edges) == ["eave", "rake", "rake", "ridge"]
    assert house(lod="2.2") == house(building=IDENTIFIER) == found
    with pytest.raises(Refused, match="level surfaces are not read"):
        house(lod="1.3")


def test_the_ridge_is_as_long_as_its_vertices_are_apart():
    # 30.552 435.071 to 39.577 430.717: 9025 and 4354 mm, 10,020.4 mm in all.
    (ridge,) = (line for line in house().lines if line.kind == "ridge")
    assert ridge.length == pytest.approx(10_020.4 * MM, abs=PRINTED)
    assert len(ridge.planes) == 2


def test_the_eaves_are_as_long_as_their_vertices_are_apart():
    # 29.417 432.716 to 38.442 428.360 is 9025 and 4356 mm; 31.654 437.355 to 40.677 432.999 is
    # 9023 and 4356 mm.
    eaves = sorted(line.length for line in house().lines if line.kind == "eave")
    assert eaves == pytest.approx([10_019.5 * MM, 10_021.3 * MM], abs=PRINTED)


def test_the_pitches_are_those_of_their_rise_and_run():
    # From the eaves, at 6.806 and 6.868 to 6.872 m, to the ridge at 10.244 m. The run is half of
    # 5.150 m of gable, 29.417 432.716 to 31.654 437.355, split at 30.552 435.071: 2,614 mm to the
    # eave at 6.806 and 2,536 mm to the other.
    low, high = sorted(house().planes, key=lambda plane: plane.pitch)
    assert low.pitch == pytest.approx(3_438 / 2_614, abs=0.003)
    assert high.pitch == pytest.approx(3_375 / 2_536, abs=0.003)


def test_the_roof_covers_the_ground_surface_of_the_model():
    part = MODEL["CityObjects"][f"{IDENTIFIER}-0"]["geometry"][2]
    corners = [MODEL["vertices"][k][:2] for k in part["boundaries"][0][0][0]]
    ground = Polygon(corners).area * MM**2
    # Levelled by up to 3 mm over 10 m, of 51 m2.
    assert house().plan_area == pytest.approx(ground, rel=0.002)


def test_the_rise_is_within_what_the_laser_saw():
    # Its attributes, left out of the document, told the roof's lowest and highest points: 6.875
    # and 10.253 m. The points fit the planes to 19 mm, they say, root mean square: four times that.
    for plane in house().planes:
        v = max(v for _, v in plane.corners)
        rise = v * plane.pitch / sqrt(1 + plane.pitch**2)
        assert rise / MM == pytest.approx(10_253 - 6_875, abs=4 * 19)
