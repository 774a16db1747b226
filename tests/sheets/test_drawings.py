"""Drawings of thirteen roofs: well-formed, in black and white, legible, and no text on another."""

from __future__ import annotations

import re
from typing import get_args

import pytest
from shapely import Polygon, STRtree

from roofing_core.sheets.drawings.all import DrawingKind, drawings
from roofing_core.sheets.drawings.paper import Drawing
from tests.sheets.reading import page_of, root_of, texts_of

#: 2.4 mm is 6.8 points; below 6 points small print begins (common practice, no published source).
SMALLEST = 2.2

#: ISO 216 and ANSI/ASME Y14.1, in mm; every drawing keeps 15 mm from the edges of both.
A4, LETTER = (210.0, 297.0), (215.9, 279.4)
MARGIN = 15.0


@pytest.fixture(params=get_args(DrawingKind))
def pages(request, drawn_plan) -> tuple[Drawing, ...]:
    planned, system = drawn_plan
    return drawings(planned, request.param, system=system)


def test_no_text_stands_on_another(pages):
    for page in pages:
        texts = texts_of(page.svg)
        boxes = [Polygon(text.corners) for text in texts]
        for one, other in STRtree(boxes).query(boxes, predicate="intersects").T:
            assert one == other or boxes[one].intersection(boxes[other]).area < 1e-3, (
                f"{page.title}: {texts[one].text!r} on {texts[other].text!r}"
            )


def test_every_text_is_on_the_paper_and_large_enough(pages):
    for page in pages:
        left, top, width, height = page_of(page.svg)
        for text in texts_of(page.svg):
            assert text.size >= SMALLEST
            for x, y in text.corners:
                assert left <= x <= left + width, text.text
                assert top <= y <= top + height, text.text


def test_every_drawing_has_room_on_a4_and_letter(pages):
    for page in pages:
        short, long = sorted((page.width, page.height))
        assert short <= min(A4[0], LETTER[0]) - 2 * MARGIN
        assert long <= min(A4[1], LETTER[1]) - 2 * MARGIN
        told = root_of(page.svg).attrib
        assert (told["width"], told["height"]) == (f"{page.width:g}mm", f"{page.height:g}mm")


def test_there_is_nothing_but_shapes_and_words_in_black_and_white(pages):
    for page in pages:
        root = root_of(page.svg)
        kinds = {element.tag.partition("}")[2] for element in root.iter()}
        assert kinds <= {"svg", "title", "desc", "path", "g", "text"}
        shades = {
            value
            for element in root.iter()
            for name, value in element.attrib.items()
            if name in {"fill", "stroke", "color", "style", "class"}
        }
        assert shades <= {"black", "white", "none"}
        assert not re.search(r"href|url\(|@import|on\w+=|<!|<\?", page.svg)


def test_every_drawing_says_what_it_shows(pages):
    for page in pages:
        root = root_of(page.svg)
        assert [child.tag.partition("}")[2] for child in root[:2]] == ["title", "desc"]
        assert root[0].text == page.title
        assert root[1].text == page.says
        assert len(page.says) > len("A drawing.")
        assert root.attrib["role"] == "img"


def test_the_same_plan_is_the_same_bytes(drawn_plan):
    planned, system = drawn_plan
    for kind in get_args(DrawingKind):
        assert drawings(planned, kind, system=system) == drawings(planned, kind, system=system)


def test_numbers_are_written_with_two_decimals_at_the_most(pages):
    for page in pages:
        data = re.findall(r' d="([^"]*)"', page.svg)
        assert data
        assert not re.search(r"\d\.\d{3}|e-|nan|inf", " ".join(data))
