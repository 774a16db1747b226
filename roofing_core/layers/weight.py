"""Weight: what lies on the deck, and what has to be carried up.

Anything that has a weight is a load. Counting bundles, rolls and lengths is left to others.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees, pi

from roofing_core.measures.counting import uncountable_fault, whole_packs
from roofing_core.measures.faults import (
    LARGEST,
    Fault,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount, shown
from roofing_core.measures.units import (
    Inches,
    Pitch,
    Pounds,
    PoundsPerSquareFoot,
    Radians,
    Ratio,
    SquareInches,
)
from roofing_core.roof.pitch import pitch_fault, slope_factor

SQUARE_FOOT = 144.0

#: A bundle of strips, midway between the 60 and 80 lb of the trade press, and the strips in it.
BUNDLE = 70.0
STRIPS_PER_BUNDLE = 21

#: Light felt: 11.5 lb a square, and four squares to the roll.
UNDERLAYMENT = 0.115
ROLL = 46.0

#: The lifting guideline's load constant, its best reach, height and travel, and its limits.
LIFT = 51.0
REACH, FARTHEST_REACH = 10.0, 25.0
KNUCKLE_HEIGHT, HIGHEST = 30.0, 70.0
TRAVEL, LONGEST_TRAVEL = 10.0, 70.0
LARGEST_TURN = 0.75 * pi


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """One kind of material with its weights.

    Attributes:
        name: What it is, such as ``shingles``.
        on_deck: Weight of what stays on the roof.
        to_carry: Weight of what is carried up, whole packs, leftovers and all.
        heaviest: Weight of the heaviest pack that one person carries.
    """

    name: str
    on_deck: Pounds
    to_carry: Pounds
    heaviest: Pounds


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What a roof's materials weigh, together and by kind.

    Attributes:
        on_deck: Weight of all that stays on the roof.
        per_slope_area: That weight on each unit of the slope's own area.
        per_plan_area: That weight on each unit of plan, as dead loads are compared.
        to_carry: Weight of all that is carried up.
        heaviest: Weight of the heaviest single carry.
        heaviest_name: What that is.
        lifting_index: The heaviest carry over what the lifting guideline allows one person in the
            best of positions; above 1 it is too much.
        loads: One entry per kind, as they were given.
    """

    on_deck: Pounds
    per_slope_area: PoundsPerSquareFoot
    per_plan_area: PoundsPerSquareFoot
    to_carry: Pounds
    heaviest: Pounds
    heaviest_name: str
    lifting_index: Ratio
    loads: tuple[Load, ...]


def weights(loads: tuple[Load, ...], *, slope_area: SquareInches, pitch: Pitch) -> Weights:
    """Sum the weights of whatever goes on a roof.

    On the deck and to carry are sums; ``per_slope_area = on_deck / slope_area`` and
    ``per_plan_area = per_slope_area * slope_factor``: the plan is smaller than the slope.

    Args:
        loads: One entry per kind of material, one or more.
        slope_area: Area of the slopes that carry them, measured on the slope; over 0.
        pitch: Rise over run of those slopes.

    Returns:
        The sums, the weight on each area, and the heaviest single carry.

    Raises:
        Refused: No loads, something negative or not finite, or an area of 0; names each.

    Source:
        Geometry; the lifting guideline is NIOSH 94-110.

    >>> bundle = Load(name="shingles", on_deck=210, to_carry=210, heaviest=70)
    >>> weights((bundle,), slope_area=14400, pitch=9 / 12).per_plan_area  # 2.1 lb/ft2 x 5/4
    2.625
    """
    refuse_if_any(_faults(loads, slope_area, pitch))
    on_deck = sum(load.on_deck for load in loads)
    per_slope_area = on_deck * SQUARE_FOOT / slope_area
    heaviest = max(loads, key=lambda load: load.heaviest)
    return Weights(
        on_deck=on_deck,
        per_slope_area=per_slope_area,
        per_plan_area=per_slope_area * slope_factor(pitch),
        to_carry=sum(load.to_carry for load in loads),
        heaviest=heaviest.heaviest,
        heaviest_name=heaviest.name,
        lifting_index=heaviest.heaviest / lifting_limit(),
        loads=loads,
    )


