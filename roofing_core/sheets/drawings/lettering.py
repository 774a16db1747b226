"""Lettering: how much room a text takes on paper, and whether two texts would touch.

A drawing brings no font: each viewer sets its own plain one. Room is kept for the widest of them
that is common, so that in the others texts stand further apart and never run into each other.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import cos, sin
from textwrap import wrap
from types import MappingProxyType
from unicodedata import combining, east_asian_width, normalize

from roofing_core.measures.units import Millimetres, Radians

#: A point on paper: from the left, and down from the top.
Spot = tuple[Millimetres, Millimetres]

#: Sizes of letters: in and beside a picture, of running text, of a title. 2.4 mm is 6.8 points.
SMALL, TEXT, TITLE = 2.4, 2.8, 4.2

#: Of the size of letters: from the line up to the tallest, and down to the deepest.
ABOVE, BELOW = 0.78, 0.25

#: From line to line of running text, of the size of letters.
LEADING = 1.35

#: Width of letters at a size of 1: no less than in DejaVu Sans and Helvetica, as their font files
#: give them; other common plain fonts lie between. What is not listed is as wide as it is high.
_CLASSES = (
    ("ijlI'′", 0.30),
    (" \xa0,./:;\\|", 0.34),
    ("f-()[]t″", 0.40),
    ("!r", 0.42),
    ('"*_`°–', 0.50),
    ("scz?J_", 0.56),
    ("abdeghknopquvxyFLT0123456789${}", 0.64),
    ("ABEKPSVXYZ", 0.70),
    ("CDGHNOQRU&", 0.79),
    ("wM#+<=>^~×", 0.87),
    ("%mW", 1.0),
    ("@", 1.02),
)
_WIDTHS: Mapping[str, float] = MappingProxyType(
    {letter: width for letters, width in _CLASSES for letter in letters}
)

#: The spaces within a measurement, such as ``8 ft 7 5/8 in``: no line ends there.
_WITHIN = re.compile(r"(?<=\d) (?=(?:ft|in|mm|\d+/\d+)\b)|(?<=\bft) (?=\d)")

#: Bold letters of the same font are wider by less than this.
_BOLD = 1.25


def width_of(text: str, size: Millimetres, *, bold: bool = False) -> Millimetres:
    """Give the room that a line of text takes.

    The widths of its letters, each as in the widest of common plain fonts.

    Args:
        text: One line.
        size: Of the letters.
        bold: Whether they are bold.

    Returns:
        Its width, or more than its width in a narrower font.

    Raises:
        Nothing: Any text takes some room.

    Source:
        The font files of DejaVu Sans and Helvetica, letter by letter, rounded up.

    >>> width_of("ll", 10), width_of("", 10), width_of("屋", 10)
    (6.0, 0.0, 10.0)
    """
    return sum(map(_letter, text)) * size * (_BOLD if bold else 1.0)


def _letter(letter: str) -> float:
    known = _WIDTHS.get(letter)
    if known is not None:
        return known
    if combining(letter):
        return 0.0
    base = normalize("NFD", letter)[0]
    narrow = east_asian_width(letter) not in "WF"
    return _WIDTHS.get(base, 1.0) if narrow else 1.0


def is_foreseen(text: str) -> bool:
    """Tell whether the width of every letter of a text is known.

    Args:
        text: One line.

    Returns:
        Whether no letter is of a script whose letters may come out wider than they are high.

    Raises:
        Nothing: Any text is one or the other.

    Source:
        The list of letters whose widths are known.

    >>> is_foreseen("9 ft 4 in"), is_foreseen("क्षेत्र")
    (True, False)
    """
    return all(letter in _WIDTHS for letter in text)


def shortened(text: str, *, room: Millimetres, size: Millimetres, bold: bool = False) -> str:
    """Give as much of a text as has room, with three dots where something is left out.

    Args:
        text: One line.
        room: The room that there is.
        size: Of the letters.
        bold: Whether they are bold.

    Returns:
        The text, or its beginning with dots, or nothing where not even those have room.

    Raises:
        Nothing: Any text can be cut.

    Source:
        None needed.

    >>> shortened("the long shed by the orchard", room=30, size=2.8)
    'the long shed by t...'
    """
    if width_of(text, size, bold=bold) <= room:
        return text
    kept = next(
        (k for k in range(len(text), -1, -1)
         if width_of(f"{text[:k]}...", size, bold=bold) <= room),
        None,
    )  # fmt: skip
    return "" if kept is None else f"{text[:kept].rstrip()}..."


def lines_of(text: str, *, room: Millimetres, size: Millimetres) -> tuple[str, ...]:
    """Give a text in lines that have room; a word that is too long is broken, a measurement is not.

    Args:
        text: Running text.
        room: Width of a line.
        size: Of the letters.

    Returns:
        One entry per line.

    Raises:
        Nothing: Any text can be broken.

    Source:
        None needed.

    >>> lines_of("Heights are up the slope", room=25, size=2.8)
    ('Heights are up', 'the slope')
    """
    found: list[str] = []
    for word in _pieces(text, room, size):
        longer = f"{found[-1]} {word}" if found else word
        if found and width_of(longer, size) <= room:
            found[-1] = longer
        else:
            found.append(word)
    return tuple(line.replace("\xa0", " ") for line in found)


def _pieces(text: str, room: float, size: float) -> Iterator[str]:
    """Give the words of a text, those that are too long in pieces."""
    words = _WITHIN.sub("\xa0", " ".join(text.split())).split(" ")
    for word in filter(None, words):
        if width_of(word, size) <= room:
            yield word
        else:
            yield from wrap(word, max(1, int(room / size)))


@dataclass(frozen=True, slots=True)
class Box:
    """The room of a text: a rectangle, level or turned.

    Attributes:
        corners: Its corners in order.
    """

    corners: tuple[Spot, Spot, Spot, Spot]

    def touches(self, other: Box) -> bool:
        """Tell whether two boxes have room in common."""
        return not any(
            _apart(axis, self.corners, other.corners)
            for box in (self, other)
            for axis in _axes(box.corners)
        )

    def crosses(self, start: Spot, end: Spot) -> bool:
        """Tell whether a straight line goes through the box."""
        along = (end[0] - start[0], end[1] - start[1])
        axes = [*_axes(self.corners), (-along[1], along[0])]
        return not any(_apart(axis, self.corners, (start, end)) for axis in axes)

    def within(self, other: Box) -> bool:
        """Tell whether the box lies within another one that is level."""
        (left, top), (right, bottom) = other.corners[0], other.corners[2]
        return all(left <= x <= right and top <= y <= bottom for x, y in self.corners)


def _axes(corners: tuple[Spot, ...]) -> Iterator[Spot]:
    for (ax, ay), (bx, by) in pairwise(corners[:3]):
        yield bx - ax, by - ay


def _apart(axis: Spot, one: tuple[Spot, ...], other: tuple[Spot, ...]) -> bool:
    """Tell whether a line square to an axis goes between two sets of points."""
    first = [x * axis[0] + y * axis[1] for x, y in one]
    second = [x * axis[0] + y * axis[1] for x, y in other]
    return max(first) <= min(second) or max(second) <= min(first)


def box_of(
    text: str,
    at: Spot,
    *,
    size: Millimetres,
    anchor: str = "start",
    turn: Radians = 0.0,
    bold: bool = False,
) -> Box:
    """Give the room of a text where it stands.

    Args:
        text: One line.
        at: Where it stands: the point on its line that it begins, is centred or ends at.
        size: Of the letters.
        anchor: ``start``, ``middle`` or ``end``: what of it stands there.
        turn: How far it is turned about that point, clockwise.
        bold: Whether the letters are bold.

    Returns:
        A rectangle round it.

    Raises:
        Nothing: A text stands anywhere.

    Source:
        Geometry.

    >>> box_of("ll", (0, 0), size=10, anchor="end").corners[0][0]
    -6.0
    """
    wide = width_of(text, size, bold=bold)
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[anchor]
    return turned_box(at, left, -ABOVE * size, left + wide, BELOW * size, turn=turn)


def turned_box(
    at: Spot,
    left: Millimetres,
    top: Millimetres,
    right: Millimetres,
    bottom: Millimetres,
    *,
    turn: Radians = 0.0,
) -> Box:
    """Give a rectangle beside a point, turned about that point.

    Args:
        at: The point.
        left: From it to the left side, before it is turned.
        top: From it to the upper side.
        right: From it to the right side.
        bottom: From it to the lower side.
        turn: How far it is turned, clockwise.

    Returns:
        The rectangle.

    Raises:
        Nothing: Any rectangle can be turned.

    Source:
        Geometry.

    >>> turned_box((5, 5), 0, 0, 2, 1, turn=0).corners[2]
    (7.0, 6.0)
    """
    c, s = cos(turn), sin(turn)
    x, y = at
    around = ((left, top), (right, top), (right, bottom), (left, bottom))
    a, b, d, e = ((x + c * dx - s * dy, y + s * dx + c * dy) for dx, dy in around)
    return Box((a, b, d, e))
