"""16 CFR 500.19: conversion of metric and inch-pound quantities, "and none others".

To six figures; those marked exact in the regulation are exact here.
"""

from __future__ import annotations

import pytest

from roofing_core.measures.reading import read
from roofing_core.measures.units import SHOWN, convert

EXACT = [("1 in", "in", 25.4), ("1 ft", "in", 304.8), ("1 in2", "in2", 6.4516e-4),
         ("1 ft2", "in2", 0.09290304)]  # fmt: skip


@pytest.mark.parametrize(("text", "unit", "printed"), EXACT)
def test_exact_factors(text, unit, printed):
    assert convert(read(text, unit), unit, "metric") == pytest.approx(printed, rel=1e-15)


#: What is written: its unit inside, the factor as printed, what half its last figure is.
INTO_METRIC = [
    ("1 in3", "in3", 16.3871, 0.00005),  # mL
    ("1 fl oz", "in3", 29.5735, 0.00005),  # mL
    ("1 gal", "in3", 3785.41, 0.005),  # mL
    ("1 oz", "lb", 0.0283495, 0.00000005),  # kg
    ("1 lb", "lb", 0.453592, 0.0000005),  # kg
]


@pytest.mark.parametrize(("text", "unit", "printed", "half"), INTO_METRIC)
def test_factors_into_metric(text, unit, printed, half):
    assert convert(read(text, unit), unit, "metric") == pytest.approx(printed, abs=half)


FEET, FL_OZ, GALLON = 12, 231 / 128, 231  # inside a foot, a fluid ounce, a gallon

FROM_METRIC = [
    ("1 mm", "in", 1, 0.039370, 0.0000005),  # in
    ("1 cm", "in", 1, 0.393701, 0.0000005),  # in
    ("1 m", "in", FEET, 3.28084, 0.000005),  # ft
    ("1 cm2", "in2", 1, 0.155000, 0.0000005),  # in2
    ("1 m2", "in2", 144, 10.7639, 0.00005),  # ft2
    ("1 mL", "in3", 1, 0.0610237, 0.00000005),  # in3
    ("1 mL", "in3", FL_OZ, 0.0338140, 0.00000005),  # fl oz
    ("1 L", "in3", GALLON, 0.264172, 0.0000005),  # gal
    ("1 g", "lb", 1 / 16, 0.0352740, 0.00000005),  # oz
    ("1 kg", "lb", 1, 2.20462, 0.000005),  # lb
]


@pytest.mark.parametrize(("text", "unit", "inside", "printed", "half"), FROM_METRIC)
def test_factors_from_metric(text, unit, inside, printed, half):
    assert read(text, unit) / inside == pytest.approx(printed, abs=half)


def test_a_fluid_ounce_is_shown_as_one():
    assert SHOWN["in3"]["us"].shown(FL_OZ) == 1
