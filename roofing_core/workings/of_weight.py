"""The working of weights: on the deck, and to carry."""

from __future__ import annotations

from typing import Any

from roofing_core.layers.weight import lifting_limit
from roofing_core.workings.at import ARITHMETIC, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Listed
from roofing_core.workings.order_names import lines_of

_SQUARE_FOOT = Constant(144, "in2/ft2", "square inches in a square foot")


def _sum(field: str, name: str) -> Any:
    return lambda at: at.all("sum", f"weight/loads/*/{field}", name)


def _per_plan_area(at: At) -> Expression:
    roof = at.plan.roof
    if roof.lowest_pitch == roof.steepest_pitch:
        return at.near("per_slope_area") * at("roof/slope_factor")
    return at.near("per_slope_area") * at("roof/area") / at("roof/plan_area")


def _line(at: At, *names: str | int) -> Expression:
    """Give a figure of the order line that a load comes from."""
    ordered = [name for name, line in lines_of(at.plan) if line.packs]
    return at.figure(("order", ordered[int(at.path[2])], *names))


def _heaviest(at: At) -> Expression:
    """Give what a pack weighs, and where packs are of several sizes the largest of them."""
    ordered = [line for _, line in lines_of(at.plan) if line.packs]
    sizes = ordered[int(at.path[2])].sizes
    if not sizes:
        return _line(at, "pack_weight")
    held = tuple(_line(at, "sizes", k, "holds", "value") for k in range(len(sizes)))
    largest = Listed("greatest", held, "the sizes of its packs")
    return _line(at, "pack_weight") * largest / _line(at, "pack_holds", "value")


def _limit() -> Constant:
    return Constant(lifting_limit(), "lb", "lifting limit")


WEIGHT: Table = under(
    "/weight",
    table(
        ARITHMETIC,
        on_deck=_sum("on_deck", "what all lines of the order weigh on the roof"),
        to_carry=_sum("to_carry", "what all lines of the order weigh to carry"),
        per_slope_area=lambda at: at.near("on_deck") * _SQUARE_FOOT / at("roof/area"),
        per_plan_area=_per_plan_area,
        heaviest=lambda at: at.all("greatest", "weight/loads/*/heaviest", "the weights of a pack"),
        loads__i__on_deck=lambda at: _line(at, "used_weight"),
        loads__i__to_carry=lambda at: _line(at, "packs") * _line(at, "pack_weight"),
        loads__i__heaviest=_heaviest,
    ),
    table(
        "NIOSH lifting equation, DHHS (NIOSH) 94-110, under the best conditions.",
        lifting_index=lambda at: at.near("heaviest") / _limit(),
    ),
)
