"""Better sizes: ranked as plans of every size one by one are, and ranges that cannot be refused."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Any

import pytest

from roofing_core import (
    Between,
    Cutting,
    FitJob,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Ranges,
    Refused,
    SingleSlope,
    fit,
    fit_text,
    plan,
)

SHED = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
WALLS = SingleSlope(
    eave_length=150, run=100, pitch=5 / 12, measured="walls", eave_overhang=6, rake_overhang=4
)
HIP = Hip(length=120, width=90, pitch=0.5)

CASES = {
    "a shed": (
        Job(roof=SHED),
        Ranges(eave_length=Between(least=160, most=181), slope_length=Between(least=108, most=121),
               step=4),
    ),
    "walls by their run": (
        Job(roof=WALLS),
        Ranges(eave_length=Between(least=145, most=160), run=Between(least=98, most=112), step=3.5),
    ),
    "one range": (
        Job(roof=replace(SHED, slope_length=105)),
        Ranges(slope_length=Between(least=98, most=125), step=1),
    ),
    "offcuts": (
        Job(roof=SHED, cutting=Cutting(reuse="best")),
        Ranges(eave_length=Between(least=164, most=172), step=2),
    ),
    "a hip roof": (
        Job(roof=HIP), Ranges(length=Between(least=114, most=124), width=Between(least=88, most=93),
                              step=2),
    ),
}  # fmt: skip


def wasted(order, lines):
    """Give the share of what is bought that does not stay on the roof, by weight."""
    carried = sum(line.packs * line.pack_weight for line in lines(order))
    return 1 - sum(line.used_weight for line in lines(order)) / carried


def shingles(order):
    return [order.shingles]


def everything(order):
    return order.all_lines()


def planned(job, ranges):
    """Plan every size in the ranges, and give its order by what it measures."""
    names = list(ranges.given())
    axes = []
    for name in names:
        wished, between = getattr(job.roof, name), ranges.given()[name]
        values = (wished + k * ranges.step for k in range(-100, 101))
        axes.append([value for value in values if between.least <= value <= between.most])
    return {
        size: plan(
            replace(job, roof=replace(job.roof, **dict(zip(names, size, strict=True))))
        ).order
        for size in product(*axes)
    }


@pytest.mark.parametrize("by", ["shingles", "materials"])
@pytest.mark.parametrize("name", CASES)
def test_sizes_are_ranked_as_their_plans_are(name, by):
    job, ranges = CASES[name]
    told = fit(job, ranges=ranges, by=by, keep=50)
    orders = planned(job, ranges)
    assert told.sizes_looked_at == len(orders)
    assert told.at_once == (job.cutting.reuse == "none" and isinstance(job.roof, SingleSlope))
    lines = shingles if by == "shingles" else everything
    now = orders[tuple(getattr(job.roof, one) for one in ranges.given())]
    wastes = {size: wasted(order, lines) for size, order in orders.items()}
    better = {size: one for size, one in wastes.items() if one < wasted(now, lines) - 1e-9}
    assert told.better_sizes == len(better) > 0
    packs = {
        size: tuple((line.packs, line.pack_holds) for line in orders[size].all_lines())
        for size in better
    }
    kept = [tuple(one.length for one in size.sizes) for size in told.better]
    assert len({packs[size] for size in kept}) == len(kept) == len(set(packs.values()))
    for size, one in zip(kept, told.better, strict=True):
        alike = [better[other] for other in better if packs[other] == packs[size]]
        assert better[size] == pytest.approx(min(alike))
        assert one.saves == pytest.approx(100 * (wasted(now, lines) - better[size]))
        check_size(one, orders[size], now)
    assert [better[size] for size in kept] == sorted(better[size] for size in kept)


def check_size(told, order, now) -> None:
    assert 100 * wasted(order, shingles) == pytest.approx(told.shingles_wasted)
    assert 100 * wasted(order, everything) == pytest.approx(told.materials_wasted)
    assert told.bundles == order.shingles.packs
    changed = {
        line.item: line.packs
        for line, before in zip(order.all_lines(), now.all_lines(), strict=True)
        if line.packs != before.packs
    }
    assert {line.item: line.then_packs for line in told.changes} == changed


def test_the_same_order_covers_eleven_inches_more():
    # 5 bundles are 105 shingles: 20 courses of 5 and 5 for the starter up to 14 ft 11 3/8 in.
    told = fit(Job(roof=SHED), ranges=Ranges(eave_length=Between(least=156, most=180), step=1 / 16))
    best = told.better[0]
    assert best.sizes[0].length == 168 + 11 + 3 / 8
    assert best.changes == ()
    assert best.says.written().endswith("The order is the same.")
    assert told.says.written().startswith("The least: eave length 14 ft 11 3/8 in:")


def test_what_is_kept_is_as_many_as_were_asked_for():
    ranges = Ranges(eave_length=Between(least=120, most=220), step=1)
    few, many = (fit(Job(roof=SHED), ranges=ranges, keep=keep) for keep in (2, 50))
    assert few.better == many.better[:2]
    assert len(many.better) > 2


def test_where_nothing_is_better_that_is_said():
    # One step short of where a sixth bundle is needed, there is nothing better near by.
    best = replace(SHED, eave_length=168 + 11)
    told = fit(Job(roof=best), ranges=Ranges(eave_length=Between(least=178, most=180)))
    assert told.better == ()
    assert told.says.written() == "No size in these ranges wastes less than the one wished for."
    assert told.wished.saves == 0


def test_sizes_that_cannot_be_planned_are_left_out_and_counted():
    # At a run of 4 in and less the slope is shorter than the nail distance asked for.
    job = Job(roof=SingleSlope(eave_length=168, run=6, pitch=0.5))
    steep = replace(job, coursing=replace(job.coursing, edge_distance=4.0))
    told = fit(steep, ranges=Ranges(run=Between(least=1, most=8)))
    planned = 0
    for run in range(1, 9):
        try:
            plan(replace(steep, roof=SingleSlope(eave_length=168, run=run, pitch=0.5)))
            planned += 1
        except Refused:
            continue
    assert 0 < told.not_plannable == 8 - planned


def about(**given: tuple[float, float]) -> Ranges:
    between: dict[str, Any] = {
        name: Between(least=least, most=most) for name, (least, most) in given.items()
    }
    return Ranges(**between)


@pytest.mark.parametrize(
    ("job", "at", "wanted"),
    [
        (FitJob(roof=SHED), ("ranges",), "eave_length, slope_length"),
        (FitJob(roof=HIP), ("ranges",), "length, width"),
        (
            FitJob(roof=SHED, ranges=about(eave_length=(170, 166))),
            ("ranges", "eave_length", "least"), "at most 13 ft 10 in, the most of this range",
        ),
        (
            FitJob(roof=SHED, ranges=about(eave_length=(170, 180))),
            ("ranges", "eave_length", "least"), "at most 14 ft, the size wished for",
        ),
        (
            FitJob(roof=SHED, ranges=about(slope_length=(100, 110))),
            ("ranges", "slope_length", "most"), "at least 9 ft 4 in, the size wished for",
        ),
        (
            FitJob(roof=SHED, ranges=about(run=(100, 110))),
            ("ranges", "run"), "left out: the roof is not given by it",
        ),
        (
            FitJob(roof=SHED, ranges=about(eave_length=(-1, 200))),
            ("ranges", "eave_length", "least"), "more than zero",
        ),
        (
            FitJob(roof=SHED, ranges=replace(about(eave_length=(160, 200)), step=0.0)),
            ("ranges", "step"), "more than zero",
        ),
        (
            FitJob(roof=SHED, ranges=replace(
                about(eave_length=(100, 200), slope_length=(100, 200)), step=0.25)),
            ("ranges", "step"), "at most 20000 sizes",
        ),
        (
            FitJob(roof=HIP, ranges=about(length=(100, 130), width=(80, 100))),
            ("ranges", "step"), "at most 200 sizes",
        ),
        (
            FitJob(roof=SHED, ranges=about(eave_length=(100, 200)), keep=0),
            ("keep",), "from 1 to 50",
        ),
        (
            FitJob(roof=SHED, ranges=about(eave_length=(100, 200)), by="looks"),  # type: ignore
            ("by",), "one of shingles, materials",
        ),
        (
            FitJob(roof=replace(SHED, pitch=1 / 12), ranges=about(eave_length=(100, 200))),
            ("roof", "pitch"), "2:12 or more",
        ),
    ],
)  # fmt: skip
def test_what_contradicts_itself_or_is_too_much_is_refused(job, at, wanted):
    with pytest.raises(Refused) as refusal:
        fit(job)
    fault = refusal.value.faults[0]
    assert fault.at == at
    assert wanted in fault.wanted.written()


def test_planes_measured_by_hand_have_no_range_and_are_told_so():
    porch = GivenPlanes(
        planes=(
            GivenPlane(
                name="porch",
                pitch=0.5,
                corners=((0, 0), (240, 0), (240, 90), (0, 90)),
                edges=("eave", "rake", "headwall", "rake"),
            ),
        )
    )
    with pytest.raises(Refused) as refusal:
        fit(Job(roof=porch), ranges=about(eave_length=(200, 300)))
    assert "left out" in refusal.value.faults[0].wanted.written()


def test_every_fault_of_the_ranges_is_told_at_once():
    wrong = Ranges(eave_length=Between(least=170, most=160), run=Between(least=1, most=2), step=-1)
    with pytest.raises(Refused) as refusal:
        fit(Job(roof=SHED), ranges=wrong)
    places = [fault.at[1:] for fault in refusal.value.faults]
    assert places == [("step",), ("eave_length", "least"), ("run",)]


def test_five_thousand_sizes_are_looked_at_in_one_call():
    ranges = Ranges(
        eave_length=Between(least=150, most=186), slope_length=Between(least=94, most=130), step=0.5
    )
    told = fit(Job(roof=SHED), ranges=ranges)
    assert (told.sizes_looked_at, told.at_once) == (73 * 73, True)


def test_text_has_the_size_wished_for_and_each_better_one():
    told = fit(Job(roof=SHED), ranges=Ranges(eave_length=Between(least=140, most=200)))
    lines = fit_text(told).splitlines()
    wished = next(line for line in lines if line.startswith("wished"))
    assert wished.split()[:3] == ["wished", "14", "ft"]
    rows = [line for line in lines if line[:1].isdigit() and "%" in line]
    assert len(rows) == len(told.better)
    assert "mm" in fit_text(told, "metric")
