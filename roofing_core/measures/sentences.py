"""Measurements as text for people, and sentences that hold measurements.

The number in an answer is never rounded. The text is, and says so by its form: feet, inches and
the nearest 1/16, or whole millimetres. A sentence keeps its measurements as numbers until it is
written, so that one sentence serves both unit systems.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import ceil, floor, gcd, isfinite
from types import MappingProxyType

from roofing_core.measures.units import SHOWN, Inches, System

#: From this many inches on, a length is written in feet and inches.
FEET_FROM = 48

#: A length this near to a whole 1/16 in, in sixteenths, is one.
DUST_OF_A_SIXTEENTH = 1e-9

#: Sixteenths and millimetres of more inches than this would overflow a float.
LARGEST_WRITTEN = 1e300

_SIXTEENTHS = tuple("" if n == 0 else f"{n // gcd(n, 16)}/{16 // gcd(n, 16)}" for n in range(16))


def write_length(inches: float, system: System = "us") -> str:
    """Write a length for a person: to the nearest 1/16 in, or to the nearest mm.

    Half of one goes up, and below zero down: a length reads alike above and below the eave.

    Args:
        inches: The length; may be negative.
        system: ``us`` or ``metric``.

    Returns:
        Such as ``9 ft 4 in``, ``13 1/16 in`` or ``2845 mm``; feet from 4 ft on.

    Raises:
        Nothing: What is not finite, or far too large, is written as it is.

    Source:
        Rounding half up is how the Navy Builder manual (NAVEDTRA 14044, ch. 2) writes 111.12 in
        as 9 ft 3 1/8 in.

    >>> write_length(111.12)
    '9 ft 3 1/8 in'
    """
    if not abs(inches) < LARGEST_WRITTEN:
        return str(inches)
    if system == "metric":
        millimetres = floor(abs(inches) * 254 / 10 + 0.5)
        return f"{'-' if inches < 0 and millimetres else ''}{millimetres} mm"
    sixteenths = floor(abs(inches) * 16 + 0.5)
    sign = "-" if inches < 0 and sixteenths else ""
    whole, part = divmod(sixteenths, 16)
    if whole < FEET_FROM:
        if not part:
            return f"{sign}{whole} in"
        return f"{sign}{whole} {_SIXTEENTHS[part]} in" if whole else f"{sign}{_SIXTEENTHS[part]} in"
    feet, whole = divmod(whole, 12)
    if part:
        inch = f"{whole} {_SIXTEENTHS[part]} in" if whole else f"{_SIXTEENTHS[part]} in"
        return f"{sign}{feet} ft {inch}"
    return f"{sign}{feet} ft {whole} in" if whole else f"{sign}{feet} ft"


def _figures(value: float) -> str:
    """Write a number to about three figures, without trailing zeros."""
    decimals = 2 if abs(value) < 10 else 1 if abs(value) < 100 else 0  # noqa: PLR2004 - figures
    text = f"{value:.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def _count(value: float, _: System) -> str:
    return str(int(value)) if value == int(value) else _figures(value)


def _pitch(value: float, _: System) -> str:
    return f"{_figures(value * 12)}:12"


def _percent(value: float, _: System) -> str:
    return f"{_figures(value)} %"


def _square(value: float, _: System) -> str:
    return f"{value:.2f} squares"


_WRITERS: Mapping[str, Callable[[float, System], str]] = MappingProxyType(
    {
        "in": write_length,
        "count": _count,
        "1": _count,
        "pitch": _pitch,
        "percent": _percent,
        "square": _square,
    }
)

_SPELT = MappingProxyType({"fl_oz": "fl oz"})


def write(value: float, unit: str, system: System = "us") -> str:
    """Write a number of any unit inside for a person.

    Args:
        value: The number inside.
        unit: Its unit inside, a key of `units.SHOWN`.
        system: ``us`` or ``metric``.

    Returns:
        The number, rounded to what a person reads, with its unit; a count has none.

    Raises:
        Nothing: A unit that `SHOWN` does not name is a slip in the code, and a KeyError.

    Source:
        None: a way of writing.

    >>> write(65, "lb"), write(65, "lb", "metric"), write(0.25, "pitch")
    ('65 lb', '29.5 kg', '3:12')
    """
    if not isfinite(value):
        return str(value)
    writer = _WRITERS.get(unit)
    if writer is not None:
        return writer(value, system)
    scale = SHOWN[unit][system]
    return f"{_figures(scale.shown(value))} {_SPELT.get(scale.unit, scale.unit)}"


@dataclass(frozen=True, slots=True)
class Amount:
    """A number whose unit is known only with it: a measurement in a sentence, an order line.

    Attributes:
        value: The number, in the unit inside.
        unit: The unit inside, a key of `units.SHOWN`.
    """

    value: float
    unit: str

    def written(self, system: System = "us") -> str:
        """Write the amount for a person in a unit system."""
        return write(self.value, self.unit, system)

    def unlike(self, other: Sentence, system: System = "us") -> str:
        """Write the amount so that it does not read like another one in a sentence about it.

        What breaks a limit by a hair is written like it to the nearest 1/16 in or mm; then the
        decimals are told.
        """
        text = self.written(system)
        limits = (part for part in other.parts if isinstance(part, Amount))
        if all(limit == self or limit.written(system) != text for limit in limits):
            return text
        return Exact(self.value, self.unit).written(system)


@dataclass(frozen=True, slots=True)
class Exact(Amount):
    """An amount that is written with its decimals, where the nearest 1/16 in would mislead."""

    def written(self, system: System = "us") -> str:
        """Write the amount with its decimals in a unit system."""
        scale = SHOWN[self.unit][system]
        value = f"{scale.shown(self.value):.9g}"
        if self.unit == "pitch":
            return f"{value}:12"
        return f"{value} {_SPELT.get(scale.unit, scale.unit)}"


def shown(amount: Amount) -> Amount | str:
    """Give an amount that is fit to show: as it is, or as text when it is not a finite number."""
    return amount if isfinite(amount.value) else str(amount.value)


def on_a_sixteenth(amount: Amount) -> bool:
    """Tell whether an amount is written as it is: no length, or a length of whole 1/16 in.

    Args:
        amount: Any amount.

    Returns:
        Whether writing it to the nearest 1/16 in loses nothing.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> on_a_sixteenth(Amount(0.105, "in")), on_a_sixteenth(Amount(0.375, "in"))
    (False, True)
    """
    sixteenths = amount.value * 16
    return amount.unit != "in" or abs(sixteenths - round(sixteenths)) < DUST_OF_A_SIXTEENTH


def at_least(inches: Inches) -> Amount:
    """Give a length up to the next 1/16 in: what would do must not be written as less.

    Args:
        inches: The least length that would do.

    Returns:
        That length, or the next whole 1/16 in above it.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> at_least(1.77).written()
    '1 13/16 in'
    """
    return Amount(ceil(inches * 16 - DUST_OF_A_SIXTEENTH) / 16, "in")


def length(inches: float) -> Amount:
    """Give a length as an amount, to put into a sentence."""
    return Amount(inches, "in")


@dataclass(frozen=True, slots=True)
class Sentence:
    """Words with measurements among them, written out in a unit system when read.

    Attributes:
        parts: Words and amounts in their order.
    """

    parts: tuple[str | Amount, ...]

    def written(self, system: System = "us") -> str:
        """Write the sentence with its measurements in a unit system."""
        return "".join(
            part if isinstance(part, str) else part.written(system) for part in self.parts
        )


def say(*parts: object) -> Sentence:
    """Make a sentence from words, amounts and other sentences; anything else as its text."""
    flat: list[str | Amount] = []
    for part in parts:
        if isinstance(part, Sentence):
            flat.extend(part.parts)
        elif isinstance(part, Amount):
            flat.append(part)
        else:
            flat.append(str(part))
    return Sentence(tuple(flat))
