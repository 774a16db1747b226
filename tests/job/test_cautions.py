"""Cautions: which the job brings, on both sides of each limit, and that each has its source."""

from __future__ import annotations

import pytest

from roofing_core import lifting_limit, plan
from roofing_core.job.cautions import cautions
from tests.job.changing import changed

ALWAYS = {
    "falls", "ladders", "overhead lines", "nail guns", "heat", "wet decks", "working alone",
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
