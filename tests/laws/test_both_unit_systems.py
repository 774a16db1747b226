"""A job measured in millimetres is the job measured in inches: the same counts, the same lengths.

Each length is a whole number of 1/64 in, written once in inches and once in millimetres with all
its decimals (1/64 in is 0.396875 mm), and read by the library's own reader.
"""

from __future__ import annotations

from dataclasses import fields, replace
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core import (
    Decking,
    Job,
    courses,
    metal_run,
    nail_positions,
    plan,
    read_length,
    underlayment,
)
from roofing_core.layers.coursing.courses import Courses
from roofing_core.layers.coursing.nailing import nails_on_piece
from tests.laws.walking import leaves
from tests.recount.jobs import drawn

SIXTY_FOURTHS = 64

# No length here is over 1,000 ft and no area over 10,000 squares: float dust is far below these.
RELATIVE, ABSOLUTE = 1e-9, 1e-7


def in_inches(value: float) -> float:
    """Write a length in inches, with all its decimals, and read it."""
    return read_length(f"{Decimal(round(value * SIXTY_FOURTHS)) / SIXTY_FOURTHS} in")


def in_millimetres(value: float) -> float:
    """Write a length in millimetres, with all its decimals, and read it."""
    ticks = Decimal(round(value * SIXTY_FOURTHS))
    return read_length(f"{ticks * Decimal('25.4') / SIXTY_FOURTHS:f} mm")


#: Numbers among a job's measurements that are not lengths, and lengths that stay as they are.
NOT_LENGTHS = {"pitch", "bundle_weight", "pack_weight", "box_weight", "weight", "volume"}


def measured(job: Any, read: Any) -> Any:
    """Give a job, or a part of one, with every length of a whole number of 1/64 in written anew."""
    changed: dict[str, Any] = {}
    for field in fields(job):
        value = getattr(job, field.name)
        if isinstance(value, tuple):
            changed[field.name] = tuple(map(read, value))
        elif isinstance(value, float) and field.name not in NOT_LENGTHS:
            whole = float(value * SIXTY_FOURTHS).is_integer()
            changed[field.name] = read(value) if whole else value
        elif hasattr(value, "__dataclass_fields__"):
            changed[field.name] = measured(value, read)
    return replace(job, **changed)


def assert_alike(us: Job, metric: Job) -> None:
    """Hold two plans against each other: words and counts the same, measurements up to dust."""
    one, other = dict(leaves(plan(us))), dict(leaves(plan(metric)))
    assert one.keys() == other.keys()
    for at, value in one.items():
        if isinstance(value, float):
            assert other[at] == pytest.approx(value, rel=RELATIVE, abs=ABSOLUTE), at
        else:
            assert other[at] == value, at


@settings(max_examples=60)
@given(drawn())
def test_a_job_in_millimetres_gives_the_plan_of_the_job_in_inches(given):
    job = given.job()
    us, metric = measured(job, in_inches), measured(job, in_millimetres)
    assert us == job
    assert_alike(us, metric)


whole_millimetres = st.fixed_dictionaries(
    {
        "exposure": st.integers(100, 160),
        "more_height": st.integers(51, 80),
        "zone": st.integers(10, 30),
        "below": st.integers(0, 20),
        "edge_distance": st.integers(0, 30),
        "courses": st.integers(2, 60),
    }
)


def millimetres(whole: int) -> float:
    """Read whole millimetres."""
    return read_length(f"{whole} mm")


@settings(max_examples=200)
@given(whole_millimetres)
def test_in_millimetres_a_course_that_just_ends_at_the_top_edge_is_the_last(given):
    slope = given["courses"] * given["exposure"] - given["below"]
    laid = laid_in_millimetres(given, slope)
    assert laid.count == given["courses"]


@settings(max_examples=200)
@given(whole_millimetres)
def test_in_millimetres_a_course_that_can_just_be_nailed_is_nailable(given):
    last = (given["courses"] - 1) * given["exposure"] - given["below"]
    slope = last + given["exposure"] + given["zone"] + given["edge_distance"]
    laid = laid_in_millimetres(given, slope)
    assert laid.courses[given["courses"] - 1].nailable


