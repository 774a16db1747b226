"""Areas scale, packs cover, weights add up, and what a larger roof takes.

Counts that never fall when a roof grows along its eave, up its slope or both, with everything else
as it was: courses, pieces, starter pieces, the nails in them, bundles, rows of underlayment, and
the lengths of metal of a run with one stock length on offer. Others can fall, and rightly: rolls
(longer rows may use the rests of rolls better), asphalt cement (a longer slope may end in a lower
closing course or in none), and pieces of metal where there is a choice of stock.
"""

from __future__ import annotations

from cmath import phase
from dataclasses import replace
from math import cos, fsum

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core import Decking, Job, SingleSlope, Underlaying, plan, roof_area, whole_packs
from tests.recount.jobs import drawn

# What is compared here differs by float dust of a few parts in 1e15; a billionth is far more.
RELATIVE = 1e-9

sizes = st.integers(16, 16 * 12 * 100).map(lambda n: n / 16)


@given(sizes, sizes, st.integers(1, 12))
def test_an_area_grows_with_either_side(eave, slope, times):
    one = roof_area(eave, slope_length=slope)
    assert one.area == pytest.approx(eave * slope, rel=RELATIVE)
    assert roof_area(times * eave, slope_length=slope).area == pytest.approx(times * one.area)
    assert roof_area(eave, slope_length=times * slope).area == pytest.approx(times * one.area)
    assert roof_area(times * eave, slope_length=times * slope).squares == pytest.approx(
        times**2 * one.squares
    )


@given(sizes, sizes, sizes)
def test_two_roofs_side_by_side_have_the_area_of_one(left, right, slope):
    parts = [roof_area(eave, slope_length=slope).area for eave in (left, right)]
    assert roof_area(left + right, slope_length=slope).area == pytest.approx(fsum(parts))


@settings(max_examples=60)
@given(drawn())
def test_the_slope_seen_from_above_is_the_plan(given):
    planned = plan(given.job())
    angle = plan_angle(planned.roof.rise, planned.roof.run)
    assert planned.roof.area * cos(angle) == pytest.approx(planned.roof.plan_area, rel=RELATIVE)
    assert planned.squares * 14_400 == pytest.approx(planned.roof.area, rel=RELATIVE)
    assert planned.planes[0].area == planned.roof.area
    weight = planned.weight
    assert weight.per_plan_area * cos(angle) == pytest.approx(weight.per_slope_area, rel=RELATIVE)


def plan_angle(rise: float, run: float) -> float:
    """Give the angle of a slope from its legs, by complex numbers: no tangent of the library's."""
    return phase(complex(run, rise))


def with_deck_and_ice_barrier(job: Job, *, more: bool) -> Job:
    """Give a job that also lays its deck and an ice barrier, or leaves both out."""
    underlaying = replace(job.underlaying, ice_barrier=more)
    return replace(job, decking=Decking(lay=more), underlaying=underlaying)


def sold_by_plan(name: str) -> bool:
    """Tell whether the packs of an order line come from a cutting plan and not from a division."""
    return name in {
        "deck_panels",
        "eave_metal",
        "rake_metal",
        "ridge_metal",
        "underlayment",
        "ice_barrier",
    }


@settings(max_examples=100)
@given(drawn(), st.booleans())
def test_every_line_of_the_order_covers_what_is_needed_and_no_pack_is_too_many(given, more):
    job = with_deck_and_ice_barrier(given.job(), more=more)
    planned = plan(job)
    order = planned.order
    for name in type(order).__slots__:
        line = getattr(order, name)
        holds, needed = line.pack_holds.value, line.needed.value
        assert line.pack_holds.unit == line.needed.unit == line.left_over.unit
        assert line.packs * holds >= needed * (1 - RELATIVE)
        assert line.left_over.value == pytest.approx(line.packs * holds - needed, abs=1e-6)
        if not sold_by_plan(name):
            assert needed > (line.packs - 1) * holds or line.packs == 0
        if needed:
            more_roof = line.left_over.value / needed
            area = planned.roof.area
            assert line.covers_more == pytest.approx(area * more_roof, rel=RELATIVE, abs=1e-6)
        else:
            assert (line.packs, line.covers_more) == (0, 0)
    assert order.lines() == tuple(line for line in order.all_lines() if line.packs > 0)


