"""End laps: where a row of underlayment goes on from one roll to the next.

Where the roll in hand runs out within a row, the next one laps its end. End laps of neighbouring
rows keep their distance: the piece is cut shorter, or the row is laid from the other rake, or the
rest of the roll is set aside.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused, fault
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: Common practice, no published source; code asks for head laps of 2 in, end laps of 4 in.
HEAD_LAP, END_LAP = 4.0, 4.0
#: Common practice, no published source.
PAST_METAL, TRIM_ALLOWANCE, LEAST_PIECE = 0.25, 2.0, 24.0
#: End laps of neighbouring rows stand 6 ft apart: IRC table R905.1.1(2), IBC 1507.1.1.
END_LAP_STAGGER = 72.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """The roll, and the rules by which rows are cut from it.

    Attributes:
        roll_width: Width of the roll.
        roll_length: Length of the roll.
        end_lap: Lap of two pieces of a row.
        end_lap_stagger: Least distance between end laps of neighbouring rows, like edge to like
            edge.
        trim_allowance: How much longer than the plane each row is cut, at each rake and wall.
        least_piece: No piece of a lapped row is shorter.
    """

    roll_width: Inches
    roll_length: Inches
    end_lap: Inches = END_LAP
    end_lap_stagger: Inches = END_LAP_STAGGER
    trim_allowance: Inches = TRIM_ALLOWANCE
    least_piece: Inches = LEAST_PIECE

    def pieces_in(self, width: Inches) -> float:
        """Give about how many pieces a row takes, to refuse too many before any is laid."""
        span = width + 2 * self.trim_allowance
        return max(1.0, span / (self.roll_length - self.end_lap))


@dataclass(frozen=True, slots=True, kw_only=True)
class RowFill:
    """One way to fill a row.

    Attributes:
        lengths: The pieces in the order in which they come off the rolls.
        opened: How many rolls are opened for it.
        rest: Length left on the roll then in hand.
        from_right: Whether it is laid from the right rake to the left.
    """

    lengths: tuple[Inches, ...]
    opened: int
    rest: Inches
    from_right: bool

    def lefts(self, span: Inches, *, end_lap: Inches) -> tuple[Inches, ...]:
        """Give where each piece begins, from the left end of the row, in the order of laying."""
        begins, start = [], 0.0
        for cut in self.lengths:
            begins.append(span - start - cut if self.from_right else start)
            start += cut - end_lap
        return tuple(begins)


def fill_row(
    span: Inches, *, rest: Inches, laps_below: Sequence[Inches], cutting: Cutting
) -> RowFill:
    """Fill a row from the roll in hand and new ones, clear of the end laps below.

    Each piece reaches as far as its roll does, less what keeps its end lap ``end_lap_stagger``
    from those below and leaves ``least_piece`` for the last. Of the ways to go on (from the roll in
    hand or a new one, from the left rake or the right) the one is taken that uses up the least of
    the rolls; of equals, the roll in hand and the left rake.

    Args:
        span: Length of the row before its rakes are trimmed.
        rest: Length left on the roll in hand; 0 where there is none.
        laps_below: Left edges of the end laps in the row below, from the left end of the row.
        cutting: The roll and the rules of cutting, checked by `limits.row_faults`.

    Returns:
        The pieces, the rolls opened for them, and what is left in hand.

    Raises:
        Refused: No way keeps the stagger: never on a rectangle whose measurements are checked,
            but two rows below, side by side, can have end laps so close that none fits between.

    Source:
        Counting; the rules are those of `Cutting`.

    >>> roll = Cutting(roll_width=36, roll_length=1728)
    >>> fill_row(172, rest=100, laps_below=(), cutting=roll).lengths  # 4 in of lap
    (100.0, 76.0)
    >>> fill_row(172, rest=100, laps_below=(90.0,), cutting=roll).lengths  # set aside
    (172.0,)
    """
    if rest >= span:
        return RowFill(lengths=(span,), opened=0, rest=rest - span, from_right=False)
    fills = list(_fills(span, rest, laps_below, cutting))
    if not fills:
        wanted = ("less, or a longer roll: end laps below leave no place for one of ", length(span))
        raise Refused(fault("end_lap_stagger", length(cutting.end_lap_stagger), *wanted))
    return min(fills, key=lambda fill: fill.opened * cutting.roll_length - fill.rest)


def _furthest(limit: float, laps: Sequence[float], stagger: float) -> float:
    """Give the furthest place up to a limit that keeps its distance from the laps below."""
    place = limit
    for lap in sorted(laps, reverse=True):
        if abs(place - lap) < stagger:
            place = lap - stagger
    return place


def _filled(span: float, rest: float, laps: Sequence[float], rule: Cutting) -> list[float]:
    """Give the lengths that fill a row, the first from what is in hand; none where that fails."""
    lengths: list[float] = []
    start, in_hand = 0.0, rest
    while span - start > in_hand + DUST * rule.roll_length:
        reach = min(start + in_hand - rule.end_lap, span - rule.least_piece)
        lap = _furthest(reach, laps, rule.end_lap_stagger)
        if lap + rule.end_lap - start < rule.least_piece:
            return []
        lengths.append(lap + rule.end_lap - start)
        start, in_hand = lap, rule.roll_length
    return [*lengths, span - start]


def _fills(span: float, rest: float, laps: Sequence[float], rule: Cutting) -> Iterator[RowFill]:
    """Give the ways to fill a row: from the rest or a new roll, from the left rake or the right."""
    mirrored = [span - lap - rule.end_lap for lap in laps]
    for from_right, below in ((False, laps), (True, mirrored)):
        for in_hand, opened in ((rest, 0), (rule.roll_length, 1)):
            lengths = _filled(span, in_hand, below, rule)
            if lengths:
                last = in_hand if len(lengths) == 1 else rule.roll_length
                after = max(0.0, last - lengths[-1])
                yield RowFill(
                    lengths=tuple(lengths),
                    opened=opened + len(lengths) - 1,
                    rest=after,
                    from_right=from_right,
                )
