"""Nails: whether something covers each nail, how far under its edge it lies, and what it holds."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.gauges import Gauge
from roofing_core.auditing.rows import PlaneLaid, Row, stacked_rows
from roofing_core.auditing.shapes import Point, Span, Trapezoid


@dataclass(frozen=True, slots=True, kw_only=True)
class Bare:
    """A piece with nails that no course covers.

    Attributes:
        row: Its row.
        piece: Its place among the pieces of the row, from 0.
        nails: How many of these caps do not cover either.
    """

    row: Row
    piece: int
    nails: int


def ask_nails(
    laid: PlaneLaid, covers: Sequence[Cover], gauges: Mapping[str, Gauge]
) -> tuple[Bare, ...]:
    """Ask of every nail of a plane what covers it, and whether it holds its piece to the deck.

    A nail is covered by the course above its own, or by metal or caps; from the joints of the
    course that covers it it has to stay clear, unless caps lie over those too.

    Args:
        laid: A plane with its rows.
        covers: What covers its edges.
        gauges: Where to note it.

    Returns:
        The pieces with nails that no course covers, from the eave up.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> ask_nails(PlaneLaid(plane=None, deck=(), starters=(), courses=()), (), {})
    ()
    """
    over = {id(below): above for below, above, _ in stacked_rows(laid)}
    return tuple(
        bare
        for row in (*laid.starters, *laid.courses)
        for bare in _Asking(laid, row, over.get(id(row)), covers, gauges).bare()
    )


class _Asking:
    """Asks about the nails of one row."""

    def __init__(
        self,
        laid: PlaneLaid,
        row: Row,
        above: Row | None,
        covers: Sequence[Cover],
        gauges: Mapping[str, Gauge],
    ) -> None:
        self.laid, self.row, self.above, self.covers = laid, row, above, covers
        self.holds = gauges["shingles.nails_hold"]
        self.covered = gauges["shingles.nails_covered"]
        self.clear = gauges["shingles.nails_clear"]
        self.joints = above.joints if above else ()
        self.places = [joint.u for joint in self.joints]
        self.decks: dict[float, list[Span]] = {}
        self.plain: dict[float, Span | None] = {}

    def bare(self) -> Iterator[Bare]:
        """Ask about every nail; give the pieces with nails that no course covers."""
        for k, piece in enumerate(self.row.pieces):
            if piece.nails and not self._all_well(k):
                over = [self._lies_over(k, u) for u in piece.nails]
                if not all(over):
                    nails = sum(one is None for one in over)
                    yield Bare(row=self.row, piece=k, nails=nails)

    def _all_well(self, k: int) -> bool:
        """Ask about the nails of a piece together, where what lies over it is all of a piece."""
        row, above, piece = self.row, self.above, self.row.pieces[k]
        v = row.butt + piece.nail_height
        ends = min(piece.nails), max(piece.nails)
        if above is None or not self._lies_plain(above, ends, v):
            return False
        near = min([self._to_joint(u, v) for u in piece.nails])
        if v - above.butt < self.covered.limit or near < self.clear.limit:
            return False
        own = [one.at(v) for one in row.shapes[k] if one.lower <= v <= one.upper]
        if not (any(_spans(span, ends) for span in own) and self._on_deck(ends, v)):
            return False
        count, where = len(piece.nails), row.where(ends[0], v, piece=piece.number)
        self.holds.see_least(0, count, where)
        self.covered.see_least(v - above.butt, count, where)
        if near < float("inf"):
            self.clear.see_least(near, count, where)
        return True

    def _lies_plain(self, above: Row, ends: Span, v: float) -> bool:
        """Tell whether the course over a level stretch covers all from its butt up to there."""
        if v not in self.plain:
            self.plain[v] = above.plain_below(v)
        span = self.plain[v]
        return span is not None and _spans(span, ends)

    def _to_joint(self, u: float, v: float) -> float:
        """Give how far the nearest joint of the course above stands from a nail, at its height."""
        k, near = bisect_left(self.places, u), float("inf")
        for joint in self.joints[max(0, k - 1) : k + 1]:
            if joint.lower <= v <= joint.upper:
                near = min(near, abs(joint.u - u))
        return near

    def _on_deck(self, ends: Span, v: float) -> bool:
        if v not in self.decks:
            self.decks[v] = self.laid.across(v)
        return any(_spans(span, ends) for span in self.decks[v])

    def _lies_over(self, k: int, u: float) -> bool | None:
        """Ask about one nail; tell whether a course covers it, or if not, None: nor do caps."""
        row, above, piece = self.row, self.above, self.row.pieces[k]
        v = row.butt + piece.nail_height
        where = row.where(u, v, piece=piece.number)
        loose = not (self._on_deck((u, u), v) and _within(row.shapes[k], u, v))
        self.holds.see(loose, where)
        edge = above.edge_below(u, v) if above else None
        under = 0.0 if edge is None else v - edge
        if under < self.covered.limit:  # what lies over the edge may reach further
            under = max([under, *(cover.over((u, v)) for cover in self.covers)])
        self.covered.see(under, where)
        if edge is None:
            return False if self._is_capped((u, v)) else None
        near = self._to_joint(u, v)
        if near < self.clear.limit and self._is_capped((u, v)):
            return True  # the caps lie over that joint too
        if near < float("inf"):
            self.clear.see(near, where)
        return True

    def _is_capped(self, nail: Point) -> bool:
        """Tell whether caps, or what lies over the courses below an opening, cover a nail."""
        least = self.covered.limit
        return any(not cover.is_metal and cover.over(nail) >= least for cover in self.covers)


def _spans(span: Span, ends: Span) -> bool:
    return span[0] <= ends[0] and ends[1] <= span[1]


def _within(shape: tuple[Trapezoid, ...], u: float, v: float) -> bool:
    """Tell whether a point lies within a shape."""
    return any(one.lower <= v <= one.upper and _spans(one.at(v), (u, u)) for one in shape)
