"""Slicing: bands across a region, held against areas by hand and by the surveyors' rule."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.roof.polygons import signed_area
from roofing_core.roof.slicing import Region

#: A slab 100 wide and 50 high with a notch 20 by 20 in its top and a hole 10 by 10 in its left.
NOTCHED = Region(
    [
        [(0, 0), (100, 0), (100, 50), (60, 50), (60, 30), (40, 30), (40, 50), (0, 50)],
        [(10, 10), (10, 20), (20, 20), (20, 10)],
    ]
)
#: A hip roof's end: base 240, height 120.
END = Region([[(0, 0), (240, 0), (120, 120)]])


@pytest.mark.parametrize(
    ("lower", "upper", "stretches"),
    [
        (0, 5, [(0, 100, 500)]),
        (5, 15, [(0, 100, 950)]),
        (12, 18, [(0, 10, 60), (20, 100, 480)]),
        (15, 35, [(0, 100, 1850)]),
        (31, 40, [(0, 40, 360), (60, 100, 360)]),
        (-9, 99, [(0, 100, 4500)]),
        (50, 60, []),
        (-9, 0, []),
    ],
)
def test_a_band_meets_a_notched_slab_with_a_hole(lower, upper, stretches):
    found = NOTCHED.between(lower, upper)
    assert [(one.left, one.right, one.area()) for one in found] == stretches


def test_one_height_at_a_time():
    assert NOTCHED.at(15) == ((0, 10), (20, 100))
    assert NOTCHED.at(25) == ((0, 100),)
    assert NOTCHED.at(30) == ((0, 40), (60, 100))
    assert NOTCHED.at(-1) == NOTCHED.at(51) == ()
    assert END.at(60) == ((60, 180),)


def test_a_band_of_a_triangle_is_its_trapezoid():
    (band,) = END.between(30, 90)
    assert (band.left, band.right, band.area()) == (30, 210, (180 + 60) / 2 * 60)
    (top,) = END.between(90, 500)
    assert (top.upper, top.area()) == (120, 60 * 30 / 2)


def test_a_loop_that_turned_over_encloses_nothing():
    bow_tie = Region([[(0, 0), (10, 0), (0, 10), (10, 10)]])  # the upper half runs clockwise
    assert bow_tie.area() == 25
    assert bow_tie.highest == 5


@given(
    profile=st.lists(st.integers(1, 60), min_size=2, max_size=9),
    step=st.integers(5, 40),
    cuts=st.lists(st.integers(1, 59), max_size=6),
)
def test_bands_that_follow_on_make_up_the_area(profile, step, cuts):
    top = [(k * step, height) for k, height in enumerate(profile)]
    ring = [(0, 0), ((len(profile) - 1) * step, 0), *reversed(top)]
    region = Region([ring])
    marks = [0, *sorted(set(cuts)), 60]
    parts = [one.area() for low, high in pairwise(marks) for one in region.between(low, high)]
    assert sum(parts) == pytest.approx(signed_area(ring), rel=1e-12)
    assert region.area() == pytest.approx(signed_area(ring), rel=1e-12)
