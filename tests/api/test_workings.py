"""Workings over HTTP: by a query and by a body, as data and as text, in either unit system."""

from __future__ import annotations

import pytest

from roofing_core import Job, SingleSlope, plan, working, working_text

SHED = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}


@pytest.fixture(scope="module")
def shed():
    return plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))


def test_a_working_of_a_query_and_of_a_body_are_the_library_s(client, shed):
    figure = "/order/eave_metal/packs"
    from_query = client.get("/v1/working", params={**SHED, "figure": figure})
    from_body = client.post("/v1/working", json={"roof": SHED, "figure": figure})
    assert from_query.status_code == 200, from_query.text
    assert from_query.json() == from_body.json()
    found, told = working(shed, figure), from_query.json()
    assert told["figure"] == figure
    assert told["result"] == {"value": 2, "unit": "count"}
    assert [line["numbers"] for line in told["lines"]] == [
        line.numbers.written() for line in found.lines
    ]
    put_in = [one for line in told["lines"] for one in line["put_in"]]
    lap = {"value": 6.0, "unit": "in"}
    assert {
        "figure": "/choices/metalwork/lap", "name": "lap", "value": lap, "comes_from": "default",
    } in put_in  # fmt: skip


def test_every_figure_of_a_line_is_where_the_plan_s_answer_has_it(client):
    """Who follows a pointer of a working into the plan finds the same number there."""
    asked = {**SHED, "figure": "/order/underlayment/used_weight", "units": "metric"}
    told = client.get("/v1/working", params=asked).json()
    answer = client.get("/v1/plans", params={**SHED, "units": "metric"}).json()
    seen = 0
    for line in told["lines"]:
        for one in (line, *line["put_in"]):
            if not one["figure"]:
                continue  # a step on the way, which no plan holds
            value = answer
            for name in one["figure"].split("/")[1:]:
                value = value[int(name)] if isinstance(value, list) else value[name]
            number = one.get("value", one.get("result"))["value"]
            assert number == pytest.approx(value, rel=1e-12)
            seen += 1
    assert seen > 6


@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_working_comes_as_text(client, shed, units):
    asked = {**SHED, "figure": "/courses/19/butt", "units": units, "format": "text"}
    answer = client.get("/v1/working", params=asked)
    assert answer.headers["content-type"].startswith("text/plain")
    assert answer.text == working_text(working(shed, "/courses/19/butt"), units)
    accepted = client.post(
        f"/v1/working?units={units}",
        json={"roof": SHED, "figure": "/courses/19/butt"},
        headers={"accept": "text/plain"},
    )
    assert accepted.text == answer.text


def test_one_value_of_a_working_comes_for_a_cell(client):
    asked = {**SHED, "figure": "/courses/19/butt", "pointer": "/lines/0/numbers"}
    assert client.get("/v1/working", params=asked).text == (
        "-(1/4 in + 1/4 in) + (20 - 1) x 5 5/8 in"
    )


@pytest.mark.parametrize("figure", ["/", "/courses/20/butt", "/nonsense", "/courses/0/plane"])
def test_a_figure_without_a_working_is_refused_by_its_name(client, figure):
    from_query = client.get("/v1/working", params={**SHED, "figure": figure})
    from_body = client.post("/v1/working", json={"roof": SHED, "figure": figure})
    assert (from_query.status_code, from_body.status_code) == (422, 422)
    assert from_query.json()["errors"][0]["parameter"] == "figure"
    assert from_body.json()["errors"][0]["pointer"] == "#/figure"
    assert "/courses/" in from_query.json()["errors"][0]["wanted"]


def test_faults_of_the_job_are_told_as_for_its_plan(client):
    wrong = {**SHED, "pitch": "1:12"}
    asked = client.get("/v1/working", params={**wrong, "figure": "/courses/0/butt"})
    planned = client.get("/v1/plans", params=wrong)
    assert asked.status_code == planned.status_code == 422
    assert asked.json()["errors"] == planned.json()["errors"]
