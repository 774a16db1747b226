"""What the audit reads of a plan, by the plan's own names and in its units."""

from __future__ import annotations

from dataclasses import MISSING, fields, is_dataclass, replace
from math import cos, nan, pi, sin
from typing import Any, get_args, get_type_hints

import pytest

from roofing_core import AuditLimits, Plan, Refused, TooManyPieces, audit, finished, plan
from roofing_core.auditing.finished import FinishedPlan
from tests.auditing.injuries import (
    with_course,
    with_laid,
    with_piece,
    with_row,
    with_rows,
    with_run,
)
from tests.auditing.roof_injuries import (
    with_caps,
    with_choice,
    with_opening,
    with_step,
    with_steps,
)


def parts(kind: Any, whole: Any) -> list[tuple[Any, Any]]:
    """Give what the audit reads and what the plan has, dataclass by dataclass."""
    mine, there = (get_type_hints(one, include_extras=True) for one in (kind, whole))
    found = [(kind, whole)]
    for name in (name for name in mine if name in there):
        pair = mine[name], there[name]
        inner, outer = (next(iter(get_args(one)), one) if get_args(one) else one for one in pair)
        if is_dataclass(inner):
            found += parts(inner, outer)
    return found


@pytest.mark.parametrize(("kind", "whole"), parts(FinishedPlan, Plan))
def test_a_field_is_the_plans_own_by_name_and_type(kind, whole):
    mine, there = (get_type_hints(one, include_extras=True) for one in (kind, whole))
    for field in fields(kind):
        if field.default is MISSING:
            assert field.name in there
        hint, own = mine[field.name], there.get(field.name, mine[field.name])
        deep = is_dataclass(hint) or any(map(is_dataclass, get_args(hint)))
        assert deep or own == hint or hint is str, field.name


def test_a_plan_is_taken_once_and_pieces_that_courses_share_are_shared(shed):
    taken = finished(plan(shed))
    assert finished(taken) is taken
    assert taken.courses[0].laid is taken.courses[4].laid
    assert audit(taken) == audit(plan(shed))


#: What was read as a corner has three numbers.
CROOKED: Any = ((0.0, 0.0), (1.0, 0.0), (1.0, 2.0, 3.0))

SPOILT = {
    "courses.4.laid.1.right": with_piece(5, 2, lambda one: replace(one, right=one.left)),
    "courses.4.laid.1": with_piece(5, 2, lambda one: replace(one, nails=(nan,))),
    "courses.4.laid.0.corners": with_piece(
        5, 1, lambda one: replace(one, corners=((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)))
    ),
    "courses.4.laid.0.cutouts.0": with_piece(
        5, 1, lambda one: replace(one, cutouts=(((0.0, 0.0), (1.0, 2.0)),))
    ),
    "courses.4.plane": with_course(5, lambda one: replace(one, plane="north")),
    "courses.4.snap_line": with_course(5, lambda one: replace(one, top_trim=20.0)),
    "courses.4.joints": with_course(5, lambda one: replace(one, exposure=nan)),
    "underlayment.rows.2.upper": with_row(3, lambda row: replace(row, upper=row.lower)),
    "underlayment.rows.2.end_laps": with_row(3, lambda row: replace(row, end_laps=(nan,))),
    "metal.0.laps": with_run("eave", lambda run: replace(run, laps=())),
    "metal.0": with_run("eave", lambda run: replace(run, run_length=nan)),
    "planes": lambda whole: replace(whole, planes=(), courses=(), starters=()),
    "planes.0.edges": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], edges=("eave",)),)
    ),
    "planes.1.name": lambda whole: replace(whole, planes=whole.planes * 2),
    "starters.0.height": lambda whole: replace(
        whole, starters=(replace(whole.starters[0], height=0.0),)
    ),
    "planes.0.corners": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], corners=whole.planes[0].corners[::-1]),)
    ),
    "planes.0.edges.1": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], edges=("eave", "side", "ridge", "rake")),)
    ),
    "planes.0.beyond.1": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], edges=("eave", "hip", "ridge", "rake")),)
    ),
    "planes.0.edges.0": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], edges=("sidewall", "rake", "ridge", "rake")),)
    ),
    "planes.0.beyond.3": lambda whole: replace(
        whole, planes=(replace(whole.planes[0], beyond=("", "", "", "slope")),)
    ),
    "planes.0.pitch": lambda whole: replace(whole, planes=(replace(whole.planes[0], pitch=-0.25),)),
    "metal.0.tabs": with_run("eave", lambda run: replace(run, tabs="none")),
    "metal.0.deck_leg": with_run("eave", lambda run: replace(run, deck_leg=-1.0)),
    "courses.4.bedding_area": with_course(5, lambda one: replace(one, bedding_area=-1.0)),
    "choices.shingle.kind": with_choice("shingle", kind="slate"),
    "courses.4.laid.1.corners": with_piece(5, 2, lambda one: replace(one, corners=CROOKED)),
    "sealant.dab_volume": lambda whole: replace(
        whole, sealant=replace(whole.sealant, dab_volume=-1.0)
    ),
}


@pytest.mark.parametrize("place", SPOILT)
def test_what_is_no_plan_is_refused_by_its_place(good, place):
    with pytest.raises(Refused) as refused:
        audit(SPOILT[place](good["shed"]))
    assert place in {".".join(map(str, fault.at)) for fault in refused.value.faults}


