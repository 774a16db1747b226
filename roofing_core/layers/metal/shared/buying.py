"""Buying: stock lengths for several runs of one metal together, at the least cost."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from typing import NamedTuple

from roofing_core.layers.metal.runs import END_DISTANCE, LAP, LEAST_PIECE
from roofing_core.layers.metal.shared.asked import (
    PRICE_DIGITS,
    RunAsked,
    StockOffer,
    least_of,
    refuse_asked,
)
from roofing_core.layers.metal.shared.bought import SharedMetal
from roofing_core.layers.metal.shared.covering import PARTS_OF_AN_INCH, Covering, Offered
from roofing_core.layers.metal.shared.grouping import (
    MOST_PARTS,
    Cutting,
    Kind,
    Parted,
    Parting,
    parts_to_try,
)
from roofing_core.layers.metal.shared.listing import Source, listed
from roofing_core.layers.metal.shared.many import bound_of_many, parted_many
from roofing_core.layers.metal.shared.placing import Need, Steps, StepsUsedUp
from roofing_core.measures.faults import fault, refuse_if_any
from roofing_core.measures.units import Inches

#: So many combinations are looked at before the search stops at a bound.
MOST_STEPS = 300_000

#: The most steps that may be asked for.
_MOST_ASKED = 10_000_000

#: Lengths this near to each other are one.
_ALIKE = 1e-6


def shared_metal(
    runs: tuple[RunAsked, ...],
    *,
    offers: tuple[StockOffer, ...],
    lap: Inches = LAP,
    least_piece: Inches = LEAST_PIECE,
    end_distance: Inches = END_DISTANCE,
    most_steps: int = MOST_STEPS,
) -> SharedMetal:
    """Buy stock lengths for several runs of one metal together, at the least cost.

    What is left of a length cut for one run goes on to another. Runs linked like this, G in all,
    take lengths with ``sum(S) - (N - 1) * lap >= G``, and cut end to end those suffice. Which runs
    are linked is chosen so that the whole costs least; without prices, so that it takes the least
    metal. Of equals the fewest lengths are bought.

    Args:
        runs: The runs, each with a name of its own.
        offers: The stock lengths on offer, with a price each, or none with one.
        lap: Of each piece over the next; at most a third of the shortest stock length.
        least_piece: No piece of a run of several is shorter, nor than two laps, nor than a tab
            with its lap and nail.
        end_distance: From each end of a run to its first nail, which is kept out of the lap.
        most_steps: So many combinations are looked at before the search stops at a bound.

    Returns:
        What to buy, what is cut from each length, the pieces of each run, and what is proved. A run
        in one piece is as long as it is, however short.

    Raises:
        Refused: Something cannot be: a length, a name that comes twice, a price under 0 or one
            that is missing, or a lap, tab or least piece that does not fit the shortest stock
            length; names each.
        TooManyPieces: More lengths would be bought than the limit.

    Source:
        Counting: in any cut plan there are at least lengths + runs - groups pieces. The defaults
        are common practice, no published source.

    >>> runs = (RunAsked(name="rake", run_length=112), RunAsked(name="ridge", run_length=168.5))
    >>> both = shared_metal(runs, offers=(StockOffer(length=120), StockOffer(length=144)))
    >>> [(one.stock_length, one.count) for one in both.bought], both.proved
    ([(120, 0), (144, 2)], True)
    """
    sizes = {"lap": lap, "least_piece": least_piece, "end_distance": end_distance}
    refuse_asked(runs, offers, **sizes)
    if not 0 <= most_steps <= _MOST_ASKED:
        refuse_if_any([fault("most_steps", str(most_steps), f"from 0 to {_MOST_ASKED:,}")])
    alike = _alike(runs, **sizes)
    covering = _covering(runs, offers, lap)
    cutting = Cutting(alike.kinds, covering, steps=Steps(most_steps))
    parted = _parted(cutting)
    cost = sum(covering.cost(group.bought) for group in parted.groups)
    return listed(
        runs,
        offers,
        lap=lap,
        sources=_sources(alike, parted, covering, len(runs)),
        worth=(cost // _FEWEST, parted.least // _FEWEST),
        alone=[covering.cheapest(run.run_length + sum(run.tabs_at()) - lap) for run in runs],
    )


#: Of equal costs the fewest lengths are the least: there are never so many of them.
_FEWEST = 2**20


def _offered(offer: StockOffer) -> Offered:
    """Give what a stock length costs as a whole number: its price, or its length."""
    if offer.price is None:
        worth = round(offer.length * PARTS_OF_AN_INCH)
    else:
        worth = int(offer.price.scaleb(PRICE_DIGITS))
    return Offered(offer.length, worth * _FEWEST + 1)


def _covering(runs: Sequence[RunAsked], offers: Sequence[StockOffer], lap: Inches) -> Covering:
    farthest = sum(run.run_length + sum(run.tabs_at()) for run in runs)
    return Covering([_offered(one) for one in offers], lap=lap, farthest=farthest)


class _Alike(NamedTuple):
    """Runs that are alike taken together."""

    kinds: list[Kind]
    members: list[list[int]]
    """The runs of each kind, by their places."""


def _alike(runs: Sequence[RunAsked], **sizes: Inches) -> _Alike:
    """Take runs together that are alike, the longest first."""
    needs: dict[tuple[int, int], list[tuple[Need, int]]] = {}
    for k, run in enumerate(runs):
        need = Need(run.run_length + sum(run.tabs_at()), least_of(run, **sizes))
        as_one = (round(need.length / _ALIKE), round(need.least / _ALIKE))
        needs.setdefault(as_one, []).append((need, k))
    found = [needs[as_one] for as_one in sorted(needs, reverse=True)]
    return _Alike(
        [Kind(max(need for need, _ in one), len(one)) for one in found],
        [[k for _, k in one] for one in found],
    )


def _parted(cutting: Cutting) -> Parted:
    """Part runs into groups; where one group meets the bound of all, no other is looked for."""
    whole = tuple(kind.many for kind in cutting.kinds)
    least = cutting.covering.least(cutting.far(whole))
    if least == bound_of_many(cutting):
        with suppress(StepsUsedUp):
            group = cutting.cut(whole, least)
            if group is not None:
                return Parted([group], least)
    if parts_to_try(cutting.kinds) > MOST_PARTS:
        return parted_many(cutting)
    return Parting(cutting).parted()


def _sources(alike: _Alike, parted: Parted, covering: Covering, runs: int) -> list[list[Source]]:
    """Give the pieces of each run as it was asked for, and which length each is cut from."""
    waiting = [[*members] for members in alike.members]
    found: list[list[Source]] = [[] for _ in range(runs)]
    first = 0
    for group in parted.groups:
        lengths = covering.lengths(group.bought)
        members = [
            waiting[kind].pop(0) for kind, many in enumerate(group.counts) for _ in range(many)
        ]
        for run, pieces in zip(members, group.placed, strict=True):
            found[run] = [
                Source(first + piece.source, lengths[piece.source], piece.length)
                for piece in sorted(pieces, key=lambda piece: -piece.length)
            ]
        first += len(lengths)
    return found
