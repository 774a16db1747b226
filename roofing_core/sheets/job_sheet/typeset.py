"""The job sheet as PDF, typeset in memory.

Typst sets the pages, of the extra `sheets`, loaded when the first sheet is set. It is one package
that brings its fonts, so that the pages are the same on every machine. Template and options keep it
from reading anything: no file, no package, no font of the system, no clock.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields
from types import MappingProxyType
from typing import Any

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.paper import Drawing
from roofing_core.sheets.job_sheet.blocks import (
    Block,
    Facts,
    Grid,
    Notice,
    Notices,
    PageSize,
    Pictures,
    Prose,
    Section,
    Sheet,
)
from roofing_core.sheets.job_sheet.contents import is_across, job_sheet
from roofing_core.sheets.job_sheet.letters import breakable, showable
from roofing_core.sheets.job_sheet.template import TEMPLATE
from roofing_core.sheets.needed import needed_package

_KINDS: Mapping[type, str] = MappingProxyType(
    {
        Section: "section",
        Prose: "prose",
        Facts: "facts",
        Grid: "grid",
        Notices: "notices",
        Pictures: "pictures",
    }
)


def job_sheet_pdf(plan: Plan, *, system: System = "us", page_size: PageSize | None = None) -> bytes:
    """Typeset the job sheet of a plan as PDF, tagged for screen readers (PDF/UA-1).

    The same as the sheet in HTML. Letters that its fonts lack, of other scripts than Latin, Greek
    and Cyrillic, are boxes.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.
        page_size: What it is printed on; Letter for US units and A4 for metric ones unless said.

    Returns:
        The file. The same plan gives the same bytes: no date is in it.

    Raises:
        ModuleNotFoundError: The extra `sheets` is not installed.

    Source:
        The plan's own numbers; ISO 14289-1 (PDF/UA-1) as Typst writes it.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> job_sheet_pdf(planned)[:5]
    b'%PDF-'
    """
    sheet = job_sheet(plan, system=system, page_size=page_size)
    pages: bytes = needed_package("typst").compile(
        TEMPLATE.encode(),
        format="pdf",
        sys_inputs={"sheet": json.dumps(_data(sheet))},
        pdf_standards=["ua-1"],
        ignore_system_fonts=True,
    )
    return pages


def _data(value: Any) -> Any:
    """Give what the template reads: texts, numbers and lists, each block with its kind."""
    if isinstance(value, str):
        return breakable(value)
    if isinstance(value, tuple):
        return [_data(each) for each in value]
    if isinstance(value, Drawing):
        return {**_fields(value), "svg": showable(value.svg), "across": is_across(value)}
    if isinstance(value, Block | Sheet | Notice):
        kind = _KINDS.get(type(value), "")
        return {**_fields(value), "kind": kind}
    return value


def _fields(record: Any) -> dict[str, Any]:
    return {one.name: _data(getattr(record, one.name)) for one in fields(record)}
