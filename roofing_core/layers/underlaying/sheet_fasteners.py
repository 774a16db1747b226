"""Fasteners of underlayment: lines along the eave, the laps and the field, each counted once.

How the sheets lie is `rows` and `rolls`. Self-adhering sheets take none.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.layers.underlaying.sheeting import SheetedPlane, lower_edges
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, fault, not_positive
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches
from roofing_core.roof.uprights import Span, upright

#: Common practice, no published source.
LAP_SPACING, FIELD_SPACING, FIELD_LINES = 12.0, 24.0, 1

#: In high wind: 6 in along laps and a 12 in grid (IBC table 1507.1.1(3), 2018); two lines (FEMA
#: P-499 fact sheet 7.2, from memory).
WINDY_LAP_SPACING, WINDY_FIELD_SPACING, WINDY_FIELD_LINES = 6.0, 12.0, 2

#: Closer than this, fasteners cut the sheet; more lines than this are not laid out.
LEAST_SPACING = 1.0
MOST_FIELD_LINES = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerLine:
    """One line of fasteners.

    Attributes:
        plane: The name of its plane.
        kind: Along the eave edge, a head lap or an end lap, or between laps in the field.
        left: u of its left end.
        right: u of its right end; the same as the left for a line up an end lap.
        lower: v of its lower end.
        upper: v of its upper end; the same as the lower for a line along the eave.
        length: From end to end.
        count: Fasteners that it adds: those on a crossing line are counted there.
    """

    plane: str
    kind: Literal["eave_edge", "head_lap", "end_lap", "field"]
    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    length: Inches
    count: int


def spacing_faults(
    *, lap_spacing: Inches, field_spacing: Inches, field_lines: int
) -> tuple[Fault | None, ...]:
    """Give the faults of a pattern of fasteners.

    Args:
        lap_spacing: Along eave and laps; 1 or more.
        field_spacing: Along the lines in the field; 1 or more.
        field_lines: Lines in the field of each row; 0 to 12.

    Returns:
        Faults, and None for each measurement that is right.

    Raises:
        Refused: Never; it gives the faults to be raised together with others.

    Source:
        Limits of this library.

    >>> any(spacing_faults(lap_spacing=6, field_spacing=12, field_lines=0))
    False
    """
    return (
        _close("lap_spacing", lap_spacing),
        _close("field_spacing", field_spacing),
        None
        if 0 <= field_lines <= MOST_FIELD_LINES
        else fault("field_lines", str(field_lines), f"0 to {MOST_FIELD_LINES} lines a row"),
    )


def _close(name: str, spacing: float) -> Fault | None:
    if 0 < spacing < LEAST_SPACING:
        return fault(name, length(spacing), length(LEAST_SPACING), " or more")
    return not_positive(name, spacing)


def fastener_lines(
    rows: Sequence[SheetRow],
    *,
    laid: SheetedPlane,
    starts: Sequence[Inches],
    over_barrier: Inches | None = None,
    lap_spacing: Inches = LAP_SPACING,
    field_spacing: Inches = FIELD_SPACING,
    field_lines: int = FIELD_LINES,
) -> tuple[FastenerLine, ...]:
    """Place the lines of fasteners on the rows of a plane, each as long as the plane is there.

    A line along each eave and pitch break that rows start at, or along the lap over an ice barrier;
    one along each later start of a row (rows that start together share it), ``field_lines``
    equally spaced from each to the next or to the top edge, and one up each end lap as far as the
    next. Along a line ``whole_pieces(length / spacing) + 1`` fasteners; up an end lap 2 fewer,
    because both its ends stand on other lines. The top edge, hips, ridges and valleys are held by
    what covers them.

    Args:
        rows: The rows in the order of laying.
        laid: The plane and what the sheet covers.
        starts: v at which rows start, as they would if the plane had no sides.
        over_barrier: How far the first row laps over an ice barrier; none where it lies on none.
        lap_spacing: Along eave and laps, at most.
        field_spacing: Along the lines in the field, at most.
        field_lines: Lines in the field between two laps.

    Returns:
        The lines, lowest first; end laps after the lines along the eave.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Common practice, no published source, for the usual pattern. High wind (140 mph and more):
        6 in along laps and a 12 in grid between, IBC table 1507.1.1(3), 2018.

    >>> from roofing_core.layers.underlaying.sheeting import SheetWay, sheeted
    >>> from roofing_core.roof.outlines import rectangle
    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> fastener_lines((), laid=sheeted(rectangle(168, slope_length=112), way=way), starts=())
    ()
    """
    if not rows:
        return ()
    heights = [*starts, laid.deck.highest]
    spans = list(pairwise(heights))
    lines = [
        *_first_lines(laid, starts[0], over_barrier, lap_spacing),
        *(line for at in starts[1:] for line in _along("head_lap", at, laid, lap_spacing)),
    ]
    for lower, upper in spans:
        step = (upper - lower) / (field_lines + 1)
        for k in range(1, field_lines + 1):
            lines += _along("field", lower + step * k, laid, field_spacing)
    lines.sort(key=lambda line: line.lower)
    for row in rows:
        upper = heights[bisect_right(heights, row.lower, hi=len(starts))]
        for at in row.end_laps:
            lines += _up(at, row.lower, upper, laid, lap_spacing)
    return tuple(lines)


_Along = Literal["eave_edge", "head_lap", "field"]


def _first_lines(
    laid: SheetedPlane, start: float, over_barrier: float | None, spacing: float
) -> Iterator[FastenerLine]:
    """Give the lines along what the first rows start at."""
    if over_barrier is not None:
        kind: _Along = "head_lap" if over_barrier else "eave_edge"
        yield from _along(kind, start, laid, spacing)
        return
    for edge in lower_edges(laid, "eave"):
        yield _line("eave_edge", laid, (edge.left, edge.right), edge.start, spacing)
    for edge in lower_edges(laid, "pitch_break"):
        yield _line("head_lap", laid, (edge.left, edge.right), edge.start, spacing)


def _along(kind: _Along, at: float, laid: SheetedPlane, spacing: float) -> Iterator[FastenerLine]:
    for left, right in laid.deck.at(at):
        if right - left > DUST:
            yield _line(kind, laid, (left, right), at, spacing)


def _line(kind: _Along, laid: SheetedPlane, ends: Span, at: float, spacing: float) -> FastenerLine:
    left, right = ends
    return FastenerLine(
        plane=laid.plane.name,
        kind=kind,
        left=left,
        right=right,
        lower=at,
        upper=at,
        length=right - left,
        count=whole_pieces((right - left) / spacing) + 1,
    )


def _up(
    at: float, lower: float, upper: float, laid: SheetedPlane, spacing: float
) -> Iterator[FastenerLine]:
    for stretch in laid.deck.between(max(lower, laid.deck.lowest), upper):
        for low, high in upright(stretch, at):
            bottom = lower if low <= laid.deck.lowest else low
            yield FastenerLine(
                plane=laid.plane.name,
                kind="end_lap",
                left=at,
                right=at,
                lower=bottom,
                upper=high,
                length=high - bottom,
                count=max(0, whole_pieces((high - bottom) / spacing) - 1),
            )
