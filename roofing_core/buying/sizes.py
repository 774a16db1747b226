"""Sizes: rolls and lengths of metal, where another size is another cutting plan.

Every length on offer, and every one on hand, is planned anew by itself, and one is chosen for the
whole line. What is on hand of it comes first and costs nothing. So the choice is the cheapest among
single sizes: mixtures of rolls are not tried, and those of lengths of metal are for `sharing`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from roofing_core.buying.money import whole_units
from roofing_core.buying.offered import LengthsOffered, places_by_size
from roofing_core.buying.price_list import PriceList
from roofing_core.job.choices import Choices, Job
from roofing_core.job.edges import METALS, lay_metal
from roofing_core.job.layout import Layout
from roofing_core.job.order import order
from roofing_core.job.sheeting import lay_sheets
from roofing_core.job.wiring import Site, site_of
from roofing_core.materials.kinds import Metal, Roll
from roofing_core.measures.faults import Fault, Refused
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.measures.units import Inches

#: The lines of the order that are rolls, and those that are lengths of metal.
ROLLS = ("ice_barrier", "valley_lining", "underlayment")
METAL = tuple(dict.fromkeys(METALS.values()))

Chosen = TypeVar("Chosen", bound=Choices)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizePlanned:
    """What a line takes when it is cut from one size.

    Attributes:
        size: The length of each roll, or of each length of metal.
        count: How many it takes.
        needed: What is cut from them, in all.
        on_hand: How many of these are there already.
        pack: The place of its cheapest pack among those on offer; -1 where none is.
        cost: Of those that are bought, in minor units.
    """

    size: Inches
    count: int
    needed: Inches
    on_hand: int
    pack: int
    cost: int

    @property
    def bought(self) -> int:
        """Give how many are bought."""
        return self.count - self.on_hand

    @property
    def left_over(self) -> Inches:
        """Give what is left over of them all."""
        return max(0.0, self.count * self.size - self.needed)


def sizes_planned(
    line: str, layout: Layout, *, job: Job, prices: PriceList
) -> tuple[SizePlanned, ...]:
    """Plan a line of rolls or metal with each size that can be had.

    Args:
        line: The name of the line.
        layout: The job, laid out, each run of metal cut by itself.
        job: The job.
        prices: What is on offer and on hand.

    Returns:
        One entry per size on offer, and per size on hand where that is enough of it.

    Raises:
        Refused: A size on offer cannot be laid, or none is on offer and what is on hand is not
            enough; names each place on the price list.

    Source:
        The layers' own, laid again.

    >>> from decimal import Decimal
    >>> from roofing_core.buying.offered import LengthPack
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> rolls = tuple(LengthPack(holds=12 * feet, price=Decimal(price))
    ...               for feet, price in ((72, "16.50"), (144, "31.00")))
    >>> listed = PriceList(currency="USD", underlayment=LengthsOffered(packs=rolls))
    >>> sized = sizes_planned("underlayment", lay_out(shed), job=shed, prices=listed)
    >>> [(one.size, one.count, one.cost) for one in sized]
    [(864, 2, 3300), (1728, 1, 3100)]
    """
    offered: LengthsOffered = getattr(prices, line)
    digits = prices.digits()
    site = site_of(job.roof, layout.choices, openings=job.openings)
    planned: list[SizePlanned] = []
    faults: list[Fault] = []
    for size, pack in _sizes(offered):
        try:
            laid = getattr(order(_relaid(line, size, layout, site)), line)
        except Refused as refusal:
            faults += _told(refusal, line, size, pack) if pack >= 0 else ()
            continue
        there = sum(one.count for one in offered.on_hand if one.length == size)
        used = min(there, laid.packs)
        bought = laid.packs - used
        if pack >= 0 or not bought:
            planned.append(
                SizePlanned(
                    size=size,
                    count=laid.packs,
                    needed=laid.needed.value,
                    on_hand=used,
                    pack=pack,
                    cost=bought and bought * whole_units(offered.packs[pack].price, digits),
                )
            )
    if faults:
        raise Refused(*faults)
    if not planned:
        needs = getattr(order(layout), line)
        wanted = say("lengths on offer: what is on hand is not enough for ", needs.needed)
        raise Refused(Fault((line, "packs"), "none", wanted))
    return tuple(planned)


def _sizes(offered: LengthsOffered) -> Iterator[tuple[float, int]]:
    """Give each size once, with the place of its cheapest pack, or -1 for what is only on hand."""
    places = places_by_size(offered)
    for size in dict.fromkeys((*places, *_on_hand(offered))):
        yield size, places.get(size, -1)


def _on_hand(offered: LengthsOffered) -> Iterator[float]:
    return (one.length for one in offered.on_hand if one.count)


def _relaid(line: str, size: float, layout: Layout, site: Site) -> Layout:
    """Lay the sheets or the metal of a job again, one material in another size."""
    choices = resized(layout.choices, line, size)
    anew = replace(site, choices=choices)
    if line in ROLLS:
        ice, felt, lining = lay_sheets(anew)
        return replace(
            layout, choices=choices, ice_barrier=ice, underlayment=felt, valley_lining=lining
        )
    return replace(layout, choices=choices, metal=lay_metal(anew))


def resized(choices: Chosen, line: str, *sizes: Inches) -> Chosen:
    """Give the choices with a roll in another size, or a metal in other stock lengths.

    Args:
        choices: The choices, or a job.
        line: The name of the line, which is that of its material.
        sizes: The length of the roll, or the stock lengths.

    Returns:
        The choices with that material; a roll's weight goes with its length.

    Raises:
        Refused: A size is not over zero.

    Source:
        Arithmetic.

    >>> resized(Choices(), "underlayment", 864).underlayment.length
    864
    """
    material: Roll | Metal = getattr(choices, line)
    if isinstance(material, Roll):
        (size,) = sizes
        weight = material.weight * size / material.length
        material = replace(material, length=size, weight=weight)
    else:
        material = replace(material, stock_lengths=sizes)
    changed: dict[str, Any] = {line: material}
    return replace(choices, **changed)


def _told(refusal: Refused, line: str, size: float, pack: int) -> Iterator[Fault]:
    """Tell why a size cannot be laid, at its place on the price list."""
    for one in refusal.faults[:1]:
        yield Fault((line, "packs", pack, "holds"), length(size), _because(one, line))


def _because(fault: Fault, line: str) -> Sentence:
    at = ".".join(str(part) for part in fault.at)
    if at in (f"{line}.length", f"{line}.stock_lengths"):
        return fault.wanted
    return say(f"a size that the job can be laid with; with this one {at} had to be ", fault.wanted)
