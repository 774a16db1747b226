"""Margins and better sizes over HTTP: by query and by body, as numbers, as text and one by one."""

from __future__ import annotations

import pytest

from roofing_api import aside, sizing
from roofing_core import (
    Between,
    Fit,
    Gable,
    Job,
    Margins,
    Ranges,
    Reading,
    SingleSlope,
    fit,
    fit_text,
    margins,
    margins_text,
)
from tests.api.test_routes import expected

SHED = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
JOB = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12))
ABOUT = {"ranges.eave_length.least": "13 ft", "ranges.eave_length.most": "15 ft"}
RANGES = Ranges(eave_length=Between(least=156, most=180))


@pytest.mark.parametrize("system", ["us", "metric"])
def test_margins_of_a_query_and_of_a_body_are_the_library_s(client, system):
    from_query = client.get("/v1/margins", params={**SHED, "units": system})
    from_body = client.post(f"/v1/margins?units={system}", json={"roof": SHED})
    assert from_query.status_code == 200, from_query.text
    told = from_query.json()
    assert told == from_body.json()
    told.pop("units")
    assert told == expected(margins(JOB), Margins, system)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_sizes_of_a_query_and_of_a_body_are_the_library_s(client, system):
    from_query = client.get("/v1/sizes", params={**SHED, **ABOUT, "units": system})
    body = {"roof": SHED, "ranges": {"eave_length": {"least": "13 ft", "most": "15 ft"}}}
    from_body = client.post(f"/v1/sizes?units={system}", json=body)
    assert from_query.status_code == 200, from_query.text
    told = from_query.json()
    assert told == from_body.json()
    told.pop("units")
    assert told == expected(fit(JOB, ranges=RANGES), Fit, system)


def test_both_come_as_text_and_value_by_value(client):
    for path, more, text in (
        ("/v1/margins", {}, margins_text(margins(JOB))),
        ("/v1/sizes", ABOUT, fit_text(fit(JOB, ranges=RANGES))),
    ):
        answer = client.get(path, params={**SHED, **more, "format": "text"})
        assert answer.headers["content-type"] == "text/plain; charset=utf-8"
        assert answer.text == text
    at = {"pointer": "/measurements/0/more/at/value", "value": "text"}
    assert client.get("/v1/margins", params={**SHED, **at}).text == "1/16 in"
    at = {"pointer": "/better/0/sizes/0/length", "value": "text"}
    assert client.get("/v1/sizes", params={**SHED, **ABOUT, **at}).text == "14 ft 11 in"


def test_a_gable_is_planned_step_by_step_as_far_as_it_may(client):
    body = {
        "roof": {"form": "gable", "length": "10 ft", "width": "7 ft", "pitch": "6:12"},
        "reading": {"most_plans": 6, "step": "1/2 in"},
    }
    told = client.post("/v1/margins", json=body).json()
    gable = Job(roof=Gable(length=120, width=84, pitch=0.5))
    found = margins(gable, reading=Reading(most_plans=6, step=0.5))
    assert told["sizes_looked_at"] == found.sizes_looked_at == 6
    assert told["says"] == found.says.written()


def test_every_fault_has_its_place(client):
    wrong = {
        "roof": SHED,
        "ranges": {"eave_length": {"least": "15 ft", "most": "13 ft"}, "step": "0 in"},
    }
    answer = client.post("/v1/sizes", json=wrong)
    assert answer.status_code == 422
    assert [error["pointer"] for error in answer.json()["errors"]] == [
        "#/ranges/step",
        "#/ranges/eave_length/least",
    ]
    answer = client.get("/v1/sizes", params={**SHED, **ABOUT, "ranges.step": "0.0001 in"})
    (error,) = answer.json()["errors"]
    assert (answer.status_code, error["parameter"]) == (422, "ranges.step")
    assert "at most 20000 sizes" in error["wanted"]
    answer = client.get("/v1/margins", params={**SHED, "reading.reach": "0.01 in"})
    assert answer.json()["errors"][0]["parameter"] == "reading.reach"
    answer = client.get("/v1/margins", params={**SHED, "pitch": "1:12"})
    assert answer.json()["errors"][0]["parameter"] == "pitch"


@pytest.mark.parametrize(
    ("method", "path", "asked"),
    [
        ("get", "/v1/margins", {"params": SHED}),
        ("post", "/v1/margins", {"json": {"roof": SHED}}),
        ("get", "/v1/sizes", {"params": SHED | ABOUT}),
        ("post", "/v1/sizes", {"json": {"roof": SHED, "ranges": {
            "eave_length": {"least": "13 ft", "most": "15 ft"}}}}),
    ],
)  # fmt: skip
def test_all_of_it_is_done_aside(client, monkeypatch, method, path, asked):
    done = []

    async def recorded(answer, *given):
        done.append(answer)
        return await aside.aside(answer, *given)

    monkeypatch.setattr(sizing, "aside", recorded)
    assert getattr(client, method)(path, **asked).status_code == 200
    assert len(done) == 1


def test_a_priced_size_has_its_money_as_texts(client):
    asked = sizing.POSTED_COST.examples["single_slope"]["value"]
    answer = client.post("/v1/priced_sizes", json=asked)
    assert answer.status_code == 200, answer.text
    told = answer.json()
    order = client.post("/v1/orders", json={"job": {"roof": SHED}, "prices": asked["prices"]})
    assert told["wished"]["total"] == order.json()["total"]
    best = {**SHED, "eave_length": f"{told['better'][0]['sizes'][0]['length']} in"}
    order = client.post("/v1/orders", json={"job": {"roof": best}, "prices": asked["prices"]})
    assert told["better"][0]["total"] == order.json()["total"]
    text = client.post("/v1/priced_sizes?format=text", json=asked).text
    assert text.startswith("The least: eave length 14 ft 11 in: ")
    missing = {**asked, "prices": {"currency": "USD"}}
    errors = client.post("/v1/priced_sizes", json=missing).json()["errors"]
    assert "#/prices/shingles" in [error["pointer"] for error in errors]
