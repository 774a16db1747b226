"""Courses as they show: butts, joints, cut ends and widths, as far as the scale has room for them.

Heights and lengths are the plan's own; nothing is laid here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.pieces import SQUARE_CUT, Piece
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, System
from roofing_core.sheets.drawings.heights import every
from roofing_core.sheets.drawings.lettering import ABOVE, BELOW, SMALL, Spot, width_of
from roofing_core.sheets.drawings.paper import Paper, Words
from roofing_core.sheets.drawings.svg import FINE, HAIR
from roofing_core.sheets.drawings.views import View

#: Closer than this, lines run together: only every so-and-so-many course is drawn, without joints.
LEAST_GAP = 0.8

#: Lower than this, a course has no room for the mark of a cut end.
_MARKED_FROM = 1.2

#: Width of that mark.
MARK = 1.2

#: A course at least this high has room for a width within it.
WRITTEN_FROM = (ABOVE + BELOW) * SMALL + 0.4

Shape = tuple[tuple[Inches, Inches], ...]


def shown(course: LaidCourse, piece: Piece) -> Shape:
    """Give what shows of a piece: from its butt to where the next course begins.

    Args:
        course: The course that it lies in.
        piece: The piece.

    Returns:
        Its outline (u, v); none where the next course covers it.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> laid = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> shown(laid.courses[0], laid.courses[0].laid[0])[2]
    (39.125, 5.125)
    """
    butt, top = course.butt, course.butt + course.exposure
    if not piece.corners:
        left, right = piece.left, piece.right
        return ((left, butt), (right, butt), (right, top), (left, top))
    return tuple(_below(piece.corners, top))


def _below(corners: Shape, top: float) -> Iterator[tuple[float, float]]:
    """Give the part of an outline below a height."""
    for k, (u, v) in enumerate(corners):
        was_u, was_v = corners[k - 1]
        if (was_v < top < v) or (v < top < was_v):
            yield was_u + (u - was_u) * (top - was_v) / (v - was_v), top
        if v <= top:
            yield u, v


def draw_courses(paper: Paper, view: View, courses: Sequence[LaidCourse]) -> bool:
    """Draw the butts and the joints of courses.

    Args:
        paper: What is drawn on.
        view: How the plane lies on it.
        courses: The courses of one plane.

    Returns:
        Whether all of them are drawn, with their joints; at a small scale some butts stand for all.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> draw_courses(Paper("upright", "A roof", ""), View(10, 20, 200), [])
    True
    """
    step = every(view.long(courses[0].exposure), LEAST_GAP) if courses else 1
    drawn = [course for course in courses if course.number % step == 0] if step > 1 else courses
    butts = [line for one in drawn for line in _butts(view, one)]
    paper.draw_all(butts, HAIR if step > 1 else FINE)
    if step == 1:
        paper.draw_all(dict.fromkeys(side for one in courses for side in _sides(view, one)), FINE)
    return step == 1


def _butts(view: View, course: LaidCourse) -> Iterator[Sequence[Spot]]:
    """Give the butt of a course: a line wherever pieces that are cut square follow each other."""
    start = end = None
    for piece in course.laid:
        if piece.corners:
            continue
        if end is not None and start is not None and piece.left > end:
            yield view.spots(((start, course.butt), (end, course.butt)))
            start = None
        start = piece.left if start is None else start
        end = piece.right
    if start is not None and end is not None:
        yield view.spots(((start, course.butt), (end, course.butt)))


def _sides(view: View, course: LaidCourse) -> Iterator[tuple[Spot, Spot]]:
    """Give the ends of the pieces that are cut square, and round what shows of the others."""
    top = course.butt + course.exposure
    for piece in course.laid:
        if not piece.corners:
            for end in (piece.left, piece.right):
                yield view.spot((end, top)), view.spot((end, course.butt))
            continue
        shape = shown(course, piece)
        for k, (u, v) in enumerate(shape):
            was = shape[k - 1]
            if not v == was[1] == top:
                yield min(view.spot(was), view.spot((u, v))), max(view.spot(was), view.spot((u, v)))


def mark_cut_ends(paper: Paper, view: View, courses: Iterable[LaidCourse]) -> bool:
    """Hatch the ends that are cut square, where a course is high enough for it.

    Args:
        paper: What is drawn on.
        view: How the plane lies on it.
        courses: The courses of one plane.

    Returns:
        Whether any was marked.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> mark_cut_ends(Paper("upright", "A roof", ""), View(10, 20, 200), [])
    False
    """
    marks = [
        mark
        for course in courses
        if view.long(course.exposure) >= _MARKED_FROM
        for piece in course.laid
        for mark in _marks(view, course, piece)
    ]
    paper.hatch(marks, 0.6)
    return bool(marks)


def _marks(view: View, course: LaidCourse, piece: Piece) -> Iterator[Sequence[Spot]]:
    wide = min(MARK * view.scale / 25.4, (piece.right - piece.left) / 2)
    ends = ((piece.left_end, piece.left_angle, piece.left, piece.left + wide),
            (piece.right_end, piece.right_angle, piece.right - wide, piece.right))  # fmt: skip
    low, high = course.butt, course.butt + course.exposure
    for made, angle, left, right in ends:
        if made == "cut" and angle == SQUARE_CUT and not piece.corners:
            yield view.spots(((left, low), (right, low), (right, high), (left, high)))


def write_widths(
    paper: Paper, view: View, courses: Iterable[LaidCourse], *, whole: Inches, system: System
) -> bool:
    """Write the width of each piece that is no whole shingle, where it has room.

    Args:
        paper: What is drawn on.
        view: How the plane lies on it.
        courses: The courses of one plane.
        whole: Length of a whole shingle.
        system: The unit system.

    Returns:
        Whether any was written.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> write_widths(Paper("upright", "A roof", ""), View(10, 20, 200), [], whole=36, system="us")
    False
    """
    wrote = False
    for course in courses:
        high = view.long(course.exposure)
        if high < WRITTEN_FROM:
            continue
        y = view.y(course.butt) - (high - (ABOVE - BELOW) * SMALL) / 2
        for piece in course.laid:
            wide = piece.right - piece.left
            text = write_length(wide, system)
            room = view.long(wide) - 2 * MARK - 0.6
            if piece.corners or wide >= whole * (1 - DUST) or width_of(text, SMALL) > room:
                continue
            place = Words(text, (view.x(piece.left + wide / 2), y), SMALL, "middle")
            wrote = paper.write_first([place]) or wrote
    return wrote
