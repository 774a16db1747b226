"""The working of how many shingles all pieces come from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from roofing_core.job.cutting import TABS
from roofing_core.layers.coursing.pieces import Piece
from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, same, table, under
from roofing_core.workings.expressions import (
    Constant,
    Expression,
    Listed,
    Path,
    added,
    evaluated,
)


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


def _laid_piece(at: At, cut: Any) -> Path:
    """Give where a piece that is cut lies in its row."""
    name: str = "courses" if cut.row == "course" else "starters"
    rows: Sequence[Any] = getattr(at.plan, name)
    row = next(
        k
        for k, one in enumerate(rows)
        if one.plane == cut.plane and (k + 1 if cut.row == "starter" else one.number) == cut.course
    )
    return name, row, "laid", cut.number - 1


def _begins(at: At) -> Expression | None:
    """Give where a piece begins on its shingle: at an end, on a tab, or after the one before."""
    cut, value = at.thing(), at.value()
    if cut.keeps == "left":
        return Constant(0, "in", "the factory's left end")
    if cut.keeps == "right":
        return at.choice("shingle/length") - at.near("width")
    pieces = at.thing(3).pieces
    before = [n for n, one in enumerate(pieces) if same(one.begins + one.width, value)]
    if not TABS[at.plan.choices.shingle.kind]:
        if not value:
            return Constant(0, "in", "the shingle's left end")
        ends = (at.near(n, "begins", back=2) + at.near(n, "width", back=2) for n in before)
        return next(ends, None)
    tab = at.choice("shingle/length") / TABS[at.plan.choices.shingle.kind]
    if cut.row == "cap":
        return Constant(round(value / evaluated(tab)), "count", "tabs before it") * tab
    start = at.figure((*_laid_piece(at, cut), "shingle_from"))
    tabs = round((value - start.value) / evaluated(tab))
    return start + Constant(tabs, "count", "tabs further") * tab


def _most_kept(at: At) -> Expression:
    """Count the shingles that wait when most do: opened, and with a piece still to come."""
    order: dict[tuple[str, str, int, int], int] = {}
    for place, piece in enumerate(_in_order(at)):
        order[piece] = place
    spans = [
        sorted(order[one.plane, one.row, one.course, one.number] for one in cut.pieces)
        for cut in at.plan.cutting.cut
    ]
    if not spans:
        return Constant(0, "count", "none: no offcut is used again")
    waits = {
        when: [k for k, one in enumerate(spans) if one[0] <= when < one[-1]]
        for when in {one[0] for one in spans}
    }
    most = max(sorted(waits), key=lambda when: len(waits[when]))
    kept = tuple(at("cutting/cut/*/number", k) for k in waits[most])
    return Listed("count", kept, "the shingles that wait at once, when most do")


def _in_order(at: At) -> Iterator[tuple[str, str, int, int]]:
    """Give the pieces in the order of work: plane by plane starters, then courses; caps last."""
    plan = at.plan
    for plane in dict.fromkeys(course.plane for course in plan.courses):
        for k, strip in enumerate(plan.starters):
            if strip.plane == plane:
                yield from ((plane, "starter", k + 1, one.number) for one in strip.laid)
        for course in plan.courses:
            if course.plane == plane:
                yield from ((plane, "course", course.number, one.number) for one in course.laid)
    for k, run in enumerate(plan.caps):
        for number in range(run.count):
            yield " and ".join(run.planes), "cap", k + 1, number + 1


def _limit(at: At) -> Expression | None:
    if at.thing().reuse == "none":
        return Constant(0, "count", "none: no offcut is used again")
    return None


CUTTING: Table = under(
    "/cutting",
    table(COUNTED, simply=_simply, shingles=_shingles, whole=_whole, cut_ahead=_ahead),
    table(
        "What is proved: no cutting takes fewer.",
        least=_least,
        saved=lambda at: at.near("simply") - at.near("shingles"),
    ),
    table(
        GEOMETRY,
        cut__i__left_over=_left_over,
        cut__i__pieces__i__width=_width,
        cut__i__pieces__i__begins=_begins,
    ),
    table(COUNTED, most_kept=_most_kept, limit=_limit),
)
