"""Fasteners: how long a nail has to be, and how nails counted become nails weighed and bought.

How many a strip takes, and where they go on it, is `nailing`; those along metal and underlayment
are counted where those are laid. Here they come in as counts.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from roofing_core.measures.columns import Column, column_faults
from roofing_core.measures.counting import DUST, uncountable_fault, whole_packs
from roofing_core.measures.faults import fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.measures.units import SQUARE, Inches, Pounds, Ratio

#: How far a nail goes into the deck, or past the underside of a thinner one.
INTO_DECK = 0.75
PAST_DECK = 0.125

#: A galvanized roofing nail: 11 gauge wire, 7/16 in head, steel in pounds a cubic inch.
SHANK = 0.1205
HEAD_DIAMETER = 0.4375
HEAD_THICKNESS = 0.05
STEEL = 0.2836

#: Lengths that roofing nails are usually on offer in.
NAIL_LENGTHS = (1.0, 1.25, 1.5, 1.75, 2.0)

#: What counts by weight are good to, as a part of the count.
WITHIN = 0.15


def nails_per_pound(
    nail_length: Column,
    *,
    shank: Inches = SHANK,
    head_diameter: Inches = HEAD_DIAMETER,
    head_thickness: Inches = HEAD_THICKNESS,
    density: float = STEEL,
) -> Column:
    """Give how many nails weigh a pound, from their size: a round shank and a round head.

    ``1 / (pi / 4 * (shank ** 2 * nail_length + head_diameter ** 2 * head_thickness) * density)``.

    Args:
        nail_length: Length of the shank; over 0; a number, or a column of them.
        shank: Diameter of the shank; over 0.
        head_diameter: Diameter of the head; over 0.
        head_thickness: Thickness of the head; over 0.
        density: Pounds in a cubic inch of the metal; over 0.

    Returns:
        Nails to the pound, not rounded; one for each length. True counts lie within about 15 %.

    Raises:
        Refused: A measurement is zero, negative or not finite; names each.

    Source:
        Geometry; point, barbs and zinc are left out. 11 gauge wire is 0.1205 in, from memory (US
        steel wire gauge); the head's thickness is common practice, no published source.

    >>> round(nails_per_pound(1.5))  # 140 as printed for this nail
    143
    """
    refuse_if_any(
        [
            *column_faults("nail_length", nail_length, not_positive),
            not_positive("shank", shank),
            not_positive("head_diameter", head_diameter),
            not_positive("head_thickness", head_thickness),
            not_positive("density", density, "1"),
        ]
    )
    steel = pi / 4 * (shank**2 * nail_length + head_diameter**2 * head_thickness)
    return 1 / (steel * density)


def least_nail_length(
    roofing_thickness: Inches,
    *,
    deck_thickness: Inches,
    into_deck: Inches = INTO_DECK,
    past_deck: Inches = PAST_DECK,
) -> Inches:
    """Give the least length of nail that holds.

    ``roofing_thickness + into_deck``, or where the deck is thinner than ``into_deck``, right
    through it: ``roofing_thickness + deck_thickness + past_deck``.

    Args:
        roofing_thickness: All that the nail passes through above the deck; 0 or more.
        deck_thickness: Thickness of the deck; over 0.
        into_deck: How far the nail goes into a deck that is thick enough; over 0.
        past_deck: How far it comes out below a thinner deck, so that the full shank, and not the
            point alone, holds in the last of the wood.

    Returns:
        The length of shank needed; nails on offer are usually longer.

    Raises:
        Refused: A thickness is zero, negative or not finite where it may not be; names each.

    Source:
        Through the roofing and 3/4 in or more into the deck, or through a deck thinner than that
        (IRC R905.2.5, 2018). 1/8 in past the underside: printed trade instructions, as restated.

    >>> least_nail_length(0.25, deck_thickness=0.75), least_nail_length(0.25, deck_thickness=0.5)
    (1.0, 0.875)
    """
    refuse_if_any(
        [
            negative("roofing_thickness", roofing_thickness),
            not_positive("deck_thickness", deck_thickness),
            not_positive("into_deck", into_deck),
            negative("past_deck", past_deck),
        ]
    )
    if deck_thickness < into_deck:
        return roofing_thickness + deck_thickness + past_deck
    return roofing_thickness + into_deck


def nail_length(least_length: Inches, *, nail_lengths: tuple[Inches, ...] = NAIL_LENGTHS) -> Inches:
    """Choose the shortest nail on offer that is long enough.

    Args:
        least_length: The least length that holds; over 0.
        nail_lengths: The lengths on offer, one or more, in any order.

    Returns:
        One of the lengths on offer.

    Raises:
        Refused: A length is zero, negative or not finite, nothing is on offer, or every nail on
            offer is too short; names each.

    Source:
        The lengths on offer are common practice, no published source.

    >>> nail_length(1.25), nail_length(1.3125)
    (1.25, 1.5)
    """
    found = [
        not_positive("least_length", least_length),
        *(not_positive(f"nail_lengths.{i}", one) for i, one in enumerate(nail_lengths)),
    ]
    refuse_if_any(found)
    return _shortest(least_length, nail_lengths)


def _shortest(least_length: float, nail_lengths: tuple[float, ...]) -> float:
    enough = [one for one in nail_lengths if one >= least_length - DUST]
    if not enough:
        came = length(max(nail_lengths)) if nail_lengths else "none"
        refuse_if_any([fault("nail_lengths", came, "a nail of ", length(least_length), " or more")])
    return min(enough)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fasteners:
    """Nails counted, measured and bought.

    Attributes:
        nails: How many nails in all.
        nails_per_strip: How many in each full strip.
        nails_per_square: How many in the full strips of one square.
        least_length: The least length that holds in this deck.
        nail_length: The nail chosen from those on offer.
        nail_weight: Weight of one such nail, as computed from its size.
        weight: Weight of all the nails.
        boxes_by_weight: Boxes to buy where they are sold by weight.
        boxes_to_be_sure: The same if the nails run 15 % heavier than computed.
        boxes_by_count: Boxes to buy where they are sold by count.
        note: How far the count by weight can be trusted.
    """

    nails: int
    nails_per_strip: int
    nails_per_square: Ratio
    least_length: Inches
    nail_length: Inches
    nail_weight: Pounds
    weight: Pounds
    boxes_by_weight: int
    boxes_to_be_sure: int
    boxes_by_count: int
    note: Sentence


def fasteners(
    strips: int,
    *,
    nails_per_strip: int,
    other_nails: int = 0,
    shingle_length: Inches = 39.375,
    exposure: Inches = 5.625,
    roofing_thickness: Inches = 0.25,
    deck_thickness: Inches = 0.5,
    nail_lengths: tuple[Inches, ...] = NAIL_LENGTHS,
    shank: Inches = SHANK,
    head_diameter: Inches = HEAD_DIAMETER,
    box_weight: Pounds = 5.0,
    box_count: int = 7200,
) -> Fasteners:
    """Count the nails for shingles, choose their length, and give their weight and boxes.

    ``nails = strips * nails_per_strip + other_nails``; a square takes
    ``14400 in2 / (shingle_length * exposure)`` strips.

    Args:
        strips: Full strips laid, starter strips among them; over 0.
        nails_per_strip: Nails in each: 4, or 6 in high wind or above 21:12.
        other_nails: Nails in cut pieces, metal and the like, where they are of the same kind.
        shingle_length: Length of a strip.
        exposure: How much of each course shows.
        roofing_thickness: All that a nail passes through above the deck: two strips of 1/8 in
            unless given.
        deck_thickness: Thickness of the deck.
        nail_lengths: The lengths of nail on offer, one or more.
        shank: Diameter of the nail's shank; 11 gauge unless given.
        head_diameter: Diameter of the nail's head.
        box_weight: Nails in a box that is sold by weight.
        box_count: Nails in a box that is sold by count, such as coils for a nail gun.

    Returns:
        The count, the nail, its weight, and boxes by weight and by count.

    Raises:
        Refused: A count or measurement is zero, negative or not finite where it may not be, or no
            nail on offer is long enough; names each.

    Source:
        Nails a strip and nail length: IRC R905.2.5 and R905.2.6, 2018. 7,200 nails in a box of
        coils: trade press, as restated. The 5 lb box and the thickness of the roofing are common
        practice, no published source.

    >>> bought = fasteners(105, nails_per_strip=4)
    >>> bought.nails, bought.least_length, bought.nail_length, bought.boxes_by_weight
    (420, 0.875, 1.0, 1)
    """
    refuse_if_any(
        [
            not_positive("strips", strips, "count"),
            not_positive("nails_per_strip", nails_per_strip, "count"),
            negative("other_nails", other_nails, "count"),
            not_positive("shingle_length", shingle_length),
            not_positive("exposure", exposure),
            negative("roofing_thickness", roofing_thickness),
            not_positive("deck_thickness", deck_thickness),
            *(not_positive(f"nail_lengths.{i}", one) for i, one in enumerate(nail_lengths)),
            not_positive("shank", shank),
            not_positive("head_diameter", head_diameter),
            not_positive("box_weight", box_weight, "lb"),
            not_positive("box_count", box_count, "count"),
        ]
    )
    least = least_nail_length(roofing_thickness, deck_thickness=deck_thickness)
    chosen = _shortest(least, nail_lengths)
    to_the_pound = nails_per_pound(chosen, shank=shank, head_diameter=head_diameter)
    nails = strips * nails_per_strip + other_nails
    heaviest = nails * (1 + WITHIN) / to_the_pound
    refuse_if_any(
        [
            uncountable_fault("box_weight", box_weight, "lb", needed=heaviest),
            uncountable_fault("box_count", box_count, "count", needed=nails),
        ]
    )
    return Fasteners(
        nails=nails,
        nails_per_strip=nails_per_strip,
        nails_per_square=nails_per_strip * SQUARE / (shingle_length * exposure),
        least_length=least,
        nail_length=chosen,
        nail_weight=1 / to_the_pound,
        weight=nails / to_the_pound,
        boxes_by_weight=whole_packs(nails / to_the_pound, box_weight),
        boxes_to_be_sure=whole_packs(heaviest, box_weight),
        boxes_by_count=whole_packs(nails, box_count),
        note=_note(chosen, to_the_pound),
    )


def _note(chosen: float, to_the_pound: float) -> Sentence:
    count = f" nails go about {to_the_pound:.0f} to the pound by their size"
    return say(length(chosen), count, ", within about 15 %; the count on the box goes first.")
