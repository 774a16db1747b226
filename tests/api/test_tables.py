"""Tables over HTTP: as comma-separated text and as a workbook, however they are asked for."""

from __future__ import annotations

from io import BytesIO

import pytest
from openpyxl import load_workbook

from roofing_api import renderings
from roofing_core import Job, SingleSlope, plan, plan_csv, plan_workbook
from roofing_core.sheets.tables.all import KINDS

QUERY = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
PLANNED = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)))
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_table_can_be_had_by_its_name(client, kind, units):
    written = plan_csv(PLANNED, kind, system=units)
    asked = {"table": kind, "units": units}
    for answer in (
        client.get("/v1/plans", params={**QUERY, **asked}),
        client.get("/v1/plans", params={**QUERY, **asked, "format": "csv"}),
        client.post(
            "/v1/plans", params=asked, json={"roof": QUERY}, headers={"Accept": "text/csv"}
        ),
    ):
        assert answer.status_code == 200
        assert answer.headers["content-type"] == "text/csv; charset=utf-8"
        assert answer.content == written.encode()


def test_the_order_list_is_what_comes_without_a_name(client):
    for answer in (
        client.get("/v1/plans", params=QUERY, headers={"Accept": "text/csv"}),
        client.get("/v1/plans", params={**QUERY, "format": "csv"}),
    ):
        assert answer.text == plan_csv(PLANNED, "order")


def test_the_workbook_comes_as_a_file(client):
    written = plan_workbook(PLANNED)
    for answer in (
        client.get("/v1/plans", params=QUERY, headers={"Accept": XLSX}),
        client.post("/v1/plans?format=xlsx", json={"roof": QUERY}),
    ):
        assert answer.headers["content-type"] == XLSX
        assert answer.headers["content-disposition"] == 'attachment; filename="plan.xlsx"'
        assert answer.content == written


def test_a_name_that_looks_like_a_formula_is_none_in_either(client):
    asked = {**QUERY, "name": "=HYPERLINK(0)"}
    text = client.get("/v1/plans", params={**asked, "table": "job"}).text
    assert "\r\nname,'=HYPERLINK(0),\r\n" in text
    book = client.get("/v1/plans", params={**asked, "format": "xlsx"}).content
    assert load_workbook(BytesIO(book))["Job"]["B2"].data_type == "s"


def test_a_table_that_there_is_not_is_told_with_those_that_there_are(client):
    answer = client.get("/v1/plans", params={**QUERY, "table": "prices"})
    assert answer.status_code == 422
    (error,) = answer.json()["errors"]
    assert (error["parameter"], error["wanted"]) == ("table", f"one of {', '.join(KINDS)}")


def test_a_service_without_the_packages_says_so_and_offers_the_rest(client, monkeypatch):
    monkeypatch.setattr(renderings, "find_spec", lambda _: None)
    renderings.is_there.cache_clear()
    try:
        refused = client.get("/v1/plans", params={**QUERY, "format": "xlsx"})
        assert refused.status_code == 406
        assert "roofing-core[sheets]" in refused.json()["detail"]
        refused = client.get("/v1/plans", params=QUERY, headers={"Accept": XLSX})
        assert refused.status_code == 406
        assert "text/csv" in refused.json()["detail"]
        assert XLSX not in refused.json()["detail"].partition(":")[2]
        assert client.get("/v1/plans", params={**QUERY, "format": "csv"}).status_code == 200
    finally:
        renderings.is_there.cache_clear()
