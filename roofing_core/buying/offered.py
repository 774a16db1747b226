"""On offer: the packs that can be had for one line of an order, and what is on hand already.

What a pack holds is told as its line is counted: pieces, lengths, weights or volumes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, ClassVar

from roofing_core.buying.money import price_fault, rate_fault
from roofing_core.buying.packs import PackOffer
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.units import CubicInches, Inches, Pounds
from roofing_core.measures.wording import Wording

#: What a seller calls a pack.
PACK_NAME = Wording(60)

#: More packs than this are not offered of one thing.
MOST_PACKS = 30

#: Nor are more lengths than this on hand: each is a cutting plan more.
MOST_ON_HAND = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedPack(PackOffer):
    """A pack on a price list: what is in it, and its price, before tax unless the list says else.

    Attributes:
        name: What the seller calls it, or nothing.
    """

    unit: ClassVar[str]

    name: Annotated[str, PACK_NAME] = ""

    def __post_init__(self) -> None:
        """Refuse a pack that holds nothing, and a price that is none."""
        holds = not_positive("holds", self.holds, self.unit)
        named = PACK_NAME.fault("name", self.name)
        refuse_if_any([holds, price_fault("price", self.price), named])


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePack(PricedPack):
    """A pack of pieces: shingles in a bundle, panels in a lift; of 1 where they are sold singly."""

    unit: ClassVar[str] = "count"

    holds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthPack(PricedPack):
    """A roll, or a length of metal."""

    unit: ClassVar[str] = "in"

    holds: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightPack(PricedPack):
    """A box that is sold by weight."""

    unit: ClassVar[str] = "lb"

    holds: Pounds


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumePack(PricedPack):
    """A cartridge or a can."""

    unit: ClassVar[str] = "in3"

    holds: CubicInches


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthOnHand:
    """Rolls or lengths of metal that are there already, all of one length.

    Attributes:
        length: Of each; of a roll that was begun, what is left.
        count: How many.
    """

    length: Inches
    count: int = 1

    def __post_init__(self) -> None:
        """Refuse a length that is not over zero."""
        faults = (not_positive("length", self.length), negative("count", self.count, "count"))
        refuse_if_any(faults)


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """What is on offer for one line of the order.

    Attributes:
        packs: The packs on offer.
        tax_rate: In percent, where it is not that of the list; 0 for what is exempt.
    """

    packs: tuple[PricedPack, ...] = ()
    tax_rate: Decimal | None = None

    def __post_init__(self) -> None:
        """Refuse packs that cannot be told apart, and too many of them."""
        refuse_if_any(self._faults())

    def _faults(self) -> Iterator[Fault | None]:
        if len(self.packs) > MOST_PACKS:
            yield fault("packs", f"{len(self.packs)} packs", f"at most {MOST_PACKS}")
        known = [(pack.holds, pack.name) for pack in self.packs]
        for k, pack in enumerate(known):
            if pack in known[:k]:
                other = f"packs.{known.index(pack)}"
                wanted = f"another size or another name: it is like {other} in both"
                yield fault(f"packs.{k}", "a pack", wanted)
        yield None if self.tax_rate is None else rate_fault("tax_rate", self.tax_rate)
        yield from self._on_hand_faults()

    def _on_hand_faults(self) -> Iterator[Fault | None]:
        yield None


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecesOffered(Offered):
    """What is on offer for a line that is counted in pieces.

    Attributes:
        on_hand: Pieces that are there already, in whole packs and in packs begun.
    """

    packs: tuple[PiecePack, ...] = ()
    on_hand: int = 0

    def _on_hand_faults(self) -> Iterator[Fault | None]:
        yield negative("on_hand", self.on_hand, "count")


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthsOffered(Offered):
    """What is on offer for a line of rolls or of lengths of metal.

    Attributes:
        on_hand: Those that are there already.
    """

    packs: tuple[LengthPack, ...] = ()
    on_hand: tuple[LengthOnHand, ...] = ()

    def _on_hand_faults(self) -> Iterator[Fault | None]:
        lengths = len(self.on_hand)
        if lengths > MOST_ON_HAND:
            yield fault("on_hand", f"{lengths} lengths", f"at most {MOST_ON_HAND}")


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightsOffered(Offered):
    """What is on offer for a line that is sold by weight.

    Attributes:
        on_hand: What is there already, in whole packs and in packs begun.
    """

    packs: tuple[WeightPack, ...] = ()
    on_hand: Pounds = 0.0

    def _on_hand_faults(self) -> Iterator[Fault | None]:
        yield negative("on_hand", self.on_hand, "lb")


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumesOffered(Offered):
    """What is on offer for a line that is sold by volume.

    Attributes:
        on_hand: What is there already, in whole packs and in packs begun.
    """

    packs: tuple[VolumePack, ...] = ()
    on_hand: CubicInches = 0.0

    def _on_hand_faults(self) -> Iterator[Fault | None]:
        yield negative("on_hand", self.on_hand, "in3")


AnyOffered = PiecesOffered | LengthsOffered | WeightsOffered | VolumesOffered


def places_by_size(offered: LengthsOffered) -> dict[Inches, int]:
    """Give the place of the cheapest pack of each size on offer.

    Args:
        offered: What is on offer.

    Returns:
        One entry per size, in the order of the packs.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> two = [LengthPack(holds=120, price=Decimal(price), name=price) for price in ("9", "8")]
    >>> places_by_size(LengthsOffered(packs=tuple(two)))
    {120: 1}
    """
    packs = offered.packs
    sizes: dict[float, int] = {}
    for k, pack in enumerate(packs):
        if pack.holds not in sizes or pack.price < packs[sizes[pack.holds]].price:
            sizes[pack.holds] = k
    return sizes
