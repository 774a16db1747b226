"""Offcuts used again, worked out by hand beside each case.

The shed of `test_the_shed`: 20 courses of 168 1/2 in, strips of 39 3/8 in. A course holds 4 strips
and 11 in, so a trim t under 28 3/8 in makes 5 pieces: one of 39 3/8 - t, 3 whole, one of t + 11.
The strip of t that is cut off keeps its left end and can close a course that needs t or less.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.coursing.best_sequences import best_sequence
from roofing_core.layers.coursing.needs import NeededPiece, RowKind, needed_pieces
from roofing_core.layers.coursing.offcuts.sharing import Keeps
from roofing_core.layers.coursing.pieces import Row, Strip, pieces_of
from roofing_core.layers.coursing.reuse import Reuse, reuse
from roofing_core.roof.slicing import Region

LENGTH, LEFT, RIGHT, COURSES = 39.375, -0.25, 168.25, 20
STRIP = Strip(length=LENGTH, nails=(1, 13, 26, 38), end_distance=1)


def laid(trims: tuple[float, ...], *, starter: float | None = None) -> list[NeededPiece]:
    """Lay the shed's courses, and its starter with a trim."""
    course = Region([[(LEFT, 0), (RIGHT, 0), (RIGHT, 12), (LEFT, 12)]])
    rows: list[tuple[RowKind, int, float]] = [
        ("course", k + 1, trims[k % len(trims)]) for k in range(COURSES)
    ]
    if starter is not None:
        rows.insert(0, ("starter", 1, starter))
    needed: list[NeededPiece] = []
    for row, number, trim in rows:
        lies = Row(butt=0, lower=0, upper=12, start_line=LEFT, trim=trim, nail_height=6)
        pieces = pieces_of(course.between(0, 12), row=lies, strip=STRIP, deck=course)
        needed += needed_pieces(pieces, plane="front", row=row, course=number)
    return needed


def of_the_shed(*trims: float, kerf: float = 0, starter: float | None = None) -> Reuse:
    return reuse(laid(trims, starter=starter), shingle_length=LENGTH, kerf=kerf)


def named(answer: Reuse) -> list[list[tuple[int, int]]]:
    """Give the shingles that are shared, by course and number of their pieces."""
    return [
        [(one.piece.course, one.piece.number) for one in shingle.pieces]
        for shingle in answer.cut
        if len(shingle.pieces) > 1
    ]


def test_the_trims_asked_for():
    # Closing pieces 11, 17, 22, 28; strips 0, 6, 11, 17. The strip of 11 closes a course that needs
    # 11, that of 17 one that needs 17: 2 of 4 courses, 10 of 20. That of 6 closes none.
    answer = of_the_shed(0, 6, 11, 17)
    assert (answer.simply, answer.shingles) == (100, 90)
    # No two of these share: every piece that starts a course but those of 22 3/8 in (15), all
    # that close one in 17 or more (15), and 60 whole ones. The 11 closes beside 28 3/8 at best.
    assert answer.proved
    assert answer.proof.shingles == answer.least == 90
    assert answer.whole == 60


def test_which_offcut_goes_where():
    # Course 1 closes in 11 in; the next strip of 11 or more is cut for course 3, so that course 1's
    # piece is cut first, to length, and its shingle waits. Course 2 closes in 17: course 4's strip.
    answer = of_the_shed(0, 6, 11, 17)
    shared = named(answer)
    assert len(shared) == 10
    assert {tuple(sorted(number for _, number in pair)) for pair in shared} == {(1, 5)}
    for pair in shared:
        (opens,) = [course for course, number in pair if number == 1]
        (closes,) = [course for course, number in pair if number == 5]
        assert ((opens - 1) % 4, (closes - 1) % 4) in {(2, 0), (3, 1)}


def test_a_saw_cut_spoils_what_fits_exactly():
    # 28 3/8 + 11 and 22 3/8 + 17 are a whole strip. With 1/8 in for the cut only 22 3/8 + 11 fits.
    assert of_the_shed(0, 6, 11, 17, kerf=0.125).shingles == 95
    # 22 3/8 + 11 leaves 6 in for it.
    assert of_the_shed(0, 6, 11, 17, kerf=6).shingles == 95
    assert of_the_shed(0, 6, 11, 17, kerf=6.0625).shingles == 100


