"""Order lines: how one line of the order list comes from what is needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.materials.kinds import Nail
from roofing_core.measures.counting import whole_packs
from roofing_core.measures.sentences import Amount
from roofing_core.measures.units import Pounds, SquareInches

Pack = Literal[
    "panel", "length", "sheet", "piece", "roll", "bundle", "pack", "box", "cartridge", "can"
]  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class PackSize:
    """Packs of one size among those of a line.

    Attributes:
        packs: How many of them.
        holds: What one holds.
    """

    packs: int
    holds: Amount


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One line of the order.

    Attributes:
        item: What it is, in trade words.
        material: The material, by its name.
        packs: Whole packs to buy; 0 where the job needs none.
        pack: What it is bought in.
        pack_holds: What one pack holds; where they are of several sizes, the middle of them.
        sizes: Packs by size where they are of several; else none.
        needed: What the job uses.
        left_over: What is left of the packs bought.
        covers_more: How much more roof of this kind the rest would cover.
        pack_weight: Of one pack; where they are of several sizes, the middle of them.
        used_weight: Of what stays on the roof.
    """

    item: str
    material: str
    packs: int
    pack: Pack
    pack_holds: Amount
    sizes: tuple[PackSize, ...]
    needed: Amount
    left_over: Amount
    covers_more: SquareInches
    pack_weight: Pounds
    used_weight: Pounds

    def by_size(self) -> tuple[PackSize, ...]:
        """Give the packs by size, the smallest first; one entry where all are alike."""
        return self.sizes or (PackSize(packs=self.packs, holds=self.pack_holds),)


@dataclass(frozen=True, slots=True)
class Maker:
    """Makes the lines of one order.

    Attributes:
        area: Of the roof, on the slope.
    """

    area: SquareInches

    def line(
        self,
        item: str,
        material: str,
        *,
        pack: Pack,
        needed: float,
        holds: float,
        unit: str,
        packs: int | None = None,
        pack_weight: float,
        used_weight: float | None = None,
    ) -> OrderLine:
        """Make one line; packs are counted from what is needed unless a cutting plan gives them."""
        bought = whole_packs(needed, holds) if packs is None else packs
        left = max(0.0, bought * holds - needed)
        return OrderLine(
            item=item,
            material=material,
            packs=bought,
            pack=pack,
            pack_holds=Amount(holds, unit),
            sizes=(),
            needed=Amount(needed, unit),
            left_over=Amount(left, unit),
            covers_more=self.area * left / needed if needed > 0 else 0.0,
            pack_weight=pack_weight,
            used_weight=pack_weight * needed / holds if used_weight is None else used_weight,
        )

    def nails(self, item: str, nail: Nail, weight: float) -> OrderLine:
        """Make a line of nails that are sold by weight."""
        return self.line(
            item,
            nail.name,
            pack="box",
            needed=weight,
            holds=nail.box_weight,
            unit="lb",
            pack_weight=nail.box_weight,
        )
