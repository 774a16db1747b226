"""Uprights: where an upright line crosses a stretch of a plane, such as a rafter under it."""

from __future__ import annotations

from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Side, Stretch, Trapezoid

#: Crossings shorter than this, in inches, are float dust.
_SPECK = 1e-9

Span = tuple[Inches, Inches]


def upright(stretch: Stretch, u: Inches) -> tuple[Span, ...]:
    """Give the parts of an upright line that lie on a stretch.

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
        on_left = _inside(part.left, u, part, from_left=True)
        on_right = _inside(part.right, u, part, from_left=False)
        low, high = max(on_left[0], on_right[0]), min(on_left[1], on_right[1])
        if high - low > _SPECK:
            found.append((low, high))
    return tuple(_joined(sorted(found)))


def _inside(side: Side, u: float, part: Trapezoid, *, from_left: bool) -> Span:
    """Give between which heights of its slab an upright line is on the inner side of a side."""
    low, high = side.at(part.lower), side.at(part.upper)
    below, above = (low <= u, high <= u) if from_left else (low >= u, high >= u)
    if below and above:
        return part.lower, part.upper
    if not (below or above):
        return part.lower, part.lower
    at = part.lower + (part.upper - part.lower) * ((u - low) / (high - low))
    return (part.lower, at) if below else (at, part.upper)


def _joined(spans: list[Span]) -> list[Span]:
    """Join spans that follow each other."""
    joined: list[Span] = []
    for low, high in spans:
        if joined and low - joined[-1][1] <= _SPECK:
            joined[-1] = (joined[-1][0], high)
        else:
            joined.append((low, high))
    return joined
