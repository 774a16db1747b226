"""Sound words: whether every word of a plan is one that it can be, and every size one that can be.

What is read by a word, the kind of an edge or of an opening, would else be taken for another, or
for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.measures.faults import Fault, Place, refuse_if_any
from roofing_core.measures.sentences import say
from roofing_core.roof.outlines import EdgeKind

_EDGES = frozenset(get_args(EdgeKind))
_BETWEEN_PLANES = frozenset({"hip", "valley", "pitch_break"})
_SHARED = _BETWEEN_PLANES | {"ridge"}
_LEVEL = frozenset({"eave", "ridge", "pitch_break", "headwall"})
_METAL = frozenset(
    {"eave", "left_rake", "right_rake", "ridge", "headwall", "pitch_break", "valley"}
)
_TABS = frozenset({"both", "start", "end"})
_LAPS = frozenset({"upper_over_lower", "either"})
_CAPPED = frozenset({"hip", "ridge"})
_STARTS = frozenset({"lower", "left", "right", "front", "back", "either"})
_WINDS = frozenset({"left", "right", "front", "back", "unknown"})
_SIDES = frozenset({"left", "right"})
_OPENINGS = frozenset({"vent_pipe", "skylight", "chimney"})
_SHINGLES = frozenset({"laminated", "three_tab"})


def refuse_unknown_words(plan: FinishedPlan) -> None:
    """Refuse a plan with a word that means nothing, or with a size that is less than nothing.

    Args:
        plan: What is to be audited.

    Raises:
        Refused: An edge, a run of metal, a line with caps, an opening or the shingle is of a kind
            that there is not, a hip ends in nothing, or a size is negative; names each.

    Source:
        The plan's own words.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> refuse_unknown_words(finished(shed))
    """
    refuse_if_any([*_edges(plan), *_metal(plan), *_covers(plan), *_choices(plan), *_sizes(plan)])


def _word(at: Place, word: str, words: frozenset[str]) -> Iterator[Fault]:
    if word not in words:
        yield Fault(at, word or "none", say("one of ", ", ".join(sorted(words))))


def _edges(plan: FinishedPlan) -> Iterator[Fault]:
    for k, plane in enumerate(plan.planes):
        ahead = (*plane.corners[1:], plane.corners[0])
        ends = zip(plane.corners, ahead, strict=True)
        for n, ((_, v), (_, to)) in enumerate(ends):
            at, kind = ("planes", k, "edges", n), plane.edges[n]
            yield from _word(at, kind, _EDGES)
            if kind in _EDGES and (abs(to - v) <= TOUCHING) != (kind in _LEVEL):
                lies = "rises or falls" if kind in _LEVEL else "is level"
                yield Fault(at, kind.replace("_", " "), say(f"a kind for an edge that {lies}"))
            yield from _beyond(("planes", k, "beyond", n), kind, plane.beyond[n])
        if not plane.pitch > 0:
            yield Fault(("planes", k, "pitch"), f"{plane.pitch:g}", say("more than 0"))
    for k, line in enumerate(plan.lines):
        yield from _word(("lines", k, "kind"), line.kind, _EDGES)


def _beyond(at: Place, kind: str, beyond: str) -> Iterator[Fault]:
    named = kind.replace("_", " ")
    if kind in _BETWEEN_PLANES and not beyond:
        yield Fault(at, "none", say(f"the plane beyond the {named}"))
    if beyond and kind in _EDGES and kind not in _SHARED:
        yield Fault(at, beyond, say(f"left empty: no plane lies beyond the {named} of this one"))


def _metal(plan: FinishedPlan) -> Iterator[Fault]:
    for k, run in enumerate(plan.metal):
        yield from _word(("metal", k, "edge"), run.edge, _METAL)
        yield from _word(("metal", k, "tabs"), run.tabs, _TABS)
        yield from _word(("metal", k, "lap_direction"), run.lap_direction, _LAPS)


def _covers(plan: FinishedPlan) -> Iterator[Fault]:
    for k, caps in enumerate(plan.caps):
        yield from _word(("caps", k, "line"), caps.line, _CAPPED)
        yield from _word(("caps", k, "starts_at"), caps.starts_at, _STARTS)
    for k, run in enumerate(plan.step_flashings):
        yield from _word(("step_flashings", k, "side"), run.side, _SIDES)
    for k, one in enumerate(plan.openings):
        yield from _word(("openings", k, "kind"), one.kind, _OPENINGS)


def _choices(plan: FinishedPlan) -> Iterator[Fault]:
    choices = plan.choices
    yield from _word(("choices", "shingle", "kind"), choices.shingle.kind, _SHINGLES)
    yield from _word(("choices", "capping", "wind_from"), choices.capping.wind_from, _WINDS)


def _sizes(plan: FinishedPlan) -> Iterator[Fault]:
    """Give the sizes and counts that are less than nothing."""
    listed = [
        (("metal", k, name), getattr(run, name))
        for k, run in enumerate(plan.metal)
        for name in ("run_length", "tab", "deck_leg", "face_leg", "nails")
    ]
    listed += [(("courses", k, "bedding_area"), one.bedding_area)
               for k, one in enumerate(plan.courses)]  # fmt: skip
    listed += [
        (("caps", k, name), getattr(run, name))
        for k, run in enumerate(plan.caps)
        for name in ("last_length", "half_width", "nail_from_line", "exposed_nails")
    ]
    return (Fault(at, f"{size:g}", say("zero or more")) for at, size in listed if size < 0)
