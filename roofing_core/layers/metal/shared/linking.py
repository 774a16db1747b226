"""Linking: the cut plan of a group of runs from given lengths, or the proof that there is none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

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
        every = (self.trees(more) for more in range(self.most_more() + 1))
        return next(chain.from_iterable(every), None)

    def most_more(self) -> int:
        """Give how many pieces more than in a tree the lengths suffice for."""
        reach = sum(self.lengths) - (len(self.lengths) - 1) * self.lap
        return int((reach - sum(one.length for one in self.needs)) / self.lap)

    def trees(self, more: int) -> Iterator[Placed]:
        """Give every cut plan that links all runs to all lengths with so many pieces more.

        By what is cut from what: how long the pieces are is for the taker to slide. Raises
        `StepsUsedUp`.
        """
        if more <= self.most_more():
            for needs, lengths, aside in self._set_aside(self.needs, self.lengths, more, 0):
                cut = {piece.source for _, piece in aside}
                placing = Placing(needs, lengths, lap=self.lap, steps=self.steps, cut=cut)
                for pieces in placing.all():
                    for run, piece in aside:
                        pieces[run].append(piece)
                    yield pieces

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
            # Of whole lengths that are alike the first one stands for all.
            again = source > 0 and lengths[source] == lengths[source - 1] == self.lengths[source]
            if again or rest < min(one.least for one in needs):
                continue
            lacking = need.length - need.least + self.lap
            begun = Need(lacking, need.least, need.begun + 1, need.alone)
            for further in self._set_aside(
                [*needs[:run], begun, *needs[run + 1 :]],
                [*lengths[:source], rest, *lengths[source + 1 :]],
                more - 1,
                place,
            ):
                yield *further[:2], [(run, Piece(source, need.least)), *further[2]]
