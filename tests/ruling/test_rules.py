"""The list of rules: complete by code, edition and severity, each with a source that is honest."""

from __future__ import annotations

import re
from collections import Counter
from typing import get_args

import pytest

from roofing_core import Refused, audit, finished, plan, rules
from roofing_core.measures.units import SHOWN
from roofing_core.ruling.listing import RULES
from roofing_core.ruling.rule import CODE, EDITION, EDITIONS, Severity, told
from tests.auditing.injuries import INJURIES

#: What a list of rules covers at the least, and by which rules; each rule stands under one.
COVERED = {
    "slope limits": {"shingles.least_pitch", "shingles.steep_pitch"},
    "underlayment by slope": {"underlayment.single_layer_pitch"},
    "head and end laps": {
        "underlayment.head_lap", "underlayment.end_lap", "underlayment.end_lap_stagger",
        "wind.head_lap",
    },
    "ice barrier": {
        "ice_barrier.inside_wall", "ice_barrier.steep_reach", "ice_barrier.lap",
    },
    "drip edge: lap": {"metal.lap"},
    "drip edge: projection": {"metal.below_deck"},
    "drip edge: leg on the deck": {"metal.deck_leg"},
    "drip edge: fastening": {"metal.nail_spacing"},
    "drip edge: order with underlayment": {"metal.order"},
    "nails per shingle": {"nails.per_strip", "pieces.nails"},
    "nail length": {"nails.length", "nails.point"},
    "what nails are like": {"nails.shank", "nails.head", "nails.cap"},
    "high wind": {"wind.nails", "wind.lap_nails", "wind.field_nails"},
    "shingle wind class by design wind speed": {
        "wind.class", "wind.class_known", "wind.conditions",
    },
    "joint clearance": {"joints.clearance"},
    "headlap": {"shingles.headlap", "caps.headlap"},
    "end piece width": {"pieces.end_piece"},
    "starter offset": {"starter.offset", "starter.height"},
    "closing course nails under the metal": {
        "metal.ridge_cover", "metal.foot_cover", "caps.cover", "nails.bare", "courses.closing",
    },
    "ridge metal: lap and fastening": {"flashing.lap", "flashing.nail_spacing"},
    "ridge metal: sealing": {"metal.ridge_beads"},
    "ventilation": {"vents.area", "vents.least_high", "vents.most_high"},
    "deck load": {"load.dead", "load.layers"},
    "stacked bundles": {"load.stack"},
    "valley": {
        "metal.valley_width", "valley.lining_width", "valley.lap", "valley.nails",
        "valley.closed_foot", "valley.top",
    },
    "step and apron flashing": {"flashing.step_lap", "metal.wall_leg", "flashing.thickness"},
    "cricket": {"flashing.cricket"},
    "deck": {
        "deck.support_spacing", "deck.thickness", "deck.edge_spacing", "deck.field_spacing",
        "deck.tape",
    },
    "beside": {"caps.width", "courses.top_exposure", "order.spare_shingles"},
}  # fmt: skip


def test_every_rule_stands_under_what_it_covers():
    under = Counter(code for codes in COVERED.values() for code in codes)
    assert set(under) == set(RULES)
    assert set(under.values()) == {1}


@pytest.mark.parametrize("edition", EDITIONS)
def test_an_edition_lists_each_rule_once_with_a_source_of_its_own(edition):
    listed = rules(edition)
    assert listed.edition == edition
    codes = [one.rule for one in listed.rules]
    assert len(set(codes)) == len(codes)
    missing = {"ice_barrier.steep_reach"} if edition == "2024" else set()
    assert set(RULES) - set(codes) == missing
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
        asks = one.asks.written(system)
        none = one.limit.value == 0 and bool(re.search(r"\b(No|none)\b", asks))
        assert none or told(one.limit).written(system) in asks, one.rule


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
