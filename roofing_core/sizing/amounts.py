"""Amounts: what the orders of many sizes of one roof come to, a column for each order line.

How they are counted is `single_slopes`, all at once, or `planned`, one plan after another.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from roofing_core.measures.counting import DUST

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]
Truths = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizes:
    """Many single slopes that differ in size alone, edge to edge of their decks.

    Attributes:
        eave_length: Of each, along the eave.
        slope_length: Of each, up the slope.
        pitch: Of each, rise over run.
        eave_overhang: Of each, how far the deck reaches past the wall at the eave, level.
    """

    eave_length: Floats
    slope_length: Floats
    pitch: Floats
    eave_overhang: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class LineAmounts:
    """One order line of many sizes.

    Attributes:
        packs: Whole packs to buy.
        holds: What one pack holds.
        needed: What the roof uses.
        carried: Weight of the packs.
        stays: Weight of what stays on the roof.
    """

    packs: Whole
    holds: Floats
    needed: Floats
    carried: Floats
    stays: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """The orders of many sizes.

    Attributes:
        lines: Each order line by its name in the order.
        area: Of each roof, on the slope.
        refused: Which of them cannot be planned; their numbers mean nothing.
    """

    lines: Mapping[str, LineAmounts]
    area: Floats
    refused: Truths


def whole(pieces: Floats) -> Whole:
    """Count whole pieces for a column of fractional ones, as `whole_pieces` does for one.

    Args:
        pieces: Fractional numbers of pieces.

    Returns:
        Whole pieces; 0 for (nearly) none.

    Raises:
        Nothing: What is no count is found by those who call it.

    Source:
        `whole_pieces`.

    >>> whole(np.array([0.0, 3.0000000000000004, 3.1]))
    array([0, 3, 4])
    """
    counted = np.where(pieces > DUST, np.ceil(pieces - DUST), 0.0)
    return np.nan_to_num(counted, posinf=0.0).astype(np.int64)


def constant(value: float, like: NDArray[Any]) -> Floats:
    """Give one number for each entry of a column.

    Args:
        value: The number.
        like: The column.

    Returns:
        A column as long.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> constant(2, np.array([1, 2]))
    array([2., 2.])
    """
    return np.full(like.shape, float(value))
