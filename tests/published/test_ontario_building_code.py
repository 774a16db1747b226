"""Ontario Building Code, 9.26, with the federal housing handbook's notes, in millimetres."""

from __future__ import annotations

from itertools import pairwise

import pytest

from roofing_core import cricket, head_flashing
from roofing_core.layers.caps import caps
from roofing_core.layers.coursing.courses import courses
from roofing_core.layers.coursing.nailing import nail_positions
from roofing_core.layers.underlaying.underlaid import OVER_ICE_BARRIER
from roofing_core.materials import Cap, Shingle, material
from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read_length
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import convert


def test_head_lap_of_50_mm_or_more():
    # 9.26.7. The trade's 13 1/4 in strip at 5 5/8 in keeps it; 335 mm laid 145 mm, a size of the
    # handbook, leaves 335 - 290 = 45 mm and does not.
    laid = courses(112, shingle_height=13.25, exposure=5.625)
    assert convert(laid.headlap, "in", "metric") >= 50
    with pytest.raises(Refused, match="headlap"):
        courses(112, shingle_height=read_length("335 mm"), exposure=read_length("145 mm"))


def test_nails_25_to_40_mm_from_each_end_and_4_to_the_metre():
    # 9.26.7, for a strip of 1000 mm.
    places = [convert(at, "in", "metric") for at in nail_positions(read_length("1000 mm"))]
    assert len(places) >= 4
    assert 25 <= places[0] <= 40
    assert 25 <= 1000 - places[-1] <= 40
    gaps = [b - a for a, b in pairwise(places)]
    assert max(gaps) - min(gaps) < 1e-6  # mm, "the rest evenly"


def test_nails_12_mm_or_more_above_the_cutouts():
    # 9.26.7; the cutouts of a three-tab are as high as its exposure.
    strip = material(Shingle, "metric_three_tab")
    assert convert(strip.nail_zone_low - strip.exposure, "in", "metric") >= 12
    laid = courses(112, shingle_height=strip.height, exposure=strip.exposure).courses[0]
    assert convert(laid.nail_line - laid.butt - strip.exposure, "in", "metric") >= 12


def test_underlayment_laps_the_eave_protection_by_100_mm_or_more():
    assert convert(OVER_ICE_BARRIER, "in", "metric") >= 100  # 9.26.6


def test_a_bundle_of_metric_strips():
    # The handbook: 21 to 26 strips that cover about 3 m2, 32 ft2.
    strip = material(Shingle, "metric_strip")
    covered = strip.per_bundle * strip.length * strip.exposure
    assert 21 <= strip.per_bundle <= 26
    assert convert(covered, "in2") == pytest.approx(32, abs=0.5)  # ft2
    assert convert(covered, "in2", "metric") == pytest.approx(3, abs=0.05)  # m2


@pytest.mark.parametrize("name", ["metric_cap", "inch_cap"])
def test_hips_and_ridges(name):
    # 9.26.7: 100 mm or more on either side, lapped 150 mm or more; nails 25 mm or less from the
    # edge and 25 mm above the butt of the shingle over them. 9.26.9, on slopes under 1 in 3: 300 mm
    # wide or more.
    cap = material(Cap, name)
    laid = caps(
        216, line="ridge", cap_length=cap.length, cap_width=cap.width, exposure=cap.exposure
    )
    assert convert(laid.half_width, "in", "metric") >= 100
    assert convert(cap.length - laid.exposure, "in", "metric") >= 150
    assert convert(cap.width, "in", "metric") >= 300
    assert write_length(laid.half_width - laid.nail_from_line, "metric") == "25 mm"
    assert write_length(laid.nail_positions[3] - laid.butts[4], "metric") == "25 mm"


@pytest.mark.parametrize("width", ["500 mm", "900 mm", "1200 mm"])
@pytest.mark.parametrize("rise", [3, 6, 12])
def test_a_chimney_without_a_saddle(width, rise):
    # 9.26.4.8: up the chimney a sixth of its width or more, 150 mm or more; up the roof to a point
    # of equal height, 1.5 times the exposure or more.
    wide, exposure, pitch = read_length(width), read_length("143 mm"), rise / 12
    piece = head_flashing(wide, pitch=pitch, exposure=exposure)
    assert piece.wall_leg >= wide / 6
    assert convert(piece.wall_leg, "in", "metric") >= 150
    height = piece.deck_leg * pitch / (1 + pitch**2) ** 0.5
    assert height == pytest.approx(piece.wall_leg)
    assert piece.deck_leg >= 1.5 * exposure


def test_a_low_flashing_above_a_chimney_lies_under_1_5_exposures():
    piece = head_flashing(24, pitch=1, exposure=6, least_height=4, height_by_width=0)
    assert piece.deck_leg == 9


def test_a_saddle_stands_150_mm_up_the_chimney():
    # 9.26.4.8: the same as without one; the metal of a saddle 48 in wide at 6:12 grows by so much
    # along its two edges there, 24 in x root(5/4) each.
    with_leg = cricket(48, pitch=6 / 12).metal_area
    without = cricket(48, pitch=6 / 12, wall_leg=1e-9).metal_area
    leg = (with_leg - without) / (2 * 26.8328)
    assert convert(leg, "in", "metric") >= 150
