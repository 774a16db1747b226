"""Fitting: whether what is laid can be laid: cut from what there is, and not on its neighbour."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise

from roofing_core.auditing.finished import (
    FinishedPiece,
    FinishedPlan,
    FinishedRow,
    FinishedRun,
)
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.metalling import on_run
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.measures.units import Inches


def ask_fits(plan: FinishedPlan, laid: Iterable[PlaneLaid], gauges: Mapping[str, Gauge]) -> None:
    """Ask of every piece whether it can be cut from what it is of, and lies beside its neighbours.

    Args:
        plan: The plan.
        laid: Its planes with their rows.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.auditing.rows import planes_laid
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_fits(shed, planes_laid(shed), seen)
    >>> seen["plan.fits"].breaches, seen["plan.fits"].looked_at
    (0, 121)
    """
    gauge = gauges["plan.fits"]
    longest = {one.plane: one.piece_length for one in plan.starters}
    for one in laid:
        for row in one.starters:
            _ask_row(row, longest.get(row.plane, 0.0), gauges)
        for row in one.courses:
            _ask_row(row, plan.choices.shingle.length, gauges)
    for part, sheets in (("ice barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        for band in sheets.rows:
            where = Where(band.plane, f"{part} row", band.number, 0, 0.0, band.lower)
            gauge.see(_past(_height(band), band.width), where)
    for run in plan.metal:
        where = on_run(run)
        gauge.see(_past(max(run.lengths, default=0.0), run.stock_length), where)
        gauge.see_off(_beyond(run), where._replace(of="nails past its end"))
    _ask_covers(plan, gauge)


def _ask_row(row: Row, longest: Inches, gauges: Mapping[str, Gauge]) -> None:
    """Ask about the pieces of a row, of which most are well at a glance."""
    gauge = gauges["plan.fits"]
    too_large = [piece for piece in row.pieces if _past(piece.right - piece.left, longest)]
    for piece in too_large:
        past = piece.right - piece.left - longest
        gauge.see(past, row.where(piece.left, row.butt, piece=piece.number))
    gauge.see_well(len(row.pieces) - len(too_large))
    gauges["shingles.side_by_side"].see_well(len(row.pieces))
    for one, other in pairwise(row.pieces):
        if one.right - other.left > TOUCHING and _level(one, other):
            where = row.where(other.left, row.butt, piece=other.number)
            gauges["shingles.side_by_side"].see(one.right - other.left, where)


def _level(one: FinishedPiece, other: FinishedPiece) -> bool:
    """Tell whether some of two pieces of a row lies at one height."""
    if not (one.corners and other.corners):
        return True
    (low, high), (from_, to) = (
        (min(v for _, v in piece.corners), max(v for _, v in piece.corners))
        for piece in (one, other)
    )
    return min(high, to) - max(low, from_) > TOUCHING


def _height(band: FinishedRow) -> Inches:
    return band.upper - band.lower


def _beyond(run: FinishedRun) -> Inches:
    """Give how far past an end of a run its nails go."""
    nails = run.nail_positions
    return max(0.0, -min(nails, default=0.0), max(nails, default=0.0) - run.run_length)


def _ask_covers(plan: FinishedPlan, gauge: Gauge) -> None:
    cap, step = plan.choices.cap, plan.choices.step_flashing
    for k, run in enumerate(plan.caps, 1):
        where = Where(next(iter(run.planes), ""), f"{run.line} caps", k)
        gauge.see(_past(2 * run.half_width, cap.width), where._replace(of="width"))
        gauge.see(_past(run.last_length, cap.length), where._replace(of="last length"))
    for side in plan.step_flashings:
        for n, piece in enumerate(side.pieces, 1):
            where = Where(side.plane, "step flashing", side.opening, n, 0.0, piece.lower)
            gauge.see(_past(piece.upper - piece.lower, step.length), where)


def _past(size: Inches, largest: Inches) -> Inches:
    """Give by how much something is larger than can be; 0 where that is not said."""
    return size - largest if largest and size - largest > TOUCHING else 0.0
