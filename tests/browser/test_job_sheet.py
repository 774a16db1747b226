"""The job sheet as a page, in Chromium: read by axe-core, on a screen, on a phone and on paper."""

from __future__ import annotations

from io import BytesIO
from typing import Any
from urllib.parse import urlencode

import pytest
from pypdf import PdfReader

from tests.browser.conftest import DESKTOP, PHONE

SHED = {
    "eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12", "name": "Tool store",
    "notes": "Key under the pot.", "format": "html",
}  # fmt: skip
HIP = {"form": "hip", "length": "36 ft", "width": "24 ft", "pitch": "6:12", "format": "html"}


@pytest.fixture
def sheet(watch: Any, service: str) -> Any:
    """Open the sheet of a job."""

    def open_sheet(job: dict[str, str], size: Any = DESKTOP) -> Any:
        watched = watch(size)
        watched.page.goto(f"{service}/v1/plans?{urlencode(job)}")
        assert [one for one in watched.asked if "/v1/plans" not in one] == []
        return watched.page

    return open_sheet


@pytest.mark.parametrize("job", [SHED, HIP])
@pytest.mark.parametrize("size", [DESKTOP, PHONE])
def test_the_sheet_keeps_to_the_rules_of_accessibility(sheet, violations, job, size):
    assert violations(sheet(job, size)) == []


@pytest.mark.parametrize("job", [SHED, HIP])
def test_on_a_phone_only_tables_and_drawings_scroll_sideways(sheet, job):
    page = sheet(job, PHONE)
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= PHONE["width"]


def test_boxes_are_ticked_by_keyboard_and_named(sheet):
    page = sheet(SHED)
    box = page.get_by_role("checkbox", name="shingles", exact=True)
    box.focus()
    page.keyboard.press("Space")
    assert box.is_checked()


def test_drawings_come_out_at_full_size_on_paper(sheet):
    page = sheet(SHED)
    page.emulate_media(media="print")
    # 1 in of CSS is 25.4 mm; the drawing of the plane is 245 mm wide.
    widths = page.eval_on_selector_all(
        "svg", "all => all.map(one => one.getBoundingClientRect().width)"
    )
    assert max(widths) * 25.4 / 96 == pytest.approx(245, abs=0.1)


def test_printed_it_has_page_numbers_and_drawings_across_the_page(sheet):
    printed = sheet(SHED).pdf(prefer_css_page_size=True)
    pages = PdfReader(BytesIO(printed)).pages
    assert 2 <= len(pages) <= 9
    sizes = [(round(float(one.mediabox.width)), round(float(one.mediabox.height))) for one in pages]
    assert sizes[0] == (612, 792)
    assert sizes[-1] == (792, 612)
    for number, one in enumerate(pages, 1):
        assert f"Page {number} of {len(pages)}" in " ".join(one.extract_text().split())
