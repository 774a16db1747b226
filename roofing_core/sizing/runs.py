"""Runs of edge metal for a column of lengths: stock, laps and nails counted, nothing placed.

What `metal_run` places, here by the closed form of it; a test holds the two together.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from roofing_core.layers.metal.run_limits import MOST_NAILS, MOST_PIECES, held
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.sizing.amounts import Floats, Truths, Whole, whole


@dataclass(frozen=True, slots=True, kw_only=True)
class RunWay:
    """How the metal of one kind of edge is cut, lapped and nailed.

    Attributes:
        stock_lengths: The lengths that it is on offer in.
        lap: Of one length over the next.
        nail_spacing: Between nails, at most.
        end_distance: From the end of a run to its first nail.
        least_piece: No piece is cut shorter.
        tab: Bent round the corner at each end; 0 for none.
    """

    stock_lengths: tuple[Inches, ...]
    lap: Inches
    nail_spacing: Inches
    end_distance: Inches
    least_piece: Inches
    tab: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RunAmounts:
    """What runs take, one entry per length.

    Attributes:
        run_length: Length of edge covered.
        stock_length: Of the metal that each is cut from.
        pieces: How many such lengths.
        cut: Length of all its pieces.
        nails: Nails in all, those in the tabs among them.
        refused: Which would take more pieces or nails than the limit.
    """

    run_length: Floats
    stock_length: Floats
    pieces: Whole
    cut: Floats
    nails: Whole
    refused: Truths


def run_amounts(run_length: Floats, way: RunWay) -> RunAmounts:
    """Count what runs of edge metal take, for a column of lengths.

    Args:
        run_length: Lengths of edge to cover, without tabs.
        way: How the metal is laid.

    Returns:
        One entry per length.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `metal_run`.

    >>> way = RunWay(stock_lengths=(120.0,), lap=6, nail_spacing=12, end_distance=1,
    ...              least_piece=12, tab=2)
    >>> run_amounts(np.array([168.0, 400.0]), way).pieces
    array([2, 4])
    """
    tabs = 2 * way.tab
    cut_length = run_length + tabs
    stock, pieces = _least_metal(cut_length, way)
    rest = np.minimum(cut_length - (pieces - 1) * (stock - way.lap), stock)
    # The last piece but one gives up what the last is short of.
    short = np.maximum(0.0, max(way.least_piece, way.tab + held(way.lap, way.end_distance)) - rest)
    most = MOST_PIECES * (max(way.stock_lengths) - way.lap)
    return RunAmounts(
        run_length=run_length,
        stock_length=stock,
        pieces=pieces,
        cut=np.where(pieces > 1, (pieces - 1) * stock + rest, np.minimum(cut_length, stock)),
        nails=_nails(run_length, stock, pieces, short, way) + (2 if way.tab else 0),
        refused=(cut_length > most) | (way.nail_spacing < cut_length / MOST_NAILS),
    )


def _least_metal(cut_length: Floats, way: RunWay) -> tuple[Floats, Whole]:
    """Choose for each run the stock length that buys the least; of equals the longer one."""
    offer = sorted(set(way.stock_lengths), reverse=True)
    counts = [
        np.maximum(1, whole(np.maximum(0.0, cut_length - way.lap) / (stock - way.lap)))
        for stock in offer
    ]
    bought = np.array(
        [
            np.where(n <= MOST_PIECES, n * stock, np.inf)
            for n, stock in zip(counts, offer, strict=True)
        ]
    )
    chosen = np.argmax(bought <= bought.min(axis=0) * (1 + DUST), axis=0)
    pieces = np.take_along_axis(np.array(counts), chosen[np.newaxis], axis=0)[0]
    return np.array(offer, dtype=float)[chosen], pieces


def _nails(run: Floats, stock: Floats, pieces: Whole, short: Floats, way: RunWay) -> Whole:
    """Count nails: one at each end and in the middle of each lap, and equally between them."""

    def spaces(gap: Floats) -> Whole:
        return whole(gap / way.nail_spacing)

    end, whole_piece = way.end_distance, stock - way.lap
    first = whole_piece - way.tab + way.lap / 2
    last = (pieces - 1) * whole_piece - short - way.tab + way.lap / 2
    between = np.where(
        pieces > 2,  # noqa: PLR2004 - the first lap is not the last
        spaces(first - end) + np.maximum(0, pieces - 3) * spaces(whole_piece)
        + spaces(whole_piece - short),
        spaces(last - end),
    )  # fmt: skip
    lapped = between + spaces(run - end - last)
    placed = np.where(pieces > 1, lapped, spaces(run - 2 * end))
    return np.where(run - end <= end, 1, placed + 1)
