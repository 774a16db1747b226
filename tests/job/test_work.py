"""The order of work: the stages in their order, with the measurements that the layers have."""

from __future__ import annotations

from itertools import groupby

import pytest

from roofing_core import Plan, plan
from roofing_core.job.work import Step
from roofing_core.measures.sentences import Amount
from tests.job.changing import changed

STAGES = [
    "deck", "eave metal", "underlayment", "rake metal", "starter", "courses", "closing course",
    "ridge metal", "trim", "clean up",
]  # fmt: skip


@pytest.fixture(scope="module")
def planned(shed) -> Plan:
    """Give the plan of the example."""
    return plan(shed)


def told(planned: Plan, stage: str) -> list[Step]:
    """Give the steps of a stage."""
    return [step for step in planned.steps if step.stage == stage]


def lengths(step: Step) -> list[float]:
    """Give the lengths that a step names, in order."""
    return [
        part.value for part in step.says.parts if isinstance(part, Amount) and part.unit == "in"
    ]


def test_the_stages_come_in_the_order_of_work(planned):
    assert [stage for stage, _ in groupby(step.stage for step in planned.steps)] == STAGES
    assert [step.number for step in planned.steps] == list(range(1, len(planned.steps) + 1))


def test_an_ice_barrier_goes_under_the_underlayment(shed):
    with_ice = plan(changed(shed, underlaying__ice_barrier=True))
    stages = [stage for stage, _ in groupby(step.stage for step in with_ice.steps)]
    assert stages == [*STAGES[:2], "ice barrier", *STAGES[2:]]
    (step,) = told(with_ice, "ice barrier")
    assert lengths(step) == [with_ice.ice_barrier.upper, with_ice.ice_barrier.reach]


def test_a_roof_without_a_closing_course_has_no_step_for_it(shed):
    # 6 7/8 in more than the last butt: a zone from 6 1/8 in up is just 3/4 in below the top edge,
    # and an exposure of 7 in would reach it, but 5 5/8 in does not.
    short = changed(
        shed, roof__slope_length=106.375 + 6.875, shingle__height=17.0, shingle__exposure=7.0,
        shingle__nail_zone_low=7.5, shingle__nail_zone_high=8.5, roof__pitch=5 / 12,
    )  # fmt: skip
    planned = plan(changed(short, roof__slope_length=-0.5 + 14 * 7.0, coursing__edge_distance=0.0))
    assert planned.shingles.courses == 14
    lowest = plan(short)
    for one in (planned, lowest):
        closing = [course for course in one.courses if not course.nailable]
        assert len(told(one, "closing course")) == len(closing) == one.shingles.closing_courses


def test_the_metal_is_cut_as_the_layers_have_it(planned):
    runs = {run.edge: run for run in planned.metal}
    for stage, edge in (
        ("eave metal", "eave"),
        ("rake metal", "left_rake"),
        ("ridge metal", "ridge"),
    ):
        (step,) = told(planned, stage)
        run = runs[edge]
        said = lengths(step)
        assert set(run.lengths) <= set(said)
        assert (run.lap in said) is bool(run.laps)
        widest = max(
            b - a for a, b in zip(run.nail_positions, run.nail_positions[1:], strict=False)
        )
        assert widest in said
        assert f"({run.nails} nails)" in step.says.written()
    (eave,) = told(planned, "eave metal")
    assert lengths(eave)[-1] == runs["eave"].tab == 2


def test_the_rows_of_underlayment_are_told_where_they_lie(planned):
    first, others, *_ = told(planned, "underlayment")
    laid = planned.underlayment.rows
    assert f"in {len(laid)} rows off {planned.underlayment.rolls} roll." in first.says.written()
    assert lengths(first) == [-laid[0].lower, planned.choices.underlaying.trim_allowance]
    assert lengths(others) == [*(row.lower for row in laid[1:]), 19, laid[-1].head_lap]


@pytest.mark.parametrize(("rise", "kind"), [(3, "top_strip"), (5, "full")])
def test_rows_that_pass_the_top_edge_are_told_to_be_trimmed(shed, rise, kind):
    # In one layer the last row passes the top edge; in two layers the one before the top strip.
    laid = plan(changed(shed, roof__pitch=rise / 12))
    rows = laid.underlayment.rows
    assert rows[-1].kind == kind
    assert any(row.trim > 0 for row in rows)
    assert told(laid, "underlayment")[-1].says.written() == (
        "Trim the underlayment flush with the top edge."
    )


