"""Ventilation: the net free area that a vented space under a roof needs, high and low.

Whether a space has to be vented, and how one that is not vented is built, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import floor
from typing import Literal

from roofing_core.measures.counting import DUST, uncountable_fault, whole_packs
from roofing_core.measures.faults import not_one_of, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, Sentence, length, say
from roofing_core.measures.units import Percent, SquareInches
from roofing_core.ruling.listing import GOVERNS, edition_fault
from roofing_core.ruling.on_places import VENT_AREA, VENT_LEAST_HIGH, VENT_MOST_HIGH
from roofing_core.ruling.rule import EDITION, Edition

VentRatio = Literal["1/150", "1/300"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ventilation:
    """The vents that a space needs.

    Attributes:
        needed: Net free area of all vents together, at least.
        high_least: Of it high up, at least; 0 where the code asks for no balance.
        high_most: Of it high up, at most; all of it where the code asks for no balance.
        high_vents: Vents high up.
        low_vents: Vents low down.
        high_area: Net free area of the vents high up.
        low_area: Net free area of the vents low down.
        high_share: What is high up, as a part of what is needed.
        fits: Whether whole vents of this size keep the balance; else another size does.
        edition: Of the residential code.
        source: Where it is published, and how that is known.
        limits: What the answer holds for, and what it leaves to others.
    """

    needed: SquareInches
    high_least: SquareInches
    high_most: SquareInches
    high_vents: int
    low_vents: int
    high_area: SquareInches
    low_area: SquareInches
    high_share: Percent
    fits: bool
    edition: Edition
    source: str
    limits: tuple[Sentence, ...]


def ventilation(
    vented_area: SquareInches,
    *,
    ratio: VentRatio = "1/150",
    high_vent: SquareInches = 50.0,
    low_vent: SquareInches = 50.0,
    edition: Edition = EDITION,
) -> Ventilation:
    """Give the net free area that a vented space needs, and the vents for it, high and low.

    ``vented_area / 150``, or ``/ 300`` with 40 to 50 % of it high up and the rest low. High vents:
    as many as make half of it, of 1/300 at most half; low vents: as many as make the rest, and at
    least as much as is high up.

    Args:
        vented_area: Of the space, level, on its floor.
        ratio: 1/150; or 1/300, which asks for the balance, and in climate zones 6, 7 and 8 for a
            vapour retarder of class I or II on the warm side.
        high_vent: Net free area of one vent high up, as printed with it.
        low_vent: Net free area of one vent low down.
        edition: Of the residential code.

    Returns:
        The area, its balance, whole vents, and what is left to others.

    Raises:
        Refused: An area cannot be, or a word is none of these; names each.

    Source:
        IRC R806.2: 1/150 as read in the edition of 2018; the balance of 1/300 as restated for 2015
        to 2021. That low vents make at least as much as high ones is trade practice.

    >>> attic = ventilation(20 * 30 * 144.0, high_vent=288, low_vent=144)
    >>> attic.needed, attic.high_vents, attic.low_vents
    (576.0, 1, 2)
    """
    faults = [
        not_positive("vented_area", vented_area, "in2"),
        not_one_of("ratio", ratio, ("1/150", "1/300")),
        not_positive("high_vent", high_vent, "in2"),
        not_positive("low_vent", low_vent, "in2"),
        edition_fault("edition", edition),
    ]
    refuse_if_any(faults)
    needed = vent_area(vented_area, ratio=ratio)
    refuse_if_any(
        [
            uncountable_fault("high_vent", high_vent, "in2", needed=needed),
            uncountable_fault("low_vent", low_vent, "in2", needed=needed + high_vent),
        ]
    )
    balanced = ratio == "1/300"
    least, most = _balance(needed) if balanced else (0.0, needed)
    high = floor(most / high_vent + DUST) if balanced else whole_packs(needed / 2, high_vent)
    rest = max(needed - high * high_vent, high * high_vent)
    low = whole_packs(rest, low_vent)
    source = VENT_LEAST_HIGH.source_in(edition) if balanced else VENT_AREA.source_in(edition)
    return Ventilation(
        needed=needed,
        high_least=least,
        high_most=most,
        high_vents=high,
        low_vents=low,
        high_area=high * high_vent,
        low_area=low * low_vent,
        high_share=100 * high * high_vent / needed,
        fits=least - DUST <= high * high_vent <= most + DUST or not balanced,
        edition=edition,
        source=source.text() if source else "",
        limits=tuple(_limits(balanced, least, most, fits=high * high_vent >= least - DUST)),
    )


def vent_area(vented_area: SquareInches, *, ratio: VentRatio = "1/150") -> SquareInches:
    """Give the net free area that a vented space needs.

    Args:
        vented_area: Of the space, level, on its floor.
        ratio: 1/150 or 1/300.

    Returns:
        The area of all vents together.

    Raises:
        Nothing.

    Source:
        IRC R806.2.

    >>> vent_area(1500 * 144.0) / 144
    10.0
    """
    return vented_area / float(ratio.partition("/")[2])


def _balance(needed: float) -> tuple[float, float]:
    """Give the least and the most of a needed area that is high up."""
    return needed * VENT_LEAST_HIGH.limit / 100, needed * VENT_MOST_HIGH.limit / 100


def _limits(balanced: bool, least: float, most: float, *, fits: bool) -> Iterator[Sentence]:
    if balanced:
        yield say(
            "1/300 holds where ", Amount(least, "in2"), " to ", Amount(most, "in2"), " is at most ",
            length(36), " below the ridge or the highest point, plumb, the rest low; and, in"
            " climate zones 6, 7 and 8, with a vapour retarder of class I or II on the warm side."
        )  # fmt: skip
        if not fits:
            yield say(
                "No number of high vents of this size keeps that: take smaller ones, or 1/150."
            )
    yield say(
        "Net free area is what is printed with a vent, less than its hole: screens and louvres take"
        " a part. Round up what is bought by length."
    )
    yield say(
        "Keep ", length(1), " of clear way for the air over insulation at the eaves (IRC R806.3),"
        " and openings of ", length(1 / 16), " to ", length(1 / 4), " (IRC R806.1, as restated)."
    )  # fmt: skip
    yield say(
        "Whether a space has to be vented, and how one without vents is insulated, is for a"
        " licensed designer and the local authority."
    )
    yield say(GOVERNS)
