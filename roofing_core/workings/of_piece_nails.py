"""The working of the nails of a piece: as its strip has them, or near the ends of what is left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise, product
from typing import Any

from roofing_core.layers.coursing.nail_room import OFF_JOINT
from roofing_core.layers.coursing.nailing import nails_per_strip
from roofing_core.workings.areas import Corner, crossing
from roofing_core.workings.at import At, same
from roofing_core.workings.bounds import Past, bound
from roofing_core.workings.covered import with_openings
from roofing_core.workings.expressions import Constant, Expression, Path, Step, evaluated
from roofing_core.workings.of_courses import course_over, plane_index, strip_length
from roofing_core.workings.of_outlines import row_of


def piece_nail(at: At) -> Expression | None:
    """Give where a nail of a piece goes.

    Args:
        at: The plan, at the nail.

    Returns:
        The formula: where the strip has it, or near an end of what is left of it on the deck;
        nothing beside a valley or an opening.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(piece_nail(At(shed, ("courses", 0, "laid", 0, "nails", 0))))  # 1 in from its left
    0.75
    """
    inset: Expression = at.choice("nailing/end_distance")
    usual = inset
    if at.path[0] != "courses" and at.plan.choices.starter.made != "self_made":
        usual = inset.least(at.choice("starter/length") / 4)
    start = at.near("left", back=2) - at.near("shingle_from", back=2)
    for place in _on_the_strip(at, start, usual):
        if same(evaluated(place), at.value()):
            return place
    tried = _near_ends(at, inset, *_upright_ends(at))
    found = next((one for one in tried if same(evaluated(one), at.value())), None)
    return found or _near_slanted_ends(at, inset) or _off_joint(at)


#: How far a nail stands from a joint of the course over it that would lay it bare.
_CLEAR = Constant(OFF_JOINT, "in", "clear of the joint over it")


def _off_joint(at: At) -> Expression | None:
    """Give a nail that steps aside from a joint of the course over it."""
    row = row_of(at)
    over = int(row[1]) + 1 if row[0] == "courses" else course_over(at, row)
    if over is None or over >= len(at.plan.courses):
        return None
    joints = at.each("joints/*", base=("courses", over))
    tried = (place for joint in joints for place in (joint - _CLEAR, joint + _CLEAR))
    return next((one for one in tried if same(evaluated(one), at.value())), None)


def _on_the_strip(at: At, start: Expression, inset: Expression) -> Iterator[Expression]:
    plane = at.plan.planes[plane_index(at, at.thing(4).plane)]
    nails = nails_per_strip(plane.pitch, high_wind=at.plan.choices.nailing.high_wind)
    spaces = (strip_length(at) - 2 * inset) / (nails - 1)
    yield start + inset
    for k in range(1, nails):
        yield start + inset + k * spaces


def _near_ends(
    at: At, inset: Expression, left: Expression, right: Expression
) -> Iterator[Expression]:
    if evaluated(left) <= at.value() <= evaluated(right):
        reach = inset.least((right - left) / 4)
        yield left + reach
        yield right - reach


def _upright_ends(at: At) -> tuple[Expression, Expression]:
    """Give the ends of a piece, or of the deck where that ends before it."""
    k = plane_index(at, at.thing(4).plane)
    places = [u for u, _ in at.plan.planes[k].corners]
    near, far = (
        at("planes/*/corners/*/*", k, places.index(end), 0) for end in (min(places), max(places))
    )
    left, right = at.near("left", back=2), at.near("right", back=2)
    return (
        near if left.value < near.value else left,
        far if right.value > far.value else right,
    )


def _near_slanted_ends(at: At, inset: Expression) -> Expression | None:
    """Give a nail near where the piece, or the deck, ends at the height of the nails."""
    butt = at.figure((*at.base(4), "butt"))
    height = Step("height of the nails", "in", butt + at.near("nail_height", back=2))
    k = plane_index(at, at.thing(4).plane)
    rings: list[tuple[Path, Any, str]] = [
        (("planes", k, "corners"), at.plan.planes[k].corners, "plane")
    ]
    if at.thing(2).corners:
        rings.append(((*at.base(2), "corners"), at.thing(2).corners, "piece"))
    ends: list[Expression] = [at.near("left", back=2), at.near("right", back=2)]
    ends = [*ends, *(end for ring in rings for end in _crossings(at, *ring, height))]
    ends += [*_beside_valleys(at, k, height), *with_openings(at, k, ()).along]
    for left, right in product(ends, ends):
        for place in _near_ends(at, inset, left, right):
            if same(evaluated(place), at.value()):
                return place
    return None


def _beside_valleys(at: At, plane: int, height: Expression) -> Iterator[Expression]:
    """Give where a level line comes as near to a valley as nails may stand."""
    clear = at.choice("valleying/nails_clear")
    for n, kind in enumerate(at.plan.planes[plane].edges):
        if kind == "valley":
            line = bound(at, plane, n, Past(-clear, -clear))
            if line.lies == "sloping":
                yield line.across(height)
            yield from _round_ends(at, plane, n, height, clear)


def _round_ends(
    at: At, plane: int, edge: int, height: Expression, clear: Expression
) -> Iterator[Expression]:
    """Give the same past the ends of a valley: on a circle round each."""
    corners = at.plan.planes[plane].corners
    for n in (edge, (edge + 1) % len(corners)):
        u, v = (at("planes/*/corners/*/*", plane, n, axis) for axis in (0, 1))
        if abs(evaluated(height) - v.value) < evaluated(clear):
            reach = (clear.squared() - (height - v).squared()).root()
            yield u - reach
            yield u + reach


def _crossings(
    at: At, ring: Path, corners: Sequence[Any], of: str, height: Expression
) -> Iterator[Expression]:
    level = evaluated(height)
    outline = [
        Corner(at.figure((*ring, n, 0)), at.figure((*ring, n, 1))) for n in range(len(corners))
    ]
    for k, (one, two) in enumerate(pairwise([*outline, outline[0]]), 1):
        low, high = sorted((evaluated(one.v), evaluated(two.v)))
        if low < level < high:
            yield crossing(one, two, height, f"side {k} of the {of}")
