"""What metal cannot be run: sizes that do not fit their stock, and runs of too many pieces."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.measures.faults import Fault, TooManyPieces, fault, negative, not_positive
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches

#: More pieces, or more spaces between nails, in one run are refused before any is laid.
MOST_PIECES = 1_000
MOST_NAILS = 10_000

#: More lines of nails than this run along no metal.
MOST_NAIL_LINES = 10


def held(lap: Inches, end_distance: Inches) -> Inches:
    """Give what an end piece needs besides its tab: its lap, and its end nail outside the lap's.

    ``max(lap, lap / 2 + end_distance)``.

    Args:
        lap: How far each piece laps the next.
        end_distance: From the end of the run to its first nail.

    Returns:
        The length of it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> held(6, 4)
    7.0
    """
    return max(lap, lap / 2 + end_distance)


def run_faults(stock_length: tuple[Inches, ...], **sizes: Inches) -> list[Fault]:
    """Find everything wrong, each field once: first by itself, then against the shortest stock.

    Args:
        stock_length: The lengths that the metal is on offer in.
        sizes: The measurements of `metal_run`, by its own names for them.

    Returns:
        None where the run can be cut and nailed.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Geometry.

    >>> [one.at for one in run_faults((), run_length=0, lap=6)]
    [('run_length',), ('stock_length',)]
    """
    may_be_0 = ("end_distance", "tab", "least_piece")
    found = [
        (negative if name in may_be_0 else not_positive)(name, value)
        for name, value in sizes.items()
    ]
    found += [not_positive(f"stock_length.{i}", stock) for i, stock in enumerate(stock_length)]
    if not stock_length:
        found.append(
            fault("stock_length", "none", "one or more stock lengths, such as ", length(120))
        )
    wrong = [one for one in found if one is not None]
    named = {one.at[0] for one in wrong}
    if not named & {"lap", "stock_length"}:
        wrong += [one for one in _misfits(min(stock_length), **sizes) if one.at[0] not in named]
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
    elif tab + held(lap, end_distance) > most:
        at_most = length(most - tab - lap / 2)
        yield fault("end_distance", length(end_distance), "at most ", at_most, *from_stock)


def refuse_too_many(
    cut_length: Inches, *, stock: Inches, lap: Inches, nail_spacing: Inches
) -> None:
    """Refuse a run of too many pieces or nails before any is laid.

    Args:
        cut_length: Length covered and tabs together.
        stock: The longest stock length on offer.
        lap: How far each piece laps the next.
        nail_spacing: Most from nail to nail.

    Raises:
        TooManyPieces: There would be more than the stated limit.

    Source:
        A limit of this library.

    >>> refuse_too_many(114_000, stock=120, lap=6, nail_spacing=12)  # 1,000 lengths of 10 ft
    """
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
