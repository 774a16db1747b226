"""The table of lengths of metal: which length gives which pieces, bought for all runs together."""

from __future__ import annotations

from roofing_core.job.plan import Plan
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.tables.table import Column, Table


def length_table(plan: Plan) -> Table:
    """Make the table of the lengths of metal that are bought for several runs together.

    Args:
        plan: A finished plan.

    Returns:
        One row per piece, in the order of cutting; none where metal is bought run by run.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> job = Job(roof=roof, metalwork=Metalwork(buying="across_runs"))
    >>> [row[:4] for row in length_table(plan(job)).rows][:2]
    [('eave metal', 1, 120.0, 120.0), ('eave metal', 2, 120.0, 58.0)]
    """
    columns = (
        Column(heading="metal"),
        Column(heading="length"),
        Column(heading="of", unit="in"),
        Column(heading="cut", unit="in"),
        Column(heading="for"),
        Column(heading="piece"),
        Column(heading="left over", unit="in"),
    )
    rows = tuple(
        (spelt(bought.material), cut.number, cut.stock_length, piece.length, piece.run,
         piece.number, cut.offcut if k == len(cut.pieces) else "")
        for bought in plan.metal_bought
        for cut in bought.cuts
        for k, piece in enumerate(cut.pieces, 1)
    )  # fmt: skip
    return Table(name="lengths", title="Lengths of metal", columns=columns, rows=rows)
