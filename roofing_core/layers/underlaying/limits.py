"""Limits of a sheet's measurements: what a roll, its laps and its pieces can be, all told at once.

How rows lie is `rows`, how they are cut is `rolls`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import floor

from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, TooManyPieces, fault, negative, not_positive
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import RoofPlane
from roofing_core.roof.slopes import too_short

#: Each row leaves this much or more of the one below it showing.
LEAST_EXPOSED = 1.0
#: No piece that is laid is shorter than this, whatever is asked for.
SHORTEST = 1.0
#: More pieces than this are not laid out.
MOST_PIECES = 10_000


def sheet_faults(
    way: SheetWay,
    *,
    eave_length: Inches,
    slope_length: Inches,
    positive: Mapping[str, Inches] | None = None,
    not_negative: Mapping[str, Inches] | None = None,
) -> tuple[Fault | None, ...]:
    """Give the faults of a sheet's measurements.

    Args:
        way: How sheets lie.
        eave_length: Of the widest plane.
        slope_length: Of the highest plane.
        positive: More lengths over 0 by name.
        not_negative: More lengths of 0 or more by name.

    Returns:
        Faults, and None for each measurement that is right.

    Raises:
        Refused: Never; it gives the faults to be raised together with others.

    Source:
        Geometry, and the limits of this module.

    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=-4, past_metal=0.25)
    >>> [one.at for one in sheet_faults(way, eave_length=168, slope_length=112) if one]
    [('head_lap',)]
    """
    return _row_faults(
        positive={
            "eave_length": eave_length,
            "slope_length": slope_length,
            **(positive or {}),
            "roll_width": way.roll_width,
            "roll_length": way.roll_length,
            "least_piece": way.least_piece,
        },
        not_negative={
            "head_lap": way.head_lap,
            "end_lap": way.end_lap,
            "end_lap_stagger": way.end_lap_stagger,
            "past_metal": way.past_metal,
            "trim_allowance": way.trim_allowance,
            **(not_negative or {}),
            "over_edges": way.over_edges,
        },
    )


#: What is measured on the roof.
_MEASURED = frozenset({"eave_length", "slope_length"})


def _row_faults(
    *, positive: Mapping[str, Inches], not_negative: Mapping[str, Inches]
) -> tuple[Fault | None, ...]:
    """Give the faults of measurements each by itself, and of laps against their roll."""
    alone = (
        *(
            not_positive(name, value) or (too_short(name, value) if name in _MEASURED else None)
            for name, value in positive.items()
        ),
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
        _wide_lap(sizes),
    )


def _wide_lap(sizes: Mapping[str, float]) -> Fault | None:
    if not {"end_lap", "roll_length"} <= sizes.keys() or sizes["end_lap"] < sizes["roll_length"]:
        return None
    return fault("end_lap", length(sizes["end_lap"]), "less than the roll, ",
                 length(sizes["roll_length"]))  # fmt: skip


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
    less = (", ", length(LEAST_EXPOSED), " less than the roll's width")
    return fault(name, length(sizes[name]), "at most ", length(most), *less)


def _short_piece(sizes: Mapping[str, float]) -> Fault | None:
    """Refuse pieces of which nothing but the lap would be left once the rake is trimmed."""
    if not {"least_piece", "end_lap", "trim_allowance"} <= sizes.keys():
        return None
    least = sizes["end_lap"] + sizes["trim_allowance"] + SHORTEST
    if sizes["least_piece"] >= least:
        return None
    more = (", ", length(SHORTEST), " more than end lap and trim allowance together")
    return fault("least_piece", length(sizes["least_piece"]), length(least), " or more", *more)


def _short_roll(sizes: Mapping[str, float]) -> Fault | None:
    """Refuse a roll too short for an eave that it does not span.

    With four staggers between its ends, the next end lap can always step aside of one below and
    still leave two staggers to the next; and a row that is hardly longer than two least pieces
    has to leave two staggers for its only end lap. No row is then ever stuck.
    """
    names = ("eave_length", "trim_allowance", "roll_length", "end_lap", "end_lap_stagger")
    if not {*names, "least_piece"} <= sizes.keys():
        return None
    eave, trim, roll, lap, stagger = (sizes[name] for name in names)
    span = eave + 2 * trim
    for_two = 2 * sizes["least_piece"] - lap  # two least pieces end where one roll does
    least = max(4 * stagger + sizes["least_piece"] + lap, for_two)
    if span < max(least, for_two + 2 * stagger):
        least = span
    if roll >= least * (1 - DUST):
        return None
    wanted = ", so that end laps can stand as far apart as end_lap_stagger"
    return fault("roll_length", length(roll), length(least), " or more", wanted)


def widest(planes: Sequence[RoofPlane]) -> Inches:
    """Give the width of the widest plane, along the eave.

    Args:
        planes: The planes.

    Returns:
        The width; 0 where there is no plane.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.outlines import rectangle
    >>> widest([rectangle(168, slope_length=112)]), highest([rectangle(168, slope_length=112)])
    (168.0, 112.0)
    """
    return max((_extent([u for u, _ in plane.corners]) for plane in planes), default=0.0)


def highest(planes: Sequence[RoofPlane]) -> Inches:
    """Give the height of the highest plane, up the slope.

    Args:
        planes: The planes.

    Returns:
        The height; 0 where there is no plane.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> highest([])
    0.0
    """
    return max((_extent([v for _, v in plane.corners]) for plane in planes), default=0.0)


def _extent(values: Sequence[float]) -> float:
    return max(values) - min(values)


def pieces_needed(
    plane: RoofPlane, *, lower: Inches, upper: Inches, lap: Inches, way: SheetWay
) -> float:
    """Give about how many pieces a plane takes, to refuse too many before any is laid.

    Args:
        plane: The plane.
        lower: v of the lower edge of the first row.
        upper: How far up rows lie.
        lap: Of each row over the one below.
        way: How sheets lie.

    Returns:
        Rows times the pieces in the longest.

    Raises:
        Nothing: Those who call it have checked the measurements.

    Source:
        Arithmetic.

    >>> from roofing_core.roof.outlines import rectangle
    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0)
    >>> pieces_needed(rectangle(168, slope_length=96), lower=0, upper=96, lap=4, way=way)
    3.0
    """
    return (upper - lower) / (way.roll_width - lap) * way.pieces_in(widest([plane]))


def limit_sheets(pieces: float, *, planes: Sequence[RoofPlane] = ()) -> None:
    """Refuse planes that would take more pieces of a sheet than are laid out.

    Args:
        pieces: About how many pieces they would take.
        planes: The planes; of a single one the lengths are named.

    Returns:
        None.

    Raises:
        TooManyPieces: More than `MOST_PIECES`.

    Source:
        A limit of this library.

    >>> limit_sheets(MOST_PIECES)
    """
    if pieces <= MOST_PIECES:
        return
    if len(planes) != 1:
        wanted = f"at most {MOST_PIECES} pieces of one sheet: a smaller roof or larger rolls"
        raise TooManyPieces(fault("pieces", Amount(float(floor(pieces)), "count"), wanted))
    wanted = f"with the other length, at most {MOST_PIECES} pieces; this takes {pieces:.0f}"
    raise TooManyPieces(
        fault("eave_length", length(widest(planes)), wanted),
        fault("slope_length", length(highest(planes)), wanted),
    )
