"""Bought: what buying for several runs together comes to, as lists to buy, cut and lay by."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from roofing_core.layers.metal.runs import Tabs
from roofing_core.measures.sentences import Sentence
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthsBought:
    """How many of one stock length to buy.

    Attributes:
        stock_length: The stock length.
        count: How many of it.
        price: Of each; 0 where no prices were given.
        cost: Of all of them.
    """

    stock_length: Inches
    count: int
    price: Decimal
    cost: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceCut:
    """One piece that is cut from a length.

    Attributes:
        length: How long it is.
        run: The run that it is for.
        number: Its place in that run, from 1, in the order of laying.
    """

    length: Inches
    run: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthCut:
    """One length that is bought, and what is cut from it.

    Attributes:
        number: Its number, from 1; pieces and offcuts are told by it.
        stock_length: Its stock length.
        pieces: The pieces that are cut from it, in the order of cutting.
        offcut: What is left of it.
    """

    number: int
    stock_length: Inches
    pieces: tuple[PieceCut, ...]
    offcut: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """What is left of a length.

    Attributes:
        name: Its name, a letter; after Z come two.
        length: How long it is.
        cut_from: The number of the length that it is left of.
        stock_length: The stock length of that.
    """

    name: str
    length: Inches
    cut_from: int
    stock_length: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class RunPieced:
    """One run, pieced together.

    Places are measured along the run from where it starts.

    Attributes:
        name: What it is called.
        run_length: Length of edge covered, without the tabs.
        tab: Length bent round the corner at each end that has a tab.
        tabs: Which ends have one.
        beside: The run that it lies side by side with; empty where there is none.
        cut_length: Length covered and tabs together, what the pieces come to once lapped.
        lengths: Length of each piece, in the order of laying.
        cut_from: The number of the length that each piece is cut from.
        laps: Where each lap starts, which is where the next piece starts.
    """

    name: str
    run_length: Inches
    tab: Inches
    tabs: Tabs
    beside: str
    cut_length: Inches
    lengths: tuple[Inches, ...]
    cut_from: tuple[int, ...]
    laps: tuple[Inches, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedMetal:
    """What several runs of one metal are cut from, bought together.

    Attributes:
        priced: Whether prices were given; if not, the least metal is bought, and all costs are 0.
        cost: What the lengths cost.
        least_cost: What is proved: no way of buying costs less.
        metal: The lengths bought, end to end.
        least_metal: What is proved: no way of buying takes less metal. With prices, only that it
            takes what the runs cover.
        proved: Whether it is proved that no way of buying costs less, or without prices takes less
            metal.
        verdict: What is proved, as a sentence.
        count: Lengths bought.
        bought: The lengths to buy, one entry for each stock length on offer.
        cuts: Every length with its pieces, in the order in which they are first needed.
        runs: Every run with its pieces, in the order given.
        offcuts: What is left of lengths, in the order of the lengths.
        offcut: What is left in all.
        lap: How far each piece laps the next.
        stagger: How far laps of runs side by side stand apart at least.
        run_by_run_cost: What buying costs least for each run by itself.
        run_by_run_metal: The metal that takes.
        saved: What buying together saves of the cost.
        saved_metal: How much less metal is bought; under 0 where more metal costs less.
    """

    priced: bool
    cost: Decimal
    least_cost: Decimal
    metal: Inches
    least_metal: Inches
    proved: bool
    verdict: Sentence
    count: int
    bought: tuple[LengthsBought, ...]
    cuts: tuple[LengthCut, ...]
    runs: tuple[RunPieced, ...]
    offcuts: tuple[Offcut, ...]
    offcut: Inches
    lap: Inches
    stagger: Inches
    run_by_run_cost: Decimal
    run_by_run_metal: Inches
    saved: Decimal
    saved_metal: Inches
