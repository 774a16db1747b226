"""Ice barrier: its rows along the eaves, and the rolls they are cut from.

Asked for where the area has a history of ice damming; the underlayment then starts on it. How far
it reaches is `ice_reach`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from roofing_core.layers.underlaying import end_laps as _laps
from roofing_core.layers.underlaying.limits import (
    highest,
    limit_sheets,
    pieces_needed,
    sheet_faults,
    widest,
)
from roofing_core.layers.underlaying.rolls import RollUsed, SheetRow, cut_rows
from roofing_core.layers.underlaying.rows import Band, lapped_rows
from roofing_core.layers.underlaying.sheeting import (
    SheetedPlane,
    SheetWay,
    Strip,
    lower_edges,
    sheeted,
    strips,
)
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import fault, negative, refuse_if_any
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.outlines import EdgeKind, RoofPlane, from_below, rectangle, require_planes

#: A self-adhering roll as it is sold: 36 in x 66 ft 8 in (from memory).
ROLL_WIDTH, ROLL_LENGTH = 36.0, 800.0
#: 150 mm (5.9 in) in the details of the British Columbia roofing association.
END_LAP = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneBarrier:
    """The ice barrier on one plane.

    Attributes:
        plane: The name of the plane.
        reach: How far up the slope it has to reach; 0 where none is needed.
        upper: v up to which it covers the plane from its lowest edge; 0 where it does not.
    """

    plane: str
    reach: Inches
    upper: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class IceBarrier:
    """The ice barrier along the eaves of a plane or of a whole roof.

    Attributes:
        reach: How far up the slope it has to reach; of several planes, the farthest.
        upper: v up to which it covers a plane from its lowest edge, of several planes the highest;
            0 where none is laid.
        planes: One entry per plane.
        rows: Its rows in the order of laying.
        rolls: How many rolls are opened.
        left_over: Length left on the last roll.
        roll_plan: The rolls in the order in which they are opened, with their cuts.
        end_laps: How many end laps there are.
        area_cut: Area of the pieces as cut, laps and what is trimmed off included.
        area_laid: Area that stays on the roof once it is trimmed, laps included.
    """

    reach: Inches
    upper: Inches
    planes: tuple[PlaneBarrier, ...]
    rows: tuple[SheetRow, ...]
    rolls: int
    left_over: Inches
    roll_plan: tuple[RollUsed, ...]
    end_laps: int
    area_cut: SquareInches
    area_laid: SquareInches


def no_ice_barrier() -> IceBarrier:
    """Give the ice barrier of a roof that has none: no rows, no rolls.

    Returns:
        All zero.

    Raises:
        Refused: Never.

    Source:
        None needed.

    >>> no_ice_barrier().rolls
    0
    """
    return IceBarrier(
        reach=0.0,
        upper=0.0,
        planes=(),
        rows=(),
        rolls=0,
        left_over=0.0,
        roll_plan=(),
        end_laps=0,
        area_cut=0.0,
        area_laid=0.0,
    )


def ice_barrier(
    eave_length: Inches,
    *,
    slope_length: Inches,
    reach: Inches,
    roll_width: Inches = ROLL_WIDTH,
    roll_length: Inches = ROLL_LENGTH,
    head_lap: Inches = _laps.HEAD_LAP,
    end_lap: Inches = END_LAP,
    end_lap_stagger: Inches = _laps.END_LAP_STAGGER,
    past_metal: Inches = _laps.PAST_METAL,
    trim_allowance: Inches = _laps.TRIM_ALLOWANCE,
    least_piece: Inches = _laps.LEAST_PIECE,
) -> IceBarrier:
    """Lay the ice barrier of one plane in whole rows and cut it from real rolls.

    Row k from 1 starts at ``-past_metal + (k - 1) * (roll_width - head_lap)``, until ``reach``, or
    the top edge where that is lower, is covered.

    Args:
        eave_length: Along the eave, rake to rake.
        slope_length: Up the slope, outer face of the eave metal to top edge.
        reach: How far up the slope it has to reach, from `ice_barrier_reach`.
        roll_width: Width of the roll.
        roll_length: Length of the roll.
        head_lap: Of each row over the one below.
        end_lap: Where one roll goes on from another within a row.
        end_lap_stagger: Least distance between end laps of neighbouring rows.
        past_metal: How far the first row stands past the eave metal.
        trim_allowance: How much longer than the roof each row is cut, at each rake.
        least_piece: No piece of a lapped row is shorter; a shorter rest of a roll is set aside.

    Returns:
        The rows with their pieces, and the rolls with their cuts.

    Raises:
        Refused: A measurement is zero, negative or not finite, a lap is wider than the roll
            leaves, the roll is too short for the stagger; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        IRC R905.1.2 for where; the head lap is common practice, no published source; end laps of
        150 mm in the details of the British Columbia roofing association.

    >>> from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
    >>> reach = ice_barrier_reach(12, pitch=4 / 12)  # 37.95 in: more than one row of 36 in
    >>> len(ice_barrier(168, slope_length=112, reach=reach).rows)
    2
    """
    way = SheetWay(
        roll_width=roll_width,
        roll_length=roll_length,
        end_lap=end_lap,
        end_lap_stagger=end_lap_stagger,
        trim_allowance=trim_allowance,
        least_piece=least_piece,
        head_lap=head_lap,
        past_metal=past_metal,
    )
    faults = sheet_faults(
        way, eave_length=eave_length, slope_length=slope_length, positive={"reach": reach}
    )
    refuse_if_any(faults)
    plane = rectangle(eave_length, slope_length=slope_length)
    return _limited([plane], [reach], way)


def ice_barrier_on(
    planes: Sequence[RoofPlane], *, reaches: Sequence[Inches], way: SheetWay
) -> IceBarrier:
    """Lay the ice barrier of several planes and cut it from the same rolls.

    As `ice_barrier` on each plane, from each of its eaves, or from its pitch breaks where it has no
    eave; the next plane goes on with the roll in hand. Rows run over hips, ridges and valleys.

    Args:
        planes: The planes.
        reaches: How far up each plane it has to reach, from `ice_barrier_reaches`; 0 for none.
        way: The roll, and how rows lie.

    Returns:
        The rows of all planes with their pieces, and the rolls with their cuts.

    Raises:
        Refused: There is no plane, a measurement is negative or not finite, a lap is wider than the
            roll leaves, the roll is too short for the stagger; names each.
        TooManyPieces: More than 10,000 pieces.

    Source:
        As `ice_barrier`.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> hip = surfaces(Hip(length=400, width=240, pitch=4 / 12)).planes
    >>> way = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25)
    >>> laid = ice_barrier_on(hip, reaches=[25.3] * 4, way=way)
    >>> [(row.plane, row.pieces[0].roll) for row in laid.rows]
    [('front', 1), ('right end', 1), ('back', 1), ('left end', 2)]
    """
    require_planes(planes)
    refuse_if_any(
        [
            *(negative("reaches", reach) for reach in reaches),
            None
            if len(reaches) == len(planes)
            else fault("reaches", f"{len(reaches)} of them", f"{len(planes)}, one for each plane"),
            *sheet_faults(way, eave_length=widest(planes), slope_length=highest(planes)),
        ]
    )
    return _limited(planes, reaches, way)


def _limited(planes: Sequence[RoofPlane], reaches: Sequence[float], way: SheetWay) -> IceBarrier:
    """Lay the ice barrier, unless it takes too many pieces."""
    pieces = sum(_pieces(*one, way) for one in zip(planes, reaches, strict=True))
    limit_sheets(pieces, planes=planes)
    return _laid(planes, reaches, way)


def _pieces(plane: RoofPlane, reach: float, way: SheetWay) -> float:
    upper = min(reach, highest([plane]))
    return pieces_needed(plane, lower=-way.past_metal, upper=upper, lap=way.head_lap, way=way)


def _laid(planes: Sequence[RoofPlane], reaches: Sequence[float], way: SheetWay) -> IceBarrier:
    needed = {plane.name: reach for plane, reach in zip(planes, reaches, strict=True)}
    rows: list[Strip] = []
    uppers: dict[str, float] = {}
    for plane in from_below(planes):
        if needed[plane.name]:
            on_plane = sheeted(plane, way=way)
            runs = list(_runs(on_plane, needed[plane.name], way))
            from_lowest = runs[0][0].lower <= on_plane.lowest + DUST
            uppers[plane.name] = runs[0][-1].upper if from_lowest else 0.0
            rows += strips(on_plane, [band for run in runs for band in run], way=way)
    cut = cut_rows(rows, cutting=way)
    return IceBarrier(
        reach=max(reaches, default=0.0),
        upper=max(uppers.values(), default=0.0),
        planes=tuple(
            PlaneBarrier(plane=name, reach=reach, upper=uppers.get(name, 0.0))
            for name, reach in needed.items()
        ),
        rows=cut.rows,
        rolls=cut.rolls,
        left_over=cut.left_over,
        roll_plan=cut.roll_plan,
        end_laps=cut.end_laps,
        area_cut=cut.area_cut,
        area_laid=cut.area_laid,
    )


def _runs(laid: SheetedPlane, reach: float, way: SheetWay) -> Iterator[tuple[Band, ...]]:
    """Give the rows up a plane: one run, or one more from each eave that lies above the last."""
    kind: EdgeKind = "eave" if "eave" in laid.plane.edges else "pitch_break"
    first, *others = lower_edges(laid, kind)
    lap = way.head_lap if kind == "pitch_break" else 0.0
    start, cover = first.start, first.v + reach
    for edge in others:
        if edge.start > cover:
            yield _run(laid, start, cover, lap=lap, way=way)
            start = edge.start
        cover = edge.v + reach
    yield _run(laid, start, cover, lap=lap, way=way)


def _run(
    laid: SheetedPlane, start: float, cover: float, *, lap: float, way: SheetWay
) -> tuple[Band, ...]:
    top = laid.region.highest
    return lapped_rows(
        "ice_barrier",
        lower=start,
        cover=min(cover, top),
        top=top,
        width=way.roll_width,
        lap=way.head_lap,
        first_lap=lap,
        edge=laid.deck.highest,
    )
