"""The working of a roof: its areas, its slope, its planes and its lines."""

from __future__ import annotations

from typing import Any, Final

from roofing_core.job.layout import NOT_KEPT
from roofing_core.workings.at import GEOMETRY, At, Table, table, under
from roofing_core.workings.deck_sides import roof_measured
from roofing_core.workings.expressions import (
    Constant,
    Expression,
    Figure,
    Step,
    added,
    evaluated,
)
from roofing_core.workings.of_given import given_corner, plane_pitch
from roofing_core.workings.of_measured import eave_length, slope_size
from roofing_core.workings.of_points import point
from roofing_core.workings.slopes import slope_factor
from roofing_core.workings.straight_lines import NOTHING, ONE, minus, times

#: The trade's square, 100 ft2.
_SQUARE = Constant(14_400, "in2/square", "square inches in a square")


def _single(at: At) -> bool:
    return at.plan.roof.form == "single_slope"


def _squares(at: At) -> Expression:
    return at("roof/area") / _SQUARE


def _area(at: At) -> Expression:
    if _single(at):
        return at("roof/eave_length") * at("roof/slope_length")
    return at.all("sum", "planes/*/area", "the areas of all planes")


def _plan_area(at: At) -> Expression:
    if _single(at):
        return at("roof/eave_length") * at("roof/run")
    return at.all("sum", "planes/*/plan_area", "the areas of all planes seen from above")


def _main(at: At) -> int:
    """Give the plane that a roof of several is described by, the first of the largest."""
    planes = at.plan.planes
    return max(range(len(planes)), key=lambda k: round(planes[k].area, 6))


def _eave_length(at: At) -> Expression | None:
    if _single(at):
        return eave_length(at)
    return at.all(
        "sum", "lines/*/length", "the lengths of all eaves", where=lambda one: one.kind == "eave"
    )


def _slope_length(at: At) -> Expression | None:
    if _single(at):
        return slope_size(at, "slope_length")
    heights = at.plan.planes[_main(at)].corners
    by_height = sorted(range(len(heights)), key=lambda k: heights[k][1])
    top, foot = (at("planes/*/corners/*/*", _main(at), k, 1) for k in (by_height[-1], by_height[0]))
    return top - foot


def _pitch(at: At) -> Expression | None:
    return slope_size(at, "pitch") if _single(at) else at("planes/*/pitch", _main(at))


def _slope_factor(at: At) -> Expression:
    return slope_factor(at("roof/pitch"))


def _run(at: At) -> Expression:
    found = slope_size(at, "run") if _single(at) else None
    return found or at("roof/slope_length") / at("roof/slope_factor")


def _rise(at: At) -> Expression:
    found = slope_size(at, "rise") if _single(at) else None
    return found or at("roof/run") * at("roof/pitch")


def _eave_overhang(at: At) -> Expression | None:
    form = at.plan.as_measured.roof.form
    kept = form != "planes" or at.plan.as_measured != NOT_KEPT
    return roof_measured(at, "eave_overhang") if kept else None


def _lowest(at: At) -> Expression:
    return at.all("least", "planes/*/pitch", "the pitches of all planes")


def _steepest(at: At) -> Expression:
    return at.all("greatest", "planes/*/pitch", "the pitches of all planes")


_ROOF = under(
    "/roof",
    table(
        GEOMETRY,
        area=_area,
        plan_area=_plan_area,
        eave_length=_eave_length,
        slope_length=_slope_length,
        pitch=_pitch,
        slope_factor=_slope_factor,
        run=_run,
        rise=_rise,
        lowest_pitch=_lowest,
        steepest_pitch=_steepest,
        eave_overhang=_eave_overhang,
    ),
    table("The trade's square is 100 ft2.", squares=_squares),
)


def _side(at: At) -> Expression:
    k, corners = int(at.path[-1]), len(at.thing(2).corners)
    if _single(at):
        return at("roof/slope_length") if k % 2 else at("roof/eave_length")
    ends = [at.near("corners", n % corners, axis, back=2) for axis in (0, 1) for n in (k + 1, k)]
    for axis in (0, 1):  # a level side, and an upright one, by what it goes along
        one, two = ends[2 * axis : 2 * axis + 2]
        if ends[2 - 2 * axis].value == ends[3 - 2 * axis].value:
            return one - two if one.value > two.value else two - one
    return ((ends[0] - ends[1]).squared() + (ends[2] - ends[3]).squared()).root()


