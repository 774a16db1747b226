"""Metal bought across runs: all runs of one profile cut from lengths that they share."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from roofing_core.job.edges import METALS, EdgeRun
from roofing_core.job.wiring import Site
from roofing_core.layers.metal.runs import nails_along
from roofing_core.layers.metal.shared import (
    LengthCut,
    Offcut,
    RunAsked,
    RunPieced,
    SharedMetal,
    StockOffer,
    shared_metal,
)
from roofing_core.materials.kinds import Metal
from roofing_core.measures.faults import Refused
from roofing_core.measures.sentences import Sentence
from roofing_core.measures.units import Inches

#: The caller's names for what metal is bought by.
_PLACES: Mapping[str, str] = MappingProxyType(
    {"lap": "metalwork.lap", "least_piece": "metalwork.least_piece", "runs": "roof"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StockBought:
    """How many of one stock length to buy.

    Attributes:
        stock_length: The stock length.
        count: How many of it.
    """

    stock_length: Inches
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalBought:
    """The metal of one profile, bought for all its runs together.

    Attributes:
        metals: Which metals of the order list it is, such as eave_metal; several where they are
            one profile.
        material: The metal.
        bought: The lengths to buy, one entry for each stock length it is sold in.
        count: Lengths bought.
        metal: The lengths bought, end to end.
        least_metal: What is proved: no way of buying takes less metal.
        proved: Whether that is what is bought.
        verdict: What is proved, as a sentence.
        cuts: Every length with its pieces, in the order in which they are first needed.
        offcuts: What is left of lengths, in the order of the lengths.
        offcut: What is left in all.
        run_by_run: The metal that would be bought run by run.
        saved: How much less metal is bought.
    """

    metals: tuple[str, ...]
    material: str
    bought: tuple[StockBought, ...]
    count: int
    metal: Inches
    least_metal: Inches
    proved: bool
    verdict: Sentence
    cuts: tuple[LengthCut, ...]
    offcuts: tuple[Offcut, ...]
    offcut: Inches
    run_by_run: Inches
    saved: Inches


def buy_across(
    site: Site, runs: tuple[EdgeRun, ...]
) -> tuple[tuple[EdgeRun, ...], tuple[MetalBought, ...]]:
    """Buy the metal of each profile for all its runs together, where that was chosen.

    Args:
        site: The roof with its choices.
        runs: Its runs, each cut from lengths of its own.

    Returns:
        The runs in the same order, cut anew, and what is bought, one entry per profile; the runs as
        they are and no entry where each is bought by itself.

    Raises:
        Refused: A lap is over a third of the shortest stock length; names the caller's field.
        TooManyPieces: More lengths would be bought than the limit.

    Source:
        `shared_metal`.

    >>> from roofing_core.job.choices import Choices, Metalwork
    >>> from roofing_core.job.edges import lay_metal
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> across = Choices(metalwork=Metalwork(buying="across_runs"))
    >>> site = site_of(SingleSlope(eave_length=168, slope_length=56, pitch=0.25), across)
    >>> _, (eave, rakes, ridge) = buy_across(site, lay_metal(site))
    >>> rakes.count, rakes.saved  # two rakes of 56 in from one length of 10 ft
    (1, 120.0)
    """
    if site.choices.metalwork.buying == "run_by_run":
        return runs, ()
    profiles: dict[Metal, list[int]] = {}
    for k, run in enumerate(runs):
        profiles.setdefault(getattr(site.choices, METALS[run.edge]), []).append(k)
    names, cut, bought = _names(runs, site), [*runs], []
    for metal, members in profiles.items():
        found = _bought(site, metal, {names[k]: runs[k] for k in members})
        for k, pieced in zip(members, found.runs, strict=True):
            cut[k] = _cut_anew(runs[k], pieced, found.cuts, site, metal)
        bought.append(_told(metal, found, [runs[k] for k in members]))
    return tuple(cut), tuple(bought)


def _names(runs: Sequence[EdgeRun], site: Site) -> list[str]:
    """Name every run by its edge, and where there are several planes by those; no two alike."""
    several = len(site.surfaces.planes) > 1
    met: Counter[str] = Counter()
    names = []
    for run in runs:
        name = run.edge.replace("_", " ")
        if several:
            name += f" of {run.plane}" + (f" and {run.beyond}" if run.beyond else "")
        met[name] += 1
        names.append(f"{name} ({met[name]})" if met[name] > 1 else name)
    return names


def _bought(site: Site, metal: Metal, runs: Mapping[str, EdgeRun]) -> SharedMetal:
    way = site.choices.metalwork
    asked = tuple(
        RunAsked(name=name, run_length=run.run_length, tab=run.tab, tabs=run.tabs)
        for name, run in runs.items()
    )
    try:
        return shared_metal(
            asked,
            offers=tuple(StockOffer(length=long) for long in dict.fromkeys(metal.stock_lengths)),
            lap=way.lap,
            least_piece=way.least_piece,
            end_distance=way.end_distance,
        )
    except Refused as refusal:
        stock = {"offers": f"{METALS[next(iter(runs.values())).edge]}.stock_lengths"}
        raise refusal.renamed({**_PLACES, **stock}) from None


def _cut_anew(
    run: EdgeRun, pieced: RunPieced, cuts: Sequence[LengthCut], site: Site, metal: Metal
) -> EdgeRun:
    way = site.choices.metalwork
    nails = nails_along(
        run.run_length,
        pieced.laps,
        lap=run.lap,
        nail_spacing=way.ridge_nail_spacing if run.edge == "ridge" else way.nail_spacing,
        end_distance=way.end_distance,
    )
    begun = [cut for cut in cuts if cut.pieces[0].run == pieced.name]
    return replace(
        run,
        stock_length=max(cuts[number - 1].stock_length for number in pieced.cut_from),
        stock=len(begun),
        pieces=len(pieced.lengths),
        lengths=pieced.lengths,
        offcuts=tuple(cut.offcut for cut in begun),
        offcut=sum(cut.offcut for cut in begun),
        laps=pieced.laps,
        nail_positions=nails,
        nails=run.nail_lines * len(nails) + run.tab_nails,
        weight=sum(pieced.lengths) / 12 * metal.weight,
        cut_from=pieced.cut_from,
    )


def _told(metal: Metal, found: SharedMetal, runs: Sequence[EdgeRun]) -> MetalBought:
    run_by_run = sum(run.stock * run.stock_length for run in runs)
    return MetalBought(
        metals=tuple(dict.fromkeys(METALS[run.edge] for run in runs)),
        material=metal.name,
        bought=tuple(
            StockBought(stock_length=one.stock_length, count=one.count) for one in found.bought
        ),
        count=found.count,
        metal=found.metal,
        least_metal=found.least_metal,
        proved=found.proved,
        verdict=found.verdict,
        cuts=found.cuts,
        offcuts=found.offcuts,
        offcut=found.offcut,
        run_by_run=run_by_run,
        saved=run_by_run - found.metal,
    )
