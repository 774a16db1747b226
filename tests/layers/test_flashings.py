"""Flashings: step flashing, apron, head flashing, cricket, pipes; and what is refused."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import hypot, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import (
    PipeFlashing,
    apron,
    courses,
    cricket,
    head_flashing,
    material,
    pipe_flashing,
    step_flashing,
    step_flashing_size,
)
from roofing_core.layers.flashings.step_flashing import MOST_PIECES
from roofing_core.measures.faults import Refused, TooManyPieces

# No length in these tests is over 1,000 ft.
DUST = 1e-8


def sixteenths(least: int, most: int):
    """Lengths between two whole numbers of inches, in sixteenths: exact as floats."""
    return st.integers(least * 16, most * 16).map(lambda n: n / 16)


def faults_of(call, *args, **asked) -> dict[str, str]:
    with pytest.raises(Refused) as caught:
        call(*args, **asked)
    return {str(one.at[0]): one.written() for one in caught.value.faults}


# Step flashing, worked by hand.


def test_step_flashing_up_the_side_of_the_example():
    # 9 ft 4 in, 5 5/8 in courses from 1/2 in below the eave metal: 20 courses, one piece in each.
    laid = step_flashing(0, upper=112, exposure=5.625, piece_length=8)
    assert (laid.count, laid.nails) == (20, 40)
    assert laid.pieces[0].course == 1
    assert (laid.pieces[0].lower, laid.pieces[0].upper) == (-0.25, 7.75)
    assert laid.lap == 2.375
    # Course 20 has its butt at 19 x 5 5/8 - 1/2 = 106 3/8.
    last = laid.pieces[-1]
    assert (last.course, last.lower, last.upper) == (20, 106.625, 114.625)
    assert (laid.past_lower, laid.past_upper) == (0.25, 2.625)


def test_step_flashing_beside_a_chimney():
    # 40 to 65 in up, 5 in courses from -1/2: course 9 shows from 39 1/2 to 44 1/2, course 14 from
    # 64 1/2 to 69 1/2.
    laid = step_flashing(40, upper=65, exposure=5, piece_length=7)
    assert [piece.course for piece in laid.pieces] == [9, 10, 11, 12, 13, 14]
    assert laid.pieces[0].lower == 39.75
    assert laid.past_lower == 0.25
    assert laid.past_upper == 64.75 + 7 - 65


def test_a_wall_between_two_butts_takes_the_courses_between_them():
    # From the butt of course 3 to that of course 5: courses 3 and 4, and no hair of 2 or 5.
    laid = step_flashing(9.5, upper=19.5, exposure=5, piece_length=7)
    assert [piece.course for piece in laid.pieces] == [3, 4]
    assert laid.past_lower == 0  # the piece starts 1/4 in above it
    assert len(step_flashing(9.4375, upper=19.5625, exposure=5, piece_length=7).pieces) == 4


def test_a_wall_as_short_as_a_part_of_a_course():
    assert step_flashing(41, upper=42, exposure=5, piece_length=7).count == 1


def test_every_course_that_comes_to_a_wall_has_its_piece_just_above_its_butt():
    laid = courses(112, shingle_height=13.25, exposure=5.625)
    beside = step_flashing(0, upper=112, exposure=5.625, piece_length=8)
    assert [piece.course for piece in beside.pieces] == [one.number for one in laid.courses]
    for piece, course in zip(beside.pieces, laid.courses, strict=True):
        assert piece.lower == pytest.approx(course.butt + 0.25, abs=DUST)


@st.composite
def walls(draw):
    """A wall and the courses beside it, all of it buildable."""
    lower = draw(sixteenths(0, 300))
    exposure = draw(sixteenths(3, 10))
    return {
        "lower": lower,
        "upper": lower + draw(sixteenths(1, 300)),
        "exposure": exposure,
        "piece_length": exposure + draw(sixteenths(1, 4)),
        "first_butt": -draw(sixteenths(0, 2)),
        "short_of_butt": draw(sixteenths(0, 2)),
    }


@given(walls())
def test_one_piece_for_each_course_that_shows_beside_the_wall(asked):
    laid = step_flashing(**asked)
    lower, upper, shows = (Fraction(asked[name]) for name in ("lower", "upper", "exposure"))
    number, butt, beside = 1, Fraction(asked["first_butt"]), []
    while butt < upper:
        if butt + shows > lower:
            beside.append((number, butt + Fraction(asked["short_of_butt"])))
        number, butt = number + 1, butt + shows
    assert [piece.course for piece in laid.pieces] == [course for course, _ in beside]
    assert [piece.lower for piece in laid.pieces] == pytest.approx(
        [float(at) for _, at in beside], abs=DUST
    )
    assert laid.count == len(beside)
    assert laid.nails == 2 * laid.count


@given(walls())
def test_pieces_lap_each_other_and_reach_past_the_wall_s_upper_end(asked):
    laid = step_flashing(**asked)
    assert laid.lap > 0
    for below, above in pairwise(laid.pieces):
        assert below.upper - above.lower == pytest.approx(laid.lap, abs=DUST)
    assert laid.pieces[-1].upper >= asked["upper"]
    assert laid.past_upper == pytest.approx(laid.pieces[-1].upper - asked["upper"], abs=DUST)
    # No more than what is short of a butt stays without a piece at the lower end.
    assert laid.pieces[0].lower <= asked["lower"] + asked["short_of_butt"] + DUST
    below = max(0.0, asked["lower"] - laid.pieces[0].lower)
    assert laid.past_lower == pytest.approx(below, abs=DUST)


@given(walls(), sixteenths(0, 100))
def test_a_longer_wall_never_takes_fewer_pieces(asked, more):
    longer = {**asked, "upper": asked["upper"] + more}
    assert step_flashing(**longer).count >= step_flashing(**asked).count


@given(st.integers(0, 3000), st.integers(1, 3000), st.integers(100, 200))
def test_step_flashing_in_millimetres_is_that_in_inches(lower, height, exposure):
    # Whole millimetres, the first butt on the eave: courses lower // exposure to the last below
    # the upper end.
    first, last = lower // exposure + 1, -(-(lower + height) // exposure)
    laid = step_flashing(
        lower * 10 / 254,
        upper=(lower + height) * 10 / 254,
        exposure=exposure * 10 / 254,
        piece_length=(exposure + 50) * 10 / 254,
        first_butt=0.0,
        short_of_butt=0.0,
    )
    assert (laid.pieces[0].course, laid.pieces[-1].course) == (first, last)


def test_what_cannot_be_beside_a_wall():
    for bad in (-1, float("nan"), float("inf")):
        names = ("upper", "exposure", "piece_length", "short_of_butt", "nails_each")
        wrong = faults_of(step_flashing, bad, first_butt=-bad, **dict.fromkeys(names, bad))
        assert set(wrong) == {"lower", "first_butt", *names}
    assert faults_of(step_flashing, 40, upper=40, exposure=5, piece_length=5, short_of_butt=5) == {
        "upper": "upper came as 40 in: more than 40 in, the wall's lower end",
        "piece_length": "piece_length came as 5 in: more than 5 in, the exposure,"
        " so that each piece laps the one below",
        "short_of_butt": "short_of_butt came as 5 in: less than 5 in, the exposure",
    }
    assert faults_of(step_flashing, 0, upper=9, exposure=5, piece_length=7, first_butt=1) == {
        "first_butt": "first_butt came as 1 in: zero, or negative:"
        " below the outer face of the eave metal"
    }


def test_too_many_pieces_beside_one_wall():
    assert step_flashing(0, upper=MOST_PIECES, exposure=1, piece_length=2, first_butt=0).count == (
        MOST_PIECES
    )
    with pytest.raises(TooManyPieces, match="at most 20000 courses"):
        step_flashing(0, upper=MOST_PIECES + 1, exposure=1, piece_length=2)


def test_a_size_that_cannot_be():
    assert set(faults_of(step_flashing_size, 0, lap=0, deck_leg=-1, wall_leg=float("nan"))) == {
        "exposure",
        "lap",
        "deck_leg",
        "wall_leg",
    }


# Apron and head flashing.


def test_the_apron_below_a_chimney_worked_by_hand():
    # 36 in wide, 4 in round each corner, 10 in flat; nails 12 in apart: four.
    piece = apron(36)
    assert (piece.length, piece.deck_leg, piece.wall_leg) == (44, 5, 5)
    assert piece.area == 440
    assert piece.nails == 4
    assert apron(36.0625).nails == 5


def test_the_flashing_above_a_chimney_worked_by_hand():
    # 24 in wide: a sixth is 4 in, so 6. At 9:12 the roof rises 6 in over 8 in of run: 10 in of
    # slope, more than 1 1/2 exposures of 5 in.
    piece = head_flashing(24, pitch=9 / 12, exposure=5)
    assert (piece.wall_leg, piece.length) == (6, 32)
    assert piece.deck_leg == pytest.approx(10, abs=DUST)
    # 48 in wide: 8 in high, 13 1/3 in up the slope.
    wide = head_flashing(48, pitch=9 / 12, exposure=5)
    assert wide.wall_leg == 8
    assert wide.deck_leg == pytest.approx(40 / 3, abs=DUST)


def test_the_flashing_above_a_low_curb_still_lies_under_one_and_a_half_courses():
    # A curb of 3 in on a steep roof: 3 x root 2 = 4.24 in up the slope, but 7 1/2 in.
    piece = head_flashing(24, pitch=1, exposure=5, least_height=3, height_by_width=0)
    assert (piece.wall_leg, piece.deck_leg) == (3, 7.5)


@given(st.floats(0.1, 2), st.floats(2, 60), st.floats(3, 8))
def test_both_legs_of_a_head_flashing_reach_one_height(pitch, width, exposure):
    piece = head_flashing(width, pitch=pitch, exposure=exposure)
    up = piece.deck_leg * pitch / hypot(1, pitch)  # how much higher the deck leg's upper edge lies
    assert up >= piece.wall_leg - DUST
    assert piece.deck_leg >= 1.5 * exposure
    assert up == pytest.approx(piece.wall_leg) or piece.deck_leg == 1.5 * exposure
    assert piece.area == pytest.approx(piece.length * (piece.deck_leg + piece.wall_leg))


def test_bent_pieces_that_cannot_be():
    for bad in (0, -1, float("nan"), float("inf")):
        wrong = faults_of(apron, bad, deck_leg=bad, wall_leg=bad, nail_spacing=bad, past_corner=-1)
        assert set(wrong) == {"width", "deck_leg", "wall_leg", "nail_spacing", "past_corner"}
        names = ("pitch", "exposure", "least_height", "nail_spacing")
        wrong = faults_of(head_flashing, bad, **dict.fromkeys(names, bad), height_by_width=-1)
        assert set(wrong) == {"width", "height_by_width", *names}
    assert set(faults_of(apron, 1000, nail_spacing=0.01)) == {"nail_spacing"}


# Cricket.


def corners_of(width: float, pitch: float):
    """Give a corner of the chimney's back, the middle of its back, and the ridge's far end."""
    half = width / 2
    return (0.0, 0.0, 0.0), (half, 0.0, half * pitch), (half, half, half * pitch)


def apart(one, other) -> float:
    return hypot(*(a - b for a, b in zip(one, other, strict=True)))


def triangle(one, two, three) -> float:
    """Heron's rule, from the three sides."""
    a, b, c = apart(one, two), apart(two, three), apart(three, one)
    s = (a + b + c) / 2
    return sqrt(s * (s - a) * (s - b) * (s - c))


