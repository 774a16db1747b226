"""Random jobs of every form of roof, small, with every choice turned one way or the other."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

from roofing_core import (
    Capping,
    Chimney,
    Coursing,
    Cutting,
    Decking,
    Flashing,
    Footprint,
    Gable,
    Gambrel,
    GivenPlane,
    GivenPlanes,
    Hip,
    Job,
    Metalwork,
    Nailing,
    Pyramid,
    Saltbox,
    Sealing,
    Shingle,
    Side,
    SingleSlope,
    Skylight,
    Starter,
    Underlaying,
    Valleying,
    VentPipe,
    material,
)
from roofing_core.materials import nominal
from roofing_core.roof.measuring import AnyRoof

#: Lengths that a tape reads: quarters of an inch, and millimetres, which no float holds.
MM = 10 / 254


def _size(draw: Random, low: int, high: int) -> float:
    quarters = draw.randint(low * 4, high * 4) / 4
    return round(quarters / MM) * MM if draw.random() < 0.4 else quarters


def _single(draw: Random) -> AnyRoof:
    eave, pitch = _size(draw, 40, 260), draw.choice((2.25, 3, 4, 5.5, 8, 12, 22)) / 12
    walls: Any = {}
    if draw.random() < 0.4:
        walls = {"measured": "walls", "eave_overhang": 8.0, "rake_overhang": 5.5}
    up = _size(draw, 40, 200)
    given: Any = draw.choice(
        (
            {"slope_length": up, "pitch": pitch},
            {"run": up, "pitch": pitch},
            {"run": up, "rise": up * pitch},
        )
    )
    return SingleSlope(eave_length=eave, **given, **walls)


def _of_planes(draw: Random) -> AnyRoof:
    long, wide = _size(draw, 120, 260), _size(draw, 100, 200)
    pitch = draw.choice((3, 5, 6.5, 9, 12)) / 12
    return draw.choice(
        (
            Gable(length=long, width=wide, pitch=pitch, eave_overhang=10.0, measured="walls"),
            Gable(length=long, width=wide, pitch=pitch, back_pitch=pitch * 1.25),
            Hip(length=long + 60, width=wide, pitch=pitch),
            Hip(length=long + 60, width=wide, pitch=pitch, end_pitch=pitch * 1.5),
            Pyramid(length=wide, width=wide, pitch=pitch),
            Saltbox(length=long, width=wide, pitch=pitch, back_eave_drop=wide / 12),
            Gambrel(length=long, width=wide, pitch=1.5, upper_pitch=pitch, break_run=wide / 6),
            _ell(long, wide, pitch),
            _porch(long, pitch),
        )
    )


def _ell(long: float, wide: float, pitch: float) -> Footprint:
    corners = (
        (0.0, 0.0),
        (long, 0.0),
        (long, wide),
        (100.0, wide),
        (100.0, wide + 90.0),
        (0.0, wide + 90.0),
    )
    sides = tuple(Side(name=name) for name in ("front", "right", "inner", "wing", "end", "left"))
    return Footprint(corners=corners, pitch=pitch, sides=sides)


def _porch(long: float, pitch: float) -> GivenPlanes:
    """Give a porch roof against a wall, with a lean-to going on below it."""
    above = GivenPlane(
        name="porch",
        pitch=pitch,
        corners=((0, 0), (long, 0), (long, 60), (0, 60)),
        edges=("pitch_break", "rake", "headwall", "sidewall"),
        beyond=("lean-to", "", "", ""),
    )
    below = GivenPlane(
        name="lean-to",
        pitch=pitch * 0.8 if pitch > 0.3 else pitch,
        corners=((0, 0), (long, 0), (long, 48), (0, 48)),
        edges=("eave", "rake", "pitch_break", "rake"),
        beyond=("", "", "porch", ""),
    )
    return GivenPlanes(planes=(above, below))


def _openings(draw: Random, roof: AnyRoof) -> tuple[VentPipe | Skylight | Chimney, ...]:
    if not isinstance(roof, Gable) or draw.random() < 0.3:
        return ()
    wide = draw.choice((20.0, 32.0))
    return (
        VentPipe(plane="front", from_left=24, up_slope=26, diameter=draw.choice((2.0, 3.5))),
        draw.choice(
            (
                Chimney(plane="back", from_left=40, up_slope=12, width=wide, depth=10.0),
                Skylight(plane="back", from_left=40, up_slope=12, width=wide, height=15.0),
            )
        ),
    )


def _shingle(draw: Random) -> Shingle:
    kind = material(Shingle, draw.choice(("metric_strip", "metric_three_tab")))
    if draw.random() < 0.3:
        kind = replace(kind, exposure=5.0, nail_zone_low=5.75, nail_zone_high=7.5)
    return replace(kind, per_bundle=draw.choice((21, 26)))


def _materials(draw: Random) -> dict[str, Any]:
    starter = nominal.SELF_MADE_STARTER
    if draw.random() < 0.4:
        starter = material(Starter, "ready_made_starter")
    short = replace(nominal.FELT_15, length=draw.choice((432.0, 864.0, 1728.0)))
    stock = draw.choice(((120.0,), (96.0, 120.0), (78.75,)))
    shingle = _shingle(draw)
    return {
        "shingle": shingle,
        "starter": starter,
        "underlayment": short,
        "eave_metal": replace(nominal.EAVE_METAL, stock_lengths=stock),
        "rake_metal": replace(nominal.RAKE_METAL, stock_lengths=stock),
        "metal_nail": draw.choice((nominal.ROOFING_NAIL, nominal.DECK_NAIL)),
    }


def _manner(draw: Random, shingle: Shingle) -> dict[str, Any]:
    bent: Any = ("own_bundles", "field_shingles")
    caps_from: Any = draw.choice(bent) if shingle.kind == "three_tab" else "own_bundles"
    reuse: Any = draw.choice(("none", "none", "best"))
    return {
        "decking": Decking(lay=draw.random() < 0.5),
        "underlaying": Underlaying(
            ice_barrier=draw.random() < 0.5,
            head_lap=draw.choice((2.0, 4.0)),
            end_lap_stagger=24.0,
        ),
        "code_edition": draw.choice(("2018", "2024")),
        "coursing": Coursing(
            course_past_starter=draw.choice((0.0, 0.25)),
            shingle_past_rake=draw.choice((0.25, 0.5)),
        ),
        "cutting": Cutting(reuse=reuse, caps_from=caps_from),
        "metalwork": Metalwork(
            lap=draw.choice((2.0, 6.0)),
            nail_spacing=draw.choice((8.0, 12.0)),
            buying=draw.choice(("run_by_run", "across_runs")),
        ),
        "nailing": Nailing(high_wind=draw.random() < 0.4),
        "sealing": Sealing(bead_section=draw.choice(("round", "half_round", "square", "fillet"))),
        "valleying": Valleying(method=draw.choice(("open", "closed_cut"))),
        "capping": Capping(wind_from=draw.choice(("left", "unknown"))),
        "flashing": Flashing(cricket=draw.choice(("where_required", "always", "never"))),
    }


def random_job(seed: int) -> Job:
    """Draw one job; the same for the same seed."""
    draw = Random(seed)
    roof = _single(draw) if draw.random() < 0.4 else _of_planes(draw)
    materials = _materials(draw)
    manner = _manner(draw, materials["shingle"])
    return Job(roof=roof, openings=_openings(draw, roof), **materials, **manner)
