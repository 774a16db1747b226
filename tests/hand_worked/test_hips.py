"""Hips and jacks of roofs described in old carpentry books, their lengths worked out by hand."""

from __future__ import annotations

from math import degrees, tan

import pytest

from roofing_core.roof.hips import hip_line, jack_difference
from roofing_core.roof.slopes import slope

HALF_THE_LAST_PLACE = 0.00005  # ft or in


def test_four_hips_that_meet_over_an_oblong():
    # Plan 18 x 28 ft, rise 9 ft, no ridge: the slopes over the long eaves run 9 ft (12:12), those
    # over the short ones 14 ft. Hip in plan: root of 9 ** 2 + 14 ** 2 = 277, 16.6433; in space root
    # of 277 + 81 = 358, 18.9209. Rafters: root of 14 ** 2 + 81 = 277 again, and 9 x root 2.
    line = hip_line(9 / 9, pitch_2=9 / 14)
    assert 9 * line.plan_factor == pytest.approx(16.6433, abs=HALF_THE_LAST_PLACE)
    assert 9 * line.factor == pytest.approx(18.9209, abs=HALF_THE_LAST_PLACE)
    assert slope(run=14, rise=9).slope_length == pytest.approx(16.6433, abs=HALF_THE_LAST_PLACE)
    assert slope(run=9, rise=9).slope_length == pytest.approx(12.7279, abs=HALF_THE_LAST_PLACE)
    # "Difference of jacks = common length / number of spaces": seven spaces of 2 ft to the middle
    # of a long eave.
    assert jack_difference(2, pitch_1=1, pitch_2=9 / 14) == pytest.approx(12.7279 / 7, abs=0.0001)


def test_a_hip_over_13_ft_6_in():
    # Rise 9 in per ft: run 13.5 x root 2 = 19.0919 ft; length 162 in x 1.60078 = 259.3265 in; the
    # common rafter 162 x 5/4 = 202 1/2 in.
    line = hip_line(9 / 12, pitch_2=9 / 12)
    assert 13.5 * line.plan_factor == pytest.approx(19.0919, abs=HALF_THE_LAST_PLACE)
    assert 162 * line.factor == pytest.approx(259.3265, abs=HALF_THE_LAST_PLACE)
    assert slope(run=162, pitch=9 / 12).slope_length == 202.5


def test_one_wall_2_ft_higher():
    # 24 ft wide, 6:12, framed as 28: runs 14 and 10 ft, rafters 15.6525 and 11.1803 ft, the ridge 7
    # ft above the low wall and 5 above the high.
    low, high = slope(run=14, pitch=6 / 12), slope(run=10, pitch=6 / 12)
    assert (low.rise, high.rise) == (7, 5)
    assert low.slope_length == pytest.approx(15.6525, abs=HALF_THE_LAST_PLACE)
    assert high.slope_length == pytest.approx(11.1803, abs=HALF_THE_LAST_PLACE)


def test_the_angle_that_courses_are_cut_to_on_a_hip():
    # 12:12 at a square corner: over 1 of eave the hip lies root 2 up the slope, 54.7356 degrees.
    line = hip_line(1, pitch_2=1)
    assert tan(line.surface_angle) == pytest.approx(2**0.5)
    assert degrees(line.surface_angle) == pytest.approx(54.7356, abs=HALF_THE_LAST_PLACE)
    assert degrees(line.angle) == pytest.approx(35.2644, abs=HALF_THE_LAST_PLACE)
