"""Joins: the edges in which two planes meet, each once, and where such edges come together."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from roofing_core.auditing.edges import Edge, edges_of
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.shapes import Point
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import EdgeKind

Offered = TypeVar("Offered")


@dataclass(frozen=True, slots=True, kw_only=True)
class Join:
    """An edge in which two planes meet.

    Attributes:
        kind: What it is.
        first: The edge of the plane that comes first.
        second: The edge of the other plane, which is walked the other way.
    """

    kind: EdgeKind
    first: Edge
    second: Edge

    def length(self) -> Inches:
        """Give how long it is: of planes measured by hand, by the mean of both."""
        return (self.first.length() + self.second.length()) / 2

    def planes(self) -> frozenset[str]:
        """Give the names of its planes."""
        return frozenset((self.first.plane, self.second.plane))

    def between(self) -> str:
        """Say which planes it is between."""
        return f"between {self.first.plane} and {self.second.plane}"

    def sides(self) -> tuple[tuple[Edge, Edge], tuple[Edge, Edge]]:
        """Give the edge of each plane with that of the other."""
        return (self.first, self.second), (self.second, self.first)


def joins_of(plan: FinishedPlan) -> tuple[Join, ...]:
    """Give every edge in which two planes meet, once.

    Args:
        plan: The plan.

    Returns:
        One entry per such edge, in the order of the planes; of several between the same two planes
        the longest of one with the longest of the other.

    Raises:
        Nothing: `sound` has looked for edges that only one plane has.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Hip
    >>> roof = finished(plan(Job(roof=Hip(length=400, width=240, pitch=0.5))))
    >>> [join.kind for join in joins_of(roof)]
    ['hip', 'ridge', 'hip', 'hip', 'hip']
    """
    shared = shared_edges(plan)
    places = {plane.name: k for k, plane in enumerate(plan.planes)}
    return tuple(
        Join(kind=kind, first=ours, second=theirs)
        for (name, kind, other), edges in shared.items()
        if places[name] < places[other]
        for ours, theirs in zip(edges, shared.get((other, kind, name), ()), strict=False)
    )


def shared_edges(plan: FinishedPlan) -> dict[tuple[str, EdgeKind, str], list[Edge]]:
    """Give the edges that have a plane beyond, by plane, kind and plane beyond.

    Args:
        plan: The plan.

    Returns:
        The edges, the longest first.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> roof = finished(plan(Job(roof=Gable(length=400, width=240, pitch=0.5))))
    >>> list(shared_edges(roof))
    [('front', 'ridge', 'back'), ('back', 'ridge', 'front')]
    """
    found: dict[tuple[str, EdgeKind, str], list[Edge]] = {}
    for plane in plan.planes:
        for edge in edges_of(plane):
            if edge.beyond:
                found.setdefault((plane.name, edge.kind, edge.beyond), []).append(edge)
    for edges in found.values():
        edges.sort(key=lambda edge: -edge.length())
    return found


def with_theirs(
    joins: Iterable[Join],
    offered: Sequence[Offered],
    *,
    between: Callable[[Offered], Hashable],
    long: Callable[[Offered], Inches],
) -> tuple[tuple[Join, int], ...]:
    """Give every join with what lies along it, the longest join with the longest that is offered.

    Args:
        joins: The joins.
        offered: What lies along joins.
        between: Gives the names of the planes that one of these lies between.
        long: Gives its length.

    Returns:
        The joins in their order, each with the place of what lies along it; -1 where nothing does.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> with_theirs((), (), between=hash, long=float)
    ()
    """
    every = tuple(joins)
    left = sorted(range(len(offered)), key=lambda k: -long(offered[k]))
    found: dict[int, int] = {}
    for n in sorted(range(len(every)), key=lambda n: -every[n].length()):
        names = every[n].planes()
        k = next((k for k in left if between(offered[k]) == names), -1)
        found[n] = k
        if k >= 0:
            left.remove(k)
    return tuple((join, found[n]) for n, join in enumerate(every))


class Meeting:
    """Where edges come together: corners of neighbouring planes that are one point of the roof.

    Args:
        joins: The joins of the roof.
    """

    def __init__(self, joins: Iterable[Join]) -> None:
        self._same: dict[tuple[str, Point], tuple[str, Point]] = {}
        for join in joins:
            ours, theirs = join.first, join.second
            self._put_together(ours.plane, ours.start, theirs.plane, theirs.end)
            self._put_together(ours.plane, ours.end, theirs.plane, theirs.start)

    def point(self, plane: str, corner: Point) -> tuple[str, Point]:
        """Give a corner that stands for all corners at the same point of the roof."""
        at = (plane, corner)
        while self._same.get(at, at) != at:
            at = self._same[at]
        return at

    def _put_together(self, plane: str, corner: Point, other: str, its: Point) -> None:
        self._same[self.point(plane, corner)] = self.point(other, its)
