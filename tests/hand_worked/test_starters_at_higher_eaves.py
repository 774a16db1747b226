"""A starter along a second, higher eave: worked by hand beside each number.

The plane is a shed's roof that is set back over an entry: 200 in wide down to the eave, and to its
right as much again that ends 45 in further up.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import Job, audit, plan, working
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
