"""Units: every scale against pint, and millimetres exact for every sixteenth of an inch."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.measures.reading import read_length
from roofing_core.measures.units import SHOWN, SQUARE, convert

ROUNDING = 1e-15

INSIDE = {
    "in": "inch", "in2": "inch ** 2", "in3": "inch ** 3", "lb": "pound",
    "lb/ft2": "pound / foot ** 2", "lb/ft": "pound / foot", "mph": "mile / hour",
    "rad": "radian",
}  # fmt: skip
OUTSIDE = {
    "in": "inch", "mm": "mm", "ft2": "foot ** 2", "m2": "m ** 2", "fl_oz": "US_fluid_ounce",
    "mL": "milliliter", "lb": "pound", "kg": "kilogram", "lb/ft2": "pound / foot ** 2",
    "kg/m2": "kilogram / m ** 2", "lb/ft": "pound / foot", "kg/m": "kilogram / m",
    "mph": "mile / hour", "m/s": "meter / second", "deg": "degree",
}  # fmt: skip
#: Not pint's to judge: a pitch is shown as the rise in 12, the rest as they are.
OURS = {"pitch": 12, "square": 1, "percent": 1, "1": 1, "count": 1, "mm": 1}

CASES = [(unit, system) for unit in INSIDE for system in ("us", "metric")]


@pytest.mark.parametrize(("unit", "system"), CASES)
def test_every_scale_is_pint_s(unit, system):
    scale = SHOWN[unit][system]
    factor = pint.get_application_registry().Quantity(1.0, INSIDE[unit])
    factor = factor.to(OUTSIDE[scale.unit]).magnitude
    for value in (1.0, 0.375, 5280.0):
        assert convert(value, unit, system) == pytest.approx(value * factor, rel=2 * ROUNDING)
        assert scale.inside(value) == pytest.approx(value / factor, rel=2 * ROUNDING)


def test_no_unit_is_left_out():
    assert set(SHOWN) == {*INSIDE, *OURS}


@pytest.mark.parametrize(("unit", "factor"), OURS.items())
@pytest.mark.parametrize("system", ["us", "metric"])
def test_units_of_the_trade(unit, factor, system):
    assert convert(2.5, unit, system) == 2.5 * factor


def test_every_sixteenth_is_exact_in_millimetres_both_ways():
    scale = SHOWN["in"]["metric"]
    for n in range(16 * 2400 + 1):  # to 200 ft
        inches = n / 16
        exact = Fraction(n, 16) * Fraction(254, 10)
        assert convert(inches, "in", "metric") == float(exact)
        assert scale.inside(float(exact)) == inches


@given(st.integers(0, 16 * 2400))
def test_a_sixteenth_written_in_millimetres_reads_back_exactly(n):
    millimetres = convert(n / 16, "in", "metric")
    if "e" not in f"{millimetres!r}":
        assert read_length(f"{millimetres!r} mm") == n / 16


def test_squares_and_degrees():
    assert SQUARE == 100 * 12 * 12
    assert convert(pi, "rad") == 180
    assert convert(1 / 3, "pitch") == 4
