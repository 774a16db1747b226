"""The roof plan: every plane with its name, pitch and fall, every line with its length.

As seen from above; planes measured by hand have no place in space and are laid side by side.
"""

from __future__ import annotations

from collections.abc import Sequence

from roofing_core.job.flashing import OpeningFlashed
from roofing_core.measures.sentences import write, write_length
from roofing_core.measures.units import Millimetres, Ratio, System
from roofing_core.roof.outlines import RoofLine, RoofPlane
from roofing_core.sheets.drawings.edges import (
    Edge,
    draw_edges,
    key_height,
    label_edges,
    line_key,
    spelt,
)
from roofing_core.sheets.drawings.lettering import LEADING, TEXT
from roofing_core.sheets.drawings.naming import name_patches
from roofing_core.sheets.drawings.openings import corners_of, draw_crossed
from roofing_core.sheets.drawings.paper import (
    LONG,
    SHORT,
    Drawing,
    Frame,
    Paper,
    note_height,
)
from roofing_core.sheets.drawings.patches import Patch, Side, in_picture, patches_of
from roofing_core.sheets.drawings.scale_bar import SCALE_BAR, scale_bar
from roofing_core.sheets.drawings.views import Extent, View, extent_of, scale_for, view_of

#: Room round the picture for what is written along its edges.
_MARGIN = 9.0


def roof_plan(
    planes: Sequence[RoofPlane],
    lines: Sequence[RoofLine],
    *,
    openings: Sequence[OpeningFlashed] = (),
    system: System = "us",
) -> Drawing:
    """Draw a roof from above: names, pitches and falls of its planes, lengths of its lines.

    Args:
        planes: The planes of a roof, as a plan or its surfaces have them.
        lines: Its lines.
        openings: What comes through it, as a plan has it.
        system: The unit system of every measurement in it.

    Returns:
        The drawing, the front of the roof below.

    Raises:
        Nothing: Any planes can be drawn.

    Source:
        The planes' and lines' own numbers.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> hip = surfaces(Hip(length=432, width=288, pitch=0.5))
    >>> roof_plan(hip.planes, hip.lines).says[-44:]
    'In all: eave 120 ft, hip 72 ft, ridge 12 ft.'
    """
    patches, sides = patches_of(planes, lines)
    totals = _totals(lines, system)
    paper, view = _set_up(planes, patches, sides, totals, system)
    edges = [_edge(side, view, system) for side in sides]
    draw_edges(paper, edges)
    paper.floor = view.y(_extent(patches).lower) + _MARGIN
    _draw_openings(paper, view, list(zip(planes, patches, strict=True)), openings)
    named = name_patches(paper, view, patches, system)
    meant = label_edges(paper, edges)
    paper.y = paper.floor
    scale_bar(paper, view.scale, system)
    line_key(paper, [side.kind for side in sides])
    paper.y += 1
    for letters in (named, meant):
        paper.note("; ".join(letters))
    paper.note(totals)
    if openings:
        told = (f"{one.number} {spelt(one.kind)} on {one.plane}" for one in openings)
        paper.note(f"Openings: {', '.join(told)}.")
    names = ", ".join(plane.name for plane in planes)
    count = "1 plane" if len(planes) == 1 else f"{len(planes)} planes"
    return paper.done(name="roof_plan", says=f"A roof of {count}: {names}. {totals}")


def _draw_openings(
    paper: Paper,
    view: View,
    shapes: Sequence[tuple[RoofPlane, Patch]],
    openings: Sequence[OpeningFlashed],
) -> None:
    by_name = {plane.name: (plane, patch) for plane, patch in shapes}
    for one in openings:
        plane, patch = by_name[one.plane]
        corners = [in_picture(plane, patch, corner) for corner in corners_of(one)]
        draw_crossed(paper, view.spots(corners), str(one.number))


def _totals(lines: Sequence[RoofLine], system: System) -> str:
    lengths: dict[str, float] = {}
    for line in lines:
        lengths[line.kind] = lengths.get(line.kind, 0.0) + line.length
    told = (f"{spelt(kind)} {write_length(long, system)}" for kind, long in lengths.items())
    return f"In all: {', '.join(told)}."


def _extent(patches: Sequence[Patch]) -> Extent:
    return extent_of(corner for patch in patches for corner in patch.corners)


def _set_up(
    planes: Sequence[RoofPlane],
    patches: Sequence[Patch],
    sides: Sequence[Side],
    totals: str,
    system: System,
) -> tuple[Paper, View]:
    """Choose the way of the paper that gives the larger picture, and set the roof on it."""
    extent = _extent(patches)
    kinds = [side.kind for side in sides]
    frames: tuple[Frame, ...] = ("upright", "across")
    scales = []
    for width, height in ((SHORT, LONG), (LONG, SHORT)):
        around = 14 + 2 * _MARGIN + SCALE_BAR + key_height(kinds, width=width)
        around += note_height(totals, width=width) + _letters(patches, sides, width)
        scales.append(
            scale_for(
                extent.right - extent.left,
                extent.upper - extent.lower,
                width=width - 2 * _MARGIN,
                height=height - around,
            )
        )
    scale = min(scales)
    paper = Paper(frames[scales.index(scale)], "Roof plan", _beneath(planes, scale, system))
    top = paper.y + _MARGIN
    return paper, view_of(
        extent, scale=scale, left=_MARGIN, top=top, width=paper.width - 2 * _MARGIN
    )


def _letters(patches: Sequence[Patch], sides: Sequence[Side], width: Millimetres) -> Millimetres:
    """Give room for what letters mean: a line for every second plane and line, more or less."""
    return min(0.3 * width, (len(patches) + len(sides)) / 4 * LEADING * TEXT)


def _beneath(planes: Sequence[RoofPlane], scale: Ratio, system: System) -> str:
    area = write(sum(plane.area for plane in planes), "in2", system)
    count = "1 plane" if len(planes) == 1 else f"{len(planes)} planes"
    seen = (
        "Seen from above, the front below; lengths are as they lie on the roof."
        if all(plane.points for plane in planes)
        else "Planes side by side, each seen square to it."
    )
    return f"{count}, {area} on the slopes. {seen} Arrows point down the slope. Scale 1:{scale:g}."


def _edge(side: Side, view: View, system: System) -> Edge:
    start, end = side.ends
    return Edge(
        view.spot(start),
        view.spot(end),
        side.kind,
        f"{spelt(side.kind)} {write_length(side.length, system)}",
        (1, -1) if side.inner else (-1,),
    )
