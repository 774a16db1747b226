"""Rows: the starters and courses of one plane as shapes, with their joints."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from operator import itemgetter
from typing import Literal, NamedTuple

from roofing_core.auditing.edges import Edge, edges_of
from roofing_core.auditing.finished import (
    FinishedCourse,
    FinishedPiece,
    FinishedPlan,
    FinishedPlane,
    FinishedStarter,
)
from roofing_core.auditing.gauges import Where
from roofing_core.auditing.shapes import (
    DUST,
    TOUCHING,
    Point,
    Span,
    Trapezoid,
    column,
    overlaps,
    rectangle,
    trapezoids,
)
from roofing_core.auditing.sweeping import Layer, joined
from roofing_core.measures.units import Inches

#: From where to where up the slope a trapezoid lies.
_heights = itemgetter(0, 1)


class Joint(NamedTuple):
    """Where two pieces of a row meet.

    Attributes:
        u: Its place along the eave.
        lower: Its lower end.
        upper: Its upper end.
        piece: The number of the piece on its left.
    """

    u: Inches
    lower: Inches
    upper: Inches
    piece: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A starter or a course.

    Attributes:
        part: Which of them it is.
        plane: The plane that it lies on.
        number: Of the course; 0 for a starter.
        butt: Height of its lower edge.
        top: Height of its upper edge.
        pieces: Its pieces from the left.
        shapes: The shape of each piece.
        lefts: Where each piece begins.
        joints: Its joints, from the left.
        stated: Where the plan says that they are, of those on the deck.
        shape: What its pieces cover together, lowest first.
    """

    part: Literal["starter", "course"]
    plane: str
    number: int
    butt: Inches
    top: Inches
    pieces: tuple[FinishedPiece, ...]
    shapes: tuple[tuple[Trapezoid, ...], ...]
    lefts: tuple[Inches, ...]
    joints: tuple[Joint, ...]
    stated: tuple[Inches, ...]
    shape: tuple[Trapezoid, ...]

    def where(self, u: Inches = 0.0, v: Inches = 0.0, *, piece: int = 0) -> Where:
        """Give a place on it."""
        return Where(self.plane, self.part, self.number, piece, u, v)

    def layer(self, order: int) -> Layer:
        """Give what it covers, as a layer."""
        return Layer(order=order, shape=self.shape)

    def plain_below(self, v: Inches) -> list[Span]:
        """Give from where to where it lies over all heights from its butt to one, from the left."""
        found, reached = [(float("-inf"), float("inf"))], self.butt
        parts = [one.between(one.lower, min(one.upper, v)) for one in self.shape if one.lower < v]
        for (lower, upper), row in groupby(parts, key=_heights):
            if abs(lower - reached) > DUST:
                return []
            across = [(max(one[2:4]), min(one[4:])) for one in row]
            found, reached = overlaps(found, across), upper
        return found if reached >= v else []

    def edge_below(self, u: Inches, v: Inches) -> Inches | None:
        """Give the height of its edge below a point that it covers; None where it does not."""
        last = bisect_right(self.lefts, u + TOUCHING)
        for k in range(last - 1, -1, -1):
            piece = self.pieces[k]
            if not piece.corners:
                within = u <= piece.right + TOUCHING and self.butt - DUST <= v <= self.top + DUST
                return self.butt if within else None
            for low, high in column(self.shapes[k], u):
                if low - DUST <= v <= high + DUST:
                    return low
        return None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneLaid:
    """One plane with its rows.

    Attributes:
        plane: The plane.
        deck: Its shape, without what openings take out of it.
        starters: Its starters.
        courses: Its courses, in the order of laying.
    """

    plane: FinishedPlane
    deck: tuple[Trapezoid, ...]
    starters: tuple[Row, ...]
    courses: tuple[Row, ...]

    def edges(self) -> tuple[Edge, ...]:
        """Give its edges."""
        return edges_of(self.plane)

    def column(self, u: Inches) -> list[Span]:
        """Give where the deck lies over one place along the eave."""
        return column(self.deck, u)

    def across(self, v: Inches) -> list[Span]:
        """Give where the deck lies at one height, from the left."""
        return [one.at(v) for one in self.deck if one.lower <= v <= one.upper]


