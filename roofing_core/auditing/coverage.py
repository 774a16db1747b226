"""Coverage: two layers of shingle over every point of the deck, and the headlap between courses."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence

from roofing_core.auditing.edges import Cover
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import DUST, column
from roofing_core.auditing.sweeping import Cell, Layer, cells, stacked
from roofing_core.measures.units import Inches

#: In the order of laying the deck comes first and what covers the edges last.
_DECK, _FIRST_ROW = 0, 1

#: So many layers lie everywhere.
_LAYERS = 2


def ask_coverage(laid: PlaneLaid, covers: Sequence[Cover], gauges: Mapping[str, Gauge]) -> None:
    """Ask over every point of a plane's deck how many layers lie there, and how far they reach.

    Where a course ends under the two that lie over it, the headlap is the height from there down to
    the butt of the upper one. Metal or caps over an edge stand for a course that nothing lies over.

    Args:
        laid: A plane with its rows.
        covers: What covers its edges.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Double coverage and headlap as the Navy Builder manual (NAVEDTRA 14044 ch. 3) has them.

    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> nothing = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> ask_coverage(nothing, (), gauges(AuditLimits()))
    """
    asking = _Asking(laid, covers, gauges)
    swept = list(cells(asking.layers))
    for row in swept:
        for cell in row:
            asking.ask_layers(cell)
    for below, above in stacked(swept):
        asking.ask_headlap(below, above)


class _Asking:
    """Asks about the layers of one plane."""

    def __init__(
        self, laid: PlaneLaid, covers: Sequence[Cover], gauges: Mapping[str, Gauge]
    ) -> None:
        self.laid, self.covers = laid, covers
        self.rows: tuple[Row, ...] = (*laid.starters, *laid.courses)
        self.first_course = _FIRST_ROW + len(laid.starters)
        self.first_cover = _FIRST_ROW + len(self.rows)
        self.layers = (
            Layer(order=_DECK, shape=laid.deck),
            *(row.layer(order) for order, row in enumerate(self.rows, _FIRST_ROW)),
            *(Layer(order=self.first_cover + k, shape=one.shape) for k, one in enumerate(covers)),
        )
        self.lacking, self.headlap = gauges["shingles.layers"], gauges["shingles.headlap"]
        self.holes: set[tuple[str, int, int]] = set()

    def ask_layers(self, cell: Cell) -> None:
        """Ask how many layers lie over a cell; a hole is told once for each piece that it is in."""
        orders = cell.layers
        if orders[0] != _DECK or orders[-1] >= self.first_cover:
            return
        lacks = max(0, _LAYERS - (len(orders) - 1))
        u, v = cell.lies.lower_left, cell.lies.lower
        where = (
            self._hole(orders, u, v) if lacks else Where(self.laid.plane.name, "deck", 0, 0, u, v)
        )
        hole = (where.part, where.number, where.piece)
        if lacks and hole in self.holes:
            return
        if lacks:
            self.holes.add(hole)
        self.lacking.see(lacks, where)

    def _hole(self, orders: Sequence[int], u: float, v: float) -> Where:
        """Name what is missing: the course that should show here, else the one under it."""
        courses = self.laid.courses
        butts = [course.butt for course in courses]
        k = bisect_right(butts, v + DUST) - 1
        if k >= 0 and self.first_course + k in orders:
            k -= 1
        missing = courses[k] if k >= 0 else next(iter(self.laid.starters), None)
        if missing is None:
            return Where(self.laid.plane.name, "starter", 0, 0, u, v)
        before = bisect_right(missing.lefts, u + DUST) - 1
        piece = missing.pieces[max(0, before)].number if missing.pieces else 0
        return missing.where(u, v, piece=piece)

    def ask_headlap(self, below: Cell, above: Cell) -> None:
        """Ask of every course that ends between two cells how far it reaches under those above."""
        if below.layers == above.layers or above.layers[0] != _DECK or below.layers[0] != _DECK:
            return
        for order in below.layers:
            if self.first_course <= order < self.first_cover and order not in above.layers:
                u, v = max(below.lies.upper_left, above.lies.lower_left), above.lies.lower
                edge = self._edge_over(order, above.layers, u)
                if edge is not None:
                    self.headlap.see(v - edge, self._row(order).where(u, v))

    def _edge_over(self, order: int, layers: Iterable[int], u: float) -> Inches | None:
        """Give the lower edge of the second layer over a course, or of the cover right over it."""
        over = [other for other in layers if other > order]
        if over and over[0] >= self.first_cover:
            return self._cover_edge(over[0], u)
        if len(over) < _LAYERS:
            return None
        return (
            self._row(over[1]).butt if over[1] < self.first_cover else self._cover_edge(over[1], u)
        )

    def _cover_edge(self, order: int, u: float) -> Inches | None:
        return next(
            (low for low, _ in column(self.covers[order - self.first_cover].shape, u)), None
        )

    def _row(self, order: int) -> Row:
        return self.rows[order - _FIRST_ROW]
