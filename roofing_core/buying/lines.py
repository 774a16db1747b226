"""Lines: what is bought for one line of an order, and what the fewest packs would cost."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from roofing_core.buying.money import from_minor_units, whole_units
from roofing_core.buying.offered import AnyOffered, LengthsOffered, PricedPack
from roofing_core.buying.packs import cheapest_packs, fewest_packs
from roofing_core.buying.price_list import PriceList
from roofing_core.job.order_lines import OrderLine, Pack
from roofing_core.measures.counting import uncountable_fault
from roofing_core.measures.faults import Fault, refuse_if_any
from roofing_core.measures.sentences import Amount, say

#: Bought by the piece: their sizes are the job's, whose cutting plan says how many there are.
BY_THE_PIECE = frozenset({"deck_panels", "flashing_sheets"})

Chosen = Literal["any_packs", "one_size", "cut_together"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """Packs of one kind that are bought.

    Attributes:
        name: What the seller calls them, or nothing.
        holds: What one holds.
        price: Of one.
        packs: How many.
        cost: Of all of them.
    """

    name: str
    holds: Amount
    price: Decimal
    packs: int
    cost: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedLine:
    """One line of a priced order.

    Attributes:
        line: Its name on the price list.
        item: What it is, in trade words.
        material: The material, by its name.
        pack: What it is bought in.
        needed: What the job uses.
        on_hand: What of that is on hand already.
        bought: The packs to buy, in the order of the price list; none where enough is on hand.
        left_over: What is left of the packs bought, and of rolls and lengths on hand.
        cost: Of all packs bought.
        tax_rate: In percent.
        fewest_packs_cost: What the fewest packs would cost.
        chosen: ``any_packs``: packs of all sizes mixed; ``one_size``: rolls or lengths of one size,
            each size having been planned by itself; ``cut_together``: lengths of all sizes, cut for
            all runs together.
        proved: Whether it is proved that nothing chosen like that costs less. It is not where a
            search stopped at its limit of steps, nor for lengths that are cut together with some
            on hand.
    """

    line: str
    item: str
    material: str
    pack: Pack
    needed: Amount
    on_hand: Amount
    bought: tuple[Bought, ...]
    left_over: Amount
    cost: Decimal
    tax_rate: Decimal
    fewest_packs_cost: Decimal
    chosen: Chosen
    proved: bool


def line_of_packs(name: str, line: OrderLine, prices: PriceList) -> PricedLine:
    """Buy what a line needs in packs of any sizes, at the least cost.

    What is on hand goes first; what is left of the need is covered by `cheapest_packs`.

    Args:
        name: The name of the line.
        line: The line of the order.
        prices: What is on offer and on hand.

    Returns:
        The priced line; exact, as `cheapest_packs` is.

    Raises:
        Refused: Nothing is on offer, and what is on hand is not enough; or a pack is so small that
            no one could count them. Names the place on the price list.

    Source:
        Arithmetic.

    >>> from roofing_core.buying.offered import PiecePack, PiecesOffered
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> line = plan(shed).order.shingles
    >>> bundle = PiecePack(holds=21, price=Decimal("38.90"))
    >>> listed = PriceList(currency="USD", shingles=PiecesOffered(packs=(bundle,), on_hand=8))
    >>> found = line_of_packs("shingles", line, listed)  # 97 of 105
    >>> found.bought[0].packs, found.cost, found.left_over.value
    (5, Decimal('194.50'), 8.0)
    """
    offered: AnyOffered = getattr(prices, name)
    needed = needed_of(name, line)
    used = min(_there(offered), needed.value)
    rest = needed.value - used
    if rest <= 0:
        return priced_line(name, line, prices, on_hand=used)
    refuse_if_any(_faults(name, needed, rest, offered.packs))
    cheapest, fewest = cheapest_packs(rest, offered.packs), fewest_packs(rest, offered.packs)
    return priced_line(
        name,
        line,
        prices,
        on_hand=used,
        packs=cheapest.packs,
        left_over=cheapest.left_over,
        fewest_packs_cost=fewest.cost,
        proved=cheapest.proved,
    )


def needed_of(name: str, line: OrderLine) -> Amount:
    """Give what a line needs as its packs are counted on a price list.

    Args:
        name: The name of the line.
        line: The line of the order.

    Returns:
        The amount; of panels and sheets, which are cut by a plan, their number.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> line = plan(Job(roof=roof, decking=Decking(lay=True))).order.deck_panels
    >>> needed_of("deck_panels", line)
    Amount(value=5, unit='count')
    """
    return Amount(line.packs, "count") if name in BY_THE_PIECE else line.needed


def _there(offered: AnyOffered) -> float:
    """Give how much of a line is on hand."""
    if isinstance(offered, LengthsOffered):
        return sum(one.count * one.length for one in offered.on_hand)
    return offered.on_hand


def _faults(
    name: str, needed: Amount, rest: float, packs: Sequence[PricedPack]
) -> Iterator[Fault | None]:
    if not packs:
        wanted = say("packs on offer: what is on hand is not enough for ", needed)
        yield Fault((name, "packs"), "none", wanted)
    for k, pack in enumerate(packs):
        yield uncountable_fault(f"{name}.packs.{k}.holds", pack.holds, pack.unit, needed=rest)


def priced_line(
    name: str,
    line: OrderLine,
    prices: PriceList,
    *,
    on_hand: float,
    packs: tuple[int, ...] = (),
    left_over: float = 0.0,
    fewest_packs_cost: Decimal = Decimal(0),
    chosen: Chosen = "any_packs",
    proved: bool = True,
) -> PricedLine:
    """Make a line from what was chosen for it.

    Args:
        name: The name of the line.
        line: The line of the order.
        prices: What is on offer and on hand.
        on_hand: What is on hand of what the line needs.
        packs: How many are bought of each pack on offer; empty for none.
        left_over: What is left over.
        fewest_packs_cost: What the fewest packs would cost.
        chosen: How the packs were chosen.
        proved: Whether it is proved that nothing chosen like that costs less.

    Returns:
        The priced line.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.buying.offered import PiecePack, PiecesOffered
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> line = plan(shed).order.caps
    >>> bundle = PiecePack(holds=21, price=Decimal("38.9"))
    >>> listed = PriceList(currency="USD", caps=PiecesOffered(packs=(bundle,)))
    >>> priced_line("caps", line, listed, on_hand=0, packs=(2,)).cost
    Decimal('77.80')
    """
    offered, digits, needed = getattr(prices, name), prices.digits(), needed_of(name, line)
    bought = tuple(
        Bought(
            name=pack.name,
            holds=Amount(pack.holds, needed.unit),
            price=from_minor_units(whole_units(pack.price, digits), digits),
            packs=count,
            cost=from_minor_units(whole_units(pack.price, digits) * count, digits),
        )
        for pack, count in zip(offered.packs, packs, strict=bool(packs))
        if count
    )
    return PricedLine(
        line=name,
        item=line.item,
        material=line.material,
        pack=line.pack,
        needed=needed,
        on_hand=Amount(on_hand, needed.unit),
        bought=bought,
        left_over=Amount(left_over, needed.unit),
        cost=from_minor_units(sum(whole_units(one.cost, digits) for one in bought), digits),
        tax_rate=prices.rate_of(offered),
        fewest_packs_cost=from_minor_units(whole_units(fewest_packs_cost, digits), digits),
        chosen=chosen,
        proved=proved,
    )
