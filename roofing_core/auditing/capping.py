"""Capping: whether caps cover every hip and ridge, how they lap, and where their nails are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from roofing_core.auditing.cap_lines import caps_along, covered_by
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.auditing.finished_covers import FinishedCaps
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.joins import Join, Meeting, joins_of
from roofing_core.auditing.shapes import Point
from roofing_core.measures.units import Inches

#: A nail on each side of the line.
NAILS_EACH = 2

#: A point of the roof, by a corner that stands for it.
_At = tuple[str, Point]


def ask_caps(plan: FinishedPlan, gauges: Mapping[str, Gauge]) -> int:
    """Ask of every hip and every shared ridge about its caps.

    Args:
        plan: The plan.
        gauges: Where to note it.

    Returns:
        How many of their nails nothing covers, or are dabbed all the same.

    Raises:
        Nothing.

    Source:
        Hips from the eaves, ridges from the end away from the prevailing wind: a Canadian trade
        association's roofing manual, 9.4.5. The rest is geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.auditing.gauges import gauges
    >>> from roofing_core.auditing.questions import AuditLimits
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Hip
    >>> roof = finished(plan(Job(roof=Hip(length=400, width=240, pitch=0.5))))
    >>> ask_caps(roof, gauges(AuditLimits()))  # the last cap of the ridge; it covers the hips' last
    2
    """
    lines = caps_along(plan)
    ridges = _Ridges(plan, lines)
    bare = 0
    for join, k in lines:
        where = Where(join.first.plane, f"{join.kind} caps", k + 1, of=join.between())
        run = plan.caps[k] if k >= 0 else None
        if run is not None:
            off = run.line_length - join.length()
            gauges["plan.as_stated"].see_off(off, where._replace(of="length"))
        gauges["caps.spans"].see_off(_open(plan, run, join), where)
        if run is not None:
            _Asking(plan, run, where, gauges).ask()
            over = ridges.over(join) if join.kind == "hip" else []
            bare += max(0 if over else NAILS_EACH, run.exposed_nails)
            if over:
                gauges["layers.order"].see(k > min(over), where)
    return bare


def _open(plan: FinishedPlan, run: FinishedCaps | None, join: Join) -> Inches:
    """Give how much of a hip or ridge lies under no cap."""
    if run is None:
        return join.length()
    covered = sum(high - low for low, high in covered_by(plan, run))
    return max(0.0, join.length() - covered)


class _Ridges:
    """The caps of ridges, by the points of the roof at which the ridges end."""

    def __init__(self, plan: FinishedPlan, lines: tuple[tuple[Join, int], ...]) -> None:
        self.meeting = Meeting(joins_of(plan))
        self.at: dict[_At, list[int]] = {}
        for join, k in lines:
            if join.kind == "ridge" and k >= 0:
                for corner in (join.first.start, join.first.end):
                    point = self.meeting.point(join.first.plane, corner)
                    self.at.setdefault(point, []).append(k)

    def over(self, hip: Join) -> list[int]:
        """Give the runs of caps that cover the last cap of a hip: those of ridges at its top."""
        edge = hip.first
        top = edge.end if edge.rises() else edge.start
        return self.at.get(self.meeting.point(edge.plane, top), [])


class _Asking:
    """Asks about the caps of one line."""

    def __init__(
        self, plan: FinishedPlan, run: FinishedCaps, where: Where, gauges: Mapping[str, Gauge]
    ) -> None:
        self.run, self.where, self.gauges = run, where, gauges
        self.long = plan.choices.cap.length
        self.wind = plan.choices.capping.wind_from

    def ask(self) -> None:
        """Ask all of it."""
        self.gauges["caps.downhill"].see(self._faces_the_water(), self.where)
        self._ask_stated()
        for k, (butt, above) in enumerate(pairwise(self.run.butts), 2):
            self.gauges["caps.downhill"].see(above <= butt, self._at(k, above))
        for k, (butt, second) in enumerate(
            zip(self.run.butts, self.run.butts[2:], strict=False), 1
        ):
            self.gauges["caps.headlap"].see(butt + self.long - second, self._at(k, butt))
        for k, (nail, butt, end, over) in enumerate(self._nailed(), 1):
            through = butt < nail < end and 0 < self.run.nail_from_line < self.run.half_width
            self.gauges["caps.nails_hold"].see(not through, self._at(k, nail))
            if over is not None:
                aside = self.run.half_width - self.run.nail_from_line
                self.gauges["caps.nails_covered"].see(min(nail - over, aside), self._at(k, nail))

    def _ask_stated(self) -> None:
        """Ask whether the caps show as much as is said; the last ones may show less."""
        run = self.run
        shows = [above - butt for butt, above in pairwise(run.butts)]
        if run.exposure and shows[1:]:
            less = max(0.0, run.exposure - max(shows[:-1]))
            where = self.where._replace(of="exposure")
            self.gauges["plan.as_stated"].see_off(less, where)
        for k, (butt, above) in enumerate(pairwise(run.butts), 1):
            past = max(0.0, above - butt - run.exposure) if run.exposure else 0.0
            where = self._at(k, butt)._replace(of="exposure")
            self.gauges["plan.as_stated"].see_off(past, where)

    def _faces_the_water(self) -> bool:
        """Tell whether laps may open uphill, or to the wind that rains."""
        starts = self.run.starts_at
        if self.run.line == "hip":
            return starts != "lower"
        return starts == "lower" or (starts == self.wind != "unknown")

    def _nailed(self) -> Iterator[tuple[Inches, Inches, Inches, Inches | None]]:
        """Give for each cap its nails, from where to where it lies, and the butt over it.

        A cap without nails has them nowhere.
        """
        butts, nails = self.run.butts, self.run.nail_positions
        for k, butt in enumerate(butts):
            nail = nails[k] if k < len(nails) else float("-inf")
            over = butts[k + 1] if k + 1 < len(butts) and k < len(nails) else None
            end = butt + (self.long if k + 1 < len(butts) else self.run.last_length)
            yield nail, butt, end, over

    def _at(self, piece: int, u: Inches) -> Where:
        return self.where._replace(piece=piece, u=u if abs(u) < float("inf") else 0.0)
