"""What a fit is made of: sizes of a roof, what each wastes, and what it saves."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.sentences import Sentence
from roofing_core.measures.units import Inches, Percent, SquareInches, Squares
from roofing_core.sizing.margin_kinds import LineChange

#: What sizes are ranked by: the share wasted of the shingles, or of all materials by weight.
By = Literal["shingles", "materials"]


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenSize:
    """One measurement of a size.

    Attributes:
        measurement: Its name in the roof.
        length: What it would be.
    """

    measurement: str
    length: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FitSize:
    """One size of a roof, and what it wastes.

    Attributes:
        sizes: Each measurement that has a range.
        area: Of the roof, on the slope.
        squares: The same in squares of 100 ft2.
        bundles: Bundles of shingles to buy.
        shingles_wasted: Share of the shingles bought that does not stay on the roof, starter and
            what the next courses cover counted as staying: what is cut off and what is left over.
        materials_wasted: Share of all that is bought that does not stay on the roof, by weight.
        saves: How much less is wasted than at the size wished for, of what sizes are ranked by.
        changes: The lines of the order that come to something else than at the size wished for.
        says: All of that in a sentence.
    """

    sizes: tuple[GivenSize, ...]
    area: SquareInches
    squares: Squares
    bundles: int
    shingles_wasted: Percent
    materials_wasted: Percent
    saves: Percent
    changes: tuple[LineChange, ...]
    says: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """Sizes about the one wished for that waste less.

    Attributes:
        says: What was found.
        by: What sizes are ranked by.
        wished: The size wished for.
        better: Sizes that waste less, the least first; of all sizes with one and the same order the
            one that wastes least.
        better_sizes: How many sizes in the ranges waste less.
        sizes_looked_at: How many sizes were counted or planned.
        not_plannable: How many of them cannot be planned.
        step: From one size to the next.
        at_once: Whether sizes were counted all at once; if not, each was planned.
    """

    says: Sentence
    by: By
    wished: FitSize
    better: tuple[FitSize, ...]
    better_sizes: int
    sizes_looked_at: int
    not_plannable: int
    step: Inches
    at_once: bool
