"""The forms of roof that people name, by the sizes of their plans.

A form only says what its outline is and which sides are eaves or gables, at which pitches:
`whole_roof` makes one footprint of each, from which all planes follow alike. Plans lie with their
front eave from left to right, seen from the front: `length` along it, `width` from front to back.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.footprints import Footprint
from roofing_core.roof.planes import SingleSlope

Measured = Literal["deck", "walls"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gable:
    """A gable roof: two slopes, their ridge along the length.

    Attributes:
        form: The form of the roof.
        length: Along the eaves.
        width: From eave to eave, level.
        pitch: Of the front slope.
        back_pitch: Of the back slope; as the front unless given.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhangs are then added.
        eave_overhang: How far the deck reaches past the wall at each eave, level.
        rake_overhang: How far the deck reaches past the wall at each gable.
    """

    form: Literal["gable"] = "gable"
    length: Inches
    width: Inches
    pitch: Pitch
    back_pitch: Pitch | None = None
    measured: Measured = "deck"
    eave_overhang: Inches = 0.0
    rake_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Saltbox:
    """A saltbox: a gable roof whose back slope reaches further down, or whose ridge is off centre.

    Attributes:
        form: The form of the roof.
        length: Along the eaves.
        width: From eave to eave, level.
        pitch: Of the front slope.
        back_pitch: Of the back slope; as the front unless given.
        back_eave_drop: How far the back eave lies below the front eave. Give this or `ridge_run`.
        ridge_run: Level, from the front eave, or the front wall where the walls were measured, to
            below the ridge.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhangs are then added.
        eave_overhang: How far the deck reaches past the wall at each eave, level.
        rake_overhang: How far the deck reaches past the wall at each gable.
    """

    form: Literal["saltbox"] = "saltbox"
    length: Inches
    width: Inches
    pitch: Pitch
    back_pitch: Pitch | None = None
    back_eave_drop: Inches | None = None
    ridge_run: Inches | None = None
    measured: Measured = "deck"
    eave_overhang: Inches = 0.0
    rake_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Gambrel:
    """A gambrel: a gable roof whose slopes turn flatter at a pitch break.

    Attributes:
        form: The form of the roof.
        length: Along the eaves.
        width: From eave to eave, level.
        pitch: Of the lower slopes.
        upper_pitch: Of the upper slopes.
        break_run: Level, from the eave, or the wall where the walls were measured, to below the
            pitch break; less than half the width.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhangs are then added.
        eave_overhang: How far the deck reaches past the wall at each eave, level.
        rake_overhang: How far the deck reaches past the wall at each gable.
    """

    form: Literal["gambrel"] = "gambrel"
    length: Inches
    width: Inches
    pitch: Pitch
    upper_pitch: Pitch
    break_run: Inches
    measured: Measured = "deck"
    eave_overhang: Inches = 0.0
    rake_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Hip:
    """A hip roof: a slope from each of the four sides.

    Attributes:
        form: The form of the roof.
        length: Along the front.
        width: From front to back.
        pitch: Of the front and back slopes.
        end_pitch: Of the slopes over the ends; as the front unless given.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhang is then added.
        eave_overhang: How far the deck reaches past the walls, level.
    """

    form: Literal["hip"] = "hip"
    length: Inches
    width: Inches
    pitch: Pitch
    end_pitch: Pitch | None = None
    measured: Measured = "deck"
    eave_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Pyramid:
    """A pyramid: four hips that meet in a point over the middle of the plan.

    Attributes:
        form: The form of the roof.
        length: Along the front.
        width: From front to back.
        rise: Upright, from the eaves to the point. Give this or `pitch`.
        pitch: Of the front and back slopes; that of the ends follows.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhang is then added.
        eave_overhang: How far the deck reaches past the walls, level.
    """

    form: Literal["pyramid"] = "pyramid"
    length: Inches
    width: Inches
    rise: Inches | None = None
    pitch: Pitch | None = None
    measured: Measured = "deck"
    eave_overhang: Inches = 0.0


Named = Gable | Saltbox | Gambrel | Hip | Pyramid
Form = SingleSlope | Named | Footprint


def oblong(long: Inches, wide: Inches) -> tuple[tuple[Inches, Inches], ...]:
    """Give the corners of an oblong plan, from its left front corner round by the right.

    Args:
        long: Along the front.
        wide: From front to back.

    Returns:
        Four corners (x, y).

    Raises:
        Nothing: Sizes are checked where they come in.

    Source:
        Geometry.

    >>> oblong(36, 24)
    ((0.0, 0.0), (36, 0.0), (36, 24), (0.0, 24))
    """
    return (0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide)


def deck_sizes(roof: Named) -> tuple[Inches, Inches]:
    """Give length and width of a roof from edge to edge of its deck.

    Where the walls were measured, each size grows by the overhang at both of its ends.

    Args:
        roof: What was measured.

    Returns:
        Along the front, and from front to back.

    Raises:
        Nothing: Sizes are checked where they come in.

    Source:
        Geometry.

    >>> deck_sizes(Hip(length=100, width=80, pitch=0.5, measured="walls", eave_overhang=12))
    (124, 104)
    """
    if roof.measured == "deck":
        return roof.length, roof.width
    beside = roof.eave_overhang if isinstance(roof, Hip | Pyramid) else roof.rake_overhang
    return roof.length + 2 * beside, roof.width + 2 * roof.eave_overhang
