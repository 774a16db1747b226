"""Quantities in and out, for callers who work with pint."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import inf, nan, pi
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.measures.quantities import PINT_NAMES, from_quantity, to_quantity

UREG: pint.UnitRegistry[Any] = pint.UnitRegistry()

#: A registry that knows nothing but its own unit, not even inches.
OTHER: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
OTHER.define("cubit = [reach]")


@pytest.mark.parametrize(
    ("magnitude", "name", "unit", "inside"),
    [
        (9.5, "foot", "in", 114),
        (1, "meter", "in", 100 / 2.54),
        (1, "foot ** 2", "in2", 144),
        (1, "US_liquid_gallon", "in3", 231),
        (1, "US_fluid_ounce", "in3", 231 / 128),
        (1, "kilogram", "lb", 1 / 0.45359237),
        (1, "kilogram / meter ** 2", "lb/ft2", 0.3048**2 / 0.45359237),
        (1, "kilogram / meter", "lb/ft", 0.3048 / 0.45359237),
        (1, "meter / second", "mph", 1 / 0.44704),
        (180, "degree", "rad", pi),
        (50, "percent", "1", 0.5),
        (150, "foot ** 2", "square", 1.5),  # in a registry that knows no square
        (1, "meter ** 2", "square", 1 / 9.290304),
    ],
)
def test_a_quantity_becomes_the_number_inside(magnitude, name, unit, inside):
    number = from_quantity(UREG.Quantity(magnitude, name), unit)
    assert number == pytest.approx(inside, rel=1e-15)
    assert type(number) is float


@pytest.mark.parametrize("kind", [Decimal, Fraction, float])
def test_a_number_of_any_kind_is_one(kind):
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=kind)
    number = from_quantity(registry.Quantity(kind("9.5"), "foot"))
    assert (number, type(number)) == (114.0, float)


@pytest.mark.parametrize("unit", PINT_NAMES)
@given(value=st.floats(-1e6, 1e6))
def test_out_and_in_again(unit, value):
    assert from_quantity(to_quantity(value, unit), unit) == pytest.approx(value, rel=1e-15)


def test_squares_go_out_as_squares():
    assert str(to_quantity(1.5, "square").units) == "roofing_square"
    assert to_quantity(1.5, "square").to("foot ** 2").magnitude == pytest.approx(150)


def test_our_registry_knows_the_roofing_square():
    assert to_quantity(18_816, "in2").to("roofing_square").magnitude == pytest.approx(1.30666666667)


@pytest.mark.parametrize(
    ("quantity", "unit", "said"),
    [
        (UREG.Quantity(3, "second"), "in", "quantity came as 3 second: a quantity in in"),
        (UREG.Quantity(3, "foot"), "in2", "quantity came as 3 foot: a quantity in in2"),
        (UREG.Quantity(nan, "foot"), "in", "quantity came as nan foot: one finite number with"),
        (UREG.Quantity(inf, "foot"), "in", "quantity came as inf foot: one finite number with"),
        (UREG.Quantity([1.0, 2.0], "foot"), "in", "quantity came as [1.0 2.0] foot: one finite"),
        (UREG.Quantity(1j, "foot"), "in", "quantity came as 1j foot: one finite number with a"),
        (36.0, "in", "quantity came as 36.0: one finite number with a unit, as a pint quantity"),
        ("3 ft", "in", "quantity came as 3 ft: one finite number with a unit, as a pint quantity"),
        (None, "in", "quantity came as None: one finite number with a unit, as a pint quantity"),
        (OTHER.Quantity(1, "cubit"), "in", "quantity came as 1 cubit: a quantity in in"),
    ],
)
def test_quantities_that_are_refused(quantity, unit, said):
    with pytest.raises(Refused) as refused:
        from_quantity(quantity, unit)
    assert str(refused.value).startswith(said)


@pytest.mark.parametrize("value", [nan, inf, True, "3"])
def test_numbers_that_are_refused(value):
    with pytest.raises(Refused, match=r"^value came as .+: one finite number$"):
        to_quantity(value)


@pytest.mark.parametrize("unit", ["pitch", "percent", "count", "ft"])
def test_a_unit_that_pint_has_no_name_for_is_refused(unit):
    said = f"^unit came as {unit}: one of in, in2, square, in3, lb, lb/ft2, lb/ft, mph, rad, 1$"
    with pytest.raises(Refused, match=said):
        to_quantity(3, unit)
    with pytest.raises(Refused, match=said):
        from_quantity(UREG.Quantity(3, "foot"), unit)
