"""Valley ends: how far the metal of a valley goes on past its foot and past its top.

As far as was chosen, and further where shingles that are cut back from the valley would leave the
deck bare there: at a flat valley beside a long eave, and where a valley ends at a rake or between
two slopes that both go on above it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, pi, tan

from roofing_core.job.wiring import Site
from roofing_core.layers.metal.valleys import valley_reach
from roofing_core.measures.units import Inches, Radians
from roofing_core.roof.outlines import RoofLine, RoofPlane, is_lower
from roofing_core.ruling.on_valleys import VALLEY_LAP

#: Beside these nothing covers what is bare above a valley; over hips and ridges caps do.
_UNCOVERED = frozenset({"rake", "sidewall"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ValleyEnds:
    """How far the metal of a valley goes on.

    Attributes:
        past_foot: How far it starts below the valley's foot, to be cut off along the eaves.
        over_top: How far it goes on over its top.
    """

    past_foot: Inches
    over_top: Inches


def valley_ends(site: Site, line: RoofLine) -> ValleyEnds:
    """Give how far the metal of an open valley goes on past both of its ends.

    At the foot `valley_reach` of each leg, at least what was chosen. At the top what the shingles
    leave bare, ``half of what shows / tan(angle)``, the angle of the valley with the rake there, or
    half of that between two valleys, measured on the plane, and a lap of metal more than that: 4 in
    or what laps of metal were chosen to be; where that is more than was chosen for the top.

    Args:
        site: The roof with its choices.
        line: The valley.

    Returns:
        Both lengths, along the valley.

    Raises:
        Nothing: Those who lay the metal check what was chosen.

    Source:
        Geometry; how far metal lies under shingles is the rule's; a lap more is common practice, no
        published source.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    >>> roof = site_of(Footprint(corners=ell, pitch=0.5))
    >>> valley = next(line for line in roof.surfaces.lines if line.kind == "valley")
    >>> valley_ends(roof, valley)
    ValleyEnds(past_foot=12.0, over_top=6.0)
    """
    choices = site.choices
    legs = (choices.valley_metal.deck_leg, choices.valley_metal.face_leg)
    by_name = {plane.name: plane for plane in site.surfaces.planes}
    feet, tops = [choices.valleying.past_eave], [0.0]
    bare = choices.valleying.exposed_width / 2
    for name, other, leg in zip(line.planes, reversed(line.planes), legs, strict=True):
        plane = by_name[name]
        k = _edge(plane, other, line.length)
        feet += _at_foot(plane, k, leg)
        tops += _at_top(plane, k, bare)
    past_foot, over_top = choices.valleying.past_eave, choices.valleying.over_ridge
    under = max(tops) + max(choices.metalwork.lap, VALLEY_LAP.limit) if max(tops) > 0 else 0.0
    return ValleyEnds(
        past_foot=max(feet) if past_foot >= 0 else past_foot,
        over_top=max(over_top, under) if over_top >= 0 else over_top,
    )


def _edge(plane: RoofPlane, beyond: str, long: float) -> int:
    """Give the place of a valley among the edges of one of its planes."""
    found = (
        k for k, kind in enumerate(plane.edges) if kind == "valley" and plane.beyond[k] == beyond
    )
    return min(found, key=lambda k: abs(plane.lengths[k] - long))


def _at_foot(plane: RoofPlane, k: int, leg: float) -> Iterator[float]:
    rises = _rises(plane, k)
    beside = (k - 1) % len(plane.edges) if rises else (k + 1) % len(plane.edges)
    angle = _angle(plane, k if rises else beside)
    if is_lower(plane, beside) and 0 < pi - angle < pi / 2:
        yield valley_reach(leg, surface_angle=pi - angle)


def _at_top(plane: RoofPlane, k: int, bare: float) -> Iterator[float]:
    rises = _rises(plane, k)
    beside = (k + 1) % len(plane.edges) if rises else (k - 1) % len(plane.edges)
    angle = _angle(plane, beside if rises else k)
    kind = plane.edges[beside]
    if kind == "valley" and angle > pi:
        yield -bare / tan(angle / 2)
    elif kind in _UNCOVERED and tan(angle) < 0:  # also above a wall that ends at the valley's top
        yield -bare / tan(angle)


def _rises(plane: RoofPlane, k: int) -> bool:
    return plane.corners[(k + 1) % len(plane.corners)][1] > plane.corners[k][1]


def _angle(plane: RoofPlane, k: int) -> Radians:
    """Give the angle inside a plane at the corner that an edge leaves."""
    corners = plane.corners
    (bu, bv), (u, v), (au, av) = corners[k - 1], corners[k], corners[(k + 1) % len(corners)]
    return (atan2(bv - v, bu - u) - atan2(av - v, au - u)) % (2 * pi)
