"""Metal across runs against a general solver that knows nothing of groups of runs.

The solver is HiGHS; it is not shipped with this library or needed by it, and each test is skipped
where it is missing. It is given lengths enough, and may take a piece of any length for any run.
"""

from __future__ import annotations

import random
from typing import Any

import pytest

from roofing_core.layers.metal.shared import RunAsked, StockOffer, shared_metal
from tests.recount.shared_metal import check_shared, random_offers, shortest


@pytest.fixture(scope="module")
def highs() -> Any:
    return pytest.importorskip("highspy")


def least_cost(
    highs: Any, runs: tuple[RunAsked, ...], offers: tuple[StockOffer, ...], *, each: int
) -> int:
    """Give the least cost in hundredths, from so many of each stock length, by integers."""
    solver = highs.Highs()
    solver.silent()
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.5)
    stock = [one for one in offers for _ in range(each)]
    bought = [solver.addBinary(obj=int((one.price or 0) * 100)) for one in stock]
    used: list[Any] = [0.0] * len(stock)
    for run in runs:
        covered, pieces = 0.0, 0.0
        least = min(shortest(run, lap=6, least_piece=12, end_distance=1), run.run_length)
        for k, one in enumerate(stock):
            piece, there = solver.addVariable(0, one.length), solver.addBinary()
            solver.addConstr(piece <= one.length * there)
            solver.addConstr(piece >= least * there)
            used[k], covered, pieces = used[k] + piece, covered + piece, pieces + there
        solver.addConstr(covered - 6 * pieces == run.run_length - 6)
        solver.addConstr(pieces >= 1)
    for k, one in enumerate(stock):
        solver.addConstr(used[k] <= one.length * bought[k])
        if k % each:
            solver.addConstr(bought[k] <= bought[k - 1])
    solver.run()
    assert solver.getModelStatus() == highs.HighsModelStatus.kOptimal
    found: float = solver.getObjectiveValue()
    return round(found)


def random_case(seed: int) -> tuple[tuple[RunAsked, ...], tuple[StockOffer, ...]]:
    """Few runs, every other time of lengths that leave next to nothing over."""
    chance = random.Random(seed)
    offers = random_offers(chance, priced=True)[:2]
    reach = sum(chance.choice(offers).length - 6 for _ in range(chance.randint(1, 4))) + 6
    runs: list[int] = []
    while len(runs) < 3 and reach > 30:
        runs.append(chance.randint(20, int(min(reach, 250))))
        reach -= runs[-1]
    if seed % 2 and len(runs) < 4 and reach > 5:
        runs.append(int(reach))
    return tuple(RunAsked(name=str(k), run_length=run) for k, run in enumerate(runs)), offers


@pytest.mark.parametrize("first", range(0, 80, 10))
def test_small_cases_cost_what_the_solver_proves(highs, first):
    for seed in range(first, first + 10):
        runs, offers = random_case(seed)
        found = shared_metal(runs, offers=offers)
        check_shared(found, runs, offers)
        assert found.proved
        solved = least_cost(highs, runs, offers, each=found.count + 1)
        assert found.cost * 100 == solved, seed
