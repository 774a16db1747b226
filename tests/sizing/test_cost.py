"""Better sizes by cost: as the priced orders of every size one by one have it."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest

from roofing_core import (
    Between,
    CostFit,
    Job,
    LengthPack,
    LengthsOffered,
    PiecePack,
    PiecesOffered,
    PriceList,
    RangedJob,
    Ranges,
    Refused,
    SingleSlope,
    VolumePack,
    VolumesOffered,
    WeightPack,
    WeightsOffered,
    cost_fit_text,
    fit_by_cost,
    plan,
    priced_order,
)

SHED = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
ABOUT = Ranges(
    eave_length=Between(least=150, most=186), slope_length=Between(least=100, most=124), step=6
)
JOB = RangedJob(roof=SHED, ranges=ABOUT, keep=50)


def metal(price: str) -> LengthsOffered:
    return LengthsOffered(packs=(LengthPack(holds=120, price=Decimal(price)),))


#: Invented; every pack is the job's own.
PRICES = PriceList(
    currency="USD",
    tax_rate=Decimal("8.25"),
    eave_metal=metal("9.80"),
    rake_metal=metal("10.40"),
    ridge_metal=metal("13.10"),
    underlayment=LengthsOffered(packs=(LengthPack(holds=1728, price=Decimal("31.00")),)),
    cap_nails=PiecesOffered(packs=(PiecePack(holds=1000, price=Decimal("14.25")),)),
    shingles=PiecesOffered(packs=(PiecePack(holds=21, price=Decimal("38.90")),)),
    roofing_nails=WeightsOffered(packs=(WeightPack(holds=5, price=Decimal("12.60")),)),
    sealant=VolumesOffered(packs=(VolumePack(holds=10.1 * 231 / 128, price=Decimal("4.95")),)),
    cement=VolumesOffered(packs=(VolumePack(holds=231, price=Decimal("21.75")),)),
)


@pytest.fixture(scope="module")
def told() -> CostFit:
    return fit_by_cost(JOB, PRICES)


@pytest.fixture(scope="module")
def every() -> dict[tuple[float, float], tuple[Decimal, Fraction]]:
    """Price every size: in all, and for each square."""
    found = {}
    for wide in range(150, 187, 6):
        for high in range(100, 125, 6):
            roof = replace(SHED, eave_length=float(wide), slope_length=float(high))
            total = priced_order(Job(roof=roof), PRICES).total
            squares = Fraction(plan(Job(roof=roof)).roof.area) / 14400
            found[float(wide), float(high)] = total, Fraction(total) / squares
    return found


def test_no_size_in_the_ranges_costs_less_than_the_first(told, every):
    assert told.sizes_looked_at == len(every)
    best = tuple(one.length for one in told.better[0].sizes)
    assert every[best][1] == min(share for _, share in every.values())
    assert told.orders == told.orders_priced > len(told.better)


def test_each_is_priced_as_its_order_is_and_saves_the_difference(told, every):
    wished = every[168.0, 112.0]
    assert told.wished.total == wished[0]
    shares = []
    for one in told.better:
        total, share = every[tuple(size.length for size in one.sizes)]
        assert one.total == total
        assert one.per_square == rounded(share)
        assert one.saves_per_square == rounded(wished[1]) - rounded(share)
        assert share < wished[1]
        shares.append(share)
    assert shares == sorted(shares)
    assert len(shares) > 1


def rounded(share: Fraction) -> Decimal:
    exact = Decimal(share.numerator) / Decimal(share.denominator)
    return exact.quantize(Decimal("0.01"), ROUND_HALF_UP)


def test_money_is_decimal_with_the_digits_of_its_currency(told):
    for one in (told.wished, *told.better):
        for money in (one.total, one.per_square, one.saves_per_square):
            assert isinstance(money, Decimal)
            assert money.as_tuple().exponent == -2


def test_what_is_missing_or_contradicts_itself_is_named_below_job_or_prices():
    for job, prices, at in (
        (JOB, PriceList(currency="USD"), ("prices", "eave_metal")),
        (RangedJob(roof=SHED), PRICES, ("job", "ranges")),
        (replace(JOB, roof=replace(SHED, pitch=1 / 12)), PRICES, ("job", "roof", "pitch")),
    ):
        with pytest.raises(Refused) as refusal:
            fit_by_cost(job, prices)
        assert refusal.value.faults[0].at == at


def test_as_text_each_size_has_its_cost(told):
    lines = cost_fit_text(told).splitlines()
    assert lines[0].startswith("The least: eave length")
    wished = next(line for line in lines if line.startswith("wished"))
    assert f"{told.wished.per_square:f}" in wished
    assert len([line for line in lines if line[:1].isdigit()]) > len(told.better)
