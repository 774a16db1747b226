"""Sales tax: the rounding rule in law, and printed tables that follow it.

The rule: carried to the third decimal place, rounded up to the next cent whenever that is greater
than four, on an item or on the invoice (Streamlined Sales and Use Tax Agreement, section 324, as
enacted in Rhode Island General Laws 44-18.1-25 and North Dakota Century Code 57-39.4-25).

The tables print the least price, in cents, from which each tax is due; two rates, from a web site
that prints such tables for shops.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from roofing_core.buying.money import tax_on

#: Rate, then price and tax in cents.
TABLES = {
    "8.225": [
        (36347, 2990), (36359, 2991), (36371, 2992), (36383, 2993), (36396, 2994), (36408, 2995),
        (36955, 3040), (36967, 3041), (37563, 3090), (38171, 3140), (38779, 3190), (39387, 3240),
        (127228, 10465), (127241, 10466), (127253, 10467), (127836, 10515), (181757, 14950),
        (181769, 14951), (182365, 15000), (184189, 15150),
    ],
    "8.188": [
        (32860, 2691), (32872, 2692), (32884, 2693), (32896, 2694), (32908, 2695), (32921, 2696),
        (33470, 2741), (34081, 2791), (34692, 2841), (35302, 2891), (35913, 2941),
    ],
}  # fmt: skip


@pytest.mark.parametrize(
    ("rate", "price", "tax"),
    [(rate, *row) for rate, rows in TABLES.items() for row in rows],
)
def test_tax_is_due_from_the_price_that_the_table_prints(rate, price, tax):
    assert tax_on(price, Decimal(rate)) == tax
    assert tax_on(price - 1, Decimal(rate)) == tax - 1


def test_the_third_decimal_place_decides():
    # 0.1 % of a price in cents is a tax of as many thousandths of a cent as it has cents times 100.
    for thousandths in range(1, 4_000):
        up = thousandths % 10 > 4
        assert tax_on(thousandths * 100, Decimal("0.1")) == thousandths // 10 + up
