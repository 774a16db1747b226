"""Random jobs of single slopes with every choice that an order depends on, and more sizes."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

from roofing_core import (
    Coursing,
    Decking,
    Job,
    Metal,
    Metalwork,
    Nail,
    Nailing,
    Panel,
    Roll,
    Sealing,
    Shingle,
    SingleSlope,
    Starter,
    Underlaying,
    material,
    slope_factor,
)

SHINGLES = ("metric_strip", "inch_three_tab")
PITCHES = tuple(n / 24 for n in (4, 5, 6, 7, 8, 9, 12, 16, 18, 24, 41, 42, 43, 48))


def sixteenths(random: Random, least: float, most: float) -> float:
    """Draw a length in whole sixteenths, or in tenths of a millimetre, which floats do not hold."""
    if random.random() < 0.3:
        return random.randint(round(least * 254), round(most * 254)) / 254
    return random.randint(round(least * 16), round(most * 16)) / 16


def _metal(random: Random, name: str) -> Metal:
    stocks = tuple(sixteenths(random, 70, 150) for _ in range(random.randint(1, 3)))
    return replace(material(Metal, name), stock_lengths=stocks)


def _shingle(random: Random) -> Shingle:
    usual = material(Shingle, random.choice(SHINGLES))
    if random.random() < 0.4:
        return usual
    long, high = sixteenths(random, 14, 48), sixteenths(random, 8, 18)
    exposure = sixteenths(random, 2.5, (high - 2.01) / 2)
    low = sixteenths(random, exposure + 0.1, high - 1.5)
    trims = tuple(sixteenths(random, 0, long - 0.1) for _ in range(random.randint(1, 7)))
    return replace(
        usual,
        kind=random.choice(("laminated", "three_tab")),
        length=long,
        height=high,
        exposure=exposure,
        nail_zone_low=low,
        nail_zone_high=sixteenths(random, low, high),
        sequence=trims,
        per_bundle=random.randint(10, 40),
    )


def _roll(random: Random, name: str, eave: float) -> Roll:
    usual = material(Roll, name)
    if random.random() < 0.3:
        return usual
    long = random.choice([sixteenths(random, 340, 900), eave + sixteenths(random, 4, 90)])
    return replace(usual, width=sixteenths(random, 18, 60), length=max(long, 60.0))


def job(random: Random) -> Job:
    """Draw a job that can be planned, most of the time."""
    eave = sixteenths(random, 24, 500)
    steel = Nail(name="other nail", length=1.25, shank=0.12, head=0.4, head_thickness=0.06,
                 box_weight=random.choice([1.0, 5.0]))  # fmt: skip
    choices: dict[str, Any] = {}
    if random.random() < 0.5:
        choices = {
            "coursing": Coursing(
                starter_past_metal=random.choice([0.25, 0.0, sixteenths(random, 0, 9)]),
                course_past_starter=random.choice([0.25, 0.0, sixteenths(random, 0, 2)]),
                shingle_past_rake=random.choice([0.25, 0.0, sixteenths(random, 0, 60)]),
                edge_distance=random.choice([0.75, sixteenths(random, 0, 4)]),
            ),
            "metalwork": Metalwork(
                lap=sixteenths(random, 1, 9),
                eave_tab=random.choice([0.0, 2.0, sixteenths(random, 0, 4)]),
                ridge_proud=sixteenths(random, 0, 1),
                nail_spacing=sixteenths(random, 4, 16),
                ridge_nail_spacing=sixteenths(random, 4, 16),
                end_distance=sixteenths(random, 0, 3),
                least_piece=sixteenths(random, 0, 20),
            ),
            "underlaying": Underlaying(
                head_lap=sixteenths(random, 2, 8),
                end_lap=sixteenths(random, 3, 8),
                end_lap_stagger=sixteenths(random, 0, 72),
                past_metal=sixteenths(random, 0, 1),
                trim_allowance=sixteenths(random, 0, 3),
                ice_barrier=random.random() < 0.5,
                inside_wall=sixteenths(random, 0, 40),
                over_ice_barrier=sixteenths(random, 0, 6),
                lap_spacing=sixteenths(random, 3, 14),
                field_spacing=sixteenths(random, 6, 26),
                field_lines=random.randint(0, 3),
            ),
            "sealing": Sealing(
                beads_per_leg=random.randint(0, 3),
                bead_size=sixteenths(random, 0.1, 0.5),
                bead_section=random.choice(("round", "half_round", "square", "fillet")),
            ),
        }
    shingle = _shingle(random)
    return Job(
        roof=roof_like(random, eave),
        code_edition=random.choice(("2018", "2021", "2024")),
        shingle=shingle,
        starter=replace(
            material(Starter, random.choice(("self_made_starter", "ready_made_starter"))),
            trim=sixteenths(random, 0, 11),
            length=sixteenths(random, 12, 60),
        ),
        underlayment=_roll(random, "felt_15", eave),
        ice_barrier=_roll(random, "ice_barrier", eave),
        eave_metal=_metal(random, "eave_metal"),
        rake_metal=_metal(random, "rake_metal"),
        ridge_metal=_metal(random, "ridge_metal"),
        metal_nail=random.choice([Job(roof=roof_like(random, eave)).metal_nail, steel]),
        nailing=Nailing(high_wind=random.random() < 0.3),
        decking=Decking(
            lay=random.random() < 0.4,
            support_spacing=random.choice([16.0, 19.2, 24.0]),
            edge_spacing=sixteenths(random, 4, 8),
        ),
        panel=replace(material(Panel, "plywood"), width=random.choice([48.0, 48.0, 36.5])),
        **choices,
    )


def roof_like(random: Random, eave: float) -> SingleSlope:
    """Draw a single slope about as wide, of any height and pitch."""
    pitch = random.choice(PITCHES)
    wide = eave + random.choice([0.0, sixteenths(random, 0, 40), -sixteenths(random, 0, 12)])
    high = random.choice([sixteenths(random, 4, 330), 5.625 * random.randint(1, 40)])
    over = random.choice([0.0, 12.0, sixteenths(random, 0, 20)])
    if random.random() < 0.3:
        return SingleSlope(
            eave_length=wide, run=high / slope_factor(pitch), pitch=pitch, eave_overhang=over
        )
    return SingleSlope(eave_length=wide, slope_length=high, pitch=pitch, eave_overhang=over)
