"""Margins: each is where plans one by one say it is, and what could not be looked at is said."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest

from roofing_core import (
    Cutting,
    Footprint,
    Gable,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Margins,
    MarginsJob,
    Reading,
    Refused,
    Side,
    SingleSlope,
    VentPipe,
    margins,
    margins_text,
    plan,
)
from roofing_core.job.order_lines import OrderLine
from roofing_core.sizing.margin_kinds import MeasurementMargin, OffBy
from roofing_core.sizing.measurements import measurements_of, plan_sizes

SHED = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
#: Coarse enough to plan every step besides.
COARSE = Reading(
    step=0.25, reach=3, pitch_step=0.5 / 12, pitch_reach=2 / 12, growth_step=0.5, growth_reach=12
)

SHEDS = {
    "by its slope": Job(roof=SHED),
    "by run and pitch, over walls": Job(
        roof=SingleSlope(
            eave_length=150, run=108, pitch=4 / 12, measured="walls", eave_overhang=6,
            rake_overhang=4,
        )
    ),
    "by run and rise": Job(roof=SingleSlope(eave_length=131, run=80, rise=30)),
}  # fmt: skip


def ordered(job: Job) -> dict[str, tuple[int, float]] | None:
    """Give packs and what they hold of every line that is bought; None for what cannot be."""
    try:
        order = plan(job).order
    except Refused:
        return None
    return {line.item: (line.packs, line.pack_holds.value) for line in order.lines()}


def found(margins: Margins, measurement: str) -> MeasurementMargin:
    return next(one for one in margins.measurements if one.measurement == measurement)


def item(margins: Margins, name: str, size: str):
    line = next(one for one in margins.lines if one.item == name)
    return next(growth for growth in line.growth if growth.size == size)


@pytest.mark.parametrize("name", SHEDS)
def test_a_measurement_changes_the_order_where_plans_do(name):
    job = SHEDS[name]
    now, told = ordered(job), margins(job, reading=COARSE)
    assert [one.measurement for one in told.measurements if one.tight] == [
        one.measurement for one in told.measurements
    ][: sum(one.tight for one in told.measurements)]
    for measurement in measurements_of(job.roof):
        one = found(told, measurement.name)
        step = COARSE.pitch_step if measurement.kind == "pitch" else COARSE.step
        steps = 4 if measurement.kind == "pitch" else 12
        for way, off in ((-1, one.less), (1, one.more)):
            planned = [
                ordered(replace(job, roof=measurement.off(way * k * step)))
                for k in range(1, steps + 1)
            ]
            first = next((k for k, other in enumerate(planned, 1) if other != now), None)
            assert off.changes == (first is not None), (measurement.name, way)
            assert off.at.value == pytest.approx((first or steps) * step)
            assert off.holds_to.value == pytest.approx(((first or steps + 1) - 1) * step)
            check_lines(off, planned[first - 1] if first else None, now)


def check_lines(off: OffBy, other, now) -> None:
    assert off.plannable == (other is not None or not off.changes)
    told = {line.item: (line.then_packs, line.then_holds.value) for line in off.lines}
    if not off.changes or other is None:
        assert told == {}
        return
    for name in {*other, *now}:
        before, then = now.get(name, (0, 0.0)), other.get(name, (0, 0.0))
        assert (name in told) == (before != then), name
        if name in told:
            assert told[name][0] == then[0]


@pytest.mark.parametrize("name", SHEDS)
def test_a_line_needs_more_where_plans_do(name):
    job = SHEDS[name]
    told, now = margins(job, reading=COARSE), plan(job).order
    for size in plan_sizes(job.roof):
        grown = [plan(replace(job, roof=size.off(k * 0.5))).order for k in range(1, 25)]
        for line in told.lines:
            growth = item(told, line.item, size.name)
            at = [getattr(order, line.line) for order in grown]
            bought = now_bought(getattr(now, line.line))
            first = next((k for k, one in enumerate(at, 1) if now_bought(one) > bought), None)
            assert growth.needs_more == (first is not None)
            assert growth.at == (first or 24) * 0.5
            if first:
                assert growth.packs == at[first - 1].packs
            assert line.left_over == getattr(now, line.line).left_over


def now_bought(line: OrderLine) -> float:
    return line.packs * line.pack_holds.value


def test_a_single_slope_grows_by_its_deck_at_the_same_pitch():
    walls = SHEDS["by run and pitch, over walls"].roof
    wider, longer = (size.off(3) for size in plan_sizes(walls))
    before, wide, long = (plan(Job(roof=roof)).roof for roof in (walls, wider, longer))
    assert wide.eave_length - before.eave_length == 3
    assert long.slope_length - before.slope_length == pytest.approx(3)
    assert long.pitch == before.pitch


def test_the_shed_s_margins_are_those_worked_out_by_hand():
    # 9 ft 4 in are 20 courses of 5 5/8 in, less the 1/2 in below the eave: 5 pieces each, and 5 for
    # the starter, are 105 shingles, 5 bundles of 21. Any more slope is a course more: 110.
    told = margins(Job(roof=SHED))
    slope = found(told, "slope_length")
    assert (slope.tight, slope.more.at.value, slope.more.holds_to.value) == (True, 1 / 16, 0)
    assert [(line.item, line.packs, line.then_packs) for line in slope.more.lines] == [
        ("shingles", 5, 6)
    ]
    assert told.says.written() == (
        "Measure again before buying: off by 1/2 in or less, the order changes with slope length."
    )
    # Rakes of 9 ft 4 in are one length of 10 ft each: until 10 ft 0 in, 8 in more.
    assert item(told, "rake metal", "slope_length").at == 8 + 1 / 16
    # A course of 0 in trim holds five strips: 196 7/8 in, less 1/2 in past the rakes; one of 17 in
    # trim, 179 7/8 in, less as much: 179 3/8 in is 11 3/8 in more.
    assert item(told, "shingles", "eave_length").at == 11 + 7 / 16
    assert told.at_once
    assert not told.stopped


def test_a_jump_that_goes_back_is_not_stepped_over():
    # Metal on offer in two lengths: the least metal for 14 ft 4 in and more goes up and down.
    metal = replace(Job(roof=SHED).eave_metal, stock_lengths=(96.0, 130.0))
    job = Job(roof=SHED, eave_metal=metal)
    told = margins(job, reading=replace(COARSE, growth_reach=300))
    bought = [
        now_bought(
            plan(replace(job, roof=replace(SHED, eave_length=168 + k * 0.5))).order.eave_metal
        )
        for k in range(0, 301, 10)
    ]
    assert sorted(bought) == bought  # what is bought only grows; what it is cut from does not
    line = next(one for one in told.lines if one.line == "eave_metal")
    first = next(growth for growth in line.growth if growth.size == "eave_length")
    assert first.needs_more
    assert first.pack_holds.value != line.pack_holds.value


def test_in_millimetres_steps_are_whole_millimetres():
    told = margins(Job(roof=SHED), reading=Reading(step=10 / 254, reach=500 / 254))
    slope = found(told, "slope_length")
    assert slope.more.at.value == pytest.approx(10 / 254)
    assert slope.more.at.written("metric") == "1 mm"
    assert found(told, "eave_length").more.at.written("metric") == "50 mm"


def test_a_roof_that_cannot_be_planned_is_told_so():
    low = SingleSlope(eave_length=168, slope_length=100, pitch=2.25 / 12)
    less = found(margins(Job(roof=low)), "pitch").less
    assert (less.changes, less.plannable, less.lines) == (True, False, ())
    assert less.at.written() == "0.5:12"
    said = found(margins(Job(roof=low)), "pitch").says.written()
    assert said.endswith("0.5:12 less and it cannot be planned.")


@pytest.mark.parametrize(
    "job",
    [
        Job(roof=SHED, cutting=Cutting(reuse="best")),
        Job(
            roof=SHED,
            openings=(VentPipe(plane="slope", from_left=60, up_slope=50, diameter=3),),
        ),
        Job(roof=Gable(length=120, width=90, pitch=0.5)),
    ],
    ids=["offcuts", "a pipe", "a gable"],
)
def test_what_columns_do_not_hold_is_planned_and_says_how_far(job):
    told = margins(job, reading=replace(COARSE, most_plans=9))
    assert (told.at_once, told.sizes_looked_at, told.stopped) == (False, 9, True)
    ways = [(one, off) for one in told.measurements for off in (one.less, one.more)]
    steps = [
        round(off.at.value / (COARSE.pitch_step if one.kind == "pitch" else COARSE.step))
        for one, off in ways
    ]
    assert sum(steps) == 9  # the nearest steps of all come first
    assert max(steps) - min(steps) <= 1 or any(off.changes for _, off in ways)
    for one, off in ways:
        measurement = next(m for m in measurements_of(job.roof) if m.name == one.measurement)
        way = -1 if off is one.less else 1
        other = ordered(replace(job, roof=measurement.off(way * off.at.value)))
        assert (other != ordered(job)) == off.changes


def test_plans_are_no_more_than_lay_the_pieces_of_the_limit():
    big = Job(roof=Gable(length=3000, width=1800, pitch=0.5))
    told = margins(big, reading=replace(COARSE, most_plans=300))
    assert told.sizes_looked_at <= 100_000 // plan(big).shingles.pieces + 1
    assert told.stopped
    assert "Not looked at as far as that" in told.says.written()


L = ((0.0, 0.0), (480.0, 0.0), (480.0, 240.0), (240.0, 240.0), (240.0, 480.0), (0.0, 480.0))


@pytest.mark.parametrize("corners", [L, L[::-1]], ids=["one way round", "the other"])
@pytest.mark.parametrize("k", range(6))
def test_a_side_of_an_outline_moves_square_to_itself(corners, k):
    # All corners are square: the plan grows by the side's length times how far it moves.
    roof = Footprint(corners=corners, pitch=0.5)
    (a, b), (c, d) = corners[k], corners[(k + 1) % 6]
    moved = measurements_of(roof)[1 + k].off(2.5)
    grown = plan(Job(roof=moved)).roof.plan_area - plan(Job(roof=roof)).roof.plan_area
    assert grown == pytest.approx(2.5 * sqrt((a - c) ** 2 + (b - d) ** 2))


def test_every_given_measurement_of_every_form_is_one():
    sides = (Side(pitch=0.5), Side(), Side(upper_pitch=0.3, break_run=60.0), Side())
    roof = Footprint(corners=((0, 0), (300, 0), (300, 200), (0, 200)), pitch=0.75, sides=sides)
    names = [one.name for one in measurements_of(roof)]
    assert names == [
        "pitch", "side 1 outwards", "side 2 outwards", "side 3 outwards", "side 4 outwards",
        "sides.0.pitch", "sides.2.upper_pitch", "sides.2.break_run",
    ]  # fmt: skip
    plane = GivenPlane(
        name="porch",
        pitch=0.5,
        corners=((0, 0), (240, 0), (240, 90), (0, 90)),
        edges=("eave", "rake", "headwall", "rake"),
    )
    porch = GivenPlanes(planes=(plane,), eave_overhang=6)
    found = {one.name: one for one in measurements_of(porch)}
    assert list(found) == ["eave_overhang", "planes.0.pitch", "planes.0.width", "planes.0.height"]
    assert found["planes.0.width"].off(2).planes[0].corners[2] == (242, 90)
    assert found["planes.0.height"].off(-2).planes[0].corners[2] == (240, 88)
    assert plan_sizes(porch)[1].off(9).planes[0].corners[2] == (240, pytest.approx(99))
    hip = Hip(length=300, width=200, pitch=0.5, end_pitch=0.6, measured="walls", eave_overhang=12)
    assert [one.name for one in measurements_of(hip)] == [
        "length", "width", "pitch", "end_pitch", "eave_overhang",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("reading", "at", "wanted"),
    [
        (Reading(step=0), ("reading", "step"), "more than zero"),
        (Reading(step=0.5, reach=0.25), ("reading", "reach"), "one step or more, 1/2 in"),
        (Reading(step=1e-3), ("reading", "reach"), "1000 steps; or a longer step"),
        (Reading(pitch_reach=-1), ("reading", "pitch_reach"), "more than zero"),
        (Reading(growth_reach=1e6), ("reading", "growth_reach"), "1000 steps"),
        (Reading(most_plans=0), ("reading", "most_plans"), "from 1 to 300"),
    ],
)
def test_readings_that_are_none_or_too_many_are_refused(reading, at, wanted):
    with pytest.raises(Refused) as refusal:
        margins(Job(roof=SHED), reading=reading)
    fault = refusal.value.faults[0]
    assert fault.at == at
    assert wanted in fault.wanted.written()


def test_a_job_that_brings_its_reading_is_read_by_it():
    asked = MarginsJob(roof=SHED, reading=COARSE)
    assert margins(asked) == margins(Job(roof=SHED), reading=COARSE)


def test_a_job_that_cannot_be_planned_is_refused_as_its_plan_is():
    with pytest.raises(Refused) as refusal:
        margins(Job(roof=replace(SHED, pitch=1 / 12)))
    assert refusal.value.faults[0].at == ("roof", "pitch")


def test_text_names_first_what_to_measure_again():
    text = margins_text(margins(Job(roof=SHED)))
    lines = text.splitlines()
    assert lines[0].startswith("Measure again before buying:")
    assert lines[4].startswith("- slope length, given as 9 ft 4 in: 1/16 in more takes 6 bundles")
    assert max(map(len, lines)) <= 92
    assert "mm" in margins_text(margins(Job(roof=SHED)), "metric")
