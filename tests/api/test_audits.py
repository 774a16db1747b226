"""Audits over HTTP: the answer to a plan goes back in, as it was or edited, in both systems."""

from __future__ import annotations

import json
from copy import deepcopy
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from roofing_api.audits import FORM, LARGEST_PLAN
from roofing_api.strict import parsed
from roofing_api.worked_forms import WITH_A_CHIMNEY
from roofing_core import AuditLimits, Job, SingleSlope, audit, finished, plan
from roofing_core.sheets.audit import audit_text
from tests.api.conftest import ROOF
from tests.api.test_routes import expected

SHED = Job(roof=SingleSlope(eave_length=168.0, slope_length=112.0, pitch=3 / 12))
COLD = {
    "roof": {**ROOF, "pitch": "5:12", "eave_overhang": "12 in"},
    "underlaying": {"ice_barrier": True},
}


@pytest.fixture(scope="module")
def answered(client) -> dict[str, Any]:
    """Give the plan of the example shed as it is answered, under both unit systems."""
    return {
        system: client.post(f"/v1/plans?units={system}", json={"roof": ROOF}).json()
        for system in ("us", "metric")
    }


@pytest.fixture
def answer(answered) -> dict[str, Any]:
    """Give the same in inches, to be edited."""
    return deepcopy(answered["us"])


def numbers(value: Any) -> list[Any]:
    """Give every number and text in a result, in order."""
    if is_dataclass(value):
        return [one for field in fields(value) for one in numbers(getattr(value, field.name))]
    return [one for each in value for one in numbers(each)] if type(value) is tuple else [value]


@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_plan_is_read_back_as_it_was(answered, system):
    read = numbers(FORM.plan(parsed(json.dumps(answered[system]).encode())))
    whole = numbers(finished(plan(SHED)))
    assert len(read) == len(whole) > 1000
    for one, other in zip(read, whole, strict=True):
        exact = isinstance(other, str) or system == "us"
        assert one == (other if exact else pytest.approx(other, rel=1e-12, abs=1e-12))


@pytest.mark.parametrize("shown", ["us", "metric"])
@pytest.mark.parametrize("stated", ["us", "metric"])
def test_a_plan_is_judged_in_either_system_and_the_verdict_told_in_either(
    client, answered, stated, shown
):
    told = client.post(f"/v1/audits?units={shown}", json=answered[stated])
    assert told.status_code == 200, told.text
    found = told.json()
    assert found.pop("units")["system"] == shown
    whole = audit(plan(SHED))
    wanted = expected(whole, type(whole), shown)
    assert found["sheds_water"] is wanted["sheds_water"] is True
    assert found["says"] == wanted["says"]
    assert [one["says"] for one in found["margins"]] == [one["says"] for one in wanted["margins"]]
    for one, other in zip(found["margins"], wanted["margins"], strict=True):
        assert one["value"] == {
            "value": pytest.approx(other["value"]["value"]), "unit": other["value"]["unit"]
        }  # fmt: skip
    assert found["asked"] == wanted["asked"]


def test_a_plan_with_an_ice_barrier_and_one_in_a_large_body(client):
    cold = client.post("/v1/plans", json=COLD).json()
    assert cold["ice_barrier"]["rows"]
    assert client.post("/v1/audits", json=cold).json()["sheds_water"]
    roof = {"eave_length": "250 ft", "slope_length": "30 ft", "pitch": "6:12"}
    large = client.post("/v1/plans", json={"roof": roof}).content
    assert 1_000_000 < len(large) < LARGEST_PLAN
    headers = {"Content-Type": "application/json"}
    assert client.post("/v1/audits", content=large, headers=headers).json()["sheds_water"]


@pytest.fixture
def with_corners(answer) -> dict[str, Any]:
    """Give the same with the corners of one piece written out."""
    piece: dict[str, Any] = answer["courses"][2]["laid"][0]
    piece["corners"] = [[0, 11], [28, 11], [28, 24], [0, 24]]
    return dict(answer)


