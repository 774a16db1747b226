"""Trims and offcuts over HTTP: by a query and by a body, away from the event loop, in time."""

from __future__ import annotations

import asyncio
import time

import httpx
import pytest

from roofing_api import aside, trims
from roofing_api.app import make_app
from roofing_core import Cutting, Job, SingleSlope, best_trims, plan

SHED = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}


def test_trims_of_a_query_and_of_a_body_are_the_library_s(client):
    found = best_trims(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    from_query = client.get("/v1/trims", params=SHED)
    from_body = client.post("/v1/trims", json={"roof": SHED})
    assert from_query.json() == from_body.json()
    best = from_query.json()["best"]
    assert best["count"]["sequence"] == list(found.best.count.sequence)
    assert (best["least"], best["proved"]) == (found.best.least, found.best.proved)
    assert from_query.json()["saved"] == found.asked.shingles - found.best.count.shingles


def test_trims_of_a_roof_with_hips_are_refused_by_the_roof(client):
    hip = {"form": "hip", "length": "36 ft", "width": "24 ft", "pitch": "6:12"}
    answer = client.post("/v1/trims", json={"roof": hip})
    (error,) = answer.json()["errors"]
    assert answer.status_code == 422
    assert error["pointer"] == "#/roof"
    assert error["wanted"].startswith("a roof whose planes are rectangles alike, without openings")


def test_trims_that_cannot_hold_name_the_clearance(client):
    tight = {"coursing.minimum_clearance": "19.5 in", "coursing.minimum_end_piece": "18 in"}
    answer = client.get("/v1/trims", params={**SHED, **tight})
    assert answer.status_code == 422
    assert [error["parameter"] for error in answer.json()["errors"]] == [
        "coursing.minimum_clearance"
    ]


def test_a_plan_uses_offcuts_again_by_choice(client):
    again = plan(
        Job(
            roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25),
            cutting=Cutting(reuse="best"),
        )
    )
    told = client.get("/v1/plans", params={**SHED, "cutting.reuse": "best"}).json()["cutting"]
    assert (told["shingles"], told["simply"]) == (again.cutting.shingles, again.cutting.simply)
    assert [len(shingle["pieces"]) for shingle in told["cut"]] == [
        len(shingle.pieces) for shingle in again.cutting.cut
    ]
    wrong = client.get("/v1/plans", params={**SHED, "cutting.reuse": "some"})
    assert wrong.json()["errors"][0]["parameter"] == "cutting.reuse"


def test_long_work_leaves_the_event_loop_to_others_and_is_given_up(monkeypatch):
    """While trims are sought, the service answers; past the limit it says so and when to ask."""
    done = []

    def slow(job):
        time.sleep(1.5)
        done.append(job)
        raise AssertionError("nobody waits for this any more")

    monkeypatch.setattr(trims, "best_trims", slow)
    monkeypatch.setattr(aside, "LIMIT", 0.4)

    async def both() -> tuple[httpx.Response, bool]:
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://service") as client:
            asked = asyncio.create_task(client.get("/v1/trims", params=SHED))
            await asyncio.sleep(0.05)
            assert (await client.get("/healthz")).status_code == 200
            waiting = not asked.done()
            return await asked, waiting

    answer, waiting = asyncio.run(both())
    assert waiting
    assert not done
    assert answer.status_code == 503
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.headers["retry-after"] == "0.4"
    assert "no answer within 0.4 s" in answer.json()["detail"]


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_text_of_a_plan_lists_which_offcut_serves_where(client, units):
    asked = {**SHED, "cutting.reuse": "best", "format": "text", "units": units}
    text = client.get("/v1/plans", params=asked).text
    lines = text[text.index("SHINGLES CUT") :].splitlines()
    eleven = {"us": "11 in", "metric": "279 mm"}[units]
    assert f"course 1 piece 5, left end {eleven}" in lines[4]
    assert "course 19 piece 1, right end" in lines[4]
