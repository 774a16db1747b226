"""Metal bought across runs as a sheet of plain text: what to buy, to cut and to lay."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from roofing_core.layers.metal.shared import SharedMetal
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import System
from roofing_core.sheets.text import WIDTH, table


def shared_metal_text(found: SharedMetal, system: System = "us") -> str:
    """Write what is bought across runs as plain text.

    Args:
        found: What is bought, cut and laid.
        system: The unit system of every measurement in it.

    Returns:
        The sheet: lengths to buy, what is cut from each, the pieces of each run, what is left, and
        what is proved.

    Raises:
        Nothing.

    Source:
        The numbers of `shared_metal`.

    >>> from roofing_core.layers.metal.shared import RunAsked, StockOffer, shared_metal
    >>> runs = (RunAsked(name="eave", run_length=168), RunAsked(name="rake", run_length=60))
    >>> found = shared_metal(runs, offers=(StockOffer(length=120),))
    >>> shared_metal_text(found).splitlines()[7]
    '     2  10 ft  4 ft 6 in for eave, piece 2; 5 ft for rake, piece 1    6 in, A'
    """
    parts = (_buy(found, system), _cuts(found, system), _runs(found, system), _told(found, system))
    title = f"METAL FOR {len(found.runs)} RUN{'S' if len(found.runs) > 1 else ''}"
    return "\n".join([title, "-" * len(title), *("\n".join([*part, ""]) for part in parts)])


def _buy(found: SharedMetal, system: System) -> list[str]:
    bought = [one for one in found.bought if one.count]
    rows = [
        (str(one.count), write_length(one.stock_length, system))
        + ((f"{one.price:f}", f"{one.cost:f}") if found.priced else ())
        for one in bought
    ]
    headings = ("buy", "of", "at", "cost")[: 4 if found.priced else 2]
    return table(headings, rows)


def _cuts(found: SharedMetal, system: System) -> list[str]:
    names = {one.cut_from: f", {one.name}" for one in found.offcuts}
    rows = [
        (
            str(cut.number),
            write_length(cut.stock_length, system),
            "; ".join(
                f"{write_length(piece.length, system)} for {piece.run}, piece {piece.number}"
                for piece in cut.pieces
            ),
            f"{write_length(cut.offcut, system)}{names.get(cut.number, '')}",
        )
        for cut in found.cuts
    ]
    return table(("length", "of", "cut in this order", "left over"), rows)


def _runs(found: SharedMetal, system: System) -> list[str]:
    rows = [
        (
            run.name,
            write_length(run.run_length, system),
            ", ".join(
                f"{write_length(long, system)} of length {number}"
                for long, number in zip(run.lengths, run.cut_from, strict=True)
            ),
            ", ".join(write_length(lap, system) for lap in run.laps) or "-",
        )
        for run in found.runs
    ]
    return table(("run", "covers", "pieces in the order of laying", "laps start at"), rows)


def _told(found: SharedMetal, system: System) -> list[str]:
    return [line for text in _sentences(found, system) for line in wrap(text, WIDTH)]


def _sentences(found: SharedMetal, system: System) -> Iterator[str]:
    yield f"Each piece laps the next by {write_length(found.lap, system)}."
    if found.stagger:
        apart = write_length(found.stagger, system)
        yield f"Laps of runs side by side stand {apart} apart or more."
    bought, by_run = (write_length(long, system) for long in (found.metal, found.run_by_run_metal))
    cost = f", for {found.cost:f}" if found.priced else ""
    dearer = f", for {found.run_by_run_cost:f}" if found.priced else ""
    yield f"Bought: {bought} in all{cost}. Run by run: {by_run}{dearer}."
    yield found.verdict.written(system)