def edited(answer: dict[str, Any], pointer: str, change: Any) -> dict[str, Any]:
    """Change one value of a plan, or with `...` leave it out."""
    *parts, last = pointer.strip("/").split("/")
    inner: Any = answer
    for part in parts:
        inner = inner[int(part) if isinstance(inner, list) else part]
    at: Any = int(last) if isinstance(inner, list) else last
    if change is ...:
        del inner[at]
    else:
        inner[at] = change
    return answer


@pytest.mark.parametrize(
    ("pointer", "change", "question"),
    [
        ("/courses/4/laid/2", ..., "shingles.layers"),
        ("/courses/4/snap_line", 35.0, "shingles.headlap"),
        ("/courses/4/laid/2/nail_height", 5.0, "shingles.nails_covered"),
        ("/underlayment/rows/3", ..., "underlayment.layers"),
        ("/metal/1/lap_direction", "either", "metal.downhill"),
        ("/metal/0/lengths/1", 50.0, "metal.spans"),
        ("/sealant/dab_volume", 1.7, "sealing.dabs"),
        ("/steps/1/stage", "clean up", "layers.order"),
    ],
)
def test_what_is_edited_is_found(client, answer, pointer, change, question):
    found = client.post("/v1/audits", json=edited(answer, pointer, change)).json()
    assert not found["sheds_water"]
    breaches = {one["question"]: one for one in found["breaches"]}
    assert breaches[question]["place"]["number"] == (5 if pointer.startswith("/courses/4") else 0)
    assert found["breaches_found"] >= len(found["breaches"])
    assert found["says"].startswith("Water can get in at ")


@pytest.mark.parametrize(
    ("pointer", "change", "question"),
    [
        ("/caps/0", ..., "caps.spans"),
        ("/caps/0/starts_at", "lower", "caps.downhill"),
        ("/caps/0/half_width", 0.5, "shingles.nails_covered"),
        ("/openings/1/aprons", [], "flashings.around"),
        ("/openings/1/crickets/0/metal_area", 1.0, "flashings.cricket_lap"),
        ("/openings/0/pipes/0/side_flange", 1.0, "flashings.pipe"),
        ("/step_flashings/0/pieces/1", ..., "flashings.spans"),
        ("/step_flashings/1/pieces/2/course", 1, "flashings.steps"),
        ("/courses/3/nailable", False, "sealing.dabs"),
    ],
)
def test_what_is_edited_on_a_roof_with_openings_is_found(client, pointer, change, question):
    body = client.post("/v1/plans", json=WITH_A_CHIMNEY).json()
    whole = client.post("/v1/audits", json=body).json()
    assert whole["sheds_water"]
    told = " ".join(whole["not_judged"])
    assert all(word in told for word in ("words", "wind", "sealant", "siding", "cricket"))
    found = client.post("/v1/audits", json=edited(body, pointer, change)).json()
    assert not found["sheds_water"]
    assert question in {one["question"] for one in found["breaches"]}


def test_a_plan_from_before_it_kept_what_was_measured_is_judged_alike(client, answer):
    older = {name: value for name, value in answer.items() if name != "as_measured"}
    assert answer["as_measured"]["roof"]["form"] == "single_slope"
    told, newer = (client.post("/v1/audits", json=plan) for plan in (older, answer))
    assert told.status_code == 200
    assert told.content == newer.content


def test_what_the_audit_does_not_look_at_may_say_anything_or_be_left_out(client, answer):
    verdict = client.post("/v1/audits", json=answer).content
    answer["courses"][3]["clearance"] = "wide enough"
    del answer["order"], answer["findings"], answer["courses"][5]["overhang"]
    for row in answer["underlayment"]["rows"]:
        row.pop("plane", None)  # an earlier answer had no planes
    for course in answer["courses"]:
        course.pop("nailable")  # nor was this read
    assert client.post("/v1/audits", json=answer).content == verdict


