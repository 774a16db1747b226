"""Tables of what is laid: courses, every piece of them, rows of sheets, caps, step flashing."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.plan import Plan
from roofing_core.job.telling import all_of
from roofing_core.layers.coursing.pieces import Piece
from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import System
from roofing_core.sheets.tables.table import Cell, Column, Table

_PLANE = Column(heading="plane")

#: Plane, kind and number of a row, one of its pieces, its butt, and what is trimmed off its tops.
_Laid = tuple[str, str, Cell, Piece, float, float]


def course_table(plan: Plan) -> Table:
    """Make the table of courses and starters, plane by plane, eave first.

    Args:
        plan: A finished plan.

    Returns:
        Heights are up the slope from the eave metal. A course whose tops are trimmed has no snap
        line: it is set by its butt.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [row[1:5] for row in course_table(planned).rows[:2]]
    [('starter', 'starter', '', -0.25), ('1', 'course', 1, -0.5)]
    """
    columns = (
        _PLANE,
        Column(heading="course", whom="people"),
        Column(heading="kind", whom="machines"),
        Column(heading="course", whom="machines"),
        Column(heading="butt", unit="in"),
        Column(heading="snap tops", unit="in"),
        Column(heading="exposure", unit="in", whom="machines"),
        Column(heading="top off", unit="in"),
        Column(heading="nailed at", unit="in", whom="machines"),
        Column(heading="first off", unit="in"),
        Column(heading="pieces"),
        Column(heading="last one", unit="in"),
        Column(heading="clear", unit="in"),
        Column(heading="clear of the second", unit="in", whom="machines"),
        Column(heading="past the trim line", unit="in", whom="machines"),
        Column(heading="nails", whom="machines"),
    )
    rows = [
        row
        for plane in plan.planes
        for row in (*_starter_rows(plan, plane.name), *_course_rows(plan, plane.name))
    ]
    note = (
        "Heights are up the slope from the outer face of the eave metal. Where tops are trimmed,"
        " snap the butt. First off: trimmed from the left of the first shingle. Clear: from these"
        " joints to the nearest of the next course up."
    )
    return Table(name="courses", title="Courses", columns=columns, rows=tuple(rows), note=note)


def _starter_rows(plan: Plan, plane: str) -> Iterator[tuple[Cell, ...]]:
    for strip in plan.starters:
        if strip.plane == plane and strip.laid:
            last = strip.laid[-1]
            yield (
                plane, "starter", "starter", "", strip.butt, "", "", "", "", strip.trim,
                strip.pieces, last.right - last.left, strip.clearance, "", strip.overhang,
                strip.nails,
            )  # fmt: skip


def _course_rows(plan: Plan, plane: str) -> Iterator[tuple[Cell, ...]]:
    for course in plan.courses:
        if course.plane == plane:
            last = course.laid[-1]
            yield (
                plane, f"{course.number}" if course.nailable else f"{course.number} closing",
                "course" if course.nailable else "closing course", course.number, course.butt,
                course.snap_line if course.top_trim <= 0 else "", course.exposure,
                course.top_trim or "", course.nail_line, course.trim, course.pieces,
                last.right - last.left, course.clearance, course.clearance_two, course.overhang,
                course.nails,
            )  # fmt: skip


def piece_table(plan: Plan) -> Table:
    """Make the table of every piece of shingle, in the order of laying.

    Args:
        plan: A finished plan.

    Returns:
        One row per piece. Places are from the left corner of the plane and up the slope from the
        eave metal; angles are those of its ends with the butt, inside the piece.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> len(piece_table(planned).rows) == planned.shingles.pieces + planned.starter.pieces
    True
    """
    columns = (
        _PLANE,
        Column(heading="kind"),
        Column(heading="course"),
        Column(heading="piece"),
        Column(heading="butt", unit="in"),
        Column(heading="left", unit="in"),
        Column(heading="right", unit="in"),
        Column(heading="width", unit="in"),
        Column(heading="left end"),
        Column(heading="right end"),
        Column(heading="left angle", unit="rad"),
        Column(heading="right angle", unit="rad"),
        Column(heading="from on the shingle", unit="in"),
        Column(heading="to on the shingle", unit="in"),
        Column(heading="top off", unit="in"),
        Column(heading="nails"),
        Column(heading="nailed above the butt", unit="in"),
    )
    starters: Iterator[_Laid] = (
        (strip.plane, "starter", "", piece, strip.butt, 0.0)
        for strip in plan.starters
        for piece in strip.laid
    )
    courses: Iterator[_Laid] = (
        (course.plane, "course", course.number, piece, course.butt, course.top_trim)
        for course in plan.courses
        for piece in course.laid
    )
    rows = tuple(
        (plane, kind, number, piece.number, butt, *_placed(piece), top, len(piece.nails),
         piece.nail_height)
        for plane, kind, number, piece, butt, top in (*starters, *courses)
    )  # fmt: skip
    return Table(name="pieces", title="Pieces", columns=columns, rows=rows)


def _placed(piece: Piece) -> tuple[Cell, ...]:
    return (
        piece.left, piece.right, piece.right - piece.left, piece.left_end, piece.right_end,
        piece.left_angle, piece.right_angle, piece.shingle_from, piece.shingle_to,
    )  # fmt: skip


def row_table(plan: Plan, system: System = "us") -> Table:
    """Make the table of the rows of ice barrier and underlayment, in the order of laying.

    Args:
        plan: A finished plan.
        system: The unit system of the lengths that stand together in one cell.

    Returns:
        One row per row; heights are up the slope from the eave metal.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [row[5] for row in row_table(planned).rows]
    [-0.25, 31.75, 63.75, 95.75]
    """
    columns = (
        Column(heading="row"),
        Column(heading="material"),
        Column(heading="kind"),
        _PLANE,
        Column(heading="width", unit="in"),
        Column(heading="lower edge", unit="in"),
        Column(heading="upper edge", unit="in"),
        Column(heading="head lap", unit="in"),
        Column(heading="cut", whom="people"),
        Column(heading="pieces", whom="machines"),
        Column(heading="length", unit="in", whom="machines"),
        Column(heading="end laps", whom="machines"),
    )
    rows = tuple(
        (row.number, material, row.kind.replace("_", " "), row.plane, row.width, row.lower,
         row.upper, row.head_lap or "", _cut(row, system), len(row.pieces), _long(row),
         len(row.end_laps))
        for material, sheet in (("ice barrier", plan.ice_barrier),
                                ("underlayment", plan.underlayment))
        for row in sheet.rows
    )  # fmt: skip
    return Table(
        name="rows", title="Rows of ice barrier and underlayment", columns=columns, rows=rows
    )


def _cut(row: SheetRow, system: System) -> str:
    """Write what is cut for a row, and from which roll."""
    cuts = (f"{write_length(one.length, system)} of roll {one.roll}" for one in row.pieces)
    return ", ".join(cuts)


def _long(row: SheetRow) -> float:
    return sum(piece.length for piece in row.pieces)


def cap_table(plan: Plan) -> Table:
    """Make the table of the caps of each hip and ridge.

    Args:
        plan: A finished plan.

    Returns:
        One row per hip and ridge that two planes share; none for a single slope.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Hip
    >>> planned = plan(Job(roof=Hip(length=432, width=288, pitch=0.5)))
    >>> [row[0] for row in cap_table(planned).rows]
    ['hip', 'hip', 'hip', 'hip', 'ridge']
    """
    columns = (
        Column(heading="on"),
        Column(heading="between"),
        Column(heading="length", unit="in"),
        Column(heading="caps"),
        Column(heading="start"),
        Column(heading="show", unit="in"),
        Column(heading="last two show", unit="in"),
        Column(heading="nails"),
    )
    rows = tuple(
        (run.line, all_of(run.planes), run.line_length, run.count, run.starts_at.replace("_", " "),
         run.exposure, run.last_length, run.nails)
        for run in plan.caps
    )  # fmt: skip
    return Table(name="caps", title="Caps", columns=columns, rows=rows)


def step_table(plan: Plan) -> Table:
    """Make the table of the step flashing beside walls, chimneys and skylights.

    Args:
        plan: A finished plan.

    Returns:
        One row per side; heights are up the slope from the eave metal.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> step_table(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))).rows
    ()
    """
    columns = (
        Column(heading="beside"),
        Column(heading="opening", whom="machines"),
        _PLANE,
        Column(heading="side"),
        Column(heading="from", unit="in"),
        Column(heading="to", unit="in"),
        Column(heading="pieces"),
        Column(heading="lap", unit="in"),
        Column(heading="nails"),
    )
    rows = tuple(
        (run.beside if run.beside == "wall" else f"{run.beside} {run.opening}",
         "" if run.beside == "wall" else run.opening, run.plane,
         run.side if run.beside == "wall" else ("left" if run.side == "right" else "right"),
         run.lower, run.upper, run.count, run.lap, run.nails)
        for run in plan.step_flashings
    )  # fmt: skip
    return Table(name="flashings", title="Step flashing", columns=columns, rows=rows)
