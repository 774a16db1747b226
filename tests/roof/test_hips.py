"""Hips and valleys in general, against vectors of the two planes worked out on their own."""

from __future__ import annotations

from fractions import Fraction
from math import atan, cos, degrees, inf, nan, pi, radians, sin, sqrt, tan

import mpmath
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.roof.hips import hip_line, jack_difference
from roofing_core.roof.pitch import hip_valley_factor, slope_factor

#: Angles and lengths go through a few trigonometric functions each.
ROUNDING = 1e-9

PITCHES = st.floats(0.05, 3)
CORNERS = st.floats(radians(20), radians(160))


def _planes(pitch_1: float, pitch_2: float, corner: float):
    """Give the inward normals of two eaves that leave a corner at the origin, and their slopes.

    The first eave runs along +x, the roof lies above it (+y); the second runs off at the corner's
    angle, so that its inward normal is turned back from it.
    """
    return (
        (np.array([0.0, 1.0]), pitch_1),
        (np.array([sin(corner), -cos(corner)]), pitch_2),
    )


@settings(max_examples=500)
@given(PITCHES, PITCHES, CORNERS)
def test_points_of_the_line_are_as_high_on_both_planes(pitch_1, pitch_2, corner):
    line = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    along = np.array([cos(line.plan_angle_1), sin(line.plan_angle_1)])
    heights = [pitch * (inward @ along) for inward, pitch in _planes(pitch_1, pitch_2, corner)]
    assert heights[0] == pytest.approx(heights[1], rel=ROUNDING)
    assert line.slope == pytest.approx(heights[0], rel=ROUNDING)
    assert line.slope > 0
    assert 0 < line.plan_angle_1 < corner
    assert line.plan_angle_1 + line.plan_angle_2 == pytest.approx(corner, rel=ROUNDING)
    assert line.angle == pytest.approx(atan(heights[0]), rel=ROUNDING)


@settings(max_examples=500)
@given(PITCHES, PITCHES, CORNERS)
def test_lengths_and_the_angle_on_the_surface_are_those_of_vectors(pitch_1, pitch_2, corner):
    line = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    # Where the line is 1 of run in from the first eave, in space.
    x, y = 1 / tan(line.plan_angle_1), 1.0
    point = np.array([x, y, pitch_1])
    assert line.plan_factor == pytest.approx(np.hypot(x, y), rel=ROUNDING)
    assert line.factor == pytest.approx(np.linalg.norm(point), rel=ROUNDING)
    eave = np.array([1.0, 0.0, 0.0])
    on_surface = np.arctan2(np.linalg.norm(np.cross(eave, point)), eave @ point)
    assert line.surface_angle == pytest.approx(on_surface, rel=ROUNDING)


@settings(max_examples=500)
@given(PITCHES, PITCHES, CORNERS)
def test_seen_from_the_other_slope_it_is_the_same_line(pitch_1, pitch_2, corner):
    one = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    other = hip_line(pitch_2, pitch_2=pitch_1, corner=corner)
    assert one.plan_angle_1 == pytest.approx(other.plan_angle_2, rel=ROUNDING, abs=1e-12)
    assert one.plan_angle_2 == pytest.approx(other.plan_angle_1, rel=ROUNDING, abs=1e-12)
    assert one.slope == pytest.approx(other.slope, rel=ROUNDING)
    assert one.angle == pytest.approx(other.angle, rel=ROUNDING)
    # One hip of one rise: the runs to it differ as the pitches do, its length does not.
    assert one.factor / pitch_1 == pytest.approx(other.factor / pitch_2, rel=ROUNDING)


@given(PITCHES)
def test_equal_pitches_at_a_square_corner_are_the_short_way(pitch):
    line = hip_line(pitch, pitch_2=pitch)
    assert line.plan_angle_1 == pytest.approx(pi / 4, rel=ROUNDING)
    assert line.factor == pytest.approx(hip_valley_factor(pitch), rel=1e-14)
    assert line.plan_factor == pytest.approx(sqrt(2), rel=1e-14)
    assert line.slope == pytest.approx(pitch / sqrt(2), rel=1e-14)


@given(PITCHES, CORNERS)
def test_equal_pitches_halve_any_corner(pitch, corner):
    line = hip_line(pitch, pitch_2=pitch, corner=corner)
    assert line.plan_angle_1 == pytest.approx(corner / 2, rel=ROUNDING)


@given(PITCHES, PITCHES, CORNERS)
def test_the_line_leans_towards_the_eave_of_the_steeper_slope(pitch_1, pitch_2, corner):
    assume(abs(pitch_1 - pitch_2) > 1e-3)
    line = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    assert (line.plan_angle_1 < line.plan_angle_2) == (pitch_1 > pitch_2)


