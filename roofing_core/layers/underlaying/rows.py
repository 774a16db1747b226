"""Rows of a sheet from a roll, up a plane: lower edge, upper edge, lap and trim of each.

One way of laying for one layer, two layers and ice barrier alike. Which rows a roof asks for is
`underlayment` and `ice_barrier`; how rows are cut from rolls is `rolls`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches

RowKind = Literal["ice_barrier", "starter_strip", "full", "top_strip"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """One row before it is cut into pieces.

    Attributes:
        kind: What the row is.
        lower: v of its lower edge, negative below the outer face of the eave metal.
        upper: v of its upper edge, trimmed where it passes the top edge of the plane.
        width: Width as it comes off the roll, or is ripped from it.
        head_lap: How far it lies over what is below it; 0 for the lowest.
        trim: Width cut off along the top edge of the plane.
    """

    kind: RowKind
    lower: Inches
    upper: Inches
    width: Inches
    head_lap: Inches
    trim: Inches


def _band(kind: RowKind, lower: float, *, top: float, width: float, lap: float) -> Band:
    upper = min(top, lower + width)
    return Band(
        kind=kind,
        lower=lower,
        upper=upper,
        width=width,
        head_lap=min(lap, upper - lower),
        trim=lower + width - upper,
    )


def lapped_rows(
    kind: RowKind,
    *,
    lower: Inches,
    cover: Inches,
    top: Inches,
    width: Inches,
    lap: Inches,
    first_lap: Inches = 0.0,
    edge: Inches | None = None,
) -> tuple[Band, ...]:
    """Place rows, each lapped over the one below, from a lower edge until a height is covered.

    The least n >= 1 with ``lower + n * (width - lap) + lap >= cover``; row k from 1 has its lower
    edge at ``lower + (k - 1) * (width - lap)``, but a lap below the top edge where rows run over it
    and that is past it.

    Args:
        kind: What the rows are.
        lower: v of the lower edge of the first.
        cover: v that the last has to reach, above ``lower``.
        top: v up to which rows lie, where they are trimmed; at least ``cover``.
        width: Width of each row.
        lap: Lap of each row over the one below, under ``width``.
        first_lap: Lap of the first over what is below it.
        edge: v of the top edge of the plane, where rows run over it; ``top`` unless given.

    Returns:
        The rows, lowest first.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Geometry.

    >>> len(lapped_rows("full", lower=-0.25, cover=205.75, top=205.75, width=36, lap=2))
    6
    """
    exposed = width - lap
    count = max(1, whole_pieces(max(0.0, (cover - lower - lap) / exposed)))
    bands: list[Band] = []
    while len(bands) < count and not (bands and bands[-1].upper >= top):
        at, over = lower + len(bands) * exposed, lap if bands else first_lap
        if edge is not None and bands and at >= edge:
            at = max(lower, edge - lap)
            over = bands[-1].upper - at
        bands.append(_band(kind, at, top=top, width=width, lap=over))
    return tuple(bands)


def half_lap(width: Inches) -> Inches:
    """Give the head lap that lays a roll in two layers: ``width / 2 + 1``.

    Args:
        width: Width of the roll.

    Returns:
        Half the width and 1 in; also the width of the starter strip.

    Raises:
        Refused: Nothing of its own; those who call it have checked the width.

    Source:
        19 in of 36 (IRC table R905.1.1(2); IBC 1507.1.1 exception 2); in words, half and 1 in
        (shingle makers' association, bulletin on lower slopes).

    >>> half_lap(36)
    19.0
    """
    return width / 2 + 1


def half_lapped_rows(
    *,
    lower: Inches,
    top: Inches,
    width: Inches,
    first_lap: Inches = 0.0,
    edge: Inches | None = None,
) -> tuple[Band, ...]:
    """Place the rows of two layers: a starter strip, full sheets by half laps, and a top strip.

    With ``lap = width / 2 + 1``: the strip, ``lap`` wide, and the first sheet start at ``lower``;
    sheets follow every ``width - lap`` until one reaches the top edge. There the strip doubles
    what that last sheet covers alone.

    Args:
        lower: v of the lower edge of the first.
        top: v up to which rows lie, where they are trimmed.
        width: Width of the roll; over 2.
        first_lap: Lap of the starter strip over what is below it.
        edge: v of the top edge of the plane, where rows run over it; ``top`` unless given.

    Returns:
        The rows in the order of laying.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        IRC table R905.1.1(2) for strip and sheets. The top strip is this library's own: see there.

    >>> [row.kind for row in half_lapped_rows(lower=-0.25, top=18.75, width=36)]
    ['starter_strip', 'full']
    """
    lap = half_lap(width)
    starter = _band("starter_strip", lower, top=top, width=lap, lap=first_lap)
    sheets = lapped_rows(
        "full", lower=lower, cover=top, top=top, width=width, lap=lap, first_lap=lap, edge=edge
    )
    # The last sheet reaches the top edge, but the last but one does not, so that up to width - lap
    # below the edge only one sheet lies. The table counts strip and sheets and says no more; two
    # layers everywhere take one more sheet by the same laps, ripped to what is left of the slope.
    next_lower = lower + len(sheets) * (width - lap)
    doubled = not whole_pieces(max(0.0, (top - lower - lap) / (width - lap)))
    if doubled or next_lower >= (top if edge is None else edge):
        return (starter, *sheets)
    left = top - next_lower
    return (starter, *sheets, _band("top_strip", next_lower, top=top, width=left, lap=left))
