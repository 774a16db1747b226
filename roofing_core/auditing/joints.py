"""Joints: how far each joint of a course stands from the joints of what lies right under it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence

from roofing_core.auditing.gauges import Gauge
from roofing_core.auditing.rows import Joint, PlaneLaid, Row, stacked_rows
from roofing_core.auditing.shapes import DUST, Span


def ask_joints(laid: PlaneLaid, gauges: Mapping[str, Gauge]) -> None:
    """Ask of every joint that shows how far the nearest joint below it stands.

    Water that runs into a joint spreads on the course below. Of that course the part also counts
    that does not show; joints that are not on the deck count on neither.

    Args:
        laid: A plane with its rows.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> ask_joints(PlaneLaid(plane=None, deck=(), starters=(), courses=()), {})
    """
    on_deck = _OnDeck(laid)
    gauge = gauges["shingles.joints"] if laid.courses else None
    for below, row, next_butt in stacked_rows(laid):
        under = [joint for joint in on_deck.of(below) if joint.lower < next_butt - DUST]
        places = [joint.u for joint in under]
        if not (places and gauge):
            continue
        over = [joint for joint in on_deck.of(row) if joint.lower < next_butt - DUST]
        apart = [_nearest(places, joint.u) for joint in over]
        if min(apart, default=0.0) >= gauge.limit:
            near = min(apart)
            joint = over[apart.index(near)]
            gauge.see_least(near, len(over), row.where(joint.u, joint.lower, piece=joint.piece))
            continue
        for joint, near in zip(over, apart, strict=True):
            gauge.see(near, row.where(joint.u, joint.lower, piece=joint.piece))


def _nearest(places: Sequence[float], u: float) -> float:
    k = bisect_left(places, u)
    return min([abs(at - u) for at in places[max(0, k - 1) : k + 1]])


class _OnDeck:
    """The joints of rows where they stand on the deck. Columns of the deck are cut once."""

    def __init__(self, laid: PlaneLaid) -> None:
        self.laid = laid
        self.columns: dict[float, list[Span]] = {}
        self.found: dict[int, list[Joint]] = {}

    def of(self, row: Row) -> list[Joint]:
        """Give the joints of a row that stand on the deck, or their parts that do."""
        if id(row) not in self.found:
            self.found[id(row)] = [part for joint in row.joints for part in self._parts(joint)]
        return self.found[id(row)]

    def _parts(self, joint: Joint) -> Iterator[Joint]:
        column = self.columns.get(joint.u)
        if column is None:
            column = self.columns[joint.u] = self.laid.column(joint.u)
        for lower, upper in column:
            if lower <= joint.lower and upper >= joint.upper:
                yield joint
            elif min(upper, joint.upper) - max(lower, joint.lower) > DUST:
                ends = max(lower, joint.lower), min(upper, joint.upper)
                yield Joint(joint.u, *ends, joint.piece)
