"""Three how-to pages on measuring a roof, as restated: area, squares and bundles.

A do-it-yourself article on roof area, a text on ordering shingles, a heritage-building guide.
"""

from __future__ import annotations

import pytest

from roofing_core.measures.counting import whole_packs
from roofing_core.roof.slopes import roof_area, slope

FOUR_PLACES = 0.00005  # the slope factor as printed, 1.1180


def test_do_it_yourself_article():
    # 40 x 24 ft with overhangs, 6:12: 960 x 1.1180 = 1,073.28 ft2.
    both = 2 * roof_area(40 * 12, run=12 * 12, pitch=6 / 12).area / 144
    assert both == pytest.approx(1073.28, abs=960 * FOUR_PLACES)  # ft2


def test_slope_factor_article():
    # 28 ft wide, 4/12: 14 x 1.0541 = 14.75 ft, "14 feet 9 inches" (14.7574). To 1/100 ft.
    assert slope(run=14 * 12, pitch=4 / 12).slope_length / 12 == pytest.approx(14.75, abs=0.01)


def test_text_on_ordering_shingles():
    # 30 x 20 ft flat: 6 squares; with 10 % 6.6, bought as 7.
    squares = roof_area(30 * 12, run=20 * 12, pitch=0).squares
    assert squares == 6
    assert whole_packs(squares * 1.1, 1) == 7


def test_heritage_building_guide():
    # 2,000 ft2: 20 squares, three bundles each: 60.
    squares = roof_area(50 * 12, slope_length=40 * 12).squares
    assert squares == 20
    assert whole_packs(squares, 1 / 3) == 60
