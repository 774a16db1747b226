"""Sealant: beads, dabs, laps and bedding by volume, and as cartridges and cans.

Where on the roof they go is left to others: lengths, counts and areas come in. Beads, dabs and
laps come out of a cartridge; what closing courses are bedded in is trowelled from a can.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from math import pi
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.columns import Column, column_faults
from roofing_core.measures.counting import uncountable_fault, whole_packs
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.measures.units import CubicInches, Inches, SquareInches

Section = Literal["round", "half_round", "square", "fillet"]

#: Area of each section for a size of 1. The common quarter-inch tables disagree by two because
#: some of them mean a fillet.
SECTIONS: Mapping[Section, float] = MappingProxyType(
    {"round": pi / 4, "half_round": pi / 8, "square": 1.0, "fillet": 0.5}
)

#: Bead, dab, bead in a lap of metal, and bedding unless others are asked for.
BEAD_SIZE = 0.25
DAB_DIAMETER = 1.0
DAB_THICKNESS = 0.125
LAP_BEAD = 6.0
BEDDING_THICKNESS = 0.125

#: A cartridge of 10.1 US fl oz and a can of 1 US gal; a gallon is 231 cubic inches.
CARTRIDGE = 10.1 * 231 / 128
CAN = 231.0


def _section_fault(at: str, section: str) -> Fault | None:
    if section in SECTIONS:
        return None
    return fault(at, str(section), f"one of {', '.join(SECTIONS)}")


def bead_section(size: Column, *, section: Section = "round") -> Column:
    """Give the area of a bead's cross section.

    ``size ** 2`` times pi / 4 for round, pi / 8 for half round, 1 for square, 1 / 2 for a fillet.

    Args:
        size: Diameter of a round or half round, side of a square, leg of a fillet; over 0; a
            number, or a column of them.
        section: The shape of the bead.

    Returns:
        Area; one for each size.

    Raises:
        Refused: A size is zero, negative or not finite, or the section is none of these.

    Source:
        Geometry.

    >>> bead_section(0.25, section="square") == 2 * bead_section(0.25, section="fillet") == 1 / 16
    True
    """
    refuse_if_any(
        [
            *column_faults("size", size, not_positive),
            _section_fault("section", section),
        ]
    )
    return SECTIONS[section] * (size * size)


def bead_volume(bead_length: Column, *, size: Inches, section: Section = "round") -> Column:
    """Give the volume of a bead: its section times its length.

    Args:
        bead_length: Length of the bead; 0 or more; a number, or a column of them.
        size: Diameter, side or leg of the section; over 0.
        section: The shape of the bead.

    Returns:
        Volume; one for each length.

    Raises:
        Refused: A measurement is negative or not finite, the size is 0, or the section is none of
            those known; names each.

    Source:
        Geometry.

    >>> bead_volume(48, size=0.25, section="square")
    3.0
    """
    refuse_if_any(
        [
            *column_faults("bead_length", bead_length, negative),
            not_positive("size", size),
            _section_fault("section", section),
        ]
    )
    return bead_section(size, section=section) * bead_length


def dab_volume(diameter: Column, *, thickness: Inches = DAB_THICKNESS) -> Column:
    """Give the volume of one dab: ``pi / 4 * diameter ** 2 * thickness``.

    Args:
        diameter: Across the dab; over 0; a number, or a column of them.
        thickness: Of the dab once pressed; over 0.

    Returns:
        Volume; one for each diameter.

    Raises:
        Refused: A measurement is zero, negative or not finite; names each.

    Source:
        Geometry. The default thickness is common practice, no published source.

    >>> round(dab_volume(1), 4)
    0.0982
    """
    refuse_if_any(
        [
            *column_faults("diameter", diameter, not_positive),
            not_positive("thickness", thickness),
        ]
    )
    return pi / 4 * (diameter * diameter) * thickness


def bedding_volume(area: Column, *, thickness: Inches = BEDDING_THICKNESS) -> Column:
    """Give the volume of cement that beds an area: ``area * thickness``.

    Args:
        area: What is bedded; 0 or more; a number, or a column of them.
        thickness: Of the cement; over 0.

    Returns:
        Volume; one for each area.

    Raises:
        Refused: A measurement is negative or not finite, or the thickness is 0; names each.

    Source:
        Geometry. The default thickness is common practice, no published source.

    >>> bedding_volume(1848, thickness=0.125)  # one gallon covers 12.83 ft2
    231.0
    """
    refuse_if_any(
        [
            *column_faults("area", area, partial(negative, unit="in2")),
            not_positive("thickness", thickness),
        ]
    )
    return area * thickness


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealant:
    """Sealant and cement by volume, and as cartridges and cans.

    Attributes:
        bead_volume: Of the beads.
        dab_volume: Of the dabs.
        lap_volume: Of the beads in the laps of metal.
        bedding_volume: Of the cement that closing courses are bedded in.
        total_volume: Of all four.
        bead_reach: Length of bead that one cartridge makes.
        cartridges: Whole cartridges for beads, dabs and laps.
        cartridge_left: What is left of the last one.
        spread: Area that one can beds.
        cans: Whole cans for the bedding.
        can_left: What is left of the last one.
        note: Which bead is meant, and what comes out of what.
    """

    bead_volume: CubicInches
    dab_volume: CubicInches
    lap_volume: CubicInches
    bedding_volume: CubicInches
    total_volume: CubicInches
    bead_reach: Inches
    cartridges: int
    cartridge_left: CubicInches
    spread: SquareInches
    cans: int
    can_left: CubicInches
    note: Sentence


def sealant(
    bead_length: Inches = 0.0,
    *,
    bead_size: Inches = BEAD_SIZE,
    bead_section: Section = "round",
    dabs: int = 0,
    dab_diameter: Inches = DAB_DIAMETER,
    dab_thickness: Inches = DAB_THICKNESS,
    laps: int = 0,
    lap_bead: Inches = LAP_BEAD,
    bedding_area: SquareInches = 0.0,
    bedding_thickness: Inches = BEDDING_THICKNESS,
    cartridge: CubicInches = CARTRIDGE,
    can: CubicInches = CAN,
) -> Sealant:
    """Give the sealant and cement for beads, dabs, laps and bedding, in cartridges and cans.

    Section times length, pi / 4 times diameter squared times thickness, area times thickness.

    Args:
        bead_length: All beads together, such as two under each leg of the ridge metal.
        bead_size: Diameter, side or leg of the bead.
        bead_section: The shape of the bead: ``round``, ``half_round``, ``square`` or ``fillet``.
        dabs: How many, one on each exposed nail.
        dab_diameter: Across each dab.
        dab_thickness: Of each dab.
        laps: How many laps of metal are sealed.
        lap_bead: Length of bead in each lap, of the same size and shape.
        bedding_area: What is bedded in cement.
        bedding_thickness: Of that cement.
        cartridge: What one cartridge holds.
        can: What one can holds.

    Returns:
        Each volume and their total; cartridges for beads, dabs and laps; cans for the bedding.

    Raises:
        Refused: A length, count or area is negative or not finite, a size or pack is 0, or the
            section is none of these; names each.

    Source:
        Geometry; 1 US gal is 231 in3, 1 fl oz is 231/128 in3. Bead, dab and bedding sizes and the
        bead in a lap are common practice, no published source.

    >>> sealant(dabs=480).cartridges  # a square of three-tabs sealed by hand
    3
    """
    refuse_if_any(
        [
            negative("bead_length", bead_length),
            not_positive("bead_size", bead_size),
            _section_fault("bead_section", bead_section),
            negative("dabs", dabs, "count"),
            not_positive("dab_diameter", dab_diameter),
            not_positive("dab_thickness", dab_thickness),
            negative("laps", laps, "count"),
            negative("lap_bead", lap_bead),
            negative("bedding_area", bedding_area, "in2"),
            not_positive("bedding_thickness", bedding_thickness),
            not_positive("cartridge", cartridge, "in3"),
            not_positive("can", can, "in3"),
        ]
    )
    area = SECTIONS[bead_section] * (bead_size * bead_size)
    beads, in_laps = area * bead_length, area * lap_bead * laps
    dabbed = dabs * dab_volume(dab_diameter, thickness=dab_thickness)
    bedded = bedding_volume(bedding_area, thickness=bedding_thickness)
    gunned = beads + dabbed + in_laps
    refuse_if_any(
        [
            uncountable_fault("cartridge", cartridge, "in3", needed=gunned),
            uncountable_fault("can", can, "in3", needed=bedded),
        ]
    )
    cartridges, cans = whole_packs(gunned, cartridge), whole_packs(bedded, can)
    return Sealant(
        bead_volume=beads,
        dab_volume=dabbed,
        lap_volume=in_laps,
        bedding_volume=bedded,
        total_volume=gunned + bedded,
        bead_reach=cartridge / area,
        cartridges=cartridges,
        cartridge_left=max(0.0, cartridges * cartridge - gunned),
        spread=can / bedding_thickness,
        cans=cans,
        can_left=max(0.0, cans * can - bedded),
        note=_note(bead_size, bead_section),
    )


def _note(bead_size: float, section: Section) -> Sentence:
    bead = f" {section.replace('_', ' ')} bead. Beads, dabs and laps are from cartridges, "
    return say("The bead is meant as a ", length(bead_size), bead, "bedding is from cans.")
