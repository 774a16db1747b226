"""Residential construction course (from the Army's), part 5, items 5 and 8."""

from __future__ import annotations

import pytest

from roofing_core.layers.courses import courses
from roofing_core.measures.faults import Refused
from roofing_core.roof.planes import SingleSlope, measure


def test_item_5_run_of_a_building_20_ft_wide():
    # Of 25, 20, 15 and 10 ft, the run is 10.
    half = measure(SingleSlope(eave_length=240, run=20 * 12 / 2, pitch=4 / 12))
    assert half.run == 10 * 12


def test_item_8_exposure_of_a_12_in_strip():
    # Of 5, 6, 7 and 8 in, 12 x 36 in strips are laid 5 in to the weather; no more keeps them tight.
    assert courses(240, shingle_height=12, exposure=5).headlap == 2
    for exposure in (6, 7, 8):
        with pytest.raises(Refused, match="at most 5 in"):
            courses(240, shingle_height=12, exposure=exposure)
