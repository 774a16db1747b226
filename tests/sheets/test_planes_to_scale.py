"""Planes and roof plans measured on paper: what is drawn is where the roof has it."""

from __future__ import annotations

import re
from itertools import pairwise
from math import hypot

import pytest
from shapely import Polygon

from roofing_core import GivenPlanes, Hip, Refused, surfaces, write_length
from roofing_core.sheets.drawings.all import drawings
from roofing_core.sheets.drawings.edges import STROKES
from roofing_core.sheets.drawings.patches import in_picture, patches_of
from roofing_core.sheets.drawings.roof_plan import roof_plan
from tests.roof.plans import stepped_roof
from tests.sheets.conftest import BY_HAND, ELL, planned
from tests.sheets.reading import lines_of, shapes_of, texts_of

#: Coordinates are written to 0.01 mm: half of that at each end of a line.
WRITTEN = 0.011


def scale_of(svg: str) -> float:
    """Give the scale that a drawing says it has."""
    told = re.search(r"[Ss]cale,? 1:(\d+(?:\.\d+)?)", svg)
    assert told
    return float(told[1])


def drawn_as(svg: str, kind: str) -> list[float]:
    """Give the lengths of the lines that are drawn as a kind of edge; not those of the key."""
    stroke = STROKES[kind]  # type: ignore[index]
    dash = " ".join(f"{part:g}" for part in stroke.dash)
    found = [
        hypot(b[0] - a[0], b[1] - a[1])
        for a, b, width, look in lines_of(svg)
        if width == stroke.width and look == dash
    ]
    return sorted(found)[1:]


def test_the_example_is_drawn_as_long_and_as_high_as_it_is():
    (page,) = drawings(planned("shed")[0], "plane")
    # By hand: 14 ft are 4267.2 mm and 9 ft 4 in 2844.8 mm.
    assert scale_of(page.svg) == 25
    assert drawn_as(page.svg, "eave") == [pytest.approx(4267.2 / 25, abs=WRITTEN)]
    assert drawn_as(page.svg, "ridge") == [pytest.approx(4267.2 / 25, abs=WRITTEN)]
    assert drawn_as(page.svg, "rake") == [pytest.approx(2844.8 / 25, abs=WRITTEN)] * 2


def test_the_example_has_its_butts_and_joints():
    (page,) = drawings(planned("shed")[0], "plane")
    thin = [(a, b) for a, b, width, _ in lines_of(page.svg) if width == 0.2]
    # By hand: 168 in and 1/4 in past each rake, 168.5 in or 171.196 mm on paper; 20 courses
    # 5 5/8 in apart, 5.715 mm; five pieces in each have six ends.
    butts = [a[1] for a, b in thin if b[0] - a[0] == pytest.approx(171.196, abs=WRITTEN)]
    assert len(butts) == 20
    for k, y in enumerate(butts):
        assert y == pytest.approx(butts[0] - 5.715 * k, abs=WRITTEN)
    ends = [
        (a, b) for a, b in thin
        if a[0] == b[0] and b[1] - a[1] == pytest.approx(5.715, abs=WRITTEN)
    ]  # fmt: skip
    assert len(ends) == 20 * 6


def test_the_example_tells_the_widths_of_its_cut_pieces():
    (page,) = drawings(planned("shed")[0], "plane")
    told = [text.text for text in texts_of(page.svg)]
    # By hand: 168.5 in less four joints 39 3/8 in apart from 39 3/8 less 0, 6, 11, 17: the left
    # pieces 33 3/8, 28 3/8, 22 3/8, the right ones 11, 17, 22, 28; 20 courses are five rounds.
    for width in ("33 3/8 in", "28 3/8 in", "22 3/8 in", "11 in", "17 in", "28 in"):
        assert told.count(width) == 5, width


