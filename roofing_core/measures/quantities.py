"""Quantities in and out, for callers who work with pint.

Text that people write never reaches pint (see `reading`): it gets one number and one unit name.
It is imported when the first quantity comes, and not before.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from numbers import Number
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from roofing_core.measures.faults import Refused, fault, is_number
from roofing_core.measures.units import SQUARE

if TYPE_CHECKING:
    from pint import Quantity, UnitRegistry

#: pint's names for the units inside that a quantity can have; the square is put into our registry.
PINT_NAMES: Mapping[str, str] = MappingProxyType(
    {
        "in": "inch",
        "in2": "inch ** 2",
        "square": "roofing_square",
        "in3": "inch ** 3",
        "lb": "pound",
        "lb/ft2": "pound / foot ** 2",
        "lb/ft": "pound / foot",
        "mph": "mile / hour",
        "rad": "radian",
        "1": "dimensionless",
    }
)


@cache
def _registry() -> UnitRegistry[Any]:
    from pint import UnitRegistry  # noqa: PLC0415 - 150 ms that only quantities need

    registry: UnitRegistry[Any] = UnitRegistry()
    registry.define("roofing_square = 100 * foot ** 2")
    return registry


def from_quantity(quantity: Quantity[Any], unit: str = "in") -> float:
    """Give the number inside for a pint quantity.

    Args:
        quantity: Any quantity of the right dimension, of any registry.
        unit: The unit inside: ``in``, ``in2``, ``square``, ``in3``, ``lb``, ``lb/ft2``, ``lb/ft``,
            ``mph``, ``rad`` or ``1``.

    Returns:
        The plain number in that unit.

    Raises:
        Refused: The quantity is of another dimension, or is not one finite number with a unit, or
            the unit is none of these.

    Source:
        The factors are pint's.

    >>> from pint import UnitRegistry
    >>> from_quantity(UnitRegistry().Quantity(9.5, "foot"))
    114.0
    """
    _check_unit(unit)
    # Only our own registry knows the square.
    found = _magnitude(quantity, "in2" if unit == "square" else unit, wanted=unit)
    if not _is_one_number(found):
        raise Refused(fault("quantity", str(quantity), "one finite number with a unit"))
    return float(found) / SQUARE if unit == "square" else float(found)


def _magnitude(quantity: object, unit: str, *, wanted: str) -> Any:
    """Give the magnitude of a quantity in a unit; refuse what is no quantity of its dimension."""
    import pint  # noqa: PLC0415 - 150 ms, as above

    if not isinstance(quantity, pint.Quantity):
        asked = "one finite number with a unit, as a pint quantity"
        raise Refused(fault("quantity", str(quantity), asked))
    try:
        return quantity.to(PINT_NAMES[unit]).magnitude
    except (pint.DimensionalityError, pint.UndefinedUnitError) as error:
        raise Refused(fault("quantity", str(quantity), f"a quantity in {wanted}")) from error


def _is_one_number(magnitude: object) -> bool:
    """Tell whether a magnitude is a finite number of any kind: a float, a fraction, a decimal."""
    if not isinstance(magnitude, Number) or isinstance(magnitude, bool | complex):
        return False
    number: Any = magnitude  # what may be made a float, `Number` does not say
    return is_number(float(number))


def _check_unit(unit: str) -> None:
    if unit not in PINT_NAMES:
        raise Refused(fault("unit", unit, f"one of {', '.join(PINT_NAMES)}"))


def to_quantity(value: float, unit: str = "in") -> Quantity[Any]:
    """Give a number inside as a pint quantity.

    Args:
        value: The number inside.
        unit: Its unit: ``in``, ``in2``, ``square``, ``in3``, ``lb``, ``lb/ft2``, ``lb/ft``,
            ``mph``, ``rad`` or ``1``.

    Returns:
        A quantity of the library's own registry, which also knows ``roofing_square``.

    Raises:
        Refused: The value is not one finite number, or the unit is none of these.

    Source:
        The factors are pint's.

    >>> round(to_quantity(112).to("foot").magnitude, 6)
    9.333333
    """
    _check_unit(unit)
    if not is_number(value):
        raise Refused(fault("value", str(value), "one finite number"))
    return _registry().Quantity(value, PINT_NAMES[unit])
