"""The shingles of a job: starter, courses and pieces brought together, and counted."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.coursing.courses import Course, Courses, courses
from roofing_core.layers.coursing.joints import JointPattern, JointRow, joint_pattern
from roofing_core.layers.coursing.nailing import nail_positions, nails_on_piece, nails_per_strip
from roofing_core.layers.coursing.pieces import Piece, pieces_of, shingle_count
from roofing_core.layers.coursing.sequences import period_of
from roofing_core.measures.faults import Refused, refuse_if_any
from roofing_core.measures.units import Inches, SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidCourse:
    """One course as it is laid: its lines, its joints, its pieces and its nails.

    Attributes:
        number: From 1 at the eave.
        butt: Height of the lower edge, up the slope from the outer face of the eave metal.
        snap_line: Height of the chalk line for the tops of the shingles.
        exposure: How much of the course shows.
        top_trim: How much is trimmed off the top of the shingles.
        nailable: Whether it is nailed in its nail zone; if not it closes the roof: bedded,
            top-nailed and dabbed under the ridge metal.
        nail_line: Height at which it is nailed.
        trim: Length trimmed from the left of its first shingle.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        clearance: Least distance from one of its joints to one of the next course up.
        clearance_two: The same to the second course up.
        overhang: How far the last shingle runs past the trim line before it is trimmed.
        nails: Nails in its pieces.
        laid: One entry per piece, from the left.
    """

    number: int
    butt: Inches
    snap_line: Inches
    exposure: Inches
    top_trim: Inches
    nailable: bool
    nail_line: Inches
    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    clearance: Inches
    clearance_two: Inches
    overhang: Inches
    nails: int
    laid: tuple[Piece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidStarter:
    """The starter as it is laid.

    Attributes:
        butt: Height of its lower edge, negative below the eave metal.
        height: Of the strip.
        piece_length: Of a whole piece.
        trim: Length trimmed from its first piece.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        clearance: Least distance from one of its joints to one of the first course.
        overhang: How far the last piece runs past the trim line before it is trimmed.
        nails: Nails in its pieces.
        laid: One entry per piece, from the left.
    """

    butt: Inches
    height: Inches
    piece_length: Inches
    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    clearance: Inches
    overhang: Inches
    nails: int
    laid: tuple[Piece, ...]


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
        last_butt: Height of the last course's butt.
        start_line: Where every course starts, from the left corner of the deck.
        trim_line: Where every course is trimmed, from the left corner of the deck.
        period: After how many courses the pattern of joints repeats.
        least_clearance: Least distance between joints of neighbouring courses.
        narrowest_end_piece: Width of the narrowest piece at either rake.
        nails_per_strip: Nails in each whole strip.
        nails: Nails in all courses together, the starter not among them.
        bedding_area: Of asphalt cement under the closing courses.
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


_COURSES = Wired(
    courses,
    slope_length="roof.slope_length",
    shingle_height="shingle.height",
    exposure="shingle.exposure",
    nail_zone_low="shingle.nail_zone_low",
    nail_zone_high="shingle.nail_zone_high",
    starter_past_metal="coursing.starter_past_metal",
    course_past_starter="coursing.course_past_starter",
    edge_distance="coursing.edge_distance",
)

_JOINTS = Wired(
    joint_pattern,
    eave_length="roof.eave_length",
    shingle_length="shingle.length",
    sequence="shingle.sequence",
    shingle_past_rake="coursing.shingle_past_rake",
    starter_trim="starter.trim",
    minimum_clearance="coursing.minimum_clearance",
)

_POSITIONS = Wired(
    nail_positions, shingle_length="shingle.length", end_distance="nailing.end_distance"
)


def lay_shingles(site: Site) -> tuple[LaidStarter, tuple[LaidCourse, ...], ShinglesLaid]:
    """Lay the starter and every course on a roof, piece by piece.

    Args:
        site: The roof with its choices.

    Returns:
        The starter, one entry per course from the eave up, and what they come to. Courses that are
        cut alike share their pieces.

    Raises:
        Refused: A size cannot be; names the caller's fields, those of courses and joints together.
        TooManyPieces: The roof would need more pieces than the limit.

    Source:
        The layers' own.

    >>> from roofing_core.job.choices import Choices
    >>> from roofing_core.roof.planes import SingleSlope, measure
    >>> roof = measure(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> lay_shingles(Site(roof=roof, choices=Choices()))[2].shingles
    100
    """
    up, joints = _lines_and_joints(site)
    shingle, nailing = site.choices.shingle, site.choices.nailing
    per_strip = nails_per_strip(site.roof.pitch, high_wind=nailing.high_wind)
    positions = _POSITIONS(site, nails=per_strip)
    # Every turn of the sequence is cut alike, so each trim is cut once.
    cut = [_cut(row, joints, site, positions, shingle.length) for row in joints.rows]
    cycle = len(cut)
    laid = tuple(
        _laid(line, joints, k % cycle, *cut[k % cycle]) for k, line in enumerate(up.courses)
    )
    starter = _starter(site, up, joints, positions)
    return starter, laid, _summed(site, up, joints, laid, per_strip)


def _lines_and_joints(site: Site) -> tuple[Courses, JointPattern]:
    """Lay lines, then joints; where the lines are refused, tell what is wrong with both."""
    shingle, starter = site.choices.shingle, site.choices.starter
    piece = starter.length if starter.made == "ready_made" else shingle.length
    try:
        up = _COURSES(site)
    except Refused as refusal:
        try:
            _JOINTS(site, courses=1, starter_length=piece)
        except Refused as other:
            refuse_if_any([*refusal.faults, *other.faults])
        raise
    return up, _JOINTS(site, courses=up.count, starter_length=piece)


def _cut(
    row: JointRow,
    joints: JointPattern,
    site: Site,
    positions: tuple[float, ...],
    piece_length: float,
) -> tuple[tuple[Piece, ...], int]:
    """Cut the pieces of one row, and count the nails that they keep."""
    cut = pieces_of(
        row, shingle_length=piece_length, start_line=joints.start_line, trim_line=joints.trim_line
    )
    ends = cut if len(cut) < 3 else (cut[0], cut[-1])  # noqa: PLR2004 - those between are whole
    inset = site.choices.nailing.end_distance
    nails = sum(
        len(
            nails_on_piece(
                piece.shingle_from,
                right=piece.shingle_to,
                positions=positions,
                end_distance=inset,
            )
        )
        for piece in ends
    )
    return cut, nails + (len(cut) - len(ends)) * len(positions)


def _laid(
    line: Course, joints: JointPattern, turn: int, cut: tuple[Piece, ...], nails: int
) -> LaidCourse:
    row = joints.rows[turn]
    return LaidCourse(
        number=line.number,
        butt=line.butt,
        snap_line=line.snap_line,
        exposure=line.exposure,
        top_trim=line.top_trim,
        nailable=line.nailable,
        nail_line=line.nail_line,
        trim=row.trim,
        pieces=row.pieces,
        joints=row.joints,
        clearance=joints.clearances[turn],
        clearance_two=joints.clearances_two[turn],
        overhang=row.overhang,
        nails=nails,
        laid=cut,
    )


def _starter(
    site: Site, up: Courses, joints: JointPattern, positions: tuple[float, ...]
) -> LaidStarter:
    starter, shingle = site.choices.starter, site.choices.shingle
    self_made = starter.made == "self_made"
    piece = shingle.length if self_made else starter.length
    if not self_made:
        positions = nail_positions(
            piece,
            nails=len(positions),
            end_distance=min(site.choices.nailing.end_distance, piece / 4),
        )
    row = joints.starter
    cut, nails = _cut(row, joints, site, positions, piece)
    return LaidStarter(
        butt=up.starter_butt,
        height=shingle.height - shingle.exposure if self_made else starter.height,
        piece_length=piece,
        trim=row.trim,
        pieces=row.pieces,
        joints=row.joints,
        clearance=joints.starter_clearance,
        overhang=row.overhang,
        nails=nails,
        laid=cut,
    )


def _summed(
    site: Site, up: Courses, joints: JointPattern, laid: tuple[LaidCourse, ...], per_strip: int
) -> ShinglesLaid:
    shingle, roof = site.choices.shingle, site.roof
    width = joints.trim_line - joints.start_line
    pieces = joints.pieces(up.count)
    count = shingle_count(
        pieces,
        courses=up.count,
        course_width=width,
        slope_area=roof.area,
        shingle_length=shingle.length,
        exposure=shingle.exposure,
    )
    self_made = site.choices.starter.made == "self_made"
    closing = (course for course in laid if not course.nailable)
    return ShinglesLaid(
        courses=up.count,
        closing_courses=up.closing,
        pieces=pieces,
        shingles=count.shingles,
        starter_shingles=joints.starter.pieces if self_made else 0,
        least_by_length=count.least_by_length,
        least_by_area=count.least_by_area,
        headlap=up.headlap,
        first_snap_line=up.first_snap_line,
        last_butt=up.last_butt,
        start_line=joints.start_line,
        trim_line=joints.trim_line,
        period=period_of(shingle.sequence),
        least_clearance=joints.least_clearance(up.count),
        narrowest_end_piece=joints.narrowest_end_piece(up.count),
        nails_per_strip=per_strip,
        nails=sum(course.nails for course in laid),
        bedding_area=sum((roof.slope_length - max(c.butt, 0.0)) * width for c in closing),
    )
