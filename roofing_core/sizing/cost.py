"""A better size by cost: about the size wished for, the sizes that cost least for each square."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

import numpy as np

from roofing_core.buying.money import from_minor_units, whole_units
from roofing_core.buying.price_list import PriceList
from roofing_core.buying.priced import PricedOrder, priced_order
from roofing_core.measures.faults import Refused
from roofing_core.measures.sentences import Sentence, say
from roofing_core.measures.units import SQUARE
from roofing_core.sizing.cost_kinds import CostFit, CostSize
from roofing_core.sizing.counting import LINES
from roofing_core.sizing.looking import Looked, RangedJob, look, wasted
from roofing_core.sizing.telling import changes_say, size_named

#: More different orders than these are not priced: those of the sizes that waste least are.
MOST_PRICED = 40


@dataclass(frozen=True, slots=True)
class _Priced:
    """One size with its priced order."""

    place: int
    order: PricedOrder
    units: int
    per_square: Fraction

    def rounded(self) -> int:
        """Give minor units for each square, half up."""
        return int(self.per_square + Fraction(1, 2))


def fit_by_cost(job: RangedJob, prices: PriceList) -> CostFit:
    """Find the sizes about the one wished for that cost least for each square, by a price list.

    Every size in whole steps from the one wished for is counted, within the ranges given. Of all
    sizes with one and the same order the largest roof is priced, as `priced_order` does, with tax:
    ``total / squares``. Where the list has the job's own packs, none of the others can cost less;
    where it has smaller ones, one may. Of more than 40 different orders those are priced whose
    sizes waste least of their materials.

    Args:
        job: The roof in the size wished for, its materials, how the work is done, and the ranges.
        prices: What can be bought at what price, and what is on hand.

    Returns:
        The sizes that cost less for each square than the one wished for, ranked, with what each
        saves.

    Raises:
        Refused: The job cannot be planned in the size wished for, a range contradicts itself or
            leaves that out, the sizes are more than the limit, or a line that the job needs has no
            price; names each, below ``job`` or ``prices``.

    Source:
        Counting and arithmetic; tax as `priced_order`.

    >>> from decimal import Decimal
    >>> from roofing_core.buying.price_list import PriceList
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = RangedJob(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12))
    >>> try:
    ...     fit_by_cost(shed, PriceList(currency="USD"))
    ... except Refused as refusal:
    ...     print(refusal.faults[0].at)
    ('job', 'ranges')
    """
    try:
        looked = look(job)
    except Refused as refusal:
        raise refusal.below("job") from None
    return _Costing(job, prices, looked).found()


class _Costing:
    """The sizes of a job, priced."""

    def __init__(self, job: RangedJob, prices: PriceList, looked: Looked) -> None:
        self.job, self.prices, self.looked = job, prices, looked
        self.wished = self._priced(looked.at_wished)

    def found(self) -> CostFit:
        orders = self._largest()
        priced = [one for one in map(self._priced_if_any, orders[:MOST_PRICED]) if one]
        better = [one for one in priced if one.per_square < self.wished.per_square]
        better.sort(key=lambda one: (one.per_square, self.looked.away[one.place]))
        kept = tuple(self._size(one) for one in better[: self.job.keep])
        return CostFit(
            says=self._says(kept),
            currency=self.prices.currency,
            minor_digits=self.wished.order.minor_digits,
            wished=self._size(self.wished),
            better=kept,
            orders=len(orders),
            orders_priced=len(priced),
            sizes_looked_at=len(self.looked.places),
            not_plannable=int(self.looked.amounts.refused.sum()),
            step=self.job.ranges.step,
            at_once=self.looked.counter.at_once,
        )

    def _largest(self) -> list[int]:
        """Give the largest size of each different order, those first that waste least."""
        amounts = self.looked.amounts
        seen: dict[object, int] = {}
        for place in np.argsort(-amounts.area, kind="stable").tolist():
            if not amounts.refused[place]:
                seen.setdefault(self.looked.order_at(place), place)
        waste = wasted(amounts, LINES)
        return sorted(seen.values(), key=lambda place: float(waste[place]))

    def _priced(self, place: int) -> _Priced:
        order = priced_order(replace(self.job, roof=self.looked.roof_at(place)), self.prices)
        units = whole_units(order.total, order.minor_digits)
        area = Fraction(float(self.looked.amounts.area[place]))
        return _Priced(place, order, units, units * Fraction(SQUARE) / area)

    def _priced_if_any(self, place: int) -> _Priced | None:
        """Price a size; none where a size on offer cannot be laid on it."""
        try:
            return self._priced(place)
        except Refused:
            return None

    def _size(self, one: _Priced) -> CostSize:
        digits, place = one.order.minor_digits, one.place
        area = float(self.looked.amounts.area[place])
        sizes, changes = self.looked.sizes_at(place), self.looked.changes_at(place)
        per_square = from_minor_units(one.rounded(), digits)
        saved = from_minor_units(self.wished.rounded() - one.rounded(), digits)
        costs = f": {per_square:f} {self.prices.currency} a square"
        less = f", {saved:f} less" if saved else ""
        takes = (". It takes ", changes_say(changes)) if changes else ()
        return CostSize(
            sizes=sizes,
            area=area,
            squares=area / SQUARE,
            total=one.order.total,
            per_square=per_square,
            saves_per_square=saved,
            changes=changes,
            says=say(size_named(sizes), costs, less, *takes, "."),
        )

    def _says(self, kept: Sequence[CostSize]) -> Sentence:
        if not kept:
            return say("No size in these ranges was found to cost less a square.")
        first, now = kept[0], self._size(self.wished)
        return say(
            "The least: ",
            size_named(first.sizes),
            f": {first.per_square:f} {self.prices.currency} a square instead of"
            f" {now.per_square:f}.",
        )
