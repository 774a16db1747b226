"""Rows, rolls, lengths of metal and panels: what is cut adds up to what lies, laps and all."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import fsum

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import box, unary_union

from roofing_core import Decking, deck, metal_run, plan
from tests.recount.jobs import drawn

# No run here is over 300 ft, so float dust stays far under this many inches, or square inches.
DUST = 1e-6


@settings(max_examples=80)
@given(drawn())
def test_the_rows_of_underlayment_cover_the_deck_as_often_as_the_pitch_asks(given):
    planned = plan(given.job())
    rows, slope = planned.underlayment.rows, planned.roof.slope_length
    edges = sorted({0.0, slope, *(e for r in rows for e in (r.lower, r.upper) if 0 < e < slope)})
    least = 2 if planned.roof.pitch < 4 / 12 - 1e-9 else 1
    assert planned.underlayment.layers == least
    for lower, upper in pairwise(edges):
        middle = (lower + upper) / 2
        assert sum(row.lower < middle < row.upper for row in rows) >= least


@settings(max_examples=80)
@given(drawn())
def test_each_row_laps_what_is_below_it_and_its_pieces_lap_each_other(given):
    job = given.job()
    planned = plan(job)
    how, eave = job.underlaying, planned.roof.eave_length
    for number, row in enumerate(planned.underlayment.rows, 1):
        assert row.number == number
        assert row.upper == pytest.approx(row.lower + row.width - row.trim, abs=DUST)
        below = [one.upper for one in planned.underlayment.rows[: number - 1]]
        lapped = min(row.upper, max(below, default=row.lower)) - row.lower
        assert row.head_lap == pytest.approx(lapped, abs=DUST)
        assert row.pieces[0].left == -how.trim_allowance
        assert row.pieces[-1].right == pytest.approx(eave + how.trim_allowance, abs=DUST)
        for one, other in pairwise(row.pieces):
            assert one.right - other.left == pytest.approx(how.end_lap, abs=DUST)
        cut = fsum(piece.length for piece in row.pieces)
        span = eave + 2 * how.trim_allowance
        assert cut == pytest.approx(span + how.end_lap * len(row.end_laps), abs=DUST)


@settings(max_examples=80)
@given(drawn())
def test_end_laps_of_rows_that_touch_stand_apart(given):
    job = given.job()
    for row, above in pairwise(plan(job).underlayment.rows):
        apart = [abs(one - other) for one in row.end_laps for other in above.end_laps]
        assert min(apart, default=1e9) >= job.underlaying.end_lap_stagger - DUST


@settings(max_examples=80)
@given(drawn())
def test_every_roll_is_used_up_by_its_cuts_and_its_offcut(given):
    job = given.job()
    laid = plan(job).underlayment
    lengths: dict[int, float] = {}
    for used in laid.roll_plan:
        by_length = [cut.length for cut in used.cuts if cut.taken_from == "length"]
        assert fsum([*by_length, used.offcut]) == pytest.approx(job.underlayment.length, abs=DUST)
        for cut in used.cuts:
            assert cut.width <= job.underlayment.width
            lengths[cut.row] = lengths.get(cut.row, 0.0) + cut.length
    laying = {row.number: fsum(p.length for p in row.pieces) for row in laid.rows}
    assert lengths == pytest.approx(laying, abs=DUST)
    # A strip ripped from beside another fits into the width that it left.
    for used in laid.roll_plan:
        beside = [cut for cut in used.cuts if cut.taken_from == "rest_of_width"]
        strips = [cut for cut in used.cuts if cut.width < job.underlayment.width]
        if beside:
            assert fsum(cut.width for cut in strips) <= job.underlayment.width + DUST


@settings(max_examples=80)
@given(drawn())
def test_the_cut_list_of_every_run_is_its_length_with_laps_and_tabs(given):
    job = given.job()
    planned = plan(job)
    eave, slope = planned.roof.eave_length, planned.roof.slope_length
    along = {
        "eave": eave,
        "left_rake": slope,
        "right_rake": slope,
        "ridge": eave + 2 * job.metalwork.ridge_proud,
    }
    tabs = {"eave": 2 * job.metalwork.eave_tab}
    for run in planned.metal:
        assert run.run_length == along[run.edge]
        needed = along[run.edge] + tabs.get(run.edge, 0.0) + len(run.laps) * job.metalwork.lap
        assert fsum(run.lengths) == pytest.approx(needed, abs=DUST)
        assert len(run.laps) == run.pieces - 1
        whole = fsum([*run.lengths, *run.offcuts])
        assert whole == pytest.approx(run.stock * run.stock_length, abs=DUST)
        assert run.offcut == pytest.approx(fsum(run.offcuts), abs=DUST)
        assert all(0 < piece <= run.stock_length for piece in run.lengths)


@settings(max_examples=80)
@given(drawn())
def test_no_two_nails_of_a_run_stand_further_apart_than_asked(given):
    how = given.job().metalwork
    for run in plan(given.job()).metal:
        spacing = how.ridge_nail_spacing if run.edge == "ridge" else how.nail_spacing
        gaps = [b - a for a, b in pairwise(run.nail_positions)]
        assert all(0 < gap <= spacing + DUST for gap in gaps)
        ends = max(run.nail_positions[0], run.run_length - run.nail_positions[-1])
        assert ends <= max(how.end_distance, run.run_length / 2)
        for lap in run.laps:
            middle = lap + how.lap / 2
            assert min(abs(nail - middle) for nail in run.nail_positions) < DUST


@settings(max_examples=150)
@given(
    st.integers(16, 12 * 16 * 80).map(lambda n: n / 16),
    st.lists(st.integers(60 * 16, 144 * 16).map(lambda n: n / 16), min_size=1, max_size=4),
    st.integers(60 * 16, 144 * 16).map(lambda n: n / 16),
)
def test_one_more_stock_length_on_offer_never_takes_more_metal(run_length, offer, one_more):
    without = metal_run(run_length, stock_length=tuple(offer))
    with_it = metal_run(run_length, stock_length=(*offer, one_more))
    bought = with_it.stock * with_it.stock_length
    assert bought <= without.stock * without.stock_length + DUST
    assert without.stock_length in offer
    assert without.stock * without.stock_length >= without.cut_length


@settings(max_examples=25)
@given(drawn(), st.sampled_from([12.0, 16.0, 24.0]))
def test_the_panels_of_a_deck_are_the_deck_and_their_joints_are_taped(given, spacing):
    job = replace(given.job(), decking=Decking(lay=True, support_spacing=spacing))
    laid = plan(job).deck
    parts = [box(one.left, one.lower, one.right, one.upper) for one in laid.pieces]
    whole = unary_union(parts)
    assert fsum(part.area for part in parts) == pytest.approx(laid.area, rel=1e-9)
    assert whole.area == pytest.approx(laid.area, rel=1e-9)
    # Every joint is an edge of two pieces, and the outline is an edge of one.
    edges = fsum(part.length for part in parts)
    assert (edges - whole.length) / 2 == pytest.approx(laid.tape_length, abs=DUST)
    per_panel = {one.panel: 0.0 for one in laid.pieces}
    for one, part in zip(laid.pieces, parts, strict=True):
        per_panel[one.panel] += part.area
    assert laid.panels == len(per_panel) >= laid.least_panels >= laid.panels_by_area
    assert max(per_panel.values()) <= job.panel.length * job.panel.width + DUST


def test_a_deck_that_is_not_part_of_the_job_is_none(shed):
    with_deck = plan(replace(shed, decking=Decking(lay=True)))
    assert plan(shed).deck.panels == 0
    assert with_deck.deck == deck(168, slope_length=112)
    assert with_deck.order.deck_panels.packs == with_deck.deck.panels == 5
