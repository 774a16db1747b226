"""Pitches, areas, volumes, weights and angles as people write them."""

from __future__ import annotations

from fractions import Fraction
from math import pi, radians, tan
from typing import Any

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read, read_pitch

ROUNDING = 2e-15

NUMBERS = st.decimals(0, 500, places=3).map(str)


@pytest.fixture(scope="module")
def ureg():
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry()
    registry.define("roofing_square = 100 * foot ** 2")
    return registry


#: Each unit inside: pint's name for it, and the spellings with pint's names.
NAMED = {
    "in2": (
        "inch ** 2",
        {
            "inch ** 2": ("in2", "in²", "sq in", "square inches"),
            "foot ** 2": ("ft2", "ft²", "sq ft", "sqft", "Square Feet"),
            "roofing_square": ("square", "squares"),
            "mm ** 2": ("mm2", "mm²"),
            "cm ** 2": ("cm2",),
            "m ** 2": ("m2", "m²", "sq m", "square metres", "square meters"),
        },
    ),
    "square": (
        "roofing_square",
        {
            "inch ** 2": ("in2", "sq in"),
            "foot ** 2": ("ft2", "ft²", "sq ft", "square feet"),
            "roofing_square": ("square", "squares"),
            "m ** 2": ("m2", "m²", "square metres"),
        },
    ),
    "in3": (
        "inch ** 3",
        {
            "inch ** 3": ("in3", "in³", "cu in", "cubic inches"),
            "US_fluid_ounce": ("fl oz", "floz", "fl. oz", "fl. oz.", "US fl oz"),
            "US_liquid_gallon": ("gal", "US gal", "gallon", "gallons"),
            "milliliter": ("mL", "ml", "millilitres", "milliliters"),
            "liter": ("L", "l", "litre", "litres", "liter", "liters"),
        },
    ),
    "lb": (
        "pound",
        {
            "pound": ("lb", "lbs", "pound", "pounds", "LB"),
            "ounce": ("oz", "ounce", "ounces"),
            "kilogram": ("kg", "kilogram", "kilograms"),
            "gram": ("g", "gram", "grams"),
        },
    ),
    "lb/ft2": (
        "pound / foot ** 2",
        {
            "pound / foot ** 2": ("lb/ft2", "psf", "lb per sq ft", "lb/ft²"),
            "kilogram / meter ** 2": ("kg/m2", "kg/m²"),
        },
    ),
    "lb/ft": (
        "pound / foot",
        {"pound / foot": ("lb/ft", "plf"), "kilogram / meter": ("kg/m",)},
    ),
    "mph": (
        "mile / hour",
        {
            "mile / hour": ("mph", "miles per hour"),
            "kilometer / hour": ("km/h", "kph"),
            "meter / second": ("m/s",),
        },
    ),
    "rad": (
        "radian",
        {"degree": ("deg", "degree", "degrees", "°"), "radian": ("rad", "radians")},
    ),
}
SPELLINGS = [
    (unit, inside, name, spelt)
    for unit, (inside, names) in NAMED.items()
    for name, all_of_it in names.items()
    for spelt in all_of_it
]


@pytest.fixture(scope="module")
def factors(ureg):
    """What one of each unit is inside, by pint."""
    return {
        (unit, name): ureg.Quantity(1.0, name).to(inside).magnitude
        for unit, inside, name, _ in SPELLINGS
    }


@pytest.mark.parametrize("case", SPELLINGS)
def test_every_spelling_is_pint_s_unit(ureg, case):
    unit, inside, name, spelt = case
    expected = ureg.Quantity(14.25, name).to(inside).magnitude
    for text in (f"14.25 {spelt}", f"14.25{spelt}", f" 14.25  {spelt.upper()} "):
        assert read(text, unit) == pytest.approx(expected, rel=ROUNDING)


@settings(max_examples=1000)
@given(number=NUMBERS, case=st.sampled_from(SPELLINGS), minus=st.sampled_from(["", "-"]))
def test_a_measurement_is_what_pint_makes_of_it(factors, number, case, minus):
    unit, _, name, spelt = case
    expected = float(minus + number) * factors[unit, name]
    assert read(f"{minus}{number} {spelt}", unit) == pytest.approx(expected, rel=ROUNDING)


def test_mixed_numbers_of_other_units():
    assert read("1 1/2 gal", "in3") == 346.5
    assert read("2 1/4 lb", "lb") == 2.25


RISES = st.integers(0, 24)
RUNS = st.integers(1, 24)


@given(rise=RISES, run=RUNS, way=st.sampled_from(["{}:{}", "{}/{}", "{} in {}", "{} : {}"]))
def test_rise_in_run_is_their_ratio(rise, run, way):
    assert read_pitch(way.format(rise, run)) == rise / run


@given(whole=RISES, top=st.integers(1, 7), way=st.sampled_from(["{}:12", "{} in 12"]))
def test_rises_with_fractions(whole, top, way):
    exact = (whole + Fraction(top, 8)) / 12
    assert read_pitch(way.format(f"{whole} {top}/8")) == float(exact)


@given(angle=st.decimals(0, 89, places=2))
def test_degrees_are_their_tangent(angle):
    for spelt in (f"{angle} deg", f"{angle}°", f"{angle} degrees"):
        assert read_pitch(spelt) == tan(radians(float(angle)))


@given(percent=st.decimals(0, 300, places=2))
def test_percent_are_hundredths(percent):
    for spelt in (f"{percent} %", f"{percent}%", f"{percent} percent"):
        assert read_pitch(spelt) == float(percent) / 100


@given(whole=st.integers(0, 80), top=st.integers(1, 7))
def test_degrees_and_percent_may_have_a_fraction(whole, top):
    exact = float(whole + Fraction(top, 8))
    assert read_pitch(f"{whole} {top}/8 deg") == tan(radians(exact))
    assert read_pitch(f"-{whole} {top}/8%") == -exact / 100
    assert read_pitch("33⅓ %") == (33 + 1 / 3) / 100


def test_a_square_is_a_square():
    assert read("1.3 squares", "square") == 1.3
    assert read("1 1/2 squares", "square") == read("150 ft2", "square") == 1.5


def test_a_pitch_may_be_written_downwards_and_is_then_negative():
    # Refusing it is for those who know what it is a pitch of.
    assert read_pitch("-4:12") == -1 / 3
    assert read_pitch("-10 %") == -0.1
    assert read_pitch("-45 deg") == pytest.approx(-1)


@pytest.mark.parametrize(
    ("text", "unit", "most"),
    [
        ("100000000 squares", "in2", "at most 69444444 ft2"),  # 10,000,000,000 in2
        ("99999999999 lb", "lb", "at most 10000000000 lb"),
    ],
)
def test_sizes_that_no_roof_has(text, unit, most):
    with pytest.raises(Refused) as refused:
        read(text, unit)
    assert str(refused.value) == f"value came as {text}: {most}"


def test_right_angles():
    assert read("90 deg", "rad") == pi / 2
    assert read("180°", "rad") == pi
