"""Courses and pieces cover the deck: no gap, no point in two pieces, two shingles over every point.

All of it is read off the plan's own pieces, by geometry that the library does not use.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import fsum

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import box, unary_union

from roofing_core import plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.starters import LaidStarter
from tests.recount.jobs import drawn

# No roof here is over 60 ft, so float dust stays far under this many inches, or square inches.
DUST = 1e-6


@settings(max_examples=60)
@given(drawn())
def test_the_exposed_strips_are_the_slope_without_a_gap(given):
    planned = plan(given.job())
    slope = planned.roof.slope_length
    below = given.job().coursing
    assert planned.courses[0].butt == -(below.starter_past_metal + below.course_past_starter)
    for course, above in pairwise(planned.courses):
        assert course.butt + course.exposure == pytest.approx(above.butt, abs=DUST)
    assert all(course.exposure > 0 for course in planned.courses)
    assert fsum(course.exposure for course in planned.courses) == pytest.approx(
        slope - planned.courses[0].butt, abs=DUST
    )


@settings(max_examples=25)
@given(drawn())
def test_the_exposed_pieces_together_are_the_deck_and_its_overhangs(given):
    planned = plan(given.job())
    shown = [
        box(piece.left, course.butt, piece.right, course.butt + course.exposure)
        for course in planned.courses
        for piece in course.laid
    ]
    laid = unary_union(shown)
    deck = box(0, 0, planned.roof.eave_length, planned.roof.slope_length)
    assert laid.buffer(DUST).covers(deck)
    # The parts overlap nowhere: together they are as large as what they cover.
    assert fsum(part.area for part in shown) == pytest.approx(laid.area, rel=1e-9)
    assert laid.bounds == pytest.approx(
        (
            planned.shingles.start_line,
            planned.courses[0].butt,
            planned.shingles.trim_line,
            planned.roof.slope_length,
        ),
        abs=DUST,
    )


@settings(max_examples=60)
@given(drawn())
def test_two_shingles_lie_over_every_point_below_the_top_edge(given):
    job = given.job()
    # A ready-made strip is as high as it is sold; one that reaches the second course is asked for.
    job = replace(job, starter=replace(job.starter, height=job.shingle.height))
    planned = plan(job)
    slope, strip = planned.roof.slope_length, planned.starter
    strips = [(strip.butt, strip.butt + strip.height)]
    strips += [(course.butt, course.butt + job.shingle.height) for course in planned.courses]
    edges = sorted({0.0, slope, *(e for pair in strips for e in pair if 0 < e < slope)})
    for lower, upper in pairwise(edges):
        middle = (lower + upper) / 2
        layers = sum(bottom < middle < top for bottom, top in strips)
        assert layers > 1, f"{layers} at {middle} in up the slope"


@settings(max_examples=60)
@given(drawn(), st.floats(0, 1))
def test_every_point_of_every_course_is_in_exactly_one_piece(given, share):
    planned = plan(given.job())
    start, stop = planned.shingles.start_line, planned.shingles.trim_line
    at = start + share * (stop - start) * (1 - 1e-12)
    rows = [planned.starter.laid, *(course.laid for course in planned.courses)]
    for laid in rows:
        assert sum(piece.left <= at < piece.right for piece in laid) == 1


@settings(max_examples=60)
@given(drawn())
def test_the_widths_of_the_pieces_are_the_width_of_the_course(given):
    job = given.job()
    planned = plan(job)
    width = planned.shingles.trim_line - planned.shingles.start_line
    assert width == planned.roof.eave_length + 2 * job.coursing.shingle_past_rake
    rows: list[tuple[LaidStarter | LaidCourse, float]] = [
        (planned.starter, planned.starter.piece_length)
    ]
    rows += [(course, job.shingle.length) for course in planned.courses]
    for row, length in rows:
        widths = [piece.right - piece.left for piece in row.laid]
        assert fsum(widths) == pytest.approx(width, abs=DUST)
        for piece, wide in zip(row.laid, widths, strict=True):
            assert 0 < wide <= length + DUST
            assert piece.shingle_to - piece.shingle_from == pytest.approx(wide, abs=DUST)
            assert (piece.left_end == "factory") is (piece.shingle_from == 0)
            assert (piece.right_end == "factory") is (piece.shingle_to == pytest.approx(length))
        assert all(one.right == other.left for one, other in pairwise(row.laid))
        # What is trimmed off at both ends is what the whole shingles have too much.
        spare = row.trim + row.overhang
        assert len(row.laid) * length - spare == pytest.approx(width, abs=DUST)


@settings(max_examples=60)
@given(drawn())
def test_every_nail_line_lies_on_its_own_course(given):
    planned = plan(given.job())
    for course in planned.courses:
        assert course.butt <= course.nail_line <= planned.roof.slope_length
        assert course.nail_line <= course.snap_line
