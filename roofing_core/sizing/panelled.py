"""Decks of single slopes: panels, joints and nails of many sizes.

Joints lie by the width and by how many rows there are; of the last row only how many of it lie side
by side in a panel matters to the panels. So each of these is laid once, by `deck_on`.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from roofing_core.layers.decking.deck import MOST_PANELS, deck_on
from roofing_core.layers.decking.deck_way import DeckWay
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Refused
from roofing_core.roof.outlines import rectangle
from roofing_core.sizing.amounts import Floats, Truths, Whole


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckAmounts:
    """What decks take, one entry per size.

    Attributes:
        panels: Panels to buy.
        tape: Length of tape that covers every joint.
        nails: How many nails.
        refused: Which cannot be laid.
    """

    panels: Whole
    tape: Floats
    nails: Whole
    refused: Truths


def no_decks(sizes: int) -> DeckAmounts:
    """Give the decks of jobs that lay none.

    Args:
        sizes: How many sizes there are.

    Returns:
        All zero.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> no_decks(2).panels
    array([0, 0])
    """
    none = np.zeros(sizes, dtype=np.int64)
    return DeckAmounts(panels=none, tape=none.astype(np.float64), nails=none, refused=none > 0)


@dataclass(frozen=True, slots=True)
class _Joined:
    """The joints of a deck: in all rows but the last, and in the last."""

    panels: int
    below: int
    last: int


def deck_amounts(eave_length: Floats, slope_length: Floats, way: DeckWay) -> DeckAmounts:
    """Count what decks of many sizes take.

    Args:
        eave_length: Of each.
        slope_length: Of each.
        way: The panels, the supports and the nails.

    Returns:
        One entry per size.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `deck_on`.

    >>> deck_amounts(np.array([168.0]), np.array([112.0]), DeckWay()).panels
    array([5])
    """
    laid: dict[tuple[float, int, int], _Joined | None] = {}
    sizes = zip(eave_length.tolist(), slope_length.tolist(), strict=True)
    counted = [_counted(wide, high, way, laid) for wide, high in sizes]
    panels, tape, nails = (np.array(each) for each in zip(*counted, strict=True))
    return DeckAmounts(
        panels=panels.astype(np.int64),
        tape=tape.astype(np.float64),
        nails=nails.astype(np.int64),
        refused=panels < 0,
    )


def _counted(
    wide: float, high: float, way: DeckWay, laid: dict[tuple[float, int, int], _Joined | None]
) -> tuple[int, float, int]:
    about = max(1.0, wide / way.panel_length) * max(1.0, high / way.panel_width)
    if about > MOST_PANELS:
        return -1, 0.0, 0
    rows = whole_pieces(high / way.panel_width)
    last = high - (rows - 1) * way.panel_width
    full = last >= way.panel_width * (1 - DUST)
    key = wide, rows, 0 if full else int(way.panel_width / last + DUST)
    if key not in laid:
        laid[key] = _laid(wide, high, rows, way)
    found = laid[key]
    if found is None:
        return -1, 0.0, 0
    supports = len(way.framing().supports(0.0, wide))
    nails = _nails(way.panel_width, rows - 1, found.below, supports, way)
    nails += _nails(last, 1, found.last, supports, way)
    tape = found.below * way.panel_width + found.last * last + (rows - 1) * wide
    return found.panels, tape, nails


def _laid(wide: float, high: float, rows: int, way: DeckWay) -> _Joined | None:
    try:
        made = deck_on([rectangle(wide, slope_length=high)], way=way)
    except Refused:
        return None
    in_last = sum(piece.row == rows for piece in made.pieces)
    below = len(made.pieces) - in_last - (rows - 1)
    return _Joined(panels=made.panels, below=below, last=in_last - 1)


def _nails(height: float, rows: int, joints: int, supports: int, way: DeckWay) -> int:
    """Count the nails of rows of one height: along both ends, at joints, and on other supports."""
    edge = whole_pieces(height / way.edge_spacing) + 1
    field = whole_pieces(height / way.field_spacing) + 1
    return rows * 2 * edge + joints * 2 * edge + (rows * supports - joints) * field
