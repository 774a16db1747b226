"""Plans of roofs that are drawn: small, wide, steep, in metric units, and of several planes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from roofing_core import (
    Chimney,
    Footprint,
    Gable,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Plan,
    Shingle,
    SingleSlope,
    Skylight,
    VentPipe,
    material,
    plan,
)
from roofing_core.job.choices import Cutting, Decking, Underlaying
from roofing_core.measures.units import System
from roofing_core.roof.measuring import AnyRoof

MM = 10 / 254


def single(eave: float, slope: float, pitch: float, **choices: object) -> Plan:
    roof = SingleSlope(eave_length=eave, slope_length=slope, pitch=pitch)
    return plan(Job(roof=roof, **choices))  # type: ignore[arg-type]


def of_planes(roof: AnyRoof, **choices: object) -> Plan:
    return plan(Job(roof=roof, **choices))  # type: ignore[arg-type]


ELL = Footprint(corners=((0, 0), (360, 0), (360, 180), (120, 180), (120, 300), (0, 300)), pitch=0.5)
BY_HAND = GivenPlanes(
    planes=(
        GivenPlane(
            name="porch <&>",
            corners=((0, 0), (90, 0), (90, 60), (0, 60)),
            edges=("eave", "rake", "headwall", "sidewall"),
            pitch=0.25,
        ),
        GivenPlane(
            name="end",
            corners=((0, 0), (150, 0), (75, 100)),
            edges=("eave", "rake", "rake"),
            pitch=0.8,
        ),
    )
)

OPENINGS = (
    Chimney(plane="side 1", from_left=150, up_slope=30, width=36, depth=20),
    Skylight(plane="side 6", from_left=120, up_slope=20, width=24, height=36),
    VentPipe(plane="side 2", from_left=90, up_slope=40, diameter=3),
)

MADE: dict[str, tuple[Callable[[], Plan], System]] = {
    "shed": (lambda: single(168, 112, 0.25), "us"),
    "shed with offcuts used again": (
        lambda: single(168, 112, 0.25, cutting=Cutting(reuse="best")), "us",
    ),
    "hip with offcuts used again": (
        lambda: of_planes(
            Hip(length=432, width=288, pitch=0.5), shingle=material(Shingle, "metric_three_tab"),
            cutting=Cutting(reuse="best", caps_from="field_shingles"),
        ),
        "metric",
    ),
    "tiny": (lambda: single(30, 20, 0.5), "us"),
    "very wide": (lambda: single(1440, 96, 0.3), "us"),
    "steep": (lambda: single(120, 400, 2.0), "us"),
    "metric": (
        lambda: single(
            4200 * MM, 3100 * MM, 0.4, decking=Decking(lay=True),
            underlaying=Underlaying(ice_barrier=True),
        ),
        "metric",
    ),
    "2,000 pieces": (lambda: single(960, 432, 0.5), "us"),
    "hip": (lambda: of_planes(Hip(length=432, width=288, pitch=0.5)), "us"),
    "ell": (lambda: of_planes(ELL), "metric"),
    "ell with openings": (
        lambda: of_planes(ELL, openings=OPENINGS, underlaying=Underlaying(ice_barrier=True)),
        "us",
    ),
    "gable": (lambda: of_planes(Gable(length=240, width=200, pitch=0.5)), "us"),
    "by hand": (lambda: of_planes(BY_HAND), "us"),
}  # fmt: skip


@cache
def planned(name: str) -> tuple[Plan, System]:
    make, system = MADE[name]
    return make(), system


@pytest.fixture(params=list(MADE))
def drawn_plan(request: pytest.FixtureRequest) -> tuple[Plan, System]:
    """Give each plan with the unit system that it is drawn in."""
    return planned(request.param)


def called(plan: Plan, name: str) -> Plan:
    """Give a plan in which all that has a name is called by one."""
    named = ("underlayment", "ice_barrier", "shingle", "panel", "cap", "valley_lining")
    rows = tuple(replace(row, plane=name) for row in plan.underlayment.rows)
    laps = tuple(replace(one, plane=name) for one in plan.underlayment.planes)
    choices = replace(
        plan.choices, **{one: replace(getattr(plan.choices, one), name=name) for one in named}
    )
    return replace(
        plan,
        choices=choices,
        planes=tuple(replace(plane, name=name) for plane in plan.planes),
        courses=tuple(replace(course, plane=name) for course in plan.courses),
        starters=tuple(replace(strip, plane=name) for strip in plan.starters),
        lines=tuple(replace(line, planes=(name,)) for line in plan.lines),
        underlayment=replace(plan.underlayment, rows=rows, planes=laps),
        metal=tuple(replace(run, material=name, plane=name) for run in plan.metal),
    )
