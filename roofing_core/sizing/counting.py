"""Counting the orders of many roofs that differ in size: all at once where that can be done.

Single slopes without openings are counted in columns; every other roof, and choices that columns do
not cover, are planned one after another. Both give the same, and which one it was.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace

import numpy as np

from roofing_core.job.choices import Job
from roofing_core.job.layout import lay_out
from roofing_core.job.order import Order, order
from roofing_core.job.wiring import site_of
from roofing_core.measures.faults import Refused
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.planes import Roof, SingleSlope, measure
from roofing_core.sizing.amounts import Amounts, LineAmounts, Sizes
from roofing_core.sizing.single_slopes import single_slope_amounts

LINES = tuple(field.name for field in fields(Order))


class Counter:
    """What counts the orders of roofs like one that was planned: ``job``, with its ``order``.

    ``at_once`` tells whether many sizes are counted all at once, or planned one after another.
    """

    __slots__ = ("at_once", "job", "order")

    def __init__(self, job: Job, order: Order) -> None:
        self.job, self.order, self.at_once = job, order, _in_columns(job)

    def amounts(self, roofs: Sequence[AnyRoof]) -> Amounts:
        """Count the orders of roofs that stand in for the one that was asked for."""
        if not self.at_once:
            return planned_amounts(self.job, roofs)
        measured = [_measured(roof) for roof in roofs]
        # For what cannot be measured the roof that was asked for stands in, and is marked.
        asked = site_of(self.job.roof).roof
        found = self.of_sizes(sizes_of([one or asked for one in measured]))
        missing = np.array([one is None for one in measured], dtype=np.bool_)
        return replace(found, refused=found.refused | missing)

    def of_sizes(self, sizes: Sizes) -> Amounts:
        """Count the orders of single slopes by their sizes; for those that are counted at once."""
        site = site_of(self.job.roof, self.job.choices())
        return single_slope_amounts(site, sizes, order=self.order)


def counter_of(job: Job) -> Counter:
    """Plan a job, and give what counts the orders of others like it.

    Args:
        job: The roof, its materials, and how the work is done.

    Returns:
        What counts.

    Raises:
        Refused: The job cannot be planned; as `plan`.

    Source:
        None needed.

    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> counter_of(Job(roof=roof)).amounts([roof]).lines["shingles"].packs
    array([5])
    """
    return Counter(job, order(lay_out(job)))


def _in_columns(job: Job) -> bool:
    # Offcuts and lengths of metal are shared by searches, which no column holds.
    simply = job.cutting.reuse == "none" and job.metalwork.buying == "run_by_run"
    return isinstance(job.roof, SingleSlope) and not job.openings and simply


def _measured(roof: AnyRoof) -> Roof | None:
    try:
        return measure(roof) if isinstance(roof, SingleSlope) else None
    except Refused:
        return None


def sizes_of(roofs: Sequence[Roof]) -> Sizes:
    """Give the sizes of measured single slopes as columns.

    Args:
        roofs: The roofs, measured.

    Returns:
        One entry per roof.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> sizes_of([measure(SingleSlope(eave_length=168, run=60, pitch=0.75))]).slope_length
    array([75.])
    """
    return Sizes(
        eave_length=np.array([roof.eave_length for roof in roofs], dtype=np.float64),
        slope_length=np.array([roof.slope_length for roof in roofs], dtype=np.float64),
        pitch=np.array([roof.pitch for roof in roofs], dtype=np.float64),
        eave_overhang=np.array([roof.eave_overhang for roof in roofs], dtype=np.float64),
    )


def planned_amounts(job: Job, roofs: Sequence[AnyRoof]) -> Amounts:
    """Plan roofs one after another, and put their orders into columns.

    Args:
        job: The job that they stand in; its roof is not looked at.
        roofs: The roofs.

    Returns:
        One entry per roof; those that cannot be planned are marked.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `plan`.

    >>> from roofing_core.roof.forms import Hip
    >>> hip = Hip(length=168, width=112, pitch=0.5)
    >>> planned_amounts(Job(roof=hip), [hip]).lines["caps"].needed
    array([24.])
    """
    made = [_ordered(job, roof) for roof in roofs]
    some = next((one for one in made if one), None)
    orders = [(one or some) for one in made]
    return Amounts(
        lines={name: _column([one[1] for one in orders if one], name) for name in LINES},
        area=np.array([one[0] for one in orders if one]),
        refused=np.array([one is None for one in made], dtype=np.bool_),
    )


def _ordered(job: Job, roof: AnyRoof) -> tuple[float, Order] | None:
    try:
        layout = lay_out(replace(job, roof=roof))
    except Refused:
        return None
    return layout.roof.area, order(layout)


def _column(orders: Sequence[Order], name: str) -> LineAmounts:
    lines = [getattr(one, name) for one in orders]
    return LineAmounts(
        packs=np.array([line.packs for line in lines], dtype=np.int64),
        holds=np.array([line.pack_holds.value for line in lines], dtype=np.float64),
        needed=np.array([line.needed.value for line in lines], dtype=np.float64),
        carried=np.array([line.packs * line.pack_weight for line in lines], dtype=np.float64),
        stays=np.array([line.used_weight for line in lines], dtype=np.float64),
    )
