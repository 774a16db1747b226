"""Every way to break a good plan is caught, and named: what is wrong, and where."""

from __future__ import annotations

import pytest

from roofing_core.auditing.audit import audit
from tests.auditing import injuries
from tests.auditing.roof_injuries import ROOF_INJURIES

INJURIES = injuries.INJURIES | ROOF_INJURIES


@pytest.mark.parametrize("name", ["shed", "long", "cold", "house", "closed", "barn", "porch"])
def test_the_plans_to_be_broken_are_good(good, name):
    found = audit(good[name])
    assert found.sheds_water
    assert (found.breaches, found.breaches_found) == ((), 0)
    assert found.says.written().startswith("The roof sheds water as it is planned")


@pytest.mark.parametrize("does", INJURIES)
def test_an_injury_is_caught_and_named(good, does):
    injury = INJURIES[does]
    whole = good[injury.on]
    injured = injury.does(whole)
    assert injured != whole
    found = audit(injured)
    assert not found.sheds_water
    assert found.breaches_found >= len(found.breaches) > 0
    [first, *_] = [one for one in found.breaches if one.question == injury.question]
    place = first.place
    assert (place.part, place.number) == (injury.part, injury.number)
    assert place.piece == injury.piece or not injury.piece
    assert first.says.written().endswith(".")
    [asked] = [one for one in found.asked if one.question == injury.question]
    assert asked.breaches > 0


def test_there_are_more_than_a_hundred_injuries_and_every_question_catches_one(good):
    assert len(INJURIES) > 100
    assert len(ROOF_INJURIES) > 45
    caught = {injury.question for injury in INJURIES.values()}
    assert caught == {asked.question for asked in audit(good["shed"]).asked}
