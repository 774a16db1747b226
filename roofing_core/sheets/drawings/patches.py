"""Patches: the planes of a roof as flat shapes in one picture, from above or side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot, sqrt

from roofing_core.measures.units import Inches, Pitch, Ratio
from roofing_core.roof.outlines import EdgeKind, RoofLine, RoofPlane
from roofing_core.sheets.drawings.views import extent_of

Point = tuple[Inches, Inches]

#: Planes side by side keep this part of the largest one's size between them.
_APART = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Patch:
    """A plane as a flat shape.

    Attributes:
        name: Of the plane.
        pitch: Rise over run.
        corners: Its corners in the picture, counter-clockwise as seen, in inches.
        falls: Which way water runs off it in the picture, as a step of 1 to the right and up.
    """

    name: str
    pitch: Pitch
    corners: tuple[Point, ...]
    falls: tuple[Ratio, Ratio]


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """A line between or round patches.

    Attributes:
        kind: What it is.
        length: As it lies on the roof.
        ends: Its ends in the picture, in inches.
        inner: Whether there is a patch on each side of it; if not it is on the left.
    """

    kind: EdgeKind
    length: Inches
    ends: tuple[Point, Point]
    inner: bool


def patches_of(
    planes: Sequence[RoofPlane], lines: Sequence[RoofLine]
) -> tuple[tuple[Patch, ...], tuple[Side, ...]]:
    """Give the planes and lines of a roof as flat shapes in one picture.

    As seen from above where the planes have a place in space; side by side where they have none.

    Args:
        planes: The planes of the roof.
        lines: Its lines.

    Returns:
        One entry per plane, and one per line; side by side, a line between planes is there twice.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> hip = surfaces(Hip(length=432, width=288, pitch=0.5))
    >>> patches, sides = patches_of(hip.planes, hip.lines)
    >>> patches[0].falls, sides[0].inner
    ((0.0, -1.0), False)
    """
    if all(plane.points for plane in planes):
        return tuple(map(_from_above, planes)), tuple(_sides_above(planes, lines))
    places = tuple(_places(planes))
    return (
        tuple(_laid_out(plane, place) for plane, place in zip(planes, places, strict=True)),
        tuple(
            side
            for plane, place in zip(planes, places, strict=True)
            for side in _sides_of(plane, place)
        ),
    )


def in_picture(plane: RoofPlane, patch: Patch, point: Point) -> Point:
    """Give where a point of a plane comes to lie in the picture of its patch.

    From the corners of both, as one straight map: the second corner tells which way u goes, the
    highest one which way v goes.

    Args:
        plane: The plane.
        patch: The same as a flat shape.
        point: A point (u, v) on it.

    Returns:
        The point in the picture, in inches.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> hip = surfaces(Hip(length=400, width=240, pitch=0.75))
    >>> patch = patches_of(hip.planes, hip.lines)[0][2]  # the back: up the slope is down
    >>> in_picture(hip.planes[2], patch, (100, 50))  # 50 in of slope are 40 in of run
    (300.0, 200.0)
    """
    (ox, oy), (ou, ov) = patch.corners[0], plane.corners[0]
    us, _ = plane.corners[1]
    k = max(range(2, len(plane.corners)), key=lambda k: abs(plane.corners[k][1] - ov))
    east = ((patch.corners[1][0] - ox) / (us - ou), (patch.corners[1][1] - oy) / (us - ou))
    u, v = plane.corners[k][0] - ou, plane.corners[k][1] - ov
    x, y = patch.corners[k][0] - ox, patch.corners[k][1] - oy
    north = ((x - u * east[0]) / v, (y - u * east[1]) / v)
    along, up = point[0] - ou, point[1] - ov
    return ox + along * east[0] + up * north[0], oy + along * east[1] + up * north[1]


def _from_above(plane: RoofPlane) -> Patch:
    east, north = _fall(plane.points)
    corners = tuple((x, y) for x, y, _ in plane.points)
    return Patch(name=plane.name, pitch=plane.pitch, corners=corners, falls=(east, north))


def _fall(points: Sequence[tuple[float, float, float]]) -> tuple[float, float]:
    """Give the level direction of a plane's normal, by the areas of its three shadows."""
    ahead = [*points[1:], points[0]]
    x = sum((a[1] - b[1]) * (a[2] + b[2]) for a, b in zip(points, ahead, strict=True))
    y = sum((a[2] - b[2]) * (a[0] + b[0]) for a, b in zip(points, ahead, strict=True))
    long = hypot(x, y)
    return (x / long, y / long) if long else (0.0, 0.0)


def _sides_above(planes: Sequence[RoofPlane], lines: Sequence[RoofLine]) -> Iterator[Side]:
    by_name = {plane.name: plane for plane in planes}
    for line in lines:
        (ax, ay, _), (bx, by, _) = line.ends
        ends: tuple[Point, Point] = ((ax, ay), (bx, by))
        inner = len(line.planes) > 1
        if not inner and not _on_left(by_name[line.planes[0]], ends):
            ends = (ends[1], ends[0])
        yield Side(kind=line.kind, length=line.length, ends=ends, inner=inner)


def _on_left(plane: RoofPlane, ends: tuple[Point, Point]) -> bool:
    """Tell whether a plane lies to the left of a line that bounds it: walked as its edges are."""
    (ax, ay), (bx, by) = ends
    ahead = [*plane.points[1:], plane.points[0]]
    return any(
        hypot(a[0] - ax, a[1] - ay) + hypot(b[0] - bx, b[1] - by)
        < hypot(a[0] - bx, a[1] - by) + hypot(b[0] - ax, b[1] - ay)
        for a, b in zip(plane.points, ahead, strict=True)
        if _is_along(a, b, ends)
    )


def _is_along(a: Sequence[float], b: Sequence[float], ends: tuple[Point, Point]) -> bool:
    """Tell whether an edge has the two ends of a line, one way or the other."""
    near = [min(hypot(a[0] - x, a[1] - y), hypot(b[0] - x, b[1] - y)) for x, y in ends]
    return max(near) < 1e-3 * (1 + hypot(b[0] - a[0], b[1] - a[1]))


def _places(planes: Sequence[RoofPlane]) -> Iterator[Point]:
    """Give where the (0, 0) of each plane comes to lie, in rows from above, left to right."""
    sizes = [extent_of(plane.corners) for plane in planes]
    wide = [one.right - one.left for one in sizes]
    high = [one.upper - one.lower for one in sizes]
    apart = _APART * max(*wide, *high)
    area = sum((w + apart) * (h + apart) for w, h in zip(wide, high, strict=True))
    room = max(*wide, 1.3 * sqrt(area))
    x = y = row = 0.0
    for size, w, h in zip(sizes, wide, high, strict=True):
        if x and x + w > room:
            x, y, row = 0.0, y - row - apart, 0.0
        yield x - size.left, y - size.upper
        x, row = x + w + apart, max(row, h)


def _laid_out(plane: RoofPlane, place: Point) -> Patch:
    corners = tuple((u + place[0], v + place[1]) for u, v in plane.corners)
    return Patch(name=plane.name, pitch=plane.pitch, corners=corners, falls=(0.0, -1.0))


def _sides_of(plane: RoofPlane, place: Point) -> Iterator[Side]:
    corners = [(u + place[0], v + place[1]) for u, v in plane.corners]
    for k, (kind, long) in enumerate(zip(plane.edges, plane.lengths, strict=True)):
        ends = (corners[k], corners[(k + 1) % len(corners)])
        yield Side(kind=kind, length=long, ends=ends, inner=False)
