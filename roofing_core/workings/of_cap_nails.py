"""The working of lines of cap nails: where each lies on its plane."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from roofing_core.layers.underlaying.sheet_fasteners import WINDY_FIELD_LINES
from roofing_core.workings.across import Across, corner_heights, deck_across
from roofing_core.workings.at import At
from roofing_core.workings.covered import sheet_bounds
from roofing_core.workings.expressions import Constant, Expression, Figure, evaluated
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_points import agrees


def _plane(at: At) -> int:
    return plane_index(at, at.thing().plane)


def _starts(at: At) -> list[Figure]:
    """Give where the rows of the plane begin, each height once, from below."""
    mine = at.thing().plane
    lowers = at.each("underlayment/rows/*/lower", where=lambda row: row.plane == mine)
    by_height = {round(one.value, 9): one for one in reversed(lowers)}
    return [by_height[height] for height in sorted(by_height)]


def _top(at: At) -> Figure:
    return max(corner_heights(at, _plane(at)), key=lambda one: one.value)


def _heights(at: At) -> Iterator[Expression]:
    """Give the heights that lines lie at: edges, rows, and between one row and the next."""
    bounds = sheet_bounds(at, _plane(at), "underlayment")
    yield from (one.place for one in bounds if one.lies == "level")
    starts = _starts(at)
    yield from starts
    lines: Expression = at.choice("underlaying/field_lines")
    if at.plan.choices.nailing.high_wind:
        least = Constant(WINDY_FIELD_LINES, "count", "lines at least in high wind")
        lines = lines.greatest(least)
    for low, high in zip(starts, [*starts[1:], _top(at)], strict=True):
        for k in range(1, int(evaluated(lines)) + 1):
            yield low + (high - low) * k / (lines + 1)


def _is_up(at: At) -> bool:
    return bool(at.thing().kind == "end_lap")


def _across(at: At) -> Across:
    return deck_across(at, _plane(at), heights=(*_starts(at), _top(at)))


def lower(at: At) -> Expression | None:
    """Give the lower end of a line.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula: where an eave or a row begins, as far up between two rows, or of an end lap
        where its row or the plane begins.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(lower(At(shed, ("underlayment", "fastener_lines", 0, "lower"))))
    -0.25
    """
    if _is_up(at):
        return _across(at).height(at.near("left").value, at.value(), at.near("left"))
    return next((one for one in _heights(at) if agrees(one, at.value())), None)


def upper(at: At) -> Expression | None:
    """Give the upper end of a line.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula: its lower end, or of an end lap where the next row or the plane's edge is.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(upper(At(shed, ("underlayment", "fastener_lines", 0, "upper"))))
    -0.25
    """
    if _is_up(at):
        return _across(at).height(at.near("left").value, at.value(), at.near("left"))
    return at.near("lower")


def end(side: str) -> Any:
    """Make the working of the left or the right end of a line.

    Args:
        side: Which.

    Returns:
        What makes the formula: a corner of the plane, where its edge is at the line's height, or
        where a row goes on from one roll to the next.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> callable(end("left"))
    True
    """

    def make(at: At) -> Expression | None:
        value, k = at.value(), _plane(at)
        if _is_up(at):
            return at.near("left") if side == "right" else _end_lap(at)
        found = _across(at).side(value, at.near("lower").value, at.near("lower"))
        corners = range(len(at.plan.planes[k].corners))
        tried = (at("planes/*/corners/*/*", k, n, 0) for n in corners)
        return found or next((one for one in tried if agrees(one, value)), None)

    return make


def _end_lap(at: At) -> Expression | None:
    laps = at.each("underlayment/rows/*/end_laps/*")
    mine = at.thing().plane
    rows = at.plan.underlayment.rows
    tried = (one for one in laps if rows[int(one.path[2])].plane == mine)
    return next((one for one in tried if one.value == at.value()), None)
