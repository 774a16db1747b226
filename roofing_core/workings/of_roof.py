"""The working of a roof: its areas, its slope, its planes and its lines."""

from __future__ import annotations

from typing import Any, Final

from roofing_core.workings.at import GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Step, added

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
        return None
    return at.all(
        "sum", "lines/*/length", "the lengths of all eaves", where=lambda one: one.kind == "eave"
    )


def _slope_length(at: At) -> Expression | None:
    if _single(at):
        return None
    heights = at.plan.planes[_main(at)].corners
    by_height = sorted(range(len(heights)), key=lambda k: heights[k][1])
    top, foot = (at("planes/*/corners/*/*", _main(at), k, 1) for k in (by_height[-1], by_height[0]))
    return top - foot


def _pitch(at: At) -> Expression | None:
    return None if _single(at) else at("planes/*/pitch", _main(at))


def slope_factor(pitch: Expression) -> Expression:
    """Give the slope factor of a pitch.

    Args:
        pitch: The pitch, rise over run.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.workings.expressions import evaluated
    >>> evaluated(slope_factor(Constant(0.75)))
    1.25
    """
    return (1 + pitch.squared()).root()


def _slope_factor(at: At) -> Expression:
    return slope_factor(at("roof/pitch"))


def _run(at: At) -> Expression:
    return at("roof/slope_length") / at("roof/slope_factor")


def _rise(at: At) -> Expression:
    return at("roof/run") * at("roof/pitch")


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
    ),
    table("The trade's square is 100 ft2.", squares=_squares),
)


def _plane_pitch(at: At) -> Expression | None:
    return at("roof/pitch") if _single(at) else None


def _side(at: At) -> Expression:
    k, corners = int(at.path[-1]), len(at.thing(2).corners)
    if _single(at):
        return at("roof/slope_length") if k % 2 else at("roof/eave_length")
    ends = [at.near("corners", n % corners, axis, back=2) for axis in (0, 1) for n in (k + 1, k)]
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
    return _from_space(at, k, axis) if at.thing(3).points else None


def _from_space(at: At, k: int, axis: str | int) -> Expression | None:
    plane: Any = at.thing(3)
    start = next(n for n, (_, v) in enumerate(plane.corners) if v == 0)
    end = next((n for n, (_, v) in enumerate(plane.corners) if n != start and v == 0), None)

    def point(n: int, which: int) -> Expression:
        return at.near("points", n, which, back=3)

    if axis == 1:
        rise = point(k, 2) - point(start, 2)
        return rise * slope_factor(at.near("pitch", back=3)) / at.near("pitch", back=3)
    if end is None:
        return None
    along = [point(end, which) - point(start, which) for which in (0, 1)]
    across = [point(k, which) - point(start, which) for which in (0, 1)]
    first = at.near("corners", start, 0, back=3)
    level = (along[0].squared() + along[1].squared()).root()
    reach = Step(f"length of the eave of {plane.name}", "in", level)
    went = (across[0] * along[0] + across[1] * along[1]) / reach
    if k == start:
        return Constant(0, "in") if not first.value else None
    return first + went


_PLANES = under(
    "/planes/*",
    table(
        GEOMETRY,
        pitch=_plane_pitch,
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
    return _edge_of(at, line)


def _edge_of(at: At, line: Any) -> Expression:
    """Give the side of a plane that a line is, where nobody knows where it lies."""
    return min(
        (
            at("planes/*/lengths/*", p, k)
            for p, plane in enumerate(at.plan.planes)
            for k, kind in enumerate(plane.edges)
            if kind == line.kind and plane.name in line.planes
        ),
        key=lambda side: abs(side.value - line.length),
    )


ROOF: Final[Table] = {
    **_ROOF,
    **under("", table("The trade's square is 100 ft2.", squares=_squares)),
    **_PLANES,
    **under("/lines/*", table(GEOMETRY, length=_line_length)),
}
