"""The table of offcuts: which shingle gives which pieces, where they are used again."""

from __future__ import annotations

from roofing_core.job.plan import Plan
from roofing_core.sheets.cutting import piece_named, shared
from roofing_core.sheets.tables.table import Column, Table

_NOTE = (
    "A piece comes from the end of its shingle that is named, or begins where it says, from the"
    " left. Cut it first where another piece waits for the rest."
)


def offcut_table(plan: Plan) -> Table:
    """Make the table of the shingles that give more than one piece.

    Args:
        plan: A finished plan.

    Returns:
        One row per piece, shingle by shingle in the order in which they are opened; what is left
        of a shingle stands with its last piece. No rows where no offcut is used again.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> offcut_table(plan(Job(roof=shed, cutting=Cutting(reuse="best")))).rows[3][:4]
    (4, 'course 19 piece 1', 28.375, 'right end')
    """
    columns = (
        Column(heading="shingle"),
        Column(heading="piece"),
        Column(heading="width", unit="in"),
        Column(heading="from the"),
        Column(heading="begins at", unit="in"),
        Column(heading="left over", unit="in"),
    )
    ends = {"left": "left end", "right": "right end", "neither": "middle", "both": "whole"}
    rows = tuple(
        (
            shingle.number,
            piece_named(plan, piece),
            piece.width,
            ends[piece.keeps],
            piece.begins,
            shingle.left_over if piece is shingle.pieces[-1] else "",
        )
        for shingle in shared(plan)
        for piece in shingle.pieces
    )
    return Table(name="offcuts", title="Offcuts used again", columns=columns, rows=rows, note=_NOTE)
