"""The priced order: what a job's order costs by a price list, line by line and with tax."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from roofing_core.buying.cut_lines import line_cut_together, line_of_one_size
from roofing_core.buying.cut_ways import CutWays, cut_ways, job_with
from roofing_core.buying.lines import PricedLine, line_of_packs, needed_of
from roofing_core.buying.money import from_minor_units
from roofing_core.buying.price_list import LINES, PriceList
from roofing_core.buying.sharing import MetalCuts
from roofing_core.buying.taxes import TaxAt, sums, taxes_on
from roofing_core.job.choices import Job
from roofing_core.job.order import Order
from roofing_core.job.plan import Plan, plan
from roofing_core.measures.faults import Fault, Refused, each_made, refuse_if_any
from roofing_core.measures.sentences import Sentence, say


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedOrder:
    """What to buy for a job at the least cost, and what it comes to.

    Attributes:
        currency: The code of the currency (ISO 4217).
        minor_digits: Digits after the point of every amount of money here.
        tax_included: Whether prices and the costs of lines include the tax.
        lines: One entry per line that the job needs, in the order of work.
        metal_cuts: How metal is cut that is bought for all runs of a line together; one entry for
            each such line.
        cost: Of all lines.
        taxes: One entry per rate of tax.
        before_tax: Of all lines, without the tax.
        tax: The tax on all lines.
        total: With the tax.
        fewest_packs_total: What the fewest packs would come to, with the tax.
        saving: How much less the total is.
        notes: What to know before buying by it.
    """

    currency: str
    minor_digits: int
    tax_included: bool
    lines: tuple[PricedLine, ...]
    metal_cuts: tuple[MetalCuts, ...]
    cost: Decimal
    taxes: tuple[TaxAt, ...]
    before_tax: Decimal
    tax: Decimal
    total: Decimal
    fewest_packs_total: Decimal
    saving: Decimal
    notes: tuple[Sentence, ...]


def priced_order(job: Job, prices: PriceList) -> PricedOrder:
    """Give the order of whole packs that costs least by a price list, and its total.

    Each line is bought by itself at the least cost, after what is on hand: packs of several sizes
    in the mixture that costs least (exact, `cheapest_packs`); rolls in the one size that costs
    least, each size having been planned anew (mixtures of sizes are not tried); lengths of metal in
    one size too, or, where the job buys metal across runs, in several cut for all runs of a line
    together if that costs less (`shared_metal`); panels and sheets by the piece, in the job's size.
    Nails and sealant are those of the plan with the sizes chosen (`job_as_bought`), each run of
    metal cut by itself.

    Whole packs at their prices add up without rounding. Tax is reckoned on the sum of all lines of
    one rate, and rounded half up to the currency's minor unit once for each rate:
    ``taxed * rate / 100``, or where prices include it, ``taxed * rate / (100 + rate)``. No amount
    of money is ever a binary float.

    Args:
        job: The roof, its materials, and how the work is done.
        prices: What can be bought at what price, and what is on hand.

    Returns:
        Every line that the job needs with the packs to buy, what is left over and its cost; tax
        and total; and beside the total what the order with the fewest packs on offer would come
        to. For the order without prices ask for the plan.

    Raises:
        Refused: The job cannot be planned; or a line that it needs has no price, a size on offer
            cannot be laid, or a pack holds too little to be counted. Names each, below ``job`` or
            ``prices``.
        TooManyPieces: The roof would need more pieces than the limit.

    Source:
        Arithmetic. Currencies: ISO 4217, list one. Tax: half up to a whole cent, on an invoice as
        a whole or by the item as the seller elects (Streamlined Sales and Use Tax Agreement,
        section 324); on the sum of each rate (EN 16931, BR-CO-17).

    >>> from roofing_core.buying.offered import (LengthPack, LengthsOffered, PiecePack,
    ...     PiecesOffered, VolumePack, VolumesOffered, WeightPack, WeightsOffered)
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> metal = LengthsOffered(packs=(LengthPack(holds=120, price=Decimal("9.80")),))
    >>> listed = PriceList(currency="USD", tax_rate=Decimal("8.25"),
    ...     eave_metal=metal, rake_metal=metal, ridge_metal=metal,
    ...     underlayment=LengthsOffered(packs=(LengthPack(holds=1728, price=Decimal("31.00")),)),
    ...     cap_nails=PiecesOffered(packs=(PiecePack(holds=1000, price=Decimal("14.25")),)),
    ...     shingles=PiecesOffered(packs=(PiecePack(holds=21, price=Decimal("38.90")),)),
    ...     roofing_nails=WeightsOffered(packs=(WeightPack(holds=5, price=Decimal("12.60")),)),
    ...     sealant=VolumesOffered(packs=(VolumePack(holds=18, price=Decimal("4.95")),)),
    ...     cement=VolumesOffered(packs=(VolumePack(holds=231, price=Decimal("21.75")),)))
    >>> order = priced_order(shed, listed)
    >>> [(line.item, line.cost) for line in order.lines if line.line == "shingles"]
    [('shingles', Decimal('194.50'))]
    >>> order.before_tax, order.tax, order.total
    (Decimal('347.75'), Decimal('28.69'), Decimal('376.44'))
    """
    alone, planned = _planned(job)
    try:
        return _priced(job, alone, planned, prices)
    except Refused as refusal:
        raise refusal.below("prices") from None


def job_as_bought(job: Job, prices: PriceList) -> Job:
    """Give a job with its rolls and its metal in the sizes that cost least by a price list.

    Args:
        job: The job.
        prices: What can be bought at what price, and what is on hand.

    Returns:
        The job to plan and to work by: of every roll and metal that it needs, the size chosen; or
        the stock lengths chosen, where metal is bought across runs.

    Raises:
        Refused: As `priced_order`.
        TooManyPieces: The roof would need more pieces than the limit.

    Source:
        Arithmetic.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> try:
    ...     job_as_bought(shed, PriceList(currency="USD"))
    ... except Refused as refusal:
    ...     print(refusal.faults[0].at, refusal.faults[0].wanted.written()[-31:])
    ('prices', 'eave_metal') needs 14 ft 10 in of eave metal
    """
    alone, planned = _planned(job)
    try:
        return job_with(job, _ways(alone, planned, prices))
    except Refused as refusal:
        raise refusal.below("prices") from None


def _planned(job: Job) -> tuple[Job, Plan]:
    """Plan a job with each run of metal cut by itself."""
    alone = replace(job, metalwork=replace(job.metalwork, buying="run_by_run"))
    try:
        return alone, plan(alone)
    except Refused as refusal:
        raise refusal.below("job") from None


def _ways(alone: Job, planned: Plan, prices: PriceList) -> Mapping[str, CutWays]:
    """Find the ways to buy rolls and metal, once all lines have prices."""
    refuse_if_any(_missing(planned.order, prices))
    return cut_ways(alone, planned, prices)


def _missing(order: Order, prices: PriceList) -> Iterator[Fault]:
    for name in LINES:
        line = getattr(order, name)
        if line.packs and getattr(prices, name) is None:
            needs = (needed_of(name, line), f" of {line.item}")
            wanted = say("the packs on offer with their prices: the job needs ", *needs)
            yield Fault((name,), "nothing", wanted)


def _priced(job: Job, alone: Job, planned: Plan, prices: PriceList) -> PricedOrder:
    ways = _ways(alone, planned, prices)
    as_bought = job_with(alone, ways)
    order = (planned if as_bought == alone else plan(as_bought)).order
    across = job.metalwork.buying == "across_runs"
    lines = each_made(
        lambda name: _line(name, order, prices, ways.get(name), across=across),
        [name for name in LINES if getattr(order, name).packs],
    )
    return _summed(lines, ways, prices, across=across)


def _line(
    name: str, order: Order, prices: PriceList, ways: CutWays | None, *, across: bool
) -> PricedLine:
    line = getattr(order, name)
    if ways is None:
        return line_of_packs(name, line, prices)
    if across and ways.across:
        return line_cut_together(name, line, prices, ways=ways)
    return line_of_one_size(name, line, prices, ways=ways)


def _summed(
    lines: Sequence[PricedLine], ways: Mapping[str, CutWays], prices: PriceList, *, across: bool
) -> PricedOrder:
    digits = prices.digits()
    taxes = taxes_on(((line.tax_rate, line.cost) for line in lines), prices)
    fewest = taxes_on(((line.tax_rate, line.fewest_packs_cost) for line in lines), prices)
    cost, tax, total = sums(taxes, prices)
    fewest_total = sums(fewest, prices).total

    def money(units: int) -> Decimal:
        return from_minor_units(units, digits)

    return PricedOrder(
        currency=prices.currency,
        minor_digits=digits,
        tax_included=prices.tax_included,
        lines=tuple(lines),
        metal_cuts=tuple(one.cuts for way in ways.values() for one in way.across if across),
        cost=money(cost),
        taxes=taxes,
        before_tax=money(total - tax),
        tax=money(tax),
        total=money(total),
        fewest_packs_total=money(fewest_total),
        saving=money(fewest_total - total),
        notes=tuple(_notes(ways, prices, across=across)),
    )


def _notes(ways: Mapping[str, CutWays], prices: PriceList, *, across: bool) -> Iterator[Sentence]:
    """Tell what is not in the sums, and what cutting metal across runs saves or would save."""
    yield from _NOTES
    saved = sum(way.saved() for way in ways.values())
    if saved and across:
        yield _CUT_TOGETHER
    elif saved:
        less = f"{from_minor_units(saved, prices.digits()):f} {prices.currency}"
        items = " and ".join(line.replace("_", " ") for line, way in ways.items() if way.across)
        yield say(
            f"Each run of metal is cut from lengths of its own. Bought across runs, {items} would"
            f" cost {less} less, and have more laps and another cutting list: the job's"
            " metalwork.buying across_runs."
        )


_NOTES = (
    say(
        "Prices, rates of tax and what is on hand are those of the price list; delivery, deposits"
        " and discounts are not in it."
    ),
    say(
        "Tax is reckoned on the sum of all lines of one rate, and rounded half up; the seller's"
        " own reckoning and the tax law of the place go first."
    ),
)

_CUT_TOGETHER = say(
    "Metal that is cut for all its runs together is cut by the lists here, not by those of the"
    " plan; each lap more than the plan has takes its nail, and its sealant where laps are sealed."
)
