"""Audits of random roofs of every form, with all that comes through them: no false alarm.

What the audit finds on a plan made with the trade's own sizes, a finding has told already: joints
that the trims cannot keep apart everywhere on a plane, and closed valleys whose foot is not
between two eaves. These roofs are a sample. Of 1,173 drawn in the same ways and planned with the
defaults one breached a question with no finding for it, which is mended since and among these here;
none had a finding that breaks code, 1,123 shed water, and on 350 nothing at all was found.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest

from roofing_core import (
    Chimney,
    Footprint,
    Gable,
    Gambrel,
    Hip,
    Job,
    Plan,
    Pyramid,
    Refused,
    Saltbox,
    SingleSlope,
    Skylight,
    VentPipe,
    audit,
    finished,
    opening_faults,
    plan,
    surfaces,
)
from roofing_core.auditing.verdicts import Place
from roofing_core.job.choices import Valleying
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.openings import Opening
from roofing_core.roof.outlines import RoofPlane
from tests.auditing.injuries import forget_a_dab
from tests.roof.plans import hip_roof, mixed_roof, stepped_roof
from tests.roof.test_given_planes import as_given

#: What the shingles at the foot of a closed valley can breach that begins anywhere but at eaves.
AT_A_FOOT = {"shingles.layers", "shingles.headlap", "valleys.lap"}


def held_against_its_findings(planned: Plan) -> None:
    """Hold what the audit finds on a plan against what its findings tell."""
    found = audit(planned)
    assert {one.severity for one in planned.findings} <= {"against_practice", "worth_knowing"}
    rules = {one.rule for one in planned.findings}
    breached = {one.question for one in found.breaches}
    told = {"shingles.joints", *(AT_A_FOOT if "valley.closed_foot" in rules else ())}
    assert breached <= told, [one.says.written() for one in found.breaches]
    assert ("shingles.joints" in breached) == bool(rules & {"joints.clearance", "starter.offset"})
    assert found.sheds_water == (not breached)
    near = [one.place for one in found.breaches if one.question == "shingles.joints"]
    assert all(stated_clearance(planned, place) < LEAST_CLEARANCE for place in near)


LEAST_CLEARANCE = 4.0


def stated_clearance(planned: Plan, place: Place) -> float:
    """Give the clearance that a plan states under a course, over starters too."""
    starters = (one.clearance for one in planned.starters if one.plane == place.plane)
    below = (
        one.clearance
        for one in planned.courses
        if (one.plane, one.number) == (place.plane, place.number - 1)
    )
    return min((*starters, *below))


def one_dab_forgotten_is_missed(planned: Plan) -> None:
    """Take one dab of all from the sealant of a plan: the audit counts the nails for itself."""
    found = audit(forget_a_dab(finished(planned)))
    [missed] = [one for one in found.breaches if one.question == "sealing.dabs"]
    assert missed.value.value == 1


@pytest.mark.parametrize("draw", [hip_roof, mixed_roof, stepped_roof])
@pytest.mark.parametrize("seed", range(10))
def test_a_roof_over_a_random_outline_gives_no_false_alarm(draw, seed):
    try:
        planned = plan(Job(roof=draw(seed)))
    except Refused:
        pytest.skip("drawn at random, it does not close")
    assert len(planned.planes) > 1
    held_against_its_findings(planned)


def some_openings(chance: Random, planes: tuple[RoofPlane, ...]) -> tuple[Opening, ...]:
    """Draw an opening for most planes; leave out those that do not fit."""
    found: list[Opening] = []
    for plane in planes:
        wide, high = max(u for u, _ in plane.corners), max(v for _, v in plane.corners)
        u, v = chance.uniform(0, wide), chance.uniform(0, high)
        across, up = chance.uniform(12, 60), chance.uniform(8, 60)
        kinds: list[Opening] = [
            VentPipe(plane=plane.name, from_left=u, up_slope=v, diameter=across / 20),
            Skylight(plane=plane.name, from_left=u, up_slope=v, width=across, height=up),
            Chimney(plane=plane.name, from_left=u, up_slope=v, width=across, depth=up / 2),
        ]
        drawn = chance.choice(kinds)
        found += [] if opening_faults([drawn], planes) else [drawn]
    return tuple(found)


def walled(chance: Random) -> GivenPlanes:
    """Draw a porch roof between walls, and the flatter or steeper slope that goes on below it."""
    wide, deep, below = chance.uniform(96, 400), chance.uniform(40, 140), chance.uniform(30, 90)
    upper = GivenPlane(
        name="upper",
        pitch=chance.uniform(0.17, 1.0),
        corners=((0, 0), (wide, 0), (wide, deep), (0, deep)),
        edges=("pitch_break", "rake", "headwall", "sidewall"),
        beyond=("lower", "", "", ""),
    )
    lower = GivenPlane(
        name="lower",
        pitch=chance.uniform(0.17, 0.6),
        corners=((0, 0), (wide, 0), (wide, below), (0, below)),
        edges=("eave", "sidewall", "pitch_break", "rake"),
        beyond=("", "", "upper", ""),
    )
    return GivenPlanes(planes=(upper, lower))


def angled(chance: Random) -> Footprint:
    """Draw a roof of two wings over an angle."""
    a, b, part = chance.uniform(120, 480), chance.uniform(120, 480), chance.uniform(0.3, 0.7)
    corners = ((0, 0), (a, 0), (a, b * part), (a * part, b * part), (a * part, b), (0, b))
    return Footprint(corners=corners, pitch=chance.uniform(0.17, 1.7))


FORMS: dict[str, Callable[[Random], AnyRoof]] = {
    "single slope": lambda c: SingleSlope(
        eave_length=c.uniform(72, 480), slope_length=c.uniform(72, 480), pitch=c.uniform(0.17, 1.7)
    ),
    "angle": angled,
    "gable": lambda c: Gable(
        length=c.uniform(120, 700), width=c.uniform(100, 500), pitch=c.uniform(0.17, 1.7)
    ),
    "saltbox": lambda c: Saltbox(
        length=c.uniform(200, 400), width=240, pitch=c.uniform(0.4, 1), back_pitch=0.5,
        ridge_run=c.uniform(60, 110),
    ),
    "gambrel": lambda c: Gambrel(
        length=c.uniform(120, 500), width=200, pitch=c.uniform(1.1, 1.7), upper_pitch=0.5,
        break_run=c.uniform(24, 50),
    ),
    "hip": lambda c: Hip(
        length=c.uniform(200, 700), width=c.uniform(100, 200), pitch=c.uniform(0.17, 1.7)
    ),
    "pyramid": lambda c: Pyramid(length=200, width=c.uniform(150, 260), rise=c.uniform(30, 90)),
    "planes": lambda c: as_given(surfaces(hip_roof(c.randrange(100)))),
    "walls": walled,
}  # fmt: skip


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("seed", range(4))
def test_a_roof_of_each_form_with_openings_gives_no_false_alarm(form, seed):
    chance = Random(f"{form} {seed}")
    roof = FORMS[form](chance)
    openings = some_openings(chance, surfaces(roof).planes)
    planned = plan(Job(roof=roof, openings=openings))
    held_against_its_findings(planned)
    one_dab_forgotten_is_missed(planned)


CLOSED = Valleying(method="closed_cut")


@pytest.mark.parametrize("seed", range(0, 16, 2))
def test_a_roof_with_closed_valleys_gives_no_false_alarm(seed):
    held_against_its_findings(plan(Job(roof=hip_roof(seed), valleying=CLOSED)))


# Some roofs with a valley that ends at a rake, which used to leak there: through a triangle of less
# than 1 in2, over a lap of 3.998 in (the fourth), by nails 0.03 in too near (the last).
@pytest.mark.parametrize("seed", [27, 64, 84, 320, 5001, 8012])
def test_a_closed_valley_that_ends_at_a_rake_keeps_water_out(seed):
    planned = plan(Job(roof=mixed_roof(seed), valleying=CLOSED))
    found = audit(planned)
    assert {one.question for one in found.breaches} <= {"shingles.joints"}
    assert "valley.closed_foot" not in {one.rule for one in planned.findings}


def test_joints_that_only_the_covered_part_of_a_course_has_keep_their_distance():
    # Beside a wall above a valley: 15/16 in from a joint of the next course, and not stated.
    planned = plan(Job(roof=stepped_roof(9)))
    held_against_its_findings(planned)
    assert audit(planned).sheds_water == (planned.shingles.least_clearance >= LEAST_CLEARANCE)


# An eave at the side of a plane, higher than its other one: 0 is where the plane goes on below it.
def test_the_starter_of_a_higher_eave_ends_where_the_eave_does():
    planned = plan(Job(roof=mixed_roof(722)))
    held_against_its_findings(planned)
    lower, higher = (one for one in planned.starters if one.plane == "side 2")
    assert higher.butt > lower.butt
    assert higher.laid[-1].right == 0.0
    assert higher.laid[0].left < -100


# Found among 1,200 roofs more: a lower ridge that is all that valleys leave of the top of a plane,
# where whole strips lay without nails, and rows of underlayment over a second, higher eave.
@pytest.mark.parametrize("seed", [2024, 2081, 5038, 5047])
def test_a_plane_with_a_second_top_or_a_second_eave_gives_no_alarm(seed):
    held_against_its_findings(plan(Job(roof=stepped_roof(seed))))


# Two sides of a plane cross at the height of its corners, but for the last digit of a float: a part
# of some courses was lost between the two heights.
def test_a_crossing_at_the_height_of_a_corner_loses_no_part_of_a_course():
    held_against_its_findings(plan(Job(roof=hip_roof(8114))))


# Above a wall that ends at the top of an open valley more of the metal shows than beside it.
def test_metal_of_a_valley_goes_on_above_a_wall_that_ends_at_its_top():
    held_against_its_findings(plan(Job(roof=mixed_roof(5033))))


def test_a_nail_over_the_edge_of_a_flat_valley_is_covered():
    # The last piece of a starter begins at the valley, 1/8 in below where its nails used to go.
    found = audit(plan(Job(roof=stepped_roof(208))))
    [covered] = [one for one in found.margins if one.question == "shingles.nails_covered"]
    assert covered.value.value >= covered.limit.value


@pytest.mark.parametrize("seed", range(150, 180, 4))
def test_a_closed_valley_that_leaks_at_its_foot_is_found(seed):
    try:
        planned = plan(Job(roof=stepped_roof(seed), valleying=CLOSED))
    except Refused:
        pytest.skip("drawn at random, it does not close")
    held_against_its_findings(planned)
