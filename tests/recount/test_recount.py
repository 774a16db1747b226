"""Hundreds of random roofs, planned by the library and laid by hand, compared field by field.

The hand work is in `shingles`, `metal` and `underlayment` beside this file: slow, plain, in whole
ticks, and without a line of the library. Where a tick is 1/64 in a float holds every measurement
exactly, and all fields are compared; only nails that divide a length evenly are rounded at all.
Where a tick is 1/10 mm hardly any float is exact, and every count has to be right in spite of it.
"""

from __future__ import annotations

import ast
from dataclasses import fields
from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from roofing_core import Plan, plan
from roofing_core.job.edges import EdgeRun
from tests.recount import metal, shingles, underlayment
from tests.recount.jobs import IN_TENTHS_OF_MM, INCH, Drawn, drawn, inches

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


def strip_nails(given: Drawn) -> int:
    """Give the nails of a whole strip: six in high wind or above 21:12, else four."""
    steep = Fraction(given.rise_48, 48) > Fraction(21, 12)
    return 6 if steep or given.high_wind else 4


def nails_of(row: shingles.Row, given: Drawn, *, piece: int) -> int:
    """Count the nails of a row by hand."""
    end = min(given.ticks["nailing.end_distance"], piece // 4)
    eave = given.ticks["roof.eave_length"]
    return shingles.nail_row(row, per_strip=strip_nails(given), end_distance=end, eave=eave)


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
        # As far up as the deck allows, but on what shows of the course: half-way up it at least.
        highest = max(Fraction(last_nail), Fraction(line.butt + slope, 2))
        assert course.nail_line == float(min(line.butt + middle, highest) / INCH)
        assert_row_is(course, courses[k], eave)
        one_up, two_up = (shingles.clearance(joints[k], joints[k + n], width=width) for n in (1, 2))
        assert (course.clearance, course.clearance_two) == (inches(one_up), inches(two_up))
        assert course.nails == nails_of(courses[k], given, piece=t["shingle.length"])


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_starter_lies_where_it_does_by_hand(given):
    strip = plan(given.job()).starter
    starter, courses, _ = laid_shingles(given)
    t = given.ticks
    eave = t["roof.eave_length"]
    ready = given.made == "ready_made"
    piece = t["starter.length"] if ready else t["shingle.length"]
    height = t["starter.height"] if ready else t["shingle.height"] - t["shingle.exposure"]
    assert_row_is(strip, starter, eave)
    assert strip.butt == inches(-t["coursing.starter_past_metal"])
    assert strip.height == inches(height)
    assert strip.piece_length == inches(piece)
    assert strip.nails == nails_of(starter, given, piece=piece)
    width = eave + 2 * t["coursing.shingle_past_rake"]
    clear = shingles.clearance(starter.joints(eave), courses[0].joints(eave), width=width)
    assert strip.clearance == inches(clear)


@settings(max_examples=ROOFS)
@given(drawn())
def test_the_sums_over_all_courses_are_those_counted_by_hand(given):
    summed = plan(given.job()).shingles
    starter, courses, lines = laid_shingles(given)
    courses = courses[: len(lines)]
    t = given.ticks
    eave, slope, piece = t["roof.eave_length"], t["roof.slope_length"], t["shingle.length"]
    width = eave + 2 * t["coursing.shingle_past_rake"]
    past = t["coursing.starter_past_metal"] + t["coursing.course_past_starter"]
    pieces = sum(len(row.laid) for row in courses)
    joints = [row.joints(eave) for row in (starter, *courses)]
    ends = [end.right - end.left for row in courses for end in (row.laid[0], row.laid[-1])]
    closing = [line for line in lines if not line.zone_on_deck]
    bedded = sum((slope - max(line.butt, 0)) * width for line in closing)
    assert {one.name: getattr(summed, one.name) for one in fields(summed)} == {
        "courses": len(lines),
        "closing_courses": len(closing),
        "pieces": pieces,
        "shingles": pieces,
        "starter_shingles": 0 if given.made == "ready_made" else len(starter.laid),
        "least_by_length": shingles.packs(width * len(lines), piece),
        "least_by_area": shingles.packs(eave * slope, piece * t["shingle.exposure"]),
        "headlap": inches(t["shingle.height"] - 2 * t["shingle.exposure"]),
        "first_snap_line": inches(lines[0].tops + t["coursing.starter_past_metal"]),
        "last_butt": inches(lines[-1].butt),
        "start_line": inches(-t["coursing.shingle_past_rake"]),
        "trim_line": inches(eave + t["coursing.shingle_past_rake"]),
        "period": shingles.repeats_after(t["shingle.sequence"]),
        "least_clearance": inches(
            min(shingles.clearance(*pair, width=width) for pair in pairwise(joints))
        ),
        "narrowest_end_piece": inches(min(ends)),
        "nails_per_strip": strip_nails(given),
        "nails": sum(nails_of(row, given, piece=piece) for row in courses),
        "bedding_area": bedded / INCH**2,
        "exposed_area": pytest.approx(width * (slope + past) / INCH**2, rel=1e-12),
    }


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
        sheets = underlayment.two_layers(slope=slope, past=past, width=width, inch=given.inch)
    else:
        sheets = underlayment.one_layer(
            slope=slope, past=past, width=width, lap=t["underlaying.head_lap"]
        )
    rolls = underlayment.Rolls(
        length=t["roll.length"],
        width=width,
        lap=t["underlaying.end_lap"],
        stagger=t["underlaying.end_lap_stagger"],
        # No piece of a row that is lapped at its ends is shorter than 2 ft.
        least_piece=24 * given.inch,
    )
    span = t["roof.eave_length"] + 2 * t["underlaying.trim_allowance"]
    underlayment.roll_out(sheets, rolls, span=span)
    return sheets, rolls, span


def cap_nails_by_hand(given: Drawn, sheets: list[underlayment.Sheet]) -> int:
    """Count cap nails by hand; in high wind 6 in apart on laps, 12 in on two lines or more."""
    t, windy = given.ticks, given.high_wind
    on_laps, between = t["underlaying.lap_spacing"], t["underlaying.field_spacing"]
    return underlayment.cap_nails(
        sheets,
        eave=t["roof.eave_length"],
        slope=t["roof.slope_length"],
        lap_spacing=min(on_laps, 6 * given.inch) if windy else on_laps,
        field_spacing=min(between, 12 * given.inch) if windy else between,
        lines=max(given.field_lines, 2) if windy else given.field_lines,
    )


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
    assert laid.fasteners == cap_nails_by_hand(given, sheets)
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


@settings(max_examples=ROOFS)
@given(drawn(inch=IN_TENTHS_OF_MM))
def test_shingles_in_whole_millimetres_are_counted_as_by_hand(given):
    planned = plan(given.job())
    starter, courses, lines = laid_shingles(given)
    courses = courses[: len(lines)]
    t = given.ticks
    assert planned.shingles.courses == len(lines)
    assert [course.nailable for course in planned.courses] == [line.zone_on_deck for line in lines]
    eave, piece = t["roof.eave_length"], t["shingle.length"]
    assert [course.pieces for course in planned.courses] == [len(row.laid) for row in courses]
    assert [len(course.joints) for course in planned.courses] == [
        len(row.joints(eave)) for row in courses
    ]
    assert [c.nails for c in planned.courses] == [nails_of(c, given, piece=piece) for c in courses]
    assert planned.starter.pieces == len(starter.laid)
    by_length = shingles.packs((eave + 2 * t["coursing.shingle_past_rake"]) * len(lines), piece)
    assert planned.shingles.least_by_length == by_length


@settings(max_examples=ROOFS)
@given(drawn(inch=IN_TENTHS_OF_MM))
def test_sheets_and_metal_in_whole_millimetres_are_counted_as_by_hand(given):
    planned = plan(given.job())
    for run in planned.metal:
        by_hand = run_by_hand(given, run.edge)
        assert (run.pieces, len(run.nail_positions)) == (len(by_hand.lengths), len(by_hand.nails))
        assert run.stock_length == pytest.approx(by_hand.stock / given.inch, abs=1e-9)
    sheets, rolls, _ = rolled_out(given)
    laid = planned.underlayment
    assert [row.kind for row in laid.rows] == [sheet.kind for sheet in sheets]
    assert [len(row.pieces) for row in laid.rows] == [len(sheet.pieces) for sheet in sheets]
    assert laid.rolls == len(rolls.cuts)
    assert laid.fasteners == cap_nails_by_hand(given, sheets)


@pytest.mark.parametrize("name", ["shingles", "metal", "underlayment"])
def test_the_hand_work_uses_nothing_of_the_library(name):
    tree = ast.parse((HERE / f"{name}.py").read_text(encoding="utf-8"))
    imported = {
        alias.name if isinstance(node, ast.Import) else str(node.module)
        for node in ast.walk(tree)
        if isinstance(node, ast.Import | ast.ImportFrom)
        for alias in node.names
    }
    assert imported <= {"__future__", "dataclasses", "fractions", "itertools"}
