"""Names: what a figure of a plan is called in trade words, from where it stands."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Any

from roofing_core.job.plan import Plan
from roofing_core.workings.expressions import Path

#: One of a list, where its name is not the list's without its s.
_ONE: Mapping[str, str] = MappingProxyType(
    {
        "laid": "piece",
        "metal": "run",
        "roll_plan": "roll",
        "sequence": "trim",
        "heads": "head flashing",
        "caps": "caps, line",
        "cut": "shingle",
        "cuts": "length",
        "bought": "size",
        "metal_bought": "profile",
    }
)

#: What the numbers of a point are called.
_AXES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "corners": ("place along the eave", "height up the slope"),
        "points": ("place to the right", "place to the back", "height"),
        "ends": ("place to the right", "place to the back", "height"),
    }
)


def _on(plan: Plan, entry: Any) -> str:
    """Say on which plane something is, where there are several."""
    return f" on {entry.plane}" if len(plan.planes) > 1 else ""


#: What an entry of a list is called, where its number alone would not tell.
_CALLED: Mapping[str, Callable[[Plan, Any, int], str]] = MappingProxyType(
    {
        "planes": lambda _, one, __: str(getattr(one, "name", "") or getattr(one, "plane", "")),
        "courses": lambda plan, one, _: f"course {one.number}{_on(plan, one)}",
        "starters": lambda plan, one, k: f"starter {k + 1}{_on(plan, one)}",
        "lines": lambda _, one, k: f"line {k + 1}, {one.kind.replace('_', ' ')}",
        "metal": lambda plan, one, k: (
            f"metal run {k + 1}, {one.edge.replace('_', ' ')}{_on(plan, one)}"
        ),
        "nails": lambda _, one, __: f"{one.use} nails",
        "loads": lambda _, one, __: f"the {one.name}",
        "openings": lambda _, one, k: f"opening {k + 1}, {one.kind.replace('_', ' ')}",
    }
)

#: The fields that are called otherwise than their words, by the field.
_SPELT: Mapping[str, str] = MappingProxyType(
    {
        "nails": "number of nails",
        "pieces": "number of pieces",
        "shingle_from": "start on its shingle",
        "shingle_to": "end on its shingle",
        "stock": "lengths bought",
        "per_bundle": "number in a bundle",
        "per_pack": "number in a pack",
        "per_box": "number in a box",
        "from_shingle": "number from a shingle",
        "begins": "place on its shingle",
        "run_by_run": "metal bought run by run",
        "saved": "metal saved",
        "upper": "upper edge",
        "lower": "lower edge",
        "left": "left edge",
        "right": "right edge",
    }
)

#: Groups of choices whose figures would not be understood without the group.
_MATERIALS = frozenset(
    (
        "shingle", "starter", "cap", "panel", "sealant", "cement", "underlayment", "ice_barrier",
        "valley_lining", "joint_tape", "step_flashing", "pipe_flashing", "flashing_sheet",
        "eave_metal", "rake_metal", "ridge_metal", "valley_metal", "pitch_break_metal",
        "apron_metal", "shingle_nail", "metal_nail", "cap_nail", "deck_nail",
    )
)  # fmt: skip


#: The figures of an order line.
_ORDERED: Mapping[str, str] = MappingProxyType(
    {
        "packs": "packs of {}",
        "needed": "{} needed",
        "pack_holds": "content of a pack of {}",
        "left_over": "{} left over",
        "sizes": "{}",
        "covers_more": "roof that the {} left over would cover",
        "pack_weight": "weight of a pack of {}",
        "used_weight": "weight of {} on the roof",
    }
)

_SIZES: Mapping[str, str] = MappingProxyType(
    {"packs": "packs of one size", "holds": "content of a pack of one size"}
)

#: The figures of the shingles that all pieces come from.
_CUT: Mapping[str, str] = MappingProxyType(
    {
        "shingles": "shingles that all pieces come from",
        "simply": "shingles with no offcut used again",
        "saved": "shingles saved",
        "whole": "shingles laid whole",
        "least": "least shingles that would do",
        "limit": "limit of the proof's weights",
        "cut_ahead": "shingles cut ahead",
        "most_kept": "most shingles kept at one time",
    }
)
_OF_THE_WHOLE = 2


def name_of(plan: Plan, path: Path) -> str:
    """Call a figure by its name.

    Args:
        plan: The plan that it stands in.
        path: Where it stands.

    Returns:
        Its name in trade words, the innermost first.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> name_of(planned, ("courses", 19, "butt")), name_of(planned, ("order", "shingles", "packs"))
    ('butt of course 20', 'packs of shingles')
    """
    if path[0] == "choices":
        return _choice(path)
    if path[0] == "as_measured":
        return f"{_measured(plan, path)} as measured"
    if path[0] == "order":
        told = _ORDERED.get(str(path[2]), "{}").format(words(path[1]))
        return f"{_SIZES[str(path[4])]} of {told}" if path[2] == "sizes" else told
    if path[0] == "cutting" and len(path) == _OF_THE_WHOLE:
        return _CUT.get(str(path[1]), words(path[1]))
    inner, *outer = reversed(list(_parts(plan, path)))
    if inner == "value" and outer[0].startswith("the "):  # of an amount: the limit of a finding
        inner, *outer = (outer[0].removeprefix("the "), *outer[1:])
    return " of ".join((inner, *outer))


def _choice(path: Path) -> str:
    group, *names = path[1:]
    last = names[-1]
    spelt = _SPELT.get(str(last)) or words(last)
    text = f"{_single(str(names[-2]))} {last + 1}" if isinstance(last, int) else spelt
    return f"{text} of the {words(group)}" if group in _MATERIALS else text


def _measured(plan: Plan, path: Path) -> str:
    """Call a measurement by what it is of, which stands two steps in what was measured."""
    inner, *outer = reversed(list(_parts(plan, path))[1:])
    if path[2] == "corners":  # of an outline in plan
        inner = _AXES["points"][int(path[-1])]
    return " of ".join((inner, *(name for name in outer if name != "the roof")))


def _parts(plan: Plan, path: Path) -> Iterator[str]:
    """Give the names from the outermost to the innermost: entries, fields, what is in neither."""
    value: Any = plan
    for k, name in enumerate(path):
        value = value[name] if isinstance(name, int) else getattr(value, str(name))
        if isinstance(name, int):
            yield _entry(plan, path[k - 1], value, name, path[k - 2])
        elif k + 1 == len(path):
            yield _SPELT.get(str(name), words(name))
        elif not isinstance(path[k + 1], int):
            yield f"the {words(name)}"
        elif k and not isinstance(path[k - 1], int):
            continue


def _entry(plan: Plan, listed: str | int, entry: Any, k: int, outer: str | int) -> str:
    axis = isinstance(entry, int | float)
    if isinstance(listed, int):
        return _AXES.get(str(outer), _AXES["corners"])[k] if axis else f"corner {k + 1}"
    if listed == "points":
        return f"corner {k + 1} in space"
    called = _CALLED.get(listed)
    if called is not None and not isinstance(entry, int | float | tuple):
        return called(plan, entry, k)
    return f"{_single(listed)} {k + 1}"


def _single(many: str) -> str:
    return _ONE.get(many) or words(many).removesuffix("s")


def words(name: str | int) -> str:
    """Write a name of the plan as words.

    Args:
        name: The name.

    Returns:
        The words.

    Raises:
        Nothing.

    Source:
        The name.

    >>> words("starter_past_metal")
    'starter past metal'
    """
    return str(name).replace("_", " ")
