"""SVG text: strokes, shapes and words as elements, with nothing that a viewer would have to fetch.

The few elements that the drawings need, in millimetres of paper. Every text is escaped, every
number is written with two decimals: the same drawing is the same bytes on every machine. There are
no styles, scripts, links, names or colours other than black and white.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import degrees
from typing import Literal

from roofing_core.measures.units import Millimetres, Radians
from roofing_core.sheets.drawings.lettering import Spot, is_foreseen, width_of

Anchor = Literal["start", "middle", "end"]

#: What no XML document may hold, whichever way it is written.
_NO_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


@dataclass(frozen=True, slots=True)
class Stroke:
    """How a line is drawn.

    Attributes:
        width: Of the line.
        dash: Lengths drawn and left out by turns; none for a whole line.
    """

    width: Millimetres
    dash: tuple[Millimetres, ...] = ()


HAIR, FINE, FIRM, BOLD = Stroke(0.12), Stroke(0.2), Stroke(0.4), Stroke(0.7)


def number(value: Millimetres) -> str:
    """Write a coordinate: two decimals, no zeros at the end.

    Args:
        value: In millimetres of paper.

    Returns:
        Such as ``12.5``.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> number(12.504), number(-0.001), number(100)
    ('12.5', '0', '100')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def escaped(text: str) -> str:
    """Make a text safe within an element or a quoted attribute: what it says is all that it does.

    Args:
        text: Anything that a caller wrote.

    Returns:
        The text on one line with its marks escaped; what no XML may hold is a question mark in a
        diamond.

    Raises:
        Nothing.

    Source:
        Extensible Markup Language 1.0, production 2 (Char) and section 2.4.

    >>> escaped("<script>'&'</script>")
    '&lt;script&gt;&#x27;&amp;&#x27;&lt;/script&gt;'
    """
    return escape(_NO_XML.sub("\ufffd", " ".join(text.split())))


def path_of(points: Sequence[Spot], *, closed: bool = False) -> str:
    """Write a line through points as path data.

    Args:
        points: Two or more.
        closed: Whether it goes back to the first.

    Returns:
        Path data, level and upright parts in their short form.

    Raises:
        Nothing.

    Source:
        Scalable Vector Graphics 1.1, section 8.3.

    >>> path_of([(0, 0), (10, 0), (10, 5), (0, 0)])
    'M0 0H10V5L0 0'
    """
    return "".join(_steps(points)) + ("Z" if closed else "")


def _steps(points: Sequence[Spot]) -> Iterator[str]:
    was_x = was_y = ""
    for k, point in enumerate(points):
        x, y = number(point[0]), number(point[1])
        if not k:
            yield f"M{x} {y}"
        elif y == was_y:
            yield f"H{x}"
        else:
            yield f"V{y}" if x == was_x else f"L{x} {y}"
        was_x, was_y = x, y


def drawn(data: str, stroke: Stroke) -> str:
    """Give a path that is drawn as a line.

    Args:
        data: Path data.
        stroke: How it is drawn.

    Returns:
        One element, for a group that strokes in black and fills with nothing.

    Raises:
        Nothing.

    Source:
        Scalable Vector Graphics 1.1, section 11.4.

    >>> drawn("M0 0H9", Stroke(0.5, (2, 1)))
    '<path d="M0 0H9" stroke-width="0.5" stroke-dasharray="2 1"/>'
    """
    dash = " ".join(map(number, stroke.dash))
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<path d="{data}" stroke-width="{number(stroke.width)}"{dashed}/>'


def filled(data: str, shade: Literal["black", "white"]) -> str:
    """Give a path that is filled.

    Args:
        data: Path data.
        shade: What it is filled with.

    Returns:
        One element.

    Raises:
        Nothing.

    Source:
        Scalable Vector Graphics 1.1, section 11.3.

    >>> filled("M0 0H9V9Z", "black")
    '<path d="M0 0H9V9Z" fill="black" stroke="none"/>'
    """
    return f'<path d="{data}" fill="{shade}" stroke="none"/>'


def written(
    text: str,
    at: Spot,
    *,
    size: Millimetres,
    anchor: Anchor = "start",
    turn: Radians = 0.0,
    bold: bool = False,
) -> str:
    """Give a line of text where it stands.

    Args:
        text: One line.
        at: The point on its line that it begins, is centred or ends at.
        size: Of the letters.
        anchor: What of it stands there.
        turn: How far it is turned about that point, clockwise.
        bold: Whether the letters are bold.

    Returns:
        One element. A text in a script whose widths are not known is told how long to come out.

    Raises:
        Nothing.

    Source:
        Scalable Vector Graphics 1.1, section 10.

    >>> written("rake & <eave>", (1, 2), size=2.4)
    '<text x="1" y="2" font-size="2.4">rake &amp; &lt;eave&gt;</text>'
    """
    x, y = number(at[0]), number(at[1])
    told = f'x="{x}" y="{y}" font-size="{number(size)}"'
    if anchor != "start":
        told += f' text-anchor="{anchor}"'
    if bold:
        told += ' font-weight="bold"'
    if turn:
        told += f' transform="rotate({number(degrees(turn))} {x} {y})"'
    if not is_foreseen(text):
        told += f' textLength="{number(width_of(text, size, bold=bold))}"'
        told += ' lengthAdjust="spacingAndGlyphs"'
    return f"<text {told}>{escaped(text)}</text>"


def document(
    *,
    width: Millimetres,
    height: Millimetres,
    edge: Millimetres,
    title: str,
    says: str,
    lines: str,
    words: str,
) -> str:
    """Give a whole document.

    Args:
        width: Of the paper that it takes.
        height: Of the same.
        edge: What of it is left white on every side; places are measured from within.
        title: What it is called; read out by a screen reader.
        says: What it shows, in words.
        lines: Its shapes.
        words: Its texts.

    Returns:
        One `svg` element with a newline at its end, fit for a file or for the inside of a page.

    Raises:
        Nothing.

    Source:
        Scalable Vector Graphics 1.1, chapter 5.

    >>> said = document(width=10, height=5, edge=1, title="A", says="", lines="", words="")
    >>> said[40:96]
    'width="10mm" height="5mm" viewBox="-1 -1 10 5" role="img'
    """
    w, h, at = number(width), number(height), number(-edge)
    right, foot = width - edge, height - edge
    sheet = path_of([(-edge, -edge), (right, -edge), (right, foot), (-edge, foot)], closed=True)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm"'
        f' viewBox="{at} {at} {w} {h}" role="img">\n'
        f"<title>{escaped(title)}</title>\n<desc>{escaped(says)}</desc>\n"
        f"{filled(sheet, 'white')}\n"
        f'<g fill="none" stroke="black">\n{lines}\n</g>\n'
        f'<g fill="black" font-family="sans-serif">\n{words}\n</g>\n</svg>\n'
    )
