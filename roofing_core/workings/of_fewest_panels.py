"""The working of the fewest panels that could hold the pieces of a deck.

Each piece counts as a share of a panel, such that no panel holds pieces that count more than 1.
"""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.measures.counting import DUST
from roofing_core.workings.at import At
from roofing_core.workings.expressions import Constant, Expression, Listed
from roofing_core.workings.of_points import agrees

#: The finest steps by which a length is weighed: as many as a panel spans supports.
_STEPS = 16


def least(at: At) -> Expression | None:
    """Give how few panels could hold the pieces: by their area, or by lengths that cannot share.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula of the bound that says most.

    Raises:
        Nothing.

    Source:
        Dual feasible functions (Fekete and Schepers, from memory): each piece counts as a share of
        a panel such that no panel holds more than 1.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, decking=Decking(lay=True)))
    >>> from roofing_core.workings.expressions import evaluated
    >>> evaluated(least(At(planned, ("deck", "least_panels"))))
    5
    """
    if not at.plan.deck.pieces:
        return Constant(0, "count", "none: the deck is not part of the job")
    areas = at.all("sum", "deck/pieces/*/area", "the areas of all pieces")
    by_area = (areas / (at.choice("panel/length") * at.choice("panel/width"))).up()
    tried: Iterator[Expression] = iter((by_area, *_by_lengths(at)))
    return next((one for one in tried if agrees(one, at.value())), None)


def _by_lengths(at: At) -> Iterator[Expression]:
    wide = at.plan.choices.panel.width
    sized: dict[int, list[int]] = {0: []}
    for n, one in enumerate(at.plan.deck.pieces):
        high = one.upper - one.lower
        if one.area >= (one.right - one.left) * high * (1 - DUST):
            lanes = 0 if high >= wide * (1 - DUST) else int(wide / high + DUST)
            sized.setdefault(lanes, []).append(n)
    shares = {_share(at, n) for found in sized.values() for n in found}
    kinds = [0.0, *sorted(one for one in shares if one <= 1 / 2), *range(-1, -_STEPS - 1, -1)]
    for lanes, ripped in sized.items():
        for kind in kinds:
            parts = [_weighed(at, n, kind) for n in sized[0]]
            parts += [_weighed(at, n, kind) / lanes for n in ripped] if lanes else []
            name = "what each piece counts of a panel, which holds no more than 1"
            yield Listed("sum", tuple(parts), name).up()


def _share(at: At, piece: int) -> float:
    one = at.plan.deck.pieces[piece]
    return (one.right - one.left) / at.plan.choices.panel.length


def _weighed(at: At, piece: int, kind: float) -> Expression:
    """Give what a piece counts: by a limit, or where that is negative by so many steps."""
    share = _share(at, piece)
    own = (at("deck/pieces/*/right", piece) - at("deck/pieces/*/left", piece)) / at.choice(
        "panel/length"
    )
    if kind < 0:
        parts = (1 - kind) * share
        if abs(parts - round(parts)) < DUST:
            return own
        return Constant(int(parts), "count", "whole steps in it") / int(-kind)
    if share > 1 - kind + DUST:
        return Constant(1, "count", "leaves too little for another")
    return own if share >= kind - DUST else Constant(0, "count", "too short to count")
