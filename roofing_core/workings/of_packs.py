"""The working of packs: what one of each line of the order holds, and what it weighs."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from roofing_core.job.edges import METALS
from roofing_core.workings.at import At, Make
from roofing_core.workings.expressions import Constant, Expression, Listed
from roofing_core.workings.of_metal_bought import cuts_of_metal

_IN_A_FOOT = Constant(12, "in/ft", "inches in a foot")
_METALS = tuple(dict.fromkeys(METALS.values()))


def _name(at: At) -> str:
    return str(at.path[1])


def _stock(at: At) -> Expression:
    """Give the length that a metal is bought in: that of its runs, or the first on offer.

    Bought across runs, it is the middle of the lengths that are first cut for it.
    """
    cuts = cuts_of_metal(at.plan, _name(at))
    if cuts:
        stock = tuple(at.figure((*cut, "stock_length")) for cut in cuts)
        name = f"the lengths first cut for {_name(at).replace('_', ' ')}"
        return Listed("sum", stock, name) / Listed("count", stock, name)
    found = [
        k for k, run in enumerate(at.plan.metal) if METALS[run.edge] == _name(at)
    ]  # fmt: skip
    if found:
        return at("metal/*/stock_length", found[0])
    return at.choice(f"{_name(at)}/stock_lengths/*", 0)


def sheet_size(at: At) -> Expression:
    """Give the size of the sheets that flashing is bent from.

    Args:
        at: The plan.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        The material chosen.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> from roofing_core.workings.expressions import evaluated
    >>> evaluated(sheet_size(At(shed, ())))  # 36 by 96 in
    3456.0
    """
    return at.choice("flashing_sheet/length") * at.choice("flashing_sheet/width")


_ROLL: Final = {name: f"{name}/length" for name in ("ice_barrier", "underlayment", "valley_lining")}


def _holds(place: str) -> Make:
    return lambda at: at.choice(place)


#: What a pack of each line holds.
HOLDS: Mapping[str, Make] = MappingProxyType(
    {
        "deck_panels": lambda at: at.choice("panel/length") * at.choice("panel/width"),
        "flashing_sheets": sheet_size,
        "pipe_flashings": lambda _: Constant(1, "count", "one in a pack"),
        "joint_tape": _holds("joint_tape/length"),
        "deck_nails": _holds("deck_nail/box_weight"),
        "roofing_nails": _holds("shingle_nail/box_weight"),
        "metal_nails": _holds("metal_nail/box_weight"),
        "cap_nails": _holds("cap_nail/per_box"),
        "step_flashing": _holds("step_flashing/per_pack"),
        "starter": _holds("starter/per_pack"),
        "shingles": _holds("shingle/per_bundle"),
        "caps": _holds("cap/per_pack"),
        "sealant": _holds("sealant/volume"),
        "cement": _holds("cement/volume"),
        **{name: _holds(place) for name, place in _ROLL.items()},
        **dict.fromkeys(_METALS, _stock),
    }
)


def _metal_weight(at: At) -> Expression:
    long = at.figure(("order", at.path[1], "pack_holds", "value"))
    return at.choice(f"{_name(at)}/weight") * long / _IN_A_FOOT


#: What a pack of each line weighs.
WEIGHS: Mapping[str, Make] = MappingProxyType(
    {
        "deck_panels": _holds("panel/weight"),
        "flashing_sheets": _holds("flashing_sheet/weight"),
        "pipe_flashings": _holds("pipe_flashing/pack_weight"),
        "joint_tape": _holds("joint_tape/weight"),
        "deck_nails": _holds("deck_nail/box_weight"),
        "roofing_nails": _holds("shingle_nail/box_weight"),
        "metal_nails": _holds("metal_nail/box_weight"),
        "cap_nails": _holds("cap_nail/box_weight"),
        "step_flashing": _holds("step_flashing/pack_weight"),
        "starter": _holds("starter/pack_weight"),
        "shingles": _holds("shingle/bundle_weight"),
        "caps": _holds("cap/pack_weight"),
        "sealant": _holds("sealant/pack_weight"),
        "cement": _holds("cement/pack_weight"),
        **{name: _holds(f"{name}/weight") for name in _ROLL},
        **dict.fromkeys(_METALS, _metal_weight),
    }
)
