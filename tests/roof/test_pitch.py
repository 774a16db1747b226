"""Pitch functions: exact roots as oracle, columns as numbers, bounds, and the sentences."""

from __future__ import annotations

from itertools import pairwise
from math import degrees, inf, nan, pi

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.roof.pitch import (
    STEEPEST,
    hip_valley_factor,
    pitch_angle,
    pitch_factors,
    pitch_of,
    slope_factor,
)

#: One rounding of the square, one of the sum, one of the root: a unit or two in the last place.
LAST_PLACES = 4e-16

PITCHES = st.floats(0, STEEPEST)
ROOF_PITCHES = st.floats(0, 3)

FUNCTIONS = (slope_factor, hip_valley_factor, pitch_angle)


@pytest.fixture(scope="module", autouse=True)
def fifty_digits():
    with mpmath.workdps(50):
        yield


@settings(max_examples=500)
@given(PITCHES)
def test_factors_are_the_roots_and_the_arctangent(pitch):
    exactly = mpmath.mpf(pitch)
    assert slope_factor(pitch) == pytest.approx(float(mpmath.sqrt(1 + exactly**2)), rel=LAST_PLACES)
    assert hip_valley_factor(pitch) == pytest.approx(
        float(mpmath.sqrt(2 + exactly**2)), rel=LAST_PLACES
    )
    assert pitch_angle(pitch) == pytest.approx(float(mpmath.atan(exactly)), rel=LAST_PLACES)


# 5 12 13, 9 12 15, 16 12 20, 35 12 37; hips 1:12 (1 + 288 = 17 ** 2), 6:12, 14:12, 21:12.
@pytest.mark.parametrize(("rise", "twelfths"), [(0, 12), (5, 13), (9, 15), (16, 20), (35, 37)])
def test_whole_slope_factors(rise, twelfths):
    assert slope_factor(rise / 12) == pytest.approx(twelfths / 12, rel=LAST_PLACES)


@pytest.mark.parametrize(("rise", "twelfths"), [(1, 17), (6, 18), (14, 22), (21, 27)])
def test_whole_hip_factors(rise, twelfths):
    assert hip_valley_factor(rise / 12) == pytest.approx(twelfths / 12, rel=LAST_PLACES)


def test_a_flat_roof():
    assert slope_factor(0) == 1
    assert hip_valley_factor(0) == 2**0.5
    assert pitch_angle(0) == 0


@pytest.mark.parametrize("function", FUNCTIONS)
def test_a_column_gives_the_same_numbers_bit_for_bit(function):
    # Sixteenths of an inch to 30 in 12, thousands of others between, and both ends.
    column = np.concatenate(
        [np.arange(30 * 16 + 1) / 192, np.linspace(0, 3, 10_007), [0.0, STEEPEST]]
    )
    together = function(column)
    assert isinstance(together, np.ndarray)
    assert together.shape == column.shape
    assert together.tolist() == [function(pitch) for pitch in column.tolist()]


@pytest.mark.parametrize("function", FUNCTIONS)
def test_a_number_of_numpy_or_a_whole_number_is_a_number(function):
    assert function(np.float64(0.375)) == function(0.375)
    assert function(2) == function(2.0)


@given(ROOF_PITCHES, ROOF_PITCHES)
def test_steeper_is_never_shorter(one, other):
    low, high = sorted((one, other))
    for function in FUNCTIONS:
        assert function(low) <= function(high)
    if high - low > 1e-6:
        assert pitch_angle(low) < pitch_angle(high)


@given(st.floats(0.01, 3))
def test_bounds(pitch):
    # Longer than both of its legs, shorter than the two together.
    assert max(1, pitch) < slope_factor(pitch) < 1 + pitch
    assert 2**0.5 < hip_valley_factor(pitch) < 2**0.5 + pitch
    assert slope_factor(pitch) < hip_valley_factor(pitch)
    assert 0 < pitch_angle(pitch) < pi / 2


@given(ROOF_PITCHES)
def test_a_hip_lies_over_the_diagonal_of_run_and_slope(pitch):
    # In the plane of the roof it is the diagonal of the rafter and one run along the eave.
    assert hip_valley_factor(pitch) ** 2 == pytest.approx(1 + slope_factor(pitch) ** 2, rel=1e-15)


