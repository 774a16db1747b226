"""The working of the order list: what is needed, whole packs, what is left over, and its weight."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from roofing_core.job.edges import METALS
from roofing_core.job.flashing_order import sheets_for
from roofing_core.workings.at import ARITHMETIC, COUNTED, PACKS, At, Formula, Make, Table
from roofing_core.workings.expressions import Constant, Expression, Figure, Listed, Path, added
from roofing_core.workings.names import words
from roofing_core.workings.of_metal_bought import cuts_of_metal
from roofing_core.workings.of_packs import HOLDS, WEIGHS, sheet_size
from roofing_core.workings.order_names import LINES

_METALS = tuple(dict.fromkeys(METALS.values()))


def _name(at: At) -> str:
    return str(at.path[1])


def _of(at: At, *names: str) -> Figure:
    return at.figure(("order", at.path[1], *names))


def _runs(at: At, field: str, name: str) -> Expression:
    metal = _name(at)
    return at.all(
        "sum", f"metal/*/{field}", f"{name} of all runs of {words(metal)}",
        where=lambda run: METALS[run.edge] == metal,
    )  # fmt: skip


def _metal_length(at: At) -> Expression:
    cuts = cuts_of_metal(at.plan, _name(at))
    if cuts:
        name = f"the lengths first cut for {words(_name(at))}"
        whole, left = (
            Listed("sum", tuple(at.figure((*cut, field)) for cut in cuts), said)
            for field, said in (("stock_length", name), ("offcut", f"what is left of {name}"))
        )
        return whole - left
    return _runs(at, "lengths/*", "the lengths cut")


def _sheet_length(at: At) -> Expression:
    return at.all(
        "sum",
        f"{_name(at)}/roll_plan/*/cuts/*/length",
        "the lengths cut off all rolls",
        where=lambda cut: cut.taken_from == "length",
    )


def _bent(at: At) -> tuple[Figure, ...]:
    return tuple(
        area for k in range(len(at.plan.openings)) for kind in ("aprons", "heads")
        for area in at.each(f"{kind}/*/area", base=("openings", k))
    )  # fmt: skip


def _flashing_area(at: At) -> Expression:
    return added((*_bent(at), *at.each("openings/*/crickets/*/metal_area")))


def _flashing_sheets(at: At) -> Expression:
    """Give the sheets for what is bent: one for each piece that begins one, and by area."""
    size = at.plan.choices.flashing_sheet
    flat = [(area, _size(at, area)) for area in _bent(at)]
    flat.sort(key=lambda one: (-one[1][1], -one[1][0]))
    begins: list[Figure] = []
    parts: list[Expression] = []
    before: list[tuple[float, float]] = []
    for area, (long, wide) in flat:
        if long > size.length or wide > size.width:
            parts.append(_joined(at, area.path[:-1]))
        elif _sheets_for(at, [*before, (long, wide)]) > _sheets_for(at, before):
            begins.append(at.figure((*area.path[:-1], "length")))
        before.append((long, wide))
    if begins:
        name = "the bent pieces that begin a sheet, the widest first"
        parts.insert(0, Listed("count", tuple(begins), name))
    crickets = at.each("openings/*/crickets/*/metal_area")
    return added([*parts, *((area / sheet_size(at)).up() for area in crickets)])


def _size(at: At, area: Figure) -> tuple[float, float]:
    long, *legs = (
        at.figure((*area.path[:-1], field)).value for field in ("length", "deck_leg", "wall_leg")
    )
    return long, sum(legs)


def _sheets_for(at: At, flat: list[tuple[float, float]]) -> int:
    size = at.plan.choices.flashing_sheet
    return sheets_for(flat, sheet_length=size.length, sheet_width=size.width)


def _joined(at: At, piece: Path) -> Expression:
    """Give the sheets that a piece larger than a sheet is joined from."""
    wide = at.figure((*piece, "deck_leg")) + at.figure((*piece, "wall_leg"))
    long = at.figure((*piece, "length")) / at.choice("flashing_sheet/length")
    return long.up() * (wide / at.choice("flashing_sheet/width")).up()


def _ready_made(at: At) -> Expression:
    if at.plan.choices.starter.made != "ready_made":
        return Constant(0, "count", "none: the starter is cut from shingles")
    return at.all("sum", "starters/*/pieces", "the pieces of all starters")


def _caps(at: At) -> Expression:
    if "cap" in at.plan.cutting.holds:
        return Constant(0, "count", "none: caps are cut from the shingles of the field")
    count = at.all("sum", "caps/*/count", "the caps of all lines")
    return (count / at.choice("cap/from_shingle")).up()


def _nails_for(at: At, where: Callable[[str], bool], name: str) -> Listed:
    return at.all("sum", "nails/*/weight", name, where=lambda one: where(one.use))


def _one_kind(at: At) -> bool:
    return at.plan.choices.metal_nail == at.plan.choices.shingle_nail


def _roofing_nails(at: At) -> Expression:
    own = ("starter", "shingles", "caps")
    shared = _one_kind(at)
    name = "the weights of nails for starter, shingles, caps" + (" and metal" if shared else "")
    return _nails_for(at, lambda use: use in own or (shared and use.endswith("metal")), name)


def _metal_nails(at: At) -> Expression:
    if _one_kind(at):
        return Constant(0, "lb", "none: metal takes the roofing nails")
    return _nails_for(at, lambda use: use.endswith("metal"), "the weights of nails for metal")


def _lining(at: At) -> Expression:
    return at("valley_lining/area_cut") / at.choice("valley_lining/width")


def _gunned(at: At) -> Expression:
    return at("sealant/total_volume") - at("sealant/bedding_volume")


def _deck_area(at: At) -> Expression:
    return at("roof/area") if at.plan.deck.panels else Constant(0, "in2", "no deck is laid")


_NEEDED: Mapping[str, Make] = MappingProxyType(
    {
        "deck_panels": _deck_area,
        "deck_nails": lambda at: _nails_for(at, lambda use: use == "deck", "the weights of nails"),
        "joint_tape": lambda at: at("deck/tape_length"),
        "ice_barrier": _sheet_length,
        "underlayment": _sheet_length,
        "valley_lining": _lining,
        "cap_nails": lambda at: at("underlayment/fasteners"),
        "step_flashing": lambda at: at.all("sum", "step_flashings/*/count", "all step flashing"),
        "flashing_sheets": _flashing_area,
        "pipe_flashings": lambda at: at.all("count", "openings/*/pipes/*/nails", "all pipes"),
        "starter": _ready_made,
        "shingles": lambda at: at("cutting/shingles"),
        "caps": _caps,
        "roofing_nails": _roofing_nails,
        "metal_nails": _metal_nails,
        "sealant": _gunned,
        "cement": lambda at: at("sealant/bedding_volume"),
        **dict.fromkeys(_METALS, _metal_length),
    }
)  # fmt: skip


def _by_plan(place: str) -> Make:
    return lambda at: at(place)


#: The lines whose packs come from a layout, not from what is needed.
_LAID_OUT: Mapping[str, Make] = MappingProxyType(
    {
        "deck_panels": _by_plan("deck/panels"),
        "ice_barrier": _by_plan("ice_barrier/rolls"),
        "underlayment": _by_plan("underlayment/rolls"),
        "valley_lining": _by_plan("valley_lining/rolls"),
        "flashing_sheets": _flashing_sheets,
        **dict.fromkeys(_METALS, lambda at: _runs(at, "stock", "the lengths bought")),
    }
)


def _packs(at: At) -> Expression:
    return (_of(at, "needed", "value") / _of(at, "pack_holds", "value")).up()


def _left_over(at: At) -> Expression:
    bought = _of(at, "packs") * _of(at, "pack_holds", "value")
    return Constant(0, at.figure(at.path).unit).greatest(bought - _of(at, "needed", "value"))


def _covers_more(at: At) -> Expression:
    needed = _of(at, "needed", "value")
    if not needed.value:
        return Constant(0, "in2", "nothing is needed")
    return at("roof/area") * _of(at, "left_over", "value") / needed


def _used(at: At) -> Expression:
    packs = _of(at, "needed", "value") / _of(at, "pack_holds", "value")
    return _of(at, "pack_weight") * packs


def _rolled(at: At) -> Expression:
    width, long = (at.choice(f"{_name(at)}/{field}") for field in ("width", "length"))
    return _of(at, "pack_weight") * at(f"{_name(at)}/area_laid") / (width * long)


def _shingles(at: At) -> Expression:
    """Give the weight of shingles as they lie, trimmed, with a starter and caps of the same."""
    holds = at.plan.cutting.holds
    area: Expression = at.all("sum", "courses/*/area", "the areas of all courses")
    if "starter" in holds:
        area += at.all("sum", "starters/*/area", "the areas of all starters")
    if "cap" in holds:
        caps = at.all("sum", "caps/*/count", "the caps of all lines")
        area += at.choice("cap/length") * at.choice("cap/width") * caps
    each = at.choice("shingle/bundle_weight") / at.choice("shingle/per_bundle")
    return each * area / (at.choice("shingle/length") * at.choice("shingle/height"))


_USED: Mapping[str, Make] = MappingProxyType(
    {
        "ice_barrier": _rolled,
        "underlayment": _rolled,
        "shingles": _shingles,
        **dict.fromkeys(_METALS, lambda at: _runs(at, "weight", "the weights")),
    }
)


def _cuts_of_a_size(at: At, holds: float) -> tuple[Figure, ...]:
    cuts = cuts_of_metal(at.plan, _name(at))
    stock = (at.figure((*cut, "stock_length")) for cut in cuts)
    return tuple(one for one in stock if one.value == holds)


def _of_a_size(at: At) -> Expression:
    name = "the lengths of this size first cut for it"
    return Listed("count", _cuts_of_a_size(at, at.thing().holds.value), name)


def _size_holds(at: At) -> Expression:
    return _cuts_of_a_size(at, at.value())[0]


def _line(name: str) -> dict[str, Formula]:
    """Give the formulas of one line."""
    laid_out = name in _LAID_OUT
    return {
        f"/order/{name}/{field}": formula
        for field, formula in (
            ("packs", Formula(_LAID_OUT.get(name, _packs), COUNTED if laid_out else PACKS)),
            ("needed/value", Formula(_NEEDED[name], "What the layers take.")),
            ("pack_holds/value", Formula(HOLDS[name], "The material chosen.")),
            ("left_over/value", Formula(_left_over, ARITHMETIC)),
            ("covers_more", Formula(_covers_more, ARITHMETIC)),
            ("pack_weight", Formula(WEIGHS[name], "The material chosen.")),
            ("sizes/*/packs", Formula(_of_a_size, COUNTED)),
            ("sizes/*/holds/value", Formula(_size_holds, "The material chosen.")),
            ("used_weight", Formula(_USED.get(name, _used), ARITHMETIC)),
        )
    }


ORDER: Final[Table] = {pattern: made for name in LINES for pattern, made in _line(name).items()}
