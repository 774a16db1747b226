"""Formulas: one table of all figures that have a working, by the pattern of where they stand."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from roofing_core.job.plan import Plan
from roofing_core.workings.at import At, Formula, Known
from roofing_core.workings.expressions import Expression, Path, evaluated
from roofing_core.workings.of_caps import CAPS
from roofing_core.workings.of_courses import COURSES, STARTERS
from roofing_core.workings.of_cutting import CUTTING
from roofing_core.workings.of_deck import DECK
from roofing_core.workings.of_flashing import OPENINGS, STEPS
from roofing_core.workings.of_given import OPENING_SIDES
from roofing_core.workings.of_ice_barrier import ICE_BARRIER
from roofing_core.workings.of_joints import JOINTS
from roofing_core.workings.of_lining import VALLEY_LINING
from roofing_core.workings.of_metal import METAL
from roofing_core.workings.of_metal_bought import METAL_BOUGHT
from roofing_core.workings.of_nails import NAILS
from roofing_core.workings.of_order import ORDER
from roofing_core.workings.of_outlines import OUTLINES
from roofing_core.workings.of_pieces import PIECES
from roofing_core.workings.of_roof import ROOF
from roofing_core.workings.of_seals import SEALANT
from roofing_core.workings.of_shingles import SHINGLES
from roofing_core.workings.of_underlayment import UNDERLAYMENT
from roofing_core.workings.of_weight import WEIGHT
from roofing_core.workings.places import pattern_of

#: A formula is a figure's that comes to it within this part of it: the dust of a few sums.
_AGREES = 1e-9

#: What a formula runs into where a plan was edited until its parts contradict each other: a length
#: that is no longer on offer, a piece of a row that is gone. Of plans as made tests allow for none.
_AT_ODDS = (ArithmeticError, AssertionError, LookupError, RuntimeError, StopIteration, ValueError)

#: Every figure's formula, by the pattern of its place.
FORMULAS: Mapping[str, Formula] = MappingProxyType(
    {
        **ROOF,
        **DECK,
        **ICE_BARRIER,
        **VALLEY_LINING,
        **UNDERLAYMENT,
        **METAL,
        **METAL_BOUGHT,
        **STARTERS,
        **COURSES,
        **PIECES,
        **OUTLINES,
        **JOINTS,
        **SHINGLES,
        **CUTTING,
        **CAPS,
        **STEPS,
        **OPENINGS,
        **OPENING_SIDES,
        **NAILS,
        **SEALANT,
        **WEIGHT,
        **ORDER,
    }
)


def formula_of(plan: Plan, path: Path, known: Known | None = None) -> tuple[Expression, str] | None:
    """Find how a figure of a plan is worked out.

    Args:
        plan: The plan.
        path: Where the figure stands.
        known: What was found out of the plan for other figures; nothing yet unless given.

    Returns:
        The formula and its source; nothing for a figure that has none, or one that a formula does
        not come to, as where a plan was edited.

    Raises:
        Nothing.

    Source:
        Each formula's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> found = formula_of(planned, ("courses", 19, "butt"))
    >>> evaluated(found[0]), found[1]  # doctest: +ELLIPSIS
    (106.375, 'Geometry; ...')
    """
    formula = FORMULAS.get(pattern_of(path))
    if formula is None:
        return None
    at = At(plan, path, known or Known())
    return at.known.kept(("formula", path), lambda: _made(formula, at))


def _made(formula: Formula, at: At) -> tuple[Expression, str] | None:
    try:
        made = formula.make(at)
        agrees = made is not None and _agrees(made, at.value())
    except _AT_ODDS:
        return None
    return (made, formula.source) if made is not None and agrees else None


def _agrees(made: Expression, value: float) -> bool:
    return abs(evaluated(made) - value) <= _AGREES * max(1.0, abs(value))
