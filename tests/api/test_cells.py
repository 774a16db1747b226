"""What a cell of a spreadsheet is answered: several values at once, and problems as a sentence."""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient

from roofing_api.app import app

PLAN = "/v1/plans?eave_length=14ft&slope_length=9ft4in&pitch=3:12"
BARE = "eave_length came as 14: a number with its unit: write 14 ft, 14 in or 4.27 m"
PLAIN = "text/plain; charset=utf-8"


def test_several_values_come_one_a_line(client):
    pointers = ["/squares", "/order/shingles/packs", "/units/length", "/order/eave_metal/item"]
    answer = client.get(f"{PLAN}&pointer={','.join(pointers)}")
    alone = [client.get(f"{PLAN}&pointer={pointer}").text for pointer in pointers]
    assert (answer.status_code, answer.headers["content-type"]) == (200, PLAIN)
    assert answer.text.split("\n") == alone
    assert alone[1:] == ["5", "in", "eave metal"]


def test_of_several_one_past_the_end_of_a_list_is_an_empty_line(client):
    told = client.get(PLAN).json()["findings"]
    count = len(told)
    asked = f"/findings/0/says,/findings/{count}/says,/findings/{count - 1}/says"
    lines = client.get(f"{PLAN}&pointer={asked}").text.split("\n")
    assert count > 0
    assert lines == [told[0]["says"], "", told[-1]["says"]]
    alone = client.get(f"{PLAN}&pointer=/findings/{count}/says")
    assert alone.status_code == 404


@pytest.mark.parametrize(
    ("pointer", "status"),
    [("/squares,/squarez", 404), ("/squares,", 422), ("/squares,/order", 422), ("/a,/b", 404)],
)
def test_of_several_each_other_fault_is_refused(client, pointer, status):
    answer = client.get(f"{PLAN}&pointer={pointer}")
    assert answer.status_code == status
    assert answer.json()["errors"][0]["parameter"] == "pointer"


@pytest.mark.parametrize("asked", ["&pointer=/squares", "&table=order", "", "&format=svg"])
def test_a_problem_as_its_sentence(client, asked):
    wrong = PLAN.replace("14ft", "14") + asked
    answer = client.get(f"{wrong}&problems=text")
    assert (answer.status_code, answer.headers["content-type"]) == (200, PLAIN)
    assert answer.text == BARE == client.get(wrong).json()["detail"]
    assert answer.headers["cache-control"] == "no-store"
    assert "etag" not in answer.headers
    head = client.head(f"{wrong}&problems=text")
    assert (head.status_code, head.text) == (200, "")


@pytest.mark.parametrize(
    "path",
    [f"{PLAN}&pointer=/county", f"{PLAN}&page=0", "/v1/plans?", f"{PLAN}&unit=metric", "/v1/x?"],
)
def test_the_sentence_is_the_one_that_the_problem_has(client, path):
    told = client.get(path)
    assert told.status_code >= 400
    answer = client.get(f"{path}&problems=text")
    assert (answer.status_code, answer.text) == (200, told.json()["detail"])


def test_a_posted_body_is_answered_the_same(client):
    body = {"roof": {"eave_length": "14", "slope_length": "9 ft 4 in", "pitch": "3:12"}}
    told = client.post("/v1/plans", json=body)
    answer = client.post("/v1/plans?problems=text", json=body)
    assert (told.status_code, answer.status_code) == (422, 200)
    assert answer.text == told.json()["detail"]


@pytest.mark.parametrize("problems", ["status", ""])
def test_otherwise_a_problem_keeps_its_status(client, problems):
    answer = client.get(f"{PLAN.replace('14ft', '14')}&problems={problems}")
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"


def test_what_is_no_fault_of_the_cell_keeps_its_status(client, monkeypatch):
    assert client.put(f"{PLAN}&problems=text").status_code == 405
    monkeypatch.setattr("roofing_api.plans.remembered", lambda _: 1 / 0)
    failed = TestClient(app, raise_server_exceptions=False).get(f"{PLAN}&problems=text")
    assert failed.status_code == 500
    assert failed.json()["detail"] == "the service failed at this request"


def test_what_answers_without_a_problem_is_the_same_either_way(client):
    plain = client.get(f"{PLAN}&pointer=/squares")
    assert client.get(f"{PLAN}&pointer=/squares&problems=text").text == plain.text


def test_which_methods_there_are_is_told_without_a_plan(client):
    # RFC 9110, 9.3.7: OPTIONS asks what a path answers; LibreOffice asks it before each address.
    told = client.options(f"{PLAN}&pointer=/squares")
    assert (told.status_code, told.headers["allow"], told.text) == (204, "GET, HEAD, POST", "")
    assert client.options("/v1/x").status_code == 404
