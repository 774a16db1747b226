"""Valley joints: joints that would fall too near to a valley, moved back from it.

A short piece at a valley has no place for its nails. The strip before it is cut shorter, and the
last strip of the course begins further back.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.layers.coursing.nail_room import ValleyLine
from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Stretch

#: Joints are tried this far apart until one clears those of the courses above and below.
STEP = 0.5


def moved_from_valleys(
    joints: Sequence[Inches],
    *,
    stretches: Sequence[Stretch],
    valleys: Sequence[ValleyLine],
    v: Inches,
    least: Inches,
    beside: Sequence[Inches],
    clearance: Inches,
    long: Inches,
) -> dict[Inches, Inches]:
    """Give the joints of a course that stand too near to a valley, and where they go instead.

    The joint next to a valley goes back until it stands ``least`` from its middle, and on by steps
    of 1/2 in, up to half a strip, until it clears the joints of both neighbouring courses, or where
    nothing does, to where it is farthest from them. It stays where it is where one strip would not
    reach into the valley from there.

    Args:
        joints: Where the pattern has the joints of the course, from the left.
        stretches: Where the course lies.
        valleys: The valleys that bound its plane.
        v: Height of its nail line.
        least: No joint nearer than this to the middle of a valley, along the nail line.
        beside: Joints of the courses below and above.
        clearance: Least distance to those.
        long: Length of a strip.

    Returns:
        For each joint that moves, its new place.

    Raises:
        Nothing.

    Source:
        The shingle makers' association's manual of 2006, as restated: no short piece at a valley.

    >>> from roofing_core.roof.slicing import Region
    >>> plane = Region([[(0, 0), (90, 0), (110, 20), (0, 20)]])
    >>> valley = ValleyLine(start=(90, 0), end=(110, 20), clear=6, edge=1)
    >>> moved_from_valleys([36, 87], stretches=plane.between(0, 12), valleys=[valley], v=6,
    ...                    least=12, beside=[83], clearance=4, long=51)  # 84 is 1 in off 83
    {87: 79.0}
    """
    found: dict[Inches, Inches] = {}
    for stretch in stretches:
        within = [joint for joint in joints if stretch.left < joint < stretch.right]
        for valley, way in _ends(stretch, valleys, v):
            if not within:
                continue
            joint = within[-1] if way < 0 else within[0]
            nearest = valley.middle(v) + way * least
            if way * (nearest - joint) <= 0 or joint in found:
                continue
            # Between two valleys one joint may have moved already, towards this one.
            places = [found.get(one, one) for one in within]
            low, high = _room(joint, places, stretch, way=way, long=long)
            tried = [nearest + way * STEP * k for k in range(int(long / 2 / STEP))]
            tried = [at for at in tried if low < at < high]
            if tried:
                found[joint] = _clearest(tried, beside, clearance)
    return found


def _clearest(tried: Sequence[float], beside: Sequence[float], clearance: float) -> float:
    """Give the first place that is clear of other joints, or the one farthest from them."""
    clear = {at: min((abs(at - joint) for joint in beside), default=clearance) for at in tried}
    enough = (at for at in tried if clear[at] >= clearance)
    return next(enough, max(tried, key=clear.__getitem__))


def _room(
    joint: float, within: Sequence[float], stretch: Stretch, *, way: int, long: float
) -> tuple[float, float]:
    """Give between what a joint may stand: one strip reaches into the valley, none is left out."""
    if way > 0:
        others = [at for at in within if at > joint]
        return joint, min([stretch.left + long, stretch.right, *others])
    others = [at for at in within if at < joint]
    return max([stretch.right - long, stretch.left, *others]), joint


def _ends(
    stretch: Stretch, valleys: Sequence[ValleyLine], v: float
) -> Iterator[tuple[ValleyLine, int]]:
    """Give the valleys that a course ends in, and which way leads away: 1 to the right."""
    by_edge = {valley.edge: valley for valley in valleys if valley.start[1] != valley.end[1]}
    for part in stretch.parts:
        if part.lower <= v < part.upper:
            for side, way in ((part.left, 1), (part.right, -1)):
                if side.edge in by_edge:
                    yield by_edge[side.edge], way
