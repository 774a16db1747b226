"""Telling US units in a text: which figures stand in them, and not beside their metric."""

from __future__ import annotations

import re

#: A number, or a number with a fraction, and a unit that metric readers do not use. "In" before an
#: article, a number or the name of a plane is the word, as in 4 nails in each strip; a pitch such
#: as 4 in 12 is the same in both.
_US = re.compile(
    r"(?<![\w.:/])(?:\d+[ -])?[\d.,]*\d(?:/\d+)? ?"
    r"(?:in2|in3|in(?! (?:an?|the|each|every|all|which|one|front|back|left|right|\d+)\b)"
    r"|inch(?:es)?|ft2|ft|feet|foot|fl\.? oz|oz|gal(?:lons?)?|lb/ft2|lb/ft|lbs?|pounds?|psf|mph|F)"
    r"(?![\w/])"
)

#: A metric figure with the published one after it in parentheses: 914 mm (3 ft).
_BESIDE = re.compile(r"\d (?:mm|m2|mL|kg|kg/m2|m/s|C) \([^()]*\)")


def us_alone(text: str) -> list[str]:
    """Give the figures of a text that stand in US units without their metric before them."""
    return _US.findall(_BESIDE.sub("", text))
