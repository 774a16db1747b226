"""Fasteners of underlayment: lines along the eave, the laps and the field, each counted once.

How the sheets lie is `rows` and `rolls`. Self-adhering sheets take none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.faults import Fault, fault, not_positive
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

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
        kind: Along the eave edge, a head lap or an end lap, or between laps in the field.
        left: u of its left end.
        right: u of its right end; the same as the left for a line up an end lap.
        lower: v of its lower end.
        upper: v of its upper end; the same as the lower for a line along the eave.
        length: From end to end.
        count: Fasteners that it adds: those on a crossing line are counted there.
    """

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
    eave_length: Inches,
    top: Inches,
    lap_spacing: Inches = LAP_SPACING,
    field_spacing: Inches = FIELD_SPACING,
    field_lines: int = FIELD_LINES,
) -> tuple[FastenerLine, ...]:
    """Place the lines of fasteners on the rows of a plane.

    A line along each lower edge (rows that start together share it), ``field_lines`` equally
    spaced from each to the next or to the top edge, and one up each end lap as far as the next.
    Along a line ``whole_pieces(length / spacing) + 1`` fasteners; up an end lap 2 fewer, because
    both its ends stand on other lines. The top edge is held by what covers it.

    Args:
        rows: The rows in the order of laying.
        eave_length: Length of the plane along the eave.
        top: v of the top edge of the plane.
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

    >>> fastener_lines((), eave_length=168, top=112)
    ()
    """
    if not rows:
        return ()
    starts = sorted({row.lower for row in rows})
    lines = [
        _along(
            "head_lap" if at > starts[0] or rows[0].head_lap else "eave_edge",
            at,
            eave_length,
            lap_spacing,
        )
        for at in starts
    ]
    for lower, upper in pairwise([*starts, top]):
        step = (upper - lower) / (field_lines + 1)
        lines += [
            _along("field", lower + step * k, eave_length, field_spacing)
            for k in range(1, field_lines + 1)
        ]
    next_start = dict(pairwise([*starts, top]))
    lines.sort(key=lambda line: line.lower)
    return (
        *lines,
        *(
            _up(at, row.lower, next_start[row.lower], lap_spacing)
            for row in rows
            for at in row.end_laps
        ),
    )


def _along(
    kind: Literal["eave_edge", "head_lap", "field"], at: float, eave_length: float, spacing: float
) -> FastenerLine:
    return FastenerLine(
        kind=kind,
        left=0.0,
        right=eave_length,
        lower=at,
        upper=at,
        length=eave_length,
        count=whole_pieces(eave_length / spacing) + 1,
    )


def _up(at: float, lower: float, upper: float, spacing: float) -> FastenerLine:
    return FastenerLine(
        kind="end_lap",
        left=at,
        right=at,
        lower=lower,
        upper=upper,
        length=upper - lower,
        count=max(0, whole_pieces((upper - lower) / spacing) - 1),
    )
