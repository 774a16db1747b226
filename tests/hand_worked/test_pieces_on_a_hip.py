"""Courses on a hip end and beside a valley, drawn on paper and worked out by hand.

The roof is 240 by 240 in at 9:12, so that its slope factor is 5/4: each plane is a triangle with an
eave of 240 and a height of 150, and its hips rise 5 for every 4 along the eave.
"""

from __future__ import annotations

from math import atan2, degrees, pi

import pytest

from roofing_core import Choices, Coursing, Footprint, Pyramid, Shingle, Side, material
from roofing_core.job.choices import Valleying
from roofing_core.job.shingles import lay_shingles
from roofing_core.job.wiring import site_of
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.pieces import Piece

SHINGLE = Shingle(
    name="40 by 14",
    kind="laminated",
    length=40.0,
    height=14.0,
    exposure=5.0,
    nail_zone_low=6.0,
    nail_zone_high=8.0,
    sequence=(0.0, 10.0),
    thickness=0.125,
    per_bundle=20,
    bundle_weight=70.0,
)
FLUSH = Coursing(starter_past_metal=0.0, course_past_starter=0.0, shingle_past_rake=0.0)
CHOICES = Choices(shingle=SHINGLE, coursing=FLUSH)

#: The hip rises 5 for every 4 along the eave: 51.34 deg on the surface.
HIP = atan2(5, 4)


@pytest.fixture(scope="module")
def front() -> list[LaidCourse]:
    """Give the courses of the front of the pyramid."""
    site = site_of(Pyramid(length=240, width=240, pitch=9 / 12), CHOICES)
    return [row for row in lay_shingles(site)[1] if row.plane == "front"]


def assert_corners(piece: Piece, *corners: tuple[float, float]) -> None:
    assert len(piece.corners) == len(corners)
    for found, expected in zip(piece.corners, corners, strict=True):
        assert found == pytest.approx(expected)


def test_thirty_courses_up_150_in(front):
    assert len(front) == 150 / 5
    # Joints are counted from the left corner. The first course is 240 long at its butt: six strips.
    assert [row.pieces for row in front[:3]] == [6, 7, 6]


def test_the_first_piece_of_the_first_course(front):
    first = front[0].laid[0]
    # The course is 14 high, where the hip has come in by 14 * 4/5 = 11.2.
    assert_corners(first, (0, 0), (40, 0), (40, 14), (11.2, 14))
    assert (first.left_angle, first.right_angle) == pytest.approx((HIP, pi / 2))
    assert degrees(first.left_angle) == pytest.approx(51.34, abs=0.005)
    assert (first.left_end, first.right_end) == ("factory", "factory")
    # Nailed at 7, half-way up the nail zone, where the hip has come in by 5.6: of the strip's own
    # nails at 1, 13 2/3, 26 1/3 and 39 the first is cut off.
    assert first.nail_height == 7
    assert first.nails == pytest.approx((13 + 2 / 3, 26 + 1 / 3, 39))


def test_the_second_course_begins_with_a_cut_strip(front):
    second = front[1]
    # Butt at 5, where the hip has come in by 4; 10 off the first strip, whose joint is at 30.
    first = second.laid[0]
    assert (first.left, first.right) == pytest.approx((4, 30))
    assert (first.shingle_from, first.shingle_to) == pytest.approx((14, 40))
    assert second.joints == (30, 70, 110, 150, 190, 230)
    # The last strip starts at 230; at the butt the right hip has come in to 236.
    last = second.laid[-1]
    assert (last.left, last.right, last.right_end) == (230, pytest.approx(236), "cut")
    # It is a triangle: the hip meets its left end 7.5 up, at v = 12.5.
    assert_corners(last, (230, 5), (236, 5), (230, 12.5))
    assert last.right_angle == pytest.approx(HIP)
    # At the nail line, 12, it is 0.4 wide, too narrow for two nails. It is nailed half-way up, at
    # 8.75, where it is 3 wide: a quarter of that in from either side, under the caps.
    assert last.nail_height == pytest.approx(3.75)
    assert last.nails == pytest.approx((230.75, 232.25))


def test_what_shows_of_the_first_course(front):
    # A trapezoid between 240 and 232 long, 5 high.
    assert front[0].exposed_area == pytest.approx((240 + 232) / 2 * 5)


