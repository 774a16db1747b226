"""The bar that tells the scale of a picture, whatever size it is printed at."""

from __future__ import annotations

from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, Ratio, System
from roofing_core.sheets.drawings.lettering import SMALL
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import FINE

#: Height that the bar takes.
SCALE_BAR: Millimetres = 4.0

#: No bar is longer on paper.
_LONGEST = 50.0

#: Inches; round ones of a foot, and of a millimetre.
_US = (1.0, 2.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0, 600.0, 1200.0, 2400.0)
_METRIC = tuple(mm * 10 / 254 for mm in (20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000))


def scale_bar(paper: Paper, scale: Ratio, system: System) -> None:
    """Draw a bar of a round length, in black and white halves, under what is there.

    Args:
        paper: What is drawn on.
        scale: How many times smaller than in reality.
        system: The unit system.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> scale_bar(paper, 25.0, "us")
    >>> "2 ft" in paper.done(name="roof", says="").svg
    False
    """
    long = _bar(scale, system)
    wide = long * 25.4 / scale
    paper.y += SCALE_BAR
    top, foot, half = paper.y - 1.5, paper.y, wide / 2
    paper.draw([(0, top), (wide, top), (wide, foot), (0, foot)], FINE, closed=True)
    paper.fill([(0, top), (half, top), (half, foot), (0, foot)])
    paper.write(Words(f"{write_length(long, system)}, to scale", (wide + 2, foot), SMALL))


def _bar(scale: Ratio, system: System) -> Inches:
    """Give the longest round length that has room."""
    bars = _US if system == "us" else _METRIC
    fits = [long for long in bars if long * 25.4 / scale <= _LONGEST]
    return fits[-1] if fits else _LONGEST * scale / 25.4
