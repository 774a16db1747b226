"""Underlayment and ice barrier on a plane: rows, laps, and which roll each piece comes off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from roofing_core.job.plan import Plan
from roofing_core.layers.underlaying.rolls import SheetPiece, SheetRow
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.heights import Height
from roofing_core.sheets.drawings.lettering import (
    ABOVE,
    BELOW,
    SMALL,
    TEXT,
    Spot,
    lines_of,
    width_of,
)
from roofing_core.sheets.drawings.openings import draw_openings
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Words
from roofing_core.sheets.drawings.plane_paper import PlanePaper, Subject, capital
from roofing_core.sheets.drawings.svg import FINE, FIRM

#: A lap of more than this part of a row is no lap to be hatched: the layer lies double.
_LAP_OF_ROW = 0.4

#: Height of a line of what is written on a row.
_LINE = (ABOVE + BELOW) * SMALL + 0.4


def sheets_drawing(plan: Plan, plane: RoofPlane, *, system: System = "us") -> Drawing:
    """Draw the ice barrier and the underlayment on one plane.

    Args:
        plan: A finished plan.
        plane: One of its planes.
        system: The unit system of every measurement in it.

    Returns:
        The drawing.

    Raises:
        Nothing: A plan's planes can be drawn.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> sheets_drawing(planned, planned.planes[0]).says
    'Underlayment on the plane slope: 4 rows.'
    """
    rows = tuple(row for row in sheet_rows(plan) if row.plane == plane.name)
    notes = list(_notes(plan, plane, rows, system))
    sheet = PlanePaper(_subject(plan, plane, rows, notes, system))
    _draw_rows(sheet, rows)
    own = [one for one in plan.openings if one.plane == plane.name]
    draw_openings(sheet.paper, sheet.view, own)
    sheet.write_heights()
    notes += ["; ".join(sheet.outline())]
    if not _name_pieces(sheet, rows):
        notes.append("What is not written on a row stands on the sheet of the rolls.")
    says = f"Underlayment on the plane {plane.name}: {len(rows)} rows."
    return sheet.done(name="underlayment", says=says, notes=notes)


def sheet_rows(plan: Plan) -> tuple[SheetRow, ...]:
    """Give the rows that lie on a roof, in the order of laying: ice barrier, then underlayment.

    Args:
        plan: A finished plan.

    Returns:
        One entry per row.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> [row.kind for row in sheet_rows(plan(Job(roof=roof)))][:2]
    ['starter_strip', 'full']
    """
    return (*plan.ice_barrier.rows, *plan.underlayment.rows)


def row_name(row: SheetRow) -> str:
    """Give what a row is called.

    Args:
        row: The row.

    Returns:
        Its number and, where it is no full row of underlayment, what it is.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> row_name(SheetRow(number=1, kind="starter_strip", lower=0, upper=19, width=19, head_lap=0,
    ...                   trim=0, pieces=(), end_laps=(), plane="slope"))
    '1 starter strip'
    """
    return f"{row.number}" if row.kind == "full" else f"{row.number} {spelt(row.kind)}"


def _subject(
    plan: Plan, plane: RoofPlane, rows: Sequence[SheetRow], notes: Sequence[str], system: System
) -> Subject:
    many = "1 row" if len(rows) == 1 else f"{len(rows)} rows"
    laps = next(one for one in plan.underlayment.planes if one.plane == plane.name)
    layers = {1: "One layer", 2: "Two layers"}[laps.layers]
    return Subject(
        plane=plane,
        title=f"{capital(plane.name)}: underlayment",
        beneath=f"{layers} of underlayment, {many} in all.",
        heights=tuple(
            Height(name=row_name(row), v=row.lower, u=row.pieces[0].left)
            for row in sorted(rows, key=lambda row: row.lower)
        ),
        headings=("row", "lower edge at"),
        reached=tuple(
            (u, v)
            for row in rows
            for u in (row.pieces[0].left, row.pieces[-1].right)
            for v in (row.lower, row.upper)
        ),
        notes=3 + sum(len(lines_of(note, room=SHORT, size=TEXT)) for note in notes),
        system=system,
    )


def _draw_rows(sheet: PlanePaper, rows: Sequence[SheetRow]) -> None:
    """Draw the rows as they lie: lower edges, ends, and hatched laps."""
    view, paper = sheet.view, sheet.paper
    for row in rows:
        left, right = row.pieces[0].left, row.pieces[-1].right
        paper.draw(view.spots(((left, row.lower), (right, row.lower))), FIRM)
        paper.keep_clear(view.spots(((left, row.lower), (right, row.lower))))
        ends = [((u, row.lower), (u, row.upper)) for u in (left, right)]
        paper.draw_all((view.spots(end) for end in ends), FINE)
        for end in ends:
            paper.keep_clear(view.spots(end))
        if 0 < row.head_lap < _LAP_OF_ROW * row.width:
            top = row.lower + row.head_lap
            paper.draw(view.spots(((left, top), (right, top))), FINE)
            paper.hatch([_band(sheet, left, right, row.lower, top)], 2.0)
    paper.hatch([shape for row in rows for shape in _end_laps(sheet, row)], 0.8)


def _end_laps(sheet: PlanePaper, row: SheetRow) -> Iterator[Sequence[Spot]]:
    for piece in row.pieces[1:]:
        right = piece.left + piece.end_lap
        band = _band(sheet, piece.left, right, row.lower, row.upper)
        sheet.paper.draw(band, FINE, closed=True)
        yield band


def _band(
    sheet: PlanePaper, left: Inches, right: Inches, lower: Inches, upper: Inches
) -> list[Spot]:
    return sheet.view.spots(((left, lower), (right, lower), (right, upper), (left, upper)))


def _name_pieces(sheet: PlanePaper, rows: Sequence[SheetRow]) -> bool:
    """Write on what shows of each piece which it is; tell whether all of it had room."""
    wholly = True
    for k, row in enumerate(rows):
        above = (one.lower for one in rows[k + 1 :] if one.lower > row.lower)
        top = min(row.upper, min(above, default=row.upper))
        for piece in row.pieces:
            wholly = _name_piece(sheet, row, piece, top) and wholly
    return wholly


def _name_piece(sheet: PlanePaper, row: SheetRow, piece: SheetPiece, top: Inches) -> bool:
    """Write row, roll and length on a piece, or as much as has room between its lines."""
    long = write_length(piece.length, sheet.system)
    y = sheet.view.y((row.lower + top) / 2)
    left, paper_long = sheet.view.x(piece.left), sheet.view.long(piece.length)
    spare = sheet.view.long(top - row.lower) - _LINE
    wide = sheet.view.long(piece.length - 2 * piece.end_lap)
    offs = [off for off in (0.0, -_LINE, _LINE) if 2 * abs(off) <= spare]
    texts = (f"row {row_name(row)}, roll {piece.roll}, {long}", f"row {row.number}")
    for text in texts:
        foot = y + (ABOVE - BELOW) / 2 * SMALL
        places = [
            Words(text, (left + share * paper_long, foot + off), SMALL, "middle")
            for share in (0.5, 0.3, 0.7)
            for off in offs
        ]
        if width_of(text, SMALL) <= wide and sheet.paper.write_first(places, ground=True):
            return text == texts[0]
    return False


def _notes(plan: Plan, plane: RoofPlane, rows: Sequence[SheetRow], system: System) -> Iterator[str]:
    laps = sorted({row.head_lap for row in rows if row.head_lap})
    if laps:
        told = " or ".join(write_length(lap, system) for lap in laps)
        yield f"Each row laps the one below by {told}; a narrow lap is hatched."
    lapped = [row for row in rows if row.end_laps]
    if lapped:
        lap = write_length(plan.choices.underlaying.end_lap, system)
        told = "; ".join(
            f"row {row.number} {', '.join(write_length(at, system) for at in row.end_laps)}"
            for row in lapped
        )
        yield f"End laps of {lap} are hatched closer. They begin, from the left rake, at: {told}."
    trim = write_length(plan.choices.underlaying.trim_allowance, system)
    if any(one.plane == plane.name for one in plan.openings):
        yield "Numbered: openings; where they lie is on the drawing of the courses."
    at_rakes = f" At a rake they are cut {trim} long and trimmed to the deck."
    yield f"Rows are drawn as they come off the roll.{at_rakes if 'rake' in plane.edges else ''}"
