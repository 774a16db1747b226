"""The story pole at full size: strips to print, cut out and join end to end on a stick."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, System
from roofing_core.sheets.drawings.lettering import ABOVE, BELOW, SMALL, turned_box, width_of
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.svg import FINE, FIRM, HAIR, Stroke
from roofing_core.sheets.drawings.views import View
from roofing_core.sheets.story_pole import PoleMark, StoryPole

#: Strips on a page, and the room between them.
_ACROSS, _APART = 3, 7.0
_WIDE = (SHORT - (_ACROSS - 1) * _APART) / _ACROSS

#: How long a strip is, by the unit system: so that joints stand at round numbers of it.
_LONG_US, _LONG_METRIC = 8.0, 2000 / 254

#: The pole begins this far below its first mark.
_BELOW_FIRST = 1.0

#: Where the upper end of a strip lies on its page, and how long the lines are that are measured to
#: see whether the page came out at full size.
_TOP, _CHECK = 34.0, 100.0

#: Lines of the marks: butts and edges whole, the tops of courses broken.
_TOPS = Stroke(0.4, (3.0, 1.5))

#: From line to line of a mark's words.
_LINE = (ABOVE + BELOW) * SMALL + 0.1


def pole_strips(pole: StoryPole, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw a story pole at full size, in strips over as many pages as it takes.

    Args:
        pole: The marks of one plane.
        system: The unit system that the strips are divided by; marks are written in both.

    Returns:
        One drawing a page. Each strip ends at a line with crosses, which the next one begins at.

    Raises:
        Nothing.

    Source:
        The marks' own numbers, 1:1.

    >>> marks = (PoleMark(kind="butt", course=1, height=-0.5, above_starter=-0.25),
    ...          PoleMark(kind="top_edge", course=0, height=30, above_starter=30.25))
    >>> [page.title for page in pole_strips(StoryPole(plane="slope", marks=marks))]
    ['Slope: story pole, page 1 of 2', 'Slope: story pole, page 2 of 2']
    """
    long = _LONG_US if system == "us" else _LONG_METRIC
    first = pole.marks[0].height - _BELOW_FIRST
    count = int((pole.marks[-1].height - first) // long) + 1
    pages = range(0, count, _ACROSS)
    drawings = []
    for page, start in enumerate(pages):
        title = f"{capital(pole.plane)}: story pole"
        if len(pages) > 1:
            title += f", page {page + 1} of {len(pages)}"
        paper = Paper("upright", title, _BENEATH)
        _check_lines(paper)
        for k in range(start, min(start + _ACROSS, count)):
            _strip(paper, pole.marks, (k, count), first=first, long=long)
        paper.y = _TOP + long * 25.4 + 6
        says = f"Strips {start + 1} to {min(start + _ACROSS, count)} of {count}, at full size."
        drawings.append(paper.done(name="story_pole", says=says))
    return tuple(drawings)


_BENEATH = (
    "Print at full size, 100 %, and measure the lines below before use. Cut the strips out, lay"
    " each end on the crosses of the next, and hold the mark of the eave metal on its outer face."
    " Whole lines are butts and edges, broken lines the tops of a course."
)


def _check_lines(paper: Paper) -> None:
    """Draw two lines of known length, and say how long they are."""
    y = paper.y + 5
    for left, long, text in ((0.0, _CHECK, "100 mm"), (_CHECK + 14, 50.8, "2 in")):
        ends = (left, left + long)
        paper.draw([(ends[0], y), (ends[1], y)], FINE)
        paper.draw_all(([(x, y - 1.5), (x, y + 1.5)] for x in ends), FINE)
        paper.write(Words(text, (left + long / 2, y - 0.9), SMALL, "middle"))


def _strip(
    paper: Paper, marks: Sequence[PoleMark], place: tuple[int, int], *, first: Inches, long: Inches
) -> None:
    """Draw one strip: its sides, its marks, and how it joins its neighbours."""
    k, count = place
    low = first + k * long
    left, foot = (k % _ACROSS) * (_WIDE + _APART), _TOP + long * 25.4
    view = View(1.0, left, foot + low * 25.4)
    paper.draw([(left, foot), (left + _WIDE, foot), (left + _WIDE, _TOP), (left, _TOP)], HAIR,
               closed=True)  # fmt: skip
    _joint(paper, left, foot, f"strip {k + 1}" + (f", joins strip {k}" if k else ""), 3.6)
    joins = f"joins strip {k + 2}" if k + 1 < count else "end of the pole"
    _joint(paper, left, _TOP, joins, -1.4)
    own = list(_within(marks, low, low + long))
    for y in (foot, _TOP, *(view.y(mark.height) for mark in own)):
        paper.keep_clear([(left, y), (left + _WIDE, y)])
    for mark in own:
        _mark(paper, view, mark)


def _within(marks: Sequence[PoleMark], low: Inches, high: Inches) -> Iterator[PoleMark]:
    return (mark for mark in marks if low <= mark.height <= high)


def _joint(paper: Paper, left: Millimetres, y: Millimetres, text: str, off: Millimetres) -> None:
    """Draw the crosses at the end of a strip, and say beside it what it joins."""
    paper.write(Words(text, (left + _WIDE / 2, y + off), SMALL, "middle"))
    for x in (left + 5, left + _WIDE - 5):
        paper.draw_all([[(x - 3, y), (x + 3, y)], [(x, y - 3), (x, y + 3)]], FINE)
        paper.draw([(x - 1.5, y), (x, y - 1.5), (x + 1.5, y), (x, y + 1.5)], HAIR, closed=True)
        paper.take(turned_box((x, y), -3, -3, 3, 3))


def _mark(paper: Paper, view: View, mark: PoleMark) -> None:
    """Draw a mark across the strip; write what it is above it, butts left and the rest right."""
    y, left = view.y(mark.height), view.left
    paper.draw([(left, y), (left + _WIDE, y)], _TOPS if mark.kind == "tops" else FIRM)
    on_left = mark.kind == "butt"
    x = left + 1 if on_left else left + _WIDE - 1
    lines = (mark.says(), write_length(mark.height, "us"), write_length(mark.height, "metric"))
    for texts in (lines, (f"{lines[0]}: {lines[1]}",), lines[:1]):
        for off in (0.0, len(texts) * _LINE + 0.8):
            if _write_block(paper, texts, (x, y - 0.8 + off), on_left=on_left):
                return


def _write_block(
    paper: Paper, texts: Sequence[str], at: tuple[Millimetres, Millimetres], *, on_left: bool
) -> bool:
    """Write lines under each other, the last one at a place, if all of it is free."""
    wide = max(width_of(text, SMALL) for text in texts)
    ends = (0.0, wide) if on_left else (-wide, 0.0)
    box = turned_box(at, ends[0], -len(texts) * _LINE, ends[1], BELOW * SMALL)
    if not paper.is_free(box):
        return False
    for k, text in enumerate(reversed(texts)):
        place = (at[0], at[1] - k * _LINE)
        paper.write(Words(text, place, SMALL, "start" if on_left else "end"))
    return True
