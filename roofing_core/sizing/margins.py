"""Margins: how near each line of an order is to one more pack, and each measurement to changing it.

A tape read 1/2 in wrong must not cost a second trip unannounced.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from roofing_core.job.choices import Job
from roofing_core.job.layout import pieces_needed
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused
from roofing_core.measures.sentences import Amount, say
from roofing_core.sizing.counting import LINES, Counter, counter_of
from roofing_core.sizing.margin_kinds import (
    Growth,
    LineMargin,
    Margins,
    MeasurementMargin,
    OffBy,
    line_change,
)
from roofing_core.sizing.measurements import Measurement, measurements_of, plan_sizes
from roofing_core.sizing.readings import MOST_PIECES, PLANNED_GROWTH_STEP, Reading, check_reading
from roofing_core.sizing.telling import in_words, margins_say, off_by_says
from roofing_core.sizing.walks import Bought, Walk, as_ordered, walk_all, whole_steps

#: A length that is read wrong by this much or less is told first: common practice, no published
#: source.
TAPE_SLIP = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class MarginsJob(Job):
    """A job, and how far off its readings may be.

    Attributes:
        reading: How finely and how far around the roof is looked.
    """

    reading: Reading = field(default=Reading())


def margins(job: Job, *, reading: Reading | None = None) -> Margins:
    """Find how near an order is to one more pack, and how far each measurement can be off.

    A measurement goes up and down by whole steps of the tape, every other one as it was given; the
    first step at which any line of the order buys other packs is told, with what changes. For each
    line the roof grows in steps, at the same pitch, until the line buys more. Every step is looked
    at, the nearest first; nothing is assumed to grow evenly.

    Args:
        job: The roof, its materials, and how the work is done.
        reading: How finely and how far around the roof is looked; 1/16 in up to 3 in for lengths,
            1/4 in 12 up to 2 in 12 for pitches, and 24 in of growth unless given.

    Returns:
        Every measurement and every line with its margins. A single slope without openings is
        counted at every step at once; other roofs are planned step by step up to a stated number
        of plans, and each entry says how far was looked.

    Raises:
        Refused: The job cannot be planned, or the steps are none or too many; names each.

    Source:
        Counting, by the plan's own order. That a tape is read wrong by 1/2 in is common practice,
        no published source.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> found = margins(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)))
    >>> found.says.written()
    'Measure again before buying: off by 1/2 in or less, the order changes with slope length.'
    >>> [(one.item, one.growth[1].at) for one in found.lines if one.item == "shingles"]
    [('shingles', 0.0625)]
    """
    reading = _reading_of(job, reading)
    counter = counter_of(job)
    return _Margins(job, reading, counter).found()


def _reading_of(job: Job, reading: Reading | None) -> Reading:
    asked = reading or (job.reading if isinstance(job, MarginsJob) else Reading())
    try:
        check_reading(asked)
    except Refused as refusal:
        raise refusal.below("reading") from None
    return asked


@dataclass(frozen=True, slots=True)
class _Direction:
    """One way in which a measurement can be off, with what was found that way."""

    measurement: Measurement
    way: int
    step: float
    walk: Walk


class _Margins:
    """Finds the margins of one job."""

    def __init__(self, job: Job, reading: Reading, counter: Counter) -> None:
        self.job, self.reading, self.counter = job, reading, counter
        self.now = as_ordered(counter.order)
        self.growth_step = reading.growth_step or (
            reading.step if counter.at_once else max(reading.step, PLANNED_GROWTH_STEP)
        )

    def found(self) -> Margins:
        readings = [
            self._direction(one, way) for one in measurements_of(self.job.roof) for way in (-1, 1)
        ]
        sizes = plan_sizes(self.job.roof)
        growing = [self._growing(size) for size in sizes]
        plans = self._most_plans()
        looked_at = walk_all([one.walk for one in readings], counter=self.counter, most_plans=plans)
        looked_at += walk_all(growing, counter=self.counter, most_plans=plans - looked_at)
        measured = [
            self._measured(less, more)
            for less, more in zip(readings[::2], readings[1::2], strict=True)
        ]
        measured.sort(key=lambda one: not one.tight)
        walks = [*(one.walk for one in readings), *growing]
        return Margins(
            says=margins_say(measured, slip=TAPE_SLIP),
            measurements=tuple(measured),
            lines=tuple(self._lines(sizes, growing)),
            step=self.reading.step,
            pitch_step=self.reading.pitch_step,
            growth_step=self.growth_step,
            sizes_looked_at=looked_at,
            at_once=self.counter.at_once,
            stopped=any(walk.goes_on() for walk in walks),
        )

    def _most_plans(self) -> int:
        return min(self.reading.most_plans, max(1, MOST_PIECES // max(1, pieces_needed(self.job))))

    def _direction(self, one: Measurement, way: int) -> _Direction:
        reading, pitched = self.reading, one.kind == "pitch"
        step = reading.pitch_step if pitched else reading.step
        walk = Walk(
            roof_at=lambda k: one.off(way * k * step),
            steps=whole_steps(reading.pitch_reach if pitched else reading.reach, step),
            ends=lambda found: found.refused or bool(self._changed(found)),
        )
        return _Direction(one, way, step, walk)

    def _growing(self, size: Measurement) -> Walk:
        return Walk(
            roof_at=lambda k: size.off(k * self.growth_step),
            steps=whole_steps(self.reading.growth_reach, self.growth_step),
            ends=lambda found: found.refused,
        )

    def _changed(self, found: Bought) -> list[str]:
        return [name for name in LINES if found.differs(self.now, name)]

    def _measured(self, less: _Direction, more: _Direction) -> MeasurementMargin:
        one = less.measurement
        off_less, off_more = self._off_by(less), self._off_by(more)
        tight = one.kind == "length" and any(
            off.changes and off.at.value <= TAPE_SLIP + DUST for off in (off_less, off_more)
        )
        ways = off_by_says(off_more, "more"), "; ", off_by_says(off_less, "less")
        says = say(f"{in_words(one.name)}, given as ", one.value, ": ", *ways, ".")
        return MeasurementMargin(
            measurement=one.name,
            kind=one.kind,
            given=one.value,
            tight=tight,
            less=off_less,
            more=off_more,
            says=says,
        )

    def _off_by(self, one: _Direction) -> OffBy:
        walk, unit = one.walk, one.measurement.value.unit
        looked, changes = len(walk.found), walk.ended
        other = walk.found[-1] if changes else None
        lines = (
            line_change(name, getattr(self.counter.order, name), other)
            for name in (self._changed(other) if other and not other.refused else ())
            if other
        )
        return OffBy(
            changes=changes,
            plannable=not (other and other.refused),
            at=Amount(looked * one.step, unit),
            holds_to=Amount((looked - changes) * one.step, unit),
            lines=tuple(lines),
        )

    def _lines(self, sizes: Sequence[Measurement], growing: Sequence[Walk]) -> Iterator[LineMargin]:
        for name in LINES:
            line = getattr(self.counter.order, name)
            if line.packs:
                yield LineMargin(
                    line=name,
                    item=line.item,
                    material=line.material,
                    packs=line.packs,
                    pack=line.pack,
                    pack_holds=line.pack_holds,
                    needed=line.needed,
                    left_over=line.left_over,
                    growth=tuple(
                        self._growth(name, size, walk)
                        for size, walk in zip(sizes, growing, strict=True)
                    ),
                )

    def _growth(self, name: str, size: Measurement, walk: Walk) -> Growth:
        seen = [one for one in walk.found if not one.refused]
        steps = next((k for k, one in enumerate(seen, 1) if one.more(self.now, name)), 0)
        then = seen[steps - 1] if steps else self.now
        unit = getattr(self.counter.order, name).pack_holds.unit
        return Growth(
            size=size.name,
            needs_more=steps > 0,
            at=(steps or len(seen)) * self.growth_step,
            packs=then.packs[name],
            pack_holds=Amount(then.holds[name], unit),
        )
