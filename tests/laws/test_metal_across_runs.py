"""Plans whose metal is bought across runs: less of it, every run spanned, all told alike."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from roofing_core import (
    Footprint,
    Gable,
    Hip,
    Job,
    Metal,
    Metalwork,
    Refused,
    SingleSlope,
    audit,
    drawings,
    material,
    plan,
    plan_text,
)
from roofing_core.job.edges import METALS
from tests.recount.metal import nail_run

DUST = 1e-6


def eave_of(lengths: tuple[float, ...]) -> Metal:
    return replace(material(Metal, "eave_metal"), stock_lengths=lengths)


def random_job(seed: int, buying) -> Job:
    chance = random.Random(seed)
    long, wide = chance.randint(100, 600), chance.randint(96, 400)
    roofs = (
        SingleSlope(eave_length=long, slope_length=wide, pitch=0.25),
        Gable(length=long, width=wide, pitch=0.5),
        Hip(length=long + wide, width=wide, pitch=0.5),
        Footprint(
            corners=((0, 0), (long + 240, 0), (long + 240, wide), (240, wide), (240, wide + 240),
                     (0, wide + 240)),
            pitch=0.5,
        ),
    )  # fmt: skip
    lengths = chance.sample((96.0, 120.0, 126.0, 144.0), chance.randint(1, 3))
    edge = eave_of(tuple(lengths))
    one_profile = chance.random() < 0.5
    return Job(
        roof=roofs[seed % 4],
        eave_metal=edge,
        rake_metal=edge if one_profile else replace(edge, name="rake_metal"),
        valley_metal=replace(material(Metal, "valley_metal"), stock_lengths=tuple(lengths)),
        metalwork=Metalwork(
            buying=buying, lap=chance.choice((3, 6)), eave_tab=2 * chance.randint(0, 1)
        ),
    )


@pytest.mark.parametrize("seed", range(24))
def test_less_metal_is_bought_and_every_run_is_spanned_and_nailed(seed):
    across, apart = plan(random_job(seed, "across_runs")), plan(random_job(seed, "run_by_run"))
    assert not apart.metal_bought
    bought = sum(one.metal for one in across.metal_bought)
    by_run = sum(run.stock * run.stock_length for run in apart.metal)
    assert bought <= by_run + DUST
    assert sum(one.run_by_run for one in across.metal_bought) == pytest.approx(by_run)
    for run, before in zip(across.metal, apart.metal, strict=True):
        assert (run.edge, run.plane) == (before.edge, before.plane)
        assert run.run_length == before.run_length
        at_start = 0 if run.tabs == "end" else run.tab
        starts = [-at_start, *run.laps]
        for (start, after), long in zip(pairwise(starts), run.lengths, strict=False):
            assert start + long - after == pytest.approx(run.lap, abs=DUST)
        end = run.run_length + (0 if run.tabs == "start" else run.tab)
        assert starts[-1] + run.lengths[-1] == pytest.approx(end, abs=DUST)
        assert len(run.lengths) == 1 or min(run.lengths) >= 12 - DUST
        nails = nail_run(
            Fraction(run.run_length),  # type: ignore[arg-type]
            [Fraction(at) for at in run.laps],
            Fraction(run.lap),  # type: ignore[arg-type]
            12,
            1,
        )
        assert run.nail_positions == pytest.approx([float(at) for at in nails])
        assert run.nails == run.nail_lines * len(nails) + run.tab_nails


@pytest.mark.parametrize("seed", range(24))
def test_order_cuts_and_runs_tell_the_same(seed):
    planned = plan(random_job(seed, "across_runs"))
    for one in planned.metal_bought:
        runs = [run for run in planned.metal if METALS[run.edge] in one.metals]
        laid = [
            (number, long)
            for run in runs
            for number, long in zip(run.cut_from, run.lengths, strict=True)
        ]
        cut = [(length.number, piece.length) for length in one.cuts for piece in length.pieces]
        assert sorted(laid) == sorted(cut)
        for length in one.cuts:
            used = sum(piece.length for piece in length.pieces)
            assert used + length.offcut == pytest.approx(length.stock_length)
        assert sum(run.stock for run in runs) == one.count == len(one.cuts)
        assert sum(run.offcut for run in runs) == pytest.approx(one.offcut)
        lines = [getattr(planned.order, name) for name in one.metals]
        assert sum(line.packs for line in lines) == one.count
        sizes = [size for line in lines for size in line.by_size()]
        assert sum(size.packs * size.holds.value for size in sizes) == pytest.approx(one.metal)
        assert sum(line.left_over.value for line in lines) == pytest.approx(one.offcut, abs=DUST)
        needed = sum(line.needed.value for line in lines)
        assert needed == pytest.approx(sum(sum(run.lengths) for run in runs))


@pytest.mark.parametrize("seed", range(24))
def test_the_audit_finds_such_a_plan_as_sound_as_another(seed):
    across, apart = (
        audit(plan(random_job(seed, buying))) for buying in ("across_runs", "run_by_run")
    )
    assert across.sheds_water is apart.sheds_water is True


def test_the_shed_by_hand():
    # 14 ft of eave with its tabs are 172 in, each rake 56: 284 in all. Two lengths of 10 ft reach
    # 234, three 348, and by themselves the runs take 2 + 1 + 1. The ridge, 168 1/2 in, is of
    # another profile.
    shed = SingleSlope(eave_length=168, slope_length=56, pitch=0.25)
    edge = eave_of((120,))
    planned = plan(
        Job(roof=shed, eave_metal=edge, rake_metal=edge, metalwork=Metalwork(buying="across_runs"))
    )
    together, ridge = planned.metal_bought
    assert (together.metals, together.count, together.saved) == (
        ("eave_metal", "rake_metal"),
        3,
        120,
    )
    assert (ridge.metals, ridge.count, ridge.saved) == (("ridge_metal",), 2, 0)
    assert [planned.order.eave_metal.packs, planned.order.rake_metal.packs] == [2, 1]
    assert [run.lengths for run in planned.metal] == [
        (120, 58), (56,), (56,), (120, 54.5),
    ]  # fmt: skip
    assert [run.cut_from for run in planned.metal] == [(1, 2), (3,), (3,), (1, 2)]
    text = plan_text(planned)
    cut = "length 3    10 ft  4 ft 8 in for left rake, piece 1; 4 ft 8 in for right rake, piece 1"
    assert cut in text
    assert "bought across runs: 30 ft in all, run by run 40 ft. Proved: no way" in text
    (page,) = drawings(planned, kind="metal_cuts")
    assert "Length 3, eave metal, 10 ft: 4 ft 8 in for left rake" in page.svg
    told = [step.says.written() for step in planned.steps]
    assert any(
        "2 pieces: 10 ft from length 1, 4 ft 10 in from length 2, lapped" in one for one in told
    )


def test_lengths_of_two_sizes_stand_in_the_order_by_size():
    planned = plan(
        Job(
            roof=SingleSlope(eave_length=230, slope_length=112, pitch=0.25),
            eave_metal=eave_of((96, 144)),
            metalwork=Metalwork(buying="across_runs"),
        )
    )
    # 234 in with tabs: 96 + 144 - 6 is just that.
    line = planned.order.eave_metal
    assert [(one.packs, one.holds.value) for one in line.sizes] == [(1, 96), (1, 144)]
    assert (line.packs, line.pack_holds.value, line.left_over.value) == (2, 120, 0)
    heaviest = max(planned.choices.eave_metal.weight * 12, planned.weight.heaviest)
    assert planned.weight.heaviest == heaviest


def test_a_lap_over_a_third_of_a_length_is_refused_by_the_callers_name():
    shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    job = Job(roof=shed, metalwork=Metalwork(buying="across_runs", lap=41))
    with pytest.raises(Refused) as refused:
        plan(job)
    assert [fault.written() for fault in refused.value.faults] == [
        "metalwork.lap came as 41 in: at most 40 in, a third of the shortest stock length, so that"
        " no three pieces overlap"
    ]
