"""Cover: whether what lies over the top of each plane covers the nails there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import floor

from roofing_core.job.found import Finding, broken, place_on
from roofing_core.job.layout import Layout
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import at_least
from roofing_core.roof.outlines import RoofPlane, is_lower
from roofing_core.roof.polygons import Point, distance_from
from roofing_core.ruling import on_metal, on_nails, on_shingles
from roofing_core.ruling.rule import Rule


def of_the_cover(layout: Layout) -> Iterator[Finding]:
    """Hold the tops of all planes, and the nails that no course covers, against the rules.

    Args:
        layout: The roof with all its layers.

    Returns:
        One entry per breach.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(of_the_cover(lay_out(shed)))
    []
    """
    for plane in layout.planes:
        courses = [course for course in layout.courses if course.plane == plane.name]
        if courses:
            yield from _of_a_top(layout, plane, courses)
            yield from _of_bare_nails(layout, plane, courses)
    if layout.caps:
        cap = layout.choices.cap
        rule, headlap = on_shingles.CAP_HEADLAP, cap.length - 2 * cap.exposure
        most = floor((cap.length - rule.limit) / 2 * 16 + DUST) / 16
        yield from broken(
            layout, on_shingles.CAP_WIDTH_LAID, cap.width, "caps", fields=("cap.width",)
        )  # fmt: skip
        yield from broken(layout, rule, headlap, "caps", to=most, fields=("cap.exposure",))


def _of_a_top(layout: Layout, plane: RoofPlane, courses: Sequence[LaidCourse]) -> Iterator[Finding]:
    """Hold the top of one plane against the rules."""
    here = place_on(layout, plane.name, "top edge")
    nailed = [
        (_top_over(plane, course), course.nail_line) for course in courses if not course.nailable
    ]
    at_each = Counter(top for top, _ in nailed)
    closing = max(at_each.values(), default=0)
    yield from broken(layout, on_shingles.CLOSING_COURSES, closing, here)
    top = courses[-1]
    here = place_on(layout, plane.name, f"course {top.number}")
    yield from broken(layout, on_shingles.TOP_EXPOSURE, top.exposure, here)
    if nailed:
        below = max(edge - nail_line for edge, nail_line in nailed)
        yield from _of_the_nails_below(layout, plane, below)


@dataclass(frozen=True, slots=True)
class _Over:
    """What covers the top of a plane, how far down it reaches, and the choice that says so.

    Of what lies on both sides of a ridge, such as caps, that choice is twice as much.
    """

    name: str
    rule: Rule
    leg: float
    field: str
    sides: int = 1


def _covers(layout: Layout, plane: RoofPlane) -> Iterator[_Over]:
    """Give what covers the tops of a plane, by the kinds of edge that it ends in there."""
    choices = layout.choices
    foot = on_metal.FOOT_METAL_COVER
    for k, kind in enumerate(plane.edges):
        if kind == "ridge" and plane.beyond[k]:
            half = choices.cap.width / 2
            yield _Over("caps", on_shingles.CAP_COVER, half, "cap.width", sides=2)
        elif kind == "ridge":
            rule, leg = on_metal.RIDGE_METAL_COVER, choices.ridge_metal.deck_leg
            yield _Over("ridge metal", rule, leg, "ridge_metal.deck_leg")
        elif kind == "headwall":
            leg = choices.apron_metal.deck_leg
            yield _Over("apron metal", foot, leg, "apron_metal.deck_leg")
        elif kind == "pitch_break" and not is_lower(plane, k):
            leg = choices.pitch_break_metal.face_leg
            yield _Over("pitch break metal", foot, leg, "pitch_break_metal.face_leg")


def _top_over(plane: RoofPlane, course: LaidCourse) -> float:
    """Give the height of the edge that a closing course ends under."""
    levels = [
        v
        for k, (_, v) in enumerate(plane.corners)
        if abs(plane.corners[(k + 1) % len(plane.corners)][1] - v) <= DUST
    ]
    highest = max(v for _, v in plane.corners)
    return min((v for v in levels if v > course.nail_line - DUST), default=highest)


def _of_the_nails_below(layout: Layout, plane: RoofPlane, below: float) -> Iterator[Finding]:
    """Hold the lowest nail of a closing course against what covers it."""
    margin = layout.choices.metalwork.nail_cover
    for over in {over.name: over for over in _covers(layout, plane)}.values():
        yield from broken(
            layout,
            over.rule,
            over.leg - below,
            place_on(layout, plane.name, over.name),
            limit=margin,
            to=at_least(over.sides * (below + margin)).value,
            fields=(over.field,),
        )


def _of_bare_nails(
    layout: Layout, plane: RoofPlane, courses: Sequence[LaidCourse]
) -> Iterator[Finding]:
    """Find the first nail that stands on what shows of its piece, and not under caps."""
    half, lines = layout.choices.cap.width / 2, _capped(plane)
    for course in courses:
        for piece in course.laid:
            if not lines or not course.nailable or piece.nail_height >= course.exposure - DUST:
                continue
            height = course.butt + piece.nail_height
            off = (min(distance_from((u, height), line) for line in lines) for u in piece.nails)
            far = max(off, default=0.0)
            if far > half + DUST:
                place = f"course {course.number}, piece {piece.number}"
                here = place_on(layout, plane.name, place)
                wide, field = at_least(2 * far).value, ("cap.width",)
                rule = on_nails.BARE_NAIL
                yield from broken(layout, rule, far, here, limit=half, to=wide, fields=field)
                return


def _capped(plane: RoofPlane) -> list[tuple[Point, Point]]:
    """Give the hips and ridges of a plane."""
    ends = zip(plane.corners, (*plane.corners[1:], plane.corners[0]), strict=True)
    return [line for line, kind in zip(ends, plane.edges, strict=True) if kind in {"hip", "ridge"}]
