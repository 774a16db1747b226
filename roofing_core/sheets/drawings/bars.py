"""Bars: lengths of metal and rolls, to scale, with what is cut from each and what is left."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from roofing_core.measures.units import Inches, Millimetres, Ratio
from roofing_core.sheets.drawings.lettering import ABOVE, BELOW, SMALL, width_of
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import FINE, FIRM


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part of a bar.

    Attributes:
        start: Where it begins, from the left end of the bar.
        end: Where it ends.
        text: What is written in it, if it has room.
        short: What is written in it instead, where the text has none.
        left_over: Whether it is what is left, and is hatched.
        lower: Its lower side, as a part of the bar's height.
        upper: Its upper side, likewise.
    """

    start: Inches
    end: Inches
    text: str
    short: str = ""
    left_over: bool = False
    lower: Ratio = 0.0
    upper: Ratio = 1.0


def draw_bar(
    paper: Paper, parts: Iterable[Part], *, scale: Ratio, long: Inches, high: Millimetres
) -> None:
    """Draw a bar under what is there.

    Args:
        paper: What is drawn on.
        parts: Its parts.
        scale: How many times smaller than in reality, along it.
        long: Its length.
        high: Its height on paper.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "Metal", "")
    >>> draw_bar(paper, [Part(start=0, end=58, text="58 in")], scale=20.0, long=120, high=5)
    >>> ">58 in<" in paper.done(name="metal", says="").svg
    True
    """
    top, foot = paper.y + 1.4, paper.y + 1.4 + high
    paper.draw(_corners(0, long * 25.4 / scale, foot, top), FIRM, closed=True)
    for part in parts:
        left, right = part.start * 25.4 / scale, part.end * 25.4 / scale
        shape = _corners(left, right, foot - part.lower * high, foot - part.upper * high)
        paper.draw(shape, FINE, closed=True)
        if part.left_over:
            paper.hatch([shape], 1.2)
            continue
        wide, tall = right - left, (part.upper - part.lower) * high
        text = next((one for one in (part.text, part.short) if _fits(one, wide, tall)), "")
        middle = (shape[0][1] + shape[2][1]) / 2 + (ABOVE - BELOW) / 2 * SMALL
        paper.write(Words(text, ((left + right) / 2, middle), SMALL, "middle"))
    paper.y = foot


def _fits(text: str, wide: Millimetres, high: Millimetres) -> bool:
    return width_of(text, SMALL) <= wide - 1 and high >= (ABOVE + BELOW) * SMALL


def _corners(
    left: float, right: float, foot: float, top: float
) -> Sequence[tuple[Millimetres, Millimetres]]:
    return ((left, foot), (right, foot), (right, top), (left, top))
