"""Army subcourse EN0069 (framing and roofing), lesson 2 with its answers, lesson 3 question 4."""

from __future__ import annotations

import pytest

from roofing_core.roof.pitch import pitch_of, slope_factor
from roofing_core.roof.slopes import slope

# The step-off reads the square to 1/12 in for each of ten feet: half of that, ten times.
TEN_STEPS = 10 / 24  # in


def test_common_rafter_by_the_step_off():
    # Run 10 ft, rise 8 in per ft: 14 5/12 x 10 = 144 2/12 in, 12 ft 2/12 in. With 1 ft of overhang
    # along the rafter 13 ft, the fraction dropped.
    rafter = slope(run=120, pitch=8 / 12).slope_length
    assert rafter == pytest.approx(144 + 2 / 12, abs=TEN_STEPS)
    assert (rafter + 12) // 12 == 13


@pytest.mark.parametrize(("rise", "printed"), [(13, 17.69), (16, 20.00)])
def test_figures_under_the_inch_marks(rise, printed):
    # "Under the 16-inch mark appears the number 20.00 inches", under the 13-inch mark 17.69.
    assert 12 * slope_factor(rise / 12) == pytest.approx(printed, abs=0.005)  # in


def test_answer_7_rise_per_foot():
    # 3 ft in a run of 9 ft: 4 in per ft.
    assert 12 * pitch_of(rise=36, run=108) == 4


def test_answer_8_run_of_a_span():
    # Span 20 ft 6 in: run 10 ft 3 in; at 4 in per ft it rises as much as the pitch of it says.
    half = slope(run=(20 * 12 + 6) / 2, pitch=4 / 12)
    assert half.run == 10 * 12 + 3
    assert half.rise == pytest.approx(41)


def test_slope_of_2_in_5():
    # Paragraph 2-4: 2 in per 5 in is 4 4/5 in per ft.
    assert 12 * pitch_of(rise=2, run=5) == pytest.approx(4 + 4 / 5)


def test_lesson_3_least_rise_of_corrugated_metal():
    # At least 4 in per ft over a run of 10 ft.
    assert slope(run=120, pitch=4 / 12).rise == pytest.approx(40)
