"""The working of pieces: where each begins and ends, on its shingle too, its joints and its nails.

Where a hip, a valley or an opening cuts a row off, its end comes from the shape of the plane; such
a figure has no formula here and is refused.
"""

from __future__ import annotations

from math import pi
from typing import Any, Final

from roofing_core.workings.at import GEOMETRY, PRACTICE, At, Table, same, table, under
from roofing_core.workings.expressions import Constant, Expression, How, Step, evaluated
from roofing_core.workings.of_courses import plane_index, starter_nail_height, strip_length
from roofing_core.workings.of_outlines import joint_at
from roofing_core.workings.of_piece_nails import piece_nail

_ENDS: tuple[How, How] = ("least", "greatest")

_QUARTER_TURN = Constant(pi / 2, "rad", "a square end")


def _is_course(at: At) -> bool:
    return at.path[0] == "courses"


def _row_of(at: At) -> Any:
    """Give the row of a piece; its figures stand three steps below."""
    return at.thing(3)


def _left(at: At) -> Expression | None:
    k, row = int(at.path[-2]), _row_of(at)
    piece = row.laid[k]
    if k and same(row.laid[k - 1].right, piece.left):
        return _at_joint(at, k) or at.near(k - 1, "right", back=2)
    if piece.corners:
        return at.all("least", "corners/*/0", "its corners, along the eave", base=at.base())
    if not k and piece.left == -at.plan.choices.coursing.shingle_past_rake:
        return -at.choice("coursing/shingle_past_rake")
    return _beside(at, "right") or joint_at(at, at.value())


def _at_joint(at: At, k: int) -> Expression | None:
    """Give a joint by the pattern: the first piece's end and whole strips from there."""
    first, strip = _row_of(at).laid[0], strip_length(at)
    if not k or not _known_from(_row_of(at), 0):
        return None
    end = at.near(0, "left", back=2) + (strip - at.near(0, "shingle_from", back=2))
    past = round((at.value() - evaluated(end)) / strip.value)
    place = end if not past else end + past * strip
    return place if same(evaluated(place), at.value()) and first.left < at.value() else None


def _known_from(row: Any, k: int) -> bool:
    """Tell whether it is known where a piece begins on its shingle, whatever its right end is."""
    piece = row.laid[k]
    return piece.left_end == "factory" or (not k and same(piece.shingle_from, row.trim))


def _beside(at: At, side: str) -> Expression | None:
    """Give the side of an opening, or of the plane, where a piece ends at one."""
    plane = _row_of(at).plane
    openings = [
        at(f"openings/*/{side}", k)
        for k, one in enumerate(at.plan.openings)
        if one.plane == plane
    ]  # fmt: skip
    k = plane_index(at, plane)
    corners = [at("planes/*/corners/*/*", k, n, 0) for n in range(len(at.plan.planes[k].corners))]
    return next((one for one in (*openings, *corners) if same(one.value, at.value())), None)


def _right(at: At) -> Expression | None:
    piece, k, row = at.thing(), int(at.path[-2]), _row_of(at)
    if piece.corners:
        return at.all("greatest", "corners/*/0", "its corners, along the eave", base=at.base())
    if same(piece.shingle_to, strip_length(at).value):
        if _known_from(row, k):
            return at.near("left") + (strip_length(at) - at.near("shingle_from"))
        return _at_joint(at, k) or joint_at(at, at.value())
    found = _at_right_rake(at) or _beside(at, "left") or _at_joint(at, k)
    return found or joint_at(at, at.value())


def _at_right_rake(at: At) -> Expression | None:
    plane = plane_index(at, _row_of(at).plane)
    corners = at.plan.planes[plane].corners
    far = max(range(len(corners)), key=lambda n: corners[n][0])
    end = at("planes/*/corners/*/*", plane, far, 0) + at.choice("coursing/shingle_past_rake")
    return end if same(evaluated(end), at.value()) else None


def _shingle_from(at: At) -> Expression | None:
    piece, row, k = at.thing(), _row_of(at), int(at.path[-2])
    if piece.left_end == "factory":
        return Constant(0, "in", "the factory's left end")
    if _known_from(row, k):
        return at.near("trim", back=3)
    if same(piece.shingle_to, strip_length(at).value):
        return strip_length(at) - (at.near("right") - at.near("left"))
    begins = joint_at(at, piece.left - piece.shingle_from)
    return begins and at.near("left") - Step("where its strip would begin", "in", begins)


def _shingle_to(at: At) -> Expression:
    if same(at.value(), strip_length(at).value):
        return strip_length(at)
    return at.near("shingle_from") + (at.near("right") - at.near("left"))


def _nail_height(at: At) -> Expression | None:
    """Give how high a piece is nailed: as its row, or as far up as what is left of it allows."""
    if _is_course(at):
        butt = at.near("butt", back=3)
        usual: Expression = at.near("nail_line", back=3) - butt
    else:
        butt, usual = at.near("butt", back=3), starter_nail_height(at, at.base(3))
    tried = [usual]
    if at.thing().corners:
        low, high = (
            at.all(how, "corners/*/1", "its corners, up the slope", base=at.base())
            for how in _ENDS
        )  # fmt: skip
        tried.append((low + high) / 2 - butt)
        edge = at.choice("coursing/edge_distance")
        tried += [high - edge - butt if _is_course(at) else high - butt]
    if _is_course(at) and at.near("nail_line", back=3).value != at.value():
        low_zone, high_zone = (at.choice(f"shingle/nail_zone_{end}") for end in ("low", "high"))
        tried.append((low_zone + high_zone) / 2)
    return next((one for one in tried if same(evaluated(one), at.value())), None)


def _left_angle(at: At) -> Expression:
    corners = at.thing().corners
    if not corners:
        return _QUARTER_TURN
    last = len(corners) - 1
    up = at.near("corners", last, 1) - at.near("corners", 0, 1)
    return up.slant(at.near("corners", last, 0) - at.near("corners", 0, 0))


def _right_angle(at: At) -> Expression:
    corners = at.thing().corners
    if not corners:
        return _QUARTER_TURN
    k = 1 if corners[1][1] == corners[0][1] else 0
    up = at.near("corners", k + 1, 1) - at.near("corners", k, 1)
    lean = up.slant(at.near("corners", k + 1, 0) - at.near("corners", k, 0))
    return Constant(pi, "rad", "a half turn") - lean


_PIECES = table(
    GEOMETRY,
    laid__i__left=_left,
    laid__i__right=_right,
    laid__i__shingle_from=_shingle_from,
    laid__i__shingle_to=_shingle_to,
    laid__i__left_angle=_left_angle,
    laid__i__right_angle=_right_angle,
) | table(
    "As its course, where nothing cuts it off: common practice, no published source.",
    laid__i__nail_height=_nail_height,
) | table(PRACTICE, laid__i__nails__i=piece_nail)  # fmt: skip

PIECES: Final[Table] = {
    pattern: formula
    for row in ("/starter", "/starters/*", "/courses/*")
    for pattern, formula in under(row, _PIECES).items()
}
