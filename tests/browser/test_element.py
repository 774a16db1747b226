"""The element that other pages show a roof by: in one of another origin, under a strict policy."""

from __future__ import annotations

import re

import pytest

from roofing_core import plan
from roofing_core.job.choices import Job
from roofing_core.roof.forms import Gable
from roofing_core.roof.planes import SingleSlope
from roofing_core.sheets.headings import order_rows
from tests.browser.conftest import DESKTOP, PHONE, ROOT, serving

playwright = pytest.importorskip("playwright.sync_api")
expect = playwright.expect

SHED = 'eave-length="14 ft" slope-length="9 ft 4 in" pitch="3:12"'

#: Collects the events from the first on; a script of the host's own, served by the host.
LISTEN = """
    window.heard = [];
    for (const name of ["planned", "refused"]) {
        document.addEventListener(name, (event) => window.heard.push([name, event.detail]));
    }
"""


def page_with(tags, service):
    """Give a page that lets nothing run or load but what the element needs of the service."""
    policy = f"default-src 'none'; script-src {service}; connect-src {service}; base-uri 'none'"
    body = (
        '<!doctype html><html lang="en"><head><title>A shop</title><link rel="icon" href="data:,">'
        f'<script type="module" src="{service}/embed.js"></script></head>'
        f"<body><main><h1>Sheds</h1>{tags}</main></body></html>"
    )
    return f"{policy}; img-src data:\n{body}"


@pytest.fixture
def shop(watch, host, service):
    """Open a page of another origin with some tags in it."""

    def opened(tags, size=DESKTOP, **more):
        page = watch(size, **more).page
        page.add_init_script(LISTEN)
        page.goto(host.page(page_with(tags, service)))
        return page

    return opened


def heard(page, count=1):
    # The driver's own way of waiting makes a function of a text, which the page's policy forbids.
    for _ in range(100):
        if page.evaluate("window.heard.length") >= count:
            break
        page.wait_for_timeout(50)
    found = page.evaluate("window.heard")
    assert len(found) >= count
    return found


def rows(page):
    found = page.locator("roof-order tbody tr")
    return [tuple(found.nth(n).locator("th, td").all_inner_texts()) for n in range(found.count())]


def test_one_script_and_one_tag_show_a_roof_in_somebody_elses_page(shop):
    page = shop(f"<roof-order {SHED}>Plans of this shed are on request.</roof-order>")
    [(event, detail)] = heard(page)
    assert event == "planned"
    assert detail["plan"]["order"]["shingles"]["packs"] == 5
    assert detail["choices"] == {
        "eave_length": "14 ft",
        "slope_length": "9 ft 4 in",
        "pitch": "3:12",
    }
    roof = SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)
    assert rows(page) == [
        (item, f"{buy} {pack}", *rest)
        for item, buy, pack, *rest in order_rows(plan(Job(roof=roof)).order)
    ]
    assert page.locator("roof-order svg title").text_content() == "Slope: courses and pieces"
    assert "on request" not in page.locator("roof-order").aria_snapshot()
    expect(page.get_by_text("Local code, the instructions printed")).to_be_visible()
    whole = page.get_by_role("link", name="The whole plan").get_attribute("href")
    assert whole == detail["address"]
    page.goto(whole)
    expect(page.locator("#heading")).to_contain_text("14 ft by 9 ft 4 in")


def test_what_the_readme_shows_works(watch, host, service):
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    (shown,) = re.findall(r"```html\n(.*?)```", readme, re.DOTALL)
    page = watch().page
    page.add_init_script(LISTEN)
    tags = shown.replace("https://roofs.example", service)
    page.goto(host.page(page_with(tags, service)))
    [(event, detail)] = heard(page)
    assert (event, detail["plan"]["order"]["shingles"]["packs"]) == ("planned", 5)


def test_its_style_holds_though_the_page_allows_none(shop):
    page = shop(f"<roof-order {SHED}></roof-order>")
    heard(page)
    table = page.locator("roof-order table")
    assert table.evaluate("one => getComputedStyle(one).borderCollapse") == "collapse"
    drawn = page.locator("roof-order svg").bounding_box()
    assert drawn["width"] > 500
    assert page.evaluate("document.styleSheets.length") == 0


def test_every_attribute_that_html_does_not_know_is_a_parameter(shop):
    tag = (
        '<roof-order id="mine" class="card" title="A gable" data-sku="7" form="gable" '
        'length="20 ft" width="14 ft" pitch="6:12" starter.trim="5 in" units="metric" '
        'drawing="sections" parts="drawing"></roof-order>'
    )
    page = shop(tag)
    [(event, detail)] = heard(page)
    assert event == "planned", detail
    assert detail["choices"] == {
        "form": "gable",
        "length": "20 ft",
        "width": "14 ft",
        "pitch": "6:12",
        "starter.trim": "5 in",
        "units": "metric",
    }
    assert detail["plan"]["units"]["system"] == "metric"
    assert "ections" in page.locator("roof-order svg title").text_content()
    assert page.locator("roof-order table").count() == 0


def test_a_changed_attribute_plans_anew_and_several_at_once_only_once(shop):
    page = shop(f"<roof-order {SHED}></roof-order>")
    heard(page)
    page.evaluate(
        """() => {
            const roof = document.querySelector("roof-order");
            roof.choices = { form: "gable", length: "20 ft", width: "14 ft", pitch: "6:12" };
        }"""
    )
    events = heard(page, 2)
    page.wait_for_timeout(300)
    assert page.evaluate("window.heard.length") == len(events) == 2
    gable = Gable(length=240, width=168, pitch=6 / 12)
    assert [row[0] for row in rows(page)] == [
        row[0] for row in order_rows(plan(Job(roof=gable)).order)
    ]
    assert page.evaluate("document.querySelector('roof-order').plan.roof.form") == "gable"
    assert not page.locator("roof-order").get_attribute("eave-length")


