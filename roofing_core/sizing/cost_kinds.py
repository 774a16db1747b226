"""What a fit by cost is made of: sizes of a roof, and what each costs by a price list."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from roofing_core.measures.sentences import Sentence
from roofing_core.measures.units import Inches, SquareInches, Squares
from roofing_core.sizing.fit_kinds import GivenSize
from roofing_core.sizing.margin_kinds import LineChange


@dataclass(frozen=True, slots=True, kw_only=True)
class CostSize:
    """One size of a roof, and what it costs.

    Attributes:
        sizes: Each measurement that has a range.
        area: Of the roof, on the slope.
        squares: The same in squares of 100 ft2.
        total: What the order that costs least comes to, with the tax.
        per_square: The same for each square of the roof, rounded half up to the minor unit.
        saves_per_square: How much less that is than at the size wished for.
        changes: The lines of the order in the job's own packs that come to something else than at
            the size wished for.
        says: All of that in a sentence.
    """

    sizes: tuple[GivenSize, ...]
    area: SquareInches
    squares: Squares
    total: Decimal
    per_square: Decimal
    saves_per_square: Decimal
    changes: tuple[LineChange, ...]
    says: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class CostFit:
    """Sizes about the one wished for that cost less for each square.

    Attributes:
        says: What was found.
        currency: The code of the currency (ISO 4217).
        minor_digits: Digits after the point of every amount of money here.
        wished: The size wished for.
        better: Sizes that cost less for each square, the least first.
        orders: How many different orders the sizes in the ranges come to.
        orders_priced: How many of them were priced, each at the largest roof that it covers.
        sizes_looked_at: How many sizes were counted or planned.
        not_plannable: How many of them cannot be planned.
        step: From one size to the next.
        at_once: Whether sizes were counted all at once; if not, each was planned.
    """

    says: Sentence
    currency: str
    minor_digits: int
    wished: CostSize
    better: tuple[CostSize, ...]
    orders: int
    orders_priced: int
    sizes_looked_at: int
    not_plannable: int
    step: Inches
    at_once: bool
