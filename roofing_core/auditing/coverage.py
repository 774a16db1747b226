"""Coverage: two layers of shingle over every point of the deck, and the headlap between courses."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping, Sequence

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import DUST, Trapezoid, column
from roofing_core.auditing.sweeping import Cell, Layer, cells, region, stacked
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
) -> tuple[Trapezoid, ...]:
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

    Returns:
        Where two layers of its own shingles lie, if shingles from beyond a valley do too; else
        nothing.

    Raises:
        Nothing.

    Source:
        Double coverage and headlap as the Navy Builder manual (NAVEDTRA 14044 ch. 3) has them.

    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> nothing = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> ask_coverage(nothing, (), gauges(AuditLimits()))
    ()
    """
    asking = _Asking(laid, covers, unders, gauges)
    swept = list(cells(asking.layers))
    bare = [[cell for cell in row if asking.is_bare(cell)] for row in swept]
    for cell in asking.uncovered(bare):
        asking.tell_hole(cell)
    for below, above in stacked(swept):
        asking.ask_headlap(below, above)
    return region(swept, asking.has_own) if asking.through else ()


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
        self.metal = [under for under in unders if under.reach < float("inf")]
        self.through = [under for under in unders if under.reach == float("inf")]
        self.first_row = _FIRST_UNDER + len(self.metal)
        self.first_course = self.first_row + len(laid.starters)
        self.first_cover = self.first_row + len(self.rows)
        self.layers = (
            Layer(order=_DECK, shape=laid.deck),
            *(Layer(order=k, shape=one.shape) for k, one in enumerate(self.metal, _FIRST_UNDER)),
            *(row.layer(order) for order, row in enumerate(self.rows, self.first_row)),
            *(Layer(order=self.first_cover + k, shape=one.shape) for k, one in enumerate(covers)),
        )
        self.lacking, self.headlap = gauges["shingles.layers"], gauges["shingles.headlap"]
        self.valley_lap = gauges["valleys.lap"]
        self.holes: set[tuple[str, int, int]] = set()

    def has_own(self, cell: Cell) -> bool:
        """Tell whether two layers of the plane's own shingles lie over a cell."""
        rows = [order for order in cell.layers if self.first_row <= order < self.first_cover]
        return len(rows) >= _LAYERS

    def is_bare(self, cell: Cell) -> bool:
        """Ask how many layers lie over a cell; tell whether too few, and no metal of a valley."""
        orders = cell.layers
        if orders[0] != _DECK or orders[-1] >= self.first_cover:
            return False
        if len(orders) > _LAYERS and orders[-_LAYERS] >= self.first_row:
            self.lacking.see_well(1)
            return False
        return not self._is_metal(cell)

    def _is_metal(self, cell: Cell) -> bool:
        """Tell whether metal of a valley lies over a cell; ask how far it reaches on from there.

        Between two valleys so near that metal of both lies there, it is as far as may be.
        """
        over = [self.metal[k - _FIRST_UNDER] for k in cell.layers if _DECK < k < self.first_row]
        if len(over) == 1:
            u, v = cell.lies.lower_left, cell.lies.lower
            where = Where(self.laid.plane.name, "valley", 0, 0, u, v)
            self.valley_lap.see(over[0].lap(cell.lies), where)
        return bool(over)

    def uncovered(self, bare: Sequence[Sequence[Cell]]) -> Iterator[Cell]:
        """Give of bare cells what no shingles from beyond a valley cover either.

        Where some do, what is bare is swept by itself: it is little, and they lie across it.
        """
        every = [cell for row in bare for cell in row]
        if not (self.through and every):
            yield from every
            return
        layers = [Layer(order=k, shape=one.shape) for k, one in enumerate(self.through, 1)]
        shape = region((tuple(row) for row in bare), lambda _: True)
        for row in cells([Layer(order=0, shape=shape), *layers]):
            for cell in row:
                if cell.layers == (0,):
                    yield Cell(cell.lies, self._layers_at(cell.lies, every))

    def _layers_at(self, lies: Trapezoid, every: Sequence[Cell]) -> tuple[int, ...]:
        """Give what lies over a part of one of several cells."""
        v = (lies.lower + lies.upper) / 2
        u = sum(lies.at(v)) / 2
        near = (one for one in every if one.lies.lower <= v <= one.lies.upper)
        found = min(near, key=lambda one: abs(sum(one.lies.at(v)) / 2 - u), default=every[0])
        return found.layers

    def tell_hole(self, cell: Cell) -> None:
        """Tell of a cell that it is a hole, once for each piece that it is in."""
        orders, u, v = cell.layers, cell.lies.lower_left, cell.lies.lower
        lacks = _LAYERS - sum(order >= self.first_row for order in orders)
        where = self._hole(orders, u, v)
        hole = (where.part, where.number, where.piece)
        if hole not in self.holes:
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
        return self.rows[order - self.first_row]
