"""The order of work: numbered steps with their measurements, from the eave metal to the trim."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from roofing_core.job.cutting_work import cutting_ahead
from roofing_core.job.flashing_work import flashings
from roofing_core.job.layout import Layout
from roofing_core.job.metal_work import (
    apron_metal,
    cap_lines,
    eave_metal,
    pitch_break_metal,
    rake_metal,
    ridge_metal,
    valley_metal,
)
from roofing_core.job.order import Order
from roofing_core.job.sheet_work import ice_barrier, underlayment, valley_lining
from roofing_core.job.telling import count, listed, on_planes
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import Amount, Sentence, length, say

#: Panels swell: they are laid this far apart, as is printed on most.
PANEL_GAP = 0.125


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the work.

    Attributes:
        number: From 1.
        stage: The part of the roof that it is about.
        says: What to do, with its measurements.
    """

    number: int
    stage: str
    says: Sentence


def steps(layout: Layout, ordered: Order) -> tuple[Step, ...]:
    """Give the order of work for a laid-out roof.

    Eave metal, underlayment, rake metal, starter, courses, closing course, ridge metal, trim; the
    deck and the ice barrier where they are part of the job.

    Args:
        layout: The roof with all its layers.
        ordered: The order list.

    Returns:
        One entry per step, in order.

    Raises:
        Nothing.

    Source:
        The order is common practice, no published source; eave metal under and rake metal over the
        underlayment is IRC R905.2.8.5, 2018.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.job.order import order
    >>> from roofing_core.roof.planes import SingleSlope
    >>> layout = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [step.stage for step in steps(layout, order(layout))][:3]
    ['deck', 'eave metal', 'underlayment']
    """
    stages = (
        ("deck", _deck(layout)),
        ("eave metal", eave_metal(layout)),
        ("ice barrier", ice_barrier(layout)),
        ("valley lining", valley_lining(layout)),
        ("underlayment", underlayment(layout)),
        ("valley metal", valley_metal(layout)),
        ("rake metal", rake_metal(layout)),
        ("pitch break metal", pitch_break_metal(layout)),
        ("cutting", cutting_ahead(layout)),
        ("starter", on_planes(layout, _starter(layout))),
        ("courses", _courses(layout)),
        ("flashings", flashings(layout)),
        ("closing course", on_planes(layout, _closing(layout))),
        ("apron metal", apron_metal(layout)),
        ("ridge metal", ridge_metal(layout)),
        ("trim", _trim(layout)),
        ("caps", cap_lines(layout)),
        ("clean up", _clean_up(ordered)),
    )
    told = [(stage, sentence) for stage, sentences in stages for sentence in sentences]
    return tuple(
        Step(number=k + 1, stage=stage, says=sentence) for k, (stage, sentence) in enumerate(told)
    )


def _deck(layout: Layout) -> Iterator[Sentence]:
    laid, how = layout.deck, layout.choices.decking
    if laid.panels:
        yield say(
            f"Lay {count(laid.panels, 'panel')}, the long way across the rafters, ends on rafters"
            " and staggered, ",
            length(PANEL_GAP),
            " apart. Nail every ",
            length(how.edge_spacing),
            " along supported edges and every ",
            length(how.field_spacing),
            f" between: about {laid.nails} nails. Tape all ",
            length(laid.tape_length),
            " of joints.",
        )
    yield from _checked(layout)


def _checked(layout: Layout) -> Iterator[Sentence]:
    """Say how the deck is checked: a single slope by its sides, any other by its edges."""
    roof = layout.roof
    if roof.form == "single_slope":
        yield say(
            "Check the deck: dry, clean, no nail standing proud. Eave ",
            length(roof.eave_length),
            ", slope ",
            length(roof.slope_length),
            ", and both diagonals ",
            length(hypot(roof.eave_length, roof.slope_length)),
            "; if the diagonals differ, square the lines to the eave, not to the rakes.",
        )
        return
    yield say("Check the deck: dry, clean, no nail standing proud.")
    for plane in layout.planes:
        told: list[object] = []
        for kind, long in zip(plane.edges, plane.lengths, strict=True):
            told += [", " if told else "", f"{kind.replace('_', ' ')} ", length(long)]
        yield say(f"Measure {plane.name}, from its eave round by the right: ", *told, ".")


