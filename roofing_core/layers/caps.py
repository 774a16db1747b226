"""Caps: the shingles bent over one hip or ridge, where each lies and is nailed, what to buy.

Which hips and ridges a roof has, and what lies under the caps, is left to others.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, get_args

from roofing_core.measures.counting import whole_packs, whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    negative,
    not_one_of,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: Three from a 12 x 36 in shingle of three tabs, exposed 5 in: Navy Builder manual (NAVEDTRA 14044)
#: ch. 3, and the trade's own count of what a bundle covers. 27 shingles in a bundle: the manual.
CAP_LENGTH, CAP_WIDTH, EXPOSURE = 12.0, 12.0, 5.0
FROM_SHINGLE, PER_PACK = 3, 27

#: Ontario Building Code 9.26.7: a nail on each side, 25 mm above the butt of the cap over it and 25
#: mm or less from the edge.
NAIL_ABOVE = 1.0
SIDE_DISTANCE = 1.0

NAILS_EACH = 2

#: More caps on one line are refused before any is laid.
MOST_CAPS = 100_000

LineKind = Literal["hip", "ridge"]
WindFrom = Literal["start", "end", "across", "unknown"]
LaidFrom = Literal["start", "end"]
Reason = Literal["uphill", "away_from_wind", "wind_across", "wind_unknown"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CapStock:
    """What caps are made of.

    Attributes:
        count: Caps needed.
        shingles: Shingles to cut; as many as caps where these are ready-made.
        packs: Whole bundles or packs of them.
        left_over: Caps that the packs give beyond those needed.
    """

    count: int
    shingles: int
    packs: int
    left_over: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Caps:
    """The caps on one hip or ridge.

    Places are measured along the line from the end that the caps are laid from.

    Attributes:
        line: What they lie on.
        line_length: Length of it.
        laid_from: The end of the line that they start from: a hip starts at its lower end, a ridge
            wherever the caller lets it start.
        reason: Why there: a hip is laid uphill, a ridge from the end away from the wind; where the
            wind blows across it or is unknown, either end will do, and its start is taken.
        count: How many caps.
        butts: Place of each cap's butt, in the order of laying.
        exposure: How much of each shows but the last two, which share what is left of the line.
        last_length: What shows of each of those, and what the last cap is cut to.
        half_width: How far the caps reach down each side of the line.
        nail_positions: Place of each cap's nails, one on each side of the line.
        nail_from_line: From the line to each nail.
        nails: Nails in all.
        exposed_nails: Nails of the last cap, which nothing covers: dab them.
        stock: What these caps alone are made of.
    """

    line: LineKind
    line_length: Inches
    laid_from: LaidFrom
    reason: Reason
    count: int
    butts: tuple[Inches, ...]
    exposure: Inches
    last_length: Inches
    half_width: Inches
    nail_positions: tuple[Inches, ...]
    nail_from_line: Inches
    nails: int
    exposed_nails: int
    stock: CapStock


def cap_stock(
    count: int, *, from_shingle: int = FROM_SHINGLE, per_pack: int = PER_PACK
) -> CapStock:
    """Count the shingles and packs that caps are made of.

    ``shingles = whole_pieces(count / from_shingle)``, ``packs = whole_packs(shingles, per_pack)``.

    Args:
        count: Caps needed, 0 or more; those of all hips and ridges together, where they share.
        from_shingle: Caps cut from one shingle; 1 where they are ready-made.
        per_pack: Shingles in a bundle, or ready-made caps in a pack.

    Returns:
        What to cut and to buy, and what is left over of it.

    Raises:
        Refused: There are fewer caps than none, or a shingle or a pack gives none; names each.

    Source:
        Arithmetic.

    >>> cap_stock(82).packs  # 27 shingles give 81
    2
    """
    refuse_if_any([negative("count", count, "count"), *_pack_faults(from_shingle, per_pack)])
    shingles = whole_pieces(count / from_shingle)
    packs = whole_packs(shingles, per_pack)
    return CapStock(
        count=count,
        shingles=shingles,
        packs=packs,
        left_over=packs * per_pack * from_shingle - count,
    )


def caps(
    line_length: Inches,
    *,
    line: LineKind,
    wind_from: WindFrom = "unknown",
    cap_length: Inches = CAP_LENGTH,
    cap_width: Inches = CAP_WIDTH,
    exposure: Inches = EXPOSURE,
    from_shingle: int = FROM_SHINGLE,
    per_pack: int = PER_PACK,
    nail_above: Inches = NAIL_ABOVE,
    side_distance: Inches = SIDE_DISTANCE,
    last_covered: bool = False,
) -> Caps:
    """Lay the caps of one hip or ridge.

    ``count`` is the least n with ``n * exposure >= line_length``; cap k from 0 has its butt at
    ``k * exposure``, the last one half-way from there to the end of the line. A hip is laid from
    its lower end up; a ridge from the end away from the wind, so that all laps open downwind. Each
    cap is nailed on both sides ``nail_above`` the butt of the next one, which covers the nails; the
    last one half-way between those nails and its end.

    Args:
        line_length: Length of the hip or ridge, over 0.
        line: What it is.
        wind_from: The end of a ridge that the prevailing wind comes from, if from either.
        cap_length: Of a cap, along the line; over 0.
        cap_width: Of a cap laid flat, across the line; over 0.
        exposure: How much of each cap shows; the nails above it still stand on the cap.
        from_shingle: Caps cut from one shingle; 1 where they are ready-made.
        per_pack: Shingles in a bundle, or ready-made caps in a pack.
        nail_above: From the butt of the next cap up to the nails, less than half of the exposure.
        side_distance: From the edge of a cap to its nail, less than half of the width.
        last_covered: Whether the caps of another line cover the last one, as those of a ridge do
            where a hip ends.

    Returns:
        The caps in the order of laying, their nails, and what they are made of.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, a word is none
            of those it can be, or nails would miss the cap or each other; names each.
        TooManyPieces: There would be more caps than the stated limit.

    Source:
        Geometry. Hips from the eaves, ridges from the end away from the prevailing wind: a Canadian
        trade association's roofing manual, 9.4.5. The nails: Ontario Building Code 9.26.7. The rest
        is common practice, no published source.

    >>> laid = caps(62, line="ridge", wind_from="start")  # 12 caps reach 5 ft, so it takes 13
    >>> laid.count, laid.laid_from, laid.butts[-2:], laid.stock.shingles
    (13, 'end', (55.0, 58.5), 5)
    """
    sizes = {
        "cap_length": cap_length,
        "cap_width": cap_width,
        "exposure": exposure,
        "nail_above": nail_above,
        "side_distance": side_distance,
    }
    refuse_if_any(
        [
            not_positive("line_length", line_length),
            not_one_of("line", line, get_args(LineKind)),
            not_one_of("wind_from", wind_from, get_args(WindFrom)),
            *_size_faults(sizes),
            *_pack_faults(from_shingle, per_pack),
        ]
    )
    count = _count(line_length, exposure)
    butts = tuple(_butts(line_length, exposure, count))
    nails = [butt + nail_above for butt in butts[1:]]
    laid_from, reason = _FROM["hip" if line == "hip" else wind_from]
    return Caps(
        line=line,
        line_length=line_length,
        laid_from=laid_from,
        reason=reason,
        count=count,
        butts=butts,
        exposure=exposure,
        last_length=line_length - butts[-1],
        half_width=cap_width / 2,
        nail_positions=(*nails, ((nails or [0.0])[-1] + line_length) / 2),
        nail_from_line=cap_width / 2 - side_distance,
        nails=NAILS_EACH * count,
        exposed_nails=0 if last_covered else NAILS_EACH,
        stock=cap_stock(count, from_shingle=from_shingle, per_pack=per_pack),
    )


_FROM: Mapping[WindFrom | Literal["hip"], tuple[LaidFrom, Reason]] = MappingProxyType(
    {
        "hip": ("start", "uphill"),
        "start": ("end", "away_from_wind"),
        "end": ("start", "away_from_wind"),
        "across": ("start", "wind_across"),
        "unknown": ("start", "wind_unknown"),
    }
)


def _pack_faults(from_shingle: int, per_pack: int) -> Iterator[Fault | None]:
    yield not_positive("from_shingle", from_shingle, "count")
    yield not_positive("per_pack", per_pack, "count")


def _count(line_length: float, exposure: float) -> int:
    """Count the caps, and refuse too many before any is laid."""
    if line_length > MOST_CAPS * exposure:
        wanted = f"at most {MOST_CAPS} caps on one line: a larger exposure"
        raise TooManyPieces(fault("exposure", length(exposure), wanted))
    return max(1, whole_pieces(line_length / exposure))


def _butts(line_length: float, exposure: float, count: int) -> Iterator[float]:
    """Give where each cap starts; the last two share what is left of the line."""
    for k in range(count - 1):
        yield k * exposure
    yield (line_length + (count - 2) * exposure) / 2 if count > 1 else 0.0


def _size_faults(sizes: dict[str, float]) -> list[Fault]:
    """Find the sizes that cannot be: each by itself, and if none, against each other."""
    found = [
        (negative if name == "side_distance" else not_positive)(name, value)
        for name, value in sizes.items()
    ]
    wrong = [one for one in found if one is not None]
    return wrong or list(_misfits(**sizes))


def _misfits(
    *,
    cap_length: float,
    cap_width: float,
    exposure: float,
    nail_above: float,
    side_distance: float,
) -> Iterator[Fault]:
    """Hold the nails against the cap that they hold, and against what covers them."""
    if cap_length < (least := exposure + nail_above):
        because = ": the nails stand above what shows"
        yield fault("cap_length", length(cap_length), "at least ", length(least), because)
    if side_distance >= (half := cap_width / 2):
        because = ": one nail on each side of the line"
        yield fault("side_distance", length(side_distance), "less than ", length(half), because)
    if nail_above >= exposure / 2:
        because = ", half of what shows: the last two caps may show no more"
        yield fault("nail_above", length(nail_above), "less than ", length(exposure / 2), because)
