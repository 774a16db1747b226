"""Offcut reuse against a general solver that knows nothing of how it was found.

The solver is HiGHS; it is not shipped with this library or needed by it, and each test is skipped
where it is missing. It is given every lot of pieces that one shingle yields, found by laying pieces
out in every order, and chooses the fewest lots in which each piece is to be had.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest

from tests.recount.offcuts import Case, Piece, check_cutting, random_case, random_roof


@pytest.fixture(scope="module")
def highs() -> Any:
    return pytest.importorskip("highspy")


def fewest(highs: Any, case: Case) -> int:
    """Give the fewest shingles, by an integer program."""
    counts = Counter(piece for piece in case.pieces if piece[1] != "both")
    solver = highs.Highs()
    solver.silent()
    lots = [(solver.addIntegral(lb=0), Counter(lot)) for lot in all_lots(case, counts, (), 0)]
    for piece, count in counts.items():
        solver.addConstr(sum(cut * lot[piece] for cut, lot in lots if piece in lot) >= count)
    if lots:
        solver.minimize(sum(cut for cut, _ in lots))
    assert solver.getModelStatus() == highs.HighsModelStatus.kOptimal or not lots
    whole = sum(keeps == "both" for _, keeps, _ in case.pieces)
    return whole + round(solver.getObjectiveValue() if lots else 0)


def all_lots(
    case: Case, counts: Counter[Piece], lot: tuple[Piece, ...], first: int
) -> Iterator[tuple[Piece, ...]]:
    """Give every lot that one shingle yields and that holds another."""
    for k, piece in list(enumerate(counts))[first:]:
        more = (*lot, piece)
        if lot.count(piece) < counts[piece] and case.from_one_shingle(more):
            yield more
            yield from all_lots(case, counts, more, k)


@pytest.mark.parametrize("first", range(0, 3000, 100))
def test_random_roofs_take_no_shingle_too_many_and_none_too_few(highs, first):
    for seed in range(first, first + 100):
        case = random_roof(seed, courses=8)
        answer = case.answer()
        check_cutting(case, answer)
        assert answer.shingles == fewest(highs, case), seed
        assert answer.proved, seed


@pytest.mark.parametrize("first", range(0, 1000, 100))
def test_random_pieces_take_no_shingle_too_many_and_none_too_few(highs, first):
    for seed in range(first, first + 100):
        case = random_case(seed, most=20, steps=20)
        answer = case.answer()
        check_cutting(case, answer)
        assert answer.shingles == fewest(highs, case), seed
        assert answer.proved, seed