def test_three_trims_that_climb_by_the_rest():
    # Closing pieces 11, 22, 33; strips 0, 11, 22: the second course closes the first, the third
    # the second. 13 strips for 3 courses; 6 x 13, and 9 for the last two: 87.
    answer = of_the_shed(0, 11, 22)
    assert (answer.simply, answer.shingles, answer.proved) == (100, 87, True)


def test_seven_trims_waste_next_to_nothing():
    # On from 0, 11, 22 and 33: 33 + 11 is a strip and 4 5/8; then 15 5/8 and 26 5/8, whose course
    # closes in 37 5/8. Trim 33 leaves 6 3/8 to start with and makes 6 pieces. Every strip but 0
    # closes a course: 36 pieces less 6, 30 for 7 courses, 60 for 14. The last six, all but 33,
    # are two climbs of three courses: 13 each. 86, and 20 x 168 1/2 in are 85.6 strips.
    answer = of_the_shed(0, 11, 22, 4.625, 15.625, 26.625, 33)
    assert (answer.shingles, answer.least) == (86, 86)


def test_the_starter_shares_the_shed_s_strips():
    # Trimmed by 4 in it closes in 15, and only strips of 11 or more close anything: there are 10,
    # all of them used before. Its own strip of 4 closes nothing. So it adds its 5 pieces.
    assert of_the_shed(0, 6, 11, 17, starter=4).shingles == 95
    # With 0, 11, 22 there are 7 strips of 11 and 6 of 22, 13 pairs with the starter or without.
    assert of_the_shed(0, 11, 22, starter=4).shingles == 92


def test_the_best_sequences_of_the_shed():
    found = best_sequence(168.5, shingle_length=LENGTH, courses=20, sequence=(0, 6, 11, 17))
    of = {len(one.count.sequence): one for one in found.by_trims}
    # With 4 trims each is laid 5 times, so that the shingles are 5 times those of 4 courses, which
    # take 17.1 strips at least: 18 x 5.
    assert (of[4].count.shingles, of[4].proved) == (90, True)
    # With 3, the first two are laid 7 times: 2 courses take 8.6 strips, so 9 x 7 for 14. The third
    # one's 6 courses take 4 whole ones each at least: 63 + 24.
    assert (of[3].count.shingles, of[3].proved) == (87, True)
    # And none takes fewer than 85.6.
    assert (found.best.count.shingles, found.least, found.best.proved) == (86, 86, True)
    assert len(found.best.count.sequence) == 7
    assert found.best.count.clearance >= 4
    assert found.best.count.narrowest_end >= 3
    assert found.saved == 4
    # Without reuse each course takes 5 at least.
    assert (found.simply.count.simply, found.saved_simply, found.simply.proved) == (100, 0, True)
    for one in found.by_trims:
        assert of_the_shed(*one.count.sequence).shingles == one.count.shingles
        assert of_the_shed(*one.count.sequence).simply == one.count.simply


def piece(width: float, keeps: Keeps, begins: float = 0) -> NeededPiece:
    return NeededPiece(
        plane="end",
        row="course",
        course=1,
        number=1,
        width=width,
        keeps=keeps,
        shingle_from=begins,
    )


@pytest.mark.parametrize(
    ("begins", "with_tabs", "without"),
    [
        # 36 in strips of three tabs, 12 in each: from 4 in a piece may also begin at 16, where it
        # ends at the right end, beside 12 in that close a course. From 10 it may not begin at 22.
        (4, 1, 1),
        (10, 2, 1),
    ],
)
def test_tabs_stay_where_they_are(begins, with_tabs, without):
    pieces = [piece(12, "left"), piece(20, "neither", begins)]
    assert reuse(pieces, shingle_length=36, tabs=3).shingles == with_tabs
    assert reuse(pieces, shingle_length=36).shingles == without


def test_caps_come_out_of_offcuts_tab_by_tab():
    # Strips of 36 in trimmed by 30, 24 and 18 in leave as much: 2 caps of 12, 2, and 1; a sixth and
    # a seventh come from a strip of their own.
    starts = [piece(6, "right"), piece(12, "right"), piece(18, "right")]
    caps = [piece(12, "neither")] * 7
    assert reuse(starts + caps, shingle_length=36, tabs=3).shingles == 4
    assert reuse(starts + caps, shingle_length=36).shingles == 4
    # 6 in off each end leave 24: two caps, but only one whole tab, from 12 to 24.
    closed = [piece(6, "right"), piece(6, "left"), *caps[:2]]
    assert reuse(closed, shingle_length=36, tabs=3).shingles == 2
    assert reuse(closed, shingle_length=36).shingles == 1
