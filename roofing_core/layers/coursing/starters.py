"""Starters: the strip under the first course, along every eave and pitch break of a plane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from roofing_core.layers.coursing.courses import Courses
from roofing_core.layers.coursing.field import Field
from roofing_core.layers.coursing.joint_lines import joints_on
from roofing_core.layers.coursing.joints import clearance_between
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.pieces import Piece, Row, Strip, pieces_of
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.outlines import EdgeKind, RoofPlane, is_lower
from roofing_core.roof.regions import FIRST_HOLE
from roofing_core.roof.slicing import Point, Region, Stretch

#: Common practice, no published source: a starter is nailed this far above its lower edge, or
#: half-way up where it is low.
STARTER_NAIL_HEIGHT = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidStarter:
    """The starter along one eave, or along a pitch break, as it is laid.

    Attributes:
        butt: Height of its lower edge, negative below the eave metal.
        height: Of the strip.
        piece_length: Of a whole piece.
        trim: Length trimmed from its first piece; along a higher eave by as much more as the course
            over it is trimmed more than the first course.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        clearance: Least distance from one of its joints to one of the course over it.
        overhang: How far the last piece runs past the trim line before it is trimmed.
        nails: Nails in its pieces.
        laid: One entry per piece, from the left.
        plane: The plane that it lies on.
        edge: What it lies along.
        area: Of all its pieces as they lie.
    """

    butt: Inches
    height: Inches
    piece_length: Inches
    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    clearance: Inches
    overhang: Inches
    nails: int
    laid: tuple[Piece, ...]
    plane: str
    edge: EdgeKind
    area: SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class StarterWay:
    """How starters lie.

    Attributes:
        past_metal: How far a starter stands past the metal.
        height: Of the strip.
        trim: Length trimmed from the first piece under the first course.
        strip: What they are cut from.
    """

    past_metal: Inches
    height: Inches
    trim: Inches
    strip: Strip


def lay_starters(
    field: Field, way: StarterWay, *, courses: Sequence[LaidCourse]
) -> tuple[LaidStarter, ...]:
    """Lay the starters of a plane: one along each eave and along a pitch break below it.

    Args:
        field: The plane made ready.
        way: How they lie.
        courses: The courses of the plane.

    Returns:
        One entry per such edge, in the order of the plane's edges.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.regions import region_of
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> plane = surfaces(Hip(length=168, width=120, pitch=0.75)).planes[0]
    >>> region = region_of(plane, past={"eave": 0.5})
    >>> field = Field(plane=plane, deck=region_of(plane), region=region, valleys=(), start_line=0,
    ...               sequence=(0,), edge_distance=0.75)
    >>> strip = Strip(length=36, nails=(1, 13, 23, 35), end_distance=1)
    >>> way = StarterWay(past_metal=0.25, height=7, trim=4, strip=strip)
    >>> lay_starters(field, way, courses=())[0].joints
    (32, 68, 104, 140)
    """
    edges = range(len(field.plane.edges))
    return tuple(_starter(field, k, way, courses) for k in edges if is_lower(field.plane, k))


def joints_under(field: Field, lines: Courses, way: StarterWay) -> dict[int, tuple[Inches, ...]]:
    """Give where the pieces of the starters will meet, before any course is laid over them.

    Args:
        field: The plane made ready.
        lines: Where its courses lie up the slope.
        way: How starters lie.

    Returns:
        The joints of the starters under a course, by its number.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.layers.coursing.courses import courses
    >>> from roofing_core.roof.outlines import rectangle
    >>> from roofing_core.roof.regions import region_of
    >>> plane = rectangle(168, slope_length=112)
    >>> deck = region_of(plane)
    >>> field = Field(plane=plane, deck=deck, region=deck, valleys=(), start_line=0,
    ...               sequence=(0, 6), edge_distance=0.75)
    >>> strip = Strip(length=36, nails=(1, 13, 23, 35), end_distance=1)
    >>> way = StarterWay(past_metal=0.25, height=7, trim=4, strip=strip)
    >>> joints_under(field, courses(112, shingle_height=12, exposure=5), way)
    {1: (32, 68, 104, 140)}
    """
    found: dict[int, tuple[Inches, ...]] = {}
    sequence = field.sequence
    for k, (_, edge_v) in enumerate(field.plane.corners):
        over = next((line for line in lines.courses if line.butt + line.exposure > edge_v), None)
        if over is None or not is_lower(field.plane, k):
            continue
        trim = _trim_under(sequence[(over.number - 1) % len(sequence)], edge_v, field, way)
        joints = _joints(field, way, _stretches(field, k, way), edge_v, trim)
        found[over.number] = (*found.get(over.number, ()), *joints)
    return found


def _starter(field: Field, k: int, way: StarterWay, courses: Sequence[LaidCourse]) -> LaidStarter:
    plane, strip, edge_v = field.plane, way.strip, field.plane.corners[k][1]
    butt = edge_v - way.past_metal
    stretches = _stretches(field, k, way)
    over = next((one for one in courses if one.butt + one.exposure > edge_v), None)
    trim = _trim_under(over.trim, edge_v, field, way) if over else way.trim
    row = Row(
        butt=butt,
        lower=butt,
        upper=_upper(field, edge_v, way),
        start_line=field.start_line,
        trim=trim,
        nail_height=min(STARTER_NAIL_HEIGHT, way.height / 2),
        joints_over=over.joints if over else (),
    )
    pieces = pieces_of(stretches, row=row, strip=strip, deck=field.deck, valleys=field.valleys)
    joints = _joints(field, way, stretches, edge_v, trim)
    long = stretches[-1].right - stretches[0].left if stretches else 0.0
    return LaidStarter(
        butt=butt,
        height=way.height,
        piece_length=strip.length,
        trim=trim,
        pieces=len(pieces),
        joints=joints,
        clearance=clearance_between(joints, over.joints if over else (), none=long),
        overhang=max(0.0, strip.length - pieces[-1].shingle_to) if pieces else 0.0,
        nails=sum(len(piece.nails) for piece in pieces),
        laid=pieces,
        plane=plane.name,
        edge=plane.edges[k],
        area=sum(one.area() for one in stretches),
    )


def _upper(field: Field, edge_v: float, way: StarterWay) -> float:
    return min(edge_v - way.past_metal + way.height, field.region.highest)


def _stretches(field: Field, k: int, way: StarterWay) -> tuple[Stretch, ...]:
    """Give where the starter along an edge lies."""
    plane = field.plane
    (left, edge_v), (right, _) = plane.corners[k], plane.corners[(k + 1) % len(plane.corners)]
    return tuple(
        one
        for stretch in field.region.between(edge_v - way.past_metal, _upper(field, edge_v, way))
        for one in _along(plane, k, stretch)
        if one.left < right and one.right > left
    )


def _joints(
    field: Field, way: StarterWay, stretches: Sequence[Stretch], edge_v: float, trim: float
) -> tuple[float, ...]:
    on_deck = field.deck.between(edge_v, _upper(field, edge_v, way))
    long = way.strip.length
    return joints_on(stretches, on_deck, trim=trim, start_line=field.start_line, long=long)


def _trim_under(over: float, edge_v: float, field: Field, way: StarterWay) -> float:
    """Give the trim along a higher eave: under its course as the own trim is under the first."""
    more = over - field.sequence[0]
    is_lowest = edge_v <= min(v for _, v in field.plane.corners) + DUST
    return way.trim if is_lowest or not more else (way.trim + more) % way.strip.length


def _along(plane: RoofPlane, k: int, stretch: Stretch) -> tuple[Stretch, ...]:
    """Give the part of a stretch that lies along an eave, not beside it where the plane goes on."""
    n, far = len(plane.corners), stretch.right - stretch.left + 1
    (left, _), (right, _) = plane.corners[k], plane.corners[(k + 1) % n]
    beside = [
        *([(left - far, left)] if _bends_in(plane, k) else []),
        *([(right, right + far)] if _bends_in(plane, (k + 1) % n) else []),
    ]
    if not beside:
        return (stretch,)
    low, high = stretch.lower, stretch.upper
    rings: list[list[Point]] = [
        [
            (part.lower_left, part.lower), (part.lower_right, part.lower),
            (part.upper_right, part.upper), (part.upper_left, part.upper),
        ]
        for part in stretch.parts
    ]  # fmt: skip
    edges = [[FIRST_HOLE, part.right.edge, FIRST_HOLE, part.left.edge] for part in stretch.parts]
    rings += [[(a, low), (a, high), (b, high), (b, low)] for a, b in beside]
    return Region(rings, [*edges, *([FIRST_HOLE] * 4 for _ in beside)]).between(low, high)


def _bends_in(plane: RoofPlane, k: int) -> bool:
    """Tell whether a plane goes on below the eave past one of its corners."""
    corners = plane.corners
    (bu, bv), (u, v), (au, av) = corners[k - 1], corners[k], corners[(k + 1) % len(corners)]
    return (u - bu) * (av - v) - (v - bv) * (au - u) < 0
