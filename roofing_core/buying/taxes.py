"""Taxes: the tax on the sum of all lines of one rate, and what an order comes to with it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import NamedTuple

from roofing_core.buying.money import from_minor_units, tax_on, whole_units
from roofing_core.buying.price_list import PriceList


@dataclass(frozen=True, slots=True, kw_only=True)
class TaxAt:
    """The tax on all lines of one rate.

    Attributes:
        rate: In percent.
        taxed: What those lines cost.
        tax: The tax on that sum, or in it.
    """

    rate: Decimal
    taxed: Decimal
    tax: Decimal


class Sums(NamedTuple):
    """What an order comes to, in minor units.

    Attributes:
        cost: Of all lines.
        tax: On all lines, or in their prices.
        total: With the tax.
    """

    cost: int
    tax: int
    total: int


def taxes_on(costs: Iterable[tuple[Decimal, Decimal]], prices: PriceList) -> tuple[TaxAt, ...]:
    """Give the tax on costs, once for each rate.

    Args:
        costs: The rate of each line in percent, and what the line costs.
        prices: The price list, which says whether prices include the tax.

    Returns:
        One entry per rate, the lowest first.

    Raises:
        Nothing.

    Source:
        As `priced_order`.

    >>> lines = [(Decimal("8.25"), Decimal("5.09")), (Decimal(0), Decimal("7.00")),
    ...          (Decimal("8.25"), Decimal("5.09"))]
    >>> [(one.rate, one.taxed, one.tax) for one in taxes_on(lines, PriceList(currency="USD"))][1]
    (Decimal('8.25'), Decimal('10.18'), Decimal('0.84'))
    """
    digits = prices.digits()
    sums: dict[Decimal, int] = {}
    for rate, cost in costs:
        sums[rate] = sums.get(rate, 0) + whole_units(cost, digits)
    return tuple(
        TaxAt(
            rate=rate,
            taxed=from_minor_units(taxed, digits),
            tax=from_minor_units(tax_on(taxed, rate, included=prices.tax_included), digits),
        )
        for rate, taxed in sorted(sums.items())
    )


def sums(taxes: Iterable[TaxAt], prices: PriceList) -> Sums:
    """Sum up an order.

    Args:
        taxes: What is taxed at each rate, and the tax.
        prices: The price list, which says whether prices include the tax.

    Returns:
        Cost, tax and total in minor units.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> listed = PriceList(currency="USD", tax_rate=Decimal("8.25"))
    >>> sums(taxes_on([(Decimal("8.25"), Decimal("10.18"))], listed), listed)
    Sums(cost=1018, tax=84, total=1102)
    """
    digits, cost, tax = prices.digits(), 0, 0
    for one in taxes:
        cost += whole_units(one.taxed, digits)
        tax += whole_units(one.tax, digits)
    return Sums(cost, tax, cost if prices.tax_included else cost + tax)
