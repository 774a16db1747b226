"""Importing the library does no work, and loads nothing heavy until it is needed."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HEAVY = ("pint", "numpy", "pydantic", "fastapi", "starlette", "uvicorn", "scipy", "shapely")

USES = {
    "importing": "",
    "planning": (
        "roofing_core.plan_text(roofing_core.plan(roofing_core.Job(roof="
        "roofing_core.SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))"
    ),
    "reading": "roofing_core.read_length('9 ft 4 in'), roofing_core.slope_factor(0.25)",
}


def loaded(use: str) -> set[str]:
    """Import the library in a fresh interpreter, use it, and give what was loaded at the top."""
    code = f"import sys, roofing_core\n{use}\nprint(*{{n.partition('.')[0] for n in sys.modules}})"
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT)}
    told = subprocess.run(
        [sys.executable, "-c", code], env=surroundings, cwd=ROOT, check=True, capture_output=True
    )
    return set(told.stdout.decode().split())


@pytest.mark.parametrize("use", USES.values(), ids=USES.keys())
def test_nothing_heavy_is_loaded(use):
    names = loaded(use)
    assert "roofing_core" in names
    assert names.isdisjoint(HEAVY)


def test_a_quantity_loads_pint():
    # What this looks for can be found: pint is loaded when a quantity is asked for.
    assert "pint" in loaded("roofing_core.to_quantity(1)")


def test_a_column_is_used_as_it_comes():
    use = "import numpy; print(roofing_core.slope_factor(numpy.array([0.25])).shape)"
    assert "numpy" in loaded(use)
