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
from roofing_core.layers.metal.shared import RunAsked, RunPieced, SharedMetal, StockOffer

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
    stagger: float = 0.0,
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
    sizes = {"lap": lap, "least_piece": least_piece, "end_distance": end_distance}
    for run, asked in zip(found.runs, runs, strict=True):
        _check_run(run, asked, **sizes)
        for k, piece in enumerate(zip(run.cut_from, run.lengths, strict=True), 1):
            assert laid.pop((run.name, k)) == piece
        for other in found.runs:
            if other.name == asked.beside:
                assert all(abs(a - b) > stagger - DUST for a in run.laps for b in other.laps)
    assert not laid


def _check_run(run: RunPieced, asked: RunAsked, *, lap: float, **sizes: float) -> None:
    """The pieces lie end on end, each over the next by the lap, from tab to tab."""
    assert run.name == asked.name
    at_start, at_end = at_ends(asked)
    starts = [-at_start, *run.laps]
    for (start, after), long in zip(pairwise(starts), run.lengths, strict=False):
        assert abs(start + long - after - lap) < DUST
    assert abs(starts[-1] + run.lengths[-1] - asked.run_length - at_end) < DUST
    assert len(run.lengths) == 1 or min(run.lengths) > shortest(asked, lap=lap, **sizes) - DUST


def random_runs(chance: random.Random, most: int) -> tuple[RunAsked, ...]:
    """Runs of 20 to 360 in that come to no more than about 40 pieces."""
    grid = chance.choice((1, 8))
    runs: list[RunAsked] = []
    for k in range(chance.randint(1, most)):
        tab, tabs = chance.choice((0.0, 2.0)), chance.choice(get_args(Tabs))
        long = chance.randint(20 * grid, 360 * grid) / grid
        runs.append(RunAsked(name=f"run {k}", run_length=long, tab=tab, tabs=tabs))
        if sum(run.run_length for run in runs) > 3_400:
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
    runs: Sequence[int],
    offers: Sequence[tuple[int, int]],
    *,
    lap: int,
    least: int,
    stagger: int = 0,
) -> int:
    """Give the least cost at which the runs can be cut, trying every purchase and every cut.

    With a stagger the first two runs lie side by side; pieces are then tried in every order too,
    but still whole ones alone, so that there may be a cheaper way with halves.
    """
    most = sum(-(-run // (max(long for long, _ in offers) - lap)) + 1 for run in runs)
    cost = dict(offers)
    purchases = (
        bought
        for count in range(1, most + (2 if stagger else 1))
        for bought in combinations_with_replacement([*cost], count)
    )
    can_be_cut = _can_be_staggered if stagger else _can_be_cut
    for bought in sorted(purchases, key=lambda bought: sum(cost[long] for long in bought)):
        if can_be_cut(tuple(runs), bought, lap, least, stagger):
            return sum(cost[long] for long in bought)
    raise AssertionError("each run by itself can be cut from so many lengths")


def _can_be_cut(
    runs: tuple[int, ...], bought: tuple[int, ...], lap: int, least: int, _: int
) -> bool:
    @cache
    def rest_can(k: int, bins: tuple[int, ...]) -> bool:
        if k == len(runs):
            return True
        if sum(bins) < sum(runs[k:]):
            return False
        return any(rest_can(k + 1, after) for after, _ in _pieced(bins, runs[k], lap, least))

    return rest_can(0, tuple(sorted(bought)))


def _can_be_staggered(
    runs: tuple[int, ...], bought: tuple[int, ...], lap: int, least: int, stagger: int
) -> bool:
    first, second, *others = runs

    def apart(laps: tuple[int, ...], beside: tuple[int, ...]) -> bool:
        return all(abs(one - other) >= stagger for one in laps for other in beside)

    return any(
        apart(laps, beside) and _can_be_cut(tuple(others), after, lap, least, 0)
        for left, laps in _pieced(tuple(sorted(bought)), first, lap, least, ordered=True)
        for after, beside in _pieced(left, second, lap, least, ordered=True)
    )


_Left = tuple[tuple[int, ...], tuple[int, ...]]
"""What is left of bins, and where laps start."""


def _pieced(
    bins: tuple[int, ...], run: int, lap: int, least: int, *, ordered: bool = False
) -> set[_Left]:
    """Give what a run may leave of bins: every piece but the first costs a lap.

    Where its laps lie too, if that is asked for: then pieces come in any order.
    """
    found: set[_Left] = set()

    def take(left: tuple[int, ...], first: int, covered: int, laps: tuple[int, ...]) -> None:
        if covered == run:
            found.add((tuple(sorted(left)), laps if ordered else ()))
            return
        lapped = lap if covered else 0
        tried = set()
        for j in range(0 if ordered else first, len(left)):
            if ordered and left[j] in tried:
                continue
            tried.add(left[j])
            for piece in range(least, min(left[j], run - covered + lapped) + 1):
                after = (*left[:j], left[j] - piece, *left[j + 1 :])
                reached = covered + piece - lapped
                take(after, j + 1, reached, (*laps, covered - lapped) if covered else laps)

    take(bins, 0, 0, ())
    if run < least:
        for j, one in enumerate(bins):
            if one >= run:
                found.add((tuple(sorted((*bins[:j], *bins[j + 1 :], one - run))), ()))
    return found
