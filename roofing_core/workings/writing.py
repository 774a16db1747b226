"""Writing: a formula in words, and with its numbers so that a pocket calculator can check it.

Numbers are written in full: fractions of an inch where they are such, else to twelve figures. An
area stands in square inches and a volume in cubic ones, or in square and cubic millimetres, so that
lengths multiplied come to what is written. An angle stands in degrees, a pitch as a ratio.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import pi
from types import MappingProxyType

from roofing_core.measures.sentences import Amount, Sentence, say
from roofing_core.measures.units import SHOWN, Scale, System
from roofing_core.workings.expressions import (
    Applied,
    Constant,
    Expression,
    Figure,
    How,
    Listed,
    Step,
    evaluated,
)

#: The units of formulas and their metric scale, by the unit inside. What measures along a length
#: or over an area is a constant's alone.
_SCALES: Mapping[str, Mapping[System, Scale]] = MappingProxyType(
    {
        "in": {"us": Scale("in"), "metric": Scale("mm", 254, 10)},
        "in2": {"us": Scale("in2"), "metric": Scale("mm2", 64516, 100)},
        "in3": {"us": Scale("in3"), "metric": Scale("mm3", 16387064, 1000)},
        "lb": {"us": Scale("lb"), "metric": Scale("kg", 45359237, 100_000_000)},
        "lb/ft2": {"us": Scale("lb/ft2"), "metric": Scale("kg/m2", 45359237, 9290304)},
        "lb/ft": {"us": Scale("lb/ft"), "metric": Scale("kg/m", 45359237, 30480000)},
        "lb/in3": {"us": Scale("lb/in3"), "metric": Scale("kg/mm3", 45359237, 1638706400000)},
        "in/ft": {"us": Scale("in/ft"), "metric": Scale("mm/m", 1000, 12)},
        "in2/ft2": {"us": Scale("in2/ft2"), "metric": Scale("mm2/m2", 1_000_000, 144)},
        "in2/square": {"us": Scale("in2/square"), "metric": Scale("mm2/square", 64516, 100)},
        "rad": {"us": Scale("deg", 180, pi), "metric": Scale("deg", 180, pi)},
        "square": {"us": Scale("squares"), "metric": Scale("squares")},
    }
)

_NO_UNIT = Scale("")

#: Fractions of an inch down to this are written as such.
_FINEST = 64

#: Larger numbers are written to twelve figures, not digit by digit.
_LARGEST = 1e12


@dataclass(frozen=True, slots=True)
class Checkable(Amount):
    """An amount that is written in full, in the unit of formulas."""

    def written(self, system: System = "us") -> str:
        """Write the amount in full in a unit system."""
        scale = _scale(self.unit, system)
        value = scale.shown(self.value)
        if self.unit == "pitch":
            return _ratio(value)
        text = _mixed(value) if scale.unit in ("in", "") else _plain(value)
        return f"{text} {scale.unit}" if scale.unit else text


def _scale(unit: str, system: System) -> Scale:
    if unit in _SCALES:
        return _SCALES[unit][system]
    return _NO_UNIT if unit in ("count", "1", "pitch") else SHOWN[unit][system]


def _ratio(pitch: float) -> str:
    """Write a pitch as a fraction of 12 where it is one."""
    rise = pitch * 12
    return f"{rise:.0f}/12" if rise == int(rise) and int(rise) / 12 == pitch else _plain(pitch)


def _mixed(value: float) -> str:
    """Write a number with its fraction, where that is one of a tape; decimals otherwise."""
    parts = abs(value) * _FINEST
    if parts != int(parts) or parts > _LARGEST:
        return _plain(value)
    whole, top = divmod(int(parts), _FINEST)
    bottom = _FINEST
    while top and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    sign = "-" if value < 0 else ""
    if not top:
        return f"{sign}{whole}"
    return f"{sign}{whole} {top}/{bottom}" if whole else f"{sign}{top}/{bottom}"


def _plain(value: float) -> str:
    whole = abs(value) < _LARGEST and value == int(value)
    return f"{value:.0f}" if whole else f"{value:.12g}"


#: How tightly each way holds its parts together: a looser one within it stands in brackets.
_TIGHT: Mapping[How, int] = MappingProxyType(
    {"sum": 1, "difference": 1, "negative": 1, "product": 3, "ratio": 3}
)

#: How tightly a single number holds that is multiplied by how often it is there.
_AS_PRODUCT = 3

_SIGNS: Mapping[How, str] = MappingProxyType(
    {"sum": " + ", "difference": " - ", "product": " x ", "ratio": " / "}
)

#: The ways that are written as a word with their parts in brackets.
_CALLED: Mapping[How, str] = MappingProxyType(
    {
        "root": "root",
        "up": "whole",
        "least": "least",
        "greatest": "greatest",
        "distance": "distance",
        "slant": "angle",
    }
)

_Parts = tuple[object, ...]
_Leaf = Callable[[Expression, int], _Parts]


def in_words(of: Expression) -> Sentence:
    """Write a formula with the names of what is put in.

    Args:
        of: The formula.

    Returns:
        The formula in words and signs.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> exposure = Figure(("choices", "shingle", "exposure"), "exposure", 5.625, "in")
    >>> in_words((Constant(20) - 1) * exposure).written()
    '(20 - 1) x exposure'
    """
    return say(*_written(of, _names, 0))


def in_numbers(of: Expression) -> Sentence:
    """Write a formula with the numbers that are put in.

    Args:
        of: The formula.

    Returns:
        The formula with its numbers; equal ones of a list are put together.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> exposure = Figure(("choices", "shingle", "exposure"), "exposure", 5.625, "in")
    >>> in_numbers((Constant(20) - 1) * exposure).written()
    '(20 - 1) x 5 5/8 in'
    """
    return say(*_written(of, _numbers, 0))


def _written(of: Expression, leaf: _Leaf, around: int) -> _Parts:
    if not isinstance(of, Applied):
        return leaf(of, around)
    if of.how in _CALLED:
        inner = (_written(part, leaf, 0) for part in of.parts)
        return (_CALLED[of.how], "(", *_joined(inner, ", "), ")")
    tight = _TIGHT[of.how]
    parts = tuple(_signed(of, leaf, tight))
    return ("(", *parts, ")") if tight < around else parts


def _signed(of: Applied, leaf: _Leaf, tight: int) -> Iterator[object]:
    """Write parts with their sign between them; what follows a minus or a slash holds tighter."""
    if of.how == "negative":
        yield "-"
        yield from _written(of.parts[0], leaf, 2)
        return
    for k, part in enumerate(of.parts):
        if k:
            yield _SIGNS[of.how]
        firm = tight + 1 if k and of.how in ("difference", "ratio") else tight
        yield from _written(part, leaf, max(firm, 2) if k else firm)


def _joined(parts: Iterator[_Parts] | Sequence[_Parts], sign: str) -> Iterator[object]:
    for k, part in enumerate(parts):
        if k:
            yield sign
        yield from part


def _names(of: Expression, _: int) -> _Parts:
    if isinstance(of, Figure | Step):
        return (of.name,)
    if isinstance(of, Constant):
        return (of.name,) if of.name else (Checkable(of.value, of.unit),)
    assert isinstance(of, Listed)
    return (f"{of.how} of {of.name}",)


def _numbers(of: Expression, around: int) -> _Parts:
    if isinstance(of, Figure | Constant | Step):
        value = evaluated(of)
        return _bracketed(value, Checkable(value, of.unit))
    assert isinstance(of, Listed)
    return (str(len(of.parts)),) if of.how == "count" else _listed(of, around)


def _bracketed(value: float, amount: Amount) -> _Parts:
    return ("(", amount, ")") if value < 0 else (amount,)


def _listed(of: Listed, around: int) -> _Parts:
    """Write a list, equal entries together: ``12 x 5 + 8 x 6``."""
    found: dict[_Parts, int] = {}
    for part in of.parts:
        text = _written(part, _numbers, 3 if of.how == "sum" else 0)
        found[text] = found.get(text, 0) + 1
    if not found:
        return ("0",)
    if of.how != "sum":
        return (of.how, "(", *_joined(tuple(found), ", "), ")")
    terms = [(f"{count} x ", *text) if count > 1 else text for text, count in found.items()]
    parts = tuple(_joined(terms, " + "))
    return ("(", *parts, ")") if around > (1 if len(terms) > 1 else _AS_PRODUCT) else parts


def comes_to(of: Expression, unit: str) -> Checkable:
    """Give what a formula comes to as it is written beside it.

    Args:
        of: The formula.
        unit: The unit inside of the figure.

    Returns:
        The amount, written in full.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> comes_to(Constant(19) * 5.625, "in").written()
    '106 7/8 in'
    """
    return Checkable(evaluated(of), unit)
