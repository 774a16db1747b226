"""Workbooks: what openpyxl and LibreOffice read out of them is what the plan has."""

from __future__ import annotations

import csv
import hashlib
import shutil
import subprocess
import sys
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook

from roofing_core import Plan, plan_csv, plan_table, plan_workbook
from roofing_core.sheets.tables import workbook
from roofing_core.sheets.tables.all import KINDS
from tests.sheets.conftest import planned
from tests.sheets.test_tables import BEGINNINGS

ROOT = Path(__file__).resolve().parents[2]


def tables_of(made: Plan, system):
    tables = (plan_table(made, kind, system=system).for_whom("machines") for kind in KINDS)
    return [table for table in tables if table.rows]


def test_every_cell_is_the_plans_number_or_word(drawn_plan):
    made, system = drawn_plan
    book = load_workbook(BytesIO(plan_workbook(made, system=system)))
    tables = tables_of(made, system)
    assert book.sheetnames == [table.title[:31] for table in tables]
    for table, sheet in zip(tables, book.worksheets, strict=True):
        headings, *rows = sheet.iter_rows(values_only=True)
        assert list(headings) == [column.headed(system) for column in table.columns]
        assert len(rows) == len(table.rows)
        for row, cells in zip(rows, table.rows, strict=True):
            for value, column, cell in zip(row, table.columns, cells, strict=True):
                number = column.number(cell, system)
                # The format holds 16 figures of a number.
                wanted = pytest.approx(number, rel=1e-15) if isinstance(number, float) else number
                assert value == (None if number == "" else wanted)
                assert isinstance(value, str) == (isinstance(number, str) and number != "")


@pytest.mark.parametrize("start", BEGINNINGS)
def test_nothing_is_a_formula_or_a_link(start):
    made, _ = planned("shed")
    name = f'{start}HYPERLINK("https://example.org")'
    hostile = replace(made, name=name, notes="https://example.org\nmailto:a@example.org")
    content = plan_workbook(hostile)
    with ZipFile(BytesIO(content)) as parts:
        texts = {one: parts.read(one).decode() for one in parts.namelist()}
    sheets = [text for one, text in texts.items() if one.startswith("xl/worksheets/")]
    assert sheets
    assert not any("<f>" in text or "hyperlink" in text.lower() for text in sheets)
    assert not any("example.org" in text for one, text in texts.items() if one.endswith(".rels"))
    cell = load_workbook(BytesIO(content))["Job"]["B2"]
    assert cell.data_type == "s"
    assert cell.quotePrefix


def digest_in_another_process() -> str:
    code = (
        "import hashlib; from tests.sheets.conftest import planned;"
        "from roofing_core import plan_workbook;"
        "print(hashlib.sha256(plan_workbook(planned('shed')[0])).hexdigest())"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return ran.stdout.strip()


def test_the_same_plan_is_the_same_bytes_in_every_process():
    here = hashlib.sha256(plan_workbook(planned("shed")[0])).hexdigest()
    assert here == digest_in_another_process()


def test_pieces_are_left_out_where_they_are_too_many_and_the_workbook_says_so(monkeypatch):
    made, _ = planned("shed")
    monkeypatch.setattr(workbook, "MOST_PIECES", 99)
    book = load_workbook(BytesIO(plan_workbook(made)))
    assert "Pieces" not in book.sheetnames
    told = {row[0]: row[1] for row in book["Job"].iter_rows(values_only=True)}
    assert str(told["pieces"]).startswith("too many")


#: Fields apart by commas, texts within quotes, UTF-8, from line 1, values and not what is shown of
#: them, every sheet to a file of its own.
AS_CSV = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1"


@pytest.mark.skipif(not shutil.which("soffice"), reason="needs LibreOffice: libreoffice-calc")
@pytest.mark.parametrize("name", ["shed", "ell with openings"])
def test_libreoffice_opens_it_with_the_same_values(tmp_path, name):
    made, system = planned(name)
    made = replace(made, name="=1+1")
    (tmp_path / "plan.xlsx").write_bytes(plan_workbook(made, system=system))
    profile = (tmp_path / "profile").as_uri()
    command = ["soffice", f"-env:UserInstallation={profile}", "--headless", "--convert-to", AS_CSV]
    subprocess.run(
        [*command, "--outdir", str(tmp_path), str(tmp_path / "plan.xlsx")],
        check=True, capture_output=True, timeout=120,
    )  # fmt: skip
    for table in tables_of(made, system):
        with (tmp_path / f"plan-{table.title[:31]}.csv").open(encoding="utf-8", newline="") as file:
            read = list(csv.reader(file))
        ours = list(csv.reader(plan_csv(made, table.name, system=system).splitlines()))
        assert len(read) == len(ours)
        for row, own in zip(read, ours, strict=True):
            assert list(map(same, row)) == list(map(same, own))


def same(text: str) -> object:
    """Give a number to ten figures, or a text without the apostrophe that CSV needs."""
    try:
        return float(f"{float(text):.9e}")
    except ValueError:
        return text.removeprefix("'")
