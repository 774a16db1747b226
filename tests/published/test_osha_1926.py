"""29 CFR 1926, subparts L, M and X, as restated: what the cautions say and when.

500(b): a steep roof is steeper than 4 in 12. 501(b)(13): on homes, protection at 6 ft or more above
a lower level, as the federal administration restates it; (b)(10) on slopes of 4 in 12 or less,
(b)(11) on steeper ones. 1053(b)(1): ladders 3 ft above the landing; (b)(5)(i): the foot out by a
quarter of the working length; (b)(12): none that conducts near live lines. 451(f)(6), as the state
of Washington restates it: 10 ft from lines of 300 V to 50 kV, more above that. 502(d)(20): prompt
rescue.
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


#: What each caution cites, with all that is known of the work and a steep roof.
CITED = {
    "steep roof": ("1926.500(b)", "501(b)(11)"),
    "lifting": ("NIOSH publication 94-110",),
    "falls": ("1926.501(b)(13)", "(11)"),
    "ladders": ("1926.1053(b)(1)", "(5)(i)"),
    "overhead lines": ("1926.451(f)(6)", "NIOSH publication 89-110", "1926.1053(b)(12)"),
    "nail guns": ("NIOSH publication 2011-202",),
    "hot asphalt": ("NIOSH publication 2003-107",),
    "heat": ("Water. Rest. Shade.",),
    "cold": ("Winter Weather",),
    "working alone": ("1926.502(d)(20)", "bulletin of 2004"),
    "wet decks": ("common practice",),
    "sharp edges": ("common practice",),
    "rules and instructions": ("limits of this calculation",),
}


def test_each_caution_cites_where_it_is_published():
    all_of_it = (
        Working(power_lines="yes", nail_gun="yes", hot_asphalt="yes", alone="yes", eave_height=240),
        Working(season="hot"),
        Working(season="cold"),
    )
    given = {
        one.about: one.source
        for working in reversed(all_of_it)
        for one in cautions(5 / 12, heaviest=80, lifting_limit=51, working=working)
    }
    assert set(given) == set(CITED)
    for about, places in CITED.items():
        assert all(place in given[about] for place in places), about


def test_low_slopes_cite_their_own_paragraph():
    (falls,) = (
        one.source for one in cautions(4 / 12, heaviest=1, lifting_limit=51) if one.about == "falls"
    )
    assert "(b)(10)" in falls
    assert "(11)" not in falls


def test_ten_feet_from_overhead_lines():
    for lines in ("yes", "unknown"):
        working = Working(power_lines=lines)
        (said,) = (
            one.says
            for one in cautions(0.25, heaviest=1, lifting_limit=51, working=working)
            if one.about == "overhead lines"
        )
        assert "10 ft away" in said.written()
        assert "3048 mm (10 ft) away" in said.written("metric")
