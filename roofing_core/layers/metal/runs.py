"""Runs: metal along one edge as a cut list with its laps, tabs and nails.

Says what is cut from which stock length, where the lengths lap and where the nails go. Buying for
several runs at once, and where on the roof a run lies, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, get_args

from roofing_core.layers.metal.run_limits import (
    MOST_NAIL_LINES,
    MOST_PIECES,
    held,
    refuse_too_many,
    run_faults,
)
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, fault, not_one_of, refuse_if_any
from roofing_core.measures.units import Inches

#: Edge metal is usually sold in 10 ft lengths; 8 and 12 ft are sold too.
STOCK_LENGTHS = (120.0,)

#: Lap and nail spacing of edge metal. The code asks for 2 in or more, and 12 in or less.
LAP = 6.0
NAIL_SPACING = 12.0
END_DISTANCE = 1.0

#: No piece of a run of several is cut shorter.
LEAST_PIECE = 12.0

LapDirection = Literal["upper_over_lower", "either"]
Tabs = Literal["both", "start", "end"]


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalRun:
    """One run of metal, cut and nailed.

    Places are measured along the run from where it starts: the lower end of a rake, the left end
    of an eave or ridge as seen from the ground facing the roof.

    Attributes:
        run_length: Length of edge covered, without the tabs.
        tab: Length bent round the corner at each end that has a tab.
        tabs: Which ends have one.
        cut_length: Length covered and tabs together, what the pieces come to once lapped.
        stock_length: Length of the metal it is cut from.
        stock: How many such lengths to buy.
        pieces: How many pieces are laid.
        lengths: Length to cut of each piece, in the order of cutting and of laying.
        offcuts: What is left of each stock length, in the same order.
        offcut: What is left in all.
        lap: How far each piece laps the next.
        lap_direction: ``upper_over_lower``: each piece over the one laid before it;
            ``either``: over or under, as it suits.
        laps: Where each lap starts, which is where the next piece starts; it ends one lap on.
        nail_positions: Where each nail along the run goes, in order; those at the middle of a lap
            go through both pieces.
        nail_lines: Lines of such nails across the metal.
        tab_nails: Nails in the bent tabs, one each.
        nails: Nails in all, those in the tabs among them.
    """

    run_length: Inches
    tab: Inches
    tabs: Tabs
    cut_length: Inches
    stock_length: Inches
    stock: int
    pieces: int
    lengths: tuple[Inches, ...]
    offcuts: tuple[Inches, ...]
    offcut: Inches
    lap: Inches
    lap_direction: LapDirection
    laps: tuple[Inches, ...]
    nail_positions: tuple[Inches, ...]
    nail_lines: int
    tab_nails: int
    nails: int


def metal_run(
    run_length: Inches,
    *,
    stock_length: tuple[Inches, ...] = STOCK_LENGTHS,
    lap: Inches = LAP,
    nail_spacing: Inches = NAIL_SPACING,
    end_distance: Inches = END_DISTANCE,
    tab: Inches = 0.0,
    tabs: Tabs = "both",
    least_piece: Inches = LEAST_PIECE,
    lap_direction: LapDirection = "either",
    nail_lines: int = 1,
) -> MetalRun:
    """Cut and nail one run of metal along an edge: eave, rake, ridge, pitch break or wall.

    ``cut_length = run_length + tab`` for each end with a tab; the pieces are the least n with
    ``n * S - (n - 1) * lap >= cut_length``, all from one stock length S: the one on offer that
    buys the least metal, and of those the one with the fewest pieces. Whole lengths are laid first
    and the last piece is the rest; where the rest would be too short, the piece before it gives up
    what is missing. One nail stands ``end_distance`` from each end and one in the middle of each
    lap, and between these the nails are spaced equally, at most ``nail_spacing`` apart.

    Args:
        run_length: Length of edge to cover, without the tabs; over 0.
        stock_length: The lengths that the metal is on offer in, one or more.
        lap: How far each piece laps the next; at most half of the shortest stock length.
        nail_spacing: Most from nail to nail; over 0.
        end_distance: From each end of the run to its first nail. A run too short for two nails
            gets one in its middle.
        tab: Length bent round the corner and nailed there once; 0 for none.
        tabs: Which ends have a tab: both, or only the one where the run starts or ends.
        least_piece: No piece of a run of several is shorter; the pieces at the ends also hold
            their tab and their lap clear of each other.
        lap_direction: Which piece goes over: ``upper_over_lower`` on a rake, laid from the eave up;
            ``either`` on an eave or ridge.
        nail_lines: Lines of nails across the metal: 1 on the deck leg of edge metal, 2 where both
            sides are nailed, as in a valley.

    Returns:
        The cut list, the laps and the nails. A run in one piece is as long as it is, however short.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, nothing is on
            offer, a word is none of those it can be, or the lap, the tab, the end distance or the
            least piece do not fit the shortest stock length; names each.
        TooManyPieces: The run would take more pieces or nails than the stated limit.

    Source:
        Geometry. The code asks for laps of 2 in or more and nails 12 in apart or closer
        (IRC R905.2.8.5, 2018). The defaults are common practice, no published source.

    >>> run = metal_run(168, tab=2)  # 14 ft of eave
    >>> run.pieces, run.lengths, run.laps
    (2, (120.0, 58.0), (112.0,))
    >>> metal_run(119).nails  # 117 in between the end nails: ten spaces of 11.7 in
    11
    """
    sizes = {
        "run_length": run_length,
        "lap": lap,
        "nail_spacing": nail_spacing,
        "end_distance": end_distance,
        "tab": tab,
        "least_piece": least_piece,
    }
    words = _word_faults(tabs, lap_direction, nail_lines)
    refuse_if_any([*run_faults(stock_length, **sizes), *words])
    tab_nails = 0 if not tab else 2 if tabs == "both" else 1
    cut_length = run_length + tab_nails * tab
    refuse_too_many(cut_length, stock=max(stock_length), lap=lap, nail_spacing=nail_spacing)
    stock = _least_metal(cut_length, stock_length, lap)
    at_start, at_end = (0.0 if tabs == other else tab for other in ("end", "start"))
    end_piece = max(least_piece, at_end + held(lap, end_distance))
    lengths = _lengths(cut_length, stock=stock, lap=lap, end_piece=end_piece)
    laps = tuple(_laps(lengths, lap=lap, tab=at_start))
    nails = nails_along(
        run_length, laps, lap=lap, nail_spacing=nail_spacing, end_distance=end_distance
    )
    return MetalRun(
        run_length=run_length,
        tab=tab,
        tabs=tabs,
        cut_length=cut_length,
        stock_length=stock,
        stock=len(lengths),
        pieces=len(lengths),
        lengths=lengths,
        offcuts=tuple(stock - piece for piece in lengths),
        offcut=len(lengths) * stock - sum(lengths),
        lap=lap,
        lap_direction=lap_direction,
        laps=laps,
        nail_positions=nails,
        nail_lines=nail_lines,
        tab_nails=tab_nails,
        nails=nail_lines * len(nails) + tab_nails,
    )


def nails_along(
    run_length: Inches,
    laps: Sequence[Inches],
    *,
    lap: Inches,
    nail_spacing: Inches,
    end_distance: Inches,
) -> tuple[Inches, ...]:
    """Give where the nails along a run go: one at each end, one in each lap, and between these.

    Args:
        run_length: Length of edge covered, without the tabs.
        laps: Where each lap starts.
        lap: How far each piece laps the next.
        nail_spacing: Most from nail to nail.
        end_distance: From each end of the run to its first nail.

    Returns:
        The places along the run, in order.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> nails_along(30, (), lap=6, nail_spacing=12, end_distance=1)
    (1, 10.333333333333334, 19.666666666666668, 29)
    """
    middles = (start + lap / 2 for start in laps)
    return tuple(_nailed([end_distance, *middles, run_length - end_distance], nail_spacing))


def _word_faults(tabs: str, lap_direction: str, nail_lines: int) -> Iterator[Fault | None]:
    yield not_one_of("tabs", tabs, get_args(Tabs))
    yield not_one_of("lap_direction", lap_direction, get_args(LapDirection))
    if not 1 <= nail_lines <= MOST_NAIL_LINES:
        yield fault("nail_lines", str(nail_lines), f"from 1 to {MOST_NAIL_LINES}")


def _pieces(cut_length: float, stock: float, lap: float) -> int:
    return max(1, whole_pieces(max(0.0, cut_length - lap) / (stock - lap)))


def _least_metal(cut_length: float, offer: tuple[float, ...], lap: float) -> float:
    """Choose the stock length that buys the least metal; of equals, the one with fewer pieces."""
    counts = {stock: _pieces(cut_length, stock, lap) for stock in offer}
    bought = {stock: n * stock for stock, n in counts.items() if n <= MOST_PIECES}
    least = min(bought.values())
    return max(stock for stock, metal in bought.items() if metal <= least * (1 + DUST))


def _lengths(cut_length: float, *, stock: float, lap: float, end_piece: float) -> tuple[float, ...]:
    """Cut whole lengths and the rest; the last but one gives to a rest that is too short."""
    count = _pieces(cut_length, stock, lap)
    if count == 1:
        return (min(cut_length, stock),)
    rest = min(cut_length - (count - 1) * (stock - lap), stock)
    short = max(0.0, end_piece - rest)
    return (*(float(stock),) * (count - 2), stock - short, rest + short)


def _laps(lengths: tuple[float, ...], *, lap: float, tab: float) -> Iterator[float]:
    """Give where each lap starts: all but the last two pieces are whole lengths."""
    whole = lengths[0] - lap
    for count in range(1, len(lengths) - 1):
        yield count * whole - tab
    if len(lengths) > 1:
        yield (len(lengths) - 2) * whole + lengths[-2] - lap - tab


def _nailed(marks: list[float], spacing: float) -> Iterator[float]:
    """Nail every mark, and between marks equally, no further apart than the spacing."""
    if marks[-1] <= marks[0]:
        yield (marks[0] + marks[-1]) / 2
        return
    yield marks[0]
    for mark, following in pairwise(marks):
        spaces = whole_pieces((following - mark) / spacing)
        for k in range(1, spaces + 1):
            yield following if k == spaces else mark + (following - mark) * k / spaces
