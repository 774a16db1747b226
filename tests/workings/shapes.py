"""Roofs measured in every way that they can be: each form, walls or deck, each pair of sizes."""

from __future__ import annotations

from math import cos, radians, sin
from typing import Any

from roofing_core import (
    Footprint,
    Gable,
    Gambrel,
    GivenPlane,
    GivenPlanes,
    Hip,
    Pyramid,
    Saltbox,
    Side,
    SingleSlope,
)
from roofing_core.roof.measuring import AnyRoof


def _turned(corners: list[tuple[float, float]], degrees: float) -> tuple[tuple[float, float], ...]:
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return tuple((x * c - y * s, x * s + y * c) for x, y in corners)


#: A cross-gabled outline, its sides named from the front round.
ELL = [(0.0, 0.0), (210.0, 0.0), (210.0, 120.0), (96.0, 120.0), (96.0, 216.0), (0.0, 216.0)]

#: Five sides, no two of them parallel or square.
ODD = [(0.0, 0.0), (200.0, 20.0), (230.0, 140.0), (110.0, 190.0), (-20.0, 110.0)]

WALLS: Any = {"measured": "walls", "eave_overhang": 10.0}

SINGLE: Any = {
    "slope_length": 96.0,
    "run": 90.0,
    "rise": 33.0,
    "pitch": 0.4,
}


def _singles() -> dict[str, AnyRoof]:
    found: dict[str, AnyRoof] = {}
    names = tuple(SINGLE)
    for k, one in enumerate(names):
        for other in names[k + 1 :]:
            two = {one: SINGLE[one], other: SINGLE[other]}
            found[f"deck by {one} and {other}"] = SingleSlope(eave_length=140, **two)
            found[f"walls by {one} and {other}"] = SingleSlope(
                eave_length=140, rake_overhang=6, ridge_overhang=3.5, **WALLS, **two
            )
    return found


def _planes() -> GivenPlanes:
    """Give two planes on a ridge that was taped 1/2 in longer from the back, one clockwise."""
    front = GivenPlane(
        name="front",
        pitch=0.5,
        corners=((30, 2), (190, 2), (190, 92), (30, 92)),
        edges=("eave", "rake", "ridge", "rake"),
        beyond=("", "", "back", ""),
    )
    back = GivenPlane(
        name="back",
        pitch=0.75,
        corners=((0, 0), (0, 80), (160.5, 80), (160.5, 0)),
        edges=("rake", "ridge", "rake", "eave"),
        beyond=("", "front", "", ""),
    )
    return GivenPlanes(planes=(front, back), eave_overhang=8)


def shapes() -> dict[str, AnyRoof]:
    """Give every roof by what it is and how it was measured."""
    gables: Any = {"length": 180.0, "width": 144.0, "pitch": 0.5}
    broken = tuple(
        Side(upper_pitch=0.4, break_run=30) if k % 2 == 0 else Side(end="gable") for k in range(4)
    )
    odd_sides = tuple(
        Side(pitch=pitch, eave_height=height)
        for pitch, height in ((0.5, 12.0), (0.45, 12.0), (0.6, 12.0), (0.5, 12.0), (0.55, 14.0))
    )
    return {
        **_singles(),
        "gable deck": Gable(**gables),
        "gable walls": Gable(**gables, back_pitch=0.7, rake_overhang=6, **WALLS),
        "saltbox by drop": Saltbox(**gables, back_eave_drop=14, **WALLS),
        "saltbox by ridge run": Saltbox(**gables, ridge_run=60, rake_overhang=4, **WALLS),
        "saltbox by ridge run, back higher": Saltbox(**gables, ridge_run=80),
        "gambrel deck": Gambrel(length=180, width=144, pitch=1.5, upper_pitch=0.4, break_run=24),
        "gambrel walls": Gambrel(
            length=180, width=144, pitch=1.5, upper_pitch=0.4, break_run=24, **WALLS
        ),
        "hip deck": Hip(length=220, width=144, pitch=0.5),
        "hip walls": Hip(length=220, width=144, pitch=0.5, end_pitch=0.8, **WALLS),
        "pyramid by rise": Pyramid(length=180, width=150, rise=40, **WALLS),
        "pyramid by pitch": Pyramid(length=180, width=150, pitch=0.5),
        "pyramid by pitch over walls": Pyramid(length=180, width=150, pitch=0.5, **WALLS),
        "ell deck": Footprint(corners=tuple(ELL), pitch=0.5),
        "ell walls, clockwise": Footprint(corners=tuple(ELL[::-1]), pitch=0.5, **WALLS),
        "ell turned": Footprint(corners=_turned(ELL, 27), pitch=0.5, **WALLS),
        "ell with gables": Footprint(
            corners=tuple(ELL),
            pitch=0.5,
            sides=tuple(Side(end="gable" if k in (1, 4) else "eave") for k in range(6)),
            rake_overhang=6,
            **WALLS,
        ),
        "odd deck": Footprint(corners=tuple(ODD), sides=odd_sides),
        "odd walls": Footprint(corners=tuple(ODD), sides=odd_sides, **WALLS),
        "gambrel outline turned": Footprint(
            corners=_turned([(0, 0), (180, 0), (180, 140), (0, 140)], -14),
            pitch=1.25,
            sides=broken,
            **WALLS,
        ),
        "planes by hand": _planes(),
    }
