"""Openings: the rectangle that each takes out of its plane, and where none can be."""

from __future__ import annotations

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from roofing_core import (
    Chimney,
    Footprint,
    Gable,
    Hip,
    Refused,
    Skylight,
    VentPipe,
    holes_in,
    opening_faults,
    rectangle,
    surfaces,
)
from roofing_core.roof.openings import CLEARANCE, MOST_OPENINGS
from roofing_core.roof.regions import region_of

#: An L of 40 x 30 ft with a wing of 20 x 15 ft: planes with hips, valleys and a gable.
ELL = Footprint(corners=((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360)), pitch=0.5)
ELL_PLANES = surfaces(ELL).planes
HIP_PLANES = surfaces(Hip(length=480, width=288, pitch=9 / 12)).planes

# The front of this roof is 400 in along its eave and 150 in up its slope: 120 in of run at 9:12.
GABLE_PLANES = surfaces(Gable(length=400, width=240, pitch=9 / 12)).planes
FRONT = GABLE_PLANES[0].name


# Worked by hand: at 9:12 what is level is 5/4 as long on the slope.


def test_a_chimney_is_as_deep_as_it_is_level_and_more():
    chimney = Chimney(plane=FRONT, from_left=60, up_slope=50, width=36, depth=24)
    assert rectangle(chimney, 9 / 12) == (60, 96, 50, 80)


def test_a_skylight_is_measured_on_the_slope():
    skylight = Skylight(plane=FRONT, from_left=60, up_slope=50, width=24, height=48)
    assert rectangle(skylight, 9 / 12) == (60, 84, 50, 98)
    assert rectangle(skylight, 0) == (60, 84, 50, 98)


def test_a_pipe_is_placed_by_its_middle():
    pipe = VentPipe(plane=FRONT, from_left=60, up_slope=50, diameter=4)
    assert rectangle(pipe, 9 / 12) == (58, 62, 47.5, 52.5)


@given(st.floats(1, 60), st.floats(1, 60), st.floats(0, 3))
def test_seen_from_above_a_chimney_is_as_measured(width, depth, pitch):
    chimney = Chimney(plane="", from_left=100, up_slope=100, width=width, depth=depth)
    left, right, lower, upper = rectangle(chimney, pitch)
    assert right - left == pytest.approx(width)
    assert (upper - lower) / hypot(1, pitch) == pytest.approx(depth)


def test_only_the_openings_of_a_plane_are_its_holes():
    pipe = VentPipe(plane=FRONT, from_left=60, up_slope=50, diameter=4)
    other = VentPipe(plane=GABLE_PLANES[1].name, from_left=60, up_slope=50, diameter=4)
    assert holes_in(GABLE_PLANES[0], [other, pipe]) == (rectangle(pipe, 9 / 12),)


def test_holes_come_off_the_area_of_the_plane():
    plane = GABLE_PLANES[0]
    chimney = Chimney(plane=FRONT, from_left=60, up_slope=50, width=36, depth=24)
    without = region_of(plane).area() - region_of(plane, holes=holes_in(plane, [chimney])).area()
    assert without == pytest.approx(36 * 30)


# Where none can be.


def told(*openings, planes=GABLE_PLANES, **asked) -> dict[str, str]:
    faults = opening_faults(openings, planes, **asked)
    written = {".".join(map(str, one.at)): one.written() for one in faults}
    assert len(written) == len(faults)
    return written


def test_an_opening_well_within_its_plane_and_clear_of_the_next():
    chimney = Chimney(plane=FRONT, from_left=60, up_slope=50, width=36, depth=24)
    pipe = VentPipe(plane=FRONT, from_left=100, up_slope=50, diameter=4)
    assert told(chimney, pipe) == {}


def test_room_just_enough_and_a_hair_less():
    # 6 in from the left rake, from the eave, from the ridge at 150 in and from the right rake.
    snug = Skylight(plane=FRONT, from_left=6, up_slope=6, width=388, height=138)
    assert told(snug) == {}
    for more in ({"from_left": 5.9375}, {"width": 388.0625}):
        assert set(told(moved(snug, **more))) == {"0.from_left"}
    for more in ({"up_slope": 5.9375}, {"height": 138.0625}):
        assert set(told(moved(snug, **more))) == {"0.up_slope"}
    assert told(moved(snug, from_left=0, up_slope=0, width=400, height=150), clearance=0) == {}


def moved(opening, **sizes):
    kept = {name: getattr(opening, name) for name in opening.__dataclass_fields__}
    return type(opening)(**{**kept, **sizes})


def test_what_is_told_of_an_opening_too_near_to_the_edges():
    pipe = VentPipe(plane=FRONT, from_left=7, up_slope=145, diameter=4)
    assert told(pipe) == {
        "0.from_left": "0.from_left came as 7 in: 6 in or more clear of every edge of front,"
        " also of its rake",
        "0.up_slope": "0.up_slope came as 12 ft 1 in: 6 in or more clear of every edge of front,"
        " also of its ridge",
    }


def test_an_opening_off_its_plane_altogether():
    pipe = VentPipe(plane=FRONT, from_left=7_000, up_slope=500, diameter=4)
    assert told(pipe) == {
        "0.from_left": "0.from_left came as 583 ft 4 in: a place within front",
        "0.up_slope": "0.up_slope came as 41 ft 8 in: a place within front",
    }


