"""Price lists: what a caller can buy at what price, line by line, in one currency.

A list has the lines of the order under their own names. A line that a job does not need may have a
price; one that it needs must have one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from decimal import Decimal

from roofing_core.buying.money import (
    MOST_DIGITS,
    currency_fault,
    minor_digits,
    price_fault,
    rate_fault,
)
from roofing_core.buying.offered import (
    AnyOffered,
    LengthsOffered,
    Offered,
    PiecesOffered,
    VolumesOffered,
    WeightsOffered,
)
from roofing_core.measures.faults import Fault, fault, refuse_if_any


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceList:
    """What can be bought at what price, and what is on hand.

    Prices have no more digits after the point than the currency.

    Attributes:
        currency: Its code of three capital letters (ISO 4217), such as USD.
        minor_digits: Digits after the point, where they are not those that ISO 4217 gives.
        tax_rate: In percent, for all lines that have none of their own.
        tax_included: Whether prices include the tax.
        deck_panels: Panels of the deck, in the size that the job names.
        deck_nails: Nails for them.
        joint_tape: Tape for their joints.
        eave_metal: Lengths of eave metal.
        valley_metal: Lengths of metal for open valleys.
        ice_barrier: Rolls of ice barrier.
        valley_lining: Rolls of lining for valleys.
        underlayment: Rolls of underlayment.
        cap_nails: Cap nails for it.
        rake_metal: Lengths of rake metal.
        pitch_break_metal: Lengths of metal for pitch breaks.
        apron_metal: Lengths of metal for the feet of walls.
        step_flashing: Step flashing.
        flashing_sheets: Sheets of metal to bend, in the size that the job names.
        pipe_flashings: Flashings for pipes.
        starter: Ready-made starter.
        shingles: Shingles.
        caps: Ready-made caps, or shingles that caps are cut from.
        roofing_nails: Nails for starter and shingles.
        metal_nails: Nails for metal where it takes others.
        ridge_metal: Lengths of ridge metal.
        sealant: Sealant for beads and dabs.
        cement: Asphalt cement for bedding.
    """

    currency: str
    minor_digits: int | None = None
    tax_rate: Decimal = Decimal(0)
    tax_included: bool = False
    deck_panels: PiecesOffered | None = None
    deck_nails: WeightsOffered | None = None
    joint_tape: LengthsOffered | None = None
    eave_metal: LengthsOffered | None = None
    valley_metal: LengthsOffered | None = None
    ice_barrier: LengthsOffered | None = None
    valley_lining: LengthsOffered | None = None
    underlayment: LengthsOffered | None = None
    cap_nails: PiecesOffered | None = None
    rake_metal: LengthsOffered | None = None
    pitch_break_metal: LengthsOffered | None = None
    apron_metal: LengthsOffered | None = None
    step_flashing: PiecesOffered | None = None
    flashing_sheets: PiecesOffered | None = None
    pipe_flashings: PiecesOffered | None = None
    starter: PiecesOffered | None = None
    shingles: PiecesOffered | None = None
    caps: PiecesOffered | None = None
    roofing_nails: WeightsOffered | None = None
    metal_nails: WeightsOffered | None = None
    ridge_metal: LengthsOffered | None = None
    sealant: VolumesOffered | None = None
    cement: VolumesOffered | None = None

    def __post_init__(self) -> None:
        """Refuse a currency that is none, and prices finer than its minor unit."""
        refuse_if_any(self._faults())

    def _faults(self) -> Iterator[Fault | None]:
        yield currency_fault("currency", self.currency, self.minor_digits)
        digits = self.minor_digits
        if digits is not None and not 0 <= digits <= MOST_DIGITS:
            yield fault("minor_digits", str(digits), f"from 0 to {MOST_DIGITS}")
            return
        yield rate_fault("tax_rate", self.tax_rate)
        for name, offered in self.lines():
            for k, pack in enumerate(offered.packs):
                yield price_fault(f"{name}.packs.{k}.price", pack.price, digits=self.digits())

    def digits(self) -> int:
        """Give the digits after the point of its money."""
        if self.minor_digits is not None:
            return self.minor_digits
        digits = minor_digits(self.currency)
        return MOST_DIGITS if digits is None else digits

    def lines(self) -> tuple[tuple[str, AnyOffered], ...]:
        """Give the lines that are on the list, each with its name, in the order of work."""
        pairs = ((name, getattr(self, name)) for name in LINES)
        return tuple((name, offered) for name, offered in pairs if offered is not None)

    def rate_of(self, offered: Offered) -> Decimal:
        """Give the tax rate of a line."""
        return self.tax_rate if offered.tax_rate is None else offered.tax_rate


#: The names of the lines, in the order of work.
LINES = tuple(field.name for field in fields(PriceList))[4:]
