"""Hundreds of random roofs, planned by the library and laid by hand, compared field by field.

The hand work is in `shingles`, `metal` and `underlayment` beside this file: slow, plain, in whole
ticks of 1/64 in, and without a line of the library. Every measurement drawn is a whole number of
ticks, which a float holds exactly; only nails that divide a length evenly are rounded at all.
"""

from __future__ import annotations

import ast
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from roofing_core import Plan, plan
from roofing_core.job.edges import EdgeRun
from tests.recount import metal, shingles, underlayment
from tests.recount.jobs import INCH, Drawn, drawn, inches

ROOFS = 300
HERE = Path(__file__).parent

#: A nail that divides a length evenly is rounded once or twice by the library: 1e-9 in is far more.
NAIL_DUST = 1e-9


def laid_shingles(given: Drawn) -> tuple[shingles.Row, list[shingles.Row], list[shingles.Line]]:
    """Lay the starter and every course by hand, and two more courses for the clearances above."""
    t = given.ticks
    rake, eave = t["coursing.shingle_past_rake"], t["roof.eave_length"]
    below = t["coursing.starter_past_metal"] + t["coursing.course_past_starter"]
    lines = shingles.climb(
        slope=t["roof.slope_length"],
        below=below,
        exposure=t["shingle.exposure"],
        height=t["shingle.height"],
        zone_low=t["shingle.nail_zone_low"],
        edge_distance=t["coursing.edge_distance"],
    )
    trims = t["shingle.sequence"]
    courses = [
        shingles.lay_row(
            start=-rake,
            stop=eave + rake,
            trim=trims[k % len(trims)],
            piece_length=t["shingle.length"],
        )
        for k in range(len(lines) + 2)
    ]
    ready = given.made == "ready_made"
    starter = shingles.lay_row(
        start=-rake,
        stop=eave + rake,
        trim=t["starter.trim"],
        piece_length=t["starter.length"] if ready else t["shingle.length"],
    )
    return starter, courses, lines


