"""The working of ice barriers: how far up each plane they reach."""

from __future__ import annotations

from typing import Any

from roofing_core.layers.underlaying.ice_reach import STEEP_PITCH
from roofing_core.measures.counting import DUST
from roofing_core.roof.outlines import planes_below
from roofing_core.ruling.on_sheets import ICE_STEEP_REACH
from roofing_core.workings.at import GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Figure
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_sheets import SHEET
from roofing_core.workings.slopes import slope_factor


def _reach(at: At) -> Expression:
    level, along = _inside(at, int(at.path[2]))
    return (level * slope_factor(at("planes/*/pitch", int(at.path[2])))).greatest(along, 0)


def _inside(at: At, k: int) -> tuple[Expression, Expression]:
    """Give how far an ice barrier has still to reach, level and along the slope, on one plane."""
    plane = at.plan.planes[k]
    if "eave" in plane.edges:
        steep = plane.pitch >= STEEP_PITCH - DUST
        said = steep and ICE_STEEP_REACH.source_in(at.plan.choices.code_edition)
        up = ICE_STEEP_REACH.limit if said else 0.0
        why = "along the slope at 8:12 and steeper" if up else "no reach along the slope"
        inside = at("roof/eave_overhang") + at.choice("underlaying/inside_wall")
        return inside, Constant(up, "in", why)
    level: Expression = Constant(0, "in")
    along: Expression = Constant(0, "in")
    for name in planes_below(plane):
        below = plane_index(at, name)
        left, left_along = _inside(at, below)
        high = _break(at, below, plane.name)
        level = level.greatest(left - high / slope_factor(at("planes/*/pitch", below)))
        along = along.greatest(left_along - high)
    return level, along


def _break(at: At, k: int, above: str) -> Figure:
    plane = at.plan.planes[k]
    breaks = [
        n
        for n, kind in enumerate(plane.edges)
        if kind == "pitch_break" and plane.beyond[n] == above
    ]
    return at("planes/*/corners/*/*", k, max(breaks, key=lambda n: plane.corners[n][1]), 1)


def _barrier_upper(at: At) -> Expression | None:
    plane, value = at.thing().plane, at.value()
    if not value:
        return Constant(0, "in", "none from the lowest eave")
    rows = at.plan.ice_barrier.rows
    found = [k for k, row in enumerate(rows) if row.plane == plane and row.upper == value]
    return at("ice_barrier/rows/*/upper", found[0]) if found else None


def _of_planes(field: str, name: str) -> Any:
    def make(at: At) -> Expression:
        planes = at.each(f"ice_barrier/planes/*/{field}")
        none = Constant(0, "in", "no ice barrier")
        return at.all("greatest", f"ice_barrier/planes/*/{field}", name) if planes else none

    return make


ICE_BARRIER: Table = under(
    "/ice_barrier",
    SHEET,
    table(
        "IRC R905.1.2, by the edition chosen: 24 in inside the wall line, and 36 in along the slope"
        " at 8:12 and steeper where the edition asks for it.",
        reach=_of_planes("reach", "the reaches on all planes"),
        planes__i__reach=_reach,
    ),
    table(
        GEOMETRY,
        upper=_of_planes("upper", "how far up it reaches on all planes"),
        planes__i__upper=_barrier_upper,
    ),
)