def _no_ridge(whole: FinishedPlan) -> FinishedPlan:
    """Take the ridge of the first plane for a rake, so that only the other one knows of it."""
    first, *others = whole.planes
    edges = tuple("rake" if kind == "ridge" else kind for kind in first.edges)
    beyond = tuple(
        "" if kind == "ridge" else other
        for kind, other in zip(first.edges, first.beyond, strict=True)
    )
    return replace(whole, planes=(replace(first, edges=edges, beyond=beyond), *others))


SPOILT_ROOFS = {
    "planes.2.beyond": _no_ridge,
    "planes.0.corners.0": lambda whole: replace(
        whole,
        planes=(
            replace(
                whole.planes[0],
                corners=(whole.planes[0].corners[0], *whole.planes[0].corners[:-1]),
            ),
            *whole.planes[1:],
        ),
    ),
    "caps.0": with_caps(0, lambda run: replace(run, half_width=nan)),
    "choices": with_choice("cap", length=nan),
    "valley_lining.pieces.0": lambda whole: replace(
        whole,
        valley_lining=replace(
            whole.valley_lining, pieces=(replace(whole.valley_lining.pieces[0], lap=nan),)
        ),
    ),
    "step_flashings.0.plane": with_steps(0, lambda run: replace(run, plane="north")),
    "step_flashings.0": with_step(0, 1, lambda piece: replace(piece, upper=nan)),
    "openings.0.plane": with_opening(1, lambda one: replace(one, plane="north")),
    "openings.1.kind": with_opening(2, lambda one: replace(one, kind="hatch")),
    "caps.0.starts_at": with_caps(0, lambda run: replace(run, starts_at="upper")),
    "openings.1": with_opening(2, lambda one: replace(one, right=one.left)),
    "openings.2": with_opening(
        3, lambda one: replace(one, pipes=(replace(one.pipes[0], side_flange=nan),))
    ),
}


@pytest.mark.parametrize("place", SPOILT_ROOFS)
def test_what_is_no_roof_is_refused_by_its_place(good, place):
    with pytest.raises(Refused) as refused:
        audit(SPOILT_ROOFS[place](good["house"]))
    assert place in {".".join(map(str, fault.at)) for fault in refused.value.faults}


def _round(corners: int) -> tuple[tuple[float, float], ...]:
    """Give the corners of a piece that is nearly round."""
    turns = [2 * pi * k / corners for k in range(corners)]
    return tuple((20 + 10 * cos(turn), 28 + 5 * sin(turn)) for turn in turns)


TOO_MUCH = {
    "planes": lambda whole: replace(
        whole,
        planes=(*whole.planes, *(replace(whole.planes[0], name=f"{k}") for k in range(400))),
    ),
    "planes.0.corners": lambda whole: replace(
        whole,
        planes=(replace(whole.planes[0], corners=_round(201), edges=("eave",) * 201,
                        beyond=("",) * 201),),
    ),
    "metal": lambda whole: replace(whole, metal=whole.metal * 1251),
    "lines": lambda whole: replace(whole, lines=whole.lines * 5001),
    "courses.4.laid": with_laid(
        5, lambda laid: tuple(replace(laid[0], corners=_round(4)) for _ in range(401))
    ),
    "courses.4.laid.1.corners": with_piece(5, 2, lambda one: replace(one, corners=_round(201))),
    "courses.6.laid": with_laid(
        7, lambda laid: tuple(replace(laid[0], corners=_round(100)) for _ in range(41))
    ),
    "courses": lambda whole: replace(whole, courses=whole.courses * 33),
    "underlayment.rows": with_rows(lambda rows: rows * 33),
}  # fmt: skip


@pytest.mark.parametrize("place", TOO_MUCH)
def test_what_would_take_too_long_is_refused_by_its_place(good, place):
    with pytest.raises(TooManyPieces) as refused:
        audit(TOO_MUCH[place](good["shed"]))
    assert place in {".".join(map(str, fault.at)) for fault in refused.value.faults}


def test_a_million_pieces_are_refused_at_once(good):
    whole = with_laid(5, lambda laid: laid * 200_000)(good["shed"])
    with pytest.raises(TooManyPieces, match="courses came as 1000100 pieces: at most 400000"):
        audit(whole)


TOO_MUCH_OF_A_ROOF = {
    "caps": lambda whole: replace(whole, caps=whole.caps * 251),
    "step_flashings": lambda whole: replace(whole, step_flashings=whole.step_flashings * 251),
    "openings": lambda whole: replace(whole, openings=whole.openings * 67),
}


@pytest.mark.parametrize("place", TOO_MUCH_OF_A_ROOF)
def test_a_roof_that_would_take_too_long_is_refused_by_its_place(good, place):
    with pytest.raises(TooManyPieces) as refused:
        audit(TOO_MUCH_OF_A_ROOF[place](good["house"]))
    assert place in {".".join(map(str, fault.at)) for fault in refused.value.faults}


def test_a_limit_is_zero_or_more(shed):
    with pytest.raises(Refused, match="metal_lap came as -1 in: zero or more"):
        AuditLimits(metal_lap=-1)
    strict = audit(plan(shed), limits=AuditLimits(headlap=2.5))
    assert {one.question for one in strict.breaches} == {"shingles.headlap"}
    assert audit(plan(shed), limits=AuditLimits(headlap=2.0)).sheds_water
