"""What a caller wrote is text on every sheet, whatever it looks like; and what a notebook shows."""

from __future__ import annotations

from html.parser import HTMLParser
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import Plan
from roofing_core.sheets.drawings.all import DrawingKind, drawings
from roofing_core.sheets.drawings.lettering import lines_of, shortened, width_of
from roofing_core.sheets.drawings.paper import Paper
from roofing_core.sheets.notebook import plan_html
from tests.sheets.conftest import called, planned
from tests.sheets.reading import root_of, texts_of

HOSTILE = "<script>alert('&amp;')</script>\"\x00\x1b\ud800]]>--"

#: The same as it reads back: on one line, with what no XML may hold replaced.
READ_BACK = "<script>alert('&amp;')</script>\"\ufffd\ufffd\ufffd]]>--"


@pytest.fixture(scope="module")
def hostile() -> Plan:
    """Give a plan in which all that has a name is called by something that looks like code."""
    return called(planned("shed")[0], HOSTILE)


@pytest.mark.parametrize("kind", get_args(DrawingKind))
def test_names_that_look_like_code_are_text_on_a_drawing(hostile, kind):
    for page in drawings(hostile, kind):
        root = root_of(page.svg.encode().decode())
        tags = {element.tag.partition("}")[2] for element in root.iter()}
        assert tags <= {"svg", "title", "desc", "path", "g", "text"}


@pytest.mark.parametrize("kind", ["plane", "roof_plan", "rolls", "metal", "metal_cuts"])
def test_such_a_name_is_read_back_as_it_was_written(hostile, kind):
    told = "".join(
        "".join(text.text.split())
        for page in drawings(hostile, kind)
        for text in texts_of(page.svg)
    )
    assert READ_BACK.replace("_", " ")[1:40] in told


@given(st.text(max_size=200))
def test_any_text_is_read_back_or_shortened(text):
    paper = Paper("upright", text, "beneath")
    root = root_of(paper.done(name="any", says=text).svg)
    assert len(root) == 5
    words = [one.text or "" for one in root.iter("{http://www.w3.org/2000/svg}text")]
    assert words[-1] == "beneath"


@given(st.text(max_size=60), st.floats(1, 200))
def test_what_is_shortened_has_room(text, room):
    assert width_of(shortened(text, room=room, size=2.8), 2.8) <= room


@given(st.text(max_size=300), st.floats(20, 200))
def test_lines_have_room_and_lose_nothing(text, room):
    lines = lines_of(text, room=room, size=2.8)
    assert all(width_of(line, 2.8) <= room for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


class _Tags(HTMLParser):
    """Every tag with its attributes, and all the text between."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.told: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.told.append(data)


def test_a_notebook_shows_a_plan_by_itself():
    plan, _ = planned("shed")
    shown = plan._repr_html_()
    assert shown == plan_html(plan)
    root = root_of(shown)  # well-formed as XML too
    rows = root.findall("./table/tbody/tr")
    assert [row[0].text for row in rows] == [line.item for line in plan.order.lines()]
    assert [row[1].text for row in rows] == [str(line.packs) for line in plan.order.lines()]
    assert root.find("./table/caption") is not None
    assert root.find("./div/{http://www.w3.org/2000/svg}svg") is not None


def test_a_notebook_fetches_and_runs_nothing(hostile):
    parser = _Tags()
    parser.feed(plan_html(hostile))
    tags = {tag for tag, _ in parser.tags}
    assert not tags & {"script", "img", "link", "iframe", "object", "style", "use", "image"}
    for _, attributes in parser.tags:
        assert not [name for name in attributes if name.startswith("on") or name in {"href", "src"}]
    assert READ_BACK[:20] in "".join(parser.told).lower()
