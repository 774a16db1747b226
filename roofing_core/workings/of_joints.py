"""The working of joints: where pieces meet, and how far from the joints of the rows above."""

from __future__ import annotations

from math import ceil, floor
from typing import Any, Final

from roofing_core.measures.counting import DUST
from roofing_core.workings.at import GEOMETRY, At, Table, same, table, under
from roofing_core.workings.expressions import Expression, Figure, Listed, evaluated
from roofing_core.workings.of_courses import course_over, strip_length


def _joint(at: At) -> Expression | None:
    """Give where two pieces meet: a strip past the joint before, or where a piece ends."""
    k, row, strip = int(at.path[-1]), at.thing(2), strip_length(at)
    if k and same(row.joints[k - 1] + strip.value, row.joints[k]):
        return at.near(k - 1) + strip
    piece = next((n for n, one in enumerate(row.laid) if same(one.right, at.value())), None)
    return None if piece is None else at.near("laid", piece, "right", back=2)


def _starter_clearance(at: At) -> Expression | None:
    over = course_over(at, at.base())
    return None if over is None else _between(at, _joints(at, over))


def _joints(at: At, course: int) -> tuple[Figure, ...]:
    return at.each("joints/*", base=("courses", course))


def _between(at: At, above: tuple[Expression, ...]) -> Expression | None:
    """Give the least distance from a joint of the row to one above; of each to its nearest."""
    below = at.each("joints/*", base=at.base())
    if not (below and above):
        return _whole_row(at)
    nearest = (
        one.apart(min(above, key=lambda other: abs(evaluated(other) - one.value))) for one in below
    )
    found = Listed("least", tuple(nearest), "the distances from each joint to the nearest above")
    return found if same(min(evaluated(found), _long(at)), at.value()) else None


def _long(at: At) -> float:
    laid = at.thing().laid
    return float(laid[-1].right - laid[0].left)


def _whole_row(at: At) -> Expression:
    last = len(at.thing().laid) - 1
    return at.near("laid", last, "right") - at.near("laid", 0, "left")


def _clearance(up: int) -> Any:
    def make(at: At) -> Expression | None:
        k, courses = int(at.path[1]), at.plan.courses
        if k + up < len(courses) and courses[k + up].plane == courses[k].plane:
            return _between(at, _joints(at, k + up))
        return _as_if_above(at, up)

    return make


def _as_if_above(at: At, up: int) -> Expression | None:
    """Give the clearance to a course that would follow over the last one of the plane."""
    course, sequence = at.thing(), at.plan.choices.shingle.sequence
    on_plane = [n for n, one in enumerate(at.plan.courses) if one.plane == course.plane]
    ahead = up - (len(on_plane) - 1 - on_plane.index(int(at.path[1])))
    last = on_plane[-1]
    number = at.plan.courses[last].number + ahead
    following = at.choice("shingle/sequence/*", (number - 1) % len(sequence))
    if not course.joints:
        return _whole_row(at)
    tried = (
        _between(at, _pattern_above(at, last, following, joint=k))
        for k in range(len(course.joints))
    )  # fmt: skip
    found = next((one for one in tried if one is not None), None)
    return found if found and same(evaluated(found), at.value()) else None


def _pattern_above(
    at: At, last: int, following: Expression, *, joint: int
) -> tuple[Expression, ...]:
    """Give the joints of a course that would follow, within the last one that is laid."""
    course = at.plan.courses[last]
    first, strip = at("courses/*/joints/*", int(at.path[1]), joint), at.choice("shingle/length")
    start = first + (at.near("trim") - following)
    left, right = course.laid[0].left, course.laid[-1].right
    lowest = ceil((left - evaluated(start)) / strip.value + DUST)
    highest = floor((right - evaluated(start)) / strip.value - DUST)
    return tuple(start + k * strip if k else start for k in range(lowest, highest + 1))


_STARTER = table(GEOMETRY, joints__i=_joint, clearance=_starter_clearance)

JOINTS: Final[Table] = {
    **under("/starter", _STARTER),
    **under("/starters/*", _STARTER),
    **under(
        "/courses/*",
        table(GEOMETRY, joints__i=_joint, clearance=_clearance(1), clearance_two=_clearance(2)),
    ),
}
