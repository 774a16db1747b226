"""Trims: the sequence that lays a job's roof from fewest shingles, against the one asked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from roofing_core.job.choices import Job
from roofing_core.job.layout import lay_out
from roofing_core.job.wiring import Wired, site_of
from roofing_core.layers.coursing.best_sequences import BestSequence, best_sequence
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused, fault
from roofing_core.measures.units import Inches

_BEST = Wired(
    best_sequence,
    shingle_length="shingle.length",
    sequence="shingle.sequence",
    minimum_clearance="coursing.minimum_clearance",
    minimum_end_piece="coursing.minimum_end_piece",
    starter_trim="starter.trim",
)


def best_trims(job: Job) -> BestSequence:
    """Find the trim sequences that lay a job's roof from the fewest shingles.

    Those come into question that keep the clearance and the width of end pieces that the job asks
    for. To shift the whole field along the eave is to add the shift to every trim, so that the
    trims are all there is to choose. A self-made starter is cut from the same shingles and counted.

    Args:
        job: The roof, its materials, and how the work is done; the trims asked for are those of its
            shingle.

    Returns:
        The best sequence of each number of trims, with what is proved of it, and what they save.
        Put as the `sequence` of the shingle it gives a plan that takes as many shingles.

    Raises:
        Refused: The job cannot be planned; or its planes are no rectangles alike without openings;
            or no sequence holds.
        TooManyPieces: The roof would need more pieces than the limit.

    Source:
        As `best_sequence`.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = best_trims(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> shed.asked.simply, shed.asked.shingles, shed.best.count.shingles, shed.least
    (105, 95, 91, 90)
    """
    layout = lay_out(job)
    width = _width(layout.courses)
    planes = Counter(course.plane for course in layout.courses)
    courses = set(planes.values())
    if not width or len(courses) > 1 or job.openings:
        wanted = (
            "a roof whose planes are rectangles alike, without openings: at hips, valleys and"
            " openings every course has its own ends, and offcuts are shared in a plan by"
            " cutting.reuse"
        )
        raise Refused(fault("roof", layout.roof.form.replace("_", " "), wanted))
    self_made = job.starter.made == "self_made"
    site = site_of(job.roof, job.choices())
    try:
        return _BEST(
            site,
            width=width,
            courses=courses.pop(),
            planes=len(planes),
            starter_length=job.shingle.length if self_made else job.starter.length,
            starter_shares=self_made,
        )
    except Refused as refusal:
        raise refusal.renamed({"width": "roof.eave_length"}) from None


def _width(courses: Sequence[LaidCourse]) -> Inches:
    """Give how wide all courses are; 0 where they are not alike, or not cut square."""
    width = courses[0].length
    square = all(not piece.corners for course in courses for piece in course.laid)
    alike = all(abs(course.length - width) <= DUST * width for course in courses)
    return width if square and alike else 0.0
