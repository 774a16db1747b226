"""What a caller may know of the place, the building and the work there.

None of it is needed for a plan. What is given is held against the rules for it, or chooses the
cautions.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.faults import Fault, negative
from roofing_core.measures.units import (
    Inches,
    MilesPerHour,
    PoundsPerSquareFoot,
    SquareInches,
)
from roofing_core.site.ventilation import VentRatio
from roofing_core.site.wind import speed_fault


@dataclass(frozen=True, slots=True, kw_only=True)
class Wind:
    """The wind that the roof is to stand.

    Attributes:
        design_speed: The ultimate design wind speed of the place, from the local authority; 0 where
            it is not known.
        exposure: B among houses or trees, C on open land, D on flat open land or by open water.
        roof_height: Mean height of the roof above the ground; 0 where it is not known.
        speed_up: Whether the roof stands where a hill, ridge or cliff speeds up the wind.
    """

    design_speed: MilesPerHour = 0.0
    exposure: Literal["B", "C", "D", "unknown"] = "unknown"
    roof_height: Inches = 0.0
    speed_up: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Venting:
    """The vented space under the roof, and its vents.

    Attributes:
        vented_area: Of the space, level, on its floor; 0 where there is none, or it is not known.
        ratio: 1/150 of it as net free area; or 1/300, which asks for a balance of high and low.
        high_area: Net free area of the vents within 3 ft below the ridge or the highest point.
        low_area: Net free area of the vents low down.
    """

    vented_area: SquareInches = 0.0
    ratio: VentRatio = "1/150"
    high_area: SquareInches = 0.0
    low_area: SquareInches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Loading:
    """What the roof has to carry.

    Attributes:
        stacked_bundles: How many bundles high a stack is set down on the roof.
        layers_left: Layers of old covering that stay in place under the new one.
        dead_load_allowed: What the designer of the roof lets the plan's layers weigh, on each unit
            of plan; 0 where it is not known.
    """

    stacked_bundles: int = 2
    layers_left: int = 0
    dead_load_allowed: PoundsPerSquareFoot = 0.0


Known = Literal["yes", "no", "unknown"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """How the work goes on there: what chooses the cautions.

    Attributes:
        eave_height: From the ground up to the eave; 0 where it is not known.
        season: What the weather is like; unknown brings the cautions for heat and for cold.
        power_lines: Whether overhead lines are near.
        nail_gun: Whether nails are driven with a gun.
        hot_asphalt: Whether asphalt is laid hot; unknown is taken for no.
        alone: Whether one person works alone.
    """

    eave_height: Inches = 0.0
    season: Literal["hot", "cold", "mild", "unknown"] = "unknown"
    power_lines: Known = "unknown"
    nail_gun: Known = "unknown"
    hot_asphalt: Known = "unknown"
    alone: Known = "unknown"


#: Nothing is known.
NO_WIND, NO_VENTING, USUAL_LOADING, UNKNOWN_WORK = Wind(), Venting(), Loading(), Working()


def site_faults(
    wind: Wind, venting: Venting, loading: Loading, working: Working
) -> Iterator[Fault | None]:
    """Give the faults of what is said of the place and the building.

    Args:
        wind: The wind that the roof is to stand.
        venting: The vented space and its vents.
        loading: What the roof has to carry.
        working: How the work goes on there.

    Returns:
        Faults by the caller's names, and None for what is right or not said.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Limits of this library.

    >>> faults = site_faults(Wind(design_speed=-1), NO_VENTING, USUAL_LOADING, UNKNOWN_WORK)
    >>> [one.at for one in faults if one]
    [('wind', 'design_speed')]
    """
    if wind.design_speed:
        yield speed_fault("wind.design_speed", wind.design_speed)
    yield negative("wind.roof_height", wind.roof_height)
    yield negative("venting.vented_area", venting.vented_area, "in2")
    yield negative("venting.high_area", venting.high_area, "in2")
    yield negative("venting.low_area", venting.low_area, "in2")
    yield negative("loading.stacked_bundles", loading.stacked_bundles, "count")
    yield negative("loading.layers_left", loading.layers_left, "count")
    yield negative("loading.dead_load_allowed", loading.dead_load_allowed, "lb/ft2")
    yield negative("working.eave_height", working.eave_height)
