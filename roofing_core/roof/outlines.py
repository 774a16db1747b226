"""The planes of a whole roof: their outlines with a kind on each edge, and the lines they share.

`Surfaces` is what every form of roof comes to, whether its planes follow from a plan (`forms`) or
were measured by hand (`given_planes`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Literal

from roofing_core.measures.faults import Refused, fault
from roofing_core.measures.units import SQUARE, Inches, Pitch, SquareInches, Squares

EdgeKind = Literal[
    "eave", "rake", "ridge", "hip", "valley", "pitch_break", "sidewall", "headwall"
]  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofPlane:
    """One flat surface of a roof: a simple polygon with a kind on each edge.

    Attributes:
        name: What it is called in findings and steps.
        corners: Corners (u, v), from the left end of its lowest eave or pitch break round by the
            right.
        edges: The kind of each edge, from the edge that leaves the first corner.
        lengths: The length of each edge, as it lies.
        beyond: For each edge, the name of the plane on its far side; empty where there is none.
        points: The corners (x, y, height) in space, height above the lowest eave of the roof; none
            for a plane measured by hand.
        pitch: Rise over run.
        area: On the slope.
        plan_area: As seen from above.
    """

    name: str
    corners: tuple[tuple[Inches, Inches], ...]
    edges: tuple[EdgeKind, ...]
    lengths: tuple[Inches, ...]
    beyond: tuple[str, ...]
    points: tuple[tuple[Inches, Inches, Inches], ...]
    pitch: Pitch
    area: SquareInches
    plan_area: SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofLine:
    """An edge of the roof, once, whether one plane ends in it or two meet.

    Attributes:
        kind: What it is.
        length: As it lies.
        planes: The names of the planes that have it, one or two.
        ends: Its two ends (x, y, height) in space; none for planes measured by hand.
    """

    kind: EdgeKind
    length: Inches
    planes: tuple[str, ...]
    ends: tuple[tuple[Inches, Inches, Inches], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Surfaces:
    """All the planes of a roof and all the lines between and around them.

    Attributes:
        planes: One entry per plane.
        lines: One entry per line, in the order in which the planes come to them.
        area: On the slopes.
        squares: The same in squares of 100 ft2.
        plan_area: As seen from above.
    """

    planes: tuple[RoofPlane, ...]
    lines: tuple[RoofLine, ...]
    area: SquareInches
    squares: Squares
    plan_area: SquareInches


def rectangle(
    eave_length: Inches, *, slope_length: Inches, pitch: Pitch = 0.0, name: str = "slope"
) -> RoofPlane:
    """Give the plane of a single slope: eave, rakes, and a ridge with nothing on its far side.

    Args:
        eave_length: Along the eave, rake to rake; over 0.
        slope_length: Up the slope, eave to top edge; over 0.
        pitch: Rise over run.
        name: What it is called.

    Returns:
        The plane, without points in space.

    Raises:
        Nothing: Those who call it have checked the measurements.

    Source:
        Geometry.

    >>> rectangle(168, slope_length=112).edges
    ('eave', 'rake', 'ridge', 'rake')
    """
    area = eave_length * slope_length
    return RoofPlane(
        name=name,
        corners=((0.0, 0.0), (eave_length, 0.0), (eave_length, slope_length), (0.0, slope_length)),
        edges=("eave", "rake", "ridge", "rake"),
        lengths=(eave_length, slope_length, eave_length, slope_length),
        beyond=("", "", "", ""),
        points=(),
        pitch=pitch,
        area=area,
        plan_area=area / sqrt(1 + pitch * pitch),
    )


def is_lower(plane: RoofPlane, k: int) -> bool:
    """Tell whether an edge is one that layers start from: an eave, or a pitch break below.

    Args:
        plane: The plane.
        k: Place of the edge.

    Returns:
        Whether starters and first rows lie along it.

    Raises:
        Nothing.

    Source:
        Geometry: edges are walked with the plane on the left.

    >>> from roofing_core.roof.forms import Gambrel
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> barn = Gambrel(length=240, width=200, pitch=1.5, upper_pitch=0.5, break_run=40)
    >>> lower, upper = surfaces(barn).planes[:2]
    >>> is_lower(lower, 0), is_lower(lower, 2), is_lower(upper, 0)
    (True, False, True)
    """
    (u, _), (next_u, _) = plane.corners[k], plane.corners[(k + 1) % len(plane.corners)]
    return plane.edges[k] == "eave" or (plane.edges[k] == "pitch_break" and next_u > u)


def require_planes(planes: Sequence[RoofPlane]) -> None:
    """Refuse a roof of no planes.

    Args:
        planes: The planes.

    Returns:
        None.

    Raises:
        Refused: There are none.

    Source:
        None needed.

    >>> require_planes([rectangle(168, slope_length=112)])
    """
    if not planes:
        raise Refused(fault("planes", "none", "one plane or more"))


def from_below(planes: Sequence[RoofPlane]) -> tuple[RoofPlane, ...]:
    """Give planes in the order in which layers are laid: as they come, those below a break first.

    Args:
        planes: The planes.

    Returns:
        The same planes.

    Raises:
        Nothing.

    Source:
        Layers lap the plane below a pitch break: what is lapped is laid first.

    >>> from roofing_core.roof.forms import Gambrel
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> barn = Gambrel(length=240, width=200, pitch=1.5, upper_pitch=0.5, break_run=40)
    >>> [plane.name for plane in from_below(surfaces(barn).planes[::-1])]
    ['back', 'back upper', 'front', 'front upper']
    """
    by_name = {plane.name: plane for plane in planes}
    ordered: dict[str, RoofPlane] = {}

    def lay(name: str, above: frozenset[str]) -> None:
        if name in by_name and name not in ordered and name not in above:
            for below in planes_below(by_name[name]):
                lay(below, above | {name})
            ordered[name] = by_name[name]

    for plane in planes:
        lay(plane.name, frozenset())
    return tuple(ordered.values())


def planes_below(plane: RoofPlane) -> tuple[str, ...]:
    """Give the names of the planes that a plane starts above, at its pitch breaks.

    Args:
        plane: The plane.

    Returns:
        One entry per break that has a plane below it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> planes_below(rectangle(168, slope_length=112))
    ()
    """
    return tuple(
        name
        for k, (kind, name) in enumerate(zip(plane.edges, plane.beyond, strict=True))
        if kind == "pitch_break" and name and is_lower(plane, k)
    )


def surfaces_of(planes: Sequence[RoofPlane], lines: Sequence[RoofLine]) -> Surfaces:
    """Sum up the planes and lines of a roof.

    Args:
        planes: Its planes.
        lines: Its lines.

    Returns:
        Both, with the areas.

    Raises:
        Nothing: Any planes have a sum.

    Source:
        A square of 100 ft2 is the trade's unit (Navy Builder manual, NAVEDTRA 14044).

    >>> surfaces_of([], []).area
    0.0
    """
    area = float(sum(plane.area for plane in planes))
    return Surfaces(
        planes=tuple(planes),
        lines=tuple(lines),
        area=area,
        squares=area / SQUARE,
        plan_area=float(sum(plane.plan_area for plane in planes)),
    )
