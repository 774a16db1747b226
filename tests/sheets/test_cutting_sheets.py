"""Cutting sheets, rolls and metal: nothing is left out, and bars are as long as what they show."""

from __future__ import annotations

import re

import pytest

from roofing_core import write_length
from roofing_core.layers.coursing.pieces import SQUARE_CUT
from roofing_core.sheets.drawings.all import drawings
from roofing_core.sheets.drawings.shingle_cuts import courses_told
from tests.sheets.conftest import planned
from tests.sheets.reading import lines_of, shapes_of, texts_of
from tests.sheets.test_planes_to_scale import WRITTEN, scale_of


def counted(pages) -> int:
    """Add up what stands before every "x" on pages."""
    told = [text.text for page in pages for text in texts_of(page.svg)]
    return sum(int(found[1]) for text in told if (found := re.match(r"(\d+) x ", text)))


def told_on(pages) -> str:
    return " ".join(text.text for page in pages for text in texts_of(page.svg))


def test_every_length_of_metal_that_is_bought_is_on_the_sheet(drawn_plan):
    plan, system = drawn_plan
    bought = sum(run.stock for run in plan.metal)
    assert counted(drawings(plan, "metal_cuts", system=system)) == bought


def test_every_piece_that_is_no_whole_shingle_is_on_the_sheet(drawn_plan):
    plan, system = drawn_plan
    pages = drawings(plan, "shingle_cuts", system=system)
    shingle = plan.choices.shingle
    whole = shingle.length - 1e-6
    square = [
        piece
        for course in plan.courses
        for piece in course.laid
        if not piece.corners and (course.top_trim > 0 or piece.right - piece.left < whole)
    ]
    starters = [
        piece for strip in plan.starters for piece in strip.laid
        if not piece.corners
    ]  # fmt: skip
    assert counted(pages) == len(square) + len(starters)
    slanting = [
        piece for course in plan.courses for piece in course.laid
        if piece.corners
    ]  # fmt: skip
    assert len(re.findall(r"course \d+, piece \d+:", told_on(pages))) == len(slanting)


def test_slanting_ends_tell_their_angle():
    plan, system = planned("hip")
    told = told_on(drawings(plan, "shingle_cuts", system=system))
    slanting = [
        piece for course in plan.courses for piece in course.laid
        if piece.left_angle != SQUARE_CUT or piece.right_angle != SQUARE_CUT
    ]  # fmt: skip
    # By hand: from the foot of a hip 12 ft along the eave it rises 12 * sqrt(1 + 1/4) ft of slope:
    # atan(1.118) is 48.2 deg, at every end that a hip cuts.
    assert len(re.findall(r"(left|right) 48\.2°", told)) >= len(slanting) > 100


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ((3,), "course 3"),
        ((1, 5, 9), "courses 1, 5, 9"),
        (tuple(range(2, 40, 4)), "every 4th course from 2 to 38"),
        (tuple(range(1, 10)), "every course from 1 to 9"),
        ((1, 2, 3, 4, 5, 6, 9), "courses 1, 2, 3, 4, 5, 6, 9"),
    ],
)
def test_courses_are_told_shortly(numbers, told):
    assert courses_told(numbers) == told


def test_every_cut_of_a_roll_is_drawn_as_long_as_it_is(drawn_plan):
    plan, system = drawn_plan
    pages = drawings(plan, "rolls", system=system)
    level = [
        abs(b[0] - a[0])
        for page in pages
        for a, b, width, _ in lines_of(page.svg)
        if a[1] == b[1] and width == 0.2
    ]
    scale = scale_of(pages[0].svg)
    rolls = (*plan.ice_barrier.roll_plan, *plan.underlayment.roll_plan)
    cuts = [cut for used in rolls for cut in used.cuts]
    assert cuts
    for cut in cuts:
        long = cut.length * 25.4 / scale
        assert any(one == pytest.approx(long, abs=2 * WRITTEN) for one in level)
        assert f"row {cut.row} {write_length(cut.length, system)}" in told_on(pages)


