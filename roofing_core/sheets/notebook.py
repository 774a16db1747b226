"""What a notebook shows of a plan by itself: a drawing and the order list, in one piece of HTML."""

from __future__ import annotations

from html import escape

from roofing_core.job.plan import Plan
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.planes import plane_drawings
from roofing_core.sheets.drawings.roof_plan import roof_plan
from roofing_core.sheets.headings import ORDER_HEADINGS, order_rows, plan_heading


def plan_html(plan: Plan, system: System = "us") -> str:
    """Write a plan as a piece of HTML: its head, a drawing and its order list.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One element with everything in it: nothing is fetched, every text is escaped.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> plan_html(planned).count("<tr>") - 1 == len(planned.order.lines())
    True
    """
    one = len(plan.planes) == 1
    drawing = (
        plane_drawings(plan, plan.planes[0], system=system)[0]
        if one
        else roof_plan(plan.planes, plan.lines, openings=plan.openings, system=system)
    )
    return (
        f"<div>\n<p><strong>{escape(plan_heading(plan, system))}</strong></p>\n"
        f'<div style="overflow-x: auto">\n{drawing.svg}</div>\n'
        f"<table>\n<caption>Order list</caption>\n<thead>{_heads()}</thead>\n"
        f"<tbody>\n{_rows(plan, system)}\n</tbody>\n</table>\n</div>\n"
    )


def _heads() -> str:
    cells = "".join(f'<th scope="col">{escape(heading)}</th>' for heading in ORDER_HEADINGS)
    return f"<tr>{cells}</tr>"


def _rows(plan: Plan, system: System) -> str:
    return "\n".join(
        f'<tr><th scope="row">{escape(item)}</th>'
        f"{''.join(f'<td>{escape(text)}</td>' for text in rest)}</tr>"
        for item, *rest in order_rows(plan.order, system)
    )