def test_heights_beside_the_picture_are_those_of_the_butts(drawn_plan):
    plan, system = drawn_plan
    if system == "metric":
        return
    for page in drawings(plan, "plane"):
        if not page.title.endswith("courses and pieces"):
            continue
        name = page.title.partition(":")[0].lower()
        butts = {
            str(course.number): course.butt
            for course in plan.courses
            if course.plane.lower() == name
        }
        texts = [text.text for text in texts_of(page.svg)]
        assert not butts or str(max(map(int, butts))) in texts


def test_where_the_scale_is_small_lines_keep_their_distance(drawn_plan):
    plan, system = drawn_plan
    for page in drawings(plan, "plane", system=system):
        level = sorted(
            {a[1] for a, b, width, _ in lines_of(page.svg)
             if a[1] == b[1] and width <= 0.2 and b[0] - a[0] > 60}
        )  # fmt: skip
        gaps = [b - a for a, b in pairwise(level)]
        # The top edge may come to lie anywhere between two butts.
        assert all(gap > 0.7 for gap in gaps[1:])


def test_a_wide_roof_has_its_ends_enlarged():
    whole, ends = drawings(planned("very wide")[0], "plane")
    assert scale_of(whole.svg) > 100
    assert scale_of(ends.svg) < 30
    assert "33 3/8 in" not in [text.text for text in texts_of(whole.svg)]
    # By hand: 1440.5 in less 39 3/8 times 36 is 23 in for the right end of course 1.
    told = [text.text for text in texts_of(ends.svg)]
    assert {"33 3/8 in", "28 3/8 in", "22 3/8 in", "23 in"} <= set(told)


def test_a_hip_roof_from_above():
    hip = surfaces(Hip(length=432, width=288, pitch=0.5))
    page = roof_plan(hip.planes, hip.lines)
    scale = scale_of(page.svg)
    # By hand: a plan of 24 by 36 ft; over it the hips are 12 ft of run across the corner, as they
    # lie 12 * sqrt(2 + 1/4) = 18 ft, and the ridge 12 ft.
    across = hypot(144, 144) * 25.4 / scale
    assert drawn_as(page.svg, "hip") == [pytest.approx(across, abs=WRITTEN)] * 4
    assert drawn_as(page.svg, "ridge") == [pytest.approx(144 * 25.4 / scale, abs=WRITTEN)]
    told = [text.text for text in texts_of(page.svg)]
    assert told.count("hip 18 ft") == 4
    assert told.count("ridge 12 ft") == 1
    assert told.count("6:12") == 4
    assert {"front", "back", "left end", "right end"} <= set(told)


@pytest.mark.parametrize(
    ("name", "falls"),
    [("front", (0, -1)), ("right end", (1, 0)), ("back", (0, 1)), ("left end", (-1, 0))],
)
def test_arrows_point_down_the_slope(name, falls):
    hip = surfaces(Hip(length=432, width=288, pitch=0.5))
    patches, _ = patches_of(hip.planes, hip.lines)
    (patch,) = [one for one in patches if one.name == name]
    assert patch.falls == pytest.approx(falls, abs=1e-12)


def test_outer_lines_have_their_plane_on_the_left():
    roof = surfaces(ELL)
    patches, sides = patches_of(roof.planes, roof.lines)
    whole = {patch.name: Polygon(patch.corners) for patch in patches}
    for side in sides:
        (ax, ay), (bx, by) = side.ends
        long = hypot(bx - ax, by - ay)
        left = ((ax + bx) / 2 - (by - ay) / long, (ay + by) / 2 + (bx - ax) / long)
        right = ((ax + bx) - left[0], (ay + by) - left[1])
        on = [any(shape.covers(_point(at)) for shape in whole.values()) for at in (left, right)]
        assert on == [True, side.inner], side


def _point(at: tuple[float, float]) -> Polygon:
    return Polygon([at, (at[0] + 1e-6, at[1]), (at[0], at[1] + 1e-6)])


