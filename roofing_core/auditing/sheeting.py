"""Sheeting: whether ice barrier and underlayment cover the deck, and how their rows lap."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from roofing_core.auditing.finished import FinishedPlan, FinishedRow
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid
from roofing_core.auditing.shapes import DUST, Trapezoid, nearest, rectangle
from roofing_core.auditing.sweeping import Cell, Layer, cells, joined, stacked

#: International Residential Code, Table R905.1.1(2): two layers below this pitch.
TWO_LAYERS_BELOW = 4 / 12

_DECK, _FIRST_ROW = 0, 1


@dataclass(frozen=True, slots=True)
class _Sheet:
    """A row of ice barrier or of underlayment, where it lies."""

    row: FinishedRow
    plane: str
    part: str

    @property
    def is_ice(self) -> bool:
        return self.part == "ice barrier row"

    def where(self, u: float = 0.0, v: float = 0.0, *, piece: int = 0) -> Where:
        return Where(self.plane, self.part, self.row.number, piece, u, v)

    def shapes(self) -> Iterator[Trapezoid]:
        row = self.row
        return (rectangle(one.left, one.right, row.lower, row.upper) for one in row.pieces)


def ask_sheets(plan: FinishedPlan, laid: PlaneLaid, gauges: Mapping[str, Gauge]) -> None:
    """Ask of the underlayment of a plane whether it covers the deck, and of each row how it laps.

    Args:
        plan: The plan.
        laid: The plane.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        IRC Table R905.1.1(2), 2018: two layers from 2:12 to under 4:12, one from there on.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.auditing.rows import planes_laid
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_sheets(shed, planes_laid(shed)[0], seen)
    >>> [margin.value.value for margin in seen["underlayment.head_lap"].margin()]
    [2.0]
    """
    asking = _Asking(plan, laid, gauges)
    swept = list(cells(asking.layers))
    for row in swept:
        for cell in row:
            asking.ask_layers(cell)
    for below, above in stacked(swept):
        asking.ask_lap(below, above)
    asking.ask_rows()


class _Asking:
    """Asks about the sheets of one plane."""

    def __init__(self, plan: FinishedPlan, laid: PlaneLaid, gauges: Mapping[str, Gauge]) -> None:
        self.laid, self.gauges = laid, gauges
        name = laid.plane.name
        groups = (("ice barrier row", plan.ice_barrier), ("underlayment row", plan.underlayment))
        self.sheets = [
            _Sheet(row, name, part)
            for part, group in groups
            for row in group.rows
            if row.plane in ("", name)
        ]
        self.needed = 2 if laid.plane.pitch < TWO_LAYERS_BELOW - DUST else 1
        self.layers = (
            Layer(order=_DECK, shape=laid.deck),
            *(
                Layer(order=order, shape=joined(sheet.shapes()))
                for order, sheet in enumerate(self.sheets, _FIRST_ROW)
            ),
        )
        self.bare: set[tuple[int, ...]] = set()

    def ask_layers(self, cell: Cell) -> None:
        """Ask how many layers lie over a cell."""
        if cell.layers[0] != _DECK:
            return
        over = [self.sheets[order - _FIRST_ROW] for order in cell.layers[1:]]
        lacks = 0 if any(sheet.is_ice for sheet in over) else max(0, self.needed - len(over))
        if lacks and cell.layers in self.bare:
            return
        if lacks:
            self.bare.add(cell.layers)
        where = Where(self.laid.plane.name, "deck", 0, 0, cell.lies.lower_left, cell.lies.lower)
        self.gauges["underlayment.layers"].see(lacks, where)

    def ask_lap(self, below: Cell, above: Cell) -> None:
        """Ask of every row that ends between two cells how far the next ones lap it."""
        if below.layers == above.layers or above.layers[0] != _DECK or below.layers[0] != _DECK:
            return
        for order in below.layers[1:]:
            if order not in above.layers:
                self._ask_lap_of(order, below, above)

    def _ask_lap_of(self, order: int, below: Cell, above: Cell) -> None:
        sheet = self.sheets[order - _FIRST_ROW]
        over = [self.sheets[other - _FIRST_ROW] for other in above.layers if other > order]
        nth = 1 if sheet.is_ice else self.needed
        if len(over) < nth:
            return
        u, v = max(below.lies.upper_left, above.lies.lower_left), above.lies.lower
        upper = over[nth - 1]
        between = sheet.is_ice and not upper.is_ice
        code = "underlayment.over_ice_barrier" if between else "underlayment.head_lap"
        self.gauges[code].see(v - upper.row.lower, sheet.where(u, v))

    def ask_rows(self) -> None:
        """Ask of each row and its neighbour about their order and about the ends of pieces."""
        for sheet in self.sheets:
            self._ask_end_laps(sheet)
        for one, other in pairwise(self.sheets):
            falls = other.row.lower < one.row.lower - DUST and one.is_ice == other.is_ice
            self.gauges["underlayment.order"].see(falls, other.where(v=other.row.lower))
        for below, above in pairwise(self._levels()):
            for other in above:
                for one in below:
                    if one.is_ice == other.is_ice:
                        self._ask_apart(one, other)
        self._ask_breaks()

    def _levels(self) -> list[list[_Sheet]]:
        """Give the rows, those side by side together."""
        levels: list[list[_Sheet]] = []
        for sheet in self.sheets:
            if levels and abs(levels[-1][-1].row.lower - sheet.row.lower) <= DUST:
                levels[-1].append(sheet)
            else:
                levels.append([sheet])
        return levels

    def _ask_breaks(self) -> None:
        """Ask how far the rows that begin at a pitch break lap those of the plane below it."""
        for edge in self.laid.edges():
            v, middle = edge.start[1], edge.at(edge.length() / 2)[0]
            if edge.metal_name() == "pitch_break":
                over = [
                    one
                    for one in self.sheets
                    if one.row.lower <= v < one.row.upper
                    and any(piece.left <= middle <= piece.right for piece in one.row.pieces)
                ]
                first = min(over, key=lambda one: one.row.lower, default=None)
                if first is not None:
                    lap = v - first.row.lower
                    self.gauges["underlayment.head_lap"].see(lap, first.where(v=first.row.lower))

    def _ask_end_laps(self, sheet: _Sheet) -> None:
        pieces = sorted(sheet.row.pieces, key=lambda piece: piece.left)
        for k, (one, other) in enumerate(pairwise(pieces), 1):
            where = sheet.where(other.left, sheet.row.lower, piece=k)
            self.gauges["underlayment.end_lap"].see(one.right - other.left, where)

    def _ask_apart(self, one: _Sheet, other: _Sheet) -> None:
        below, above = _end_laps(one), _end_laps(other)
        for u in above:
            near = nearest(below, u)
            if near < inf:
                where = other.where(u, other.row.lower)
                self.gauges["underlayment.end_laps_apart"].see(near, where)


def _end_laps(sheet: _Sheet) -> list[float]:
    return sorted(piece.left for piece in sheet.row.pieces)[1:]
