"""The job sheet, as HTML and as PDF: what stands on it, who can read it, what it never does."""

from __future__ import annotations

import hashlib
import re
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from roofing_core import Plan, job_sheet_html, job_sheet_pdf
from roofing_core.measures.units import System
from roofing_core.sheets.job_sheet.blocks import PageSize
from roofing_core.sheets.job_sheet.letters import BOX, SHOWN, showable
from roofing_core.sheets.job_sheet.template import TEMPLATE
from tests.sheets.conftest import called, planned

ROOT = Path(__file__).resolve().parents[2]
HOSTILE = '<script>alert(\'&amp;\')</script>"]]>--#image("/etc/passwd")$x$*b*@y {{7}}'

#: In points, 1/72 in: ISO 216 and ANSI/ASME Y14.1.
PAPERS = {"a4": (595.28, 841.89), "letter": (612.0, 792.0)}


#: Reading a page of a drawing takes pypdf a second: these are read, and all others made.
READ = ["shed", "tiny", "very wide", "metric", "by hand"]


@cache
def pdf_of(name: str) -> PdfReader:
    made, system = planned(name)
    return PdfReader(BytesIO(job_sheet_pdf(made, system=system)))


def told(reader: PdfReader) -> str:
    text = " ".join(page.extract_text() for page in reader.pages)
    return " ".join(text.replace("\u200b", "").split())


