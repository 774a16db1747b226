"""Rolls opened: what a row takes of the roll in hand, of new ones, or of width beside a strip.

How one row is filled is `end_laps`; the cuts and the plan made of them are `rolls`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from roofing_core.layers.underlaying.end_laps import Cutting, RowFill, fill_row
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches


@dataclass(slots=True)
class _Beside:
    """What is left of the width of a roll beside a strip that was ripped from it."""

    roll: int
    width: float
    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RowTaken:
    """What one row takes of the rolls.

    Attributes:
        fill: Its pieces, the rolls opened for it, and what is then left in hand.
        first_roll: Number of the roll that its first piece comes from.
        ripped: Whether it is ripped from what a strip cut before it left of its width.
    """

    fill: RowFill
    first_roll: int
    ripped: bool


class RollsOpened:
    """The rolls opened so far, the last of them in hand, and what is left beside strips.

    Row after row this settles what each takes; a plan and a count alike are made from it.
    """

    def __init__(self, rule: Cutting) -> None:
        self.rule = rule
        self.count = 0
        self.rest = 0.0
        self.beside: list[_Beside] = []

    def take(self, span: Inches, *, width: Inches, laps_below: Sequence[Inches]) -> RowTaken:
        """Cut one row, clear of the end laps below it, told from the left end of the row."""
        if (roll := self._from_width(span, width)) is not None:
            fill = RowFill(lengths=(span,), opened=0, rest=self.rest, from_right=False)
            return RowTaken(fill=fill, first_roll=roll, ripped=True)
        fill = fill_row(span, rest=self.rest, laps_below=laps_below, cutting=self.rule)
        first = self.count + 1 - len(fill.lengths) + fill.opened
        self.count += fill.opened
        self.rest = fill.rest
        if len(fill.lengths) == 1 and width < self.rule.roll_width:
            self.beside.append(_Beside(first, self.rule.roll_width - width, span))
        return RowTaken(fill=fill, first_roll=first, ripped=False)

    def _from_width(self, span: float, width: float) -> int | None:
        """Rip a strip from what is left beside another, of those that do the shortest.

        Exact only because that is one piece: an end lap would have to keep its distance from rows
        that are cut long before this one.
        """
        wide = [one for one in self.beside if one.width >= width - DUST and one.length >= span]
        if not wide:
            return None
        taken = min(wide, key=lambda one: one.length)
        taken.length -= span
        return taken.roll
