"""Rolls: the pieces of each row, roll by roll, and what is left of each roll.

Rows are cut in the order in which they are laid. Where rows lie is `rows`; where a row goes on
from one roll to the next is `end_laps`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import fsum
from operator import attrgetter
from typing import Literal

from roofing_core.layers.underlaying.end_laps import Cutting, RowFill
from roofing_core.layers.underlaying.rolls_opened import RollsOpened
from roofing_core.layers.underlaying.rows import RowKind
from roofing_core.layers.underlaying.sheeting import Strip
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.cutting import cut_between
from roofing_core.roof.slicing import Stretch


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPiece:
    """One piece of a row, as cut: where it passes a rake or a lap it is trimmed after laying.

    Attributes:
        roll: Number of the roll that it is cut from, from 1.
        left: u of its left end as cut.
        right: u of its right end as cut.
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
    """One row of a sheet material on a plane.

    Attributes:
        number: Place in the order of laying, from 1, on all planes together.
        plane: The name of its plane.
        kind: What the row is; a strip is ripped from the width of the roll.
        lower: v of its lower edge, negative below the outer face of the eave metal; trimmed where
            the plane begins higher.
        upper: v of its upper edge, trimmed where it passes the top edge of the plane, or what it
            runs over that edge.
        width: Width as it comes off the roll, or is ripped from it.
        head_lap: How far it lies over what is below it; 0 for the lowest.
        trim: Width cut off along the top edge of the plane.
        pieces: Its pieces from the left end to the right.
        end_laps: u of the left edge of each end lap, from the left.
    """

    number: int
    plane: str
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


def _pieces(fill: RowFill, first_roll: int, *, strip: Strip, lap: float) -> Pieces:
    """Place the pieces of a row, from the left end to the right."""
    placed: list[SheetPiece] = []
    for k, (left, cut) in enumerate(
        zip(fill.lefts(strip.span, end_lap=lap), fill.lengths, strict=True)
    ):
        lapped = k < len(fill.lengths) - 1 if fill.from_right else k > 0
        placed.append(
            SheetPiece(
                roll=first_roll + k,
                left=strip.left + left,
                right=strip.left + (left + cut),
                length=cut,
                end_lap=lap if lapped else 0.0,
            )
        )
    return tuple(reversed(placed)) if fill.from_right else tuple(placed)


class _Rolls:
    """The rolls with their cuts."""

    def __init__(self, rule: Cutting) -> None:
        self.rule = rule
        self.opened = RollsOpened(rule)
        self.cuts: list[list[RollCut]] = []

    def cut(self, number: int, strip: Strip, laps: Sequence[float]) -> Pieces:
        """Cut one row, clear of the end laps below it, and give its pieces."""
        span, width = strip.span, strip.band.width
        below = [lap - strip.left for lap in laps]
        taken = self.opened.take(span, width=width, laps_below=below)
        self.cuts.extend([] for _ in range(taken.fill.opened))
        for roll, cut in enumerate(taken.fill.lengths, taken.first_roll):
            self.cuts[roll - 1].append(
                RollCut(
                    row=number,
                    length=cut,
                    width=width,
                    taken_from="rest_of_width" if taken.ripped else "length",
                )
            )
        return _pieces(taken.fill, taken.first_roll, strip=strip, lap=self.rule.end_lap)

    def plan(self) -> tuple[RollUsed, ...]:
        """Give the rolls with their cuts and what is left of each."""
        return tuple(
            RollUsed(number=number, cuts=tuple(cuts), offcut=self._offcut(cuts))
            for number, cuts in enumerate(self.cuts, 1)
        )

    def _offcut(self, cuts: Iterable[RollCut]) -> float:
        used = fsum(cut.length for cut in cuts if cut.taken_from == "length")
        return max(0.0, self.rule.roll_length - used)


def cut_rows(strips: Iterable[Strip], *, cutting: Cutting) -> RowsCut:
    """Cut rows from rolls, in the order of laying over all planes, and count the rolls.

    Each row is cut as long as its strip in all, plus its end laps. Of the ways to go on (from the
    roll in hand or a new one, from the left end or the right) the one is taken that uses up the
    least; of equals, the roll in hand and the left end. End laps keep their distance from those in
    the rows below on the same plane. What is left of the width beside a ripped strip serves later
    strips.

    Args:
        strips: The rows in the order of laying, plane after plane.
        cutting: The roll and the rules of cutting, checked by `limits.row_faults`.

    Returns:
        The rows with their pieces, the rolls with their cuts, and the totals.

    Raises:
        Refused: End laps of rows side by side leave no place for one above them.

    Source:
        Counting. End laps, and their 6 ft from row to row: IRC table R905.1.1(2).

    >>> from roofing_core.layers.underlaying.rows import lapped_rows
    >>> from roofing_core.layers.underlaying.sheeting import SheetWay, sheeted, strips
    >>> from roofing_core.roof.outlines import rectangle
    >>> felt = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> rows = lapped_rows("full", lower=-0.25, cover=112, top=112, width=36, lap=4)
    >>> laid = strips(sheeted(rectangle(168, slope_length=112), way=felt), rows, way=felt)
    >>> cut_rows(laid, cutting=felt).left_over  # four rows of 172 in
    1040.0
    """
    rolls = _Rolls(cutting)
    rows: list[SheetRow] = []
    laid: list[float] = []
    plane = ""
    laps: tuple[float, ...] = ()
    for (name, _), band in groupby(strips, key=attrgetter("plane", "level")):
        below = laps if name == plane else ()
        laps = ()
        for strip in band:
            pieces = rolls.cut(len(rows) + 1, strip, below)
            rows.append(_row(len(rows) + 1, strip, pieces))
            laps, plane = (*laps, *rows[-1].end_laps), name
            laid.append(_laid(strip.stretch, rows[-1].end_laps, cutting.end_lap))
    plan = rolls.plan()
    return RowsCut(
        rows=tuple(rows),
        roll_plan=plan,
        rolls=len(plan),
        left_over=plan[-1].offcut if plan else 0.0,
        end_laps=sum(len(row.end_laps) for row in rows),
        area_cut=fsum(piece.length * row.width for row in rows for piece in row.pieces),
        area_laid=fsum(laid),
    )


def _row(number: int, strip: Strip, pieces: Pieces) -> SheetRow:
    band, lower, upper = strip.band, strip.stretch.lower, strip.stretch.upper
    return SheetRow(
        number=number,
        plane=strip.plane,
        kind=band.kind,
        lower=lower,
        upper=upper,
        width=band.width,
        head_lap=0.0 if lower > band.lower + DUST else min(band.head_lap, upper - lower),
        trim=band.lower + band.width - upper,
        pieces=pieces,
        end_laps=tuple(piece.left for piece in pieces[1:]),
    )


def _laid(stretch: Stretch, end_laps: Sequence[float], lap: float) -> float:
    """Give the area that a row covers, what lies twice in its end laps counted twice."""
    if stretch.is_rectangle():
        width = stretch.right - stretch.left + lap * len(end_laps)
        return (stretch.upper - stretch.lower) * width
    twice = [cut.area() for at in end_laps for cut in cut_between(stretch, at, at + lap)]
    return stretch.area() + fsum(twice)
