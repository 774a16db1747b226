"""The working of the lining of valleys."""

from __future__ import annotations

from typing import Any

from roofing_core.layers.underlaying.end_laps import LEAST_PIECE
from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Listed

_LEAST_PIECE = Constant(LEAST_PIECE, "in", "least piece of a roll")


def _is_valley(line: Any) -> bool:
    return bool(line.kind == "valley")


def _valleys(at: At) -> Expression:
    return at.all("sum", "lines/*/length", "the lengths of all valleys", where=_is_valley)


def _length(at: At) -> Expression:
    """Give a piece: a whole roll, or what is left of its valley, and the last not too short."""
    piece, k = at.thing(), int(at.path[2])
    pieces = at.plan.valley_lining.pieces
    mine = [n for n, one in enumerate(pieces) if one.valley == piece.valley]
    roll, lap = at.choice("valley_lining/length"), at.choice("valleying/lining_end_lap")
    line = at.each("lines/*/length", where=_is_valley)[int(piece.valley) - 1]
    past = at.choice("valleying/lining_past_foot") + line + at.choice("valleying/lining_over_top")
    if len(mine) == 1:
        return past
    last = past - (len(mine) - 1) * (roll - lap)
    if k == mine[-1]:
        return last.greatest(_LEAST_PIECE)
    if k == mine[-2]:
        return roll - Constant(0, "in").greatest(_LEAST_PIECE - last)
    return roll


def _lap(at: At) -> Expression:
    none = Constant(0, "in", "none: the first of its valley")
    return at.choice("valleying/lining_end_lap") if at.value() else none


def _cut(at: At) -> Listed:
    return at.all("sum", "valley_lining/pieces/*/length", "the lengths of all pieces")


def _rolls(at: At) -> Expression:
    rolls = at.each("valley_lining/pieces/*/roll")
    if not rolls:
        return Constant(0, "count", "none: no valleys")
    return Listed("greatest", rolls, "the rolls' numbers, from 1")


VALLEY_LINING: Table = under(
    "/valley_lining",
    table(
        GEOMETRY,
        valleys_length=_valleys,
        pieces__i__length=_length,
        pieces__i__lap=_lap,
        area_cut=lambda at: at.choice("valley_lining/width") * _cut(at),
        left_over=lambda at: at.near("rolls") * at.choice("valley_lining/length") - _cut(at),
    ),
    table(
        COUNTED,
        rolls=_rolls,
        laps=lambda at: at.all(
            "count", "valley_lining/pieces/*/lap", "the pieces that lap", where=lambda one: one.lap
        ),
    ),
    table(
        "Whole rolls, rounded up.",
        least_rolls=lambda at: (_cut(at) / at.choice("valley_lining/length")).up(),
    ),
)
