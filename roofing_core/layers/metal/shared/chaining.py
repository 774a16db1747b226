"""Chaining: lengths cut end to end, run after run, what is left of one going on to the next.

Nearly every cut plan that there is to find is found like this, at once. Where none is found,
nothing is proved.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.layers.metal.shared.placing import Bin, Need, Piece, Placed, shortened
from roofing_core.measures.units import Inches

#: Orders of runs and lengths that are tried.
ORDERS = 24


def chained(needs: Sequence[Need], lengths: Sequence[Inches], *, lap: Inches) -> Placed | None:
    """Cut lengths end to end, in one order after another, until one serves all runs.

    Args:
        needs: The runs.
        lengths: The lengths.
        lap: Of each piece over the next.

    Returns:
        The pieces of each run; nothing where none of the orders serves.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> chained([Need(150, 12), Need(70, 12)], [120, 120], lap=6)
    [[Piece(source=0, length=120.0), Piece(source=1, length=36)], [Piece(source=1, length=70)]]
    """
    for runs, sources in _orders(len(needs), lengths):
        placed = _chain(needs, [Bin(lengths[k], k) for k in sources], runs, lap)
        if placed is not None:
            return placed
    return None


def _orders(runs: int, lengths: Sequence[Inches]) -> Iterator[tuple[list[int], list[int]]]:
    """Give orders that differ from each other as if shuffled, the given one first."""
    for n in range(ORDERS):
        yield _stirred(runs, n // 2), _stirred(len(lengths), n)


def _stirred(many: int, turn: int) -> list[int]:
    if turn == 0:
        return [*range(many)]
    if turn == 1:
        return [*range(many - 1, -1, -1)]
    return sorted(range(many), key=lambda k: ((k + 1) * (turn * 7919 + 104_729)) % 10_007)


def _chain(
    needs: Sequence[Need], bins: Sequence[Bin], runs: Sequence[int], lap: float
) -> Placed | None:
    dust = 1e-9 * max(one.length for one in bins)
    waiting = [*bins][::-1]
    pieces: Placed = [[] for _ in needs]
    rest: Bin | None = None
    for k in runs:
        need = needs[k]
        if rest is not None and rest.length >= min(need.least, need.length) - dust:
            waiting.append(rest)
        taken = _reached(need, waiting, lap, dust)
        if taken is None:
            return None
        pieces[k], rest = _cut(need, taken, lap, dust)
    return pieces


def _reached(need: Need, waiting: list[Bin], lap: float, dust: float) -> list[Bin] | None:
    """Take lengths until they reach as far as a run is long."""
    taken: list[Bin] = []
    lacking = need.length
    while not taken or lacking > dust:
        if not waiting:
            return None
        taken.append(waiting.pop())
        lacking -= taken[-1].length - (lap if len(taken) > 1 else 0.0)
    return taken


def _cut(
    need: Need, taken: Sequence[Bin], lap: float, dust: float
) -> tuple[list[Piece], Bin | None]:
    """Cut a run from lengths, the last one as short as it may be; give what that leaves."""
    *whole, last = taken
    lacking = need.length - sum(one.length - lap for one in whole)
    piece = max(lacking, need.least) if whole else lacking
    pieces = [Piece(one.source, one.length) for one in whole]
    pieces = shortened(pieces, by=piece - lacking, least=need.least)
    rest = last.length - piece
    return [*pieces, Piece(last.source, piece)], Bin(rest, last.source) if rest > dust else None
