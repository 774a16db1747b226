"""Handbook of a house-building charity: a roof of two slopes, from its area to its materials."""

from __future__ import annotations

from roofing_core.measures.counting import whole_packs
from roofing_core.measures.reading import read_length
from roofing_core.roof.slopes import roof_area


def test_two_slopes_28_ft_wide_together():
    # Joint width 28 ft x 46 ft: 1,288 ft2, taken as 1,300; 13 squares, 39 bundles at three a
    # square; 1,300 / 300 = 4.33 rolls of felt of 300 ft2 net, so 5.
    slopes = [roof_area(read_length("46 ft"), slope_length=read_length("14 ft"))] * 2
    assert sum(one.area for one in slopes) / 144 == 1288
    squares = whole_packs(sum(one.squares for one in slopes), 1)
    assert squares == 13
    assert whole_packs(squares, 1 / 3) == 39
    assert whole_packs(squares * 100, 300) == 5
