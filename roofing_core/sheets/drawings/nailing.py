"""Where the nails go: one whole strip with its nail zone, its nails and the next course's butt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.nailing import nail_positions
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, System
from roofing_core.sheets.drawings.heights import Height, gutter, write_heights
from roofing_core.sheets.drawings.lettering import LEADING, SMALL, TEXT, width_of
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.scale_bar import scale_bar
from roofing_core.sheets.drawings.svg import FIRM, HAIR, Stroke
from roofing_core.sheets.drawings.views import View, scale_for

_HEADINGS = ("line", "above the butt")
_MARGIN = 5.0


def nailing_drawing(plan: Plan, *, system: System = "us") -> Drawing:
    """Draw one whole strip as it is nailed.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        The drawing.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> nailing_drawing(plan(Job(roof=roof))).says[:39]
    'One whole strip with 4 nails, 1 in, 13 '
    """
    shingle = plan.choices.shingle
    heights = _heights(plan)
    beside = gutter(heights, _HEADINGS, system)
    room = SHORT - beside - 2 * _MARGIN
    scale = scale_for(shingle.length, shingle.height, width=room, height=120.0)
    paper = Paper("upright", "Where the nails go", f"One whole strip. Scale 1:{scale:g}.")
    top = paper.y + LEADING * TEXT + _MARGIN + 2
    view = View(scale, beside + _MARGIN, top + shingle.height * 25.4 / scale)
    nails = _nails(plan)
    _draw(paper, view, plan, nails)
    write_heights(paper, view, heights, headings=_HEADINGS, right=beside, top=top - _MARGIN,
                  system=system)  # fmt: skip
    _places(paper, view, nails, system)
    scale_bar(paper, scale, system)
    for note in _notes(plan, system):
        paper.note(note)
    told = ", ".join(write_length(nail, system) for nail in nails)
    says = f"One whole strip with {len(nails)} nails, {told} from its left end."
    return paper.done(name="nailing", says=says)


def _heights(plan: Plan) -> tuple[Height, ...]:
    shingle = plan.choices.shingle
    named = (("butt", 0.0), ("butt of the next course", shingle.exposure), ("top", shingle.height))
    return tuple(Height(name=name, v=v, u=0.0) for name, v in named)


def _nails(plan: Plan) -> tuple[Inches, ...]:
    """Give the nails of a whole strip, as the plan has them on its steepest plane."""
    return nail_positions(
        plan.choices.shingle.length,
        nails=plan.shingles.nails_per_strip,
        end_distance=plan.choices.nailing.end_distance,
    )


def _draw(paper: Paper, view: View, plan: Plan, nails: Sequence[Inches]) -> None:
    """Draw the strip, its nail zone hatched, the next course's butt broken, a cross for a nail."""
    shingle = plan.choices.shingle
    paper.hatch([_band(view, shingle.length, shingle.nail_zone_low, shingle.nail_zone_high)], 1.2)
    paper.draw(_band(view, shingle.length, 0.0, shingle.height), FIRM, closed=True)
    butt = [view.spot((0.0, shingle.exposure)), view.spot((shingle.length, shingle.exposure))]
    paper.draw(butt, Stroke(0.3, (2.5, 1.2)))
    line = (shingle.nail_zone_low + shingle.nail_zone_high) / 2
    for nail in nails:
        x, y = view.spot((nail, line))
        paper.dot((x, y), 0.9)
        paper.draw([(x, y), (x, view.foot + 2)], HAIR)


def _band(view: View, right: Inches, low: Inches, high: Inches) -> list[tuple[float, float]]:
    return view.spots(((0.0, low), (right, low), (right, high), (0.0, high)))


def _places(paper: Paper, view: View, nails: Sequence[Inches], system: System) -> None:
    """Write how far each nail is from the left end, in as many rows as it takes."""
    texts = [write_length(nail, system) for nail in nails]
    nearest = min((view.long(b - a) for a, b in pairwise(nails)), default=SHORT)
    rows = 1 + int((max(width_of(text, SMALL) for text in texts) + 1) / nearest)
    for k, (nail, text) in enumerate(zip(nails, texts, strict=True)):
        row = k % rows
        foot = view.foot + 5 + row * LEADING * SMALL
        paper.draw([(view.x(nail), view.foot + 2), (view.x(nail), foot - SMALL)], HAIR)
        paper.write(Words(text, (view.x(nail), foot), SMALL, "middle"))
    paper.y = view.foot + 5 + rows * LEADING * SMALL


def _notes(plan: Plan, system: System) -> Iterator[str]:
    shingle = plan.choices.shingle
    low, high = (write_length(at, system) for at in (shingle.nail_zone_low, shingle.nail_zone_high))
    line = write_length((shingle.nail_zone_low + shingle.nail_zone_high) / 2, system)
    yield (
        f"Nails stand {line} above the butt, in the middle of the nail zone, hatched, {low} to"
        f" {high} above the butt. Below the strip: from its left end to each nail."
    )
    yield "A cut piece keeps the nails that still lie on it, and has never fewer than two."
    closing = [course for course in plan.courses if not course.nailable]
    if closing:
        told = "; ".join(
            f"{course.plane}, course {course.number} at {write_length(course.nail_line, system)}"
            for course in closing
        )
        yield f"Closing courses are nailed higher up the slope, every nail dabbed: {told}."
