"""Rolls of many sizes: the rows up each height, cut from the rolls that each width takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.sizing.amounts import Floats, Truths, Whole
from roofing_core.sizing.rolls_along import rolls_along
from roofing_core.sizing.sheeted_rows import RowsUp


@dataclass(frozen=True, slots=True, kw_only=True)
class RolledAmounts:
    """What a sheet takes, one entry per size.

    Attributes:
        rolls: Rolls opened.
        length: Length cut off them.
        area: Of what stays on the roof, laps included.
        lap_fasteners: Fasteners in end laps.
        pieces: Pieces, as their limit counts them.
        refused: Which cannot be laid.
    """

    rolls: Whole
    length: Floats
    area: Floats
    lap_fasteners: Whole
    pieces: Floats
    refused: Truths


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """Where the widths and heights of many sizes stand among the distinct ones.

    Attributes:
        widths: The distinct widths.
        at_width: For each size, the place of its width.
        at_height: For each size, the place of its height.
    """

    widths: Floats
    at_width: Whole
    at_height: Whole


def rolled_amounts(rows: Sequence[RowsUp], placed: Placed, way: SheetWay) -> RolledAmounts:
    """Count the rolls of a sheet for many sizes.

    Args:
        rows: The rows up each distinct height.
        placed: The sizes.
        way: The roll, and how rows lie.

    Returns:
        One entry per size.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `rolls_along`.

    >>> from roofing_core.sizing.sheeted_rows import barrier_up
    >>> way = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25)
    >>> one = np.zeros(1, dtype=np.int64)
    >>> placed = Placed(widths=np.array([168.0]), at_width=one, at_height=one)
    >>> rolled_amounts([barrier_up(112, reach=37.95, way=way)], placed, way).length
    array([344.])
    """
    size = len(placed.at_width)
    found = RolledAmounts(
        rolls=np.zeros(size, dtype=np.int64),
        length=np.zeros(size),
        area=np.zeros(size),
        lap_fasteners=np.zeros(size, dtype=np.int64),
        pieces=np.zeros(size),
        refused=np.array([one.refused for one in rows], dtype=np.bool_)[placed.at_height],
    )
    for layers in sorted({one.layers for one in rows if one.full}):
        alike = np.array([one.layers == layers and one.full > 0 for one in rows])
        chosen = np.flatnonzero(alike[placed.at_height])
        if len(chosen):
            part = _Part(rows, placed, way, layers, chosen)
            for name, column in part.taken().items():
                getattr(found, name)[chosen] = column
    return found


class _Part:
    """The sizes that take so many layers."""

    def __init__(
        self,
        rows: Sequence[RowsUp],
        placed: Placed,
        way: SheetWay,
        layers: int,
        chosen: Whole,
    ) -> None:
        self.rows, self.way = rows, way
        self.up, along = placed.at_height[chosen], placed.at_width[chosen]
        self.widths = placed.widths[along]
        stacks = sorted({rows[k].stack for k in np.unique(self.up).tolist()})
        places = {stack: place for place, stack in enumerate(stacks)}
        self.stack = np.array([places.get(one.stack, 0) for one in rows])[self.up]
        distinct, self.wide = np.unique(along, return_inverse=True)
        self.cut = [
            rolls_along(float(placed.widths[k]), layers=layers, stacks=stacks, way=way)
            for k in distinct.tolist()
        ]

    def taken(self) -> dict[str, Floats]:
        """Give what they take, by the columns' names."""
        heights, laps = self._heights(), self._laps()
        end_laps, top_laps = self.way.end_lap * laps, self._along("top_laps")
        top, fasteners = self._up("top_height"), self._up("top_fasteners")
        topped = top * (self.widths + self.way.end_lap * top_laps)
        return {
            "rolls": self._along("opened"),
            "length": self._along("length"),
            "area": heights.sum(axis=1) * self.widths + (heights * end_laps).sum(axis=1) + topped,
            "lap_fasteners": (self._each_lap() * laps).sum(axis=1) + fasteners * top_laps,
            "pieces": self._up("rows") * np.array([one.across for one in self.cut])[self.wide],
            "refused": np.array([one.refused for one in self.cut])[self.wide],
        }

    def _up(self, name: str) -> Floats:
        return np.array([getattr(one, name) for one in self.rows], dtype=np.float64)[self.up]

    def _along(self, name: str) -> Floats:
        table = np.array([getattr(one, name) for one in self.cut], dtype=np.float64)
        taken: Floats = table[self.wide, self.stack]
        return taken

    def _heights(self) -> Floats:
        return _filled([one.below_top for one in self.rows])[self.up]

    def _each_lap(self) -> Floats:
        return _filled([one.lap_fasteners[: len(one.below_top)] for one in self.rows])[self.up]

    def _laps(self) -> Floats:
        columns = max(len(one.below_top) for one in self.rows)
        return _filled([one.laps for one in self.cut], columns)[self.wide]


def _filled(rows: Sequence[Sequence[float]], wide: int = 0) -> Floats:
    """Put rows of different lengths into one table, filled up with 0."""
    columns = wide or max(len(row) for row in rows)
    table = np.zeros((len(rows), columns))
    for k, row in enumerate(rows):
        table[k, : min(columns, len(row))] = row[:columns]
    return table