def test_an_opening_of_no_plane():
    pipe = VentPipe(plane="attic\n", from_left=60, up_slope=50, diameter=4)
    assert told(pipe) == {
        "0.plane": "0.plane came as a name that no plane has:"
        " the name of a plane of this roof, such as front"
    }
    assert set(told(pipe, planes=())) == {"0.plane"}


def test_openings_that_overlap():
    chimney = Chimney(plane=FRONT, from_left=60, up_slope=50, width=36, depth=24)
    beside = Skylight(plane=FRONT, from_left=96, up_slope=50, width=24, height=24)
    above = Skylight(plane=FRONT, from_left=60, up_slope=80, width=24, height=24)
    back = moved(chimney, plane=GABLE_PLANES[1].name)
    assert told(chimney, beside, above, back) == {}
    assert told(chimney, moved(beside, from_left=95.9375), moved(above, up_slope=79.9375)) == {
        "1.from_left": "1.from_left came as 7 ft 11 15/16 in: a place clear of the chimney"
        " 5 ft from the left and 4 ft 2 in up the slope",
        "2.from_left": "2.from_left came as 5 ft: a place clear of the chimney"
        " 5 ft from the left and 4 ft 2 in up the slope",
    }
    within = VentPipe(plane=FRONT, from_left=70, up_slope=60, diameter=4)
    assert set(told(within, chimney)) == {"1.from_left"}


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf"), 1.3e6])
def test_every_bad_measurement_is_named_at_once(bad):
    place = {"plane": "none", "from_left": bad, "up_slope": bad}
    wrong = told(
        Chimney(**place, width=bad, depth=bad),
        Skylight(**place, width=bad, height=bad),
        VentPipe(**place, diameter=bad),
    )
    sizes = {"0.width", "0.depth", "1.width", "1.height", "2.diameter"}
    sizes |= {f"{k}.plane" for k in range(3)}
    if bad != 0:
        sizes |= {f"{k}.up_slope" for k in range(3)}
    if bad not in (0, -1):
        sizes |= {f"{k}.from_left" for k in range(3)}
    assert set(wrong) == sizes
    with pytest.raises(Refused) as caught:
        rectangle(VentPipe(**place, diameter=bad), 0.5)
    assert {one.at[0] for one in caught.value.faults} == {
        name.partition(".")[2] for name in sizes if name.startswith("2.") and "plane" not in name
    }


def test_more_openings_than_the_limit_and_a_clearance_that_is_none():
    pipes = [
        VentPipe(
            plane=FRONT, from_left=20 + 3 * (k % 100), up_slope=20 + 6 * (k // 100), diameter=2
        )
        for k in range(MOST_OPENINGS + 1)
    ]
    assert told(*pipes[:MOST_OPENINGS]) == {}
    assert set(told(*pipes)) == {""}
    assert set(told(pipes[0], clearance=-1)) == set(told(clearance=float("nan"))) == {"clearance"}


# Against a geometry package, on planes with hips, valleys and notches.


def skylights(plane, largest: float):
    """Skylights that start somewhere about a plane, up to a size."""
    across, up = ([corner[axis] for corner in plane.corners] for axis in (0, 1))
    return st.builds(
        Skylight,
        plane=st.just(plane.name),
        from_left=st.floats(min(across) - 20, max(across)),
        up_slope=st.floats(0, max(up)),
        width=st.floats(1, largest),
        height=st.floats(1, largest),
    )


@pytest.mark.parametrize("plane", [*ELL_PLANES, *HIP_PLANES], ids=lambda plane: plane.name)
@given(data=st.data())
def test_an_opening_is_refused_just_where_a_geometry_package_finds_no_room(plane, data):
    opening = data.draw(skylights(plane, data.draw(st.sampled_from([10.0, 200.0]))))
    clearance = data.draw(st.sampled_from([0.0, CLEARANCE, 24.0]))
    left, right, lower, upper = rectangle(opening, plane.pitch)
    room = box(left - clearance, lower - clearance, right + clearance, upper + clearance)
    outside = room.difference(Polygon(plane.corners)).area
    faults = opening_faults([opening], [plane], clearance=clearance)
    if outside > 1e-3:  # in2; a sliver thinner than the library's own tolerance is no matter
        assert faults
    elif outside == 0:
        assert not faults


ROOMY = surfaces(Gable(length=4000, width=3000, pitch=9 / 12)).planes[0]
AMONG = st.builds(
    Skylight,
    plane=st.just(ROOMY.name),
    from_left=st.floats(500, 900),
    up_slope=st.floats(500, 700),
    width=st.floats(1, 200),
    height=st.floats(1, 150),
)


@given(AMONG, AMONG)
def test_openings_overlap_just_where_a_geometry_package_says_so(one, other):
    first, second = (box(r[0], r[2], r[1], r[3]) for r in holes_in(ROOMY, [one, other]))
    shared = first.intersection(second).area
    if shared > 1e-3 or shared == 0:
        assert bool(opening_faults([one, other], [ROOMY])) == (shared > 0)
