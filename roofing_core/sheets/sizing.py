"""Margins and better sizes as plain text: what to measure again, what is near, what wastes less."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap

from roofing_core.measures.sentences import Amount, write
from roofing_core.measures.units import System
from roofing_core.sheets.text import WIDTH, table
from roofing_core.sizing.cost_kinds import CostFit
from roofing_core.sizing.fit_kinds import Fit, FitSize
from roofing_core.sizing.margin_kinds import Growth, LineMargin, Margins
from roofing_core.sizing.telling import in_words, packs


def margins_text(margins: Margins, system: System = "us") -> str:
    """Write margins as plain text: what to measure again, each measurement, each order line.

    Args:
        margins: The margins of an order.
        system: The unit system of every measurement in it.

    Returns:
        Running text in lines of at most 92 characters, and a table as wide as its columns; every
        line ended by a newline.

    Raises:
        Nothing.

    Source:
        The margins' own numbers; lengths to the nearest 1/16 in or mm, and they say so by their
        form.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.margins import margins
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> margins_text(margins(shed)).splitlines()[4][:57]
    '- slope length, given as 9 ft 4 in: 1/16 in more takes 6 '
    """
    says = [one.says.written(system) for one in margins.measurements]
    parts = (
        wrap(margins.says.written(system), WIDTH),
        _titled("How far a measurement can be off", _listed(says)),
        _titled("How far the roof can grow until a line needs more", _lines(margins, system)),
        wrap(_looked(margins, system), WIDTH),
    )
    return "\n".join("\n".join(part) + "\n" for part in parts)


def _titled(title: str, lines: Sequence[str]) -> list[str]:
    return [title.upper(), "-" * len(title), *lines]


def _listed(sentences: Sequence[str]) -> list[str]:
    return [
        line
        for one in sentences
        for line in wrap(one, WIDTH, initial_indent="- ", subsequent_indent="  ")
    ]


def _lines(margins: Margins, system: System) -> list[str]:
    sizes = [in_words(growth.size) for growth in margins.lines[0].growth] if margins.lines else []
    headings = ("item", "buy", "left over", *(f"more {size}" for size in sizes))
    return table(headings, [_line(one, system) for one in margins.lines])


def _line(line: LineMargin, system: System) -> tuple[str, ...]:
    grows = (_growth(one, line, system) for one in line.growth)
    return line.item, packs(line.packs, line.pack), line.left_over.written(system), *grows


def _growth(growth: Growth, line: LineMargin, system: System) -> str:
    at = write(growth.at, "in", system)
    if not growth.needs_more:
        return f"over {at}"
    return f"{at}: {packs(growth.packs, line.pack)}"


def _looked(margins: Margins, system: System) -> str:
    step, pitch_step = Amount(margins.step, "in"), Amount(margins.pitch_step, "pitch")
    how = "counted" if margins.at_once else "planned"
    told = (
        f"Looked at in steps of {step.written(system)} and {pitch_step.written(system)}, growth in"
        f" steps of {write(margins.growth_step, 'in', system)}; {margins.sizes_looked_at} sizes"
        f" {how}."
    )
    return told + (" The limit of plans stopped it." if margins.stopped else "")


def fit_text(fit: Fit, system: System = "us") -> str:
    """Write better sizes as plain text: what was found, the size wished for, and each better one.

    Args:
        fit: Sizes about the one wished for.
        system: The unit system of every measurement in it.

    Returns:
        Running text in lines of at most 92 characters, and a table as wide as its columns; every
        line ended by a newline.

    Raises:
        Nothing.

    Source:
        The sizes' own numbers; lengths to the nearest 1/16 in or mm, and they say so by their form.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.fit import FitJob, fit
    >>> from roofing_core.sizing.ranges import Between, Ranges
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> about = Ranges(eave_length=Between(least=160, most=180))
    >>> fit_text(fit(FitJob(roof=shed, ranges=about))).splitlines()[6].split()[:4]
    ['wished', '14', 'ft', '1.31']
    """
    sizes = [in_words(one.measurement) for one in fit.wished.sizes]
    headings = ("", *sizes, "squares", "bundles", "shingles wasted", "materials wasted", "less")
    named = [("wished", fit.wished), *((str(k), one) for k, one in enumerate(fit.better, 1))]
    rows = [_size(name, one, system) for name, one in named]
    says = [one.says.written(system) for one in fit.better]
    how = "counted" if fit.at_once else "planned"
    looked = (
        f"{fit.sizes_looked_at} sizes {how} in steps of {write(fit.step, 'in', system)};"
        f" {fit.better_sizes} waste less, {fit.not_plannable} cannot be planned."
    )
    parts = (
        wrap(fit.says.written(system), WIDTH),
        _titled("Sizes", table(headings, rows)),
        *([_titled("What each comes to", _listed(says))] if says else []),
        wrap(looked, WIDTH),
    )
    return "\n".join("\n".join(part) + "\n" for part in parts)


def cost_fit_text(fit: CostFit, system: System = "us") -> str:
    """Write sizes that cost less as plain text: what was found, and each size with its cost.

    Args:
        fit: Sizes about the one wished for, priced.
        system: The unit system of every measurement in it.

    Returns:
        Running text in lines of at most 92 characters, and a table as wide as its columns; every
        line ended by a newline.

    Raises:
        Nothing.

    Source:
        The sizes' own numbers; lengths to the nearest 1/16 in or mm, and they say so by their form.

    >>> from decimal import Decimal
    >>> from roofing_core.measures.sentences import say
    >>> from roofing_core.sizing.cost_kinds import CostSize
    >>> wished = CostSize(sizes=(), area=14400, squares=1.0, total=Decimal("300.00"),
    ...     per_square=Decimal("300.00"), saves_per_square=Decimal("0.00"), changes=(),
    ...     says=say(""))
    >>> found = CostFit(says=say("None."), currency="USD", minor_digits=2, wished=wished, better=(),
    ...     orders=1, orders_priced=1, sizes_looked_at=1, not_plannable=0, step=1, at_once=True)
    >>> cost_fit_text(found).splitlines()[5].split()
    ['wished', '1.00', '300.00', '300.00', '0.00']
    """
    sizes = [in_words(one.measurement) for one in fit.wished.sizes]
    headings = ("", *sizes, "squares", f"{fit.currency} in all", "a square", "less")
    named = [("wished", fit.wished), *((str(k), one) for k, one in enumerate(fit.better, 1))]
    rows = [
        (
            name,
            *(write(size.length, "in", system) for size in one.sizes),
            f"{one.squares:.2f}",
            *(f"{money:f}" for money in (one.total, one.per_square, one.saves_per_square)),
        )
        for name, one in named
    ]
    says = [one.says.written(system) for one in fit.better]
    looked = (
        f"{fit.sizes_looked_at} sizes in steps of {write(fit.step, 'in', system)} come to"
        f" {fit.orders} different orders; {fit.orders_priced} of these priced, each at the largest"
        " roof that it covers."
    )
    parts = (
        wrap(fit.says.written(system), WIDTH),
        _titled("Sizes", table(headings, rows)),
        *([_titled("What each comes to", _listed(says))] if says else []),
        wrap(looked, WIDTH),
    )
    return "\n".join("\n".join(part) + "\n" for part in parts)


def _size(name: str, size: FitSize, system: System) -> tuple[str, ...]:
    return (
        name,
        *(write(one.length, "in", system) for one in size.sizes),
        f"{size.squares:.2f}",
        str(size.bundles),
        write(size.shingles_wasted, "percent"),
        write(size.materials_wasted, "percent"),
        write(size.saves, "percent"),
    )
