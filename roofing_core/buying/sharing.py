"""Sharing: lengths of metal bought for all runs of a line together, with what is on hand.

What is left of a length that was cut for one run goes on to another: `shared_metal` finds the least
cost of that, and proves it. Lengths on hand are tried in one way more for each of their sizes, as
if it cost nothing; a way is kept if no more of it are taken than are there.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from decimal import Decimal

from roofing_core.buying.money import whole_units
from roofing_core.buying.offered import LengthsOffered, places_by_size
from roofing_core.buying.price_list import PriceList
from roofing_core.job.choices import Metalwork
from roofing_core.job.edges import METALS, EdgeRun
from roofing_core.layers.metal.shared import RunAsked, SharedMetal, StockOffer, shared_metal
from roofing_core.layers.metal.shared.bought import LengthCut, Offcut, RunPieced
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalCuts:
    """How the lengths of a line of metal are cut for all its runs together.

    Attributes:
        line: The line's name on the price list.
        lap: How far each piece laps the next.
        cuts: Every length with its pieces, those on hand among them.
        runs: Every run with its pieces, in the order of laying.
        offcuts: What is left of lengths.
    """

    line: str
    lap: Inches
    cuts: tuple[LengthCut, ...]
    runs: tuple[RunPieced, ...]
    offcuts: tuple[Offcut, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """A way to buy for all runs of a line together.

    Attributes:
        packs: How many are bought of each pack on offer.
        cost: Of these, in minor units.
        needed: What is cut, in all.
        on_hand: What is taken of what is there.
        left_over: What is left of all lengths.
        cuts: How they are cut.
        proved: Whether it is proved that no way costs less; never where something is on hand,
            unless it costs nothing.
    """

    packs: tuple[int, ...]
    cost: int
    needed: Inches
    on_hand: Inches
    left_over: Inches
    cuts: MetalCuts
    proved: bool


def shared_ways(
    line: str, runs: Sequence[EdgeRun], *, how: Metalwork, prices: PriceList
) -> tuple[Shared, ...]:
    """Find ways to buy lengths for all runs of a line together.

    Args:
        line: The name of the line.
        runs: The runs of all metal.
        how: How metal is laid.
        prices: What is on offer and on hand.

    Returns:
        The way at the prices on offer, and one for each size on hand; only those that the lengths
        on hand are enough for. None where runs cannot be cut together from the sizes on offer.

    Raises:
        Nothing.

    Source:
        `shared_metal`.

    >>> from roofing_core.buying.offered import LengthPack
    >>> from roofing_core.job.edges import lay_metal
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> runs = lay_metal(site_of(SingleSlope(eave_length=168, slope_length=56, pitch=0.25)))
    >>> ten = LengthsOffered(packs=(LengthPack(holds=120, price=Decimal("9.80")),))
    >>> (way,) = shared_ways("rake_metal", runs, how=Metalwork(),
    ...                      prices=PriceList(currency="USD", rake_metal=ten))
    >>> way.packs, way.cost, way.cuts.cuts[0].offcut  # both rakes from one length
    ((1,), 980, 8.0)
    """
    offered: LengthsOffered = getattr(prices, line)
    packs = places_by_size(offered)
    asked = tuple(_asked([run for run in runs if METALS[run.edge] == line]))
    there: dict[float, int] = {}
    for one in offered.on_hand:
        there[one.length] = there.get(one.length, 0) + one.count
    ways = []
    for free in (None, *(size for size, count in there.items() if count)):
        stock = {size: offered.packs[k].price for size, k in packs.items()}
        if free is not None:
            stock[free] = Decimal(0)
        offers = tuple(StockOffer(length=size, price=price) for size, price in stock.items())
        with suppress(Refused):  # the runs cannot be cut together from these; one by one they can
            found = shared_metal(
                asked,
                offers=offers,
                lap=how.lap,
                least_piece=how.least_piece,
                end_distance=how.end_distance,
            )
            ways.append(_way(line, found, there, prices))
    return tuple(way for way in ways if way is not None)


def _asked(runs: Sequence[EdgeRun]) -> Iterator[RunAsked]:
    """Name every run by its edge and plane, with a number where that is not enough."""
    names: dict[str, int] = {}
    for run in runs:
        name = f"{run.edge.replace('_', ' ')} of {run.plane}"
        names[name] = names.get(name, 0) + 1
        yield RunAsked(
            name=name if names[name] == 1 else f"{name}, {names[name]}",
            run_length=run.run_length,
            tab=run.tab,
            tabs=run.tabs,
        )


def _way(
    line: str, found: SharedMetal, there: Mapping[float, int], prices: PriceList
) -> Shared | None:
    """Take what is on hand off a way of buying; none where something is not to be had."""
    offered: LengthsOffered = getattr(prices, line)
    packs, digits = places_by_size(offered), prices.digits()
    counts, cost, used = [0] * len(offered.packs), 0, 0.0
    for stock in found.bought:
        size = stock.stock_length
        bought = max(0, stock.count - there.get(size, 0))
        used += (stock.count - bought) * size
        if bought and size not in packs:
            return None
        if bought:
            counts[packs[size]] = bought
            cost += bought * whole_units(offered.packs[packs[size]].price, digits)
    needed = found.metal - found.offcut
    return Shared(
        packs=tuple(counts),
        cost=cost,
        needed=needed,
        on_hand=min(used, needed),
        left_over=found.offcut,
        cuts=MetalCuts(
            line=line, lap=found.lap, cuts=found.cuts, runs=found.runs, offcuts=found.offcuts
        ),
        proved=not cost or (found.proved and not any(there.values())),
    )
