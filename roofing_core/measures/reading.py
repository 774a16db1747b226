"""Reading what people write: lengths, pitches and the other measurements, by a grammar of our own.

What the grammar does not know, it refuses: a wrong length that looks right is the worst thing
that could be handed on. A bare number is refused too; nobody's unit is guessed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from math import pi, radians, tan
from types import MappingProxyType

from roofing_core.measures.faults import Refused, fault, largest
from roofing_core.measures.sentences import Amount
from roofing_core.measures.units import SQUARE

#: Longer texts than this are not measurements.
LONGEST = 60

_PLAIN = str.maketrans(
    {
        "′": "'", "’": "'", "‘": "'", "ʹ": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"',
        "⁄": "/", "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u00a0": " ", "\u202f": " ",
        "\u2009": " ", "°": " deg",
        "½": " 1/2 ", "¼": " 1/4 ", "¾": " 3/4 ", "⅛": " 1/8 ", "⅜": " 3/8 ", "⅝": " 5/8 ",
        "⅞": " 7/8 ", "⅓": " 1/3 ", "⅔": " 2/3 ", "⅙": " 1/6 ", "⅚": " 5/6 ",
    }
)  # fmt: skip

#: Powers are read only in the name of a unit; anywhere else they would pass for digits.
_POWERS = str.maketrans({"²": "2", "³": "3"})

#: In inches.
_FOOT = 12

_DECIMAL = r"(?:[0-9]{1,12}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})"
_NUMBER = rf"(?:(?:[0-9]{{1,6}}[ -])?[0-9]{{1,5}}/[0-9]{{1,5}}|{_DECIMAL})"
_FEET = r"(?:feet|foot|ft\.?|')"
_INCH = r"(?:inches|inch|in\.?|''|\")"
_METRIC = r"(?:millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?|mm|cm|m)"

_US = re.compile(
    rf"(-)? ?(?:({_NUMBER}) ?{_FEET}(?:(?: |-|(?<=') ?- ?)?({_NUMBER}) ?{_INCH})?"
    rf"|({_NUMBER}) ?{_INCH})",
    re.ASCII,
)
_SI = re.compile(rf"(-)?({_DECIMAL}) ?({_METRIC})", re.ASCII)
_BARE = re.compile(rf"-? ?{_NUMBER}", re.ASCII)
_POWER_OF_TEN = re.compile(rf"-? ?{_DECIMAL}e[-+]?[0-9]+(?: ?[a-z'\"%].*)?", re.ASCII)
_RISE_IN_RUN = re.compile(rf"(-)?({_NUMBER}) ?(?::|in) ?({_NUMBER})|(-)?([0-9.]+) ?/ ?([0-9.]+)")
_SLOPED = re.compile(
    rf"(-)?([0-9]{{1,6}}[ -][0-9]{{1,5}}/[0-9]{{1,5}}|{_DECIMAL}) ?(deg|degrees?|%|percent)",
    re.ASCII,
)
_MEASURED = re.compile(rf"(-)?({_NUMBER}) ?([a-z%][a-z0-9/ .%²³]*)", re.ASCII)

_LENGTHS = "a length with its unit, such as 14 ft, 14' 6 1/2\", 9'-4\", 4.27 m or 1270 mm"
_PITCHES = "a pitch, such as 4:12, 4/12, 18.43 deg or 33.3 %"
_FRACTIONS = "a fraction under 1, over a number that is not 0"


def _number(text: str) -> float:
    """Give the value of a decimal, a fraction or a mixed number that the grammar let through.

    A mixed number whose fraction is 1 or more, such as 5 9/8, is a slip, and a ValueError.
    """
    if "/" not in text:
        return float(text)
    whole, _, fraction = text.replace("-", " ").rpartition(" ")
    top, _, bottom = fraction.partition("/")
    if whole and int(top) >= int(bottom) > 0:
        raise ValueError(text)
    return int(whole or 0) + int(top) / int(bottom)


def _worth(number: str, at: str, came: str, wanted: str = _FRACTIONS) -> float:
    """Give the value of a number within a text; refuse a fraction that is none."""
    try:
        return _number(number)
    except (ValueError, ZeroDivisionError):
        raise Refused(fault(at, _echo(came), wanted)) from None


def _plain(text: object, at: str, wanted: str) -> str:
    """Give the text in plain letters and single spaces; refuse what is no text, or far too long."""
    if not isinstance(text, str) or len(text) > LONGEST:
        raise Refused(fault(at, _echo(text), wanted))
    return " ".join(text.translate(_PLAIN).lower().split())


def _echo(came: object) -> str:
    """Give what came as short, plain text that is safe to print anywhere."""
    text = came if isinstance(came, str) else repr(came)
    short = text if len(text) <= LONGEST else f"{text[: LONGEST - 3]}..."
    return short.encode("ascii", "backslashreplace").decode("ascii")


def _unreadable(at: str, came: str, plain: str, wanted: str, example: str = "") -> Refused:
    """Say why a text was refused, as closely as can be told."""
    if example and _BARE.fullmatch(plain):
        return Refused(fault(at, _echo(came), "a number with its unit: ", example))
    why = ""
    if "," in plain:
        why = "; with a decimal point and no commas"
    elif _POWER_OF_TEN.fullmatch(plain):
        why = "; with all its digits and no power of ten"
    return Refused(fault(at, _echo(came), wanted, why))


def _sized(value: float, at: str, came: str, unit: str) -> float:
    most = largest(unit)
    if abs(value) <= most:
        return value
    raise Refused(fault(at, _echo(came), "at most ", Amount(most, unit)))


def read_length(text: str, *, at: str = "length") -> float:
    """Read a length as people write it.

    Feet and inches with decimals, fractions or mixed numbers (``14 ft``, ``14' 6 1/2"``,
    ``14ft 6.5in``, ``9'-4"``, Unicode primes and fractions too), or one metric unit (``4.27 m``,
    ``1270 mm``, ``127 cm``). After feet, inches stay under 12 and the feet are whole.

    Args:
        text: What was written.
        at: The name to put into the refusal, dotted if it is nested.

    Returns:
        The length in inches; negative if it was written with a minus.

    Raises:
        Refused: Not a length in this grammar: a bare number, two units, a comma, anything else.

    Source:
        The international inch, exactly 25.4 mm.

    >>> read_length("14' 6 1/2\\"")
    174.5
    """
    plain = _plain(text, at, _LENGTHS)
    match = _US.fullmatch(plain)
    if match:
        feet = _worth(match[2] or "0", at, text)
        inches = _worth(match[3] or match[4] or "0", at, text)
        if match[2] and match[3] and (feet != int(feet) or inches >= _FOOT):
            raise Refused(fault(at, _echo(text), "whole feet, and inches under 12 after them"))
        inches += feet * _FOOT
        return _sized(-inches if match[1] else inches, at, text, "in")
    match = _SI.fullmatch(plain)
    if match:
        millimetres = float(match[2]) * _millimetres(match[3])
        return _sized((-millimetres if match[1] else millimetres) * 10 / 254, at, text, "in")
    example = f"write {_echo(plain)} ft, {_echo(plain)} in or 4.27 m"
    raise _unreadable(at, text, plain, _LENGTHS, example)


def _millimetres(name: str) -> float:
    if name.startswith("mm") or name.startswith("mi"):
        return 1
    return 10 if name.startswith("c") else 1000


def read_pitch(text: str, *, at: str = "pitch") -> float:
    """Read a pitch as people write it: ``4:12``, ``4/12``, ``4 in 12``, ``18.43 deg``, ``33.3 %``.

    Args:
        text: What was written.
        at: The name to put into the refusal, dotted if it is nested.

    Returns:
        Rise over run; 4:12 is 1/3. An angle is under 90 degrees.

    Raises:
        Refused: Not a pitch in this grammar, such as a bare number or a run of 0.

    Source:
        Geometry: the tangent of the angle.

    >>> read_pitch("4:12") == read_pitch("4/12") == 1 / 3
    True
    """
    plain = _plain(text, at, _PITCHES)
    match = _RISE_IN_RUN.fullmatch(plain)
    if match:
        try:
            rise, run = _number(match[2] or match[5]), _number(match[3] or match[6])
            return _sized((-rise if match[1] or match[4] else rise) / run, at, text, "pitch")
        except (ValueError, ZeroDivisionError):
            raise Refused(fault(at, _echo(text), _PITCHES, "; the run is over 0")) from None
    match = _SLOPED.fullmatch(plain)
    if match:
        value = _worth(match[2], at, text) * (-1 if match[1] else 1)
        if match[3] in ("%", "percent"):
            return _sized(value / 100, at, text, "pitch")
        if abs(value) < 90:  # noqa: PLR2004 - a wall
            return tan(radians(value))
        raise Refused(fault(at, _echo(text), "an angle under 90 deg"))
    raise _unreadable(at, text, plain, _PITCHES, f"write {_echo(plain)}:12 or {_echo(plain)} deg")


_AREAS: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        **dict.fromkeys(("in2", "sq in", "square inches"), (1, 1)),
        **dict.fromkeys(("ft2", "sq ft", "sqft", "square feet"), (144, 1)),
        **dict.fromkeys(("square", "squares"), (SQUARE, 1)),
        **{"mm2": (100, 64516), "cm2": (10_000, 64516)},
        **dict.fromkeys(("m2", "sq m", "square metres", "square meters"), (100_000_000, 64516)),
    }
)

#: For each unit inside, the names that people write and the (times, over) that give the inside.
_NAMED: Mapping[str, Mapping[str, tuple[float, float]]] = MappingProxyType(
    {
        "in2": _AREAS,
        "square": {
            **{name: (times, over * SQUARE) for name, (times, over) in _AREAS.items()},
            **dict.fromkeys(("square", "squares"), (1, 1)),
        },
        "in3": {
            **dict.fromkeys(("in3", "cu in", "cubic inches"), (1, 1)),
            **dict.fromkeys(("fl oz", "floz", "fl. oz", "fl. oz.", "us fl oz"), (231, 128)),
            **dict.fromkeys(("gal", "us gal", "gallon", "gallons"), (231, 1)),
            **dict.fromkeys(("ml", "millilitres", "milliliters"), (1_000_000, 16387064)),
            **dict.fromkeys(("l", "litre", "litres", "liter", "liters"), (1e9, 16387064)),
        },
        "lb": {
            **dict.fromkeys(("lb", "lbs", "pound", "pounds"), (1, 1)),
            **dict.fromkeys(("oz", "ounce", "ounces"), (1, 16)),
            **dict.fromkeys(("kg", "kilogram", "kilograms"), (100_000_000, 45359237)),
            **dict.fromkeys(("g", "gram", "grams"), (100_000, 45359237)),
        },
        "lb/ft2": {
            **dict.fromkeys(("lb/ft2", "psf", "lb per sq ft"), (1, 1)),
            **dict.fromkeys(("kg/m2",), (9290304, 45359237)),
        },
        "lb/ft": {
            **dict.fromkeys(("lb/ft", "plf"), (1, 1)),
            **dict.fromkeys(("kg/m",), (30480000, 45359237)),
        },
        "mph": {
            **dict.fromkeys(("mph", "miles per hour"), (1, 1)),
            **dict.fromkeys(("km/h", "kph"), (1_000_000, 1_609_344)),
            **dict.fromkeys(("m/s",), (100_000, 44704)),
        },
        "rad": {
            **dict.fromkeys(("deg", "degree", "degrees"), (pi, 180)),
            **dict.fromkeys(("rad", "radians"), (1, 1)),
        },
    }
)

_EXAMPLES: Mapping[str, str] = MappingProxyType(
    {
        "in": _LENGTHS,
        "pitch": _PITCHES,
        "in2": "an area with its unit, such as 130.7 ft2, 1.3 squares or 12.1 m2",
        "square": "an area with its unit, such as 1.3 squares, 130.7 ft2 or 12.1 m2",
        "in3": "a volume with its unit, such as 10.1 fl oz, 1 US gal, 300 mL or 4 L",
        "lb": "a weight with its unit, such as 65 lb or 29.5 kg",
        "lb/ft2": "a weight on an area with its unit, such as 2 lb/ft2 or 10 kg/m2",
        "lb/ft": "a weight along a length with its unit, such as 0.3 lb/ft or 0.5 kg/m",
        "mph": "a speed with its unit, such as 115 mph or 51.4 m/s",
        "rad": "an angle with its unit, such as 90 deg",
    }
)


def _read_named(text: str, unit: str, at: str) -> float:
    names, wanted = _NAMED[unit], _EXAMPLES[unit]
    plain = _plain(text, at, wanted)
    match = _MEASURED.fullmatch(plain)
    unit_name = match[3].translate(_POWERS) if match else ""
    if match and unit_name in names:
        times, over = names[unit_name]
        value = _worth(match[2], at, text, wanted) * times / over
        return _sized(-value if match[1] else value, at, text, unit)
    raise _unreadable(at, text, plain, wanted)


_READERS: Mapping[str, Callable[..., float]] = MappingProxyType(
    {"in": read_length, "pitch": read_pitch}
)


def read(text: str, unit: str, *, at: str = "value") -> float:
    """Read a measurement of any unit that the library knows.

    Args:
        text: What was written, such as ``65 lb``, ``10.1 fl oz``, ``14 ft`` or ``4:12``.
        unit: The unit inside: ``in``, ``pitch``, ``in2``, ``square``, ``in3``, ``lb``, ``lb/ft2``,
            ``lb/ft``, ``mph`` or ``rad``.
        at: The name to put into the refusal, dotted if it is nested.

    Returns:
        The number inside.

    Raises:
        Refused: Not a measurement of that unit in this grammar, or the unit is none of these.

    Source:
        The international inch (25.4 mm), pound (0.45359237 kg) and US gallon (231 in3), exact.

    >>> read("128 fl oz", "in3") == read("1 gal", "in3") == 231
    True
    """
    if unit not in _EXAMPLES:
        raise Refused(fault("unit", _echo(unit), f"one of {', '.join(_EXAMPLES)}"))
    reader = _READERS.get(unit)
    return reader(text, at=at) if reader is not None else _read_named(text, unit, at)
