"""Every worked example asked for in metric, as data and as text: no US unit stands alone in it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.api.test_openapi import NAMED, OPERATIONS, examples, resolved
from tests.laws.us_units import us_alone

METRIC = [
    pytest.param(*one, id=name)
    for one, name in zip(OPERATIONS, NAMED, strict=True)
    if any(resolved(asked)["name"] == "units" for asked in one[2].get("parameters", []))
]


def texts(value: object) -> Iterator[str]:
    """Give every text of an answer."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for one in value.values():
            yield from texts(one)
    elif isinstance(value, list):
        for one in value:
            yield from texts(one)


def test_nearly_every_operation_has_units():
    assert len(OPERATIONS) - len(METRIC) <= 2


@pytest.mark.parametrize(("method", "path", "operation"), METRIC)
def test_the_worked_examples_in_metric(client, method, path, operation):
    asked = {
        one["name"]: ",".join(map(str, one["example"]))
        if isinstance(one["example"], list)
        else one["example"]
        for one in map(resolved, operation.get("parameters", []))
        if "example" in one
    } | {"units": "metric"}
    sent = operation.get("requestBody", {"content": {"application/json": {}}})["content"]
    bodies = sent["application/json"].get("examples", {"worked": {"value": None}})
    offered = operation["responses"]["200"]["content"]
    for name in examples(operation):
        body = resolved(bodies[name])["value"]
        answer = client.request(method, path, params=asked, json=body)
        assert answer.status_code == 200, answer.text
        if path != "/v1/planes":  # GeoJSON, as it is read elsewhere
            assert answer.json()["units"]["system"] == "metric"
        assert [text for text in texts(answer.json()) if us_alone(text)] == []
        for media in {"text/html", "text/csv"} & set(offered):
            sheet = client.request(method, path, params=asked, json=body, headers={"Accept": media})
            assert sheet.status_code == 200, sheet.text
            assert [line for line in sheet.text.splitlines() if us_alone(line)] == []
