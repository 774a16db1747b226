"""Residential construction course (from the Army's), part 5, item 8."""

from __future__ import annotations

import pytest

from roofing_core.layers.coursing.courses import courses
from roofing_core.measures.faults import Refused


def test_exposure_of_a_12_in_strip():
    # Of 5, 6, 7 and 8 in, 12 x 36 in strips are laid 5 in to the weather; more is refused.
    assert courses(240, shingle_height=12, exposure=5).headlap == 2
    for exposure in (6, 7, 8):
        with pytest.raises(Refused, match="at most 5 in"):
            courses(240, shingle_height=12, exposure=exposure)
