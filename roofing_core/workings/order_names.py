"""The lines of an order, by the names that they have in a plan."""

from __future__ import annotations

from dataclasses import fields

from roofing_core.job.order import Order
from roofing_core.job.order_lines import OrderLine
from roofing_core.job.plan import Plan

#: The names of all lines, in the order of work.
LINES = tuple(field.name for field in fields(Order))


def lines_of(plan: Plan) -> tuple[tuple[str, OrderLine], ...]:
    """Give every line of an order by its name.

    Args:
        plan: The plan.

    Returns:
        The names and lines, in the order of work.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [name for name, line in lines_of(shed) if line.packs][:2]
    ['eave_metal', 'underlayment']
    """
    return tuple((name, getattr(plan.order, name)) for name in LINES)