def test_the_last_course_is_the_tip(front):
    tip = front[-1]
    assert (tip.butt, tip.exposure, tip.top_trim, tip.pieces) == (145, 5, 9, 1)
    assert_corners(tip.laid[0], (116, 145), (124, 145), (120, 150))
    assert tip.exposed_area == pytest.approx(8 * 5 / 2)


#: 480 by 240 with a wing 240 wide to the back at its left: the wing's valley runs into the corner
#: of both at 45 deg in plan.
L_SHAPED = Footprint(
    corners=((0, 0), (480, 0), (480, 240), (240, 240), (240, 480), (0, 480)),
    sides=(Side(pitch=9 / 12),) * 6,
)


def beside_the_valley(method: str) -> dict[str, list[Piece]]:
    """Give the pieces of the first course of the two planes on both sides of the valley."""
    choices = Choices(
        shingle=SHINGLE,
        coursing=FLUSH,
        valleying=Valleying(method=method, exposed_width=6.0, widening=0.0),  # type: ignore[arg-type]
    )
    rows = lay_shingles(site_of(L_SHAPED, choices))[1]
    return {row.plane: list(row.laid) for row in rows if row.number == 1}


def valley_planes() -> tuple[str, str]:
    site = site_of(L_SHAPED)
    found = [plane.name for plane in site.surfaces.planes if "valley" in plane.edges]
    left, right = found
    return left, right


#: Along a course, the middle of the valley is a distance / sin(51.34 deg) away.
ALONG = 1 / (5 / (5**2 + 4**2) ** 0.5)


def test_an_open_valley_leaves_half_its_width_on_either_plane():
    laid = beside_the_valley("open")
    one, other = valley_planes()
    edges = {laid[one][-1].right, laid[one][0].left, laid[other][-1].right, laid[other][0].left}
    # One plane begins and one ends at the valley, whose foot is at the end of each eave of 240.
    # Going up the valley the planes widen: at the butt the shingles stand 3 in off its middle.
    assert any(left == pytest.approx(-11.2 + 3 * ALONG) for left in edges)
    assert any(right == pytest.approx(240 + 11.2 - 3 * ALONG) for right in edges)


def test_a_closed_valley_runs_through_on_one_plane_and_is_cut_on_the_other():
    laid = beside_the_valley("closed_cut")
    one, other = valley_planes()
    ends = [laid[name][0].left for name in (one, other)] + [
        laid[name][-1].right - 240 for name in (one, other)
    ]
    reach = sorted(round(abs(end) - 11.2, 6) for end in ends if abs(abs(end) - 11.2) > 1e-6)
    assert reach[-1] == pytest.approx(12 * ALONG, abs=1e-6)
    assert any(each == pytest.approx(-2 * ALONG, abs=1e-6) for each in reach)


def test_no_nail_within_6_in_of_the_valley():
    laid = beside_the_valley("open")
    one, other = valley_planes()
    for name in (one, other):
        for piece in laid[name]:
            # At the nail line, 7 up, the valley stands 5.6 past the corner of the eave.
            for nail in piece.nails:
                from_left, from_right = nail + 5.6, 240 + 5.6 - nail
                assert min(from_left, from_right) > 6 * ALONG or min(from_left, from_right) < 0


def test_the_material_of_the_catalogue_is_laid_too():
    site = site_of(Pyramid(length=240, width=240, pitch=9 / 12))
    assert site.choices.shingle == material(Shingle, "metric_strip")
    assert lay_shingles(site)[2].pieces > 4 * 150 / 5.625


def test_a_joint_too_near_to_a_valley_goes_back():
    # On the plane that begins at the valley the first course's joints stand at 40, 80, ... from
    # where its butt begins, all far from the valley. On the one that ends there, 240 along, the
    # last joint falls at 240: the valley's middle at the nail line is at 245.6, so it goes back
    # to 12 in from it, 233.6, and on by halves until it is 4 or more clear of the next course's
    # joint at 230.
    laid = beside_the_valley("open")
    ending = next(laid[name] for name in valley_planes() if laid[name][0].left > -1)
    assert ending[-1].left == pytest.approx(225.6)
    before = ending[-2]
    assert before.right_end == "cut"
    assert before.shingle_to == pytest.approx(25.6)
    assert (ending[-1].left_end, ending[-1].shingle_from) == ("factory", 0.0)
