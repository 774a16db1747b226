"""The working of underlayment: its layers and laps, and the lines of cap nails."""

from __future__ import annotations

from typing import Any

from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression
from roofing_core.workings.of_cap_nails import end, lower, upper
from roofing_core.workings.of_sheets import SHEET


def _layers_of(at: At) -> Constant:
    if at.value() == 1:
        return Constant(1, "count", "layers at 4:12 and up")
    return Constant(2, "count", "layers under 4:12")


def _most(at: At) -> int:
    planes = at.plan.underlayment.planes
    return max(range(len(planes)), key=lambda k: planes[k].layers)


def _plane_lap(at: At) -> Expression:
    if at.thing().layers == 1:
        return at.choice("underlaying/head_lap")
    return at.choice("underlayment/width") / 2 + Constant(1, "in")


def _as_most(field: str) -> Any:
    return lambda at: at.near("planes", _most(at), field)


def _lines(kind: str, name: str) -> Any:
    return lambda at: at.all(
        "sum",
        "underlayment/fastener_lines/*/length",
        f"the lengths of all lines of cap nails along {name}",
        where=lambda one: one.kind == kind,
    )


def _line_length(at: At) -> Expression:
    line = at.thing()
    if line.kind == "end_lap":
        return at.near("upper") - at.near("lower")
    return at.near("right") - at.near("left")


def _line_count(at: At) -> Expression:
    field = at.thing().kind == "field"
    spacing: Expression = at.choice(f"underlaying/{'field' if field else 'lap'}_spacing")
    if at.plan.choices.nailing.high_wind:
        spacing = spacing.least(Constant(12 if field else 6, "in", "most apart in high wind"))
    spaces = (at.near("length") / spacing).up()
    return Constant(0).greatest(spaces - 1) if at.thing().kind == "end_lap" else spaces + 1


UNDERLAYMENT: Table = under(
    "/underlayment",
    SHEET,
    table(
        "IRC R905.1.1: two layers under 4:12, the second lapped by half a roll and 1 in.",
        layers=_as_most("layers"),
        head_lap=_as_most("head_lap"),
        exposure=_as_most("exposure"),
        planes__i__layers=_layers_of,
        planes__i__head_lap=_plane_lap,
        planes__i__exposure=lambda at: at.choice("underlayment/width") - at.near("head_lap"),
    ),
    table(
        GEOMETRY,
        eave_edge_length=_lines("eave_edge", "eaves"),
        head_lap_length=_lines("head_lap", "head laps"),
        end_lap_length=_lines("end_lap", "end laps"),
        field_length=_lines("field", "the middle of rows"),
        fastener_lines__i__length=_line_length,
        fastener_lines__i__left=end("left"),
        fastener_lines__i__right=end("right"),
        fastener_lines__i__lower=lower,
        fastener_lines__i__upper=upper,
    ),
    table(
        "A nail at each end and no more apart than the spacing: IRC R905.1.1.",
        fastener_lines__i__count=_line_count,
    ),
    table(
        COUNTED,
        fasteners=lambda at: at.all(
            "sum", "underlayment/fastener_lines/*/count", "the cap nails of all lines"
        ),
    ),
)
