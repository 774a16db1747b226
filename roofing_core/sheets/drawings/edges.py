"""Edges: outlines whose sides are told apart by what is written along them and how they are drawn.

Each kind of edge has a line of its own, and its name and length stand beside it. Where there is no
room for that a letter stands there, and what it means beneath the picture.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin
from types import MappingProxyType

from roofing_core.measures.units import Millimetres
from roofing_core.roof.outlines import EdgeKind
from roofing_core.sheets.drawings.lettering import (
    ABOVE,
    BELOW,
    LEADING,
    SMALL,
    TEXT,
    Spot,
    width_of,
)
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import Stroke

#: This library's own: eaves and rakes whole, all others broken.
STROKES: Mapping[EdgeKind, Stroke] = MappingProxyType(
    {
        "eave": Stroke(0.9),
        "rake": Stroke(0.45),
        "ridge": Stroke(0.7, (7, 1.5)),
        "hip": Stroke(0.55, (3.5, 1.2)),
        "valley": Stroke(0.7, (3, 1, 0.8, 1)),
        "pitch_break": Stroke(0.45, (1.5, 1.2)),
        "sidewall": Stroke(0.9, (1.6, 0.8)),
        "headwall": Stroke(0.9, (5, 0.8, 1.6, 0.8)),
    }
)

#: Between a line and the words beside it, the best first: past an outer edge there may be shingles,
#: within a roof words that stand off could be those of another line.
_GAPS = (0.8, 2.0, 3.5, 5.5, 8.0, 11.0, 14.0)
_INNER_GAPS = (0.8, 1.4)

#: A text this many times longer than its edge is a letter instead.
_OVERLONG = 1.2

#: An angle: an upright edge is read from below, whichever way it was walked.
_DUST = 1e-6

_ALONG = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)


@dataclass(frozen=True, slots=True)
class Edge:
    """A side of a picture, on paper, with what is to be written along it.

    Attributes:
        start: Where it begins.
        end: Where it ends.
        kind: What it is.
        text: What is to be written along it.
        sides: On which sides: 1 is to the left of its way on paper, -1 to the right.
    """

    start: Spot
    end: Spot
    kind: EdgeKind
    text: str
    sides: tuple[int, ...] = (1,)

    def long(self) -> Millimetres:
        """Give its length on paper."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])


def spelt(kind: str) -> str:
    """Give a kind as a word.

    Args:
        kind: Such as ``pitch_break``.

    Returns:
        Such as ``pitch break``.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> spelt("pitch_break")
    'pitch break'
    """
    return kind.replace("_", " ")


def draw_edges(paper: Paper, edges: Iterable[Edge]) -> None:
    """Draw edges, each in the line of its kind, and have texts stand clear of them.

    Args:
        paper: What they are drawn on.
        edges: The edges.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> draw_edges(paper, [Edge((10, 50), (60, 50), "eave", "eave 14 ft")])
    >>> "M10 50H60" in paper.done(name="roof", says="An eave.").svg
    True
    """
    for edge in edges:
        paper.draw((edge.start, edge.end), STROKES[edge.kind])
        paper.keep_clear((edge.start, edge.end))


def label_edges(paper: Paper, edges: Iterable[Edge]) -> tuple[str, ...]:
    """Write along each edge what it is, or a letter where that has no room.

    Args:
        paper: What they are drawn on.
        edges: The edges; where several say the same and have no room, one letter serves for all.

    Returns:
        What the letters mean, such as ``a: ridge 4 in``, and which edges even those had no room at.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> label_edges(paper, [Edge((50, 50), (52, 50), "ridge", "ridge 4 in")])
    ('a: ridge 4 in',)
    """
    meant: dict[str, str] = {}
    unmarked: list[str] = []
    for edge in sorted(edges, key=Edge.long, reverse=True):
        fits = width_of(edge.text, SMALL) <= _OVERLONG * edge.long()
        if fits and paper.write_first(_places(edge, edge.text), ground=True):
            continue
        letter = meant.get(edge.text, letter_of(len(meant)))
        if paper.write_first(_places(edge, letter), ground=True):
            meant[edge.text] = letter
        else:
            unmarked.append(edge.text)
    told = [f"{letter}: {text}" for text, letter in meant.items()]
    return (*told, *too_small(unmarked))


def too_small(unmarked: Sequence[str]) -> tuple[str, ...]:
    """Tell what had no room for so much as a letter.

    Args:
        unmarked: What was to be written.

    Returns:
        One text, or none where everything had room.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> too_small(["hip 2 in", "eave 1 in"]), too_small([])
    (('too small to be marked: hip 2 in, eave 1 in',), ())
    """
    return (f"too small to be marked: {', '.join(unmarked)}",) if unmarked else ()


def letter_of(k: int) -> str:
    """Give the letter of a place in a list: a to z, then aa and on.

    Args:
        k: From 0.

    Returns:
        The letter or letters.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> letter_of(0), letter_of(25), letter_of(26)
    ('a', 'z', 'aa')
    """
    before, last = divmod(k, 26)
    return (letter_of(before - 1) if before else "") + chr(ord("a") + last)


def _places(edge: Edge, text: str) -> Iterator[Words]:
    """Give the places beside an edge for a text, the best first."""
    (ax, ay), (bx, by) = edge.start, edge.end
    turn = atan2(by - ay, bx - ax)
    upright = (turn + pi / 2 + _DUST) % pi - pi / 2 - _DUST
    up_x, up_y = sin(upright), -cos(upright)
    left_x, left_y = sin(turn), -cos(turn)
    inner = len(edge.sides) > 1
    for gap in _INNER_GAPS if inner else _GAPS:
        for side in edge.sides:
            above = side * (left_x * up_x + left_y * up_y) > 0
            off = gap + (BELOW if above else ABOVE) * SMALL
            for t in _ALONG:
                x = ax + t * (bx - ax) + side * off * left_x
                y = ay + t * (by - ay) + side * off * left_y
                yield Words(text, (x, y), SMALL, "middle", upright)


def line_key(paper: Paper, kinds: Iterable[EdgeKind]) -> None:
    """Show beneath a picture which line is which kind of edge.

    Args:
        paper: What is drawn on.
        kinds: The kinds that the picture has.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> line_key(paper, ["eave", "rake"])
    >>> ">rake<" in paper.done(name="roof", says="An eave.").svg
    True
    """
    top = paper.y
    for x, row, kind in _key(kinds, paper.width):
        paper.y = top + 1 + row * LEADING * TEXT
        paper.draw(((x, paper.y - 0.9), (x + 12, paper.y - 0.9)), STROKES[kind])
        paper.write(Words(spelt(kind), (x + 14, paper.y), TEXT))


def key_height(kinds: Iterable[EdgeKind], *, width: Millimetres) -> Millimetres:
    """Give how much height the key of lines takes.

    Args:
        kinds: The kinds that the picture has.
        width: Of the paper.

    Returns:
        The height.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> key_height(["eave", "rake"], width=180) == key_height(["eave"], width=180)
    True
    """
    return max((row for _, row, _ in _key(kinds, width)), default=0) * LEADING * TEXT + 1


def _key(kinds: Iterable[EdgeKind], width: float) -> Iterator[tuple[float, int, EdgeKind]]:
    """Give where each kind stands in the key: how far from the left, and in which row from 1."""
    x, row = 0.0, 1
    for kind in dict.fromkeys(kinds):
        wide = 18 + width_of(spelt(kind), TEXT)
        if x + wide > width:
            x, row = 0.0, row + 1
        yield x, row, kind
        x += wide
