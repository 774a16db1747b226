"""Shingles of whole plans with offcuts used again: proofs recounted, pieces recounted, by hand."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise
from re import findall

import pytest

from roofing_core import (
    Chimney,
    Cutting,
    Footprint,
    Gable,
    Hip,
    Job,
    Plan,
    Refused,
    Shingle,
    SingleSlope,
    Starter,
    best_trims,
    material,
    plan,
)

SHED = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
ELL = Footprint(corners=((0, 0), (360, 0), (360, 180), (120, 180), (120, 300), (0, 300)), pitch=0.5)
THREE_TAB = material(Shingle, "metric_three_tab")

JOBS = {
    "shed": Job(roof=SHED),
    "shed with ready-made starter": Job(roof=SHED, starter=material(Starter, "ready_made_starter")),
    "gable": Job(roof=Gable(length=240, width=200, pitch=0.5)),
    "hip": Job(roof=Hip(length=300, width=200, pitch=0.5), shingle=THREE_TAB),
    "ell with a chimney": Job(
        roof=ELL,
        openings=(Chimney(plane="side 1", from_left=150, up_slope=30, width=36, depth=20),),
    ),
}


def again(job: Job, **how: str) -> Plan:
    return plan(replace(job, cutting=Cutting(reuse="best", **how)))  # type: ignore[arg-type]


@pytest.fixture(params=JOBS)
def job(request) -> Job:
    return JOBS[request.param]


def test_the_shed_takes_95_shingles_by_hand():
    """14 ft and 1/4 in past each rake: 168 1/2 in is 4 strips and 11 in, 20 courses and a starter.

    The trims of 0, 6, 11, 17 in leave offcuts of as much, and last pieces of 11, 17, 22, 28 in (the
    starter: 4 and 15 in). Offcuts of 6 and 4 in close nothing. The five of 11 in close five courses
    that end with 11 in, the five of 17 in close five of those that end with 17 or 15 in: ten
    shingles saved, and more there cannot be.
    """
    cut = again(JOBS["shed"]).cutting
    assert (cut.simply, cut.saved, cut.shingles) == (20 * 5 + 5, 10, 95)
    assert (cut.least, cut.proved) == (95, True)


def test_every_piece_is_cut_once_and_from_within_its_shingle(job):
    planned = again(job)
    cut, long = planned.cutting, planned.choices.shingle.length
    pieces = [piece for shingle in cut.cut for piece in shingle.pieces]
    places = Counter((piece.plane, piece.row, piece.course, piece.number) for piece in pieces)
    assert max(places.values()) == 1
    starters = sum(one.pieces for one in planned.starters if "starter" in cut.holds)
    laid = sum(course.pieces for course in planned.courses) + starters
    assert cut.whole + len(pieces) == laid == cut.simply
    assert cut.shingles == cut.whole + len(cut.cut) < cut.simply
    for shingle in cut.cut:
        ends = sorted((piece.begins, piece.begins + piece.width) for piece in shingle.pieces)
        assert ends[0][0] >= 0
        assert ends[-1][1] <= long + 1e-6
        assert all(one[1] <= other[0] + 1e-6 for one, other in pairwise(ends))
        kept = Counter(piece.keeps for piece in shingle.pieces)
        assert kept["left"] + kept["both"] <= 1
        assert kept["right"] + kept["both"] <= 1
        assert shingle.left_over == pytest.approx(long - sum(p.width for p in shingle.pieces))


def test_pieces_are_those_that_are_laid(job):
    planned = again(job)
    laid = {
        (course.plane, course.number, piece.number): piece
        for course in planned.courses
        for piece in course.laid
    }
    for shingle in planned.cutting.cut:
        for piece in shingle.pieces:
            if piece.row == "course":
                lies = laid[piece.plane, piece.course, piece.number]
                assert piece.width == lies.right - lies.left
                if piece.keeps == "left":
                    assert (piece.begins, lies.left_end) == (0, "factory")


def test_the_weights_prove_the_least_to_whoever_adds_them_up(job):
    cut = again(job).cutting
    weights = [[piece.weight for piece in shingle.pieces] for shingle in cut.cut]
    assert all(sum(of_one) <= cut.limit for of_one in weights)
    proved = cut.whole - -sum(map(sum, weights)) // cut.limit
    assert cut.whole < proved <= cut.least <= cut.shingles
    assert cut.proved is (cut.least == cut.shingles)


def test_the_step_that_tells_how_offcuts_are_kept_counts_them(job):
    """Counted again: an offcut waits from the first piece of its shingle to the last."""
    planned = again(job)
    order = [
        *(
            (row.plane, kind, number, piece.number)
            for plane in dict.fromkeys(course.plane for course in planned.courses)
            for kind, rows in (
                ("starter", enumerate(planned.starters, 1)),
                ("course", ((course.number, course) for course in planned.courses)),
            )
            for number, row in rows
            if row.plane == plane
            for piece in row.laid
        )
    ]
    at = {place: k for k, place in enumerate(order)}
    shared = [one.pieces for one in planned.cutting.cut if len(one.pieces) > 1]
    waits = [
        sorted(at[piece.plane, piece.row, piece.course, piece.number] for piece in pieces)
        for pieces in shared
    ]
    kept = max(sum(first <= k < last for first, *_, last in waits) for k in range(len(order)))
    ahead = sum(any(piece.keeps != "right" for piece in pieces[:-1]) for pieces in shared)
    (told,) = [step.says.written() for step in planned.steps if step.stage == "cutting"]
    counts = [int(number) for number in findall(r"\d+", told)]
    assert counts == [number for number in (len(shared), ahead, kept) if number > 1]


def test_the_order_buys_what_is_cut(job):
    simple, best = plan(job), again(job)
    assert best.order.shingles.needed.value == best.cutting.shingles
    assert simple.order.shingles.needed.value == simple.cutting.shingles == best.cutting.simply
    assert best.order.shingles.used_weight == simple.order.shingles.used_weight
    assert simple.cutting.least <= best.cutting.least


def test_caps_come_from_the_shingles_of_the_field_where_that_is_asked_for():
    apart, shared = again(JOBS["hip"]), again(JOBS["hip"], caps_from="field_shingles")
    caps = sum(run.count for run in apart.caps)
    assert apart.order.caps.packs > 0
    assert shared.order.caps.packs == 0
    kept = [p for one in shared.cutting.cut for p in one.pieces if p.row == "cap"]
    assert len(kept) == caps
    # A cap is cut from cutout to cutout: it begins at a third of a shingle.
    thirds = {round(piece.begins / (39.375 / 3), 6) for piece in kept}
    assert thirds <= {0, 1, 2}
    three_each = -(-caps // 3)
    assert shared.cutting.simply == apart.cutting.simply + three_each
    # Caps fill what starting and closing pieces leave, so that fewer than a third of them are more.
    assert shared.cutting.shingles < apart.cutting.shingles + three_each


def test_best_trims_give_a_plan_of_as_many_shingles():
    for job in (JOBS["shed"], JOBS["gable"], JOBS["shed with ready-made starter"]):
        found = best_trims(job)
        for count in (found.asked, found.best.count):
            trimmed = replace(job, shingle=replace(job.shingle, sequence=count.sequence))
            assert again(trimmed).cutting.shingles == count.shingles
            assert plan(trimmed).cutting.shingles == count.simply
        assert found.best.count.shingles <= found.asked.shingles
        assert found.least <= found.best.least <= found.best.count.shingles


def test_a_plan_by_the_best_trims_keeps_clearance_and_end_pieces():
    found = best_trims(JOBS["shed"]).best.count
    job = JOBS["shed"]
    planned = plan(replace(job, shingle=replace(job.shingle, sequence=found.sequence)))
    assert planned.shingles.least_clearance >= job.coursing.minimum_clearance
    assert planned.shingles.narrowest_end_piece >= job.coursing.minimum_end_piece


@pytest.mark.parametrize(
    ("job", "wanted"),
    [
        (JOBS["shed"], "laminated ones are not bent over a ridge"),
        (
            replace(JOBS["hip"], cap=replace(Job(roof=SHED).cap, made="ready_made")),
            "ready-made ones come in packs",
        ),
        (replace(JOBS["hip"], cap=replace(Job(roof=SHED).cap, from_shingle=4)), "3 caps from a"),
        (replace(JOBS["hip"], cap=replace(Job(roof=SHED).cap, width=13.5)), "at most 13 1/8 in"),
    ],
)
def test_caps_that_the_shingles_do_not_give_are_refused(job, wanted):
    with pytest.raises(Refused) as refusal:
        again(job, caps_from="field_shingles")
    (fault,) = refusal.value.faults
    assert fault.at == ("cutting", "caps_from")
    assert wanted in fault.wanted.written()
