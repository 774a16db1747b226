"""What stands at the head of a plan, and its order list row by row, for every sheet alike."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from roofing_core.job.edges import EdgeRun
from roofing_core.job.order import Order
from roofing_core.job.order_lines import OrderLine
from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import write, write_length
from roofing_core.measures.units import System

#: Over the columns of an order list; the third tells what the second counts.
ORDER_HEADINGS = ("item", "buy", "", "each holds", "needed", "left over", "would cover")

#: Headings of the forms whose name alone does not say it.
_FORMS: Mapping[str, str] = MappingProxyType(
    {"footprint": "ROOF OVER AN OUTLINE", "planes": "ROOF MEASURED PLANE BY PLANE"}
)


def plan_heading(plan: Plan, system: System = "us") -> str:
    """Write the head of a plan: the form of its roof, its size, pitch and area.

    Args:
        plan: A finished plan.
        system: The unit system.

    Returns:
        One line.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> plan_heading(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    'SINGLE-SLOPE ROOF   14 ft by 9 ft 4 in, pitch 3:12, 1.31 squares'
    """
    roof = plan.roof
    squares = write(roof.squares, "square", system)
    pitches = dict.fromkeys((roof.lowest_pitch, roof.steepest_pitch))
    pitch = " to ".join(write(each, "pitch", system) for each in pitches)
    if roof.form != "single_slope":
        title = _FORMS.get(roof.form, f"{roof.form.upper()} ROOF")
        return f"{title}   {len(plan.planes)} planes, pitch {pitch}, {squares}"
    size = f"{write(roof.eave_length, 'in', system)} by {write(roof.slope_length, 'in', system)}"
    return f"SINGLE-SLOPE ROOF   {size}, pitch {pitch}, {squares}"


def order_rows(ordered: Order, system: System = "us") -> tuple[tuple[str, ...], ...]:
    """Write the lines of an order list that come to a pack or more.

    Args:
        ordered: The order list.
        system: The unit system.

    Returns:
        One entry per line and size of pack, in the order of work, with a text for each of the
        headings; what is needed stands with the first size.

    Raises:
        Nothing.

    Source:
        The order's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> order_rows(plan(Job(roof=roof)).order)[0][:4]
    ('eave metal', '2', 'lengths', '10 ft')
    """
    return tuple(
        (
            line.item,
            str(size.packs),
            line.pack if size.packs == 1 else plural(line.pack),
            size.holds.written(system),
            *("" if k else text for text in _of_line(line, system)),
        )
        for line in ordered.lines()
        for k, size in enumerate(line.by_size())
    )


def _of_line(line: OrderLine, system: System) -> tuple[str, str, str]:
    covers = write(line.covers_more, "in2", system)
    return line.needed.written(system), line.left_over.written(system), covers


def plural(pack: str) -> str:
    """Give the word for several packs.

    Args:
        pack: The word for one.

    Returns:
        Its plural.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> plural("box"), plural("bundle")
    ('boxes', 'bundles')
    """
    return f"{pack}es" if pack.endswith("x") else f"{pack}s"


def cut_from(run: EdgeRun, system: System = "us") -> str:
    """Write which lengths a run is cut from.

    Args:
        run: A run of metal of a plan.
        system: The unit system.

    Returns:
        How many of which stock length; or the numbers of the lengths that it shares with others.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> cut_from(shed.metal[0])
    '2 x 10 ft'
    """
    if not run.cut_from:
        return f"{run.stock} x {write_length(run.stock_length, system)}"
    numbers = ", ".join(str(number) for number in run.cut_from)
    return f"length{'s' if run.pieces > 1 else ''} {numbers}"
