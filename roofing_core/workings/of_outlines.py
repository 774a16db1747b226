"""The working of outlines of cut pieces: each corner is where two lines cross.

A level line is the butt or the top of a row, an upright one a joint or the side of an opening, and
what slopes is an edge of the plane, as far out or in as shingles go there.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from roofing_core.layers.coursing.valley_joints import STEP
from roofing_core.measures.units import Inches
from roofing_core.workings.at import GEOMETRY, At, Table, table, under
from roofing_core.workings.bounds import bound, corner_on, meeting
from roofing_core.workings.covered import shingle_bounds, square_tops, with_openings
from roofing_core.workings.expressions import Constant, Expression, Path, Step, evaluated
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_points import agrees

#: A joint that is moved from a valley goes back by steps of this.
_STEP = Constant(STEP, "in", "step by which a joint is moved")


def row_of(at: At) -> Path:
    """Give where the row stands that a figure of one of its pieces is of.

    Args:
        at: The plan, at the figure.

    Returns:
        The place of the course or the starter.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> row_of(At(shed, ("starter", "laid", 0, "left")))
    ('starter',)
    """
    return at.path[: 1 if at.path[0] == "starter" else 2]


def _row(at: At) -> Any:
    value: Any = at.plan
    for name in row_of(at):
        value = value[name] if isinstance(name, int) else getattr(value, name)
    return value


def start_line(at: At, plane: int) -> Expression | None:
    """Give the line from which the joints of a plane are counted: where its first butt begins.

    Args:
        at: The plan.
        plane: The plane, from 0.

    Returns:
        The formula: where the edge on the left is at the height of the first butt.

    Raises:
        Nothing.

    Source:
        Geometry; counted from the left by common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(start_line(At(shed, ()), 0))
    -0.25
    """
    return at.known.kept(("start line", plane), lambda: _start_line(at, plane))


def _start_line(at: At, plane: int) -> Expression | None:
    bounds = shingle_bounds(at, plane)
    if bounds[0].lies == "level":
        butt = Step("height of the first butt", "in", bounds[0].place)
        begins = None if bounds[-1].lies == "level" else bounds[-1].across(butt)
    else:  # an eave that was taped a hair off level, from its lower end
        corners = at.plan.planes[plane].corners
        met = meeting(bounds[0], bounds[-1 if corners[1][1] > corners[0][1] else 1])
        begins = met and met[0]
    name = f"line that joints are counted from on {at.plan.planes[plane].name}"
    return begins and Step(name, "in", begins)


def joint_at(at: At, value: Inches) -> Expression | None:
    """Give the joint of a row at a place along the eave: by the pattern, or moved from a valley.

    Args:
        at: The plan, at a figure of the row or of one of its pieces.
        value: The place.

    Returns:
        The formula; nothing where no joint of the row stands there.

    Raises:
        Nothing.

    Source:
        Geometry; joints kept from valleys: from memory, the shingle makers' association.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(joint_at(At(shed, ("courses", 0, "joints", 1)), 78.5))
    78.5
    """
    tried = (*_by_pattern(at, value), *_from_valleys(at, value))
    return next((one for one in tried if agrees(one, value)), None)


def _by_pattern(at: At, value: Inches) -> Iterator[Expression]:
    start = start_line(at, plane_index(at, _row(at).plane))
    if start is None:
        return
    made = at.plan.choices.starter.made
    own = row_of(at)[0] == "courses" or made == "self_made"
    strip = at.choice("shingle/length" if own else "starter/length")
    trim = at.figure((*row_of(at), "trim"))
    first = start + (strip - trim)
    past = round((value - evaluated(first)) / strip.value)
    yield first if not past else first + past * strip


def _from_valleys(at: At, value: Inches) -> Iterator[Expression]:
    """Give joints as far from the middle of a valley as they have to be, or by steps further."""
    row = row_of(at)
    if row[0] != "courses":
        return
    k = plane_index(at, _row(at).plane)
    least = at.choice("valleying/least_piece")
    for n, kind in enumerate(at.plan.planes[k].edges):
        valley = bound(at, k, n)
        if kind == "valley" and valley.lies == "sloping":
            middle = Step(
                f"{valley.name} at the nails", "in",
                valley.across(at.figure((*row, "nail_line"))),
            )  # fmt: skip
            apart = value - evaluated(middle)
            steps = round((abs(apart) - least.value) / STEP)
            far = least + steps * _STEP if steps else least
            yield middle + far if apart > 0 else middle - far


def _corner(at: At) -> Expression | None:
    row, axis = row_of(at), int(at.path[-1])
    value = (at.near(0).value, at.near(1).value)
    k = plane_index(at, _row(at).plane)
    butt = at.figure((*row, "butt"))
    if row[0] == "courses":
        heights: tuple[Expression, ...] = (butt, at.figure((*row, "snap_line")), _top(at, k))
    else:
        heights = (butt, butt + at.figure((*row, "height")), _top(at, k))
    square = square_tops(at, k)
    bounds = (*shingle_bounds(at, k), *(line for line, _ in square))
    heights = (*heights, *(top for _, top in square))
    places = with_openings(at, k, bounds, (), heights)
    if (axis == 0 or places.v(value[1]) is None) and places.u(value[0]) is None:
        joint = joint_at(at, value[0])
        if joint is not None:
            places = with_openings(at, k, places.bounds, (joint,), heights)
    return corner_on(places, value, axis, other=at.near(1 - axis))


def _top(at: At, plane: int) -> Expression:
    corners = at.plan.planes[plane].corners
    highest = max(range(len(corners)), key=lambda n: corners[n][1])
    return at("planes/*/corners/*/*", plane, highest, 1)


_OUTLINES = table(GEOMETRY, laid__i__corners__i__i=_corner, laid__i__cutouts__i__i__i=_corner)

OUTLINES: Final[Table] = {
    pattern: formula
    for row in ("/starter", "/starters/*", "/courses/*")
    for pattern, formula in under(row, _OUTLINES).items()
}