def test_what_is_refused_is_said_by_the_attributes_names(shop):
    page = shop('<roof-order eave-length="14" slope-length="9 ft" pitch="3:12">Later.</roof-order>')
    [(event, detail)] = heard(page)
    assert event == "refused"
    assert detail["problem"]["status"] == 422
    assert detail["problem"]["errors"][0]["parameter"] == "eave_length"
    text = page.locator("roof-order").evaluate("one => one.shadowRoot.textContent")
    assert "eave-length: a number with its unit: write 14 ft, 14 in or 4.27 m" in text
    assert page.evaluate("document.querySelector('roof-order').plan") is None
    page.evaluate("document.querySelector('roof-order').setAttribute('eave-length', '14 ft')")
    assert heard(page, 2)[1][0] == "planned"


def test_an_answer_to_what_was_asked_before_is_dropped(shop):
    page = shop(f"<roof-order {SHED}></roof-order>")
    heard(page)
    page.route(
        "**/v1/plans?eave_length=15*", lambda route: (page.wait_for_timeout(400), route.continue_())
    )
    page.evaluate("document.querySelector('roof-order').setAttribute('eave-length', '15 ft')")
    page.wait_for_timeout(150)
    page.evaluate("document.querySelector('roof-order').setAttribute('eave-length', '16 ft')")
    heard(page, 2)
    page.wait_for_timeout(800)
    assert [detail["choices"]["eave_length"] for _, detail in heard(page)] == ["14 ft", "16 ft"]


def test_a_roof_taken_out_of_the_page_asks_no_more(shop):
    page = shop(f"<roof-order {SHED}></roof-order>")
    heard(page)
    page.evaluate(
        """() => {
            const roof = document.querySelector("roof-order");
            roof.setAttribute("pitch", "5:12");
            roof.remove();
        }"""
    )
    page.wait_for_timeout(400)
    assert page.evaluate("window.heard.length") == 1


def test_hostile_texts_and_drawings_are_shown_and_not_run(watch, host, service):
    page = watch().page
    page.add_init_script(LISTEN)
    # a page that would let anything run: nothing does, though no policy helps
    text = page_with("<roof-order></roof-order>", service)
    page.goto(
        host.page(
            text.replace("default-src 'none'; script-src", "script-src 'unsafe-inline' 'self'")
        )
    )
    heard(page)
    page.route(
        "**/v1/plans?*drawing=*",
        lambda route: route.fulfill(
            content_type="image/svg+xml",
            headers={"Access-Control-Allow-Origin": "*"},
            body='<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" onload="ran = 1">'
            '<script>window.ran = 1</script><image href="/x.png"/><a href="javascript:ran()"/>'
            '<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>'
            '<title>T</title><path d="M0 0H9" onclick="ran()"/></svg>',
        ),
    )
    page.evaluate(
        """() => document.querySelector("roof-order").choices = {
            eave_length: "14 ft", slope_length: "9 ft", pitch: "3:12",
            name: "<img src=x onerror='window.ran = 1'>" }"""
    )
    assert heard(page, 2)[1][0] == "planned"
    drawn = page.locator("roof-order svg").evaluate("one => one.outerHTML")
    assert "path" in drawn
    assert not re.search(r"script|image|href|foreign|on\w+=", drawn)
    assert page.evaluate("window.ran") is None
    assert page.locator("roof-order img").count() == 0


def test_an_origin_that_the_operator_did_not_name_is_told_so(watch, host):
    with serving() as closed:
        page = watch(allow=("error: Access to fetch", "error: Failed to load resource")).page
        page.add_init_script(LISTEN)
        page.goto(host.page(page_with(f"<roof-order {SHED}></roof-order>", closed)))
        [(event, detail)] = heard(page)
    assert event == "refused"
    assert "its operator has not allowed this page to ask" in detail["problem"]["detail"]
    expect(page.get_by_text("its operator has not allowed this page to ask")).to_be_visible()


def test_the_service_can_be_another_than_the_scripts(watch, host, service):
    with serving() as files_only:
        page = watch().page
        page.add_init_script(LISTEN)
        text = page_with(f'<roof-order service="{service}/" {SHED}></roof-order>', service)
        text = text.replace(f'src="{service}/', f'src="{files_only}/')
        text = text.replace("script-src ", f"script-src {files_only} ")
        page.goto(host.page(text))
        assert heard(page)[0][0] == "planned"


def test_on_a_phone_it_stays_within_the_screen(shop):
    page = shop(f"<roof-order {SHED}></roof-order>", PHONE)
    heard(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.get_by_role("table").get_by_role("row").count() > 5


@pytest.mark.parametrize("size", [DESKTOP, PHONE], ids=["desktop", "phone"])
def test_axe_finds_no_violation(shop, violations, size):
    page = shop(
        f'<roof-order {SHED}></roof-order><roof-order eave-length="20 ft" slope-length="9 ft" '
        'pitch="5:12"></roof-order><roof-order pitch="3"></roof-order>',
        size,
    )
    heard(page, 3)
    assert violations(page) == []


def test_it_works_by_keyboard(shop):
    page = shop(f"<roof-order {SHED}></roof-order>")
    heard(page)
    seen = []
    for _ in range(3):
        page.keyboard.press("Tab")
        seen.append(
            page.evaluate(
                """() => {
                    const inside = document.querySelector("roof-order").shadowRoot.activeElement;
                    return inside.getAttribute("aria-label") || inside.textContent;
                }"""
            )
        )
    assert seen == ["Drawing", "Order list", "The whole plan, with its cautions"]
