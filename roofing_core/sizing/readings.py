"""Readings: how finely and how far around a roof is looked when its margins are sought."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from roofing_core.measures.faults import Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount
from roofing_core.measures.units import Inches, Pitch
from roofing_core.sizing.walks import whole_steps

#: The finest mark of a usual tape, and how far off a reading is looked after.
STEP, REACH = 1 / 16, 3.0
#: Common practice, no published source: a pitch is read to 1/4 in over 12 in of level.
PITCH_STEP, PITCH_REACH = 1 / 4 / 12, 2 / 12
#: How far growth is looked after, and in which steps where each takes a plan.
GROWTH_REACH, PLANNED_GROWTH_STEP = 24.0, 0.5
#: Plans that are made where sizes cannot be counted at once, and pieces that these may lay.
MOST_PLANS, MOST_PIECES = 60, 100_000

#: More steps than this are not looked at one way.
MOST_STEPS = 1_000
#: More plans than this are not made in one call.
PLANS_LIMIT = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """How finely and how far around a roof is looked.

    Attributes:
        step: The finest reading of a length.
        reach: How far off the reading of a length can be, either way, in whole steps.
        pitch_step: The finest reading of a pitch.
        pitch_reach: How far off the reading of a pitch can be, either way, in whole steps.
        growth_step: Steps in which the roof grows; unless given, those of lengths where sizes are
            counted at once, and 1/2 in where each takes a plan.
        growth_reach: How far it grows.
        most_plans: The most plans that are made where sizes cannot be counted at once; fewer where
            they would lay over 100,000 pieces together, and one at least.
    """

    step: Inches = STEP
    reach: Inches = REACH
    pitch_step: Pitch = PITCH_STEP
    pitch_reach: Pitch = PITCH_REACH
    growth_step: Inches | None = None
    growth_reach: Inches = GROWTH_REACH
    most_plans: int = MOST_PLANS


def check_reading(reading: Reading) -> None:
    """Refuse a reading whose steps are none, or too many.

    Args:
        reading: How finely and how far is looked.

    Raises:
        Refused: A step or a reach is not over 0, a reach is shorter than its step or has more than
            1,000 of them, or the plans are fewer than 1 or more than 300; names each.

    Source:
        Limits of this library.

    >>> check_reading(Reading())
    """
    growth = reading.step if reading.growth_step is None else reading.growth_step
    refuse_if_any(
        [
            *_step_faults("step", reading.step, "reach", reading.reach, "in"),
            *_step_faults(
                "pitch_step", reading.pitch_step, "pitch_reach", reading.pitch_reach, "pitch"
            ),
            *_step_faults("growth_step", growth, "growth_reach", reading.growth_reach, "in"),
            None
            if 1 <= reading.most_plans <= PLANS_LIMIT
            else fault("most_plans", str(reading.most_plans), f"from 1 to {PLANS_LIMIT}"),
        ]
    )


def _step_faults(
    step_at: str, step: float, reach_at: str, reach: float, unit: str
) -> Iterator[Fault | None]:
    alone = not_positive(step_at, step, unit), not_positive(reach_at, reach, unit)
    yield from alone
    if any(alone):
        return
    steps = whole_steps(reach, step)
    if steps < 1:
        least = Amount(step, unit)
        yield fault(reach_at, Amount(reach, unit), "one step or more, ", least)
    elif steps > MOST_STEPS:
        wanted = (Amount(step * MOST_STEPS, unit), f", {MOST_STEPS} steps; or a longer step")
        yield fault(reach_at, Amount(reach, unit), "at most ", *wanted)