@given(PITCHES, PITCHES)
def test_at_a_square_corner_runs_are_as_the_pitches(pitch_1, pitch_2):
    assert tan(hip_line(pitch_1, pitch_2=pitch_2).plan_angle_1) == pytest.approx(
        pitch_2 / pitch_1, rel=ROUNDING
    )


def test_factors_as_radicals():
    # 8:12 and 6:12 at a square corner: for 1 of run of the first the line runs 2/3 : 1/2 = 4/3
    # along its eave, so its length is the root of 1 + 16/9 + 4/9.
    line = hip_line(8 / 12, pitch_2=6 / 12)
    assert line.factor**2 == pytest.approx(float(1 + Fraction(16, 9) + Fraction(4, 9)), rel=1e-15)
    assert line.plan_factor == pytest.approx(float(Fraction(5, 3)), rel=1e-15)


def test_the_general_formula_solved_for_the_height():
    # The direction in which both planes rise alike is found, for 8:12 and 10:12 at 120 degrees.
    def rise_apart(a):
        return mpmath.mpf(2) / 3 * mpmath.sin(a) - mpmath.mpf(5) / 6 * mpmath.sin(
            2 * mpmath.pi / 3 - a
        )

    found = mpmath.findroot(rise_apart, 1.2)
    line = hip_line(8 / 12, pitch_2=10 / 12, corner=radians(120))
    assert line.plan_angle_1 == pytest.approx(float(found), rel=1e-14)
    assert degrees(line.plan_angle_1) == pytest.approx(70.893395, abs=0.0000005)


@given(st.floats(1, 48), PITCHES, PITCHES, st.floats(radians(60), radians(90)))
def test_jacks_differ_by_what_the_line_climbs_over_a_spacing(spacing, pitch_1, pitch_2, corner):
    line = hip_line(pitch_1, pitch_2=pitch_2, corner=corner)
    assume(line.plan_angle_1 < radians(88))
    difference = jack_difference(spacing, pitch_1=pitch_1, pitch_2=pitch_2, corner=corner)
    # In the roof surface the line rises by its tangent over the spacing along the eave.
    assert difference == pytest.approx(spacing * tan(line.surface_angle), rel=1e-7)
    run = spacing * tan(line.plan_angle_1)
    assert difference == pytest.approx(run * slope_factor(pitch_1), rel=ROUNDING)


@given(st.floats(1, 48), PITCHES, st.integers(2, 9))
def test_jacks_of_n_spacings_differ_n_times_as_much(spacing, pitch, times):
    one = jack_difference(spacing, pitch_1=pitch, pitch_2=pitch)
    many = jack_difference(spacing * times, pitch_1=pitch, pitch_2=pitch)
    assert many == pytest.approx(times * one, rel=1e-14)


def test_all_that_is_wrong_with_the_pitches_is_told():
    with pytest.raises(Refused) as refused:
        hip_line(0, pitch_2=-0.5)
    assert [one.written() for one in refused.value.faults] == [
        "pitch_1 came as 0:12: over 0:12 and at most 1000:12",
        "pitch_2 came as -6:12: over 0:12 and at most 1000:12",
    ]


@pytest.mark.parametrize(
    ("corner", "came"),
    [(0, "0 deg"), (pi, "180 deg"), (-1, "-57.3 deg"), (nan, "nan"), (inf, "inf")],
)
def test_what_is_no_corner(corner, came):
    with pytest.raises(Refused) as refused:
        hip_line(0.5, pitch_2=0.5, corner=corner)
    assert str(refused.value) == f"corner came as {came}: over 0 deg and under 180 deg"


def test_jacks_need_a_spacing_and_a_hip_that_leans_away():
    with pytest.raises(Refused, match=r"^spacing came as 0 in: more than zero"):
        jack_difference(0, pitch_1=0.5, pitch_2=0.5)
    with pytest.raises(Refused) as refused:
        jack_difference(16, pitch_1=0.1, pitch_2=3, corner=radians(160))
    # tan a1 = sin 160 / (0.1 / 3 + cos 160) = 0.34202 / -0.90636: a1 = 180 - 20.67 = 159.33 deg.
    assert str(refused.value) == (
        "pitch_2 came as a hip at 159 deg to the first eave: under 90 deg, so that the first slope"
        " has jacks"
    )


def test_all_that_is_wrong_with_a_hip_and_its_jacks_is_told_at_once():
    with pytest.raises(Refused) as refused:
        hip_line(0, pitch_2=nan, corner=4)
    assert [one.at for one in refused.value.faults] == [("pitch_1",), ("pitch_2",), ("corner",)]
    with pytest.raises(Refused) as refused:
        jack_difference(0, pitch_1=0, pitch_2=1, corner=0)
    assert [one.at for one in refused.value.faults] == [("spacing",), ("pitch_1",), ("corner",)]
