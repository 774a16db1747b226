"""Metal bought for several runs, counted again: a check of any cut plan, and all ways tried.

Knows nothing of groups of runs. Where every size is a whole number, the pieces of a best cut plan
can be taken whole too (cutting lengths for given runs is a transport problem, whose corners are
whole), so trying whole pieces tries everything.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from itertools import combinations_with_replacement, pairwise
from typing import get_args

from roofing_core.layers.metal import Tabs
from roofing_core.layers.metal.shared import RunAsked, SharedMetal, StockOffer

# Sums of at most 40 lengths in inches stray by far less than this.
DUST = 1e-7


def at_ends(run: RunAsked) -> tuple[float, float]:
    tab = run.tab
    return {"both": (tab, tab), "start": (tab, 0.0), "end": (0.0, tab)}[run.tabs]


def shortest(run: RunAsked, *, lap: float, least_piece: float, end_distance: float) -> float:
    """A piece of several keeps to the least, its laps apart, and its tab and end nail off them."""
    end = max(at_ends(run)) + max(lap, lap / 2 + end_distance)
    return max(least_piece, 2 * lap, end)


def check_shared(
    found: SharedMetal,
    runs: Sequence[RunAsked],
    offers: Sequence[StockOffer],
    *,
    lap: float = 6.0,
    least_piece: float = 12.0,
    end_distance: float = 1.0,
) -> None:
    """Hold a cut plan against what was asked: runs spanned, nothing cut that was not bought."""
    lengths = [one.length for one in offers]
    assert [one.stock_length for one in found.bought] == lengths
    assert [cut.number for cut in found.cuts] == [*range(1, found.count + 1)]
    for one in found.bought:
        assert one.count == sum(cut.stock_length == one.stock_length for cut in found.cuts)
        assert one.cost == one.price * one.count
    for cut in found.cuts:
        used = sum(piece.length for piece in cut.pieces)
        assert cut.pieces
        assert abs(used + cut.offcut - cut.stock_length) < DUST
    left = [(cut.number, cut.stock_length, cut.offcut) for cut in found.cuts if cut.offcut > DUST]
    assert [(one.cut_from, one.stock_length, one.length) for one in found.offcuts] == left
    assert len({one.name for one in found.offcuts}) == len(found.offcuts)
    assert found.cost == sum(one.cost for one in found.bought)
    assert abs(found.metal - sum(cut.stock_length for cut in found.cuts)) < DUST
    laid = {(p.run, p.number): (c.number, p.length) for c in found.cuts for p in c.pieces}
    assert len(laid) == sum(len(cut.pieces) for cut in found.cuts)
    for run, asked in zip(found.runs, runs, strict=True):
        assert run.name == asked.name
        least = shortest(asked, lap=lap, least_piece=least_piece, end_distance=end_distance)
        at_start, at_end = at_ends(asked)
        starts = [-at_start, *run.laps]
        for (start, after), long in zip(pairwise(starts), run.lengths, strict=False):
            assert abs(start + long - after - lap) < DUST
        assert abs(starts[-1] + run.lengths[-1] - asked.run_length - at_end) < DUST
        assert len(run.lengths) == 1 or min(run.lengths) > least - DUST
        for k, piece in enumerate(zip(run.cut_from, run.lengths, strict=True), 1):
            assert laid.pop((run.name, k)) == piece
    assert not laid


def random_runs(chance: random.Random, most: int) -> tuple[RunAsked, ...]:
    """Runs of 20 to 360 in that come to no more than about 34 pieces."""
    grid = chance.choice((1, 8))
    runs: list[RunAsked] = []
    for k in range(chance.randint(1, most)):
        tab, tabs = chance.choice((0.0, 2.0)), chance.choice(get_args(Tabs))
        long = chance.randint(20 * grid, 360 * grid) / grid
        runs.append(RunAsked(name=f"run {k}", run_length=long, tab=tab, tabs=tabs))
        if sum(run.run_length for run in runs) > 3_000:
            break
    return tuple(runs)


def random_offers(chance: random.Random, *, priced: bool) -> tuple[StockOffer, ...]:
    lengths = chance.sample((96.0, 120.0, 126.0, 144.0, 168.0, 192.0), chance.randint(1, 4))
    return tuple(
        StockOffer(
            length=long,
            price=Decimal(round(long * chance.uniform(8, 12))).scaleb(-2) if priced else None,
        )
        for long in lengths
    )


def all_ways(
    runs: Sequence[int], offers: Sequence[tuple[int, int]], *, lap: int, least: int
) -> int:
    """Give the least cost at which the runs can be cut, trying every purchase and every cut."""
    most = sum(-(-run // (max(long for long, _ in offers) - lap)) + 1 for run in runs)
    cost = dict(offers)
    purchases = (
        bought
        for count in range(1, most + 1)
        for bought in combinations_with_replacement([*cost], count)
    )
    for bought in sorted(purchases, key=lambda bought: sum(cost[long] for long in bought)):
        if _can_be_cut(tuple(runs), bought, lap, least):
            return sum(cost[long] for long in bought)
    raise AssertionError("each run by itself can be cut from so many lengths")


def _can_be_cut(runs: tuple[int, ...], bought: tuple[int, ...], lap: int, least: int) -> bool:
    @cache
    def rest_can(k: int, bins: tuple[int, ...]) -> bool:
        if k == len(runs):
            return True
        if sum(bins) < sum(runs[k:]):
            return False
        alone = (runs[k],) if runs[k] < least else ()
        return any(rest_can(k + 1, after) for after in _pieced(bins, runs[k], lap, least, alone))

    return rest_can(0, tuple(sorted(bought)))


def _pieced(
    bins: tuple[int, ...], run: int, lap: int, least: int, alone: tuple[int, ...]
) -> set[tuple[int, ...]]:
    """Give what a run may leave of bins: every piece but the first costs a lap."""
    found: set[tuple[int, ...]] = set()

    def take(j: int, covered: int, left: tuple[int, ...]) -> None:
        if covered == run:
            found.add(tuple(sorted((*left, *bins[j:]))))
            return
        if j == len(bins):
            return
        take(j + 1, covered, (*left, bins[j]))
        lapped = lap if covered else 0
        for piece in range(least, min(bins[j], run - covered + lapped) + 1):
            take(j + 1, covered + piece - lapped, (*left, bins[j] - piece))

    take(0, 0, ())
    for long in alone:
        for j, one in enumerate(bins):
            if one >= long:
                found.add(tuple(sorted((*bins[:j], *bins[j + 1 :], one - long))))
    return found
