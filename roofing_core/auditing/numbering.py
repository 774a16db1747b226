"""Numbering: whether pieces, rows, steps and nails are numbered and counted as they are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from roofing_core.auditing.finished import FinishedPiece, FinishedPlan
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.metalling import on_run


def ask_numbers(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask whether what a crew counts by is what there is.

    Pieces are numbered from the left, rows of a sheet and steps in the order in which they are
    done; the nails of a run of metal, by which it is dabbed, are those that it shows.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_numbers(shed, seen)
    >>> seen["plan.counted"].breaches
    0
    """
    gauge = gauges["plan.counted"]
    for where, off in (*_pieces(plan), *_rows(plan), *_nails(plan), *_steps(plan)):
        gauge.see(off, where)


def _pieces(plan: FinishedPlan) -> Iterator[tuple[Where, int]]:
    for course in plan.courses:
        where = Where(course.plane, "course", course.number, 0, 0.0, course.butt)
        yield where._replace(of="numbers of its pieces"), _misnumbered(course.laid)
    for starter in plan.starters:
        where = Where(starter.plane, "starter", 0, 0, 0.0, starter.butt, "numbers of its pieces")
        yield where, _misnumbered(starter.laid)


def _misnumbered(laid: Sequence[FinishedPiece]) -> int:
    return sum([piece.number != k for k, piece in enumerate(laid, 1)])


def _rows(plan: FinishedPlan) -> Iterator[tuple[Where, int]]:
    for part, sheets in (("ice barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        for row, after in pairwise(sheets.rows):
            where = Where(after.plane, f"{part} row", after.number, 0, 0.0, after.lower)
            where = where._replace(of="number")
            yield where, after.number <= row.number


def _nails(plan: FinishedPlan) -> Iterator[tuple[Where, int]]:
    for run in plan.metal:
        if run.nail_positions:
            shown = len(run.nail_positions) * run.nail_lines + run.tab_nails
            yield on_run(run, of="nails"), abs(run.nails - shown)


def _steps(plan: FinishedPlan) -> Iterator[tuple[Where, int]]:
    for place, step in enumerate(plan.steps, 1):
        yield Where("", f"step: {step.stage}", step.number, of="number"), abs(step.number - place)
