"""The cutting sheet of the metal: every length that is bought, and the piece cut from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import accumulate, pairwise

from roofing_core.job.edges import EdgeRun
from roofing_core.job.metal_bought import MetalBought
from roofing_core.job.plan import Plan
from roofing_core.job.telling import all_of
from roofing_core.layers.metal.shared import LengthCut
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
    cuts = list(_cuts(plan))
    shared = [(bought, cut) for bought in plan.metal_bought for cut in bought.cuts]
    many = len(shared) or sum(len(edges) for _, _, _, edges in cuts)
    longest = max(
        (*(stock for _, stock, _, _ in cuts), *(cut.stock_length for _, cut in shared)), default=1.0
    )
    scale = scale_for(longest, 0.0, width=SHORT, height=1.0)
    order = "Cut from the left. " if shared else ""
    return paged(
        "metal_cuts",
        "Cutting sheet: metal",
        beneath=f"{order}What is left of a length is hatched. Scale 1:{scale:g} along it.",
        items=[
            *(_cut_item(cut, scale, system) for cut in cuts),
            *(_shared_item(bought, cut, scale, system) for bought, cut in shared),
        ],
        says=f"{many} lengths of metal, each as a bar with its {'pieces' if shared else 'piece'}.",
    )


_Cut = tuple[str, Inches, Inches, tuple[str, ...]]


def edge_of(plan: Plan, run: EdgeRun) -> str:
    """Name the edge that a run lies on, and where there are several planes, those too.

    Args:
        plan: A finished plan.
        run: One of its runs of metal.

    Returns:
        Such as ``left rake``, or ``valley of side 3 and side 4``.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Hip
    >>> planned = plan(Job(roof=Hip(length=432, width=288, pitch=0.5)))
    >>> edge_of(planned, planned.metal[1])
    'eave of right end'
    """
    if len(plan.planes) == 1:
        return spelt(run.edge)
    return f"{spelt(run.edge)} of {all_of([name for name in (run.plane, run.beyond) if name])}"


def _cuts(plan: Plan) -> Iterator[_Cut]:
    """Give material, stock length, piece, and the edges that each such piece is for."""
    found: dict[tuple[str, float, float], list[str]] = {}
    for run in plan.metal:
        for piece in () if run.cut_from else run.lengths:
            cut = (run.material, run.stock_length, piece)
            found.setdefault(cut, []).append(edge_of(plan, run))
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


def _shared_item(bought: MetalBought, cut: LengthCut, scale: Ratio, system: System) -> Item:
    """Draw a length that several runs may share, its pieces in the order of cutting."""
    pieces = "; ".join(
        f"{write_length(piece.length, system)} for {piece.run}, piece {piece.number}"
        for piece in cut.pieces
    )
    text = (
        f"Length {cut.number}, {spelt(bought.material)}, {write_length(cut.stock_length, system)}:"
        f" {pieces}; left over {write_length(cut.offcut, system)}"
    )
    ends = list(accumulate((piece.length for piece in cut.pieces), initial=0.0))
    parts = [
        Part(start=start, end=end, text=write_length(piece.length, system))
        for piece, (start, end) in zip(cut.pieces, pairwise(ends), strict=True)
    ]
    if cut.offcut:
        parts.append(Part(start=ends[-1], end=cut.stock_length, text="", left_over=True))
    return Item(
        height=note_height(text, width=SHORT) + _HIGH + LEADING * TEXT,
        draw=partial(_draw_cut, text=text, parts=parts, scale=scale, long=cut.stock_length),
    )


def _draw_cut(
    paper: Paper, *, text: str, parts: Sequence[Part], scale: Ratio, long: Inches
) -> None:
    paper.y += 1
    paper.note(text, TEXT)
    draw_bar(paper, parts, scale=scale, long=long, high=_HIGH)
