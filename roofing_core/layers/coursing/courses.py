"""Courses: where each course of shingles starts, ends and is trimmed, up one plane.

Says which courses can be nailed in their nail zone and which close the roof at the top. Where the
joints fall along a course is `offsets`; what is nailed with is `fasteners`.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

#: Common practice, no published source: the starter stands this far past the eave metal, and the
#: first course this far past the starter. The Navy Builder manual has 1/4 to 3/8 in for the eave.
STARTER_PAST_METAL = 0.25
COURSE_PAST_STARTER = 0.25

#: Common practice, no published source: no nail nearer than this to the top edge of the deck.
EDGE_DISTANCE = 0.75

#: The nail zone starts this far above the exposed part unless the shingle says otherwise
#: (Ontario Building Code 9.26.7: nails 12 mm or more above the cutouts).
NAIL_ABOVE_EXPOSURE = 0.5

#: Least headlap of strip shingles, in trade tables and in Canadian code (50 mm).
LEAST_HEADLAP = 2.0

#: More courses than this on one plane are refused before any is laid.
MOST_COURSES = 20_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One course of shingles on a plane.

    Attributes:
        number: From 1 at the eave.
        butt: Height of the lower edge, up the slope from the outer face of the eave metal.
        snap_line: Height of the chalk line for the tops of the shingles. Where the top is
            trimmed it lies past the top edge, and the butt is the line to snap.
        exposure: How much of the course shows, from its butt to the next one or to the top edge.
        top_trim: How much is trimmed off the top of the shingles, 0 for most.
        nailable: Whether a nail in the nail zone stands on the deck, clear of its top edge.
        nail_line: Height at which it is nailed: the middle of the nail zone, or as far up as the
            deck allows; half-way up what shows of a course that ends nearer to the top edge.
    """

    number: int
    butt: Inches
    snap_line: Inches
    exposure: Inches
    top_trim: Inches
    nailable: bool
    nail_line: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Courses:
    """All courses up one plane.

    Attributes:
        count: How many courses.
        closing: How many of them, at the top, cannot be nailed in their nail zone.
        headlap: How far each course reaches under the course two above it.
        starter_butt: Height of the starter's lower edge, negative below the eave metal.
        first_snap_line: From the starter's lower edge up to the first course's snap line.
        last_butt: Height of the last course's butt.
        courses: One entry per course, eave first.
    """

    count: int
    closing: int
    headlap: Inches
    starter_butt: Inches
    first_snap_line: Inches
    last_butt: Inches
    courses: tuple[Course, ...]


def courses_to_cover(
    slope_length: Inches,
    *,
    exposure: Inches,
    first_butt: Inches = -(STARTER_PAST_METAL + COURSE_PAST_STARTER),
) -> int:
    """Count the courses that reach the top edge of a plane.

    The least n with ``first_butt + n * exposure >= slope_length``.

    Args:
        slope_length: Up the slope, eave metal to top edge; over 0.
        exposure: How much of each course shows; over 0.
        first_butt: Height of the first butt, 0 or negative: below the eave metal.

    Returns:
        Whole courses, at least 1. The top one is trimmed where it overshoots.

    Raises:
        Refused: Something is zero, negative or not finite, or the courses would be more than the
            limit; names each.

    Source:
        Geometry. The default first butt is common practice, no published source.

    >>> courses_to_cover(112, exposure=5.625)  # 19 courses end 5 1/8 in short of 9 ft 4 in
    20
    """
    refuse_if_any(
        [
            not_positive("slope_length", slope_length),
            not_positive("exposure", exposure),
            negative("first_butt", -first_butt),
        ]
    )
    _limit_courses(slope_length - first_butt, exposure)
    return max(1, whole_pieces((slope_length - first_butt) / exposure))


def _limit_courses(height: float, exposure: float) -> None:
    if height > MOST_COURSES * exposure:
        wanted = f"at most {MOST_COURSES} courses: a larger exposure, or a shorter slope"
        refuse_if_any([fault("exposure", length(exposure), wanted)])


