"""Closed valleys: where the shingles of one plane run through, and those of the other are cut.

Seen square to the valley both planes are one. So what runs through is turned about the valley on to
the plane of those that are cut, and judged there as what lies under them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.edges import Edge
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import TOUCHING, Point, Trapezoid, trapezoids
from roofing_core.auditing.sweeping import Cell, Layer, cells, joined, region
from roofing_core.measures.units import Inches

#: So many layers of shingle lie over every point.
_LAYERS = 2

#: An outline has so many corners or more.
_LEAST_CORNERS = 3

#: What is swept along a valley, in the order of laying.
_DECK, _TWICE, _OWN, _OVER = range(4)

Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Through:
    """The shingles of one plane that run through a valley.

    Attributes:
        edge: The edge of the plane whose shingles are cut.
        twice: Where two layers of them lie, as outlines on that plane.
        beyond: Where none of them can lie: below the eave of their plane, and above its top. What
            lines the valley covers it there.
        far: How far they reach at most.
    """

    edge: Edge
    twice: tuple[Ring, ...]
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
    rows = [[*_beyond(row, other)] for row in (*laid.starters, *laid.courses)]
    corners = [corner for rings in rows for ring in rings for corner in ring]
    if not corners:
        return None
    far = max(0.0, *(-other.inside(corner) for corner in corners))
    ends = _strip(other, lined, past=far) if lined > 0 else ()
    eave, top = min(one.lower for one in laid.deck), max(one.upper for one in laid.deck)
    zones = (_cut(ends, eave, below=True), _cut(ends, top, below=False))
    return Through(
        edge=edge,
        twice=tuple(_turned(ring, edge, other) for ring in _twice(rows)),
        beyond=tuple(_turned(zone, edge, other) for zone in zones if len(zone) >= _LEAST_CORNERS),
        far=far,
    )


def _twice(rows: Sequence[Sequence[Ring]]) -> Iterator[Ring]:
    """Give where two of several rows lie, as outlines."""
    layers = [
        Layer(order=k, shape=joined(part for ring in rings for part in trapezoids(ring)))
        for k, rings in enumerate(rows)
    ]
    return map(_corners, region(cells(layers), lambda cell: len(cell.layers) >= _LAYERS))


def _ring(row: Row, k: int) -> Ring:
    """Give the outline of a piece of a row."""
    piece = row.pieces[k]
    if piece.corners:
        return piece.corners
    left, right, lower, upper = piece.left, piece.right, row.butt, row.top
    return (left, lower), (right, lower), (right, upper), (left, upper)


def _beyond(row: Row, edge: Edge) -> Iterator[Ring]:
    """Give the outlines of the pieces of a row that run over an edge of its plane, and on from it.

    Pieces that lie beyond the line of the edge somewhere else on the plane are none of these.
    """
    (left, right), (low, high) = (sorted(ends) for ends in zip(edge.start, edge.end, strict=True))
    if not row.shape or row.shape[0].lower > high or row.shape[-1].upper < low:
        return
    near = [
        k
        for k, piece in enumerate(row.pieces)
        if piece.corners or (piece.left <= right and piece.right >= left)
    ]
    across = {k for k in near if _crosses(_ring(row, k), edge)}
    found = {*across}
    for first in across:
        for way in (1, -1):
            k = first + way
            while 0 <= k < len(row.pieces) and _goes_on(row, k, k - way, edge):
                found.add(k)
                k += way
    yield from (_ring(row, k) for k in sorted(found))


def _goes_on(row: Row, k: int, other: int, edge: Edge) -> bool:
    """Tell whether a piece lies beyond an edge and touches another."""
    one, two = row.pieces[min(k, other)], row.pieces[max(k, other)]
    if two.left - one.right > TOUCHING:
        return False
    return sum(off for off, _ in edge.beside(_ring(row, k))) < 0


def _crosses(ring: Ring, edge: Edge) -> bool:
    """Tell whether an outline lies on both sides of an edge, between its ends."""
    seen = edge.beside(ring)
    off = [at for at, _ in seen]
    if min(off) > -TOUCHING or max(off) < -TOUCHING:
        return False
    places = []
    for (at, here), (to, there) in zip(seen, (*seen[1:], seen[0]), strict=True):
        if (at < 0) != (to < 0):
            places.append(here + (there - here) * at / (at - to))
    return bool(places) and min(places) < edge.length() and max(places) > 0


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
    through: Through,
    laid: PlaneLaid,
    covers: Sequence[Cover],
    gauges: Mapping[str, Gauge],
    *,
    own: Sequence[Trapezoid],
) -> None:
    """Ask all along a closed valley how far what runs through reaches on under the cut shingles.

    Args:
        through: What runs through.
        laid: The plane whose shingles are cut, with its rows.
        covers: What covers its edges.
        gauges: Where to note it.
        own: Where two layers of its own shingles lie.

    Raises:
        Nothing.

    Source:
        Geometry: the plane is swept along the valley, square to it.

    >>> edge = Edge(plane="b", kind="valley", start=(0, 0), end=(9, 9), beyond="a")
    >>> nothing = PlaneLaid(plane=None, deck=(), starters=(), courses=())
    >>> ask_cut_edge(Through(edge=edge, twice=(), beyond=(), far=1.0), nothing, (), {}, own=())
    """
    edge = through.edge
    over = [*through.beyond, *(_corners(part) for one in covers for part in one.shape)]
    deck, cut = ([_corners(part) for part in shape] for shape in (laid.deck, own))
    rings = (deck, through.twice, cut, over)
    layers = [Layer(order=k, shape=_seen(each, edge, through.far)) for k, each in enumerate(rings)]
    for row_of_cells in cells(layers):
        for edge_of, lap in _laps([cell for cell in row_of_cells if _DECK in cell.layers]):
            u, v = _unseen(edge_of, edge)
            gauges["valleys.lap"].see(lap, Where(laid.plane.name, "valley", 0, 0, u, v))


def _laps(on_deck: Iterable[Cell]) -> Iterator[tuple[Point, Inches]]:
    """Give how far two layers that run through go on from where they lie bare."""
    bare: Trapezoid | None = None
    for cell in on_deck:
        if _OVER in cell.layers:
            bare = None
        elif _TWICE in cell.layers and _OWN not in cell.layers:
            bare = cell.lies
        elif bare is not None and _TWICE not in cell.layers:
            lies = cell.lies
            laps = (lies.lower_left - bare.lower_right, lies.upper_left - bare.upper_right)
            yield (bare.lower_right, bare.lower), min(laps)
            bare = None


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
    seen: Ring = edge.beside(ring)
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
