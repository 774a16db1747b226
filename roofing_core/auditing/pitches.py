"""Pitches: whether each plane is steep enough for shingles."""

from __future__ import annotations

from collections.abc import Mapping

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.shapes import DUST

#: IRC R905.2.2: shingles lie on no flatter roof.
LEAST_PITCH = 2 / 12


def ask_pitches(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask of every plane with courses whether shingles shed water at its pitch.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        IRC R905.2.2, 2018.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_pitches(shed, seen)
    >>> seen["shingles.pitch"].looked_at, seen["shingles.pitch"].breaches
    (1, 0)
    """
    shingled = {course.plane for course in plan.courses}
    for plane in plan.planes:
        if plane.name in shingled:
            flat = plane.pitch < LEAST_PITCH - DUST
            gauges["shingles.pitch"].see(flat, Where(plane.name, "deck"))
