"""A residential trade journal: its factor tables, an estimate, a question answered, joint layouts.

Slope and hip factors for 4:12 to 12:12; "Estimating with a spreadsheet"; a question on a roof whose
walls differ in height; the field guide's layouts of three-tab strips, and its step flashing.
"""

from __future__ import annotations

import pytest

from roofing_core import generated_sequence, step_flashing, step_flashing_size
from roofing_core.layers.coursing.offsets import offsets
from roofing_core.roof.pitch import hip_valley_factor, slope_factor
from roofing_core.roof.slopes import roof_area, slope

# Three places, some of them cut off after rounding by hand: the hip at 11:12 is 1.6853.
THREE_PLACES = 0.0015


def test_slope_factor_at_11_in_12():
    assert slope_factor(11 / 12) == pytest.approx(1.356, abs=THREE_PLACES)


@pytest.mark.parametrize(("rise", "printed"), [(4, 1.452), (8, 1.564), (10, 1.642), (11, 1.684)])
def test_hip_and_valley_factors(rise, printed):
    assert hip_valley_factor(rise / 12) == pytest.approx(printed, abs=THREE_PLACES)


def test_the_hip_factor_at_7_in_12_is_not_the_misprint():
    # 1.524 is in a widely copied table; the root of 2 + 49/144 is 1.5298.
    assert hip_valley_factor(7 / 12) - 1.524 > 3 * THREE_PLACES


def test_estimating_with_a_spreadsheet():
    # "13.4164 inches per foot of run for a 6/12 roof", 1,820 ft2 on the flat.
    assert 12 * slope_factor(6 / 12) == pytest.approx(13.4164, abs=0.00005)  # in, as printed
    on_the_slope = roof_area(1820 * 12, run=12, pitch=6 / 12)
    assert on_the_slope.squares == pytest.approx(18.20 * 13.4164 / 12, abs=0.001)  # squares


def test_a_wall_2_ft_higher_shortens_the_run():
    # Question and answer, 24 ft wide, 6:12: 24 in / 0.5 = 48 in of run; framed as 28 ft wide.
    missing = slope(rise=24, pitch=6 / 12).run
    assert missing == 48
    assert 24 * 12 + missing == 28 * 12


def _laid(*sequence: float):
    return offsets(600, shingle_length=36, sequence=sequence, courses=24)


def test_6_in_back_and_forth_lines_up_every_other_course():
    laid = _laid(0, 6)
    assert laid.period == 2
    assert {course.clearance_two for course in laid.courses} == {0}
    assert {course.clearance for course in laid.courses} == {6}


def test_6_in_diagonal_covers_the_joints_better():
    laid = _laid(0, 6, 12, 18, 24, 30)
    assert min(course.clearance_two for course in laid.courses) > 0
    assert {course.clearance for course in laid.courses} == {6}


def test_5_in_restarted_after_seven_lines_up_every_eight_courses_counted_inclusively():
    laid = _laid(0, 5, 10, 15, 20, 25, 30)
    inclusively = laid.period + 1
    assert inclusively == 8
    assert laid.courses[0].joints == laid.courses[inclusively - 1].joints
    assert all(laid.courses[0].joints != course.joints for course in laid.courses[1:7])


def test_metric_strips_step_by_half_a_tab():
    # "6 1/2 in usual" where inch strips step 6 in.
    assert generated_sequence(39.375)[1] == 6.5
    assert generated_sequence(36)[1] == 6


def test_step_flashing_for_5_in_of_exposure():
    # The field guide: 7 x 10 in, bent 5 and 5; "exposure plus 2 in"; one for each course, lapped 2
    # in, about 1/4 in short of the butt of the shingle over it.
    size = step_flashing_size(5)
    assert (size.length, size.width, size.deck_leg, size.wall_leg) == (7, 10, 5, 5)
    laid = step_flashing(0, upper=20, exposure=5, piece_length=size.length, first_butt=0)
    assert [(piece.course, piece.lower) for piece in laid.pieces] == [
        (1, 0.25), (2, 5.25), (3, 10.25), (4, 15.25),
    ]  # fmt: skip
    assert laid.lap == 2


def test_step_flashing_in_bad_weather():
    assert step_flashing_size(5, lap=3).length == 8  # "3 in", the same guide
