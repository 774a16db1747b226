"""What cannot be built is refused: every fault at once, by the names that callers use."""

from __future__ import annotations

from math import inf, nan
from time import perf_counter
from typing import Any

import pytest

from roofing_core import (
    Coursing,
    GivenPlane,
    GivenPlanes,
    Job,
    Metalwork,
    Refused,
    SingleSlope,
    TooManyPieces,
    Valleying,
    plan,
    surfaces,
)
from tests.job.changing import at, changed

#: 10^9 ft in inches: past the largest length of any roof, 100,000 ft.
A_BILLION_FEET = 12e9


def refused(job: Job) -> dict[str, str]:
    """Plan what cannot be built, and give the sentence of each fault by its place."""
    with pytest.raises(Refused) as refusal:
        plan(job)
    return {
        ".".join(map(str, fault.at)): fault.written().partition(" came as ")[2]
        for fault in refusal.value.faults
    }


@pytest.mark.parametrize("place", ["roof.eave_length", "roof.slope_length"])
@pytest.mark.parametrize(
    ("came", "said"),
    [
        (0.0, "0 in"),
        (-168.0, "-14 ft"),
        (nan, "nan"),
        (inf, "inf"),
        (-inf, "-inf"),
        (A_BILLION_FEET, "1000000000 ft"),
    ],
)
def test_a_roof_that_is_no_roof(shed, place, came, said):
    told = refused(changed(shed, **{place.replace(".", "__"): came}))
    assert told == {place: f"{said}: more than zero and at most 100000 ft"}


@pytest.mark.parametrize(
    ("pitch", "said"),
    [
        (0.0, "0:12: 2:12 or more"),
        (1.9 / 12, "1.9:12: 2:12 or more"),
        (-0.25, "-3:12: 0:12 or more"),
        (nan, "nan: 0:12 or more"),
        (inf, "inf: 0:12 or more"),
        (1001 / 12, "1001:12: 0:12 or more"),
    ],
)
def test_a_pitch_that_takes_no_shingles(shed, pitch, said):
    told = refused(changed(shed, roof__pitch=pitch))
    assert list(told) == ["roof.pitch"]
    assert told["roof.pitch"].startswith(f"{said} and at most 1000:12")


def test_a_slope_that_is_measured_too_little_or_too_much():
    with pytest.raises(Refused, match=r"roof\.slope_length came as pitch: exactly two of"):
        plan(Job(roof=SingleSlope(eave_length=168, pitch=0.25)))
    with pytest.raises(Refused, match="came as slope_length, run, pitch: exactly two of"):
        plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, run=100, pitch=0.25)))
    with pytest.raises(Refused, match="came as none of them: exactly two of"):
        plan(Job(roof=SingleSlope(eave_length=168)))


SENTENCES: dict[str, tuple[Any, str]] = {
    "shingle.exposure": (
        6.0,
        "6 in: at most 5 5/8 in: a shingle 13 1/4 in high then keeps 2 in of headlap",
    ),
    "shingle.nail_zone_low": (
        5.5,
        "5 1/2 in: at least the exposure, 5 5/8 in, so that the next course covers the nails",
    ),
    "shingle.nail_zone_high": (
        14.0,
        "14 in: from the low edge of the nail zone, 6 1/8 in, to the top of the shingle, 13 1/4 in",
    ),
    "shingle.sequence": ((), "empty: at least one length to trim, such as 0 in"),
    "starter.trim": (
        40.0,
        "40 in: zero or more, and less than the piece it is cut from, 39 3/8 in",
    ),
    "underlaying.head_lap": (36.0, "36 in: at most 35 in, 1 in less than the roll's width"),
    "metalwork.lap": (
        61.0,
        "5 ft 1 in: at most 5 ft, half of the stock length: no more than two lengths lie over each"
        " other",
    ),
    "metalwork.eave_tab": (
        58.0,
        "4 ft 10 in: at most 4 ft 9 in from a stock length of 10 ft with a lap of 6 in",
    ),
    "metalwork.nail_spacing": (0.0, "0 in: more than zero and at most 100000 ft"),
    "coursing.shingle_past_rake": (-0.25, "-1/4 in: zero or more and at most 100000 ft"),
    "coursing.starter_past_metal": (nan, "nan: zero or more and at most 100000 ft"),
    "coursing.edge_distance": (112.0, "9 ft 4 in: zero or more, and less than the slope length"),
    "underlaying.past_metal": (inf, "inf: zero or more and at most 100000 ft"),
    "nailing.end_distance": (20.0, "20 in: under half of the strip, 19 11/16 in"),
    "sealing.bead_size": (0.0, "0 in: more than zero and at most 100000 ft"),
}


