"""Uprights: where an upright line crosses a stretch of a plane, such as a rafter under it."""

from __future__ import annotations

from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Stretch, Trapezoid

#: Crossings shorter than this, in inches, are float dust.
_SPECK = 1e-9

Span = tuple[Inches, Inches]


def upright(stretch: Stretch, u: Inches) -> tuple[Span, ...]:
    """Give the parts of an upright line that lie within a stretch, not along its sides.

    Args:
        stretch: The stretch.
        u: Where the line is.

    Returns:
        The lower and the upper end of each part, from below.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.slicing import Region
    >>> end = Region([[(0, 0), (24, 0), (12, 12)]]).between(0, 10)[0]
    >>> upright(end, 18), upright(end, 24)
    (((0, 6.0),), ())
    """
    found: list[Span] = []
    for part in stretch.parts:
        # How far the line stands inside each side, at the lower and the upper edge of the part.
        low, high = _inside(part, u - part.lower_left, u - part.upper_left)
        under, over = _inside(part, part.lower_right - u, part.upper_right - u)
        low, high = max(low, under), min(high, over)
        if high - low > _SPECK:
            found.append((low, high))
    return tuple(found) if len(found) == 1 else tuple(_joined(sorted(found)))


def _inside(part: Trapezoid, below: float, above: float) -> Span:
    """Give between which heights of a part a line is inside a side, from how far it is there."""
    if max(below, above) <= _SPECK:  # also along an upright side
        return part.lower, part.lower
    if min(below, above) >= 0:
        return part.lower, part.upper
    at = part.lower + (part.upper - part.lower) * (below / (below - above))
    return (part.lower, at) if below > 0 else (at, part.upper)


def _joined(spans: list[Span]) -> list[Span]:
    """Join spans that follow each other."""
    joined: list[Span] = []
    for low, high in spans:
        if joined and low - joined[-1][1] <= _SPECK:
            joined[-1] = (joined[-1][0], high)
        else:
            joined.append((low, high))
    return joined
