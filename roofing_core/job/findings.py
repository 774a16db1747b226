"""Findings: what on a laid-out roof breaks a rule or is worth knowing, where, and what cures it.

A finding never changes the plan. Where a cure is a number, using it makes the finding go away.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from roofing_core.job import rules
from roofing_core.job.cover import of_the_cover
from roofing_core.job.edges import EdgeRun
from roofing_core.job.flashing_work import of_the_flashings
from roofing_core.job.found import Finding, broken, finding, place_on
from roofing_core.job.layout import Layout
from roofing_core.job.order import Order
from roofing_core.job.telling import listed
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.nailing import hand_sealed
from roofing_core.layers.coursing.sequences import generated_sequence, sequence_with_wide_ends
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import (
    at_least,
    say,
)


def findings(layout: Layout, ordered: Order) -> tuple[Finding, ...]:
    """Hold a laid-out roof against the rules.

    Args:
        layout: The roof with all its layers.
        ordered: The order list.

    Returns:
        One entry per breach, from the roof up through its layers; empty when nothing was found.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.job.order import order
    >>> layout = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [found.rule for found in findings(layout, order(layout))]
    ['underlayment.single_layer_pitch', 'order.spare_shingles']
    """
    return (
        *_of_the_pitch(layout),
        *_of_the_underlayment(layout),
        *_of_the_metal(layout),
        *_of_the_starter(layout),
        *_of_the_joints(layout),
        *_of_the_nails(layout),
        *of_the_cover(layout),
        *of_the_flashings(layout),
        *broken(rules.SPARE_SHINGLES, ordered.shingles.left_over.value, "order"),
    )


def _of_the_pitch(layout: Layout) -> Iterator[Finding]:
    for plane in layout.planes:
        yield from broken(rules.SINGLE_UNDERLAYMENT_PITCH, plane.pitch, plane.name)
        if hand_sealed(plane.pitch):
            yield finding(rules.STEEP_PITCH, plane.pitch, plane.name)


def _of_the_underlayment(layout: Layout) -> Iterator[Finding]:
    how = layout.choices.underlaying
    if layout.underlayment.layers == 1:
        yield from broken(rules.HEAD_LAP, how.head_lap, "underlayment")
    if layout.underlayment.end_laps:
        yield from broken(rules.END_LAP, how.end_lap, "underlayment")
        yield from broken(rules.END_LAP_STAGGER, how.end_lap_stagger, "underlayment")


def _of_the_metal(layout: Layout) -> Iterator[Finding]:
    how = layout.choices.metalwork
    for run in layout.metal:
        place = place_on(layout, run.plane, f"{run.edge.replace('_', ' ')} metal")
        spacing = how.ridge_nail_spacing if run.edge == "ridge" else how.nail_spacing
        if run.laps:
            yield from broken(rules.METAL_LAP, run.lap, place)
        yield from broken(rules.METAL_NAIL_SPACING, spacing, place)
        yield from _of_legs(layout, run, place)


def _of_legs(layout: Layout, run: EdgeRun, place: str) -> Iterator[Finding]:
    """Hold the legs of one run of metal against the rules for its edge."""
    if run.edge in {"eave", "left_rake", "right_rake"}:
        below = run.face_leg - layout.choices.panel.thickness
        yield from broken(rules.METAL_DECK_LEG, run.deck_leg, place)
        yield from broken(rules.METAL_BELOW_DECK, below, place)
    elif run.edge == "valley":
        yield from broken(rules.VALLEY_WIDTH, run.deck_leg + run.face_leg, place)
    elif run.edge == "headwall":
        yield from broken(rules.WALL_LEG, min(run.deck_leg, run.face_leg), place)


def _of_the_starter(layout: Layout) -> Iterator[Finding]:
    least = layout.choices.shingle.exposure - layout.choices.coursing.course_past_starter
    height = layout.starter.height
    if height < least - DUST:
        cure = say("Use a starter ", at_least(least), " high or more.")
        yield finding(rules.STARTER_HEIGHT, height, "starter", limit=least, cure=cure)


def _of_the_joints(layout: Layout) -> Iterator[Finding]:
    how, shingle, laid = layout.choices.coursing, layout.choices.shingle, layout.shingles
    least = how.minimum_clearance
    pairs = [
        course
        for course, above in pairwise(layout.courses)
        if course.plane == above.plane and course.joints and above.joints
    ]
    narrow = next((c for c in pairs if c.clearance < least - DUST), None)
    if narrow is not None:
        place = place_on(layout, narrow.plane, f"courses {narrow.number} and {narrow.number + 1}")
        made = generated_sequence(shingle.length, minimum_clearance=least)
        cure = say("Trim the first shingles by ", *listed(made), ", repeating.")
        yield finding(rules.JOINT_CLEARANCE, narrow.clearance, place, limit=least, cure=cure)
    jointed = {course.plane for course in layout.courses if course.number == 1 and course.joints}
    close = next(
        (
            strip
            for strip in layout.starters
            if strip.joints and strip.plane in jointed and strip.clearance < least - DUST
        ),
        None,
    )
    if close is not None:
        cure = say("Trim the first starter piece by another length.")
        place = place_on(layout, close.plane, "starter and course 1")
        yield finding(rules.JOINT_CLEARANCE, close.clearance, place, limit=least, cure=cure)
    if laid.narrowest_end_piece < how.minimum_end_piece - DUST:
        yield _narrow_end(layout)
    yield from _loose_piece(layout)


#: A scrap narrower than this needs no nail: what lies over it holds it.
SCRAP = 1.0


def _loose_piece(layout: Layout) -> Iterator[Finding]:
    """Find the first piece that has no place for its nails."""
    for course in layout.courses:
        for piece in course.laid:
            few = not rules.PIECE_NAILS.kept_by(len(piece.nails))
            if few and piece.right - piece.left > SCRAP:
                place = place_on(
                    layout, course.plane, f"course {course.number}, piece {piece.number}"
                )
                yield finding(rules.PIECE_NAILS, len(piece.nails), place)
                return


def _narrow_end(layout: Layout) -> Finding:
    how, shingle = layout.choices.coursing, layout.choices.shingle
    widths = ((min(_ends(course), default=shingle.length), course) for course in layout.courses)
    narrow, first = next(one for one in widths if one[0] < how.minimum_end_piece - DUST)
    shifted = sequence_with_wide_ends(
        shingle.sequence,
        width=first.length,
        shingle_length=shingle.length,
        minimum_end_piece=how.minimum_end_piece,
        starter_trim=layout.starter.trim,
        minimum_clearance=how.minimum_clearance,
    )
    cure = say("Trim the first shingles by ", *listed(shifted), ", repeating.")
    return finding(
        rules.END_PIECE,
        narrow,
        place_on(layout, first.plane, f"course {first.number}"),
        limit=how.minimum_end_piece,
        cure=cure if shifted else say("No shift of this sequence does it: use another."),
    )


def _ends(course: LaidCourse) -> list[float]:
    return [piece.right - piece.left for piece in course.square_ends()]


def _of_the_nails(layout: Layout) -> Iterator[Finding]:
    for name in ("shingle_nail", "metal_nail"):
        nail = getattr(layout.choices, name)
        place = name.replace("_", " ")
        yield from broken(rules.NAIL_SHANK, nail.shank, place)
        yield from broken(rules.NAIL_HEAD, nail.head, place)
    if layout.underlayment.fasteners:
        yield from broken(rules.CAP_WIDTH, layout.choices.cap_nail.cap, "underlayment")
    if layout.deck.panels:
        yield from broken(rules.TAPE_WIDTH, layout.choices.joint_tape.width, "deck")
    for use in layout.nails:
        spare = use.nail_length - use.least_length
        if use.nails and not rules.NAIL_LENGTH.kept_by(spare):
            cure = say(
                "Use nails of ", at_least(use.least_length), " or longer for the ", use.use, "."
            )
            yield finding(rules.NAIL_LENGTH, spare, use.use, cure=cure)
