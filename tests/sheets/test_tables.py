"""Tables: every figure of the plan, as numbers under headings with units and as text for people."""

from __future__ import annotations

import csv
from dataclasses import replace
from io import StringIO
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import Job, Plan, SingleSlope, job_sheet_html, plan, plan_csv, plan_table
from roofing_core.job.choices import Cutting, Metalwork
from roofing_core.measures.sentences import Amount, write_length
from roofing_core.sheets.tables.all import KINDS
from roofing_core.sheets.tables.comma_text import looks_like_a_formula, table_csv
from roofing_core.sheets.tables.table import Column, Table
from tests.sheets.conftest import planned

#: What begins a formula: OWASP, "CSV Injection", as an advisory restates it (=, +, -, @, tab and
#: return); from memory, the line feed and the wide forms.
BEGINNINGS = ["=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20"]


def read(text: str) -> list[dict[str, str]]:
    """Read a table with Python's own reader."""
    return list(csv.DictReader(StringIO(text, newline=""), strict=True))


@pytest.mark.parametrize("kind", KINDS)
def test_a_table_is_as_wide_as_its_headings_for_people_and_machines(drawn_plan, kind):
    made, system = drawn_plan
    table = plan_table(made, kind, system=system)
    assert table.name == kind
    for whom in ("people", "machines"):
        shown = table.for_whom(whom)
        headings = [column.headed(system) for column in shown.columns]
        assert len(set(headings)) == len(headings)
        assert all(len(row) == len(headings) for row in shown.rows)


@pytest.mark.parametrize("kind", KINDS)
def test_comma_separated_text_is_as_rfc_4180_has_it(drawn_plan, kind):
    made, system = drawn_plan
    text = plan_csv(made, kind, system=system)
    assert text.endswith("\r\n")
    rows = list(csv.reader(StringIO(text, newline=""), strict=True))
    assert len({len(row) for row in rows}) == 1
    assert len(rows) == 1 + len(plan_table(made, kind).rows)
    again = StringIO(newline="")
    csv.writer(again).writerows(rows)
    assert again.getvalue() == text


def test_offcuts_have_the_pieces_of_the_shingles_that_are_shared():
    made, _ = planned("shed with offcuts used again")
    rows = read(plan_csv(made, "offcuts"))
    shared = [one for one in made.cutting.cut if len(one.pieces) > 1]
    assert len(rows) == sum(len(one.pieces) for one in shared) > 10
    for one in shared:
        own = [row for row in rows if row["shingle"] == str(one.number)]
        widths = [float(row["width (in)"]) for row in own]
        assert widths == [piece.width for piece in one.pieces]
        left = float(own[-1]["left over (in)"])
        assert sum(widths) + left == pytest.approx(made.choices.shingle.length)


@pytest.mark.parametrize(("system", "unit", "times"), [("us", "in", 1.0), ("metric", "mm", 25.4)])
def test_courses_have_the_numbers_of_the_plan(system, unit, times):
    made, _ = planned("shed")
    rows = [row for row in read(plan_csv(made, "courses", system=system)) if row["course"]]
    assert len(rows) == len(made.courses) == 20
    for row, course in zip(rows, made.courses, strict=True):
        assert float(row[f"butt ({unit})"]) == pytest.approx(course.butt * times, rel=1e-15)
        assert int(row["pieces"]) == course.pieces
        trimmed = course.top_trim > 0
        assert (row[f"snap tops ({unit})"] == "") == trimmed == bool(row[f"top off ({unit})"])


def test_every_piece_is_there_once(drawn_plan):
    made, _ = drawn_plan
    rows = read(plan_csv(made, "pieces"))
    kinds = [row["kind"] for row in rows]
    assert kinds.count("course") == made.shingles.pieces
    assert kinds.count("starter") == sum(strip.pieces for strip in made.starters)
    for row in rows:
        left, right, width = (float(row[f"{one} (in)"]) for one in ("left", "right", "width"))
        assert width == right - left > 0
        assert 0 < float(row["left angle (deg)"]) < 180
    nails = sum(int(row["nails"]) for row in rows if row["kind"] == "course")
    assert nails == made.shingles.nails


def test_the_order_list_buys_what_the_plan_orders(drawn_plan):
    made, system = drawn_plan
    rows = read(plan_csv(made, "order", system=system))
    lines = made.order.lines()
    assert [(row["item"], int(row["buy"])) for row in rows] == [
        (line.item, line.packs) for line in lines
    ]
    for row in rows:
        bought = int(row["buy"]) * float(row["each holds"])
        told = float(row["needed"]) + float(row["left over"])
        assert bought == pytest.approx(told) or bought > told  # offcuts too short to be left over


