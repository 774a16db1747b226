"""Order of laying: whether each layer goes on before the one that sheds water over it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.gauges import Gauge, Where

#: What goes on before what, by the stages of the work. Eave metal under and rake metal over the
#: underlayment: IRC R905.2.8.5.
_BEFORE = (
    ("eave metal", "ice barrier"),
    ("eave metal", "underlayment"),
    ("eave metal", "rake metal"),
    ("ice barrier", "underlayment"),
    ("valley lining", "underlayment"),
    ("underlayment", "valley metal"),
    ("eave metal", "valley metal"),
    ("valley metal", "starter"),
    ("underlayment", "rake metal"),
    ("underlayment", "pitch break metal"),
    ("pitch break metal", "starter"),
    ("underlayment", "starter"),
    ("underlayment", "flashings"),
    ("rake metal", "starter"),
    ("starter", "courses"),
    ("courses", "ridge metal"),
    ("closing course", "ridge metal"),
    ("rake metal", "ridge metal"),
    ("courses", "apron metal"),
    ("closing course", "apron metal"),
    ("courses", "caps"),
    ("closing course", "caps"),
    ("rake metal", "caps"),
)

#: The same among the runs of metal, by their edges; valley metal runs out over that of the eave.
_METAL_BEFORE = (
    ("eave", "valley"),
    ("eave", "left_rake"),
    ("eave", "right_rake"),
    ("eave", "ridge"),
    ("left_rake", "ridge"),
    ("right_rake", "ridge"),
)


def ask_order(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask of the steps of the work, and of the runs of metal, whether their order sheds water.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        IRC R905.2.8.5, 2018; the rest is common practice, no published source.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_order(shed, seen)
    >>> seen["layers.order"].breaches
    0
    """
    gauge = gauges["layers.order"]
    stages = {
        stage: [step.number for step in plan.steps if step.stage == stage]
        for stage in _needed(plan)
    }
    for stage, numbers in stages.items():
        gauge.see(not numbers, Where("", f"step: {stage}", of="missing"))
    for first, stage, number in _broken(_BEFORE, stages):
        gauge.see(1, Where("", f"step: {stage}", number, of=f"before {first}"))
    runs: dict[str, list[int]] = {}
    for place, run in enumerate(plan.metal, 1):
        runs.setdefault(run.edge, []).append(place)
    for first, edge, place in _broken(_METAL_BEFORE, runs):
        before = f"before {first.replace('_', ' ')}"
        gauge.see(1, Where("", f"metal: {edge}", place, of=before))


def _needed(plan: FinishedPlan) -> Iterator[str]:
    """Give the stages that a plan's layers need."""
    edges = {run.edge for run in plan.metal}
    layers = (
        ("eave metal", "eave" in edges),
        ("ice barrier", plan.ice_barrier.rows),
        ("valley lining", plan.valley_lining.pieces),
        ("underlayment", plan.underlayment.rows),
        ("valley metal", "valley" in edges),
        ("pitch break metal", "pitch_break" in edges),
        ("rake metal", edges & {"left_rake", "right_rake"}),
        ("starter", plan.starters),
        ("courses", plan.courses),
        ("closing course", any(course.bedding_area for course in plan.courses)),
        ("flashings", plan.step_flashings or plan.openings),
        ("apron metal", "headwall" in edges),
        ("caps", plan.caps),
        ("ridge metal", "ridge" in edges),
    )
    return (stage for stage, there in layers if there)


def _broken(
    before: Iterable[tuple[str, str]], numbers: Mapping[str, Sequence[int]]
) -> Iterator[tuple[str, str, int]]:
    """Give what goes on before something that it has to follow, that first."""
    for first, then in before:
        if numbers.get(first) and numbers.get(then) and min(numbers[then]) < max(numbers[first]):
            yield first, then, min(numbers[then])