@given(st.floats(1, 200), st.floats(0.05, 2))
def test_a_cricket_in_space(width, pitch):
    made = cricket(width, pitch=pitch)
    corner, peak, end = corners_of(width, pitch)
    assert made.height == pytest.approx(peak[2])
    assert made.ridge_length == pytest.approx(apart(peak, end))
    assert made.valley_length == pytest.approx(apart(corner, end))
    assert made.wall_length == pytest.approx(apart(corner, peak))
    assert made.plane_area == pytest.approx(triangle(corner, peak, end))
    # The ridge ends on the roof, which rises by the pitch from the chimney's back.
    assert end[2] == pytest.approx(pitch * end[1])
    assert made.up_slope == pytest.approx(hypot(end[1], end[2]))


@given(st.floats(1, 200), st.floats(0.05, 2))
def test_a_cricket_has_the_area_of_the_roof_under_it(width, pitch):
    # Both slope alike, and lie over the same plan.
    made = cricket(width, pitch=pitch)
    assert made.area == pytest.approx(2 * made.plane_area)
    assert made.area == pytest.approx(width * made.up_slope / 2)


def test_a_cricket_of_exact_sizes():
    # 48 in wide at 6:12: 12 in high, ridge 24, valleys 24 x 3/2 = 36 in, each plane 24 x 24 x
    # root(5/4) / 2 = 321.994 in2. The metal: both, 2 x 36 x 10 beside the valleys, 2 x 26.8328 x 6
    # up the chimney.
    made = cricket(48, pitch=6 / 12)
    assert (made.height, made.ridge_length, made.valley_length) == (12, 24, 36)
    assert made.plane_area == pytest.approx(321.994, abs=0.0005)  # in2
    assert made.metal_area == pytest.approx(643.988 + 720 + 321.994, abs=0.002)  # in2


