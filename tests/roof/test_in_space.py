"""Surfaces in space: which sides meet, of what kind, what may be wrong, what is refused."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.facets import Facet, flat_facet
from roofing_core.roof.given_planes import GivenPlanes, given_surfaces
from roofing_core.roof.in_space import planes_in_space
from roofing_core.roof.meetings import along, meetings

FRONT = Facet(name="front", corners=((0, 0, 0), (240, 0, 0), (240, 96, 48), (0, 96, 48)))
BACK = Facet(name="back", corners=((240, 192, 0), (0, 192, 0), (0, 96, 48), (240, 96, 48)))


def kinds(*facets: Facet) -> list[list[tuple[str, float, str]]]:
    """Give kind, length and neighbour of every edge of every plane."""
    found = given_surfaces(planes_in_space(facets))
    return [
        [
            (kind, round(long, 6), beyond)
            for kind, long, beyond in zip(plane.edges, plane.lengths, plane.beyond, strict=True)
        ]
        for plane in found.planes
    ]


def test_a_wing_lower_than_the_house_meets_a_part_of_its_eave_wall():
    # A porch roof 10 ft wide against the front of the house, its top 2 ft below the eave, where
    # the wall goes on up; beside it the same slope ends free.
    porch = Facet(
        name="porch",
        corners=((60, -84, -60), (240, -84, -60), (240, -12, -24), (60, -12, -24)),
        walls=(((60, -12, -24), (180, -12, -24)),),
    )
    house, _, below = kinds(FRONT, BACK, porch)
    assert house[0] == ("eave", 240, "")
    # 72 in of run at 6:12.
    assert below == [
        ("eave", 180, ""),
        ("rake", 80.498447, ""),
        ("ridge", 60, ""),
        ("headwall", 120, ""),
        ("rake", 80.498447, ""),
    ]


def test_a_slope_beside_a_wall():
    wall = ((240, 0, 0), (240, 96, 48))
    for walls in ((wall,), (wall[::-1],)):
        (front,) = kinds(replace(FRONT, walls=walls))
        assert [kind for kind, *_ in front] == ["eave", "sidewall", "ridge", "rake"]


def test_one_ridge_along_two_planes_is_split_between_them():
    # The back slope is drawn in two, 100 and 140 in wide, at 6:12 and 12:12.
    left = replace(
        BACK, name="left", corners=((100, 192, 0), (0, 192, 0), (0, 96, 48), (100, 96, 48))
    )
    right = Facet(
        name="right", corners=((240, 144, 0), (100, 144, 0), (100, 96, 48), (240, 96, 48))
    )
    front, *_ = kinds(FRONT, left, right)
    # Counter-clockwise from the left of the eave, the ridge is walked from right to left.
    assert front[2:4] == [("ridge", 140, "right"), ("ridge", 100, "left")]


def test_planes_that_fall_towards_each_other_meet_in_a_valley():
    # A butterfly roof: a level valley between two slopes; it lies at their lowest, where a plane
    # has to start, and no eave is there.
    left = Facet(name="left", corners=((0, 0, 24), (96, 0, 0), (96, 240, 0), (0, 240, 24)))
    right = Facet(name="right", corners=((96, 0, 0), (192, 0, 24), (192, 240, 24), (96, 240, 0)))
    with pytest.raises(Refused) as refused:
        planes_in_space([left, right])
    assert [fault.came for fault in refused.value.faults] == ["neither at the lowest corner"] * 2


def test_a_gambrel_breaks_at_a_level_line():
    upper = Facet(name="upper", corners=((0, 24, 48), (240, 24, 48), (240, 96, 72), (0, 96, 72)))
    lower = Facet(name="lower", corners=((0, 0, 0), (240, 0, 0), (240, 24, 48), (0, 24, 48)))
    above, below = kinds(upper, lower)
    assert above[0] == ("pitch_break", 240, "lower")
    assert below[2] == ("pitch_break", 240, "upper")


def moved(facet: Facet, by: float) -> Facet:
    return replace(facet, corners=tuple((x, y, z + by) for x, y, z in facet.corners))


def test_surfaces_meet_that_are_an_inch_apart():
    for apart, kind in ((0.9, "back"), (1.1, "")):
        front, _ = kinds(FRONT, moved(BACK, apart))
        assert front[2] == ("ridge", 240, kind)


def test_corners_may_lie_half_an_inch_off_their_plane():
    # Pulled up by 2d, one corner of four lies d / 2 off the plane in the middle, upright.
    for pull, flat in ((1.0, True), (2.5, False)):
        bent = (*FRONT.corners[:3], (0.0, 96.0, 48.0 + pull))
        if flat:
            assert flat_facet(replace(FRONT, corners=bent)).pitch == pytest.approx(0.5, abs=0.01)
        else:
            with pytest.raises(Refused, match="corners within 1/2 in of one plane"):
                flat_facet(replace(FRONT, corners=bent))


def test_a_side_is_levelled_that_is_an_inch_off():
    # The eave of a plane at 6:12 whose right end lies further down the slope.
    for down, levelled in ((0.9, True), (1.1, False)):
        run = down / 1.25**0.5
        low = ((0, 0, 0), (240, -run, -run / 2), *FRONT.corners[2:])
        corners = flat_facet(replace(FRONT, corners=low)).corners
        assert (corners[0][1] == corners[1][1]) is levelled
        assert abs(corners[0][1] - corners[2][1]) == pytest.approx(107.33, abs=1.2)


def test_corners_that_say_nothing_are_left_out():
    drawn = ((0, 0, 0), (100, 0.1, 0.05), (100.1, 0.1, 0.05), (240, 0, 0), *FRONT.corners[2:])
    assert len(flat_facet(replace(FRONT, corners=drawn)).corners) == 4
    # A corner 1/2 in out of line is one.
    bent = ((0, 0, 0), (120, 0, 0), (240, 0, 0), (240.6, 48, 24), (240, 96, 48), (0, 96, 48))
    assert len(flat_facet(replace(FRONT, corners=bent)).corners) == 5


def test_a_line_along_two_others_goes_to_the_nearer():
    long = ((0.0, 0.0, 0.0), (100.0, 0.0, 0.0))
    rings = (
        (*long, (50.0, 50.0, 20.0)),
        ((100.0, 0.0, 0.0), (0.0, 0.0, 0.0), (50.0, -50.0, 20.0)),
        ((100.0, -0.6, 0.0), (0.0, -0.6, 0.0), (50.0, -50.0, -90.0)),
    )
    assert [(met.one, met.other) for met in meetings(rings)] == [(0, 1), (1, 0)]


def test_lines_that_run_the_same_way_or_touch_do_not_meet():
    line = ((0.0, 0.0, 0.0), (100.0, 0.0, 0.0))
    assert along(line, ((0.0, 0.0, 0.0), (100.0, 0.0, 0.0))) is None
    assert along(line, ((200.0, 0.0, 0.0), (99.0, 0.0, 0.0))) is None
    assert along(line, ((60.0, 0.0, 0.0), (60.0, 80.0, 0.0))) is None
    assert along(line, ((200.0, 0.0, 0.0), (90.0, 0.0, 0.0))) == (90, 100, 0)


REFUSED = [
    ((), "the request came as 0 surfaces: from 1 to 200 surfaces"),
    (
        (replace(FRONT, corners=((0.0, 0.0, 0.0),) * 1001),),
        "the request came as 1001 sides: at most 1000 sides in all",
    ),
    (
        (replace(FRONT, corners=FRONT.corners[:2], at=("features", 3)),),
        "features.3 came as 2 corners: at least 3 corners",
    ),
    (
        (replace(FRONT, corners=((0, 0, 0), (9, 9, 9), (18, 18, 18))),),
        "the request came as corners on one line: corners round a surface",
    ),
    (
        (replace(FRONT, corners=((0, 0, 0), (240, 0, 0), (240, 96, 0.7), (0, 96, 0.7))),),
        "the request came as 0.09:12: at least 0.1:12: level surfaces are not read",
    ),
    (
        (replace(FRONT, corners=((0, 0, 0), (240, 0, 0), (240, 0, 96), (0, 0, 96))),),
        "the request came as an upright surface: a slope of at most 1000:12",
    ),
    (
        (replace(FRONT, corners=((0, 0, 0), (240, 0, 0), (0, 96, 48), (240, 96, 48))),),
        "the request came as corners on one line: corners round a surface",
    ),
    (
        (replace(FRONT, corners=((0, 0, 0), (2e6, 0, 0), (2e6, 96, 48), (0, 96, 48))),),
        "the request came as 166666 ft 8 in: at most 100000 ft across",
    ),
    (
        (FRONT, replace(FRONT, name="other", corners=((0, 96, 48), (240, 96, 48), (240, 192, 96),
                                                      (0, 192, 96)))),
        "the request came as a surface in one plane with the next: both drawn as one; "
        "the request came as a surface in one plane with the next: both drawn as one",
    ),
    (
        (replace(FRONT, walls=(FRONT.corners[:2],)),),  # type: ignore[arg-type]
        "the request came as a lower edge against a wall: an eave free of walls",
    ),
    (
        (FRONT, BACK, replace(moved(BACK, 0.01), name="again")),
        "the request came as side 3 of it, along which two others lie: surfaces that meet in twos",
    ),
    (
        (replace(FRONT, name="x" * 61),),
        "the request came as a name of 61 characters: at most 60 printable characters",
    ),
    (
        (FRONT, replace(moved(BACK, 99), name="front", at=("other",))),
        "the request came as a name that another plane has too: a name of its own; "
        "other came as a name that another plane has too: a name of its own",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("facets", "said"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_refused_and_how_it_is_said(facets, said):
    with pytest.raises(Refused) as refused:
        planes_in_space(facets)
    assert str(refused.value) == said


def test_an_overhang_is_handed_on():
    assert planes_in_space([FRONT], eave_overhang=12) == GivenPlanes(
        planes=planes_in_space([FRONT]).planes, eave_overhang=12
    )
