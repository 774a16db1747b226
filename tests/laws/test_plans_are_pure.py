"""A plan depends on its job and on nothing else, and holds only what can be shown."""

from __future__ import annotations

import os
import subprocess
import sys
from copy import deepcopy
from dataclasses import replace
from math import isfinite
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core import Decking, plan, plan_text
from tests.laws.walking import leaves, sentences
from tests.recount.jobs import drawn

ROOT = Path(__file__).resolve().parents[2]

PRINT_PLAN = """
from hashlib import sha256
from roofing_core import Job, SingleSlope, plan, plan_text
planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)))
whole = repr(planned) + plan_text(planned) + plan_text(planned, "metric")
print(sha256(whole.encode()).hexdigest())
"""


@settings(max_examples=50)
@given(drawn(), st.booleans())
def test_the_same_job_gives_the_same_plan_and_the_same_bytes(given, more):
    job = replace(
        given.job(),
        decking=Decking(lay=more),
        underlaying=replace(given.job().underlaying, ice_barrier=more),
    )
    asked = deepcopy(job)
    first, second = plan(job), plan(asked)
    assert first == second
    assert job == asked
    assert hash(first) == hash(second)
    for system in ("us", "metric"):
        assert plan_text(first, system).encode() == plan_text(second, system).encode()
    assert plan_text(first) != plan_text(first, "metric")


def test_the_plan_is_the_same_in_every_interpreter():
    def printed(seed: str) -> bytes:
        surroundings = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
        command = [sys.executable, "-c", PRINT_PLAN]
        return subprocess.run(
            command, env=surroundings, cwd=ROOT, check=True, capture_output=True
        ).stdout

    one, other = printed("1"), printed("4242")
    assert one == other
    assert len(one.strip()) == 64


@settings(max_examples=60)
@given(drawn(), st.booleans())
def test_every_number_in_a_plan_is_finite_and_every_sentence_says_it(given, more):
    job = replace(given.job(), decking=Decking(lay=more))
    planned = plan(job)
    for at, leaf in leaves(planned):
        # What a roof was not measured by: a run, where the slope was.
        assert leaf is not None or at.startswith("as_measured.roof."), at
        assert not isinstance(leaf, float) or isfinite(leaf), at
    told = list(sentences(planned))
    assert len(told) > 20
    for system in ("us", "metric"):
        for sentence in told:
            words = sentence.written(system).split()
            assert words, "an empty sentence"
            assert not {word.strip("-.,;:()") for word in words} & {"nan", "inf", "None"}
            # No word is left out between two stops, as where a list came to nothing.
            assert not {".", ",", ";", ":"} & set(words), sentence.written(system)


@settings(max_examples=40)
@given(drawn(), st.sampled_from(["us", "metric"]))
def test_the_text_fits_its_width_and_ends_its_lines(given, system):
    text = plan_text(plan(given.job()), system)
    lines = text.splitlines()
    assert text.endswith("\n")
    assert not [line for line in lines if line != line.rstrip()]
    assert text.isprintable() or text.replace("\n", "").isprintable()
    assert lines[0].startswith("SINGLE-SLOPE ROOF")


@pytest.mark.parametrize("form", ["eave_length", "slope_length"])
def test_a_plan_follows_its_roof(shed, form):
    # Another roof gives another plan: nothing is remembered from the one before.
    before = plan(shed)
    other = plan(replace(shed, roof=replace(shed.roof, **{form: 100.0})))
    assert other != before
    assert plan(shed) == before