@settings(max_examples=60)
@given(drawn(), st.booleans())
def test_the_weights_are_the_sums_of_the_order(given, more):
    job = with_deck_and_ice_barrier(given.job(), more=more)
    planned = plan(job)
    lines, weight = planned.order.lines(), planned.weight
    assert [load.name for load in weight.loads] == [line.item for line in lines]
    assert weight.on_deck == pytest.approx(fsum(line.used_weight for line in lines))
    carried = fsum(line.packs * line.pack_weight for line in lines)
    assert weight.to_carry == pytest.approx(carried)
    heaviest = max(lines, key=lambda line: line.pack_weight)
    assert (weight.heaviest, weight.heaviest_name) == (heaviest.pack_weight, heaviest.item)
    assert weight.lifting_index == pytest.approx(weight.heaviest / 51)
    assert weight.per_slope_area == pytest.approx(144 * weight.on_deck / planned.roof.area)
    # What lies on the roof was carried up.
    assert all(load.on_deck <= load.to_carry * (1 + RELATIVE) for load in weight.loads)
    assert weight.on_deck > 0


@given(st.integers(1, 100_000), st.integers(1, 500), st.integers(1, 20))
def test_a_pack_that_holds_n_times_as_much_never_takes_more_packs(needed, holds, times):
    small, large = whole_packs(needed, holds), whole_packs(needed, times * holds)
    assert large <= small <= times * large
    assert (large - 1) * times * holds < needed <= large * times * holds


@settings(max_examples=50)
@given(drawn(), st.integers(2, 5))
def test_a_bundle_that_holds_n_times_as_much_never_takes_more_bundles(given, times):
    job = given.job()
    shingle = job.shingle
    larger = replace(job, shingle=replace(shingle, per_bundle=times * shingle.per_bundle))
    small, large = plan(job).order.shingles, plan(larger).order.shingles
    assert large.packs <= small.packs <= times * large.packs
    assert large.needed == small.needed


@settings(max_examples=120)
@given(
    drawn(),
    st.integers(0, 64 * 24).map(lambda n: n / 64),
    st.integers(0, 64 * 24).map(lambda n: n / 64),
)
def test_a_roof_that_grows_never_takes_fewer_of_these(given, wider, longer):
    job = given.job()
    offer = {
        name: replace(getattr(job, name), stock_lengths=getattr(job, name).stock_lengths[:1])
        for name in ("eave_metal", "rake_metal", "ridge_metal")
    }
    small = replace(
        job, **offer, underlaying=Underlaying(head_lap=job.underlaying.head_lap, end_lap_stagger=0)
    )
    small = replace(small, underlayment=replace(small.underlayment, length=1728))
    grown = SingleSlope(
        eave_length=job.roof.eave_length + wider,
        slope_length=(job.roof.slope_length or 0) + longer,
        pitch=job.roof.pitch,
    )
    before, after = plan(small), plan(replace(small, roof=grown))
    pairs: dict[str, tuple[float, float]] = {
        "area": (before.roof.area, after.roof.area),
        "courses": (before.shingles.courses, after.shingles.courses),
        "pieces": (before.shingles.pieces, after.shingles.pieces),
        "starter": (before.starter.pieces, after.starter.pieces),
        "nails": (before.shingles.nails, after.shingles.nails),
        "starter nails": (before.starter.nails, after.starter.nails),
        "bundles": (before.order.shingles.packs, after.order.shingles.packs),
        "by length": (before.shingles.least_by_length, after.shingles.least_by_length),
        "rows": (len(before.underlayment.rows), len(after.underlayment.rows)),
        **{
            run.edge: (run.stock, longer_run.stock)
            for run, longer_run in zip(before.metal, after.metal, strict=True)
        },
    }
    assert {name: pair for name, pair in pairs.items() if pair[0] > pair[1]} == {}


def test_a_longer_slope_can_take_less_cement(shed):
    # Worked by hand: the butts stand at -1/2 in and every 5 5/8 in. At 112 in the last course, from
    # 106 3/8 in, has its nail zone at 112 1/2 in and closes the roof. At 111 3/4 in it does too,
    # bedded over 5 3/8 in, and at 113 1/4 in it is bedded no more: the next one is, over 1 1/4 in.
    def bedded(slope_length: float) -> float:
        roof = SingleSlope(eave_length=168, slope_length=slope_length, pitch=3 / 12)
        return plan(replace(shed, roof=roof)).shingles.bedding_area

    assert bedded(111.75) == 5.375 * 168.5
    assert bedded(113.25) == 1.25 * 168.5
