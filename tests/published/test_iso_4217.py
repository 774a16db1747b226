"""ISO 4217, list one (current currencies and funds), as published on 2026-01-01.

The list prints a minor unit for each code: the digits after the point. Typed are those that are not
two, and some that are; the codes without one (N.A.) are no money to buy with.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from roofing_core import PiecePack, PiecesOffered, PriceList, Refused
from roofing_core.buying.money import minor_digits

MINOR_UNITS = {
    0: ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND",
        "VUV", "XAF", "XOF", "XPF"],
    2: ["AUD", "BRL", "CAD", "CHF", "CNY", "EUR", "GBP", "INR", "MXN", "NZD", "SEK", "USD", "ZAR"],
    3: ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"],
    4: ["CLF", "UYW"],
    None: ["XAG", "XAU", "XDR", "XTS", "XXX"],
}  # fmt: skip


@pytest.mark.parametrize(
    ("digits", "code"), [(digits, code) for digits, codes in MINOR_UNITS.items() for code in codes]
)
def test_minor_units(digits, code):
    assert minor_digits(code) == digits


@pytest.mark.parametrize(
    ("code", "finest", "finer"),
    [("JPY", "1480", "1480.5"), ("USD", "12.49", "12.495"), ("KWD", "3.755", "3.7555"),
     ("CLF", "0.1234", "0.12345")],
)  # fmt: skip
def test_prices_go_down_to_the_minor_unit_and_no_further(code, finest, finer):
    def listed(price: str) -> PriceList:
        packs = (PiecePack(holds=21, price=Decimal(price)),)
        return PriceList(currency=code, shingles=PiecesOffered(packs=packs))

    assert listed(finest).digits() == minor_digits(code)
    with pytest.raises(Refused, match=r"shingles\.packs\.0\.price came as .* after"):
        listed(finer)
