"""A better size: about the size wished for, the sizes of roof that waste least."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Any

import numpy as np

from roofing_core.job.choices import Job
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import not_one_of, refuse_if_any
from roofing_core.measures.units import SQUARE
from roofing_core.sizing.amounts import Whole
from roofing_core.sizing.counting import LINES
from roofing_core.sizing.fit_kinds import By, Fit, FitSize
from roofing_core.sizing.looking import Looked, RangedJob, look, wasted
from roofing_core.sizing.ranges import Ranges
from roofing_core.sizing.telling import fit_says, size_says

_BY = ("shingles", "materials")


@dataclass(frozen=True, slots=True, kw_only=True)
class FitJob(RangedJob):
    """A job whose size is only wished for, and what other sizes are ranked by.

    Attributes:
        by: What sizes are ranked by: the share wasted of the shingles, or of all materials by
            weight.
    """

    by: By = "shingles"


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
    refuse_if_any([not_one_of("by", job.by, _BY)])
    return _Fitted(job, look(job)).fit()


class _Fitted:
    """Many sizes, ranked."""

    def __init__(self, job: FitJob, looked: Looked) -> None:
        self.job, self.looked, self.amounts = job, looked, looked.amounts
        self.shingles = wasted(looked.amounts, ("shingles",))
        self.materials = wasted(looked.amounts, LINES)
        self.ranked = self.shingles if job.by == "shingles" else self.materials

    def fit(self) -> Fit:
        better = self._better()
        kept = [self._size(place) for place in self._told(better)]
        return Fit(
            says=fit_says(kept, by=self.job.by, now=float(self.ranked[self.looked.at_wished])),
            by=self.job.by,
            wished=self._size(self.looked.at_wished),
            better=tuple(kept),
            better_sizes=len(better),
            sizes_looked_at=len(self.looked.places),
            not_plannable=int(self.amounts.refused.sum()),
            step=self.job.ranges.step,
            at_once=self.looked.counter.at_once,
        )

    def _better(self) -> Whole:
        """Give the sizes that waste less than the one wished for, the least first."""
        least = self.ranked[self.looked.at_wished] - DUST
        better = np.flatnonzero(~self.amounts.refused & (self.ranked < least))
        order = np.lexsort((self.looked.away[better], np.round(self.ranked[better], 12)))
        return better[order]

    def _told(self, better: Whole) -> list[int]:
        """Give the first of each order, as many as are kept."""
        seen: dict[object, int] = {}
        for place in better.tolist():
            seen.setdefault(self.looked.order_at(place), place)
            if len(seen) >= self.job.keep:
                break
        return list(seen.values())

    def _size(self, place: int) -> FitSize:
        sizes, changes = self.looked.sizes_at(place), self.looked.changes_at(place)
        saves = float(self.ranked[self.looked.at_wished] - self.ranked[place])
        return FitSize(
            sizes=sizes,
            area=float(self.amounts.area[place]),
            squares=float(self.amounts.area[place]) / SQUARE,
            bundles=int(self.amounts.lines["shingles"].packs[place]),
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
