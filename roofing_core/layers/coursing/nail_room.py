"""Nail room: where along a level line nails may go: on the deck, and clear of valleys."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, sqrt

from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Point, Region

Span = tuple[Inches, Inches]

#: Common practice, no published source: a nail that would stand nearer than this to a joint of the
#: course over it, where water runs in, goes this far from that joint instead.
NEAR_JOINT, OFF_JOINT = 0.5, 1.0

#: So far inside its room, or a quarter of it, a nail stands that has no better place there.
_INSIDE = 1 / 16

#: Likewise: no nail nearer than this to the upper edge of an opening, where shingles end over its
#: flashing and water runs in under them.
OVER_OPENING = 0.5

#: And so far above the edge that a flat valley cuts a piece along, the one over it too.
OVER_EDGE = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class ValleyLine:
    """The middle of a valley, of which nails keep clear.

    Attributes:
        start: One end of it (u, v) on the plane.
        end: Its other end.
        clear: No nail nearer to it than this.
        edge: Place of the plane's edge that it is.
    """

    start: Point
    end: Point
    clear: Inches
    edge: int = 0

    def middle(self, v: Inches) -> Inches:
        """Give where the middle of a sloping valley, or its line, lies at one height."""
        (au, av), (bu, bv) = self.start, self.end
        return au + (bu - au) * (v - av) / (bv - av)

    def zone(self, v: Inches) -> Span | None:
        """Give where no nail goes at one height: from left to right, or nowhere.

        What is nearer to a line than a distance is convex, so that a level line meets it once.
        """
        (au, av), (bu, bv) = self.start, self.end
        out = self.clear / hypot(bu - au, bv - av)
        over_u, over_v = (bv - av) * out, (au - bu) * out
        found = []
        for u, at in (self.start, self.end):
            if abs(v - at) <= self.clear:
                reach = sqrt(self.clear**2 - (v - at) ** 2)
                found += [u - reach, u + reach]
        for way in (1, -1):
            low, high = av + way * over_v, bv + way * over_v
            if low != high and min(low, high) <= v <= max(low, high):
                found.append(au + way * over_u + (bu - au) * (v - low) / (high - low))
        return (min(found), max(found)) if found else None


def nail_room(v: Inches, *, deck: Region, valleys: Sequence[ValleyLine]) -> list[Span]:
    """Give where nails may go at one height of a plane.

    Args:
        v: The height.
        deck: The deck that they go into.
        valleys: The valleys that bound the plane.

    Returns:
        From left to right of each place, from the left.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> deck = Region([[(0, 0), (90, 0), (90, 60), (45, 60)]])  # 3 across, 4 up, 5 along
    >>> nail_room(0, deck=deck, valleys=[ValleyLine(start=(45, 60), end=(0, 0), clear=6)])
    [(7.5, 90)]
    """
    zones = (valley.zone(v) for valley in valleys)
    return _without(deck.at(v), [zone for zone in zones if zone])


def _without(spans: Sequence[Span], zones: Sequence[Span]) -> list[Span]:
    """Give what is left of spans outside of zones."""
    left = list(spans)
    for low, high in zones:
        outside = ((float("-inf"), low), (high, float("inf")))
        left = [part for beside in outside for part in shared([beside], left)]
    return left


def shared(spans: Sequence[Span], others: Sequence[Span]) -> list[Span]:
    """Give what two rows of spans have in common.

    Args:
        spans: Some spans, from the left.
        others: Others.

    Returns:
        The spans that are in both.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> shared([(0, 5), (8, 9)], [(4, 8.5)])
    [(4, 5), (8, 8.5)]
    """
    return [(max(a, c), min(b, d)) for a, b in spans for c, d in others if max(a, c) < min(b, d)]


def off_joint(nail: Inches, joints: Sequence[Inches], *, room: Sequence[Span]) -> Inches:
    """Give where a nail goes that a joint of the course over it would lay bare: beside that joint.

    A nail nearer than `NEAR_JOINT` to a joint goes `OFF_JOINT` from it, to the side that it stands
    on already, or where there is no room, to the other; where there is none at all, to the end of
    its room that is farther from the joint.

    Args:
        nail: Where it would go.
        joints: The joints of the course over it, from the left.
        room: Where nails may go.

    Returns:
        Its place, which is the same for most.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> off_joint(35.875, [0.5, 36.0], room=[(0, 40)]), off_joint(0.25, [0.5, 36.0], room=[(0, 40)])
    (35.0, 1.5)
    >>> off_joint(0.25, [0.5], room=[(0, 1.25)])  # a scrap
    1.1875
    """
    k = bisect_right(joints, nail - NEAR_JOINT)
    if k == len(joints) or joints[k] >= nail + NEAR_JOINT:
        return nail
    aside = sorted([joints[k] - OFF_JOINT, joints[k] + OFF_JOINT], key=lambda u: abs(u - nail))
    ends = [
        u
        for left, right in room
        if left <= nail <= right
        for inset in [min(_INSIDE, (right - left) / 4)]
        for u in (left + inset, right - inset)
    ]
    farthest = max(ends, key=lambda u: abs(u - joints[k]), default=nail)
    return next((u for u in aside if any(left < u < right for left, right in room)), farthest)
