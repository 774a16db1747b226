"""Cautions: which the job brings, on both sides of each limit, and that each has its source."""

from __future__ import annotations

from dataclasses import fields
from typing import Any, get_args, get_type_hints

import pytest

from roofing_core import Refused, Working, lifting_limit, plan
from roofing_core.job.cautions import cautions
from tests.job.changing import changed

ALWAYS = {
    "falls", "ladders", "overhead lines", "nail guns", "heat", "cold", "wet decks", "working alone",
    "sharp edges", "rules and instructions",
}  # fmt: skip


@pytest.mark.parametrize(
    ("rise", "steep"), [(2, False), (4, False), (4.01, True), (12, True)]
)  # fmt: skip
def test_steep_is_steeper_than_4_in_12(rise, steep):
    # 29 CFR 1926.500(b): "a roof having a slope greater than 4 in 12".
    given = cautions(rise / 12, heaviest=10, lifting_limit=51)
    assert (given[0].about == "steep roof") is steep
    assert {one.about for one in given} == ALWAYS | ({"steep roof"} if steep else set())


def test_a_4_in_12_roof_measured_in_millimetres_is_not_steep(clean):
    # Rise and run of 1 to 3 in whole millimetres, whose quotient is a third up to float dust.
    for rise in range(300, 1500):
        job = changed(
            clean, roof__pitch=None, roof__slope_length=None,
            roof__rise=rise * 10 / 254, roof__run=3 * rise * 10 / 254,
        )  # fmt: skip
        pitch = job.roof.rise / job.roof.run
        about = [one.about for one in cautions(pitch, heaviest=10, lifting_limit=51)]
        assert "steep roof" not in about, f"rise {rise} mm"


@pytest.mark.parametrize(("heaviest", "too_much"), [(51.0, False), (51.1, True)])
def test_lifting_is_told_above_the_guideline(clean, heaviest, too_much):
    assert lifting_limit() == 51
    job = changed(clean, shingle__bundle_weight=heaviest)
    given = [one for one in plan(job).cautions if one.about == "lifting"]
    assert bool(given) is too_much


def test_the_caution_names_what_it_is_about(clean):
    job = changed(clean, roof__pitch=6 / 12, shingle__bundle_weight=65.0)
    first, second = plan(job).cautions[:2]
    assert first.says.written() == (
        "At 6:12 this is a steep roof: steeper than 4:12 asks for a guardrail with toeboards, a"
        " net, or a harness, whatever else you do."
    )
    assert second.says.written("us").startswith("The heaviest pack weighs 65 lb; the lifting")
    assert second.says.written("metric").startswith("The heaviest pack weighs 29.5 kg; the lifting")
    assert "stops at 23.1 kg" in second.says.written("metric")


def test_every_caution_says_where_it_is_published(clean):
    given = plan(changed(clean, roof__pitch=6 / 12)).cautions
    assert len({one.about for one in given}) == len(given)
    assert len({one.source for one in given}) > 4
    assert all(len(one.source) > 10 for one in given)
    assert all(one.says.written().endswith(".") for one in given)


def given_for(**facts: Any) -> dict[str, str]:
    """Give the cautions of a low-slope job whose work is as it is said, by what they are about."""
    found = cautions(3 / 12, heaviest=10, lifting_limit=51, working=Working(**facts))
    return {one.about: one.says.written() for one in found}


