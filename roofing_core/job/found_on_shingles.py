"""What is found about shingles and nails: starters, joints, end pieces, loose pieces, nails."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from types import MappingProxyType

from roofing_core.job.found import Change, Finding, broken, place_on
from roofing_core.job.layout import Layout
from roofing_core.job.nails import NailsFor
from roofing_core.job.telling import listed
from roofing_core.layers.coursing.joints import clearance_between
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.sequences import generated_sequence, sequence_with_wide_ends
from roofing_core.layers.coursing.starters import LaidStarter
from roofing_core.layers.fasteners import INTO_DECK
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.sentences import Sentence, at_least, length, say
from roofing_core.ruling import on_nails, on_shingles

#: A scrap narrower than this needs no nail: what lies over it holds it.
SCRAP = 1.0

#: Trims of a starter are tried in steps of this.
TRIM_STEP = 0.5

#: The nail of each use that is not a metal nail.
_NAIL_OF: Mapping[str, str] = MappingProxyType(
    {
        "deck": "deck_nail",
        "underlayment": "cap_nail",
        "starter": "shingle_nail",
        "shingles": "shingle_nail",
        "caps": "shingle_nail",
    }
)


def of_the_shingles(layout: Layout) -> Iterator[Finding]:
    """Hold starters, joints and pieces against the rules.

    Args:
        layout: The roof with all its layers.

    Returns:
        One entry per breach, the first of its kind.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(of_the_shingles(lay_out(shed)))
    []
    """
    yield from _of_the_starter(layout)
    yield from _of_the_joints(layout)
    yield from _of_the_offset(layout)
    if layout.shingles.narrowest_end_piece < layout.choices.coursing.minimum_end_piece - DUST:
        yield from _narrow_end(layout)
    yield from _loose_piece(layout)


def _of_the_starter(layout: Layout) -> Iterator[Finding]:
    least = layout.choices.shingle.exposure - layout.choices.coursing.course_past_starter
    field = ("starter.height",)
    rule, height = on_shingles.STARTER_HEIGHT, layout.starter.height
    yield from broken(layout, rule, height, "starter", limit=least, fields=field)


def _of_the_joints(layout: Layout) -> Iterator[Finding]:
    """Find the first pair of courses whose joints stand too near to each other."""
    how, shingle = layout.choices.coursing, layout.choices.shingle
    least = how.minimum_clearance
    pairs = [
        course
        for course, above in pairwise(layout.courses)
        if course.plane == above.plane and len(course.laid) > 1 and above.joints
    ]
    narrow = next((course for course in pairs if course.clearance < least - DUST), None)
    if narrow is None:
        return
    place = place_on(layout, narrow.plane, f"courses {narrow.number} and {narrow.number + 1}")
    made = generated_sequence(shingle.length, minimum_clearance=least)
    yield from broken(
        layout,
        on_shingles.JOINT_CLEARANCE,
        narrow.clearance,
        place,
        limit=least,
        cure=_trimmed_by(made),
        changes=_sequence(made),
    )


def _trimmed_by(sequence: tuple[float, ...]) -> Sentence:
    return say("Trim the first shingles by ", *listed(sequence), ", repeating.")


def _sequence(sequence: tuple[float, ...]) -> tuple[Change, ...]:
    values = tuple(length(trim) for trim in sequence)
    return (Change(field="shingle.sequence", values=values),)


def _of_the_offset(layout: Layout) -> Iterator[Finding]:
    """Find the first starter whose joints stand too near to those of the first course."""
    least = layout.choices.coursing.minimum_clearance
    strips = [one for one in layout.starters if one.joints and _joints_over(layout, one)]
    close = next((strip for strip in strips if strip.clearance < least - DUST), None)
    if close is None:
        return
    rule, place = on_shingles.STARTER_OFFSET, place_on(layout, close.plane, "starter and course 1")
    trim = _clear_trim(layout, strips, least)
    if trim is None:
        cure = say("No trim of its first piece does it: use another trim sequence.")
        yield from broken(layout, rule, close.clearance, place, limit=least, cure=cure)
    else:
        yield from broken(
            layout, rule, close.clearance, place, limit=least, to=trim, fields=("starter.trim",)
        )


def _clear_trim(layout: Layout, strips: list[LaidStarter], least: float) -> float | None:
    """Give the least trim that clears the joints of every starter from the course over it.

    Along higher eaves starters are trimmed more than it, each by as much as it is now.
    """
    over = {id(strip): _joints_over(layout, strip) for strip in strips}
    long = strips[0].piece_length
    now = layout.choices.starter.trim
    for k in range(whole_pieces(long / TRIM_STEP)):
        trim = k * TRIM_STEP
        tried = ((_joints_at(one, one.trim + trim - now), over[id(one)]) for one in strips)
        if all(clearance_between(*joints, none=long) >= least - DUST for joints in tried):
            return trim
    return None


def _joints_over(layout: Layout, strip: LaidStarter) -> tuple[float, ...]:
    """Give the joints of the course over a starter."""
    return next(
        (
            course.joints
            for course in layout.courses
            if course.plane == strip.plane and course.butt + course.exposure > strip.butt
        ),
        (),
    )


def _joints_at(strip: LaidStarter, trim: float) -> tuple[float, ...]:
    """Give the joints of a starter, had its first piece another trim."""
    long, left, right = strip.piece_length, strip.laid[0].left, strip.laid[-1].right
    first = left + (strip.joints[0] + strip.trim - trim - left) % long
    joints = (first + k * long for k in range(whole_pieces((right - left) / long) + 1))
    return tuple(joint for joint in joints if left + DUST < joint < right - DUST)


def _loose_piece(layout: Layout) -> Iterator[Finding]:
    """Find the first piece that has no place for its nails."""
    for course in layout.courses:
        for piece in course.laid:
            few = not on_nails.PIECE_NAILS.kept_by(len(piece.nails))
            if few and piece.right - piece.left > SCRAP:
                place = f"course {course.number}, piece {piece.number}"
                here = place_on(layout, course.plane, place)
                yield from broken(layout, on_nails.PIECE_NAILS, len(piece.nails), here)
                return


def _narrow_end(layout: Layout) -> Iterator[Finding]:
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
    none = say("No shift of this sequence does it: use another.")
    yield from broken(
        layout,
        on_shingles.END_PIECE,
        narrow,
        place_on(layout, first.plane, f"course {first.number}"),
        limit=how.minimum_end_piece,
        cure=_trimmed_by(shifted) if shifted else none,
        changes=_sequence(shifted) if shifted else (),
    )


def _ends(course: LaidCourse) -> list[float]:
    return [piece.right - piece.left for piece in course.square_ends()]


def of_the_nails(layout: Layout) -> Iterator[Finding]:
    """Hold the nails of every use against the rules.

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
    >>> list(of_the_nails(lay_out(shed)))
    []
    """
    per_strip = layout.shingles.nails_per_strip
    yield from broken(layout, on_nails.NAILS_PER_STRIP, per_strip, "shingles")
    for name in ("shingle_nail", "metal_nail"):
        nail = getattr(layout.choices, name)
        place = name.replace("_", " ")
        yield from broken(
            layout, on_nails.NAIL_SHANK, nail.shank, place, fields=(f"{name}.shank",)
        )  # fmt: skip
        yield from broken(layout, on_nails.NAIL_HEAD, nail.head, place, fields=(f"{name}.head",))
    for use in layout.nails:
        if use.nails:
            yield from _of_the_length(layout, use)


def _of_the_length(layout: Layout, use: NailsFor) -> Iterator[Finding]:
    """Hold the length of a nail against what the code asks, or if it keeps that, against practice.

    The length that the plan asks for goes right through a thin deck and out of it; through it is
    what the code has.
    """
    choices, long = layout.choices, use.nail_length
    deck, into = choices.panel.thickness, choices.nailing.deck_penetration
    needed = use.through + min(deck, max(into, INTO_DECK))
    rule, spare = on_nails.NAIL_LENGTH, long - needed
    if use.use == "deck":
        spare = long - use.least_length
    elif deck < into and rule.kept_by(spare):
        rule = on_nails.NAIL_POINT
    field = f"{_NAIL_OF.get(use.use, 'metal_nail')}.length"
    enough = at_least(max(needed, use.least_length)).value
    yield from broken(layout, rule, spare, use.use, to=enough, fields=(field,))
