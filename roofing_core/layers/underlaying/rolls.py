"""Rolls: the pieces of each row, roll by roll, and what is left of each roll.

Rows are cut in the order in which they are laid. Where rows lie is `rows`; where a row goes on
from one roll to the next is `end_laps`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum
from typing import Literal

from roofing_core.layers.underlaying.end_laps import Cutting, RowFill, fill_row
from roofing_core.layers.underlaying.rows import Band, RowKind
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches, SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPiece:
    """One piece of a row, as cut: where it passes a rake it is trimmed after laying.

    Attributes:
        roll: Number of the roll that it is cut from, from 1.
        left: u of its left end, negative past the left rake.
        right: u of its right end.
        length: From end to end.
        end_lap: Lap with the piece on its left; 0 for the first.
    """

    roll: int
    left: Inches
    right: Inches
    length: Inches
    end_lap: Inches


Pieces = tuple[SheetPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """One row of a sheet material on the plane.

    Attributes:
        number: Place in the order of laying, from 1.
        kind: What the row is; a strip is ripped from the width of the roll.
        lower: v of its lower edge, negative below the outer face of the eave metal.
        upper: v of its upper edge, trimmed where it passes the top edge of the plane.
        width: Width as it comes off the roll, or is ripped from it.
        head_lap: How far it lies over what is below it; 0 for the lowest.
        trim: Width cut off along the top edge of the plane.
        pieces: Its pieces from the left rake to the right.
        end_laps: u of the left edge of each end lap, from the left.
    """

    number: int
    kind: RowKind
    lower: Inches
    upper: Inches
    width: Inches
    head_lap: Inches
    trim: Inches
    pieces: Pieces
    end_laps: tuple[Inches, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RollCut:
    """One cut of a roll.

    Attributes:
        row: Number of the row that it is for.
        length: Length cut.
        width: Width used.
        taken_from: ``length`` where it takes up its length of the roll; ``rest_of_width`` where it
            is ripped from what a strip cut before it left of its width.
    """

    row: int
    length: Inches
    width: Inches
    taken_from: Literal["length", "rest_of_width"]


@dataclass(frozen=True, slots=True, kw_only=True)
class RollUsed:
    """One roll and what is cut from it.

    Attributes:
        number: From 1, in the order in which they are opened.
        cuts: Its cuts in their order.
        offcut: Length that is left of it.
    """

    number: int
    cuts: tuple[RollCut, ...]
    offcut: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsCut:
    """Rows with their pieces, and the rolls that these come from.

    Attributes:
        rows: The rows in the order of laying.
        roll_plan: The rolls in the order in which they are opened.
        rolls: How many rolls are opened.
        left_over: Length left on the last roll.
        end_laps: How many end laps there are.
        area_cut: Area of the pieces as cut, laps and what is trimmed off included.
        area_laid: Area that stays on the roof once rakes and top are trimmed, laps included.
    """

    rows: tuple[SheetRow, ...]
    roll_plan: tuple[RollUsed, ...]
    rolls: int
    left_over: Inches
    end_laps: int
    area_cut: SquareInches
    area_laid: SquareInches


def _pieces(fill: RowFill, first_roll: int, *, trim: float, span: float, lap: float) -> Pieces:
    """Place the pieces of a row, from the left rake to the right."""
    placed: list[SheetPiece] = []
    start = 0.0
    for k, cut in enumerate(fill.lengths):
        left = span - start - cut if fill.from_right else start
        lapped = k < len(fill.lengths) - 1 if fill.from_right else k > 0
        placed.append(
            SheetPiece(
                roll=first_roll + k,
                left=left - trim,
                right=left + cut - trim,
                length=cut,
                end_lap=lap if lapped else 0.0,
            )
        )
        start += cut - lap
    return tuple(reversed(placed)) if fill.from_right else tuple(placed)


class _Rolls:
    """The rolls opened so far, the last of them in hand, and the width left beside a strip."""

    def __init__(self, rule: Cutting, span: float) -> None:
        self.rule, self.span = rule, span
        self.cuts: list[list[RollCut]] = []
        self.rest = 0.0
        self.beside_on, self.beside = 0, 0.0

    def cut(self, number: int, band: Band, laps: Sequence[float]) -> Pieces:
        """Cut one row, clear of the end laps below it, and give its pieces."""
        if band.width <= self.beside + DUST:
            # Exact only because the strip beside it is one piece: an end lap would have to keep
            # its distance from rows that are cut long before this one.
            self.cuts[self.beside_on - 1].append(
                RollCut(row=number, length=self.span, width=band.width, taken_from="rest_of_width")
            )
            roll, self.beside = self.beside_on, 0.0
            return self._placed(
                RowFill(lengths=(self.span,), opened=0, rest=self.rest, from_right=False), roll
            )
        fill = fill_row(self.span, rest=self.rest, laps_below=laps, cutting=self.rule)
        first = len(self.cuts) + 1 - len(fill.lengths) + fill.opened
        self.cuts.extend([] for _ in range(fill.opened))
        for roll, cut in enumerate(fill.lengths, first):
            self.cuts[roll - 1].append(
                RollCut(row=number, length=cut, width=band.width, taken_from="length")
            )
        self.rest = fill.rest
        if len(fill.lengths) == 1 and band.width < self.rule.roll_width:
            self.beside_on, self.beside = first, self.rule.roll_width - band.width
        return self._placed(fill, first)

    def _placed(self, fill: RowFill, roll: int) -> Pieces:
        trim, lap = self.rule.trim_allowance, self.rule.end_lap
        return _pieces(fill, roll, trim=trim, span=self.span, lap=lap)

    def plan(self) -> tuple[RollUsed, ...]:
        """Give the rolls with their cuts and what is left of each."""
        return tuple(
            RollUsed(number=number, cuts=tuple(cuts), offcut=self._offcut(cuts))
            for number, cuts in enumerate(self.cuts, 1)
        )

    def _offcut(self, cuts: Iterable[RollCut]) -> float:
        used = fsum(cut.length for cut in cuts if cut.taken_from == "length")
        return max(0.0, self.rule.roll_length - used)


def cut_rows(bands: Iterable[Band], *, eave_length: Inches, cutting: Cutting) -> RowsCut:
    """Cut rows from rolls, in the order of laying, and count the rolls.

    Each row is cut ``eave_length + 2 * trim_allowance`` long in all, plus its end laps. Of the
    ways to go on (from the roll in hand or a new one, from the left rake or the right) the one is
    taken that uses up the least; of equals, the roll in hand and the left rake.

    Args:
        bands: The rows in the order of laying.
        eave_length: Length of the plane along the eave; over 0.
        cutting: The roll and the rules of cutting, checked by `rows.row_faults`.

    Returns:
        The rows with their pieces, the rolls with their cuts, and the totals.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Counting. End laps, and their 6 ft from row to row: IRC table R905.1.1(2).

    >>> from roofing_core.layers.underlaying.rows import lapped_rows
    >>> felt = Cutting(roll_width=36, roll_length=1728)
    >>> rows = lapped_rows("full", lower=-0.25, cover=112, top=112, width=36, lap=4)
    >>> cut_rows(rows, eave_length=168, cutting=felt).left_over  # four rows of 172 in
    1040.0
    """
    rolls = _Rolls(cutting, cutting.span(eave_length))
    rows: list[SheetRow] = []
    for number, band in enumerate(bands, 1):
        below = rows[-1].end_laps if rows else ()
        pieces = rolls.cut(number, band, [at + cutting.trim_allowance for at in below])
        rows.append(_row(number, band, pieces))
    plan = rolls.plan()
    return RowsCut(
        rows=tuple(rows),
        roll_plan=plan,
        rolls=len(plan),
        left_over=plan[-1].offcut if plan else 0.0,
        end_laps=sum(len(row.end_laps) for row in rows),
        area_cut=fsum(piece.length * row.width for row in rows for piece in row.pieces),
        area_laid=fsum(_laid(row, eave_length, cutting.end_lap) for row in rows),
    )


def _row(number: int, band: Band, pieces: Pieces) -> SheetRow:
    return SheetRow(
        number=number,
        kind=band.kind,
        lower=band.lower,
        upper=band.upper,
        width=band.width,
        head_lap=band.head_lap,
        trim=band.trim,
        pieces=pieces,
        end_laps=tuple(piece.left for piece in pieces[1:]),
    )


def _laid(row: SheetRow, eave_length: float, end_lap: float) -> float:
    return (row.upper - row.lower) * (eave_length + end_lap * len(row.end_laps))
