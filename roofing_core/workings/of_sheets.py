"""The working of sheets: underlayment, ice barrier and the lining of valleys."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from roofing_core.measures.counting import DUST
from roofing_core.workings.at import COUNTED, GEOMETRY, At, table
from roofing_core.workings.expressions import Constant, Expression, Figure, added, evaluated
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_sheet_rows import area_laid, heights_met, piece_left, piece_length


def _roll(at: At, field: str) -> Figure:
    """Give a size of the roll that the sheet comes from."""
    return at.choice(f"{at.path[0]}/{field}")


def _how(at: At, field: str) -> Figure:
    """Give how the sheet is laid; an ice barrier has its own laps."""
    own = field in ("head_lap", "end_lap") and at.path[0] == "ice_barrier"
    return at.choice(f"underlaying/{'ice_barrier_' if own else ''}{field}")


def _same(one: Expression, value: float) -> bool:
    return abs(evaluated(one) - value) <= DUST


def _row_head_lap(at: At) -> Expression | None:
    """Give how far a row laps over what is below it, and no further than it reaches."""
    row, value = at.thing(), at.value()
    if not value:
        return Constant(0, "in", "nothing is below it")
    own = _how(at, "head_lap")
    laps: list[Expression] = [own, _half(at), at.choice("underlaying/over_ice_barrier")]
    reach = at.near("upper") - at.near("lower")
    fitting = (lap for lap in laps if _same(lap, value))
    return next(fitting, reach if _same(reach, value) else None) or _over(at, row)


def _over(at: At, row: Any) -> Expression | None:
    """Give the lap of a row that begins lower than its place, at the top of the roof."""
    below = [
        at.figure((at.path[0], "rows", k, "upper"))
        for k, one in enumerate(getattr(at.plan, str(at.path[0])).rows)
        if one.plane == row.plane and abs(one.upper - row.lower - row.head_lap) <= DUST
    ]
    return below[-1] - at.near("lower") if below else None


def _half(at: At) -> Expression:
    return _roll(at, "width") / 2 + Constant(1, "in")


def _row_lower(at: At) -> Expression | None:
    """Give where a row begins: at the edge, or as far over a row below as that one shows."""
    row, k = at.thing(), int(at.path[2])
    rows = getattr(at.plan, str(at.path[0])).rows
    tried = list(_first_lowers(at))
    for n in (n for n in reversed(range(k)) if rows[n].plane == row.plane):
        below = at.near(n, "lower", back=2)
        tried.append(below)
        tried += [below + (at.near(n, "width", back=2) - lap) for lap in _laps(at)]
    tried += [_top(at) - lap for lap in _laps(at)]
    return next((place for place in tried if _same(place, row.lower)), None)


def _laps(at: At) -> tuple[Expression, ...]:
    return _how(at, "head_lap"), _half(at)


def _first_lowers(at: At) -> Iterator[Expression]:
    """Give where the first row of a plane may begin: past its edge, or on an ice barrier."""
    k = plane_index(at, at.thing().plane)
    for n in range(len(at.plan.planes[k].corners)):
        edge = at("planes/*/corners/*/*", k, n, 1)
        yield edge - at.choice("underlaying/past_metal")
        yield edge - _how(at, "head_lap")
    if at.path[0] == "underlayment" and at.plan.ice_barrier.rows:
        barrier = at("ice_barrier/planes/*/upper", k)
        yield barrier - at.choice("underlaying/over_ice_barrier")


def _top(at: At) -> Figure:
    """Give how far the plane of a row reaches up the slope."""
    k = plane_index(at, at.thing().plane)
    corners = at.plan.planes[k].corners
    return at("planes/*/corners/*/*", k, max(range(len(corners)), key=lambda n: corners[n][1]), 1)


def _tops(at: At) -> tuple[Expression, ...]:
    """Give where the sheets of a plane may end: at its top, or lapped over its ridge."""
    return _top(at), _top(at) + at.choice("underlaying/over_edges")


def _row_upper(at: At) -> Expression | None:
    whole = at.near("lower") + at.near("width")
    tried = (
        whole,
        *(whole.least(top) for top in _tops(at)),
        *heights_met(at, int(at.path[2])),
    )
    return next((one for one in tried if _same(one, at.value())), None)


def _row_width(at: At) -> Expression | None:
    kind = at.thing().kind
    if kind == "starter_strip":
        return _half(at)
    if kind != "top_strip":
        return _roll(at, "width")
    tried = (top - at.near("lower") for top in _tops(at))
    return next((one for one in tried if _same(one, at.value())), None)


def _row_trim(at: At) -> Expression | None:
    trim = at.near("lower") + at.near("width") - at.near("upper")
    return trim if _same(trim, at.value()) else None


def _end_lap(at: At) -> Expression:
    return _how(at, "end_lap") if at.value() else Constant(0, "in", "none on this piece")


def _cut_width(at: At) -> Expression:
    return at.figure((at.path[0], "rows", at.thing().row - 1, "width"))


def _cut_length(at: At) -> Expression:
    rows = getattr(at.plan, str(at.path[0])).rows
    row, number = at.thing().row - 1, int(at.path[2]) + 1
    k = next(n for n, piece in enumerate(rows[row].pieces) if piece.roll == number)
    return at.figure((at.path[0], "rows", row, "pieces", k, "length"))


def _offcut(at: At) -> Expression:
    used = at.all(
        "sum",
        "cuts/*/length",
        "the lengths cut off it",
        where=lambda one: one.taken_from == "length",
        base=at.base(),
    )
    return Constant(0, "in").greatest(_roll(at, "length") - used)


def _left_over(at: At) -> Expression:
    rolls = at.thing().roll_plan
    if not rolls:
        return Constant(0, "in", "no roll was opened")
    return at.near("roll_plan", len(rolls) - 1, "offcut")


def _area_cut(at: At) -> Expression:
    return added(
        at.near("rows", r, "pieces", k, "length") * at.near("rows", r, "width")
        for r, row in enumerate(at.thing().rows)
        for k in range(len(row.pieces))
    )


#: The formulas that every sheet has which comes off rolls.
SHEET = table(
    GEOMETRY,
    rows__i__upper=_row_upper,
    rows__i__trim=_row_trim,
    rows__i__pieces__i__length=piece_length,
    rows__i__pieces__i__left=piece_left,
    rows__i__pieces__i__right=lambda at: at.near("left") + at.near("length"),
    rows__i__end_laps__i=lambda at: at.near("pieces", int(at.path[-1]) + 1, "left", back=2),
    roll_plan__i__cuts__i__length=_cut_length,
    roll_plan__i__cuts__i__width=_cut_width,
    roll_plan__i__offcut=_offcut,
    left_over=_left_over,
    area_cut=_area_cut,
    area_laid=area_laid,
) | table(
    "Head laps of underlayment: IRC R905.1.1; how far it stands past metal and edges is common"
    " practice, no published source.",
    rows__i__lower=_row_lower,
    rows__i__width=_row_width,
    rows__i__head_lap=_row_head_lap,
    rows__i__pieces__i__end_lap=_end_lap,
) | table(
    COUNTED,
    rolls=lambda at: at.all("count", "roll_plan/*/offcut", "the rolls opened", base=at.base()),
    end_laps=lambda at: at.all("count", "rows/*/end_laps/*", "all end laps", base=at.base()),
)  # fmt: skip
