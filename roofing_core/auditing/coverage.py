"""Coverage: two layers of shingle over every point of the deck, and the headlap between courses."""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import DUST, column
from roofing_core.auditing.sweeping import Cell, Layer, cells, stacked
from roofing_core.auditing.valleys import Under
from roofing_core.measures.units import Inches

#: In the order of laying the deck comes first, then what lies under the shingles at valleys, and
#: what covers the edges last.
_DECK, _FIRST_UNDER = 0, 1

#: So many layers lie everywhere.
_LAYERS = 2


def ask_coverage(
    laid: PlaneLaid,
    covers: Sequence[Cover],
    gauges: Mapping[str, Gauge],
    *,
    unders: Sequence[Under] = (),
) -> None:
    """Ask over every point of a plane's deck how many layers lie there, and how far they reach.

    Where a course ends under the two that lie over it, the headlap is the height from there down to
    the butt of the upper one. Metal or caps over an edge stand for a course that nothing lies over.
    Where shingles stop short of a valley, its metal lies bare, or those that run through from
    beyond it; how far that reaches on under them is asked.

    Args:
        laid: A plane with its rows.
        covers: What covers its edges.
        gauges: Where to note it.
        unders: What lies under its shingles along valleys.

    Raises:
        Nothing.

    Source:
        Double coverage and headlap as the Navy Builder manual (NAVEDTRA 14044 ch. 3) has them.

    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> nothing = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> ask_coverage(nothing, (), gauges(AuditLimits()))
    """
    asking = _Asking(laid, covers, unders, gauges)
    swept = list(cells(asking.layers))
    for row in swept:
        for cell in row:
            asking.ask_layers(cell)
    for below, above in stacked(swept):
        asking.ask_headlap(below, above)


class _Asking:
    """Asks about the layers of one plane."""

    def __init__(
        self,
        laid: PlaneLaid,
        covers: Sequence[Cover],
        unders: Sequence[Under],
        gauges: Mapping[str, Gauge],
    ) -> None:
        self.laid, self.covers = laid, covers
        self.rows: tuple[Row, ...] = (*laid.starters, *laid.courses)
        below = [(under, shape) for under in unders for shape in under.layers]
        self.unders = dict(enumerate((under for under, _ in below), _FIRST_UNDER))
        self.first_row = _FIRST_UNDER + len(below)
        self.first_course = self.first_row + len(laid.starters)
        self.first_cover = self.first_row + len(self.rows)
        self.layers = (
            Layer(order=_DECK, shape=laid.deck),
            *(Layer(order=order, shape=one) for order, (_, one) in enumerate(below, _FIRST_UNDER)),
            *(row.layer(order) for order, row in enumerate(self.rows, self.first_row)),
            *(Layer(order=self.first_cover + k, shape=one.shape) for k, one in enumerate(covers)),
        )
        self.lacking, self.headlap = gauges["shingles.layers"], gauges["shingles.headlap"]
        self.valley_lap = gauges["valleys.lap"]
        self.holes: set[tuple[str, int, int]] = set()

    def ask_layers(self, cell: Cell) -> None:
        """Ask how many layers lie over a cell; a hole is told once for each piece that it is in."""
        orders = cell.layers
        if orders[0] != _DECK or orders[-1] >= self.first_cover:
            return
        lacks = max(0, _LAYERS - sum(order >= self.first_row for order in orders))
        u, v = cell.lies.lower_left, cell.lies.lower
        lap = self._valley_lap(cell) if lacks and orders[1:] else None
        if lap is not None:
            if lap < float("inf"):
                self.valley_lap.see(lap, Where(self.laid.plane.name, "valley", 0, 0, u, v))
            return
        where = (
            self._hole(orders, u, v) if lacks else Where(self.laid.plane.name, "deck", 0, 0, u, v)
        )
        hole = (where.part, where.number, where.piece)
        if lacks and hole in self.holes:
            return
        if lacks:
            self.holes.add(hole)
        self.lacking.see(lacks, where)

    def _valley_lap(self, cell: Cell) -> Inches | None:
        """Give how far what lies bare along a valley reaches on; None where nothing does there.

        Between two valleys so near that metal of both lies there, it is as far as may be.
        """
        times = Counter(
            id(self.unders[order]) for order in cell.layers if _DECK < order < self.first_row
        )
        bare = {id(under): under for under in self.unders.values()}
        laps = [bare[at].lap(cell.lies) for at, n in times.items() if n >= bare[at].needed]
        return float("inf") if len(laps) > 1 else next(iter(laps), None)

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
        return self.rows[order - self.first_row]
