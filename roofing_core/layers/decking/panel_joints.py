"""Panel joints: on which supports the end joints of the rows of a deck lie.

How panels are cut to fit is `panel_cuts`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.units import Inches

Joints = tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Framing:
    """The supports under a plane, and what panels on them have to keep.

    Attributes:
        eave_length: Along the eave, rake to rake; a support stands under each rake.
        support_spacing: From support to support, from the left rake on.
        panel_length: The long way of a panel.
        joint_stagger: How many supports end joints of neighbouring rows stand apart, at least.
        least_spans: How many spans long a piece is, at least.
    """

    eave_length: Inches
    support_spacing: Inches
    panel_length: Inches
    joint_stagger: int
    least_spans: int

    @property
    def spans(self) -> int:
        """Spans from rake to rake; the last may be shorter than the others."""
        return whole_pieces(self.eave_length / self.support_spacing)

    @property
    def most_spans(self) -> int:
        """Whole spans that one panel crosses."""
        return int(self.panel_length / self.support_spacing + DUST)

    def ends(self, joints: Joints) -> tuple[Inches, ...]:
        """Give u of the ends of a row's pieces, left to right, both rakes included."""
        return (0.0, *(k * self.support_spacing for k in joints), self.eave_length)

    def supports(self, joints: Joints) -> tuple[int, ...]:
        """Give the supports under the ends of a row's pieces, from 0 under the left rake."""
        return (0, *joints, self.spans)

    def holds(self, joints: Joints) -> bool:
        """Tell whether every piece is as long as it must be, and no longer than a panel."""
        least = self.least_spans * self.support_spacing if joints else 0.0
        dust = DUST * self.panel_length
        return all(
            least - dust <= right - left <= self.panel_length + dust
            for left, right in pairwise(self.ends(joints))
        )


def _row(framing: Framing, first: int, back: int) -> Joints:
    """Give the joints of a row of whole panels after the first piece, the last joint moved back."""
    joints: list[int] = [first]
    rest = framing.panel_length * (1 + DUST)
    while framing.eave_length - joints[-1] * framing.support_spacing > rest:
        joints.append(joints[-1] + framing.most_spans)
    joints[-1] -= back
    return tuple(joints)


def _rows(framing: Framing, most_back: int) -> tuple[Joints, ...]:
    """Give rows that hold, the fewest joints first, then the longest first piece."""
    spans = range(framing.most_spans, 0, -1)
    found = (_row(framing, first, back) for first, back in product(spans, range(most_back + 1)))
    return tuple(sorted({(), *found}, key=lambda row: (len(row), *(-k for k in row))))


def _apart(one: Joints, other: Sequence[int], stagger: int) -> bool:
    near = {k + d for k in other for d in range(1 - stagger, stagger)}
    return near.isdisjoint(one)


def layouts(framing: Framing, *, rows: int) -> Iterator[tuple[Joints, Joints]]:
    """Give the ways to lay rows in turn by two sets of joints, the fewest pieces first.

    A row is a first piece of 1 or more spans, then whole panels, then what is left. Where no two
    such rows keep the stagger, the last joint of a row may also lie nearer to the one before it.

    Args:
        framing: The supports, and what panels on them have to keep.
        rows: How many rows there are; a single row has nothing to be apart from.

    Returns:
        Pairs of joints, counted in supports from the left rake: odd rows, even rows.

    Raises:
        Refused: Nothing of its own; it gives nothing where no layout keeps the rules.

    Source:
        Counting.

    >>> frame = Framing(
    ...     eave_length=168, support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1
    ... )
    >>> next(layouts(frame, rows=3))
    ((4,), (2, 6))
    """
    for most_back in (0, framing.most_spans - 1):
        single = [row for row in _rows(framing, most_back) if framing.holds(row)]
        pairs = [(row, row) for row in single] if rows == 1 else list(product(single, single))
        pairs.sort(key=lambda pair: (rows + 1) // 2 * len(pair[0]) + rows // 2 * len(pair[1]))
        kept = (pair for pair in pairs if rows == 1 or _apart(*pair, stagger=framing.joint_stagger))
        first = next(kept, None)
        if first is not None:
            yield first
            yield from kept
            return
