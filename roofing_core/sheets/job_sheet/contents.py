"""What stands on a job sheet, and in which order: first what is read, then what is looked at."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from roofing_core.job.found import Finding
from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.all import DrawingKind, drawings
from roofing_core.sheets.drawings.paper import LONG, SHORT, Drawing
from roofing_core.sheets.headings import plan_heading
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
    Side,
)
from roofing_core.sheets.job_sheet.inputs import changed_choices, materials_used, openings_in
from roofing_core.sheets.tables.all import TableKind, plan_table
from roofing_core.sheets.tables.facts import amounts
from roofing_core.sheets.tables.table import Table
from roofing_core.version import VERSION

#: How findings are headed, the worst first.
_SEVERITIES: Mapping[str, str] = MappingProxyType(
    {
        "stops_the_job": "Stops the job",
        "breaks_code": "Breaks code",
        "against_practice": "Against practice",
        "worth_knowing": "Worth knowing",
    }
)

#: Of these no work may begin before they are seen to.
_URGENT = frozenset(("stops_the_job", "breaks_code"))

#: A cell with one number, its unit after it, or with nothing.
_NUMBER = re.compile(r"(-?[0-9][^,x]*)?")

#: What lies in the deck and the rows, what is cut, what is laid, in the order of work.
_LISTS: tuple[TableKind, ...] = (
    "metal", "lengths", "rows", "courses", "offcuts", "caps", "flashings",
)  # fmt: skip

#: The drawings on the sheet, where they show more than its tables; the others can be had alone.
_DRAWN: tuple[DrawingKind, ...] = (
    "roof_plan", "metal_cuts", "shingle_cuts", "caps", "flashings", "sections", "plane",
)  # fmt: skip


def job_sheet(plan: Plan, *, system: System = "us", page_size: PageSize | None = None) -> Sheet:
    """Put a job sheet together: the roof, what to buy, to cut and to do, and what to look out for.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.
        page_size: What it is printed on; Letter for US units and A4 for metric ones unless said.

    Returns:
        The sheet, still to be written out.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> sheet = job_sheet(planned)
    >>> sheet.title, sheet.page_size, sheet.subtitle
    ('Job sheet', 'letter', 'Single-slope roof, 14 ft by 9 ft 4 in, pitch 3:12, 1.31 squares')
    """
    form, _, size = plan_heading(plan, system).partition("   ")
    return Sheet(
        title=plan.name or "Job sheet",
        subtitle=f"{form.capitalize()}, {size}",
        page_size=page_size or ("a4" if system == "metric" else "letter"),
        version=f"roofing-core {VERSION}",
        blocks=tuple(_blocks(plan, system)),
    )


def _blocks(plan: Plan, system: System) -> Iterator[Block]:
    if plan.notes:
        yield Prose(lines=tuple(line for line in plan.notes.split("\n") if line.strip()))
    urgent = [found for found in plan.findings if found.severity in _URGENT]
    if urgent:
        yield Section(text="Before anything else")
        yield _findings(urgent, system, urgent=True)
    yield Section(text="The roof")
    yield Facts(pairs=tuple((what, one.written(system)) for what, one in amounts(plan)))
    yield Section(text="Order list")
    yield _grid(plan_table(plan, "order", system=system), system)
    yield Section(text="Order of work")
    yield _steps(plan, system)
    yield from _lists(plan, system)
    yield from _warnings(plan, system)
    yield from _inputs(plan, system)
    yield from _drawings(plan, system)


def _grid(table: Table, system: System, *, title: str = "") -> Grid:
    shown = table.for_whom("people")
    cells = tuple(
        tuple(column.text(cell, system) for column, cell in zip(shown.columns, row, strict=True))
        for row in shown.rows
    )
    return Grid(
        title=title or table.title,
        headings=tuple(column.heading for column in shown.columns),
        sides=tuple(map(_side, zip(*cells, strict=True))),
        rows=cells,
        to_tick=True,
        note=table.note,
    )


def _side(column: tuple[str, ...]) -> Side:
    """Stand numbers to the right, words and lists to the left."""
    return "right" if all(map(_NUMBER.fullmatch, column)) else "left"


def _steps(plan: Plan, system: System) -> Grid:
    rows = tuple((str(step.number), step.says.written(system)) for step in plan.steps)
    return Grid(
        title="Order of work", headings=("step", "what to do"), sides=("right", "left"), rows=rows,
        to_tick=True,
    )  # fmt: skip


def _lists(plan: Plan, system: System) -> Iterator[Block]:
    """Give what is cut and what is laid, plane by plane, with a note once where there is one."""
    yield Section(text="Cut lists and measurements")
    tables = (
        _panels(plan),
        _lining(plan),
        *(plan_table(plan, kind, system=system) for kind in _LISTS),
    )
    for table in tables:
        apart = table.name == "courses" or len(plan.planes) == 1
        parts = list(table.by_plane()) if apart else [table]
        for k, part in enumerate(parts):
            if part.rows:
                yield Section(text=part.title, level=3)
                last = k == len(parts) - 1
                yield _grid(part if last else replace(part, note=""), system)


def _panels(plan: Plan) -> Table:
    """Give the panels that are cut, of the list of all cuts."""
    cuts = plan_table(plan, "cuts")
    return _part(cuts, "panel", "Panels that are cut", ("for", "from", "length", "width"))


def _lining(plan: Plan) -> Table:
    """Give the pieces that valleys are lined with, of the cuts of all rolls."""
    rolls = plan_table(plan, "rolls")
    return _part(rolls, "valley lining", "Valley lining", ("for", "roll", "length", "width"))


def _part(table: Table, first: str, title: str, headings: Sequence[str]) -> Table:
    """Give the rows that begin with a word, and some of their columns."""
    there = [column.heading for column in table.columns]
    kept = [there.index(heading) for heading in headings]
    return replace(
        table,
        title=title,
        columns=tuple(table.columns[k] for k in kept),
        rows=tuple(tuple(row[k] for k in kept) for row in table.rows if row[0] == first),
    )


def _findings(found: Sequence[Finding], system: System, *, urgent: bool = False) -> Notices:
    entries = (
        Notice(
            head=f"{_SEVERITIES[one.severity]}, {one.place}",
            says=f"{one.says.written(system)} {one.cure.written(system)}",
            source=one.source,
        )
        for one in found
    )
    return Notices(entries=tuple(entries), urgent=urgent)


def _warnings(plan: Plan, system: System) -> Iterator[Block]:
    rest = [found for found in plan.findings if found.severity not in _URGENT]
    if rest:
        yield Section(text="Findings")
        yield _findings(rest, system)
    yield Section(text="Cautions")
    yield Notices(
        entries=tuple(
            Notice(
                head=caution.about.capitalize(),
                says=caution.says.written(system),
                source=caution.source,
            )
            for caution in plan.cautions
        )
    )


def _inputs(plan: Plan, system: System) -> Iterator[Block]:
    yield Section(text="Inputs")
    chosen = (*openings_in(plan, system), *materials_used(plan), *changed_choices(plan, system))
    yield Facts(pairs=chosen)
    yield Prose(
        lines=(
            f"Worked out by roofing-core {VERSION} from the roof above. All that is not listed here"
            " is as that version has it unless told otherwise.",
        ),
        small=True,
    )


def _drawings(plan: Plan, system: System) -> Iterator[Block]:
    """Give the drawings, upright ones first: those across the page take a page each."""
    idle = {"roof_plan"} if len(plan.planes) == 1 else set()
    idle |= set() if plan.metal_bought else {"metal_cuts"}
    kinds = [kind for kind in _DRAWN if kind not in idle]
    drawn = [one for kind in kinds for one in drawings(plan, kind, system=system)]
    pictures = tuple(sorted(drawn, key=is_across))
    told = "; ".join(dict.fromkeys(one.title.partition(", page ")[0] for one in pictures))
    yield Section(text="Drawings")
    yield Prose(
        lines=(f"Printed at full size, all are to the scale that they name: {told}.",), small=True
    )
    yield Pictures(drawings=pictures)


def is_across(drawing: Drawing) -> bool:
    """Tell whether a drawing lies across the page.

    Args:
        drawing: A drawing.

    Returns:
        Whether it is wider than an upright page has room for.

    Raises:
        Nothing.

    Source:
        The sizes of A4 and Letter.

    >>> is_across(Drawing(name="", title="", says="", width=245, height=100, svg=""))
    True
    """
    return drawing.width > (LONG + SHORT) / 2
