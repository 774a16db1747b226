"""The order of metal: lengths for the runs of each edge."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from roofing_core.job.edges import METALS, EdgeRun
from roofing_core.job.layout import Layout
from roofing_core.job.metal_bought import MetalBought
from roofing_core.job.order_lines import Maker, OrderLine, PackSize
from roofing_core.layers.metal.shared import LengthCut
from roofing_core.materials.kinds import Metal
from roofing_core.measures.sentences import Amount


def metal_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    """Make a line for each kind of metal: of its runs' lengths, or of those bought across runs.

    Metals of one profile share lengths; each of these stands on the line of the metal that it is
    first cut for.

    Args:
        make: What makes lines.
        layout: The roof with all its layers.

    Returns:
        The lines, by the names of the order list.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> laid = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> metal_lines(Maker(laid.roof.area), laid)["rake_metal"].packs
    2
    """
    lines = {}
    for name in dict.fromkeys(METALS.values()):
        metal: Metal = getattr(layout.choices, name)
        runs = [run for run in layout.metal if METALS[run.edge] == name]
        cuts = _first_cut_for(name, layout.metal, layout.metal_bought)
        line = _line(make, name, metal, runs, cuts)
        sizes = Counter(cut.stock_length for cut in cuts)
        if len(sizes) > 1:
            by_size = (
                PackSize(packs=many, holds=Amount(long, "in"))
                for long, many in sorted(sizes.items())
            )
            line = replace(line, sizes=tuple(by_size))
        lines[name] = line
    return lines


def _line(
    make: Maker, name: str, metal: Metal, runs: Sequence[EdgeRun], cuts: Sequence[LengthCut]
) -> OrderLine:
    holds = runs[0].stock_length if runs else metal.stock_lengths[0]
    needed = sum(sum(run.lengths) for run in runs)
    if cuts:
        whole = sum(cut.stock_length for cut in cuts)
        holds, needed = whole / len(cuts), whole - sum(cut.offcut for cut in cuts)
    return make.line(
        name.replace("_", " "),
        metal.name,
        pack="length",
        needed=needed,
        holds=holds,
        unit="in",
        packs=sum(run.stock for run in runs),
        pack_weight=metal.weight * holds / 12,
        used_weight=sum(run.weight for run in runs),
    )


def _first_cut_for(
    name: str, runs: Sequence[EdgeRun], bought: Sequence[MetalBought]
) -> list[LengthCut]:
    """Give the lengths bought across runs that are first cut for one metal of the order list."""
    first: dict[tuple[int, int], str] = {}
    for run in runs:
        for k, one in enumerate(bought):
            if METALS[run.edge] in one.metals:
                for number in run.cut_from:
                    first.setdefault((k, number), METALS[run.edge])
    return [cut for k, one in enumerate(bought) for cut in one.cuts if first[k, cut.number] == name]
