"""One plane of a roof with its courses: outline, butts, joints, cut ends, heights and lengths."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.measures.sentences import write, write_length
from roofing_core.measures.units import System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.course_ends import course_ends_drawing, shows_no_widths
from roofing_core.sheets.drawings.courses import (
    LEAST_GAP,
    draw_courses,
    mark_cut_ends,
    write_widths,
)
from roofing_core.sheets.drawings.heights import Height, every
from roofing_core.sheets.drawings.openings import draw_openings, openings_told
from roofing_core.sheets.drawings.paper import Drawing
from roofing_core.sheets.drawings.plane_paper import PlanePaper, Subject, capital, edges_told


@dataclass(frozen=True, slots=True)
class Picture:
    """A plane on paper, to which each layer of the drawing adds its part.

    Attributes:
        sheet: The plane on paper.
        plan: The plan.
        courses: The courses on the plane.
        system: The unit system.
    """

    sheet: PlanePaper
    plan: Plan
    courses: tuple[LaidCourse, ...]
    system: System


#: A layer draws its part and gives the notes that explain it.
Layer = Callable[[Picture], Iterator[str]]


def plane_drawings(plan: Plan, plane: RoofPlane, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw one plane with its courses, at the largest scale that has room.

    Args:
        plan: A finished plan.
        plane: One of its planes.
        system: The unit system of every measurement in it.

    Returns:
        The drawing; where its pieces are too small to be told apart, another of both ends of the
        first courses.

    Raises:
        Nothing: A plan's planes can be drawn.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [drawing.title for drawing in plane_drawings(planned, planned.planes[0])]
    ['Slope: courses and pieces']
    """
    courses = tuple(course for course in plan.courses if course.plane == plane.name)
    sheet = PlanePaper(_subject(plan, plane, courses, system))
    picture = Picture(sheet, plan, courses, system)
    notes = [note for layer in _LAYERS for note in layer(picture)]
    edges = edges_told(plane, system)
    says = f"The plane {plane.name} with {len(courses)} courses. Its edges: {edges}."
    whole = sheet.done(name="plane", says=says, notes=notes)
    if shows_no_widths(plan, plane, sheet.view.scale):
        return whole, course_ends_drawing(plan, plane, system=system)
    return (whole,)


def _subject(
    plan: Plan, plane: RoofPlane, courses: Sequence[LaidCourse], system: System
) -> Subject:
    pieces = sum(course.pieces for course in courses)
    trimmed = sum(one.top_trim > 0 or not one.nailable for one in courses)
    openings = sum(one.plane == plane.name for one in plan.openings)
    return Subject(
        plane=plane,
        title=f"{capital(plane.name)}: courses and pieces",
        beneath=(
            f"Pitch {write(plane.pitch, 'pitch', system)}, {write(plane.area, 'in2', system)},"
            f" {len(courses)} courses, {pieces} pieces."
        ),
        heights=tuple(
            Height(name=str(one.number), v=one.butt, u=one.laid[0].left) for one in courses
        ),
        headings=("course", "butt at"),
        reached=tuple(
            (u, one.butt) for one in courses for u in (one.laid[0].left, one.laid[-1].right)
        ),
        notes=4 + (len(plane.edges) - 1) // 4 + trimmed + 2 * openings,
        system=system,
    )


def _courses(picture: Picture) -> Iterator[str]:
    sheet, courses = picture.sheet, picture.courses
    if not draw_courses(sheet.paper, sheet.view, courses):
        many = every(sheet.view.long(courses[0].exposure), LEAST_GAP)
        yield f"Of every {many} butts one is drawn, and no joints: the scale is small."
    _keep_clear(sheet, courses)
    yield _measured_from(picture)


def _keep_clear(sheet: PlanePaper, courses: Sequence[LaidCourse]) -> None:
    """Keep words off the pieces that are cut square: at an eave or a rake they pass the edge."""
    for course in courses:
        low, high = course.butt, course.butt + course.exposure
        for piece in course.laid if course is courses[0] else (course.laid[0], course.laid[-1]):
            if not piece.corners:
                left, right = piece.left, piece.right
                round_it = ((left, high), (left, low), (right, low), (right, high))
                sheet.paper.keep_clear(sheet.view.spots(round_it))


def _measured_from(picture: Picture) -> str:
    how = picture.plan.choices.coursing
    under = write_length(how.starter_past_metal + how.course_past_starter, picture.system)
    past = write_length(how.shingle_past_rake, picture.system)
    told = (
        "Butts are measured up the slope from the lower edge of the plane, the outer face of the"
        f" metal there; the first course passes it by {under}."
    )
    has_rakes = "rake" in picture.sheet.plane.edges
    return f"{told} Shingles pass the rake metal by {past}." if has_rakes else told


def _cut_ends(picture: Picture) -> Iterator[str]:
    if mark_cut_ends(picture.sheet.paper, picture.sheet.view, picture.courses):
        yield "Hatched: the end of a piece that is cut; the other ends are the factory's."


def _openings(picture: Picture) -> Iterator[str]:
    own = [one for one in picture.plan.openings if one.plane == picture.sheet.plane.name]
    draw_openings(picture.sheet.paper, picture.sheet.view, own)
    yield from openings_told(own, picture.system)


def _heights(picture: Picture) -> Iterator[str]:
    picture.sheet.write_heights()
    for course in picture.courses:
        told = [] if course.nailable else ["closes the plane there, bedded and top-nailed"]
        if course.top_trim:
            told.append(f"{write_length(course.top_trim, picture.system)} is trimmed off its tops")
        if told:
            yield f"Course {course.number}: {', '.join(told)}."


def _outline(picture: Picture) -> Iterator[str]:
    meant = picture.sheet.outline()
    if meant:
        yield "; ".join(meant)


def _widths(picture: Picture) -> Iterator[str]:
    whole = picture.plan.choices.shingle.length
    sheet = picture.sheet
    if write_widths(sheet.paper, sheet.view, picture.courses, whole=whole, system=picture.system):
        written = write_length(whole, picture.system)
        yield f"Pieces without a width are whole shingles, {written}, or are on the cutting sheet."


#: From the lowest to the topmost. What else comes to lie on a roof is one more entry.
_LAYERS: tuple[Layer, ...] = (_courses, _cut_ends, _openings, _heights, _outline, _widths)
