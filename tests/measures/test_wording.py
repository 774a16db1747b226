"""What a caller writes for the sheets: kept as it came, or refused by its name."""

from __future__ import annotations

from unicodedata import category

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import Job, Refused, SingleSlope, plan, plan_text
from roofing_core.job.choices import NAME, NOTES
from roofing_core.measures.wording import Wording

ROOF = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)


@pytest.mark.parametrize(
    "text",
    ["", "Tool store", "x" * 80, "=1+1", "<b>&amp;</b>", "Atelier n° 3", "屋根", "e\u0301"],
)
def test_a_name_is_kept_as_it_came(text):
    assert plan(Job(roof=ROOF, name=text)).name == text


@pytest.mark.parametrize(
    "text",
    [
        "x" * 81, "two\nlines", "tab\there", "\x00", "\x1b[31m", "\x7f", "\x85", "\u2028", "\u2029",
        "\ud800", "\u202egnp.exe", "\u2066", "\ufffe", "\uffff",
    ],
)  # fmt: skip
def test_a_name_that_is_too_long_or_has_what_no_letter_is_is_refused(text):
    with pytest.raises(Refused) as refused:
        plan(Job(roof=ROOF, name=text))
    (fault,) = refused.value.faults
    assert fault.at == ("name",)
    assert fault.wanted.written() == "at most 80 characters, and no control characters"
    assert str(fault.came).isprintable()


@pytest.mark.parametrize(
    ("text", "is_kept"),
    [
        ("x" * 1000, True), ("x" * 1001, False),
        ("\n" * 19, True), ("\n" * 20, False),
        ("Key under the pot.\nMind the dog.", True), ("\r\n", False),
    ],
)  # fmt: skip
def test_notes_have_lines_and_both_limits_hold(text, is_kept):
    assert (NOTES.fault("notes", text) is None) == is_kept


def test_faults_of_the_words_and_of_the_roof_are_told_together():
    with pytest.raises(Refused) as refused:
        plan(Job(roof=SingleSlope(eave_length=-1, slope_length=112, pitch=0.25), name="\t"))
    assert {fault.at[-1] for fault in refused.value.faults} == {"name", "eave_length"}


@given(st.text(max_size=30))
def test_no_control_character_is_ever_kept(text):
    controls = {letter for letter in text if category(letter) in {"Cc", "Cs", "Zl", "Zp"}}
    assert not (controls and Wording(30).fault("name", text) is None)


@given(st.text(st.characters(categories=("L", "N", "P", "S")), max_size=30))
def test_letters_figures_and_marks_are_kept(text):
    assert NAME.fault("name", text) is None


def test_name_and_notes_stand_on_the_sheet_of_text():
    planned = plan(Job(roof=ROOF, name="Tool store", notes="Key under the pot.\n\nMind the dog."))
    lines = plan_text(planned).splitlines()
    assert lines[:3] == ["Tool store", "", plan_text(plan(Job(roof=ROOF))).splitlines()[0]]
    at = lines.index("Key under the pot.")
    assert lines[at - 1 : at + 4] == ["", "Key under the pot.", "", "Mind the dog.", ""]
    assert lines[at + 4] == "ORDER LIST"