def courses(
    slope_length: Inches,
    *,
    shingle_height: Inches,
    exposure: Inches,
    nail_zone_low: Inches | None = None,
    nail_zone_high: Inches | None = None,
    starter_past_metal: Inches = STARTER_PAST_METAL,
    course_past_starter: Inches = COURSE_PAST_STARTER,
    edge_distance: Inches = EDGE_DISTANCE,
) -> Courses:
    """Lay the courses up one plane: butt, snap line, trim and nailing of each.

    Course k from 1: ``butt = -(starter_past_metal + course_past_starter) + (k - 1) * exposure``,
    ``snap_line = butt + shingle_height``, ``top_trim = snap_line - slope_length`` where that is
    over 0. A course is nailable while the low edge of its nail zone lies ``edge_distance`` or more
    below the top edge; the courses above are closing courses.

    Args:
        slope_length: Up the slope, outer face of the eave metal to top edge; over 0.
        shingle_height: Butt to top of a shingle; at least two exposures and 2 in.
        exposure: How much of each course shows; over 0.
        nail_zone_low: Low edge of the nail zone above the butt; 1/2 in above the exposed part
            unless given.
        nail_zone_high: High edge of the nail zone above the butt; where the course below ends
            unless given.
        starter_past_metal: How far the starter stands past the eave metal.
        course_past_starter: How far the first course stands past the starter; 0 is flush.
        edge_distance: No nail nearer than this to the top edge of the deck.

    Returns:
        One entry per course, eave first, with the count and the first lines to snap.

    Raises:
        Refused: A size is zero, negative or not finite, the exposure leaves under 2 in of headlap,
            the nail zone is not on the covered part, or there are too many courses; names each.

    Source:
        Geometry; headlap is height less two exposures (Navy Builder manual, NAVEDTRA 14044 ch. 3).
        The distances past metal and starter are common practice, no published source.

    >>> laid = courses(112, shingle_height=13.25, exposure=5.625)
    >>> laid.count, laid.first_snap_line, laid.last_butt, laid.courses[-1].nailable
    (20, 13.0, 106.375, False)
    """
    low = exposure + NAIL_ABOVE_EXPOSURE if nail_zone_low is None else nail_zone_low
    high = shingle_height - exposure if nail_zone_high is None else nail_zone_high
    refuse_if_any(
        [
            not_positive("slope_length", slope_length),
            not_positive("shingle_height", shingle_height),
            *exposure_faults(shingle_height=shingle_height, exposure=exposure),
            *nail_zone_faults(low, high, shingle_height=shingle_height, exposure=exposure),
            negative("starter_past_metal", starter_past_metal),
            negative("course_past_starter", course_past_starter),
            _edge_fault(edge_distance, slope_length),
        ]
    )
    first_butt = -(starter_past_metal + course_past_starter)
    count = courses_to_cover(slope_length, exposure=exposure, first_butt=first_butt)
    last_nail = slope_length - edge_distance
    middle = (low + high) / 2
    laid = tuple(
        _course(
            k,
            first_butt + k * exposure,
            height=shingle_height,
            exposure=exposure,
            top=slope_length,
            nailing=(low, middle, last_nail),
        )
        for k in range(count)
    )
    return Courses(
        count=count,
        closing=sum(not course.nailable for course in laid),
        headlap=shingle_height - 2 * exposure,
        starter_butt=-starter_past_metal,
        first_snap_line=shingle_height - course_past_starter,
        last_butt=laid[-1].butt,
        courses=laid,
    )


def _edge_fault(edge_distance: float, slope_length: float) -> Fault | None:
    if 0 <= edge_distance < slope_length or not slope_length > 0:
        return None
    wanted = "zero or more, and less than the slope length"
    return fault("edge_distance", length(edge_distance), wanted)


def _course(
    index: int,
    butt: float,
    *,
    height: float,
    exposure: float,
    top: float,
    nailing: tuple[float, float, float],
) -> Course:
    low, middle, last_nail = nailing
    snap_line = butt + height
    return Course(
        number=index + 1,
        butt=butt,
        snap_line=snap_line,
        exposure=min(exposure, top - butt),
        top_trim=snap_line - top if snap_line - top > DUST else 0.0,
        nailable=butt + low <= last_nail + DUST,
        nail_line=min(butt + middle, max(last_nail, (butt + top) / 2)),
    )


def exposure_faults(*, shingle_height: Inches, exposure: Inches) -> tuple[Fault | None, ...]:
    """Give the faults of an exposure on a shingle: not over zero, or too little headlap.

    Args:
        shingle_height: Butt to top of a shingle.
        exposure: How much of each course shows.

    Returns:
        Faults, or ``None`` in their place.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Headlap of 2 in: trade tables for strips of every size (12 x 36 at 5 in, 13 1/4 x 39 3/8
        at 5 5/8 in); Ontario Building Code 9.26.7 asks for 50 mm.

    >>> exposure_faults(shingle_height=13.25, exposure=5.625)
    (None, None)
    """
    most = (shingle_height - LEAST_HEADLAP) / 2
    too_large = None
    if exposure > most > 0:
        too_large = fault(
            "exposure",
            length(exposure),
            "at most ",
            length(most),
            ": a shingle ",
            length(shingle_height),
            " high then keeps ",
            length(LEAST_HEADLAP),
            " of headlap",
        )
    if not most > 0:
        too_large = fault(
            "shingle_height", length(shingle_height), "more than ", length(LEAST_HEADLAP)
        )
    return not_positive("exposure", exposure), too_large


def nail_zone_faults(
    low: Inches, high: Inches, *, shingle_height: Inches, exposure: Inches
) -> tuple[Fault | None, ...]:
    """Give the faults of a nail zone: it lies where the next course covers it, low edge first.

    Args:
        low: Low edge above the butt.
        high: High edge above the butt.
        shingle_height: Butt to top of a shingle.
        exposure: How much of each course shows.

    Returns:
        Faults, or ``None`` in their place.

    Raises:
        Nothing: The faults are the answer.

    Source:
        A nail is covered by the course above, so it stands above the exposed part; common
        practice, no published source.

    >>> nail_zone_faults(6.125, 7.125, shingle_height=13.25, exposure=5.625)
    (None, None)
    """
    low_fault = high_fault = None
    if not exposure <= low < shingle_height:
        low_fault = fault(
            "nail_zone_low",
            length(low),
            "at least the exposure, ",
            length(exposure),
            ", so that the next course covers the nails",
        )
    if not low <= high <= shingle_height:
        high_fault = fault(
            "nail_zone_high",
            length(high),
            "from the low edge of the nail zone, ",
            length(low),
            ", to the top of the shingle, ",
            length(shingle_height),
        )
    return low_fault, high_fault
