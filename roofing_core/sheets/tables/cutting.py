"""Tables of what is bought and cut: the order list, metal, rolls, and one list of all cuts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.pieces import SQUARE_CUT
from roofing_core.layers.underlaying.rolls import RollUsed
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.metal_cuts import edge_of
from roofing_core.sheets.drawings.shingle_cuts import courses_told
from roofing_core.sheets.headings import cut_from, plural
from roofing_core.sheets.tables.table import Cell, Column, Table, UnitName


def order_table(plan: Plan) -> Table:
    """Make the order list, in the order of work.

    Args:
        plan: A finished plan.

    Returns:
        One row for each thing to buy, in whole packs, and each size of them; what is needed stands
        with the first size.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [row[:4] for row in order_table(planned).rows if row[0] == "shingles"]
    [('shingles', 'metric_strip', 5, 'bundles')]
    """
    columns = (
        Column(heading="item"),
        Column(heading="material", whom="machines"),
        Column(heading="buy"),
        Column(heading="packs"),
        Column(heading="measured in", whom="machines"),
        Column(heading="each holds"),
        Column(heading="needed"),
        Column(heading="left over"),
        Column(heading="would cover", unit="in2"),
        Column(heading="weight of a pack", unit="lb", whom="machines"),
        Column(heading="weight that stays", unit="lb", whom="machines"),
    )
    rows = tuple(
        (line.item, line.material, size.packs,
         line.pack if size.packs == 1 else plural(line.pack), UnitName(line.needed.unit),
         size.holds, *(("", "", "") if k else (line.needed, line.left_over, line.covers_more)),
         line.pack_weight * size.holds.value / line.pack_holds.value,
         "" if k else line.used_weight)
        for line in plan.order.lines()
        for k, size in enumerate(line.by_size())
    )  # fmt: skip
    return Table(name="order", title="Order list", columns=columns, rows=rows)


def metal_table(plan: Plan, system: System = "us") -> Table:
    """Make the table of the runs of metal, in the order in which they go on.

    Args:
        plan: A finished plan.
        system: The unit system of the lengths that stand together in one cell.

    Returns:
        One row per run.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [row[6] for row in metal_table(planned).rows]
    ['10 ft, 4 ft 10 in', '9 ft 4 in', '9 ft 4 in', '10 ft, 4 ft 6 1/2 in']
    """
    columns = (
        Column(heading="metal on the"),
        Column(heading="material", whom="machines"),
        Column(heading="from", whom="people"),
        Column(heading="lengths bought", whom="machines"),
        Column(heading="length of stock", unit="in", whom="machines"),
        Column(heading="length covered", unit="in", whom="machines"),
        Column(heading="cut to", whom="people"),
        Column(heading="pieces", whom="machines"),
        Column(heading="lap", unit="in"),
        Column(heading="tab", unit="in", whom="machines"),
        Column(heading="tabs", whom="machines"),
        Column(heading="nails"),
        Column(heading="left over", unit="in"),
        Column(heading="weight", unit="lb", whom="machines"),
    )
    rows = tuple(
        (edge_of(plan, run), run.material,
         cut_from(run, system), run.stock, run.stock_length,
         run.run_length, ", ".join(write_length(each, system) for each in run.lengths), run.pieces,
         run.lap if run.laps else "", run.tab, spelt(run.tabs) if run.tab else "", run.nails,
         run.offcut, run.weight)
        for run in plan.metal
    )  # fmt: skip
    return Table(name="metal", title="Metal", columns=columns, rows=rows)


def roll_table(plan: Plan) -> Table:
    """Make the table of the rolls and what is cut from each, in the order of cutting.

    Args:
        plan: A finished plan.

    Returns:
        One row per cut.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [row[:5] for row in roll_table(planned).rows][:2]
    [('underlayment', 1, 1, 'row 1', 172.0), ('underlayment', 1, 2, 'row 2', 172.0)]
    """
    columns = (
        Column(heading="rolls of"),
        Column(heading="roll"),
        Column(heading="cut"),
        Column(heading="for"),
        Column(heading="length", unit="in"),
        Column(heading="width", unit="in"),
        Column(heading="taken from"),
        Column(heading="left on the roll", unit="in"),
    )
    sheets = (
        *_roll_rows("ice barrier", plan.ice_barrier.roll_plan),
        *_roll_rows("underlayment", plan.underlayment.roll_plan),
        *_lining_rows(plan),
    )
    return Table(name="rolls", title="Rolls", columns=columns, rows=sheets)


def _roll_rows(what: str, rolls: Iterable[RollUsed]) -> Iterator[tuple[Cell, ...]]:
    for roll in rolls:
        for k, cut in enumerate(roll.cuts, 1):
            left: Cell = roll.offcut if k == len(roll.cuts) else ""
            taken = spelt(cut.taken_from)
            yield what, roll.number, k, f"row {cut.row}", cut.length, cut.width, taken, left


def _lining_rows(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    roll, used = plan.choices.valley_lining, dict[int, float]()
    last = {piece.roll: k for k, piece in enumerate(plan.valley_lining.pieces)}
    cuts = Counter[int]()
    for k, piece in enumerate(plan.valley_lining.pieces):
        used[piece.roll] = used.get(piece.roll, 0.0) + piece.length
        cuts[piece.roll] += 1
        left: Cell = max(0.0, roll.length - used[piece.roll]) if last[piece.roll] == k else ""
        where = f"valley {piece.valley}"
        yield (
            "valley lining", piece.roll, cuts[piece.roll], where, piece.length, roll.width,
            "length", left,
        )  # fmt: skip


def cut_table(plan: Plan) -> Table:
    """Make the list of all cuts: panels, sheets, metal and shingles, pieces that are alike in one.

    Args:
        plan: A finished plan.

    Returns:
        One row for pieces that are alike. Whole panels and whole shingles are not on it.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [row[:4] for row in cut_table(planned).rows if row[0] == "metal"][:2]
    [('metal', 1, 120.0, ''), ('metal', 1, 58.0, '')]
    """
    columns = (
        Column(heading="cut"),
        Column(heading="pieces"),
        Column(heading="length", unit="in"),
        Column(heading="width", unit="in"),
        Column(heading="left angle", unit="rad"),
        Column(heading="right angle", unit="rad"),
        Column(heading="from"),
        Column(heading="for"),
    )
    rows = (*_panels(plan), *_sheets(plan), *_metal(plan), *_shingles(plan))
    return Table(name="cuts", title="Cuts", columns=columns, rows=rows)


def _panels(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    panel = plan.choices.panel
    for piece in plan.deck.pieces:
        size = (piece.right - piece.left, piece.upper - piece.lower)
        whole = abs(size[0] - panel.length) < DUST and abs(size[1] - panel.width) < DUST
        if not whole:
            where = f"row {piece.row} of {piece.plane}"
            yield "panel", 1, *size, "", "", f"panel {piece.panel}", where


def _sheets(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    for what, roll, _, where, long, wide, *_ in roll_table(plan).rows:
        yield what, 1, long, wide, "", "", f"roll {roll}", where


def _metal(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    for run in plan.metal:
        sources = run.cut_from or (0,) * run.pieces
        for (long, number), many in Counter(zip(run.lengths, sources, strict=True)).items():
            source = f"{spelt(run.material)}, length {number}" if number else spelt(run.material)
            yield "metal", many, long, "", "", "", source, edge_of(plan, run)


def _shingles(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    """Give the pieces of shingle that are cut, by size, ends and plane."""
    shingle = plan.choices.shingle
    found: dict[tuple[Cell, ...], list[int]] = {}
    for course in plan.courses:
        high = shingle.height - course.top_trim
        for piece in course.laid:
            wide = piece.right - piece.left
            square = piece.left_angle == piece.right_angle == SQUARE_CUT
            if square and course.top_trim <= 0 and wide > shingle.length * (1 - DUST):
                continue
            ends: tuple[Cell, Cell] = (piece.left_angle, piece.right_angle)
            found.setdefault((wide, high, *ends, course.plane), []).append(course.number)
    for (*sizes, plane), numbers in found.items():
        where = f"{courses_told(tuple(dict.fromkeys(numbers)))} of {plane}"
        yield "shingle", len(numbers), *sizes, spelt(shingle.name), where
