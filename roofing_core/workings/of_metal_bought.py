"""The working of metal bought across runs: lengths bought, cut and left over.

Which runs share a length is found by a search that proves itself; the pieces are as it cut them.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from roofing_core.job.edges import METALS
from roofing_core.job.plan import Plan
from roofing_core.workings.at import ARITHMETIC, COUNTED, At, Table, table, under
from roofing_core.workings.expressions import (
    Constant,
    Expression,
    Figure,
    Listed,
    Path,
    added,
)
from roofing_core.workings.names import words


def cuts_of_run(plan: Plan, run: int) -> tuple[Path, ...]:
    """Give the lengths that are first cut for a run, where metal is bought across runs.

    Args:
        plan: The plan.
        run: The run's number, from 0.

    Returns:
        Where these cuts stand in the plan; none where each run has lengths of its own.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, metalwork=Metalwork(buying="across_runs")))
    >>> cuts_of_run(planned, 0)
    (('metal_bought', 0, 'cuts', 0), ('metal_bought', 0, 'cuts', 1))
    """
    laid = plan.metal[run]
    pieces = {(number, k + 1): long for k, (number, long) in enumerate(_pieces_of(laid))}
    cuts = _bought_for(plan, laid)[1]
    found = []
    for number in sorted(set(laid.cut_from)):
        first = cuts[number - 1].pieces[0]
        if pieces.get((number, first.number)) == first.length:
            found.append(_cut_path(plan, laid, number))
    return tuple(found)


def _pieces_of(run: Any) -> Sequence[tuple[int, float]]:
    return tuple(zip(run.cut_from, run.lengths, strict=True))


def _bought_for(plan: Plan, run: Any) -> tuple[int, Sequence[Any]]:
    """Give which of the profiles bought a run is cut from, and its cuts."""
    for k, one in enumerate(plan.metal_bought):
        if METALS[run.edge] in one.metals:
            return k, one.cuts
    return 0, ()


def _cut_path(plan: Plan, run: Any, number: int) -> Path:
    return ("metal_bought", _bought_for(plan, run)[0], "cuts", number - 1)


def piece_of_run(at: At, run: int, piece: int) -> Figure:
    """Give the length of a piece as the lengths bought are cut.

    Args:
        at: The plan.
        run: The run's number, from 0.
        piece: The piece's number, from 0.

    Returns:
        The figure.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, metalwork=Metalwork(buying="across_runs")))
    >>> piece_of_run(At(planned, ()), 0, 1).path
    ('metal_bought', 0, 'cuts', 1, 'pieces', 0, 'length')
    """
    laid = at.plan.metal[run]
    number, long = _pieces_of(laid)[piece]
    cuts = _bought_for(at.plan, laid)[1]
    k = next(
        n
        for n, one in enumerate(cuts[number - 1].pieces)
        if one.number == piece + 1 and one.length == long
    )
    return at.figure((*_cut_path(at.plan, laid, number), "pieces", k, "length"))


def stock_of_run(at: At, run: int) -> Expression:
    """Give the longest length that a run is cut from.

    Args:
        at: The plan.
        run: The run's number, from 0.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.workings.expressions import evaluated
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, metalwork=Metalwork(buying="across_runs")))
    >>> evaluated(stock_of_run(At(planned, ()), 0))
    120.0
    """
    laid = at.plan.metal[run]
    cuts = (_cut_path(at.plan, laid, number) for number in dict.fromkeys(laid.cut_from))
    stock = tuple(at.figure((*cut, "stock_length")) for cut in cuts)
    return Listed("greatest", stock, "the lengths that its pieces are cut from")


def cuts_of_metal(plan: Plan, name: str) -> tuple[Path, ...]:
    """Give the lengths that are first cut for one metal, where it is bought across runs.

    Args:
        plan: The plan.
        name: The metal, as a choice is called.

    Returns:
        Where these cuts stand in the plan.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job, Metalwork
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, metalwork=Metalwork(buying="across_runs")))
    >>> len(cuts_of_metal(planned, "eave_metal"))
    2
    """
    first: dict[Path, str] = {}
    for run in plan.metal:
        for number in run.cut_from:
            first.setdefault(_cut_path(plan, run, number), METALS[run.edge])
    return tuple(sorted(path for path, metal in first.items() if metal == name))


def _stock_length(at: At) -> Figure:
    metal = at.thing(3).metals[0]
    offer = getattr(at.plan.choices, metal).stock_lengths
    return at.choice(f"{metal}/stock_lengths/*", offer.index(at.value()))


def _cut_from(at: At) -> Figure:
    bought = [one.stock_length for one in at.thing(3).bought]
    return at.near("bought", bought.index(at.value()), "stock_length", back=3)


def _count(at: At) -> Expression:
    wanted = at.thing().stock_length
    return at.all(
        "count",
        "cuts/*/stock_length",
        "the lengths of this size that are cut",
        where=lambda cut: cut.stock_length == wanted,
        base=at.base(3),
    )


def _metal(at: At) -> Expression:
    return at.all("sum", "cuts/*/stock_length", "the lengths bought", base=at.base())


def _offcut(at: At) -> Expression:
    used = at.all("sum", "pieces/*/length", "the pieces cut from it", base=at.base())
    return Constant(0, "in").greatest(at.near("stock_length") - used)


def _left_of(at: At, field: str) -> Figure:
    return at.near("cuts", at.thing().cut_from - 1, field, back=3)


def _runs_of(at: At, metals: Sequence[str]) -> list[int]:
    return [k for k, run in enumerate(at.plan.metal) if METALS[run.edge] in metals]


def _run_by_run(at: At) -> Expression:
    """Give what the runs of each metal would take, all from the length that takes the least."""
    return added(_from_one_length(at, metal) for metal in at.thing().metals)


def _from_one_length(at: At, metal: str) -> Expression:
    lap = at.choice("metalwork/lap")
    name = f"what each run of {words(metal)} takes by itself"
    tried: list[Expression] = []
    for n in range(len(getattr(at.plan.choices, metal).stock_lengths)):
        long = at.choice(f"{metal}/stock_lengths/*", n)
        parts: list[Expression] = []
        for k in _runs_of(at, (metal,)):
            more = Constant(0, "in").greatest(at("metal/*/cut_length", k) - lap)
            parts.append((more / (long - lap)).up().greatest(1) * long)
        tried.append(Listed("sum", tuple(parts), name))
    return tried[0].least(*tried[1:]) if tried[1:] else tried[0]


def _least_metal(at: At) -> Expression | None:
    return at.near("metal") if at.thing().proved else None


def _piece(at: At) -> Expression | None:
    """Give a piece of a run: a whole length, or what its other pieces leave of it."""
    b, c = int(at.path[1]), int(at.path[3])
    cut, piece = at.plan.metal_bought[b].cuts[c], at.thing()
    runs = [
        k
        for k in _runs_of(at, at.plan.metal_bought[b].metals)
        if (cut.number, piece.length) in _pieces_of(at.plan.metal[k])[piece.number - 1 :][:1]
    ]
    alike = [one for one in cut.pieces if (one.number, one.length) == (piece.number, piece.length)]
    run = runs[next(n for n, one in enumerate(alike) if one is piece)]
    laid = at.plan.metal[run]
    if len(laid.lengths) == 1:
        return at("metal/*/cut_length", run)
    if piece.length == cut.stock_length:
        return at.near("stock_length", back=3)
    cuts = at.plan.metal_bought[b].cuts
    short = [
        n for n, (number, long) in enumerate(_pieces_of(laid))
        if long != cuts[number - 1].stock_length
    ]  # fmt: skip
    if piece.number - 1 != short[-1]:
        return None
    count, lap = len(laid.lengths), at("metal/*/lap", run)
    others = [piece_of_run(at, run, n) for n in range(count) if n != short[-1]]
    return at("metal/*/cut_length", run) + (count - 1) * lap - added(others)


METAL_BOUGHT: Table = under(
    "/metal_bought/*",
    table("One of the lengths on offer.", bought__i__stock_length=_stock_length),
    table(
        COUNTED,
        bought__i__count=_count,
        count=lambda at: at.all(
            "sum", "bought/*/count", "the lengths of every size", base=at.base()
        ),
        cuts__i__stock_length=_cut_from,
    ),
    table(
        ARITHMETIC,
        metal=_metal,
        cuts__i__offcut=_offcut,
        offcuts__i__length=lambda at: _left_of(at, "offcut"),
        offcuts__i__stock_length=lambda at: _left_of(at, "stock_length"),
        offcut=lambda at: at.all("sum", "cuts/*/offcut", "all offcuts", base=at.base()),
        saved=lambda at: at.near("run_by_run") - at.near("metal"),
    ),
    table("Whole lengths, each lapped over the next.", run_by_run=_run_by_run),
    table("What is bought, where that is proved to be the least.", least_metal=_least_metal),
    table("A run's pieces, lapped, come to its length.", cuts__i__pieces__i__length=_piece),
)
