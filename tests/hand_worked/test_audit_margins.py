"""The least margins that an audit finds on a roof of several planes, from its parts' sizes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import Chimney, Footprint, Job, Skylight, VentPipe, audit, plan
from roofing_core.job.choices import Valleying

#: 40 x 30 ft with a wing: one inside corner between equal pitches, 90 in from each ridge.
ANGLE = Footprint(
    corners=((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360)), pitch=6 / 12
)
JOB = Job(
    roof=ANGLE,
    openings=(
        Chimney(plane="side 1", from_left=200, up_slope=30, width=36, depth=20),
        Skylight(plane="side 6", from_left=150, up_slope=40, width=24, height=38),
        VentPipe(plane="side 1", from_left=300, up_slope=40, diameter=3),
    ),
)

#: Each from the default sizes.
MARGINS = {
    "caps.headlap": 13.25 - 2 * 5.625,
    "caps.nails_covered": 1.0,  # above the butt of the next cap
    "flashings.step_lap": 8 - 5.625,
    "flashings.legs": 5.0,
    "flashings.corners": 4.0,
    "flashings.cricket_lap": 10.0,
    "flashings.pipe": (12 - 3) / 2,
}

# The valley: 90 in of run on either side and 45 in of rise, so 135 in long. It shows 3 in to each
# side at its top and 1/16 in more for each foot down; its metal reaches 12 in. The shingles' edge
# ends a little below the foot, at the eave's edge: 0.05 in more than makes up for that.
VALLEY = 135.0
OPEN = 12 - (3 + VALLEY / 12 / 16)

#: At its top the metal goes on up under the caps: 6 in past the ridge, unless more is asked for.
OVER_RIDGE = 6.0

#: Shingles that run through end 12 in past the middle, the others are cut 2 in short of it. What is
#: nearer than 1/64 in touches.
CLOSED, TOUCHING = 12 - 2, 1 / 64


@pytest.fixture(scope="module")
def margins() -> dict[str, float]:
    return {one.question: one.value.value for one in audit(plan(JOB)).margins}


@pytest.mark.parametrize(("question", "worked"), MARGINS.items())
def test_a_margin_is_that_of_the_sizes(margins, question, worked):
    assert margins[question] == pytest.approx(worked)


def test_an_open_valley_laps_by_what_does_not_show(margins):
    assert margins["valleys.lap"] == pytest.approx(OVER_RIDGE)
    longer = replace(JOB, valleying=Valleying(over_ridge=12.0))
    found = {one.question: one.value.value for one in audit(plan(longer)).margins}
    assert found["valleys.lap"] == pytest.approx(OPEN, abs=0.05)


def test_a_closed_valley_laps_by_what_runs_through_and_is_not_cut_back():
    closed = replace(JOB, valleying=Valleying(method="closed_cut"))
    found = {one.question: one.value.value for one in audit(plan(closed)).margins}
    assert found["valleys.lap"] == pytest.approx(CLOSED, abs=TOUCHING)
