"""Valleys: what lies under the shingles there, how far they reach over it, and their nails."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from roofing_core.auditing.closed_valleys import Through, through_valley
from roofing_core.auditing.edges import Edge
from roofing_core.auditing.finished import FinishedPlan, FinishedRun
from roofing_core.auditing.finished_covers import FinishedLiningPiece
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.joins import Join, joins_of, with_theirs
from roofing_core.auditing.metalling import open_in
from roofing_core.auditing.rows import PlaneLaid, Row
from roofing_core.auditing.shapes import (
    DUST,
    Trapezoid,
    strip_beside,
    trapezoids,
)
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Under:
    """What lies under the shingles of one plane along a valley.

    Attributes:
        edge: The edge of the plane that the valley is.
        reach: How far from the middle metal reaches under them; endless for shingles that run
            through, of which that is asked elsewhere.
        ends: How far up from the foot of the valley metal ends; endless for shingles.
        shape: Where it lies: the metal, or two layers of shingles of the other plane.
    """

    edge: Edge
    reach: Inches
    ends: Inches
    shape: tuple[Trapezoid, ...]

    def lap(self, lies: Trapezoid) -> Inches:
        """Give how far it reaches on from where it lies bare, square to the valley and along it."""
        low, high = lies.lower, lies.upper
        corners = (
            (lies.lower_left, low), (lies.lower_right, low),
            (lies.upper_left, high), (lies.upper_right, high),
        )  # fmt: skip
        along = map(self.edge.along, corners)
        up = max(along) if self.edge.rises() else self.edge.length() - min(along)
        return min(self.reach - max(map(self.edge.inside, corners)), self.ends - up)


def valleys_of(plan: FinishedPlan) -> tuple[tuple[Join, FinishedRun | None], ...]:
    """Give every valley with its metal.

    Args:
        plan: The plan.

    Returns:
        One entry per valley; without a run where there is none.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    >>> valleys_of(finished(plan(Job(roof=Footprint(corners=ell, pitch=0.5)))))[0][1].run_length
    153.0
    """
    runs = [run for run in plan.metal if run.edge == "valley"]
    valleys = (join for join in joins_of(plan) if join.kind == "valley")
    found = with_theirs(
        valleys,
        runs,
        between=lambda run: frozenset((run.plane, run.beyond)),
        long=lambda run: run.run_length,
    )
    return tuple((join, runs[k] if k >= 0 else None) for join, k in found)


def under_shingles(
    plan: FinishedPlan, throughs: Mapping[str, Sequence[Through]]
) -> dict[str, tuple[Under, ...]]:
    """Give what lies under the shingles of each plane along its valleys.

    Args:
        plan: The plan.
        throughs: For each plane, the shingles that run through from beyond its valleys.

    Returns:
        For each plane, the metal of its valleys, or the courses that run through.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    >>> roof = finished(plan(Job(roof=Footprint(corners=ell, pitch=0.5))))
    >>> [(name, one[0].reach) for name, one in under_shingles(roof, {}).items() if one]
    [('side 3', 12.0), ('side 4', 12.0)]
    """
    found: dict[str, list[Under]] = {plane.name: [] for plane in plan.planes}
    for join, run in valleys_of(plan):
        for edge, _ in join.sides():
            metal = _metal(run, edge) if run is not None else None
            found[edge.plane] += [metal] if metal is not None else []
    for name, each in throughs.items():
        found[name] += map(_turned, each)
    return {name: tuple(each) for name, each in found.items()}


def run_through(plan: FinishedPlan, laid: Sequence[PlaneLaid]) -> dict[str, tuple[Through, ...]]:
    """Give the shingles that run through closed valleys on to each plane.

    Args:
        plan: The plan.
        laid: All its planes with their rows.

    Returns:
        For each plane what runs through from beyond its valleys; nothing where they are open.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.rows import planes_laid
    >>> from roofing_core.job.choices import Job, Valleying
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = Footprint(corners=((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360)),
    ...                 pitch=0.5)
    >>> roof = finished(plan(Job(roof=ell, valleying=Valleying(method="closed_cut"))))
    >>> [name for name, each in run_through(roof, planes_laid(roof)).items() if each]
    ['side 3']
    """
    by_name = {one.plane.name: one for one in laid}
    found: dict[str, list[Through]] = {name: [] for name in by_name}
    lined = {join.first for join, _, pieces in _linings(plan) if _lined(pieces) >= join.length()}
    for join, run in valleys_of(plan):
        if run is None:
            wide = plan.choices.valley_lining.width / 2 if join.first in lined else 0.0
            for edge, other in join.sides():
                through = through_valley(edge, other, by_name[other.plane], lined=wide)
                found[edge.plane] += [through] if through is not None else []
    return {name: tuple(each) for name, each in found.items()}


def _metal(run: FinishedRun, edge: Edge) -> Under | None:
    leg = run.deck_leg if run.plane == edge.plane else run.face_leg
    start = -run.past_foot
    end = top = _ends(run)
    if leg <= 0 or end <= start:
        return None
    if not edge.rises():
        start, end = edge.length() - end, edge.length() - start
    shape = trapezoids(strip_beside(edge.at(start), edge.at(end), leg))
    return Under(edge=edge, reach=leg, ends=top, shape=shape)


def _ends(run: FinishedRun) -> Inches:
    """Give how far up from the foot of a valley the last piece of its metal ends."""
    return sum((*run.laps[-1:], *run.lengths[-1:])) - run.past_foot


def _turned(through: Through) -> Under:
    """Give the shingles that run through, and what lines the valley where none can lie."""
    rings = (*through.twice, *through.beyond)
    shape = tuple(part for ring in rings for part in trapezoids(ring))
    return Under(edge=through.edge, reach=float("inf"), ends=float("inf"), shape=shape)


def ask_valleys(plan: FinishedPlan, laid: Sequence[PlaneLaid], gauges: Mapping[str, Gauge]) -> None:
    """Ask of every valley about its lining, how far its metal goes, and the nails beside it.

    Args:
        plan: The plan.
        laid: All its planes with their rows.
        gauges: Where to note it.

    Raises:
        Nothing.

    Source:
        Lining and metal: IRC R905.2.8.2, 2018.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.auditing.rows import planes_laid
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    >>> roof = finished(plan(Job(roof=Footprint(corners=ell, pitch=0.5))))
    >>> seen = gauges(AuditLimits())
    >>> ask_valleys(roof, planes_laid(roof), seen)
    >>> [margin.value.value > 6 for margin in seen["valleys.nails"].margin()]
    [True]
    """
    _ask_lining(plan, gauges)
    for join, run in valleys_of(plan):
        if run is not None:
            lacks = max(0.0, run.past_foot + join.length() - run.run_length) + open_in(run)
            where = Where(join.first.plane, "valley metal", of=join.between())
            gauges["metal.spans"].see_off(lacks, where)
            gauges["valleys.top"].see(_ends(run) - join.length(), where)
        else:
            where = Where(join.first.plane, "valley lining", of=join.between())
            gauges["valleys.lining"].see(plan.choices.valley_lining.width / 2, where)
    for one in laid:
        for edge in one.edges():
            if edge.kind == "valley":
                for row in (*one.starters, *one.courses):
                    _ask_nails(row, edge, gauges["valleys.nails"])


def _ask_lining(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> None:
    for join, k, pieces in _linings(plan):
        where = Where(join.first.plane, "valley lining", k + 1, of=join.between())
        gauges["valleys.lined"].see(max(0.0, join.length() - _lined(pieces)), where)
        if pieces:
            past_foot = plan.choices.valleying.lining_past_foot
            gauges["valleys.top"].see(_lined(pieces) - past_foot - join.length(), where)
        for n, piece in enumerate(pieces[1:], 2):
            gauges["underlayment.end_lap"].see(piece.lap, where._replace(piece=n))


def _linings(
    plan: FinishedPlan,
) -> Iterator[tuple[Join, int, Sequence[FinishedLiningPiece]]]:
    """Give every valley with its place among those of the roof's lines, and its lining."""
    lines = [line for line in plan.lines if line.kind == "valley"]
    found = with_theirs(
        (join for join in joins_of(plan) if join.kind == "valley"),
        lines,
        between=lambda line: frozenset(line.planes),
        long=lambda line: line.length,
    )
    for join, k in found:
        yield join, k, [one for one in plan.valley_lining.pieces if k >= 0 and one.valley == k + 1]


def _lined(pieces: Sequence[FinishedLiningPiece]) -> Inches:
    """Give how long a lining is."""
    return sum(piece.length for piece in pieces) - sum(piece.lap for piece in pieces[1:])


def _ask_nails(row: Row, edge: Edge, gauge: Gauge) -> None:
    """Ask of the nails of a row that may stand too near to a valley how far from it they do."""
    least = gauge.limit + DUST
    low, high = row.butt - least, row.top + least
    ends = sorted((edge.start, edge.end), key=lambda end: end[1])
    (au, av), (bu, bv) = ends
    if bv < low or av > high:
        return
    if bv > av:
        places = [au + (bu - au) * (min(max(v, av), bv) - av) / (bv - av) for v in (low, high)]
    else:
        places = [au, bu]
    left, right = min(places) - least, max(places) + least
    for piece in row.pieces:
        if piece.right >= left and piece.left <= right:
            v = row.butt + piece.nail_height
            for u in piece.nails:
                if left <= u <= right:
                    gauge.see(edge.from_it((u, v)), row.where(u, v, piece=piece.number))