REFUSED = [
    ("/units", ..., "it is needed"),
    ("/units", {"system": "imperial"}, "`system` us or metric"),
    ("/units", {"system": "us", "length": "mm"}, "the units as an answer in us has them"),
    ("/courses", {}, "a JSON list"),
    ("/courses/2/laid/0", 5, "a JSON object"),
    ("/courses/2/laid/0/left", ..., "it is needed. Where it begins."),
    ("/courses/2/laid/0/left", "1/4 in", "a number in the unit that the plan states (in)"),
    ("/courses/2/laid/0/left", None, "a number in the unit that the plan states (in)"),
    ("/courses/2/laid/0/left", 1e300, "a number in the unit that the plan states (in)"),
    ("/courses/2/laid/0/nails/1", True, "a number in the unit that the plan states (in)"),
    ("/courses/2/number", 2.5, "a whole number"),
    ("/courses/2/nailable", "yes", "true or false"),
    ("/courses/2/plane", "north", "one of the planes: slope"),
    ("/courses/2/laid/0/nail", [], "one of the names known here, the nearest: nails"),
    ("/courses/2/laid/0/right", -20, "more than -1/4 in"),
    ("/courses/2/laid/0/corners", [[1, 2], [3, 4]], "3 corners or more"),
    ("/courses/2/laid/0/corners/0", [1, 2, 3], "a list of at most 2"),
    ("/courses/2/laid/0/corners/1", [1], "a list of at least 2"),
    ("/courses/2/snap_line", 0, "more than 10 3/4 in"),
    ("/planes/0/edges/1", "verge", "one of eave, rake"),
    ("/planes/0/beyond", [], "as many as corners, 4"),
    ("/underlayment/rows/1/upper", -10, "more than -1/4 in"),
    ("/metal/0/laps", [], "one less than pieces, of which there are 2"),
    ("/choices/sealing/dab_diameter", 0, "more than zero"),
    ("/sealant/dab_volume", -1, "zero or more"),
]


@pytest.mark.parametrize(("pointer", "change", "wanted"), REFUSED)
def test_what_is_no_plan_is_refused_and_its_place_named(
    client, with_corners, pointer, change, wanted
):
    told = client.post("/v1/audits", json=edited(with_corners, pointer, change))
    assert told.status_code == 422, told.text
    [error, *_] = told.json()["errors"]
    assert error["pointer"].startswith(f"#{pointer}")
    assert wanted in error["wanted"]


@pytest.mark.parametrize("text", ["NaN", "-Infinity", "1e999", '"5"'])
def test_what_is_no_number_of_json_is_no_number(client, answer, text):
    body = json.dumps(answer).replace('"butt": 5.125', f'"butt": {text}', 1)
    headers = {"Content-Type": "application/json"}
    told = client.post("/v1/audits", content=body, headers=headers)
    assert told.status_code == 422
    [error] = told.json()["errors"]
    assert error["pointer"] == "#/courses/1/butt"


def test_several_faults_are_told_at_once(client, answer):
    del answer["metal"][0]["laps"]
    answer["courses"][3]["laid"][1]["left"] = None
    told = client.post("/v1/audits", json=answer).json()["errors"]
    assert [one["pointer"] for one in told] == ["#/metal/0/laps", "#/courses/3/laid/1/left"]


def test_the_limits_are_the_querys(client, answer):
    asked = client.post("/v1/audits?headlap=3in&joint_clearance=100mm", json=answer).json()
    wanted = audit(plan(SHED), limits=AuditLimits(headlap=3.0, joint_clearance=1000 / 254))
    assert asked["breaches_found"] == wanted.breaches_found > 0
    limits = {one["question"]: one["limit"]["value"] for one in asked["margins"]}
    assert limits["shingles.headlap"] == 3
    assert limits["shingles.joints"] == pytest.approx(1000 / 254)
    refused = client.post("/v1/audits?headlap=-1in", json=answer)
    assert refused.status_code == 422
    assert refused.json()["errors"][0]["parameter"] == "headlap"


def test_an_audit_as_text_and_one_value_of_it(client, answer):
    text = client.post("/v1/audits?format=text&units=metric", json=answer).text
    assert text == audit_text(audit(plan(SHED)), "metric")
    assert "headlap 51 mm" in text
    assert client.post("/v1/audits?pointer=/sheds_water", json=answer).text == "true"
    broken = edited(answer, "/courses/4/laid/2", ...)
    text = client.post("/v1/audits", json=broken, headers={"Accept": "text/plain"}).text
    assert text.startswith("WATER CAN GET IN AT ")
    assert "\nWHAT FAILS, AND WHERE\n" in text
