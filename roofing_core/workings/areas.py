"""Areas of rows: of a course or a starter from the pieces that it is laid of, corner by corner."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from roofing_core.measures.counting import DUST
from roofing_core.workings.at import At
from roofing_core.workings.expressions import Constant, Expression, Path, Step, added, evaluated


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of an outline, as formulas.

    Attributes:
        u: Along the eave.
        v: Up the slope.
    """

    u: Expression
    v: Expression


def rows_length(at: At, row: Path) -> Expression:
    """Give the length of a row: of each part of it that no gap parts, from end to end.

    Args:
        at: The plan.
        row: Where the row stands.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(rows_length(At(shed, ()), ("courses", 0)))
    168.5
    """
    pieces = _row(at, row).laid
    parts: list[list[int]] = []
    reach = -float("inf")
    for k in sorted(range(len(pieces)), key=lambda n: (pieces[n].left, n)):
        if pieces[k].left > reach + DUST:
            parts.append([k, k])
        if pieces[k].right > reach:
            parts[-1][1], reach = k, pieces[k].right
    return added(
        at.figure((*row, "laid", last, "right")) - at.figure((*row, "laid", first, "left"))
        for first, last in parts
    )


def laid_area(at: At, row: Path, pieces: Sequence[int] | None = None) -> Expression:
    """Give the area of a row's pieces as they lie.

    Args:
        at: The plan.
        row: Where the row stands.
        pieces: Which of them; all unless given.

    Returns:
        The formula: those cut square by their widths, the others by their corners.

    Raises:
        Nothing.

    Source:
        Geometry, the area of a polygon from its corners.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(laid_area(At(shed, ()), ("courses", 0)))  # 168 1/2 by 13 1/4 in
    2232.625
    """
    laid = _row(at, row).laid
    chosen = range(len(laid)) if pieces is None else pieces
    upright = [k for k in chosen if not laid[k].corners]
    parts: list[Expression] = []
    if upright:
        parts.append(_widths(at, row, upright) * _height(at, row))
    for k in chosen:
        if laid[k].corners:
            whole = _outline(at, (*row, "laid", k, "corners"), laid[k].corners)
            parts.append(Step(f"area of piece {k + 1}", "in2", _area(whole)))
        for n, hole in enumerate(laid[k].cutouts):
            cut = _area(_outline(at, (*row, "laid", k, "cutouts", n), hole))
            parts.append(_taken(Step(f"area of hole {n + 1} in piece {k + 1}", "in2", cut)))
    return added(parts)


def exposed_area(at: At, row: Path) -> Expression:
    """Give the area of what shows of a course: of its pieces below the next butt.

    Args:
        at: The plan.
        row: Where the course stands.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(exposed_area(At(shed, ()), ("courses", 0)))  # 168 1/2 by 5 5/8 in
    947.8125
    """
    above = at.figure((*row, "butt")) + at.figure((*row, "exposure"))
    next_butt = Step("height of the next butt", "in", above)
    return _clipped(at, row, next_butt, below=True, upright=at.figure((*row, "exposure")))


def area_above(at: At, row: Path, height: Expression) -> Expression:
    """Give the area of a row's pieces above a height.

    Args:
        at: The plan.
        row: Where the row stands.
        height: The height.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(area_above(At(shed, ()), ("courses", 0), Constant(5)))  # 7 3/4 in of it
    1305.875
    """
    butt = at.figure((*row, "butt"))
    if butt.value >= evaluated(height):
        return laid_area(at, row)
    upright = _height(at, row) - (height - butt)
    return _clipped(at, row, height, below=False, upright=upright)


def _row(at: At, row: Path) -> Any:
    value: Any = at.plan
    for name in row:
        value = value[name] if isinstance(name, int) else getattr(value, str(name))
    return value


def _height(at: At, row: Path) -> Expression:
    """Give how high the pieces of a row are that are cut square."""
    if row[0] == "courses":
        top = at.figure((*row, "snap_line")) - at.figure((*row, "top_trim"))
        return top - at.figure((*row, "butt"))
    starter, height = _row(at, row), at.figure((*row, "height"))
    k = next(n for n, plane in enumerate(at.plan.planes) if plane.name == starter.plane)
    corners = at.plan.planes[k].corners
    peak = max(range(len(corners)), key=lambda n: corners[n][1])
    if corners[peak][1] - starter.butt >= starter.height:
        return height
    highest = at.figure(("planes", k, "corners", peak, 1))
    return height.least(highest - at.figure((*row, "butt")))


