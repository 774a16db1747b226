"""Small cases counted by hand, at the edge where one more or one fewer would be wrong."""

from __future__ import annotations

from math import pi

import pytest

from roofing_core.layers.coursing.courses import courses
from roofing_core.layers.coursing.nailing import hand_sealing_dabs
from roofing_core.layers.metal import metal_run
from roofing_core.layers.sealant import sealant
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.measures.units import convert
from roofing_core.roof.pitch import hip_valley_factor, slope_factor
from roofing_core.roof.slopes import roof_area


@pytest.mark.parametrize(("lap", "rows", "last_but_one"), [(2, 6, 171.75), (4, 7, 195.75)])
def test_rows_of_one_layer(lap, rows, last_but_one):
    # 200 in up the slope, from 1/4 in past the eave. 2 in laps: row k reaches 34 k + 1 3/4: the
    # fifth 171 3/4, the sixth 205 3/4. 4 in laps: 32 k + 3 3/4: the sixth 195 3/4, short of 200.
    laid = underlayment(168, slope_length=200, pitch=4 / 12, head_lap=lap)
    assert len(laid.rows) == rows
    assert laid.rows[-2].upper == last_but_one
    assert laid.rows[-1].upper == 200
    assert laid.rows[-1].trim == last_but_one + 36 - lap - 200


def test_rows_of_two_layers():
    # 100 in up the slope: a 19 in strip and five sheets, 35 3/4 and every 17 in: 103 3/4 covers it.
    # What the last sheet covers alone is doubled by a strip from 84 3/4, where a sixth would start.
    laid = underlayment(168, slope_length=100, pitch=3 / 12)
    kinds = [row.kind for row in laid.rows]
    assert kinds == ["starter_strip", *["full"] * 5, "top_strip"]
    untrimmed = [row.upper + row.trim for row in laid.rows if row.kind == "full"]
    assert untrimmed == [35.75, 52.75, 69.75, 86.75, 103.75]
    assert laid.rows[0].width == 19
    assert (laid.rows[-1].lower, laid.rows[-1].width) == (84.75, 15.25)


def test_courses_just_short():
    # 111 in: 19 courses reach 106 3/8, 20 reach 112; 1 in of the last one's exposure is cut.
    laid = courses(111, shingle_height=13.25, exposure=5.625)
    assert (laid.count, laid.last_butt) == (20, 106.375)
    assert laid.courses[-1].exposure == 4.625


@pytest.mark.parametrize(
    ("slope", "count"), [(106.375, 19), (106.4375, 20), (112, 20), (112.0625, 21)]
)
def test_one_more_course_for_a_sixteenth(slope, count):
    assert courses(slope, shingle_height=13.25, exposure=5.625).count == count


@pytest.mark.parametrize(
    ("height", "exposure", "top_lap", "headlap"),
    [
        (12, 5, 7, 2),
        (12, 4.5, 7.5, 3),
        (12, 4, 8, 4),
        (15, 5, 10, 5),
        (13.25, 5.625, 7.625, 2),
    ],
)
def test_laps_of_the_trade_s_strips(height, exposure, top_lap, headlap):
    # Height less one exposure, and less two.
    laid = courses(200, shingle_height=height, exposure=exposure)
    assert laid.headlap == headlap
    assert laid.courses[0].snap_line - laid.courses[1].butt == top_lap


@pytest.mark.parametrize(
    ("run", "lap", "pieces"),
    [
        (354, 2, 3),
        (354, 6, 4),
        (356, 2, 3),
        (357, 2, 4),
        (348, 6, 3),
        (348.0625, 6, 4),
        (9, 6, 1),
    ],
)
def test_lengths_of_metal(run, lap, pieces):
    # Three lengths of 120 less two laps: 356 at 2 in, 348 at 6 in.
    assert metal_run(run, stock_length=(120,), lap=lap).pieces == pieces


@pytest.mark.parametrize(("run", "nails"), [(119, 11), (122, 11), (122.0625, 12), (14, 2), (26, 3)])
def test_nails_of_a_run(run, nails):
    # 1 in from each end, spaces of 12 in or less: 117 and 120 in take ten.
    assert metal_run(run, stock_length=(240,), nail_spacing=12, end_distance=1).nails == nails


def test_a_hip_roof_by_its_plan():
    # 24 x 36 ft, 6:12 all round: four slopes over 864 ft2. In plan two triangles of 24 x 12 / 2
    # and two trapezoids of (36 + 12) / 2 x 12. The hips: 12 ft of common run, 18 ft exactly.
    factor = slope_factor(6 / 12)
    triangle, trapezoid = 24 * 12 / 2 * factor, (36 + 12) / 2 * 12 * factor
    assert 2 * triangle + 2 * trapezoid == pytest.approx(965.98, abs=0.005)
    assert 12 * hip_valley_factor(6 / 12) == 18
    # The gable roof of the same plan and slope has the same area.
    gable = 2 * roof_area(36 * 12, run=12 * 12, pitch=6 / 12).area / 144
    assert gable == pytest.approx(2 * triangle + 2 * trapezoid)


def test_a_square_of_three_tabs_sealed_by_hand():
    # 80 strips x 6 spots; pi/4 x 1 x 1/8 in3 each: 47.12 in3, 26.11 fl oz, 2.6 cartridges.
    dabs = hand_sealing_dabs(80, kind="three_tab")
    used = sealant(dabs=dabs)
    assert dabs == 480
    assert used.dab_volume == pytest.approx(480 * pi / 32) == pytest.approx(47.12, abs=0.005)
    assert convert(used.dab_volume, "in3") == pytest.approx(26.11, abs=0.005)
    assert used.cartridges == 3
