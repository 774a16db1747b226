"""Fewest: the fewest shingles that pieces can be cut from, as far as it can be proved."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.layers.coursing.offcuts.filling import filled
from roofing_core.layers.coursing.offcuts.pricing import priced
from roofing_core.layers.coursing.offcuts.searching import Search, SearchEnded
from roofing_core.layers.coursing.offcuts.sharing import Kind, Stock
from roofing_core.layers.coursing.offcuts.weighing import Counts, Weighing, apart, by_length


@dataclass(frozen=True, slots=True)
class Cutting:
    """A way of cutting pieces, and what is proved of it.

    Attributes:
        shingles: The pieces of each shingle.
        weighing: The weights that prove most.
        least: The fewest shingles that are proved to be needed, by the weights or by a search.
    """

    shingles: tuple[tuple[Kind, ...], ...]
    weighing: Weighing
    least: int


def fewest(counts: Counts, stock: Stock, *, steps: int) -> Cutting:
    """Cut pieces from the fewest shingles that can be found, and prove how few they may be.

    Args:
        counts: The pieces, none of which keeps both ends, the largest first.
        stock: What they are cut from.
        steps: How many sets of pieces a search may look at, all in all.

    Returns:
        The way of cutting; it is the fewest where the proof says as many.

    Raises:
        Nothing.

    Source:
        Bin packing: best fit, the prices of a linear program, and a search where they differ.

    >>> counts = {Kind("right", 20): 1, Kind("neither", 15): 1, Kind("left", 14): 1}
    >>> found = fewest(counts, Stock(36, 0, 0), steps=1000)
    >>> len(found.shingles), found.least
    (2, 2)
    """
    best = filled(counts, stock)
    weighings = [apart(counts, stock), by_length(counts, stock)]
    if max(one.least(counts) for one in weighings) < len(best):
        weighings.insert(0, priced(counts, stock, enough=len(best)))
    proof = max(weighings, key=lambda one: one.least(counts))
    least = proof.least(counts)
    if least < len(best):
        each = steps // (len(best) - least)
        search = Search(counts, stock, weighings=weighings, steps=each)
        best, least = _searched(search, best, least)
    return Cutting(tuple(map(tuple, best)), proof, least)


def _searched(search: Search, best: list[list[Kind]], least: int) -> tuple[list[list[Kind]], int]:
    """Try every number of shingles from the least proved up to one less than the best."""
    for shingles in range(least, len(best)):
        try:
            found = search.cut_from(shingles)
        except SearchEnded:
            continue
        if found:
            return found, least
        if least == shingles:
            least += 1
    return best, least
