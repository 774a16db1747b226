"""From the skeleton of a roof to its planes, each with its outline in its own coordinates.

`skeleton` draws lines between faces; here they are chained into the outlines of `outlines`, named,
measured, and held against the plan that they have to cover.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import dist, sqrt

from roofing_core.measures.faults import Fault
from roofing_core.measures.sentences import say
from roofing_core.roof.footprints import Deck
from roofing_core.roof.joints import Joint
from roofing_core.roof.outlines import EdgeKind, RoofLine, RoofPlane, Surfaces, surfaces_of
from roofing_core.roof.polygons import signed_area
from roofing_core.roof.skeleton import Skeleton

#: Part of the plan by which the planes may fail to cover it; a thousandth in2 on 7,000 ft2.
UNCOVERED = 1e-9


@dataclass(frozen=True, slots=True)
class _Part:
    """A straight part of the outline of a face, walked with the face on the left."""

    kind: EdgeKind
    across: int
    start: int
    end: int


def planes_over(deck: Deck, drawn: Skeleton) -> Surfaces:
    """Give the planes over a deck with their outlines, and the lines in which they meet.

    Args:
        deck: The outline of the deck.
        drawn: Its skeleton.

    Returns:
        Planes in the order of the sides that they rise from, lower ones first.

    Raises:
        Nothing: `uncovered_fault` tells whether the planes cover the deck.

    Source:
        Geometry.

    >>> from roofing_core.roof.footprints import Footprint, deck_outline
    >>> from roofing_core.roof.skeleton import skeleton
    >>> plan = Footprint(corners=((0, 0), (36, 0), (36, 24), (0, 24)), pitch=0.5)
    >>> deck = deck_outline(plan)
    >>> drawn = skeleton(deck.corners, [side.rises for side in deck.sides])
    >>> [line.length for line in planes_over(deck, drawn).lines if line.kind == "hip"]
    [18.0, 18.0, 18.0, 18.0]
    """
    parts = _parts(drawn)
    rings = [
        (face, ring)
        for face in sorted(parts, key=lambda face: _order(deck, drawn, face))
        for ring in _rings(parts[face])
    ]
    names = _names(deck, drawn, rings)
    owners: dict[frozenset[int], list[str]] = {}
    for name, (_, ring) in zip(names, rings, strict=True):
        for part in ring:
            owners.setdefault(_ends(part), []).append(name)
    planes = [
        _plane(name, face, ring, deck=deck, drawn=drawn, owners=owners)
        for name, (face, ring) in zip(names, rings, strict=True)
    ]
    return surfaces_of(planes, list(_lines([ring for _, ring in rings], drawn, owners)))


def uncovered_fault(deck: Deck, surfaces: Surfaces) -> Fault | None:
    """Give the fault of an outline whose planes do not add up to it.

    Args:
        deck: The outline of the deck.
        surfaces: The planes over it.

    Returns:
        The fault, or ``None`` when the planes cover the deck to 1e-9 of its area.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library: corners a hair off a line that they are meant to be on can leave
        two planes that no longer fit.

    >>> deck = Deck(corners=((0, 0), (9, 0), (9, 9)), sides=(), places=())
    >>> uncovered_fault(deck, surfaces_of([], [])).written()[:37]
    'corners came as planes that cover 0 %'
    """
    plan = signed_area(deck.corners)
    if abs(surfaces.plan_area - plan) <= UNCOVERED * plan:
        return None
    came = f"planes that cover {100 * surfaces.plan_area / plan:.6g} % of the plan"
    return Fault(("corners",), came, say("corners that lie on a line exactly or clearly not"))


def _order(deck: Deck, drawn: Skeleton, face: int) -> tuple[int, int]:
    """Give what planes are sorted by: the first of their sides as given, then from below."""
    return min(deck.places[side] for side in drawn.faces[face].sides), face


def _parts(drawn: Skeleton) -> Mapping[int, list[_Part]]:
    """Give the parts of the outline of each plane."""
    parts: dict[int, list[_Part]] = {}
    for joint in drawn.joints:
        for face, part in _two_views(joint):
            if drawn.faces[face].pitch:
                parts.setdefault(face, []).append(part)
    return parts


def _two_views(joint: Joint) -> tuple[tuple[int, _Part], tuple[int, _Part]]:
    """Give a joint as a part of the outline of each of its two faces."""
    return (
        (joint.left, _Part(joint.kind, joint.right, joint.start, joint.end)),
        (joint.right, _Part(joint.kind, joint.left, joint.end, joint.start)),
    )


def _rings(parts: list[_Part]) -> Iterator[list[_Part]]:
    """Chain the parts of a face's outline into closed rings, mostly one."""
    leaving: dict[int, list[_Part]] = {}
    for part in parts:
        leaving.setdefault(part.start, []).append(part)
    while leaving:
        ring: list[_Part] = []
        node = next(iter(leaving))
        while node in leaving and (not ring or node != ring[0].start):
            ring.append(leaving[node].pop())
            if not leaving[node]:
                del leaving[node]
            node = ring[-1].end
        if node == ring[0].start:  # else the planes do not cover the deck, which is found out
            yield _without_straight(ring)


