"""The audit against the findings: two judgements of one plan, made by code that shares nothing.

The findings compare what was chosen with the rules, the audit looks at what was laid.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import AuditLimits, Job, SingleSlope, Underlaying, audit, material, plan
from roofing_core.materials import Shingle
from tests.recount.jobs import IN_64THS, IN_TENTHS_OF_MM, Drawn, drawn

#: The finding that tells of what breaches a question, and the other way round.
BOTH_WAYS = {
    "shingles.joints": {"joints.clearance", "starter.offset"},
    "shingles.layers": {"starter.height"},
    "underlayment.end_lap": {"underlayment.end_lap"},
    "metal.lap": {"metal.lap", "flashing.lap"},
}

#: The finding looks at the lap that was chosen, also where no row laps another by as little.
IF_FOUND = {
    "underlayment.head_lap": "underlayment.head_lap",
    "underlayment.end_laps_apart": "underlayment.end_lap_stagger",
    "shingles.nailed": "pieces.nails",
}

#: Nothing is asked of these when a plan is made: a nail at the very edge of the next course, or
#: under a joint of it.
UNASKED = {"shingles.nails_covered", "shingles.nails_clear"}

#: What a nail that is not covered asks for, and a plan that takes it for covered has not; so it
#: does of one that it is told to set on the very edge of the deck.
OF_BARE_NAILS = {"sealing.dabs", "sealing.bedding"}


def held_against_each_other(job: Drawn) -> None:
    """Hold the questions that a plan breaches against its findings."""
    planned = plan(job.job())
    rules = {found.rule for found in planned.findings}
    breached = {one.question for one in audit(planned).breaches}
    for question, asked in BOTH_WAYS.items():
        assert (question in breached) == bool(asked & rules), question
    for question, rule in IF_FOUND.items():
        assert question not in breached or rule in rules, question
    on_the_edge = planned.choices.coursing.edge_distance < AuditLimits().nail_cover
    bare = OF_BARE_NAILS if on_the_edge or "shingles.nails_covered" in breached else set()
    assert breached <= {*BOTH_WAYS, *IF_FOUND, *UNASKED, *bare}


@given(drawn(inch=IN_64THS))
def test_what_is_breached_was_found_on_a_random_plan(job):
    held_against_each_other(job)


@given(drawn(inch=IN_TENTHS_OF_MM))
def test_what_is_breached_was_found_on_a_random_plan_in_millimetres(job):
    held_against_each_other(job)


@given(
    eave_length=st.floats(36, 900),
    slope_length=st.floats(36, 480),
    rise=st.sampled_from([2, 3, 4, 6, 9, 12, 20]),
    shingle=st.sampled_from(["metric_strip", "metric_three_tab", "inch_three_tab"]),
    ice_barrier=st.booleans(),
)
def test_a_plan_with_the_trades_own_sizes_sheds_water(
    eave_length, slope_length, rise, shingle, ice_barrier
):
    roof = SingleSlope(
        eave_length=eave_length, slope_length=slope_length, pitch=rise / 12, eave_overhang=12
    )
    job = Job(
        roof=roof,
        shingle=material(Shingle, shingle),
        underlaying=Underlaying(ice_barrier=ice_barrier),
    )
    found = audit(plan(job))
    assert found.sheds_water, [one.says.written() for one in found.breaches]
    assert found.breaches_found == 0


# 12 in strips exposed 5 in: 12 - 2 * 5. Six trims by 6 in: 6 in from joint to joint, and the
# starter's 4 in. Nail zone 5 5/8 to 6 5/8 in: its middle lies 1 1/8 in above the exposure.
HEADLAP, CLEARANCE, COVER = 2.0, 4.0, 1.125


def test_the_margins_of_inch_shingles_are_those_of_their_sizes(shed):
    job = replace(shed, shingle=material(Shingle, "inch_three_tab"))
    margins = {one.question: one.value.value for one in audit(plan(job)).margins}
    assert margins["shingles.headlap"] == pytest.approx(HEADLAP)
    assert margins["shingles.joints"] == pytest.approx(CLEARANCE)
    assert margins["shingles.nails_covered"] == pytest.approx(COVER)
