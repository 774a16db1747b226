"""The working of a deck's panels: where each lies, its joints, its nails and its clips.

On which supports the joints lie is found by a search for the fewest panels; that number is told.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from roofing_core.layers.decking.deck import CLIPS, CLIPS_IN_WIDE_SPAN, WIDE_SPAN
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.units import Inches
from roofing_core.roof.slicing import Stretch
from roofing_core.workings.across import Across, corner_heights, deck_across
from roofing_core.workings.at import At, same
from roofing_core.workings.bounds import corner_on
from roofing_core.workings.expressions import (
    Constant,
    Expression,
    Figure,
    Listed,
    added,
    evaluated,
)
from roofing_core.workings.of_courses import plane_index

_NONE = "none: the deck is not part of the job"


def _support(at: At, value: Inches) -> Expression:
    spacing = at.choice("decking/support_spacing")
    number = round(value / spacing.value)
    return Constant(number, "count", "its support, counted from the left") * spacing


def _row_line(at: At, plane: int, number: int) -> Expression:
    """Give where a row ends: so many widths from the lowest corner of its plane."""
    rows = Constant(number, "count", "rows below") * at.choice("panel/width")
    lowest = min(corner_heights(at, plane), key=lambda one: one.value)
    return lowest + rows if lowest.value else rows


def _across(at: At, piece: Any, *along: Expression) -> Across:
    k = plane_index(at, piece.plane)
    rows = (_row_line(at, k, piece.row - 1), _row_line(at, k, piece.row))
    return deck_across(at, k, along=along, heights=rows)


def end_of_piece(side: str) -> Any:
    """Make the working of a side of a piece of the deck.

    Args:
        side: The side, such as ``left``.

    Returns:
        What makes the formula: a support, a row, an edge of the plane, or the furthest of the
        piece's corners.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> callable(end_of_piece("left"))
    True
    """
    level = side in ("lower", "upper")

    def make(at: At) -> Expression | None:
        piece, value = at.thing(), at.value()
        if piece.corners:
            how: Any = "least" if side in ("left", "lower") else "greatest"
            way = "up the slope" if level else "along the eave"
            return at.all(how, f"corners/*/{int(level)}", f"its corners, {way}", base=at.base())
        across = _across(at, piece, _support(at, value))
        return across.places.v(value) if level else across.places.u(value)

    return make


def piece_corner(at: At) -> Expression | None:
    """Give one number of a corner of a piece of the deck that is cut on the slope.

    Args:
        at: The plan, at the number.

    Returns:
        The formula: a support, a row, or where an edge of the plane crosses one.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Pyramid
    >>> peak = plan(Job(roof=Pyramid(length=192, width=192, pitch=0.75), decking=Decking(lay=True)))
    >>> round(evaluated(piece_corner(At(peak, ("deck", "pieces", 0, "corners", 3, 0)))), 6)
    38.4
    """
    piece, axis = at.thing(3), int(at.path[-1])
    point = (at.near(0).value, at.near(1).value)
    across = _across(at, piece, _support(at, point[0]))
    return corner_on(across.places, point, axis, other=at.near(1 - axis))


def _rows(at: At) -> Iterator[tuple[int, int]]:
    """Give every row: its plane, and its number from 1."""
    laid = {(one.plane, one.row) for one in at.plan.deck.pieces}
    for k, plane in enumerate(at.plan.planes):
        for row in sorted(row for name, row in laid if name == plane.name):
            yield k, row


def _joints(at: At) -> Iterator[tuple[list[int], int, int]]:
    """Give every joint up the slope: the pieces that end at it from the left, plane and row."""
    pieces = at.plan.deck.pieces
    for k, row in _rows(at):
        mine = [
            n
            for n, one in enumerate(pieces)
            if (one.plane, one.row) == (at.plan.planes[k].name, row)
        ]
        for u in sorted({pieces[n].right for n in mine}):
            ending = [n for n in mine if pieces[n].right == u]
            if any(pieces[n].left == u for n in mine):
                yield ending, k, row


def joints(at: At) -> Expression:
    """Count the joints of a deck that lie on supports.

    Args:
        at: The plan.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Counted in the plan.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> evaluated(joints(At(plan(Job(roof=shed, decking=Decking(lay=True))), ())))
    4
    """
    found = tuple(at("deck/pieces/*/right", ending[0]) for ending, *_ in _joints(at))
    if not found:
        return Constant(0, "count", "none: no piece ends at another")
    return Listed("count", found, "the places where a piece ends at the next one")


def joint_length(at: At) -> Expression:
    """Add up the joints of a deck that lie on supports.

    Args:
        at: The plan.

    Returns:
        The formula: of each joint how high the pieces are there.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> evaluated(joint_length(At(plan(Job(roof=shed, decking=Decking(lay=True))), ())))
    160.0
    """
    parts = [_high(at, n) for ending, *_ in _joints(at) for n in ending]
    if not parts:
        return Constant(0, "in", "none: no piece ends at another")
    return Listed("sum", tuple(parts), "the heights of pieces at these places")


def _high(at: At, piece: int) -> Expression:
    """Give how high a piece is at its right end."""
    one = at.plan.deck.pieces[piece]
    if not one.corners:
        return at("deck/pieces/*/upper", piece) - at("deck/pieces/*/lower", piece)
    ends = [n for n, (u, _) in enumerate(one.corners) if same(u, one.right)]
    ends.sort(key=lambda n: one.corners[n][1])
    top, foot = (at("deck/pieces/*/corners/*/*", piece, ends[n], 1) for n in (-1, 0))
    return top - foot


def _between_rows(at: At) -> Iterator[tuple[Expression, Expression]]:
    for k, row in _rows(at):
        if row > 1:
            yield from deck_across(at, k).ends(_row_line(at, k, row - 1))


def long_joints(at: At) -> Expression:
    """Add up the joints of a deck along the eave.

    Args:
        at: The plan.

    Returns:
        The formula: between rows, from where the plane begins to where it ends.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> evaluated(long_joints(At(plan(Job(roof=shed, decking=Decking(lay=True))), ())))
    336.0
    """
    found = tuple(right - left for left, right in _between_rows(at))
    if not found:
        return Constant(0, "in", "none: no row lies over another")
    return Listed("sum", found, "the lengths of all joints between rows")


def clips(at: At) -> Expression:
    """Count the clips of a deck: in each span that a joint between rows crosses.

    Args:
        at: The plan.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        An inspectors' guide; two in a span of 48 in from memory.

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> evaluated(clips(At(plan(Job(roof=shed, decking=Decking(lay=True))), ())))
    14.0
    """
    spacing = at.choice("decking/support_spacing")
    found = tuple(_spans(left, right, spacing) for left, right in _between_rows(at))
    if not found:
        return Constant(0, "count", "none: no row lies over another")
    each = CLIPS_IN_WIDE_SPAN if spacing.value >= WIDE_SPAN else CLIPS
    all_spans = Listed("sum", found, "the spans that each joint between rows crosses")
    return all_spans * Constant(each, "count", "clips in a span")


def _spans(left: Expression, right: Expression, spacing: Figure) -> Expression:
    """Count the spans that a level line crosses: those to its right end but those before it."""
    reach, before = (right / spacing).up(), evaluated(left) / spacing.value
    if abs(before - round(before)) <= DUST:
        return reach - left / spacing if round(before) else reach
    if before < 0:
        return reach + (-left / spacing).up()
    return reach - ((left / spacing).up() - 1)


def nails(at: At) -> Expression:
    """Count the nails of a deck: on every support that a piece crosses, and along both ends.

    Args:
        at: The plan.

    Returns:
        The formula: of each part of a support or an edge ``whole(length / spacing) + 1``, and twice
        that where two pieces meet.

    Raises:
        Nothing.

    Source:
        Nails 6 in on edges and 12 in between: IRC table R602.3(1).

    >>> from roofing_core.job.choices import Decking, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, decking=Decking(lay=True)))
    >>> evaluated(nails(At(planned, ()))) == planned.deck.nails
    True
    """
    parts = [part for k, row in _rows(at) for part in _row_nails(at, k, row)]
    if not parts:
        return Constant(0, "count", _NONE)
    return Listed("sum", tuple(parts), "the nails of every support and end that a row crosses")


def _row_nails(at: At, plane: int, row: int) -> Iterator[Expression]:
    edge, field = (at.choice(f"decking/{name}_spacing") for name in ("edge", "field"))
    spacing = at.choice("decking/support_spacing")
    across = deck_across(
        at, plane, heights=(_row_line(at, plane, row - 1), _row_line(at, plane, row))
    )
    lower = evaluated(_row_line(at, plane, row - 1))
    upper = min(lower + at.plan.choices.panel.width, across.region.highest)
    pieces = [
        one for one in at.plan.deck.pieces if (one.plane, one.row) == (
            at.plan.planes[plane].name, row)
    ]  # fmt: skip
    meets = {one.right for one in pieces} & {one.left for one in pieces}
    for stretch in across.region.between(lower, upper):
        for side in ("left", "right"):
            yield (_along(across, stretch, side) / edge).up() + 1
        for number in range(*_numbers(stretch, spacing.value)):
            place = _support(at, number * spacing.value)
            joined = any(same(number * spacing.value, u) for u in meets)
            for long in across.lengths_up(stretch, place):
                count = (long / (edge if joined else field)).up() + 1
                yield 2 * count if joined else count


def _numbers(stretch: Stretch, spacing: Inches) -> tuple[int, int]:
    """Give the first support within a stretch, and the first past it."""
    before = stretch.left / spacing
    first = whole_pieces(before) if before > 0 else -int(-before + DUST)
    first += abs(before - first) <= DUST
    return first, whole_pieces(max(0.0, stretch.right / spacing))


def _along(across: Across, stretch: Stretch, side: str) -> Expression:
    """Give how long an end of a stretch is, on the slant along hips and valleys."""
    parts: list[Expression] = []
    ends = [
        (getattr(part, f"lower_{side}"), part.lower, getattr(part, f"upper_{side}"), part.upper)
        for part in stretch.parts
    ]
    for u0, v0, u1, v1 in _straight(ends):
        low, high = across.places.v(v0), across.places.v(v1)
        if low is None or high is None:
            continue
        up, start, end = high - low, across.side(u0, v0, low), across.side(u1, v1, high)
        if u0 == u1 or start is None or end is None:
            parts.append(up)
        else:
            parts.append(((end - start).squared() + up.squared()).root())
    return added(parts)


_End = tuple[float, float, float, float]


def _straight(ends: Sequence[_End]) -> list[_End]:
    """Put ends together that follow each other along one upright line."""
    found: list[_End] = []
    for one in ends:
        if found and found[-1][0] == found[-1][2] == one[0] == one[2] and found[-1][3] == one[1]:
            found[-1] = (*found[-1][:3], one[3])
        else:
            found.append(one)
    return found
