"""A table as comma-separated text, which every spreadsheet and most programs read."""

from __future__ import annotations

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.tables.all import TableKind, plan_table
from roofing_core.sheets.tables.table import Table

#: What a spreadsheet takes for the beginning of a formula.
_BEGINS_A_FORMULA = (*"=+-@\t\r\n", *"\uff1d\uff0b\uff0d\uff20")


def looks_like_a_formula(text: str) -> bool:
    """Tell whether a spreadsheet would take a text for a formula.

    Args:
        text: Of one cell.

    Returns:
        Whether it begins like one.

    Raises:
        Nothing.

    Source:
        OWASP, "CSV Injection": =, +, -, @, their wide forms, tab and ends of lines.

    >>> looks_like_a_formula("=1+1"), looks_like_a_formula("eave")
    (True, False)
    """
    return text.startswith(_BEGINS_A_FORMULA)


def plan_csv(plan: Plan, kind: TableKind = "order", *, system: System = "us") -> str:
    """Write one table of a plan as comma-separated text.

    Numbers are written as they are, not rounded, each under a heading with its unit. A text that a
    spreadsheet would take for a formula gets an apostrophe before it, which makes it one no more.

    Args:
        plan: A finished plan.
        kind: Which table.
        system: The unit system of its numbers.

    Returns:
        A line of headings and one per row, each ended by CR LF.

    Raises:
        Nothing.

    Source:
        RFC 4180. The apostrophe: OWASP, "CSV Injection".

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> plan_csv(planned, "rows").splitlines()[1]
    '1,underlayment,full,slope,36.0,-0.25,35.75,,1,172.0,0'
    """
    return table_csv(plan_table(plan, kind, system=system), system=system)


def table_csv(table: Table, *, system: System = "us") -> str:
    """Write a table as comma-separated text.

    Args:
        table: The table.
        system: The unit system of its numbers.

    Returns:
        A line of headings and one per row, each ended by CR LF.

    Raises:
        Nothing.

    Source:
        RFC 4180.

    >>> from roofing_core.sheets.tables.table import Column
    >>> columns = (Column(heading="for"), Column(heading="length", unit="in"))
    >>> table_csv(Table(name="", title="", columns=columns, rows=(("=A1, or not", 12.5),)))
    'for,length (in)\\r\\n"\\'=A1, or not",12.5\\r\\n'
    """
    shown = table.for_whom("machines")
    lines = [[column.headed(system) for column in shown.columns]]
    for row in shown.rows:
        cells = zip(shown.columns, row, strict=True)
        lines.append([_field(column.number(cell, system)) for column, cell in cells])
    return "".join(f"{','.join(line)}\r\n" for line in lines)


def _field(value: str | float) -> str:
    if not isinstance(value, str):
        return repr(value)
    text = f"'{value}" if looks_like_a_formula(value) else value
    quoted = text.replace('"', '""')
    return f'"{quoted}"' if any(mark in text for mark in ',"\r\n') else text
