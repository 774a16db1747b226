"""Felt by the roll, as the handbooks give it: No. 15 covers 432 ft2 gross, No. 30 216 ft2.

Nominally four squares and two, half of that where it is laid in two layers.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.materials import Roll, material


@pytest.mark.parametrize(("name", "gross"), [("felt_15", 432), ("felt_30", 216)])
def test_gross_area_of_a_roll(name, gross):
    roll = material(Roll, name)
    assert roll.width * roll.length / 144 == gross


@pytest.mark.parametrize(
    ("name", "pitch", "squares"),
    [
        ("felt_15", 4 / 12, 4),
        ("felt_30", 4 / 12, 2),
        ("felt_15", 3 / 12, 2),
        ("felt_30", 3 / 12, 1),
    ],
)
def test_nominal_squares_of_a_roll(name, pitch, squares):
    # Nominal, so to the nearest square; lapped 2 in, which is what the handbooks reckon with.
    roll = material(Roll, name)
    laid = underlayment(
        168,
        slope_length=112,
        pitch=pitch,
        roll_width=roll.width,
        roll_length=roll.length,
        head_lap=2,
    )
    assert round(laid.exposure * roll.length / 14_400) == squares
