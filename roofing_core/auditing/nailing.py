"""Nailing: whether each shingle has the nails that hold it, and its chalk line lies under cover."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from roofing_core.auditing.edges import Edge
from roofing_core.auditing.finished import FinishedPiece, FinishedPlan
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.measures.units import Inches

#: IRC R905.2.6: a strip has four nails or more; a piece of one two, as the trade press has it.
STRIP_NAILS, PIECE_NAILS = 4, 2

#: A piece that is narrower lies under its neighbours' nails as much as under its own.
_NARROW = 8.0


def ask_nailing(plan: FinishedPlan, laid: PlaneLaid, gauges: Mapping[str, Gauge]) -> None:
    """Ask of every piece cut square whether it has its nails, and of nail lines what covers them.

    A piece within reach of a valley has its nails where the valley allows.

    Args:
        plan: The plan.
        laid: A plane with its rows.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        IRC R905.2.6, 2018: four nails a strip at least; two in a piece: trade press.

    >>> ask_nailing(None, PlaneLaid(plane=None, deck=(), starters=(), courses=()), {})
    """
    if laid.courses:
        valleys = [edge for edge in laid.edges() if edge.kind == "valley"]
        reach = gauges["valleys.nails"].limit
        for row in (*laid.starters, *laid.courses):
            whole = plan.choices.shingle.length if row.part == "course" else 0.0
            lacking = [*_lacking(row, whole, laid)]
            gauges["shingles.nailed"].see_well(len(row.pieces))
            for piece, lacks in lacking:
                if not any(_is_near(row, piece, edge, reach) for edge in valleys):
                    where = row.where(piece.left, row.butt, piece=piece.number)
                    gauges["shingles.nailed"].see(lacks, where)
        _ask_lines(plan, laid.plane.name, gauges["shingles.nails_covered"])


def _lacking(row: Row, whole: Inches, laid: PlaneLaid) -> Iterator[tuple[FinishedPiece, int]]:
    """Give the pieces cut square that have too few nails, and how many they lack.

    A strip that reaches past the deck has its nails where the deck is.
    """
    for piece in row.pieces:
        has = len(set(piece.nails))
        if has < STRIP_NAILS and not piece.corners:
            wide = piece.right - piece.left
            strip = whole and wide > whole - TOUCHING and _on_deck(row, piece, laid)
            needed = STRIP_NAILS if strip else PIECE_NAILS if wide > _NARROW else 0
            if has < needed:
                yield piece, needed - has


def _on_deck(row: Row, piece: FinishedPiece, laid: PlaneLaid) -> bool:
    spans = laid.across(row.butt + piece.nail_height)
    return any(low <= piece.left and piece.right <= high for low, high in spans)


def _is_near(row: Row, piece: FinishedPiece, edge: Edge, reach: Inches) -> bool:
    """Tell whether some of a piece may be within reach of an edge."""
    corners = [(u, v) for u in (piece.left, piece.right) for v in (row.butt, row.top)]
    seen = edge.beside(corners)
    off, along = [at for at, _ in seen], [at for _, at in seen]
    beside = min(off) < reach and max(off) > -reach
    return beside and min(along) < edge.length() + reach and max(along) > -reach


def _ask_lines(plan: FinishedPlan, plane: str, gauge: Gauge) -> None:
    """Ask of every chalked nail line how far it lies under the course above."""
    courses = [course for course in plan.courses if course.plane == plane]
    for course, above in pairwise(courses):
        if course.nailable and course.nail_line:
            where = Where(plane, "course", course.number, 0, 0.0, course.nail_line, "nail line")
            gauge.see(course.nail_line - above.butt, where)
