"""The cutting sheet of the shingles: each kind of piece on the shingle that it is cut from.

Pieces that are cut square are drawn, one picture for all that are alike. Pieces that are cut on the
slant, at hips and valleys, differ from course to course: they are on a list.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import degrees
from types import MappingProxyType

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.pieces import SQUARE_CUT, Piece
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Ratio, System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import LEADING, SMALL, TEXT, Spot, lines_of, width_of
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.svg import FINE, FIRM
from roofing_core.sheets.drawings.views import View, scale_for

#: Pictures side by side, and what is left between them.
_ACROSS, _APART = 3, 6.0
_WIDE = (SHORT - (_ACROSS - 1) * _APART) / _ACROSS

#: More courses than this are told by their steps.
_LISTED = 6


#: Corners of a piece that differ in height by less are level.
_LEVEL = 1e-6


@dataclass(frozen=True, slots=True)
class _Kind:
    """Pieces that are alike: what of the shingle they are, and what is left of its height."""

    shingle_from: Inches
    shingle_to: Inches
    lower: Inches
    upper: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class _Card:
    """A kind of piece with what is told about it."""

    kind: _Kind
    nails: tuple[Inches, ...]
    nail_height: Inches
    told: tuple[str, ...]


def shingle_cuts_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw the pieces to cut from shingles: starters, courses, and a list of slanting cuts.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> [page.title for page in shingle_cuts_drawing(plan(Job(roof=roof)))]
    ['Cutting sheet: shingles']
    """
    shingle = plan.choices.shingle
    scale = scale_for(shingle.length, shingle.height, width=_WIDE, height=30.0)
    items = [
        item for plane in plan.planes for item in _plane_items(plan, plane.name, scale, system)
    ]
    whole = f"{write_length(shingle.length, system)} by {write_length(shingle.height, system)}"
    return paged(
        "shingle_cuts",
        "Cutting sheet: shingles",
        beneath=(
            f"Shingles {whole}, butt below. What is hatched is cut off; dots are nails. Whole"
            f" shingles are not shown. Scale 1:{scale:g}."
        ),
        items=items,
        says="Each kind of piece on the shingle that it is cut from, and where it is laid.",
    )


def _plane_items(plan: Plan, plane: str, scale: Ratio, system: System) -> Iterator[Item]:
    cards = [*_starters(plan, plane, system), *_courses(plan, plane, system)]
    slants = list(slanting_cuts(plan, plane, system))
    if len(plan.planes) > 1 and (cards or slants):
        yield _heading(capital(plane))
    size = (plan.choices.shingle.length, plan.choices.shingle.height)
    for k in range(0, len(cards), _ACROSS):
        yield _row(cards[k : k + _ACROSS], size, scale)
    if slants:
        yield _heading(
            "Cut on the slant: length along the butt, along the top, angle with the butt"
        )
        wide = max(width_of(text, SMALL) for text in slants)
        columns = max(1, int(SHORT / (wide + _APART)))
        yield from (_line(slants[k : k + columns]) for k in range(0, len(slants), columns))


def _heading(text: str) -> Item:
    def draw(paper: Paper) -> None:
        paper.write(Words(text, (0.0, paper.y + LEADING * TEXT), TEXT, bold=True))

    return Item(height=LEADING * TEXT + 2, draw=draw, heads=True)


def _line(texts: Sequence[str]) -> Item:
    def draw(paper: Paper) -> None:
        for k, text in enumerate(texts):
            place = (k * SHORT / len(texts), paper.y + LEADING * SMALL)
            paper.write(Words(text, place, SMALL))

    return Item(height=LEADING * SMALL, draw=draw)


def _row(cards: Sequence[_Card], size: tuple[Inches, Inches], scale: Ratio) -> Item:
    """Give pictures side by side."""
    high = size[1] * 25.4 / scale

    def draw(paper: Paper) -> None:
        for k, card in enumerate(cards):
            view = View(scale, k * (_WIDE + _APART), paper.y + 2 + high)
            _draw_card(paper, view, card, size)

    lines = max(len(card.told) for card in cards)
    return Item(height=2 + high + lines * LEADING * SMALL + 3, draw=draw)


def _draw_card(paper: Paper, view: View, card: _Card, size: tuple[Inches, Inches]) -> None:
    long, high = size
    kind = card.kind
    paper.draw(_rectangle(view, 0.0, long, 0.0, high), FINE, closed=True)
    rests = (
        (0.0, kind.shingle_from, 0.0, high),
        (kind.shingle_to, long, 0.0, high),
        (kind.shingle_from, kind.shingle_to, 0.0, kind.lower),
        (kind.shingle_from, kind.shingle_to, kind.upper, high),
    )
    cut_off = [rest for rest in rests if rest[1] - rest[0] > DUST and rest[3] - rest[2] > DUST]
    paper.hatch((_rectangle(view, *rest) for rest in cut_off), 1.2)
    kept = (kind.shingle_from, kind.shingle_to, kind.lower, kind.upper)
    paper.draw(_rectangle(view, *kept), FIRM, closed=True)
    for nail in card.nails:
        paper.dot(view.spot((nail, kind.lower + card.nail_height)))
    for k, text in enumerate(card.told):
        paper.write(Words(text, (view.left, view.foot + (k + 1) * LEADING * SMALL), SMALL))


