"""What a deck takes beside its panels: nails, clips and the lengths of its joints.

Nails go into every support that a piece crosses, and along the rafter under a hip or a valley.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from roofing_core.layers.decking.panel_joints import Framing, Joints
from roofing_core.layers.decking.panel_rows import PanelledPlane
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Stretch
from roofing_core.roof.uprights import upright


@dataclass(frozen=True, slots=True, kw_only=True)
class NailSpacing:
    """How far apart the nails of a deck stand, at most.

    Attributes:
        edge: On the supports under a piece's ends.
        field: On the supports between them.
    """

    edge: Inches
    field: Inches


def end_joint_lengths(laid: PanelledPlane, *, framing: Framing) -> Iterator[Inches]:
    """Give the length of every joint up the slope.

    Args:
        laid: The plane with its rows.
        framing: The supports that joints lie on.

    Returns:
        One length per joint, row by row from the eave, left to right.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.layers.decking.panel_rows import Panels, panelled
    >>> from roofing_core.roof.outlines import rectangle
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> size = Panels(length=96, width=48)
    >>> shed = panelled(rectangle(168, slope_length=112), framing=frame, panels=size)
    >>> list(end_joint_lengths(shed, framing=frame))
    [48.0, 48.0, 48.0, 16.0]
    """
    for stretch, joints in _stretches(laid):
        for joint in joints:
            yield sum(high - low for low, high in upright(stretch, framing.at(joint)))


def _stretches(laid: PanelledPlane) -> Iterator[tuple[Stretch, Joints]]:
    for row in laid.rows:
        yield from zip(row.stretches, row.joints, strict=True)


def long_joints(laid: PanelledPlane) -> Iterator[tuple[Inches, Inches]]:
    """Give the joints along the eave, between one row and the next.

    Args:
        laid: The plane with its rows.

    Returns:
        The left and the right end of each, the lowest first.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.layers.decking.panel_rows import Panels, panelled
    >>> from roofing_core.roof.outlines import rectangle
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> size = Panels(length=96, width=48)
    >>> list(long_joints(panelled(rectangle(168, slope_length=90), framing=frame, panels=size)))
    [(0.0, 168.0)]
    """
    for row in laid.rows[1:]:
        yield from laid.region.at(row.lower)


def clip_count(laid: PanelledPlane, *, framing: Framing, per_span: int) -> int:
    """Count the clips on the joints along the eave: so many in each span that a joint crosses.

    Args:
        laid: The plane with its rows.
        framing: The supports.
        per_span: Clips in each span.

    Returns:
        How many.

    Raises:
        Nothing.

    Source:
        Counting; an inspectors' guide for where they go.

    >>> from roofing_core.layers.decking.panel_rows import Panels, panelled
    >>> from roofing_core.roof.outlines import rectangle
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> size = Panels(length=96, width=48)
    >>> shed = panelled(rectangle(168, slope_length=112), framing=frame, panels=size)
    >>> clip_count(shed, framing=frame, per_span=1)
    14
    """
    spans = sum(len(framing.supports(left, right)) + 1 for left, right in long_joints(laid))
    return spans * per_span


def nail_count(laid: PanelledPlane, *, framing: Framing, spacing: NailSpacing) -> int:
    """Count the nails of a plane.

    On each support that a piece crosses ``whole_pieces(height / spacing) + 1``: closer under both
    ends that meet at a joint, and along both ends of a row, on the slant at hips and valleys.

    Args:
        laid: The plane with its rows.
        framing: The supports.
        spacing: How far apart nails stand.

    Returns:
        How many.

    Raises:
        Nothing.

    Source:
        Nails 6 in on edges and 12 in between: IRC table R602.3(1).

    >>> from roofing_core.layers.decking.panel_rows import Panels, panelled
    >>> from roofing_core.roof.outlines import rectangle
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> size = Panels(length=96, width=48)
    >>> one = panelled(rectangle(96, slope_length=48), framing=frame, panels=size)
    >>> nail_count(one, framing=frame, spacing=NailSpacing(edge=6, field=12))  # 2 x 9 + 3 x 5
    33
    """
    return sum(
        _along_ends(stretch, spacing.edge) + _on_supports(stretch, joints, framing, spacing)
        for stretch, joints in _stretches(laid)
    )


def _along_ends(stretch: Stretch, edge: float) -> int:
    ends = (
        sum(hypot(part.upper_left - part.lower_left, part.upper - part.lower)
            for part in stretch.parts),
        sum(hypot(part.upper_right - part.lower_right, part.upper - part.lower)
            for part in stretch.parts),
    )  # fmt: skip
    return sum(whole_pieces(long / edge) + 1 for long in ends)


def _on_supports(stretch: Stretch, joints: Joints, framing: Framing, spacing: NailSpacing) -> int:
    count = 0
    for support in framing.supports(stretch.left, stretch.right):
        times, apart = (2, spacing.edge) if support in joints else (1, spacing.field)
        for low, high in upright(stretch, framing.at(support)):
            count += times * (whole_pieces((high - low) / apart) + 1)
    return count
