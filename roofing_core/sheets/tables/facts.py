"""The facts of a job in one table: what it is called, its roof, what is laid, what that weighs."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import Amount
from roofing_core.sheets.tables.table import Cell, Column, Table, UnitName
from roofing_core.version import VERSION


def fact_table(plan: Plan) -> Table:
    """Make the table of a job's facts.

    Args:
        plan: A finished plan.

    Returns:
        One row per fact, a number with its unit beside it.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> fact_table(plan(Job(roof=roof, name="Tool store"))).rows[0]
    ('name', 'Tool store', '')
    """
    columns = (
        Column(heading="fact"),
        Column(heading="value"),
        Column(heading="measured in", whom="machines"),
    )
    return Table(name="job", title="Job", columns=columns, rows=tuple(_rows(plan)))


def _rows(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    words = (("name", plan.name), ("notes", plan.notes), ("version", f"roofing-core {VERSION}"))
    yield from ((what, text, "") for what, text in words if text)
    yield from ((what, amount, UnitName(amount.unit)) for what, amount in amounts(plan))


def amounts(plan: Plan) -> Iterator[tuple[str, Amount]]:
    """Give the measurements and counts of a job.

    Args:
        plan: A finished plan.

    Returns:
        What each is, and the number with its unit.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> next(amounts(plan(Job(roof=roof))))
    ('eave', Amount(value=168, unit='in'))
    """
    roof, weight = plan.roof, plan.weight
    one = roof.form == "single_slope"
    yield "eave" if one else "eaves, all together", Amount(roof.eave_length, "in")
    yield "slope" if one else "slope of the largest plane", Amount(roof.slope_length, "in")
    if one:
        yield "run", Amount(roof.run, "in")
        yield "rise", Amount(roof.rise, "in")
    for what, long in _lines(plan):
        yield what, Amount(long, "in")
    yield "pitch" if one else "lowest pitch", Amount(roof.lowest_pitch, "pitch")
    if not one:
        yield "steepest pitch", Amount(roof.steepest_pitch, "pitch")
    yield "area on the slope", Amount(roof.area, "in2")
    yield "area from above", Amount(roof.plan_area, "in2")
    yield "squares", Amount(roof.squares, "square")
    if not one:
        yield "planes", Amount(len(plan.planes), "count")
    yield from _shingles(plan)
    yield "weight on the deck", Amount(weight.on_deck, "lb")
    yield "weight on each unit of plan", Amount(weight.per_plan_area, "lb/ft2")
    yield "weight to carry up", Amount(weight.to_carry, "lb")
    yield f"heaviest pack ({weight.heaviest_name})", Amount(weight.heaviest, "lb")


def _shingles(plan: Plan) -> Iterator[tuple[str, Amount]]:
    shingles = plan.shingles
    yield "courses", Amount(shingles.courses, "count")
    yield "pieces", Amount(shingles.pieces, "count")
    yield "shingles for the courses", Amount(shingles.shingles, "count")
    yield f"shingles in all ({_rows_in(plan)})", Amount(plan.cutting.shingles, "count")
    yield "shingles by the area alone", Amount(shingles.least_by_area, "count")


def _rows_in(plan: Plan) -> str:
    """Say which rows come from the same bundles, and whether their offcuts are used again."""
    rows = {"starter": "starter", "course": "courses", "cap": "caps"}
    told = ", ".join(rows[row] for row in plan.cutting.holds)
    return f"{told}; offcuts used again" if plan.cutting.reuse == "best" else told


def _lines(plan: Plan) -> Iterator[tuple[str, float]]:
    """Give the length of each kind of line of a roof of several planes, but its eaves."""
    lengths: dict[str, float] = {}
    for line in plan.lines if plan.roof.form != "single_slope" else ():
        if line.kind != "eave":
            name = f"{line.kind.replace('_', ' ')}, all together"
            lengths[name] = lengths.get(name, 0.0) + line.length
    return iter(lengths.items())