def _widths(at: At, row: Path, pieces: Sequence[int]) -> Expression:
    """Give the widths of pieces together: of those that meet, from the first to the last."""
    laid = _row(at, row).laid
    runs: list[list[int]] = []
    for k in pieces:
        if runs and runs[-1][1] == k - 1 and laid[k].left == laid[k - 1].right:
            runs[-1][1] = k
        else:
            runs.append([k, k])
    return added(
        at.figure((*row, "laid", last, "right")) - at.figure((*row, "laid", first, "left"))
        for first, last in runs
    )


def _outline(at: At, ring: Path, corners: Sequence[Any]) -> list[Corner]:
    return [Corner(at.figure((*ring, n, 0)), at.figure((*ring, n, 1))) for n in range(len(corners))]


def _area(outline: Sequence[Corner]) -> Expression:
    """Give the area of an outline; terms that are nothing are left out."""
    terms: list[Expression] = []
    for one, two in zip(outline, (*outline[1:], *outline[:1]), strict=True):
        terms.append(one.u * two.v - two.u * one.v)
    return added(terms) / 2 if terms else Constant(0, "in2")


def _taken(hole: Expression) -> Expression:
    """Give the area of a hole as what it takes away, whichever way round its corners go."""
    return -hole if evaluated(hole) > 0 else hole


def _clipped(
    at: At, row: Path, height: Expression, *, below: bool, upright: Expression
) -> Expression:
    laid = _row(at, row).laid
    square = [k for k, piece in enumerate(laid) if not piece.corners]
    parts: list[Expression] = [_widths(at, row, square) * upright] if square else []
    for k, piece in enumerate(laid):
        if piece.corners:
            whole = _outline(at, (*row, "laid", k, "corners"), piece.corners)
            parts += _part(whole, height, below=below, of=f"piece {k + 1}")
        for n, hole in enumerate(piece.cutouts):
            cut = _outline(at, (*row, "laid", k, "cutouts", n), hole)
            hole_name = f"hole {n + 1} in piece {k + 1}"
            inside = _part(cut, height, below=below, of=hole_name)
            parts += [_taken(area) for area in inside]
    return added(parts) if parts else Constant(0, "in2")


def _part(outline: list[Corner], height: Expression, *, below: bool, of: str) -> list[Expression]:
    """Give the area of the part of an outline on one side of a height, if there is any."""
    level, sign = evaluated(height), 1 if below else -1
    kept: list[Corner] = []
    for one, two in zip(outline, (*outline[1:], *outline[:1]), strict=True):
        here, there = (sign * (evaluated(corner.v) - level) for corner in (one, two))
        if here <= DUST:
            kept.append(one)
        if (here < -DUST and there > DUST) or (here > DUST and there < -DUST):
            kept.append(Corner(crossing(one, two, height, f"side {len(kept) + 1} of {of}"), height))
    side = "below" if below else "above"
    name = f"area of {of} {side} that height"
    area = Step(name, "in2", _area(kept))
    return [area] if len(kept) > 2 else []  # noqa: PLR2004 - corners of a triangle


def crossing(one: Corner, two: Corner, height: Expression, side: str) -> Expression:
    """Give where a side of an outline crosses a height, along the eave.

    Args:
        one: A corner.
        two: The next one, on the other side of the height.
        height: The height.
        side: What the side is called.

    Returns:
        The formula, as a step of its own; of an upright side its own place.

    Raises:
        Nothing.

    Source:
        Geometry, a straight line between two points.

    >>> low, high = (Corner(Constant(u), Constant(v)) for u, v in ((0, 0), (6, 12)))
    >>> evaluated(crossing(low, high, Constant(4), "side 1"))
    2.0
    """
    if evaluated(one.u) == evaluated(two.u):
        return one.u
    up = (height - one.v) / (two.v - one.v)
    across = one.u + (two.u - one.u) * up
    return Step(f"place along the eave where {side} crosses that height", "in", across)


def ring_area(at: At, ring: Path) -> Expression:
    """Give the area of an outline of the plan.

    Args:
        at: The plan.
        ring: Where its corners stand.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Geometry, the area of a polygon from its corners.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(ring_area(At(shed, ()), ("planes", 0, "corners")))
    18816.0
    """
    return _area(_outline(at, ring, _row(at, ring)))