def around(at: At, base: tuple[str | int, ...], corners: int) -> Expression:
    """Give the area of an outline from its corners.

    Args:
        at: The plan.
        base: Where the corners stand.
        corners: How many.

    Returns:
        Half the sum of what each corner makes with the next; terms that are nothing are left out.

    Raises:
        Nothing.

    Source:
        Geometry, the area of a polygon from its corners.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> from roofing_core.workings.expressions import evaluated
    >>> at = At(shed, ("planes", 0, "area"))
    >>> evaluated(around(at, ("planes", 0, "corners"), 4))
    18816.0
    """
    terms: list[Expression] = []
    for k in range(corners):
        (u, v), (u_next, v_next) = (
            [at.figure((*base, n, axis)) for axis in (0, 1)] for n in (k, (k + 1) % corners)
        )
        terms += [u * v_next] if u.value * v_next.value else []
        terms += [-(u_next * v)] if u_next.value * v.value else []
    return added(terms) / 2


def _plane_area(at: At) -> Expression:
    if _single(at):
        return at("roof/area")
    return around(at, (*at.base(), "corners"), len(at.thing().corners))


def _plane_plan_area(at: At) -> Expression:
    return at.near("area") / slope_factor(at.near("pitch"))


def _corner(at: At) -> Expression | None:
    """Give a corner of a plane: of a single slope from its sizes, of others from where it is."""
    k, axis = int(at.path[-2]), at.path[-1]
    if _single(at):
        far = (axis == 1 and k > 1) or (axis == 0 and k in (1, 2))
        size = at("roof/slope_length") if axis else at("roof/eave_length")
        return size if far else Constant(0, "in")
    return _from_space(at, k, axis) if at.thing(3).points else given_corner(at)


def _from_space(at: At, k: int, axis: str | int) -> Expression:
    """Give a corner from where it is in space, seen from the first one along the eave."""
    plane: Any = at.thing(3)
    if not k:
        return Constant(0, "in", "the corner that all others are measured from")
    dx, dy = (_step(at, 1, way) for way in (0, 1))
    x, y = (_step(at, k, way) for way in (0, 1))
    if not evaluated(dy):
        ahead = ONE if evaluated(dx) > 0 else minus(NOTHING, ONE)
        along, across = times(ahead, x), times(ahead, y)
    else:
        level = (dx.squared() + dy.squared()).root()
        reach = Step(f"length of the eave of {plane.name}", "in", level)
        along, across = (x * dx + y * dy) / reach, (y * dx - x * dy) / reach
    if axis == 0:
        return along
    if k == 1 and not evaluated(across):
        return Constant(0, "in", f"level with corner 1 of {plane.name}")
    run = Step(f"run from the foot of {plane.name} to corner {k + 1}", "in", across)
    return run * slope_factor(at.near("pitch", back=3))


def _step(at: At, k: int, way: int) -> Expression:
    """Give how far a corner lies from the first one in space, to the right or to the back."""
    there, start = (at.near("points", n, way, back=3) for n in (k, 0))
    return there - start if start.value else there


_PLANES = under(
    "/planes/*",
    table(
        GEOMETRY,
        pitch=plane_pitch,
        points__i__i=point,
        area=_plane_area,
        plan_area=_plane_plan_area,
        lengths__i=_side,
        corners__i__i=_corner,
    ),
)


def _line_length(at: At) -> Expression:
    line = at.thing()
    if line.ends:
        steps = [at.near("ends", 1, n) - at.near("ends", 0, n) for n in range(3)]
        return added(step.squared() for step in steps).root()
    sides = [_side_of(at, line, name) for name in line.planes]
    return sides[0] if sides[0].value == line.length else added(sides) / len(sides)


def _side_of(at: At, line: Any, name: str) -> Figure:
    """Give the side of a plane that a line is, where nobody knows where it lies."""
    alike = [one for one in at.plan.lines if (one.kind, one.planes) == (line.kind, line.planes)]
    p = [plane.name for plane in at.plan.planes].index(name)
    plane = at.plan.planes[p]
    other = "".join(one for one in line.planes if one != name)
    sides = [
        at("planes/*/lengths/*", p, k)
        for k, kind in enumerate(plane.edges)
        if (kind, plane.beyond[k]) == (line.kind, other)
    ]
    place = next(k for k, one in enumerate(alike) if one is line)
    return sorted(sides, key=lambda side: side.value)[place] if other else sides[place]


def _end(at: At) -> Expression | None:
    """Give an end of a line: the corner of a plane that lies there."""
    where = at.thing(3).ends[int(at.path[-2])]
    for p, plane in enumerate(at.plan.planes):
        if where in plane.points:
            return at("planes/*/points/*/*", p, plane.points.index(where), int(at.path[-1]))
    return None


ROOF: Final[Table] = {
    **_ROOF,
    **under("", table("The trade's square is 100 ft2.", squares=_squares)),
    **_PLANES,
    **under("/lines/*", table(GEOMETRY, length=_line_length, ends__i__i=_end)),
}