def test_what_is_cut_from_metal_and_rolls_comes_to_what_is_bought(drawn_plan):
    made, _ = drawn_plan
    cuts = read(plan_csv(made, "cuts"))
    metal = sum(int(row["pieces"]) * float(row["length (in)"]) for row in cuts
                if row["cut"] == "metal")  # fmt: skip
    assert metal == pytest.approx(sum(sum(run.lengths) for run in made.metal))
    bought = sum(run.stock * run.stock_length for run in made.metal)
    assert bought - metal == pytest.approx(sum(run.offcut for run in made.metal))
    rolls = read(plan_csv(made, "rolls"))
    along = sum(float(row["length (in)"]) for row in rolls
                if row["rolls of"] == "underlayment" and row["taken from"] == "length")  # fmt: skip
    left = sum(float(row["left on the roll (in)"] or 0) for row in rolls
               if row["rolls of"] == "underlayment")  # fmt: skip
    felt = made.underlayment
    assert along + left == pytest.approx(felt.rolls * made.choices.underlayment.length)


def test_whole_shingles_are_on_no_cut_list_and_all_others_are():
    made, _ = planned("shed")
    cuts = [row for row in read(plan_csv(made, "cuts")) if row["cut"] == "shingle"]
    shingle = made.choices.shingle
    not_whole = [
        piece
        for course in made.courses
        for piece in course.laid
        if course.top_trim > 0 or piece.right - piece.left < shingle.length - 1e-9
    ]
    assert sum(int(row["pieces"]) for row in cuts) == len(not_whole) > 0


def test_what_comes_from_one_length_or_one_shingle_is_no_more_than_it():
    roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    how = Job(roof=roof, metalwork=Metalwork(buying="across_runs"), cutting=Cutting(reuse="best"))
    made = plan(how)
    lengths = read(plan_csv(made, "lengths"))
    cut = sum(float(row["cut (in)"]) + float(row["left over (in)"] or 0) for row in lengths)
    assert cut > 0
    assert cut == pytest.approx(sum(bought.metal for bought in made.metal_bought))
    assert len(lengths) == sum(run.pieces for run in made.metal)
    shingles: dict[str, list[dict[str, str]]] = {}
    for row in read(plan_csv(made, "offcuts")):
        shingles.setdefault(row["shingle"], []).append(row)
    assert len(shingles) > 3
    for pieces in shingles.values():
        wide = sum(float(row["width (in)"]) for row in pieces)
        assert len(pieces) > 1
        assert wide + float(pieces[-1]["left over (in)"]) == pytest.approx(
            made.choices.shingle.length
        )
    page = job_sheet_html(made)
    plain = job_sheet_html(plan(Job(roof=roof)))
    for title in (
        "Lengths of metal",
        "Offcuts used again",
        "Cutting sheet: metal",
    ):
        assert title in page
        assert title not in plain


@pytest.mark.parametrize("start", BEGINNINGS)
def test_a_text_that_would_be_a_formula_is_none(start):
    made, _ = planned("shed")
    text = f"{start}cmd|'/C calc'!A0"
    hostile = replace(made, courses=tuple(replace(one, plane=text) for one in made.courses[:1]),
                      planes=(replace(made.planes[0], name=text),))  # fmt: skip
    (row,) = read(plan_csv(hostile, "courses"))
    assert row["plane"] == f"'{text}"
    assert float(row["butt (in)"]) == -0.5  # a negative number stays a number


@given(st.text(max_size=40))
def test_any_text_is_read_back_as_it_was_or_with_an_apostrophe(text):
    table = Table(name="t", title="T", columns=(Column(heading="a"),) * 2, rows=((text, 1),))
    ((_, _), (told, one)) = csv.reader(StringIO(table_csv(table), newline=""), strict=True)
    assert told == (f"'{text}" if looks_like_a_formula(text) else text)
    assert one == "1"


def test_a_table_of_several_planes_falls_apart_into_one_a_plane():
    made, system = planned("ell with openings")
    table = plan_table(made, "courses", system=system)
    parts = list(table.by_plane())
    assert [one.title for one in parts] == [f"Courses: side {k}" for k in range(1, 7)]
    assert sum(len(one.rows) for one in parts) == len(table.rows)
    assert all("plane" not in [column.heading for column in one.columns] for one in parts)
    (only,) = plan_table(planned("shed")[0], "courses").by_plane()
    assert only.title == "Courses"


def test_a_cell_for_a_person_reads_as_the_tape_does_and_for_a_machine_is_not_rounded():
    heights = Column(heading="butt", unit="in")
    assert heights.headed("us") == "butt (in)"
    assert heights.headed("metric") == "butt (mm)"
    assert heights.text(106.375, "us") == write_length(106.375) == "8 ft 10 3/8 in"
    assert heights.number(1 / 3, "us") == 1 / 3
    assert heights.number(112, "metric") == 2844.8  # given as a whole number, it is one still
    assert heights.text("", "us") == heights.number("", "us") == ""
    assert Column(heading="end", unit="rad").number(pi / 2, "us") == 90.0
    assert Column(heading="needed").number(Amount(144.0, "in2"), "us") == 1.0


def test_facts_have_the_name_the_notes_and_the_version():
    roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    made: Plan = plan(Job(roof=roof, name="=Tool, store", notes="one\ntwo"))
    facts = {row["fact"]: row["value"] for row in read(plan_csv(made, "job"))}
    assert facts["name"] == "'=Tool, store"
    assert facts["notes"] == "one\ntwo"
    assert facts["version"].startswith("roofing-core ")
    assert float(facts["squares"]) == pytest.approx(168 * 112 / 14400)
