"""Underlayment as it lies: rows, laps and fasteners of each plane, cut from the rolls of all.

What is asked and refused is `underlayment`; how rows lie is `layering` and `sheeting`, how they are
cut is `rolls`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum

from roofing_core.layers.underlaying import sheet_fasteners as _fasteners
from roofing_core.layers.underlaying.layering import head_lap_of, rows_up, underlayment_layers
from roofing_core.layers.underlaying.rolls import RollUsed, SheetRow, cut_rows
from roofing_core.layers.underlaying.rows import Band
from roofing_core.layers.underlaying.sheet_fasteners import FastenerLine, fastener_lines
from roofing_core.layers.underlaying.sheeting import (
    SheetedPlane,
    SheetWay,
    Strip,
    sheeted,
    strips,
)
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.outlines import RoofPlane, from_below

#: Ontario Building Code 9.26.6 asks 100 mm or more; 4 in is 101.6 mm.
OVER_ICE_BARRIER = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneLaps:
    """How the rows of one plane lap.

    Attributes:
        plane: The name of the plane.
        layers: How many layers lie over every point above an ice barrier, by the pitch: 1 or 2.
        head_lap: How far each row lies over the one below.
        exposure: How much of each row shows below the next.
    """

    plane: str
    layers: int
    head_lap: Inches
    exposure: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Underlayment:
    """The underlayment of a plane or of a whole roof.

    Attributes:
        layers: How many layers lie over every point above an ice barrier, by the pitch: 1 or 2; of
            several planes, the most.
        head_lap: How far each row lies over the one below, where there are most layers.
        exposure: How much of each row shows below the next, where there are most layers.
        planes: The same of each plane.
        rows: The rows in the order of laying; none on a plane that an ice barrier
            covers.
        rolls: How many rolls are opened.
        left_over: Length left on the last roll.
        roll_plan: The rolls in the order in which they are opened, with their cuts.
        end_laps: How many end laps there are.
        area_cut: Area of the pieces as cut, laps and what is trimmed off included.
        area_laid: Area that stays on the roof once it is trimmed, laps included.
        eave_edge_length: Length of fastened eave edge.
        head_lap_length: Length of fastened head laps.
        end_lap_length: Length of fastened end laps.
        field_length: Length of the fastened lines in the field.
        fastener_lines: The lines of fasteners, plane by plane, lowest first, end laps last.
        fasteners: How many fasteners; where two lines meet, once.
    """

    layers: int
    head_lap: Inches
    exposure: Inches
    planes: tuple[PlaneLaps, ...]
    rows: tuple[SheetRow, ...]
    rolls: int
    left_over: Inches
    roll_plan: tuple[RollUsed, ...]
    end_laps: int
    area_cut: SquareInches
    area_laid: SquareInches
    eave_edge_length: Inches
    head_lap_length: Inches
    end_lap_length: Inches
    field_length: Inches
    fastener_lines: tuple[FastenerLine, ...]
    fasteners: int


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlaymentWay(SheetWay):
    """The roll, how rows are cut from it and lie on a plane, and what fastens them.

    Attributes:
        over_ice_barrier: How far the first row laps over an ice barrier.
        lap_spacing: Between fasteners along eave and laps, at most.
        field_spacing: Between fasteners along the lines in the field, at most.
        field_lines: Lines of fasteners in the field, between one lap and the next.
    """

    over_ice_barrier: Inches = OVER_ICE_BARRIER
    lap_spacing: Inches = _fasteners.LAP_SPACING
    field_spacing: Inches = _fasteners.FIELD_SPACING
    field_lines: int = _fasteners.FIELD_LINES


def first_start(lowest: Inches, *, ice_barrier_top: Inches, way: UnderlaymentWay) -> Inches:
    """Give v of the lower edge of the first row: past the eave metal, or on an ice barrier.

    Args:
        lowest: v from which a sheet covers the plane.
        ice_barrier_top: v of the upper edge of an ice barrier below; 0 where there is none.
        way: How rows lie.

    Returns:
        Where the first row starts.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> felt = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> first_start(-0.25, ice_barrier_top=35.75, way=felt)
    31.75
    """
    return ice_barrier_top - way.over_ice_barrier if ice_barrier_top else lowest


@dataclass(frozen=True, slots=True)
class _OnPlane:
    """The rows of one plane before they are cut."""

    laid: SheetedPlane
    bands: tuple[Band, ...]
    over_barrier: float | None

    def strips(self, way: SheetWay) -> tuple[Strip, ...]:
        layers = underlayment_layers(self.laid.plane.pitch)
        return strips(self.laid, self.bands, way=way, layers=layers)


def _on_plane(plane: RoofPlane, top: float, way: UnderlaymentWay) -> _OnPlane:
    laid = sheeted(plane, way=way)
    lap = way.over_ice_barrier if top else None
    if top >= laid.deck.highest:
        return _OnPlane(laid, (), lap)
    lower = first_start(laid.lowest, ice_barrier_top=top, way=way)
    first_lap = (way.head_lap if plane.edges[0] == "pitch_break" else 0.0) if lap is None else lap
    return _OnPlane(laid, rows_up(laid, way=way, lower=lower, first_lap=first_lap), lap)


def lay_underlayment(
    planes: Sequence[RoofPlane], *, way: UnderlaymentWay, ice_barrier_tops: Sequence[Inches]
) -> Underlayment:
    """Lay the underlayment of planes and cut it from the same rolls, plane after plane.

    Args:
        planes: The planes, one or more.
        way: The roll, and how rows lie and are fastened.
        ice_barrier_tops: For each plane v of the upper edge of an ice barrier below; 0 for none.

    Returns:
        The rows with their pieces, the rolls with their cuts, laps, areas and fasteners.

    Raises:
        Refused: End laps of rows side by side leave no place for one above them.

    Source:
        Geometry and counting; those who call it have checked the measurements.

    >>> from roofing_core.roof.outlines import rectangle
    >>> felt = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> shed = rectangle(168, slope_length=112, pitch=4 / 12)
    >>> lay_underlayment([shed], way=felt, ice_barrier_tops=[0]).left_over
    1040.0
    """
    tops = {plane.name: top for plane, top in zip(planes, ice_barrier_tops, strict=True)}
    laid = [_on_plane(plane, tops[plane.name], way) for plane in from_below(planes)]
    cut = cut_rows([strip for one in laid for strip in one.strips(way)], cutting=way)
    lines = [line for one in laid for line in _lines(one, cut.rows, way)]
    most = max(planes, key=lambda plane: underlayment_layers(plane.pitch))
    return Underlayment(
        layers=underlayment_layers(most.pitch),
        head_lap=head_lap_of(most.pitch, way=way),
        exposure=way.roll_width - head_lap_of(most.pitch, way=way),
        planes=tuple(_plane_laps(plane, way) for plane in planes),
        rows=cut.rows,
        rolls=cut.rolls,
        left_over=cut.left_over,
        roll_plan=cut.roll_plan,
        end_laps=cut.end_laps,
        area_cut=cut.area_cut,
        area_laid=cut.area_laid,
        eave_edge_length=_length_of(lines, "eave_edge"),
        head_lap_length=_length_of(lines, "head_lap"),
        end_lap_length=_length_of(lines, "end_lap"),
        field_length=_length_of(lines, "field"),
        fastener_lines=tuple(lines),
        fasteners=sum(line.count for line in lines),
    )


def _plane_laps(plane: RoofPlane, way: SheetWay) -> PlaneLaps:
    lap = head_lap_of(plane.pitch, way=way)
    return PlaneLaps(
        plane=plane.name,
        layers=underlayment_layers(plane.pitch),
        head_lap=lap,
        exposure=way.roll_width - lap,
    )


def _lines(
    on_plane: _OnPlane, rows: Sequence[SheetRow], way: UnderlaymentWay
) -> tuple[FastenerLine, ...]:
    return fastener_lines(
        [row for row in rows if row.plane == on_plane.laid.plane.name],
        laid=on_plane.laid,
        starts=sorted({band.lower for band in on_plane.bands}),
        over_barrier=on_plane.over_barrier,
        lap_spacing=way.lap_spacing,
        field_spacing=way.field_spacing,
        field_lines=way.field_lines,
    )


def _length_of(lines: Iterable[FastenerLine], kind: str) -> float:
    return fsum(line.length for line in lines if line.kind == kind)
