"""Views: from inches on a roof to millimetres on paper, and the scale that has room."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from roofing_core.measures.units import Inches, Millimetres, Ratio
from roofing_core.sheets.drawings.lettering import Spot

#: Scales go up by these, times ten again and again: 1:1, 1:1.2, 1:1.5 and on.
_STEPS = (1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0)


@dataclass(frozen=True, slots=True)
class View:
    """How a plane lies on paper.

    Attributes:
        scale: How many times smaller than in reality.
        left: On paper, where u is 0.
        foot: On paper, where v is 0; v goes up.
    """

    scale: Ratio
    left: Millimetres
    foot: Millimetres

    def x(self, u: Inches) -> Millimetres:
        """Give how far from the left of the paper."""
        return self.left + u * 25.4 / self.scale

    def y(self, v: Inches) -> Millimetres:
        """Give how far down the paper."""
        return self.foot - v * 25.4 / self.scale

    def spot(self, point: Sequence[Inches]) -> Spot:
        """Give where a point comes to lie."""
        return self.x(point[0]), self.y(point[1])

    def spots(self, points: Iterable[Sequence[Inches]]) -> list[Spot]:
        """Give where points come to lie."""
        return [self.spot(point) for point in points]

    def long(self, inches: Inches) -> Millimetres:
        """Give how long something is on paper."""
        return inches * 25.4 / self.scale


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """The least rectangle round points.

    Attributes:
        left: The least u of them.
        right: The greatest u.
        lower: The least v.
        upper: The greatest v.
    """

    left: Inches
    right: Inches
    lower: Inches
    upper: Inches


def extent_of(points: Iterable[Sequence[Inches]]) -> Extent:
    """Give the least rectangle round points.

    Args:
        points: One or more, each (u, v) or more.

    Returns:
        Its sides.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> extent_of([(1, 2), (3, -4)]).lower
    -4
    """
    places = list(points)
    return Extent(
        left=min(point[0] for point in places),
        right=max(point[0] for point in places),
        lower=min(point[1] for point in places),
        upper=max(point[1] for point in places),
    )


def scale_for(wide: Inches, high: Inches, *, width: Millimetres, height: Millimetres) -> Ratio:
    """Give the largest scale of the series at which something has room.

    Args:
        wide: What has to have room, across.
        high: The same, up and down.
        width: The room for it, across.
        height: The same, up and down.

    Returns:
        How many times smaller it is drawn; 1 at the least, which is full size.

    Raises:
        Nothing.

    Source:
        The series is this library's own.

    >>> scale_for(168, 112, width=180, height=200)
    25.0
    """
    least = max(wide * 25.4 / width, high * 25.4 / height, 1.0)
    power = 1.0
    while True:
        for step in _STEPS:
            if step * power >= least:
                return step * power
        power *= 10


def view_of(
    extent: Extent, *, scale: Ratio, left: Millimetres, top: Millimetres, width: Millimetres
) -> View:
    """Set a rectangle of a plane in the middle of a strip of paper.

    Args:
        extent: The rectangle.
        scale: The scale.
        left: Of the strip.
        top: Of the strip; the rectangle's upper side comes to lie there.
        width: Of the strip.

    Returns:
        The view.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> view = view_of(extent_of([(0, 0), (10, 5)]), scale=1.0, left=0, top=0, width=254)
    >>> view.x(5), view.y(5)
    (127.0, 0.0)
    """
    spare = width - (extent.right - extent.left) * 25.4 / scale
    return View(
        scale=scale,
        left=left + spare / 2 - extent.left * 25.4 / scale,
        foot=top + extent.upper * 25.4 / scale,
    )