@pytest.mark.parametrize(("width", "required"), [(29.9375, False), (30, False), (30.0625, True)])
def test_a_cricket_is_required_above_30_in(width, required):
    assert cricket(width, pitch=0.5).required is required


def test_a_cricket_that_cannot_be():
    for bad in (0, -1, float("nan"), float("inf")):
        names = ("pitch", "under_covering", "wall_leg")
        assert set(faults_of(cricket, bad, **dict.fromkeys(names, bad))) == {"width", *names}
    assert faults_of(cricket, 36, pitch=0)["pitch"] == (
        "pitch came as 0:12: at least 0.1:12 and at most 1000:12"
    )


# Pipes.


def test_a_pipe_worked_by_hand():
    # 3 1/2 in outside at 9:12: a hole of 3 1/2 by 4 3/8 in, in a base of 12 by 15.
    flashing = material(PipeFlashing, "pipe_flashing")
    laid = pipe_flashing(
        3.5,
        pitch=9 / 12,
        base_width=flashing.base_width,
        base_length=flashing.base_length,
        largest_pipe=flashing.largest_pipe,
    )
    assert (laid.hole_width, laid.hole_length) == (3.5, 4.375)
    assert (laid.side_flange, laid.slope_flange) == (4.25, 5.3125)
    assert laid.least_flange == 4.25
    assert laid.nails == 4


@given(st.floats(0.5, 6), st.floats(0, 2))
def test_the_hole_of_an_upright_pipe_has_the_pipe_s_area_from_above(diameter, pitch):
    laid = pipe_flashing(diameter, pitch=pitch, base_width=40, base_length=40, largest_pipe=6)
    on_the_slope = pi / 4 * laid.hole_width * laid.hole_length
    assert on_the_slope / hypot(1, pitch) == pytest.approx(pi / 4 * diameter**2)


def test_a_pipe_that_cannot_be_flashed():
    asked = {"pitch": 0.75, "base_width": 4, "base_length": 5, "largest_pipe": 3}
    assert faults_of(pipe_flashing, 4, **asked) == {
        "diameter": "diameter came as 4 in: at most 3 in, the largest that the collar takes",
        "base_width": "base_width came as 4 in: more than 4 in, the hole in the deck",
        "base_length": "base_length came as 5 in: more than 5 in, the hole in the deck",
    }
    for bad in (0, -1, float("nan"), float("inf")):
        names = ("base_width", "base_length", "largest_pipe", "nails")
        wrong = faults_of(pipe_flashing, bad, pitch=-1, **dict.fromkeys(names, bad))
        assert set(wrong) == {"diameter", "pitch", *names}
