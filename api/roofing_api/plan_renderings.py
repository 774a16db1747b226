"""The forms of a plan: text, drawings, the job sheet, tables, a workbook."""

from __future__ import annotations

from typing import Any

from roofing_api.manner import Printed, Tabled
from roofing_api.negotiating import CSV, HTML, PDF, XLSX
from roofing_api.renderings import Rendering, as_drawing, as_text
from roofing_core.job.plan import Plan
from roofing_core.sheets.drawings.all import drawing_page
from roofing_core.sheets.job_sheet.pages import POLICY, job_sheet_html
from roofing_core.sheets.job_sheet.typeset import job_sheet_pdf
from roofing_core.sheets.tables.comma_text import plan_csv
from roofing_core.sheets.tables.workbook import plan_workbook
from roofing_core.sheets.text import plan_text


def _draw(planned: Plan, manner: Any) -> str:
    return drawing_page(planned, manner.drawing, page=manner.page, system=manner.units).svg


def _tabled(planned: Plan, manner: Any) -> bytes:
    return plan_csv(planned, manner.table, system=manner.units).encode()


def _workbook(planned: Plan, manner: Any) -> bytes:
    return plan_workbook(planned, system=manner.units)


def _page(planned: Plan, manner: Any) -> bytes:
    html = job_sheet_html(planned, system=manner.units, page_size=manner.page_size)
    return html.encode()


def _typeset(planned: Plan, manner: Any) -> bytes:
    return job_sheet_pdf(planned, system=manner.units, page_size=manner.page_size)


RENDERINGS = (
    as_text(plan_text),
    as_drawing(_draw, to_choose_from=True),
    Rendering(
        word="html",
        media_type=HTML,
        says="the job sheet as one self-contained page, to read and to print",
        make=_page,
        asks=(Printed,),
        headers={"Content-Security-Policy": POLICY},
    ),
    Rendering(
        word="pdf",
        media_type=PDF,
        says="the job sheet, typeset and tagged (PDF/UA-1)",
        make=_typeset,
        needs="typst",
        is_binary=True,
        headers={"Content-Disposition": 'inline; filename="job-sheet.pdf"'},
    ),
    Rendering(
        word="csv",
        media_type=CSV,
        says="one of the plan's tables as comma-separated text (RFC 4180)",
        make=_tabled,
        asks=(Tabled,),
        implied_by=frozenset({"table"}),
        headers={"Content-Disposition": 'inline; filename="plan.csv"'},
    ),
    Rendering(
        word="xlsx",
        media_type=XLSX,
        says="every table of the plan as a workbook (Office Open XML)",
        make=_workbook,
        needs="xlsxwriter",
        is_binary=True,
        headers={"Content-Disposition": 'attachment; filename="plan.xlsx"'},
    ),
)
