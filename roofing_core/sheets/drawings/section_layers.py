"""What a section cuts through at an eave, at a rake and at a ridge, with metal or with caps."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.plan import Plan
from roofing_core.measures.units import Inches, Millimetres, System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.section_parts import (
    STEP,
    THICK,
    Leaning,
    Leg,
    Look,
    Parts,
    Section,
    Strip,
)

#: What is shown past the edge of the deck, and how much of the roof beside what lies at the edge.
_PAST: Inches = 1.5
_BESIDE: Inches = 6.0


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
    metal = next(run for run in plan.metal if run.edge == "eave" and run.plane == plane.name)
    parts = Parts(plan, plane.name, left=-_PAST, right=right, system=system)
    sheets = parts.sheets(2)
    leaning = parts.leaning(len(sheets) + 3)
    return Section(
        title="At the eave",
        beneath="Seen from the left end; the slope rises to the right.",
        left=-_PAST,
        right=right,
        strips=(
            parts.deck(0.0),
            parts.metal(metal, 0.0, STEP),
            *sheets,
            *_starter(parts, plane, leaning),
            *parts.courses(leaning, courses),
        ),
        legs=(Leg(at=0.0, long=metal.face_leg, above=STEP),),
        nails=parts.nails(leaning, courses),
    )


def _top(plane: RoofPlane) -> Inches:
    return max(v for _, v in plane.corners)


def _starter(parts: Parts, plane: RoofPlane, leaning: Leaning) -> Iterator[Strip]:
    """Give the starter along the eave: a step under the first course, and as that one lies."""
    for strip in parts.plan.starters:
        if strip.plane == plane.name and strip.edge == "eave":
            says = f"starter, {parts.written(-strip.butt)} past the eave metal"
            lean_on = strip.butt - leaning.exposure
            yield parts.shingle(leaning, lean_on, (strip.butt, strip.butt + strip.height), says)
            return


def rake_section(plan: Plan, plane: RoofPlane, system: System) -> Section:
    """Give the layers at the left rake of a plane, half-way up it.

    Args:
        plan: A finished plan.
        plane: One of its planes, with a rake on its left.
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
    metal = next(run for run in plan.metal if run.edge == "left_rake" and run.plane == plane.name)
    right = max(metal.deck_leg, metal.face_leg) + _BESIDE
    parts = Parts(plan, plane.name, left=-_PAST, right=right, system=system)
    past = plan.choices.coursing.shingle_past_rake
    layers = next(one for one in plan.underlayment.planes if one.plane == plane.name).layers
    stands = f"{parts.written(past)} past the rake metal"
    sheets = (f"underlayment, layer {k + 1} of {layers}" for k in range(layers))
    shingles = (f"the course {which}, {stands}" for which in ("below", "above"))
    over = (layers + 1) * STEP
    return Section(
        title="At the rake",
        beneath="Seen from the eave, at the left; up the slope is away from the eye.",
        left=-_PAST,
        right=right,
        strips=(
            parts.deck(0.0),
            *(
                _level(0.0, right, (k + 1) * STEP, says, sheet=True)
                for k, says in enumerate(sheets)
            ),
            parts.metal(metal, 0.0, over),
            *(_level(-past, right, over + (k + 1) * STEP, says) for k, says in enumerate(shingles)),
        ),
        legs=(Leg(at=0.0, long=metal.face_leg, above=over),),
        nails=(),
    )


def _level(
    start: Inches, end: Inches, above: Millimetres, says: str, *, sheet: bool = False
) -> Strip:
    """Give a layer that lies level in its picture."""
    look: Look = "sheet" if sheet else "shingle"
    thick = 0.8 if sheet else THICK
    return Strip(look=look, start=start, end=end, above_start=above, above_end=above, thick=thick,
                 says=says)  # fmt: skip


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
    metal = next(run for run in plan.metal if run.edge == "ridge" and run.plane == plane.name)
    crest = _Crest(plan, plane, metal.deck_leg, system)
    top, parts = crest.top, crest.parts
    return Section(
        title="At the ridge",
        beneath="Seen from the left end; the slope rises to the right.",
        left=parts.left,
        right=top + _PAST,
        strips=(
            *crest.strips,
            *_beads(parts, crest.start, top, crest.above + STEP),
            parts.metal(metal, crest.start, crest.above + 2 * STEP),
        ),
        legs=(Leg(at=top, long=metal.face_leg, above=crest.above + 2 * STEP),),
        nails=crest.nails,
    )


def capped_section(plan: Plan, plane: RoofPlane, system: System) -> Section:
    """Give the layers at a ridge that two planes share, under its caps.

    Args:
        plan: A finished plan.
        plane: One of the planes that meet in such a ridge.
        system: The unit system.

    Returns:
        The section up the slope of that plane.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.forms import Gable
    >>> planned = plan(Job(roof=Gable(length=240, width=200, pitch=0.5)))
    >>> capped_section(planned, planned.planes[0], "us").strips[-1].says
    'caps, one over the next, 6 9/16 in down each side, 5 5/8 in of each showing'
    """
    caps = next(run for run in plan.caps if run.line == "ridge" and plane.name in run.planes)
    crest = _Crest(plan, plane, caps.half_width, system)
    parts = crest.parts
    down, shows = parts.written(caps.half_width), parts.written(caps.exposure)
    told = f"caps, one over the next, {down} down each side, {shows} of each showing"
    return Section(
        title="At a ridge that two planes share",
        beneath="One of two like sides, from the left end; the slope rises to the right.",
        left=parts.left,
        right=crest.top + _PAST,
        strips=(
            *crest.strips,
            *(
                _level(crest.start, crest.top, crest.above + k * STEP, told if k > 1 else "")
                for k in (1, 2)
            ),
        ),
        legs=(),
        nails=crest.nails,
    )


class _Crest:
    """What lies at the top of a plane, below what covers it."""

    def __init__(self, plan: Plan, plane: RoofPlane, leg: Inches, system: System) -> None:
        self.top = _top(plane)
        left = max(0.0, self.top - max(leg, plan.choices.shingle.exposure) - _BESIDE)
        self.parts = Parts(plan, plane.name, left=left, right=self.top, system=system)
        own = [course for course in plan.courses if course.plane == plane.name]
        courses = [course for course in own if course.snap_line > left + 1]
        sheets = self.parts.sheets(2)
        leaning = self.parts.leaning(len(sheets) + 2)
        self.start = max(left, self.top - leg)
        self.above = max(
            leaning.above(course.butt, max(course.butt, self.start)) for course in courses
        )
        laid = self.parts.courses(leaning, courses)
        self.strips = (self.parts.deck(left), *sheets, *laid)
        self.nails = self.parts.nails(leaning, courses)


def _beads(parts: Parts, start: Inches, top: Inches, above: Millimetres) -> Iterator[Strip]:
    """Give the beads under the leg of the ridge metal, evenly along it."""
    sealing = parts.plan.choices.sealing
    many, half = sealing.beads_per_leg, sealing.bead_size / 2
    size = parts.written(sealing.bead_size)
    for k in range(many):
        at = start + (k + 0.5) / many * (top - start)
        says = "" if k else f"{many} beads of sealant, {size}, under each leg of the metal"
        yield Strip(look="bead", start=at - half, end=at + half, above_start=above,
                    above_end=above, thick=STEP - 0.4, says=says)  # fmt: skip
