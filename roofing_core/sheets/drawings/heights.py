"""Heights: columns beside a picture that say what lies how far up the slope."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, System
from roofing_core.sheets.drawings.lettering import ABOVE, BELOW, SMALL, width_of
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import HAIR
from roofing_core.sheets.drawings.views import View

#: Between the columns, and from them to the room for what is written along the picture.
_COLUMN = 2.0

#: Least distance from one line of a column to the next.
_LINE = (ABOVE + BELOW) * SMALL + 0.3

_EVERY = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Height:
    """Something that lies level on a plane.

    Attributes:
        name: What it is called in the column, such as a number.
        v: How far up the slope.
        u: Where it begins, from the left corner of the deck.
    """

    name: str
    v: Inches
    u: Inches


def every(gap: Millimetres, least: Millimetres) -> int:
    """Give every how many lines one may be drawn or written so that they keep a distance.

    Args:
        gap: From line to line.
        least: The distance to keep.

    Returns:
        1, 2, 5, 10 and so on.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> every(3.0, 2.8), every(1.0, 2.8)
    (1, 5)
    """
    return next((many for many in _EVERY if many * gap >= least), _EVERY[-1])


def gutter(heights: Sequence[Height], headings: tuple[str, str], system: System) -> Millimetres:
    """Give the width of the columns.

    Args:
        heights: What they list.
        headings: Over the names, and over the heights.
        system: The unit system.

    Returns:
        With what keeps them apart.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> gutter([], ("course", "butt at"), "us") > 2 * 8
    True
    """
    return sum(_widths(heights, headings, system)) + 2 * _COLUMN


def _widths(
    heights: Sequence[Height], headings: tuple[str, str], system: System
) -> tuple[float, float]:
    names = (headings[0], *(one.name for one in heights))
    places = (headings[1], *(write_length(one.v, system) for one in heights))
    first, second = (max(width_of(text, SMALL) for text in texts) for texts in (names, places))
    return first, second


def write_heights(
    paper: Paper,
    view: View,
    heights: Sequence[Height],
    *,
    headings: tuple[str, str],
    right: Millimetres,
    top: Millimetres,
    system: System,
) -> None:
    """Write the columns, with a line from each height to where it begins.

    Args:
        paper: What is drawn on.
        view: How the plane lies on it.
        heights: One or more, from the lowest up; those that would run into others are left out, the
            first and the last never.
        headings: Over the names, and over the heights.
        right: Where the columns end.
        top: Of the line of the headings.
        system: The unit system.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> rows = [Height(name="1", v=0, u=0), Height(name="2", v=1, u=0)]
    >>> write_heights(paper, View(25, 60, 90), rows, headings=("row", "at"), right=50, top=20,
    ...               system="us")
    >>> ">2<" in paper.done(name="roof", says="").svg
    True
    """
    places = right - _COLUMN
    names = places - _widths(heights, headings, system)[1] - _COLUMN
    paper.write(Words(headings[0], (names, top), SMALL, "end"))
    paper.write(Words(headings[1], (places, top), SMALL, "end"))
    for one in _kept(heights, view):
        y = view.y(one.v)
        foot = y + (ABOVE - BELOW) / 2 * SMALL
        paper.draw([(right - _COLUMN + 0.5, y), (view.x(one.u), y)], HAIR)
        paper.write(Words(one.name, (names, foot), SMALL, "end"))
        paper.write(Words(write_length(one.v, system), (places, foot), SMALL, "end"))


def _kept(heights: Sequence[Height], view: View) -> Iterator[Height]:
    """Give the heights that have room: the first and the last, and even steps between."""
    gaps = [view.y(one.v) - view.y(two.v) for one, two in pairwise(heights)]
    step = every(sorted(gaps)[len(gaps) // 2], _LINE) if gaps else 1
    last = view.y(heights[-1].v)
    wrote = view.y(heights[0].v) + _LINE
    for k, one in enumerate(heights):
        y = view.y(one.v)
        even = k == 0 or (k + 1) % step == 0
        if k == len(heights) - 1 or (even and min(wrote - y, y - last) >= _LINE - DUST):
            wrote = y
            yield one
