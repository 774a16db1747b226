"""The OpenAPI document: valid, complete, as committed, and its examples as the service answers."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass
from inspect import signature
from typing import Annotated, get_args, get_origin, get_type_hints

import pytest
from openapi_schema_validator import OAS31Validator
from openapi_spec_validator import validate

from roofing_api import openapi, plans, routes, surfaces
from roofing_api.app import app, make_app
from roofing_api.docstrings import docs
from roofing_api.document import document, written
from roofing_api.inputs import inputs_of
from roofing_api.operations import worked
from roofing_api.values import as_written
from roofing_core.job.choices import Job
from roofing_core.measures.reading import read
from roofing_core.measures.units import Unit

DOCUMENT = document(app)
OPERATIONS = [
    (method, path, operation)
    for path, methods in DOCUMENT["paths"].items()
    for method, operation in methods.items()
]
NAMED = [f"{method} {path}" for method, path, _ in OPERATIONS]
CALCULATIONS = (*routes.CALCULATIONS, surfaces.SURFACES, plans.PLAN)


def resolved(part):
    while "$ref" in part:
        found = DOCUMENT
        for step in part["$ref"].removeprefix("#/").split("/"):
            found = found[step]
        part = found
    return part


def test_the_document_is_valid_openapi_3_1():
    assert DOCUMENT["openapi"].startswith("3.1")
    validate(DOCUMENT)


def test_the_document_is_the_committed_one_byte_for_byte(client):
    assert written(app) == written(make_app())
    assert openapi.COMMITTED.read_bytes() == written(app).encode()
    assert client.get("/openapi.json").content == openapi.COMMITTED.read_bytes()


def test_check_tells_a_stale_document_from_a_fresh_one(monkeypatch, tmp_path, capsys):
    (tmp_path / "pyproject.toml").touch()
    monkeypatch.setattr(openapi, "COMMITTED", tmp_path / "openapi" / "openapi.json")
    assert openapi.main(["--check"]) == 1
    assert "is out of date" in capsys.readouterr().err
    assert openapi.main([]) == 0
    assert openapi.main(["--check"]) == 0
    openapi.COMMITTED.write_text("{}")
    assert openapi.main(["--check"]) == 1


@pytest.mark.parametrize("words", [["--help"], ["-check"], ["--check", "--check"], ["check"]])
def test_words_that_say_nothing_write_nothing(monkeypatch, tmp_path, capsys, words):
    (tmp_path / "pyproject.toml").touch()
    monkeypatch.setattr(openapi, "COMMITTED", tmp_path / "openapi" / "openapi.json")
    assert openapi.main(words) == 2
    assert "python -m roofing_api.openapi [--check]" in capsys.readouterr().err
    assert not openapi.COMMITTED.exists()


@pytest.mark.parametrize("words", [[], ["--check"]])
def test_installed_away_from_the_repository_nothing_is_written(
    monkeypatch, tmp_path, capsys, words
):
    monkeypatch.setattr(openapi, "COMMITTED", tmp_path / "openapi" / "openapi.json")
    assert openapi.main(words) == 2
    assert "not in its repository" in capsys.readouterr().err
    assert not openapi.COMMITTED.parent.exists()


@pytest.mark.parametrize(("method", "path", "operation"), OPERATIONS, ids=NAMED)
def test_every_operation_is_described(method, path, operation):
    assert operation["summary"].endswith(".")
    assert "**Source.** " in operation["description"]
    assert operation["tags"]
    assert operation["operationId"] == f"{method}_{path.rpartition('/')[2]}"
    problems = {status for status in operation["responses"] if status != "200"}
    assert {"405", "500"} <= problems
    if path.startswith("/v1/"):
        assert {"400", "404", "406", "414", "422"} <= problems
    assert ("413" in problems, "415" in problems) == (method == "post", method == "post")
    for status in problems:
        told = resolved(operation["responses"][status])
        assert list(told["content"]) == ["application/problem+json"]
        assert told["description"]


def examples(operation):
    """Give the worked answers by their names: those of the forms of roof, or a single one."""
    given = operation["responses"]["200"]["content"]["application/json"]
    if "example" in given:
        return {"worked": given["example"]}
    return {name: resolved(one)["value"] for name, one in given["examples"].items()}


@pytest.mark.parametrize(("method", "path", "operation"), OPERATIONS, ids=NAMED)
def test_the_worked_examples_are_what_the_service_answers(client, method, path, operation):
    content = operation["responses"]["200"]["content"]
    assert next(iter(content)) == "application/json"
    query = {
        one["name"]: ",".join(map(str, one["example"]))
        if isinstance(one["example"], list)
        else one["example"]
        for one in map(resolved, operation.get("parameters", []))
        if "example" in one
    }
    sent = operation.get("requestBody", {"content": {"application/json": {}}})["content"]
    bodies = sent["application/json"].get("examples", {"worked": {"value": None}})
    assert examples(operation).keys() == bodies.keys()
    for name, answered in examples(operation).items():
        answer = client.request(method, path, params=query, json=resolved(bodies[name])["value"])
        assert answer.status_code == 200, answer.text
        assert answer.json() == answered


@pytest.mark.parametrize(("method", "path", "operation"), OPERATIONS, ids=NAMED)
def test_the_worked_examples_fit_their_schema_and_little_else_does(method, path, operation):
    assert method in ("get", "post"), path
    given = operation["responses"]["200"]["content"]["application/json"]
    schema = {**given["schema"], "components": DOCUMENT["components"]}
    for checked in examples(operation).values():
        OAS31Validator(schema).validate(checked)
        broken = {**checked, "another": 1}
        assert list(OAS31Validator(schema).iter_errors(broken))
        first = next(iter(checked))
        assert list(OAS31Validator(schema).iter_errors({**checked, first: None}))


def test_every_field_of_every_answer_is_described_and_always_there():
    schemas = DOCUMENT["components"]["schemas"]
    answers = {name: one for name, one in schemas.items() if not name.endswith("Input")}
    assert len(answers) > 40
    for name, schema in answers.items():
        assert schema["additionalProperties"] is False
        assert schema["description"], name
        if name != "ProblemError":
            assert schema["required"] == list(schema["properties"]), name
        for field, about in schema["properties"].items():
            assert about.get("description") or resolved(about)["description"], (name, field)
            assert "default" not in about, (name, field)


def test_every_parameter_and_every_field_of_a_body_is_described():
    parameters = [
        one
        for _, _, operation in OPERATIONS
        for one in map(resolved, operation.get("parameters", []))
    ]
    bodies = [
        (name, field, about)
        for name, schema in DOCUMENT["components"]["schemas"].items()
        if name.endswith("Input")
        for field, about in schema["properties"].items()
    ]
    assert len(parameters) > 200
    assert len(bodies) > 100
    assert [one["name"] for one in parameters if not one["description"]] == []
    for name, field, about in bodies:
        assert about.get("description") or resolved(about)["description"], (name, field)


def test_measurements_come_with_their_unit_and_how_it_is_written():
    operation = DOCUMENT["paths"]["/v1/courses"]["get"]
    told = {one["name"]: one for one in map(resolved, operation["parameters"])}
    assert told["exposure"]["schema"] == {"type": "string", "x-unit": "in"}
    assert "Written as a length with its unit, such as 14 ft" in told["exposure"]["description"]
    assert told["exposure"]["required"]
    assert told["edge_distance"]["schema"]["default"] == "3/4 in"
    assert not told["edge_distance"]["required"]
    offsets = DOCUMENT["paths"]["/v1/offsets"]["get"]["parameters"]
    sequence = next(one for one in map(resolved, offsets) if one["name"] == "sequence")
    assert (sequence["style"], sequence["explode"]) == ("form", False)


def test_units_of_answers_are_told_for_both_systems():
    course = DOCUMENT["components"]["schemas"]["Course"]["properties"]
    assert course["butt"]["description"].endswith("(in; metric: mm)")
    area = DOCUMENT["components"]["schemas"]["AreaAnswer"]["properties"]
    assert area["area"]["description"].endswith("(ft2; metric: m2)")


def defaults(thing, at=""):
    """Give every default of a function or dataclass that a caller could write."""
    hints = get_type_hints(thing, include_extras=True)
    for name, one in signature(thing).parameters.items():
        hint = hints[name]
        if is_dataclass(one.default):
            yield from defaults(hint, f"{at}{name}.")
        elif get_origin(hint) is Annotated and isinstance(one.default, int | float):
            yield f"{at}{name}", one.default, hint
        elif get_origin(hint) is tuple and isinstance(one.default, tuple):
            for value in one.default:
                yield f"{at}{name}", value, get_args(hint)[0]


def test_a_default_reads_back_as_what_it_is():
    found = [one for calc in CALCULATIONS for one in defaults(calc.takes)]
    assert len(found) > 60
    for name, value, hint in found:
        unit = next(one.name for one in hint.__metadata__ if isinstance(one, Unit))
        if unit not in ("1", "count", "percent"):
            assert read(as_written(value, hint), unit) == pytest.approx(value, rel=1e-12), name


def test_what_a_body_takes_is_what_the_library_takes():
    model = inputs_of(Job, body=True)
    assert set(model.model_fields) == {field.name for field in fields(Job)}
    shingle = DOCUMENT["components"]["schemas"]["ShingleInput"]
    assert shingle["properties"]["material"]["enum"] == [
        "metric_strip",
        "metric_three_tab",
        "inch_three_tab",
    ]


def test_examples_are_worked_when_the_document_is_made():
    assert worked(routes.PITCH)["slope_factor"] == pytest.approx(1.0541, abs=5e-5)
    assert docs(routes.PITCH.function).summary == DOCUMENT["paths"]["/v1/pitch"]["get"]["summary"]


def test_the_document_names_no_machine():
    text = json.dumps(DOCUMENT)
    assert "127.0.0.1" not in text
    assert "localhost" not in text
    assert "servers" not in DOCUMENT


def test_what_operations_say_alike_of_a_parameter_is_said_once():
    shared = DOCUMENT["components"]["parameters"]
    told = [one for _, _, operation in OPERATIONS for one in operation.get("parameters", [])]
    inline = [one for one in told if "$ref" not in one]
    assert {"units", "pointer", "problems", "cap.width"} <= set(shared)
    assert [one["name"] for one in inline if shared.get(one["name"]) == one] == []
    for again in (one for one in inline if inline.count(one) > 1):
        assert told.count({"$ref": f"#/components/parameters/{again['name']}"}) > 1
