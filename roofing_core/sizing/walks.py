"""Walks: how far a roof can change, step by step, before its order does.

Every step of a grid is looked at, the nearest first; nothing is assumed to grow evenly. Where sizes
are counted at once all steps are; where each takes a plan, there is a limit to the plans.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from roofing_core.job.order import Order
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused
from roofing_core.roof.measuring import AnyRoof
from roofing_core.sizing.amounts import Amounts, Truths
from roofing_core.sizing.counting import LINES, Counter


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """What one size comes to.

    Attributes:
        packs: Packs of each line of the order, by the line's name.
        holds: What each of these packs holds.
        refused: Whether this size cannot be planned.
    """

    packs: Mapping[str, int]
    holds: Mapping[str, float]
    refused: bool

    def differs(self, other: Bought, name: str) -> bool:
        """Tell whether a line buys otherwise than at another size: more, fewer or other packs."""
        if self.packs[name] != other.packs[name]:
            return True
        near = abs(self.holds[name] - other.holds[name]) <= DUST * self.holds[name]
        return bool(self.packs[name]) and not near

    def more(self, other: Bought, name: str) -> bool:
        """Tell whether a line buys more than at another size."""
        bought = self.packs[name] * self.holds[name]
        return bought > other.packs[name] * other.holds[name] * (1 + DUST)


def as_ordered(order: Order) -> Bought:
    """Give what an order comes to.

    Args:
        order: The order.

    Returns:
        Its packs.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.counting import counter_of
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> as_ordered(counter_of(Job(roof=roof)).order).packs["shingles"]
    5
    """
    return Bought(
        packs={name: getattr(order, name).packs for name in LINES},
        holds={name: getattr(order, name).pack_holds.value for name in LINES},
        refused=False,
    )


def bought(amounts: Amounts, place: int) -> Bought:
    """Give what one of many sizes comes to.

    Args:
        amounts: The orders of many sizes.
        place: Which of them.

    Returns:
        Its packs.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.counting import counter_of
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> bought(counter_of(Job(roof=roof)).amounts([roof]), 0).packs["shingles"]
    5
    """
    return Bought(
        packs={name: int(amounts.lines[name].packs[place]) for name in LINES},
        holds={name: float(amounts.lines[name].holds[place]) for name in LINES},
        refused=bool(amounts.refused[place]),
    )


class Walk:
    """Steps away from a roof, one way.

    ``roof_at`` gives the roof so many steps away, of ``steps`` at most; ``ends`` tells from what a
    step comes to whether to look no further. ``found`` is what each step came to, the nearest
    first, and ``ended`` whether the last of them ended it.
    """

    __slots__ = ("ended", "ends", "found", "roof_at", "steps")

    def __init__(
        self, roof_at: Callable[[int], AnyRoof], steps: int, ends: Callable[[Bought], bool]
    ) -> None:
        self.roof_at, self.steps, self.ends = roof_at, steps, ends
        self.found: list[Bought] = []
        self.ended = False

    def goes_on(self) -> bool:
        """Tell whether there is a step to look at."""
        return not self.ended and len(self.found) < self.steps

    def takes(self, what: Bought) -> None:
        """Take what the next step comes to."""
        self.found.append(what)
        self.ended = self.ends(what)


_NOWHERE = Bought(packs={}, holds={}, refused=True)


def walk_all(walks: Sequence[Walk], *, counter: Counter, most_plans: int) -> int:
    """Walk every walk to its end, or as far as the plans reach, the nearest steps of all first.

    Args:
        walks: The walks; what they find is put into them.
        counter: What counts orders.
        most_plans: The most roofs that are planned, where sizes are not counted at once.

    Returns:
        How many sizes were looked at.

    Raises:
        Nothing: What cannot be planned ends a walk or not, as it says.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.counting import counter_of
    >>> def wide(by):
    ...     return SingleSlope(eave_length=168 + by, slope_length=112, pitch=0.25)
    >>> longer = Walk(wide, 20, lambda found: found.packs["shingles"] > 5)
    >>> walk_all([longer], counter=counter_of(Job(roof=wide(0))), most_plans=0)
    20
    """
    if counter.at_once:
        return _walk_at_once(walks, counter)
    looked_at = 0
    while looked_at < most_plans and (going := [walk for walk in walks if walk.goes_on()]):
        for walk in going[: most_plans - looked_at]:
            looked_at += 1
            walk.takes(_planned(walk, counter))
    return looked_at


def _planned(walk: Walk, counter: Counter) -> Bought:
    roof = _roof_at(walk, len(walk.found) + 1)
    if roof is None:
        return _NOWHERE
    amounts = counter.amounts([roof])
    return _NOWHERE if amounts.refused[0] else bought(amounts, 0)


def _roof_at(walk: Walk, step: int) -> AnyRoof | None:
    try:
        return walk.roof_at(step)
    except Refused:
        return None


def _walk_at_once(walks: Sequence[Walk], counter: Counter) -> int:
    for walk in walks:
        if walk.steps:
            roofs = [walk.roof_at(step) for step in range(1, walk.steps + 1)]
            for what in _each(counter.amounts(roofs)):
                if walk.goes_on():
                    walk.takes(what)
    return sum(walk.steps for walk in walks)


def _each(amounts: Amounts) -> Iterator[Bought]:
    packs = {name: amounts.lines[name].packs.tolist() for name in LINES}
    holds = {name: amounts.lines[name].holds.tolist() for name in LINES}
    refused: Truths = amounts.refused
    for place in range(len(refused)):
        yield Bought(
            packs={name: packs[name][place] for name in LINES},
            holds={name: holds[name][place] for name in LINES},
            refused=bool(refused[place]),
        )


def whole_steps(reach: float, step: float) -> int:
    """Count the whole steps within a reach.

    Args:
        reach: How far.
        step: How long a step is.

    Returns:
        Steps, forgiving float dust.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> whole_steps(3, 0.0625)
    48
    """
    return int(np.floor(reach / step + DUST))
