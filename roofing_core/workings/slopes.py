"""Slopes: the slope factor of a pitch, which many formulas multiply a run by."""

from __future__ import annotations

from roofing_core.workings.expressions import Expression


def slope_factor(pitch: Expression) -> Expression:
    """Give the slope factor of a pitch.

    Args:
        pitch: The pitch, rise over run.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.workings.expressions import Constant, evaluated
    >>> evaluated(slope_factor(Constant(0.75)))
    1.25
    """
    return (1 + pitch.squared()).root()
