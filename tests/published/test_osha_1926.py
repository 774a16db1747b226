"""29 CFR 1926, subparts M and X, as restated: what the cautions say and when.

500(b): a steep roof is steeper than 4 in 12. 501(b): protection at 6 ft or more. 1053(b): ladders
3 ft above the landing, the foot out by a quarter of the working length.
"""

from __future__ import annotations

from math import radians, tan

import pytest

from roofing_core import Working
from roofing_core.job.cautions import cautions


def _about(pitch: float) -> dict[str, str]:
    given = cautions(pitch, heaviest=10, lifting_limit=51)
    return {caution.about: caution.says.written() for caution in given}


@pytest.mark.parametrize(("rise", "steep"), [(3, False), (4, False), (4.01, True), (12, True)])
def test_steeper_than_4_in_12_is_steep(rise, steep):
    assert ("steep roof" in _about(rise / 12)) is steep


def test_what_is_said_of_a_steep_roof():
    said = _about(5 / 12)["steep roof"]
    for means in ("steeper than 4:12", "guardrail with toeboards", "net", "harness"):
        assert means in said


@pytest.mark.parametrize(
    ("about", "figure"),
    [("falls", "6 ft or more"), ("ladders", "a quarter of its working length"),
     ("ladders", "3 ft above")],
)  # fmt: skip
def test_figures_in_the_cautions(about, figure):
    assert figure in _about(3 / 12)[about]


# 1053(b)(5)(i): "approximately one-quarter of the working length": 75.52 degrees.
def test_a_ladder_stands_at_75_degrees():
    said = {
        one.about: one.says.written()
        for one in cautions(0.25, heaviest=1, lifting_limit=51, working=Working(eave_height=192))
    }["ladders"]
    # 16 ft up: out by 192 / tan(75.52 deg) = 49.57 in.
    assert 192 / tan(radians(75.52)) == pytest.approx(49.57, abs=0.02)
    assert "the foot stands 4 ft 1 9/16 in out" in said