def nails_of(row: shingles.Row, given: Drawn, *, piece: int) -> int:
    """Count the nails of a row by hand: six in a strip in high wind or above 21:12, else four."""
    steep = Fraction(given.rise_48, 48) > Fraction(21, 12)
    end = min(given.ticks["nailing.end_distance"], piece // 4)
    return shingles.nail_row(
        row, per_strip=6 if steep or given.high_wind else 4, end_distance=end
    )


def assert_row_is(found: Any, row: shingles.Row, eave: int) -> None:
    """Compare one course, or the starter, with the same laid by hand."""
    assert found.trim == inches(row.trim)
    assert found.pieces == len(row.laid) == len(found.laid)
    assert found.joints == tuple(map(inches, row.joints(eave)))
    assert found.overhang == inches(row.run_over)
    for k, (piece, by_hand) in enumerate(zip(found.laid, row.laid, strict=True)):
        assert piece.number == k + 1
        assert (piece.left, piece.right) == (inches(by_hand.left), inches(by_hand.right))
        assert piece.shingle_from == inches(by_hand.taken_from)
        assert piece.shingle_to == inches(by_hand.taken_to)
        assert (piece.left_end == "cut") is row.cut_at_left(k)
        assert (piece.right_end == "cut") is row.cut_at_right(k)


@settings(max_examples=ROOFS)
@given(drawn())
def test_every_course_lies_where_it_does_by_hand(given):
    planned = plan(given.job())
    _, courses, lines = laid_shingles(given)
    t = given.ticks
    eave, slope = t["roof.eave_length"], t["roof.slope_length"]
    width = eave + 2 * t["coursing.shingle_past_rake"]
    joints = [row.joints(eave) for row in courses]
    middle = Fraction(t["shingle.nail_zone_low"] + t["shingle.nail_zone_high"], 2)
    last_nail = slope - t["coursing.edge_distance"]
    assert len(planned.courses) == len(lines)
    for k, (course, line) in enumerate(zip(planned.courses, lines, strict=True)):
        assert course.number == k + 1
        assert course.butt == inches(line.butt)
        assert course.snap_line == inches(line.tops)
        assert course.exposure == inches(line.shows)
        assert course.top_trim == inches(line.cut_off_top)
        assert course.nailable is line.zone_on_deck
        assert course.nail_line == float(min(line.butt + middle, last_nail) / INCH)
        assert_row_is(course, courses[k], eave)
        one_up, two_up = (
            shingles.clearance(joints[k], joints[k + n], width=width) for n in (1, 2)
        )
        assert (course.clearance, course.clearance_two) == (inches(one_up), inches(two_up))
        assert course.nails == nails_of(courses[k], given, piece=t["shingle.length"])


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_starter_and_the_sums_are_those_counted_by_hand(given):
    planned = plan(given.job())
    starter, courses, lines = laid_shingles(given)
    courses = courses[: len(lines)]
    t, summed = given.ticks, planned.shingles
    eave, slope, rake = (
        t["roof.eave_length"], t["roof.slope_length"], t["coursing.shingle_past_rake"],
    )  # fmt: skip
    width = eave + 2 * rake
    ready = given.made == "ready_made"
    piece = t["starter.length"] if ready else t["shingle.length"]
    height = t["starter.height"] if ready else t["shingle.height"] - t["shingle.exposure"]
    assert_row_is(planned.starter, starter, eave)
    assert planned.starter.butt == inches(-t["coursing.starter_past_metal"])
    assert planned.starter.height == inches(height)
    assert planned.starter.piece_length == inches(piece)
    assert planned.starter.nails == nails_of(starter, given, piece=piece)

    joints = [row.joints(eave) for row in courses]
    first = shingles.clearance(starter.joints(eave), joints[0], width=width)
    between = [
        shingles.clearance(lower, upper, width=width)
        for lower, upper in zip(joints, joints[1:], strict=False)
    ]
    ends = [end.right - end.left for row in courses for end in (row.laid[0], row.laid[-1])]
    closing = [line for line in lines if not line.zone_on_deck]
    assert planned.starter.clearance == inches(first)
    assert summed.least_clearance == inches(min([first, *between]))
    assert summed.narrowest_end_piece == inches(min(ends))
    assert summed.courses == len(lines)
    assert summed.closing_courses == len(closing)
    assert summed.pieces == summed.shingles == sum(len(row.laid) for row in courses)
    assert summed.starter_shingles == (0 if ready else len(starter.laid))
    assert summed.least_by_length == shingles.packs(width * len(lines), t["shingle.length"])
    assert summed.least_by_area == shingles.packs(
        eave * slope, t["shingle.length"] * t["shingle.exposure"]
    )
    assert summed.headlap == inches(t["shingle.height"] - 2 * t["shingle.exposure"])
    assert summed.last_butt == inches(lines[-1].butt)
    assert summed.first_snap_line == inches(lines[0].tops + t["coursing.starter_past_metal"])
    assert (summed.start_line, summed.trim_line) == (inches(-rake), inches(eave + rake))
    assert summed.period == shingles.repeats_after(t["shingle.sequence"])
    assert summed.nails == sum(nails_of(row, given, piece=t["shingle.length"]) for row in courses)
    bedded = sum((slope - max(line.butt, 0)) * width for line in closing)
    assert summed.bedding_area == bedded / INCH**2


def run_by_hand(given: Drawn, edge: str) -> metal.Run:
    """Cut, lay and nail one edge by hand."""
    t = given.ticks
    along, offer, tab = {
        "eave": (t["roof.eave_length"], "eave_metal", t["metalwork.eave_tab"]),
        "left_rake": (t["roof.slope_length"], "rake_metal", 0),
        "right_rake": (t["roof.slope_length"], "rake_metal", 0),
        "ridge": (t["roof.eave_length"] + 2 * t["metalwork.ridge_proud"], "ridge_metal", 0),
    }[edge]
    return metal.lay_run(
        along,
        offer=t[f"{offer}.stock_lengths"],
        lap=t["metalwork.lap"],
        tab=tab,
        spacing=t["metalwork.ridge_nail_spacing" if edge == "ridge" else "metalwork.nail_spacing"],
        end_distance=t["metalwork.end_distance"],
        least_piece=t["metalwork.least_piece"],
    )


def assert_run_is(found: EdgeRun, by_hand: metal.Run, tabs: int) -> None:
    """Compare one run of metal with the same cut by hand."""
    assert found.stock_length == inches(by_hand.stock)
    assert found.pieces == found.stock == len(by_hand.lengths)
    assert found.lengths == tuple(float(Fraction(cut) / INCH) for cut in by_hand.lengths)
    offcuts = [by_hand.stock - cut for cut in by_hand.lengths]
    assert found.offcuts == tuple(float(Fraction(rest) / INCH) for rest in offcuts)
    assert found.offcut == float(Fraction(sum(offcuts)) / INCH)
    assert found.laps == tuple(float(Fraction(start) / INCH) for start in by_hand.laps_start)
    assert len(found.nail_positions) == len(by_hand.nails)
    nails = [float(nail / INCH) for nail in by_hand.nails]
    assert found.nail_positions == pytest.approx(nails, abs=NAIL_DUST)
    assert found.tab_nails == tabs
    assert found.nails == len(by_hand.nails) + tabs


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_metal_is_cut_and_nailed_as_by_hand(given):
    planned = plan(given.job())
    runs = {run.edge: run_by_hand(given, run.edge) for run in planned.metal}
    assert list(runs) == ["eave", "left_rake", "right_rake", "ridge"]
    for run in planned.metal:
        tabs = 2 if run.edge == "eave" and given.ticks["metalwork.eave_tab"] else 0
        assert_run_is(run, runs[run.edge], tabs)
    for kind, edges in (("eave", 1), ("rake", 2), ("ridge", 1)):
        line = getattr(planned.order, f"{kind}_metal")
        by_hand = [run for edge, run in runs.items() if edge.endswith(kind)]
        assert len(by_hand) == edges
        assert line.packs == sum(len(run.lengths) for run in by_hand)
        needed = Fraction(sum(sum(run.lengths) for run in by_hand)) / INCH
        assert line.needed.value == float(needed)


def rolled_out(given: Drawn) -> tuple[list[underlayment.Sheet], underlayment.Rolls, int]:
    """Roll out the underlayment by hand."""
    t = given.ticks
    slope, past, width = t["roof.slope_length"], t["underlaying.past_metal"], t["roll.width"]
    if given.two_layers:
        sheets = underlayment.two_layers(slope=slope, past=past, width=width)
    else:
        sheets = underlayment.one_layer(
            slope=slope, past=past, width=width, lap=t["underlaying.head_lap"]
        )
    rolls = underlayment.Rolls(
        length=t["roll.length"],
        width=width,
        lap=t["underlaying.end_lap"],
        stagger=t["underlaying.end_lap_stagger"],
    )
    span = t["roof.eave_length"] + 2 * t["underlaying.trim_allowance"]
    underlayment.roll_out(sheets, rolls, span=span)
    return sheets, rolls, span


def assert_rows_are(planned: Plan, sheets: list[underlayment.Sheet], trim: int) -> None:
    """Compare the rows with the same rolled out by hand."""
    for row, sheet in zip(planned.underlayment.rows, sheets, strict=True):
        assert row.kind == sheet.kind
        assert (row.lower, row.upper) == (inches(sheet.lower), inches(sheet.upper))
        assert row.width == inches(sheet.width)
        assert row.head_lap == inches(sheet.over_below)
        assert row.trim == inches(sheet.lower + sheet.width - sheet.upper)
        lying = [(piece.roll, piece.left, piece.right) for piece in row.pieces]
        assert lying == [
            (roll, inches(left - trim), inches(right - trim)) for roll, left, right in sheet.pieces
        ]
        assert row.end_laps == tuple(inches(left - trim) for _, left, _ in sheet.pieces[1:])


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_underlayment_is_rolled_out_as_by_hand(given):
    planned = plan(given.job())
    sheets, rolls, span = rolled_out(given)
    t, laid = given.ticks, planned.underlayment
    assert laid.layers == (2 if given.two_layers else 1)
    assert_rows_are(planned, sheets, t["underlaying.trim_allowance"])
    assert laid.rolls == len(rolls.cuts)
    by_length = [
        [cut.length for cut in used.cuts if cut.taken_from == "length"] for used in laid.roll_plan
    ]
    assert by_length == [[inches(cut) for cut in cuts] for cuts in rolls.cuts]
    assert [used.offcut for used in laid.roll_plan] == [
        inches(rolls.length - sum(cuts)) for cuts in rolls.cuts
    ]
    assert laid.left_over == inches(rolls.length - sum(rolls.cuts[-1]))
    laps = [len(sheet.pieces) - 1 for sheet in sheets]
    assert laid.end_laps == sum(laps)
    lap = t["underlaying.end_lap"]
    cut = sum(s.width * (span + lap * n) for s, n in zip(sheets, laps, strict=True))
    stays = sum(
        (s.upper - s.lower) * (t["roof.eave_length"] + lap * n)
        for s, n in zip(sheets, laps, strict=True)
    )
    assert laid.area_cut == cut / INCH**2
    assert laid.area_laid == stays / INCH**2
    assert laid.fasteners == underlayment.cap_nails(
        sheets,
        eave=t["roof.eave_length"],
        slope=t["roof.slope_length"],
        lap_spacing=t["underlaying.lap_spacing"],
        field_spacing=t["underlaying.field_spacing"],
        lines=given.field_lines,
    )
    assert planned.order.underlayment.packs == len(rolls.cuts)
    assert planned.order.underlayment.needed.value == inches(sum(map(sum, rolls.cuts)))


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_packs_are_those_opened_by_hand(given):
    order = plan(given.job()).order
    starter, courses, lines = laid_shingles(given)
    used = sum(len(row.laid) for row in courses[: len(lines)])
    strips = len(starter.laid)
    ready = given.made == "ready_made"
    used += 0 if ready else strips
    opened = shingles.packs(used, given.per_bundle)
    assert (order.shingles.packs, order.shingles.needed.value) == (opened, used)
    assert order.shingles.left_over.value == opened * given.per_bundle - used
    assert order.starter.packs == (shingles.packs(strips, 30) if ready else 0)
    area = Fraction(given.ticks["roof.eave_length"] * given.ticks["roof.slope_length"], INCH**2)
    more = area * (opened * given.per_bundle - used) / used
    assert order.shingles.covers_more == pytest.approx(float(more), rel=1e-12)


@pytest.mark.parametrize("name", ["shingles", "metal", "underlayment"])
def test_the_hand_work_uses_nothing_of_the_library(name):
    tree = ast.parse((HERE / f"{name}.py").read_text(encoding="utf-8"))
    imported = {
        alias.name if isinstance(node, ast.Import) else str(node.module)
        for node in ast.walk(tree)
        if isinstance(node, ast.Import | ast.ImportFrom)
        for alias in node.names
    }
    assert imported <= {"__future__", "dataclasses", "fractions"}
