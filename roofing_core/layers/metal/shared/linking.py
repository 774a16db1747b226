"""Linking: the cut plan of a group of runs from given lengths, or the proof that there is none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.layers.metal.shared.chaining import chained
from roofing_core.layers.metal.shared.placing import Need, Piece, Placed, Placing, Steps
from roofing_core.measures.units import Inches

_Aside = list[tuple[int, Piece]]


class Linking:
    """A group of runs, and the lengths it is to be cut from, which reach as far as all of it.

    A cut plan that links all runs to all lengths is a tree of pieces and some more. With all that
    can be slid slid as far as it goes, those are as short as a piece may be (the corners of a
    transport problem); they are set aside first.
    """

    def __init__(
        self, needs: Sequence[Need], lengths: Sequence[Inches], *, lap: Inches, steps: Steps
    ) -> None:
        self.needs, self.lengths = [*needs], [*lengths]
        self.lap, self.steps = lap, steps

    def placed(self) -> Placed | None:
        """Cut the runs; give nothing where no cut plan links them all to the lengths.

        Raises `StepsUsedUp` where the steps do not suffice to know.
        """
        found = chained(self.needs, self.lengths, lap=self.lap)
        if found is not None or len(self.needs) == 1:
            return found
        reach = sum(self.lengths) - (len(self.lengths) - 1) * self.lap
        spare = reach - sum(one.length for one in self.needs)
        for more in range(int(spare / self.lap) + 1):
            for needs, lengths, aside in self._set_aside(self.needs, self.lengths, more, 0):
                placing = Placing(needs, lengths, lap=self.lap, steps=self.steps)
                pieces = placing.placed()
                if pieces is not None:
                    for run, piece in aside:
                        pieces[run].append(piece)
                    return pieces
        return None

    def _set_aside(
        self, needs: list[Need], lengths: list[float], more: int, first: int
    ) -> Iterator[tuple[list[Need], list[float], _Aside]]:
        """Give the runs with so many of their shortest pieces set aside, each from some length."""
        if not more:
            yield needs, lengths, []
            return
        for place in range(first, len(needs) * len(lengths)):
            run, source = divmod(place, len(lengths))
            need, rest = needs[run], lengths[source] - needs[run].least
            if rest < min(one.least for one in needs):
                continue
            lacking = need.length - need.least + self.lap
            begun = Need(lacking, need.least, need.begun + 1)
            for further in self._set_aside(
                [*needs[:run], begun, *needs[run + 1 :]],
                [*lengths[:source], rest, *lengths[source + 1 :]],
                more - 1,
                place,
            ):
                yield *further[:2], [(run, Piece(source, need.least)), *further[2]]
