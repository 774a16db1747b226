"""Bounds: how large a plan may be that is audited, so that no plan keeps anyone waiting for hours.

What grows with the product of two counts is bounded by each; no roof that can be planned is near.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from roofing_core.auditing.finished import FinishedPiece, FinishedPlan
from roofing_core.measures.faults import Fault, Place, TooManyPieces
from roofing_core.measures.sentences import say
from roofing_core.measures.units import Inches

#: Planes of a roof, corners of one outline, runs of metal.
MOST_PLANES, MOST_CORNERS, MOST_RUNS = 400, 200, 5_000

#: Lines of a roof, its valleys, lines with caps, sides with step flashing, openings.
MOST_LINES, MOST_VALLEYS, MOST_CAPPED, MOST_SIDES, MOST_OPENINGS = 20_000, 400, 2_000, 1_000, 200

#: Pieces of a course of which an outline is given, each for a corner or two of the deck.
MOST_OUTLINED = 400

#: Corners of all these outlines of one course together.
MOST_CORNERS_OF_A_COURSE = 4_000

#: Pieces of courses and starters in all: twice as many as can be planned.
MOST_PIECES = 400_000

#: Courses, or rows of a sheet, that lie over one point.
MOST_OVER_A_POINT = 32

Span = tuple[Inches, Inches]


def refuse_too_much(plan: FinishedPlan) -> None:
    """Refuse a plan that would take too long to be audited.

    Args:
        plan: What is to be audited.

    Raises:
        TooManyPieces: There are more planes, corners, runs or layers than the limits; names each.

    Source:
        Limits of this library.

    >>> from roofing_core.auditing.finished import finished
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> refuse_too_much(finished(shed))
    """
    found = [*_counts(plan), *_corners(plan), *_outlined(plan), *_stacks(plan)]
    if found:
        raise TooManyPieces(*found)


def _fault(at: Place, count: int, what: str, most: int) -> Iterator[Fault]:
    if count > most:
        yield Fault(at, f"{count} {what}", say(f"at most {most}"))


def _counts(plan: FinishedPlan) -> Iterator[Fault]:
    yield from _fault(("planes",), len(plan.planes), "planes", MOST_PLANES)
    laid = [one.laid for one in plan.courses] + [one.laid for one in plan.starters]
    pieces = sum(map(len, laid))
    yield from _fault(("courses",), pieces, "pieces", MOST_PIECES)
    yield from _fault(("metal",), len(plan.metal), "runs", MOST_RUNS)
    yield from _fault(("lines",), len(plan.lines), "lines", MOST_LINES)
    yield from _fault(("caps",), len(plan.caps), "lines with caps", MOST_CAPPED)
    yield from _fault(("step_flashings",), len(plan.step_flashings), "sides", MOST_SIDES)
    yield from _fault(("openings",), len(plan.openings), "openings", MOST_OPENINGS)
    valleys = sum(kind == "valley" for plane in plan.planes for kind in plane.edges)
    yield from _fault(("planes",), valleys, "valleys, seen from both sides", 2 * MOST_VALLEYS)


def _corners(plan: FinishedPlan) -> Iterator[Fault]:
    for k, plane in enumerate(plan.planes):
        at = ("planes", k, "corners")
        yield from _fault(at, len(plane.corners), "corners", MOST_CORNERS)


def _outlined(plan: FinishedPlan) -> Iterator[Fault]:
    """Hold the outlines of pieces against the limits; pieces that courses share are seen once."""
    seen: set[int] = set()
    starters = [(("starters", k, "laid"), one.laid) for k, one in enumerate(plan.starters)]
    courses = [(("courses", k, "laid"), one.laid) for k, one in enumerate(plan.courses)]
    for at, laid in (*starters, *courses):
        if id(laid) not in seen:
            seen.add(id(laid))
            yield from _pieces(at, laid)


def _pieces(at: Place, laid: Sequence[FinishedPiece]) -> Iterator[Fault]:
    outlined = [(k, piece) for k, piece in enumerate(laid) if piece.corners]
    yield from _fault(at, len(outlined), "pieces with corners", MOST_OUTLINED)
    together = sum(len(piece.corners) + sum(map(len, piece.cutouts)) for _, piece in outlined)
    yield from _fault(at, together, "corners in all", MOST_CORNERS_OF_A_COURSE)
    for k, piece in outlined:
        corners = len(piece.corners) + sum(map(len, piece.cutouts))
        yield from _fault((*at, k, "corners"), corners, "corners", MOST_CORNERS)


def _stacks(plan: FinishedPlan) -> Iterator[Fault]:
    """Hold how many courses, and rows of each sheet, lie over one point against the limit."""
    courses = [(one.plane, (one.butt, one.snap_line - one.top_trim)) for one in plan.courses]
    starters = [(one.plane, (one.butt, one.butt + one.height)) for one in plan.starters]
    yield from _stack(("courses",), [*courses, *starters])
    for name, sheets in (("ice_barrier", plan.ice_barrier), ("underlayment", plan.underlayment)):
        rows = [(row.plane, (row.lower, row.upper)) for row in sheets.rows]
        yield from _stack((name, "rows"), rows)


def _stack(at: Place, spans: Iterable[tuple[str, Span]]) -> Iterator[Fault]:
    ends = sorted(
        end for plane, (low, high) in spans for end in ((low, 1, plane), (high, -1, plane))
    )
    standing: Counter[str] = Counter()
    most = 0
    for _, turn, plane in ends:
        standing[plane] += turn
        most = max(most, standing[plane])
    yield from _fault(at, most, "over one point", MOST_OVER_A_POINT)
