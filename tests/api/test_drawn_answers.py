"""Drawings over HTTP: which one, how it is asked for, and what is said where there is none."""

from __future__ import annotations

from typing import get_args

import pytest

from roofing_core import Hip, Job, SingleSlope, drawings, plan, roof_plan, surfaces
from roofing_core.sheets.drawings.all import DrawingKind

QUERY = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
HIP = {"form": "hip", "length": "36 ft", "width": "24 ft", "pitch": "6:12"}
SVG = {"Accept": "image/svg+xml"}
PLANNED = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)))

#: What browsers send for the picture of an `img` element.
OF_AN_IMG = "image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8"


def test_a_plan_is_drawn_however_it_is_asked_for(client):
    (drawn,) = drawings(PLANNED, "plane")
    for answer in (
        client.get("/v1/plans", params=QUERY, headers=SVG),
        client.get("/v1/plans", params=QUERY, headers={"Accept": OF_AN_IMG}),
        client.get("/v1/plans", params={**QUERY, "format": "svg"}),
        client.get("/v1/plans", params={**QUERY, "drawing": "plane"}),
        client.post("/v1/plans?format=svg", json={"roof": QUERY}),
        client.post("/v1/plans", json={"roof": QUERY}, headers=SVG),
    ):
        assert answer.status_code == 200
        assert answer.headers["content-type"] == "image/svg+xml"
        assert answer.headers["content-security-policy"] == "default-src 'none'"
        assert answer.headers["vary"] == "Accept"
        assert answer.text == drawn.svg


@pytest.mark.parametrize("kind", get_args(DrawingKind))
def test_every_drawing_and_every_page_of_it_can_be_had(client, kind):
    pages = drawings(PLANNED, kind, system="metric")
    for number, page in enumerate(pages, 1):
        asked = {**QUERY, "drawing": kind, "page": str(number), "units": "metric"}
        assert client.get("/v1/plans", params=asked).text == page.svg


@pytest.mark.parametrize(
    ("page", "wanted"),
    [
        ("0", "a page from 1"),
        ("-1", "a whole number under a billion, such as 20"),
        ("one", "a whole number under a billion, such as 20"),
        ("6", "a page from 1 to 5"),
        ("999999999", "a page from 1 to 5"),
    ],
)
def test_a_page_that_there_is_not_is_told_by_its_name(client, page, wanted):
    asked = {"drawing": "story_pole", "page": page}
    for answer in (
        client.get("/v1/plans", params={**QUERY, **asked}),
        client.post("/v1/plans", params=asked, json={"roof": QUERY}),
    ):
        assert answer.status_code == 422
        (error,) = answer.json()["errors"]
        assert (error["parameter"], error["came"]) == ("page", page)
        assert error["wanted"] == wanted


def test_a_drawing_that_there_is_not_is_told_with_those_that_there_are(client):
    answer = client.get("/v1/plans", params={**QUERY, "drawing": "elevation"})
    assert answer.status_code == 422
    (error,) = answer.json()["errors"]
    assert error["parameter"] == "drawing"
    assert error["wanted"] == f"one of {', '.join(get_args(DrawingKind))}"


@pytest.mark.parametrize("kind", ["caps", "flashings"])
def test_a_drawing_that_would_be_empty_is_refused_by_its_name(client, kind):
    for answer in (
        client.get("/v1/plans", params={**QUERY, "drawing": kind}),
        client.post("/v1/plans", params={"drawing": kind}, json={"roof": QUERY}),
    ):
        assert answer.status_code == 422
        (error,) = answer.json()["errors"]
        assert (error["parameter"], error["came"]) == ("drawing", kind)
        assert error["wanted"].startswith("another drawing")


def test_a_roof_of_several_planes_is_drawn_plane_by_plane(client):
    planned = plan(Job(roof=Hip(length=432, width=288, pitch=0.5)))
    for number, page in enumerate(drawings(planned, "plane"), 1):
        asked = {**HIP, "drawing": "plane", "page": str(number)}
        assert client.get("/v1/plans", params=asked).text == page.svg
    assert client.get("/v1/plans", params={**HIP, "drawing": "caps"}).status_code == 200


def test_parameters_go_before_each_other_and_before_the_header(client):
    drawn = {**QUERY, "drawing": "plane"}
    json = client.get("/v1/plans", params={**drawn, "format": "json"}, headers=SVG)
    assert json.json()["shingles"]["shingles"] == 100
    pointed = client.get("/v1/plans", params={**drawn, "pointer": "/shingles/shingles"})
    assert (pointed.text, pointed.headers["content-type"]) == ("100", "text/plain; charset=utf-8")


def test_a_picture_of_dots_is_not_offered(client):
    answer = client.get("/v1/plans", params=QUERY, headers={"Accept": "image/png"})
    assert answer.status_code == 406
    for offer in ("application/json", "text/plain", "image/svg+xml"):
        assert offer in answer.json()["detail"]
    assert client.get("/v1/pitch?pitch=4:12", headers=SVG).status_code == 406
    assert client.get("/v1/pitch?pitch=4:12&drawing=plane").status_code == 422


def test_each_drawing_has_a_tag_of_its_own(client):
    tags = set()
    for asked in ({"format": "svg"}, {"drawing": "rolls"}, {"drawing": "sections"}, {}):
        first = client.get("/v1/plans", params={**QUERY, **asked})
        told = {"If-None-Match": first.headers["etag"]}
        assert client.get("/v1/plans", params={**QUERY, **asked}, headers=told).status_code == 304
        tags.add(first.headers["etag"])
    assert len(tags) == 4


def test_the_shape_of_any_roof_is_drawn_from_above(client):
    hip = surfaces(Hip(length=432, width=288, pitch=0.5))
    for units in ("us", "metric"):
        drawn = roof_plan(hip.planes, hip.lines, system=units).svg
        asked = {"units": units, "format": "svg"}
        assert client.get("/v1/surfaces", params={**HIP, **asked}).text == drawn
        assert client.post("/v1/surfaces", params=asked, json={"roof": HIP}).text == drawn


def test_what_cannot_be_built_is_refused_and_not_drawn(client):
    answer = client.get("/v1/plans", params={**QUERY, "pitch": "1:12", "format": "svg"})
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
