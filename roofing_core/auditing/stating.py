"""Stating: whether what a plan states, and a crew works by, is what its pieces come to."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from itertools import pairwise

from roofing_core.auditing.bounds import MOST_OVER_A_POINT
from roofing_core.auditing.edges import edges_of
from roofing_core.auditing.finished import (
    FinishedCourse,
    FinishedPlan,
    FinishedRow,
    FinishedStarter,
)
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.metalling import laps_of, on_run
from roofing_core.auditing.shapes import TOUCHING, nearest
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
            _ask_course(course, plan.choices.shingle.height, gauges["plan.as_stated"])
    for starter in plan.starters:
        _ask_pieces(
            starter,
            Where(starter.plane, "starter", 0, 0, 0.0, starter.butt),
            gauges["plan.as_stated"],
        )
    for part, sheets in (("ice barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        for row in sheets.rows:
            _ask_end_laps(row, part, gauges["plan.as_stated"])
        _ask_head_laps(sheets.rows, part, gauges["plan.as_stated"])
    _ask_lines(plan, gauges["plan.as_stated"])
    for run in plan.metal:
        for k, lap in enumerate(laps_of(run), 1):
            where = on_run(run, piece=k, u=run.laps[k - 1], of="lap")
            gauges["plan.as_stated"].see_off(lap - run.lap, where)


def _ask_lines(plan: FinishedPlan, gauge: Gauge) -> None:
    """Hold the lines of the roof against the edges of its planes, by their length in all."""
    edges: dict[tuple[str, frozenset[str]], float] = {}
    for edge in (edge for plane in plan.planes for edge in edges_of(plane)):
        names = frozenset(filter(None, (edge.plane, edge.beyond)))
        found = edges.get((edge.kind, names), 0.0)
        edges[edge.kind, names] = found + edge.length() / len(names)
    lines: dict[tuple[str, frozenset[str]], float] = {}
    for line in plan.lines:
        names = frozenset(line.planes)
        lines[line.kind, names] = lines.get((line.kind, names), 0.0) + line.length
    for of in sorted({**edges, **lines}, key=lambda of: (of[0], sorted(of[1]))):
        off = edges.get(of, 0.0) - lines.get(of, 0.0)
        where = Where(", ".join(sorted(of[1])), of[0].replace("_", " "), of="length of the line")
        gauge.see_off(off, where)


def _ask_pair(course: FinishedCourse, above: FinishedCourse, gauges: Mapping[str, Gauge]) -> None:
    where = Where(above.plane, "course", above.number, 0, 0.0, above.butt)
    ordered = above.number == course.number + 1 and above.butt > course.butt
    gauges["shingles.order"].see(not ordered, where)
    shows = above.butt - course.butt
    below = where._replace(number=course.number, v=course.butt)
    gauges["plan.as_stated"].see_off(shows - course.exposure, below._replace(of="exposure"))


def _ask_course(course: FinishedCourse, height: Inches, gauge: Gauge) -> None:
    """Hold the line that is snapped for a course against its butt: a shingle lies between them."""
    where = Where(course.plane, "course", course.number, 0, 0.0, course.butt)
    if height:
        off = course.snap_line - course.butt - height
        gauge.see_off(off, where._replace(of="line for the tops"))
    _ask_pieces(course, where, gauge)


def _ask_pieces(row: FinishedCourse | FinishedStarter, where: Where, gauge: Gauge) -> None:
    """Hold the stated joints against the pieces' ends, and these against outlines."""
    ends = {end for piece in row.laid for end in (piece.left, piece.right)}
    off = [u for u in row.joints if u not in ends]
    gauge.see_well(len(row.joints) - len(off))
    places = sorted(ends) if off else []
    for u in off:
        gauge.see_off(nearest(places, u, none=u), where._replace(u=u, of="joint"))
    for piece in row.laid:
        if piece.corners:
            across = [u for u, _ in piece.corners]
            strays = max(abs(min(across) - piece.left), abs(max(across) - piece.right))
            if strays <= TOUCHING:
                gauge.see_well(1)
            else:
                gauge.see(strays, where._replace(piece=piece.number, u=piece.left, of="ends"))


def _ask_end_laps(row: FinishedRow, part: str, gauge: Gauge) -> None:
    laid = sorted(piece.left for piece in row.pieces)[1:]
    stated = sorted(row.end_laps)
    for u in sorted({*laid, *stated}):
        both = max(nearest(laid, u, none=abs(u)), nearest(stated, u, none=abs(u)))
        where = Where(row.plane, f"{part} row", row.number, 0, u, row.lower, "end lap")
        gauge.see_off(both, where)


def _ask_head_laps(rows: Sequence[FinishedRow], part: str, gauge: Gauge) -> None:
    """Hold stated head laps, and lengths of pieces, against how the rows of a plane lie."""
    below: dict[str, deque[FinishedRow]] = {}
    for row in rows:
        where = Where(row.plane, f"{part} row", row.number, 0, 0.0, row.lower)
        last = below.setdefault(row.plane, deque(maxlen=MOST_OVER_A_POINT))
        laps = [min(one.upper, row.upper) - row.lower for one in last]
        if row.head_lap and laps:
            off = min([lap - row.head_lap for lap in laps], key=abs)
            gauge.see_off(off, where._replace(of="head lap"))
        last.append(row)
        for k, piece in enumerate(row.pieces, 1):
            if piece.length:
                off = piece.right - piece.left - piece.length
                gauge.see_off(off, where._replace(piece=k, u=piece.left, of="length"))
