"""The working of courses and starters: lines, lengths, areas, counts, and what they come to."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from roofing_core.measures.counting import DUST
from roofing_core.roof.outlines import is_lower
from roofing_core.workings.areas import area_above, exposed_area, laid_area, rows_length
from roofing_core.workings.at import COUNTED, GEOMETRY, PRACTICE, At, Table, same, table, under
from roofing_core.workings.expressions import Constant, Expression, Figure, Path, evaluated

_STARTER_NAIL_HEIGHT = Constant(3, "in", "height of a starter's nails")


def plane_index(at: At, name: str) -> int:
    """Give the number of a plane from 0, by its name.

    Args:
        at: The plan.
        name: The plane's name.

    Returns:
        The number.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> plane_index(At(shed, ()), "slope")
    0
    """
    return next(k for k, plane in enumerate(at.plan.planes) if plane.name == name)


def _top(at: At) -> Figure:
    """Give how far the plane of a course reaches up the slope."""
    k = plane_index(at, at.thing().plane)
    corners = at.plan.planes[k].corners
    highest = max(range(len(corners)), key=lambda n: corners[n][1])
    return at("planes/*/corners/*/*", k, highest, 1)


def first_butt(at: At) -> Expression:
    """Give the height of the first course's butt.

    Args:
        at: The plan.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(first_butt(At(shed, ())))
    -0.5
    """
    past = at.choice("coursing/starter_past_metal")
    return -(past + at.choice("coursing/course_past_starter"))


def _butt(at: At) -> Expression:
    return first_butt(at) + (at.near("number") - 1) * at.choice("shingle/exposure")


def _snap_line(at: At) -> Expression:
    return at.near("butt") + at.choice("shingle/height")


def _exposure(at: At) -> Expression:
    return at.choice("shingle/exposure").least(_top(at) - at.near("butt"))


def _top_trim(at: At) -> Expression:
    return Constant(0, "in").greatest(at.near("snap_line") - _top(at))


def _line_nailed(at: At) -> Expression:
    """Give where a course is nailed that no lower top edge cuts off."""
    low, high = at.choice("shingle/nail_zone_low"), at.choice("shingle/nail_zone_high")
    return (at.near("butt") + (low + high) / 2).least(_as_near(at, _top(at)))


def _as_near(at: At, top: Expression) -> Expression:
    return (top - at.choice("coursing/edge_distance")).greatest((at.near("butt") + top) / 2)


def _lower_top(at: At) -> Expression | None:
    """Give a lower top edge of the plane that cuts off a part of the course below its nails."""
    course, top = at.thing(), _top(at)
    choices = at.plan.choices
    room = choices.shingle.nail_zone_low + choices.coursing.edge_distance
    if course.nailable or course.butt + room > top.value + DUST:
        return None
    k = plane_index(at, course.plane)
    plane = at.plan.planes[k]
    tops = [
        at("planes/*/corners/*/*", k, n, 1)
        for n, kind in enumerate(plane.edges)
        if kind in {"ridge", "headwall", "pitch_break"} and not is_lower(plane, n)
    ]
    found = [one for one in tops if DUST < one.value - course.butt < room - DUST]
    return min(found, key=lambda one: one.value)


def _nail_line(at: At) -> Expression:
    low = _lower_top(at)
    usual = _line_nailed(at)
    return usual if low is None else usual.least(_as_near(at, low))


def _trim(at: At) -> Expression:
    number, sequence = at.thing().number, at.plan.choices.shingle.sequence
    return at.choice("shingle/sequence/*", (number - 1) % len(sequence))


def _pieces(at: At) -> Expression:
    """Give the pieces of a row: by its length where strips follow each other, or counted."""
    laid, strip = at.thing().laid, strip_length(at)
    if laid:
        row = at.near("laid", len(laid) - 1, "right") - at.near("laid", 0, "left")
        more = Constant(0, "in").greatest(row - (strip - at.near("trim"))) / strip
        follow = all(one.right == two.left for one, two in pairwise(laid))
        if follow and laid[0].shingle_from == at.thing().trim and _comes_to(more, len(laid) - 1):
            return 1 + more.up()
    return at.all("count", "laid/*/left", "the pieces laid", base=at.base())


def _comes_to(pieces: Expression, count: int) -> bool:
    return evaluated(pieces.up()) == count


def _nails(at: At) -> Expression:
    return at.all("count", "laid/*/nails/*", "the nails of its pieces", base=at.base())


def strip_length(at: At) -> Figure:
    """Give the length of the strips that a row is cut from.

    Args:
        at: The plan, at a figure of a course or a starter.

    Returns:
        The figure.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> strip_length(At(shed, ("courses", 0, "pieces"))).value
    39.375
    """
    if at.path[0] == "courses" or at.plan.choices.starter.made == "self_made":
        return at.choice("shingle/length")
    return at.choice("starter/length")


def _overhang(at: At) -> Expression:
    pieces = at.thing().laid
    if not pieces:
        return Constant(0, "in")
    last = at.near("laid", len(pieces) - 1, "shingle_to")
    return Constant(0, "in").greatest(strip_length(at) - last)


def _bedding(at: At) -> Expression:
    course = at.thing()
    if course.nailable:
        return Constant(0, "in2", "nothing: it does not close the roof")
    if _lower_top(at) is None:
        return area_above(at, at.base(), Constant(0, "in"))
    height = min(
        course.butt + (at.plan.choices.shingle.nail_zone_low +
                       at.plan.choices.shingle.nail_zone_high) / 2,
        _evaluated_near(at),
    ) - course.butt  # fmt: skip
    cut_off = [
        k
        for k, piece in enumerate(course.laid)
        if piece.corners and piece.nail_height < height - DUST
    ]
    return laid_area(at, at.base(), cut_off)


def _evaluated_near(at: At) -> float:
    top, edge = _top(at).value, at.plan.choices.coursing.edge_distance
    return float(max(top - edge, (at.thing().butt + top) / 2))


COURSES: Table = under(
    "/courses/*",
    table(
        GEOMETRY,
        snap_line=_snap_line,
        exposure=_exposure,
        top_trim=_top_trim,
        overhang=_overhang,
        length=lambda at: rows_length(at, at.base()),
        area=lambda at: laid_area(at, at.base()),
        exposed_area=lambda at: exposed_area(at, at.base()),
        bedding_area=_bedding,
    ),
    table(
        "Geometry; how far starter and first course stand out is common practice, no published"
        " source.",
        butt=_butt,
    ),
    table(
        "The middle of the nail zone, or as near to the top edge as the deck allows: common"
        " practice, no published source.",
        nail_line=_nail_line,
    ),
    table("The trim sequence, repeating.", trim=_trim),
    table("A strip for each length of one, the first trimmed.", pieces=_pieces),
    table(COUNTED, nails=_nails),
)


def _starter_edge(at: At) -> Figure:
    """Give the height of the edge that a starter lies along."""
    starter, starters = at.thing(), at.plan.starters
    mine = 0 if at.path[0] == "starter" else int(at.path[1])
    before = sum(one.plane == starter.plane for one in starters[:mine])
    k = plane_index(at, starter.plane)
    plane = at.plan.planes[k]
    lower = [n for n in range(len(plane.edges)) if is_lower(plane, n)]
    return at("planes/*/corners/*/*", k, lower[before], 1)


def _starter_butt(at: At) -> Expression:
    return _starter_edge(at) - at.choice("coursing/starter_past_metal")


def _starter_height(at: At) -> Expression:
    if at.plan.choices.starter.made == "self_made":
        return at.choice("shingle/height") - at.choice("shingle/exposure")
    return at.choice("starter/height")


def course_over(at: At, starter: Path) -> int | None:
    """Find the course that lies over a starter.

    Args:
        at: The plan.
        starter: Where the starter stands.

    Returns:
        Its number in the plan, from 0; nothing where no course lies there.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> course_over(At(shed, ()), ("starter",))
    0
    """
    laid = at.plan.starter if len(starter) == 1 else at.plan.starters[int(starter[1])]
    edge = laid.butt + at.plan.choices.coursing.starter_past_metal
    return next(
        (
            k
            for k, course in enumerate(at.plan.courses)
            if course.plane == laid.plane and course.butt + course.exposure > edge
        ),
        None,
    )


def starter_nail_height(at: At, starter: tuple[str | int, ...]) -> Expression:
    """Give how far above its lower edge a starter is nailed.

    Args:
        at: The plan.
        starter: Where the starter stands.

    Returns:
        The formula.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(starter_nail_height(At(shed, ()), ("starters", 0)))
    3
    """
    return _STARTER_NAIL_HEIGHT.least(at.figure((*starter, "height")) / 2)


def _starter_trim(at: At) -> Expression | None:
    """Give the trim that is chosen; along a higher eave with what the course over it has more."""
    chosen, over = at.choice("starter/trim"), course_over(at, at.base())
    if over is None or same(chosen.value, at.value()):
        return chosen
    shifted = chosen + at.figure(("courses", over, "trim")) - at.choice("shingle/sequence/*", 0)
    strip = strip_length(at)
    around = round((at.value() - evaluated(shifted)) / strip.value)
    if not around:
        return shifted
    return shifted - strip if around < 0 else shifted + strip


_STARTER = (
    table(PRACTICE, butt=_starter_butt, height=_starter_height),
    table(
        GEOMETRY,
        piece_length=strip_length,
        overhang=_overhang,
        area=lambda at: laid_area(at, at.base()),
    ),
    table(PRACTICE, trim=_starter_trim),
    table("A strip for each length of one, the first trimmed.", pieces=_pieces),
    table(COUNTED, nails=_nails),
)

STARTERS: Final[Table] = {**under("/starter", *_STARTER), **under("/starters/*", *_STARTER)}
