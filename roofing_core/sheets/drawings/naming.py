"""Naming: the name, pitch and fall of each plane, written on it where it has most room."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from roofing_core.measures.sentences import write
from roofing_core.measures.units import Ratio, System
from roofing_core.sheets.drawings.edges import letter_of, too_small
from roofing_core.sheets.drawings.lettering import (
    ABOVE,
    LEADING,
    TEXT,
    Spot,
    turned_box,
    width_of,
)
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.patches import Patch
from roofing_core.sheets.drawings.svg import FIRM
from roofing_core.sheets.drawings.views import View, extent_of

#: Length of the arrow that shows which way water runs.
_ARROW = 8.0

#: Places tried for a name, across and up.
_TRIES = 24


def name_patches(
    paper: Paper, view: View, patches: Sequence[Patch], system: System
) -> tuple[str, ...]:
    """Write on each plane its name and pitch, and an arrow down its slope.

    Args:
        paper: What is drawn on; the lines of the planes are there already.
        view: How they lie on it.
        patches: The planes as flat shapes.
        system: The unit system.

    Returns:
        What the letters on planes too small for a name mean, such as ``A: porch, 3:12``, and which
        planes even those had no room on.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> ends = ((0, 0), (4, 0), (4, 9), (0, 9))
    >>> slip = Patch(name="porch", pitch=0.25, corners=ends, falls=(0.0, -1.0))
    >>> name_patches(Paper("upright", "A roof", ""), View(25.4, 50, 50), [slip], "us")
    ('A: porch, 3:12',)
    """
    meant: list[str] = []
    unmarked: list[str] = []
    for patch in patches:
        pitch = write(patch.pitch, "pitch", system)
        places = list(_inside(view.spots(patch.corners)))
        if _write_block(paper, places, (patch.name, pitch), patch.falls):
            continue
        letter = letter_of(len(meant)).upper()
        if _write_letter(paper, places, letter, patch.falls):
            meant.append(f"{letter}: {patch.name}, {pitch}")
        else:
            unmarked.append(f"{patch.name}, {pitch}")
    return (*meant, *too_small(unmarked))


def _write_letter(
    paper: Paper,
    places: Sequence[tuple[float, Spot]],
    letter: str,
    falls: tuple[Ratio, Ratio],
) -> bool:
    """Write a letter with an arrow beneath, or where that has no room, alone."""
    return _write_block(paper, places, (letter,), falls) or paper.write_first(
        Words(letter, (x, y + 1), TEXT, "middle") for _, (x, y) in places
    )


def _write_block(
    paper: Paper,
    places: Sequence[tuple[float, Spot]],
    texts: Sequence[str],
    falls: tuple[Ratio, Ratio],
) -> bool:
    """Write lines under each other with an arrow beneath, at the first place that is free."""
    wide = max(_ARROW, *(width_of(text, TEXT, bold=True) for text in texts)) / 2 + 1
    lines = len(texts) * LEADING * TEXT
    tall = lines + _ARROW
    for near, (x, y) in places:
        if near < min(wide, tall / 2):
            return False
        top = y - tall / 2
        if not paper.is_free(turned_box((x, top), -wide, -1, wide, tall + 1)):
            continue
        for k, text in enumerate(texts):
            foot = top + k * LEADING * TEXT + ABOVE * TEXT
            paper.write(Words(text, (x, foot), TEXT, "middle", bold=not k))
        middle, half = top + lines + _ARROW / 2, _ARROW / 2
        _arrow(paper, (x, middle), falls)
        paper.take(turned_box((x, middle), -half, -half, half, half))
        return True
    return False


def _arrow(paper: Paper, at: Spot, falls: tuple[Ratio, Ratio]) -> None:
    """Draw an arrow about a point; up in the picture is up on paper."""
    (x, y), (dx, dy) = at, (falls[0], -falls[1])
    half, head = _ARROW / 2, _ARROW / 2 - 2.4
    tip = (x + half * dx, y + half * dy)
    paper.draw([(x - half * dx, y - half * dy), tip], FIRM)
    back_x, back_y = x + head * dx, y + head * dy
    side_x, side_y = 0.9 * dy, 0.9 * dx
    paper.fill([tip, (back_x - side_x, back_y + side_y), (back_x + side_x, back_y - side_y)])


def _inside(corners: Sequence[Spot]) -> Iterator[tuple[float, Spot]]:
    """Give places within a shape and how far they are from its sides, the furthest first.

    Of equals the nearest to its middle.
    """
    extent = extent_of(corners)
    wide, high = extent.right - extent.left, extent.upper - extent.lower
    places = []
    for i in range(1, _TRIES):
        for k in range(1, _TRIES):
            spot = extent.left + wide * i / _TRIES, extent.lower + high * k / _TRIES
            if _holds(corners, *spot):
                near = min(_distance(spot, *side) for side in _sides(corners))
                off = abs(2 * i - _TRIES) + abs(2 * k - _TRIES)
                places.append((-round(near, 1), off, spot))
    yield from ((-near, spot) for near, _, spot in sorted(places))


def _sides(corners: Sequence[Spot]) -> Iterator[tuple[Spot, Spot]]:
    return zip(corners, [*corners[1:], corners[0]], strict=True)


def _holds(corners: Sequence[Spot], x: float, y: float) -> bool:
    """Tell whether a point lies within a shape: a line from it crosses the sides an odd time."""
    inside = False
    for (ax, ay), (bx, by) in _sides(corners):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
    return inside


def _distance(at: Spot, start: Spot, end: Spot) -> float:
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    along = ((at[0] - start[0]) * dx + (at[1] - start[1]) * dy) / square if square else 0.0
    t = min(1.0, max(0.0, along))
    return hypot(at[0] - start[0] - t * dx, at[1] - start[1] - t * dy)
