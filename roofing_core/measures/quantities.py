"""Quantities in and out, for callers who work with pint.

Text that people write never reaches pint (see `reading`): it gets one number and one unit name.
It is imported when the first quantity comes, and not before.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from roofing_core.measures.faults import Refused, fault, is_number

if TYPE_CHECKING:
    from pint import Quantity, UnitRegistry

#: pint's names for the units inside that it knows; a square, a pitch and a percent are ours.
PINT_NAMES: Mapping[str, str] = MappingProxyType(
    {
        "in": "inch",
        "in2": "inch ** 2",
        "in3": "inch ** 3",
        "lb": "pound",
        "lb/ft2": "pound / foot ** 2",
        "lb/ft": "pound / foot",
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
        unit: The unit inside: ``in``, ``in2``, ``in3``, ``lb``, ``lb/ft2``, ``lb/ft``, ``rad``.

    Returns:
        The plain number in that unit.

    Raises:
        Refused: The quantity is of another dimension, or is not one finite number.

    Source:
        The factors are pint's.

    >>> from pint import UnitRegistry
    >>> from_quantity(UnitRegistry().Quantity(9.5, "foot"))
    114.0
    """
    from pint import DimensionalityError  # noqa: PLC0415 - see _registry

    try:
        value = quantity.to(PINT_NAMES[unit]).magnitude
    except DimensionalityError as error:
        raise Refused(fault("quantity", str(quantity), f"a quantity in {unit}")) from error
    if not is_number(value):
        raise Refused(fault("quantity", str(quantity), "one finite number with a unit"))
    return float(value)


def to_quantity(value: float, unit: str = "in") -> Quantity[Any]:
    """Give a number inside as a pint quantity.

    Args:
        value: The number inside.
        unit: Its unit: ``in``, ``in2``, ``in3``, ``lb``, ``lb/ft2``, ``lb/ft``, ``rad``.

    Returns:
        A quantity of the library's own registry, which also knows ``roofing_square``.

    Raises:
        Refused: The value is not one finite number.

    Source:
        The factors are pint's.

    >>> round(to_quantity(112).to("foot").magnitude, 6)
    9.333333
    """
    if not is_number(value):
        raise Refused(fault("value", str(value), "one finite number"))
    return _registry().Quantity(value, PINT_NAMES[unit])
