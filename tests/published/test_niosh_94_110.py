"""NIOSH publication 94-110, revised lifting equation: its multipliers in inches.

Load constant 51 lb and the table of horizontal multipliers as restated in a textbook of
occupational ergonomics (table 46.1), with its words on the vertical multiplier.
"""

from __future__ import annotations

from math import radians

import pytest

from roofing_core.layers.weight import lifting_limit

LOAD_CONSTANT = 51  # lb
# Multipliers are printed to 1/100; some are rounded up: 0.46 for 10/22, 0.44 for 10/23, 0.78 for
# 0.775.
A_HUNDREDTH = 0.01

HORIZONTAL = {
    10: 1.00, 11: 0.91, 12: 0.83, 13: 0.77, 14: 0.71, 15: 0.67, 16: 0.63, 17: 0.59, 18: 0.56,
    19: 0.53, 20: 0.50, 21: 0.48, 22: 0.46, 23: 0.44, 24: 0.42, 25: 0.40,
}  # fmt: skip


@pytest.mark.parametrize(("reach", "printed"), HORIZONTAL.items())
def test_horizontal_multiplier(reach, printed):
    assert lifting_limit(reach) / LOAD_CONSTANT == pytest.approx(printed, abs=A_HUNDREDTH)


# "At 30 in. the VM is 1.0; at floor level 0.78, and at 70 in. height 0.7."
@pytest.mark.parametrize(("height", "printed"), [(30, 1.0), (0, 0.78), (70, 0.70)])
def test_vertical_multiplier(height, printed):
    limit = lifting_limit(height=height)
    assert limit / LOAD_CONSTANT == pytest.approx(printed, abs=A_HUNDREDTH)


def test_asymmetry_multiplier():
    # 1 - 0.0032 A, A in degrees.
    for turn in (30, 90, 135):
        assert lifting_limit(turn=radians(turn)) / LOAD_CONSTANT == pytest.approx(1 - 0.0032 * turn)


def test_distance_multiplier():
    # 0.82 + 1.8 / D, D in inches, 10 where it is less.
    for travel in (10, 25, 70):
        assert lifting_limit(travel=travel) / LOAD_CONSTANT == pytest.approx(0.82 + 1.8 / travel)
    assert lifting_limit(travel=5) == LOAD_CONSTANT


def test_the_best_lift():
    assert lifting_limit() == LOAD_CONSTANT
