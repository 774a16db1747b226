"""Sheeting: what of a plane a sheet covers, and the rows that lie on it.

A sheet runs over hips, ridges and valleys on to the next plane, laps the plane below a pitch break
and stands past the metal of an eave. Rows are level bands of what it covers: each stretch that a
band meets is one row, cut square as long as it is at its longest, and trimmed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from roofing_core.layers.underlaying.end_laps import Cutting
from roofing_core.layers.underlaying.rows import Band
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import EdgeKind, RoofPlane, is_lower
from roofing_core.roof.regions import region_of
from roofing_core.roof.slicing import Region, Stretch

#: Over hips and ridges, from each side: Navy Builder manual, NAVEDTRA 14044, chapter 3. Over the
#: middle of a valley, where it lies on the lining, as much: common practice, no published source.
OVER_EDGES = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetWay(Cutting):
    """The roll, how rows are cut from it, and how they lie on a plane.

    Attributes:
        head_lap: Of each row over the one below, and of the first over the plane below a break.
        past_metal: How far the first row stands past the eave metal.
        over_edges: How far rows run over hips, ridges and valleys, square to them.
    """

    head_lap: Inches
    past_metal: Inches
    over_edges: Inches = OVER_EDGES


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetedPlane:
    """A plane and what of it a sheet covers.

    Attributes:
        plane: The plane.
        deck: Its region as it is.
        region: What the sheet covers, what laps over its edges among it.
        past: For each edge, how far the sheet reaches past it.
        lowest: v from which its first row covers it.
    """

    plane: RoofPlane
    deck: Region
    region: Region
    past: tuple[Inches, ...]
    lowest: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """One row before it is cut into pieces.

    Attributes:
        plane: The name of its plane.
        level: Place of its band on the plane, from 0; rows side by side share one.
        band: The band that it lies in.
        stretch: What it covers once it is trimmed.
        past_left: How much longer than that it is cut on the left.
        past_right: The same on the right.
    """

    plane: str
    level: int
    band: Band
    stretch: Stretch
    past_left: Inches
    past_right: Inches

    @property
    def left(self) -> Inches:
        """u of its left end as cut."""
        return self.stretch.left - self.past_left

    @property
    def span(self) -> Inches:
        """Its length as cut."""
        return self.stretch.right - self.stretch.left + (self.past_left + self.past_right)


def sheeted(plane: RoofPlane, *, way: SheetWay) -> SheetedPlane:
    """Give what of a plane a sheet covers.

    Each edge moved outwards: an eave by ``past_metal``, a pitch break below by ``head_lap``, hips,
    valleys and a ridge with another plane beyond it by ``over_edges``; others stay. Nothing lies
    above a tip of the plane by that, only above a ridge, and nothing below its eaves and breaks.

    Args:
        plane: The plane.
        way: How sheets lie.

    Returns:
        The plane with its two regions.

    Raises:
        Nothing: Those who call it have checked the measurements.

    Source:
        Geometry; the distances are the caller's.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> front, end, *_ = surfaces(Hip(length=400, width=240, pitch=0.75)).planes
    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> sheeted(front, way=way).region.highest, sheeted(end, way=way).region.highest
    (156.0, 150.0)
    """
    deck = region_of(plane)
    past = tuple(_past(plane, k, way) for k in range(len(plane.edges)))
    region = region_of(plane, past=[(out, out) for out in past])
    starts = [low - past[k] for k, low, _ in _heights(plane) if is_lower(plane, k)]
    tops = [high + past[k] for k, _, high in _heights(plane) if plane.edges[k] == "ridge"]
    return SheetedPlane(
        plane=plane,
        deck=deck,
        region=region.up_to(max([deck.highest, *tops])),
        past=past,
        lowest=min(starts, default=region.lowest),
    )


def _past(plane: RoofPlane, k: int, way: SheetWay) -> float:
    if _is_lapped(plane, k):
        return way.over_edges
    if is_lower(plane, k):
        return way.past_metal if plane.edges[k] == "eave" else way.head_lap
    return 0.0


def _is_lapped(plane: RoofPlane, k: int) -> bool:
    """Tell whether sheets run over an edge on to the next plane."""
    kind = plane.edges[k]
    return kind in {"hip", "valley"} or (kind == "ridge" and plane.beyond[k] != "")


def _heights(plane: RoofPlane) -> Iterator[tuple[int, float, float]]:
    """Give each edge with the lower and the higher v of its ends."""
    for k, ((_, v), (_, after)) in enumerate(pairwise((*plane.corners, plane.corners[0]))):
        yield k, min(v, after), max(v, after)


def strips(
    laid: SheetedPlane, bands: Sequence[Band], *, way: SheetWay, layers: int = 1
) -> tuple[Strip, ...]:
    """Give the rows of a plane: each stretch that a band meets, as long as it is to be cut.

    From its leftmost point to its rightmost, and ``trim_allowance`` more at each end at a rake or
    a wall. A stretch of which the rows below it cover all, or those above, is left out: where a
    plane has a lower ridge, rows end there, and they begin anew over a higher eave.

    Args:
        laid: The plane and what a sheet covers.
        bands: Its bands in the order of laying.
        way: How sheets lie.
        layers: How many layers lie over every point.

    Returns:
        The rows in the order of laying, those side by side the lowest first, from the left.

    Raises:
        Nothing.

    Source:
        Geometry; rows cut square and trimmed are common practice, no published source.

    >>> from roofing_core.layers.underlaying.rows import lapped_rows
    >>> from roofing_core.roof.outlines import rectangle
    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> shed = sheeted(rectangle(168, slope_length=60), way=way)
    >>> rows = lapped_rows("full", lower=-0.25, cover=60, top=60, width=36, lap=4)
    >>> [(row.left, row.span) for row in strips(shed, rows, way=way)]
    [(-2.0, 172.0), (-2.0, 172.0)]
    """
    found = []
    for level, band in enumerate(bands):
        below = bands[level - layers].upper if level >= layers else laid.lowest
        above = bands[level + layers].lower if level + layers < len(bands) else float("inf")
        beside = laid.region.between(band.lower, band.upper)
        for stretch in sorted(beside, key=lambda one: (one.lower, one.left)):
            if stretch.upper > below + DUST and stretch.lower < above - DUST:
                past_left, past_right = _past_ends(laid.plane, stretch, way)
                found.append(
                    Strip(
                        plane=laid.plane.name,
                        level=level,
                        band=band,
                        stretch=stretch,
                        past_left=past_left,
                        past_right=past_right,
                    )
                )
    return tuple(found)


def _past_ends(plane: RoofPlane, stretch: Stretch, way: SheetWay) -> tuple[float, float]:
    """Give how much longer a row is cut at each end: there only where nothing is run over."""
    on_left = {
        part.left.edge
        for part in stretch.parts
        if min(part.lower_left, part.upper_left) <= stretch.left + DUST
    }
    on_right = {
        part.right.edge
        for part in stretch.parts
        if max(part.lower_right, part.upper_right) >= stretch.right - DUST
    }
    left, right = (
        0.0 if all(_is_lapped(plane, k) for k in edges) else way.trim_allowance
        for edges in (on_left, on_right)
    )
    return left, right


@dataclass(frozen=True, slots=True, kw_only=True)
class LowerEdge:
    """An eave or a pitch break that rows start at.

    Attributes:
        v: How high it lies.
        start: v from which rows cover it.
        left: u of its left end.
        right: u of its right end.
    """

    v: Inches
    start: Inches
    left: Inches
    right: Inches


def lower_edges(laid: SheetedPlane, kind: EdgeKind) -> tuple[LowerEdge, ...]:
    """Give the eaves or the pitch breaks below of a plane.

    Args:
        laid: The plane and what a sheet covers.
        kind: Which of the two.

    Returns:
        One entry per edge, the lowest first.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.outlines import rectangle
    >>> way = SheetWay(roll_width=36, roll_length=1728, head_lap=4, past_metal=0.25)
    >>> shed = sheeted(rectangle(168, slope_length=60), way=way)
    >>> [edge.start for edge in lower_edges(shed, "eave")], lower_edges(shed, "pitch_break")
    ([-0.25], ())
    """
    plane = laid.plane
    found = []
    for k, ((left, v), (right, after)) in enumerate(pairwise((*plane.corners, plane.corners[0]))):
        if plane.edges[k] == kind and is_lower(plane, k):
            low = min(v, after)
            found.append(LowerEdge(v=low, start=low - laid.past[k], left=left, right=right))
    return tuple(sorted(found, key=lambda edge: (edge.v, edge.left)))
