"""Sound: whether what is given is a plan at all, whatever it is worth."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import isfinite

from roofing_core.auditing.finished import FinishedPiece, FinishedPlan, FinishedRow, Point
from roofing_core.measures.faults import Fault, Place, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches

#: An outline has so many corners or more.
_LEAST_CORNERS = 3

#: A corner is so many numbers.
_NUMBERS_EACH = 2


def refuse_unsound(plan: FinishedPlan) -> None:
    """Refuse what is no plan: what cannot lie anywhere, or lies on no plane.

    Args:
        plan: What is to be audited.

    Raises:
        Refused: A number is not finite, a piece has no width, a row no height, an outline no
            corners, a plane is not among the planes; names each.

    Source:
        Geometry.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> refuse_unsound(finished(shed))
    """
    refuse_if_any(
        [
            *_planes(plan),
            *_starters(plan),
            *_courses(plan),
            *_sheets(plan),
            *_metal(plan),
            *_sealing(plan),
        ]
    )


def _planes(plan: FinishedPlan) -> Iterator[Fault | None]:
    if not plan.planes:
        yield Fault(("planes",), "none", say("one plane or more"))
    names = [plane.name for plane in plan.planes]
    for k, plane in enumerate(plan.planes):
        at = ("planes", k)
        outline = _outline((*at, "corners"), plane.corners)
        yield outline or _clockwise((*at, "corners"), plane.corners)
        if names.index(plane.name) != k:
            yield Fault((*at, "name"), plane.name, say("a name that no other plane has"))
        for name, entries in (("edges", plane.edges), ("beyond", plane.beyond)):
            if len(entries) != len(plane.corners):
                wanted = say(f"as many as corners, {len(plane.corners)}")
                yield Fault((*at, name), f"{len(entries)} entries", wanted)


def _outline(at: Place, corners: Sequence[Point]) -> Fault | None:
    if len(corners) < _LEAST_CORNERS:
        return Fault(at, f"{len(corners)} corners", say(f"{_LEAST_CORNERS} corners or more"))
    if any(len(corner) != _NUMBERS_EACH for corner in corners):
        return Fault(at, "a corner of another form", say("two numbers, u and v, for each corner"))
    heights = [v for _, v in corners]
    if not _finite([*heights, *(u for u, _ in corners)]):
        return Fault(at, "a number that is none", say("corners with two finite numbers each"))
    if max(heights) > min(heights):
        return None
    return Fault(at, "corners at one height", say("an outline that encloses something"))


def _clockwise(at: Place, corners: Sequence[Point]) -> Fault | None:
    """Refuse an outline that is walked with its inside on the right: its legs would lie outside."""
    ahead = (*corners[1:], corners[0])
    twice = sum(u * w - v * x for (u, v), (x, w) in zip(corners, ahead, strict=True))
    if twice > 0:
        return None
    return Fault(at, "corners the other way round", say("corners counter-clockwise"))


def _finite(numbers: Iterable[float]) -> bool:
    return isfinite(sum(numbers))


def known_plane(plan: FinishedPlan, at: Place, plane: str, *, unsaid: bool = False) -> Fault | None:
    """Give a fault where something names a plane that the roof has not.

    Args:
        plan: The plan.
        at: The place of what names it.
        plane: The name.
        unsaid: Whether it may be left unsaid where the roof has but one plane.

    Returns:
        The fault, or None.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> known_plane(finished(shed), ("courses", 0), "slope")
    """
    names = [one.name for one in plan.planes]
    if plane in names or (unsaid and not plane and len(names) == 1):
        return None
    return Fault((*at, "plane"), plane or "none", say("one of the planes: ", ", ".join(names)))


def _over(at: Place, upper: Inches, lower: Inches) -> Fault | None:
    """Refuse what ends at or before where it begins."""
    if upper > lower and _finite([upper, lower]):
        return None
    came = length(upper) if isfinite(upper) else str(upper)
    return Fault(
        at, came, say("more than ", length(lower) if isfinite(lower) else "what begins it")
    )


def _starters(plan: FinishedPlan) -> Iterator[Fault | None]:
    for k, one in enumerate(plan.starters):
        at = ("starters", k)
        yield known_plane(plan, at, one.plane)
        yield _over((*at, "height"), one.height, 0.0)
        yield _over((*at, "butt"), one.butt + 1, one.butt)
        yield from _pieces(at, one.laid)


def _courses(plan: FinishedPlan) -> Iterator[Fault | None]:
    for k, one in enumerate(plan.courses):
        at = ("courses", k)
        yield known_plane(plan, at, one.plane)
        yield _over((*at, "snap_line"), one.snap_line - one.top_trim, one.butt)
        if not _finite([one.exposure, one.bedding_area, *one.joints]):
            yield Fault((*at, "joints"), "a number that is none", say("finite numbers"))
        yield from _pieces(at, one.laid)


def _pieces(at: Place, laid: Sequence[FinishedPiece]) -> Iterator[Fault | None]:
    for k, piece in enumerate(laid):
        here = (*at, "laid", k)
        if not piece.right > piece.left:
            yield _over((*here, "right"), piece.right, piece.left)
        if not _finite([piece.left, piece.right, piece.nail_height, *piece.nails]):
            yield Fault(here, "a number that is none", say("finite numbers"))
        if piece.corners:
            yield _outline((*here, "corners"), piece.corners)
        for n, cutout in enumerate(piece.cutouts):
            yield _outline((*here, "cutouts", n), cutout)


def _sheets(plan: FinishedPlan) -> Iterator[Fault | None]:
    for name, sheets in (("ice_barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        for k, row in enumerate(sheets.rows):
            yield from _row(plan, (name, "rows", k), row)


def _row(plan: FinishedPlan, at: Place, row: FinishedRow) -> Iterator[Fault | None]:
    yield known_plane(plan, at, row.plane, unsaid=True)
    yield _over((*at, "upper"), row.upper, row.lower)
    for k, piece in enumerate(row.pieces):
        yield _over((*at, "pieces", k, "right"), piece.right, piece.left)
    if not _finite(row.end_laps):
        yield Fault((*at, "end_laps"), "a number that is none", say("finite numbers"))


def _metal(plan: FinishedPlan) -> Iterator[Fault | None]:
    for k, run in enumerate(plan.metal):
        at = ("metal", k)
        yield known_plane(plan, at, run.plane, unsaid=True)
        if len(run.laps) != max(0, len(run.lengths) - 1):
            wanted = say(f"one less than pieces, of which there are {len(run.lengths)}")
            yield Fault((*at, "laps"), f"{len(run.laps)} laps", wanted)
        sizes = (run.run_length, run.tab, run.lap, run.deck_leg, run.face_leg, run.past_foot)
        if not _finite([*sizes, *run.lengths, *run.laps]):
            yield Fault(at, "a number that is none", say("finite numbers"))


def _sealing(plan: FinishedPlan) -> Iterator[Fault | None]:
    way = plan.choices.sealing
    for name in ("dab_diameter", "dab_thickness", "bedding_thickness"):
        yield not_positive(f"choices.sealing.{name}", getattr(way, name))
    for name in ("dab_volume", "bedding_volume"):
        yield negative(f"sealant.{name}", getattr(plan.sealant, name), "in3")
