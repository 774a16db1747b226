"""Rows of a sheet from a roll, up a plane: lower edge, upper edge, lap and trim of each.

One way of laying for one layer, two layers and ice barrier alike. Which rows a roof asks for is
`underlayment` and `ice_barrier`; how rows are cut from rolls is `rolls`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_positive,
)
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: Each row leaves this much or more of the one below it showing.
LEAST_EXPOSED = 1.0
#: No piece that is laid is shorter than this, whatever is asked for.
SHORTEST = 1.0
#: More pieces than this are not laid out.
MOST_PIECES = 10_000

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
) -> tuple[Band, ...]:
    """Place rows, each lapped over the one below, from a lower edge until a height is covered.

    The least n >= 1 with ``lower + n * (width - lap) + lap >= cover``; row k from 1 has its lower
    edge at ``lower + (k - 1) * (width - lap)``.

    Args:
        kind: What the rows are.
        lower: v of the lower edge of the first.
        cover: v that the last has to reach, above ``lower``.
        top: v of the top edge of the plane, where rows are trimmed; at least ``cover``.
        width: Width of each row.
        lap: Lap of each row over the one below, under ``width``.
        first_lap: Lap of the first over what is below it.

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
    return tuple(
        _band(kind, lower + k * exposed, top=top, width=width, lap=lap if k else first_lap)
        for k in range(count)
    )


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
    *, lower: Inches, top: Inches, width: Inches, first_lap: Inches = 0.0
) -> tuple[Band, ...]:
    """Place the rows of two layers: a starter strip, full sheets by half laps, and a top strip.

    With ``lap = width / 2 + 1``: the strip, ``lap`` wide, and the first sheet start at ``lower``;
    sheets follow every ``width - lap`` until one reaches the top edge. There the strip doubles
    what that last sheet covers alone.

    Args:
        lower: v of the lower edge of the first.
        top: v of the top edge of the plane.
        width: Width of the roll; over 2.
        first_lap: Lap of the starter strip over what is below it.

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
        "full", lower=lower, cover=top, top=top, width=width, lap=lap, first_lap=lap
    )
    # The last sheet reaches the top edge, but the last but one does not, so that up to width - lap
    # below the edge only one sheet lies. The table counts strip and sheets and says no more; two
    # layers everywhere take one more sheet by the same laps, ripped to what is left of the slope.
    next_lower = lower + len(sheets) * (width - lap)
    if not whole_pieces(max(0.0, (top - lower - lap) / (width - lap))):
        return (starter, *sheets)
    left = top - next_lower
    return (starter, *sheets, _band("top_strip", next_lower, top=top, width=left, lap=left))


def row_faults(
    *, positive: Mapping[str, Inches], not_negative: Mapping[str, Inches]
) -> tuple[Fault | None, ...]:
    """Give the faults of a sheet's measurements: each by itself, and laps against their roll.

    Args:
        positive: Lengths over 0 by name: ``roll_width``, ``roll_length``, ``least_piece``, others.
        not_negative: Lengths of 0 or more by name: ``head_lap``, ``end_lap``, ``past_metal``,
            ``end_lap_stagger``, ``trim_allowance``, others.

    Returns:
        Faults, and None for each measurement that is right.

    Raises:
        Refused: Never; it gives the faults to be raised together with others.

    Source:
        Geometry, and the limits of this module.

    >>> any(row_faults(positive={"eave_length": 168.0}, not_negative={"past_metal": 0.0}))
    False
    """
    alone = (
        *(not_positive(name, value) for name, value in positive.items()),
        *(negative(name, value) for name, value in not_negative.items()),
    )
    if any(alone):
        # What is wrong by itself is not held against others; the rest still is.
        wrong = {found.at[0] for found in alone if found}
        positive = {name: value for name, value in positive.items() if name not in wrong}
        not_negative = {name: value for name, value in not_negative.items() if name not in wrong}
    return (*alone, *_together({**positive, **not_negative}))


def _together(sizes: Mapping[str, float]) -> tuple[Fault | None, ...]:
    return (
        _narrow_roll(sizes),
        _over_width("head_lap", sizes),
        _over_width("past_metal", sizes),
        _short_roll(sizes),
        _short_piece(sizes),
    )


def _narrow_roll(sizes: Mapping[str, float]) -> Fault | None:
    width = sizes.get("roll_width", 2 * LEAST_EXPOSED)
    if width > LEAST_EXPOSED:
        return None
    return fault("roll_width", length(width), "more than ", length(LEAST_EXPOSED))


def _over_width(name: str, sizes: Mapping[str, float]) -> Fault | None:
    if name not in sizes or not sizes.get("roll_width", 0.0) > LEAST_EXPOSED:
        return None
    most = sizes["roll_width"] - LEAST_EXPOSED
    if sizes[name] <= most:
        return None
    wanted = ", 1 in less than the roll's width"
    return fault(name, length(sizes[name]), "at most ", length(most), wanted)


def _short_piece(sizes: Mapping[str, float]) -> Fault | None:
    """Refuse pieces of which nothing but the lap would be left once the rake is trimmed."""
    if not {"least_piece", "end_lap", "trim_allowance"} <= sizes.keys():
        return None
    least = sizes["end_lap"] + sizes["trim_allowance"] + SHORTEST
    if sizes["least_piece"] >= least:
        return None
    wanted = ", 1 in more than end lap and trim allowance together"
    return fault("least_piece", length(sizes["least_piece"]), length(least), " or more", wanted)


def _short_roll(sizes: Mapping[str, float]) -> Fault | None:
    """Refuse a roll too short for an eave that it does not span.

    With four staggers between its ends, the next end lap can always step aside of one below and
    still leave two staggers to the next: no row is then ever stuck.
    """
    names = ("eave_length", "trim_allowance", "roll_length", "end_lap", "end_lap_stagger")
    if not {*names, "least_piece"} <= sizes.keys():
        return None
    eave, trim, roll, lap, stagger = (sizes[name] for name in names)
    for_two = 2 * sizes["least_piece"] - lap  # two least pieces end where one roll does
    least = min(eave + 2 * trim, max(4 * stagger + sizes["least_piece"] + lap, for_two))
    if roll >= least * (1 - DUST):
        return None
    wanted = ", so that end laps can stand as far apart as end_lap_stagger"
    return fault("roll_length", length(roll), length(least), " or more", wanted)


def refuse_too_many(*, eave_length: Inches, slope_length: Inches, pieces: float) -> None:
    """Refuse a plane that would take more pieces than are laid out.

    Args:
        eave_length: Along the eave, to be named.
        slope_length: Up the slope, to be named.
        pieces: About how many pieces the plane would take.

    Returns:
        None.

    Raises:
        TooManyPieces: More than `MOST_PIECES`.

    Source:
        A limit of this library.

    >>> refuse_too_many(eave_length=168, slope_length=112, pieces=MOST_PIECES)
    """
    if pieces <= MOST_PIECES:
        return
    wanted = f"with the other length, at most {MOST_PIECES} pieces; this takes {pieces:.0f}"
    raise TooManyPieces(
        fault("eave_length", length(eave_length), wanted),
        fault("slope_length", length(slope_length), wanted),
    )
