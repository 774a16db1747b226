"""Caps: every hip and shared ridge as a bar with its caps, and where each begins."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from roofing_core.job.capping import CapRun
from roofing_core.job.plan import Plan
from roofing_core.job.telling import all_of
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Ratio, System
from roofing_core.sheets.drawings.heights import every
from roofing_core.sheets.drawings.lettering import SMALL, TEXT
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, note_height
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.svg import FINE, FIRM
from roofing_core.sheets.drawings.views import View, scale_for

#: Height of a bar: the width of the caps is not to scale. Nearer than this, lines run together.
_HIGH, _APART = 6.0, 0.8


def caps_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw the caps of every hip and of every ridge that two planes share.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page; none for a roof without such lines.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> caps_drawing(plan(Job(roof=Gable(length=240, width=200, pitch=0.5))))[0].says
    'Caps of 1 line, each as a bar with its butts.'
    """
    longest = max((run.line_length for run in plan.caps), default=1.0)
    scale = scale_for(longest, 0.0, width=SHORT, height=1.0)
    many = "1 line" if len(plan.caps) == 1 else f"{len(plan.caps)} lines"
    return paged(
        "caps",
        "Caps",
        beneath=(
            "From the end that they are laid from, on the left. Every line across is a butt, every"
            f" dot a nail on each side. Scale 1:{scale:g} along the line."
        ),
        items=[_item(run, scale, system) for run in plan.caps],
        says=f"Caps of {many}, each as a bar with its butts.",
    )


def _item(run: CapRun, scale: Ratio, system: System) -> Item:
    heading = f"{capital(run.line)} between {all_of(run.planes)}"
    heading += f", {write_length(run.line_length, system)}"
    told = " ".join(_told(run, system))
    height = note_height(heading, width=SHORT) + note_height(told, width=SHORT, size=SMALL)
    return Item(
        height=height + _HIGH + 6,
        draw=partial(_draw, run=run, heading=heading, told=told, scale=scale),
    )


def _told(run: CapRun, system: System) -> Iterator[str]:
    start = "either end" if run.starts_at == "either" else f"the {run.starts_at} end"
    shows, last = write_length(run.exposure, system), write_length(run.last_length, system)
    yield f"{run.count} caps, laid from {start}: {shows} of each shows, of the last two {last}."
    down, aside = write_length(run.half_width, system), write_length(run.nail_from_line, system)
    yield f"They reach {down} down each side; nails stand {aside} from the line."
    dabbed = f", the last {run.exposed_nails} of them dabbed" if run.exposed_nails else ""
    yield f"{run.nails} nails{dabbed}."


def _draw(paper: Paper, *, run: CapRun, heading: str, told: str, scale: Ratio) -> None:
    paper.y += 1
    paper.note(heading, TEXT)
    top, foot = paper.y + 1.4, paper.y + 1.4 + _HIGH
    view = View(scale, 0.0, foot)
    right, middle = view.x(run.line_length), (top + foot) / 2
    step = every(view.long(run.exposure), _APART)
    paper.draw([(0.0, top), (right, top), (right, foot), (0.0, foot)], FIRM, closed=True)
    paper.draw([(0.0, middle), (right, middle)], FINE)
    paper.draw_all(([(view.x(at), top), (view.x(at), foot)] for at in run.butts[::step]), FINE)
    for at in run.nail_positions[::step] if view.long(run.exposure) >= 2 * _APART else ():
        for y in (top + 1.2, foot - 1.2):
            paper.dot((view.x(at), y), 0.3)
    paper.y = foot
    paper.note(told, SMALL)
