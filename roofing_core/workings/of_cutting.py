"""The working of how many shingles all pieces come from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from roofing_core.layers.coursing.pieces import Piece
from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Listed, added, evaluated


def _simply(at: At) -> Expression:
    """Give a shingle for each piece: of the courses, of a self-made starter, and of caps."""
    holds = at.thing().holds
    parts: list[Expression] = [at.all("sum", "courses/*/pieces", "the pieces of all courses")]
    if "starter" in holds:
        parts.append(at.all("sum", "starters/*/pieces", "the pieces of all starters"))
    if "cap" in holds:
        caps = at.all("sum", "caps/*/count", "the caps of all lines")
        parts.append((caps / at.choice("cap/from_shingle")).up())
    return added(parts)


def _shingles(at: At) -> Expression:
    if at.thing().reuse == "none":
        return at.near("simply")
    return at.near("whole") + at.all(
        "count", "cutting/cut/*/left_over", "the shingles that are cut"
    )


def _whole(at: At) -> Expression | None:
    if at.thing().reuse == "none":
        return Constant(0, "count", "not told where no offcut is used again")
    kept: list[Expression] = []
    for name in ("courses", "starters")[: 1 + ("starter" in at.thing().holds)]:
        for k, row in enumerate(getattr(at.plan, name)):
            kept += [at(f"{name}/*/laid/*/shingle_to", k, n) for n in _kept_whole(row.laid)]
    return Listed("count", tuple(kept), "the pieces that keep both factory ends")


def _kept_whole(laid: Sequence[Piece]) -> Iterator[int]:
    """Give the pieces of a row with both factory ends, which meet a neighbour at each."""
    for n in range(1, len(laid) - 1):
        before, piece, after = laid[n - 1 : n + 2]
        meets = before.right == piece.left and piece.right == after.left
        if meets and piece.left_end == piece.right_end == "factory":
            yield n


def _least_by_length(at: At) -> Expression:
    """Give what the length laid would take with nothing wasted."""
    holds = at.thing().holds
    parts: list[Expression] = [at.all("sum", "courses/*/length", "the lengths of all courses")]
    if "starter" in holds:
        widths = [
            at("starters/*/laid/*/right", k, n) - at("starters/*/laid/*/left", k, n)
            for k, starter in enumerate(at.plan.starters)
            for n in range(len(starter.laid))
        ]
        parts.append(Listed("sum", tuple(widths), "the widths of all pieces of starter"))
    if "cap" in holds:
        caps = at.all("sum", "caps/*/count", "the caps of all lines")
        parts.append(at.choice("shingle/length") / at.choice("cap/from_shingle") * caps)
    return (added(parts) / at.choice("shingle/length")).up()


def _least(at: At) -> Expression | None:
    if at.thing().reuse == "none":
        return _least_by_length(at)
    weights = at.all("sum", "cutting/cut/*/pieces/*/weight", "the weights of all pieces cut")
    if not weights.parts:
        return at.near("whole")
    bound = at.near("whole") + (weights / at.near("limit")).up()
    return bound if evaluated(bound) == at.value() else None


def _width(at: At) -> Expression:
    """Give how wide a piece is that is cut: as it lies, or a part of a shingle that is a cap."""
    cut = at.thing()
    if cut.row == "cap":
        return at.choice("shingle/length") / at.choice("cap/from_shingle")
    rows: Sequence[Any] = at.plan.courses if cut.row == "course" else at.plan.starters
    name = "courses" if cut.row == "course" else "starters"
    mine = [
        k
        for k, row in enumerate(rows)
        if row.plane == cut.plane and (k + 1 if cut.row == "starter" else row.number) == cut.course
    ]
    ends = [
        at(f"{name}/*/laid/*/{end}", mine[0], cut.number - 1) for end in ("right", "left")
    ]  # fmt: skip
    return ends[0] - ends[1]


def _left_over(at: At) -> Expression:
    used = at.all("sum", "pieces/*/width", "the widths of its pieces", base=at.base())
    return Constant(0, "in").greatest(at.choice("shingle/length") - used)


def _ahead(at: At) -> Expression:
    name = "the shingles cut before all their pieces are laid"
    return at.all("count", "cutting/cut/*/left_over", name, where=lambda one: one.ahead)


CUTTING: Table = under(
    "/cutting",
    table(COUNTED, simply=_simply, shingles=_shingles, whole=_whole, cut_ahead=_ahead),
    table(
        "What is proved: no cutting takes fewer.",
        least=_least,
        saved=lambda at: at.near("simply") - at.near("shingles"),
    ),
    table(GEOMETRY, cut__i__left_over=_left_over, cut__i__pieces__i__width=_width),
)
