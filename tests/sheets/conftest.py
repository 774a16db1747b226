"""Plans of roofs that are drawn: small, wide, steep, in metric units, and of several planes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from roofing_core import (
    Footprint,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Plan,
    SingleSlope,
    UnderlaymentWay,
    plan,
    underlayment_on,
)
from roofing_core.job.choices import Choices, Decking, Underlaying
from roofing_core.job.shingles import lay_shingles
from roofing_core.job.wiring import site_of
from roofing_core.measures.units import System
from roofing_core.roof.measuring import AnyRoof

MM = 10 / 254


def single(eave: float, slope: float, pitch: float, **choices: object) -> Plan:
    roof = SingleSlope(eave_length=eave, slope_length=slope, pitch=pitch)
    return plan(Job(roof=roof, **choices))  # type: ignore[arg-type]


FELT = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)


def of_planes(roof: AnyRoof) -> Plan:
    """Give a plan whose planes, courses and pieces are those of a roof of several planes."""
    site = site_of(roof, Choices())
    starters, courses, shingles = lay_shingles(site)
    return replace(
        single(168, 112, 0.25),
        roof=site.roof,
        planes=site.surfaces.planes,
        lines=site.surfaces.lines,
        underlayment=underlayment_on(site.surfaces.planes, way=FELT),
        starter=starters[0],
        starters=starters,
        courses=courses,
        shingles=shingles,
    )


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

MADE: dict[str, tuple[Callable[[], Plan], System]] = {
    "shed": (lambda: single(168, 112, 0.25), "us"),
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
