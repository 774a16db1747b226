"""Sealing: whether every bare nail has its dab, and what is nailed through its face its bedding."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import floor, pi

from roofing_core.auditing.finished import FinishedCourse, FinishedPlan
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.nails import Bare

#: IRC R905.2.6: above 21:12 strips are sealed by hand; with as many spots as the shingle makers'
#: association's bulletin has, 4 under a laminated strip and 6 under one of three tabs.
_STEEP, _SPOTS, _SPOTS_OF_THREE_TABS = 21 / 12, 4, 6

#: Of a dab, and of the cement: as much is float dust.
_DUST = 1e-6


def ask_sealing(
    plan: FinishedPlan,
    bare: Sequence[Bare],
    gauges: Mapping[str, Gauge],
    *,
    open_nails: int = 0,
) -> None:
    """Ask whether the sealant has a dab for each bare nail, and the cement its bedding.

    Nails through metal over the top and at the foot of a wall, nails of a course that no other
    covers, those of a last cap and of an apron are dabbed; such a course is bedded. Where a plan
    says of a course that it closes the roof, all its nails are, under caps too. Above 21:12 every
    strip is sealed by hand.

    Args:
        plan: The plan.
        bare: The pieces with nails that no course covers.
        gauges: Where to note it.
        open_nails: Nails of caps and of flashings at openings that nothing covers.

    Raises:
        Nothing.

    Source:
        Dabs and bedding are common practice, no published source; hand sealing is IRC R905.2.6.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_sealing(shed, (), seen)
    >>> seen["sealing.dabs"].breaches
    0
    """
    way = plan.choices.sealing
    dab = pi / 4 * way.dab_diameter**2 * way.dab_thickness
    gauges["sealing.dab_size"].see(way.dab_diameter / 2, Where("", "dab"))
    dabs = floor(plan.sealant.dab_volume / dab + _DUST)
    closing = {_name(course): course for course in plan.courses if not course.nailable}
    on_courses = sum(len(piece.nails) for course in closing.values() for piece in course.laid)
    on_courses += sum(one.nails for one in bare if _row_name(one) not in closing)
    needed = on_courses + open_nails + _through_metal(plan) + _by_hand(plan)
    gauges["sealing.dabs"].see(max(0, needed - dabs), Where("", "sealant"))
    areas = _areas(one for one in bare if one.nails or _row_name(one) in closing)
    for course in plan.courses:
        area = areas.pop(_name(course), 0.0)
        if area:
            where = Where(course.plane, "course", course.number, 0, 0.0, course.butt)
            gauges["sealing.bedding"].see(_lacking(area, course.bedding_area), where)
    stated = sum(course.bedding_area for course in plan.courses)
    spread = plan.sealant.bedding_volume / way.bedding_thickness
    gauges["sealing.bedding"].see(_lacking(stated, spread), Where("", "cement"))


def _name(course: FinishedCourse) -> tuple[str, int]:
    return course.plane, course.number


def _row_name(bare: Bare) -> tuple[str, int]:
    return bare.row.plane, bare.row.number


def _lacking(area: float, has: float) -> float:
    return area - has if area - has > _DUST * area else 0.0


def _through_metal(plan: FinishedPlan) -> int:
    """Count the nails through metal that nothing covers."""
    return sum(run.nails for run in plan.metal if run.edge in {"ridge", "headwall"})


def _by_hand(plan: FinishedPlan) -> int:
    """Count the spots under strips that are sealed by hand."""
    spots = _SPOTS_OF_THREE_TABS if plan.choices.shingle.kind == "three_tab" else _SPOTS
    steep = {plane.name for plane in plan.planes if plane.pitch > _STEEP + _DUST}
    return spots * sum(len(course.laid) for course in plan.courses if course.plane in steep)


def _areas(bare: Iterable[Bare]) -> dict[tuple[str, int], float]:
    """Give the area of the pieces of each course that have such nails, from the eave metal up."""
    areas: dict[tuple[str, int], float] = {}
    for one in bare:
        course = _row_name(one)
        on_deck = [part for part in one.row.shapes[one.piece] if part.upper > 0]
        area = sum(part.between(max(part.lower, 0.0), part.upper).area() for part in on_deck)
        areas[course] = areas.get(course, 0.0) + area
    return areas
