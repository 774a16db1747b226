"""Every rule of the list on both sides of its limit: none without a roof or plan that keeps it just
so, and one that just breaks it; none whose number cures nothing.

Rules that findings check are mostly cases of `test_findings`. Those that a refusal or the audit
checks, and two that no single choice breaks, are here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from roofing_core import Job, Refused, audit, finished, plan
from roofing_core.job.findings import findings
from roofing_core.ruling.listing import RULES
from roofing_core.site.ventilation import vent_area
from roofing_core.site.wind import fastest_held
from tests.auditing.injuries import INJURIES
from tests.job.changing import at, changed
from tests.job.test_findings import CASES, NOT_CURED, found, named

#: Whether a plan that just keeps a rule breaks it, and whether one that just does not.
Sides = tuple[bool, bool]


def refused(job: Job, because: str) -> bool:
    """Tell whether a job is refused for a reason."""
    try:
        plan(job)
    except Refused as refusal:
        return because in str(refusal)
    return False


def of_the_headlap(clean: Job) -> Sides:
    """13 1/4 in less twice 5 5/8 in leaves 2 in; 1/16 in more in sight leaves 1 7/8 in."""
    high, least = clean.shingle.height, RULES["shingles.headlap"].limit
    sides = (changed(clean, shingle__exposure=shows) for shows in (5.625, 5.6875))
    kept, broken = (
        (
            refused(job, "of headlap"),
            RULES["shingles.headlap"].kept_by(high - 2 * job.shingle.exposure),
        )
        for job in sides
    )
    assert (kept[1], broken[1]) == (True, False)
    assert clean.shingle.height - 2 * 5.625 == least
    return kept[0], broken[0]


def of_the_least_pitch(clean: Job) -> Sides:
    """2:12, and a hair below it."""
    limit = RULES["shingles.least_pitch"].limit
    kept, broken = (
        refused(changed(clean, roof__pitch=pitch), "2:12 or more") for pitch in (limit, 1.99 / 12)
    )
    return kept, broken


def of_the_order_of_metal(clean: Job) -> Sides:
    """Rake metal over the underlayment, as a plan has it; then one edge the other way."""
    whole = finished(plan(clean))
    spoilt = INJURIES["nail rake metal under the underlayment"].does(whole)
    rule = RULES["metal.order"]
    kept, broken = (
        sum(one.breaches for one in audit(one_plan).asked if one.question == "layers.order")
        for one_plan in (whole, spoilt)
    )
    assert broken == 1
    return not rule.kept_by(kept), not rule.kept_by(broken)


def of_the_nails_of_a_strip(clean: Job) -> Sides:
    """Four nails; then three, which no choice leaves: the layout is spoilt by hand."""
    laid = plan(clean)
    assert laid.shingles.nails_per_strip == RULES["nails.per_strip"].limit
    spoilt = replace(laid, shingles=replace(laid.shingles, nails_per_strip=3))
    kept, broken = (
        any(one.rule == "nails.per_strip" for one in findings(one_plan, laid.order, laid.weight))
        for one_plan in (laid, spoilt)
    )
    return kept, broken


def of_the_dead_load(clean: Job) -> Sides:
    """As heavy as its designer allows, and a hundredth of a pound a square foot heavier."""
    weight = plan(clean).weight.per_plan_area
    kept, broken = (
        bool(found(plan(changed(clean, loading__dead_load_allowed=allowed)), "load.dead", "deck"))
        for allowed in (weight, weight - 0.01)
    )
    return kept, broken


OTHERWISE: Mapping[str, Callable[[Job], Sides]] = {
    "shingles.headlap": of_the_headlap,
    "shingles.least_pitch": of_the_least_pitch,
    "metal.order": of_the_order_of_metal,
    "nails.per_strip": of_the_nails_of_a_strip,
    "load.dead": of_the_dead_load,
}


@pytest.mark.parametrize("code", RULES)
def test_every_rule_has_both_sides(code):
    # A rule without a case fails here, and so does a case of a rule that is not listed.
    cases = [case for case in CASES if case.rule == code]
    assert bool(cases) != (code in OTHERWISE)
    assert {case.rule for case in CASES} | set(OTHERWISE) == set(RULES)


@pytest.mark.parametrize("code", OTHERWISE)
def test_a_rule_is_kept_on_one_side_and_broken_on_the_other(code, clean):
    assert OTHERWISE[code](clean) == (False, True)


#: What comes in steps: nails to a strip or piece, and whether a slope is steep at all.
IN_STEPS = {"wind.nails", "pieces.nails"}


@pytest.mark.parametrize("case", CASES, ids=named)
def test_the_breach_of_a_case_is_close_to_the_limit(case):
    # 1/16 in, or 5 %; where things are counted, one.
    unit, off = RULES[case.rule].unit, abs(case.value - case.limit)
    near = 1 if unit == "count" else max(0.0626, 0.05 * abs(case.limit))
    by_pitch = "roof__pitch" in case.bad and case.rule.startswith("ice_barrier")
    assert off <= near or case.rule in IN_STEPS or by_pitch


#: Cures that name a number which no field of a job takes.
TOLD = {
    # The plan does it by itself.
    "ice_barrier.steep_reach": lambda clean: (
        plan(changed(clean, roof__pitch=8 / 12, underlaying__ice_barrier=True)).ice_barrier.reach
        >= RULES["ice_barrier.steep_reach"].limit
    ),
    # No choice leaves fewer, and what the cure names is the good side.
    "nails.per_strip": lambda clean: not OTHERWISE["nails.per_strip"](clean)[0],
    "shingles.headlap": lambda clean: not OTHERWISE["shingles.headlap"](clean)[0],
    "shingles.least_pitch": lambda clean: not OTHERWISE["shingles.least_pitch"](clean)[0],
}


def test_every_cure_that_names_a_number_is_tried():
    # `test_findings` writes the changes of every case into its job and looks again.
    numbers = {code for code, rule in RULES.items() if "{}" in rule.cure}
    tried = {case.rule for case in CASES} - NOT_CURED
    assert numbers - tried == set(TOLD)


@pytest.mark.parametrize("code", TOLD)
def test_a_number_that_no_field_takes_holds_all_the_same(code, clean):
    assert TOLD[code](clean)


#: Rules whose limit the job sets: the number that is listed is that of the default materials and
#: choices, or what the list says it is.
LISTED: Mapping[str, Callable[[Job], float]] = {
    "starter.height": lambda job: job.shingle.exposure - job.coursing.course_past_starter,
    "starter.offset": lambda job: at(job, "coursing.minimum_clearance"),
    "joints.clearance": lambda job: at(job, "coursing.minimum_clearance"),
    "pieces.end_piece": lambda job: at(job, "coursing.minimum_end_piece"),
    "caps.cover": lambda job: at(job, "metalwork.nail_cover"),
    "metal.ridge_cover": lambda job: at(job, "metalwork.nail_cover"),
    "metal.foot_cover": lambda job: at(job, "metalwork.nail_cover"),
    # Half of a cap of 12 in.
    "nails.bare": lambda _: 12 / 2,
    # The fastest of class D; 1,500 ft2 at 1/150.
    "wind.class": lambda _: fastest_held("D", "unknown"),
    "vents.area": lambda _: vent_area(1500 * 144, ratio="1/150"),
    # HUD Residential Structural Design Guide, table 3.2, as restated: 15 lb/ft2 for light roofs of
    # panels, shingles and a ceiling.
    "load.dead": lambda _: 15.0,
}


def test_a_limit_that_the_job_sets_is_listed_as_by_default(shed):
    set_by_the_job = {
        code
        for code, rule in RULES.items()
        if "The limit is" in rule.applies or "as listed" in rule.applies
    }
    assert set_by_the_job == set(LISTED)
    for code, default in LISTED.items():
        assert RULES[code].limit == pytest.approx(default(shed), rel=1e-12), code
