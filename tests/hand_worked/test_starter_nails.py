"""A nail of the starter in the line of a joint of the first course, worked out by hand.

A roof 40 in wide, strips of 39 3/8 in that begin 1/4 in past the rake. The first course has one
joint, at 39 3/8 - 1/4 = 39 1/8 in. The first starter piece is cut by 4 in and ends at 35 1/8
in; the second is 4 7/8 in long on the deck. Of its strip's nails only the first lies there, so
that it takes one nail 1 in from either end: at 36 1/8 in, and at 40 - 1 = 39 in, which is 1/8
in from the joint. That one goes 1 in from the joint instead, to 38 1/8 in.
"""

from __future__ import annotations

from dataclasses import replace

from roofing_core import Job, SingleSlope, audit, finished, plan

NARROW = Job(roof=SingleSlope(eave_length=40, slope_length=112, pitch=5 / 12))
JOINT, BARE_NAIL = 39.125, 39.0


def test_the_nail_goes_an_inch_beside_the_joint():
    planned = plan(NARROW)
    assert planned.courses[0].joints == (JOINT,)
    assert planned.starter.joints == (35.125,)
    assert planned.starter.laid[1].nails == (36.125, JOINT - 1)
    assert audit(planned).sheds_water


def test_where_it_stood_the_audit_finds_it():
    laid = finished(plan(NARROW))
    [starter] = laid.starters
    first, second = starter.laid
    second = replace(second, nails=(36.125, BARE_NAIL))
    found = audit(replace(laid, starters=(replace(starter, laid=(first, second)),)))
    [breach] = found.breaches
    assert (breach.question, breach.place.part, breach.place.piece) == (
        "shingles.nails_clear", "starter", 2
    )  # fmt: skip
    assert breach.value.value == JOINT - BARE_NAIL
