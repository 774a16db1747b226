"""Sections: which layer goes over which, and how far each stands past the metal."""

from __future__ import annotations

import pytest

from roofing_core.sheets.drawings.section_layers import (
    capped_section,
    eave_section,
    rake_section,
    ridge_section,
)
from roofing_core.sheets.drawings.section_parts import Section, Strip
from roofing_core.sheets.drawings.sections import sections_drawing
from tests.sheets.conftest import planned
from tests.sheets.reading import lines_of, texts_of
from tests.sheets.test_planes_to_scale import WRITTEN, scale_of

#: With eave, rakes and a ridge, of one plane or shared.
ROOFS = ["shed", "tiny", "very wide", "steep", "metric", "2,000 pieces", "gable"]


@pytest.fixture(params=ROOFS)
def sections(request) -> list[Section]:
    plan, system = planned(request.param)
    plane = plan.planes[0]
    return [
        eave_section(plan, plane, system),
        rake_section(plan, plane, system),
        (capped_section if plan.caps else ridge_section)(plan, plane, system),
    ]


def above(strip: Strip, at: float) -> float:
    share = (at - strip.start) / (strip.end - strip.start)
    return strip.above_start + share * (strip.above_end - strip.above_start)


def test_what_is_laid_later_is_drawn_over_what_is_there(sections):
    for section in sections:
        for k, over in enumerate(section.strips):
            for under in section.strips[:k]:
                left, right = max(over.start, under.start), min(over.end, under.end)
                for at in (left, right) if right > left else ():
                    gap = above(over, at) - above(under, at)
                    assert gap >= under.thick - 1e-9, (section.title, over.says, under.says)


def test_every_layer_lies_within_its_picture(sections):
    for section in sections:
        for strip in section.strips:
            assert section.left <= strip.start < strip.end <= section.right


def test_eave_metal_goes_under_and_rake_metal_over_the_underlayment(sections):
    # IRC 2018, R905.2.8.5: drip edge under the underlayment at eaves, over it at rakes.
    eave, rake, _ = ([strip.look for strip in section.strips] for section in sections)
    assert eave.index("metal") < eave.index("sheet")
    assert rake.index("metal") > len(rake) - 1 - rake[::-1].index("sheet")


def test_overhangs_are_the_plans_own():
    plan, system = planned("shed")
    starts = {
        strip.says.partition(",")[0]: strip.start
        for strip in eave_section(plan, plan.planes[0], system).strips
    }
    # The defaults: underlayment and starter 1/4 in past the metal, the first course 1/2 in.
    assert starts["underlayment"] == -0.25
    assert starts["starter"] == -0.25
    assert starts["course 1"] == -0.5
    assert starts["eave metal: 2 1/2 in on the roof"] == 0


def test_lengths_are_to_scale_on_paper():
    plan, system = planned("shed")
    (page,) = sections_drawing(plan, system=system)
    scale = scale_of(page.svg)
    upright = [
        b[1] - a[1] for a, b, width, _ in lines_of(page.svg) if a[0] == b[0] and width == 0.7
    ]
    # Legs of 2, 2 and 3 in, and the thickness of the metal at their bend.
    wanted = [leg * 25.4 / scale + 0.7 for leg in (2, 2, 3)]
    assert upright == pytest.approx(wanted, abs=WRITTEN)


def test_the_ridge_metal_covers_the_closing_nails():
    plan, system = planned("shed")
    section = ridge_section(plan, plan.planes[0], system)
    metal = section.strips[-1]
    closing = [course.nail_line for course in plan.courses if not course.nailable]
    drawn = [nail.at for nail in section.nails]
    for nail in closing:
        assert nail in drawn
        assert metal.start < nail < metal.end


def test_caps_go_over_a_ridge_that_two_planes_share():
    plan, system = planned("gable")
    section = capped_section(plan, plan.planes[0], system)
    under, over = section.strips[-2:]
    # By hand: caps 13 1/8 in wide reach 6 9/16 in down each side; the slope is 100 in of run.
    top = 100 * 1.25**0.5
    assert under.start == over.start == pytest.approx(top - 6.5625)
    assert under.end == over.end == pytest.approx(top)
    assert all(strip.look == "shingle" for strip in (under, over))
    told = {
        one.text for page in sections_drawing(plan, system=system) for one in texts_of(page.svg)
    }
    assert "At a ridge that two planes share" in told
    assert "At the ridge" not in told


def test_a_section_shows_the_rows_of_its_own_plane():
    plan, system = planned("hip")
    section = eave_section(plan, plan.planes[0], system)
    own = [row for row in plan.underlayment.rows if row.plane == plan.planes[0].name]
    sheets = [strip for strip in section.strips if strip.look == "sheet"]
    assert len(sheets) == sum(row.lower < section.right for row in own) == 1


def test_sections_are_told_in_words():
    plan, system = planned("shed")
    (page,) = sections_drawing(plan, system=system)
    told = " ".join(text.text for text in texts_of(page.svg))
    for words in ("At the eave", "At the rake", "At the ridge", "starter, 1/4 in past",
                  "course 20, butt at 8 ft 10 3/8 in, 7 5/8 in off its"):  # fmt: skip
        assert words in told


def test_an_edge_that_a_roof_has_not_is_not_drawn():
    plan, system = planned("by hand")
    told = {
        one.text for page in sections_drawing(plan, system=system) for one in texts_of(page.svg)
    }
    assert "At the eave" in told
    assert "At the ridge" not in told
