"""Offcut reuse against every way of sharing, its proofs checked, and what must always hold."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from roofing_core.layers.coursing.needs import NeededPiece, needed_pieces
from roofing_core.layers.coursing.offcuts.searching import Search, SearchEnded
from roofing_core.layers.coursing.offcuts.sharing import GRAIN, Keeps, counted, kind_of, stock_of
from roofing_core.layers.coursing.offcuts.weighing import by_length
from roofing_core.layers.coursing.pieces import Row, Strip, pieces_of
from roofing_core.layers.coursing.reuse import reuse
from roofing_core.measures.faults import Refused, TooManyPieces
from roofing_core.roof.slicing import Region
from tests.recount.offcuts import (
    Case,
    check_cutting,
    check_proof,
    fewest_by_trying,
    random_case,
    random_roof,
)


def piece(width: float, keeps: Keeps, begins: float = 0) -> NeededPiece:
    return NeededPiece(
        plane="front",
        row="course",
        course=1,
        number=1,
        width=width,
        keeps=keeps,
        shingle_from=begins,
    )


@pytest.mark.parametrize("first", range(0, 600, 100))
def test_no_way_of_sharing_takes_fewer(first):
    for seed in range(first, first + 100):
        case = random_case(seed, most=7, steps=12)
        answer = case.answer()
        check_cutting(case, answer)
        check_proof(case, answer)
        assert answer.shingles == fewest_by_trying(case), seed


@pytest.mark.parametrize("first", range(0, 300, 100))
def test_roofs_are_cut_as_told_and_the_proof_holds(first):
    for seed in range(first, first + 100):
        case = random_roof(seed, courses=4)
        answer = case.answer()
        check_cutting(case, answer)
        check_proof(case, answer)


def test_a_search_to_the_end_needs_no_proof_to_find_the_fewest():
    # The bounds are so good that a search seldom has anything to do; here it has only the length.
    found = 0
    for seed in range(300):
        case = random_case(seed, most=8, steps=12)
        pieces = tuple(piece for piece in case.pieces if piece[1] != "both")
        if not pieces:
            continue
        case = replace(case, pieces=pieces)
        fewest = fewest_by_trying(case)
        search = searched(case, steps=10_000)
        assert search.cut_from(fewest - 1) == []
        cut = search.cut_from(fewest)
        assert sum(map(len, cut)) == len(pieces)
        found += 1
    assert found > 250


def searched(case: Case, *, steps: int) -> Search:
    length = case.length / 16
    stock = stock_of(length, kerf=case.kerf / 16, tabs=case.tabs)
    kinds = [
        kind_of(
            one.width,
            keeps=one.keeps,
            shingle_from=one.shingle_from,
            shingle_length=length,
            tabs=case.tabs,
        )
        for one in case.needed()
    ]
    counts = counted(kinds, stock)
    return Search(counts, stock, weighings=[by_length(counts, stock)], steps=steps)


def test_a_search_says_when_it_does_not_know():
    chance = Random(1)
    pieces = tuple((chance.randint(100, 400), "neither", 0) for _ in range(30))
    with pytest.raises(SearchEnded):
        searched(Case(pieces, 630), steps=3).cut_from(13)


def test_what_is_not_proved_is_not_called_the_fewest():
    # 40 pieces, the search cut off at once: where the bound is not met the answer says so.
    open_ended = 0
    for seed in range(8):
        chance = Random(seed)
        needed = [piece(chance.randint(160, 500) / 16, "neither") for _ in range(40)]
        quick = reuse(needed, shingle_length=39.375, steps=0)
        best = reuse(needed, shingle_length=39.375)
        assert quick.least <= best.shingles <= quick.shingles
        assert quick.proved == (quick.least == quick.shingles)
        open_ended += not quick.proved
    assert open_ended > 0


@pytest.mark.parametrize("seed", range(100))
def test_never_more_than_simply_and_never_less_than_the_length(seed):
    case = random_roof(seed, courses=12)
    answer = case.answer()
    lengths = sum(width for width, _, _ in case.pieces)
    assert lengths <= answer.shingles * case.length
    assert answer.shingles <= answer.simply == len(case.pieces)


@pytest.mark.parametrize("seed", range(100))
def test_the_order_of_the_work_changes_no_count(seed):
    case = random_roof(seed, courses=8)
    turned = replace(case, pieces=case.pieces[::-1])
    assert turned.answer().shingles == case.answer().shingles


@pytest.mark.parametrize("seed", range(100))
def test_mirrored_roofs_take_as_many(seed):
    case = replace(random_roof(seed, courses=8), tabs=0)
    other = {"left": "right", "right": "left"}
    mirrored = tuple((width, other.get(keeps, keeps), at) for width, keeps, at in case.pieces)
    assert replace(case, pieces=mirrored).answer().shingles == case.answer().shingles


@pytest.mark.parametrize("seed", range(100))
def test_a_wider_cut_or_tabs_to_keep_never_save_a_shingle(seed):
    case = replace(random_roof(seed, courses=8), kerf=0, tabs=0)
    plain = case.answer().shingles
    assert replace(case, kerf=3).answer().shingles >= plain
    assert replace(case, tabs=3).answer().shingles >= plain


def test_float_dust_parts_no_pair():
    # Thirds and sevenths of 1 m, in inches: they fill a strip but for the last digits.
    metre = 1000 * 10 / 254
    for parts in (3, 7):
        widths = [metre / parts] * (parts - 1)
        rest = metre - sum(widths[:-1]) - widths[-1]
        needed = [piece(width, "neither") for width in widths] + [piece(rest, "left")]
        assert reuse(needed, shingle_length=metre).shingles == 1
    # And a sixteenth of a millimetre too much is too much.
    needed = [piece(metre / 2, "left"), piece(metre / 2 + 1 / 16 / 25.4, "right")]
    assert reuse(needed, shingle_length=metre).shingles == 2
    assert 1 / GRAIN < 1 / 16 / 25.4


def test_an_offcut_waits_from_the_piece_that_opens_its_shingle():
    # The piece that starts course 1 opens a shingle whose strip closes course 3.
    needed = [piece(30, "right"), piece(20, "left"), piece(25, "right"), piece(6, "left")]
    answer = reuse(needed, shingle_length=36)
    assert answer.shingles == 3
    assert [[one.piece.width for one in shingle.pieces] for shingle in answer.cut] == [
        [30, 6],
        [20],
        [25],
    ]
    assert [shingle.left_over for shingle in answer.cut] == [0, 16, 11]
    assert (answer.most_kept, answer.cut_ahead) == (1, 0)


def test_a_closing_piece_that_opens_its_shingle_is_cut_ahead():
    # It cannot run past the rake until the courses are up: the course above starts with its offcut.
    answer = reuse([piece(6, "left"), piece(30, "right")], shingle_length=36)
    (shingle,) = answer.cut
    assert shingle.ahead
    assert answer.cut_ahead == 1
    assert [one.begins for one in shingle.pieces] == [0, 6]


def needs(*outline: tuple[float, float], row: Row) -> list[tuple[float, str, float]]:
    slope = Region([list(outline)])
    strip = Strip(length=36, nails=(1, 13, 23, 35), end_distance=1)
    pieces = pieces_of(slope.between(0, 12), row=row, strip=strip, deck=slope)
    told = needed_pieces(pieces, plane="front", course=1)
    return [(round(one.width, 9), one.keeps, round(one.shingle_from, 9)) for one in told]


def test_ends_that_meet_no_other_piece_may_be_cut():
    # 12 in courses from the line at 0: one 96 in long; a dormer cheek of 20 in beside joints at 36
    # and 72; a gable end whose left side leans, 12 in over a course.
    row = Row(butt=0, lower=0, upper=12, start_line=0, trim=0, nail_height=6)
    assert needs((0, 0), (96, 0), (96, 12), (0, 12), row=row) == [
        (36, "right", 0), (36, "both", 0), (24, "left", 0)
    ]  # fmt: skip
    assert needs((40, 0), (60, 0), (60, 12), (40, 12), row=row) == [(20, "neither", 4)]
    assert needs((20, 0), (50, 0), (50, 12), (32, 12), row=row) == [
        (16, "right", 20), (14, "left", 0)
    ]  # fmt: skip


def test_an_end_that_is_laid_cut_at_a_moved_joint_need_not_be_the_factory_s():
    # The joint at 72 goes back to 64: the strip from 36 is laid 28 in long, cut at its right end,
    # and meets the next one, which begins there with its factory end.
    row = Row(butt=0, lower=0, upper=12, start_line=0, trim=0, nail_height=6, moved=((72.0, 64.0),))
    told = needs((0, 0), (90, 0), (90, 12), (0, 12), row=row)
    assert told == [(36, "right", 0), (28, "left", 0), (26, "left", 0)]


def test_nothing_needed_takes_nothing():
    answer = reuse([], shingle_length=36)
    assert (answer.shingles, answer.cut, answer.proved, answer.most_kept) == (0, (), True, 0)


def test_pieces_that_no_shingle_yields_are_named_all_at_once():
    with pytest.raises(Refused) as refused:
        reuse(
            [
                piece(0, "left"),
                piece(37, "right"),
                piece(30, "both"),
                piece(20, "neither", 17),
                piece(float("nan"), "left"),
            ],
            shingle_length=36,
            tabs=3,
        )
    assert [fault.written() for fault in refused.value.faults] == [
        "pieces.0.width came as 0 in: more than zero and at most 100000 ft",
        "pieces.1.width came as 37 in: at most a shingle, 36 in",
        "pieces.2.width came as 30 in: a whole shingle, 36 in, to keep both its ends",
        "pieces.3.shingle_from came as 17 in: zero to 16 in, for it to lie on a shingle",
        "pieces.4.width came as nan: more than zero and at most 100000 ft",
    ]


def test_sizes_that_cannot_be_are_named_all_at_once():
    with pytest.raises(Refused) as refused:
        reuse([], shingle_length=-1, kerf=-0.125, tabs=13)
    assert [fault.at for fault in refused.value.faults] == [
        ("shingle_length",), ("kerf",), ("tabs",)
    ]  # fmt: skip


def test_more_pieces_than_the_limit_are_refused():
    with pytest.raises(TooManyPieces):
        reuse([piece(10, "left")] * 200_001, shingle_length=36)
