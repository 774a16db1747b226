"""The working of runs of metal: lengths, laps, offcuts, nails and weight."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from roofing_core.job.edges import METALS
from roofing_core.roof.outlines import is_lower
from roofing_core.workings.at import COUNTED, GEOMETRY, PRACTICE, At, Make, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Step, added, evaluated
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_metal_bought import cuts_of_run, piece_of_run, stock_of_run

#: Inches in a foot, by which metal is weighed.
_IN_A_FOOT = Constant(12, "in/ft", "inches in a foot")


def _metal(at: At, field: str, *more: int) -> Expression:
    return at.choice(f"{METALS[at.thing().edge]}/{field}" + "/*" * len(more), *more)


def _sides(at: At, run: Any) -> list[int]:
    """Give the sides of a run's plane that are of its kind, in the order of the plane."""
    plane = at.plan.planes[plane_index(at, run.plane)]
    corners = plane.corners

    def rises(k: int) -> bool:
        return bool(corners[(k + 1) % len(corners)][1] > corners[k][1])

    def is_meant(k: int, kind: str) -> bool:
        if run.edge in ("left_rake", "right_rake"):
            return kind == "rake" and rises(k) == (run.edge == "right_rake")
        if run.edge == "pitch_break":
            return kind == "pitch_break" and is_lower(plane, k)
        return kind == run.edge and (run.edge != "ridge" or not plane.beyond[k])

    return [k for k, kind in enumerate(plane.edges) if is_meant(k, kind)]


def _run_length(at: At) -> Expression:
    run, runs, mine = at.thing(), at.plan.metal, int(at.path[1])
    if run.edge == "valley":
        return _valley(at)
    before = sum(one.edge == run.edge and one.plane == run.plane for one in runs[:mine])
    side = at("planes/*/lengths/*", plane_index(at, run.plane), _sides(at, run)[before])
    return side + 2 * at.choice("metalwork/ridge_proud") if run.edge == "ridge" else side


def _valley(at: At) -> Expression:
    mine = sum(one.edge == "valley" for one in at.plan.metal[: int(at.path[1])])
    valleys = [k for k, line in enumerate(at.plan.lines) if line.kind == "valley"]
    line = at("lines/*/length", valleys[mine])
    return at.near("past_foot") + line + at.near("over_top")


def _past_valley(field: str) -> Make:
    """Give how far metal goes past an end of a valley, where that is not for the deck's sake."""

    def make(at: At) -> Expression | None:
        if at.thing().edge != "valley":
            return Constant(0, "in", "no valley")
        chosen = at.choice(f"valleying/{field}")
        return chosen if chosen.value == at.value() else None

    return make


def _tab(at: At) -> Expression:
    return at.choice("metalwork/eave_tab") if at.value() else Constant(0, "in", "none")


def _tab_nails(at: At) -> Expression:
    return Constant(at.value(), "count", "one in each bent tab")


def _cut_length(at: At) -> Expression:
    return at.near("run_length") + at.near("tab_nails") * at.near("tab")


def _run(at: At) -> int:
    return int(at.path[1])


def _is_shared(at: At) -> bool:
    """Tell whether a run is cut from lengths that others are cut from too."""
    return bool(at.plan.metal[_run(at)].cut_from)


def _stock_length(at: At) -> Expression:
    if _is_shared(at):
        return stock_of_run(at, _run(at))
    offer = getattr(at.plan.choices, METALS[at.thing().edge]).stock_lengths
    return _metal(at, "stock_lengths", offer.index(at.value()))


def _pieces(at: At) -> Expression:
    if _is_shared(at):
        return at.all("count", "lengths/*", "its pieces", base=at.base())
    lap = at.near("lap")
    more = Constant(0, "in").greatest(at.near("cut_length") - lap)
    return (more / (at.near("stock_length") - lap)).up().greatest(1)


@dataclass(frozen=True, slots=True)
class _Ends:
    """The last two pieces of a run, as formulas: what is over, and by how much it is too short."""

    rest: Expression
    short: Expression


def _ends(at: At) -> _Ends:
    run, stock, lap = at.thing(2), at.near("stock_length", back=2), at.near("lap", back=2)
    cut = at.near("cut_length", back=2)
    over = (cut - (len(run.lengths) - 1) * (stock - lap)).least(stock)
    rest = Step("what whole lengths leave for the last piece", "in", over)
    held = lap.greatest(lap / 2 + at.choice("metalwork/end_distance"))
    at_end = at.near("tab", back=2) + held if run.tab and run.tabs != "start" else held
    least = at.choice("metalwork/least_piece").greatest(at_end)
    short = Constant(0, "in").greatest(Step("least length of the last piece", "in", least) - rest)
    return _Ends(rest, Step("what the last piece is short of that", "in", short))


