"""Our own digits, kept against change. They are no authority: what is right is tested elsewhere.

``plans.json`` holds what five roofs came to when it was last written. A difference means that an
answer changed; whoever meant it to writes the file anew and says in the changelog for which roofs,
from what, to what:

    python -m pytest tests/regression --write-regression

The file is compared byte for byte, so that it comes out the same on every machine.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from roofing_core import Decking, Job, Plan, SingleSlope, Underlaying, material, plan, read_length
from roofing_core.materials import Shingle

KEPT = Path(__file__).parent / "plans.json"

ROOFS: dict[str, Job] = {
    "example shed": Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)),
    "tiny": Job(roof=SingleSlope(eave_length=20, slope_length=9, pitch=5 / 12)),
    "wide, with deck and ice barrier": Job(
        roof=SingleSlope(eave_length=1440, run=240, pitch=4 / 12, eave_overhang=16),
        decking=Decking(lay=True),
        underlaying=Underlaying(ice_barrier=True),
    ),
    "steep, 24:12": Job(roof=SingleSlope(eave_length=300, run=60, pitch=24 / 12)),
    "metric sizes": Job(
        roof=SingleSlope(
            eave_length=read_length("4.27 m"),
            rise=read_length("700 mm"),
            run=read_length("2650 mm"),
            measured="walls",
            eave_overhang=read_length("300 mm"),
            ridge_overhang=read_length("150 mm"),
            rake_overhang=read_length("150 mm"),
        ),
        shingle=material(Shingle, "metric_three_tab"),
    ),
}


def rounded(value: float) -> float:
    """Give a number to nine figures: what a person could measure, and the same on every machine."""
    return float(f"{value:.9g}")


def summary(planned: Plan) -> dict[str, Any]:
    """Give what a plan comes to: sizes, counts, order, findings and cautions."""
    shingles = planned.shingles
    return {
        "squares": rounded(planned.squares),
        "slope length": rounded(planned.roof.slope_length),
        "courses": shingles.courses,
        "closing courses": shingles.closing_courses,
        "pieces": shingles.pieces,
        "starter pieces": planned.starter.pieces,
        "last butt": rounded(shingles.last_butt),
        "narrowest end piece": rounded(shingles.narrowest_end_piece),
        "least clearance": rounded(shingles.least_clearance),
        "nails": {use.use: use.nails for use in planned.nails},
        "rows of underlayment": len(planned.underlayment.rows),
        "rows of ice barrier": len(planned.ice_barrier.rows),
        "metal": {run.edge: list(map(rounded, run.lengths)) for run in planned.metal},
        "panels": planned.deck.panels,
        "sealant": rounded(planned.sealant.total_volume),
        "on the deck": rounded(planned.weight.on_deck),
        "to carry": rounded(planned.weight.to_carry),
        "order": {line.item: line.packs for line in planned.order.lines()},
        "left over": {line.item: rounded(line.left_over.value) for line in planned.order.lines()},
        "findings": [f"{found.rule} at {found.place}" for found in planned.findings],
        "cautions": [caution.about for caution in planned.cautions],
        "steps": len(planned.steps),
    }


@pytest.fixture(scope="module")
def kept(request: pytest.FixtureRequest) -> bytes:
    """Give the kept bytes, written anew first when that was asked for."""
    if request.config.getoption("--write-regression"):
        KEPT.write_bytes(computed())
    return KEPT.read_bytes()


def computed() -> bytes:
    """Give the bytes that the file should have."""
    text = json.dumps(
        {name: summary(plan(job)) for name, job in ROOFS.items()},
        indent=2,
        ensure_ascii=False,
        allow_nan=False,
    )
    return f"{text}\n".encode()


@pytest.mark.parametrize("name", ROOFS)
def test_a_roof_comes_to_what_it_came_to(name, kept):
    assert summary(plan(ROOFS[name])) == json.loads(kept)[name]


def test_the_file_is_byte_for_byte_what_is_computed(kept):
    assert kept == computed()
    assert list(json.loads(kept)) == list(ROOFS)
