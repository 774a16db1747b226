"""The web form as it is served: its files, its policy, and its fields, which are the plan's own."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from importlib.resources import files
from typing import get_args

import pytest

from roofing_api.forms import models_by_word
from roofing_api.plans import PLAN
from roofing_api.web_pages import OWN, SHARED
from roofing_core.sheets.drawings.all import DrawingKind

FORMS = models_by_word(PLAN.form.model.model_fields["roof"].annotation)


class Fields(HTMLParser):
    """The fields of a page: what stands on each, the words it offers, and for which forms it is."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.fields: dict[str, dict[str, str | None]] = {}
        self.words: dict[str, set[str]] = {}
        self.fonts: list[str] = []
        self.forms = ""
        self.name = ""
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        if tag == "div" and given.get("class") == "field":
            self.forms = given.get("data-forms", "")
        if tag in ("input", "select", "textarea") and given.get("name"):
            self.name = given["name"]
            self.fields[self.name] = given | {"forms": self.forms}
            self.words.setdefault(self.name, set())
        if (tag == "option" and given["value"]) or given.get("type") == "radio":
            self.words[self.name].add(given["value"])


@pytest.fixture(scope="module")
def fields(client):
    return Fields(client.get("/").text)


def test_each_field_is_a_parameter_of_the_plan_and_each_word_one_that_it_takes(fields):
    leaves = PLAN.form.leaves
    assert set(fields.fields) <= set(leaves)
    for name, words in fields.words.items():
        if words:
            assert words <= set(leaves[name].schema["enum"]), name
            if "default" in leaves[name].schema and name != "form":
                # what is meant when nothing is chosen is the one word that is not offered
                default = leaves[name].schema["default"]
                assert {*words, default} == set(leaves[name].schema["enum"]), name
                assert default not in words, name
    assert fields.words["form"] == set(FORMS)


@pytest.mark.parametrize("form", FORMS)
def test_each_form_of_roof_is_asked_all_its_sizes_and_no_other(fields, form):
    sizes = {name for model in FORMS.values() for name in model.model_fields} - {"form"}
    shown = {
        name
        for name, given in fields.fields.items()
        if name in sizes and (not given["forms"] or form in given["forms"].split())
    }
    assert shown == set(FORMS[form].model_fields) - {"form"}
    needed = {
        name
        for name, given in fields.fields.items()
        if form in (given.get("data-needed") or "").split()
    }
    assert needed == {
        name
        for name, field in FORMS[form].model_fields.items()
        if field.is_required() and name != "form"
    }


def test_each_field_has_a_label_and_a_place_for_its_faults(client, fields):
    page = client.get("/").text
    for name, given in fields.fields.items():
        if given.get("type") not in ("radio", "hidden"):
            assert f'for="{name}"' in page or f'id="{name}" name="{name}" value="true"' in page
            assert f"{name}-error" in given["aria-describedby"].split()
            for described in given["aria-describedby"].split():
                assert f'id="{described}"' in page


def test_a_page_without_scripts_says_which_forms_of_roof_a_field_is_for(client):
    said = re.findall(
        r'data-forms="([^"]*)">\n<label for="[^"]*">[^<]*</label>\n'
        r'<noscript><p class="hint">For ([^<]*)<',
        client.get("/").text,
    )
    assert len(said) == client.get("/").text.count("data-forms=") > 10
    for forms, words in said:
        assert forms.replace("_", "-").split() == words.replace(
            "single slope", "single-slope"
        ).split(", ")


def test_the_page_may_load_from_here_alone_and_has_no_script_of_its_own(client):
    page = client.get("/")
    policy = dict(
        part.split(" ", 1) for part in page.headers["content-security-policy"].split("; ")
    )
    assert policy.pop("default-src") == policy.pop("base-uri") == "'none'"
    assert set(policy.values()) == {"'self'"}
    assert (
        page.text.count("<script") == page.text.count('<script type="module" src="form.js">') == 1
    )
    assert "style=" not in page.text
    assert "<style" not in page.text
    assert " on" not in {text[:3] for text in page.text.split('="')}
    assert "://" not in page.text


@pytest.mark.parametrize("name", sorted({**OWN, **SHARED}))
def test_each_file_comes_with_its_type_once(client, name):
    answer = client.get(f"/{name}")
    assert answer.status_code == 200
    assert answer.headers["content-type"].partition(";")[0] == {**OWN, **SHARED}[name]
    assert answer.headers["x-content-type-options"] == "nosniff"
    tag = answer.headers["etag"]
    again = client.get(f"/{name}", headers={"If-None-Match": tag})
    assert (again.status_code, again.content) == (304, b"")
    assert (answer.headers.get("access-control-allow-origin") == "*") is (name in SHARED)


def test_every_file_that_is_packaged_is_served():
    packaged = {file.name for file in files("roofing_api").joinpath("pages").iterdir()}
    assert packaged == {"form.html", *OWN, *SHARED}


def test_what_a_page_without_scripts_leaves_empty_is_left_out(client):
    query = "form=single_slope&eave_length=14+ft&slope_length=9%27+4%22&pitch=3:12&run=&rise=+"
    answer = client.get(f"/plan?{query}", follow_redirects=False)
    assert answer.status_code == 303
    followed = client.get(f"/plan?{query}")
    assert (followed.status_code, followed.url.path) == (200, "/v1/plans")
    assert "run" not in followed.url.params
    assert "14 ft by 9 ft 4 in" in followed.text
    assert client.get("/plan?pitch=3:12&pitch=4:12").status_code == 422


def test_every_form_of_a_plan_is_offered_to_keep(client):
    (offered,) = re.findall(r'data-offered="(.*?)"', client.get("/").text)
    assert offered.split() == [offer.word for offer in PLAN.offers]


def test_every_kind_of_drawing_can_be_chosen(client):
    offered = re.search(r"const DRAWINGS = \[(.*?)\n\];", client.get("/form.js").text, re.DOTALL)
    assert offered
    words = re.findall(r'^  \["(\w+)"', offered[1], re.MULTILINE)
    assert sorted(words) == sorted(get_args(DrawingKind))
