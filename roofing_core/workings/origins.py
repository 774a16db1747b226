"""Origins: where a number that is put into a formula comes from."""

from __future__ import annotations

from typing import Final, Literal

from roofing_core.job.choices import Choices
from roofing_core.job.plan import Plan
from roofing_core.workings.expressions import Path
from roofing_core.workings.formulas import formula_of
from roofing_core.workings.places import pattern_of

Origin = Literal["chosen", "default", "measured", "follows", "worked", "numbered", "laid_out"]

#: Numbers that name a thing by its place and measure nothing.
NUMBERS = frozenset(("number", "row", "roll", "panel", "valley", "course", "opening"))

#: What follows from how the roof was measured: a plan that does not keep that ends there.
MEASURED = frozenset(
    (
        "/roof/eave_length",
        "/roof/slope_length",
        "/roof/pitch",
        "/roof/eave_overhang",
        "/planes/*/pitch",
        "/planes/*/corners/*/*",
        "/planes/*/points/*/*",
        "/openings/*/left",
        "/openings/*/right",
        "/openings/*/lower",
        "/openings/*/upper",
    )
)

#: What each origin is called on a sheet.
SAID: Final[dict[Origin, str]] = {
    "chosen": "as chosen",
    "default": "the default",
    "measured": "as it was measured",
    "follows": "follows from how the roof was measured, which this plan does not keep",
    "worked": "worked out above",
    "numbered": "its place in the list",
    "laid_out": "as laid out, with no formula of its own",
}


def origin_of(plan: Plan, path: Path) -> Origin:
    """Tell where a number of a plan comes from.

    Args:
        plan: The plan.
        path: Where the number stands.

    Returns:
        Chosen by the caller, or the default, which no chosen value differs from; measured on the
        roof; worked out by a formula; the number of a thing in its list; or as laid out, where
        there is no formula.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> origin_of(planned, ("choices", "shingle", "exposure"))
    'default'
    """
    if path[0] == "as_measured":
        return "measured"
    if path[0] == "choices":
        return "default" if _as_by_default(plan, path) else "chosen"
    if formula_of(plan, path) is not None:
        return "worked"
    if path[-1] in NUMBERS or "cut_from" in path:
        return "numbered"
    return "follows" if pattern_of(path) in MEASURED else "laid_out"


_USUAL = Choices()


def _as_by_default(plan: Plan, path: Path) -> bool:
    """Tell whether a choice is the default; of a material, whether all of it is."""
    chosen, usual = (getattr(choices, str(path[1])) for choices in (plan.choices, _USUAL))
    if hasattr(usual, "name"):
        return bool(chosen == usual)
    for name in path[2:]:
        chosen, usual = (
            one[name] if isinstance(name, int) else getattr(one, str(name))
            for one in (chosen, usual)
        )
    return bool(chosen == usual)
