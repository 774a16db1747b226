"""Joint lines: where the pattern of a plane has its joints, and which of them lie on a row."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Region, Stretch


def start_line_of(region: Region) -> Inches:
    """Give the line from which joints are counted: where the first course's butt begins.

    Args:
        region: What the shingles of a plane cover.

    Returns:
        Its u.

    Raises:
        Nothing.

    Source:
        Common practice, no published source: courses are laid from the left, off a line square to
        the eave.

    >>> start_line_of(Region([[(-0.25, -0.5), (168.25, -0.5), (168.25, 112), (-0.25, 112)]]))
    -0.25
    """
    begins = region.at(region.lowest)
    return begins[0][0] if begins else 0.0


def joints_on(
    stretches: Sequence[Stretch],
    on_deck: Sequence[Stretch],
    *,
    trim: Inches,
    start_line: Inches,
    long: Inches,
) -> tuple[Inches, ...]:
    """Give where the pieces of a row meet on the deck.

    ``start_line + long - trim + i * long``, i any whole number, within the row and the deck.

    Args:
        stretches: Where the row lies.
        on_deck: Where the deck lies at its height.
        trim: Length trimmed from the strip that begins at the start line.
        start_line: The line from which joints are counted.
        long: Length of a whole strip.

    Returns:
        From the left.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.regions import region_of
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> plane = surfaces(Hip(length=168, width=120, pitch=0.75)).planes[0]
    >>> deck = region_of(plane)
    >>> joints_on(deck.between(0, 5), deck.between(0, 5), trim=4, start_line=0, long=36)
    (32, 68, 104, 140)
    """
    first, dust = start_line + (long - trim), DUST * long
    found = []
    for one in stretches:
        i = floor((one.left + dust - first) / long) + 1
        while (joint := first + i * long) < one.right - dust:
            if is_within(joint, on_deck):
                found.append(joint)
            i += 1
    return tuple(found)


def is_within(u: Inches, stretches: Sequence[Stretch]) -> bool:
    """Tell whether a place along the eave lies within one of some stretches, not at an end.

    Args:
        u: The place.
        stretches: The stretches.

    Returns:
        Whether it does.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> row = Region([[(0, 0), (90, 0), (90, 5), (0, 5)]]).between(0, 5)
    >>> is_within(45, row), is_within(90, row)
    (True, False)
    """
    return any(one.left + DUST < u < one.right - DUST for one in stretches)