@pytest.mark.parametrize("many", [1, 3, 7])
def test_planes_measured_by_hand_lie_side_by_side(many):
    one = BY_HAND.planes[1]
    given = GivenPlanes(
        planes=tuple(
            type(one)(name=f"end {k}", corners=one.corners, edges=one.edges, pitch=one.pitch)
            for k in range(many)
        )
    )
    roof = surfaces(given)
    patches, sides = patches_of(roof.planes, roof.lines)
    shapes = [Polygon(patch.corners) for patch in patches]
    assert [shape.area for shape in shapes] == pytest.approx([7500.0] * many)  # 150 x 100 / 2
    for k, shape in enumerate(shapes):
        assert all(shape.distance(other) > 20 for other in shapes[:k])
    assert len(sides) == 3 * many


def test_openings_are_where_they_are():
    plan, _ = planned("ell with openings")
    chimney, skylight, pipe = plan.openings
    (page,) = drawings(plan, "roof_plan")
    scale = scale_of(page.svg)
    shapes = [shape for shape in shapes_of(page.svg) if len(shape) == 5]
    eaves = [(a, b) for a, b, width, _ in lines_of(page.svg) if width == 0.9]
    left = min(min(a[0], b[0]) for a, b in eaves if hypot(b[0] - a[0], b[1] - a[1]) > 20)
    sloped = 1.25**0.5  # a slope at 6:12 over its run
    # By hand: 150 in from the left and 36 in wide on the front; 30 in up the slope, 20 in of it.
    wanted = {
        (150 * 25.4 / scale, 36 * 25.4 / scale, 20 * 25.4 / scale),
        # Side 6 faces left, its u runs down the drawing from 300 in: 20 in up are 17.9 in of run.
        (20 / sloped * 25.4 / scale, 36 / sloped * 25.4 / scale, 24 * 25.4 / scale),
    }
    for at, wide, high in wanted:
        assert any(
            min(x for x, _ in shape) - left == pytest.approx(at, abs=2 * WRITTEN)
            and max(x for x, _ in shape) - min(x for x, _ in shape)
            == pytest.approx(wide, abs=2 * WRITTEN)
            and max(y for _, y in shape) - min(y for _, y in shape)
            == pytest.approx(high, abs=2 * WRITTEN)
            for shape in shapes
        ), (at, wide, high)
    told = [text.text for text in texts_of(page.svg)]
    assert {"1", "2", "3"} <= set(told)
    assert any(text.startswith("Openings: 1 chimney on side 1") for text in told)
    assert (chimney.number, skylight.number, pipe.number) == (1, 2, 3)


@pytest.mark.parametrize(("name", "kind"), [("ell", "hip"), ("ell", "valley"), ("hip", "hip")])
def test_corners_of_planes_come_to_lie_on_the_corners_of_their_pictures(name, kind):
    plan, _ = planned(name)
    patches, _ = patches_of(plan.planes, plan.lines)
    seen = 0
    for plane, patch in zip(plan.planes, patches, strict=True):
        for corner, at in zip(plane.corners, patch.corners, strict=True):
            assert in_picture(plane, patch, corner) == pytest.approx(at, abs=1e-6)
            seen += kind in plane.edges
    assert seen > 3


def test_every_plane_of_a_roof_is_named_or_has_a_letter(drawn_plan):
    plan, system = drawn_plan
    page = roof_plan(plan.planes, plan.lines, system=system)
    told = " ".join(text.text for text in texts_of(page.svg))
    for plane in plan.planes:
        assert plane.name in told


@pytest.mark.parametrize("seed", range(12))
def test_every_letter_that_has_a_meaning_is_on_the_drawing(seed):
    try:
        roof = surfaces(stepped_roof(seed))
    except Refused:
        return
    page = roof_plan(roof.planes, roof.lines)
    told = [text.text for text in texts_of(page.svg)]
    whole = " ".join(told)
    letters = re.findall(r"\b([a-z]{1,2}|[A-Z]): ", whole)
    assert set(letters) <= set(told)
    for line in roof.lines:
        assert f"{line.kind.replace('_', ' ')} {write_length(line.length)}" in whole
    for plane in roof.planes:
        assert plane.name in whole
