"""No text for metric readers holds a US unit alone: what is published in one stands beside.

What people may write is shown in both in refusals ("such as 14 ft, 4.27 m"), and is not meant here.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace

import pytest

from roofing_core import (
    Working,
    audit,
    deck_load,
    finished,
    plan,
    rules,
    stacked_load,
    ventilation,
    wind_class,
)
from roofing_core.measures.sentences import Sentence
from tests.job.changing import changed
from tests.job.test_findings import CASES, named
from tests.laws.us_units import us_alone

#: A figure or word as a text may hold it, and what of it is in US units alone.
TEXTS = [
    ("reach 3 ft above the eave", ["3 ft"]), ("reach 914 mm (3 ft) above the eave", []),
    ("Above 85 F shingles", ["85 F"]), ("Above 29 C (85 F) shingles", []),
    ("a roof over 60 ft high", ["60 ft"]), ("wind of 140 mph or more", ["140 mph"]),
    ("wind of 62.6 m/s (140 mph) or more", []), ("1 1/2 in into the rafter", ["1 1/2 in"]),
    ("1,500 ft2 at 1/150", ["1,500 ft2"]), ("a cup (8 fl oz)", ["8 fl oz"]),
    ("4 nails in each strip", []), ("never fewer than 2 in a piece", []), ("at 4 in 12", []),
    ("51 lb for one person", ["51 lb"]), ("23.1 kg for one person", []), ("12 gauge", []),
    ("courses 1 to 19", []), ("33.3 lb/ft2", ["33.3 lb/ft2"]), ("3 inches", ["3 inches"]),
]  # fmt: skip


@pytest.mark.parametrize(("text", "alone"), TEXTS)
def test_us_units_are_told_from_words(text, alone):
    assert us_alone(text) == alone


def metric_texts(value: object) -> Iterator[str]:
    """Give every text in a tree of dataclasses and tuples as metric readers see it."""
    if isinstance(value, Sentence):
        yield value.written("metric")
    elif isinstance(value, str):
        yield value
    elif is_dataclass(value):
        for field in fields(value):
            yield from metric_texts(getattr(value, field.name))
    elif isinstance(value, tuple):
        for one in value:
            yield from metric_texts(one)


def assert_metric(value: object) -> None:
    """Hold every text of a result to metric."""
    texts = set(metric_texts(value))
    assert texts
    assert [text for text in texts if us_alone(text)] == []


@pytest.mark.parametrize("case", CASES, ids=named)
def test_plans_with_every_finding(case, clean):
    assert_metric(plan(changed(clean, **case.roof | case.bad)))


@pytest.mark.parametrize(
    "working",
    [
        Working(),
        Working(power_lines="yes", alone="yes", hot_asphalt="yes", season="hot", eave_height=71),
        Working(power_lines="no", season="cold", eave_height=240),
    ],
)
@pytest.mark.parametrize("pitch", [3 / 12, 9 / 12])
def test_cautions(clean, working, pitch):
    job = changed(clean, roof__pitch=pitch, working=working, shingle__bundle_weight=80.0)
    assert_metric(plan(job).cautions)


@pytest.mark.parametrize("edition", ["2015", "2018", "2021", "2024"])
def test_rules(edition):
    assert_metric(rules(edition))


def test_answers_about_the_place():
    for speed in (100, 150, 250):
        assert_metric(wind_class(speed, roof_height=800, exposure="D", speed_up=True))
    for ratio in ("1/150", "1/300"):
        assert_metric(ventilation(1500 * 144, ratio=ratio))
    assert_metric(deck_load(5 / 12, layers=3))
    assert_metric(stacked_load(5, pitch=5 / 12))


def test_audits(shed):
    whole = finished(plan(shed))
    assert_metric(audit(whole))
    spoilt = replace(whole, courses=tuple(replace(one, laid=()) for one in whole.courses))
    assert_metric(audit(spoilt))