def _length(at: At) -> Expression:
    run, k = at.thing(2), int(at.path[-1])
    if _is_shared(at):
        return piece_of_run(at, _run(at), k)
    stock, count = at.near("stock_length", back=2), len(run.lengths)
    if count == 1:
        return at.near("cut_length", back=2).least(stock)
    if k < count - 2:
        return stock
    ends = _ends(at)
    return ends.rest + ends.short if k == count - 1 else stock - ends.short


def _offcut_of(at: At) -> Expression:
    if _is_shared(at):
        return at.figure((*cuts_of_run(at.plan, _run(at))[int(at.path[-1])], "offcut"))
    return at.near("stock_length", back=2) - at.near("lengths", at.path[-1], back=2)


def _stock(at: At) -> Expression:
    if _is_shared(at):
        return at.all("count", "offcuts/*", "the lengths first cut for it", base=at.base())
    return at.near("pieces")


def _offcut(at: At) -> Expression:
    if _is_shared(at):
        return at.all("sum", "offcuts/*", "what is left of these", base=at.base())
    return at.near("pieces") * at.near("stock_length") - _lengths(at)


def _lengths(at: At) -> Expression:
    return at.all("sum", "lengths/*", "the lengths of its pieces", base=at.base())


def _lap_start(at: At) -> Expression:
    """Give where a lap begins: where the piece before it ends, less the lap."""
    k, run = int(at.path[-1]), at.thing(2)
    lap = at.near("lap", back=2)
    before = added(at.near("lengths", n, back=2) - lap for n in range(k + 1))
    return before - at.near("tab", back=2) if run.tab and run.tabs != "end" else before


def _nail(at: At) -> Expression:
    """Give where a nail goes: at an end, in a lap, or spaced evenly between two such."""
    run, place = at.thing(2), int(at.path[-1])
    end = at.choice("metalwork/end_distance")
    laps = [at.near("laps", n, back=2) + at.near("lap", back=2) / 2 for n in range(len(run.laps))]
    marks: list[Expression] = [end, *laps, at.near("run_length", back=2) - end]
    if evaluated(marks[-1]) <= evaluated(marks[0]):
        return (marks[0] + marks[-1]) / 2
    return _spaced(at, marks, place)


def _spaced(at: At, marks: Sequence[Expression], place: int) -> Expression:
    ridge = at.thing(2).edge == "ridge"
    spacing = at.choice("metalwork/ridge_nail_spacing" if ridge else "metalwork/nail_spacing")
    if not place:
        return marks[0]
    passed = 0
    for mark, following in pairwise(marks):
        spaces = ((following - mark) / spacing).up()
        count = int(evaluated(spaces))
        if place == passed + count:
            return following
        if place < passed + count:
            return mark + (following - mark) * (place - passed) / spaces
        passed += count
    return marks[-1]


def _nails(at: At) -> Expression:
    along = at.all("count", "nail_positions/*", "the positions of its nails", base=at.base())
    lines = at.near("nail_lines") * along if at.thing().nail_lines > 1 else along
    return lines + at.near("tab_nails")


def _nail_lines(at: At) -> Expression:
    two = "one line along each side of a valley" if at.value() > 1 else "one line along the run"
    return Constant(at.value(), "count", two)


def _weight(at: At) -> Expression:
    return _lengths(at) / _IN_A_FOOT * _metal(at, "weight")


METAL: Table = under(
    "/metal/*",
    table(
        GEOMETRY,
        run_length=_run_length,
        cut_length=_cut_length,
        lengths__i=_length,
        offcuts__i=_offcut_of,
        offcut=_offcut,
        laps__i=_lap_start,
        weight=_weight,
    ),
    table(
        "Whole lengths, each lapped over the next.",
        pieces=_pieces,
        stock=_stock,
    ),
    table(
        "The stock length that takes the least metal.",
        stock_length=_stock_length,
    ),
    table(
        PRACTICE,
        tab=_tab,
        tab_nails=_tab_nails,
        nail_lines=_nail_lines,
        lap=lambda at: at.choice("metalwork/lap"),
        nail_positions__i=_nail,
        past_foot=_past_valley("past_eave"),
        over_top=_past_valley("over_ridge"),
        deck_leg=lambda at: _metal(at, "deck_leg"),
        face_leg=lambda at: _metal(at, "face_leg"),
    ),
    table(COUNTED, nails=_nails),
)
