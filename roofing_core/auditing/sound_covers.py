"""Sound covers: whether what is given of lines between planes, caps and flashings can be."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedOpening
from roofing_core.auditing.joins import shared_edges
from roofing_core.auditing.sound import known_plane
from roofing_core.measures.faults import Fault, Place, refuse_if_any
from roofing_core.measures.sentences import say
from roofing_core.measures.units import Inches

#: Shorter than this a line is a point.
_POINT = 1e-9


def refuse_unsound_covers(plan: FinishedPlan) -> None:
    """Refuse what is no roof: an edge without length, a line that one plane alone knows of.

    Args:
        plan: What is to be audited.

    Raises:
        Refused: An edge has no length, a plane is not beyond the one that is beyond it, a flashing
            lies on no plane, a number is none; names each.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> refuse_unsound_covers(finished(plan(Job(roof=Gable(length=168, width=112, pitch=0.5)))))
    """
    refuse_if_any([*_corners(plan), *_numbers(plan)])
    refuse_if_any([*_shared(plan), *_steps(plan), *_openings(plan)])


def _corners(plan: FinishedPlan) -> Iterator[Fault]:
    for k, plane in enumerate(plan.planes):
        for n, ((au, av), (bu, bv)) in enumerate(
            zip(plane.corners, (*plane.corners[1:], plane.corners[0]), strict=True)
        ):
            if abs(bu - au) + abs(bv - av) < _POINT:
                wanted = say("a corner of its own")
                yield Fault(("planes", k, "corners", n), "the same corner twice", wanted)


def _shared(plan: FinishedPlan) -> Iterator[Fault]:
    """Give the edges that have a plane beyond which has no such edge with this one beyond it."""
    names = [plane.name for plane in plan.planes]
    shared = shared_edges(plan)
    for (name, kind, other), edges in shared.items():
        if len(shared.get((other, kind, name), ())) != len(edges):
            at = ("planes", names.index(name), "beyond")
            came = f"{len(edges)} {kind.replace('_', ' ')} beyond which is {other or 'no plane'}"
            yield Fault(at, came, say("as many edges of that kind as that plane has with this one"))


def _numbers(plan: FinishedPlan) -> Iterator[Fault]:
    """Give what has a number that is none."""
    choices = plan.choices
    chosen = (
        choices.cap.length,
        choices.valley_lining.width,
        choices.step_flashing.deck_leg,
        choices.step_flashing.wall_leg,
        choices.pipe_flashing.base_width,
        choices.pipe_flashing.base_length,
        choices.flashing.head_height,
    )
    yield from _fault(("choices",), chosen)
    for k, run in enumerate(plan.caps):
        sizes = (run.line_length, run.last_length, run.half_width, run.nail_from_line)
        yield from _fault(("caps", k), (*sizes, *run.butts, *run.nail_positions))
    for k, line in enumerate(plan.lines):
        yield from _fault(("lines", k), (line.length,))
    for k, piece in enumerate(plan.valley_lining.pieces):
        yield from _fault(("valley_lining", "pieces", k), (piece.length, piece.lap))


def _fault(at: Place, numbers: tuple[Inches, ...]) -> Iterator[Fault]:
    if not isfinite(sum(numbers)):
        yield Fault(at, "a number that is none", say("finite numbers"))


def _steps(plan: FinishedPlan) -> Iterator[Fault | None]:
    for k, run in enumerate(plan.step_flashings):
        at = ("step_flashings", k)
        yield known_plane(plan, at, run.plane)
        heights = tuple(v for piece in run.pieces for v in (piece.lower, piece.upper))
        yield from _fault(at, (run.lower, run.upper, *heights))


def _openings(plan: FinishedPlan) -> Iterator[Fault | None]:
    for k, one in enumerate(plan.openings):
        at = ("openings", k)
        yield known_plane(plan, at, one.plane)
        yield from _fault(at, _sizes(one))
        if not (one.left < one.right and one.lower < one.upper):
            wanted = say("left before right, lower before upper")
            yield Fault(at, "an opening without width or height", wanted)


def _sizes(one: FinishedOpening) -> tuple[Inches, ...]:
    found = [one.left, one.right, one.lower, one.upper]
    for piece in (*one.aprons, *one.heads):
        found += [piece.length, piece.deck_leg, piece.wall_leg]
    for each in one.crickets:
        found += [each.height, each.up_slope, each.valley_length, each.metal_area]
    for pipe in one.pipes:
        found += [pipe.side_flange, pipe.slope_flange]
    return tuple(found)