def _rectangle(
    view: View, left: Inches, right: Inches, lower: Inches, upper: Inches
) -> Sequence[Spot]:
    return view.spots(((left, lower), (right, lower), (right, upper), (left, upper)))


def _starters(plan: Plan, plane: str, system: System) -> Iterator[_Card]:
    """Give the kinds of pieces of self-made starters: the half with the adhesive."""
    if plan.choices.starter.made != "self_made":
        return
    shingle = plan.choices.shingle
    for strip in plan.starters:
        if strip.plane != plane:
            continue
        kinds: dict[_Kind, list[Piece]] = {}
        for piece in strip.laid:
            if not piece.corners:
                kind = _Kind(piece.shingle_from, piece.shingle_to, shingle.exposure, shingle.height)
                kinds.setdefault(kind, []).append(piece)
        for kind, pieces in kinds.items():
            yield _card(
                kind, pieces[0], len(pieces), f"starter along the {spelt(strip.edge)}", system
            )


def _courses(plan: Plan, plane: str, system: System) -> Iterator[_Card]:
    """Give the kinds of pieces of the courses that are cut square and are no whole shingles."""
    shingle = plan.choices.shingle
    found: dict[_Kind, list[tuple[int, Piece]]] = {}
    for course in plan.courses:
        if course.plane != plane:
            continue
        for piece in course.laid:
            wide = piece.shingle_to - piece.shingle_from
            cut = course.top_trim > 0 or wide < shingle.length * (1 - DUST)
            if cut and not piece.corners:
                top = shingle.height - course.top_trim
                kind = _Kind(piece.shingle_from, piece.shingle_to, 0.0, top)
                found.setdefault(kind, []).append((course.number, piece))
    for kind, pieces in found.items():
        numbers = tuple(dict.fromkeys(number for number, _ in pieces))
        yield _card(kind, pieces[0][1], len(pieces), courses_told(numbers), system)


def _card(kind: _Kind, piece: Piece, many: int, where: str, system: System) -> _Card:
    wide = write_length(kind.shingle_to - kind.shingle_from, system)
    high = write_length(kind.upper - kind.lower, system)
    text = f"{many} x {wide} wide, {high} high: {where}"
    return _Card(
        kind=kind,
        nails=tuple(nail - piece.left + kind.shingle_from for nail in piece.nails),
        nail_height=piece.nail_height,
        told=lines_of(text, room=_WIDE, size=SMALL),
    )


def courses_told(numbers: Sequence[int]) -> str:
    """Tell which courses, by their steps where they are many and evenly apart.

    Args:
        numbers: The courses, one or more, from the lowest up.

    Returns:
        Such as ``courses 1, 5, 9`` or ``every 4th course from 1 to 81``.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> courses_told(range(1, 90, 4)), courses_told([20])
    ('every 4th course from 1 to 89', 'course 20')
    """
    if len(numbers) == 1:
        return f"course {numbers[0]}"
    steps = {b - a for a, b in pairwise(numbers)}
    if len(numbers) > _LISTED and len(steps) == 1:
        (step,) = steps
        return f"every {_ordinal(step)}course from {numbers[0]} to {numbers[-1]}"
    return f"courses {', '.join(map(str, numbers))}"


_ORDINALS: Mapping[int, str] = MappingProxyType({1: "", 2: "2nd ", 3: "3rd "})


def _ordinal(number: int) -> str:
    return _ORDINALS.get(number, f"{number}th ")


def slanting_cuts(plan: Plan, plane: str, system: System) -> Iterator[str]:
    """List the pieces of one plane that are cut on the slant.

    Args:
        plan: A finished plan.
        plane: Name of the plane.
        system: The unit system.

    Returns:
        One text per piece, course by course: its length along the butt and along the top, and the
        angles of its slanting ends, inside the piece.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> list(slanting_cuts(plan(Job(roof=roof)), "slope", "us"))
    []
    """
    for course in plan.courses:
        for piece in course.laid if course.plane == plane else ():
            if piece.corners:
                yield f"course {course.number}, piece {piece.number}: {_slant(piece, system)}"


def _slant(piece: Piece, system: System) -> str:
    heights = [v for _, v in piece.corners]
    ends = [
        [u for u, v in piece.corners if abs(v - at) < _LEVEL] for at in (min(heights), max(heights))
    ]
    lengths = [write_length(max(level) - min(level), system) for level in ends]
    angles = (("left", piece.left_angle), ("right", piece.right_angle))
    told = [f"{end} {degrees(angle):.1f}°" for end, angle in angles if angle != SQUARE_CUT]
    return ", ".join((*lengths, *told))
