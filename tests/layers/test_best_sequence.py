"""Best sequences against every sequence of a coarse tape tried, piece by piece."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise, product
from random import Random

import pytest

from roofing_core.layers.coursing.best_sequences import BestSequence, best_sequence
from roofing_core.layers.coursing.sequences import sequence_with_wide_ends
from roofing_core.measures.faults import Refused, TooManyPieces


@dataclass(frozen=True)
class Field:
    """A field of courses in whole inches, of shingles 12 in long."""

    width: int
    courses: int
    planes: int
    trims: int
    clearance: int
    clearance_two: int
    end: int
    kerf: float
    starter: int
    starter_shares: bool

    def best(self) -> BestSequence:
        return best_sequence(
            self.width,
            shingle_length=12,
            courses=self.courses,
            sequence=(0,) * self.trims,
            planes=self.planes,
            most_trims=self.trims,
            minimum_clearance=self.clearance,
            minimum_clearance_two=self.clearance_two,
            minimum_end_piece=self.end,
            starter_trim=self.starter,
            starter_shares=self.starter_shares,
            kerf=self.kerf,
            mark=1,
        )

    def course(self, trim: int) -> list[int]:
        """Lay a course: the widths of its pieces."""
        pieces, laid = [12 - trim], 12 - trim
        while laid < self.width:
            pieces.append(min(12, self.width - laid))
            laid += 12
        return pieces

    def rows(self, sequence: tuple[int, ...]) -> list[int]:
        """Give the trim of every row: the courses of one plane, the starter first."""
        return [self.starter] + [sequence[k % len(sequence)] for k in range(self.courses)]

    def holds(self, sequence: tuple[int, ...]) -> bool:
        rows = self.rows(sequence)
        for below, above in pairwise(rows):
            if apart(below, above) < self.clearance:
                return False
        for below, above in zip(rows[1:], rows[3:], strict=False):
            if apart(below, above) < self.clearance_two:
                return False
        return all(
            min(self.course(trim)[0], self.course(trim)[-1]) >= self.end for trim in rows[1:]
        )

    def counts(self, sequence: tuple[int, ...]) -> tuple[int, int]:
        """Count the shingles, offcuts used again and not."""
        rows = self.rows(sequence)[0 if self.starter_shares else 1 :] * self.planes
        pieces = sum(len(self.course(trim)) for trim in rows)
        closing = [self.course(trim)[-1] for trim in rows if len(self.course(trim)) > 1]
        return pieces - pairs(closing, rows, self.kerf), pieces


def apart(one: int, other: int) -> int:
    """Give the least distance of the joints of two endless courses."""
    return min(abs(one - other + k * 12) for k in (-1, 0, 1))


def pairs(closing: list[int], strips: list[int], kerf: float) -> int:
    """Pair closing pieces with strips, by changing pairs round until none is to be had."""
    taken: dict[int, int] = {}

    def place(piece: int, seen: set[int]) -> bool:
        for k, strip in enumerate(strips):
            if strip >= closing[piece] + kerf and k not in seen:
                seen.add(k)
                if k not in taken or place(taken[k], seen):
                    taken[k] = piece
                    return True
        return False

    return sum(place(piece, set()) for piece in range(len(closing)))


def random_field(seed: int) -> Field:
    chance = Random(seed)
    return Field(
        width=chance.randint(12, 40),
        courses=chance.randint(1, 9),
        planes=chance.choice((1, 1, 2)),
        trims=chance.randint(1, 3),
        clearance=chance.randint(0, 4),
        clearance_two=chance.choice((0, 0, 2)),
        end=chance.randint(1, 3),
        kerf=chance.choice((0, 0, 0.125, 1)),
        starter=chance.randrange(12),
        starter_shares=chance.random() < 0.3,
    )


def every_sequence(field: Field) -> Iterator[tuple[int, ...]]:
    for trims in range(1, min(field.trims, field.courses) + 1):
        yield from filter(field.holds, product(range(12), repeat=trims))


@pytest.mark.parametrize("first", range(0, 500, 20))
def test_no_sequence_of_the_tape_takes_fewer(first):
    answered = 0
    for seed in range(first, first + 20):
        field = random_field(seed)
        counts = {sequence: field.counts(sequence) for sequence in every_sequence(field)}
        try:
            found = field.best()
        except Refused:
            assert not counts, seed
            continue
        answered += 1
        check_found(field, found, counts)
    assert answered > 5


def check_found(
    field: Field, found: BestSequence, counts: dict[tuple[int, ...], tuple[int, int]]
) -> None:
    best, simply = found.best, found.simply
    assert counts[as_ints(best.count.sequence)] == (best.count.shingles, best.count.simply)
    assert counts[as_ints(simply.count.sequence)] == (simply.count.shingles, simply.count.simply)
    assert best.proved
    assert best.count.shingles == min(count for count, _ in counts.values())
    assert simply.count.simply == min(count for _, count in counts.values())
    for one in found.by_trims:
        of_as_many = [
            count for sequence, (count, _) in counts.items()
            if len(sequence) == len(one.count.sequence)
        ]  # fmt: skip
        assert one.count.holds
        assert one.proved
        assert one.count.shingles == one.least == min(of_as_many)
    assert found.least <= best.count.shingles
    asked = found.asked
    assert asked.holds == field.holds(as_ints(asked.sequence))
    assert (asked.shingles, asked.simply) == field.counts(as_ints(asked.sequence))
    assert found.saved == asked.shingles - best.count.shingles
    assert found.saved_simply == asked.simply - simply.count.simply


def as_ints(sequence: tuple[float, ...]) -> tuple[int, ...]:
    assert all(float(trim).is_integer() for trim in sequence)
    return tuple(int(trim) for trim in sequence)


@pytest.mark.parametrize("seed", range(60))
def test_the_least_of_all_is_reached_by_as_many_trims_as_courses(seed):
    # Without clearance to keep, any trims whatever.
    chance = Random(seed)
    field = Field(
        width=chance.randint(12, 40), courses=chance.randint(1, 3), planes=1, trims=3, clearance=0,
        clearance_two=0, end=chance.randint(1, 4), kerf=chance.choice((0, 0, 1, 2)), starter=0,
        starter_shares=False,
    )  # fmt: skip
    found = field.best()
    sequences = [
        sequence for sequence in product(range(12), repeat=field.courses) if field.holds(sequence)
    ]  # fmt: skip
    assert found.least == min(field.counts(sequence)[0] for sequence in sequences)


def test_a_finer_tape_never_takes_more():
    for width in (168.5, 131.3, 100.0):
        finer = [
            best_sequence(
                width,
                shingle_length=39.375,
                courses=20,
                sequence=(0, 6, 11, 17),
                mark=mark,
                most=100,
            ).least
            for mark in (1.0, 1 / 16, 0.0)
        ]
        assert finer == sorted(finer, reverse=True)


def test_trims_are_on_the_marks_of_the_tape():
    found = best_sequence(131.3, shingle_length=39.375, courses=20, sequence=(0, 6, 11, 17))
    for one in found.by_trims:
        assert all((16 * trim).is_integer() for trim in map(float, one.count.sequence))


def test_metric_shingles_are_laid_to_the_millimetre():
    mm = 10 / 254
    found = best_sequence(
        4280 * mm, shingle_length=1000 * mm, courses=20, sequence=(0.0, 150 * mm), mark=mm
    )
    # 280 mm over 4: 20 x 4 and 5.6 shingles at the least.
    assert found.least == 86
    assert found.best.count.shingles == 86
    assert found.best.count.holds
    for trim in found.best.count.sequence:
        assert trim / mm == pytest.approx(round(trim / mm), abs=1e-9)


def test_courses_that_whole_shingles_fill():
    # Three shingles to a course: with trim 0 it takes 3, with any other 4, or 3 and a shared one.
    found = best_sequence(36, shingle_length=12, courses=10, sequence=(0, 6))
    assert (found.asked.simply, found.asked.shingles) == (35, 30)
    assert (found.best.count.shingles, found.least) == (30, 30)
    assert found.simply.count.simply == 35


def test_a_starter_of_another_length_is_kept_clear_of_too():
    # Joints of the starter at 10 and 20 in: over 12 in shingles, trims of 2 and 4 lie on them.
    found = best_sequence(
        30,
        shingle_length=12,
        courses=6,
        sequence=(0, 6),
        minimum_clearance=3,
        starter_length=10,
        starter_trim=0,
        mark=1,
    )
    for one in found.by_trims:
        assert min(apart(int(one.count.sequence[0]), over) for over in (2, 4)) >= 3
    assert found.asked.clearance == 2
    assert not found.asked.holds


def test_more_trims_than_courses_are_as_good_as_courses():
    found = best_sequence(36.5, shingle_length=12, courses=2, sequence=(0, 6, 1, 7, 2))
    assert len(found.by_trims[-1].count.sequence) <= 2
    assert found.asked.clearance == 4
    assert found.asked.clearance_two == 12


def test_a_shifted_sequence_is_no_worse_than_the_one_shifted_for_its_ends():
    shifted = sequence_with_wide_ends(
        (0.0, 6.0, 12.0), width=145, shingle_length=36, starter_trim=4, minimum_clearance=4
    )
    found = best_sequence(145, shingle_length=36, courses=12, sequence=shifted)
    assert found.asked.holds
    assert found.best.count.shingles <= found.asked.shingles
    assert found.simply.count.simply <= found.asked.simply


def test_what_cannot_be_is_named_all_at_once():
    with pytest.raises(Refused) as refused:
        best_sequence(
            30,
            shingle_length=36,
            courses=0,
            sequence=(0, 36),
            planes=0,
            most_trims=25,
            minimum_clearance=19,
            minimum_clearance_two=-1,
            minimum_end_piece=0,
            starter_length=30,
            starter_trim=30,
            starter_shares=True,
            kerf=-1,
            mark=-1,
        )
    assert [".".join(map(str, one.at)) for one in refused.value.faults] == [
        "width", "minimum_clearance", "minimum_clearance_two", "minimum_end_piece", "courses",
        "planes", "most_trims", "sequence.1", "starter_trim", "starter_length", "kerf", "mark",
    ]  # fmt: skip
    first = refused.value.faults[0].written()
    assert first == "width came as 30 in: a shingle or more, 36 in: a shorter course has no joint"


def test_no_sequence_of_one_trim_clears_itself():
    with pytest.raises(Refused, match="less, or more trims than 1: with end pieces of 3 in"):
        best_sequence(100, shingle_length=36, courses=10, sequence=(0,), most_trims=1)


def test_a_field_of_too_many_pieces_is_refused():
    with pytest.raises(TooManyPieces):
        best_sequence(3600, shingle_length=36, courses=10_000, sequence=(0, 6))
