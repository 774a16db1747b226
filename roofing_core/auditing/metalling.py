"""Metalling: whether the metal along every edge spans it, and how its pieces lap."""

from __future__ import annotations

from collections.abc import Mapping

from roofing_core.auditing.edges import Edge, runs_along
from roofing_core.auditing.finished import FinishedPlan, FinishedRun
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.measures.units import Inches

#: Where water runs along the metal a lap faces it.
_ALONG_THE_WATER = frozenset({"left_rake", "right_rake", "valley"})

_AT_START, _AT_END = frozenset({"both", "start"}), frozenset({"both", "end"})


def ask_metal(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    """Ask of every edge that takes metal whether it has it, whole, and how the pieces lap.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        IRC R905.2.8.5, 2018; that upper pieces lie over lower ones is common practice, no published
        source.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = finished(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> seen = gauges(AuditLimits())
    >>> ask_metal(shed, seen)
    >>> seen["metal.spans"].looked_at, seen["metal.lap"].looked_at
    (4, 2)
    """
    for edge, run in runs_along(plan):
        if run is not None and run.edge == "headwall":
            gauges["flashings.legs"].see(min(run.deck_leg, run.face_leg), _of(edge))
        if run is not None:
            _ask_legs(run, _of(edge), gauges)
        open_edge = edge.length() if run is None else max(0.0, edge.length() - run.run_length)
        gauges["metal.spans"].see_off(open_edge + (open_in(run) if run else 0.0), _of(edge))
    for run in plan.metal:
        uphill = run.edge in _ALONG_THE_WATER and run.lap_direction != "upper_over_lower"
        gauges["metal.downhill"].see(uphill, on_run(run))
        for k, (lap, begins) in enumerate(zip(laps_of(run), run.laps, strict=False), 1):
            gauges["metal.lap"].see(lap, on_run(run, piece=k, u=begins))


def _ask_legs(run: FinishedRun, where: Where, gauges: Mapping[str, Gauge]) -> None:
    """Ask how far metal reaches up the deck, and over its edge."""
    if run.edge != "headwall":
        gauges["metal.deck_leg"].see(run.deck_leg, where)
    if run.edge not in {"headwall", "pitch_break"}:
        gauges["metal.face_leg"].see(run.face_leg, where)


def _of(edge: Edge) -> Where:
    return Where(edge.plane, f"{edge.metal_name().replace('_', ' ')} metal")


def on_run(run: FinishedRun, *, piece: int = 0, u: Inches = 0.0, of: str = "") -> Where:
    """Name a place on a run of metal.

    Args:
        run: The run.
        piece: Which of its pieces; 0 for all of it.
        u: How far along it.
        of: Which of its figures is meant.

    Returns:
        The place.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> run = FinishedRun(edge="left_rake", run_length=112, tab=2, lengths=(114,), lap=6,
    ...                   lap_direction="either", laps=(), nails=12, deck_leg=2.5, plane="slope")
    >>> on_run(run, of="nails").says().written()
    'slope, left rake metal, nails'
    """
    return Where(run.plane, f"{run.edge.replace('_', ' ')} metal", 0, piece, u, of=of)


def _starts(run: FinishedRun) -> list[float]:
    """Give where each piece of a run begins."""
    return [-run.tab if run.tabs in _AT_START else 0.0, *run.laps]


def laps_of(run: FinishedRun) -> tuple[Inches, ...]:
    """Give how far each piece of a run reaches past where the next one begins.

    Args:
        run: The run.

    Returns:
        One entry per lap, under 0 where there is a gap instead.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> laps_of(FinishedRun(edge="eave", run_length=168, tab=2, lengths=(120, 58), lap=6,
    ...                     lap_direction="either", laps=(112,), nails=18, deck_leg=2.5))
    (6,)
    """
    starts = _starts(run)
    pieces = zip(starts, run.lengths, starts[1:], strict=False)
    return tuple(start + long - after for start, long, after in pieces)


def open_in(run: FinishedRun) -> Inches:
    """Give how much of a run, tabs and all, lies under no piece of it.

    Args:
        run: The run.

    Returns:
        The length in all; 0 where its pieces cover it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> open_in(FinishedRun(edge="eave", run_length=168, tab=2, lengths=(120, 57), lap=6,
    ...                     lap_direction="either", laps=(112,), nails=18, deck_leg=2.5))
    1.0
    """
    end = run.run_length + (run.tab if run.tabs in _AT_END else 0.0)
    starts = _starts(run)
    reached, bare = starts[0], 0.0
    for start, long in zip(starts, run.lengths, strict=False):
        bare += max(0.0, start - reached)
        reached = max(reached, start + long)
    return bare + max(0.0, end - reached)
