"""The cutting sheet of the metal: every length that is bought, and the piece cut from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from roofing_core.job.edges import EdgeRun
from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Ratio, System
from roofing_core.sheets.drawings.bars import Part, draw_bar
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import LEADING, TEXT
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, note_height
from roofing_core.sheets.drawings.views import scale_for

#: Height of a length on paper.
_HIGH = 5.0


def metal_cuts_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw every length of metal with the piece that is cut from it.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> metal_cuts_drawing(plan(Job(roof=roof)))[0].says
    '6 lengths of metal, each as a bar with its piece.'
    """
    cuts = list(_cuts(plan.metal))
    many = sum(len(edges) for _, _, _, edges in cuts)
    longest = max((stock for _, stock, _, _ in cuts), default=1.0)
    scale = scale_for(longest, 0.0, width=SHORT, height=1.0)
    return paged(
        "metal_cuts",
        "Cutting sheet: metal",
        beneath=f"What is left of a length is hatched. Scale 1:{scale:g} along it.",
        items=[_cut_item(cut, scale, system) for cut in cuts],
        says=f"{many} lengths of metal, each as a bar with its piece.",
    )


_Cut = tuple[str, Inches, Inches, tuple[str, ...]]


def _cuts(runs: Sequence[EdgeRun]) -> Iterator[_Cut]:
    """Give material, stock length, piece, and the edges that each such piece is for."""
    found: dict[tuple[str, float, float], list[str]] = {}
    for run in runs:
        for piece in run.lengths:
            found.setdefault((run.material, run.stock_length, piece), []).append(spelt(run.edge))
    for (material, stock, piece), edges in found.items():
        yield material, stock, piece, tuple(edges)


def _cut_item(cut: _Cut, scale: Ratio, system: System) -> Item:
    material, stock, piece, edges = cut
    where = ", ".join(f"{edges.count(edge)} on the {edge}" for edge in dict.fromkeys(edges))
    text = (
        f"{len(edges)} x {spelt(material)}, {write_length(stock, system)}: cut to"
        f" {write_length(piece, system)}, left over {write_length(stock - piece, system)};"
        f" {where}"
    )
    part = Part(start=0.0, end=piece, text=write_length(piece, system))
    rest = Part(start=piece, end=stock, text="", left_over=True)
    parts = (part, rest) if stock > piece else (part,)
    return Item(
        height=note_height(text, width=SHORT) + _HIGH + LEADING * TEXT,
        draw=partial(_draw_cut, text=text, parts=parts, scale=scale, long=stock),
    )


def _draw_cut(
    paper: Paper, *, text: str, parts: Sequence[Part], scale: Ratio, long: Inches
) -> None:
    paper.y += 1
    paper.note(text, TEXT)
    draw_bar(paper, parts, scale=scale, long=long, high=_HIGH)
