"""One shed roof worked out by hand, figure by figure, and held against the library.

Eave 14 ft, 9 ft 4 in up the slope, 3:12. Shingles 39 3/8 x 13 1/4 in, exposure 5 5/8 in, trims 0,
6, 11 and 17 in repeating; starter and first course 1/4 in past each other, shingles 1/4 in past the
rakes; metal in 10 ft lengths lapped 6 in, 2 in tabs round the corners of the eave.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from roofing_core.job.choices import Job
from roofing_core.job.plan import plan
from roofing_core.layers.coursing.courses import courses
from roofing_core.layers.coursing.offsets import offsets
from roofing_core.layers.coursing.pieces import shingle_count
from roofing_core.layers.metal import metal_run
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.measures.reading import read_length, read_pitch
from roofing_core.roof.planes import SingleSlope
from roofing_core.roof.slopes import roof_area

EAVE, SLOPE, PITCH = read_length("14 ft"), read_length("9 ft 4 in"), read_pitch("3:12")
HEIGHT, LENGTH = read_length("13 1/4 in"), read_length("39 3/8 in")
EXPOSURE = read_length("5 5/8 in")
TRIMS = (0.0, 6.0, 11.0, 17.0)

# Every figure but the squares is a multiple of 1/8 in, and so exact.


@pytest.fixture(scope="module")
def up():
    return courses(SLOPE, shingle_height=HEIGHT, exposure=EXPOSURE)


@pytest.fixture(scope="module")
def joints():
    return offsets(EAVE, shingle_length=LENGTH, sequence=TRIMS, courses=20)


@pytest.fixture(scope="module")
def planned():
    roof = SingleSlope(eave_length=EAVE, slope_length=SLOPE, pitch=PITCH)
    return plan(Job(roof=roof))


def test_squares():
    # 14 x 9 1/3 = 130.667 ft2.
    assert roof_area(EAVE, slope_length=SLOPE).squares == pytest.approx(1.3067, abs=0.00005)
    assert roof_area(EAVE, slope_length=SLOPE).squares == pytest.approx(float(Fraction(392, 300)))


def test_courses(up):
    # The first butt is 1/2 in below the eave metal. 19 courses reach 19 x 5 5/8 - 1/2 = 106 3/8 in,
    # 20 reach exactly 112.
    assert up.count == 20
    assert up.last_butt == 106.375 == 19 * 5.625 - 0.5
    assert up.courses[-1].exposure == 5.625


def test_first_snap_line(up):
    # 13 1/4 in of shingle, 1/4 in of it past the starter: 13 in above the starter's edge.
    assert up.first_snap_line == 13
    assert up.courses[0].snap_line - up.starter_butt == 13


def test_closing_course(up):
    # The last course that may be nailed has its nail zone, 6 1/8 in up, at most 3/4 in below the
    # edge: butt <= 112 - 3/4 - 6 1/8 = 105 1/8. Course 19 starts at 100 3/4, course 20 at 106 3/8.
    assert [course.number for course in up.courses if not course.nailable] == [20]
    assert up.courses[-1].top_trim == 106.375 + 13.25 - 112 == 7.625


def test_clearances(joints):
    # |0 - 6|, |6 - 11|, |11 - 17|, and 17 back to 0: 39 3/8 - 17 would be 22 3/8 the other way.
    assert [course.clearance for course in joints.courses] == [6, 5, 6, 17] * 5
    assert joints.period == 4
    assert joints.least_clearance == 4  # the starter's


def test_starter_clears_the_first_course_by_its_4_in(joints):
    assert joints.starter_clearance == 4
    assert joints.starter.joints[0] == joints.courses[0].joints[0] - 4


def test_joints_of_the_first_two_courses(joints):
    # From 1/4 in past the rake: 39 3/8 - 1/4 = 39 1/8, and on by 39 3/8; 6 in less for the second.
    assert joints.courses[0].joints == (39.125, 78.5, 117.875, 157.25)
    assert joints.courses[1].joints == (33.125, 72.5, 111.875, 151.25)


def test_pieces(joints):
    # 168 1/2 in: 4 shingles make 157 1/2, so 5 pieces; with 17 in trimmed 22 3/8 + 3 x 39 3/8 =
    # 140 1/2, and 5 as well.
    assert [course.pieces for course in joints.courses] == [5] * 20
    assert joints.pieces == 100
    assert joints.starter.pieces == 5


def test_end_pieces(joints):
    # 168 1/2 - (157 1/2 - trim) = 11 + trim.
    assert [course.right_end for course in joints.courses[:4]] == [11, 17, 22, 28]
    assert joints.narrowest_end_piece == 11


def test_what_length_and_area_would_have_said():
    # 20 x 168 1/2 / 39 3/8 = 85.6; 168 x 112 / (39 3/8 x 5 5/8) = 84.95. Ten per cent on top of 85
    # is 93.5: short of 100.
    count = shingle_count(
        100,
        course_lengths=20 * 168.5,
        slope_area=EAVE * SLOPE,
        shingle_length=LENGTH,
        exposure=EXPOSURE,
    )
    assert (count.shingles, count.least_by_length, count.least_by_area) == (100, 86, 85)
    assert count.least_by_area * 1.1 < count.shingles


def test_metal():
    # Eave 168 + 2 x 2 = 172: one length is 120, two are 240 - 6 = 234. Rake 112: one. Ridge, 1/4 in
    # proud at both ends, 168 1/2: two.
    assert metal_run(EAVE, stock_length=(120,), lap=6, tab=2).pieces == 2
    assert metal_run(SLOPE, stock_length=(120,), lap=6).pieces == 1
    assert metal_run(EAVE + 0.5, stock_length=(120,), lap=6).pieces == 2


def test_two_layers_of_underlayment():
    # 3:12 is under 4:12. From 1/4 in past the metal a 19 in strip, and sheets that reach 35 3/4 and
    # 17 in more each: 52 3/4, 69 3/4, 86 3/4, 103 3/4, and past 112. The last one lies alone above
    # 103 3/4, so a strip of what is left doubles it.
    laid = underlayment(EAVE, slope_length=SLOPE, pitch=PITCH)
    assert laid.layers == 2
    assert [row.upper for row in laid.rows] == [
        18.75, 35.75, 52.75, 69.75, 86.75, 103.75, 112, 112,
    ]  # fmt: skip


def test_the_plan_has_the_same_figures(planned):
    shingles = planned.shingles
    assert planned.squares == pytest.approx(1.3067, abs=0.00005)
    assert (shingles.courses, shingles.pieces, shingles.shingles) == (20, 100, 100)
    assert (shingles.least_by_length, shingles.least_by_area) == (86, 85)
    assert (shingles.first_snap_line, shingles.last_butt) == (13, 106.375)
    assert shingles.narrowest_end_piece == 11
    assert [course.clearance for course in planned.courses[:4]] == [6, 5, 6, 17]
    assert (planned.starter.pieces, planned.underlayment.layers) == (5, 2)
    runs = {run.edge: (run.pieces, run.stock) for run in planned.metal}
    assert runs == {
        "eave": (2, 2), "left_rake": (1, 1), "right_rake": (1, 1), "ridge": (2, 2),
    }  # fmt: skip


def test_the_plan_buys_them_whole(planned):
    # 105 shingles with the starter's, 21 in a bundle: 5 bundles, none left. Metal: 2, 2 x 1, 2.
    assert (planned.order.shingles.packs, planned.order.shingles.left_over.value) == (5, 0)
    assert planned.order.eave_metal.packs == 2
    assert planned.order.rake_metal.packs == 2
    assert planned.order.ridge_metal.packs == 2
