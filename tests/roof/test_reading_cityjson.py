"""CityJSON: what is read of it, what is refused, and in which words."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.forms import Gable
from roofing_core.roof.given_planes import given_surfaces
from roofing_core.roof.reading_cityjson import planes_from_cityjson
from roofing_core.roof.whole_roof import surfaces
from tests.roof.drawings import city_model

#: A house 20 ft long and 16 ft wide under a gable roof at 6:12, in inches: floor, eaves, ridge.
HOUSE = [
    *([0, 0, 0], [240, 0, 0], [240, 192, 0], [0, 192, 0]),
    *([0, 0, 96], [240, 0, 96], [240, 192, 96], [0, 192, 96]),
    *([0, 96, 144], [240, 96, 144]),
]
SHELL = [
    [[0, 3, 2, 1]],
    [[4, 5, 9, 8]],
    [[6, 7, 8, 9]],
    [[0, 1, 5, 4]],
    [[1, 2, 6, 9, 5]],
    [[2, 3, 7, 6]],
    [[3, 0, 4, 8, 7]],
]
KINDS = [{"type": "GroundSurface"}, {"type": "RoofSurface"}, {"type": "WallSurface"}]
VALUES = [0, 1, 1, 2, 2, 2, 2]

#: A lean-to of 10 ft against its front wall, 2 ft below the eave; its top runs on past the corner.
LEAN_TO = [[120, -72, 48], [300, -72, 48], [300, 0, 72], [120, 0, 72]]


def solid(*, values: Any = VALUES, kinds: Any = KINDS, lod: Any = "2") -> dict[str, Any]:
    return {
        "type": "Solid",
        "lod": lod,
        "boundaries": [SHELL],
        "semantics": {"surfaces": kinds, "values": [values]},
    }


def model(*, vertices: Any = HOUSE, **objects: Any) -> dict[str, Any]:
    return {
        "type": "CityJSON",
        "version": "1.1",
        "transform": {"scale": [0.0254] * 3, "translate": [0, 0, 0]},
        "CityObjects": objects or {"house": {"type": "Building", "geometry": [solid()]}},
        "vertices": vertices,
    }


def edges(document: Any, **picked: Any) -> dict[str, tuple[str, ...]]:
    return {
        plane.name: plane.edges
        for plane in given_surfaces(planes_from_cityjson(document, **picked)).planes
    }


GABLE = ("eave", "rake", "ridge", "rake")


def test_a_house_as_a_solid():
    found = given_surfaces(planes_from_cityjson(model()))
    gable = surfaces(Gable(length=240, width=192, pitch=0.5))
    assert edges(model()) == {"roof 1": GABLE, "roof 2": GABLE}
    assert found.area == pytest.approx(gable.area, rel=1e-9)


def lean_to(**said: Any) -> dict[str, Any]:
    # Its own corners come after those of the house, and of the wall that goes on past the house.
    shape = {
        "type": "MultiSurface", "lod": "2", "boundaries": [[[10, 11, 12, 13]]],
        "semantics": {"surfaces": [{"type": "RoofSurface", **said}], "values": [0]},
    }  # fmt: skip
    return {"type": "BuildingPart", "parents": ["house"], "geometry": [shape]}


def test_a_lean_to_ends_against_the_wall_of_the_house_as_far_as_that_goes():
    # The wall of the house above the lean-to, 120 in along it and up to the eave at 96 in.
    above = [[120, 0, 72], [240, 0, 72], [240, 0, 96], [120, 0, 96]]
    wall = solid()
    wall["boundaries"] = [[*SHELL, [[14, 15, 16, 17]]]]
    wall["semantics"]["values"] = [[*VALUES, 2]]
    document = model(
        vertices=[*HOUSE, *LEAN_TO, *above],
        house={"type": "Building", "geometry": [wall], "children": ["porch"]},
        porch=lean_to(name="lean-to"),
    )
    porch = next(
        plane
        for plane in given_surfaces(planes_from_cityjson(document)).planes
        if plane.name == "lean-to"
    )
    assert porch.edges == ("eave", "rake", "ridge", "headwall", "rake")
    assert porch.lengths == pytest.approx((180, 75.894664, 60, 120, 75.894664))
    # Alone, with no wall in sight, its top edge ends free.
    assert edges(document, building="porch")["lean-to"] == GABLE


def test_a_building_is_read_with_its_children():
    document = model(
        vertices=[*HOUSE, *LEAN_TO],
        house={"type": "Building", "geometry": [solid()], "children": ["porch"]},
        porch=lean_to(),
    )
    assert list(edges(document)) == ["roof 1", "roof 2", "roof 3"]
    assert list(edges(document, building="house")) == ["roof 1", "roof 2", "roof 3"]
    assert list(edges(document, building="porch")) == ["roof 1"]


def test_surfaces_of_one_name_are_told_apart():
    kinds: list[Any] = [KINDS[0], {"type": "RoofSurface", "name": "main"}, KINDS[2]]
    named = model(house={"type": "Building", "geometry": [solid(kinds=kinds)]})
    assert list(edges(named)) == ["main", "main #2"]
    # A name that is no text is a member of somebody else's.
    kinds[1] = {"type": "RoofSurface", "name": ["main"]}
    assert list(edges(named)) == ["roof 1", "roof 2"]


def test_the_highest_level_of_detail_with_a_roof_is_taken():
    low = solid(lod="1.2")
    bare = {**solid(lod="3"), "semantics": {"surfaces": [], "values": None}}
    shapes = {
        "house": {"type": "Building", "geometry": [low, bare, solid(lod="2.2"), solid(lod=1)]}
    }
    assert len(edges(model(**shapes))) == 2
    assert edges(model(**shapes), lod="1.2") == edges(model(**shapes))
    with pytest.raises(Refused, match="0 surfaces of type RoofSurface"):
        planes_from_cityjson(model(**shapes), lod="3")


@pytest.mark.parametrize(
    "kind", ["MultiSurface", "CompositeSurface", "MultiSolid", "CompositeSolid"]
)
def test_other_geometries_nest_less_or_more(kind):
    shape = solid()
    shape["type"] = kind
    deeper = kind.endswith("Solid")
    shape["boundaries"] = [[SHELL]] if deeper else SHELL
    shape["semantics"]["values"] = [[VALUES]] if deeper else VALUES
    assert edges(model(house={"type": "Building", "geometry": [shape]})) == edges(model())


def test_points_templates_and_what_means_nothing_are_passed_over():
    more = [
        {"type": "MultiPoint", "lod": "0", "boundaries": [0, 1]},
        {"type": "GeometryInstance", "template": 0, "boundaries": [0]},
        {"type": "MultiSurface", "lod": "2", "boundaries": [[[0, 3, 2, 1]]]},
    ]
    thing = {"type": "CityFurniture"}
    document = model(
        bench=thing,
        house={"type": "Building", "geometry": [*more, solid(values=[None, *VALUES[1:]])]},
    )
    assert edges(document) == edges(model())


@pytest.mark.parametrize(
    ("unit", "inches"), [("m", 10_000 / 254), ("ft", 12), ("us_ft", 12.000024)]
)
def test_coordinates_in_feet(unit, inches):
    # A survey foot is 1200/3937 m: 12.000024 in, to six places.
    document = model()
    document["transform"]["scale"] = [1 / 12] * 3
    plane = planes_from_cityjson(document, unit=unit).planes[0]
    assert plane.corners[1][0] - plane.corners[0][0] == pytest.approx(20 * inches, rel=1e-9)


def test_both_names_of_a_reference_system_are_read():
    for name in ("urn:ogc:def:crs:EPSG::7415", "http://www.opengis.net/def/crs/EPSG/0/7415"):
        document = {**model(), "metadata": {"referenceSystem": name}}
        assert edges(document) == edges(model())


def changed(*at: Any, value: Any = ..., top: Any = None) -> Any:
    made = deepcopy(top or model())
    inner = made
    for part in at[:-1]:
        inner = inner[part]
    if value is ...:
        del inner[at[-1]]
    else:
        inner[at[-1]] = value
    return made


SHAPE = ("CityObjects", "house", "geometry", 0)
SURFACE = (*SHAPE, "boundaries", 0, 1)
SYSTEMS = "http://www.opengis.net/def/crs"
PROJECTED = "a projected system: degrees are not read here"
LOD = 'a level of detail, such as "2.2"'

REFUSED: list[tuple[Any, str]] = [
    ([], "the request came as a list of 0: an object"),
    (changed("type", value="CityJSONFeature"), "type came as 'CityJSONFeature': CityJSON"),
    (changed("version", value="1.0"), "version came as '1.0': 1.1 or 2.0"),
    (changed("metadata", value=[]), "metadata came as a list of 0: an object"),
    (
        changed("metadata", value={"referenceSystem": 28992}),
        "metadata.referenceSystem came as 28992: "
        "an OGC name, such as https://www.opengis.net/def/crs/EPSG/0/7415",
    ),
    *(
        (
            changed("metadata", value={"referenceSystem": f"{SYSTEMS}/{code}"}),
            f"metadata.referenceSystem came as '{SYSTEMS}/{code}': {PROJECTED}",
        )
        for code in ("EPSG/0/4979", "OGC/1.3/CRS84", "EPSG/0/4978")
    ),
    (changed("transform"), "transform came as null: an object"),
    (changed("transform", "scale"), "transform.scale came as null: a list"),
    (
        changed("transform", "scale", value=[1, 1]),
        "transform.scale came as a list of 2: three numbers",
    ),
    (
        changed("transform", "scale", value=[1, 1, 0]),
        "transform.scale came as a list of 3: three numbers over zero",
    ),
    (
        changed("transform", "scale", value=[1e-9] * 3),
        "vertices came as 0 in: a roof at least 12 in long: coordinates in metres or feet",
    ),
    (changed("vertices"), "vertices came as null: a list"),
    (changed("CityObjects"), "CityObjects came as null: an object"),
    (changed("CityObjects", "house", value=7), "CityObjects.house came as 7: an object"),
    (
        changed("CityObjects", "house", "geometry", value=[]),
        "CityObjects came as 0 surfaces of type RoofSurface: "
        "from 1 to 200 in the semantics; a building and a lod can be picked",
    ),
    (changed(*SHAPE, "lod", value="two"), f"CityObjects.house.geometry.0.lod came as 'two': {LOD}"),
    (changed(*SHAPE, "lod", value=True), f"CityObjects.house.geometry.0.lod came as true: {LOD}"),
    (
        changed(*SHAPE, "boundaries", value=[]),
        "CityObjects.house.geometry.0.semantics.values came as a list of 1: "
        "0 of them, as many as boundaries",
    ),
    (
        changed(*SHAPE, "semantics", "values", 0, 1, value=3),
        "CityObjects.house.geometry.0.semantics.values.0.1 came as 3: a whole number from 0 to 2",
    ),
    (
        changed(*SHAPE, "semantics", "surfaces", value=["RoofSurface"] * 3),
        "CityObjects.house.geometry.0.semantics.surfaces.0 came as 'RoofSurface': an object",
    ),
    (
        changed(*SHAPE, "semantics", "surfaces", 1, "name", value="x" * 61),
        "CityObjects.house.geometry.0.semantics.surfaces.1.name came as a name of 61 characters: "
        "at most 60 printable characters",
    ),
    (
        changed(*SURFACE, value=[[4, 5, 9, 8], [0, 1, 2]]),
        "CityObjects.house.geometry.0.boundaries.0.1 came as a list of 2: "
        "one ring: openings are not read",
    ),
    (
        changed(*SURFACE, 0, value=[4, 5]),
        "CityObjects.house.geometry.0.boundaries.0.1.0 came as a list of 2: from 3 to 1000 corners",
    ),
    (
        changed(*SURFACE, 0, 2, value=10),
        "CityObjects.house.geometry.0.boundaries.0.1.0.2 came as 10: a whole number from 0 to 9",
    ),
    (changed("vertices", 9, value=[1, 2]), "vertices.9 came as a list of 2: x, y and height"),
    (changed("vertices", 9, 2, value="144"), "vertices.9.2 came as '144': a number"),
    (
        changed("vertices", 9, 2, value=140),
        "CityObjects.house.geometry.0.boundaries.0.1 came as 7/8 in: "
        "corners within 1/2 in of one plane; "
        "CityObjects.house.geometry.0.boundaries.0.2 came as 7/8 in: "
        "corners within 1/2 in of one plane",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("document", "said"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_refused_and_how_it_is_said(document, said):
    with pytest.raises(Refused) as refused:
        planes_from_cityjson(document)
    assert str(refused.value) == said


@pytest.mark.parametrize(
    ("picked", "said"),
    [
        ({"building": "shed"}, "building came as 'shed': the identifier of a city object"),
        ({"lod": "fine"}, "lod came as 'fine': a level of detail, such as 2.2"),
    ],
)
def test_what_cannot_be_picked(picked, said):
    with pytest.raises(Refused) as refused:
        planes_from_cityjson(model(), **picked)
    assert str(refused.value) == said


def test_a_child_that_is_not_there():
    document = changed("CityObjects", "house", "children", value=["shed", []])
    with pytest.raises(Refused) as refused:
        planes_from_cityjson(document, building="house")
    assert str(refused.value) == (
        "CityObjects.house.children.0 came as 'shed': the identifier of a city object"
    )


def test_objects_that_are_children_of_each_other_are_read_once():
    document = model(
        house={"type": "Building", "geometry": [solid()], "children": ["part"]},
        part={"type": "BuildingPart", "children": ["house"]},
    )
    assert edges(document, building="part") == edges(model())


def test_a_model_of_too_many_surfaces_says_how_many():
    planes = surfaces(Gable(length=240, width=192, pitch=0.5)).planes
    with pytest.raises(Refused, match="202 surfaces of type RoofSurface: from 1 to 200"):
        planes_from_cityjson(city_model([*planes] * 101))
