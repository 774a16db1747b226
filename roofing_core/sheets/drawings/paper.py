"""Paper: a drawing while it is made, which keeps account of where its texts stand.

A text is put where it is told, or at the first of several places that is free; so none is ever
written over another. Everything is in millimetres from the upper left corner.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor
from typing import Literal

from roofing_core.measures.units import Millimetres, Radians
from roofing_core.sheets.drawings.crowd import Crowd
from roofing_core.sheets.drawings.lettering import (
    LEADING,
    SMALL,
    TEXT,
    TITLE,
    Box,
    Spot,
    box_of,
    lines_of,
    shortened,
    turned_box,
)
from roofing_core.sheets.drawings.svg import (
    FINE,
    HAIR,
    Anchor,
    Stroke,
    document,
    drawn,
    filled,
    path_of,
    written,
)

Frame = Literal["upright", "across"]

#: Left white round every drawing.
EDGE = 2.0

#: What A4 and Letter both have room for, that edge taken off, with 15 mm to spare on every side.
LONG, SHORT = 241.0, 176.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawing, finished.

    Attributes:
        name: What it is asked for by, such as ``roof_plan``; pages of one kind are numbered.
        title: Its title.
        says: What it shows, in words, for whoever does not see it.
        width: Of the paper that it takes.
        height: Of the same.
        svg: The drawing itself.
    """

    name: str
    title: str
    says: str
    width: Millimetres
    height: Millimetres
    svg: str


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text at a place.

    Attributes:
        text: The text.
        at: The point on its line that it begins, is centred or ends at.
        size: Of the letters.
        anchor: What of it stands there.
        turn: How far it is turned about that point, clockwise.
        bold: Whether the letters are bold.
    """

    text: str
    at: Spot
    size: Millimetres = SMALL
    anchor: Anchor = "start"
    turn: Radians = 0.0
    bold: bool = False

    def box(self) -> Box:
        """Give the room that it takes."""
        return box_of(
            self.text, self.at, size=self.size, anchor=self.anchor, turn=self.turn, bold=self.bold
        )


class Paper:
    """A drawing while it is made.

    Args:
        frame: Which way the paper lies.
        title: Its title.
        beneath: A line under the title.
    """

    def __init__(self, frame: Frame, title: str, beneath: str) -> None:
        self.width, self.bottom = (SHORT, LONG) if frame == "upright" else (LONG, SHORT)
        self.title = title
        self.y = 0.0
        #: Texts that look for a place find none below this.
        self.floor = self.bottom
        self._lines: list[str] = []
        self._words: list[str] = []
        self._crowd = Crowd()
        head = shortened(title, room=self.width, size=TITLE, bold=True)
        self.write(Words(head, (0.0, 4.0), TITLE, bold=True))
        self.y = 6.0
        self.note(beneath)

    def write(self, words: Words) -> None:
        """Write a text where it is told to stand."""
        if words.text:
            self._crowd.add_box(words.box())
            self._words.append(
                written(
                    words.text, words.at, size=words.size, anchor=words.anchor,
                    turn=words.turn, bold=words.bold,
                )
            )  # fmt: skip

    def write_first(self, places: Iterable[Words], *, ground: bool = False) -> bool:
        """Write a text at the first of its places that is free; tell whether one was.

        With a ground, what was drawn there before is whitened.
        """
        for words in places:
            box = words.box()
            if self.is_free(box):
                if ground:
                    self._lines.append(filled(path_of(box.corners, closed=True), "white"))
                self.write(words)
                return True
        return False

    def is_free(self, box: Box) -> bool:
        """Tell whether a box lies on the paper, on no text and on no line that is in the way."""
        sheet = turned_box((0, 0), 0, 0, self.width, self.floor)
        return box.within(sheet) and self._crowd.is_clear(box)

    def keep_clear(self, points: Sequence[Spot]) -> None:
        """Have texts that look for a place stand clear of a line."""
        for line in pairwise(points):
            self._crowd.add_line(*line)

    def take(self, box: Box) -> None:
        """Have texts that look for a place stand clear of a box."""
        self._crowd.add_box(box)

    def draw(self, points: Sequence[Spot], stroke: Stroke = FINE, *, closed: bool = False) -> None:
        """Draw a line through points."""
        self._lines.append(drawn(path_of(points, closed=closed), stroke))

    def draw_all(self, lines: Iterable[Sequence[Spot]], stroke: Stroke = FINE) -> None:
        """Draw many lines as one path."""
        data = "".join(map(path_of, lines))
        if data:
            self._lines.append(drawn(data, stroke))

    def fill(self, points: Sequence[Spot], shade: Literal["black", "white"] = "black") -> None:
        """Fill a shape."""
        self._lines.append(filled(path_of(points, closed=True), shade))

    def dot(self, at: Spot, radius: Millimetres = 0.4) -> None:
        """Fill a small square, standing on its corner."""
        x, y = at
        self.fill([(x - radius, y), (x, y - radius), (x + radius, y), (x, y + radius)])

    def hatch(self, shapes: Iterable[Sequence[Spot]], gap: Millimetres = 1.0) -> None:
        """Hatch shapes with slanting lines."""
        self.draw_all((line for shape in shapes for line in _hatching(shape, gap)), HAIR)

    def note(self, text: str, size: Millimetres = TEXT) -> None:
        """Write running text under what is there, over the whole width."""
        for line in lines_of(text, room=self.width, size=size):
            self.y += LEADING * size
            self.write(Words(line, (0.0, self.y), size))

    def done(self, *, name: str, says: str) -> Drawing:
        """Give the drawing, as high as what was put under each other."""
        width, height = self.width + 2 * EDGE, ceil(self.y + 1) + 2 * EDGE
        return Drawing(
            name=name,
            title=self.title,
            says=says,
            width=width,
            height=height,
            svg=document(
                width=width,
                height=height,
                edge=EDGE,
                title=self.title,
                says=says,
                lines="\n".join(self._lines),
                words="\n".join(self._words),
            ),
        )


def note_height(text: str, *, width: Millimetres, size: Millimetres = TEXT) -> Millimetres:
    """Give how much height running text takes.

    Args:
        text: Running text.
        width: Of its lines.
        size: Of its letters.

    Returns:
        Its lines together.

    Raises:
        Nothing: Any text takes some height.

    Source:
        None needed.

    >>> note_height("one line", width=SHORT, size=10)
    13.5
    """
    return len(lines_of(text, room=width, size=size)) * LEADING * size


def _hatching(shape: Sequence[Spot], gap: float) -> Iterable[Sequence[Spot]]:
    """Give slanting lines across a shape: where x + y is a whole number of gaps."""
    sums = [x + y for x, y in shape]
    sides = [*pairwise(shape), (shape[-1], shape[0])]
    for k in range(floor(min(sums) / gap) + 1, ceil(max(sums) / gap)):
        met = sorted(at for side in sides for at in _meeting(*side, k * gap))
        yield from zip(met[::2], met[1::2], strict=False)


def _meeting(start: Spot, end: Spot, total: float) -> Iterable[Spot]:
    """Give where a side meets the slanting line on which x + y is a total."""
    first, last = sum(start), sum(end)
    if min(first, last) <= total < max(first, last):
        t = (total - first) / (last - first)
        yield start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1])
