"""Many: runs of too many kinds to go through all ways of parting them.

The bound is what reaches as far as all runs with as many laps saved as there are runs. What is
bought comes from setting tight groups aside, those that leave next to nothing over, and from all
runs as one group; often one of the two meets the bound.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from itertools import combinations_with_replacement

from roofing_core.layers.metal.shared.grouping import (
    MOST_PARTS,
    Cutting,
    Group,
    Kind,
    Parted,
    Parting,
    parts_to_try,
)
from roofing_core.layers.metal.shared.placing import Steps, StepsUsedUp

#: What is left once tight groups are set aside is gone through where it has no more parts.
_FEW_PARTS = 100_000

#: Tight groups of so many runs are looked for, of fewer where they would be too many.
_TIGHT = 3
_MOST_TIGHT = 20_000

#: Runs cheapest together are taken apart again, where that costs no more, by so many steps.
_STEPS_APART = 5_000


def bound_of_many(cutting: Cutting) -> int:
    """Give what any way of buying costs at least: each run but one saves a lap, at most.

    Args:
        cutting: What cuts groups of the runs.

    Returns:
        The cost.

    Raises:
        Nothing.

    Source:
        Counting: there are no more groups than runs.

    >>> from roofing_core.layers.metal.shared.covering import Covering, Offered
    >>> from roofing_core.layers.metal.shared.placing import Need, Steps
    >>> covering = Covering([Offered(120, 7)], lap=6, farthest=600)
    >>> bound_of_many(Cutting([Kind(Need(100, 12), 4)], covering, steps=Steps(9)))
    28
    """
    runs = sum(kind.many for kind in cutting.kinds)
    whole = tuple(kind.many for kind in cutting.kinds)
    return cutting.covering.least(cutting.far(whole) - (runs - 1) * cutting.covering.lap)


def parted_many(cutting: Cutting) -> Parted:
    """Part runs of many kinds into groups, as cheaply as is found.

    Args:
        cutting: What cuts groups of them.

    Returns:
        The groups, and what any way of buying costs at least.

    Raises:
        Nothing.

    Source:
        See the module.

    >>> from roofing_core.layers.metal.shared.covering import Covering, Offered
    >>> from roofing_core.layers.metal.shared.placing import Need, Steps
    >>> covering = Covering([Offered(120, 7)], lap=6, farthest=600)
    >>> parted_many(Cutting([Kind(Need(100, 12), 4)], covering, steps=Steps(9))).least
    28
    """
    whole = tuple(kind.many for kind in cutting.kinds)
    least = bound_of_many(cutting)
    together = [cutting.cheapest(whole)]
    if _cost(cutting, together) == least:
        return Parted(together, least)
    apart, left = _set_aside(cutting, whole)
    if any(left):
        apart += _rest(cutting, left)
    return Parted(min(together, apart, key=lambda groups: _cost(cutting, groups)), least)


def _cost(cutting: Cutting, groups: Sequence[Group]) -> int:
    return sum(cutting.covering.cost(group.bought) for group in groups)


def _set_aside(cutting: Cutting, whole: Sequence[int]) -> tuple[list[Group], tuple[int, ...]]:
    """Set the tightest groups aside until few enough runs are left to go through."""
    left, groups = [*whole], []
    tight = sorted(_tight(cutting, whole))
    for _, runs in tight:
        if parts_to_try(_kinds(cutting, left)) <= _FEW_PARTS:
            break
        counts = tuple(runs.count(k) for k in range(len(left)))
        if all(many <= there for many, there in zip(counts, left, strict=True)):
            group = _cut(cutting, counts)
            if group is not None:
                groups.append(group)
                left = [there - many for many, there in zip(counts, left, strict=True)]
    return groups, tuple(left)


def _tight(cutting: Cutting, whole: Sequence[int]) -> Iterator[tuple[float, tuple[int, ...]]]:
    """Give groups that leave less over than half a lap, so that they gain by being apart."""
    covering, lengths = cutting.covering, [kind.need.length for kind in cutting.kinds]
    many = 1
    for size in range(1, _TIGHT + 1):
        many = many * len(whole) // size
        if many > _MOST_TIGHT:
            return
        for runs in combinations_with_replacement(range(len(whole)), size):
            over = covering.over(sum(lengths[k] for k in runs) - covering.lap)
            if over < covering.lap / 2 and all(runs.count(k) <= whole[k] for k in runs):
                yield over, runs


def _cut(cutting: Cutting, counts: tuple[int, ...]) -> Group | None:
    try:
        return cutting.cut(counts, cutting.covering.least(cutting.far(counts)))
    except StepsUsedUp:
        return None


def _kinds(cutting: Cutting, left: Sequence[int]) -> list[Kind]:
    kinds = zip(cutting.kinds, left, strict=True)
    return [Kind(kind.need, many) for kind, many in kinds if many]


def _rest(cutting: Cutting, left: Sequence[int]) -> list[Group]:
    """Buy for what is left: going through all its parts, or as one group."""
    if parts_to_try(_kinds(cutting, left)) > _FEW_PARTS:
        return [cutting.cheapest(tuple(left))]
    kinds = [k for k, many in enumerate(left) if many]
    few = Cutting(_kinds(cutting, left), cutting.covering, steps=cutting.steps)
    groups = Parting(few).parted().groups
    return [group._replace(counts=_among(group.counts, kinds, len(left))) for group in groups]


def _among(counts: Sequence[int], kinds: Sequence[int], many: int) -> tuple[int, ...]:
    found = [0] * many
    for k, count in zip(kinds, counts, strict=True):
        found[k] = count
    return tuple(found)


def cheaply_parted(cutting: Cutting) -> Parted:
    """Part runs into groups; where one group meets the bound of all, no other is looked for.

    Args:
        cutting: What cuts groups of them.

    Returns:
        The groups, and what any way of buying costs at least.

    Raises:
        Nothing.

    Source:
        See `grouping`.

    >>> from roofing_core.layers.metal.shared.covering import Covering, Offered
    >>> from roofing_core.layers.metal.shared.placing import Need, Steps
    >>> covering = Covering([Offered(120, 7)], lap=6, farthest=600)
    >>> parted = cheaply_parted(Cutting([Kind(Need(60, 12), 4)], covering, steps=Steps(99)))
    >>> [group.bought for group in parted.groups], parted.least
    ([(1,), (1,)], 14)
    """
    parted = _parted(cutting)
    apart = Cutting(cutting.kinds, cutting.covering, steps=Steps(_STEPS_APART))
    return Parted([one for group in parted.groups for one in _loosened(apart, group)], parted.least)


def _parted(cutting: Cutting) -> Parted:
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


def _loosened(cutting: Cutting, group: Group) -> list[Group]:
    """Let runs go that cost no more by themselves: they take a piece less."""
    found = []
    for kind, many in enumerate(group.counts):
        for _ in range(many):
            apart = _let_go(cutting, group, kind) if sum(group.counts) > 1 else None
            if apart is None:
                break
            alone, group = apart
            found.append(alone)
    return [*found, group]


def _let_go(cutting: Cutting, group: Group, kind: int) -> tuple[Group, Group] | None:
    covering, cost = cutting.covering, cutting.covering.cost(group.bought)
    one = tuple(int(k == kind) for k in range(len(group.counts)))
    rest = tuple(many - its for many, its in zip(group.counts, one, strict=True))
    prices = [covering.least(cutting.far(counts)) for counts in (one, rest)]
    if sum(prices) > cost:
        return None
    try:
        both = cutting.cut(one, prices[0]), cutting.cut(rest, prices[1])
    except StepsUsedUp:
        return None
    return None if both[0] is None or both[1] is None else (both[0], both[1])
