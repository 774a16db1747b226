"""Looking at every size in the ranges about the one wished for: orders, and how they change."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import product
from typing import Any

import numpy as np

from roofing_core.job.choices import Job
from roofing_core.measures.faults import Fault, Refused, fault, refuse_if_any
from roofing_core.measures.units import Inches
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.planes import SingleSlope, measure
from roofing_core.sizing.amounts import Amounts, Floats, Sizes
from roofing_core.sizing.counting import LINES, Counter, counter_of
from roofing_core.sizing.fit_kinds import GivenSize
from roofing_core.sizing.margin_kinds import LineChange, line_change
from roofing_core.sizing.ranges import MOST_AT_ONCE, MOST_PLANNED, Ranges, sizes_within
from roofing_core.sizing.walks import bought

#: So many sizes are kept unless asked otherwise, and at most.
KEPT, MOST_KEPT = 5, 50


@dataclass(frozen=True, slots=True, kw_only=True)
class RangedJob(Job):
    """A job whose size is only wished for.

    Attributes:
        ranges: Which sizes about that of its roof will do.
        keep: How many sizes are told, at most.
    """

    ranges: Ranges = field(default=Ranges())
    keep: int = KEPT


class Looked:
    """Every size in the ranges of a job, with its order; ``places`` are the sizes, one a row."""

    __slots__ = ("amounts", "at_wished", "away", "counter", "names", "places")

    def __init__(
        self,
        counter: Counter,
        roof: AnyRoof,
        values: Mapping[str, Sequence[Inches]],
        amounts: Amounts,
    ) -> None:
        self.counter, self.amounts, self.names = counter, amounts, tuple(values)
        self.places: Floats = np.array(list(product(*values.values())), dtype=np.float64)
        wished = np.array([getattr(roof, name) for name in self.names])
        self.away: Floats = np.abs(self.places - wished).sum(axis=1)
        self.at_wished = int(np.argmin(self.away))

    def sizes_at(self, place: int) -> tuple[GivenSize, ...]:
        """Give the measurements of one size."""
        return tuple(
            GivenSize(measurement=name, length=float(size))
            for name, size in zip(self.names, self.places[place], strict=True)
        )

    def roof_at(self, place: int) -> AnyRoof:
        """Give the roof in one size."""
        sizes = dict(zip(self.names, self.places[place].tolist(), strict=True))
        return _sized(self.counter.job.roof, sizes)

    def order_at(self, place: int) -> tuple[tuple[int, float], ...]:
        """Give packs of each line, and what they hold."""
        packs = bought(self.amounts, place)
        return tuple((packs.packs[name], packs.holds[name]) for name in LINES)

    def changes_at(self, place: int) -> tuple[LineChange, ...]:
        """Give the lines that come to something else than at the size wished for."""
        packs, now = bought(self.amounts, place), bought(self.amounts, self.at_wished)
        return tuple(
            line_change(name, getattr(self.counter.order, name), packs)
            for name in LINES
            if packs.differs(now, name)
        )


def look(job: RangedJob) -> Looked:
    """Count the orders of every size in the ranges of a job.

    Args:
        job: The job, its roof in the size wished for.

    Returns:
        Every size with its order.

    Raises:
        Refused: The job cannot be planned in the size wished for, a range contradicts itself or
            leaves that out, or the sizes are more than the limit; names each.

    Source:
        Counting, by the plan's own order.

    >>> from roofing_core.sizing.ranges import Between
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> about = Ranges(eave_length=Between(least=166, most=170))
    >>> look(RangedJob(roof=shed, ranges=about)).places.tolist()
    [[166.0], [167.0], [168.0], [169.0], [170.0]]
    """
    counter = counter_of(job)
    refuse_if_any(_faults(job))
    most = MOST_AT_ONCE if counter.at_once else MOST_PLANNED
    try:
        values = sizes_within(job.roof, job.ranges, most=most)
        return Looked(counter, job.roof, values, _counted(job, counter, values))
    except Refused as refusal:
        raise refusal.below("ranges") from None


def _faults(job: RangedJob) -> Iterator[Fault | None]:
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
    named: dict[str, Any] = dict(sizes)  # whichever of its fields are sizes
    changed: AnyRoof = replace(roof, **named)
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
    named: dict[str, Any] = {name: size}
    return replace(roof, **named)


def wasted(amounts: Amounts, names: Sequence[str]) -> Floats:
    """Give the share of what is bought that does not stay on the roof, by weight.

    Args:
        amounts: The orders of many sizes.
        names: The lines that are looked at.

    Returns:
        One share per size.

    Raises:
        Nothing.

    Source:
        ``1 - stays / bought``.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> round(float(wasted(counter_of(Job(roof=shed)).amounts([shed]), ["shingles"])[0]), 3)
    0.191
    """
    carried = np.sum([amounts.lines[name].carried for name in names], axis=0)
    stays = np.sum([amounts.lines[name].stays for name in names], axis=0)
    bought_some = carried > 0
    share: Floats = np.where(bought_some, 1 - stays / np.where(bought_some, carried, 1.0), 0.0)
    return share