def test_a_strip_that_is_ripped_lies_beside_the_one_before_it():
    plan, _ = planned("shed")
    (page,) = drawings(plan, "rolls")
    by_hand = {"row 1": "14 ft 4 in by 19 in", "row 8": "14 ft 4 in by 10 1/4 in beside it"}
    for row, told in by_hand.items():
        assert f"{row} {told}" in told_on([page])
    at = {text.text: text.corners for text in texts_of(page.svg)}
    first, last = at["row 1"], at["row 8"]
    assert first[0][0] == pytest.approx(last[0][0], abs=WRITTEN)  # one over the other
    assert last[2][1] < first[0][1]


def test_every_nail_and_every_lap_of_a_run_of_metal_is_drawn():
    plan, _ = planned("shed")
    (page,) = drawings(plan, "metal")
    ticks = [
        (a, b) for a, b, width, _ in lines_of(page.svg)
        if width == 0.2 and a[0] == b[0] and b[1] - a[1] == pytest.approx(2.9, abs=WRITTEN)
    ]  # fmt: skip
    assert len(ticks) == sum(len(run.nail_positions) for run in plan.metal)
    # By hand: 14 ft and two tabs of 2 in are 172 in; 120 in laps the rest by 6 in, which is then
    # 58 in long and begins 112 in from the corner.
    told = told_on([page])
    assert "Pieces: 10 ft, 4 ft 10 in. A tab of 2 in at each end is bent round the corner." in told
    assert "Laps of 6 in; they begin at 9 ft 4 in." in told


def test_rows_are_written_where_they_lie():
    plan, _ = planned("shed")
    (page,) = drawings(plan, "underlayment")
    at = {text.text.partition(",")[0]: text.corners[0][1] for text in texts_of(page.svg)}
    rows = [at[f"row {k}"] for k in range(3, 8)]
    # By hand: rows of two layers lie 17 in apart.
    apart = 17 * 25.4 / scale_of(page.svg)
    for k, y in enumerate(rows):
        assert y == pytest.approx(rows[0] - k * apart, abs=WRITTEN)


def test_the_lining_of_valleys_is_among_the_rolls():
    plan, system = planned("ell")
    pages = drawings(plan, "rolls", system=system)
    # By hand: a valley of 7 ft 6 in, 18 in longer at its foot and 6 in at its top: 114 in, 2896 mm.
    assert "valley 1, 2896 mm" in told_on(pages)


def test_every_cap_of_a_hip_is_drawn():
    plan, _ = planned("hip")
    (page,) = drawings(plan, "caps")
    told = told_on([page])
    # By hand: 18 ft of hip in steps of 5 5/8 in take 39 caps, 12 ft of ridge 26.
    assert told.count("39 caps, laid from the lower end") == 4
    assert told.count("26 caps, laid from either end") == 1
    butts = [a for a, b, width, _ in lines_of(page.svg) if width == 0.2 and a[0] == b[0]]
    assert len(butts) == 4 * 39 + 26
    dots = [shape for shape in shapes_of(page.svg) if len(shape) == 5 and width_of(shape) < 0.7]
    assert len(dots) == 2 * (4 * 39 + 26)


def width_of(shape: list[tuple[float, float]]) -> float:
    return max(x for x, _ in shape) - min(x for x, _ in shape)


def test_flashings_are_drawn_piece_by_piece():
    plan, _ = planned("ell with openings")
    pages = drawings(plan, "flashings")
    told = told_on(pages)
    for run in plan.step_flashings:
        assert f"{run.count} pieces, under courses {run.pieces[0].course} to" in told
    # By hand: an apron of 5 in and 5 in below a chimney of 36 in, 4 in round each corner.
    assert "Apron: 44 in long, 5 in on the roof and 5 in up the opening, 4 in folded" in told
    assert "Cricket, needed: ridge 18 in long" in told  # wider than 30 in; half of its width
    assert "Pipe flashing: a hole 3 in by 3 3/8 in" in told  # 3 in over a slope at 6:12
    assert not drawings(planned("hip")[0], "flashings")
