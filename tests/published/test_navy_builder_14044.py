"""Builder 3 & 2, volume 2 (NAVEDTRA 14044), chapters 2 and 3, worked examples and questions.

The Navy's training course for builders: chapter 2 frames roofs, chapter 3 covers them.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.caps import caps
from roofing_core.layers.coursing.courses import courses
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.materials import Cap, Shingle, material
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.sentences import write_length
from roofing_core.roof.hips import hip_line, jack_difference
from roofing_core.roof.pitch import hip_valley_factor, pitch_of, slope_factor
from roofing_core.roof.slopes import roof_area, slope

HALF_A_HUNDREDTH_IN = 0.005  # in
HALF_A_HUNDREDTH_FT = 0.005  # ft

# The manual works with 13.89 in per foot of run, itself rounded: 8 ft of run carry 8 such errors.
EIGHT_FEET_OF_RUN = 8 * HALF_A_HUNDREDTH_IN  # in


def test_common_rafter_of_figure_2_17():
    # Span 16 ft, unit rise 7 in: 13.89 x 8 = 111.12 in, "9 ft 3 1/8 in".
    rafter = slope(run=8 * 12, pitch=7 / 12).slope_length
    assert 12 * slope_factor(7 / 12) == pytest.approx(13.89, abs=HALF_A_HUNDREDTH_IN)
    assert rafter == pytest.approx(111.12, abs=EIGHT_FEET_OF_RUN)
    assert write_length(111.12) == write_length(rafter) == "9 ft 3 1/8 in"


def test_hip_rafter():
    # Half span 15 ft, unit rise 8 in: total rise 10 ft, run 21.21 ft, length 23.45 ft; unit length
    # 18.76 in, unit run 16.97 in.
    line = hip_line(8 / 12, pitch_2=8 / 12)
    assert 15 * line.plan_factor == pytest.approx(21.21, abs=HALF_A_HUNDREDTH_FT)
    assert 15 * line.factor == pytest.approx(23.45, abs=HALF_A_HUNDREDTH_FT)
    assert 15 * hip_valley_factor(8 / 12) == pytest.approx(23.45, abs=HALF_A_HUNDREDTH_FT)
    assert 15 * line.plan_factor * line.slope == pytest.approx(10)
    assert 12 * line.factor == pytest.approx(18.76, abs=HALF_A_HUNDREDTH_IN)
    assert 12 * line.plan_factor == pytest.approx(16.97, abs=HALF_A_HUNDREDTH_IN)


def test_hip_jacks_of_figures_2_51_and_2_52():
    # 16 in apart, unit rise 8 in: 12 : 14.42 :: 16 : 19.23, the next one twice that. The text says
    # that the triangle has two 16 in sides; that is the hip's run. Its own figure takes one of 16.
    first = jack_difference(16, pitch_1=8 / 12, pitch_2=8 / 12)
    assert first == pytest.approx(19.23, abs=HALF_A_HUNDREDTH_IN)
    assert jack_difference(32, pitch_1=8 / 12, pitch_2=8 / 12) == pytest.approx(
        2 * 19.23, abs=2 * HALF_A_HUNDREDTH_IN
    )
    assert first == pytest.approx(16 * 14.42 / 12, abs=16 / 12 * HALF_A_HUNDREDTH_IN)


def test_pitch_and_slope_are_two_things():
    # Rise 4 ft, run 12 ft: pitch (rise over span) 1/6, slope 4 in 12.
    ratio = pitch_of(rise=4 * 12, run=12 * 12)
    assert 12 * ratio == 4
    assert ratio / 2 == pytest.approx(1 / 6)


def test_question_3_22_pitch_of_a_span():
    # Rise 6 in per foot, span 32 ft; of 1/8, 1/4, 1/2 and 3/16 it is 1/4. Total rise 8 ft.
    total_rise = slope(run=16 * 12, pitch=6 / 12).rise
    assert total_rise == 8 * 12
    assert total_rise / (32 * 12) == 1 / 4


def test_table_3_2_area_of_a_roof_from_its_plan():
    # Plan with overhangs 70 x 30 ft, rise 5 1/2 in: factor 1.100, 2,310 ft2. Three places.
    half_a_thousandth = 0.0005
    assert slope_factor(5.5 / 12) == pytest.approx(1.100, abs=half_a_thousandth)
    both = 2 * roof_area(70 * 12, run=15 * 12, pitch=5.5 / 12).area / 144
    assert both == pytest.approx(2310, abs=half_a_thousandth * 2100)  # ft2


def test_question_3_27_bundles_of_42_and_a_third_squares():
    # Of 127, 381, 609 and 1,143 bundles: three a square are 127, and not one more for float dust.
    squares = 42 + 1 / 3
    assert whole_pieces(squares * 3) == 127
    assert whole_pieces(squares / (1 / 3)) == 127


def test_terms_of_a_12_in_strip():
    # Exposure 5 in: top lap 7, head lap 2 in, measured to the shingle two courses below.
    laid = courses(120, shingle_height=12, exposure=5)
    assert laid.headlap == 2
    first, second = laid.courses[:2]
    assert first.snap_line - second.butt == 7
    assert first.snap_line - laid.courses[2].butt == 2


def test_strips_in_a_bundle():
    assert material(Shingle, "inch_three_tab").per_bundle == 27


def test_first_course_stands_a_quarter_to_three_eighths_past_the_metal():
    # Printed of the first course and its starter: ours puts the starter there.
    assert 1 / 4 <= -courses(120, shingle_height=12, exposure=5).starter_butt <= 3 / 8


def test_low_slope_underlayment_of_figure_3_14():
    # Head lap 19 in, exposure 17 in, two layers at the eave line.
    laid = underlayment(168, slope_length=200, pitch=3 / 12)
    assert (laid.head_lap, laid.exposure, laid.layers) == (19, 17, 2)
    assert laid.rows[0].lower == laid.rows[1].lower
    assert laid.rows[2].lower - laid.rows[1].lower == 17


def test_a_ridge_of_a_third_of_a_strip():
    # Chapter 3, Ridge: "one-third of a 12- by 36-inch strip", each lapped 5 to 6 in. With 5 in
    # showing, 7 in of the 12 are lapped.
    cap, strip = material(Cap, "inch_cap"), material(Shingle, "inch_three_tab")
    assert (cap.length, cap.width) == (strip.height, strip.length / 3) == (12, 36 / 3)
    laid = caps(120, line="ridge", cap_length=cap.length, exposure=cap.exposure)
    assert cap.length - laid.exposure >= 6
