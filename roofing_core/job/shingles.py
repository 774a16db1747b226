"""The shingles of a job: starters, courses and pieces of every plane, together and counted."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import fsum

from roofing_core.job.strips import nails_on, starter_height, starter_strip_on, strip_on
from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.coursing.courses import Courses, courses
from roofing_core.layers.coursing.field import (
    Field,
    lay_courses,
)
from roofing_core.layers.coursing.joint_lines import start_line_of
from roofing_core.layers.coursing.joints import check_joints
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.nail_room import OVER_OPENING
from roofing_core.layers.coursing.outline import shingled_region, valley_lines
from roofing_core.layers.coursing.pieces import shingle_count
from roofing_core.layers.coursing.sequences import period_of
from roofing_core.layers.coursing.starters import (
    LaidStarter,
    StarterWay,
    joints_under,
    lay_starters,
)
from roofing_core.measures.faults import together
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.openings import holes_in
from roofing_core.roof.outlines import RoofPlane
from roofing_core.roof.regions import Hole, region_of


@dataclass(frozen=True, slots=True, kw_only=True)
class ShinglesLaid:
    """What the courses come to.

    Attributes:
        courses: How many courses.
        closing_courses: How many of them close the roof at the top.
        pieces: Pieces in all courses together.
        shingles: Shingles for them, one for each piece, no offcut used again.
        starter_shingles: Shingles that a self-made starter takes.
        least_by_length: Shingles that the length laid would take with nothing wasted.
        least_by_area: Shingles that the area of the deck would take with nothing wasted.
        headlap: How far each course reaches under the course two above it.
        first_snap_line: From the starter's lower edge up to the first course's snap line.
        last_butt: Height of the last course's butt, the highest on any plane.
        start_line: Where the first course starts, from the left corner of the deck.
        trim_line: Where the first course is trimmed, from the left corner of the deck.
        period: After how many courses the pattern of joints repeats.
        least_clearance: Least distance between joints of neighbouring courses.
        narrowest_end_piece: Width of the narrowest piece at a rake; a whole shingle where no piece
            ends at one.
        nails_per_strip: Nails in each whole strip.
        nails: Nails in all courses together, the starter not among them.
        bedding_area: Of asphalt cement under the closing courses.
        exposed_area: Of all that shows, past the eaves and the rakes too.
    """

    courses: int
    closing_courses: int
    pieces: int
    shingles: int
    starter_shingles: int
    least_by_length: int
    least_by_area: int
    headlap: Inches
    first_snap_line: Inches
    last_butt: Inches
    start_line: Inches
    trim_line: Inches
    period: int
    least_clearance: Inches
    narrowest_end_piece: Inches
    nails_per_strip: int
    nails: int
    bedding_area: SquareInches
    exposed_area: SquareInches


_COURSES = Wired(
    courses,
    shingle_height="shingle.height",
    exposure="shingle.exposure",
    nail_zone_low="shingle.nail_zone_low",
    nail_zone_high="shingle.nail_zone_high",
    starter_past_metal="coursing.starter_past_metal",
    course_past_starter="coursing.course_past_starter",
    edge_distance="coursing.edge_distance",
)

_JOINTS = Wired(
    check_joints,
    shingle_length="shingle.length",
    sequence="shingle.sequence",
    shingle_past_rake="coursing.shingle_past_rake",
    starter_trim="starter.trim",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneShingled:
    """One plane with its shingles.

    Attributes:
        lines: Where its courses lie up the slope.
        starters: Its starters, one for each eave and pitch break below.
        courses: Its courses, eave first.
    """

    lines: Courses
    starters: tuple[LaidStarter, ...]
    courses: tuple[LaidCourse, ...]


def lay_shingles(
    site: Site,
) -> tuple[tuple[LaidStarter, ...], tuple[LaidCourse, ...], ShinglesLaid]:
    """Lay the starters and every course on a roof, plane by plane and piece by piece.

    Args:
        site: The roof with its choices.

    Returns:
        The starters, one entry per course from the eave up in the order of the planes, and what
        they come to. Courses that are cut alike share their pieces.

    Raises:
        Refused: A size cannot be; names the caller's fields, those of courses and joints together.

    Source:
        The layers' own.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> lay_shingles(site_of(shed))[2].shingles
    100
    """
    lines, _ = together(lambda: _lines(site), lambda: _check_joints(site))
    planes = site.surfaces.planes
    laid = [_lay_plane(site, plane, lines[_height(plane)]) for plane in planes]
    starters = tuple(one for each in laid for one in each.starters)
    rows = tuple(one for each in laid for one in each.courses)
    return starters, rows, _summed(site, laid, starters, rows)


def _height(plane: RoofPlane) -> float:
    """Give how far a plane reaches up the slope from its lowest eave."""
    return max(v for _, v in plane.corners)


def _lines(site: Site) -> dict[float, Courses]:
    """Lay the lines of the courses up every height of plane that there is."""
    heights = dict.fromkeys(map(_height, site.surfaces.planes))
    return {height: _COURSES(site, slope_length=height) for height in heights}


def _check_joints(site: Site) -> None:
    starter, shingle = site.choices.starter, site.choices.shingle
    piece = starter.length if starter.made == "ready_made" else shingle.length
    _JOINTS(site, starter_length=piece)


def _lay_plane(site: Site, plane: RoofPlane, lines: Courses) -> PlaneShingled:
    how, starter = site.choices.coursing, site.choices.starter
    holes = holes_in(plane, site.openings)
    region = shingled_region(
        plane,
        holes=holes,
        planes=site.surfaces.planes,
        past_eave=how.starter_past_metal + how.course_past_starter,
        past_rake=how.shingle_past_rake,
        valley=site.choices.valleying,
    )
    field = Field(
        plane=plane,
        deck=region_of(plane, holes=[_nailed_clear_of(hole) for hole in holes]),
        region=region,
        valleys=valley_lines(plane, nails_clear=site.choices.valleying.nails_clear),
        start_line=start_line_of(region),
        sequence=site.choices.shingle.sequence,
        edge_distance=how.edge_distance,
        least_valley_piece=site.choices.valleying.least_piece,
        minimum_clearance=how.minimum_clearance,
    )
    starting = StarterWay(
        past_metal=how.starter_past_metal,
        height=starter_height(site),
        trim=starter.trim,
        strip=starter_strip_on(site, plane),
    )
    laid = lay_courses(
        field,
        lines,
        strip=strip_on(site, plane),
        nail_low=site.choices.shingle.nail_zone_low,
        joints_under=joints_under(field, lines, starting),
    )
    starters = lay_starters(field, starting, courses=laid)
    return PlaneShingled(lines=lines, starters=starters, courses=laid)


def _nailed_clear_of(hole: Hole) -> Hole:
    """Give what nails keep out of: an opening, and the edge above it that shingles end at."""
    left, right, lower, upper = hole
    return left, right, lower, upper + OVER_OPENING


def _summed(
    site: Site,
    planes: Sequence[PlaneShingled],
    starters: Sequence[LaidStarter],
    rows: Sequence[LaidCourse],
) -> ShinglesLaid:
    shingle, first = site.choices.shingle, planes[0].courses[0]
    count = shingle_count(
        sum(row.pieces for row in rows),
        course_lengths=fsum(row.length for row in rows),
        slope_area=site.roof.area - _opened(site),
        shingle_length=shingle.length,
        exposure=shingle.exposure,
    )
    self_made = site.choices.starter.made == "self_made"
    return ShinglesLaid(
        courses=len(rows),
        closing_courses=sum(not row.nailable for row in rows),
        pieces=count.shingles,
        shingles=count.shingles,
        starter_shingles=sum(one.pieces for one in starters) if self_made else 0,
        least_by_length=count.least_by_length,
        least_by_area=count.least_by_area,
        headlap=planes[0].lines.headlap,
        first_snap_line=planes[0].lines.first_snap_line,
        last_butt=max(row.butt for row in rows),
        start_line=first.laid[0].left,
        trim_line=first.laid[-1].right,
        period=period_of(shingle.sequence),
        least_clearance=min(_clearances(planes)),
        narrowest_end_piece=min(_end_widths(rows), default=shingle.length),
        nails_per_strip=max(nails_on(site, plane) for plane in site.surfaces.planes),
        nails=sum(row.nails for row in rows),
        bedding_area=fsum(row.bedding_area for row in rows),
        exposed_area=fsum(row.exposed_area for row in rows),
    )


def _opened(site: Site) -> float:
    """Give the area that openings take out of the roof."""
    holes = (hole for plane in site.surfaces.planes for hole in holes_in(plane, site.openings))
    return sum((right - left) * (upper - lower) for left, right, lower, upper in holes)


def _clearances(planes: Sequence[PlaneShingled]) -> Iterator[float]:
    """Give every clearance between neighbouring rows that are laid, starters among them."""
    for plane in planes:
        yield from (one.clearance for one in plane.starters)
        yield from (one.clearance for one in plane.courses[:-1])


def _end_widths(rows: Sequence[LaidCourse]) -> Iterator[float]:
    """Give the widths of the pieces that end square at a rake, a wall or an opening."""
    for row in rows:
        yield from (piece.right - piece.left for piece in row.square_ends())