def _starter(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    coursing = layout.choices.coursing
    for strip in layout.starters:
        cut: list[object] = [f"Take {count(strip.pieces, 'starter strip')}. "]
        if layout.choices.starter.made == "self_made":
            strips = f"Cut {count(strip.pieces, 'starter strip')} "
            half = " high from shingles, the half with the adhesive. "
            cut = [strips, length(strip.height), half]
        yield (
            strip.plane,
            say(
                *cut,
                "Trim ",
                # Along a higher eave the first piece begins somewhere within the pattern.
                length(strip.laid[0].shingle_from if strip.laid else strip.trim),
                f" off the first, set the adhesive at the {strip.edge.replace('_', ' ')}, the lower"
                " edge ",
                length(coursing.starter_past_metal),
                f" past the {'eave metal' if strip.edge == 'eave' else 'metal there'}",
                *_ends_past(layout, strip.plane),
                f", and nail ({count(strip.nails, 'nail')}).",
            ),
        )


def _ends_past(layout: Layout, name: str) -> list[object]:
    """Say how far the ends of a starter stand past the rake metal, on a plane with rakes."""
    plane = next(one for one in layout.planes if one.name == name)
    if "rake" not in plane.edges:
        return []
    return [" and the ends ", length(layout.choices.coursing.shingle_past_rake),
            " past the rake metal"]  # fmt: skip


def _courses(layout: Layout) -> Iterator[Sentence]:
    laid, shingle = layout.shingles, layout.choices.shingle
    several = len(layout.planes) > 1
    yield say(
        *(["On every plane snap" if several else "Snap"]),
        " the first line ",
        length(laid.first_snap_line),
        " above the lower edge of the starter, and one every ",
        length(shingle.exposure),
        " above it: the tops of the courses. Check every fifth from the eave.",
    )
    if several:
        yield say(
            "On a plane that begins at a hip or a valley snap a line square to the eave through"
            " the left end of its first course, and measure the first shingles from it: joints"
            " then miss each other up the whole plane. Run shingles past hips and valleys and cut"
            " them on the line."
        )
    yield from on_planes(
        layout, (told for plane in layout.planes for told in _plane_courses(layout, plane.name))
    )


def _plane_courses(layout: Layout, plane: str) -> Iterator[tuple[str, Sentence]]:
    laid, shingle = layout.shingles, layout.choices.shingle
    usual = [course for course in layout.courses if course.nailable and course.plane == plane]
    if usual:
        yield (
            plane,
            say(
                f"Lay courses 1 to {usual[-1].number}, from the left, ",
                f"{laid.nails_per_strip} nails in each whole strip and never fewer than 2 in a"
                " piece, ",
                length(shingle.nail_zone_low),
                " to ",
                length(shingle.nail_zone_high),
                " above the butt. Trim off the first shingle of each course in turn ",
                *listed(shingle.sequence),
                ", and begin again.",
            ),
        )
    for course in usual:
        if course.top_trim > DUST:
            yield (
                plane,
                say(
                    f"Course {course.number}: butt at ",
                    length(course.butt),
                    "; trim ",
                    length(course.top_trim),
                    " off the tops, flush with the deck.",
                ),
            )


def _closing(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    roof = "roof" if len(layout.planes) == 1 else "plane"
    for course in layout.courses:
        if not course.nailable:
            trim: list[object] = ["trim ", length(course.top_trim), " off the tops"]
            if course.top_trim <= DUST:
                trim = ["trim it where a lower top edge cuts it off"]
            yield (
                course.plane,
                say(
                    f"Course {course.number} closes the {roof}: snap its butt at ",
                    length(course.butt),
                    ", ",
                    *trim,
                    ", bed it in asphalt cement, nail it along the top at ",
                    length(course.nail_line),
                    f" ({count(course.nails, 'nail')}), and dab every nail.",
                ),
            )


def _trim(layout: Layout) -> Iterator[Sentence]:
    yield from on_planes(
        layout,
        (
            (plane.name, _trim_right(layout, plane.name))
            for plane in layout.planes
            if plane.edges[1] == "rake"
        ),
    )
    edges = {kind for plane in layout.planes for kind in plane.edges}
    if "hip" in edges:
        yield say("Cut the shingles of both planes along the middle of each hip.")
    if "valley" in edges:
        yield _trim_valleys(layout)


def _trim_right(layout: Layout, plane: str) -> Sentence:
    past = layout.choices.coursing.shingle_past_rake
    overhangs = [course.overhang for course in layout.courses if course.plane == plane]
    return say(
        "Snap a line at the right rake ",
        length(past),
        " past the metal and trim all courses to it; they run over by ",
        length(min(overhangs)),
        " to ",
        length(max(overhangs)),
        ". Check the left rake for the same ",
        length(past),
        ".",
    )


def _trim_valleys(layout: Layout) -> Sentence:
    way = layout.choices.valleying
    if way.method == "open":
        return say(
            "In each valley snap a line on either plane, ",
            length(way.exposed_width / 2),
            " off its middle at the top and ",
            length(way.widening * 12 / 2),
            " more for every foot down, cut the shingles to it, and clip the upper corner of each"
            " so that water does not run in under it.",
        )
    return say(
        "In each valley run the shingles of the flatter plane, of equals the smaller, ",
        length(way.run_through),
        " past its middle; cut those of the other plane ",
        length(way.cut_back),
        " short of the middle, bed them in cement, and clip their upper corners. No nail within ",
        length(way.nails_clear),
        " of the middle.",
    )


def _clean_up(ordered: Order) -> Iterator[Sentence]:
    line = ordered.shingles
    yield say(
        "Pick up every nail and offcut. Left over: ",
        Amount(line.left_over.value, "count"),
        " whole shingles from the bundles; keep some for repairs.",
    )
