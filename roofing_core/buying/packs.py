"""Packs: which packs on offer to buy for an amount, at the least cost or in the least number."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, isfinite

from roofing_core.buying.covering import Size, covered
from roofing_core.buying.money import EXACT, from_minor_units, price_fault
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import LARGEST, Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, shown


@dataclass(frozen=True, slots=True, kw_only=True)
class PackOffer:
    """One size of pack on offer.

    Attributes:
        holds: What is in one: pieces, a length, a weight or a volume, as what is needed is counted.
        price: Of one.
    """

    holds: float
    price: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PacksBought:
    """What is bought to cover an amount.

    Attributes:
        packs: How many of each pack on offer, in their order.
        cost: What they cost.
        holds: What they hold.
        left_over: What is left of it.
        proved: Whether it is proved that no choice is better; false only where the search stopped
            at its limit of steps.
    """

    packs: tuple[int, ...]
    cost: Decimal
    holds: float
    left_over: float
    proved: bool


def cheapest_packs(needed: float, offers: Sequence[PackOffer]) -> PacksBought:
    """Choose the packs that hold what is needed and cost least.

    The whole numbers n of each pack with ``sum(n * holds) >= needed`` and the least
    ``sum(n * price)``; of equals those that leave least over, and of these the fewest packs. As in
    `whole_packs`, 1e-9 of the smallest pack may be missing. Exact: amounts are taken as the
    fractions that their floats are, prices as decimals.

    Args:
        needed: What is needed, 0 or more.
        offers: The packs on offer, one or more.

    Returns:
        How many of each, their cost and what is left over; none where nothing is needed.

    Raises:
        Refused: Nothing is on offer, a pack holds nothing, a price is no decimal of zero or more
            and six digits after the point, or what is needed is negative, not finite or more packs
            than the limit; names each.

    Source:
        Arithmetic.

    >>> boxes = [PackOffer(holds=5, price=Decimal("14.50")), PackOffer(holds=30, price=Decimal(62))]
    >>> cheapest_packs(22, boxes).packs, cheapest_packs(20, boxes).packs
    ((0, 1), (4, 0))
    """
    return _bought(needed, offers, cheapest=True)


def fewest_packs(needed: float, offers: Sequence[PackOffer]) -> PacksBought:
    """Choose the fewest packs that hold what is needed, whatever they cost.

    Of equals those that leave least over, and of these the cheapest.

    Args:
        needed: What is needed, 0 or more.
        offers: The packs on offer, one or more.

    Returns:
        How many of each, their cost and what is left over; none where nothing is needed.

    Raises:
        Refused: As `cheapest_packs`.

    Source:
        Arithmetic.

    >>> boxes = [PackOffer(holds=5, price=Decimal("14.50")), PackOffer(holds=30, price=Decimal(62))]
    >>> fewest_packs(20, boxes).packs, fewest_packs(32, boxes).packs
    ((0, 1), (1, 1))
    """
    return _bought(needed, offers, cheapest=False)


def _bought(needed: float, offers: Sequence[PackOffer], *, cheapest: bool) -> PacksBought:
    refuse_if_any(_faults(needed, offers))
    sizes = [Fraction(offer.holds) for offer in offers]
    digits = max(_digits(offer.price) for offer in offers)
    prices = [int(offer.price.scaleb(digits, EXACT)) for offer in offers]
    least = max(Fraction(0), Fraction(needed) - Fraction(DUST) * min(sizes))
    # Floats are fractions over powers of two: times the largest of these all are whole.
    scale = max(size.denominator for size in sizes)
    choice, proved = covered(
        ceil(least * scale),
        [
            Size(int(size * scale), *((price, 1) if cheapest else (1, price)))
            for size, price in zip(sizes, prices, strict=True)
        ],
    )
    cost = sum(count * price for count, price in zip(choice.packs, prices, strict=True))
    holds = choice.amount / scale
    return PacksBought(
        packs=choice.packs,
        cost=from_minor_units(cost, digits),
        holds=holds,
        left_over=max(0.0, holds - needed),
        proved=proved,
    )


def _digits(price: Decimal) -> int:
    """Give the digits after the point of a price."""
    exponent = price.as_tuple().exponent
    assert isinstance(exponent, int), "a price that is not finite was refused"
    return max(0, -exponent)


def _faults(needed: float, offers: Sequence[PackOffer]) -> Iterator[Fault | None]:
    if not offers:
        yield fault("offers", "none", "one or more packs on offer")
    for k, offer in enumerate(offers):
        yield not_positive(f"offers.{k}.holds", offer.holds, "count")
        yield price_fault(f"offers.{k}.price", offer.price)
    came = shown(Amount(needed, "count"))
    if not (isfinite(needed) and needed >= 0):
        yield fault("needed", came, "zero or more")
    elif any(offer.holds > 0 and needed > LARGEST * offer.holds for offer in offers):
        yield fault("needed", came, f"at most {LARGEST:.0f} packs of each size")
