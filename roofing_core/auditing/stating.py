"""Stating: whether what a plan states, and a crew works by, is what its pieces come to."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from itertools import pairwise

from roofing_core.auditing.finished import FinishedCourse, FinishedPlan, FinishedRow
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.metalling import laps_of
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.measures.units import Inches


def ask_stated(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask whether exposures, joints and laps are stated as they are laid, and courses in order.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_stated(shed, seen)
    >>> seen["plan.as_stated"].breaches, seen["shingles.order"].looked_at
    (0, 19)
    """
    for plane in plan.planes:
        courses = [course for course in plan.courses if course.plane == plane.name]
        for course, above in pairwise(courses):
            _ask_pair(course, above, gauges)
        for course in courses:
            _ask_joints(course, gauges["plan.as_stated"])
    for part, sheets in (("ice barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        for row in sheets.rows:
            _ask_end_laps(row, part, gauges["plan.as_stated"])
    for run in plan.metal:
        for k, lap in enumerate(laps_of(run), 1):
            where = Where(run.plane, f"{run.edge.replace('_', ' ')} metal", 0, k, run.laps[k - 1])
            gauges["plan.as_stated"].see(_off(lap - run.lap), where)


def _ask_pair(course: FinishedCourse, above: FinishedCourse, gauges: Mapping[str, Gauge]) -> None:
    where = Where(above.plane, "course", above.number, 0, 0.0, above.butt)
    ordered = above.number == course.number + 1 and above.butt > course.butt
    gauges["shingles.order"].see(not ordered, where)
    shows = above.butt - course.butt
    below = where._replace(number=course.number, v=course.butt)
    gauges["plan.as_stated"].see(_off(shows - course.exposure), below)


def _ask_joints(course: FinishedCourse, gauge: Gauge) -> None:
    """Hold the stated joints against the pieces' ends: those that lie on the deck are stated."""
    ends = {end for piece in course.laid for end in (piece.left, piece.right)}
    off = [u for u in course.joints if u not in ends]
    where = Where(course.plane, "course", course.number, 0, 0.0, course.butt)
    gauge.see_well(len(course.joints) - len(off))
    for u in off:
        gauge.see(_off(_nearest(sorted(ends), u)), where._replace(u=u))


def _ask_end_laps(row: FinishedRow, part: str, gauge: Gauge) -> None:
    laid = sorted(piece.left for piece in row.pieces)[1:]
    for u in sorted({*laid, *row.end_laps}):
        both = max(_nearest(laid, u), _nearest(sorted(row.end_laps), u))
        gauge.see(_off(both), Where(row.plane, f"{part} row", row.number, 0, u, row.lower))


def _off(difference: Inches) -> Inches:
    """Give how far something is off; nothing where it is not by more than edges that touch."""
    return abs(difference) if abs(difference) > TOUCHING else 0.0


def _nearest(places: Sequence[Inches], u: Inches) -> Inches:
    """Give how far the nearest place is; all the way where there is none."""
    k = bisect_left(places, u)
    return min((abs(at - u) for at in places[max(0, k - 1) : k + 1]), default=abs(u))
