"""Offcuts counted again, slowly: every way of sharing shingles tried, every proof checked.

Lengths here are whole sixteenths of an inch, so that nothing is rounded.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise, permutations
from random import Random

from roofing_core.layers.coursing.needs import NeededPiece
from roofing_core.layers.coursing.reuse import CutPiece, Reuse, reuse

#: Its width, the end that it keeps, and where it begins on the shingle of its place.
Piece = tuple[int, str, int]


@dataclass(frozen=True)
class Case:
    """Pieces to be cut from shingles of a length."""

    pieces: tuple[Piece, ...]
    length: int
    kerf: int = 0
    tabs: int = 0

    def needed(self) -> list[NeededPiece]:
        return [
            NeededPiece(
                plane="front",
                row="course",
                course=k // 2 + 1,
                number=k % 2 + 1,
                width=width / 16,
                keeps=keeps,  # type: ignore[arg-type]
                shingle_from=begins / 16,
            )
            for k, (width, keeps, begins) in enumerate(self.pieces)
        ]

    def answer(self) -> Reuse:
        return reuse(
            self.needed(), shingle_length=self.length / 16, kerf=self.kerf / 16, tabs=self.tabs
        )

    def one_shingle(self, places: Sequence[int]) -> bool:
        return self.from_one_shingle([self.pieces[k] for k in places])

    def from_one_shingle(self, pieces: Sequence[Piece]) -> bool:
        """Tell whether pieces come from one shingle: lay them out in every order."""
        if self.tabs and sum(keeps == "neither" for _, keeps, _ in pieces) > 6:
            return False
        used = sum(width + self.kerf for width, _, _ in pieces) - self.kerf
        return used <= self.length and any(map(self._in_order, set(permutations(pieces))))

    def _in_order(self, pieces: Sequence[Piece]) -> bool:
        cursor = 0
        for width, keeps, begins in pieces:
            start = {"left": 0, "both": 0, "right": self.length - width}.get(keeps, cursor)
            if keeps == "neither" and self.tabs:
                start = next(
                    at for at in range(cursor, cursor + self.length) if self._on(at, begins)
                )
            if start < cursor or start + width > self.length:
                return False
            cursor = start + width + self.kerf
        return True

    def _on(self, at: int, begins: int) -> bool:
        """Tell whether two places are a whole number of tabs apart."""
        return (at - begins) * self.tabs % self.length == 0


def fewest_by_trying(case: Case) -> int:
    """Put each piece with every lot of others, and on its own, and keep the fewest lots."""
    best = len(case.pieces)

    def put(k: int, lots: list[list[int]]) -> None:
        nonlocal best
        if len(lots) >= best:
            return
        if k == len(case.pieces):
            best = len(lots)
            return
        for lot in lots:
            lot.append(k)
            if case.one_shingle(lot):
                put(k + 1, lots)
            lot.pop()
        put(k + 1, [*lots, [k]])

    put(0, [])
    return best


def lots(case: Case) -> Iterator[tuple[int, ...]]:
    """Give every lot of pieces that one shingle yields."""
    for many in range(1, len(case.pieces) + 1):
        found = [
            lot for lot in combinations(range(len(case.pieces)), many) if case.one_shingle(lot)
        ]
        yield from found
        if not found:
            return


def check_proof(case: Case, answer: Reuse) -> None:
    """Hold the weights against every lot that one shingle yields."""
    proof = answer.proof
    assert len(proof.weights) == len(case.pieces)
    assert min(proof.weights, default=0) >= 0
    for lot in lots(case):
        assert sum(proof.weights[k] for k in lot) <= proof.limit, lot
    assert (proof.shingles - 1) * proof.limit < sum(proof.weights) <= proof.shingles * proof.limit
    assert proof.shingles <= answer.least <= answer.shingles
    assert answer.proved == (answer.least == answer.shingles)


def check_cutting(case: Case, answer: Reuse) -> None:
    """Lay out every shingle and see that each piece comes from it as it must."""
    needed = case.needed()
    assert answer.shingles == answer.whole + len(answer.cut)
    assert answer.simply == len(needed)
    assert [one.number for one in answer.cut] == list(range(1, len(answer.cut) + 1))
    cut = [one.piece for shingle in answer.cut for one in shingle.pieces]
    wanted = [piece for piece in needed if piece.keeps != "both"]
    assert sorted(map(needed.index, cut)) == sorted(map(needed.index, wanted))
    for shingle in answer.cut:
        _check_shingle(case, shingle.pieces)
        places = [needed.index(one.piece) for one in shingle.pieces]
        assert places == sorted(places)
        assert shingle.ahead == any(needed[k].keeps != "right" for k in places[:-1])
        used = sum(needed[k].width * 16 + case.kerf for k in places) - case.kerf
        assert shingle.left_over * 16 == case.length - used
    first = [needed.index(shingle.pieces[0].piece) for shingle in answer.cut]
    last = [needed.index(shingle.pieces[-1].piece) for shingle in answer.cut]
    assert first == sorted(first)
    assert answer.most_kept == max(
        sum(a <= k < b for a, b in zip(first, last, strict=True)) for k in range(len(needed))
    )
    assert answer.cut_ahead == sum(shingle.ahead for shingle in answer.cut)


def _check_shingle(case: Case, pieces: Sequence[CutPiece]) -> None:
    along = sorted(pieces, key=lambda one: one.begins)
    for one, after in pairwise(along):
        assert (one.begins + one.piece.width) * 16 + case.kerf <= after.begins * 16
    assert along[0].begins >= 0
    assert (along[-1].begins + along[-1].piece.width) * 16 <= case.length
    for one in pieces:
        if one.piece.keeps in {"left", "both"}:
            assert one.begins == 0
        if one.piece.keeps in {"right", "both"}:
            assert (one.begins + one.piece.width) * 16 == case.length
        if one.piece.keeps == "neither" and case.tabs:
            assert case._on(round(one.begins * 16), round(one.piece.shingle_from * 16))


def random_case(seed: int, *, most: int, steps: int) -> Case:
    """Make a case of up to so many pieces, of lengths in so many steps to a shingle."""
    chance = Random(seed)
    tabs = chance.choice((0, 0, 3))
    length = 3 * steps
    kerf = chance.choice((0, 0, 1, 2))
    pieces = []
    for _ in range(chance.randint(1, most)):
        keeps = chance.choice(("left", "right", "left", "right", "neither", "both"))
        width = length if keeps == "both" else chance.randint(1, length)
        pieces.append((width, keeps, chance.randint(0, length - width)))
    return Case(tuple(pieces), length, kerf, tabs)


def random_roof(seed: int, *, courses: int) -> Case:
    """Make a roof of up to so many courses between two edges that may lean, course by course.

    Joints stand a shingle apart, shifted by a trim in each course; a piece is what lies between two
    joints and the edges. Some caps may be cut from the same shingles.
    """
    chance = Random(seed)
    tabs, kerf = chance.choice((0, 0, 0, 3)), chance.choice((0, 0, 0, 2))
    length = chance.choice((576, 630)) // 3 * 3
    width = chance.randint(length // 4, 3 * length)
    lean = (
        chance.choice((0, 0, chance.randint(20, 160))),
        chance.choice((0, chance.randint(20, 160))),
    )
    trims = [chance.randrange(0, length, 8) for _ in range(chance.randint(1, 6))]
    pieces: list[Piece] = []
    for course in range(chance.randint(1, courses)):
        left, right = course * lean[0], width - course * lean[1]
        if left >= right:
            break
        pieces.extend(_clipped(left, right, trims[course % len(trims)], length))
    pieces.extend([(length // 3, "neither", 0)] * chance.choice((0, 0, chance.randint(1, 6))))
    return Case(tuple(pieces), length, kerf, tabs)


def _clipped(left: int, right: int, trim: int, length: int) -> Iterator[Piece]:
    start = (left + trim) // length * length - trim
    while start < right:
        begin, end = max(left, start), min(right, start + length)
        meets = begin > left, end < right
        keeps = {(True, True): "both", (True, False): "left", (False, True): "right"}
        yield end - begin, keeps.get(meets, "neither"), begin - start
        start += length
