"""Walls: step flashing beside walls, chimneys and skylights, piece by piece."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from roofing_core.auditing.edges import edges_of
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedStepPiece, FinishedStepRun
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.shapes import DUST
from roofing_core.measures.units import Inches

PIPE = "vent_pipe"


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """An upright side beside which courses end.

    Attributes:
        plane: The plane.
        at: At which end of its courses it stands, left or right.
        lower: Height of its lower end.
        upper: Height of its upper end.
        opening: Number of the opening whose side it is; 0 for a wall.
        beside: What it is a side of.
        u: Where along the eave it stands, at its lower end.
    """

    plane: str
    at: str
    lower: Inches
    upper: Inches
    opening: int
    beside: str
    u: Inches


def sides_of(plan: FinishedPlan) -> Iterator[Side]:
    """Give every side of a wall or an opening that takes step flashing.

    Args:
        plan: The plan.

    Returns:
        The walls, plane by plane, then both sides of each chimney and skylight.

    Raises:
        Nothing.

    Source:
        Step flashing beside walls: IRC R905.2.8.3, 2018.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> list(sides_of(finished(shed)))
    []
    """
    for plane in plan.planes:
        for edge in edges_of(plane):
            if edge.kind == "sidewall":
                low, high = sorted((edge.start[1], edge.end[1]))
                at = "right" if edge.rises() else "left"
                yield Side(
                    plane=plane.name,
                    at=at,
                    lower=max(low, 0.0),
                    upper=high,
                    opening=0,
                    beside="the wall",
                    u=(edge.start if edge.rises() else edge.end)[0],
                )
    for one in plan.openings:
        if one.kind != PIPE:
            for at, u in (("right", one.left), ("left", one.right)):
                yield Side(
                    plane=one.plane,
                    at=at,
                    lower=one.lower,
                    upper=one.upper,
                    opening=one.number,
                    beside=f"{one.kind.replace('_', ' ')} {one.number}",
                    u=u,
                )


def ask_walls(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask of every side of a wall or an opening about its step flashing.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        A residential trade journal's field guide: one for each course, on the one below and under
        its own, each over the one below it.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.openings import Skylight
    >>> from roofing_core.roof.planes import SingleSlope
    >>> window = Skylight(plane="slope", from_left=60, up_slope=40, width=24, height=36)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> seen = gauges(AuditLimits())
    >>> ask_walls(finished(plan(Job(roof=roof, openings=(window,)))), seen)
    >>> [margin.value.value for margin in seen["flashings.step_lap"].margin()]
    [2.375]
    """
    left = list(plan.step_flashings)
    legs = plan.choices.step_flashing
    for side in sides_of(plan):
        fits = [run for run in left if _is_beside(run, side)]
        if not fits:
            gauges["flashings.spans"].see(side.upper - side.lower, _named(side))
            continue
        run = min(fits, key=lambda run: abs(run.lower - side.lower))
        left.remove(run)
        where = _named(side)
        folded = _folded(plan, side) - gauges["flashings.corners"].limit
        gauges["flashings.spans"].see_off(_open(run, side, max(0.0, folded)), where)
        strays = max(abs(run.lower - side.lower), abs(run.upper - side.upper))
        gauges["plan.as_stated"].see_off(strays, where._replace(of="ends of the wall"))
        gauges["flashings.legs"].see(min(legs.deck_leg, legs.wall_leg), where)
        _ask_pieces(plan, run, where, gauges)


def _is_beside(run: FinishedStepRun, side: Side) -> bool:
    return (run.plane, run.side, run.opening) == (side.plane, side.at, side.opening)


def _named(side: Side) -> Where:
    stands = {"left": "right", "right": "left"}[side.at] if side.opening else side.at
    part = f"step flashing on the {stands} of {side.beside}"
    return Where(side.plane, part, 0, 0, side.u, side.lower)


def _folded(plan: FinishedPlan, side: Side) -> Inches:
    """Give how far an apron is folded round the lower corner of a side, under step flashing."""
    folds = [
        (piece.length - (one.right - one.left)) / 2
        for one in plan.openings
        if one.number == side.opening
        for piece in one.aprons
    ]
    return max(folds, default=0.0)


def _open(run: FinishedStepRun, side: Side, folded: Inches) -> Inches:
    """Give how much of a side has no step flashing, above what is folded round its corner."""
    reached, bare = side.lower + folded, 0.0
    for piece in sorted(run.pieces, key=lambda piece: piece.lower):
        bare += max(0.0, min(piece.lower, side.upper) - reached)
        reached = max(reached, piece.upper)
    return bare + max(0.0, side.upper - reached)


def _ask_pieces(
    plan: FinishedPlan, run: FinishedStepRun, where: Where, gauges: Mapping[str, Gauge]
) -> None:
    butts = {one.number: one.butt for one in plan.courses if one.plane == run.plane}
    for k, piece in enumerate(run.pieces, 1):
        at = where._replace(piece=k, v=piece.lower)
        gauges["flashings.steps"].see(not _is_under_its_own(piece, butts), at)
    for k, (piece, above) in enumerate(pairwise(run.pieces), 2):
        at = where._replace(piece=k, v=above.lower)
        lap = piece.upper - above.lower
        gauges["flashings.step_lap"].see(lap, at)
        off = max(0.0, run.lap - lap) if run.lap else 0.0  # a piece may lap by more
        gauges["plan.as_stated"].see_off(off, at._replace(of="lap"))


def _is_under_its_own(piece: FinishedStepPiece, butts: Mapping[int, Inches]) -> bool:
    """Tell whether a piece begins under the course that it is for, and under no other one."""
    if piece.course not in butts:
        return False
    above = butts.get(piece.course + 1, float("inf"))
    return butts[piece.course] - DUST <= piece.lower < above - DUST
