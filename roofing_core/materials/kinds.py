"""Materials: what is laid, by its dimensions, nominal and without brands.

Every field can be overridden and every material replaced: the sizes printed on what was bought go
first. Caps and flashings are `edge_kinds`; the catalogue is `listing`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.materials.sizes import length_faults, pack_fault, weight_faults
from roofing_core.measures.faults import fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import CubicInches, Inches, Pounds, PoundsPerFoot


@dataclass(frozen=True, slots=True, kw_only=True)
class Shingle:
    """A strip shingle of asphalt.

    Attributes:
        name: What it is, without a brand.
        kind: Laminated strip, or three tabs between cutouts.
        length: Along the course.
        height: From the butt to the top.
        exposure: How much of a course shows.
        nail_zone_low: Low edge of the nail zone, above the butt.
        nail_zone_high: High edge of the nail zone, above the butt.
        sequence: Length trimmed from the first shingle of each course, repeating.
        thickness: Of one shingle where it is nailed.
        per_bundle: Shingles in a bundle.
        bundle_weight: Of one bundle.
        class_d7158: Its class against wind by ASTM D7158, as printed on the wrapper.
        class_d3161: Its class against wind by ASTM D3161, as printed on the wrapper.
    """

    name: str
    kind: Literal["laminated", "three_tab"]
    length: Inches
    height: Inches
    exposure: Inches
    nail_zone_low: Inches
    nail_zone_high: Inches
    sequence: tuple[Inches, ...]
    thickness: Inches
    per_bundle: int
    bundle_weight: Pounds
    class_d7158: Literal["D", "G", "H", "unknown"] = "unknown"
    class_d3161: Literal["A", "D", "F", "unknown"] = "unknown"

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero; how they fit together is for the layers."""
        refuse_if_any(
            [
                *length_faults(self, "length", "height", "exposure", "thickness"),
                *weight_faults(self, "bundle_weight"),
                pack_fault("per_bundle", self.per_bundle),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Starter:
    """The strip under the first course.

    Attributes:
        name: What it is, without a brand.
        made: Cut from shingles, one strip from each, the half with the adhesive; or ready-made.
        length: Of one ready-made piece. A self-made one is as long as its shingle.
        height: Of one ready-made piece. A self-made one is the shingle without its exposure.
        trim: Length trimmed from the first piece, so that its joints miss the first course's.
        per_pack: Ready-made pieces in a pack.
        pack_weight: Of one pack of ready-made pieces.
    """

    name: str
    made: Literal["self_made", "ready_made"]
    length: Inches
    height: Inches
    trim: Inches
    per_pack: int
    pack_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any(
            [
                *length_faults(self, "length", "height"),
                negative("trim", self.trim),
                *weight_faults(self, "pack_weight"),
                pack_fault("per_pack", self.per_pack),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Roll:
    """Underlayment or ice barrier, by the roll.

    Attributes:
        name: What it is, without a brand.
        width: Of the roll.
        length: Of the roll.
        thickness: Of one layer.
        weight: Of one roll.
    """

    name: str
    width: Inches
    length: Inches
    thickness: Inches
    weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any(
            [*length_faults(self, "width", "length", "thickness"), *weight_faults(self, "weight")]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Metal:
    """Bent metal for one kind of edge, by the length.

    Attributes:
        name: What it is, without a brand.
        deck_leg: The leg on the deck.
        face_leg: The leg over the edge.
        stock_lengths: The lengths it is sold in.
        thickness: Of the sheet.
        weight: Along its length.
    """

    name: str
    deck_leg: Inches
    face_leg: Inches
    stock_lengths: tuple[Inches, ...]
    thickness: Inches
    weight: PoundsPerFoot

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero, and metal that is sold in no length."""
        refuse_if_any(
            [
                *length_faults(self, "deck_leg", "face_leg", "thickness"),
                *(
                    not_positive(f"stock_lengths.{k}", stock)
                    for k, stock in enumerate(self.stock_lengths)
                ),
                None
                if self.stock_lengths
                else fault("stock_lengths", "empty", "at least one length, such as ", length(120)),
                negative("weight", self.weight, "lb/ft"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Nail:
    """A nail that is sold by weight.

    Attributes:
        name: What it is, without a brand.
        length: Under the head.
        shank: Diameter of the shank.
        head: Diameter of the head.
        head_thickness: Of the head.
        box_weight: Of the nails in a box.
    """

    name: str
    length: Inches
    shank: Inches
    head: Inches
    head_thickness: Inches
    box_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any(
            [
                *length_faults(self, "length", "shank", "head", "head_thickness"),
                not_positive("box_weight", self.box_weight, "lb"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CapNail:
    """A nail with a wide cap for underlayment, sold by count.

    Attributes:
        name: What it is, without a brand.
        length: Under the cap.
        cap: Diameter of the cap.
        per_box: Nails in a box.
        box_weight: Of a full box.
    """

    name: str
    length: Inches
    cap: Inches
    per_box: int
    box_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any(
            [
                *length_faults(self, "length", "cap"),
                pack_fault("per_box", self.per_box),
                *weight_faults(self, "box_weight"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealant:
    """Sealant by the cartridge, or asphalt cement by the can.

    Attributes:
        name: What it is, without a brand.
        pack: What it comes in.
        volume: In one pack.
        pack_weight: Of one full pack.
    """

    name: str
    pack: Literal["cartridge", "can"]
    volume: CubicInches
    pack_weight: Pounds

    def __post_init__(self) -> None:
        """Refuse a pack that holds nothing."""
        refuse_if_any(
            [
                not_positive("volume", self.volume, "in3"),
                *weight_faults(self, "pack_weight"),
            ]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A structural panel of the deck.

    Attributes:
        name: What it is, without a brand.
        length: The long way, laid across the rafters.
        width: The short way.
        thickness: Of the panel; nails go through it or this far into it.
        weight: Of one panel.
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
class Tape:
    """Self-adhering tape over the joints of the deck, by the roll.

    Attributes:
        name: What it is, without a brand.
        width: Of the tape.
        length: Of a roll.
        weight: Of a roll.
    """

    name: str
    width: Inches
    length: Inches
    weight: Pounds

    def __post_init__(self) -> None:
        """Refuse sizes that are not over zero."""
        refuse_if_any([*length_faults(self, "width", "length"), *weight_faults(self, "weight")])
