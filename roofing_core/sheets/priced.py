"""A priced order as plain text: what to buy, what each line costs, tax and the total."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from roofing_core.buying.lines import Bought, PricedLine
from roofing_core.buying.money import plain
from roofing_core.buying.priced import PricedOrder
from roofing_core.buying.sharing import MetalCuts
from roofing_core.measures.sentences import write
from roofing_core.measures.units import System
from roofing_core.sheets.headings import plural
from roofing_core.sheets.text import WIDTH, table

_HEADINGS = ("item", "buy", "", "each holds", "price", "cost", "needed", "on hand", "left over")


def priced_order_text(order: PricedOrder, system: System = "us") -> str:
    """Write a priced order as plain text: its lines, tax, total, and what the fewest packs cost.

    Args:
        order: A priced order.
        system: The unit system of every measurement in it.

    Returns:
        A table with a row for each size of pack that is bought, as wide as its columns; then the
        sums; how metal is cut that is bought for all runs together; and notes in lines of at most
        92 characters. Every line ends with a newline. The same order gives the same text.

    Raises:
        Nothing.

    Source:
        The order's own numbers; lengths to the nearest 1/16 in or mm, money in full.

    >>> from decimal import Decimal
    >>> nothing = PricedOrder(currency="USD", minor_digits=2, tax_included=False, lines=(),
    ...     metal_cuts=(), taxes=(), cost=Decimal("0.00"), before_tax=Decimal("0.00"),
    ...     tax=Decimal("0.00"), total=Decimal("0.00"), fewest_packs_total=Decimal("0.00"),
    ...     saving=Decimal("0.00"), notes=())
    >>> priced_order_text(nothing).splitlines()[0]
    'PRICED ORDER   0.00 USD in all'
    """
    title = f"PRICED ORDER   {plain(order.total)} {order.currency} in all"
    rows = [row for line in order.lines for row in _rows(line, system)]
    parts = [
        [title, "", *table(_HEADINGS, rows)],
        _sums(order),
        *(_cuts(cuts, order, system) for cuts in order.metal_cuts),
        _notes(order, system),
    ]
    return "\n".join("\n".join(part) + "\n" for part in parts if part)


def _rows(line: PricedLine, system: System) -> Iterator[tuple[str, ...]]:
    """Write a line: a row for each size of pack, what holds for the whole line on the first."""
    whole = (
        line.needed.written(system),
        line.on_hand.written(system) if line.on_hand.value else "-",
        line.left_over.written(system),
    )
    if not line.bought:
        yield (line.item, "-", "", "-", "-", plain(line.cost), *whole)
    for k, bought in enumerate(line.bought):
        yield (
            "" if k else line.item,
            str(bought.packs),
            _named(line, bought),
            bought.holds.written(system),
            plain(bought.price),
            plain(bought.cost),
            *(("", "", "") if k else whole),
        )


def _named(line: PricedLine, bought: Bought) -> str:
    packs = line.pack if bought.packs == 1 else plural(line.pack)
    return f"{packs}, {bought.name}" if bought.name else packs


def _sums(order: PricedOrder) -> list[str]:
    word = "in" if order.tax_included else "on"
    rows = [
        ("all lines", plain(order.cost)),
        *(
            (f"tax of {plain(one.rate)} % {word} {plain(one.taxed)}", plain(one.tax))
            for one in order.taxes
            if one.rate
        ),
        (f"total in {order.currency}", plain(order.total)),
        ("the fewest packs would come to", plain(order.fewest_packs_total)),
        ("saved", plain(order.saving)),
    ]
    return table(("sums", ""), rows)


def _cuts(cuts: MetalCuts, order: PricedOrder, system: System) -> list[str]:
    """Write how lengths are cut for all runs together."""
    item = next(line.item for line in order.lines if line.line == cuts.line)
    rows = [
        (
            str(cut.number),
            write(cut.stock_length, "in", system),
            ", ".join(
                f"{write(piece.length, 'in', system)} ({piece.run}, piece {piece.number})"
                for piece in cut.pieces
            ),
            write(cut.offcut, "in", system),
        )
        for cut in cuts.cuts
    ]
    title = f"{item.upper()}, CUT FOR ALL RUNS TOGETHER, LAPPED {write(cuts.lap, 'in', system)}"
    return [title, *table(("length", "of", "cut into", "left over"), rows)]


def _notes(order: PricedOrder, system: System) -> list[str]:
    lines: list[str] = []
    for note in order.notes:
        lines += wrap(note.written(system), WIDTH, initial_indent="  - ", subsequent_indent="    ")
    unproved = [line.item for line in order.lines if not line.proved]
    if unproved:
        text = f"Not proved to be the cheapest: {', '.join(unproved)}."
        lines += wrap(text, WIDTH, initial_indent="  - ", subsequent_indent="    ")
    return lines
