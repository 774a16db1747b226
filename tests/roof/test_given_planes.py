"""Planes measured by hand: taken as they are, and held against what their edges say."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.footprints import Footprint
from roofing_core.roof.forms import Gambrel, Hip
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes, given_surfaces
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.whole_roof import surfaces
from tests.roof.plans import hip_roof, mixed_roof, stepped_roof

ROUNDING = 1e-9

FRONT = GivenPlane(
    name="front",
    corners=((0, 0), (300, 0), (300, 100), (0, 100)),
    edges=("eave", "rake", "ridge", "rake"),
    pitch=0.5,
    beyond=("", "", "back", ""),
)
BACK = replace(FRONT, name="back", beyond=("", "", "front", ""))


def as_given(found: Surfaces) -> GivenPlanes:
    """Give the planes of a roof as somebody would who had measured each."""
    return GivenPlanes(
        planes=tuple(
            GivenPlane(
                name=plane.name,
                corners=plane.corners,
                edges=plane.edges,
                pitch=plane.pitch,
                beyond=plane.beyond,
            )
            for plane in found.planes
        )
    )


ROOFS = [
    Hip(length=432, width=288, pitch=0.5),
    Gambrel(length=480, width=288, pitch=2, upper_pitch=0.5, break_run=60),
    *(draw(seed) for draw in (hip_roof, mixed_roof) for seed in range(40)),
]


@pytest.mark.parametrize("roof", ROOFS, ids=range(len(ROOFS)))
def test_planes_of_a_plan_given_by_hand_are_the_same_roof(roof):
    found = surfaces(roof)
    again = given_surfaces(as_given(found))
    assert again.area == pytest.approx(found.area, rel=ROUNDING)
    assert again.plan_area == pytest.approx(found.plan_area, rel=ROUNDING)
    for plane, before in zip(again.planes, found.planes, strict=True):
        assert plane.corners == before.corners
        assert plane.edges == before.edges
        assert plane.points == ()
        assert plane.lengths == pytest.approx(before.lengths, rel=ROUNDING, abs=1e-9)

    def each(surfaces: Surfaces) -> list[tuple[str, float, tuple[str, ...]]]:
        return sorted(
            (line.kind, round(line.length, 6), tuple(sorted(line.planes)))
            for line in surfaces.lines
        )

    assert each(again) == each(found)


def test_stepped_roofs_too():
    given = 0
    for seed in range(60):
        try:
            found = surfaces(stepped_roof(seed))
        except Refused:
            continue
        if min(line.length for line in found.lines) < 1:
            continue  # nobody would measure such a side
        given += 1
        assert given_surfaces(as_given(found)).area == pytest.approx(found.area, rel=ROUNDING)
    assert given > 20


def test_two_slopes_by_hand():
    found = given_surfaces(GivenPlanes(planes=(FRONT, BACK)))
    assert found.area == 2 * 300 * 100
    assert found.plan_area == pytest.approx(2 * 300 * 100 / sqrt(1.25))
    (ridge,) = (line for line in found.lines if line.kind == "ridge")
    assert (ridge.length, ridge.planes, ridge.ends) == (300, ("front", "back"), ())
    assert len(found.lines) == 7  # with two eaves and four rakes


def test_a_shared_line_has_the_mean_of_its_two_lengths():
    longer = replace(BACK, corners=((0, 0), (300.5, 0), (300.5, 100), (0, 100)))
    found = given_surfaces(GivenPlanes(planes=(FRONT, longer)))
    (ridge,) = (line for line in found.lines if line.kind == "ridge")
    assert ridge.length == 300.25


def test_a_plane_is_turned_to_start_at_the_left_end_of_its_eave():
    # The same slope, walked the other way from the top right corner, off the origin.
    back = replace(
        FRONT,
        corners=((310, 105), (310, 5), (10, 5), (10, 105)),
        edges=("rake", "eave", "rake", "ridge"),
        beyond=(),
    )
    (plane,) = given_surfaces(GivenPlanes(planes=(back,))).planes
    assert plane.corners == FRONT.corners
    assert plane.edges == FRONT.edges
    # Two eaves on one line: the left one is first.
    notched = replace(
        FRONT,
        corners=((200, 0), (300, 0), (300, 100), (0, 100), (0, 0), (100, 0), (150, 60)),
        edges=("eave", "rake", "ridge", "rake", "eave", "valley", "valley"),
        beyond=(),
    )
    (plane,) = given_surfaces(GivenPlanes(planes=(notched,))).planes
    assert plane.corners[:2] == ((0, 0), (100, 0))
    assert plane.edges[:3] == ("eave", "valley", "valley")


def refusal(*planes: GivenPlane) -> str:
    with pytest.raises(Refused) as refused:
        given_surfaces(GivenPlanes(planes=planes))
    return str(refused.value)


ALONE = replace(FRONT, beyond=())

WRONG_EDGES = [
    # kinds, what is said
    (
        ("ridge", "rake", "eave", "rake"),
        "planes.0.edges.0 came as ridge on an edge that is level, below the plane: "
        "another kind: every ridge is level, above the plane; "
        "planes.0.edges.2 came as eave on an edge that is level, above the plane: "
        "another kind: every eave is level, below the plane; "
        "planes.0.edges came as neither at the lowest corner: an eave or a pitch break there",
    ),
    (
        ("eave", "ridge", "headwall", "eave"),
        "planes.0.edges.1 came as ridge on an edge that is not level: "
        "another kind: every ridge is level, above the plane; "
        "planes.0.edges.3 came as eave on an edge that is not level: "
        "another kind: every eave is level, below the plane",
    ),
    (
        ("eave", "hip", "hip", "valley"),
        "planes.0.edges.2 came as hip on an edge that is level, above the plane: "
        "another kind: every hip is not level",
    ),
    (
        ("valley", "rake", "pitch_break", "rake"),
        "planes.0.edges came as neither at the lowest corner: an eave or a pitch break there",
    ),
]


@pytest.mark.parametrize(("edges", "said"), WRONG_EDGES)
def test_an_edge_lies_as_its_kind_does(edges, said):
    assert refusal(replace(ALONE, edges=edges)) == said


def test_an_eave_may_be_a_little_out_of_level():
    for off, taken in ((0.125, True), (-0.125, True), (0.13, False)):
        plane = replace(ALONE, corners=((0, 0), (300, off), (300, 100), (0, 100)))
        if taken:
            assert given_surfaces(GivenPlanes(planes=(plane,))).planes[0].edges[0] == "eave"
        else:
            assert refusal(plane).startswith("planes.0.edges.0 came as eave on an edge that is not")


REFUSED = [
    ((), "planes came as 0 planes: from 1 to 200 planes"),
    (
        (replace(ALONE, name="", pitch=-1),),
        "planes.0.pitch came as -12:12: 0:12 or more and at most 1000:12; "
        "planes.0.name came as an empty text: a name",
    ),
    (
        (ALONE, ALONE),
        "planes.0.name came as a name that another plane has too: a name of its own; "
        "planes.1.name came as a name that another plane has too: a name of its own",
    ),
    (
        (replace(ALONE, edges=("eave",), beyond=("",) * 3),),
        "planes.0.edges came as 1 of them: 4, one for each corner; "
        "planes.0.beyond came as 3 of them: 4, one for each corner",
    ),
    (
        (replace(ALONE, corners=((0, 0), (300, 100), (300, 0), (0, 100))),),
        "planes.0.corners came as sides 1 and 3 crossing or touching: "
        "sides that meet only at their corners",
    ),
    (
        (replace(ALONE, beyond=("", "", "shed", "")),),
        "planes.0.beyond.2 came as a name that no other plane has: "
        "the name of another plane, or empty where there is none",
    ),
    (
        (replace(ALONE, beyond=("back", "", "", "")), replace(BACK, beyond=())),
        "planes.0.beyond.0 came as the name of a plane: "
        "left empty: no plane lies beyond the eave of this one",
    ),
    (
        (FRONT, replace(BACK, beyond=())),
        "planes.0.beyond came as a ridge of 25 ft: one of the same kind on the plane beyond",
    ),
    (
        (FRONT, replace(BACK, corners=((0, 0), (302, 0), (302, 100), (0, 100)))),
        "planes.0.beyond came as a ridge of 25 ft: "
        "one of the same kind and length on the plane beyond; "
        "planes.1.beyond came as a ridge of 25 ft 2 in: "
        "one of the same kind and length on the plane beyond",
    ),
]


@pytest.mark.parametrize(("planes", "said"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_refused_and_how_it_is_said(planes, said):
    assert refusal(*planes) == said


def test_a_footprint_is_no_roof_given_plane_by_plane():
    assert GivenPlanes(planes=()).form == "planes"
    assert Footprint(corners=()).form == "footprint"
