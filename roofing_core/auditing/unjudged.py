"""Unjudged: what a roof has that its plan does not say enough of to be judged.

Said with every verdict, so that nobody takes it for looked at.
"""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.measures.sentences import Sentence, say


def not_judged(plan: FinishedPlan) -> tuple[Sentence, ...]:
    """Give what a roof has that the audit does not judge.

    Args:
        plan: The plan.

    Returns:
        One sentence for each.

    Raises:
        Nothing.

    Source:
        What a plan has no place for.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> not_judged(finished(shed))[0].written()[:48]
    'What the plan says in words and what it adds up:'
    """
    return tuple(say(told) for told in _told(plan))


def _told(plan: FinishedPlan) -> Iterator[str]:
    yield from _of_any_roof(plan)
    yield from _of_lines(plan)


def _of_any_roof(plan: FinishedPlan) -> Iterator[str]:
    yield (
        "What the plan says in words and what it adds up: steps, cut lists, totals, the order. What"
        " is judged is where each piece lies."
    )
    yield (
        "Whether the planes and openings are those that were measured, and the materials those that"
        " were bought: they are taken as the plan gives them."
    )
    yield (
        "What holds the roof in wind: how far apart metal, sheets and deck are nailed, how long"
        " nails are, and where in their zone they go."
    )
    if any(run.edge == "ridge" or run.laps for run in plan.metal):
        yield "The beads of sealant under ridge metal and in the laps of metal."
    if plan.ice_barrier.rows:
        yield "How far inside the wall line the ice barrier reaches."
    if any(piece.corners for course in plan.courses for piece in course.laid):
        yield "Whether pieces cut to an outline, or beside a valley, have nails enough."


def _of_lines(plan: FinishedPlan) -> Iterator[str]:
    kinds = {kind for plane in plan.planes for kind in plane.edges}
    walls = bool(kinds & {"sidewall", "headwall"} or plan.step_flashings)
    if walls or plan.openings:
        yield (
            "What covers the upright legs of flashings, siding or counterflashing, and the"
            " underlayment turned up there."
        )
    if any(one.kind == "skylight" for one in plan.openings):
        yield "How high the curb of a skylight stands above the roof."
    if any(one.crickets for one in plan.openings):
        yield "How the sheets of a cricket are joined."
    if plan.step_flashings:
        yield "Where the nails of shingles and of step flashing go through its leg on the roof."
    if "valley" in kinds:
        yield "How far from the middle the nails of valley metal and of its lining stand."
        if not any(run.edge == "valley" for run in plan.metal):
            yield "The cement under the cut edge of a closed valley."