@pytest.mark.parametrize(("place", "came", "said"), [(k, *v) for k, v in SENTENCES.items()])
def test_each_fault_is_said_by_the_callers_name(shed, place, came, said):
    assert at(shed, place) != came
    assert refused(changed(shed, **{place.replace(".", "__"): came})) == {place: said}


@pytest.mark.parametrize("trim", [39.375, 40.0, -1.0, nan])
def test_a_trim_that_is_not_on_the_shingle(shed, trim):
    told = refused(changed(shed, shingle__sequence=(0.0, trim)))
    wanted = "zero or more, and less than the piece it is cut from, 39 3/8 in"
    assert list(told) == ["shingle.sequence.1"]
    assert told["shingle.sequence.1"].endswith(wanted)


def test_the_sides_of_the_limits_that_can_be_built(shed):
    just = changed(
        shed, shingle__exposure=5.625, shingle__sequence=(39.25,), metalwork__lap=60.0,
        underlaying__head_lap=35.0, roof__pitch=4 / 12, metalwork__least_piece=0.0,
        metalwork__eave_tab=0.0,
    )  # fmt: skip
    assert plan(just).shingles.headlap == 2


def test_all_faults_are_told_at_once(shed):
    job = changed(
        shed,
        roof__pitch=1 / 12,
        shingle__exposure=6.0,
        shingle__sequence=(),
        starter__trim=50.0,
        coursing=Coursing(starter_past_metal=-1.0, shingle_past_rake=-1.0),
        metalwork=Metalwork(lap=100.0, nail_spacing=-1.0),
        underlaying__head_lap=40.0,
    )
    assert set(refused(job)) == {
        "roof.pitch", "shingle.exposure", "shingle.sequence", "starter.trim",
        "coursing.starter_past_metal", "coursing.shingle_past_rake", "metalwork.lap",
        "metalwork.nail_spacing", "underlaying.head_lap",
    }  # fmt: skip


def test_nails_and_sealant_are_told_with_the_rest(shed):
    job = changed(
        shed,
        shingle__exposure=6.0,
        nailing__deck_penetration=0.0,
        sealing__bead_size=0.0,
        sealing__beads_per_leg=-1,
    )
    assert set(refused(job)) == {
        "shingle.exposure", "nailing.deck_penetration", "sealing.bead_size",
        "sealing.beads_per_leg",
    }  # fmt: skip


def test_a_depth_of_nothing_in_the_deck_is_named_as_the_caller_knows_it(shed):
    told = refused(changed(shed, nailing__deck_penetration=0.0))
    assert told == {"nailing.deck_penetration": "0 in: more than zero and at most 100000 ft"}


@pytest.mark.parametrize("clearance", [-1.0, nan, inf])
def test_a_clearance_that_cannot_be_is_named(shed, clearance):
    # No clearance is measured against a number that is none.
    assert set(refused(changed(shed, coursing__minimum_clearance=clearance))) == {
        "coursing.minimum_clearance"
    }


def test_a_clearance_that_no_sequence_keeps_is_named_as_the_caller_knows_it(shed):
    # Half a shingle is 19 11/16 in: two joints of a course are never further from one between.
    told = refused(changed(shed, coursing__minimum_clearance=30.0))
    assert list(told) == ["coursing.minimum_clearance"]


def test_a_roll_too_short_for_two_least_pieces_is_refused(shed):
    # 2 ft is the least piece of a lapped row; a roll of 30 in leaves 4 in beyond one at 28 in.
    told = refused(changed(shed, underlayment__length=30.0, underlaying__end_lap_stagger=0.0))
    assert list(told) == ["underlayment.length"]


