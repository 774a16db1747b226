"""Roofs that cut pieces every way: openings, courtyards, leaning rakes, eaves a hair off level."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from roofing_core import (
    Chimney,
    Cutting,
    Decking,
    Footprint,
    Gable,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Metalwork,
    Nailing,
    Shingle,
    Side,
    Skylight,
    Underlaying,
    Valleying,
    VentPipe,
    material,
)
from roofing_core.materials import nominal
from roofing_core.roof.measuring import AnyRoof
from tests.workings.shapes import shapes

#: Wings on three sides of a courtyard, and on one with gables.
COURT = ((0, 0), (300, 0), (300, 190), (210, 190), (210, 96), (96, 96), (96, 220), (0, 220))
CROSS = ((0, 0), (300, 0), (300, 110), (200, 110), (200, 190), (90, 190), (90, 110), (0, 110))

OPENINGS = (
    Chimney(plane="front", from_left=90, up_slope=14, width=34, depth=14),
    VentPipe(plane="front", from_left=150, up_slope=40, diameter=3),
    Skylight(plane="back", from_left=70, up_slope=20, width=22, height=24),
)


def _taped(off_level: float) -> GivenPlanes:
    """Give a plane whose eave rises by what a tape is off, with a hip and a leaning rake."""
    plane = GivenPlane(
        name="shed",
        pitch=0.5,
        corners=((0, 0), (160, off_level), (150, 70), (10, 70.0625)),
        edges=("eave", "hip", "ridge", "rake"),
    )
    return GivenPlanes(planes=(plane,))


def _gables(*places: int) -> tuple[Side, ...]:
    return tuple(Side(end="gable" if k in places else "eave") for k in range(8))


def hard_roofs() -> dict[str, tuple[AnyRoof, tuple[Any, ...]]]:
    """Give each roof with its openings, by what is hard about it."""
    ways = shapes()
    return {
        "courtyard": (Footprint(corners=COURT, pitch=0.6), ()),
        "cross of gables": (Footprint(corners=CROSS, pitch=0.5, sides=_gables(1, 4, 7)), ()),
        "gable with openings": (Gable(length=230, width=160, pitch=0.5), OPENINGS),
        "hip with openings": (Hip(length=230, width=160, pitch=0.5), OPENINGS),
        "eave off level": (_taped(0.1), ()),
        "eave off level to the left": (_taped(-0.1), ()),
        "steep": (Gable(length=150, width=60, pitch=2.0), ()),
        **{
            name: (ways[name], ())
            for name in ("ell turned", "odd walls", "gambrel outline turned", "planes by hand")
        },
    }


def jobs(name: str) -> tuple[Job, ...]:
    """Give a roof with all its layers, laid in one way and in another."""
    roof, openings = hard_roofs()[name]
    felt = nominal.FELT_15
    return (
        Job(roof=roof, openings=openings, decking=Decking(lay=True)),
        Job(
            roof=roof,
            openings=openings,
            decking=Decking(lay=True, support_spacing=16),
            underlaying=Underlaying(ice_barrier=True, end_lap_stagger=24.0),
            underlayment=replace(felt, length=432.0),
            shingle=material(Shingle, "metric_three_tab"),
            cutting=Cutting(reuse="best", caps_from="field_shingles"),
            metalwork=Metalwork(buying="across_runs"),
            nailing=Nailing(high_wind=True),
            valleying=Valleying(method="closed_cut"),
        ),
    )
