"""Materials of hips, ridges, walls and openings: caps, step flashing, flashing for pipes.

Every field can be overridden and every material replaced, as those of `kinds`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.materials.sizes import length_faults, pack_fault, weight_faults
from roofing_core.measures.faults import refuse_if_any
from roofing_core.measures.units import Inches, Pounds


@dataclass(frozen=True, slots=True, kw_only=True)
class Cap:
    """A shingle bent over a hip or ridge.

    Attributes:
        name: What it is, without a brand.
        made: Cut from three-tab shingles, or ready-made.
        length: Along the hip or ridge, from the butt to the top.
        width: Across it, laid flat: half of it lies on each side.
        exposure: How much of a cap shows.
        from_shingle: Caps cut from one shingle; 1 where they are ready-made.
        per_pack: Ready-made caps in a pack, or shingles in a bundle.
        pack_weight: Of one pack or bundle.
    """

    name: str
    made: Literal["self_made", "ready_made"]
    length: Inches
    width: Inches
    exposure: Inches
    from_shingle: int
    per_pack: int
    pack_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero; how they fit together is for the layers."""
        refuse_if_any(
            [
                *length_faults(self, "length", "width", "exposure"),
                pack_fault("from_shingle", self.from_shingle),
                pack_fault("per_pack", self.per_pack),
                *weight_faults(self, "pack_weight"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StepFlashing:
    """A bent piece of metal beside a wall, one in each course.

    Attributes:
        name: What it is, without a brand.
        length: Up the slope.
        deck_leg: The leg on the deck.
        wall_leg: The leg up the wall.
        thickness: Of the sheet.
        per_pack: Pieces in a pack.
        pack_weight: Of one pack.
    """

    name: str
    length: Inches
    deck_leg: Inches
    wall_leg: Inches
    thickness: Inches
    per_pack: int
    pack_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero; how they fit the courses is for the layers."""
        refuse_if_any(
            [
                *length_faults(self, "length", "deck_leg", "wall_leg", "thickness"),
                pack_fault("per_pack", self.per_pack),
                *weight_faults(self, "pack_weight"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Flat metal, by the sheet, that flashings are cut and bent from.

    Attributes:
        name: What it is, without a brand.
        length: Of a sheet.
        width: Of a sheet.
        thickness: Of the metal.
        weight: Of a sheet.
    """

    name: str
    length: Inches
    width: Inches
    thickness: Inches
    weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any(
            [*length_faults(self, "length", "width", "thickness"), *weight_faults(self, "weight")]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PipeFlashing:
    """A collar with a flat base round a pipe through the roof, sold singly.

    Attributes:
        name: What it is, without a brand.
        largest_pipe: Diameter of the largest pipe that the collar goes round.
        base_width: Of the base, along the eave.
        base_length: Of the base, up the slope.
        pack_weight: Of one.
    """

    name: str
    largest_pipe: Inches
    base_width: Inches
    base_length: Inches
    pack_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero; how the base fits the pipe is for the layers."""
        refuse_if_any(
            [
                *length_faults(self, "largest_pipe", "base_width", "base_length"),
                *weight_faults(self, "pack_weight"),
            ]
        )
