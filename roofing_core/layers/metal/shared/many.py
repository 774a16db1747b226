"""Many: runs of too many kinds to go through all ways of parting them.

What a group costs beyond the metal it covers, at the rate of the length that reaches farthest for
its cost, less the lap that it saves, is shared by its runs. No run's share is less than the least
in any small group, or than that of a lap shared by more: that bounds the whole. What is bought
comes from setting the groups of least shares aside, and from all runs as one group; often one of
the two meets the bound, and else they come near it.
"""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from itertools import combinations_with_replacement
from math import comb, floor
from typing import NamedTuple

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

#: Small groups are set aside until so few runs are left, which are gone through.
_FEW_LEFT = 9
_FEW_PARTS = 100_000

#: Groups of so many runs are looked at one by one, of fewer where they would be too many.
_SMALL = 5
_MOST_SMALL = 15_000

#: Small groups are set aside beginning with so many different ones.
_BEGINNINGS = 40

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
    small, least = _small(cutting, whole), bound_of_many(cutting)
    least = max(least, _bound_by_shares(cutting, small))
    together = [cutting.cheapest(whole)]
    if cutting.cost(together) == least:
        return Parted(together, least)
    apart, left = _set_aside(cutting, whole, [one for one in small.groups if one.gain < 0])
    if any(left):
        apart += _rest(cutting, left)
    alone = [_alone(cutting, k) for k, kind in enumerate(cutting.kinds) for _ in range(kind.many)]
    ways = (together, apart, alone)
    return Parted(min(ways, key=cutting.cost), least)


def _alone(cutting: Cutting, kind: int) -> Group:
    return cutting.cheapest(tuple(int(k == kind) for k in range(len(cutting.kinds))))


class _Share(NamedTuple):
    """A small group, by its kinds, and what it costs beyond what it covers, less a lap."""

    each: float
    gain: float
    runs: tuple[int, ...]


class _Small(NamedTuple):
    """All small groups of up to so many runs, those of the least shares first."""

    groups: list[_Share]
    size: int


def _small(cutting: Cutting, whole: Sequence[int]) -> _Small:
    covering, lengths = cutting.covering, [kind.need.length for kind in cutting.kinds]
    groups: list[_Share] = []
    for size in range(1, _SMALL + 1):
        if comb(len(whole) + size - 1, size) > _MOST_SMALL:
            return _Small(sorted(groups), size - 1)
        for runs in combinations_with_replacement(range(len(whole)), size):
            if size == 1 or all(runs.count(k) <= whole[k] for k in runs):
                far = sum([lengths[k] for k in runs]) - covering.lap
                gain = covering.least(far) - covering.rate * (far + covering.lap)
                groups.append(_Share(gain / size, gain, runs))
    return _Small(sorted(groups), _SMALL)


def _bound_by_shares(cutting: Cutting, small: _Small) -> int:
    """Give what the runs cost at least, each with the least share that it can have."""
    covering, kinds = cutting.covering, cutting.kinds
    shares = [-covering.rate * covering.lap / (small.size + 1)] * len(kinds)
    for group in small.groups:
        for k in group.runs:
            shares[k] = min(shares[k], group.each)
    each = (
        kind.many * (covering.rate * kind.need.length + share)
        for kind, share in zip(kinds, shares, strict=True)
    )
    runs = sum(kind.many for kind in kinds)
    whole = tuple(kind.many for kind in kinds)
    least_far = cutting.far(whole) - (runs - 1) * covering.lap
    return covering.next_after(floor(sum(each) * (1 - 1e-12)) - 1, least_far)


def _set_aside(
    cutting: Cutting, whole: Sequence[int], small: Sequence[_Share]
) -> tuple[list[Group], tuple[int, ...]]:
    """Set small groups aside until few enough runs are left to go through."""
    best: tuple[int, list[tuple[int, ...]]] | None = None
    for first in range(min(_BEGINNINGS, len(small))):
        chosen = _chosen(cutting, whole, [*small[first:], *small[:first]])
        if best is None or chosen[0] < best[0]:
            best = chosen
    groups, left = [], [*whole]
    for counts in best[1] if best else []:
        group = _cut(cutting, counts)
        if group is not None:
            groups.append(group)
            left = [there - many for many, there in zip(counts, left, strict=True)]
    return groups, tuple(left)


def _chosen(
    cutting: Cutting, whole: Sequence[int], small: Sequence[_Share]
) -> tuple[int, list[tuple[int, ...]]]:
    """Choose groups one after another, as they fit; give what all runs would cost at least."""
    left, found, cost = [*whole], [], 0
    for group in small:
        if sum(left) <= _FEW_LEFT:
            break
        counts = tuple(group.runs.count(k) for k in range(len(left)))
        if all(counts[k] <= left[k] for k in group.runs):
            found.append(counts)
            left = [there - many for many, there in zip(counts, left, strict=True)]
            cost += cutting.covering.least(cutting.far(counts))
    return cost + (cutting.covering.least(cutting.far(left)) if any(left) else 0), found


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
    if least == bound_of_many(cutting) and cutting.far(whole) <= cutting.covering.exact_to:
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
