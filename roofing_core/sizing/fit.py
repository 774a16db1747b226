"""A better size: about the size wished for, the sizes of roof that waste least."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from itertools import product
from typing import Any

import numpy as np

from roofing_core.job.choices import Job
from roofing_core.job.order import Order
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, Refused, fault, not_one_of, refuse_if_any
from roofing_core.measures.units import SQUARE, Inches
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.planes import SingleSlope, measure
from roofing_core.sizing.amounts import Amounts, Floats, Sizes, Whole
from roofing_core.sizing.counting import LINES, Counter, counter_of
from roofing_core.sizing.fit_kinds import By, Fit, FitSize, GivenSize
from roofing_core.sizing.margin_kinds import line_change
from roofing_core.sizing.ranges import MOST_AT_ONCE, MOST_PLANNED, Ranges, sizes_within
from roofing_core.sizing.telling import fit_says, size_says
from roofing_core.sizing.walks import bought

#: So many sizes are kept unless asked otherwise, and at most.
KEPT, MOST_KEPT = 5, 50

_BY = ("shingles", "materials")


@dataclass(frozen=True, slots=True, kw_only=True)
class FitJob(Job):
    """A job whose size is only wished for.

    Attributes:
        ranges: Which sizes about that of its roof will do.
        by: What sizes are ranked by: the share wasted of the shingles, or of all materials by
            weight.
        keep: How many sizes are told, at most.
    """

    ranges: Ranges = field(default=Ranges())
    by: By = "shingles"
    keep: int = KEPT


def fit(
    job: Job, *, ranges: Ranges | None = None, by: By | None = None, keep: int | None = None
) -> Fit:
    """Find the sizes about the one wished for that waste least.

    Every size in whole steps from the one wished for is counted, within the ranges given. What a
    size wastes is ``1 - stays / bought``, of the shingles, or by weight of all materials. Sizes
    whose orders are the same in every line are told as one: the one that wastes least, which is the
    largest that the order covers. Of equals the nearest to the size wished for comes first.

    Args:
        job: The roof in the size wished for, its materials and how the work is done.
        ranges: Which sizes about it will do; those of a `FitJob` unless given, and so are the rest.
        by: What sizes are ranked by; shingles unless given.
        keep: How many sizes are told, at most; 5 unless given.

    Returns:
        The sizes that waste less than the one wished for, ranked, with what each saves.

    Raises:
        Refused: The job cannot be planned in the size wished for, a range contradicts itself or
            leaves out the size wished for, or the sizes are more than 20,000 of a single slope
            without openings, which are counted at once, and 200 of other roofs, which are planned
            one by one; names each.

    Source:
        Counting, by the plan's own order.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.ranges import Between
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
    >>> about = Ranges(eave_length=Between(least=156, most=180), step=0.5)
    >>> found = fit(Job(roof=shed), ranges=about)
    >>> found.sizes_looked_at, found.better[0].sizes[0].length
    (49, 179.0)
    """
    asked = (
        job
        if isinstance(job, FitJob)
        else FitJob(**{one.name: getattr(job, one.name) for one in fields(Job)})
    )
    named: dict[str, Any] = {"ranges": ranges, "by": by, "keep": keep}
    given = {name: one for name, one in named.items() if one is not None}
    return _fitted(replace(asked, **given))


def _fitted(job: FitJob) -> Fit:
    counter = counter_of(job)
    refuse_if_any(_faults(job))
    most = MOST_AT_ONCE if counter.at_once else MOST_PLANNED
    try:
        values = sizes_within(job.roof, job.ranges, most=most)
        amounts = _counted(job, counter, values)
    except Refused as refusal:
        raise refusal.below("ranges") from None
    return _Fitted(job, counter, values, amounts).fit()


def _faults(job: FitJob) -> Iterator[Fault | None]:
    yield not_one_of("by", job.by, _BY)
    if not 1 <= job.keep <= MOST_KEPT:
        yield fault("keep", str(job.keep), f"from 1 to {MOST_KEPT}")


def _counted(job: Job, counter: Counter, values: Mapping[str, Sequence[Inches]]) -> Amounts:
    if counter.at_once and isinstance(job.roof, SingleSlope):
        return counter.of_sizes(_lattice(job.roof, values))
    names = tuple(values)
    sizes = product(*values.values())
    roofs = [_sized(job.roof, dict(zip(names, size, strict=True))) for size in sizes]
    return counter.amounts(roofs)


def _sized(roof: AnyRoof, sizes: Mapping[str, Inches]) -> AnyRoof:
    changed: AnyRoof = replace(roof, **sizes)  # type: ignore[arg-type]
    return changed


def _lattice(roof: SingleSlope, values: Mapping[str, Sequence[Inches]]) -> Sizes:
    """Give every width at every height: each is measured once."""
    shape = tuple(len(each) for each in values.values())
    places = np.indices(shape).reshape(len(shape), -1)
    at = dict(zip(values, places, strict=True))
    wide = [measure(replace(roof, eave_length=one)) for one in values.get("eave_length", [])]
    name = next((one for one in values if one != "eave_length"), "")
    high = [measure(_single(roof, name, one)) for one in values.get(name, [])]
    base = measure(roof)
    across = at["eave_length"] if wide else np.zeros(places.shape[1], dtype=np.int64)
    up = at[name] if high else np.zeros(places.shape[1], dtype=np.int64)
    tall = high or [base]
    return Sizes(
        eave_length=np.array([one.eave_length for one in wide or [base]])[across],
        slope_length=np.array([one.slope_length for one in tall])[up],
        pitch=np.array([one.pitch for one in tall])[up],
        eave_overhang=np.array([one.eave_overhang for one in tall])[up],
    )


def _single(roof: SingleSlope, name: str, size: float) -> SingleSlope:
    return replace(roof, **{name: size})  # type: ignore[arg-type]


class _Fitted:
    """Many sizes, ranked."""

    def __init__(
        self,
        job: FitJob,
        counter: Counter,
        values: Mapping[str, Sequence[Inches]],
        amounts: Amounts,
    ) -> None:
        self.job, self.counter, self.amounts = job, counter, amounts
        self.names = tuple(values)
        self.places = np.array(list(product(*values.values())))
        self.wished = np.array([getattr(job.roof, name) for name in self.names])
        away = np.abs(self.places - self.wished).sum(axis=1)
        self.at_wished = int(np.argmin(away))
        self.away = away
        self.shingles = _wasted(amounts, ("shingles",))
        self.materials = _wasted(amounts, LINES)
        self.ranked = self.shingles if job.by == "shingles" else self.materials

    def fit(self) -> Fit:
        better = self._better()
        kept = [self._size(place) for place in self._told(better)]
        return Fit(
            says=fit_says(kept, by=self.job.by, now=float(self.ranked[self.at_wished])),
            by=self.job.by,
            wished=self._size(self.at_wished),
            better=tuple(kept),
            better_sizes=len(better),
            sizes_looked_at=len(self.places),
            not_plannable=int(self.amounts.refused.sum()),
            step=self.job.ranges.step,
            at_once=self.counter.at_once,
        )

    def _better(self) -> Whole:
        """Give the sizes that waste less than the one wished for, the least first."""
        least = self.ranked[self.at_wished] - DUST
        better = np.flatnonzero(~self.amounts.refused & (self.ranked < least))
        order = np.lexsort((self.away[better], np.round(self.ranked[better], 12)))
        return better[order]

    def _told(self, better: Whole) -> list[int]:
        """Give the first of each order, as many as are kept."""
        lines = [self.amounts.lines[name] for name in LINES]
        orders = np.stack([line.packs for line in lines] + [line.holds for line in lines], axis=1)
        seen: dict[bytes, int] = {}
        for place in better.tolist():
            seen.setdefault(orders[place].tobytes(), place)
            if len(seen) >= self.job.keep:
                break
        return list(seen.values())

    def _size(self, place: int) -> FitSize:
        packs = bought(self.amounts, place)
        now = bought(self.amounts, self.at_wished)
        order: Order = self.counter.order
        changes = tuple(
            line_change(name, getattr(order, name), packs)
            for name in LINES
            if packs.differs(now, name)
        )
        sizes = tuple(
            GivenSize(measurement=name, length=float(size))
            for name, size in zip(self.names, self.places[place], strict=True)
        )
        saves = float(self.ranked[self.at_wished] - self.ranked[place])
        return FitSize(
            sizes=sizes,
            area=float(self.amounts.area[place]),
            squares=float(self.amounts.area[place]) / SQUARE,
            bundles=packs.packs["shingles"],
            shingles_wasted=100 * float(self.shingles[place]),
            materials_wasted=100 * float(self.materials[place]),
            saves=100 * saves,
            changes=changes,
            says=size_says(
                sizes,
                by=self.job.by,
                wasted=float(self.ranked[place]),
                saves=saves,
                changes=changes,
            ),
        )


def _wasted(amounts: Amounts, names: Sequence[str]) -> Floats:
    """Give the share of what is bought that does not stay on the roof."""
    carried = np.sum([amounts.lines[name].carried for name in names], axis=0)
    stays = np.sum([amounts.lines[name].stays for name in names], axis=0)
    bought_some = carried > 0
    share: Floats = np.where(bought_some, 1 - stays / np.where(bought_some, carried, 1.0), 0.0)
    return share
