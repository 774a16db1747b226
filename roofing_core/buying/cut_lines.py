"""Cut lines: what is bought of rolls and of metal, whose number comes from a cutting plan."""

from __future__ import annotations

from dataclasses import replace

from roofing_core.buying.cut_ways import CutWays
from roofing_core.buying.lines import PricedLine, priced_line
from roofing_core.buying.money import from_minor_units
from roofing_core.buying.offered import LengthsOffered
from roofing_core.buying.price_list import PriceList
from roofing_core.job.order_lines import OrderLine
from roofing_core.measures.sentences import Amount


def line_of_one_size(name: str, line: OrderLine, prices: PriceList, *, ways: CutWays) -> PricedLine:
    """Buy what a line needs in rolls, or lengths of metal, of the size that costs least.

    Args:
        name: The name of the line.
        line: The line of the order, with any size.
        prices: What is on offer and on hand.
        ways: The ways to buy it.

    Returns:
        The priced line.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from decimal import Decimal
    >>> from roofing_core.buying.offered import LengthPack
    >>> from roofing_core.buying.sizes import SizePlanned
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> rolls = tuple(LengthPack(holds=holds, price=Decimal(31)) for holds in (864, 1728))
    >>> listed = PriceList(currency="USD", underlayment=LengthsOffered(packs=rolls))
    >>> size = SizePlanned(size=1728, count=1, needed=1162, on_hand=0, pack=1, cost=3100)
    >>> found = line_of_one_size("underlayment", plan(shed).order.underlayment, listed,
    ...                          ways=CutWays(one_size=size, fewest=size, across=()))
    >>> [(roll.packs, roll.holds.value) for roll in found.bought], found.cost
    ([(1, 1728)], Decimal('31.00'))
    """
    size = ways.one_size
    offered: LengthsOffered = getattr(prices, name)
    return priced_line(
        name,
        replace(line, needed=Amount(size.needed, "in")),
        prices,
        on_hand=min(size.on_hand * size.size, size.needed),
        packs=tuple(size.bought if k == size.pack else 0 for k in range(len(offered.packs))),
        left_over=size.left_over,
        fewest_packs_cost=from_minor_units(ways.fewest.cost, prices.digits()),
        chosen="one_size",
    )


def line_cut_together(
    name: str, line: OrderLine, prices: PriceList, *, ways: CutWays
) -> PricedLine:
    """Buy what a line of metal needs in lengths that are cut for all its runs together.

    Args:
        name: The name of the line.
        line: The line of the order, cut in any way.
        prices: What is on offer and on hand.
        ways: The ways to buy it, one across runs among them.

    Returns:
        The priced line.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.buying.cut_ways import cut_ways
    >>> from decimal import Decimal
    >>> from roofing_core.buying.offered import LengthPack
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> low = Job(roof=SingleSlope(eave_length=168, slope_length=56, pitch=0.25))
    >>> ten = LengthsOffered(packs=(LengthPack(holds=120, price=Decimal("9.80")),))
    >>> listed = PriceList(currency="USD", eave_metal=ten, rake_metal=ten, ridge_metal=ten,
    ...     underlayment=LengthsOffered(packs=(LengthPack(holds=1728, price=Decimal(31)),)))
    >>> planned = plan(low)
    >>> found = line_cut_together("rake_metal", planned.order.rake_metal, listed,
    ...                           ways=cut_ways(low, planned, listed)["rake_metal"])
    >>> found.bought[0].packs, found.cost, found.fewest_packs_cost
    (1, Decimal('9.80'), Decimal('19.60'))
    """
    (way,) = ways.across
    return priced_line(
        name,
        replace(line, needed=Amount(way.needed, "in")),
        prices,
        on_hand=way.on_hand,
        packs=way.packs,
        left_over=way.left_over,
        fewest_packs_cost=from_minor_units(ways.fewest.cost, prices.digits()),
        chosen="cut_together",
        proved=way.proved,
    )
