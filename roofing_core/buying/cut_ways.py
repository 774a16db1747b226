"""Cut ways: in what sizes the rolls and the metal of a job can be bought, and what each costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from roofing_core.buying.price_list import PriceList
from roofing_core.buying.sharing import Shared, shared_ways
from roofing_core.buying.sizes import METAL, ROLLS, SizePlanned, resized, sizes_planned
from roofing_core.job.choices import Job
from roofing_core.job.plan import Plan
from roofing_core.measures.faults import each_made
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class CutWays:
    """The ways to buy a line of rolls or of metal.

    Attributes:
        one_size: What it takes of the size that costs least; of equals the one that leaves least
            over, and of these the one with fewest to buy.
        fewest: What it takes of the size with fewest to buy.
        across: The way across runs that costs least, where that is less than in any one size; else
            none.
    """

    one_size: SizePlanned
    fewest: SizePlanned
    across: tuple[Shared, ...]

    def saved(self) -> int:
        """Give how much less the way across runs costs, in minor units."""
        return sum(self.one_size.cost - way.cost for way in self.across)

    def stock(self, *, across_runs: bool) -> tuple[Inches, ...]:
        """Give the sizes that a plan is to be made with."""
        if across_runs and self.across:
            cuts = self.across[0].cuts.cuts
            return tuple(sorted({cut.stock_length for cut in cuts}))
        return (self.one_size.size,)


def cut_ways(job: Job, planned: Plan, prices: PriceList) -> Mapping[str, CutWays]:
    """Find the ways to buy every roll and metal that a job needs.

    Args:
        job: The job, each run of metal cut by itself.
        planned: Its plan.
        prices: What is on offer and on hand, with every line that the job needs.

    Returns:
        The ways by the names of the lines.

    Raises:
        Refused: A size on offer cannot be laid, or nothing is on offer and what is on hand is not
            enough; names each place on the price list.

    Source:
        Arithmetic.

    >>> from decimal import Decimal
    >>> from roofing_core.buying.offered import LengthPack, LengthsOffered
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> ten = LengthsOffered(packs=(LengthPack(holds=120, price=Decimal("9.80")),))
    >>> rolls = LengthsOffered(packs=(LengthPack(holds=1728, price=Decimal("31.00")),))
    >>> listed = PriceList(currency="USD", eave_metal=ten, rake_metal=ten, ridge_metal=ten,
    ...                    underlayment=rolls)
    >>> {line: ways.one_size.count for line, ways in cut_ways(shed, plan(shed), listed).items()}
    {'underlayment': 1, 'eave_metal': 2, 'rake_metal': 2, 'ridge_metal': 2}
    """
    needed = [line for line in (*ROLLS, *METAL) if getattr(planned.order, line).packs]
    found = each_made(lambda line: _ways(line, job, planned, prices), needed)
    return dict(zip(needed, found, strict=True))


def _ways(line: str, job: Job, planned: Plan, prices: PriceList) -> CutWays:
    sizes = sizes_planned(line, planned, job=job, prices=prices)
    one_size = min(sizes, key=lambda one: (one.cost, one.left_over, one.bought))
    return CutWays(
        one_size=one_size,
        fewest=min(sizes, key=lambda one: (one.bought, one.left_over, one.cost)),
        across=_across(line, planned, prices, one_size.cost) if line in METAL else (),
    )


def _across(line: str, planned: Plan, prices: PriceList, most: int) -> tuple[Shared, ...]:
    ways = [
        way
        for way in shared_ways(line, planned.metal, how=planned.choices.metalwork, prices=prices)
        if way.cost < most
    ]
    return tuple(sorted(ways, key=lambda way: (way.cost, way.left_over, sum(way.packs)))[:1])


def job_with(job: Job, ways: Mapping[str, CutWays]) -> Job:
    """Give a job with its rolls and its metal in the sizes chosen.

    Args:
        job: The job.
        ways: The ways to buy each, by the names of the lines.

    Returns:
        The job, its metal in the stock lengths of the way across runs where it is bought so.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> size = SizePlanned(size=96, count=2, needed=178, on_hand=0, pack=0, cost=1590)
    >>> ways = {"eave_metal": CutWays(one_size=size, fewest=size, across=())}
    >>> job_with(shed, ways).eave_metal.stock_lengths
    (96,)
    """
    across_runs = job.metalwork.buying == "across_runs"
    for line, way in ways.items():
        job = resized(job, line, *way.stock(across_runs=across_runs))
    return job
