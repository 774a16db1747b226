"""What the tests of buying share: a price list for the shed, and one drawn at random."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from decimal import Decimal
from random import Random
from typing import Any

import pytest

from roofing_core import (
    LengthOnHand,
    LengthPack,
    LengthsOffered,
    PiecePack,
    PiecesOffered,
    PriceList,
    VolumePack,
    VolumesOffered,
    WeightPack,
    WeightsOffered,
)

METAL = LengthsOffered(packs=(LengthPack(holds=120.0, price=Decimal("9.80")),))

#: The shed's list, by hand: a pack of each thing, in the size that the order list counts.
SHED = PriceList(
    currency="USD",
    tax_rate=Decimal("8.25"),
    eave_metal=METAL,
    rake_metal=METAL,
    ridge_metal=METAL,
    underlayment=LengthsOffered(packs=(LengthPack(holds=1728.0, price=Decimal("31.00")),)),
    cap_nails=PiecesOffered(packs=(PiecePack(holds=1000, price=Decimal("14.25")),)),
    shingles=PiecesOffered(packs=(PiecePack(holds=21, price=Decimal("38.90")),)),
    roofing_nails=WeightsOffered(packs=(WeightPack(holds=5.0, price=Decimal("17.25")),)),
    sealant=VolumesOffered(packs=(VolumePack(holds=10.1 * 231 / 128, price=Decimal("5.45")),)),
    cement=VolumesOffered(packs=(VolumePack(holds=231.0, price=Decimal("21.75")),)),
)

#: Sizes that things are sold in.
SIZES: dict[str, tuple[float, ...]] = {
    "pieces": (1, 3, 7, 16, 20, 21, 22, 26, 250, 1000),
    "rolls": (432.0, 600.0, 864.0, 900.0, 1200.0, 1728.0, 2592.0),
    "lengths": (72.0, 96.0, 120.0, 144.0, 240.0),
    "weights": (1.0, 2.0, 5.0, 25.0, 30.0, 50.0),
    "volumes": (10.1 * 231 / 128, 29 * 231 / 128, 231.0, 1155.0),
}

#: Which of them each line is sold in.
SOLD = {
    "PiecesOffered": "pieces", "WeightsOffered": "weights", "VolumesOffered": "volumes",
    "underlayment": "rolls", "ice_barrier": "rolls", "valley_lining": "rolls",
    "joint_tape": "rolls", "LengthsOffered": "lengths",
}  # fmt: skip

_KINDS: dict[str, Any] = {
    "pieces": (PiecesOffered, PiecePack),
    "rolls": (LengthsOffered, LengthPack),
    "lengths": (LengthsOffered, LengthPack),
    "weights": (WeightsOffered, WeightPack),
    "volumes": (VolumesOffered, VolumePack),
}


def random_list(random: Random, *, stocked: bool = False) -> PriceList:
    """Draw a price list that has every line, in a currency of 0, 2 or 3 digits."""
    currency, digits = random.choice([("USD", 2), ("JPY", 0), ("KWD", 3)])
    lines = {
        field.name: _offered(random, field.name, str(field.type).partition(" ")[0], digits, stocked)
        for field in fields(PriceList)[4:]
    }
    return PriceList(
        currency=currency,
        tax_rate=random.choice([Decimal(0), Decimal("8.25"), Decimal(19)]),
        tax_included=random.random() < 0.5,
        **lines,
    )


def _offered(random: Random, name: str, kind: str, digits: int, stocked: bool) -> Any:
    sold = SOLD.get(name, SOLD[kind])
    offered, pack = _KINDS[sold]
    sizes = random.sample(SIZES[sold], random.randint(1, 4))
    each = random.randint(20, 900)
    packs = tuple(
        pack(
            holds=size,
            price=Decimal(round(each * size**0.9 * random.uniform(0.8, 1.2))).scaleb(-digits),
        )
        for size in sizes
    )
    rate = random.choice([None, None, Decimal(0), Decimal("5.5")])
    there: dict[str, Any] = {}
    if stocked and offered is LengthsOffered:
        size = random.choice(SIZES[sold])
        there = {"on_hand": (LengthOnHand(length=size, count=random.randint(0, 2)),)}
    elif stocked:
        there = {"on_hand": offered().on_hand + random.randint(0, 3)}
    return offered(packs=packs, tax_rate=rate, **there)


@pytest.fixture
def prices() -> PriceList:
    """Give the price list of the shed."""
    return SHED


@pytest.fixture
def drawn_list() -> Callable[..., PriceList]:
    """Give what draws a price list."""
    return random_list
