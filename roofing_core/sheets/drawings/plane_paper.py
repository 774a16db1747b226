"""A plane on paper: its outline with words along it, heights beside it, notes beneath.

What is drawn within it, courses or rows of underlayment, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, Ratio, System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.edges import (
    Edge,
    draw_edges,
    key_height,
    label_edges,
    line_key,
    spelt,
)
from roofing_core.sheets.drawings.heights import Height, gutter, write_heights
from roofing_core.sheets.drawings.lettering import LEADING, TEXT
from roofing_core.sheets.drawings.paper import LONG, SHORT, Drawing, Frame, Paper, note_height
from roofing_core.sheets.drawings.scale_bar import SCALE_BAR, scale_bar
from roofing_core.sheets.drawings.views import Extent, View, extent_of, scale_for, view_of

#: Room for what is written along the edges, on every side of the picture.
_MARGIN = 5.0

#: Room for the title.
_HEAD = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What a drawing of a plane shows, before there is any paper.

    Attributes:
        plane: The plane.
        title: Of the drawing.
        beneath: A line under the title; the scale is added to it.
        heights: What is listed beside the picture, from the lowest up.
        headings: Over the names of these, and over the heights.
        reached: Points (u, v) past the plane that are to be seen too.
        notes: About how many lines of notes stand beneath the picture.
        system: The unit system.
    """

    plane: RoofPlane
    title: str
    beneath: str
    heights: tuple[Height, ...]
    headings: tuple[str, str]
    reached: tuple[tuple[Inches, Inches], ...]
    notes: int
    system: System


class PlanePaper:
    """A plane on paper, at the largest scale that has room and lying the way that gives it.

    Args:
        subject: What is to be shown.
    """

    def __init__(self, subject: Subject) -> None:
        self.subject, self.plane, self.system = subject, subject.plane, subject.system
        beside = gutter(subject.heights, subject.headings, subject.system)
        extent = extent_of((*subject.plane.corners, *subject.reached))
        frames: tuple[Frame, ...] = ("upright", "across")
        scales = [_scale(frame, extent, subject, beside) for frame in frames]
        scale = min(scales)
        beneath = f"{subject.beneath} Scale 1:{scale:g}."
        self.paper = Paper(frames[scales.index(scale)], subject.title, beneath)
        self.view: View = view_of(
            extent,
            scale=scale,
            left=beside + _MARGIN,
            top=self.paper.y + LEADING * TEXT + _MARGIN + 2,
            width=self.paper.width - beside - 2 * _MARGIN,
        )
        self._extent = extent
        self.paper.floor = self.view.y(extent.lower) + _MARGIN

    def write_heights(self) -> None:
        """List the heights beside the picture."""
        if self.subject.heights:
            write_heights(
                self.paper,
                self.view,
                self.subject.heights,
                headings=self.subject.headings,
                right=self.view.x(self._extent.left) - _MARGIN,
                top=self.view.y(self._extent.upper) - _MARGIN,
                system=self.system,
            )

    def outline(self) -> tuple[str, ...]:
        """Draw the outline with words along it; give what letters among them mean."""
        corners = self.view.spots(self.plane.corners)
        edges = [
            Edge(start, end, kind, f"{spelt(kind)} {write_length(long, self.system)}", (-1,))
            for start, end, kind, long in zip(
                corners,
                [*corners[1:], corners[0]],
                self.plane.edges,
                self.plane.lengths,
                strict=True,
            )
        ]
        draw_edges(self.paper, edges)
        return label_edges(self.paper, edges)

    def done(self, *, name: str, says: str, notes: Iterable[str]) -> Drawing:
        """Add the scale, the key of lines and the notes, and give the drawing."""
        paper = self.paper
        paper.y = self.view.y(self._extent.lower) + _MARGIN + 1
        scale_bar(paper, self.view.scale, self.system)
        line_key(paper, self.plane.edges)
        paper.y += 1
        for note in notes:
            paper.note(note)
        return paper.done(name=name, says=says)


def _scale(frame: Frame, extent: Extent, subject: Subject, beside: Millimetres) -> Ratio:
    width, height = (SHORT, LONG) if frame == "upright" else (LONG, SHORT)
    line = LEADING * TEXT
    head = _HEAD + note_height(f"{subject.beneath} Scale 1:1000.", width=width) + line + _MARGIN + 2
    beneath = _MARGIN + 1 + SCALE_BAR + key_height(subject.plane.edges, width=width) + 2
    return scale_for(
        extent.right - extent.left,
        extent.upper - extent.lower,
        width=width - beside - 2 * _MARGIN,
        height=height - head - beneath - subject.notes * line,
    )


def capital(text: str) -> str:
    """Give a text with a capital at its beginning.

    Args:
        text: Such as the name of a plane.

    Returns:
        The same, its first letter a capital.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> capital("right end")
    'Right end'
    """
    return text[:1].upper() + text[1:]


def edges_told(plane: RoofPlane, system: System) -> str:
    """Tell the edges of a plane in words.

    Args:
        plane: The plane.
        system: The unit system.

    Returns:
        Kind and length of each, from the eave round.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> edges_told(surfaces(Hip(length=432, width=288, pitch=0.5)).planes[1], "us")
    'eave 24 ft, hip 18 ft, hip 18 ft'
    """
    edges: Sequence[tuple[str, float]] = tuple(zip(plane.edges, plane.lengths, strict=True))
    return ", ".join(f"{spelt(kind)} {write_length(long, system)}" for kind, long in edges)
