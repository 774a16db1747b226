"""Valley lining: the sheet that lies along each valley, under the rows of underlayment.

What shows between the shingles of an open valley is metal and not here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import fsum

from roofing_core.layers.underlaying import end_laps as _laps
from roofing_core.layers.underlaying.limits import SHORTEST, limit_sheets
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches, SquareInches

#: Smooth roll roofing as it is sold: 36 in x 36 ft (from memory). IRC R905.2.8.2 asks for 36 in.
ROLL_WIDTH, ROLL_LENGTH = 36.0, 432.0

#: Half of its width: at a square inside corner between equal pitches the eaves run off below the
#: foot of the valley by less than the lining reaches to the side (geometry).
PAST_FOOT = 18.0
#: Over the ridge or the other valley at its top, as sheets over ridges: Navy Builder manual.
OVER_TOP = 6.0
#: 150 mm (5.9 in) in the details of the British Columbia roofing association.
END_LAP = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LiningPiece:
    """One piece of the lining of a valley.

    Attributes:
        valley: Place of its valley among those that were given, from 1.
        length: As cut.
        lap: How far it lies over the piece below it; 0 for the lowest.
        roll: Number of the roll that it is cut from, from 1.
    """

    valley: int
    length: Inches
    lap: Inches
    roll: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ValleyLining:
    """The lining of all valleys of a roof.

    Attributes:
        valleys_length: Of all valleys together.
        pieces: Every piece, valley by valley, the lowest first.
        laps: How many pieces lap one below.
        rolls: How many rolls are opened.
        least_rolls: Rolls that the length alone would take; no cutting takes fewer.
        left_over: Length that is left of all rolls.
        area_cut: Of all pieces.
    """

    valleys_length: Inches
    pieces: tuple[LiningPiece, ...]
    laps: int
    rolls: int
    least_rolls: int
    left_over: Inches
    area_cut: SquareInches


def valley_lining(
    lengths: tuple[Inches, ...],
    *,
    roll_width: Inches = ROLL_WIDTH,
    roll_length: Inches = ROLL_LENGTH,
    past_foot: Inches = PAST_FOOT,
    over_top: Inches = OVER_TOP,
    end_lap: Inches = END_LAP,
    least_piece: Inches = _laps.LEAST_PIECE,
) -> ValleyLining:
    """Cut the lining of valleys, one piece for each that a roll is long enough for.

    Each is cut ``past_foot + length + over_top`` long; where that is more than a roll, n pieces,
    the least n with ``n * roll_length - (n - 1) * end_lap`` as long, upper over lower. The longest
    piece first, each from the shortest rest that it fits.

    Args:
        lengths: Of each valley, as it lies; none for a roof without valleys.
        roll_width: Width of the roll.
        roll_length: Length of the roll.
        past_foot: How much longer than the valley at its foot, where it is trimmed to the eaves.
        over_top: How much longer at its top, over the ridge there.
        end_lap: Of a piece over the one below, where a valley is longer than the roll.
        least_piece: No piece of a lapped valley is shorter.

    Returns:
        Every piece with its roll, and the rolls.

    Raises:
        Refused: A measurement is zero, negative or not finite, the least piece is over half of the
            roll or not over the lap; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        Best fit, longest first; the bound is arithmetic. How far it reaches is in part geometry
        and in part common practice: see the defaults.

    >>> lined = valley_lining((200, 200, 500))
    >>> [piece.length for piece in lined.pieces], lined.rolls, lined.least_rolls
    ([224.0, 224.0, 432.0, 98.0], 3, 3)
    """
    faults = _faults(
        lengths,
        roll_width=roll_width,
        positive={"roll_length": roll_length, "least_piece": least_piece},
        not_negative={"past_foot": past_foot, "over_top": over_top, "end_lap": end_lap},
    )
    refuse_if_any(faults)
    spans = [past_foot + long + over_top for long in lengths]
    counts = [_count(span, roll_length, end_lap) for span in spans]
    limit_sheets(sum(counts))
    cut = [
        (valley, piece, k)
        for valley, (span, count) in enumerate(zip(spans, counts, strict=True), 1)
        for k, piece in enumerate(_pieces(span, count, roll_length, end_lap, least_piece))
    ]
    on, rests = _rolls([piece for _, piece, _ in cut], roll_length)
    return ValleyLining(
        valleys_length=fsum(lengths),
        pieces=tuple(
            LiningPiece(valley=valley, length=piece, lap=end_lap if k else 0.0, roll=roll)
            for (valley, piece, k), roll in zip(cut, on, strict=True)
        ),
        laps=sum(k > 0 for *_, k in cut),
        rolls=len(rests),
        least_rolls=whole_pieces(fsum(piece for _, piece, _ in cut) / roll_length),
        left_over=fsum(rests),
        area_cut=roll_width * fsum(piece for _, piece, _ in cut),
    )


def _faults(
    lengths: Sequence[float],
    *,
    roll_width: float,
    positive: dict[str, float],
    not_negative: dict[str, float],
) -> Iterator[Fault | None]:
    for k, long in enumerate(lengths):
        yield not_positive(f"lengths.{k}", long)
    alone = [
        not_positive("roll_width", roll_width),
        *(not_positive(name, value) for name, value in positive.items()),
        *(negative(name, value) for name, value in not_negative.items()),
    ]
    yield from alone
    if not any(alone):
        yield _least_fault(
            positive["least_piece"], positive["roll_length"], not_negative["end_lap"]
        )


def _least_fault(least_piece: float, roll_length: float, end_lap: float) -> Fault | None:
    lowest, most = end_lap + SHORTEST, roll_length / 2
    if lowest <= least_piece <= most:
        return None
    wanted = (length(lowest), " or more, for the lap, and at most ", length(most), ", half a roll")
    return fault("least_piece", length(least_piece), *wanted)


def _count(span: float, roll_length: float, end_lap: float) -> int:
    return max(1, whole_pieces((span - end_lap) / (roll_length - end_lap)))


def _pieces(
    span: float, count: int, roll_length: float, end_lap: float, least_piece: float
) -> list[float]:
    """Give the lengths of the pieces of one valley: whole rolls, and what is left."""
    last = span - (count - 1) * (roll_length - end_lap)
    if count == 1 or last >= least_piece:
        return [*[roll_length] * (count - 1), last]
    return [*[roll_length] * (count - 2), roll_length - (least_piece - last), least_piece]


def _rolls(pieces: Sequence[float], roll_length: float) -> tuple[list[int], list[float]]:
    """Cut pieces from as few rolls as can be found: the roll of each, and what is left of each."""
    rests: list[float] = []
    on = [0] * len(pieces)
    for k in sorted(range(len(pieces)), key=lambda k: -pieces[k]):
        fits = [roll for roll, rest in enumerate(rests) if rest >= pieces[k] - DUST * roll_length]
        if not fits:
            rests.append(roll_length)
            fits = [len(rests) - 1]
        taken = min(fits, key=rests.__getitem__)
        rests[taken] = max(0.0, rests[taken] - pieces[k])
        on[k] = taken + 1
    return on, rests
