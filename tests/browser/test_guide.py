"""The page that the guide has people save: it shows the shed, in a browser, from another origin."""

from __future__ import annotations

import re

import pytest

from tests.browser.conftest import ROOT

playwright = pytest.importorskip("playwright.sync_api")


def test_the_page_of_the_guide_shows_a_drawing_and_the_order(watch, host, service):
    guide = (ROOT / "examples" / "README.md").read_text(encoding="utf-8")
    written = re.findall(r"```html\n(.*?)```", guide, re.DOTALL)[0]
    page = watch().page
    no_policy = "\n"
    page.goto(
        host.page(no_policy + written.replace("http://127.0.0.1:8000", service), "guide.html")
    )
    shed = page.locator("roof-order")
    playwright.expect(shed.locator("svg").first).to_be_visible()
    bundles = shed.get_by_role("row").filter(has_text="shingles")
    playwright.expect(bundles).to_contain_text("5")
