"""All tables of a plan as a workbook (XLSX), one sheet a table.

XlsxWriter writes it, of the extra `sheets`, loaded when the first workbook is made. It writes in
memory, reads nothing, and is told the date to put in, so that it asks no clock.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from io import BytesIO
from types import MappingProxyType
from typing import Any

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.headings import plan_heading
from roofing_core.sheets.needed import needed_package
from roofing_core.sheets.tables.all import KINDS, plan_table
from roofing_core.sheets.tables.comma_text import looks_like_a_formula
from roofing_core.sheets.tables.table import Table

#: Of more pieces than this the workbook has no sheet: it would be slow to write and to open.
MOST_PIECES = 20_000

#: Nothing in it is a formula or a link, whatever it looks like.
_INERT: Mapping[str, bool] = MappingProxyType(
    {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False}
)

#: A workbook must name a day on which it was made; this one says nothing of any clock.
_MADE_ON = datetime(2000, 1, 1)

#: Width of a column in characters, at least and at most.
_NARROW, _WIDE = 8, 60


def plan_workbook(plan: Plan, *, system: System = "us") -> bytes:
    """Write the tables of a plan as a workbook, for any spreadsheet program.

    A sheet each for the job, the order list, courses, pieces, cuts, metal, rolls, rows, caps and
    step flashing, as far as the roof has them. Numbers are numbers, not rounded, each under a
    heading with its unit. Texts are texts, also those that look like a formula.

    Args:
        plan: A finished plan.
        system: The unit system of its numbers.

    Returns:
        The file. The same plan gives the same bytes. Of more than 20,000 pieces it has no sheet.

    Raises:
        ModuleNotFoundError: The extra `sheets` is not installed.

    Source:
        The plan's own numbers; Office Open XML (ECMA-376) as XlsxWriter writes it.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> plan_workbook(planned)[:2], plan_workbook(planned) == plan_workbook(planned)
    (b'PK', True)
    """
    xlsxwriter = needed_package("xlsxwriter")
    file = BytesIO()
    book = xlsxwriter.Workbook(file, dict(_INERT))
    book.set_properties({"title": plan.name or plan_heading(plan, system), "created": _MADE_ON})
    styles = {
        "heading": book.add_format({"bold": True, "text_wrap": True, "bottom": 1, "valign": "top"}),
        "words": book.add_format({"valign": "top"}),
        "wrapped": book.add_format({"valign": "top", "text_wrap": True}),
        "like a formula": book.add_format({"valign": "top", "quote_prefix": True}),
    }
    for table in _tables(plan, system):
        _write(book.add_worksheet(table.title[:31]), table, system, styles)
    book.close()
    return file.getvalue()


def _tables(plan: Plan, system: System) -> Iterator[Table]:
    """Give the tables that have rows; the facts say where one is left out for its length."""
    many = plan.shingles.pieces > MOST_PIECES
    for kind in KINDS:
        if kind == "pieces" and many:
            continue
        table = plan_table(plan, kind, system=system).for_whom("machines")
        if kind == "job" and many:
            told = ("pieces", "too many for this workbook; ask for their table by itself", "")
            table = replace(table, rows=(*table.rows, told))
        if table.rows:
            yield table


def _write(sheet: Any, table: Table, system: System, styles: dict[str, Any]) -> None:
    sheet.freeze_panes(1, 0)
    sheet.repeat_rows(0)
    sheet.set_landscape()
    sheet.set_paper(9 if system == "metric" else 1)  # the format's numbers of A4 and Letter
    sheet.fit_to_pages(1, 0)
    sheet.set_footer("&L&A&RPage &P of &N")
    for k, column in enumerate(table.columns):
        heading = column.headed(system)
        sheet.write_string(0, k, heading, styles["heading"])
        texts = (cell for cell in (row[k] for row in table.rows) if isinstance(cell, str))
        long = max([len(heading) / 2, *map(len, texts)])
        sheet.set_column(k, k, min(max(long + 2, _NARROW), _WIDE))
    for k, row in enumerate(table.rows, 1):
        for j, (column, cell) in enumerate(zip(table.columns, row, strict=True)):
            _write_cell(sheet, k, j, column.number(cell, system), styles)


def _write_cell(
    sheet: Any, row: int, column: int, value: str | float, styles: dict[str, Any]
) -> None:
    if not isinstance(value, str):
        sheet.write_number(row, column, value, styles["words"])
    elif value:
        style = "wrapped" if len(value) > _WIDE else "words"
        style = "like a formula" if looks_like_a_formula(value) else style
        sheet.write_string(row, column, value, styles[style])