class Page(HTMLParser):
    """A page read by Python's own parser: tags with attributes, text, what is open at the end."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.texts: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in {"meta", "input"}:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        if "style" not in self.open:
            self.texts.append(data)

    @property
    def told(self) -> str:
        return " ".join(" ".join(self.texts).split())


def expected(made: Plan, system: System) -> list[str]:
    """Give every sentence and every line that must be on a sheet."""
    return [
        *(step.says.written(system) for step in made.steps),
        *(caution.says.written(system) for caution in made.cautions),
        *(caution.source for caution in made.cautions),
        *(found.says.written(system) for found in made.findings),
        *(found.source for found in made.findings),
        *(line.item for line in made.order.lines()),
        *(run.material.replace("_", " ") for run in made.metal),
    ]


@pytest.mark.parametrize("name", READ)
def test_all_that_is_to_be_done_bought_and_heeded_is_on_both(name):
    made, system = planned(name)
    page = Page(job_sheet_html(made, system=system))
    assert page.open == []
    typeset = told(pdf_of(name))
    for sentence in expected(made, system):
        assert " ".join(sentence.split()) in page.told
        assert " ".join(sentence.split()) in typeset


@pytest.mark.parametrize("name", ["shed", "tiny", "metric"])
def test_a_shed_takes_two_to_six_pages_with_their_numbers(name):
    pages = pdf_of(name).pages
    assert 2 <= len(pages) <= 6
    for number, page in enumerate(pages, 1):
        assert f"Page {number} of {len(pages)}" in " ".join(page.extract_text().split())


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("name", ["shed", "very wide", "hip"])
def test_pages_are_of_the_paper_asked_for_and_drawings_across_lie_across(name, size):
    made, system = planned(name)
    reader = PdfReader(BytesIO(job_sheet_pdf(made, system=system, page_size=size)))
    upright = pytest.approx(PAPERS[size], abs=0.01)
    across = pytest.approx(PAPERS[size][::-1], abs=0.01)
    sizes = [(float(page.mediabox.width), float(page.mediabox.height)) for page in reader.pages]
    assert sizes[0] == upright
    assert all(size in (upright, across) for size in sizes)
    assert any(size == across for size in sizes)
    other: PageSize = "a4" if size == "letter" else "letter"
    html = job_sheet_html(made, system=system, page_size=size)
    assert f"@page {{ size: {'A4' if size == 'a4' else 'letter'};" in html
    assert job_sheet_html(made, system=system, page_size=other) != html


def test_the_paper_is_the_usual_one_of_the_units_unless_said():
    made, _ = planned("shed")
    assert job_sheet_pdf(made) == job_sheet_pdf(made, page_size="letter")
    assert job_sheet_pdf(made, system="metric") == job_sheet_pdf(
        made, system="metric", page_size="a4"
    )


#: Room that A4 and Letter leave, in points: no word may stand nearer to an edge than 10 mm.
LEAST_MARGIN = 10 / 25.4 * 72


@pytest.mark.parametrize("name", READ)
def test_no_text_runs_off_a_page(name):
    for page in pdf_of(name).pages:
        wide = float(page.mediabox.width)
        spots: list[tuple[float, float]] = []

        def visit(text: str, cm: Any, tm: Any, *_: Any, spots: Any = spots) -> None:
            if text.strip():
                x = cm[0] * tm[4] + cm[2] * tm[5] + cm[4]
                spots.append((x, len(text)))

        page.extract_text(visitor_text=visit)
        assert spots
        assert all(LEAST_MARGIN < x < wide - LEAST_MARGIN for x, _ in spots)


def tree(reader: PdfReader) -> tuple[Counter[str], list[str], list[tuple[str, ...]]]:
    """Give the tags of a file, how often each, the texts of its figures, and headings in order."""
    tags: Counter[str] = Counter()
    alternatives: list[str] = []
    paths: list[tuple[str, ...]] = []

    def walk(node: Any, above: tuple[str, ...]) -> None:
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, list):
            for one in node:
                walk(one, above)
        elif hasattr(node, "get") and "/S" in node:
            tag = str(node["/S"])
            tags[tag] += 1
            paths.append((*above, tag))
            if tag == "/Figure":
                alternatives.append(str(node.get("/Alt", "")))
            walk(node.get("/K", []), (*above, tag))
        elif hasattr(node, "get"):
            walk(node.get("/K", []), above)

    root: Any = reader.trailer["/Root"]
    walk(root["/StructTreeRoot"], ())
    return tags, alternatives, paths


def test_any_plan_can_be_typeset(drawn_plan):
    made, system = drawn_plan
    reader = PdfReader(BytesIO(job_sheet_pdf(made, system=system)))
    assert len(reader.pages) >= 2
    assert f"of {len(reader.pages)}" in " ".join(reader.pages[0].extract_text().split())


@pytest.mark.parametrize("name", ["shed", "ell with openings"])
def test_the_pdf_is_tagged_for_a_screen_reader(name):
    # ISO 14289-1: marked as tagged (7.1), its part named in the metadata (5), a natural language
    # (7.2), figures with alternatives (7.3), headings that skip no level (7.4.2), headers in
    # tables (7.5), a title that is shown (7.1). The clauses are from memory.
    reader = pdf_of(name)
    root: Any = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_object().get_data()
    tags, alternatives, paths = tree(reader)
    assert len(alternatives) == tags["/Figure"] >= 3
    assert all(len(text) > 20 for text in alternatives)
    assert tags["/H1"] == 1
    levels = [int(path[-1][2]) for path in paths if re.fullmatch(r"/H[1-6]", path[-1])]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert tags["/Table"] == tags["/THead"] >= 5
    heads = [path for path in paths if path[-1] == "/TH"]
    assert len(heads) >= 5 * 4
    assert all("/THead" in path for path in heads)
    (_, parts) = reader.outline
    assert isinstance(parts, list)
    outline = [str(one["/Title"]) for one in parts if not isinstance(one, list)]
    assert outline[0] == "The roof"
    assert outline[-1] == "Drawings"


def test_the_page_has_what_a_screen_reader_goes_by(drawn_plan):
    made, system = drawn_plan
    page = Page(job_sheet_html(made, system=system))
    kinds = Counter(tag for tag, _ in page.tags)
    assert dict(page.tags[0][1]) == {"lang": "en"}
    assert kinds["h1"] == kinds["main"] == kinds["title"] - kinds["svg"] == 1
    assert kinds["table"] == kinds["caption"] == kinds["thead"] == kinds["tbody"] >= 4
    scopes = Counter(given.get("scope") for tag, given in page.tags if tag == "th")
    assert set(scopes) == {"col", "row"}
    assert scopes["row"] == kinds["tr"] - kinds["thead"]
    ticks = [given for tag, given in page.tags if tag == "input"]
    assert len(ticks) == scopes["row"]
    assert all(given["type"] == "checkbox" and given["aria-label"] for given in ticks)
    pictures = [given for tag, given in page.tags if tag == "svg"]
    assert len(pictures) == kinds["figure"] == kinds["desc"] >= 3
    assert all(given["role"] == "img" for given in pictures)


#: Elements that a browser shows without fetching or running anything (WHATWG HTML; SVG 2).
STILL = {
    "body", "caption", "cite", "dd", "desc", "div", "dl", "dt", "figure", "footer", "g", "h1", "h2",
    "h3", "head", "html", "input", "li", "main", "meta", "ol", "p", "path", "section", "strong",
    "style", "svg", "table", "tbody", "td", "text", "th", "thead", "title", "tr", "ul",
}  # fmt: skip


def fetches(page: str) -> list[object]:
    """Give all in a page that would make a browser fetch or run something."""
    read = Page(page)
    tags = [tag for tag, _ in read.tags]
    attributes = [(name, given) for _, given in read.tags for name in given]
    return [
        *(tag for tag in tags if tag not in STILL),
        *(name for name, _ in attributes if name.startswith("on")
          or name in {"href", "src", "srcset", "data", "action", "xlink:href", "style"}),
        *re.findall(r"url\(|@import", page),
    ]  # fmt: skip


@pytest.fixture(scope="module")
def hostile() -> Plan:
    """Give a plan in which all that has a name is called by something that looks like code."""
    notes = f"{HOSTILE}\n#set page(fill: red)\n{HOSTILE}"
    return replace(called(planned("shed")[0], HOSTILE), name=HOSTILE, notes=notes)


def test_what_looks_like_code_is_text_on_the_page(hostile):
    html = job_sheet_html(hostile)
    assert fetches(html) == []
    assert fetches("<p><script>x</script><img src=y></img></p>") == ["script", "img", "src"]
    read = Page(html)
    assert read.told.count(HOSTILE) >= 4
    policies = [given["content"] for tag, given in read.tags if "http-equiv" in given]
    assert policies == ["default-src 'none'; style-src 'unsafe-inline'"]


def test_what_looks_like_markup_is_text_on_the_typeset_page(hostile):
    reader = PdfReader(BytesIO(job_sheet_pdf(hostile)))
    text = "".join(told(reader).split())
    assert text.count("".join(HOSTILE.split())) >= 3
    assert "#setpage(fill:red)" in text
    root: Any = reader.trailer["/Root"]
    assert not {"/OpenAction", "/AA", "/AcroForm"} & set(root)
    assert not any(page.get("/Annots") for page in reader.pages)


def test_the_template_asks_for_nothing_but_its_data():
    for word in ("import", "include", "read(", "plugin(", "datetime", "http", "eval(", "link("):
        assert word not in TEMPLATE
    assert TEMPLATE.count("sys.inputs") == TEMPLATE.count("json(bytes(sys.inputs.sheet))") == 1
    assert TEMPLATE.count("image(") == TEMPLATE.count("bytes(one.svg)") == 1


def in_another_process(made: str, folder: Path) -> str:
    code = (
        "import hashlib, sys; sys.path[:0] = sys.argv[1:];"
        "from tests.sheets.conftest import planned;"
        f"from roofing_core import {made};"
        f"made = {made}(planned('shed')[0]);"
        "made = made if isinstance(made, bytes) else made.encode();"
        "print(hashlib.sha256(made).hexdigest())"
    )
    command = [sys.executable, "-c", code, str(ROOT)]
    ran = subprocess.run(
        command, cwd=folder, capture_output=True, text=True, check=True,
        env={"TZ": "Asia/Tokyo", "LANG": "C", "PATH": ""},
    )  # fmt: skip
    return ran.stdout.strip()


def test_the_same_plan_is_the_same_bytes_in_every_process_place_and_zone(tmp_path):
    made, _ = planned("shed")
    pdf, html = job_sheet_pdf(made), job_sheet_html(made).encode()
    assert in_another_process("job_sheet_pdf", tmp_path) == hashlib.sha256(pdf).hexdigest()
    assert in_another_process("job_sheet_html", tmp_path) == hashlib.sha256(html).hexdigest()
    assert b"/CreationDate" not in pdf
    assert b"/ModDate" not in pdf


ALL_SHOWN = [letter for letter in map(chr, range(0x20, 0x2300)) if re.match(f"[{SHOWN}]", letter)]


def test_every_letter_that_is_said_to_be_shown_is_shown():
    # The typesetter refuses to write PDF/UA with a letter that its fonts lack.
    plan, _ = planned("tiny")
    assert len(ALL_SHOWN) > 1000
    pdf = job_sheet_pdf(replace(plan, notes=" ".join([*ALL_SHOWN, BOX])))
    text = told(PdfReader(BytesIO(pdf)))
    assert {"é", "Ω", "ж", "€", "½", "→", "≤", BOX} <= set(text)


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        ("Café Łódź, Ωμέγα, Сарай", "Café Łódź, Ωμέγα, Сарай"),
        ("屋根 3", f"{BOX * 2} 3"),
        ("गोदाम", None),
        ("مستودع", None),
        ("🏠\ufe0f roof", f"{BOX} roof"),
        ("a\u0301\u0323\u0489x", None),
    ],
)
def test_letters_that_the_fonts_lack_are_boxes_in_the_pdf_and_themselves_in_html(name, shown):
    plan, _ = planned("tiny")
    made = replace(plan, name=name)
    reader = PdfReader(BytesIO(job_sheet_pdf(made)))
    title = str(reader.metadata.title if reader.metadata else "").partition(": ")[0]
    assert title == showable(name)
    assert shown is None or title == shown
    assert f"<h1>{name}</h1>" in job_sheet_html(made)


@settings(max_examples=15, deadline=None)
@given(st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=80))
def test_any_name_can_be_typeset(name):
    plan, _ = planned("tiny")
    assert job_sheet_pdf(replace(plan, name=name, notes=name)).startswith(b"%PDF-1.7")


def test_a_long_word_is_broken_and_not_run_off_the_page():
    # 80 letters of 20 points, each 0.9 of that wide or more, are 500 mm: three lines or more.
    plan, _ = planned("tiny")
    made = replace(plan, name="W" * 80, notes="M" * 500)
    first = PdfReader(BytesIO(job_sheet_pdf(made))).pages[0].extract_text()
    lines = [line.replace("\u200b", "").strip() for line in first.splitlines()]
    title = [line for line in lines if line and set(line) == {"W"}]
    notes = [line for line in lines if line and set(line) == {"M"}]
    assert "".join(title) == "W" * 80
    assert "".join(notes) == "M" * 500
    assert len(title) >= 3
    assert len(notes) >= 8


def test_findings_that_stop_the_job_come_before_everything_else():
    plan, _ = planned("tiny")
    worst = replace(plan.findings[0], severity="breaks_code", place="course 7")
    made = replace(plan, findings=(*plan.findings, worst))
    page = Page(job_sheet_html(made)).told
    typeset = told(PdfReader(BytesIO(job_sheet_pdf(made))))
    for text in (page, typeset):
        assert (
            text.index("Breaks code, course 7") < text.index("The roof") < text.index("Order list")
        )
        assert text.count("Breaks code, course 7") == 1
    assert "Before anything else" not in Page(job_sheet_html(plan)).told


def test_inputs_that_are_not_the_usual_ones_are_named():
    made, system = planned("metric")
    page = Page(job_sheet_html(made, system=system)).told
    assert "decking, lay yes" in page
    assert "underlaying, ice barrier yes" in page
    assert "metalwork, lap" not in page
    openings = Page(job_sheet_html(planned("ell with openings")[0])).told
    assert "chimney 1 in side 1 12 ft 6 in to 15 ft 6 in, up 30 in to 4 ft 4 3/8 in" in openings
