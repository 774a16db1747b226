"""Origins: where a number that is put into a formula comes from."""

from __future__ import annotations

from typing import Final, Literal

from roofing_core.job.choices import Choices
from roofing_core.job.plan import Plan
from roofing_core.workings.at import Known
from roofing_core.workings.expressions import Path
from roofing_core.workings.formulas import formula_of
from roofing_core.workings.places import pattern_of

Origin = Literal[
    "chosen",
    "default",
    "measured",
    "follows",
    "worked",
    "numbered",
    "found",
    "searched",
    "laid_out",
]

#: Numbers that name a thing by its place and measure nothing.
NUMBERS = frozenset(("number", "row", "roll", "panel", "valley", "course", "opening"))

_CUT_FROM = "cut_from"

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

#: What a search decides, where no formula gives it: the weights of its proof, and where it parts a
#: run that lengths are shared for. That they add up is worked out with what is made of them.
SEARCHED = frozenset(
    (
        "/cutting/limit",
        "/cutting/cut/*/pieces/*/weight",
        "/metal_bought/*/least_metal",
        "/metal_bought/*/cuts/*/pieces/*/length",
    )
)

#: Parts of a plan whose numbers no formula gives. Findings tell where theirs come from themselves.
_OF_PARTS: Final[dict[str, Origin]] = {
    "as_measured": "measured",
    "findings": "found",
    "cautions": "found",
}

#: What each origin is called on a sheet.
SAID: Final[dict[Origin, str]] = {
    "chosen": "as chosen",
    "default": "the default",
    "measured": "as it was measured",
    "follows": "follows from how the roof was measured, which this plan does not keep",
    "worked": "worked out above",
    "numbered": "its place in the list",
    "found": "as it was found: the rule says what is asked, and the place where",
    "searched": "as a search found it, which proves what it comes to by adding up",
    "laid_out": "as laid out, with no formula of its own",
}


def origin_of(plan: Plan, path: Path, known: Known | None = None) -> Origin:
    """Tell where a number of a plan comes from.

    Args:
        plan: The plan.
        path: Where the number stands.
        known: What was found out of the plan for other figures; nothing yet unless given.

    Returns:
        Chosen by the caller, or the default, which no chosen value differs from; measured on the
        roof, or following from that in a plan that does not keep it; worked out by a formula; the
        number of a thing in its list; the value or the limit of a finding; found by a search; or as
        laid out, where no formula comes to it, as in a plan that was edited.

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
    if str(path[0]) in _OF_PARTS:
        return _OF_PARTS[str(path[0])]
    if path[0] == "choices":
        return "default" if _as_by_default(plan, path) else "chosen"
    if formula_of(plan, path, known) is not None:
        return "worked"
    if path[-1] in NUMBERS or _CUT_FROM in path:
        return "numbered"
    return _without_formula(pattern_of(path))


def _without_formula(pattern: str) -> Origin:
    if pattern in SEARCHED:
        return "searched"
    return "follows" if pattern in MEASURED else "laid_out"


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
