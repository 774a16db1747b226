"""The list of rules: complete by code, edition and severity, each with a source that is honest."""

from __future__ import annotations

from collections import Counter
from typing import get_args

import pytest

from roofing_core import Refused, audit, finished, plan, rules
from roofing_core.measures.units import SHOWN
from roofing_core.ruling.listing import RULES
from roofing_core.ruling.rule import CODE, EDITION, EDITIONS, Severity, told
from tests.auditing.injuries import INJURIES

#: What a list of rules covers at the least: what each is about, by the start of its code.
COVERED = {
    "shingles.least_pitch", "underlayment.single_layer_pitch", "underlayment.head_lap",
    "underlayment.end_lap", "ice_barrier.inside_wall", "metal.lap", "metal.below_deck",
    "metal.deck_leg", "metal.nail_spacing", "metal.order", "nails.per_strip", "nails.length",
    "shingles.steep_pitch", "joints.clearance", "shingles.headlap", "pieces.end_piece",
    "starter.offset", "metal.ridge_cover", "metal.ridge_beads", "metal.valley_width",
    "flashing.step_lap", "metal.wall_leg", "flashing.cricket",
}  # fmt: skip


@pytest.mark.parametrize("edition", EDITIONS)
def test_an_edition_lists_each_rule_once_with_a_source_of_its_own(edition):
    listed = rules(edition)
    assert listed.edition == edition
    codes = [one.rule for one in listed.rules]
    assert len(set(codes)) == len(codes)
    missing = {"ice_barrier.steep_reach"} if edition == "2024" else set()
    assert set(RULES) - set(codes) == missing
    assert set(codes) >= COVERED
    for one in listed.rules:
        if one.source.title == CODE:
            assert one.source.edition == edition
            assert one.cited.startswith(f"International Residential Code, {edition}, ")
        for text in (one.asks.written(), one.applies.written(), one.cure.written()):
            assert text.endswith(".")
            assert "{" not in text
        assert one.limit.unit in SHOWN


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_limit_stands_in_what_is_asked(system):
    for one in rules().rules:
        assert told(one.limit).written(system) in one.asks.written(system), one.rule


def test_what_the_audit_checks_is_among_its_injuries(shed):
    # A plan lays the metal in the right order; one that was edited may not.
    assert [one.id for one in RULES.values() if one.checked == "audit"] == ["metal.order"]
    whole = finished(plan(shed))
    assert audit(whole).sheds_water
    for does in ("nail rake metal under the underlayment",
                 "nail eave metal over the underlayment"):  # fmt: skip
        found = audit(INJURIES[does].does(whole))
        assert [one.question for one in found.breaches] == ["layers.order"]


def test_sources_say_how_they_are_known():
    known = {one.rule: one.source.known for one in rules(EDITION).rules}
    assert known["metal.lap"] == "read"
    assert known["underlayment.head_lap"] == "restated"
    assert known["joints.clearance"] == "practice"
    told = {"restated": "as restated", "from_memory": "from memory", "practice": "common practice"}
    for one in rules("2024").rules:
        if one.source.known in told:
            assert told[one.source.known] in one.cited
        else:
            assert "memory" not in one.cited


def test_only_the_edition_of_2018_was_read():
    for edition in EDITIONS:
        read = [
            one.rule
            for one in rules(edition).rules
            if one.source.title == CODE and one.source.known == "read"
        ]
        assert bool(read) is (edition == "2018")


def test_a_list_can_be_narrowed():
    every = rules("2021")
    by_severity = {severity: rules("2021", severity=severity).rules for severity in
                   get_args(Severity)}  # fmt: skip
    assert Counter(one for some in by_severity.values() for one in some) == Counter(every.rules)
    assert all(len(some) >= 2 for some in by_severity.values())
    (one,) = rules("2021", rule="metal.lap").rules
    assert (one.rule, one.limit.value, one.bound) == ("metal.lap", 2, "at_least")
    assert rules("2021", severity="worth_knowing", rule="metal.lap").rules == ()


def test_local_code_governs():
    assert "Local code governs" in rules().governs
    assert "licensed" in rules().governs


def test_what_is_not_known_is_refused_together():
    with pytest.raises(Refused) as refusal:
        rules("1999", severity="bad", rule="no.such")  # type: ignore[arg-type]
    assert [fault.at for fault in refusal.value.faults] == [
        ("edition",), ("severity",), ("rule",),
    ]  # fmt: skip
    assert "such as metal.lap" in str(refusal.value)
