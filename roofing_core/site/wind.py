"""Wind: the class of shingle that a design wind speed asks for, and how it is nailed down.

Uplift on a roof is not worked out here: where the classes do not hold, a licensed designer does.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt
from typing import Literal

from roofing_core.layers.coursing.nailing import nails_per_strip
from roofing_core.measures.faults import Fault, fault, negative, not_one_of, refuse_if_any
from roofing_core.measures.sentences import Amount, Sentence, length, say, shown
from roofing_core.measures.units import Inches, MilesPerHour, Pitch
from roofing_core.roof.pitch import pitch_fault
from roofing_core.ruling.listing import GOVERNS, edition_fault
from roofing_core.ruling.on_places import (
    CLASS_SPEEDS,
    HIGH_WIND_NAILS,
    HIGH_WIND_SHEETS,
    UpliftClass,
)
from roofing_core.ruling.rule import EDITION, Edition

Exposure = Literal["B", "C", "D"]
FanClass = Literal["A", "D", "F"]

#: Ultimate speed of each row of the residential code's table, with the classes of ASTM D3161 that
#: do there. F above 100 mph of the older maps, 129 of today's: as restated of the building code of
#: 2003 and, by a page on the coast of Texas, of this table. A and D to there: from memory.
FAN_CLASSES: tuple[tuple[float, tuple[FanClass, ...]], ...] = (
    (116.0, ("A", "D", "F")),
    (129.0, ("A", "D", "F")),
    (194.0, ("F",)),
)

#: The classes of ASTM D7158 hold up to this mean height of the roof.
HIGHEST = 720.0

#: No wind on any map of design speeds is faster.
FASTEST = 400.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WindClass:
    """What a design wind speed asks of the shingles.

    Attributes:
        design_speed: The ultimate design wind speed, as it was given.
        nominal_speed: The same as older codes and maps count it.
        uplift_classes: Classes of ASTM D7158 that do, the weakest first; none where a licensed
            designer has to say.
        fan_classes: Classes of ASTM D3161 that do, for shingles that D7158 does not cover; the
            weakest first.
        nails_per_strip: Nails in each whole strip.
        closer_cap_nails: Whether the underlayment takes the closer pattern of cap nails.
        needs_designer: Whether the classes do not hold here: a licensed designer has to say.
        edition: Of the residential code.
        source: Where the classes and the table are published, and how that is known.
        limits: What the answer holds for, and what it leaves to others.
    """

    design_speed: MilesPerHour
    nominal_speed: MilesPerHour
    uplift_classes: tuple[UpliftClass, ...]
    fan_classes: tuple[FanClass, ...]
    nails_per_strip: int
    closer_cap_nails: bool
    needs_designer: bool
    edition: Edition
    source: str
    limits: tuple[Sentence, ...]


def wind_class(
    design_speed: MilesPerHour,
    *,
    pitch: Pitch = 4 / 12,
    exposure: Exposure = "C",
    roof_height: Inches = 360.0,
    speed_up: bool = False,
    edition: Edition = EDITION,
) -> WindClass:
    """Give the classes of shingle that hold in a design wind, and how many nails hold a strip.

    By ASTM D7158 class D holds to 116 mph, G to 155 and H to 194, in exposure B or C, on roofs to
    60 ft high, where no hill speeds up the wind. Nails: 6 over 116 mph or above 21:12, else 4.
    Nominal speed: ``design_speed * sqrt(0.6)``; what is asked goes by the design speed.

    Args:
        design_speed: The ultimate design wind speed of the place, from the local authority.
        pitch: Rise over run of the steepest plane.
        exposure: B among houses or trees, C on open land, D on flat open land or beside open water.
        roof_height: Mean height of the roof above the ground.
        speed_up: Whether the roof stands where a hill, ridge or cliff speeds up the wind.
        edition: Of the residential code.

    Returns:
        The classes that do, the weakest first, the nails, and what is left to others.

    Raises:
        Refused: A speed, height or pitch cannot be, or a word is none of these; names each.

    Source:
        ASTM D7158 by its classes' ultimate speeds (makers' association's bulletin) and conditions
        (D7158-24a, 6.3); that D3161 is for shingles outside its scope, IBC 1504.1.1, 2018; the
        classes of D3161 IRC Table R905.2.4.1, in part from memory; six nails in high wind FEMA 499,
        and many makers (a federal note on IBC 1507.2.6); ``sqrt(0.6)`` by IBC Table 1609.3.1, 2018.

    >>> wind_class(130).uplift_classes, wind_class(130).nails_per_strip
    (('G', 'H'), 6)
    """
    refuse_if_any(
        [
            speed_fault("design_speed", design_speed),
            pitch_fault(pitch),
            not_one_of("exposure", exposure, ("B", "C", "D")),
            negative("roof_height", roof_height),
            edition_fault("edition", edition),
        ]
    )
    held = uplift_classes(design_speed)
    outside = conditions_outside(exposure, roof_height=roof_height, speed_up=speed_up)
    alone = bool(outside) or not held
    return WindClass(
        design_speed=design_speed,
        nominal_speed=design_speed * sqrt(0.6),
        uplift_classes=() if alone else held,
        fan_classes=() if alone else fan_classes(design_speed),
        nails_per_strip=nails_per_strip(pitch, high_wind=design_speed > HIGH_WIND_NAILS),
        closer_cap_nails=design_speed >= HIGH_WIND_SHEETS,
        needs_designer=alone,
        edition=edition,
        source="ASTM D7158, 24a, as restated; International Residential Code, "
        f"{edition}, R905.2.4.1, in part from memory",
        limits=tuple(_limits(alone, outside)),
    )


def uplift_classes(design_speed: MilesPerHour) -> tuple[UpliftClass, ...]:
    """Give the classes of ASTM D7158 that hold in a design wind.

    Args:
        design_speed: The ultimate design wind speed.

    Returns:
        The classes, the weakest first; none over 194 mph.

    Raises:
        Nothing.

    Source:
        ASTM D7158: D to 116, G to 155, H to 194 mph (makers' association's bulletin).

    >>> uplift_classes(155), uplift_classes(195)
    (('G', 'H'), ())
    """
    return tuple(name for name, speed in CLASS_SPEEDS if design_speed <= speed)


def fan_classes(design_speed: MilesPerHour) -> tuple[FanClass, ...]:
    """Give the classes of ASTM D3161 that the residential code's table takes in a design wind.

    Args:
        design_speed: The ultimate design wind speed.

    Returns:
        The classes, the weakest first; none over 194 mph.

    Raises:
        Nothing.

    Source:
        IRC Table R905.2.4.1, F over 129 mph as restated, A and D to there from memory: the speed
        of the test is no design speed.

    >>> fan_classes(129), fan_classes(130)
    (('A', 'D', 'F'), ('F',))
    """
    return next((held for speed, held in FAN_CLASSES if design_speed <= speed), ())


def fastest_held(
    uplift_class: UpliftClass | Literal["unknown"], fan_class: FanClass | Literal["unknown"]
) -> MilesPerHour:
    """Give the fastest design wind in which a shingle of these classes does.

    Its class of ASTM D7158 says it; that of D3161 only where the shingle has none of D7158.

    Args:
        uplift_class: Its class of ASTM D7158.
        fan_class: Its class of ASTM D3161.

    Returns:
        The ultimate design speed; 0 where neither class is known.

    Raises:
        Nothing.

    Source:
        As `uplift_classes` and `fan_classes`; which goes first, IBC 1504.1.1, 2018.

    >>> fastest_held("D", "F"), fastest_held("unknown", "F"), fastest_held("unknown", "unknown")
    (116.0, 194.0, 0.0)
    """
    if uplift_class != "unknown":
        return dict(CLASS_SPEEDS)[uplift_class]
    return max((speed for speed, held in FAN_CLASSES if fan_class in held), default=0.0)


def conditions_outside(
    exposure: Exposure, *, roof_height: Inches, speed_up: bool
) -> tuple[Sentence, ...]:
    """Give the conditions of a place in which the classes of shingles do not hold.

    Args:
        exposure: What lies about the building.
        roof_height: Mean height of the roof above the ground.
        speed_up: Whether a hill, ridge or cliff speeds up the wind.

    Returns:
        One sentence per condition.

    Raises:
        Nothing.

    Source:
        ASTM D7158-24a, 6.3.

    >>> [one.written() for one in conditions_outside("D", roof_height=720, speed_up=False)]
    ['Exposure D is outside the classes.']
    """
    told: list[Sentence] = []
    if exposure == "D":
        told.append(say("Exposure D is outside the classes."))
    if roof_height > HIGHEST:
        told.append(
            say("A roof over ", length(HIGHEST), " high is outside the classes; this one has ",
                length(roof_height), ".")
        )  # fmt: skip
    if speed_up:
        told.append(say("A hill, ridge or cliff that speeds up the wind is outside the classes."))
    return tuple(told)


def _limits(alone: bool, outside: tuple[Sentence, ...]) -> Iterator[Sentence]:
    yield from outside
    if alone:
        yield say(
            "Here no class is given: a licensed designer works out the uplift, and the makers of"
            " the shingle say what holds in it."
        )
    yield say(
        "The design wind speed of the place, its exposure and whether a special wind region begins"
        " there are for the local authority to say."
    )
    yield say(
        "The class is printed on the wrapper, and holds only with the nails and the sealing that"
        " are printed with it; adhesive that has not sealed yet, in the cold, holds nothing."
    )
    yield say(
        "The table that takes classes of ASTM D3161 is in part from memory: look it up in the"
        " edition in force."
    )
    yield say(GOVERNS)


def speed_fault(at: str, speed: MilesPerHour) -> Fault | None:
    """Give a fault unless a design wind speed can be.

    Args:
        at: The name to put into the fault.
        speed: The speed.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> speed_fault("design_speed", 130) is None
    True
    """
    if 0 < speed <= FASTEST:
        return None
    came, most = Amount(speed, "mph"), Amount(FASTEST, "mph")
    return fault(at, shown(came), "more than zero and at most ", most)
