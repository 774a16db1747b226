"""Regions: planes with their edges moved, held against areas worked out by hand."""

from __future__ import annotations

from math import hypot, sqrt

import pytest

from roofing_core import Footprint, Gable, Hip, Side, surfaces
from roofing_core.roof.regions import FIRST_HOLE, region_of

FRONT = surfaces(Hip(length=400, width=240, pitch=3 / 4)).planes[0]
GABLE = surfaces(Gable(length=300, width=200, pitch=1 / 2)).planes[0]
INSIDE = surfaces(
    Footprint(
        corners=((0, 0), (480, 0), (480, 480), (240, 480), (240, 240), (0, 240)),
        sides=(Side(pitch=0.5),) * 6,
    )
)


def test_a_plane_as_it_is():
    assert region_of(FRONT).area() == FRONT.area


def test_a_rectangle_grows_by_strips_and_corners_exactly():
    high = hypot(100, 50)
    region = region_of(GABLE, past={"eave": 0.5, "rake": 0.25})
    (band,) = region.between(-0.5, 5.125)
    assert (band.left, band.right, region.lowest) == (-0.25, 300.25, -0.5)
    assert region.area() == pytest.approx(300.5 * (high + 0.5), rel=1e-14)


def test_hips_go_on_down_past_the_eave():
    region = region_of(FRONT, past={"eave": 1.0})
    out = 1 / (5 / 4)  # 120 in along the eave for 150 up the slope: slope factor 5/4
    assert region.area() - FRONT.area == pytest.approx(400 + out, rel=1e-9)


def test_an_open_valley_takes_a_strip_from_both_planes():
    cut = {name: region_of(plane, past={"valley": -3}) for name, plane in _by_name().items()}
    for name in ("side 4", "side 5"):
        plane = _by_name()[name]
        long = next(
            length
            for kind, length in zip(plane.edges, plane.lengths, strict=True)
            if kind == "valley"
        )
        # A strip 3 in wide, less a triangle under the ridge, more one over the eave: alike, since
        # both edges are level.
        assert plane.area - cut[name].area() == pytest.approx(3 * long, rel=1e-9)


def _by_name():
    return {plane.name: plane for plane in INSIDE.planes}


def test_an_edge_can_be_moved_more_at_one_end():
    moved = [(0.0, 0.0)] * 4
    moved[1] = (3.0, 1.0)  # the right rake, walked upwards
    region = region_of(GABLE, past=moved)
    high = 50 * sqrt(5)
    assert region.area() - GABLE.area == pytest.approx(2 * high, rel=1e-12)
    assert region.at(0)[0][1] == pytest.approx(303, rel=1e-12)


def test_holes_are_cut_out_and_their_sides_are_named():
    region = region_of(GABLE, holes=[(50, 60, 20, 40), (100, 110, 20, 40)])
    assert region.area() == pytest.approx(GABLE.area - 400, rel=1e-12)
    left, middle, right = region.between(25, 30)
    assert (left.right, middle.left, right.left) == (50, 60, 110)
    assert middle.parts[0].left.edge == FIRST_HOLE
    assert right.parts[0].left.edge == FIRST_HOLE - 1


def test_an_edge_too_short_for_its_neighbours_vanishes():
    # Inwards by more than half the width of a short plane nothing is left of it.
    small = surfaces(Gable(length=10, width=200, pitch=1 / 2)).planes[0]
    assert region_of(small, past={"rake": -6}).area() == 0
