"""Grouping: which runs share lengths, so that all of them together cost least.

A group of runs linked by the lengths that they share asks for lengths that reach as far as all of
it, and are lapped one time less than there are lengths. The least cost of that bounds what the
group costs; the least sum over all ways of parting the runs into groups bounds the whole. The
groups of the cheapest parting are cut; one that cannot be cut for its bound has its bound raised to
the next cost that there is, and the cheapest parting is looked for again. So the first one that can
be cut is the cheapest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from operator import add
from typing import NamedTuple

from roofing_core.layers.metal.shared.chaining import chained
from roofing_core.layers.metal.shared.covering import Bought, Covering
from roofing_core.layers.metal.shared.linking import Linking
from roofing_core.layers.metal.shared.placing import Need, Placed, Steps, StepsUsedUp

#: More parts of sets of runs than this are not gone through: 14 runs have 2,400,000.
MOST_PARTS = 2_500_000

#: One purchase for one group is tried by so many steps.
STEPS_EACH = 20_000


#: Looking at so many beginnings of purchases takes as long as a step.
_LOOKED_AT_IN_A_STEP = 4

#: Going through the cut plans of a purchase takes as long as so many steps, at least.
_A_PURCHASE = 50


class Kind(NamedTuple):
    """Runs that are alike."""

    need: Need
    many: int


class Group(NamedTuple):
    """Runs that share lengths, with their cut plan."""

    counts: tuple[int, ...]
    bought: Bought
    placed: Placed


class Parted(NamedTuple):
    """Runs parted into groups."""

    groups: list[Group]
    least: int
    """No way of buying costs less."""


def parts_to_try(kinds: Sequence[Kind]) -> int:
    """Count what there is to go through: half of all parts of all sets of the runs.

    Args:
        kinds: The runs.

    Returns:
        How many.

    Raises:
        Nothing.

    Source:
        Counting.

    >>> parts_to_try([Kind(Need(112, 12), 2), Kind(Need(168, 12), 1)])
    9
    """
    parts = 1
    for kind in kinds:
        parts *= (kind.many + 1) * (kind.many + 2) // 2
    return parts // 2


class Cutting:
    """Cuts groups of runs for what they cost at least."""

    def __init__(self, kinds: Sequence[Kind], covering: Covering, *, steps: Steps) -> None:
        self.kinds, self.covering, self.steps = kinds, covering, steps
        self.undecided, self.most_more = False, 0

    def far(self, counts: Sequence[int]) -> float:
        """Give how far beyond a lap the lengths of a group must reach."""
        runs = zip(counts, self.kinds, strict=True)
        return sum(count * kind.need.length for count, kind in runs) - self.covering.lap

    def cut(self, counts: tuple[int, ...], cost: int) -> Group | None:
        """Cut a group for exactly this cost, if that is known to be possible.

        Where it is not known to be impossible either, `undecided` says so from then on.
        """
        needs = [
            kind.need for count, kind in zip(counts, self.kinds, strict=True) for _ in range(count)
        ]
        for bought in self.covering.at(cost, self.far(counts)):
            self.steps.take()
            steps = Steps(min(STEPS_EACH, self.steps.left))
            allowed = steps.left
            try:
                lengths = self.covering.lengths(bought)
                placed = Linking(needs, lengths, lap=self.covering.lap, steps=steps).placed()
            except StepsUsedUp:
                self.undecided, placed = True, None
            self.steps.left -= allowed - max(0, steps.left)
            if placed is not None:
                return Group(counts, bought, placed)
        self.steps.left -= self.covering.looked_at // _LOOKED_AT_IN_A_STEP
        self.undecided = self.undecided or self.covering.ended
        return None

    def all(self, counts: tuple[int, ...], cost: int, more: int) -> Iterator[tuple[int, Group]]:
        """Give every cut plan of a group at exactly this cost, and how many pieces more it has.

        Up to so many more than lengths, and runs but one, ask for. Raises `StepsUsedUp`.
        """
        needs, covering = self._needs(counts), self.covering
        for bought in covering.at(cost, self.far(counts)):
            self.steps.take()
            lengths = covering.lengths(bought)
            linking = Linking(needs, lengths, lap=covering.lap, steps=self.steps)
            self.steps.left -= _A_PURCHASE
            self.most_more = max(self.most_more, linking.most_more())
            for each in range(more + 1):
                for placed in linking.trees(each):
                    self.steps.take()
                    yield each, Group(counts, bought, placed)

    def _needs(self, counts: Sequence[int]) -> list[Need]:
        runs = zip(counts, self.kinds, strict=True)
        return [kind.need for count, kind in runs for _ in range(count)]

    def cost(self, groups: Sequence[Group]) -> int:
        """Give what groups cost in all."""
        return sum(self.covering.cost(group.bought) for group in groups)

    def cheapest(self, counts: tuple[int, ...]) -> Group:
        """Cut a group for the least cost that is found; a last resort that proves nothing."""
        needs = self._needs(counts)
        for bought in self.covering.reaching(self.far(counts)):
            lengths = self.covering.lengths(bought)
            placed = chained(needs, lengths, lap=self.covering.lap)
            if placed is not None:
                return Group(counts, bought, placed)
        raise AssertionError("with lengths without end some order serves")

    def next_after(self, cost: int, counts: tuple[int, ...]) -> int:
        """Give the next cost at which a group could be cut."""
        found = self.covering.next_after(cost, self.far(counts))
        self.steps.left -= self.covering.looked_at // _LOOKED_AT_IN_A_STEP
        return found


class Parting:
    """Parts runs into groups, the bounds of which are raised as they prove too low.

    A set of runs is written as one number, with a digit for each kind: the whole less a part is
    the rest.
    """

    def __init__(self, cutting: Cutting) -> None:
        self.cutting, kinds = cutting, cutting.kinds
        self.worth = [1]
        for kind in kinds:
            self.worth.append(self.worth[-1] * (kind.many + 1))
        self.all = self.worth.pop() - 1
        self.bases = [kind.many + 1 for kind in kinds]
        self.groups: dict[int, Group] = {}
        self.alone = [0, *map(self._least_alone, range(1, self.all + 1))]
        self.least = [0] * (self.all + 1)
        for runs in range(1, self.all + 1):
            parts, rests = self.parts(runs)
            alone = map(self.alone.__getitem__, parts)
            self.least[runs] = min(map(add, alone, map(self.least.__getitem__, rests)))

    def counts(self, runs: int) -> tuple[int, ...]:
        """Give how many runs of each kind a set holds."""
        digits = zip(self.worth, self.bases, strict=True)
        return tuple(runs // worth % base for worth, base in digits)

    def _far(self, runs: int) -> float:
        return self.cutting.far(self.counts(runs))

    def _least_alone(self, runs: int) -> int:
        return self.cutting.covering.least(self._far(runs))

    def parts(self, runs: int) -> tuple[list[int], list[int]]:
        """Give the parts of a set that hold its first run, and what each leaves."""
        digits = zip(self.counts(runs), self.worth, strict=True)
        (_, worth), *others = [one for one in digits if one[0]]
        others = [(count, each) for count, each in others]
        parts = [0]
        for many, each in others:
            parts = [part + more for more in range(0, (many + 1) * each, each) for part in parts]
        count = self.counts(runs)[self.worth.index(worth)]
        whole = [part + first for first in range(0, (count + 1) * worth, worth) for part in parts]
        # What a part leaves stands as far from the end as the part from the beginning.
        return whole[len(parts) :], whole[-len(parts) - 1 :: -1]

    def parted(self) -> Parted:
        """Part all the runs for the least cost, as far as the steps allow."""
        least: int | None = None
        try:
            while True:
                most = self.least[self.all]
                found = self._within(self.all, most)
                if self.cutting.undecided and least is None:
                    least = most
                if found is not None:
                    return Parted(found, most if least is None else least)
        except StepsUsedUp:
            ways = (self._as_they_come(), self._each_alone())
            found = min(ways, key=self.cutting.cost)
            return Parted(found, self.least[self.all] if least is None else least)

    def _within(self, runs: int, most: int) -> list[Group] | None:
        """Part runs for at most so much, or raise the bound of their least cost beyond it."""
        if not runs:
            return []
        if self.least[runs] > most:
            return None
        beyond: list[int] = []
        for part, rest in sorted(zip(*self.parts(runs), strict=True), key=self._bound):
            while self._bound((part, rest)) <= most:
                if not self._settled(part):
                    continue
                others = self._within(rest, most - self.alone[part])
                if others is not None:
                    return [self.groups[part], *others]
            beyond.append(self._bound((part, rest)))
        self.least[runs] = max(self.least[runs], min(beyond))
        return None

    def _bound(self, parts: tuple[int, int]) -> int:
        return self.alone[parts[0]] + self.least[parts[1]]

    def _settled(self, part: int) -> bool:
        """Tell whether a group can be cut for its bound; else raise the bound."""
        if part in self.groups:
            return True
        group = self.cutting.cut(self.counts(part), self.alone[part])
        if group is not None:
            self.groups[part] = group
            return True
        self.alone[part] = self.cutting.next_after(self.alone[part], self.counts(part))
        return False

    def _each_alone(self) -> list[Group]:
        digits = zip(self.worth, self.cutting.kinds, strict=True)
        return [
            self.cutting.cheapest(self.counts(worth))
            for worth, kind in digits
            for _ in range(kind.many)
        ]

    def _as_they_come(self) -> list[Group]:
        """Part the runs by their bounds, and cut each group for the least cost that is found."""
        runs, groups = self.all, []
        while runs:
            part, rest = min(zip(*self.parts(runs), strict=True), key=self._bound)
            groups.append(self.groups.get(part) or self.cutting.cheapest(self.counts(part)))
            runs = rest
        return groups
