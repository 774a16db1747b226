"""Drawings over HTTP: what comes out can be sent on as it is; what is wrong is told by place."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from roofing_api.worked_drawings import PORCH, SHED
from roofing_core.roof.given_planes import given_surfaces
from roofing_core.roof.reading_drawings import planes_from_drawing

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
COTTAGES = ("cottage.geojson", "cottage.city.json")
KINDS = {
    "application/json": (PORCH, SHED),
    "application/geo+json": (PORCH,),
    "Application/City+JSON; charset=utf-8": (SHED,),
}


def post(client, drawing, query="", kind="application/json", **headers):
    body = drawing if isinstance(drawing, bytes | str) else json.dumps(drawing)
    said = {"Content-Type": kind, **headers}
    return client.post(f"/v1/planes{query}", content=body, headers=said)


@pytest.mark.parametrize(
    ("kind", "drawing"), [(kind, one) for kind, drawings in KINDS.items() for one in drawings]
)
def test_each_format_under_its_own_media_type_and_as_plain_json(client, kind, drawing):
    answer = post(client, drawing, kind=kind)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "application/json"
    planes = planes_from_drawing(drawing).planes
    assert [one["name"] for one in answer.json()["roof"]["planes"]] == [one.name for one in planes]


def test_how_the_roof_is_spelt(client):
    front, _ = post(client, SHED).json()["roof"]["planes"]
    assert front["corners"][:2] == [["0 in", "0 in"], ["20 ft", "0 in"]]
    # 8 ft of run at 6:12 is 107.331 in up the slope.
    assert front["corners"][2][1].startswith("107.331")
    assert front["corners"][2][1].endswith(" in")
    assert front["edges"] == ["eave", "rake", "ridge", "rake"]
    assert (front["pitch"], front["beyond"]) == ("6:12", ["", "", "back", ""])


@pytest.mark.parametrize("query", ["", "?units=metric"])
@pytest.mark.parametrize("name", COTTAGES)
def test_the_answer_sent_on_is_the_roof_that_was_drawn(client, name, query):
    drawing = (EXAMPLES / name).read_bytes()
    found = given_surfaces(planes_from_drawing(json.loads(drawing)))
    again = client.post("/v1/surfaces", json=post(client, drawing, query).json())
    assert again.status_code == 200, again.text
    assert again.json()["squares"] == pytest.approx(found.squares, rel=1e-11)
    for line, before in zip(again.json()["lines"], found.lines, strict=True):
        assert (line["kind"], line["planes"]) == (before.kind, list(before.planes))
        assert line["length"] == pytest.approx(before.length, abs=1e-8)


def test_what_is_taken_of_a_model(client):
    roof = post(client, SHED, "?eave_overhang=1ft&building=shed&lod=2.2&unit=ft").json()["roof"]
    assert roof["eave_overhang"] == "12 in"
    # 6.096 units, read as feet.
    assert roof["planes"][0]["corners"][1] == ["73.152 in", "0 in"]


def no(client, *asked, status=422, **more):
    answer = post(client, *asked, **more)
    assert answer.status_code == status, answer.text
    assert answer.headers["content-type"] == "application/problem+json"
    return answer.json()


def changed(drawing, before, after):
    text = drawing if isinstance(drawing, str) else json.dumps(drawing)
    assert before in text
    return text.replace(before, after, 1)


#: A drawing, its query, where, what came, what is wanted.
REFUSED = [
    (
        changed(PORCH, '"3:12"', "0.25"),
        "",
        {"pointer": "#/features/0/properties/pitch"},
        "0.25",
        'a text, such as "6:12", "26.57 deg" or "50 %"',
    ),
    (
        changed(PORCH, "45.0]", "1e400]"),
        "",
        {"pointer": "#/features/0/geometry/coordinates/0/0/1"},
        "1e400",
        "a number",
    ),
    (
        changed(PORCH, "45.0]", "NaN]"),
        "",
        {"pointer": "#/features/0/geometry/coordinates/0/0/1"},
        "NaN",
        "a number",
    ),
    (
        changed(SHED, "[60960, 0", f"[{'9' * 5000}, 0"),
        "",
        {"pointer": "#/vertices/1/0"},
        f"{'9' * 57}...",
        "a number",
    ),
    (
        changed(SHED, "[0, 1, 2, 3]", "[0, 1, 2.0, 3]"),
        "",
        {"pointer": "#/CityObjects/shed/geometry/0/boundaries/0/0/2"},
        "2.0",
        "a whole number from 0 to 5",
    ),
    (
        changed(SHED, '"shed"', '"a/b"'),
        "?lod=1",
        {"pointer": "#/CityObjects"},
        "0 surfaces of type RoofSurface",
        "from 1 to 200 in the semantics; a building and a lod can be picked",
    ),
    (
        changed(changed(SHED, '"shed"', '"a/b"'), "2.2", "two"),
        "",
        {"pointer": "#/CityObjects/a~1b/geometry/0/lod"},
        "two",
        'a level of detail, such as "2.2"',
    ),
    (SHED, "?building=barn", {"parameter": "building"}, "barn", "the identifier of a city object"),
    (PORCH, "?unit=ft", {"parameter": "unit"}, "ft", "left out: it is of CityJSON alone"),
    (PORCH, "?unit=yd", {"parameter": "unit"}, "yd", "one of m, ft, us_ft"),
    (
        PORCH,
        "?eave_overhang=-1ft",
        {"parameter": "eave_overhang"},
        "-1ft",
        "zero or more and at most 100000 ft",
    ),
    ("[]", "", {"pointer": "#"}, "a list of 0", "an object"),
    ("null", "", {"pointer": "#"}, "null", "an object"),
    ('{"type": []}', "", {"pointer": "#/type"}, "a list of 0", "FeatureCollection or CityJSON"),
]


@pytest.mark.parametrize("case", REFUSED, ids=range(len(REFUSED)))
def test_what_is_wrong_is_told_by_its_place(client, case):
    drawing, query, place, came, wanted = case
    (error,) = no(client, drawing, query)["errors"]
    del error["detail"]
    assert error == {**place, "came": came, "wanted": wanted}


def test_a_parameter_that_is_not_known(client):
    (error,) = no(client, PORCH, "?bilding=shed")["errors"]
    assert error["parameter"] == "bilding"
    assert "the nearest: building" in error["wanted"]


def test_metric_refusals(client):
    vertices = changed(SHED, "36576]", "30000]")
    told = no(client, vertices, "?units=metric")["errors"]
    assert {one["pointer"] for one in told} == {
        f"#/CityObjects/shed/geometry/0/boundaries/{place}" for place in (0, 1)
    }
    assert all(one["wanted"] == "corners within 13 mm of one plane" for one in told)
    assert all(one["came"].endswith(" mm") for one in told)


def test_other_bodies_and_answers(client):
    told = no(client, PORCH, kind="text/plain", status=415)
    assert told["detail"] == (
        "Content-Type came as text/plain: application/json or application/geo+json or "
        "application/city+json is what is read here"
    )
    no(client, PORCH, Accept="image/png", status=406)
    no(client, "{", status=400)
    no(client, b"\xff", status=400)
    no(client, "[" * 900, status=400)
    no(client, " " * 1_000_001, status=413)
    assert client.get("/v1/planes").status_code == 405
    deep = '{"type": "FeatureCollection", "features": [{"x": ' + "[" * 900 + "]" * 900 + "}]}"
    assert post(client, deep).status_code in (400, 422)


def test_json_is_what_is_read_elsewhere(client):
    answer = client.post(
        "/v1/plans", content="{}", headers={"Content-Type": "application/geo+json"}
    )  # fmt: skip
    assert answer.status_code == 415
