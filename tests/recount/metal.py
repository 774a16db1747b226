"""Edge metal cut as a crew would: one length after another along the edge, then the nails.

Written from the trade's description alone, in whole ticks. Nothing of the library is used here.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise


@dataclass
class Run:
    """One run of metal as it lies."""

    stock: int
    lengths: list[Fraction]
    laps_start: list[Fraction]
    nails: list[Fraction]


def lengths_needed(cut_length: int, *, stock: int, lap: int) -> int:
    """Add one length after another, each lapped, until the run is covered."""
    pieces, reached = 1, stock
    while reached < cut_length:
        pieces, reached = pieces + 1, reached + stock - lap
    return pieces


def choose(cut_length: int, *, offer: list[int], lap: int) -> int:
    """Choose the stock that buys the least metal, and of those the one with the fewest pieces."""
    bought = {stock: lengths_needed(cut_length, stock=stock, lap=lap) for stock in offer}
    return min(offer, key=lambda stock: (bought[stock] * stock, bought[stock]))


def lay_run(
    run: int,
    *,
    offer: list[int],
    lap: int,
    tab: int,
    spacing: int,
    end_distance: int,
    least_piece: int,
) -> Run:
    """Cut, lay and nail one run; its tabs are bent round the corners at its ends."""
    cut_length = run + 2 * tab
    stock = choose(cut_length, offer=offer, lap=lap)
    pieces = lengths_needed(cut_length, stock=stock, lap=lap)
    lengths: list[Fraction] = []
    at = Fraction(0)
    for _ in range(pieces):
        lengths.append(min(Fraction(stock), cut_length - at))
        at += lengths[-1] - lap
    # An end piece has to hold its tab and its lap, with the end nail clear of the lap's nail.
    holds = tab + max(Fraction(lap), Fraction(lap, 2) + end_distance)
    missing = max(Fraction(least_piece), holds) - lengths[-1]
    if pieces > 1 and missing > 0:
        lengths[-2] -= missing
        lengths[-1] += missing
    starts = [sum(lengths[:k], Fraction(0)) - k * lap - tab for k in range(1, pieces)]
    return Run(stock, lengths, starts, nail_run(run, starts, lap, spacing, end_distance))


def nail_run(
    run: int, laps_start: list[Fraction], lap: int, spacing: int, end_distance: int
) -> list[Fraction]:
    """Nail both ends and the middle of every lap, then divide what is between them evenly."""
    first, last = Fraction(end_distance), Fraction(run - end_distance)
    if last <= first:
        return [Fraction(run, 2)]
    fixed = [first, *(start + Fraction(lap, 2) for start in laps_start), last]
    nails = [first]
    for here, there in pairwise(fixed):
        if here == there:  # the middle of a lap is the last nail: one nail is enough
            continue
        spaces = 1
        while (there - here) / spaces > spacing:
            spaces += 1
        nails += [here + (there - here) * k / spaces for k in range(1, spaces + 1)]
    return nails
