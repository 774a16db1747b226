"""The whole plan as plain text, to read on a screen or a printer of any kind."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from textwrap import wrap
from types import MappingProxyType

from roofing_core.job.edges import EdgeRun
from roofing_core.job.metal_bought import MetalBought
from roofing_core.job.plan import Plan
from roofing_core.job.telling import all_of
from roofing_core.measures.sentences import write
from roofing_core.measures.units import System
from roofing_core.sheets.cutting import CUTTING_HEADINGS, cutting_rows, shingles_taken
from roofing_core.sheets.headings import ORDER_HEADINGS, cut_from, order_rows, plan_heading

#: Characters in a line of running text; it fits a terminal and a printed page.
WIDTH = 92

_SEVERITIES: Mapping[str, str] = MappingProxyType(
    {
        "stops_the_job": "STOPS THE JOB",
        "breaks_code": "BREAKS CODE",
        "against_practice": "Against practice",
        "worth_knowing": "Worth knowing",
    }
)


def plan_text(plan: Plan, system: System = "us") -> str:
    """Write a plan as plain text: the roof, order list, order of work, tables, findings, cautions.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        Running text in lines of at most 92 characters, tables as wide as their columns, every line
        ended by a newline. The same plan gives the same text.

    Raises:
        Nothing.

    Source:
        The plan's own numbers; lengths to the nearest 1/16 in or mm, and they say so by their form.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> plan_text(planned).splitlines()[0]
    'SINGLE-SLOPE ROOF   14 ft by 9 ft 4 in, pitch 3:12, 1.31 squares'
    """
    parts = (
        _roof(plan, system),
        _order(plan, system),
        _courses(plan, system),
        _cutting(plan, system),
        _metal(plan, system),
        _caps(plan, system),
        _flashings(plan, system),
        _underlayment(plan, system),
        _work(plan, system),
        _findings(plan, system),
        _cautions(plan, system),
    )
    return "\n".join("\n".join(part) + "\n" for part in parts if part)


def _title(text: str) -> list[str]:
    return [text.upper(), "-" * len(text)]


def _paragraph(text: str, indent: str = "", first: str | None = None) -> list[str]:
    start = indent if first is None else first
    return wrap(text, WIDTH, initial_indent=start, subsequent_indent=indent)


def table(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """Set rows under headings in columns, numbers to the right and words to the left.

    Args:
        headings: One per column.
        rows: One text per column.

    Returns:
        One line for the headings and one per row.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> table(("item", "packs"), [("shingles", "5")])
    ['item      packs', 'shingles      5']
    """
    body = [tuple(row) for row in rows]
    widths = [
        max([len(heading), *(len(row[i]) for row in body)]) for i, heading in enumerate(headings)
    ]
    right = [
        bool(body) and all(row[i][:1].isdigit() or row[i][:1] in "-" for row in body)
        for i in range(len(headings))
    ]
    return [
        "  ".join(
            cell.rjust(width) if on_right else cell.ljust(width)
            for cell, width, on_right in zip(row, widths, right, strict=True)
        ).rstrip()
        for row in (tuple(headings), *body)
    ]


def _lengths(values: Iterable[float], system: System) -> str:
    return ", ".join(write(value, "in", system) for value in values)


def _roof(plan: Plan, system: System) -> list[str]:
    roof, weight, shingles = plan.roof, plan.weight, plan.shingles
    return [
        *([plan.name, ""] if plan.name else []),
        plan_heading(plan, system),
        "",
        *_paragraph(
            f"{_rise(plan, system)}"
            f" area {write(roof.area, 'in2', system)}. {shingles.courses} courses,"
            f" {shingles.pieces} pieces; the length laid would fill {shingles.least_by_length}"
            f" shingles and the area {shingles.least_by_area}, were nothing wasted."
            f" {shingles_taken(plan)} On the deck {write(weight.on_deck, 'lb', system)},"
            f" {write(weight.per_plan_area, 'lb/ft2', system)} of plan; to carry up"
            f" {write(weight.to_carry, 'lb', system)}, the heaviest pack"
            f" {write(weight.heaviest, 'lb', system)} ({weight.heaviest_name})."
        ),
        *_notes(plan),
    ]


def _notes(plan: Plan) -> list[str]:
    """Give what the caller wrote, a paragraph a line."""
    if not plan.notes:
        return []
    return ["", *(line for each in plan.notes.split("\n") for line in _paragraph(each) or [""])]


def _rise(plan: Plan, system: System) -> str:
    """Say how a single slope rises, or how long the lines of a roof of several planes are."""
    roof = plan.roof
    if roof.form == "single_slope":
        return f"Run {write(roof.run, 'in', system)}, rise {write(roof.rise, 'in', system)},"
    kinds = dict.fromkeys(line.kind for line in plan.lines)
    lengths = {kind: sum(line.length for line in plan.lines if line.kind == kind) for kind in kinds}
    told = (
        f"{kind.replace('_', ' ')} {write(long, 'in', system)}" for kind, long in lengths.items()
    )
    return f"In all: {', '.join(told)};"


def _order(plan: Plan, system: System) -> list[str]:
    return [*_title("Order list"), *table(ORDER_HEADINGS, order_rows(plan.order, system))]


def _courses(plan: Plan, system: System) -> list[str]:
    note = (
        "Heights are up the slope from the outer face of the eave metal; the first line to snap is "
        f"{_length(plan.shingles.first_snap_line, system)} above the starter's lower edge. Where"
        " tops are trimmed, snap the butt. Clear: from these joints to the nearest of the next"
        " course up."
    )
    lines = _title("Course table")
    for plane in plan.planes:
        lines += [] if len(plan.planes) == 1 else ["", plane.name.capitalize()]
        lines += _plane_courses(plan, plane.name, system)
    return [*lines, *_paragraph(note)]


def _plane_courses(plan: Plan, plane: str, system: System) -> list[str]:
    headings = ("course", "butt", "snap tops", "top off", "first off", "pieces",
                "last one", "clear")  # fmt: skip
    starters = (
        ("starter", strip.butt, None, None, strip.trim, strip.pieces,
         strip.laid[-1].right - strip.laid[-1].left, strip.clearance)
        for strip in plan.starters
        if strip.plane == plane and strip.laid
    )  # fmt: skip
    courses = (
        (
            f"{course.number}" if course.nailable else f"{course.number} closing",
            course.butt,
            course.snap_line if course.top_trim <= 0 else None,
            course.top_trim or None,
            course.trim,
            course.pieces,
            course.laid[-1].right - course.laid[-1].left,
            course.clearance,
        )
        for course in plan.courses
        if course.plane == plane
    )
    cells = [[_cell(value, system) for value in row] for row in (*starters, *courses)]
    return table(headings, cells)


def _cutting(plan: Plan, system: System) -> list[str]:
    rows = cutting_rows(plan, system)
    return [*_title("Shingles cut"), *table(CUTTING_HEADINGS, rows)] if rows else []


def _cell(value: str | int | float | None, system: System) -> str:
    if value is None:
        return "-"
    return _length(value, system) if isinstance(value, float) else str(value)


def _metal(plan: Plan, system: System) -> list[str]:
    rows = [
        (
            _edge_named(plan, run),
            cut_from(run, system),
            ", ".join(_length(piece, system) for piece in run.lengths),
            _length(run.lap, system) if run.laps else "-",
            str(run.nails),
            _length(run.offcut, system),
        )
        for run in plan.metal
    ]
    headings = ("metal", "from", "cut", "lap", "nails", "left over")
    lines = [*_title("Metal"), *table(headings, rows)]
    for bought in plan.metal_bought:
        lines += _metal_cut(bought, system)
    return lines


def _metal_cut(bought: MetalBought, system: System) -> list[str]:
    rows = [
        (
            f"length {cut.number}",
            _length(cut.stock_length, system),
            "; ".join(
                f"{_length(piece.length, system)} for {piece.run}, piece {piece.number}"
                for piece in cut.pieces
            ),
            _length(cut.offcut, system),
        )
        for cut in bought.cuts
    ]
    named = bought.material.replace("_", " ")
    headings = (named, "of", "cut in this order", "left over")
    told = (
        f"{named.capitalize()} bought across runs: {_length(bought.metal, system)} in all, run by"
        f" run {_length(bought.run_by_run, system)}. {bought.verdict.written(system)}"
    )
    return ["", *wrap(told, WIDTH), "", *table(headings, rows)]


def _edge_named(plan: Plan, run: EdgeRun) -> str:
    """Name a run by its edge, and where there are several planes by those too."""
    name = run.edge.replace("_", " ")
    if len(plan.planes) == 1:
        return name
    beyond = f" and {run.beyond}" if run.beyond else ""
    return f"{name} of {run.plane}{beyond}"


def _caps(plan: Plan, system: System) -> list[str]:
    rows = [
        (
            f"{run.line} between {all_of(run.planes)}",
            _length(run.line_length, system),
            str(run.count),
            run.starts_at,
            _length(run.last_length, system),
            str(run.nails),
        )
        for run in plan.caps
    ]
    headings = ("caps on", "length", "caps", "start", "last two show", "nails")
    return [*_title("Caps"), *table(headings, rows)] if rows else []


def _flashings(plan: Plan, system: System) -> list[str]:
    rows = [
        (
            f"{run.side} wall of {run.plane}"
            if run.beside == "wall"
            else f"{run.beside} {run.opening}, {'left' if run.side == 'right' else 'right'} side",
            _length(run.lower, system),
            _length(run.upper, system),
            str(run.count),
            _length(run.lap, system),
            str(run.nails),
        )
        for run in plan.step_flashings
    ]
    headings = ("step flashing", "from", "to", "pieces", "lap", "nails")
    return [*_title("Step flashing"), *table(headings, rows)] if rows else []


def _underlayment(plan: Plan, system: System) -> list[str]:
    rows = [
        (
            f"{row.number} {row.kind.replace('_', ' ')}"
            + (f", {row.plane}" if len(plan.planes) > 1 else ""),
            _length(row.width, system),
            _length(row.lower, system),
            _length(row.upper, system),
            _length(row.head_lap, system) if row.head_lap else "-",
            ", ".join(f"{_length(p.length, system)} of roll {p.roll}" for p in row.pieces),
        )
        for laid in (plan.ice_barrier, plan.underlayment)
        for row in laid.rows
    ]
    headings = ("row", "width", "lower edge", "upper edge", "head lap", "cut")
    return [*_title("Underlayment"), *table(headings, rows)] if rows else []


def _work(plan: Plan, system: System) -> list[str]:
    lines = _title("Order of work")
    for step in plan.steps:
        lines += _paragraph(step.says.written(system), "    ", f"{step.number:2d}. ")
    return lines


def _findings(plan: Plan, system: System) -> list[str]:
    if not plan.findings:
        return []
    lines = _title("Findings")
    for found in plan.findings:
        head = f"{_SEVERITIES[found.severity]}, {found.place}: {found.says.written(system)}"
        lines += _paragraph(f"{head} {found.cure.written(system)} [{found.source}]", "    ", "  - ")
    return lines


def _cautions(plan: Plan, system: System) -> list[str]:
    lines = _title("Cautions")
    for caution in plan.cautions:
        text = f"{caution.about.capitalize()}: {caution.says.written(system)} [{caution.source}]"
        lines += _paragraph(text, "    ", "  ! ")
    return lines


def _length(value: float, system: System) -> str:
    return write(value, "in", system)
