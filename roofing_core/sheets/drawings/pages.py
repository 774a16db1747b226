"""Pages: drawings that are lists, one thing under another, over as many sheets as it takes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile

from roofing_core.measures.units import Millimetres
from roofing_core.sheets.drawings.lettering import LEADING, TEXT
from roofing_core.sheets.drawings.paper import LONG, Drawing, Paper


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One thing on a list, all of it on one page.

    Attributes:
        height: That it takes.
        draw: Draws it from where the paper is, and moves on down.
        heads: Whether it is a heading, which is not left alone at the foot of a page.
    """

    height: Millimetres
    draw: Callable[[Paper], None]
    heads: bool = False


def paged(
    name: str, title: str, *, beneath: str, items: Sequence[Item], says: str
) -> tuple[Drawing, ...]:
    """Draw items under each other, on upright pages.

    Args:
        name: What the drawing is asked for by.
        title: Its title; pages are counted in it where there are several.
        beneath: A line under the title.
        items: The items, none higher than a page.
        says: What it shows, in words.

    Returns:
        One drawing a page; none for no items.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> item = Item(height=100, draw=lambda paper: paper.note("a long thing"))
    >>> [page.title for page in paged("list", "List", beneath="", items=[item] * 3, says="")]
    ['List, page 1 of 2', 'List, page 2 of 2']
    """
    room = LONG - Paper("upright", title, beneath).y - 1 - LEADING * TEXT
    sheets = list(_filled(items, room))
    many = len(sheets)
    pages = []
    for k, sheet in enumerate(sheets):
        heading = f"{title}, page {k + 1} of {many}" if many > 1 else title
        paper = Paper("upright", heading, beneath)
        paper.y += 1
        for item in sheet:
            top = paper.y
            item.draw(paper)
            paper.y = top + item.height
        pages.append(paper.done(name=name, says=says))
    return tuple(pages)


def _filled(items: Sequence[Item], room: Millimetres) -> Iterator[list[Item]]:
    """Give the items of each page; a heading goes with what follows it."""
    page: list[Item] = []
    for k, item in enumerate(items):
        led = takewhile(lambda one: one.heads, items[k:])
        count = sum(1 for _ in led) + 1
        needed = sum(one.height for one in items[k : k + count])
        if page and sum(one.height for one in page) + needed > room:
            yield page
            page = []
        page.append(item)
    if page:
        yield page
