"""The ends of the first courses, enlarged, where a plane is too wide for its pieces to be seen.

What lies between the ends is whole shingles, and the courses above repeat those that are shown.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.pieces import Piece
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Ratio, System
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.drawings.courses import (
    WRITTEN_FROM,
    draw_courses,
    mark_cut_ends,
    write_widths,
)
from roofing_core.sheets.drawings.heights import Height, gutter, write_heights
from roofing_core.sheets.drawings.lettering import TEXT
from roofing_core.sheets.drawings.paper import LONG, SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.scale_bar import scale_bar
from roofing_core.sheets.drawings.svg import Stroke
from roofing_core.sheets.drawings.views import View, scale_for

#: Strips seen from each end, courses shown at the most, and the room between the two ends.
_STRIPS, _MOST, _APART = 2.2, 12, 12.0

_HEADINGS = ("course", "butt at")
_CUT_OFF = Stroke(0.3, (0.8, 0.8))


def course_ends_drawing(plan: Plan, plane: RoofPlane, *, system: System = "us") -> Drawing:
    """Draw both ends of the first courses of a plane whose courses are cut square.

    Args:
        plan: A finished plan.
        plane: One of its planes.
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
    >>> planned = plan(Job(roof=SingleSlope(eave_length=1440, slope_length=96, pitch=0.3)))
    >>> course_ends_drawing(planned, planned.planes[0]).says
    'Both ends of courses 1 to 6 of the plane slope, enlarged.'
    """
    courses = _first(plan, plane)
    seen = _STRIPS * plan.choices.shingle.length
    paper, left, right = _set_up(plan, plane, courses, system)
    first, last = courses[0].laid[0].left, courses[0].laid[-1].right
    ends = ((left, first, first + seen, first + seen), (right, last - seen, last, last - seen))
    wrote = [_draw_end(paper, plan, courses, end, system) for end in ends]
    paper.y = left.foot + 5
    for view, text in ((left, "left end"), (right, "right end")):
        middle = (first + seen / 2) if view is left else (last - seen / 2)
        paper.write(Words(text, (view.x(middle), paper.y), TEXT, "middle"))
    scale_bar(paper, left.scale, system)
    whole = write_length(plan.choices.shingle.length, system)
    paper.note(
        f"What lies between the ends is whole shingles, {whole}. Hatched ends are cut;"
        " pieces too narrow for a width are on the cutting sheet."
    )
    if any(wrote):
        paper.note("Courses above repeat these in their order.")
    says = f"Both ends of courses 1 to {courses[-1].number} of the plane {plane.name}, enlarged."
    return paper.done(name="plane", says=says)


def shows_no_widths(plan: Plan, plane: RoofPlane, scale: Ratio) -> bool:
    """Tell whether a plane's pieces are too small on paper, and cut square so that ends tell all.

    Args:
        plan: A finished plan.
        plane: One of its planes.
        scale: That the plane is drawn at.

    Returns:
        Whether a drawing of its ends is of use.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=1440, slope_length=96, pitch=0.3)))
    >>> shows_no_widths(planned, planned.planes[0], 200.0)
    True
    """
    low = plan.choices.shingle.exposure * 25.4 / scale < WRITTEN_FROM
    own = (course for course in plan.courses if course.plane == plane.name)
    ends = {(course.laid[0].left, course.laid[-1].right) for course in own}
    wide = all(right - left > 2 * _STRIPS * plan.choices.shingle.length for left, right in ends)
    return low and len(ends) == 1 and wide


def _first(plan: Plan, plane: RoofPlane) -> Sequence[LaidCourse]:
    own = [course for course in plan.courses if course.plane == plane.name]
    return own[: min(_MOST, plan.shingles.period + 2)]


def _set_up(
    plan: Plan, plane: RoofPlane, courses: Sequence[LaidCourse], system: System
) -> tuple[Paper, View, View]:
    """Set both ends on paper, beside each other, with the heights on the left."""
    shingle = plan.choices.shingle
    heights = [Height(name=str(one.number), v=one.butt, u=one.laid[0].left) for one in courses]
    beside = gutter(heights, _HEADINGS, system) + 2
    seen, high = _STRIPS * shingle.length, len(courses) * shingle.exposure
    wide = (LONG - beside - _APART) / 2
    scale = scale_for(seen, high, width=wide, height=SHORT - 50)
    title = f"{capital(plane.name)}: both ends of the first courses"
    paper = Paper("across", title, f"Scale 1:{scale:g}.")
    foot = paper.y + 12 + (high + courses[0].butt) * 25.4 / scale
    first, last = courses[0].laid[0].left, courses[0].laid[-1].right
    left = View(scale, beside - first * 25.4 / scale, foot)
    right = View(scale, beside + wide + _APART - (last - seen) * 25.4 / scale, foot)
    write_heights(paper, left, heights, headings=_HEADINGS, right=beside - 2, top=paper.y + 6,
                  system=system)  # fmt: skip
    return paper, left, right


def _draw_end(
    paper: Paper,
    plan: Plan,
    courses: Sequence[LaidCourse],
    end: tuple[View, Inches, Inches, Inches],
    system: System,
) -> bool:
    """Draw what of the courses lies between two places, with a broken line where it is cut off."""
    view, low, high, cut_off = end
    seen = [_within(course, low, high) for course in courses]
    draw_courses(paper, view, seen)
    mark_cut_ends(paper, view, seen)
    x, top = view.x(cut_off), view.y(courses[-1].butt + courses[-1].exposure)
    foot = view.y(courses[0].butt)
    paper.fill([(x - 0.3, foot), (x + 0.3, foot), (x + 0.3, top), (x - 0.3, top)], "white")
    paper.draw([(x, foot), (x, top)], _CUT_OFF)
    whole = plan.choices.shingle.length
    known = [replace(course, laid=tuple(_known(course, low, high))) for course in courses]
    return write_widths(paper, view, known, whole=whole, system=system)


def _known(course: LaidCourse, low: Inches, high: Inches) -> Iterator[Piece]:
    """Give the pieces that lie between two places with both their ends."""
    return (piece for piece in course.laid if piece.left >= low and piece.right <= high)


def _within(course: LaidCourse, low: Inches, high: Inches) -> LaidCourse:
    """Give a course as far as it lies between two places."""
    laid = tuple(
        replace(
            piece,
            left=max(piece.left, low),
            right=min(piece.right, high),
            left_end="factory" if piece.left < low else piece.left_end,
            right_end="factory" if piece.right > high else piece.right_end,
        )
        for piece in course.laid
        if piece.left < high and piece.right > low
    )
    return replace(course, laid=laid)
