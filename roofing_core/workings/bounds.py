"""Bounds: what a layer covers of a plane, as straight lines that have a formula each.

A layer reaches past the edges of its plane or stops short of them; what is cut off there ends on
the edge so moved. A place on one is ``u = a + b v``, or on a level one ``v`` alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.workings.at import At
from roofing_core.workings.expressions import Expression, Step, evaluated
from roofing_core.workings.of_points import agrees
from roofing_core.workings.straight_lines import NOTHING, minus, plus

#: A point lies on an edge that is this near to it.
_NEAR = 1e-7


@dataclass(frozen=True, slots=True)
class Bound:
    """A straight edge of what a layer covers.

    Attributes:
        name: What it is called.
        lies: Whether it is level, upright, or neither.
        place: How high it lies, where it is level; where along the eave, where it is upright; else
            where it crosses height 0 of the plane, the a of ``u = a + b v``.
        lean: How far along the eave it goes for each inch up: the b.
    """

    name: str
    lies: Literal["level", "upright", "sloping"]
    place: Expression
    lean: Expression = NOTHING

    def across(self, height: Expression) -> Expression:
        """Give where along the eave it lies at a height."""
        return self.place if self.lies == "upright" else plus(self.place, self.lean * height)

    def up(self, place: Expression) -> Expression:
        """Give how high it lies at a place along the eave."""
        return self.place if self.lies == "level" else minus(place, self.place) / self.lean

    def is_at(self, u: Inches, v: Inches) -> bool:
        """Tell whether it goes through a point."""
        place = evaluated(self.place)
        if self.lies == "sloping":
            lean = evaluated(self.lean)
            return abs(place + lean * v - u) <= _NEAR * max(1.0, abs(lean))
        return abs(place - (v if self.lies == "level" else u)) <= _NEAR


@dataclass(frozen=True, slots=True)
class Past:
    """How far an edge is moved outwards; inwards where negative.

    Attributes:
        start: How far at its start.
        end: How far at its end.
    """

    start: Expression
    end: Expression


def bound(at: At, plane: int, edge: int, past: Past | None = None) -> Bound:
    """Give an edge of a plane, moved outwards as a layer reaches past it.

    Args:
        at: The plan.
        plane: The plane, from 0.
        edge: The edge, from 0.
        past: How far it is moved; not at all unless given.

    Returns:
        The edge.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Pyramid
    >>> from roofing_core.workings.expressions import Constant
    >>> peak = plan(Job(roof=Pyramid(length=192, width=192, pitch=0.75)))
    >>> left_hip = bound(At(peak, ()), 0, 2)
    >>> evaluated(left_hip.across(Constant(60, "in")))
    48.0
    """
    corners = at.plan.planes[plane].corners
    ends = edge, (edge + 1) % len(corners)
    (ua, va), (ub, vb) = (corners[n] for n in ends)
    kind = at.plan.planes[plane].edges[edge].replace("_", " ")
    name = f"the {kind} along edge {edge + 1} of {at.plan.planes[plane].name}"
    start, end = (
        tuple(at("planes/*/corners/*/*", plane, n, axis) for axis in (0, 1)) for n in ends
    )
    out = past.start if past else NOTHING
    if abs(va - vb) <= DUST:
        return Bound(name, "level", (minus if ub > ua else plus)(start[1], out))
    if abs(ua - ub) <= DUST:
        return Bound(name, "upright", (plus if vb > va else minus)(start[0], out))
    long = at("planes/*/lengths/*", plane, edge)
    if past is None or past.start == past.end:
        lean = Step(f"lean of {name}", "1", (end[0] - start[0]) / (end[1] - start[1]))
        foot = minus(start[0], lean * start[1] if va else NOTHING)
        base = plus(foot, NOTHING if out == NOTHING else out * long / (end[1] - start[1]))
        return Bound(name, "sloping", _step(f"place at height 0 of {name}", base), lean)
    along, up = (end[axis] - start[axis] for axis in (0, 1))
    moved = [
        (
            Step(f"{which} of {name}, moved, along the eave", "in", u + far * up / long),
            Step(f"{which} of {name}, moved, up the slope", "in", v - far * along / long),
        )
        for which, (u, v), far in (("start", start, past.start), ("end", end, past.end))
    ]
    (u0, v0), (u1, v1) = moved
    lean = Step(f"lean of {name}, moved", "1", (u1 - u0) / (v1 - v0))
    return Bound(
        name, "sloping", _step(f"place at height 0 of {name}, moved", u0 - lean * v0), lean
    )


def _step(name: str, formula: Expression) -> Expression:
    return formula if formula == NOTHING else Step(name, "in", formula)


@dataclass(frozen=True, slots=True)
class Places:
    """Where things on a plane can end: at edges of what covers it, and along other lines.

    Attributes:
        bounds: The edges.
        along: Places along the eave where things end square: joints, sides of openings.
        heights: Heights where they end level: butts, rows, sides of openings.
    """

    bounds: tuple[Bound, ...]
    along: tuple[Expression, ...] = ()
    heights: tuple[Expression, ...] = ()

    def u(self, value: Inches) -> Expression | None:
        """Give the upright line at a place along the eave."""
        tried = (*self.along, *(one.place for one in self.bounds if one.lies == "upright"))
        return next((one for one in tried if agrees(one, value)), None)

    def v(self, value: Inches) -> Expression | None:
        """Give the level line at a height."""
        tried = (*self.heights, *(one.place for one in self.bounds if one.lies == "level"))
        return next((one for one in tried if agrees(one, value)), None)


def corner_on(
    places: Places, point: tuple[Inches, Inches], axis: int, *, other: Expression
) -> Expression | None:
    """Give one number of a corner that something on a plane has: where two lines cross.

    Args:
        places: The lines.
        point: The corner (u, v).
        axis: Which of the two numbers, 0 for u.
        other: The other number, as a figure.

    Returns:
        The formula: the line that it lies on, or where a sloping edge is at the other number, or
        where two of them cross.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.workings.expressions import Constant
    >>> hip = Bound("hip", "sloping", Constant(100, "in"), Constant(-0.5))
    >>> places = Places((hip,), heights=(Constant(40, "in"),))
    >>> evaluated(corner_on(places, (80, 40), 0, other=Constant(40, "in")))
    80.0
    """
    on = [one for one in places.bounds if one.lies == "sloping" and one.is_at(*point)]
    straight = places.v(point[1]) if axis else places.u(point[0])
    if straight is not None:
        return straight
    held = places.u(point[0]) if axis else places.v(point[1])
    if axis == 0 or held is not None:
        tried: Iterator[Expression] = (one.up(other) if axis else one.across(other) for one in on)
    else:
        tried = (_crossed(one, two) for one, two in combinations(on, 2))
    return next((one for one in tried if agrees(one, point[axis])), None)


def _crossed(one: Bound, other: Bound) -> Expression:
    met = meeting(one, other)
    return NOTHING if met is None else met[1]


def meeting(one: Bound, other: Bound) -> tuple[Expression, Expression] | None:
    """Give where two edges meet, or would if they went on.

    Args:
        one: An edge.
        other: Another.

    Returns:
        The place along the eave and the height: of two that slope from ``a + b v = c + d v``;
        nothing for parallel ones.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.workings.expressions import Constant
    >>> hip = Bound("hip", "sloping", Constant(100, "in"), Constant(-0.5))
    >>> valley = Bound("valley", "sloping", NOTHING, Constant(0.5))
    >>> [evaluated(each) for each in meeting(hip, valley)]
    [50.0, 100.0]
    """
    if one.lies != "sloping" and one.lies == other.lies:
        return None
    for straight, edge in ((one, other), (other, one)):
        if straight.lies == "level":
            return edge.across(straight.place), straight.place
        if straight.lies == "upright":
            return straight.place, edge.up(straight.place)
    if abs(evaluated(one.lean) - evaluated(other.lean)) <= DUST:
        return None
    height = (other.place - one.place) / (one.lean - other.lean)
    named = Step(f"height at which {one.name} meets {other.name}", "in", height)
    return one.across(named), named
