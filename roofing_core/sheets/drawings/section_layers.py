"""What a section cuts through at an eave, a rake and a ridge, layer by layer from the deck up.

Along the roof every place is the plan's own. How thick a layer is drawn, and how far from the next,
is not: laid to scale, felt and metal would be thinner than a line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from roofing_core.job.edges import EdgeRun
from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.sheet_rows import sheet_rows

Look = Literal["wood", "metal", "sheet", "shingle", "bead"]

#: How thick layers are drawn, and how far one lies over the next.
THICK: Millimetres = 1.1
_STEP: Millimetres = 2.4
_DECK: Millimetres = 4.0

#: What is shown past the edge of the deck, and how much of the roof beside it.
_PAST: Inches = 1.5
_AT_RAKE: Inches = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A layer as a section cuts through it.

    Attributes:
        look: What it is drawn as.
        start: Where it begins, along the roof.
        end: Where it ends.
        above_start: Height of its underside where it begins, on paper, above the deck.
        above_end: The same where it ends.
        thick: How thick it is drawn.
        says: What it is; what is the same as another layer's says nothing.
    """

    look: Look
    start: Inches
    end: Inches
    above_start: Millimetres
    above_end: Millimetres
    thick: Millimetres = THICK
    says: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """A leg of metal bent down over an edge.

    Attributes:
        at: Where, along the roof.
        long: Its length.
        above: Height of its bend on paper, above the deck.
    """

    at: Inches
    long: Inches
    above: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Nail:
    """A nail as a section shows it.

    Attributes:
        at: Where, along the roof.
        above: Height of its head on paper, above the deck.
    """

    at: Inches
    above: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A section: its layers from the deck up, and what of the roof is shown.

    Attributes:
        title: Where it is.
        beneath: Which way the eye looks.
        left: Where the picture begins, along the roof.
        right: Where it ends.
        strips: The layers.
        legs: Legs of metal over the edge.
        nails: Nails.
    """

    title: str
    beneath: str
    left: Inches
    right: Inches
    strips: tuple[Strip, ...]
    legs: tuple[Leg, ...]
    nails: tuple[Nail, ...]


@dataclass(frozen=True, slots=True)
class _Leaning:
    """Shingles as they lean on those below them: a step up for each exposure down the slope."""

    base: Millimetres
    exposure: Inches
    height: Inches

    def above(self, butt: Inches, at: Inches) -> Millimetres:
        return self.base + (butt + self.height - at) / self.exposure * _STEP

    def strip(self, butt: Inches, upper: Inches, *, down: int = 0, says: str = "") -> Strip:
        low, high = (self.above(butt, at) - down * _STEP for at in (butt, upper))
        return Strip(look="shingle", start=butt, end=upper, above_start=low, above_end=high,
                     says=says)  # fmt: skip


def eave_section(plan: Plan, plane: RoofPlane, system: System) -> Section:
    """Give the layers at the eave of a plane: how far each stands past the metal, what covers what.

    Args:
        plan: A finished plan.
        plane: One of its planes.
        system: The unit system.

    Returns:
        The section up the slope.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [strip.look for strip in eave_section(planned, planned.planes[0], "us").strips]
    ['wood', 'metal', 'sheet', 'shingle', 'shingle', 'shingle', 'shingle']
    """
    courses = [course for course in plan.courses if course.plane == plane.name][:3]
    right = min(courses[-1].butt + 0.8 * plan.choices.shingle.exposure, _top(plane))
    metal = next(run for run in plan.metal if run.edge == "eave")
    sheets = tuple(_sheets(plan, -_PAST, right, system))
    leaning = _leaning(plan, len(sheets) + 3)
    starter = _starter(plan, plane, leaning, system)
    return Section(
        title="At the eave",
        beneath="Seen from the left end; the slope rises to the right.",
        left=-_PAST,
        right=right,
        strips=(
            _deck(plan, 0.0, right, system),
            _metal(metal, 0.0, min(metal.deck_leg, right), _STEP, system),
            *sheets,
            *starter,
            *_shingles(leaning, courses, right, system),
        ),
        legs=(Leg(at=0.0, long=metal.face_leg, above=_STEP),),
        nails=tuple(_nails(leaning, courses, right)),
    )


def _leaning(plan: Plan, steps: int) -> _Leaning:
    shingle = plan.choices.shingle
    return _Leaning(steps * _STEP, shingle.exposure, shingle.height)


def _top(plane: RoofPlane) -> Inches:
    return max(v for _, v in plane.corners)


def _deck(plan: Plan, left: Inches, right: Inches, system: System) -> Strip:
    thick = write_length(plan.choices.panel.thickness, system)
    return Strip(look="wood", start=left, end=right, above_start=THICK - _DECK,
                 above_end=THICK - _DECK, thick=_DECK, says=f"deck, {thick} thick")  # fmt: skip


def _metal(run: EdgeRun, left: Inches, right: Inches, above: float, system: System) -> Strip:
    legs = (
        f"{write_length(run.deck_leg, system)} on the roof,"
        f" {write_length(run.face_leg, system)} over the edge"
    )
    return Strip(look="metal", start=left, end=right, above_start=above, above_end=above,
                 thick=0.7, says=f"{spelt(run.material)}: {legs}")  # fmt: skip


def _sheets(plan: Plan, left: Inches, right: Inches, system: System) -> Iterator[Strip]:
    """Give the rows of ice barrier and underlayment that lie within the picture."""
    rows = [row for row in sheet_rows(plan) if row.lower < right and row.upper > left]
    for k, row in enumerate(rows):
        above = (k + 2) * _STEP
        kind = "ice barrier" if row.kind == "ice_barrier" else "underlayment"
        lower, upper = (write_length(at, system) for at in (row.lower, row.upper))
        says = f"{kind}, row {row.number}: from {lower} to {upper}"
        yield Strip(look="sheet", start=max(left, row.lower), end=min(right, row.upper),
                    above_start=above, above_end=above, thick=0.8, says=says)  # fmt: skip


def _starter(
    plan: Plan, plane: RoofPlane, leaning: _Leaning, system: System
) -> tuple[Strip, ...]:
    """Give the starter along the eave: a step under the first course."""
    return tuple(
        Strip(
            look="shingle",
            start=strip.butt,
            end=strip.butt + strip.height,
            above_start=leaning.above(-strip.butt, strip.butt) - 2 * _STEP,
            above_end=leaning.above(-strip.butt, strip.butt + strip.height) - 2 * _STEP,
            says=f"starter, {write_length(-strip.butt, system)} past the eave metal",
        )
        for strip in plan.starters
        if strip.plane == plane.name and strip.edge == "eave"
    )[:1]


def _shingles(
    leaning: _Leaning, courses: Sequence[LaidCourse], right: Inches, system: System
) -> Iterator[Strip]:
    for course in courses:
        upper = min(right, course.butt + leaning.height - course.top_trim)
        yield leaning.strip(course.butt, upper, says=_course(course, system))


def _course(course: LaidCourse, system: System) -> str:
    if course.number == 1:
        return f"course 1, {write_length(-course.butt, system)} past the eave metal"
    closing = "" if course.nailable else ", bedded in cement"
    trim = f", {write_length(course.top_trim, system)} off its top" if course.top_trim else ""
    return f"course {course.number}, butt at {write_length(course.butt, system)}{trim}{closing}"


def _nails(
    leaning: _Leaning, courses: Sequence[LaidCourse], right: Inches
) -> Iterator[Nail]:
    for course in courses:
        if course.nail_line < right:
            yield Nail(at=course.nail_line, above=leaning.above(course.butt, course.nail_line))


def rake_section(plan: Plan, plane: RoofPlane, system: System) -> Section:
    """Give the layers at the left rake of a plane, half-way up it.

    Args:
        plan: A finished plan.
        plane: One of its planes, with a rake.
        system: The unit system.

    Returns:
        The section along the eave.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> [strip.look for strip in rake_section(planned, planned.planes[0], "us").strips]
    ['wood', 'sheet', 'metal', 'shingle', 'shingle']
    """
    metal = next(run for run in plan.metal if run.edge.endswith("rake"))
    right = max(metal.deck_leg, metal.face_leg) + _AT_RAKE
    past = plan.choices.coursing.shingle_past_rake
    layers = plan.underlayment.layers
    sheets = tuple(
        Strip(look="sheet", start=0.0, end=right, above_start=(k + 1) * _STEP,
              above_end=(k + 1) * _STEP, thick=0.8, says=f"underlayment, layer {k + 1} of {layers}")
        for k in range(layers)
    )  # fmt: skip
    steps = len(sheets) + 2
    stands = f"{write_length(past, system)} past the rake metal"
    return Section(
        title="At the rake",
        beneath="Seen from the eave, at the left; up the slope is away from the eye.",
        left=-_PAST,
        right=right,
        strips=(
            _deck(plan, 0.0, right, system),
            *sheets,
            _metal(metal, 0.0, metal.deck_leg, (steps - 1) * _STEP, system),
            *(
                Strip(look="shingle", start=-past, end=right, above_start=(steps + k) * _STEP,
                      above_end=(steps + k) * _STEP, says=f"{says}, {stands}")
                for k, says in enumerate(("the course below", "the course above"))
            ),
        ),
        legs=(Leg(at=0.0, long=metal.face_leg, above=(steps - 1) * _STEP),),
        nails=(),
    )  # fmt: skip


def ridge_section(plan: Plan, plane: RoofPlane, system: System) -> Section:
    """Give the layers at the top edge of a single slope, under its ridge metal.

    Args:
        plan: A finished plan.
        plane: Its plane.
        system: The unit system.

    Returns:
        The section up the slope.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.5)))
    >>> ridge_section(planned, planned.planes[0], "us").legs[0].at
    112
    """
    top, shingle = _top(plane), plan.choices.shingle
    metal = next(run for run in plan.metal if run.edge == "ridge")
    left = max(0.0, top - max(metal.deck_leg, shingle.exposure) - _AT_RAKE)
    own = [course for course in plan.courses if course.plane == plane.name]
    courses = [course for course in own if course.snap_line > left + 1]
    sheets = tuple(_sheets(plan, left, top, system))
    leaning = _leaning(plan, len(sheets) + 2)
    start = top - metal.deck_leg
    crest = max(leaning.above(course.butt, max(course.butt, start)) for course in courses)
    return Section(
        title="At the ridge",
        beneath="Seen from the left end; the slope rises to the right.",
        left=left,
        right=top + _PAST,
        strips=(
            _deck(plan, left, top, system),
            *sheets,
            *(_cut_off(strip, left) for strip in _shingles(leaning, courses, top, system)),
            *_beads(plan, start, top, crest + _STEP, system),
            _metal(metal, start, top, crest + 2 * _STEP, system),
        ),
        legs=(Leg(at=top, long=metal.face_leg, above=crest + 2 * _STEP),),
        nails=tuple(nail for nail in _nails(leaning, courses, top) if nail.at > left),
    )


def _cut_off(strip: Strip, left: Inches) -> Strip:
    """Give the part of a layer that lies within the picture."""
    if strip.start >= left:
        return strip
    fall = (strip.above_end - strip.above_start) / (strip.end - strip.start)
    above = strip.above_start + fall * (left - strip.start)
    return replace(strip, start=left, above_start=above)


def _beads(
    plan: Plan, start: Inches, top: Inches, above: Millimetres, system: System
) -> Iterator[Strip]:
    """Give the beads under the leg of the ridge metal, evenly along it."""
    many, size = plan.choices.sealing.beads_per_leg, plan.choices.sealing.bead_size
    for k in range(many):
        at = start + (k + 0.5) / many * (top - start)
        says = f"{many} beads of sealant, {write_length(size, system)}, under each leg of the metal"
        yield Strip(look="bead", start=at - size / 2, end=at + size / 2, above_start=above,
                    above_end=above, thick=_STEP - 0.4, says="" if k else says)  # fmt: skip