def _without_straight(ring: list[_Part]) -> list[_Part]:
    """Make one part of two that follow each other between the same two faces.

    Two planes meet in one straight line. The first part of a ring is the lower edge of its plane,
    drawn whole, so that nothing goes on from the last part to the first.
    """
    kept: list[_Part] = []
    for part in ring:
        if kept and (kept[-1].kind, kept[-1].across) == (part.kind, part.across):
            kept[-1] = replace(kept[-1], end=part.end)
        else:
            kept.append(part)
    return kept


def _names(deck: Deck, drawn: Skeleton, rings: list[tuple[int, list[_Part]]]) -> list[str]:
    """Give each plane a name of its own, after the sides that it rises from."""
    names: list[str] = []
    for face, _ in rings:
        sides = sorted(drawn.faces[face].sides, key=lambda side: deck.places[side])
        name = " and ".join(deck.sides[side].name for side in sides)
        if drawn.faces[face].level > 1:
            name = f"{name} upper"
        same = sum(other == name or other.startswith(f"{name} #") for other in names)
        names.append(f"{name} #{same + 1}" if same else name)
    return names


def _plane(
    name: str,
    face: int,
    ring: list[_Part],
    *,
    deck: Deck,
    drawn: Skeleton,
    owners: Mapping[frozenset[int], list[str]],
) -> RoofPlane:
    """Give the plane within a ring, in its own coordinates."""
    side = drawn.faces[face].sides[0]
    (ax, ay), (bx, by) = deck.corners[side], deck.corners[side + 1 - len(deck.corners)]
    long = dist((ax, ay), (bx, by))
    dx, dy = (bx - ax) / long, (by - ay) / long
    ring = _from_lowest(ring, drawn, (dx, dy))
    points = tuple(drawn.nodes[part.start] for part in ring)
    pitch = drawn.faces[face].pitch
    x0, y0, _ = points[0]
    factor = sqrt(1 + pitch * pitch)
    corners = tuple(
        # Adding 0.0 makes 0.0 of -0.0, which nobody wants to read.
        ((x - x0) * dx + (y - y0) * dy + 0.0, ((y - y0) * dx - (x - x0) * dy) * factor + 0.0)
        for x, y, _ in points
    )
    return RoofPlane(
        name=name,
        corners=corners,
        edges=tuple(part.kind for part in ring),
        lengths=tuple(dist(drawn.nodes[part.start], drawn.nodes[part.end]) for part in ring),
        beyond=tuple(
            next((other for other in owners[_ends(part)] if other != name), "") for part in ring
        ),
        points=points,
        pitch=pitch,
        area=signed_area(corners),
        plan_area=signed_area([(x, y) for x, y, _ in points]),
    )


def _from_lowest(ring: list[_Part], drawn: Skeleton, way: tuple[float, float]) -> list[_Part]:
    """Turn a ring so that it starts with the lowest eave or pitch break, the leftmost of them."""

    def place(k: int) -> tuple[float, float]:
        x, y, height = drawn.nodes[ring[k].start]
        return height, x * way[0] + y * way[1]

    level = [k for k, part in enumerate(ring) if part.kind in {"eave", "pitch_break"}]
    first = min(level or range(len(ring)), key=place)
    return ring[first:] + ring[:first]


def _ends(part: _Part) -> frozenset[int]:
    return frozenset((part.start, part.end))


def _lines(
    rings: list[list[_Part]], drawn: Skeleton, owners: Mapping[frozenset[int], list[str]]
) -> Iterator[RoofLine]:
    """Give each line once."""
    seen: set[frozenset[int]] = set()
    for part in (part for ring in rings for part in ring):
        if _ends(part) not in seen:
            seen.add(_ends(part))
            ends = (drawn.nodes[part.start], drawn.nodes[part.end])
            yield RoofLine(
                kind=part.kind, length=dist(*ends), planes=tuple(owners[_ends(part)]), ends=ends
            )
