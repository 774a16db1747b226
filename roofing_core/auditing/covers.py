"""Covers: what covers the edges of a plane and the lower sides of openings from above."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import hypot, inf

from roofing_core.auditing.cap_lines import caps_along, spans_of
from roofing_core.auditing.edges import Edge, runs_along
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedOpening
from roofing_core.auditing.joins import joins_of
from roofing_core.auditing.shapes import TOUCHING, Point, Span, Trapezoid, strip_beside, trapezoids
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """What covers a strip along an edge from above: a leg of metal, or half of the caps.

    Attributes:
        edge: The edge.
        width: How far it reaches down from the edge.
        spans: From where to where along the edge it lies.
        is_metal: Whether what it covers is nailed as the last course under metal is: through its
            face, bedded and dabbed.
        shape: The strip.
    """

    edge: Edge
    width: Inches
    spans: tuple[Span, ...]
    is_metal: bool
    shape: tuple[Trapezoid, ...]

    def over(self, point: Point) -> Inches:
        """Give how far it reaches past a point beside its edge; 0 where it does not cover it.

        Caps also go round the ends of their line, where those of another line meet them.
        """
        inside, along = self.edge.beside((point,))[0]
        if inside >= self.width:
            return 0.0
        past = min((max(low - along, along - high, 0.0) for low, high in self.spans), default=inf)
        if self.is_metal and past > TOUCHING:
            return 0.0
        return max(0.0, self.width - hypot(inside, past))


def covers_of(plan: FinishedPlan) -> dict[str, tuple[Cover, ...]]:
    """Give what covers the edges of each plane from above.

    Args:
        plan: The plan.

    Returns:
        For each plane: metal over its top edges, caps on its hips and ridges, and what lies over
        the courses below its openings.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> covers_of(finished(shed))["slope"][0].width
    6.0
    """
    found: dict[str, list[Cover]] = {plane.name: [] for plane in plan.planes}
    for cover in (*_metal(plan), *_caps(plan), *_below_openings(plan.openings)):
        found[cover.edge.plane].append(cover)
    return {name: tuple(covers) for name, covers in found.items()}


def _metal(plan: FinishedPlan) -> Iterator[Cover]:
    """Give the metal over top edges, at the feet of walls, and over the top of a lower slope."""
    for edge, run in runs_along(plan):
        if run is not None and run.edge in {"ridge", "headwall"}:
            yield cover(edge, run.deck_leg, is_metal=True)
    breaks = {
        (run.plane, run.beyond): run.face_leg for run in plan.metal if run.edge == "pitch_break"
    }
    for join in joins_of(plan):
        for edge, other in join.sides():
            leg = breaks.get((other.plane, edge.plane), 0.0)
            if join.kind == "pitch_break" and not edge.metal_name() and leg > 0:
                yield cover(edge, leg, is_metal=True)


def _caps(plan: FinishedPlan) -> Iterator[Cover]:
    for join, k in caps_along(plan):
        if k >= 0 and plan.caps[k].half_width > 0:
            for edge, _ in join.sides():
                spans = spans_of(plan, plan.caps[k], edge, turned=edge is join.second)
                yield cover(edge, plan.caps[k].half_width, spans=spans)


def _below_openings(openings: Iterable[FinishedOpening]) -> Iterator[Cover]:
    """Give aprons, and the lower halves of the bases of pipes: what lies over the courses there."""
    for one in openings:
        sizes = [(piece.length / 2, piece.deck_leg) for piece in one.aprons]
        half = (one.right - one.left) / 2
        sizes += [(half + pipe.side_flange, pipe.slope_flange) for pipe in one.pipes]
        middle = (one.left + one.right) / 2
        for reach, leg in sizes:
            if reach > 0 and leg > 0:
                start, end = (middle + reach, one.lower), (middle - reach, one.lower)
                yield cover(
                    Edge(plane=one.plane, kind="headwall", start=start, end=end, beyond=""), leg
                )


def cover(
    edge: Edge,
    width: Inches,
    *,
    spans: tuple[Span, ...] | None = None,
    is_metal: bool = False,
) -> Cover:
    """Give what covers a strip along an edge.

    Args:
        edge: The edge.
        width: How far it reaches down from the edge, over 0.
        spans: From where to where along the edge; all of it unless given.
        is_metal: Whether it is metal along the whole edge.

    Returns:
        The cover with its shape.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> ridge = Edge(plane="front", kind="ridge", start=(90, 60), end=(0, 60), beyond="back")
    >>> cover(ridge, 6).over((45, 58))
    4.0
    """
    along = spans if spans is not None else ((0.0, edge.length()),)
    strips = (strip_beside(edge.at(low), edge.at(high), width) for low, high in along)
    return Cover(
        edge=edge,
        width=width,
        spans=along,
        is_metal=is_metal,
        shape=tuple(part for strip in strips for part in trapezoids(strip)),
    )
