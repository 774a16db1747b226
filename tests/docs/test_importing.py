"""Importing the library does no work, and loads nothing until it is needed."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

import roofing_core

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


def modules(use: str) -> set[str]:
    """Import the library in a fresh interpreter, use it, and give the modules that were loaded."""
    code = f"import sys, roofing_core\n{use}\nprint(*sys.modules)"
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT)}
    told = subprocess.run(
        [sys.executable, "-c", code], env=surroundings, cwd=ROOT, check=True, capture_output=True
    )
    return set(told.stdout.decode().split())


def loaded(use: str) -> set[str]:
    """The same, by the names at the top."""
    return {name.partition(".")[0] for name in modules(use)}


def chapters(use: str) -> set[str]:
    """Give the modules of the library that were loaded."""
    return {name for name in modules(use) if name.partition(".")[0] == "roofing_core"}


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


def test_importing_reads_no_chapter_and_a_use_reads_its_own():
    assert chapters("") == {"roofing_core", "roofing_core.version"}
    read = chapters("roofing_core.read_length('9 ft 4 in')")
    assert "roofing_core.measures.reading" in read
    assert not [name for name in read if "measures" not in name and name.count(".") > 1]
    assert "roofing_core.job.plan" in chapters("roofing_core.plan")


def imported_for_type_checkers() -> dict[str, str]:
    """Give the public names as a type checker sees them: where each is imported from."""
    tree = ast.parse(Path(roofing_core.__file__).read_text(encoding="utf-8"))
    (branch,) = (node for node in tree.body if isinstance(node, ast.If))
    assert ast.unparse(branch.test) == "TYPE_CHECKING"
    return {
        alias.name: str(node.module)
        for node in branch.body
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
    }


def test_a_public_name_is_the_same_to_python_and_to_a_type_checker():
    seen = imported_for_type_checkers()
    assert sorted(roofing_core.__all__) == sorted(["__version__", *seen])
    for name, home in seen.items():
        value = getattr(roofing_core, name)
        assert value is getattr(sys.modules[home], name), name
        assert name in dir(roofing_core)


def test_every_public_name_comes_with_a_star():
    taken = "from roofing_core import *; assert set(roofing_core.__all__) <= set(globals())"
    assert "roofing_core.sheets.text" in modules(taken)


def test_a_name_that_is_not_there_is_told_as_python_tells_it():
    with pytest.raises(AttributeError, match=r"^module 'roofing_core' has no attribute 'plann'$"):
        # A type checker has to know it too, else it would call this exemption unused.
        _ = roofing_core.plann  # type: ignore[attr-defined]
