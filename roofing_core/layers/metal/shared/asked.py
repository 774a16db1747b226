"""Asked: the runs that are bought for together, what is on offer, and what cannot be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import get_args

from roofing_core.layers.metal.run_limits import MOST_PIECES, held
from roofing_core.layers.metal.runs import Tabs
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_one_of,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches

#: More runs, or stock lengths on offer, than this are refused.
MOST_RUNS = 1_000
MOST_OFFERS = 12

#: The dearest length, and the digits after the point that a price may have.
LARGEST_PRICE = Decimal(1_000_000_000)
PRICE_DIGITS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class RunAsked:
    """One run of metal to buy for.

    Attributes:
        name: What it is called; no two runs have the same name.
        run_length: Length of edge to cover, without the tabs.
        tab: Length bent round the corner at each end that has a tab.
        tabs: Which ends have one.
        beside: The run that it lies side by side with, from the same line on, if any: laps of the
            two are kept apart by the stagger.
    """

    name: str
    run_length: Inches
    tab: Inches = 0.0
    tabs: Tabs = "both"
    beside: str = ""

    def tabs_at(self) -> tuple[Inches, Inches]:
        """Give the length of the tab at its start and at its end."""
        at_start = 0.0 if self.tabs == "end" else self.tab
        return at_start, 0.0 if self.tabs == "start" else self.tab

    def cut_length(self) -> Inches:
        """Give the length covered and tabs together."""
        return self.run_length + sum(self.tabs_at())


@dataclass(frozen=True, slots=True, kw_only=True)
class StockOffer:
    """A stock length that the metal is on offer in.

    Attributes:
        length: Of each.
        price: Of each, in any currency; where no offer has one, the least metal is bought.
    """

    length: Inches
    price: Decimal | None = None


def least_of(run: RunAsked, *, lap: Inches, least_piece: Inches, end_distance: Inches) -> Inches:
    """Give the shortest piece of a run of several.

    Args:
        run: The run.
        lap: Of each piece over the next.
        least_piece: No piece of a run of several is to be shorter.
        end_distance: From the end of a run to its first nail.

    Returns:
        ``least_piece`` or, where that is longer, two laps, so that no three pieces lie over each
        other; or a tab with what holds it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> least_of(RunAsked(name="eave", run_length=168, tab=2), lap=6, least_piece=8, end_distance=1)
    12
    """
    tab = max(run.tabs_at())
    return max(least_piece, 2 * lap, tab + held(lap, end_distance))


def refuse_asked(runs: Sequence[RunAsked], offers: Sequence[StockOffer], **sizes: Inches) -> None:
    """Refuse what cannot be bought for: all that is wrong with runs, offers and sizes at once.

    Args:
        runs: The runs.
        offers: What is on offer.
        sizes: ``lap``, ``least_piece``, ``end_distance`` and ``stagger``.

    Raises:
        Refused: Something cannot be; names each.
        TooManyPieces: More lengths would be bought than the limit.

    Source:
        Geometry.

    >>> refuse_asked([RunAsked(name="eave", run_length=168)], [StockOffer(length=120)], lap=6,
    ...              least_piece=12, end_distance=1, stagger=0)
    """
    found = [*_run_faults(runs), *_offer_faults(offers)]
    found += [
        (not_positive if name == "lap" else negative)(name, size) for name, size in sizes.items()
    ]
    refuse_if_any(found)
    refuse_if_any(_misfits(runs, min(one.length for one in offers), **sizes))
    _refuse_too_many(runs, offers, sizes["lap"])


def _run_faults(runs: Sequence[RunAsked]) -> Iterator[Fault | None]:
    if not 1 <= len(runs) <= MOST_RUNS:
        yield fault("runs", f"{len(runs)} runs", f"from 1 to {MOST_RUNS}")
    names = [run.name for run in runs]
    for k, run in enumerate(runs):
        at = f"runs.{k}"
        if not run.name or run.name in names[:k]:
            yield fault(f"{at}.name", run.name or "no name", "a name that no other run has")
        yield not_positive(f"{at}.run_length", run.run_length)
        yield negative(f"{at}.tab", run.tab)
        yield not_one_of(f"{at}.tabs", run.tabs, get_args(Tabs))
        if run.beside and (run.beside == run.name or run.beside not in names):
            yield fault(f"{at}.beside", run.beside, "the name of another run")


def _offer_faults(offers: Sequence[StockOffer]) -> Iterator[Fault | None]:
    if not 1 <= len(offers) <= MOST_OFFERS:
        some = say(f"from 1 to {MOST_OFFERS} stock lengths, such as ", length(120))
        yield fault("offers", f"{len(offers)} stock lengths", some)
    lengths = [one.length for one in offers]
    priced = any(one.price is not None for one in offers)
    for k, one in enumerate(offers):
        yield not_positive(f"offers.{k}.length", one.length)
        if one.length in lengths[:k]:
            yield fault(f"offers.{k}.length", length(one.length), "each stock length once")
        if one.price is not None:
            yield _price_fault(f"offers.{k}.price", one.price)
        elif priced:
            wanted = "a price, as other stock lengths have one; or none for any of them"
            yield fault(f"offers.{k}.price", "none", wanted)


def _price_fault(at: str, price: object) -> Fault | None:
    if not isinstance(price, Decimal):
        wanted = 'a Decimal made of a text, such as Decimal("12.49"): a float is not exact'
        return fault(at, repr(price), wanted)
    if not (price.is_finite() and 0 <= price <= LARGEST_PRICE):
        return fault(at, str(price), f"zero or more and at most {LARGEST_PRICE}")
    top, bottom = price.as_integer_ratio()
    if top * 10**PRICE_DIGITS % bottom:
        return fault(at, f"{price:f}", f"at most {PRICE_DIGITS} digits after the point")
    return None


def _misfits(
    runs: Sequence[RunAsked],
    stock: float,
    *,
    lap: float,
    least_piece: float,
    end_distance: float,
    stagger: float,
) -> Iterator[Fault]:
    """Hold the sizes against the shortest stock length: two end pieces must come out of two."""
    if lap > stock / 3:
        because = ", a third of the shortest stock length, so that no three pieces overlap"
        yield fault("lap", length(lap), "at most ", length(stock / 3), because)
        return
    most = (stock + lap) / 2
    from_stock = (" from a stock length of ", length(stock), " with a lap of ", length(lap))
    if least_piece > most:
        yield fault("least_piece", length(least_piece), "at most ", length(most), *from_stock)
    for k, run in enumerate(runs):
        tab = max(run.tabs_at())
        if tab + held(lap, end_distance) > most:
            at_most = length(max(0.0, most - held(lap, end_distance)))
            yield fault(f"runs.{k}.tab", length(tab), "at most ", at_most, *from_stock)
    if stagger > (stock - lap) / 2:
        most = (stock - lap) / 2
        because = ", half of what the shortest stock length reaches beyond a lap"
        yield fault("stagger", length(stagger), "at most ", length(most), because)


def _refuse_too_many(runs: Sequence[RunAsked], offers: Sequence[StockOffer], lap: float) -> None:
    longest = MOST_PIECES * (max(one.length for one in offers) - lap)
    whole = sum(run.cut_length() for run in runs)
    if whole > longest:
        wanted = ("at most ", length(longest), f" with tabs, {MOST_PIECES} of the longest offer")
        raise TooManyPieces(fault("runs", length(whole), *wanted))
