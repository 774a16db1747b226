"""Every choice does something: no field of a material or of a way of working is only repeated."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import Any, get_args, get_type_hints

import pytest

from roofing_core import (
    Chimney,
    Choices,
    Footprint,
    Gable,
    Gambrel,
    GivenPlane,
    GivenPlanes,
    Job,
    Refused,
    Shingle,
    SingleSlope,
    Skylight,
    VentPipe,
    material,
    plan,
)
from tests.job.changing import changed

#: What only tells which pipe does not fit.
ONLY_REFUSED = {"pipe_flashing.largest_pipe"}

PARTS = [part.name for part in fields(Choices) if is_dataclass(part.default)]
ALONE = [part.name for part in fields(Choices) if part.name not in PARTS]
PLACES = [
    f"{part}.{field.name}"
    for part in PARTS
    for field in fields(getattr(Choices(), part))
    if field.name != "name" and f"{part}.{field.name}" not in ONLY_REFUSED
]

ANGLE = Footprint(
    corners=((0, 0), (480, 0), (480, 240), (240, 240), (240, 480), (0, 480)), pitch=0.5
)
BARN = Gambrel(length=240, width=240, pitch=1.5, upper_pitch=0.5, break_run=50)
PORCH = GivenPlanes(
    planes=(
        GivenPlane(
            name="porch",
            pitch=0.5,
            corners=((0, 0), (240, 0), (240, 90), (0, 90)),
            edges=("eave", "rake", "headwall", "rake"),
        ),
    )
)

OPENINGS = (
    VentPipe(plane="slope", from_left=60, up_slope=40, diameter=3),
    Skylight(plane="slope", from_left=200, up_slope=30, width=24, height=40),
    Chimney(plane="slope", from_left=400, up_slope=40, width=36, depth=20),
)

#: Roofs on which one thing or another comes into play that others do not have.
OTHERWISE: dict[str, dict[str, Any]] = {
    "as it is": {},
    "with a deck": {"decking__lay": True},
    "with an ice barrier": {"underlaying__ice_barrier": True},
    "with an ice barrier of short rolls": {
        "underlaying__ice_barrier": True, "ice_barrier__length": 400.0,
    },
    "with a wide ice barrier": {
        "underlaying__ice_barrier": True, "underlaying__inside_wall": 60.0,
    },
    "with an ice barrier on a steeper roof": {
        "underlaying__ice_barrier": True, "underlaying__inside_wall": 20.0, "roof__pitch": 9 / 12,
        "roof__eave_overhang": 0.0,
    },
    "steep": {"roof__pitch": 2.0},
    "with ready-made starter": {"starter__made": "ready_made"},
    "with a short rest of metal": {"roof__eave_length": 470.0},
    "with a narrow ridge metal": {"ridge_metal__deck_leg": 1.75},
    "with joints just clear": {"shingle__sequence": (0.0, 4.0)},
    "with narrow end pieces": {"roof__eave_length": 160.0},
    "with hips and a valley": {"roof": ANGLE},
    "with a closed valley": {"roof": ANGLE, "valleying__method": "closed_cut"},
    "with a closed valley and short strips": {
        "roof": ANGLE, "valleying__method": "closed_cut", "shingle__length": 26.0,
    },
    "with hips and three-tab shingles": {
        "roof": ANGLE, "shingle": material(Shingle, "metric_three_tab"),
    },
    "with a lining of short rolls": {"roof": ANGLE, "valley_lining__length": 120.0},
    "with pitch breaks": {"roof": BARN},
    "with openings": {"openings": OPENINGS},
    "with crickets": {"openings": OPENINGS, "flashing__cricket": "always"},
    "with a small sheet": {
        "openings": OPENINGS, "flashing_sheet__length": 30.0, "flashing_sheet__width": 20.0,
    },
    "below a wall": {"roof": PORCH},
    "below a wall, with narrow metal": {"roof": PORCH, "apron_metal__deck_leg": 4.0},
    "with narrow caps": {"roof": ANGLE, "cap__width": 12.0},
    "with a ridge that the wind meets": {
        "roof": Gable(length=400, width=200, pitch=0.5), "capping__wind_from": "left",
    },
    "in the wind": {
        "wind__design_speed": 120.0, "shingle__class_d7158": "D", "shingle__class_d3161": "A",
    },
    "in the wind, without a class": {"wind__design_speed": 110.0},
    "high up in the wind": {"wind__design_speed": 110.0, "wind__roof_height": 700.0},
    "as heavy as it may be": {"loading__dead_load_allowed": 1.0},
    "over an attic": {
        "venting__vented_area": 1500 * 144.0, "venting__high_area": 719.0,
        "venting__low_area": 720.0,
    },
    "with a thin nail": {"shingle_nail__shank": 0.106, "metal_nail__shank": 0.106},
}  # fmt: skip


@pytest.fixture(scope="module")
def long_roof() -> Job:
    """Give a roof with laps in its metal and end laps in its underlayment."""
    return Job(roof=SingleSlope(eave_length=900, slope_length=112, pitch=5 / 12, eave_overhang=12))


def others(value: Any, kind: Any) -> tuple[Any, ...]:
    """Give other values of the same kind, some near and some far."""
    if isinstance(value, bool):
        return (not value,)
    if isinstance(value, int):
        return (value + 1, 2 * value + 2)
    if isinstance(value, float):
        return (1.1 * value + 0.01, 2 * value + 0.1, value / 2)
    if isinstance(value, tuple):
        return ((value[0] + 17,), (value[0] / 2 + 5, *value))
    return tuple(one for one in get_args(kind) if one != value)


def shown(job: Job) -> Any:
    """Give all of a plan but the choices that it repeats; None where the job cannot be built."""
    try:
        return replace(plan(job), choices=Choices())
    except Refused:
        return None


@pytest.mark.parametrize("place", [*PLACES, *ALONE])
def test_another_value_gives_another_plan(long_roof, place):
    part, _, name = place.rpartition(".")
    for change in OTHERWISE.values():
        job = changed(long_roof, **change)
        whole = getattr(job, part) if part else job
        value = getattr(whole, name)
        kind = get_type_hints(type(whole))[name]
        before = shown(job)
        for other in others(value, kind):
            try:
                after = shown(changed(job, **{place.replace(".", "__"): other}))
            except Refused:
                continue
            if after is not None and after != before:
                return
    pytest.fail(f"{place} changes nothing in any of these plans")


@pytest.mark.parametrize("part", [part.name for part in fields(Choices)])
def test_the_plan_repeats_what_was_chosen(long_roof, part):
    chosen = getattr(plan(long_roof).choices, part)
    assert chosen == getattr(long_roof, part) == getattr(Choices(), part)


def test_high_wind_takes_six_nails_and_a_closer_pattern_of_cap_nails(long_roof):
    usual, windy = plan(long_roof), plan(changed(long_roof, nailing__high_wind=True))
    assert (usual.shingles.nails_per_strip, windy.shingles.nails_per_strip) == (4, 6)
    assert windy.underlayment.fasteners > usual.underlayment.fasteners


def test_the_plan_names_the_material_that_was_chosen(long_roof):
    named = changed(long_roof, shingle__name="what we have", sealant__name="the grey tube")
    order = plan(named).order
    assert order.shingles.material == "what we have"
    assert order.sealant.material == "the grey tube"
