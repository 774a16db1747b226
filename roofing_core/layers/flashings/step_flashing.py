"""Step flashing: bent pieces beside a wall or chimney, one in each course that comes to it.

Each piece lies on the course below and under its own course, and laps the piece below it. What
covers its upright leg, siding or counterflashing, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import (
    LARGEST_LENGTH,
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_positive,
    refuse_if_any,
    require_positive,
)
from roofing_core.measures.sentences import length, shown
from roofing_core.measures.units import Inches

#: A residential trade journal's field guide: as long as the exposure and 2 in more, 10 in wide and
#: bent in the middle, set 1/4 in short of the butt over it, nailed to the deck only. 3 in and more
#: of lap in bad weather; Ontario Building Code 9.26.4.4 asks for 75 mm beside masonry.
LAP = 2.0
DECK_LEG, WALL_LEG = 5.0, 5.0
SHORT_OF_BUTT = 0.25

#: Common practice, no published source.
NAILS_EACH = 2

#: Height of the first butt: as `courses` lays it.
FIRST_BUTT = -0.5

#: More pieces beside one wall are refused before any is laid.
MOST_PIECES = 20_000


@dataclass(frozen=True, slots=True, kw_only=True)
class StepFlashingSize:
    """The size of step flashing that an exposure asks for.

    Attributes:
        length: Up the slope.
        width: Of the flat piece, before it is bent.
        deck_leg: The leg on the deck.
        wall_leg: The leg up the wall.
    """

    length: Inches
    width: Inches
    deck_leg: Inches
    wall_leg: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class StepPiece:
    """One piece of step flashing.

    Attributes:
        course: Number of the course that covers it.
        lower: Height of its lower edge, up the slope from the outer face of the eave metal.
        upper: Height of its upper edge.
    """

    course: int
    lower: Inches
    upper: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class StepFlashings:
    """All step flashing along one side of a wall or chimney.

    Attributes:
        count: How many pieces.
        pieces: One entry per piece, the lowest first.
        lap: How far each piece laps the one below.
        past_lower: How far the first piece reaches below the wall's lower end, where it is cut, or
            folded round the corner; 0 where it does not reach it.
        past_upper: How far the last piece reaches above the wall's upper end.
        nails: Nails in all, through the leg on the deck alone.
    """

    count: int
    pieces: tuple[StepPiece, ...]
    lap: Inches
    past_lower: Inches
    past_upper: Inches
    nails: int


def step_flashing_size(
    exposure: Inches,
    *,
    lap: Inches = LAP,
    deck_leg: Inches = DECK_LEG,
    wall_leg: Inches = WALL_LEG,
) -> StepFlashingSize:
    """Give the least size of step flashing for an exposure.

    ``length = exposure + lap``, ``width = deck_leg + wall_leg``.

    Args:
        exposure: How much of each course shows, over 0.
        lap: How far each piece laps the one below, over 0.
        deck_leg: The leg on the deck, over 0.
        wall_leg: The leg up the wall, over 0.

    Returns:
        The size, flat and bent.

    Raises:
        Refused: Something is zero, negative or not finite; names each.

    Source:
        A residential trade journal's field guide. The residential code asks for legs of 4 in or
        more (R905.2.8.3).

    >>> size = step_flashing_size(5)
    >>> size.length, size.width
    (7.0, 10.0)
    """
    require_positive("in", exposure=exposure, lap=lap, deck_leg=deck_leg, wall_leg=wall_leg)
    return StepFlashingSize(
        length=exposure + lap,
        width=deck_leg + wall_leg,
        deck_leg=deck_leg,
        wall_leg=wall_leg,
    )


def step_flashing(
    lower: Inches,
    *,
    upper: Inches,
    exposure: Inches,
    piece_length: Inches,
    first_butt: Inches = FIRST_BUTT,
    short_of_butt: Inches = SHORT_OF_BUTT,
    nails_each: int = NAILS_EACH,
) -> StepFlashings:
    """Lay step flashing beside a wall or chimney, one piece in each course that comes to it.

    Course k shows from ``first_butt + (k - 1) * exposure`` up; its piece starts ``short_of_butt``
    above that. The pieces are those of all courses that show between the two ends of the wall.

    Args:
        lower: Height of the wall's lower end, up the slope from the outer face of the eave metal;
            0 for a wall that starts at the eave.
        upper: Height of its upper end, above the lower one.
        exposure: How much of each course shows, over 0.
        piece_length: Of a piece, up the slope; more than the exposure, so that it laps.
        first_butt: Height of the first butt, 0 or negative: below the eave metal.
        short_of_butt: From the butt of a course up to its piece, which must not show; less than the
            exposure.
        nails_each: Nails in each piece.

    Returns:
        Every piece with its course, the lap between them, and the nails.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, the wall ends
            below its start, or the pieces would not lap; names each.
        TooManyPieces: There would be more pieces than the stated limit.

    Source:
        A residential trade journal's field guide: one for each course, its lap, and where it lies.

    >>> laid = step_flashing(0, upper=112, exposure=5.625, piece_length=8)
    >>> laid.count, laid.lap  # one for each of the 20 courses of a 9 ft 4 in slope
    (20, 2.375)
    """
    sizes = {
        "lower": lower,
        "upper": upper,
        "exposure": exposure,
        "piece_length": piece_length,
        "short_of_butt": short_of_butt,
    }
    refuse_if_any(
        [
            *_size_faults(sizes),
            _first_butt_fault(first_butt),
            not_positive("nails_each", nails_each, "count"),
        ]
    )
    _limit(upper - lower, exposure)
    first = int((lower - first_butt) / exposure + DUST) + 1
    last = max(first, whole_pieces((upper - first_butt) / exposure))
    starts = [
        first_butt + (course - 1) * exposure + short_of_butt for course in range(first, last + 1)
    ]
    return StepFlashings(
        count=len(starts),
        pieces=tuple(
            StepPiece(course=first + k, lower=start, upper=start + piece_length)
            for k, start in enumerate(starts)
        ),
        lap=piece_length - exposure,
        past_lower=max(0.0, lower - starts[0]),
        past_upper=starts[-1] + piece_length - upper,
        nails=nails_each * len(starts),
    )


def _first_butt_fault(first_butt: float) -> Fault | None:
    if -LARGEST_LENGTH <= first_butt <= 0:
        return None
    wanted = "zero, or negative: below the outer face of the eave metal"
    return fault("first_butt", shown(length(first_butt)), wanted)


def _size_faults(sizes: dict[str, float]) -> list[Fault]:
    """Find what cannot be: each measurement by itself, and if none, against the others."""
    may_be_0 = ("lower", "short_of_butt")
    found = [
        (negative if name in may_be_0 else not_positive)(name, value)
        for name, value in sizes.items()
    ]
    wrong = [one for one in found if one is not None]
    return wrong or list(_misfits(**sizes))


def _misfits(
    *, lower: float, upper: float, exposure: float, piece_length: float, short_of_butt: float
) -> Iterator[Fault]:
    shows = length(exposure)
    if upper <= lower:
        yield fault("upper", length(upper), "more than ", length(lower), ", the wall's lower end")
    if piece_length <= exposure:
        because = ", the exposure, so that each piece laps the one below"
        yield fault("piece_length", length(piece_length), "more than ", shows, because)
    if short_of_butt >= exposure:
        yield fault("short_of_butt", length(short_of_butt), "less than ", shows, ", the exposure")


def _limit(height: float, exposure: float) -> None:
    """Refuse too many pieces before any is laid."""
    if height > MOST_PIECES * exposure:
        wanted = f"at most {MOST_PIECES} courses beside one wall: a larger exposure"
        raise TooManyPieces(fault("exposure", length(exposure), wanted))
