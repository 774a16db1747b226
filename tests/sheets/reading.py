"""Reading drawings back: what is written and drawn on them, and where, from their SVG alone.

How wide a text comes out is taken from the widths of a font that was published, not from the
library's own table.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin
from xml.etree import ElementTree

from tests.published.test_dejavu_sans import BOLD, REGULAR, UNITS

SVG = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]

#: In DejaVu Sans, over the size of letters: the brackets reach this high above the line, and the
#: comma and the brackets this far below it. From its font file (glyf), in 1/2048: 1556 and 483.
ABOVE, BELOW = 1556 / 2048, 483 / 2048


@dataclass(frozen=True)
class Text:
    """A line of text as it stands on the paper."""

    text: str
    corners: tuple[Point, ...]
    size: float


def root_of(svg: str) -> ElementTree.Element:
    return ElementTree.fromstring(svg)


def page_of(svg: str) -> tuple[float, float, float, float]:
    """Give left, top, width and height of the paper, in the drawing's own millimetres."""
    left, top, width, height = map(float, root_of(svg).attrib["viewBox"].split())
    return left, top, width, height


def width_in_font(text: str, *, bold: bool) -> float:
    """Give the width of a text at a size of 1, by the published widths; 1 for other letters."""
    widths = {c: units for units, letters in (BOLD if bold else REGULAR).items() for c in letters}
    return sum(widths.get(letter, UNITS) for letter in text) / UNITS


def texts_of(svg: str) -> list[Text]:
    return [_text(element) for element in root_of(svg).iter(f"{SVG}text")]


def _text(element: ElementTree.Element) -> Text:
    told = element.attrib
    x, y, size = float(told["x"]), float(told["y"]), float(told["font-size"])
    text = element.text or ""
    wide = width_in_font(text, bold=told.get("font-weight") == "bold") * size
    wide = float(told.get("textLength", wide))
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[told.get("text-anchor", "start")]
    turn = radians(float(told["transform"][7:].split()[0])) if "transform" in told else 0.0
    c, s = cos(turn), sin(turn)
    box = ((left, -ABOVE * size), (left + wide, -ABOVE * size), (left + wide, BELOW * size),
           (left, BELOW * size))  # fmt: skip
    return Text(text, tuple((x + c * a - s * b, y + s * a + c * b) for a, b in box), size)


def lines_of(svg: str) -> list[tuple[Point, Point, float, str]]:
    """Give every straight line: its ends, its width, and its dashes or what it is filled with."""
    found = []
    for element in root_of(svg).iter(f"{SVG}path"):
        told = element.attrib
        width = float(told.get("stroke-width", 0))
        look = told.get("fill", "") or told.get("stroke-dasharray", "")
        for corners in paths_of(told["d"]):
            found += [(a, b, width, look) for a, b in pairwise(corners)]
    return found


def shapes_of(svg: str) -> list[list[Point]]:
    """Give the points of every path."""
    return [
        corners
        for element in root_of(svg).iter(f"{SVG}path")
        for corners in paths_of(element.attrib["d"])
    ]


def paths_of(data: str) -> Iterator[list[Point]]:
    """Give the points of each path in path data: M, L, H, V and Z, all of them absolute."""
    corners: list[Point] = []
    for letter, numbers in re.findall(r"([MLHVZ])([^MLHVZ]*)", data):
        values = [float(number) for number in numbers.split()]
        if letter == "M":
            if corners:
                yield corners
            corners = [(values[0], values[1])]
        elif letter == "L":
            corners.append((values[0], values[1]))
        elif letter == "H":
            corners.append((values[0], corners[-1][1]))
        elif letter == "V":
            corners.append((corners[-1][0], values[0]))
        else:
            corners.append(corners[0])
    if corners:
        yield corners
