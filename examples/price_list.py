"""A shed's order by a price list, with the library alone: the packs that cost least, and the total.

python examples/price_list.py

The prices are invented.
"""

from decimal import Decimal

from roofing_core import (
    Job,
    LengthPack,
    LengthsOffered,
    PiecePack,
    PiecesOffered,
    PriceList,
    SingleSlope,
    VolumePack,
    VolumesOffered,
    WeightPack,
    WeightsOffered,
    priced_order,
    priced_order_text,
    read,
    read_length,
)


def lengths(**prices: str) -> LengthsOffered:
    """Offer rolls or lengths of metal by their feet, such as ft10."""
    packs = (
        LengthPack(holds=read_length(f"{feet[2:]} ft"), price=Decimal(price))
        for feet, price in prices.items()
    )
    return LengthsOffered(packs=tuple(packs))


metal = lengths(ft8="7.95", ft10="9.80", ft12="11.70")
shed = Job(
    roof=SingleSlope(
        eave_length=read_length("14 ft"), slope_length=read_length("9 ft 4 in"), pitch=3 / 12
    )
)
prices = PriceList(
    currency="CAD",
    tax_rate=Decimal("13"),
    eave_metal=metal,
    rake_metal=metal,
    ridge_metal=metal,
    underlayment=lengths(ft72="21.90", ft144="42.50"),
    cap_nails=PiecesOffered(
        packs=(
            PiecePack(holds=100, price=Decimal("5.60")),
            PiecePack(holds=1000, price=Decimal("23.40")),
        )
    ),
    shingles=PiecesOffered(
        packs=(
            PiecePack(holds=21, price=Decimal("44.80"), name="full"),
            PiecePack(holds=7, price=Decimal("15.90"), name="broken"),
        ),
        on_hand=11,
    ),
    roofing_nails=WeightsOffered(
        packs=(
            WeightPack(holds=1.0, price=Decimal("6.20")),
            WeightPack(holds=5.0, price=Decimal("21.75")),
        )
    ),
    sealant=VolumesOffered(
        packs=(VolumePack(holds=read("10.1 fl oz", "in3"), price=Decimal("7.15")),)
    ),
    cement=VolumesOffered(
        packs=(
            VolumePack(holds=read("29 fl oz", "in3"), price=Decimal("11.30")),
            VolumePack(holds=read("1 US gal", "in3"), price=Decimal("28.90")),
        )
    ),
)

order = priced_order(shed, prices)
print(priced_order_text(order), end="")
