"""The working of points in space: where the planes of a roof meet over its deck."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from roofing_core.measures.units import Inches
from roofing_core.workings.at import At
from roofing_core.workings.deck_sides import DeckSide, Rising, deck_sides
from roofing_core.workings.expressions import Constant, Expression, Figure, Step, evaluated
from roofing_core.workings.straight_lines import (
    NOTHING,
    StraightLine,
    crossing_of,
    minus,
    plus,
    times,
)

#: A point lies on a line or a plane that it is this near to.
_NEAR = 1e-6

#: A formula is a figure's that comes to it within this part of it.
_AGREES = 5e-10

_CORNER = 2
"""Points of a single slope from here on lie at its top edge."""


def agrees(formula: Expression, value: Inches) -> bool:
    """Tell whether a formula comes to a figure.

    Args:
        formula: The formula.
        value: The figure.

    Returns:
        Whether it does, but for the dust of a few sums.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> agrees(Constant(3), 3.0000001), agrees(Constant(3), 3)
    (False, True)
    """
    return abs(evaluated(formula) - value) <= _AGREES * max(1.0, abs(value))


@dataclass(frozen=True, slots=True)
class _Plane:
    """A plane of the plan with the side of the deck that it rises from."""

    number: int
    side: DeckSide
    rising: Rising
    pitch: Figure

    def level(self, x: Expression, y: Expression) -> Expression:
        """Give how far inside its side a point lies, level."""
        (x0, y0), (dx, dy) = self.side.start, self.side.way
        return minus(times(dx, minus(y, y0)), times(dy, minus(x, x0)))


def pitch_of(at: At, number: int) -> Expression | None:
    """Give the pitch of a plane as it was measured.

    Args:
        at: The plan.
        number: The plane, from 0.

    Returns:
        The formula; nothing where the plan does not keep what was measured.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Pyramid
    >>> peak = plan(Job(roof=Pyramid(length=240, width=192, rise=60)))
    >>> evaluated(pitch_of(At(peak, ()), 1))
    0.5
    """
    found = _plane(at, number, deck_sides(at))
    return found.rising.pitch if found else None


def _plane(at: At, number: int, sides: Sequence[DeckSide]) -> _Plane | None:
    """Find the side that a plane rises from: that on whose plane all its corners lie."""
    return at.known.kept(("side of", number), lambda: _found_side(at, number, sides))


def _found_side(at: At, number: int, sides: Sequence[DeckSide]) -> _Plane | None:
    plane = at.plan.planes[number]
    for side in sides:
        for rising in side.rising:
            if not agrees(rising.pitch, plane.pitch):
                continue
            found = _Plane(number, side, rising, at("planes/*/pitch", number))
            if all(_is_on(found, point) for point in plane.points):
                return found
    return None


def _is_on(plane: _Plane, point: Sequence[Inches]) -> bool:
    x, y, height = point
    level = evaluated(plane.level(Constant(x), Constant(y))) - evaluated(plane.rising.after)
    rise = evaluated(plane.rising.height) + evaluated(plane.pitch) * level
    return abs(rise - height) <= _NEAR * max(1.0, abs(height), evaluated(plane.pitch))


def point(at: At) -> Expression | None:
    """Give one of the three numbers of a corner of a plane in space.

    Args:
        at: The plan, at the number.

    Returns:
        The formula: a corner of the deck, or where two lines cross in plan, and how high the plane
        is there; nothing where the plan does not keep what was measured.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> barn = plan(Job(roof=Gable(length=240, width=192, pitch=0.75)))
    >>> [evaluated(point(At(barn, ("planes", 0, "points", 2, axis)))) for axis in (0, 1, 2)]
    [240, 96.0, 72.0]
    """
    if at.plan.roof.form == "single_slope":
        return _of_single(at, int(at.path[3]), int(at.path[4]))
    number, corner, axis = (int(at.path[k]) for k in (1, 3, 4))
    sides = deck_sides(at)
    mine = _plane(at, number, sides)
    if mine is None:
        return None
    if axis == len(("x", "y")):
        return _height(at, mine, corner)
    where = at.plan.planes[number].points[corner]
    for tried in _places(at, sides, where):
        if all(agrees(tried[k], where[k]) for k in (0, 1)):
            return _said(tried[axis])
    return None


def _said(formula: Expression) -> Expression:
    return Constant(0, "in") if formula == NOTHING else formula


def _of_single(at: At, corner: int, axis: int) -> Expression:
    far = corner in (1, 2) if axis == 0 else corner >= _CORNER
    size = ("eave_length", "run", "rise")[axis]
    return at(f"roof/{size}") if far else Constant(0, "in")


def _height(at: At, plane: _Plane, corner: int) -> Expression | None:
    x, y, height = (at.near(n) for n in range(3))
    level = minus(plane.level(x, y), plane.rising.after)
    name = at.plan.planes[plane.number].name
    run = Step(f"run of {name} up to corner {corner + 1}", "in", level)
    if abs(evaluated(level)) <= _NEAR:
        found = plane.rising.height
    else:
        found = plus(plane.rising.height, plane.pitch * run)
    return _said(found) if agrees(found, height.value) else None


def _places(
    at: At, sides: Sequence[DeckSide], where: Sequence[Inches]
) -> Iterator[tuple[Expression, Expression]]:
    """Give the ways to say where a point lies in plan, the plainest first."""
    for side in sides:
        x, y = side.start
        if max(abs(evaluated(x) - where[0]), abs(evaluated(y) - where[1])) <= _NEAR:
            yield x, y
    for one, other in combinations(_lines(at, sides, where), 2):
        crossed = crossing_of(one, other)
        if crossed is not None:
            yield crossed


def _lines(at: At, sides: Sequence[DeckSide], where: Sequence[Inches]) -> Iterator[StraightLine]:
    """Give the lines in plan that a point lies on: sides, pitch breaks, and where planes meet."""
    here = [
        plane
        for n, one in enumerate(at.plan.planes)
        if where in one.points and (plane := _plane(at, n, sides))
    ]
    for side in sides:
        line = _inside(side, NOTHING, side.name)
        if _goes_through(line, where):
            yield line
    for plane in here:
        name = at.plan.planes[plane.number].name
        line = _inside(plane.side, plane.rising.after, f"the foot of {name}")
        if plane.rising.after != NOTHING and _goes_through(line, where):
            yield line
    for one, other in combinations(here, 2):
        if one.side != other.side:
            yield _meeting(at, one, other)


def _goes_through(line: StraightLine, where: Sequence[Inches]) -> bool:
    a, b, c = (evaluated(each) for each in (line.a, line.b, line.c))
    return abs(a * where[0] + b * where[1] - c) <= _NEAR


def _inside(side: DeckSide, far: Expression, name: str) -> StraightLine:
    """Give the line that runs along a side, so far inside it."""
    (x0, y0), (dx, dy) = side.start, side.way
    base = minus(times(dx, y0), times(dy, x0))
    if isinstance(dx, Step):
        base = Step(f"c of {side.name}", "in", base)
    return StraightLine(minus(NOTHING, dy), dx, plus(base, far), name)


def _meeting(at: At, one: _Plane, other: _Plane) -> StraightLine:
    """Give the line in plan where two planes are equally high."""
    first, second = (_inside(plane.side, plane.rising.after, "") for plane in (one, other))
    names = [at.plan.planes[plane.number].name for plane in (one, other)]
    name = f"the line where {names[0]} and {names[1]} meet"
    if one.pitch.value == other.pitch.value and one.rising.height == other.rising.height:
        return StraightLine(
            minus(first.a, second.a), minus(first.b, second.b), minus(first.c, second.c), name
        )
    p, q = one.pitch, other.pitch
    heights = minus(one.rising.height, other.rising.height)
    return StraightLine(
        minus(times(p, first.a), times(q, second.a)),
        minus(times(p, first.b), times(q, second.b)),
        minus(minus(times(p, first.c), times(q, second.c)), heights),
        name,
    )