@pytest.mark.parametrize(
    ("facts", "brings", "leaves_out"),
    [
        ({"season": "hot"}, {"heat"}, {"cold"}),
        ({"season": "cold"}, {"cold"}, {"heat"}),
        ({"season": "mild"}, set(), {"heat", "cold"}),
        ({"power_lines": "no"}, set(), {"overhead lines"}),
        ({"power_lines": "yes"}, {"overhead lines"}, set()),
        ({"nail_gun": "no"}, set(), {"nail guns"}),
        ({"nail_gun": "yes"}, {"nail guns"}, set()),
        ({"hot_asphalt": "yes"}, {"hot asphalt"}, set()),
        ({"hot_asphalt": "no"}, set(), {"hot asphalt"}),
        ({"alone": "no"}, set(), {"working alone"}),
        ({"alone": "yes"}, {"working alone"}, set()),
    ],
)  # fmt: skip
def test_what_is_known_of_the_work_chooses_the_cautions(facts, brings, leaves_out):
    assert set(given_for(**facts)) == ALWAYS - leaves_out | brings


#: Values of a choice that mean the same: what is not known of a nail gun is taken for one, and of
#: hot asphalt for none.
ALIKE = {("nail_gun", "yes"), ("hot_asphalt", "no")}


def test_each_value_of_each_choice_has_an_effect_of_its_own():
    hints = get_type_hints(Working)
    words = {field.name: get_args(hints[field.name]) for field in fields(Working)}
    assert {name for name, values in words.items() if "unknown" not in values} == {"eave_height"}
    for name, values in words.items():
        told = {
            value: str(sorted(given_for(**{name: value}).items()))
            for value in (values if name != "eave_height" else (0.0, 71.9, 72.0, 120.0))
        }
        alike = sum(one == name for one, _ in ALIKE)
        assert len(set(told.values())) == len(told) - alike, name
    for name, value in ALIKE:
        assert given_for(**{name: value}) == given_for(**{name: "unknown"})


def test_what_is_said_to_be_there_is_told_more_sharply():
    usual = given_for()
    for fact, about, word in (
        ("power_lines", "overhead lines", "no metal ladder"),
        ("alone", "working alone", "get you down"),
    ):  # fmt: skip
        sharper = given_for(**{fact: "yes"})
        assert word in sharper[about]
        assert word not in usual[about]


# 29 CFR 1926.501(b): 6 ft or more above a lower level.
@pytest.mark.parametrize(("up", "asked"), [(71.9, False), (72.0, True), (240.0, True)])
def test_from_6_ft_on_protection_is_asked_for(up, asked):
    said = given_for(eave_height=up)["falls"]
    assert ("asks for protection, all the time" in said) is asked
    assert "can kill" in given_for()["falls"]
    # 501(b)(10): on a slope of 4:12 or less also a warning line with another measure.
    assert ("warning line" in said) is asked
    steep = cautions(5 / 12, heaviest=1, lifting_limit=51, working=Working(eave_height=240))
    assert not any("warning line" in one.says.written() for one in steep)


def test_the_ladder_to_an_eave_whose_height_is_known():
    # 10 ft up: 120 / sqrt(15/16) is 123.94 in along the rails, a quarter of it 30.98 in; to 3 ft
    # above 156 / 0.96825 = 161.12 in of rail: 31 in, and 13 ft 5 1/8 in, to the nearest 1/16.
    said = given_for(eave_height=120)["ladders"]
    assert "To an eave 10 ft up the foot stands 31 in out" in said
    assert "the rails are 13 ft 5 1/8 in long or more" in said
    assert "To an eave" not in given_for()["ladders"]


def test_a_plan_carries_the_cautions_of_its_work(clean):
    job = changed(
        clean, working__alone="yes", working__season="cold", working__nail_gun="no",
        working__power_lines="no", working__hot_asphalt="yes", working__eave_height=100.0,
    )  # fmt: skip
    about = [one.about for one in plan(job).cautions]
    assert about == [
        "steep roof", "lifting", "falls", "ladders", "hot asphalt", "cold", "wet decks",
        "working alone", "sharp edges", "rules and instructions",
    ]  # fmt: skip


def test_a_height_that_cannot_be_is_refused(clean):
    with pytest.raises(Refused) as refusal:
        plan(changed(clean, working__eave_height=-1.0))
    assert [fault.at for fault in refusal.value.faults] == [("working", "eave_height")]
