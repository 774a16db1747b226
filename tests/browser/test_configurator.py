"""The shed-kit configurator of the examples: a page of somebody else over the public interface."""

from __future__ import annotations

import json
import re
from contextlib import suppress
from typing import Any
from urllib.parse import urlsplit
from urllib.request import ProxyHandler, Request, build_opener

import pytest

from tests.browser.conftest import DESKTOP, PHONE, ROOT, serving

playwright = pytest.importorskip("playwright.sync_api")
expect = playwright.expect

PUBLIC = {"/v1/plans", "/v1/orders", "/v1/priced_sizes"}


@pytest.fixture
def shop(watch, host, service):
    """Open the configurator at the service, with some choices in its address."""

    def opened(choices="", size=DESKTOP, **more):
        watched = watch(size, **more)
        watched.page.goto(f"{host.address}/configurator/?service={service}/{choices}")
        return watched

    return opened


def settled(page):
    """Wait until all that was asked has come."""
    expect(page.locator("#status")).to_have_text(re.compile("USD"))
    return page


def asked_of(service, path, body):
    """Ask the service itself, without a page."""
    asked = Request(
        f"{service}{path}",
        data=json.dumps(body).encode(),
        headers={"Content-Type": "application/json"},
    )
    with build_opener(ProxyHandler({})).open(asked, timeout=30) as answer:
        return json.load(answer)


def job(width="168 in", depth="96 in", pitch="4:12", shingle="metric_strip"):
    return {
        "roof": {
            "form": "single_slope",
            "measured": "walls",
            "eave_length": width,
            "run": depth,
            "pitch": pitch,
            "eave_overhang": "6 in",
            "ridge_overhang": "6 in",
            "rake_overhang": "6 in",
        },
        "shingle": {"material": shingle},
    }


def price_list(shingle="metric_strip"):
    offered = json.loads((ROOT / "examples/configurator/prices.json").read_text(encoding="utf-8"))
    return {**offered["prices"], "shingles": offered["shingles"][shingle]}


def test_the_price_is_the_services_for_the_shed_of_the_sliders(shop, service):
    page = settled(shop("&width=150&depth=110&pitch=5&material=inch_three_tab").page)
    body = {
        "job": job("12 ft 6 in", "9 ft 2 in", "5:12", "inch_three_tab"),
        "prices": price_list("inch_three_tab"),
    }
    order = asked_of(service, "/v1/orders", body)
    assert (
        page.locator("#total").inner_text() == f"USD {order['total']}, of which tax {order['tax']}."
    )
    costs = page.locator("#lines tr td:last-child").all_inner_texts()
    assert costs == [line["cost"] for line in order["lines"]]
    assert page.locator("#width-says").inner_text() == "12 ft 6 in"
    assert page.get_by_label("Depth of the walls").get_attribute("aria-valuetext") == "9 ft 2 in"


def test_the_drawing_is_of_that_roof(shop):
    page = settled(shop().page)
    drawing = page.locator("#drawing")
    wide = "one => one.complete && one.naturalWidth"
    for _ in range(50):
        if drawing.evaluate(wide):
            break
        page.wait_for_timeout(50)
    assert drawing.evaluate(wide) > 100
    assert "courses of shingles" in drawing.get_attribute("alt")


def test_a_slider_on_its_way_asks_once_when_it_rests(shop):
    watched = shop()
    page = settled(watched.page)
    before = page.locator("#total").inner_text()
    already = len(watched.asked)
    page.get_by_label("Width of the walls").focus()
    for _ in range(24):
        page.keyboard.press("ArrowRight")
    expect(page.locator("#total")).not_to_have_text(before)
    settled(page)
    assert page.locator("#width-says").inner_text() == "16 ft"
    posted = [urlsplit(one).path for one in watched.asked[already:] if "drawing" not in one]
    assert sorted(posted) == sorted(PUBLIC)
    assert "width=192" in page.url


def test_it_asks_public_paths_alone(shop, service, host):
    watched = shop()
    settled(watched.page)
    paths = {urlsplit(one).path for one in watched.asked if one.startswith(service)}
    assert paths == PUBLIC
    others = {urlsplit(one).path for one in watched.asked if one.startswith(host.address)}
    assert all(path.startswith("/configurator/") for path in others)


def test_a_late_answer_to_an_earlier_shed_is_dropped(shop, service):
    page = settled(shop().page)
    held: list[Any] = []

    def hold(route):
        late = '"180 in"' in (route.request.post_data or "") and not held
        held.append(route) if late else route.continue_()

    page.route("**/v1/orders", hold)
    width = page.get_by_label("Width of the walls")
    width.fill("180")
    page.wait_for_timeout(500)
    assert held
    width.fill("120")
    order = asked_of(service, "/v1/orders", {"job": job("120 in"), "prices": price_list()})
    expect(page.locator("#total")).to_contain_text(order["total"])
    for route in held:
        with suppress(playwright.Error):  # the page may have given it up: as good
            route.continue_()
    page.wait_for_timeout(500)
    expect(page.locator("#total")).to_contain_text(order["total"])
    settled(page)


def test_a_better_size_can_be_taken_and_is_better(shop, service):
    page = settled(shop().page)
    told = page.locator("#better li").first.inner_text()
    (told_cost,) = re.findall(r"([\d.]+) USD a square", told)
    page.locator("#better button").first.click()
    expect(page.locator("#width")).not_to_have_value("168")
    width, depth = (page.locator(f"#{name}").input_value() for name in ("width", "depth"))
    order, before = (
        asked_of(service, "/v1/orders", {"job": shed, "prices": price_list()})
        for shed in (job(f"{width} in", f"{depth} in"), job())
    )
    expect(page.locator("#total")).to_contain_text(order["total"])
    settled(page)
    expect(page.get_by_label("Width of the walls")).to_be_focused()
    # cost a square, by hand: the order's total over the squares of its plan
    now = float(order["total"]) / squares(service, f"{width} in", f"{depth} in")
    assert now == pytest.approx(float(told_cost), abs=0.005)  # told to a cent
    assert now < float(before["total"]) / squares(service, "168 in", "96 in")


def squares(service, width, depth):
    planned = asked_of(service, "/v1/plans", job(width, depth))
    return planned["roof"]["squares"]


def test_what_the_service_refuses_is_said_and_nothing_old_is_left(watch, host, service):
    page = watch().page
    lacking = {"prices": {"currency": "USD"}, "shingles": {}}
    page.route("**/prices.json", lambda route: route.fulfill(json=lacking))
    page.goto(f"{host.address}/configurator/?service={service}/")
    expect(page.locator("#status")).to_contain_text("the packs on offer with their prices")
    expect(page.locator("#total")).to_be_hidden()


def test_a_service_that_does_not_let_it_ask_is_named(watch, host):
    with serving() as closed:
        page = watch(allow=("error: Access to fetch", "error: Failed to load resource")).page
        page.goto(f"{host.address}/configurator/?service={closed}/")
        expect(page.locator("#status")).to_contain_text(f"--allow-origin {host.address}")


def test_on_a_phone_nothing_is_wider_than_the_screen(shop):
    page = settled(shop(size=PHONE).page)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


@pytest.mark.parametrize("size", [DESKTOP, PHONE], ids=["desktop", "phone"])
def test_axe_finds_no_violation(shop, violations, size):
    assert violations(settled(shop(size=size).page)) == []
