"""Good plans to break: the example shed, a long one with end laps, one with an ice barrier."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import Job, SingleSlope, Underlaying, plan
from roofing_core.auditing.finished import FinishedPlan, finished


@pytest.fixture(scope="session")
def good(shed: Job) -> dict[str, FinishedPlan]:
    """Give the good plans by their names."""
    long = SingleSlope(eave_length=756, slope_length=160, pitch=5 / 12)
    cold = SingleSlope(eave_length=168, slope_length=112, pitch=5 / 12, eave_overhang=12)
    jobs = {
        "shed": shed,
        "long": replace(shed, roof=long),
        "cold": replace(shed, roof=cold, underlaying=Underlaying(ice_barrier=True)),
    }
    return {name: finished(plan(job)) for name, job in jobs.items()}
