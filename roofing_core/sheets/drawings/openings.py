"""Openings in a plane: their rectangles, numbered, and where each lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from roofing_core.job.flashing import OpeningFlashed
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import ABOVE, BELOW, SMALL, Spot, width_of
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import FIRM, HAIR
from roofing_core.sheets.drawings.views import View, extent_of

#: Between an opening and its number, where that has no room within.
_GAP = 0.6


def draw_openings(paper: Paper, view: View, openings: Iterable[OpeningFlashed]) -> None:
    """Draw openings as crossed rectangles with their numbers.

    Args:
        paper: What is drawn on.
        view: How their plane lies on it.
        openings: The openings of one plane.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> draw_openings(Paper("upright", "A roof", ""), View(10, 20, 200), [])
    """
    for one in openings:
        draw_crossed(paper, view.spots(corners_of(one)), str(one.number))


def corners_of(one: OpeningFlashed) -> tuple[tuple[Inches, Inches], ...]:
    """Give the corners of an opening on its plane.

    Args:
        one: The opening.

    Returns:
        Its corners (u, v), from the lower left round by the right.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> pipe = OpeningFlashed(number=1, kind="vent_pipe", plane="slope", left=10, right=13,
    ...                       lower=20, upper=24, area=12, aprons=(), heads=(), crickets=(),
    ...                       pipes=())
    >>> corners_of(pipe)[2]
    (13, 24)
    """
    return (
        (one.left, one.lower),
        (one.right, one.lower),
        (one.right, one.upper),
        (one.left, one.upper),
    )


def draw_crossed(paper: Paper, corners: Sequence[Spot], text: str) -> None:
    """Draw a crossed shape with a text in its middle, or where that has no room, beside it.

    Args:
        paper: What is drawn on.
        corners: Four corners on paper, in order.
        text: Such as the number of an opening.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> paper = Paper("upright", "A roof", "")
    >>> draw_crossed(paper, [(50, 60), (70, 60), (70, 50), (50, 50)], "1")
    >>> ">1<" in paper.done(name="roof", says="").svg
    True
    """
    paper.fill(corners, "white")
    paper.draw(corners, FIRM, closed=True)
    paper.draw_all(((corners[0], corners[2]), (corners[1], corners[3])), HAIR)
    paper.write_first(_places(corners, text), ground=True)
    paper.keep_clear((*corners, corners[0]))


def _places(corners: Sequence[Spot], text: str) -> Iterator[Words]:
    """Give the places for a text: in the middle, or where that has no room, beside it."""
    extent = extent_of(corners)
    left, right, top, foot = extent.left, extent.right, extent.lower, extent.upper
    middle, level = (left + right) / 2, (top + foot) / 2 + (ABOVE - BELOW) / 2 * SMALL
    if width_of(text, SMALL) + _GAP <= right - left and foot - top >= SMALL:
        yield Words(text, (middle, level), SMALL, "middle")
    for off in (0.0, 2.0, 4.0):
        yield Words(text, (right + _GAP + off, level), SMALL)
        yield Words(text, (left - _GAP - off, level), SMALL, "end")
        yield Words(text, (middle, top - _GAP - BELOW * SMALL - off), SMALL, "middle")


def openings_told(openings: Iterable[OpeningFlashed], system: System) -> Iterator[str]:
    """Tell where openings lie.

    Args:
        openings: The openings of one plane.
        system: The unit system.

    Returns:
        One sentence per opening.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> list(openings_told([], "us"))
    []
    """
    for one in openings:
        wide, high, left, lower = (
            write_length(inches, system)
            for inches in (one.right - one.left, one.upper - one.lower, one.left, one.lower)
        )
        yield (
            f"Opening {one.number}, {spelt(one.kind)}: {wide} wide and {high} up the slope, its"
            f" left side {left} from the left end of the eave, its lower side {lower} up the slope."
        )
