"""Panel joints: on which supports the end joints of the rows of a deck lie.

Supports stand on one grid up the whole plane, and the joints of a row are one pattern on it, cut
off by what bounds the plane there. How panels are cut to fit is `panel_cuts`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from math import floor

from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches

#: The supports that the joints of one stretch of a row lie on, and of all stretches of all rows.
Joints = tuple[int, ...]
Layout = tuple[tuple[Joints, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """One stretch of a row of panels, from end to end.

    Attributes:
        left: u of its leftmost point.
        right: u of its rightmost point.
        left_square: Whether it ends square there, at a rake or a wall; else along a hip or valley.
        right_square: The same on the right.
    """

    left: Inches
    right: Inches
    left_square: bool = True
    right_square: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Framing:
    """The supports under a plane, and what panels on them have to keep.

    Attributes:
        support_spacing: From support to support, from the left end of the lowest eave on; one more
            stands under each rake, hip and valley.
        panel_length: The long way of a panel.
        joint_stagger: How many supports end joints of neighbouring rows stand apart, at least.
        least_spans: How many spans long a piece is, at least, but for one cut along a hip or a
            valley.
    """

    support_spacing: Inches
    panel_length: Inches
    joint_stagger: int
    least_spans: int

    @property
    def most_spans(self) -> int:
        """Whole spans that one panel crosses."""
        return int(self.panel_length / self.support_spacing + DUST)

    def supports(self, left: Inches, right: Inches) -> range:
        """Give the supports of the grid that stand between two points."""
        first = floor(left / self.support_spacing + DUST) + 1
        last = -floor(-right / self.support_spacing + DUST) - 1
        return range(first, last + 1)

    def at(self, support: int) -> Inches:
        """Give where a support of the grid stands."""
        return support * self.support_spacing

    def ends(self, reach: Reach, joints: Joints) -> tuple[Inches, ...]:
        """Give u of the ends of a stretch's pieces, left to right, both its own included."""
        return (reach.left, *map(self.at, joints), reach.right)

    def fits(self, reach: Reach) -> bool:
        """Tell whether one panel is as long as a stretch."""
        return reach.right - reach.left <= self.panel_length * (1 + DUST)

    def holds(self, reach: Reach, joints: Joints, *, least_spans: int) -> bool:
        """Tell whether every piece is as long as it must be, and no longer than a panel."""
        dust = DUST * self.panel_length
        least = least_spans * self.support_spacing - dust if joints else 0.0
        lengths = [right - left for left, right in pairwise(self.ends(reach, joints))]
        if not all(0 < long <= self.panel_length + dust for long in lengths):
            return False
        first, last = int(not reach.left_square), len(lengths) - int(not reach.right_square)
        return all(long >= least for long in lengths[first:last])


Rows = Sequence[Sequence[Reach]]


def layouts(framing: Framing, *, rows: Rows) -> Iterator[Layout]:
    """Give the ways to lay rows in turn by two patterns of joints, the fewest pieces first.

    A pattern is a first joint 1 or more spans from the start of the grid, then one every whole
    panel; a row is the part of it that lies on it, and none of it where one panel spans the row.
    Where no two patterns keep the stagger, the last joint of a row may also lie nearer to the one
    before it; where a plane with hips, valleys or jogs still keeps no piece as long as it must be,
    that is let go.

    Args:
        framing: The supports, and what panels on them have to keep.
        rows: The stretches of each row, from the eave up; a single row has nothing to be apart
            from.

    Returns:
        The joints of each stretch of each row, counted in supports from the start of the grid.

    Raises:
        Refused: Nothing of its own; it gives nothing where no layout keeps the rules.

    Source:
        Counting.

    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> next(layouts(frame, rows=[[Reach(left=0, right=168)]] * 3))
    (((4,),), ((2, 6),), ((4,),))
    """
    plain = len({tuple(row) for row in rows}) == 1 and len(rows[0]) == 1
    for least_spans in (framing.least_spans, *([] if plain else [0])):
        for most_back in (0, framing.most_spans - 1):
            kept = _kept(framing, rows, most_back, least_spans)
            first = next(kept, None)
            if first is not None:
                yield first
                yield from kept
                return


def _kept(framing: Framing, rows: Rows, most_back: int, least_spans: int) -> Iterator[Layout]:
    """Give the layouts of two patterns that keep the rules, the fewest pieces first."""
    patterns = _patterns(framing, rows, most_back)
    odd, even = (
        [one for one in patterns if _holds(framing, rows, one, start, least_spans)]
        for start in (0, 1)
    )
    if len(rows) == 1:
        yield from odd
        return
    pairs = [_in_turn(*pair) for pair in product(odd, even)]
    pairs.sort(key=_joints_in)
    for layout in pairs:
        if all(_apart(one, other, framing.joint_stagger) for one, other in pairwise(layout)):
            yield layout


def _patterns(framing: Framing, rows: Rows, most_back: int) -> list[Layout]:
    """Give every row by each pattern: the fewest joints first, then the longest first piece."""
    none = tuple(((),) * len(row) for row in rows)
    spans = range(1, framing.most_spans + 1)
    longest = max((reach for row in rows for reach in row), key=lambda one: one.right - one.left)
    whole = not framing.fits(longest)
    found = (
        tuple(
            tuple(
                () if whole and framing.fits(reach) else _joints(framing, reach, first, back)
                for reach in row
            )
            for row in rows
        )
        for first, back in product(spans, range(most_back + 1))
    )
    return sorted({none, *found}, key=lambda one: (_joints_in(one), _far_first(one)))


def _joints(framing: Framing, reach: Reach, first: int, back: int) -> Joints:
    """Give the joints of a stretch: one pattern from its left end, the last joint moved back."""
    start = framing.supports(reach.left, reach.right).start
    at = start + (first - start) % framing.most_spans
    if framing.at(at) >= reach.right:
        return ()
    joints = [at]
    while reach.right - framing.at(joints[-1]) > framing.panel_length * (1 + DUST):
        joints.append(joints[-1] + framing.most_spans)
    if reach.right_square:
        joints[-1] -= back
    return tuple(joints)


def _in_turn(odd: Layout, even: Layout) -> Layout:
    return tuple(even[k] if k % 2 else row for k, row in enumerate(odd))


def _holds(framing: Framing, rows: Rows, layout: Layout, start: int, least_spans: int) -> bool:
    return all(
        framing.holds(reach, joints, least_spans=least_spans)
        for row, laid in zip(rows[start::2], layout[start::2], strict=True)
        for reach, joints in zip(row, laid, strict=True)
    )


def _joints_in(layout: Layout) -> int:
    return sum(len(joints) for row in layout for joints in row)


def _far_first(layout: Layout) -> Joints:
    return tuple(-joint for row in layout for joints in row for joint in joints)


def _apart(one: Sequence[Joints], other: Sequence[Joints], stagger: int) -> bool:
    near = {k + d for joints in other for k in joints for d in range(1 - stagger, stagger)}
    return near.isdisjoint(k for joints in one for k in joints)