def _faults(loads: tuple[Load, ...], slope_area: float, pitch: float) -> list[Fault | None]:
    given = (
        negative(f"loads.{i}.{name}", getattr(load, name), "lb")
        for i, load in enumerate(loads)
        for name in ("on_deck", "to_carry", "heaviest")
    )
    none = None if loads else fault("loads", "none", "one or more loads")
    return [*given, none, *_roof_faults("slope_area", slope_area, pitch)]


def _roof_faults(at: str, area: float, pitch: float) -> list[Fault | None]:
    return [not_positive(at, area, "in2"), pitch_fault(pitch)]


def weight(
    area: SquareInches,
    *,
    pitch: Pitch,
    strips: int,
    strips_per_bundle: int = STRIPS_PER_BUNDLE,
    bundle_weight: Pounds = BUNDLE,
    underlayment_layers: int = 1,
    underlayment_weight: PoundsPerSquareFoot = UNDERLAYMENT,
    rolls: int | None = None,
    roll_weight: Pounds = ROLL,
    metal_weight: Pounds = 0.0,
    other_weight: Pounds = 0.0,
    other_packs: int = 1,
) -> Weights:
    """Give the weight on the deck and the weight to carry up, for shingles and what goes with them.

    On the deck: ``strips / strips_per_bundle * bundle_weight``, the layers of underlayment, the
    metal and all else. To carry: whole bundles and rolls, the metal as one load, all else in packs.

    Args:
        area: Area on the slope; over 0.
        pitch: Rise over run.
        strips: Strips of shingles laid, starter strips among them.
        strips_per_bundle: Strips in a bundle; over 0.
        bundle_weight: Weight of a bundle.
        underlayment_layers: How many layers thick the underlayment lies; laps are not counted.
        underlayment_weight: Weight of one layer on each unit of area.
        rolls: Rolls of underlayment carried up; as many as the layers weigh unless given.
        roll_weight: Weight of a roll.
        metal_weight: Weight of all metal.
        other_weight: Weight of all else, such as nails and sealant.
        other_packs: Packs that all else is carried in; over 0.

    Returns:
        The sums, the weight on each area, the heaviest single carry, and each kind.

    Raises:
        Refused: Something is negative or not finite, or an area or pack is 0; names each.

    Source:
        Geometry. A bundle weighs 60 to 80 lb (trade press) and holds 21 to 26 metric strips
        (Canadian housing handbook); felt of 11.5 lb a square is from memory (ASTM D226, type I).

    >>> both = weight(14400, pitch=0, strips=63, underlayment_layers=2, rolls=1)
    >>> both.on_deck, both.to_carry, both.heaviest_name
    (233.0, 256.0, 'shingles')
    """
    refuse_if_any(
        [
            *_roof_faults("area", area, pitch),
            negative("strips", strips, "count"),
            not_positive("strips_per_bundle", strips_per_bundle, "count"),
            negative("bundle_weight", bundle_weight, "lb"),
            negative("underlayment_layers", underlayment_layers, "count"),
            negative("underlayment_weight", underlayment_weight, "lb/ft2"),
            negative("rolls", rolls or 0, "count"),
            negative("roll_weight", roll_weight, "lb"),
            negative("metal_weight", metal_weight, "lb"),
            negative("other_weight", other_weight, "lb"),
            not_positive("other_packs", other_packs, "count"),
        ]
    )
    layers = underlayment_layers * underlayment_weight * area / SQUARE_FOOT
    if rolls is None:
        if roll_weight:
            refuse_if_any([uncountable_fault("roll_weight", roll_weight, "lb", needed=layers)])
        rolls = whole_packs(layers, roll_weight) if roll_weight else 0
    felt = Load(
        name="underlayment",
        on_deck=layers,
        to_carry=rolls * roll_weight,
        heaviest=roll_weight if rolls else 0.0,
    )
    loads = (
        packed("shingles", strips / strips_per_bundle, pack_weight=bundle_weight),
        felt,
        packed("metal", 1, pack_weight=metal_weight),
        packed("other", other_packs, pack_weight=other_weight / other_packs),
    )
    names = ("bundle_weight", "underlayment_weight", "metal_weight", "other_weight")
    refuse_if_any(map(_heavy, names, loads))
    return weights(loads, slope_area=area, pitch=pitch)


