"""Rolls that the rows of one width take, however many rows there are and whatever lies on top.

All rows of a single slope are equally long, so that where rolls run out depends on the width and on
how many rows there are alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass

from roofing_core.layers.underlaying.end_laps import Cutting
from roofing_core.layers.underlaying.limits import sheet_faults
from roofing_core.layers.underlaying.rolls_opened import RollsOpened
from roofing_core.layers.underlaying.rows import half_lap
from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import Inches
from roofing_core.sizing.sheeted_rows import Stack, width_beside

#: A height that any sheet can be laid up.
A_HEIGHT = 12.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RollsAlong:
    """What rows of one width take of rolls.

    Attributes:
        opened: Rolls opened, for each stack of rows that was asked for.
        length: Length cut off them.
        top_laps: End laps in the strip along the top.
        laps: End laps in each row below it, in the order of laying, however many follow.
        across: Pieces in a row, as the limit of pieces counts them.
        refused: Whether the roll cannot be laid on this width.
    """

    opened: tuple[int, ...]
    length: tuple[Inches, ...]
    top_laps: tuple[int, ...]
    laps: tuple[int, ...]
    across: float
    refused: bool


def rolls_along(
    eave_length: Inches, *, layers: int, stacks: Sequence[Stack], way: SheetWay
) -> RollsAlong:
    """Cut rows of one width from rolls, and count what so many of them take.

    Args:
        eave_length: Along the eave.
        layers: 1, or 2 where a strip is ripped first, and one along the top at the end.
        stacks: What is asked for, the fewest full rows first.
        way: The roll, and how rows lie.

    Returns:
        What they take, one entry per stack.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `RollsOpened`, which plans are made by.

    >>> felt = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> rolls_along(168, layers=1, stacks=[(1, 0), (10, 0), (11, 0)], way=felt).opened
    (1, 1, 2)
    """
    if cannot_lie(eave_length, way=way):
        return _unlaid(len(stacks))
    try:
        return _rolls_along(eave_length, layers, stacks, way)
    except Refused:
        return _unlaid(len(stacks))


def cannot_lie(eave_length: Inches, *, way: SheetWay) -> bool:
    """Tell whether a sheet cannot be laid on a width: its roll is too short for the stagger.

    Args:
        eave_length: Along the eave.
        way: The roll, and how rows lie.

    Returns:
        Whether a plan is refused for it, also where an ice barrier leaves the sheet no row.

    Raises:
        Nothing.

    Source:
        `sheet_faults`.

    >>> felt = SheetWay(roll_width=36, roll_length=300, head_lap=4, past_metal=0.25)
    >>> cannot_lie(168, way=felt), cannot_lie(400, way=felt)
    (False, True)
    """
    return any(sheet_faults(way, eave_length=eave_length, slope_length=A_HEIGHT))


def _unlaid(stacks: int) -> RollsAlong:
    none = (0,) * stacks
    return RollsAlong(opened=none, length=none, top_laps=none, laps=(), across=0.0, refused=True)


class _Rows:
    """Rolls with the rows cut from them so far."""

    def __init__(self, way: Cutting, span: float) -> None:
        self.way, self.span = way, span
        self.rolls = RollsOpened(way)
        self.length = 0.0
        self.below: tuple[float, ...] = ()

    def cut(self, width: float) -> int:
        """Cut one more row, and give how many end laps it has."""
        taken = self.rolls.take(self.span, width=width, laps_below=self.below)
        if len(taken.fill.lengths) == 1:
            self.below = ()
        else:
            lefts = taken.fill.lefts(self.span, end_lap=self.way.end_lap)
            self.below = tuple(sorted(lefts)[1:])
        if not taken.ripped:
            self.length += sum(taken.fill.lengths)
        return len(self.below)

    def with_a_top(self, width: float) -> _Rows:
        """Give the same with a strip along the top; these stay as they are."""
        other = copy(self)
        other.rolls = copy(self.rolls)
        other.rolls.beside = [copy(one) for one in self.rolls.beside]
        other.cut(width)
        return other


def _rolls_along(
    eave_length: float, layers: int, stacks: Sequence[Stack], way: SheetWay
) -> RollsAlong:
    rows = _Rows(way, eave_length + (way.trim_allowance + way.trim_allowance))
    laps = [rows.cut(half_lap(way.roll_width))] if layers > 1 else []
    tops = (0.0, width_beside(way), half_lap(way.roll_width))
    counted: list[tuple[int, float, int]] = []
    for full, top in stacks:
        while len(laps) < full + layers - 1:
            laps.append(rows.cut(way.roll_width))
        made = rows.with_a_top(tops[top]) if top else rows
        counted.append((made.rolls.count, made.length, len(made.below)))
    opened, length, top_laps = zip(*counted, strict=True)
    return RollsAlong(
        opened=opened,
        length=length,
        top_laps=top_laps,
        laps=tuple(laps),
        across=way.pieces_in(eave_length),
        refused=False,
    )