@pytest.mark.parametrize(
    "field", ["length", "height", "exposure", "thickness", "per_bundle", "bundle_weight"]
)
@pytest.mark.parametrize("came", [-1.0, nan, inf])
def test_a_shingle_that_cannot_be_is_refused_when_it_is_made(shed, field, came):
    with pytest.raises(Refused) as refusal:
        changed(shed, **{f"shingle__{field}": came})
    assert [fault.at for fault in refusal.value.faults] == [(field,)]


def test_too_many_pieces_are_refused_quickly_and_with_their_number(shed):
    # 10,000 x 10,000 ft, to within a course and a piece: 120,000 / 5 5/8 courses of
    # 120,000 / 39 3/8 pieces each.
    job = changed(shed, roof__eave_length=120_000.0, roof__slope_length=120_000.0)
    begun = perf_counter()
    with pytest.raises(TooManyPieces) as refusal:
        plan(job)
    assert perf_counter() - begun < 0.5
    told = {fault.at: fault.written() for fault in refusal.value.faults}
    pieces = int(told[("pieces",)].split()[3].rstrip(":"))
    assert told[("pieces",)].startswith(f"pieces came as {pieces}: at most 200000 pieces")
    courses, in_each = 120_000 / 5.625, 120_000 / 39.375
    assert courses * in_each <= pieces <= (courses + 2) * (in_each + 2)


def test_only_the_trims_that_are_used_are_laid(shed):
    # One course of 3,048 pieces is soon laid. Another 299 trims, for courses that this roof has
    # not, would be a million joints more.
    job = changed(
        shed, roof__eave_length=120_000.0, roof__slope_length=4.0,
        shingle__sequence=tuple(k / 16 for k in range(300)), eave_metal__stock_lengths=(600.0,),
        ridge_metal__stock_lengths=(600.0,), metalwork__nail_spacing=120.0,
        metalwork__ridge_nail_spacing=120.0,
    )  # fmt: skip
    begun = perf_counter()
    planned = plan(job)
    assert perf_counter() - begun < 1
    assert planned.shingles.courses == 1


def test_a_ridge_of_30_000_ft_is_named_if_it_is_refused(shed):
    # Four beads under its metal are longer than any roof; the caller never asked for a bead length.
    job = changed(
        shed, roof__eave_length=360_000.0, roof__slope_length=4.0,
        eave_metal__stock_lengths=(600.0,), ridge_metal__stock_lengths=(600.0,),
        metalwork__nail_spacing=120.0, metalwork__ridge_nail_spacing=120.0,
    )  # fmt: skip
    try:
        plan(job)
    except Refused as refusal:
        places = [".".join(map(str, fault.at)) for fault in refusal.faults]
        assert all(place.startswith(("roof.", "sealing.")) for place in places), places


def test_a_fault_reads_in_millimetres_too(shed):
    with pytest.raises(Refused) as refusal:
        plan(changed(shed, shingle__exposure=6.0))
    assert refusal.value.faults[0].written("metric") == (
        "shingle.exposure came as 152 mm: at most 143 mm: a shingle 337 mm high then keeps 51 mm"
        " of headlap"
    )


def test_what_came_and_what_would_do_are_not_written_alike(shed):
    # 5 5/8 in and a hair is too much; written to the nearest 1/16 in both would read 5 5/8 in.
    told = refused(changed(shed, shingle__exposure=5.63))
    came, wanted, _ = told["shingle.exposure"].split(": ")
    assert wanted != f"at most {came}"


@pytest.mark.parametrize("method", ["open", "closed_cut"])
def test_a_valley_with_no_plane_beyond_is_refused_where_it_was_measured(method):
    """Its shape alone is measured, but half a valley cannot be laid."""
    porch = GivenPlane(
        name="porch",
        pitch=0.5,
        corners=((0, 0), (120, 0), (150, 60), (0, 60)),
        edges=("eave", "valley", "ridge", "rake"),
    )
    roof = GivenPlanes(planes=(porch,))
    assert surfaces(roof).planes[0].edges[1] == "valley"
    with pytest.raises(Refused) as refusal:
        plan(Job(roof=roof, valleying=Valleying(method=method)))
    (fault,) = refusal.value.faults
    assert fault.at == ("roof", "planes", 0, "beyond")
    assert "none for 1 of its valleys: the plane on the far side of every valley" in fault.written()
