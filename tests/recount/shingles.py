"""Shingles counted as a crew would: lay one after another, and count what lies there.

Written from the trade's description alone. Every length is a whole number of ticks, so nothing is
ever rounded. Nothing of the library is used here.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction


@dataclass
class Laid:
    """One piece as it lies: from where to where, and which part of its shingle it is."""

    left: int
    right: int
    taken_from: int
    taken_to: int
    piece_length: int


@dataclass
class Row:
    """One course, or the starter, from the left rake to the right."""

    trim: int
    laid: list[Laid] = field(default_factory=list)
    run_over: int = 0

    def joints(self, eave: int) -> list[int]:
        """Find where two pieces meet, on the deck and not out over its edge."""
        return [piece.right for piece in self.laid[:-1] if 0 < piece.right < eave]

    def cut_at_left(self, k: int) -> bool:
        """Tell whether the left end of a piece has been under the knife."""
        return self.laid[k].taken_from > 0

    def cut_at_right(self, k: int) -> bool:
        """Tell whether the right end of a piece has been under the knife."""
        return self.laid[k].taken_to < self.laid[k].piece_length


def lay_row(*, start: int, stop: int, trim: int, piece_length: int) -> Row:
    """Trim the first shingle off the pile, lay on until past the line, then cut along the line."""
    row = Row(trim)
    at = start
    while at < stop:
        first = not row.laid
        off = trim if first else 0
        row.laid.append(Laid(at, at + piece_length - off, off, piece_length, piece_length))
        at = row.laid[-1].right
    last = row.laid[-1]
    row.run_over = last.right - stop
    last.right -= row.run_over
    last.taken_to -= row.run_over
    return row


def clearance(lower: list[int], upper: list[int], *, width: int) -> int:
    """Measure every joint against every joint; the whole width where one row has none."""
    return min((abs(a - b) for a in lower for b in upper), default=width)


def nail_row(row: Row, *, per_strip: int, end_distance: int, eave: int) -> int:
    """Count the nails of a row: each piece keeps those that are on it and on the deck, or has two.

    A piece that does not reach the deck has none.
    """
    count = 0
    for piece in row.laid:
        room = piece.piece_length - 2 * end_distance
        marks = [end_distance + Fraction(room * k, per_strip - 1) for k in range(per_strip)]
        if piece.right <= 0 or piece.left >= eave:
            continue
        on_strip = [mark for mark in marks if piece.taken_from < mark < piece.taken_to]
        kept = [mark for mark in on_strip if 0 < piece.left + mark - piece.taken_from < eave]
        count += max(2, len(kept))
    return count


@dataclass
class Line:
    """The heights of one course."""

    butt: int
    tops: int
    shows: int
    cut_off_top: int
    zone_on_deck: bool


def climb(
    *, slope: int, below: int, exposure: int, height: int, zone_low: int, edge_distance: int
) -> list[Line]:
    """Snap one line after another until the shingles reach the top edge."""
    lines: list[Line] = []
    butt = -below
    while True:
        tops, next_butt = butt + height, butt + exposure
        lines.append(
            Line(
                butt=butt,
                tops=tops,
                shows=(next_butt if next_butt < slope else slope) - butt,
                cut_off_top=tops - slope if tops > slope else 0,
                zone_on_deck=butt + zone_low <= slope - edge_distance,
            )
        )
        if next_butt >= slope:
            return lines
        butt = next_butt


def repeats_after(trims: list[int]) -> int:
    """Lay many courses and find after how many the trims come round again."""
    many = [trims[k % len(trims)] for k in range(3 * len(trims))]
    after = 1
    while many[after:] != many[:-after]:
        after += 1
    return after


def packs(things: int, per_pack: int) -> int:
    """Open one pack after another until there is enough."""
    opened = 0
    while opened * per_pack < things:
        opened += 1
    return opened
