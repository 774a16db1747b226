"""Asking: a job and the figure of its plan that is to be worked out, in one."""

from __future__ import annotations

from dataclasses import dataclass, fields

from roofing_core.job.choices import Job
from roofing_core.job.plan import plan
from roofing_core.workings.working import WorkedFigure, working

_JOB = tuple(field.name for field in fields(Job))


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureAsked(Job):
    """A roof to plan, and the figure of its plan that is asked after.

    Attributes:
        figure: Where the figure stands in the plan's JSON, as a JSON Pointer (RFC 6901) such as
            /courses/19/butt or /order/shingles/packs.
    """

    figure: str

    def job(self) -> Job:
        """Give the job alone."""
        return Job(**{name: getattr(self, name) for name in _JOB})


def figure_worked(asked: FigureAsked) -> WorkedFigure:
    """Work out one figure of a job's plan: every formula and number that led to it.

    The job is planned. The formulas then go from what was measured and chosen to the figure, each
    once, in words and with its numbers, so that a person with a pocket calculator can check them.
    Of a list one entry stands for all; the others are worked out alike, and may be asked for.

    Args:
        asked: The roof, its materials, how the work is done, and the figure.

    Returns:
        The lines in order, each with what is put in and where that comes from: chosen, a default,
        measured on the roof, worked out on a line of its own, or found by a search. An input alone
        gives one line that says so.

    Raises:
        Refused: The job cannot be planned; or no number stands there: then the patterns of figures
            near it are listed that can be asked.
        TooManyPieces: The roof would need more pieces than the limit.

    Source:
        Each line's own. Tests hold every formula to the plan, to 1e-9 of its figure.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> asked = FigureAsked(roof=shed, figure="/order/shingles/packs")
    >>> [line.numbers.written() for line in figure_worked(asked).lines][-1]
    'whole(105 / 21)'
    """
    return working(plan(asked.job()), asked.figure)
