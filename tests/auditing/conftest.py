"""Good plans to break: sheds, and roofs of several planes with all that can be on them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import (
    Chimney,
    Footprint,
    Gambrel,
    Job,
    SingleSlope,
    Skylight,
    Underlaying,
    VentPipe,
    plan,
)
from roofing_core.auditing.finished import FinishedPlan, finished
from roofing_core.job.choices import Valleying
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes

#: A chimney so wide that it takes a cricket, a skylight, a pipe.
OPENINGS = (
    Chimney(plane="side 1", from_left=200, up_slope=30, width=36, depth=20),
    Skylight(plane="side 6", from_left=150, up_slope=40, width=24, height=38),
    VentPipe(plane="side 1", from_left=300, up_slope=40, diameter=3),
)

#: A porch roof between two walls, and the lean-to that goes on below it.
PORCH = GivenPlane(
    name="porch",
    pitch=5 / 12,
    corners=((0, 0), (168, 0), (168, 72), (0, 72)),
    edges=("pitch_break", "rake", "headwall", "sidewall"),
    beyond=("lean-to", "", "", ""),
)
LEAN_TO = GivenPlane(
    name="lean-to",
    pitch=4 / 12,
    corners=((0, 0), (168, 0), (168, 48), (0, 48)),
    edges=("eave", "rake", "pitch_break", "rake"),
    beyond=("", "", "porch", ""),
)


@pytest.fixture(scope="session")
def good(shed: Job) -> dict[str, FinishedPlan]:
    """Give the good plans by their names."""
    long = SingleSlope(eave_length=756, slope_length=160, pitch=5 / 12)
    cold = SingleSlope(eave_length=168, slope_length=112, pitch=5 / 12, eave_overhang=12)
    angle = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    house = replace(shed, roof=Footprint(corners=angle, pitch=0.5))
    jobs = {
        "house": replace(house, openings=OPENINGS),
        "closed": replace(house, valleying=Valleying(method="closed_cut")),
        "barn": replace(
            shed, roof=Gambrel(length=240, width=200, pitch=1.5, upper_pitch=0.5, break_run=40)
        ),
        "porch": replace(shed, roof=GivenPlanes(planes=(PORCH, LEAN_TO))),
        "shed": shed,
        "long": replace(shed, roof=long),
        "cold": replace(shed, roof=cold, underlaying=Underlaying(ice_barrier=True)),
    }
    return {name: finished(plan(job)) for name, job in jobs.items()}
