"""Published figures in texts: as their source prints them, and in metric with the print beside.

A rule or a caution that quotes a source in US units quotes its figure. Who reads in metric gets the
same figure converted, and the one that was published after it, so that it can be looked up.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from roofing_core.measures.reading import read
from roofing_core.measures.sentences import Amount, Sentence, say, write
from roofing_core.measures.units import System

#: Degrees of Fahrenheit are only ever published figures: nothing is calculated with them.
FAHRENHEIT = "F"

#: The units that sources print, and the unit inside that each is read into.
_INSIDE: Mapping[str, str] = MappingProxyType(
    {
        "in": "in",
        "ft": "in",
        "ft2": "in2",
        "fl oz": "in3",
        "lb": "lb",
        "lb/ft2": "lb/ft2",
        "mph": "mph",
        FAHRENHEIT: FAHRENHEIT,
    }
)

_FIGURE = re.compile(r"^([\d ./]*\d) (\D.*)$", re.ASCII)
_BRACES = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True, slots=True)
class Published(Amount):
    """A figure that a source prints in US units.

    Attributes:
        printed: The figure as it is printed there.
    """

    printed: str

    def written(self, system: System = "us") -> str:
        """Write the figure as printed; in metric converted first, with the print after it."""
        if system == "us":
            return self.printed
        return f"{self._converted()} ({self.printed})"

    def _converted(self) -> str:
        if self.unit == FAHRENHEIT:
            return f"{round((self.value - 32) * 5 / 9)} C"
        return write(self.value, self.unit, "metric")


def published(printed: str) -> Published:
    """Give a figure that a source prints in US units.

    Args:
        printed: The figure with its unit, such as ``3 ft``, ``7/16 in``, ``140 mph`` or ``85 F``.

    Returns:
        The figure, to put into a sentence.

    Raises:
        Nothing: A unit that no source here prints is a slip in the code, and a KeyError.

    Source:
        The international inch and pound; 0 C is 32 F, and 5 of its degrees are 9 of those.

    >>> published("3 ft").written(), published("3 ft").written("metric")
    ('3 ft', '914 mm (3 ft)')
    >>> published("85 F").written("metric")
    '29 C (85 F)'
    """
    _, number, name, _ = _FIGURE.split(printed)
    unit = _INSIDE[name]
    value = float(number) if unit == FAHRENHEIT else read(printed, unit)
    return Published(value, unit, printed)


def with_figures(text: str, *filling: object) -> Sentence:
    """Make a sentence of a text with published figures in braces.

    Args:
        text: Such as ``Stay {10 ft} away.``; empty braces take what is to be filled in.
        filling: What goes into empty braces, in their order; what is missing is written as dots.

    Returns:
        The sentence.

    Raises:
        Nothing: A figure that `published` does not know is a slip in the code, and a KeyError.

    Source:
        None: a way of writing.

    >>> with_figures("From {140 mph} on at least {}.", Amount(4, "in")).written("metric")
    'From 62.6 m/s (140 mph) on at least 102 mm.'
    """
    return say(*_parts(text, iter(filling)))


def _parts(text: str, filling: Iterator[object]) -> Iterator[object]:
    for k, part in enumerate(_BRACES.split(text)):
        if k % 2 == 0:
            yield part
        else:
            yield published(part) if part else next(filling, "...")
