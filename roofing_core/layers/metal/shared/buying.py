"""Buying: stock lengths for several runs of one metal together, at the least cost."""

from __future__ import annotations

from collections.abc import Sequence

from roofing_core.layers.metal.runs import END_DISTANCE, LAP, LEAST_PIECE
from roofing_core.layers.metal.shared.asked import (
    PRICE_DIGITS,
    RunAsked,
    StockOffer,
    refuse_asked,
)
from roofing_core.layers.metal.shared.bought import SharedMetal
from roofing_core.layers.metal.shared.covering import PARTS_OF_AN_INCH, Covering, Offered
from roofing_core.layers.metal.shared.cuts import Laid
from roofing_core.layers.metal.shared.grouping import (
    Cutting,
    Parted,
)
from roofing_core.layers.metal.shared.listing import listed
from roofing_core.layers.metal.shared.many import cheaply_parted
from roofing_core.layers.metal.shared.members import Members, cost_of
from roofing_core.layers.metal.shared.placing import Steps
from roofing_core.layers.metal.shared.side_by_side import RESERVED, Bought, SideBySide
from roofing_core.layers.metal.shared.staggering import Staggering
from roofing_core.measures.faults import Refused, fault, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: So many combinations are looked at before the search stops at a bound.
MOST_STEPS = 300_000

#: The most steps that may be asked for.
_MOST_ASKED = 1_000_000


def shared_metal(
    runs: tuple[RunAsked, ...],
    *,
    offers: tuple[StockOffer, ...],
    lap: Inches = LAP,
    least_piece: Inches = LEAST_PIECE,
    end_distance: Inches = END_DISTANCE,
    stagger: Inches = 0.0,
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
        stagger: How far laps of runs side by side stand apart at least; 0 for no matter.
        most_steps: So many combinations are looked at before the search stops at a bound.

    Returns:
        What to buy, what is cut from each length, the pieces of each run, and what is proved. A run
        in one piece is as long as it is, however short.

    Raises:
        Refused: Something cannot be: a length, a name that comes twice, a price under 0 or one
            that is missing, or a lap, tab or least piece that does not fit the shortest stock
            length; or no way of buying is found with the stagger; names each.
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
    refuse_asked(runs, offers, **sizes, stagger=stagger)
    if not 0 <= most_steps <= _MOST_ASKED:
        refuse_if_any([fault("most_steps", str(most_steps), f"from 0 to {_MOST_ASKED:,}")])
    members = Members(runs, apart=stagger > 0, **sizes)
    covering = _covering(members, offers, lap, stagger)
    cutting = Cutting(members.kinds, covering, steps=Steps(most_steps))
    parted = cheaply_parted(cutting)
    bought = Bought(members.sources(parted.groups, covering), parted.least)
    if members.beside:
        bought = _staggered(members, cutting, parted, stagger)
    return listed(
        runs,
        offers,
        lap=lap,
        stagger=stagger,
        sources=bought.pieces,
        worth=(cost_of(bought.pieces, covering) // _FEWEST, bought.least // _FEWEST),
        alone=[covering.cheapest(run.cut_length() - lap) for run in runs],
    )


def _staggered(members: Members, cutting: Cutting, parted: Parted, stagger: Inches) -> Bought:
    kinds = zip(members.kinds, members.members, strict=True)
    least = {k: kind.need.least for kind, own in kinds for k in own}
    staggering = Staggering(
        [Laid(run.cut_length(), least[k], -run.tabs_at()[0]) for k, run in enumerate(members.runs)],
        members.beside,
        lap=cutting.covering.lap,
        stagger=stagger,
        steps=cutting.steps,
    )
    bought = SideBySide(members, cutting, staggering).bought(parted)
    if bought is None:
        wanted = "less: no way of buying was found with which laps stand so far apart"
        raise Refused(fault("stagger", length(stagger), wanted))
    return bought


#: Of equal costs the fewest lengths are the least: there are never so many of them.
_FEWEST = 2**20


def _offered(offer: StockOffer) -> Offered:
    """Give what a stock length costs as a whole number: its price, or its length."""
    if offer.price is None:
        worth = round(offer.length * PARTS_OF_AN_INCH)
    else:
        top, bottom = offer.price.as_integer_ratio()
        worth = top * 10**PRICE_DIGITS // bottom
    return Offered(offer.length, worth * _FEWEST + 1)


def _covering(
    members: Members, offers: Sequence[StockOffer], lap: Inches, stagger: Inches
) -> Covering:
    # Where laps are to stand apart, runs may have to be bought for as if they were longer.
    more = RESERVED * stagger * len(members.beside) + 2 * min(one.length for one in offers)
    farthest = sum(run.cut_length() for run in members.runs) + more
    return Covering([_offered(one) for one in offers], lap=lap, farthest=farthest)
