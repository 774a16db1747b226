"""How far up a slope an ice barrier has to reach, by the edition of the code.

How it is laid is `ice_barrier`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from roofing_core.layers.underlaying.end_laps import HEAD_LAP, PAST_METAL
from roofing_core.measures.counting import DUST, uncountable_fault, whole_packs
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, length, shown
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.outlines import RoofPlane, from_below, planes_below
from roofing_core.roof.pitch import STEEPEST, slope_factor
from roofing_core.ruling.listing import GOVERNS, edition_fault
from roofing_core.ruling.on_sheets import ICE_INSIDE_WALL, ICE_STEEP_REACH
from roofing_core.ruling.rule import EDITION, Edition

#: IRC R905.1.2: this far inside the exterior wall line, measured level.
INSIDE_WALL: Inches = ICE_INSIDE_WALL.limit

#: From this pitch on the barrier also reaches a least length up the slope, in the editions that
#: say so.
STEEP_PITCH = 8 / 12


def ice_barrier_reach(
    eave_overhang: Inches,
    *,
    pitch: Pitch,
    edition: Edition = EDITION,
    inside_wall: Inches = INSIDE_WALL,
) -> Inches:
    """Give how far up the slope an ice barrier has to reach from the eave.

    ``(eave_overhang + inside_wall) * slope_factor(pitch)``; at 8:12 and steeper, by the editions
    2015 to 2021, at least 36 in.

    Args:
        eave_overhang: From the exterior wall line to the eave, level; 0 or more.
        pitch: Rise over run, 0 or more.
        edition: Of the residential code.
        inside_wall: From the exterior wall line inwards, level. Where a rule measures from the
            inner face of the wall, add the wall's thickness.

    Returns:
        Up the slope from the eave.

    Raises:
        Refused: A length or the pitch is negative or not finite, or the edition is not known;
            names each.

    Source:
        IRC R905.1.2, as restated: from the lowest edges to 24 in inside the exterior wall line.
        Others measure otherwise: 12 in inside (UBC), from the inner face (MIL-HDBK-1001/5A 9.4).

    >>> ice_barrier_reach(0, pitch=8 / 12), ice_barrier_reach(0, pitch=0, edition="2024")
    (36.0, 24.0)
    """
    refuse_if_any(
        [
            negative("eave_overhang", eave_overhang),
            _pitch_fault(pitch),
            edition_fault("edition", edition),
            negative("inside_wall", inside_wall),
        ]
    )
    return _Left(eave_overhang + inside_wall, _steep(pitch, edition)).up(pitch)


@dataclass(frozen=True, slots=True, kw_only=True)
class IceReach:
    """How far up a slope an ice barrier has to reach, and the rows of a roll for it.

    Attributes:
        reach: Up the slope from the eave.
        by_the_wall: What the line inside the wall asks for, up the slope.
        by_the_pitch: What the edition asks for on a steep slope; 0 where it asks for nothing.
        rows: Rows of the roll that reach so far.
        covered: Up to where these rows cover the slope.
        edition: Of the residential code.
        source: Where it is published, and how that is known.
        limits: What the answer holds for, and what it leaves to others.
    """

    reach: Inches
    by_the_wall: Inches
    by_the_pitch: Inches
    rows: int
    covered: Inches
    edition: Edition
    source: str
    limits: tuple[str, ...]


_LIMITS = (
    "Whether ice along the eaves has to be reckoned with is for the local authority to say.",
    "Measured from the exterior wall line; where a rule measures from the inner face, add the"
    " wall's thickness.",
    "A detached building without heated floor area is exempt, as restated.",
    GOVERNS,
)


def ice_reach(
    eave_overhang: Inches,
    *,
    pitch: Pitch,
    edition: Edition = EDITION,
    inside_wall: Inches = INSIDE_WALL,
    roll_width: Inches = 36.0,
    head_lap: Inches = HEAD_LAP,
    past_metal: Inches = PAST_METAL,
) -> IceReach:
    """Give how far up the slope an ice barrier has to reach, and how many rows of a roll do.

    ``(eave_overhang + inside_wall) * slope_factor(pitch)``; at 8:12 and steeper, by the editions
    2015 to 2021, at least 36 in. Rows: the least n with
    ``n * (roll_width - head_lap) + head_lap - past_metal >= reach``.

    Args:
        eave_overhang: From the exterior wall line to the eave, level; 0 or more.
        pitch: Rise over run, 0 or more.
        edition: Of the residential code.
        inside_wall: From the exterior wall line inwards, level.
        roll_width: Width of the roll.
        head_lap: Of each row over the one below; less than the roll is wide.
        past_metal: How far the first row stands past the eave metal.

    Returns:
        The reach, what asks for it, the rows, and what is left to others.

    Raises:
        Refused: A length or the pitch cannot be, or the edition is not known; names each.

    Source:
        IRC R905.1.2, as restated for each edition.

    >>> found = ice_reach(12, pitch=5 / 12)
    >>> found.reach, found.rows, found.covered
    (39.0, 2, 67.75)
    """
    lap = None if head_lap < roll_width else fault("head_lap", length(head_lap), "less than a roll")
    refuse_if_any(
        [
            negative("eave_overhang", eave_overhang),
            _pitch_fault(pitch),
            edition_fault("edition", edition),
            negative("inside_wall", inside_wall),
            not_positive("roll_width", roll_width),
            negative("head_lap", head_lap) or lap,
            negative("past_metal", past_metal),
        ]
    )
    reach = ice_barrier_reach(eave_overhang, pitch=pitch, edition=edition, inside_wall=inside_wall)
    shown_of_a_row = roll_width - head_lap
    more = uncountable_fault("head_lap", shown_of_a_row, "in", needed=reach + past_metal)
    refuse_if_any([more])
    rows = max(1, whole_packs(max(0.0, reach + past_metal - head_lap), shown_of_a_row))
    source = ICE_INSIDE_WALL.source_in(edition)
    return IceReach(
        reach=reach,
        by_the_wall=(eave_overhang + inside_wall) * slope_factor(pitch),
        by_the_pitch=_steep(pitch, edition),
        rows=rows,
        covered=rows * shown_of_a_row + head_lap - past_metal,
        edition=edition,
        source=source.text() if source else "",
        limits=_LIMITS,
    )


def _pitch_fault(pitch: float) -> Fault | None:
    if 0 <= pitch <= STEEPEST:
        return None
    return fault("pitch", shown(Amount(pitch, "pitch")), "0:12 or more and at most 1000:12")


def ice_barrier_reaches(
    planes: Sequence[RoofPlane],
    *,
    eave_overhang: Inches,
    edition: Edition = EDITION,
    inside_wall: Inches = INSIDE_WALL,
) -> tuple[Inches, ...]:
    """Give how far up each plane of a roof an ice barrier has to reach from its lower edge.

    As `ice_barrier_reach` on a plane with an eave. On a plane above a pitch break, what is left of
    that above the plane below: its level part by this plane's slope factor, the 36 in of a steep
    plane along both slopes. A plane with both counts from its eaves.

    Args:
        planes: The planes.
        eave_overhang: From the exterior wall line to the eaves, level; 0 or more.
        edition: Of the residential code.
        inside_wall: From the exterior wall line inwards, level.

    Returns:
        One entry per plane; 0 for a plane that needs none.

    Raises:
        Refused: A length or a pitch is negative or not finite, or the edition is not known; names
            each.

    Source:
        IRC R905.1.2, as restated. That it goes on over a pitch break is this library's reading of
        "24 in inside the exterior wall line".

    >>> from roofing_core.roof.forms import Gambrel
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> barn = Gambrel(length=240, width=200, pitch=0.75, upper_pitch=0.5, break_run=32)
    >>> ice_barrier_reaches(surfaces(barn).planes[:2], eave_overhang=12, edition="2024")
    (45.0, 4.47213595499958)
    """
    refuse_if_any(
        [
            negative("eave_overhang", eave_overhang),
            *(_pitch_fault(plane.pitch) for plane in planes),
            edition_fault("edition", edition),
            negative("inside_wall", inside_wall),
        ]
    )
    by_name = {plane.name: plane for plane in planes}
    left: dict[str, _Left] = {}
    for plane in from_below(planes):
        if "eave" in plane.edges:
            left[plane.name] = _Left(eave_overhang + inside_wall, _steep(plane.pitch, edition))
        else:
            below = [by_name[name] for name in planes_below(plane) if name in left]
            left[plane.name] = _left_above(plane, [(one, left[one.name]) for one in below])
    return tuple(left[plane.name].up(plane.pitch) for plane in planes)


@dataclass(frozen=True, slots=True)
class _Left:
    """What an ice barrier still has to reach from the lower edge of a plane."""

    level: float
    along: float

    def up(self, pitch: float) -> float:
        """Give how far up the slope that is."""
        return max(self.level * slope_factor(pitch), self.along, 0.0)


def _left_above(plane: RoofPlane, below: Sequence[tuple[RoofPlane, _Left]]) -> _Left:
    """Give what the planes below a pitch break leave to reach above it."""
    level, along = 0.0, 0.0
    for lower, left in below:
        breaks = [
            lower.corners[k][1]
            for k, kind in enumerate(lower.edges)
            if kind == "pitch_break" and lower.beyond[k] == plane.name
        ]
        high = max(breaks, default=0.0)
        level = max(level, left.level - high / slope_factor(lower.pitch))
        along = max(along, left.along - high)
    return _Left(level, along)


def _steep(pitch: float, edition: Edition) -> float:
    """Give how far along a steep slope a barrier reaches, by the edition."""
    said = pitch >= STEEP_PITCH - DUST and ICE_STEEP_REACH.source_in(edition)
    return ICE_STEEP_REACH.limit if said else 0.0