@given(ROOF_PITCHES)
def test_factors_of_one_pitch_agree(pitch):
    all_of_them = pitch_factors(pitch)
    assert all_of_them.pitch == pitch
    assert all_of_them.slope_factor == slope_factor(pitch)
    assert all_of_them.hip_valley_factor == hip_valley_factor(pitch)
    assert all_of_them.angle == pitch_angle(pitch)
    assert all_of_them.percent == pytest.approx(100 * pitch, rel=1e-15)
    assert np.cos(all_of_them.angle) * all_of_them.slope_factor == pytest.approx(1, rel=1e-14)
    assert np.tan(all_of_them.angle) == pytest.approx(pitch, rel=1e-14)


@given(rise=st.floats(0, 500), run=st.floats(100, 500), parts=st.integers(1, 12))
def test_a_pitch_is_the_same_in_every_part_of_a_slope(rise, run, parts):
    whole = pitch_of(rise=rise, run=run)
    assert pitch_of(rise=rise / parts, run=run / parts) == pytest.approx(whole, rel=1e-15)
    assert whole * run == pytest.approx(rise, rel=1e-15)


def test_a_column_of_rises_over_runs():
    rises = np.array([0.0, 45.0, 108.0])
    assert pitch_of(rise=rises, run=np.full(3, 108.0)).tolist() == [0.0, 45 / 108, 1.0]


def test_angles_climb_evenly_neither_at_first_nor_at_last():
    # Each further inch of rise adds less: 4.76 degrees for the first, under 0.9 for the 24th.
    angles = [degrees(pitch_angle(rise / 12)) for rise in range(25)]
    steps = [b - a for a, b in pairwise(angles)]
    assert steps == sorted(steps, reverse=True)
    assert steps[0] == pytest.approx(4.76, abs=0.005)


@pytest.mark.parametrize("function", [*FUNCTIONS, pitch_factors])
@pytest.mark.parametrize(
    ("pitch", "came"), [(-0.25, "-3:12"), (nan, "nan"), (inf, "inf"), (84, "1008:12")]
)
def test_what_is_no_pitch(function, pitch, came):
    with pytest.raises(Refused) as refused:
        function(pitch)
    assert str(refused.value) == f"pitch came as {came}: 0:12 or more and at most 1000:12"


@pytest.mark.parametrize("function", FUNCTIONS)
def test_one_bad_pitch_in_a_column_is_told(function):
    with pytest.raises(Refused, match=r"^pitch\.1 came as -3:12: "):
        function(np.array([0.25, -0.25, 0.5]))


@pytest.mark.parametrize("function", FUNCTIONS)
@pytest.mark.parametrize("shape", [(), (0,), (2, 3)])
def test_a_column_of_any_shape_gives_one_of_the_same(function, shape):
    answer = function(np.full(shape, 0.375))
    assert np.shape(answer) == shape
    assert np.all(answer == function(0.375))


@pytest.mark.parametrize(("rise", "run"), [(1, 0), (1, -1), (1, nan), (1, inf)])
def test_a_run_is_over_0(rise, run):
    with pytest.raises(Refused, match=r"^run came as .+: more than zero"):
        pitch_of(rise=rise, run=run)


def test_a_rise_is_not_negative():
    with pytest.raises(Refused, match=r"^rise came as "):
        pitch_of(rise=-1, run=12)


def test_two_wrongs_make_no_pitch():
    # -4 over -12 would be a third.
    with pytest.raises(Refused) as refused:
        pitch_of(rise=-4, run=-12)
    assert [one.at for one in refused.value.faults] == [("rise",), ("run",)]
    with pytest.raises(Refused) as refused:
        pitch_of(rise=np.array([3.0, -4.0]), run=np.array([12.0, -12.0]))
    assert [one.at for one in refused.value.faults] == [("rise", "1"), ("run", "1")]


@pytest.mark.parametrize("run", [0.0, -1.0, nan, inf, 5e-324])
def test_a_run_in_a_column_is_over_0(run):
    with pytest.raises(Refused, match=r"^run\.1 came as .+: more than zero"):
        pitch_of(rise=np.array([4.0, 0.0]), run=np.array([12.0, run]))