def test_rows_without_a_head_lap_are_told_in_whole_sentences(clean):
    planned = plan(changed(clean, underlaying__head_lap=0.0))
    assert {row.head_lap for row in planned.underlayment.rows} == {0}
    for step in told(planned, "underlayment"):
        assert " ." not in step.says.written()


def test_the_strips_that_are_ripped_from_a_roll_are_told_with_their_widths(planned):
    # Below 4:12 the first row is a strip of 19 in and the last is what is left of the slope.
    rows = planned.underlayment.rows
    strips = {row.width for row in rows if row.kind != "full"}
    assert strips == {19, rows[-1].width}
    widths = {width for step in told(planned, "underlayment") for width in lengths(step)}
    assert "strip" in " ".join(s.says.written() for s in told(planned, "underlayment"))
    assert strips <= widths


def test_end_laps_are_told_row_by_row(shed):
    long = plan(changed(shed, roof__eave_length=1200.0, underlayment__length=864.0))
    lapped = [row for row in long.underlayment.rows if row.end_laps]
    steps = [step for step in told(long, "underlayment") if "End laps" in step.says.written()]
    assert len(lapped) > 5
    for row, step in zip(lapped, steps, strict=True):
        assert step.says.written().startswith(f"End laps of row {row.number} from the left rake")
        assert tuple(lengths(step)) == row.end_laps


def test_the_courses_are_told_by_their_lines(planned):
    first, laying, *trimmed = told(planned, "courses")
    shingle = planned.choices.shingle
    assert lengths(first) == [planned.shingles.first_snap_line, shingle.exposure]
    assert lengths(laying) == [shingle.nail_zone_low, shingle.nail_zone_high, *shingle.sequence]
    assert [lengths(step) for step in trimmed] == [
        [course.butt, course.top_trim]
        for course in planned.courses
        if course.nailable and course.top_trim
    ]
    (closing,) = told(planned, "closing course")
    last = planned.courses[-1]
    assert lengths(closing) == [last.butt, last.top_trim, last.nail_line]


def test_the_closing_course_in_both_systems(planned):
    # Butt 106 3/8, height 13 1/4 less 5 5/8 in of slope left, nails 3/4 in below 112 in.
    (closing,) = told(planned, "closing course")
    assert closing.says.written("us") == (
        "Course 20 closes the roof: snap its butt at 8 ft 10 3/8 in, trim 7 5/8 in off the tops,"
        " bed it in asphalt cement, nail it along the top at 9 ft 3 1/4 in (17 nails), and dab"
        " every nail."
    )
    assert closing.says.written("metric") == (
        "Course 20 closes the roof: snap its butt at 2702 mm, trim 194 mm off the tops,"
        " bed it in asphalt cement, nail it along the top at 2826 mm (17 nails), and dab"
        " every nail."
    )


def test_the_first_snap_line_is_13_in_above_the_starter(planned):
    assert (
        told(planned, "courses")[0]
        .says.written("us")
        .startswith(
            "Snap the first line 13 in above the lower edge of the starter, and one every 5 5/8 in"
        )
    )
    assert (
        told(planned, "courses")[0]
        .says.written("metric")
        .startswith(
            "Snap the first line 330 mm above the lower edge of the starter, and one every 143 mm"
        )
    )


def test_the_trim_is_told_by_the_least_and_the_most_that_runs_over(planned):
    # Ends of 11, 17, 22 and 28 in are left of 39 3/8 in shingles.
    (step,) = told(planned, "trim")
    assert lengths(step) == [0.25, 39.375 - 28, 39.375 - 11, 0.25]


def test_the_starter_is_told_by_how_it_is_made(shed, planned):
    (step,) = told(planned, "starter")
    assert lengths(step) == [7.625, 4, 0.25, 0.25]
    assert step.says.written().startswith("Cut 5 starter strips 7 5/8 in high from shingles")
    (ready,) = told(plan(changed(shed, starter__made="ready_made")), "starter")
    assert ready.says.written().startswith("Take 5 starter strips.")
    assert lengths(ready) == [4, 0.25, 0.25]


def test_a_deck_that_is_laid_is_told_before_it_is_checked(shed, planned):
    laid = plan(changed(shed, decking__lay=True))
    first, check = told(laid, "deck")
    assert first.says.written().startswith(f"Lay {laid.deck.panels} panels, ")
    assert lengths(first)[-1] == laid.deck.tape_length
    assert told(planned, "deck")[0].says == check.says
    # 168 and 112 in: 56 times 3 and 2, so a diagonal of 56 times the root of 13.
    assert lengths(check)[:2] == [168, 112]
    assert lengths(check)[2] == pytest.approx(56 * 13**0.5, rel=1e-12)
