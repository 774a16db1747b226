"""The working of caps on hips and ridges."""

from __future__ import annotations

from roofing_core.workings.at import GEOMETRY, PRACTICE, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression

_EACH = Constant(2, "count", "nails in a cap")


def _line_length(at: At) -> Expression:
    run, mine = at.thing(), int(at.path[1])
    lines = [
        k
        for k, line in enumerate(at.plan.lines)
        if line.kind == run.line and (run.line == "hip" or len(line.planes) > 1)
    ]
    before = sum(one.line == run.line for one in at.plan.caps[:mine])
    return at("lines/*/length", lines[before])


def _count(at: At) -> Expression:
    return (at.near("line_length") / at.near("exposure")).up().greatest(1)


def _butt(at: At) -> Expression:
    k, count = int(at.path[-1]), int(at.thing(2).count)
    if k < count - 1:
        return k * at.choice("cap/exposure")
    if count == 1:
        return Constant(0, "in")
    return (at.near("line_length", back=2) + (count - 2) * at.choice("cap/exposure")) / 2


def _last_length(at: At) -> Expression:
    return at.near("line_length") - at.near("butts", at.thing().count - 1)


def _nail(at: At) -> Expression:
    k, count = int(at.path[-1]), int(at.thing(2).count)
    if k < count - 1:
        return at.near("butts", k + 1, back=2) + at.choice("capping/nail_above")
    line = at.near("line_length", back=2)
    return (at.near(k - 1) + line) / 2 if k else line / 2


def _exposed(at: At) -> Expression:
    why = "the last cap's nails, which no other covers" if at.value() else "none: a ridge covers it"
    return Constant(at.value(), "count", why)


def _stock_left(at: At) -> Expression:
    bought = at.near("packs") * at.choice("cap/per_pack") * at.choice("cap/from_shingle")
    return bought - at.near("count")


CAPS: Table = under(
    "/caps/*",
    table(
        GEOMETRY,
        line_length=_line_length,
        last_length=_last_length,
        half_width=lambda at: at.choice("cap/width") / 2,
        nail_from_line=lambda at: at.near("half_width") - at.choice("capping/side_distance"),
    ),
    table(
        "Whole caps; the last two share what is left: common practice, no published source.",
        count=_count,
        butts__i=_butt,
    ),
    table(
        PRACTICE,
        exposure=lambda at: at.choice("cap/exposure"),
        nail_positions__i=_nail,
        nails=lambda at: _EACH * at.near("count"),
        exposed_nails=_exposed,
    ),
    table(
        "Whole shingles and packs, rounded up.",
        stock__count=lambda at: at.near("count", back=2),
        stock__shingles=lambda at: (at.near("count") / at.choice("cap/from_shingle")).up(),
        stock__packs=lambda at: (at.near("shingles") / at.choice("cap/per_pack")).up(),
        stock__left_over=_stock_left,
    ),
)
