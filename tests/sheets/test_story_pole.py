"""The story pole: marks from the eave, and strips that come out at full size."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from roofing_core.sheets.drawings.all import drawings
from roofing_core.sheets.story_pole import story_pole, story_pole_text
from tests.sheets.conftest import planned
from tests.sheets.reading import lines_of, texts_of
from tests.sheets.test_planes_to_scale import WRITTEN


def marks_of(name: str) -> dict[str, float]:
    plan, _ = planned(name)
    return {mark.says(): mark.height for mark in story_pole(plan, plan.planes[0]).marks}


def test_the_example_by_hand():
    marks = marks_of("shed")
    # Starter 1/4 in past the metal, first course 1/4 in past that, then every 5 5/8 in; tops 13 1/4
    # in above each butt: the first 13 in above the starter. The tops of 19 and 20 are trimmed.
    assert marks["starter"] == -0.25
    assert marks["eave metal"] == 0
    assert marks["top edge"] == 112
    for k in range(20):
        assert marks[f"butt {k + 1}"] == -0.5 + k * 5.625
    for k in range(18):
        assert marks[f"tops {k + 1}"] == 12.75 + k * 5.625
    assert len(marks) == 3 + 20 + 18


def test_marks_go_up_and_are_told_from_the_starter_too(drawn_plan):
    plan, _ = drawn_plan
    for plane in plan.planes:
        pole = story_pole(plan, plane)
        heights = [mark.height for mark in pole.marks]
        assert heights == sorted(heights)
        past = plan.choices.coursing.starter_past_metal
        assert {mark.above_starter - mark.height for mark in pole.marks} == {past}


def test_the_table_is_in_both_unit_systems():
    plan, _ = planned("shed")
    lines = story_pole_text(story_pole(plan, plan.planes[0])).splitlines()
    # 12 3/4 in are 323.85 mm, 13 in are 330.2 mm.
    (first,) = [line for line in lines if line.startswith("tops 1 ")]
    assert re.split(r"  +", first) == ["tops 1", "12 3/4 in", "324 mm", "13 in", "330 mm"]


@pytest.mark.parametrize("name", ["tiny", "shed", "metric"])
def test_strips_come_out_at_full_size(name):
    plan, system = planned(name)
    pages = drawings(plan, "story_pole", system=system)
    long = 8 * 25.4 if system == "us" else 200.0
    found = [mark for n, page in enumerate(pages) for mark in _marks(page.svg, 3 * n, long)]
    wanted = [mark.height * 25.4 for mark in story_pole(plan, plan.planes[0]).marks]
    lowest = min(found)
    measured = sorted({round(at - lowest, 1) for at in found})
    assert measured == pytest.approx(
        sorted({round(at - min(wanted), 1) for at in wanted}), abs=0.1 + WRITTEN
    )


def _marks(svg: str, before: int, long: float) -> list[float]:
    """Give where the marks stand on the pole, in mm from its lower end, all strips joined."""
    lines = [(a, b) for a, b, width, _ in lines_of(svg) if width == 0.4]
    sides = [(a, b) for a, b, width, _ in lines_of(svg) if width == 0.12 and a[0] == b[0]]
    strips = sorted({a[0] for a, b in sides if abs(b[1] - a[1]) == pytest.approx(long, abs=0.02)})
    foot = max(max(a[1], b[1]) for a, b in sides)
    lefts = strips[::2]
    return [
        (before + lefts.index(a[0])) * long + foot - a[1]
        for a, b in lines
        if a[1] == b[1] and a[0] in lefts
    ]


def test_there_are_lines_to_measure_before_use():
    plan, system = planned("shed")
    for page in drawings(plan, "story_pole", system=system):
        level = [b[0] - a[0] for a, b, width, _ in lines_of(page.svg) if a[1] == b[1]]
        for long, told in ((100.0, "100 mm"), (50.8, "2 in")):
            assert any(one == pytest.approx(long, abs=WRITTEN) for one in level)
            assert told in [text.text for text in texts_of(page.svg)]


def test_each_strip_says_what_it_joins():
    plan, _ = planned("shed")
    told = [
        text.text for page in drawings(plan, "story_pole") for text in texts_of(page.svg)
    ]  # fmt: skip
    # 112 in and an inch and a half below: 15 strips of 8 in.
    for k, following in pairwise(range(1, 16)):
        assert f"joins strip {following}" in told
        assert f"strip {following}, joins strip {k}" in told
    assert told.count("end of the pole") == 1
