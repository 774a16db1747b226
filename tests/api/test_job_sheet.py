"""The job sheet over HTTP: as a page and as PDF, however it is asked for."""

from __future__ import annotations

import threading
from io import BytesIO

import pytest
from pypdf import PdfReader

from roofing_api import plan_renderings, renderings
from roofing_core import Job, SingleSlope, job_sheet_html, job_sheet_pdf, plan

QUERY = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
NAMED = {**QUERY, "name": "Tool store", "notes": "Key under the pot.\nMind the dog."}
ROOF = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
PLANNED = plan(Job(roof=ROOF, name=NAMED["name"], notes=NAMED["notes"]))
PDF = {"Accept": "application/pdf"}

#: What browsers send when somebody opens an address.
OF_A_BROWSER = "text/html,application/xhtml+xml,application/xml;q=0.9,image/webp,*/*;q=0.8"


def body(**more: str) -> dict[str, object]:
    return {"roof": QUERY, "name": NAMED["name"], "notes": NAMED["notes"], **more}


def test_the_pdf_comes_however_it_is_asked_for(client):
    written = job_sheet_pdf(PLANNED)
    for answer in (
        client.get("/v1/plans", params=NAMED, headers=PDF),
        client.get("/v1/plans", params={**NAMED, "format": "pdf"}),
        client.post("/v1/plans", json=body(), headers=PDF),
        client.post("/v1/plans?format=pdf", json=body()),
    ):
        assert answer.status_code == 200
        assert answer.headers["content-type"] == "application/pdf"
        assert answer.headers["content-disposition"] == 'inline; filename="job-sheet.pdf"'
        assert answer.content == written


def test_the_page_comes_to_a_browser_and_may_fetch_nothing(client):
    written = job_sheet_html(PLANNED)
    for answer in (
        client.get("/v1/plans", params=NAMED, headers={"Accept": OF_A_BROWSER}),
        client.get("/v1/plans", params={**NAMED, "format": "html"}),
        client.post("/v1/plans?format=html", json=body()),
    ):
        assert answer.headers["content-type"] == "text/html; charset=utf-8"
        policy = answer.headers["content-security-policy"]
        assert policy == "default-src 'none'; style-src 'unsafe-inline'"
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.text == written
    assert client.get("/v1/plans", params=NAMED).headers["content-type"] == "application/json"


@pytest.mark.parametrize("size", ["a4", "letter"])
@pytest.mark.parametrize("units", ["us", "metric"])
def test_paper_and_units_are_those_asked_for(client, units, size):
    asked = {**NAMED, "format": "pdf", "units": units, "page_size": size}
    written = job_sheet_pdf(PLANNED, system=units, page_size=size)
    assert client.get("/v1/plans", params=asked).content == written


def test_paper_that_there_is_not_is_told_with_what_there_is(client):
    answer = client.get("/v1/plans", params={**QUERY, "format": "pdf", "page_size": "a3"})
    assert answer.status_code == 422
    (error,) = answer.json()["errors"]
    assert (error["parameter"], error["wanted"]) == ("page_size", "one of a4, letter")


@pytest.mark.parametrize(
    ("field", "text"),
    [("name", "x" * 81), ("name", "a\nb"), ("notes", "\x1b[2J"), ("notes", "\u202e")],
)
def test_words_that_would_not_be_seen_for_what_they_are_are_refused(client, field, text):
    posted = client.post("/v1/plans?format=pdf", json=body(**{field: text}))
    asked = client.get("/v1/plans", params={**NAMED, field: text, "format": "html"})
    assert posted.status_code == asked.status_code == 422
    assert posted.json()["errors"][0]["pointer"] == f"#/{field}"
    assert asked.json()["errors"][0]["parameter"] == field


def test_hostile_words_are_words_on_page_and_paper(client):
    hostile = '</h1><script>alert(1)</script>#read("/etc/passwd")'
    page = client.get("/v1/plans", params={**QUERY, "name": hostile, "format": "html"}).text
    assert "<script" not in page
    assert "&lt;/h1&gt;&lt;script&gt;" in page
    pdf = client.get("/v1/plans", params={**QUERY, "name": hostile, "format": "pdf"}).content
    told = PdfReader(BytesIO(pdf)).pages[0].extract_text().replace("\u200b", "")
    assert "".join(hostile.split()) in "".join(told.split())


def test_a_sheet_is_made_off_the_event_loop(client, monkeypatch):
    made_in: list[str] = []

    def noted(*_: object, **__: object) -> bytes:
        made_in.append(threading.current_thread().name)
        return b"%PDF-"

    monkeypatch.setattr(plan_renderings, "job_sheet_pdf", noted)
    client.get("/v1/plans", params={**QUERY, "format": "pdf"})
    assert made_in
    assert "worker" in made_in[0].lower()


def test_a_service_without_the_typesetter_has_the_page_still(client, monkeypatch):
    monkeypatch.setattr(renderings, "find_spec", lambda _: None)
    renderings.is_there.cache_clear()
    try:
        refused = client.get("/v1/plans", params=QUERY, headers=PDF)
        assert refused.status_code == 406
        assert client.get("/v1/plans", params={**QUERY, "format": "html"}).status_code == 200
    finally:
        renderings.is_there.cache_clear()
