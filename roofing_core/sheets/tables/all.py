"""All tables of a plan, by their names."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Literal, get_args

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.tables.cutting import cut_table, metal_table, order_table, roll_table
from roofing_core.sheets.tables.facts import fact_table
from roofing_core.sheets.tables.laying import (
    cap_table,
    course_table,
    piece_table,
    row_table,
    step_table,
)
from roofing_core.sheets.tables.lengths import length_table
from roofing_core.sheets.tables.offcuts import offcut_table
from roofing_core.sheets.tables.table import Table

TableKind = Literal[
    "job",
    "order",
    "courses",
    "pieces",
    "cuts",
    "offcuts",
    "metal",
    "lengths",
    "rolls",
    "rows",
    "caps",
    "flashings",
]

#: The tables of a plan in the order in which they are used.
KINDS: tuple[TableKind, ...] = get_args(TableKind)


def plan_table(plan: Plan, kind: TableKind, *, system: System = "us") -> Table:
    """Make one table of a plan.

    Args:
        plan: A finished plan.
        kind: Which.
        system: The unit system of lengths that stand together in one cell.

    Returns:
        The table; without rows where the roof has nothing of that kind.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> plan_table(planned, "order").columns[2].heading, len(plan_table(planned, "courses").rows)
    ('buy', 21)
    """
    return _MAKERS[kind](plan, system)


_MAKERS: Mapping[TableKind, Callable[[Plan, System], Table]] = MappingProxyType(
    {
        "job": lambda plan, _: fact_table(plan),
        "order": lambda plan, _: order_table(plan),
        "courses": lambda plan, _: course_table(plan),
        "pieces": lambda plan, _: piece_table(plan),
        "cuts": lambda plan, _: cut_table(plan),
        "offcuts": lambda plan, _: offcut_table(plan),
        "metal": metal_table,
        "lengths": lambda plan, _: length_table(plan),
        "rolls": lambda plan, _: roll_table(plan),
        "rows": row_table,
        "caps": lambda plan, _: cap_table(plan),
        "flashings": lambda plan, _: step_table(plan),
    }
)
