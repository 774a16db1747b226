"""Blocks: what a job sheet is made of, whatever it is written in.

Every text in a block is plain text. Whoever writes a block out escapes it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.sheets.drawings.paper import Drawing

PageSize = Literal["a4", "letter"]

#: To which side the cells of a column stand.
Side = Literal["left", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A heading; what follows belongs to it up to the next one.

    Attributes:
        text: The heading.
        level: 2 for a part of the sheet, 3 for a part of that.
    """

    text: str
    level: Literal[2, 3] = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """Paragraphs of running text.

    Attributes:
        lines: One entry per paragraph.
        small: Whether they are a note to something else.
    """

    lines: tuple[str, ...]
    small: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """Things and what each comes to.

    Attributes:
        pairs: One entry per thing: its name, and its measurement or word.
    """

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A table on the sheet.

    Attributes:
        title: What it is, in a word or two.
        headings: One per column.
        sides: To which side each column stands.
        rows: One entry per row, each with a text per column.
        to_tick: Whether each row begins with a box to tick.
        note: What has to be known to read it; none for most.
    """

    title: str
    headings: tuple[str, ...]
    sides: tuple[Side, ...]
    rows: tuple[tuple[str, ...], ...]
    to_tick: bool
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """Something to be heeded.

    Attributes:
        head: How bad it is or what it is about, and where.
        says: What there is to say.
        source: Who says so.
    """

    head: str
    says: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Notices:
    """Things to be heeded, one after another.

    Attributes:
        entries: One entry each.
        urgent: Whether no work may begin before they are seen to.
    """

    entries: tuple[Notice, ...]
    urgent: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictures:
    """Drawings at full size, so that their scales are true.

    Attributes:
        drawings: One entry per drawing.
    """

    drawings: tuple[Drawing, ...]


Block = Section | Prose | Facts | Grid | Notices | Pictures


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A job sheet before it is written out.

    Attributes:
        title: What the job is called.
        subtitle: The roof in a line.
        page_size: What it is printed on.
        version: Who worked it out.
        blocks: Everything else, in order.
    """

    title: str
    subtitle: str
    page_size: PageSize
    version: str
    blocks: tuple[Block, ...]
