"""The working of rows of a sheet: where each begins and ends, its pieces, and what it covers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import Any

from roofing_core.layers.underlaying.end_laps import LEAST_PIECE
from roofing_core.measures.units import Inches
from roofing_core.roof.regions import region_of
from roofing_core.roof.slicing import Region, Stretch
from roofing_core.workings.across import Across
from roofing_core.workings.at import At
from roofing_core.workings.bounds import Bound, Places, meeting
from roofing_core.workings.covered import sheet_bounds, sheet_past
from roofing_core.workings.expressions import (
    Constant,
    Expression,
    Figure,
    Listed,
    Step,
    added,
    evaluated,
)
from roofing_core.workings.of_courses import plane_index
from roofing_core.workings.of_points import agrees


def _row(at: At, row: int) -> Any:
    return getattr(at.plan, str(at.path[0])).rows[row]


def _figure(at: At, row: int, *names: str | int) -> Figure:
    return at.figure((at.path[0], "rows", row, *names))


def _bounds(at: At, row: int) -> tuple[Bound, ...]:
    return sheet_bounds(at, plane_index(at, _row(at, row).plane), str(at.path[0]))


def _reaches(at: At, row: int) -> Iterator[Expression]:
    """Give where a row may begin or end: at an edge, there where it is lowest or highest."""
    bounds = _bounds(at, row)
    heights = [_figure(at, row, side) for side in ("lower", "upper")]
    for one in bounds:
        if one.lies == "upright":
            yield one.place
        elif one.lies == "sloping":
            yield from (one.across(height) for height in heights)
    yield from (met[0] for met in _meetings(bounds))


def _meetings(bounds: Sequence[Bound]) -> Iterator[tuple[Expression, Expression]]:
    """Give where any two edges meet."""
    for one, other in combinations(bounds, 2):
        met = meeting(one, other)
        if met is not None:
            yield met


def row_end(at: At, row: int, value: Inches, way: int) -> Expression | None:
    """Give an end of a row as it is cut, with what is trimmed off there.

    Args:
        at: The plan, at a figure of the sheet.
        row: The row, from 0.
        value: Where it ends.
        way: -1 for its left end, 1 for its right.

    Returns:
        The formula; nothing where it ends at no edge.

    Raises:
        Nothing.

    Source:
        Geometry; rows cut long and trimmed are common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(row_end(At(shed, ("underlayment", "rows", 0)), 0, -2.0, -1))
    -2.0
    """
    trim = at.choice("underlaying/trim_allowance")
    for place in _reaches(at, row):
        for one in (place, place + trim if way > 0 else place - trim):
            if agrees(one, value):
                return one
    return None


def piece_left(at: At) -> Expression | None:
    """Give where a piece of a row begins.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula: where its row begins, or where it laps the piece before.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(piece_left(At(shed, ("underlayment", "rows", 0, "pieces", 0, "left"))))
    -2.0
    """
    row, k = int(at.path[2]), int(at.path[4])
    if k:
        return at.near(k - 1, "right", back=2) - at.near("end_lap")
    return row_end(at, row, at.value(), -1)


def piece_length(at: At) -> Expression | None:
    """Give how long a piece of a row is.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula: all of its row, what the others leave of it, all that is left of its roll, or
        as much of that as keeps its end lap from those below and leaves enough for the last piece.

    Raises:
        Nothing.

    Source:
        End laps, and their 6 ft from row to row: IRC table R905.1.1(2).

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(piece_length(At(shed, ("underlayment", "rows", 0, "pieces", 0, "length"))))
    172.0
    """
    number = int(at.path[2])
    row, k = _row(at, number), int(at.path[4])
    far = row_end(at, number, row.pieces[-1].right, 1)
    near = row_end(at, number, row.pieces[0].left, -1)
    if far is None or near is None:
        return None
    span = Step(f"length of row {number + 1} as cut", "in", far - near)
    from_right = len(row.pieces) > 1 and row.pieces[0].roll > row.pieces[-1].roll
    order = [*range(len(row.pieces))][:: -1 if from_right else 1]
    tried = _last(at, number, order, span) if k == order[-1] else ()
    before = order[: order.index(k)]
    others = _cut_short(at, number, before, span, ends=(near, far), from_right=from_right)
    found = (*tried, *_off_its_roll(at), *others)
    return next((one for one in found if agrees(one, at.value())), None)


def _lap(at: At) -> Figure:
    own = "ice_barrier_" if at.path[0] == "ice_barrier" else ""
    return at.choice(f"underlaying/{own}end_lap")


def _last(at: At, row: int, order: Sequence[int], span: Expression) -> tuple[Expression, ...]:
    """Give what the pieces before it leave of a row."""
    return (span - _laid(at, row, order[:-1]),) if len(order) > 1 else (span,)


def _laid(at: At, row: int, before: Sequence[int]) -> Expression:
    """Give how much of a row some pieces cover, each less the lap of the next."""
    lap = _lap(at)
    return added(_figure(at, row, "pieces", n, "length") - lap for n in before)


def _off_its_roll(at: At) -> Iterator[Expression]:
    """Give all that earlier cuts leave of the roll that a piece comes off."""
    roll, piece, row = str(at.path[0]), at.thing(), int(at.path[2])
    length = at.choice(f"{roll}/length")
    cuts = getattr(at.plan, roll).roll_plan[piece.roll - 1].cuts
    before = [
        at.figure((roll, "roll_plan", piece.roll - 1, "cuts", n, "length"))
        for n, cut in enumerate(cuts)
        if cut.taken_from == "length" and cut.row <= row
    ]
    yield length - added(before) if before else length


def _cut_short(
    at: At,
    number: int,
    before: Sequence[int],
    span: Expression,
    *,
    ends: tuple[Expression, Expression],
    from_right: bool,
) -> Iterator[Expression]:
    """Give a piece cut shorter than its roll allows, for the sake of end laps."""
    stagger, lap = at.choice("underlaying/end_lap_stagger"), _lap(at)
    start = _laid(at, number, before) if before else Constant(0, "in")
    least = Constant(LEAST_PIECE, "in", "least piece of a row")
    yield span - least + lap - start
    rows = getattr(at.plan, str(at.path[0])).rows
    for n in range(number):
        if rows[n].plane == rows[number].plane:
            for k in range(len(rows[n].end_laps)):
                below = _figure(at, n, "end_laps", k)
                if from_right:
                    yield ends[1] - below - stagger - start
                else:
                    yield below - ends[0] - stagger + lap - start


def area_laid(at: At) -> Expression:
    """Give the area of a sheet that stays on the roof, laps included.

    Args:
        at: The plan, at the figure.

    Returns:
        The formula: of each row what lies between its edges, and its end laps once more.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> planned = At(shed, ("underlayment", "area_laid"))
    >>> evaluated(area_laid(planned)) == shed.underlayment.area_laid
    True
    """
    rows = getattr(at.plan, str(at.path[0])).rows
    parts: list[Expression] = []
    for number in range(len(rows)):
        parts += _row_area(at, number)
    if not parts:
        return Constant(0, "in2", "none is laid")
    return Listed("sum", tuple(parts), "the areas of all rows as they lie, and of their end laps")


def _row_area(at: At, number: int) -> Iterator[Expression]:
    """Give the area of a row part by part, from one corner of the plane to the next."""
    row = _row(at, number)
    stretch = _stretch(at, number)
    bounds = _bounds(at, number)
    for n, part in enumerate(stretch.parts, 1):
        name = f"part {n} of row {number + 1}" if len(stretch.parts) > 1 else f"row {number + 1}"
        left, right = bounds[part.left.edge], bounds[part.right.edge]
        low, high = (_height(at, number, v) for v in (part.lower, part.upper))
        wide = Step(f"length of {name} at its lower edge", "in", _width(left, right, low))
        over: Expression = wide
        if left.lies != "upright" or right.lies != "upright":
            top = Step(f"length of {name} at its upper edge", "in", _width(left, right, high))
            over = (wide + top) / 2
        yield Step(f"area of {name} as it lies", "in2", over * (high - low))
    for k in range(len(row.end_laps)):
        name = f"area of end lap {k + 1} of row {number + 1}"
        yield Step(name, "in2", _lapped(at, number, k, stretch))


def _lapped(at: At, number: int, k: int, stretch: Stretch) -> Expression:
    """Give what lies twice in an end lap: its width by how high the row is there."""
    sides = [_figure(at, number, side) for side in ("lower", "upper")]
    start, lap = _figure(at, number, "end_laps", k), _lap(at)
    if stretch.is_rectangle():
        return lap * (sides[1] - sides[0])
    across = Across(Region([]), Places(_bounds(at, number), heights=tuple(sides)))
    breaks = {round(evaluated(one), 9): one for one in _reaches(at, number)}
    inside = [breaks[u] for u in sorted(breaks) if start.value < u < start.value + lap.value]
    parts: list[Expression] = []
    for left, right in pairwise([start, *inside, start + lap]):
        middle = Step(f"place {len(parts) + 1} across end lap {k + 1}", "in", (left + right) / 2)
        high = added(across.lengths_up(stretch, middle))
        parts.append((right - left) * high)
    return added(parts)


def _width(left: Bound, right: Bound, height: Expression) -> Expression:
    return right.across(height) - left.across(height)


def _stretch(at: At, number: int) -> Stretch:
    """Give what a row covers of its plane."""
    row = _row(at, number)
    k = plane_index(at, row.plane)
    plane = at.plan.planes[k]
    past = [
        (0.0, 0.0) if one is None else (evaluated(one.start), evaluated(one.end))
        for one in (sheet_past(at, plane, n, str(at.path[0])) for n in range(len(plane.edges)))
    ]
    stretches = region_of(plane, past=past).between(row.lower, row.upper)
    middle = (row.pieces[0].left + row.pieces[-1].right) / 2
    return min(stretches, key=lambda one: abs((one.left + one.right) / 2 - middle))


def _height(at: At, number: int, v: Inches) -> Expression:
    """Give a height within a row: its edges, or where two edges of the plane meet."""
    tried: list[Expression] = [_figure(at, number, side) for side in ("lower", "upper")]
    tried += heights_met(at, number)
    return next(one for one in tried if agrees(one, v))


def heights_met(at: At, row: int) -> Iterator[Expression]:
    """Give the heights at which two edges of what a sheet covers of a plane meet.

    Args:
        at: The plan, at a figure of the sheet.
        row: A row on that plane, from 0.

    Returns:
        The formulas, those of level edges first.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(next(heights_met(At(shed, ("underlayment", "rows", 0)), 0)))
    -0.25
    """
    bounds = _bounds(at, row)
    yield from (one.place for one in bounds if one.lies == "level")
    yield from (met[1] for met in _meetings(bounds))
