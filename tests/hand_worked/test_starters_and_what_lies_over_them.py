"""Starters along a second, higher eave and beside a valley: worked by hand beside each number.

Joints stand 4 in apart by common practice, no published source. The first plane is a shed's roof
that is set back over an entry: 200 in wide down to the eave, and as much again, to its right, that
ends 45 in further up.
"""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest

from roofing_core import Footprint, Job, audit, plan, working
from roofing_core.materials.kinds import Starter
from roofing_core.materials.listing import material
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes

SET_BACK = GivenPlanes(
    planes=(
        GivenPlane(
            name="slope",
            corners=((0, 0), (200, 0), (200, 45), (400, 45), (400, 160), (0, 160)),
            edges=("eave", "rake", "eave", "rake", "ridge", "rake"),
            pitch=0.5,
        ),
    )
)


@pytest.fixture(scope="module")
def planned():
    return plan(Job(roof=SET_BACK))


def test_the_higher_starter_is_trimmed_with_the_course_over_it(planned):
    low, high = planned.starters
    assert (low.butt, high.butt) == (-0.25, 44.75)
    # Butts at -1/2 + k x 5 5/8 in: 38 7/8, 44 1/2, 50 1/8. The course that begins at 44 1/2 in, the
    # ninth, is the first to reach past the higher eave; its trim is the first of four again: 0 in.
    ninth = planned.courses[8]
    assert (ninth.butt, ninth.trim) == (44.5, 0)
    assert (low.trim, high.trim) == (4, 4)
    assert (low.clearance, high.clearance) == (4, 4)


@pytest.mark.parametrize(
    # The course over the higher eave, 1 in further up the one after another, is the tenth: of the
    # sequence 0, 6, 11, 17 in the second. 4 + 6 in; the same by 39 3/8 in around: 36 + 6 - 39 3/8.
    ("chosen", "trimmed"),
    [(4.0, 10.0), (36.0, 2.625)],
)
def test_it_is_trimmed_by_as_much_more_as_that_course(chosen, trimmed):
    corners = ((0, 0), (200, 0), (200, 50.625), (400, 50.625), (400, 160), (0, 160))
    roof = replace(SET_BACK, planes=(replace(SET_BACK.planes[0], corners=corners),))
    starter = replace(material(Starter, "self_made_starter"), trim=chosen)
    made = plan(Job(roof=roof, starter=starter))
    low, high = made.starters
    assert made.courses[9].trim == 6
    assert low.trim == chosen
    assert high.trim == pytest.approx(trimmed, abs=1e-9)
    assert high.clearance == pytest.approx(low.clearance, abs=1e-9)
    assert audit(made).sheds_water == (low.clearance >= 4)
    found = working(made, "/starters/1/trim")
    assert found.result.value == pytest.approx(trimmed, abs=1e-9)
    assert len(found.lines[-1].put_in) >= 3


def test_a_joint_that_steps_aside_of_a_valley_clears_the_starter_and_the_next_course():
    corners = ((0, 0), (360, 0), (360, 130), (120, 130), (120, 300), (0, 300))
    made = plan(Job(roof=Footprint(corners=corners, pitch=4 / 12)))
    (starter,) = (one for one in made.starters if one.plane == "side 3")
    first = next(one for one in made.courses if one.plane == "side 3")
    # The valley goes from the eave's end at 240 in across 60 in of plan, both ways: up the slope
    # by 60 x the slope factor. At the nail line, 6 1/8 in up, it is at 240 + 6 1/8 / factor.
    factor = sqrt(10) / 3
    nearest = 240 + 6.125 / factor - 12  # 233.81
    # Joints begin at the hip where the first butt is, 1/2 in below the eave: the starter's sixth
    # at 231.78, the one of course 2, trimmed 6 in, at 229.78. Back by halves of an inch until it
    # stands 4 in off both: 225.78 or less, 17 steps.
    begins = -0.5 / factor
    below, above = (begins + 6 * 39.375 - trim for trim in (4, 6))
    assert starter.joints[-1] == pytest.approx(below, abs=1e-9)
    assert nearest - 16 * 0.5 > above - 4 > nearest - 17 * 0.5
    assert first.joints[-1] == pytest.approx(nearest - 17 * 0.5, abs=1e-9)
    assert starter.clearance == 4
    assert audit(made).sheds_water
