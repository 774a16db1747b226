"""Members: runs as they were asked for, and the kinds that they are reckoned with."""

from __future__ import annotations

from collections.abc import Sequence

from roofing_core.layers.metal.shared.asked import RunAsked, least_of
from roofing_core.layers.metal.shared.covering import Covering
from roofing_core.layers.metal.shared.grouping import Group, Kind
from roofing_core.layers.metal.shared.listing import Source
from roofing_core.layers.metal.shared.placing import Need
from roofing_core.measures.units import Inches

#: Lengths this near to each other are one.
_ALIKE = 1e-6


class Members:
    """Runs by their kinds, the longest first; those that lie side by side are each a kind."""

    def __init__(self, runs: Sequence[RunAsked], *, apart: bool, **sizes: Inches) -> None:
        """Take runs together that are alike.

        Args:
            runs: The runs.
            apart: Whether it matters which runs lie side by side.
            sizes: ``lap``, ``least_piece`` and ``end_distance``.
        """
        self.runs = runs
        places = {run.name: k for k, run in enumerate(runs)}
        self.beside = tuple(
            (places[run.beside], k) for k, run in enumerate(runs) if run.beside and apart
        )
        alone = {k for pair in self.beside for k in pair}
        needs: dict[tuple[int, ...], list[tuple[Need, int]]] = {}
        for k, run in enumerate(runs):
            own = k if k in alone else -1
            need = Need(run.cut_length(), least_of(run, **sizes), 0, own)
            as_one = (round(need.length / _ALIKE), round(need.least / _ALIKE), own)
            needs.setdefault(as_one, []).append((need, k))
        found = [needs[as_one] for as_one in sorted(needs, reverse=True)]
        self.kinds = [Kind(max(need for need, _ in one), len(one)) for one in found]
        self.members = [[k for _, k in one] for one in found]

    def sources(self, groups: Sequence[Group], covering: Covering) -> list[list[Source]]:
        """Give the pieces of each run, the longest first, and which length each is cut from."""
        waiting = [[*members] for members in self.members]
        found: list[list[Source]] = [[] for _ in self.runs]
        first = 0
        for group in groups:
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


def cost_of(pieces: Sequence[Sequence[Source]], covering: Covering) -> int:
    """Give what the lengths cost that pieces are cut from.

    Args:
        pieces: The pieces of each run.
        covering: What lengths cost.

    Returns:
        The cost.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.layers.metal.shared.covering import Offered
    >>> covering = Covering([Offered(120, 7)], lap=6, farthest=600)
    >>> cost_of([[Source(0, 120, 70)], [Source(0, 120, 50)]], covering)
    7
    """
    costs = {one.length: one.cost for one in covering.offered}
    cut = {one.number: one.stock_length for its in pieces for one in its}
    return sum(costs[long] for long in cut.values())
