"""Edges: the edges of the planes, what covers each from above, and the metal that lies along it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from roofing_core.auditing.finished import FinishedPlan, FinishedPlane, FinishedRun
from roofing_core.auditing.shapes import TOUCHING, Point, Trapezoid, strip_beside, trapezoids
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import EdgeKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """One edge of a plane.

    Attributes:
        plane: The plane.
        kind: What it is.
        start: The corner that it leaves, with the plane on its left.
        end: The corner that it leads to.
        beyond: The plane on its far side; empty where there is none.
    """

    plane: str
    kind: EdgeKind
    start: Point
    end: Point
    beyond: str

    def length(self) -> Inches:
        """Give how long it is."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def inside(self, point: Point) -> Inches:
        """Give how far a point lies on the plane's side of it."""
        (au, av), (bu, bv) = self.start, self.end
        across = (bu - au) * (point[1] - av) - (bv - av) * (point[0] - au)
        return across / self.length()

    def beside(self, point: Point) -> bool:
        """Tell whether a point lies beside it, not past its ends."""
        (au, av), (bu, bv) = self.start, self.end
        along = (bu - au) * (point[0] - au) + (bv - av) * (point[1] - av)
        return -TOUCHING <= along / self.length() <= self.length() + TOUCHING

    def metal_name(self) -> str:
        """Give the name that a run of metal along it has; empty where none lies along it."""
        if self.kind == "rake":
            return "right_rake" if self.end[1] > self.start[1] else "left_rake"
        alone = self.kind == "ridge" and not self.beyond
        return self.kind if self.kind == "eave" or alone else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """What covers a strip along an edge from above: a leg of metal, or half of the caps.

    Attributes:
        edge: The edge.
        width: How far it reaches down from the edge.
        shape: The strip.
    """

    edge: Edge
    width: Inches
    shape: tuple[Trapezoid, ...]

    def over(self, point: Point) -> Inches:
        """Give how far it reaches past a point beside its edge; 0 where it does not cover it."""
        if not self.edge.beside(point):
            return 0.0
        return max(0.0, self.width - self.edge.inside(point))


def edges_of(plane: FinishedPlane) -> tuple[Edge, ...]:
    """Give the edges of a plane.

    Args:
        plane: The plane.

    Returns:
        One entry per edge, from the edge that leaves the first corner.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> corners, edges = ((0, 0), (9, 0), (9, 5), (0, 5)), ("eave", "rake", "ridge", "rake")
    >>> end = FinishedPlane(name="end", corners=corners, edges=edges, beyond=("",) * 4, pitch=0.5)
    >>> [edge.metal_name() for edge in edges_of(end)]
    ['eave', 'right_rake', 'ridge', 'left_rake']
    """
    ahead = (*plane.corners[1:], plane.corners[0])
    return tuple(
        Edge(plane=plane.name, kind=kind, start=start, end=end, beyond=beyond)
        for kind, start, end, beyond in zip(
            plane.edges, plane.corners, ahead, plane.beyond, strict=True
        )
    )


def runs_along(plan: FinishedPlan) -> Iterator[tuple[Edge, FinishedRun | None]]:
    """Give every edge that takes metal with its run, the longest edge with the longest run.

    Args:
        plan: The plan.

    Returns:
        One entry per edge, plane by plane; without a run where there is none for it.

    Raises:
        Nothing.

    Source:
        Edge metal at eaves and rakes: IRC R905.2.8.5, 2018.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [run.edge for _, run in runs_along(finished(shed))]
    ['eave', 'right_rake', 'ridge', 'left_rake']
    """
    left = sorted(plan.metal, key=lambda run: -run.run_length)
    edges = [edge for plane in plan.planes for edge in edges_of(plane) if edge.metal_name()]
    found: dict[int, FinishedRun] = {}
    for edge in sorted(edges, key=lambda edge: -edge.length()):
        run = next((run for run in left if lies_along(run, edge)), None)
        if run is not None:
            found[id(edge)] = run
            left.remove(run)
    return ((edge, found.get(id(edge))) for edge in edges)


def lies_along(run: FinishedRun, edge: Edge) -> bool:
    """Tell whether a run of metal is one for an edge.

    Args:
        run: The run.
        edge: The edge.

    Returns:
        Whether its name and its plane are the edge's.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> from dataclasses import replace
    >>> eave = Edge(plane="front", kind="eave", start=(0, 0), end=(9, 0), beyond="")
    >>> run = FinishedRun(edge="eave", run_length=9, tab=0, lengths=(9,), lap=6,
    ...                   lap_direction="either", laps=(), nails=2, deck_leg=2.5)
    >>> lies_along(run, eave), lies_along(replace(run, plane="back"), eave)
    (True, False)
    """
    return run.edge == edge.metal_name() and run.plane in ("", edge.plane)


def covers_of(plan: FinishedPlan) -> dict[str, tuple[Cover, ...]]:
    """Give what covers the edges of each plane from above.

    Args:
        plan: The plan.

    Returns:
        For each plane, the metal over its top edges.

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
    for edge, run in runs_along(plan):
        if run is not None and run.edge == "ridge":
            found[edge.plane].append(_cover(edge, run.deck_leg))
    return {name: tuple(covers) for name, covers in found.items()}


def _cover(edge: Edge, width: float) -> Cover:
    shape = trapezoids(strip_beside(edge.start, edge.end, width))
    return Cover(edge=edge, width=width, shape=shape)
