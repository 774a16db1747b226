"""What happens to a contour at one height: stretches vanish, it parts in two, planes run together.

However many things happen at once, as over a square or a cross, they are settled one by one until
what is left has only stretches of some length, touches itself nowhere, and turns at every corner.
"""

from __future__ import annotations

from dataclasses import replace

from roofing_core.measures.units import Inches
from roofing_core.roof.contours import Contour, Corner, meeting_corner, turn
from roofing_core.roof.joints import Drawing


def settle(contour: Contour, height: Inches, drawing: Drawing) -> list[Contour]:
    """Settle all that happens to a contour at a height, and draw it.

    Args:
        contour: The contour, with stretches that may have no length and corners that may touch.
        height: The height that it has risen to.
        drawing: Where the lines are drawn.

    Returns:
        The contours that rise further; none where the roof has closed.

    Raises:
        Nothing: Every contour can be settled.

    Source:
        Geometry.

    >>> settle([], 0.0, Drawing(1e-9, 1e-9))
    []
    """
    settled: list[Contour] = []
    pending = [contour]
    while pending:
        rest = _without_vanished(pending.pop(), height, drawing)
        if len(rest) < 3:  # noqa: PLR2004 - two stretches enclose nothing
            _close(rest, height, drawing)
        elif (touching := meeting_corner(rest, drawing.dust)) is not None:
            pending += _parted(rest, *touching, height, drawing)
        else:
            settled.append(rest)
    return settled


def _without_vanished(contour: Contour, height: float, drawing: Drawing) -> list[Corner]:
    """Take out the stretches that have no length left; their two corners become one."""
    rest = list(contour)
    k = 0
    while k < len(rest):
        here, ahead = rest[k], rest[k + 1 - len(rest)]
        if max(abs(ahead.x - here.x), abs(ahead.y - here.y)) > drawing.dust or len(rest) == 1:
            k += 1
            continue
        node = drawing.node(here.x, here.y, height)
        drawing.corner(rest, k, node)
        drawing.corner(rest, k + 1 - len(rest), node)
        rest[k + 1 - len(rest)] = Corner(ahead.stretch, here.x, here.y, node)
        del rest[k]
    return rest


def _close(contour: Contour, height: float, drawing: Drawing) -> None:
    """Draw the level line in which the last two stretches of a contour meet."""
    if len(contour) == 2:  # noqa: PLR2004 - one alone is a point, drawn already
        nodes = [drawing.node(corner.x, corner.y, height) for corner in contour]
        for k, node in enumerate(nodes):
            drawing.corner(contour, k, node)
        drawing.line(contour[0].stretch, contour[1].stretch, nodes[1], nodes[0])


def _parted(
    contour: Contour, k: int, j: int, height: float, drawing: Drawing
) -> tuple[Contour, Contour]:
    """Part a contour where its corner k lies on its stretch j."""
    meeting = contour[k]
    node = drawing.node(meeting.x, meeting.y, height)
    drawing.corner(contour, k, node)
    turned = [*contour[k:], *contour[:k]]  # the corner first, the stretch at `cut` then
    cut = (j - k) % len(contour)
    first = replace(meeting, born=node)
    second = Corner(turned[cut].stretch, meeting.x, meeting.y, node)
    return [first, *turned[1 : cut + 1]], [second, *turned[cut + 1 :]]


def straightened(contour: Contour, height: Inches, drawing: Drawing) -> Contour:
    """Take out the corners at which a contour goes straight on, and draw what they leave.

    Two planes that have come to lie in the same one run together. Of two that only have this level
    line in common the lower goes on above both; the lowest of several comes first, so that none
    goes on only to end at the same height.

    Args:
        contour: The contour, settled, with the pitches that hold above the height.
        height: The height that it has risen to.
        drawing: Where the lines are drawn.

    Returns:
        The contour, which turns at every corner.

    Raises:
        Nothing: Every contour can be straightened.

    Source:
        Geometry; which plane goes on is a choice, made so that no wall is left standing.

    >>> straightened([], 0.0, Drawing(1e-9, 1e-9))
    []
    """
    rest = list(contour)
    while straight := [
        (max(rest[k - 1].stretch.speed, corner.stretch.speed), -k)
        for k, corner in enumerate(rest)
        if turn(rest[k - 1].stretch, corner.stretch) == "along"
    ]:
        k = -max(straight)[1]
        same = rest[k - 1].stretch.speed == rest[k].stretch.speed
        rest = (_run_together if same else _overtaken)(rest, k, height, drawing)
    return rest


def _run_together(contour: list[Corner], k: int, height: float, drawing: Drawing) -> list[Corner]:
    """Make one plane of two that have come to lie in the same one."""
    node = drawing.node(contour[k].x, contour[k].y, height)
    drawing.corner(contour, k, node)
    before, after = contour[k - 1].stretch, contour[k].stretch
    drawing.run_together(before.face, after.face)
    # Of two pitch breaks the lower holds for both; a gable beside an eave to come stays one.
    breaks = [stretch.later for stretch in (before, after) if stretch.later or not stretch.speed]
    together = replace(before, later=min(breaks, default=()))
    contour[k - 1] = replace(contour[k - 1], stretch=together)
    return contour[:k] + contour[k + 1 :]


def _overtaken(contour: list[Corner], k: int, height: float, drawing: Drawing) -> list[Corner]:
    """Let the lower of two planes of one level line go on above the steeper one."""
    before, after = contour[k - 1].stretch, contour[k].stretch
    gone = (k - 1) % len(contour) if before.speed < after.speed else k
    ends = [gone, (gone + 1) % len(contour)]
    nodes = [drawing.node(contour[end].x, contour[end].y, height) for end in ends]
    for end, node in zip(ends, nodes, strict=True):
        drawing.corner(contour, end, node)
    winner = before if gone == k else after
    if not drawing.overtake(winner.face, contour[gone].stretch.face, *nodes):
        here, there = nodes if gone == k else reversed(nodes)
        drawing.line(before, after, here, there)
    rest = list(contour)
    ahead = rest[ends[1]]
    if gone == k:
        rest[ends[1]] = replace(ahead, born=nodes[1])
    else:
        rest[ends[1]] = replace(ahead, x=rest[gone].x, y=rest[gone].y, born=nodes[0])
    del rest[gone]
    return rest