@settings(max_examples=200)
@given(whole_millimetres)
def test_in_millimetres_tops_that_just_reach_the_top_edge_are_not_trimmed(given):
    last = (given["courses"] - 1) * given["exposure"] - given["below"]
    laid = laid_in_millimetres(given, last + 2 * given["exposure"] + given["more_height"])
    assert laid.courses[given["courses"] - 1].top_trim == 0


def laid_in_millimetres(given: dict[str, int], slope: int) -> Courses:
    """Lay courses of whole millimetres up a slope of whole millimetres."""
    exposure = given["exposure"]
    return courses(
        millimetres(slope),
        shingle_height=millimetres(2 * exposure + given["more_height"]),
        exposure=millimetres(exposure),
        nail_zone_low=millimetres(exposure + given["zone"]),
        nail_zone_high=millimetres(exposure + given["zone"] + 10),
        starter_past_metal=0.0,
        course_past_starter=millimetres(given["below"]),
        edge_distance=millimetres(given["edge_distance"]),
    )


@settings(max_examples=200)
@given(st.integers(30, 90), st.integers(1, 60))
def test_in_millimetres_the_last_nail_may_be_the_one_in_the_last_lap(half_lap, more):
    # The last piece holds its lap and its end nail and no more, so both nails are the same one.
    lap, end_distance, stock = 2 * half_lap, half_lap + more, 3000
    run = metal_run(
        millimetres(stock + 1),
        stock_length=(millimetres(stock),),
        lap=millimetres(lap),
        end_distance=millimetres(end_distance),
        least_piece=0.0,
    )
    assert run.pieces == 2
    assert run.lengths[-1] == pytest.approx(millimetres(half_lap + end_distance))
    assert run.nail_positions[-1] == pytest.approx(millimetres(stock + 1 - end_distance))
    assert run.nail_positions[-1] - run.nail_positions[-2] > 1


@settings(max_examples=200)
@given(st.integers(700, 20_000), st.integers(0, 80))
def test_in_millimetres_a_roll_as_long_as_the_row_is_long_enough(eave, trim):
    laid = underlayment(
        millimetres(eave),
        slope_length=30.0,
        pitch=5 / 12,
        roll_length=millimetres(eave + 2 * trim),
        trim_allowance=millimetres(trim),
    )
    assert (laid.rolls, laid.end_laps) == (1, 0)


@settings(max_examples=200)
@given(st.integers(450, 750), st.integers(2, 20))
def test_in_millimetres_a_top_strip_just_as_wide_as_what_the_first_left_is_ripped_from_it(
    half_width, sheets
):
    # The first strip is half a roll and 1 in (25.4 mm) wide and leaves half a roll less 1 in, which
    # is also how much of each sheet shows: after so many sheets that much of the slope is left.
    shows = Decimal(half_width) - Decimal("25.4")
    slope = read_length(f"{(sheets + 1) * shows} mm")
    laid = underlayment(
        4000.0 / 25.4,
        slope_length=slope,
        pitch=3 / 12,
        roll_width=millimetres(2 * half_width),
        past_metal=0.0,
    )
    assert [row.kind for row in laid.rows] == ["starter_strip", *["full"] * sheets, "top_strip"]
    cuts = [cut for used in laid.roll_plan for cut in used.cuts]
    beside = [cut.row for cut in cuts if cut.taken_from == "rest_of_width"]
    assert beside == [laid.rows[-1].number]


@settings(max_examples=200)
@given(st.integers(900, 1100), st.integers(10, 30))
def test_in_millimetres_a_nail_that_the_cut_goes_through_is_lost(shingle, inset):
    nails = nail_positions(millimetres(shingle), nails=4, end_distance=millimetres(inset))
    from_the_cut = nails_on_piece(millimetres(inset), right=millimetres(shingle), positions=nails)
    to_the_cut = nails_on_piece(0.0, right=millimetres(shingle - inset), positions=nails)
    assert len(from_the_cut) == len(to_the_cut) == 3


def test_the_example_with_its_deck_is_the_same_in_both(shed):
    job = replace(shed, decking=Decking(lay=True))
    us, metric = measured(job, in_inches), measured(job, in_millimetres)
    assert_alike(us, metric)
    assert plan(metric).order.deck_panels.packs == 5
