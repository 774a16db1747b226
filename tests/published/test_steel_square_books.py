"""Steel-square book and carpentry cyclopedia of about 1900: what 17 stands for on a hip."""

from __future__ import annotations

import pytest

from roofing_core.roof.hips import hip_line


def test_hip_is_stepped_off_with_17():
    # 17 in of hip run for each foot of common run, to the inch; 8 1/2 for the half foot of a run
    # of 13 ft 6 in, to the half inch.
    line = hip_line(9 / 12, pitch_2=9 / 12)
    assert 12 * line.plan_factor == pytest.approx(17, abs=0.5)  # in
    assert 6 * line.plan_factor == pytest.approx(8.5, abs=0.25)  # in


def test_rise_of_a_hip_per_foot_of_its_own_run():
    # 10 in per ft on the common rafter: 7 1/17 in on the hip, with 17 taken for 16.97.
    taken_for = 120 / 16.97 - 120 / 17  # in
    line = hip_line(10 / 12, pitch_2=10 / 12)
    assert 12 * line.slope == pytest.approx(7 + 1 / 17, abs=taken_for)
