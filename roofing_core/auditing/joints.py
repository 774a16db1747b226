"""Joints: how far each joint of a course stands from the joints of what lies right under it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from roofing_core.auditing.gauges import Gauge
from roofing_core.auditing.rows import Joint, PlaneLaid, Row, stacked_rows
from roofing_core.auditing.shapes import DUST, TOUCHING, Span, nearest

#: A joint that shows by no more, above an opening or in a valley, is left unsaid by a plan.
_SHORT = 1.0


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
    if not laid.courses:
        return
    for below, row, next_butt in stacked_rows(laid):
        under, over = (
            [joint for joint in on_deck.of(each) if joint.lower < next_butt - DUST]
            for each in (below, row)
        )
        shown = [joint for joint in over if joint.lower < next_butt - _SHORT]
        _ask_stated(row, shown, on_deck, gauges["plan.as_stated"])
        if below.part == "starter" and below.stated:
            _ask_stated(below, under, on_deck, gauges["plan.as_stated"])
        if under:
            _ask_apart(row, over, [joint.u for joint in under], gauges["shingles.joints"])


def _ask_apart(row: Row, over: Sequence[Joint], places: Sequence[float], gauge: Gauge) -> None:
    """Ask how far the joints of a row stand from those below it, all at a glance if well."""
    apart = [nearest(places, joint.u) for joint in over]
    near = min(apart, default=0.0)
    if over and near >= gauge.limit:
        joint = over[apart.index(near)]
        gauge.see_least(near, len(over), row.where(joint.u, joint.lower, piece=joint.piece))
        return
    for joint, to in zip(over, apart, strict=True):
        gauge.see(to, row.where(joint.u, joint.lower, piece=joint.piece))


def _ask_stated(row: Row, joints: Sequence[Joint], on_deck: _OnDeck, gauge: Gauge) -> None:
    """Ask whether every joint of a row on the deck is stated: a crew lays by these."""
    stated = {*row.stated}
    left = [joint for joint in joints if joint.u not in stated and on_deck.is_within(joint)]
    gauge.see_well(len(joints) - len(left))
    places = sorted(stated) if left else []
    for joint in left:
        off = nearest(places, joint.u, none=joint.upper - joint.lower)
        where = row.where(joint.u, joint.lower, piece=joint.piece)
        gauge.see_off(off, where._replace(of="joint"))


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

    def is_within(self, joint: Joint) -> bool:
        """Tell whether there is deck on both sides of a joint, at its middle."""
        v = (joint.lower + joint.upper) / 2
        return all(
            any(low <= v <= high for low, high in self.laid.column(joint.u + aside))
            for aside in (-TOUCHING, TOUCHING)
        )

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
