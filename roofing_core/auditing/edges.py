"""Edges: the edges of the planes, and the metal that lies along each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import hypot

from roofing_core.auditing.finished import FinishedPlan, FinishedPlane, FinishedRun
from roofing_core.auditing.shapes import Point
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import EdgeKind

#: Edges that metal lies along, whatever is beyond them.
_WHOLLY = frozenset({"eave", "headwall"})


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

    def along(self, point: Point) -> Inches:
        """Give how far along it, from its start, a point beside it lies."""
        (au, av), (bu, bv) = self.start, self.end
        along = (bu - au) * (point[0] - au) + (bv - av) * (point[1] - av)
        return along / self.length()

    def beside(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """Give how far inside of it, and how far along it, each of several points lies."""
        (au, av), (bu, bv), long = self.start, self.end, self.length()
        along, up = (bu - au) / long, (bv - av) / long
        return tuple(
            [
                (along * (v - av) - up * (u - au), along * (u - au) + up * (v - av))
                for u, v in points
            ]
        )

    def from_it(self, point: Point) -> Inches:
        """Give how far a point is from it, or from its nearer end."""
        along = min(max(self.along(point), 0.0), self.length())
        u, v = self.at(along)
        return hypot(point[0] - u, point[1] - v)

    def at(self, along: Inches) -> Point:
        """Give the point that lies so far along it, or past an end of it."""
        (au, av), (bu, bv) = self.start, self.end
        share = along / self.length()
        return au + (bu - au) * share, av + (bv - av) * share

    def rises(self) -> bool:
        """Tell whether its end lies higher than its start."""
        return self.end[1] > self.start[1]

    def metal_name(self) -> str:
        """Give the name that a run of metal along it has; empty where none lies along it."""
        if self.kind == "rake":
            return "right_rake" if self.rises() else "left_rake"
        starts_here = self.kind == "pitch_break" and self.end[0] > self.start[0]
        alone = self.kind == "ridge" and not self.beyond
        return self.kind if self.kind in _WHOLLY or alone or starts_here else ""


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
