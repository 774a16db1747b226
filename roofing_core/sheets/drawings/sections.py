"""Sections at eave, rake and ridge: which layer goes over which, and how far each stands past."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from roofing_core.job.plan import Plan
from roofing_core.measures.units import Millimetres, Ratio, System
from roofing_core.sheets.drawings.lettering import ABOVE, LEADING, SMALL, TEXT, Spot, lines_of
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.section_layers import (
    capped_section,
    eave_section,
    rake_section,
    ridge_section,
)
from roofing_core.sheets.drawings.section_parts import THICK, Section, Strip
from roofing_core.sheets.drawings.svg import BOLD, FINE, FIRM, HAIR, Stroke
from roofing_core.sheets.drawings.views import View, scale_for

#: Width of the pictures; the words stand to the right of them.
_WIDE, _WORDS = 108.0, 114.0

#: How a sheet is told from other layers, and how thick metal is drawn.
_DASHED = Stroke(0.3, (2.0, 1.0))
_METAL = 0.7


def sections_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw sections at the eave, the rake and the ridge.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page.

    Raises:
        Nothing.

    Source:
        The plan's own numbers, along the roof; thicknesses are drawn so that layers can be told
        apart.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> sections_drawing(plan(Job(roof=roof)))[0].says
    'Sections: at the eave, at the rake, at the ridge.'
    """
    sections = list(_sections(plan, system))
    widest = max((one.right - one.left for one in sections), default=1.0)
    scale = scale_for(widest, 0.0, width=_WIDE, height=1.0)
    named = ", ".join(section.title.lower() for section in sections)
    return paged(
        "sections",
        "Sections",
        beneath=(
            f"Lengths along the roof and legs of metal are to scale, 1:{scale:g}. Layers are drawn"
            " apart from each other and thicker than they are."
        ),
        items=[_item(section, scale) for section in sections],
        says=f"Sections: {named}.",
    )


def _sections(plan: Plan, system: System) -> Iterator[Section]:
    """Give a section for each kind of edge, on the first plane that has it."""
    metals = {(run.edge, run.plane) for run in plan.metal}
    capped = {name for run in plan.caps if run.line == "ridge" for name in run.planes}
    kinds = (
        (eave_section, [one for one in plan.planes if ("eave", one.name) in metals]),
        (rake_section, [one for one in plan.planes if ("left_rake", one.name) in metals]),
        (ridge_section, [one for one in plan.planes if ("ridge", one.name) in metals]),
        (capped_section, [one for one in plan.planes if one.name in capped]),
    )
    for section, planes in kinds:
        if planes:
            yield section(plan, planes[0], system)


def _item(section: Section, scale: Ratio) -> Item:
    top = max(_rise(strip) for strip in section.strips) + 2
    legs = max((leg.long * 25.4 / scale - leg.above for leg in section.legs), default=0.0)
    picture = top + max(legs, 4.0) + 2
    words = sum(len(lines) + _SPACE for _, lines in _told(section.strips)) * LEADING * SMALL
    return Item(
        height=2 * LEADING * TEXT + max(picture, words) + 8,
        draw=partial(_draw, section=section, scale=scale, top=top, words=words),
    )


#: Between the words of one layer and those of the next, in lines.
_SPACE = 0.5


def _rise(strip: Strip) -> Millimetres:
    return max(strip.above_start, strip.above_end) + strip.thick


def _told(strips: Sequence[Strip]) -> list[tuple[Strip, tuple[str, ...]]]:
    """Give the layers that say something and their words, the topmost first."""
    told = [strip for strip in strips if strip.says]
    return [
        (strip, lines_of(strip.says, room=SHORT - _WORDS, size=SMALL)) for strip in reversed(told)
    ]


def _draw(
    paper: Paper, *, section: Section, scale: Ratio, top: Millimetres, words: Millimetres
) -> None:
    paper.y += 2
    foot = paper.y + LEADING * TEXT
    paper.write(Words(section.title, (0.0, foot), TEXT, bold=True))
    paper.write(Words(section.beneath, (0.0, foot + LEADING * SMALL), SMALL))
    begin = foot + LEADING * SMALL + 3
    spare = max(0.0, words - top - 4) / 2
    view = View(scale, -section.left * 25.4 / scale, begin + spare + top)
    for strip in section.strips:
        _draw_strip(paper, view, strip)
    _draw_legs(paper, view, section)
    _write_words(paper, view, section, begin)


def _draw_strip(paper: Paper, view: View, strip: Strip) -> None:
    left, right = view.x(strip.start), view.x(strip.end)
    low, high = view.foot - strip.above_start, view.foot - strip.above_end
    shape = [(left, low), (right, high), (right, high - strip.thick), (left, low - strip.thick)]
    if strip.look in {"metal", "bead"}:
        paper.fill(shape)
        return
    paper.fill(shape, "white")
    paper.draw(shape, FIRM if strip.look == "shingle" else FINE, closed=True)
    if strip.look == "wood":
        paper.hatch([shape], 1.6)
    if strip.look == "sheet":
        middle = strip.thick / 2
        paper.draw([(left, low - middle), (right, high - middle)], _DASHED)


def _draw_legs(paper: Paper, view: View, section: Section) -> None:
    for leg in section.legs:
        x, y = view.x(leg.at), view.foot - leg.above
        paper.draw([(x, y - _METAL), (x, y + view.long(leg.long))], Stroke(_METAL))
    for nail in section.nails:
        x, y = view.x(nail.at), view.foot - nail.above - THICK
        paper.draw([(x, y), (x, view.foot + 2)], FIRM)
        paper.draw([(x - 0.9, y), (x + 0.9, y)], BOLD)


def _write_words(paper: Paper, view: View, section: Section, begin: Millimetres) -> None:
    """Write what each layer is, with a line to a dot on it; all of them side by side."""
    y = begin
    for k, (strip, lines) in enumerate(_told(section.strips)):
        first = y + ABOVE * SMALL
        for n, line in enumerate(lines):
            paper.write(Words(line, (_WORDS, first + n * LEADING * SMALL), SMALL))
        at = _target(view, strip, k)
        paper.draw([(_WORDS - 1, first - SMALL / 3), at], HAIR)
        paper.dot(at, 0.5)
        y += (len(lines) + _SPACE) * LEADING * SMALL


def _target(view: View, strip: Strip, k: int) -> Spot:
    """Give a place on a layer near its right end, for each layer a little further left."""
    share = max(0.5, 1 - (4.0 + 2.5 * k) / max(view.long(strip.end - strip.start), 1.0))
    above = strip.above_start + share * (strip.above_end - strip.above_start) + strip.thick / 2
    return view.x(strip.start + share * (strip.end - strip.start)), view.foot - above
