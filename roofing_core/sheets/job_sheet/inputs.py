"""What a plan was asked with: the materials that it uses, and choices that are not the usual."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any, get_args, get_type_hints

from roofing_core.job.choices import Choices
from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import write
from roofing_core.measures.units import System, Unit


def openings_in(plan: Plan, system: System = "us") -> tuple[tuple[str, str], ...]:
    """Name what comes through the roof, and where.

    Args:
        plan: A finished plan.
        system: The unit system of the measurements.

    Returns:
        Each opening, and its sides from the left corner of its plane and up the slope.

    Raises:
        Nothing.

    Source:
        The plan's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.openings import VentPipe
    >>> from roofing_core.roof.planes import SingleSlope
    >>> pipe = VentPipe(plane="slope", from_left=60, up_slope=40, diameter=3)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> openings_in(plan(Job(roof=roof, openings=(pipe,))))
    (('vent pipe 1 in slope', '4 ft 10 1/2 in to 5 ft 1 1/2 in, up 38 7/16 in to 41 9/16 in'),)
    """
    told = []
    for one in plan.openings:
        left, right, lower, upper = (
            write(side, "in", system) for side in (one.left, one.right, one.lower, one.upper)
        )
        what = f"{one.kind.replace('_', ' ')} {one.number} in {one.plane}"
        told.append((what, f"{left} to {right}, up {lower} to {upper}"))
    return tuple(told)


def materials_used(plan: Plan) -> tuple[tuple[str, str], ...]:
    """Name the material of each thing on the order list.

    Args:
        plan: A finished plan.

    Returns:
        The item and its material, in the order of work.

    Raises:
        Nothing.

    Source:
        The plan's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> materials_used(planned)[1]
    ('underlayment', 'felt 15')
    """
    return tuple((line.item, line.material.replace("_", " ")) for line in plan.order.lines())


def changed_choices(plan: Plan, system: System = "us") -> tuple[tuple[str, str], ...]:
    """Name every choice that is not as it is unless told otherwise.

    Args:
        plan: A finished plan.
        system: The unit system of the measurements.

    Returns:
        The choice, as in ``metalwork, lap``, and what was chosen.

    Raises:
        Nothing.

    Source:
        The plan's own.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> changed_choices(plan(Job(roof=roof, metalwork=Metalwork(lap=4.0))))
    (('metalwork, lap', '4 in'),)
    """
    usual = Choices()
    return tuple(
        changed
        for one in fields(Choices)
        for changed in _changed(
            getattr(plan.choices, one.name), getattr(usual, one.name), one.name, system
        )
    )


def _changed(chosen: Any, usual: Any, at: str, system: System) -> Iterator[tuple[str, str]]:
    if chosen == usual or not is_dataclass(chosen):
        return
    hints = get_type_hints(type(chosen), include_extras=True)
    for one in fields(chosen):
        value = getattr(chosen, one.name)
        if value != getattr(usual, one.name, None):
            name = f"{at}, {one.name}".replace("_", " ")
            yield name, _told(value, hints[one.name], system)


def _told(value: Any, hint: Any, system: System) -> str:
    if isinstance(value, tuple):
        inner = get_args(hint)[0] if get_args(hint) else hint
        return ", ".join(_told(each, inner, system) for each in value)
    units = [said.name for said in getattr(hint, "__metadata__", ()) if isinstance(said, Unit)]
    if units:
        return write(value, units[0], system)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value).replace("_", " ")
