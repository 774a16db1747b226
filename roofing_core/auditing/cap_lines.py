"""Cap lines: the hips and ridges that take caps, the caps of each, and what of it they cover."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.auditing.edges import Edge
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedCaps
from roofing_core.auditing.joins import Join, joins_of, with_theirs
from roofing_core.auditing.shapes import DUST, TOUCHING, Span


def caps_along(plan: FinishedPlan) -> tuple[tuple[Join, int], ...]:
    """Give every hip, and every ridge that two planes share, with its caps.

    Args:
        plan: The plan.

    Returns:
        The joins, each with the place of its run of caps; -1 where it has none.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> roof = finished(plan(Job(roof=Gable(length=400, width=240, pitch=0.5))))
    >>> [(join.kind, k) for join, k in caps_along(roof)]
    [('ridge', 0)]
    """
    joins = joins_of(plan)
    found: dict[int, int] = {}
    for kind in ("hip", "ridge"):
        places = [k for k, run in enumerate(plan.caps) if run.line == kind]
        of_kind = [join for join in joins if join.kind == kind]
        pairs = with_theirs(
            of_kind,
            [plan.caps[k] for k in places],
            between=lambda run: frozenset(run.planes),
            long=lambda run: run.line_length,
        )
        found |= {id(join): places[k] if k >= 0 else -1 for join, k in pairs}
    return tuple((join, found[id(join)]) for join in joins if id(join) in found)


def spans_of(
    plan: FinishedPlan, run: FinishedCaps, edge: Edge, *, turned: bool
) -> tuple[Span, ...]:
    """Give from where to where caps lie along the edge of one of their planes.

    Args:
        plan: The plan.
        run: The caps.
        edge: The edge.
        turned: Whether the edge is the second of its join; of a ridge the first is walked as its
            caps are laid.

    Returns:
        The stretches, from the start of the edge.

    Raises:
        Nothing.

    Source:
        Geometry; a hip is capped from its lower end.

    >>> ridge = Edge(plane="front", kind="ridge", start=(90, 60), end=(0, 60), beyond="back")
    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> roof = finished(plan(Job(roof=Gable(length=90, width=240, pitch=0.5))))
    >>> spans_of(roof, roof.caps[0], ridge, turned=False)
    ((0.0, 90.0),)
    """
    long = edge.length()
    reached = covered_by(plan, run)
    # A line measured by hand has the mean length of its two sides.
    stretch = long / run.line_length if reached and abs(long - run.line_length) <= 1 else 1.0
    found = [(low * stretch, min(high * stretch, long)) for low, high in reached]
    backwards = not edge.rises() if run.line == "hip" else turned
    if backwards:
        found = [(long - high, long - low) for low, high in reversed(found)]
    return tuple((low, high) for low, high in found if high - low > DUST)


def covered_by(plan: FinishedPlan, run: FinishedCaps) -> list[Span]:
    """Give the stretches of a line that its caps lie over, from where laying starts.

    Args:
        plan: The plan.
        run: The caps.

    Returns:
        The stretches; those that touch are one.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> roof = finished(plan(Job(roof=Gable(length=90, width=240, pitch=0.5))))
    >>> covered_by(roof, roof.caps[0])
    [(0.0, 90.0)]
    """
    found: list[Span] = []
    for low, high in sorted(_each(plan, run)):
        if found and low - found[-1][1] <= TOUCHING:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def _each(plan: FinishedPlan, run: FinishedCaps) -> Iterator[Span]:
    """Give from where to where each cap lies: the last as it is cut, others as long as they are."""
    last = len(run.butts) - 1
    for k, butt in enumerate(run.butts):
        long = run.last_length if k == last else plan.choices.cap.length
        yield max(butt, 0.0), min(butt + long, run.line_length)
