"""The forms of an answer: one table, from which the query, the header and the document are read."""

from __future__ import annotations

import pytest

from roofing_api import audits, plans, surfaces
from roofing_api.app import app
from roofing_api.document import document
from roofing_api.renderings import AS_JSON

CALCULATIONS = {
    "/v1/plans": plans.PLAN,
    "/v1/surfaces": surfaces.SURFACES,
    "/v1/audits": audits.AUDIT,
}
DOCUMENT = document(app)
PATHS = DOCUMENT["paths"]


def resolved(parameter):
    name = parameter.get("$ref", "").rpartition("/")[2]
    return DOCUMENT["components"]["parameters"][name] if name else parameter


@pytest.mark.parametrize("path", CALCULATIONS)
def test_the_document_has_every_form_and_no_other(path):
    offers = CALCULATIONS[path].offers
    assert offers[0] is AS_JSON
    for operation in PATHS[path].values():
        content = operation["responses"]["200"]["content"]
        assert list(content) == [offer.media_type for offer in offers]
        told = {one["name"]: one for one in map(resolved, operation["parameters"])}
        assert told["format"]["schema"]["enum"] == [offer.word for offer in offers]


def test_a_form_that_a_path_does_not_have_is_told_with_those_that_it_has(client):
    answer = client.post("/v1/audits?format=svg", json={})
    assert answer.status_code == 422
    (error,) = answer.json()["errors"]
    assert (error["parameter"], error["wanted"]) == ("format", "one of json, text")
