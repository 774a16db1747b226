"""Orders counted in columns are those that plans come to, line by line: packs, needed, weights."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any, get_type_hints

import numpy as np
import pytest

from roofing_core import (
    Cutting,
    Decking,
    Hip,
    Job,
    Metalwork,
    Refused,
    Roll,
    SingleSlope,
    Underlaying,
    VentPipe,
    material,
    metal_run,
)
from roofing_core.sizing.amounts import Amounts
from roofing_core.sizing.counting import LINES, counter_of, planned_amounts
from roofing_core.sizing.runs import RunWay, run_amounts
from tests.job.changing import at, changed
from tests.job.test_choices import PLACES, others
from tests.sizing.jobs import job, roof_like, sixteenths

#: Relative to what is needed: both ways add up the same numbers in another order.
DUST = 1e-9


def differences(counted: Amounts, planned: Amounts) -> list[str]:
    """Name what differs between two counts of the same roofs."""
    if (counted.refused != planned.refused).any():
        return [f"refused {counted.refused} {planned.refused}"]
    right = ~planned.refused
    found = []
    for name in LINES:
        ours, theirs = counted.lines[name], planned.lines[name]
        for column in ("packs", "holds", "needed", "carried", "stays"):
            one, other = (getattr(line, column)[right] for line in (ours, theirs))
            exact = column in {"packs", "holds"}
            off = one != other if exact else np.abs(one - other) > DUST * (1 + np.abs(other))
            if off.any():
                found.append(f"{name}.{column}: {one[off][:3]} planned {other[off][:3]}")
    if (np.abs(counted.area - planned.area)[right] > DUST * planned.area[right]).any():
        found.append("area")
    return found


@pytest.mark.parametrize("seed", range(5))
def test_columns_are_the_orders_of_plans(seed):
    random = Random(seed)
    done = 0
    while done < 25:
        asked = job(random)
        try:
            counter = counter_of(asked)
        except Refused:
            continue
        done += 1
        assert isinstance(asked.roof, SingleSlope)
        roofs = [asked.roof, *(roof_like(random, asked.roof.eave_length) for _ in range(5))]
        assert counter.at_once
        told = differences(counter.amounts(roofs), planned_amounts(asked, roofs))
        assert not told, (asked, roofs, told)


SHED = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
SHORT_ROLL = replace(material(Roll, "felt_15"), length=400.0)


@pytest.mark.parametrize(
    ("asked", "size"),
    [
        (Job(roof=SHED), replace(SHED, pitch=1.9 / 12)),
        (Job(roof=SHED), replace(SHED, eave_length=0.01)),
        (Job(roof=SHED), replace(SHED, slope_length=None)),
        (Job(roof=SHED), replace(SHED, slope_length=0.5)),
        (Job(roof=SHED), replace(SHED, eave_length=30_000, slope_length=12_000)),
        (Job(roof=SHED), replace(SHED, eave_length=120_000)),
        (Job(roof=SHED, underlayment=replace(SHORT_ROLL, length=300.0)),
         replace(SHED, eave_length=400)),
        (Job(roof=SHED, ice_barrier=replace(SHORT_ROLL, length=300.0),
             underlaying=Underlaying(ice_barrier=True)), replace(SHED, eave_length=400)),
        (Job(roof=SHED, underlayment=replace(SHORT_ROLL, length=300.0),
             underlaying=Underlaying(ice_barrier=True)),
         replace(SHED, eave_length=400, slope_length=20)),
        (Job(roof=SHED, underlaying=Underlaying(ice_barrier=True, over_ice_barrier=6)),
         replace(SHED, slope_length=5)),
        (Job(roof=SHED, decking=Decking(lay=True)), replace(SHED, eave_length=9_600,
                                                            slope_length=4_800)),
    ],
)  # fmt: skip
def test_what_no_plan_can_be_made_of_is_marked(asked, size):
    roofs = [asked.roof, size]
    planned = planned_amounts(asked, roofs)
    assert planned.refused.tolist() == [False, True]
    assert not differences(counter_of(asked).amounts(roofs), planned)


def test_what_columns_cannot_hold_is_planned():
    pipe = VentPipe(plane="slope", from_left=60, up_slope=50, diameter=3)
    for asked in (
        Job(roof=SHED, openings=(pipe,)),
        Job(roof=SHED, cutting=Cutting(reuse="best")),
        Job(roof=SHED, metalwork=Metalwork(buying="across_runs")),
        Job(roof=Hip(length=200, width=120, pitch=0.5)),
    ):
        assert not counter_of(asked).at_once
    assert counter_of(Job(roof=SHED)).at_once


def test_metal_is_counted_as_it_is_laid():
    random = Random(3)
    for _ in range(400):
        stocks = tuple(sixteenths(random, 60, 150) for _ in range(random.randint(1, 3)))
        sizes: dict[str, Any] = {
            "lap": sixteenths(random, 1, 9),
            "nail_spacing": sixteenths(random, 4, 16),
            "end_distance": sixteenths(random, 0, 3),
            "least_piece": sixteenths(random, 0, 20),
            "tab": random.choice([0.0, sixteenths(random, 0, 4)]),
        }
        lengths = [sixteenths(random, 1, 900) for _ in range(20)]
        found = run_amounts(np.array(lengths), RunWay(stock_lengths=stocks, **sizes))
        laid = [metal_run(one, stock_length=stocks, **sizes) for one in lengths]
        assert found.pieces.tolist() == [run.stock for run in laid]
        assert found.stock_length.tolist() == [run.stock_length for run in laid]
        assert found.nails.tolist() == [run.nails for run in laid]
        assert found.cut == pytest.approx([sum(run.lengths) for run in laid])


LONG = SingleSlope(eave_length=500, slope_length=60, pitch=5 / 12, eave_overhang=12)
WITH_ALL = Job(roof=LONG, decking=Decking(lay=True), underlaying=Underlaying(ice_barrier=True))


def test_whatever_is_chosen_columns_are_the_orders_of_plans():
    # Also of choices that are yet to come: each is changed here, one after another.
    looked_at = 0
    for place in PLACES:
        part, _, name = place.rpartition(".")
        other, *_ = others(at(WITH_ALL, place), get_type_hints(type(at(WITH_ALL, part)))[name])
        chosen = changed(WITH_ALL, **{place.replace(".", "__"): other})
        try:
            counter = counter_of(chosen)
        except Refused:
            continue
        looked_at += 1
        told = differences(counter.amounts([LONG]), planned_amounts(chosen, [LONG]))
        assert not told, (place, other, told)
    assert looked_at > len(PLACES) / 2