def planes_laid(plan: FinishedPlan) -> tuple[PlaneLaid, ...]:
    """Give every plane of a plan with its rows as shapes.

    Args:
        plan: The plan.

    Returns:
        One entry per plane.

    Raises:
        Nothing: `sound` has looked at the plan.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.auditing.finished import finished
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> laid, = planes_laid(finished(shed))
    >>> [joint.u for joint in laid.courses[0].joints]
    [39.125, 78.5, 117.875, 157.25]
    """
    return tuple(
        PlaneLaid(
            plane=plane,
            deck=trapezoids(plane.corners, *_holes(plan, plane.name)),
            starters=tuple(_starter(one) for one in plan.starters if one.plane == plane.name),
            courses=tuple(_course(one) for one in plan.courses if one.plane == plane.name),
        )
        for plane in plan.planes
    )


def _holes(plan: FinishedPlan, plane: str) -> Iterator[tuple[Point, ...]]:
    """Give what openings take out of a plane."""
    for one in plan.openings:
        if one.plane == plane:
            left, right, lower, upper = one.left, one.right, one.lower, one.upper
            yield (left, lower), (right, lower), (right, upper), (left, upper)


def _starter(one: FinishedStarter) -> Row:
    top = one.butt + one.height
    return _row("starter", one.plane, 0, one.laid, one.joints, butt=one.butt, top=top)


def _course(one: FinishedCourse) -> Row:
    top = one.snap_line - one.top_trim
    return _row("course", one.plane, one.number, one.laid, one.joints, butt=one.butt, top=top)


def _row(
    part: Literal["starter", "course"],
    plane: str,
    number: int,
    laid: Sequence[FinishedPiece],
    stated: tuple[Inches, ...],
    *,
    butt: float,
    top: float,
) -> Row:
    pieces = tuple(sorted(laid, key=lambda piece: piece.left))
    joints = tuple(_joints(pieces, butt, top))
    shapes = tuple(
        trapezoids(piece.corners, *piece.cutouts)
        if piece.corners
        else (Trapezoid(butt, top, piece.left, piece.left, piece.right, piece.right),)
        for piece in pieces
    )
    return Row(
        part=part,
        plane=plane,
        number=number,
        butt=butt,
        top=top,
        pieces=pieces,
        shapes=shapes,
        lefts=tuple(piece.left for piece in pieces),
        joints=joints,
        stated=stated,
        shape=joined(_runs(pieces, shapes)),
    )


def _runs(
    pieces: Sequence[FinishedPiece], shapes: Sequence[tuple[Trapezoid, ...]]
) -> Iterator[Trapezoid]:
    """Give the shapes of pieces, those that are cut square as one as far as they touch."""
    run: Trapezoid | None = None
    for piece, shape in zip(pieces, shapes, strict=True):
        if piece.corners:
            yield from shape
            continue
        if run is None or not run.lower_right <= piece.right:
            yield from () if run is None else (run,)
            [run] = shape
        elif piece.left - run.lower_right <= TOUCHING:
            run = rectangle(run.lower_left, piece.right, run.lower, run.upper)
        else:
            yield run
            [run] = shape
    if run is not None:
        yield run


def _joints(pieces: Sequence[FinishedPiece], butt: float, top: float) -> Iterator[Joint]:
    """Give where pieces meet: upright lines, as high as both of them are there."""
    for one, other in pairwise(pieces):
        if other.left - one.right > TOUCHING:
            continue  # a gap, or another stretch of the row
        u = min(one.right, other.left)
        lower, upper = butt, top
        for piece in (one, other) if one.corners or other.corners else ():
            if piece.corners:
                beside = [v for at, v in piece.corners if abs(at - u) <= TOUCHING] or [top]
                lower, upper = max(lower, min(beside)), min(upper, max(beside))
        if upper > lower:
            yield Joint(u, lower, upper, one.number)


def stacked_rows(laid: PlaneLaid) -> Iterator[tuple[Row, Row, Inches]]:
    """Give what lies right under each course, the course, and up to where it shows.

    Under a course lies the one below; under the lowest along an eave lies the starter too.

    Args:
        laid: A plane with its rows.

    Returns:
        One entry per starter, then one per course but the lowest.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> list(stacked_rows(PlaneLaid(plane=None, deck=(), starters=(), courses=())))
    []
    """
    courses = laid.courses
    shows_to = [*(course.butt for course in courses[1:]), float("inf")]
    for starter in laid.starters:
        edge = max(starter.butt, min(one.lower for one in laid.deck))
        over = next((k for k, to in enumerate(shows_to[: len(courses)]) if to > edge + DUST), None)
        if over is not None:
            yield starter, courses[over], shows_to[over]
    yield from zip(courses, courses[1:], shows_to[1:], strict=False)
