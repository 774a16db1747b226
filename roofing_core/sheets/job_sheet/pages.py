"""The job sheet as one page of HTML: nothing beside it, nothing fetched, nothing run."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from html import escape
from types import MappingProxyType
from typing import Any

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.job_sheet.blocks import (
    Facts,
    Grid,
    Notices,
    PageSize,
    Pictures,
    Prose,
    Section,
    Sheet,
)
from roofing_core.sheets.job_sheet.contents import is_across, job_sheet
from roofing_core.sheets.job_sheet.style import STYLE

#: A page may have styles of its own, and nothing else from anywhere.
POLICY = "default-src 'none'; style-src 'unsafe-inline'"

_PAPERS: Mapping[PageSize, str] = MappingProxyType({"a4": "A4", "letter": "letter"})


def job_sheet_html(plan: Plan, *, system: System = "us", page_size: PageSize | None = None) -> str:
    """Write the job sheet of a plan as one self-contained page of HTML, to read and to print.

    The roof, the order list, the order of work, cut lists and measurements, findings, cautions,
    inputs and drawings, with a box to tick before everything that is bought, cut or done.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.
        page_size: What it is printed on; Letter for US units and A4 for metric ones unless said.

    Returns:
        A whole document. Every text is escaped, nothing is fetched and nothing runs. The same plan
        gives the same text.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> page = job_sheet_html(plan(Job(roof=roof, name="Shed <2>")))
    >>> page[:15], "<h1>Shed &lt;2&gt;</h1>" in page
    ('<!doctype html>', True)
    """
    return _page(job_sheet(plan, system=system, page_size=page_size))


def _page(sheet: Sheet) -> str:
    running = escape(f"{sheet.title}: {sheet.subtitle}" if sheet.title else sheet.subtitle)
    body = "".join(_WRITERS[type(block)](block) for block in sheet.blocks)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{running}</title>\n"
        f"<style>\n{STYLE}{_papers(sheet)}</style>\n</head>\n<body>\n<main>\n<h1>{escape(sheet.title)}</h1>\n"
        f'<p class="subtitle">{escape(sheet.subtitle)}</p>\n{body}</main>\n'
        f"<footer><p>{escape(sheet.version)}</p></footer>\n</body>\n</html>\n"
    )


def _papers(sheet: Sheet) -> str:
    """Give the pages' sizes, with a foot that no text of a caller's is in."""
    paper = _PAPERS[sheet.page_size]
    foot = f'@bottom-left {{ content: "{sheet.version}"; font: 9pt serif }}'
    return f"@page {{ size: {paper}; {foot} }}\n@page across {{ size: {paper} landscape }}\n"


def _section(block: Section) -> str:
    return f"<h{block.level}>{escape(block.text)}</h{block.level}>\n"


def _prose(block: Prose) -> str:
    kind = ' class="small"' if block.small else ""
    return "".join(f"<p{kind}>{escape(line)}</p>\n" for line in block.lines)


def _facts(block: Facts) -> str:
    pairs = "".join(
        f"<div><dt>{escape(what)}</dt><dd>{escape(told)}</dd></div>\n" for what, told in block.pairs
    )
    return f"<dl>\n{pairs}</dl>\n"


def _grid(block: Grid) -> str:
    tick = '<th scope="col">done</th>' if block.to_tick else ""
    sides = tuple(f' class="{side}"' if side == "right" else "" for side in block.sides)
    heads = "".join(
        f'<th scope="col"{side}>{escape(text) or "&#160;"}</th>'
        for text, side in zip(block.headings, sides, strict=True)
    )
    rows = "".join(_row(row, sides, to_tick=block.to_tick) for row in block.rows)
    note = f'<p class="small">{escape(block.note)}</p>\n' if block.note else ""
    title = escape(block.title)
    return (
        f'<div class="grid" role="region" aria-label="{title}" tabindex="0">\n'
        f"<table>\n<caption>{title}</caption>\n"
        f"<thead><tr>{tick}{heads}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table></div>\n{note}"
    )


def _row(row: tuple[str, ...], sides: tuple[str, ...], *, to_tick: bool) -> str:
    first, *rest = ((escape(text), side) for text, side in zip(row, sides, strict=True))
    box = f'<td><input type="checkbox" aria-label="{first[0]}"></td>' if to_tick else ""
    cells = "".join(f"<td{side}>{text}</td>" for text, side in rest)
    return f'<tr>{box}<th scope="row"{first[1]}>{first[0]}</th>{cells}</tr>\n'


def _notices(block: Notices) -> str:
    kind = ' class="urgent"' if block.urgent else ""
    entries = "".join(
        f"<li><strong>{escape(one.head)}.</strong> {escape(one.says)}"
        f" <cite>{escape(one.source)}</cite></li>\n"
        for one in block.entries
    )
    return f"<ul{kind}>\n{entries}</ul>\n"


def _pictures(block: Pictures) -> str:
    return "".join(_figures(block))


def _figures(block: Pictures) -> Iterator[str]:
    for drawing in block.drawings:
        kind = "across" if is_across(drawing) else "upright"
        yield f'<figure class="{kind}" tabindex="0">\n{drawing.svg}</figure>\n'


_WRITERS: Mapping[type, Callable[[Any], str]] = MappingProxyType(
    {
        Section: _section,
        Prose: _prose,
        Facts: _facts,
        Grid: _grid,
        Notices: _notices,
        Pictures: _pictures,
    }
)
