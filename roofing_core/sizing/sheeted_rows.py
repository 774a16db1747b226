"""Sheets of single slopes: the rows up each height, how much each covers and what fastens them.

What rolls they are cut from is `rolls_along`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from roofing_core.layers.underlaying.layering import head_lap_of, underlayment_layers
from roofing_core.layers.underlaying.rows import Band, half_lap, half_lapped_rows, lapped_rows
from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.layers.underlaying.underlaid import UnderlaymentWay, first_start
from roofing_core.layers.underlaying.underlayment import barrier_lap_fault
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.units import Inches, Pitch

#: What lies along the top: nothing but sheets, or a strip from beside the first or off a roll.
TOPS = ("none", "from the width", "from the length")

#: How many full rows there are, and what lies along the top: a place in `TOPS`.
Stack = tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsUp:
    """The rows of a sheet up one height.

    Attributes:
        layers: 1, or 2 where a strip lies under the first sheet.
        full: How many rows come off the whole width of the roll.
        heights: How much of the slope each row covers, in the order of laying, a strip along the
            top last.
        top: Whether there is such a strip, and whether what is left beside the first strip is wide
            enough for it: one of `TOPS`, by its place.
        upper: v of its upper edge.
        lap_fasteners: Fasteners that an end lap adds in each row.
        lap_lines: Lines of fasteners along eave and laps.
        field_lines: Lines of them in the field.
        rows: Rows as the limit of pieces counts them.
        refused: Whether they cannot lie on the ice barrier below.
    """

    layers: int
    full: int
    heights: tuple[Inches, ...]
    top: int
    upper: Inches
    lap_fasteners: tuple[int, ...]
    lap_lines: int
    field_lines: int
    rows: float
    refused: bool = False

    @property
    def stack(self) -> Stack:
        """How many full rows there are, and what lies along the top."""
        return self.full, self.top

    @property
    def below_top(self) -> tuple[Inches, ...]:
        """How much each row but a strip along the top covers."""
        return self.heights[:-1] if self.top else self.heights

    @property
    def top_height(self) -> Inches:
        """How much that strip covers."""
        return self.heights[-1] if self.top else 0.0

    @property
    def top_fasteners(self) -> int:
        """Fasteners that an end lap adds in that strip."""
        return self.lap_fasteners[-1] if self.top else 0


def no_rows() -> RowsUp:
    """Give the rows of a sheet that is not laid.

    Returns:
        None.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> no_rows().full
    0
    """
    return RowsUp(
        layers=1,
        full=0,
        heights=(),
        top=0,
        upper=0.0,
        lap_fasteners=(),
        lap_lines=0,
        field_lines=0,
        rows=0.0,
    )


def barrier_up(slope_length: Inches, *, reach: Inches, way: SheetWay) -> RowsUp:
    """Place the rows of an ice barrier up one height.

    Args:
        slope_length: Up the slope.
        reach: How far up it has to reach; 0 for none.
        way: The roll, and how rows lie.

    Returns:
        The rows.

    Raises:
        Nothing: Those who call it have checked the sizes.

    Source:
        As `ice_barrier`.

    >>> way = SheetWay(roll_width=36, roll_length=800, head_lap=4, past_metal=0.25)
    >>> barrier_up(112, reach=37.95, way=way).full
    2
    """
    if not reach:
        return no_rows()
    bands = lapped_rows(
        "ice_barrier",
        lower=-way.past_metal,
        cover=min(reach, slope_length),
        top=slope_length,
        width=way.roll_width,
        lap=way.head_lap,
    )
    found = _laid(bands, -way.past_metal, layers=1)
    return RowsUp(
        layers=1,
        full=len(found),
        heights=tuple(_height(band, -way.past_metal) for band in found),
        top=0,
        upper=bands[-1].upper,
        lap_fasteners=(0,) * len(found),
        lap_lines=0,
        field_lines=0,
        rows=(min(reach, slope_length) + way.past_metal) / (way.roll_width - way.head_lap),
    )


def underlayment_up(
    slope_length: Inches, *, pitch: Pitch, barrier_top: Inches, way: UnderlaymentWay
) -> RowsUp:
    """Place the rows of underlayment up one height, and count their lines of fasteners.

    Args:
        slope_length: Up the slope.
        pitch: Rise over run.
        barrier_top: v of the upper edge of an ice barrier below; 0 where there is none.
        way: The roll, and how rows lie and are fastened.

    Returns:
        The rows; none where an ice barrier covers all.

    Raises:
        Refused: The pitch takes no underlayment.

    Source:
        As `underlayment`.

    >>> felt = UnderlaymentWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> rows = underlayment_up(112, pitch=0.25, barrier_top=0, way=felt)
    >>> rows.full, TOPS[rows.top], rows.lap_lines + rows.field_lines
    (6, 'from the width', 14)
    """
    refused = barrier_lap_fault(barrier_top, way.over_ice_barrier, way.roll_width) is not None
    if refused or barrier_top >= slope_length:
        return replace(no_rows(), refused=refused)
    lowest = -way.past_metal
    lower = first_start(lowest, ice_barrier_top=barrier_top, way=way)
    layers = underlayment_layers(pitch)
    bands = _bands(layers, lower, slope_length, way)
    found = _laid(bands, lowest, layers=layers)
    starts = sorted({band.lower for band in bands})
    heights = [*starts, slope_length]
    lap_lines, field_lines = _lines(starts, slope_length, bool(barrier_top), way)
    return RowsUp(
        layers=layers,
        full=sum(band.kind == "full" for band in found),
        heights=tuple(_height(band, lowest) for band in found),
        top=_top(found[-1], way),
        upper=bands[-1].upper,
        lap_fasteners=tuple(_up_a_lap(band, heights, way) for band in found),
        lap_lines=lap_lines,
        field_lines=field_lines,
        rows=(slope_length - lower) / (way.roll_width - head_lap_of(pitch, way=way)),
    )


def _bands(layers: int, lower: float, top: float, way: UnderlaymentWay) -> tuple[Band, ...]:
    """Give the rows as `rows_up` does on a rectangle."""
    if layers > 1:
        return half_lapped_rows(lower=lower, top=top, width=way.roll_width)
    return lapped_rows(
        "full", lower=lower, cover=top, top=top, width=way.roll_width, lap=way.head_lap
    )


def _laid(bands: Sequence[Band], lowest: float, *, layers: int) -> list[Band]:
    """Leave out rows of which those below cover all, as `strips` does."""
    below = [lowest] * layers + [band.upper for band in bands]
    return [
        band for band, covered in zip(bands, below, strict=False) if band.upper > covered + DUST
    ]


def _height(band: Band, lowest: float) -> float:
    return band.upper - max(band.lower, lowest)


def _top(last: Band, way: SheetWay) -> int:
    if last.kind != "top_strip":
        return 0
    return 1 if last.width <= width_beside(way) + DUST else 2


def width_beside(way: SheetWay) -> Inches:
    """Give the width that is left beside the first strip of two layers.

    Args:
        way: The roll, and how rows lie.

    Returns:
        The width.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> width_beside(SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25))
    17.0
    """
    return way.roll_width - half_lap(way.roll_width)


def _lines(
    starts: Sequence[float], top: float, on_barrier: bool, way: UnderlaymentWay
) -> tuple[int, int]:
    """Count the lines of fasteners on the deck: along eave and laps, and in the field."""
    laps = [*starts] if on_barrier else [0.0, *starts[1:]]
    field = [
        lower + (upper - lower) / (way.field_lines + 1) * k
        for lower, upper in zip(starts, [*starts[1:], top], strict=True)
        for k in range(1, way.field_lines + 1)
    ]
    return sum(0 <= v <= top for v in laps), sum(0 <= v <= top for v in field)


def _up_a_lap(band: Band, heights: Sequence[float], way: UnderlaymentWay) -> int:
    """Count the fasteners that one end lap adds, up to where the next row starts."""
    upper = next(v for v in [*(v for v in heights[:-1] if v > band.lower), heights[-1]])
    return max(0, whole_pieces((upper - band.lower) / way.lap_spacing) - 1)
