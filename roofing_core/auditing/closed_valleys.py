"""Closed valleys: where the shingles of one plane run through, and those of the other are cut.

Seen square to the valley both planes are one. So what runs through is turned about the valley on to
the plane of those that are cut, and judged there as what lies under them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.edges import Edge
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import TOUCHING, Point, Trapezoid, trapezoids
from roofing_core.auditing.sweeping import Cell, Layer, cells
from roofing_core.measures.units import Inches

#: So many layers of shingle lie over every point.
_LAYERS = 2

#: An outline has so many corners or more.
_LEAST_CORNERS = 3

Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Through:
    """The shingles of one plane that run through a valley.

    Attributes:
        edge: The edge of the plane whose shingles are cut.
        courses: The pieces of each course that run through, as outlines on that plane.
        beyond: Where none of them can lie: below the eave of their plane, and above its top. What
            lines the valley covers it there.
        far: How far they reach at most.
    """

    edge: Edge
    courses: tuple[tuple[Ring, ...], ...]
    beyond: tuple[Ring, ...]
    far: Inches


def through_valley(edge: Edge, other: Edge, laid: PlaneLaid, *, lined: Inches) -> Through | None:
    """Give the shingles of the plane beyond a valley that run through it.

    Args:
        edge: The valley, as an edge of the plane that is looked at.
        other: The same, as an edge of the plane beyond.
        laid: The plane beyond with its rows.
        lined: How far the lining of the valley reaches to each side; 0 where there is none.

    Returns:
        Their outlines on the plane that is looked at; None where none runs through.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> edge = Edge(plane="b", kind="valley", start=(0, 0), end=(9, 9), beyond="a")
    >>> none = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> through_valley(edge, edge, none, lined=18)
    """
    courses, far = [], 0.0
    for row in (*laid.starters, *laid.courses):
        if beyond := [*_beyond(row, other)]:
            courses.append(tuple(_turned(ring, edge, other) for ring in beyond))
            far = max([far, *(-other.inside(corner) for ring in beyond for corner in ring)])
    if not courses:
        return None
    ends = _strip(other, lined, past=far) if lined > 0 else ()
    eave, top = min(one.lower for one in laid.deck), max(one.upper for one in laid.deck)
    zones = (_cut(ends, eave, below=True), _cut(ends, top, below=False))
    return Through(
        edge=edge,
        courses=tuple(courses),
        beyond=tuple(_turned(zone, edge, other) for zone in zones if len(zone) >= _LEAST_CORNERS),
        far=far,
    )


def _rings(row: Row) -> Iterator[Ring]:
    """Give the outlines of the pieces of a row."""
    for piece in row.pieces:
        yield piece.corners or _square(piece.left, piece.right, row.butt, row.top)


def _square(left: float, right: float, lower: float, upper: float) -> Ring:
    return (left, lower), (right, lower), (right, upper), (left, upper)


def _beyond(row: Row, edge: Edge) -> Iterator[Ring]:
    """Give the outlines of the pieces of a row that run over an edge of its plane, and on from it.

    Pieces that lie beyond the line of the edge somewhere else on the plane are none of these.
    """
    rings = [*_rings(row)]
    off = [[edge.inside(corner) for corner in ring] for ring in rings]
    across = [k for k, ring in enumerate(rings) if _crosses(ring, off[k], edge)]
    found = set(across)
    for first in across:
        for way in (1, -1):
            k = first + way
            while 0 <= k < len(rings) and sum(off[k]) < 0 and _touch(row, k, k - way):
                found.add(k)
                k += way
    return (rings[k] for k in sorted(found))


def _crosses(ring: Ring, off: Sequence[float], edge: Edge) -> bool:
    """Tell whether an outline lies on both sides of an edge, between its ends."""
    if min(off) > -TOUCHING or max(off) < -TOUCHING:
        return False
    places = []
    for k, (corner, at) in enumerate(zip(ring, off, strict=True)):
        after, to = ring[(k + 1) % len(ring)], off[(k + 1) % len(ring)]
        if (at < 0) != (to < 0):
            share, here, there = at / (at - to), edge.along(corner), edge.along(after)
            places.append(here + (there - here) * share)
    return bool(places) and min(places) < edge.length() and max(places) > 0


def _touch(row: Row, k: int, other: int) -> bool:
    one, two = row.pieces[min(k, other)], row.pieces[max(k, other)]
    return two.left - one.right <= TOUCHING


def _turned(ring: Ring, edge: Edge, other: Edge) -> Ring:
    """Turn an outline about a valley from the plane beyond it on to this one."""
    long = edge.length()
    (au, av), (bu, bv) = edge.start, edge.end
    along, up = (bu - au) / long, (bv - av) / long
    found = []
    for corner in ring:
        s, d = long - other.along(corner), -other.inside(corner)
        found.append((au + along * s - up * d, av + up * s + along * d))
    return tuple(found)


def _strip(edge: Edge, wide: Inches, *, past: Inches) -> Ring:
    """Give the strip beyond an edge that a lining covers, past both of its ends."""
    long = edge.length()
    (au, av), (bu, bv) = edge.at(-past), edge.at(long + past)
    out = wide / (long + 2 * past)
    across, up = (bv - av) * out, (au - bu) * out
    return (au, av), (au + across, av + up), (bu + across, bv + up), (bu, bv)


def _cut(ring: Ring, at: Inches, *, below: bool, axis: int = 1) -> Ring:
    """Give the part of an outline that lies below a height, or above it; or left or right of a u.

    What is left of an outline that bends in may come in parts that a line on the cut joins.
    """
    found = []
    for one, other in zip(ring, (*ring[1:], *ring[:1]), strict=True):
        if (one[axis] <= at) == below:
            found.append(one)
        if (one[axis] <= at) != (other[axis] <= at):
            share = (at - one[axis]) / (other[axis] - one[axis])
            (au, av), (bu, bv) = one, other
            found.append((au + (bu - au) * share, av + (bv - av) * share))
    return tuple(found)


def ask_cut_edge(
    through: Through, laid: PlaneLaid, covers: Sequence[Cover], gauges: Mapping[str, Gauge]
) -> None:
    """Ask all along a closed valley how far what runs through reaches on under the cut shingles.

    Args:
        through: What runs through.
        laid: The plane whose shingles are cut, with its rows.
        covers: What covers its edges.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Geometry: the plane is swept along the valley, square to it.

    >>> edge = Edge(plane="b", kind="valley", start=(0, 0), end=(9, 9), beyond="a")
    >>> nothing = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> ask_cut_edge(Through(edge=edge, courses=(), beyond=(), far=1.0), nothing, (), {})
    """
    edge, ways = through.edge, len(through.courses)
    own = [
        [ring for ring in _rings(row) if _is_near(ring, edge, through.far)]
        for row in (*laid.starters, *laid.courses)
    ]
    over = [*through.beyond, *(_corners(part) for one in covers for part in one.shape)]
    deck = [_corners(part) for part in laid.deck]
    rings = (deck, *through.courses, *(each for each in own if each), over)
    layers = [Layer(order=k, shape=_seen(each, edge, through.far)) for k, each in enumerate(rings)]
    for row_of_cells in cells(layers):
        on_deck = [cell for cell in row_of_cells if cell.layers[0] == 0]
        for edge_of, lap in _laps(on_deck, ways=ways, last=len(layers) - 1):
            u, v = _unseen(edge_of, edge)
            gauges["valleys.lap"].see(lap, Where(laid.plane.name, "valley", 0, 0, u, v))


def _laps(on_deck: Sequence[Cell], *, ways: int, last: int) -> Iterator[tuple[Point, Inches]]:
    """Give how far two layers that run through go on from where they lie bare."""
    bare: Trapezoid | None = None
    for cell in on_deck:
        through = sum(0 < order <= ways for order in cell.layers)
        own = sum(ways < order < last for order in cell.layers)
        if cell.layers[-1] == last:
            bare = None
        elif own < _LAYERS <= through:
            bare = cell.lies
        elif bare is not None and through < _LAYERS:
            lies = cell.lies
            laps = (lies.lower_left - bare.lower_right, lies.upper_left - bare.upper_right)
            yield (bare.lower_right, bare.lower), min(laps)
            bare = None


def _is_near(ring: Ring, edge: Edge, far: Inches) -> bool:
    """Tell whether an outline may lie within a strip along an edge."""
    off, along = [*map(edge.inside, ring)], [*map(edge.along, ring)]
    beside = min(along) < edge.length() + far and max(along) > -far
    return beside and min(off) < far + TOUCHING and max(off) > -TOUCHING


def _corners(part: Trapezoid) -> Ring:
    return (
        (part.lower_left, part.lower),
        (part.lower_right, part.lower),
        (part.upper_right, part.upper),
        (part.upper_left, part.upper),
    )


def _seen(rings: Sequence[Ring], edge: Edge, far: Inches) -> tuple[Trapezoid, ...]:
    """Give what of outlines lies beside a valley, as it is seen along it: across it instead of u.

    What is left out lies further off than anything that runs through it.
    """
    seen = (_beside(ring, edge, far) for ring in rings)
    return tuple(part for ring in seen if len(ring) >= _LEAST_CORNERS for part in trapezoids(ring))


def _beside(ring: Ring, edge: Edge, far: Inches) -> Ring:
    """Give an outline as it is seen along a valley, cut off at its ends and where it is far off."""
    seen: Ring = tuple((edge.inside(corner), edge.along(corner)) for corner in ring)
    for axis, low, high in ((0, 0.0, far + 2 * TOUCHING), (1, 0.0, edge.length())):
        ends = [corner[axis] for corner in seen]
        if seen and min(ends) < low:
            seen = _cut(seen, low, below=False, axis=axis)
        if seen and max(ends) > high:
            seen = _cut(seen, high, below=True, axis=axis)
    return seen


def _unseen(point: Point, edge: Edge) -> Point:
    """Give a point that is seen along a valley as it lies on the plane."""
    u, v = edge.at(point[1])
    (au, av), (bu, bv) = edge.start, edge.end
    share = point[0] / edge.length()
    return u - (bv - av) * share, v + (bu - au) * share
