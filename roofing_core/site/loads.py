"""Loads: what covering weighs on a deck, layer by layer, and bundles stacked on a patch of it.

No framing is worked out here: whether it carries a load is for a licensed designer to say.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from roofing_core.measures.counting import DUST, uncountable_fault
from roofing_core.measures.faults import negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, Sentence, say
from roofing_core.measures.units import (
    Inches,
    Pitch,
    Pounds,
    PoundsPerSquareFoot,
    SquareInches,
)
from roofing_core.roof.pitch import pitch_fault, slope_factor
from roofing_core.ruling.listing import GOVERNS
from roofing_core.ruling.on_places import LAYERS, STACK_HEIGHT
from roofing_core.ruling.rule import keeps
from roofing_core.site.live_loads import SMALL_AREA, SQUARE_FOOT, roof_live_load

#: A permit sheet by ASCE 7-05: two layers of shingles 5.0, felt 0.5, plywood 1.5 lb/ft2.
SHINGLES, UNDERLAYMENT, PANELS = 2.5, 0.5, 1.5

#: A metric strip as it lies in its bundle.
BUNDLE_LENGTH, BUNDLE_WIDTH, BUNDLE_WEIGHT = 39.375, 13.25, 65.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckLoad:
    """What lies on a deck, as a dead load.

    Attributes:
        covering: Of all layers of covering, on each unit of the slope's own area.
        underlayment: Of all layers of underlayment.
        panels: Of the deck itself.
        other: Of all else that was given.
        per_slope_area: All of it, on each unit of the slope's own area.
        per_plan_area: The same on each unit of plan, as dead loads are compared.
        layers: Layers of covering over each other.
        layers_allowed: Whether so many may lie over each other before the old ones come off.
        limits: What the answer holds for, and what it leaves to others.
    """

    covering: PoundsPerSquareFoot
    underlayment: PoundsPerSquareFoot
    panels: PoundsPerSquareFoot
    other: PoundsPerSquareFoot
    per_slope_area: PoundsPerSquareFoot
    per_plan_area: PoundsPerSquareFoot
    layers: int
    layers_allowed: bool
    limits: tuple[Sentence, ...]


def deck_load(
    pitch: Pitch,
    *,
    layers: int = 1,
    shingles: PoundsPerSquareFoot = SHINGLES,
    underlayment_layers: int = 1,
    underlayment: PoundsPerSquareFoot = UNDERLAYMENT,
    panels: PoundsPerSquareFoot = PANELS,
    other: PoundsPerSquareFoot = 0.0,
) -> DeckLoad:
    """Give the dead load of covering and deck, on the slope and on the plan.

    ``layers * shingles + underlayment_layers * underlayment + panels + other`` on the slope; times
    the slope factor on the plan.

    Args:
        pitch: Rise over run.
        layers: Layers of covering over each other, old ones that stay among them.
        shingles: Weight of one layer of covering on each unit of the slope.
        underlayment_layers: Layers of underlayment.
        underlayment: Weight of one of them.
        panels: Weight of the deck.
        other: Weight of all else that hangs on the rafters or is one with them.

    Returns:
        Each part and their sum, and what is left to others.

    Raises:
        Refused: A weight, count or pitch cannot be; names each.

    Source:
        Geometry. The weights are those of a permit sheet by ASCE 7-05; a design guide has 2 to
        3 lb/ft2 for shingles. No more than two layers: IRC R908.3.1.1, as restated.

    >>> deck_load(9 / 12, layers=2).per_slope_area, deck_load(9 / 12, layers=2).per_plan_area
    (7.0, 8.75)
    """
    refuse_if_any(
        [
            pitch_fault(pitch),
            negative("layers", layers, "count"),
            negative("shingles", shingles, "lb/ft2"),
            negative("underlayment_layers", underlayment_layers, "count"),
            negative("underlayment", underlayment, "lb/ft2"),
            negative("panels", panels, "lb/ft2"),
            negative("other", other, "lb/ft2"),
        ]
    )
    covering, felt = layers * shingles, underlayment_layers * underlayment
    sloped = covering + felt + panels + other
    allowed = LAYERS.kept_by(layers)
    return DeckLoad(
        covering=covering,
        underlayment=felt,
        panels=panels,
        other=other,
        per_slope_area=sloped,
        per_plan_area=sloped * slope_factor(pitch),
        layers=layers,
        layers_allowed=allowed,
        limits=tuple(_limits_of_a_deck(allowed=allowed)),
    )


def _limits_of_a_deck(*, allowed: bool) -> Iterator[Sentence]:
    if not allowed:
        yield say(
            "More than ", Amount(LAYERS.limit, "count"), " layers of covering may not lie over each"
            " other: the old ones come off first (IRC R908.3.1.1, as restated)."
        )  # fmt: skip
    yield say("What a bundle, roll or panel weighs is printed on it or known where it was bought.")
    yield say("Snow, people and wind are not in it.")
    yield say(
        "Whether rafters, trusses and walls carry it is for a licensed designer to say, and for the"
        " local authority what a roof there is designed for."
    )
    yield say(GOVERNS)


@dataclass(frozen=True, slots=True, kw_only=True)
class StackedLoad:
    """Bundles stacked on a patch of a deck.

    Attributes:
        weight: Of the stack.
        patch_area: Of the deck that it stands on.
        load: On each unit of that patch.
        live_load: That a roof of this pitch is designed for at least, on each unit of plan.
        within_live_load: Whether the load on the patch is no more than that.
        area_to_spread: Area over which the stack would be no more than that.
        most_bundles: Bundles that the patch takes within it.
        height_kept: Whether the stack is no higher than the published guide has it.
        limits: What the answer holds for, and what it leaves to others.
    """

    weight: Pounds
    patch_area: SquareInches
    load: PoundsPerSquareFoot
    live_load: PoundsPerSquareFoot
    within_live_load: bool
    area_to_spread: SquareInches
    most_bundles: int
    height_kept: bool
    limits: tuple[Sentence, ...]


def stacked_load(
    bundles: int,
    *,
    pitch: Pitch,
    bundle_weight: Pounds = BUNDLE_WEIGHT,
    patch_length: Inches = BUNDLE_LENGTH,
    patch_width: Inches = BUNDLE_WIDTH,
    tributary_area: SquareInches = SMALL_AREA,
) -> StackedLoad:
    """Give the load of stacked bundles on the patch of deck that they stand on.

    ``bundles * bundle_weight / (patch_length * patch_width)``, against the live load that a roof is
    designed for at least.

    Args:
        bundles: In the stack.
        pitch: Rise over run.
        bundle_weight: Of one bundle, as printed on it.
        patch_length: Of the patch that the stack stands on, or that it is spread over.
        patch_width: Of that patch.
        tributary_area: Area of roof, on plan, that one rafter or truss carries.

    Returns:
        The load, the live load, the area that would do, and what is left to others.

    Raises:
        Refused: A weight, length, count or pitch cannot be; names each.

    Source:
        Arithmetic; the live load is `roof_live_load` by IRC Table R301.6. Two bundles high: a
        component makers' guide, as restated.

    >>> stack = stacked_load(2, pitch=3 / 12, bundle_weight=72, patch_length=48, patch_width=36)
    >>> stack.load, stack.live_load, stack.most_bundles
    (12.0, 20.0, 3)
    """
    refuse_if_any(
        [
            negative("bundles", bundles, "count"),
            pitch_fault(pitch),
            not_positive("bundle_weight", bundle_weight, "lb"),
            not_positive("patch_length", patch_length),
            not_positive("patch_width", patch_width),
            not_positive("tributary_area", tributary_area, "in2"),
        ]
    )
    weight, patch = bundles * bundle_weight, patch_length * patch_width
    live = roof_live_load(pitch, tributary_area=tributary_area)
    load = weight * SQUARE_FOOT / patch
    held = live * patch / SQUARE_FOOT
    refuse_if_any([uncountable_fault("bundle_weight", bundle_weight, "lb", needed=held)])
    high = STACK_HEIGHT.kept_by(bundles)
    return StackedLoad(
        weight=weight,
        patch_area=patch,
        load=load,
        live_load=live,
        within_live_load=keeps("at_most", load, live),
        area_to_spread=weight / live * SQUARE_FOOT,
        most_bundles=int(held / bundle_weight + DUST),
        height_kept=high,
        limits=tuple(_limits_of_a_stack(kept=high)),
    )


def _limits_of_a_stack(*, kept: bool) -> Iterator[Sentence]:
    if not kept:
        yield say(
            "A component makers' guide sets bundles of shingles down no more than ",
            Amount(STACK_HEIGHT.limit, "count"), " high (as restated)."
        )  # fmt: skip
    yield say(
        "A load on a patch is no load on the whole roof: what matters is how much of it one rafter"
        " or truss carries. Set bundles across several, near walls and ridge, spread them, and not"
        " on framing that is not braced yet; keep them there a week at most (a component"
        " makers' guide, as restated)."
    )
    yield say(
        "Whether the framing carries a stack is for its licensed designer or the makers of its"
        " trusses to say."
    )
    yield say(GOVERNS)
