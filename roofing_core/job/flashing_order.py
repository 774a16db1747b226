"""What is ordered for flashings: step flashing, sheets to bend, flashings for pipes."""

from __future__ import annotations

from collections.abc import Iterable

from roofing_core.job.layout import Layout
from roofing_core.job.order_lines import Maker, OrderLine
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches


def flashing_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    """Make the lines of flashings.

    Args:
        make: What makes a line.
        layout: The roof with all its layers.

    Returns:
        The lines by their names.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.openings import VentPipe
    >>> from roofing_core.roof.planes import SingleSlope
    >>> pipe = VentPipe(plane="slope", from_left=60, up_slope=50, diameter=3.5)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> laid = lay_out(Job(roof=roof, openings=(pipe,)))
    >>> flashing_lines(Maker(laid.roof.area), laid)["pipe_flashings"].packs
    1
    """
    choices = layout.choices
    step, pipe, sheet = choices.step_flashing, choices.pipe_flashing, choices.flashing_sheet
    sheets, area = _sheets(layout)
    return {
        "step_flashing": make.line(
            "step flashing",
            step.name,
            pack="pack",
            needed=sum(run.count for run in layout.step_flashings),
            holds=step.per_pack,
            unit="count",
            pack_weight=step.pack_weight,
        ),
        "flashing_sheets": make.line(
            "flashing sheets",
            sheet.name,
            pack="sheet",
            needed=area,
            holds=sheet.length * sheet.width,
            unit="in2",
            packs=sheets,
            pack_weight=sheet.weight,
        ),
        "pipe_flashings": make.line(
            "pipe flashings",
            pipe.name,
            pack="piece",
            needed=sum(len(one.pipes) for one in layout.openings),
            holds=1,
            unit="count",
            pack_weight=pipe.pack_weight,
        ),
    }


def _sheets(layout: Layout) -> tuple[int, float]:
    """Count the sheets that bent pieces are cut from, and give the area of the pieces.

    Pieces lie along the sheet in strips, the widest first, side by side while a strip is long
    enough. Each cricket is bent from sheets of its own, counted by its area.
    """
    sheet = layout.choices.flashing_sheet
    pieces = [piece for one in layout.openings for piece in (*one.aprons, *one.heads)]
    crickets = [cricket for one in layout.openings for cricket in one.crickets]
    flat = ((piece.length, piece.deck_leg + piece.wall_leg) for piece in pieces)
    count = sheets_for(flat, sheet_length=sheet.length, sheet_width=sheet.width)
    count += sum(
        whole_pieces(cricket.metal_area / (sheet.length * sheet.width)) for cricket in crickets
    )
    area = sum(piece.area for piece in pieces) + sum(one.metal_area for one in crickets)
    return count, area


def sheets_for(
    pieces: Iterable[tuple[Inches, Inches]], *, sheet_length: Inches, sheet_width: Inches
) -> int:
    """Count the sheets that flat pieces are cut from, strip by strip.

    Args:
        pieces: Length and width of each; one larger than a sheet is joined from sheets of its own.
        sheet_length: Of a sheet.
        sheet_width: Of a sheet.

    Returns:
        Sheets that will do; fewer may, cut otherwise.

    Raises:
        Nothing.

    Source:
        Cutting the widest first, each strip off the first sheet with room for it.

    >>> sheets_for([(32, 10), (32, 10), (32, 10), (32, 10)], sheet_length=96, sheet_width=36)
    1
    """
    whole = 0
    sheets: list[_Sheet] = []
    for long, wide in sorted(pieces, key=lambda piece: (-piece[1], -piece[0])):
        if long > sheet_length or wide > sheet_width:
            whole += whole_pieces(long / sheet_length) * whole_pieces(wide / sheet_width)
        elif not any(sheet.takes(long, wide) for sheet in sheets):
            sheets.append(_Sheet(sheet_length, sheet_width))
            sheets[-1].takes(long, wide)
    return whole + len(sheets)


class _Sheet:
    """A sheet with the strips that are cut from it."""

    def __init__(self, long: float, wide: float) -> None:
        self.long, self.wide_left = long, wide
        self.strips: list[list[float]] = []

    def takes(self, long: float, wide: float) -> bool:
        """Cut a piece from a strip that has room for it, or from a new strip."""
        for strip in self.strips:
            if strip[0] >= wide and strip[1] >= long:
                strip[1] -= long
                return True
        if self.wide_left < wide:
            return False
        self.wide_left -= wide
        self.strips.append([wide, self.long - long])
        return True
