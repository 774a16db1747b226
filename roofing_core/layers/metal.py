"""Metal: one run of eave, rake or ridge metal as a cut list with its laps, tabs and nails.

Says what is cut from which stock length, where the lengths lap and where the nails go. Buying for
several runs at once, and where on the roof a run lies, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches

#: Edge metal is usually sold in 10 ft lengths; 8 and 12 ft are sold too.
STOCK_LENGTHS = (120.0,)

#: Lap and nail spacing of edge metal. The code asks for 2 in or more, and 12 in or less.
LAP = 6.0
NAIL_SPACING = 12.0
END_DISTANCE = 1.0

#: No piece of a run of several is cut shorter.
LEAST_PIECE = 12.0

#: More pieces, or more spaces between nails, in one run are refused before any is laid.
MOST_PIECES = 1_000
MOST_NAILS = 10_000

LapDirection = Literal["upper_over_lower", "either"]


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalRun:
    """One run of metal, cut and nailed.

    Places are measured along the run from where it starts: the lower end of a rake, the left end
    of an eave or ridge as seen from the ground facing the roof.

    Attributes:
        run_length: Length of edge covered, without the tabs.
        tab: Length bent round the corner at each end of the run.
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
        tab_nails: Nails in the bent tabs, one each.
        nails: Nails in all, those in the tabs among them.
    """

    run_length: Inches
    tab: Inches
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
    least_piece: Inches = LEAST_PIECE,
    lap_direction: LapDirection = "either",
) -> MetalRun:
    """Cut and nail one run of eave, rake or ridge metal.

    ``cut_length = run_length + 2 * tab``; the pieces are the least n with
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
        tab: Length bent round the corner at each end and nailed there once; 0 for none.
        least_piece: No piece of a run of several is shorter; the pieces at the ends also hold
            their tab and their lap clear of each other.
        lap_direction: Which piece goes over: ``upper_over_lower`` on a rake, laid from the eave up;
            ``either`` on an eave or ridge.

    Returns:
        The cut list, the laps and the nails. A run in one piece is as long as it is, however short.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, nothing is on
            offer, or the lap, the tab, the end distance or the least piece do not fit the shortest
            stock length; names each.
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
    refuse_if_any(_faults(stock_length, sizes))
    cut_length = run_length + 2 * tab
    _limit(cut_length, stock=max(stock_length), lap=lap, nail_spacing=nail_spacing)
    stock = _least_metal(cut_length, stock_length, lap)
    end_piece = max(least_piece, tab + _held(lap, end_distance))
    lengths = _lengths(cut_length, stock=stock, lap=lap, end_piece=end_piece)
    laps = tuple(_laps(lengths, lap=lap, tab=tab))
    middles = (start + lap / 2 for start in laps)
    nails = tuple(_nailed([end_distance, *middles, run_length - end_distance], nail_spacing))
    tab_nails = 2 if tab else 0
    return MetalRun(
        run_length=run_length,
        tab=tab,
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
        tab_nails=tab_nails,
        nails=len(nails) + tab_nails,
    )


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


def _held(lap: float, end_distance: float) -> float:
    """Give what an end piece needs besides its tab: its lap, and the end nail outside the lap's."""
    return max(lap, lap / 2 + end_distance)


def _faults(offer: tuple[float, ...], sizes: dict[str, float]) -> list[Fault]:
    """Find everything wrong, each field once: first by itself, then against the shortest stock."""
    may_be_0 = ("end_distance", "tab", "least_piece")
    found = [
        (negative if name in may_be_0 else not_positive)(name, value)
        for name, value in sizes.items()
    ]
    found += [not_positive(f"stock_length.{i}", stock) for i, stock in enumerate(offer)]
    if not offer:
        found.append(fault("stock_length", "none", "one or more stock lengths, such as 10 ft"))
    wrong = [one for one in found if one is not None]
    named = {one.at[0] for one in wrong}
    if not named & {"lap", "stock_length"}:
        wrong += [one for one in _misfits(min(offer), **sizes) if one.at[0] not in named]
    return wrong


def _misfits(
    stock: float,
    *,
    lap: float,
    tab: float,
    end_distance: float,
    least_piece: float,
    **_: float,
) -> Iterator[Fault]:
    """Hold the sizes against the shortest stock length: two end pieces must come out of two."""
    if lap > stock / 2:
        because = ", half of the stock length: no more than two lengths lie over each other"
        yield fault("lap", length(lap), "at most ", length(stock / 2), because)
        return
    most = min((stock + lap) / 2, stock - lap)
    from_stock = (" from a stock length of ", length(stock), " with a lap of ", length(lap))
    if least_piece > most:
        yield fault("least_piece", length(least_piece), "at most ", length(most), *from_stock)
    if tab + lap > most:
        yield fault("tab", length(tab), "at most ", length(most - lap), *from_stock)
    elif tab + _held(lap, end_distance) > most:
        at_most = length(most - tab - lap / 2)
        yield fault("end_distance", length(end_distance), "at most ", at_most, *from_stock)


def _limit(cut_length: float, *, stock: float, lap: float, nail_spacing: float) -> None:
    """Refuse a run of too many pieces or nails before any is laid."""
    found = []
    longest = MOST_PIECES * (stock - lap)
    if cut_length > longest:
        wanted = (length(longest), f" with tabs, {MOST_PIECES} pieces of the longest stock length")
        found.append(fault("run_length", length(cut_length), "at most ", *wanted))
    closest = cut_length / MOST_NAILS
    if nail_spacing < closest:
        wanted = (Amount(closest, "in"), f": at most {MOST_NAILS} spaces in one run")
        found.append(fault("nail_spacing", length(nail_spacing), "at least ", *wanted))
    if found:
        raise TooManyPieces(*found)
