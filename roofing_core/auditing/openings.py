"""Openings: whether each is flashed on all four sides, and how far its flashing reaches."""

from __future__ import annotations

from collections.abc import Mapping
from math import sqrt
from types import MappingProxyType

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedBent, FinishedOpening
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.auditing.walls import PIPE, sides_of
from roofing_core.measures.units import Pitch

#: Residential code R903.2.2: a chimney wider than this has a cricket.
NO_CRICKET_UP_TO = 30.0

#: At the right end of courses stands the left side of an opening.
_STANDS = MappingProxyType({"left": "right", "right": "left"})

#: Of the nails in the base of a pipe's flashing one half is above the pipe, under the courses.
_BARE_PART = 2


def ask_openings(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> int:
    """Ask of every opening what goes round it.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Returns:
        How many nails of its flashing nothing covers: those of aprons, and the lower ones of pipes.

    Raises:
        Nothing.

    Source:
        IRC R903.2 and R905.2.8, 2018; water runs from what is above over what is below.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.openings import Chimney
    >>> from roofing_core.roof.planes import SingleSlope
    >>> chimney = Chimney(plane="slope", from_left=60, up_slope=40, width=36, depth=24)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> ask_openings(finished(plan(Job(roof=roof, openings=(chimney,)))), gauges(AuditLimits()))
    4
    """
    stepped = [(one.opening, one.side) for one in plan.step_flashings]
    sides = [side for side in sides_of(plan) if side.opening]
    for one in plan.openings:
        here = Where(one.plane, one.kind.replace("_", " "), one.number)
        lacking = [
            f"step flashing on the {_STANDS[side.at]}"
            for side in sides
            if side.opening == one.number and (one.number, side.at) not in stepped
        ]
        lacking += _lacking(one)
        gauges["flashings.around"].see(len(lacking), here._replace(of=", ".join(lacking)))
        wide = one.kind == "chimney" and one.right - one.left > NO_CRICKET_UP_TO + TOUCHING
        gauges["flashings.cricket"].see(wide and not one.crickets, here)
        for piece in (*one.aprons, *one.heads):
            _ask_bent(piece, one, here, gauges)
        if one.crickets:
            _ask_cricket(plan, one, here, gauges)
        _ask_pipes(plan, one, here, gauges)
    return sum(
        sum(piece.nails for piece in one.aprons)
        + sum(pipe.nails // _BARE_PART for pipe in one.pipes)
        for one in plan.openings
    )


def _lacking(one: FinishedOpening) -> list[str]:
    """Name what lacks below and above an opening."""
    if one.kind == PIPE:
        return [] if one.pipes else ["flashing of the pipe"]
    below = [] if one.aprons else ["apron"]
    return below + ([] if one.heads or one.crickets else ["head flashing or cricket"])


def _ask_bent(
    piece: FinishedBent, one: FinishedOpening, here: Where, gauges: Mapping[str, Gauge]
) -> None:
    gauges["flashings.legs"].see(min(piece.deck_leg, piece.wall_leg), here)
    gauges["flashings.corners"].see((piece.length - (one.right - one.left)) / 2, here)


def _ask_cricket(
    plan: FinishedPlan, one: FinishedOpening, here: Where, gauges: Mapping[str, Gauge]
) -> None:
    """Ask how far the metal of a cricket that has the roof's own pitch reaches beside its valleys.

    Of its area, what lies on its two planes and what stands up the chimney is left out.
    """
    [cricket, *_] = one.crickets
    half, pitch = (one.right - one.left) / 2, _pitch(plan, one)
    up_slope, valley = half * sqrt(1 + pitch**2), half * sqrt(2 + pitch**2)
    up_chimney = 2 * up_slope * plan.choices.flashing.head_height
    under = (cricket.metal_area - half * up_slope - up_chimney) / (2 * valley)
    gauges["flashings.cricket_lap"].see(under, here)
    stated = (cricket.height, half * pitch), (cricket.up_slope, up_slope)
    for told, measured in (*stated, (cricket.valley_length, valley)):
        gauges["plan.as_stated"].see_off(told - measured, here)


def _pitch(plan: FinishedPlan, one: FinishedOpening) -> Pitch:
    return next(plane.pitch for plane in plan.planes if plane.name == one.plane)


def _ask_pipes(
    plan: FinishedPlan, one: FinishedOpening, here: Where, gauges: Mapping[str, Gauge]
) -> None:
    base = plan.choices.pipe_flashing
    side = (base.base_width - (one.right - one.left)) / 2
    slope = (base.base_length - (one.upper - one.lower)) / 2
    for pipe in one.pipes:
        told = min(pipe.side_flange, pipe.slope_flange)
        gauges["flashings.pipe"].see(min(side, slope, told), here)
        for stated, measured in ((pipe.side_flange, side), (pipe.slope_flange, slope)):
            gauges["plan.as_stated"].see_off(stated - measured, here)