def _heavy(at: str, load: Load) -> Fault | None:
    """Give the fault of a weight that comes to more, all together, than any roof has."""
    came = max(load.on_deck, load.to_carry)
    if came <= LARGEST:
        return None
    return fault(at, Amount(came, "lb"), "less, all together at most ", Amount(LARGEST, "lb"))


def packed(name: str, packs: float, *, pack_weight: Pounds) -> Load:
    """Make a load of something that comes in packs, all of which but the rest stays on the roof.

    Args:
        name: What it is.
        packs: Packs used up, not whole as a rule; 0 or more.
        pack_weight: Weight of one pack; 0 or more.

    Returns:
        The load: used-up packs on the deck, whole packs to carry, one pack the heaviest.

    Raises:
        Refused: Something is negative or not finite; names each.

    Source:
        Arithmetic.

    >>> packed("shingles", 100 / 21, pack_weight=70).to_carry  # the fifth bundle is opened
    350
    """
    refuse_if_any([negative("packs", packs, "count"), negative("pack_weight", pack_weight, "lb")])
    whole = whole_packs(packs, 1)
    return Load(
        name=name,
        on_deck=packs * pack_weight,
        to_carry=whole * pack_weight,
        heaviest=pack_weight if whole else 0.0,
    )


def lifting_limit(
    reach: Inches = REACH,
    *,
    height: Inches = KNUCKLE_HEIGHT,
    travel: Inches = TRAVEL,
    turn: Radians = 0.0,
) -> Pounds:
    """Give the weight that the lifting guideline recommends one person lift at most.

    ``51 lb * 10 / reach * (1 - 0.0075 * abs(height - 30)) * (0.82 + 1.8 / travel) *
    (1 - 0.0032 * turn in degrees)``, for a lift now and then with a good grip.

    Args:
        reach: From between the ankles out to the hands; 10 in counts where it is less.
        height: Of the hands above the feet where the lift starts.
        travel: How far up the load goes; 10 in counts where it is less.
        turn: How far the body turns from straight ahead.

    Returns:
        Weight; 51 lb in the default position. For a person on firm ground, never on a ladder.

    Raises:
        Refused: A measurement is negative or past the limit of the equation; names each.

    Source:
        NIOSH publication 94-110, in its US form. The limits (25 in, 70 in, 70 in, 135 degrees) and
        the multiplier for turning are from memory.

    >>> lifting_limit(), lifting_limit(20)
    (51.0, 25.5)
    """
    refuse_if_any(
        [
            _past("reach", Amount(reach, "in"), FARTHEST_REACH),
            _past("height", Amount(height, "in"), HIGHEST),
            _past("travel", Amount(travel, "in"), LONGEST_TRAVEL),
            _past("turn", Amount(turn, "rad"), LARGEST_TURN),
        ]
    )
    out = REACH / max(reach, REACH)
    up = 1 - 0.0075 * abs(height - KNUCKLE_HEIGHT)
    far = 0.82 + 1.8 / max(travel, TRAVEL)
    return LIFT * out * up * far * (1 - 0.0032 * degrees(turn))


def _past(at: str, came: Amount, most: float) -> Fault | None:
    if 0 <= came.value <= most:
        return None
    return fault(at, shown(came), "zero or more and at most ", Amount(most, came.unit))
