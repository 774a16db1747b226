"""Units: what each number in the library is measured in, said once on its type.

Inside, everything is a plain float: inches, square inches, cubic inches, pounds, radians. The
types below carry the unit, and every other part (reading text, converting answers, headings,
documentation) looks it up here. The factors are the exact legal ones; a test holds each
against pint, which also serves callers who work with quantities: see `quantities`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from types import MappingProxyType
from typing import Annotated, Literal

System = Literal["us", "metric"]


@dataclass(frozen=True, slots=True)
class Unit:
    """The unit of a number, as written on its type.

    Attributes:
        name: The unit used inside the library, one of the keys of `SHOWN`.
    """

    name: str


Inches = Annotated[float, Unit("in")]
SquareInches = Annotated[float, Unit("in2")]
CubicInches = Annotated[float, Unit("in3")]
Pounds = Annotated[float, Unit("lb")]
PoundsPerSquareFoot = Annotated[float, Unit("lb/ft2")]
PoundsPerFoot = Annotated[float, Unit("lb/ft")]
MilesPerHour = Annotated[float, Unit("mph")]
Radians = Annotated[float, Unit("rad")]
Pitch = Annotated[float, Unit("pitch")]
"""Rise over run, a plain ratio inside (4:12 is 1/3); shown as the rise in 12 of run."""
Squares = Annotated[float, Unit("square")]
Percent = Annotated[float, Unit("percent")]
Ratio = Annotated[float, Unit("1")]
Millimetres = Annotated[float, Unit("mm")]
"""Of paper, not of the roof: what a drawing measures itself, the same in both unit systems."""


@dataclass(frozen=True, slots=True)
class Scale:
    """How a number inside becomes the number shown: multiplied, then divided.

    Two steps, because ``v * 254 / 10`` is exact for every sixteenth of an inch and ``v * 25.4``
    is a hair off for a third of them.

    Attributes:
        unit: The unit shown.
        times: What the number inside is multiplied by.
        over: What the product is divided by.
    """

    unit: str
    times: float = 1.0
    over: float = 1.0

    def shown(self, value: float) -> float:
        """Give the number shown for a number inside."""
        return value * self.times / self.over

    def inside(self, value: float) -> float:
        """Give the number inside for a number shown."""
        return value * self.over / self.times


SHOWN: Mapping[str, Mapping[System, Scale]] = MappingProxyType(
    {
        "in": {"us": Scale("in"), "metric": Scale("mm", 254, 10)},
        "in2": {"us": Scale("ft2", 1, 144), "metric": Scale("m2", 64516, 100_000_000)},
        "in3": {"us": Scale("fl_oz", 128, 231), "metric": Scale("mL", 16387064, 1_000_000)},
        "lb": {"us": Scale("lb"), "metric": Scale("kg", 45359237, 100_000_000)},
        "lb/ft2": {"us": Scale("lb/ft2"), "metric": Scale("kg/m2", 45359237, 9290304)},
        "lb/ft": {"us": Scale("lb/ft"), "metric": Scale("kg/m", 45359237, 30480000)},
        "mph": {"us": Scale("mph"), "metric": Scale("m/s", 44704, 100_000)},
        "rad": {"us": Scale("deg", 180, pi), "metric": Scale("deg", 180, pi)},
        "pitch": {"us": Scale("rise in 12", 12), "metric": Scale("rise in 12", 12)},
        "square": {"us": Scale("square"), "metric": Scale("square")},
        "percent": {"us": Scale("percent"), "metric": Scale("percent")},
        "1": {"us": Scale("1"), "metric": Scale("1")},
        "mm": {"us": Scale("mm"), "metric": Scale("mm")},
        "count": {"us": Scale("count"), "metric": Scale("count")},
    }
)
"""For each unit inside and each unit system, the unit shown and its scale."""

#: Square inches in one square, the trade's 100 ft2.
SQUARE = 14_400.0


def convert(value: float, unit: str, system: System = "us") -> float:
    """Give a number inside as it is shown under a unit system.

    Args:
        value: The number inside.
        unit: Its unit inside, a key of `SHOWN`.
        system: The unit system to show it in.

    Returns:
        The number in the unit that `SHOWN` names. It is not rounded.

    Raises:
        Nothing: A unit that `SHOWN` does not name is a slip in the code, and a KeyError.

    Source:
        The international inch (25.4 mm), pound (0.45359237 kg) and US gallon (231 in3), exact.

    >>> convert(112, "in", "metric")
    2844.8
    """
    return SHOWN[unit][system].shown(value)
