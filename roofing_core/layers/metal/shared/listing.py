"""Listing: pieces and the lengths they are cut from, as lists to buy, cut and lay by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Context, Decimal
from itertools import accumulate
from string import ascii_uppercase
from typing import NamedTuple

from roofing_core.layers.metal.shared.asked import PRICE_DIGITS, RunAsked, StockOffer
from roofing_core.layers.metal.shared.bought import (
    LengthCut,
    LengthsBought,
    Offcut,
    PieceCut,
    RunPieced,
    SharedMetal,
)
from roofing_core.layers.metal.shared.covering import PARTS_OF_AN_INCH, Bought
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.measures.units import Inches

#: Sums of the largest prices keep all their digits in so many.
EXACT = Context(prec=60)
NOTHING = Decimal(0)


class Source(NamedTuple):
    """A piece, and the length that it is cut from."""

    number: int
    stock_length: Inches
    piece: Inches


def listed(
    runs: Sequence[RunAsked],
    offers: Sequence[StockOffer],
    *,
    lap: Inches,
    stagger: Inches = 0.0,
    sources: Sequence[Sequence[Source]],
    worth: tuple[int, int],
    alone: Sequence[Bought],
) -> SharedMetal:
    """List what is bought, cut and laid.

    Args:
        runs: The runs.
        offers: What was on offer.
        lap: Of each piece over the next.
        stagger: How far laps of runs side by side stand apart at least.
        sources: The pieces of each run, in the order of laying.
        worth: What the lengths cost, and what any way of buying costs at least, as whole numbers;
            without prices, the metal they take.
        alone: What each run by itself would be cut from.

    Returns:
        The lists.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> whole = [[Source(0, 120, 100)]]
    >>> runs, offers = [RunAsked(name="eave", run_length=100)], [StockOffer(length=120)]
    >>> listed(runs, offers, lap=6, sources=whole, worth=(1, 1), alone=[(1,)]).offcuts[0].length
    20.0
    """
    numbers = _numbers(sources)
    pieced = tuple(
        _pieced(run, pieces, numbers, lap) for run, pieces in zip(runs, sources, strict=True)
    )
    cuts = tuple(_cuts(pieced, sources, numbers))
    counts = [sum(cut.stock_length == one.length for cut in cuts) for one in offers]
    together = _Bill.of(offers, counts)
    apart = _Bill.of(offers, [sum(each) for each in zip(*alone, strict=True)])
    proved = worth[0] == worth[1]
    priced = offers[0].price is not None
    least = _least(worth[1], together, pieced, priced=priced)
    offcuts = tuple(_offcuts(cuts))
    return SharedMetal(
        priced=priced,
        cost=together.cost,
        least_cost=least.cost,
        metal=together.metal,
        least_metal=least.metal,
        proved=proved,
        verdict=_verdict(least, proved=proved, priced=priced),
        count=len(cuts),
        bought=tuple(
            LengthsBought(
                stock_length=one.length,
                count=count,
                price=one.price or NOTHING,
                cost=_Bill.of([one], [count]).cost,
            )
            for one, count in zip(offers, counts, strict=True)
        ),
        cuts=cuts,
        runs=pieced,
        offcuts=offcuts,
        offcut=sum(one.length for one in offcuts),
        lap=lap,
        stagger=stagger,
        run_by_run_cost=apart.cost,
        run_by_run_metal=apart.metal,
        saved=EXACT.subtract(apart.cost, together.cost),
        saved_metal=apart.metal - together.metal,
    )


class _Bill(NamedTuple):
    """What lengths cost, and how long they are."""

    cost: Decimal
    metal: Inches

    @classmethod
    def of(cls, offers: Sequence[StockOffer], counts: Sequence[int]) -> _Bill:
        """Add up what is bought."""
        cost, metal = NOTHING, 0.0
        for one, count in zip(offers, counts, strict=True):
            cost = EXACT.fma(one.price or NOTHING, count, cost)
            metal += count * one.length
        return cls(cost, metal)


def _least(worth: int, bill: _Bill, runs: Sequence[RunPieced], *, priced: bool) -> _Bill:
    """Give what is proved; where it is no less than what is bought, in the same figures."""
    if priced:
        cost = Decimal(worth).scaleb(-PRICE_DIGITS, EXACT).normalize(EXACT)
        return _Bill(min(bill.cost, cost), sum(run.cut_length for run in runs))
    metal = worth / PARTS_OF_AN_INCH
    return _Bill(NOTHING, bill.metal if metal > bill.metal - DUST * bill.metal else metal)


def _verdict(least: _Bill, *, proved: bool, priced: bool) -> Sentence:
    less = "costs less" if priced else "takes less metal"
    if proved:
        return say(f"Proved: no way of buying {less}.")
    bound = f"{least.cost:f}" if priced else length(least.metal)
    return say(
        f"Not proved, the search stopped at a bound: no way of buying {less} than ", bound, "."
    )


def _numbers(sources: Sequence[Sequence[Source]]) -> dict[int, int]:
    """Number the lengths from 1, in the order in which runs need them."""
    met = dict.fromkeys(piece.number for pieces in sources for piece in pieces)
    return {number: k for k, number in enumerate(met, 1)}


def _pieced(
    run: RunAsked, pieces: Sequence[Source], numbers: dict[int, int], lap: float
) -> RunPieced:
    """Piece a run together; the longest piece takes up what the adding of floats leaves."""
    cut_length = run.cut_length()
    lengths = [one.piece for one in pieces]
    longest = lengths.index(max(lengths))
    lengths[longest] += cut_length + (len(lengths) - 1) * lap - sum(lengths)
    starts = accumulate((long - lap for long in lengths), initial=-run.tabs_at()[0])
    return RunPieced(
        name=run.name,
        run_length=run.run_length,
        tab=run.tab,
        tabs=run.tabs,
        beside=run.beside,
        cut_length=cut_length,
        lengths=tuple(lengths),
        cut_from=tuple(numbers[one.number] for one in pieces),
        laps=tuple(starts)[1:-1],
    )


def _cuts(
    runs: Sequence[RunPieced], sources: Sequence[Sequence[Source]], numbers: dict[int, int]
) -> Iterator[LengthCut]:
    """Give what is cut from each length, for one run after the other."""
    stock = {numbers[one.number]: one.stock_length for pieces in sources for one in pieces}
    cut: dict[int, list[PieceCut]] = {}
    for run in runs:
        for k, (number, long) in enumerate(zip(run.cut_from, run.lengths, strict=True), 1):
            cut.setdefault(number, []).append(PieceCut(length=long, run=run.name, number=k))
    for number, pieces in cut.items():
        left = stock[number] - sum(piece.length for piece in pieces)
        yield LengthCut(
            number=number,
            stock_length=stock[number],
            pieces=tuple(pieces),
            offcut=left if left > DUST * stock[number] else 0.0,
        )


def _offcuts(cuts: Sequence[LengthCut]) -> Iterator[Offcut]:
    """Name what is left of lengths by letters: A to Z, then AA, AB."""
    left = [cut for cut in cuts if cut.offcut]
    for k, cut in enumerate(left):
        times, letter = divmod(k, len(ascii_uppercase))
        yield Offcut(
            name=(_letters(times) if times else "") + ascii_uppercase[letter],
            length=cut.offcut,
            cut_from=cut.number,
            stock_length=cut.stock_length,
        )


def _letters(times: int) -> str:
    more, letter = divmod(times - 1, len(ascii_uppercase))
    return (_letters(more) if more else "") + ascii_uppercase[letter]
