"""Cutting: how many shingles all pieces come from, and where offcuts serve again, from which."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import fsum
from types import MappingProxyType
from typing import Literal

from roofing_core.job.capping import CapRun
from roofing_core.job.choices import Choices
from roofing_core.layers.caps import cap_stock
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.needs import NeededPiece, RowKind, needed_pieces
from roofing_core.layers.coursing.offcuts.sharing import Keeps
from roofing_core.layers.coursing.reuse import CutShingle, reuse
from roofing_core.layers.coursing.starters import LaidStarter
from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.units import Inches

#: A three-tab shingle is divided into so many, and a laminated one into none.
TABS: Mapping[str, int] = MappingProxyType({"three_tab": 3, "laminated": 0})


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceCut:
    """A piece, where it is laid, and where on its shingle it is cut.

    Attributes:
        plane: The plane that it lies on, or those that its hip or ridge is between.
        row: Whether it is of a starter, of a course, or a cap.
        course: Number of its course, or which starter or line of caps it is of, from 1.
        number: Its number in the course, from 1 at the left.
        width: Along the course, at its widest.
        keeps: Which of its ends must be the factory's, where they meet another piece.
        begins: Where it begins on its shingle, from the shingle's left end.
        weight: What it weighs in the proof that no fewer shingles will do.
    """

    plane: str
    row: RowKind
    course: int
    number: int
    width: Inches
    keeps: Keeps
    begins: Inches
    weight: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ShingleCut:
    """A shingle that is cut, and the pieces that come from it.

    Attributes:
        number: From 1, in the order in which they are opened.
        pieces: One entry per piece, in the order in which they come up in the work.
        left_over: What is left of it, in one strip or several.
        ahead: Whether a piece is cut to length before it is nailed, another one waiting for the
            rest; if not, each is trimmed where it lies.
    """

    number: int
    pieces: tuple[PieceCut, ...]
    left_over: Inches
    ahead: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShinglesCut:
    """The shingles of a job, all that come from the same bundles.

    Who checks the proof adds up the weights of all the pieces that are cut, divides by `limit`,
    rounds up, and adds the whole shingles: the pieces of no shingle weigh more than `limit`.

    Attributes:
        reuse: Whether offcuts are used again.
        holds: Which rows come from these bundles: courses, self-made starters, caps cut from the
            shingles of the field.
        shingles: Shingles to open, those laid whole among them.
        simply: Shingles with each piece from one of its own, and caps as many as one gives.
        saved: What using offcuts again saves.
        whole: Shingles that are laid whole between two others; 0 unless offcuts are used again.
        least: Fewest shingles that can be proved to be needed, offcuts used again; by length alone
            where they are not.
        proved: Whether no fewer will do.
        limit: What the pieces of one shingle weigh together at most in the proof; 0 where none is.
        cut: One entry per shingle that is not laid whole, in the order in which they are opened;
            none unless offcuts are used again.
        cut_ahead: Shingles of which a piece is cut to length before it is nailed.
        most_kept: Most shingles at one time that are opened and wait to be used again.
    """

    reuse: Literal["none", "best"]
    holds: tuple[RowKind, ...]
    shingles: int
    simply: int
    saved: int
    whole: int
    least: int
    proved: bool
    limit: int
    cut: tuple[ShingleCut, ...]
    cut_ahead: int
    most_kept: int


def cut_shingles(
    choices: Choices,
    *,
    starters: Sequence[LaidStarter],
    courses: Sequence[LaidCourse],
    caps: Sequence[CapRun],
) -> ShinglesCut:
    """Count the shingles of all pieces, and where it was asked for cut them from the fewest.

    Plane by plane the starters come first and then the courses from the eave up; caps come last.

    Args:
        choices: The materials, and how the work is done.
        starters: The starters, as laid.
        courses: The courses, as laid.
        caps: The caps of every hip and ridge.

    Returns:
        The count, and with offcuts used again which shingle is cut into what, and the proof.

    Raises:
        Nothing.

    Source:
        As `reuse`.

    >>> from dataclasses import replace
    >>> from roofing_core.job.choices import Choices, Cutting
    >>> from roofing_core.job.shingles import lay_shingles
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> starters, courses, _ = lay_shingles(shed)
    >>> again = replace(shed.choices, cutting=Cutting(reuse="best"))
    >>> cut = cut_shingles(again, starters=starters, courses=courses, caps=())
    >>> cut.simply, cut.shingles, cut.least, cut.proved
    (105, 95, 95, True)
    """
    holds = _holds(choices)
    caps = caps if "cap" in holds else ()
    starters = starters if "starter" in holds else ()
    pieces = sum(strip.pieces for strip in starters) + sum(course.pieces for course in courses)
    simply = pieces + _cap_shingles(choices, caps)
    if choices.cutting.reuse == "none":
        return _simply(choices, holds, simply, starters=starters, courses=courses, caps=caps)
    needed = [*_rows_needed(starters, courses), *_caps_needed(choices, caps)]
    tabs = TABS[choices.shingle.kind]
    best = reuse(needed, shingle_length=choices.shingle.length, tabs=tabs)
    weights = dict(zip(map(_place, needed), best.proof.weights, strict=True))
    return ShinglesCut(
        reuse="best",
        holds=holds,
        shingles=best.shingles,
        simply=simply,
        saved=simply - best.shingles,
        whole=best.whole,
        least=best.least,
        proved=best.proved,
        limit=best.proof.limit,
        cut=tuple(_cut(shingle, weights) for shingle in best.cut),
        cut_ahead=best.cut_ahead,
        most_kept=best.most_kept,
    )


def _holds(choices: Choices) -> tuple[RowKind, ...]:
    starter: tuple[RowKind, ...] = ("starter",) if choices.starter.made == "self_made" else ()
    caps: tuple[RowKind, ...] = ("cap",) if choices.cutting.caps_from == "field_shingles" else ()
    return (*starter, "course", *caps)


def _cap_shingles(choices: Choices, caps: Sequence[CapRun]) -> int:
    cap, count = choices.cap, sum(run.count for run in caps)
    return cap_stock(count, from_shingle=cap.from_shingle, per_pack=cap.per_pack).shingles


def _simply(
    choices: Choices,
    holds: tuple[RowKind, ...],
    simply: int,
    *,
    starters: Sequence[LaidStarter],
    courses: Sequence[LaidCourse],
    caps: Sequence[CapRun],
) -> ShinglesCut:
    """Give each piece a shingle of its own."""
    started = fsum(piece.right - piece.left for strip in starters for piece in strip.laid)
    capped = _cap_width(choices) * sum(run.count for run in caps)
    laid = fsum(course.length for course in courses) + started + capped
    least = whole_pieces(laid / choices.shingle.length)
    return ShinglesCut(
        reuse="none",
        holds=holds,
        shingles=simply,
        simply=simply,
        saved=0,
        whole=0,
        least=least,
        proved=least == simply,
        limit=0,
        cut=(),
        cut_ahead=0,
        most_kept=0,
    )


def _rows_needed(
    starters: Sequence[LaidStarter], courses: Sequence[LaidCourse]
) -> Iterator[NeededPiece]:
    """Give the pieces in the order of work: of each plane the starters, then the courses."""
    for plane in dict.fromkeys(course.plane for course in courses):
        for k, strip in enumerate(starters):
            if strip.plane == plane:
                yield from needed_pieces(strip.laid, plane=plane, row="starter", course=k + 1)
        for course in courses:
            if course.plane == plane:
                yield from needed_pieces(course.laid, plane=plane, course=course.number)


def _caps_needed(choices: Choices, caps: Sequence[CapRun]) -> Iterator[NeededPiece]:
    """Give the caps: as wide as a shingle divided by how many it gives, all their ends may be cut.

    Of a shingle with tabs each is cut from the middle of a cutout to the middle of the next.
    """
    for k, run in enumerate(caps):
        for number in range(1, run.count + 1):
            yield NeededPiece(
                plane=" and ".join(run.planes),
                row="cap",
                course=k + 1,
                number=number,
                width=_cap_width(choices),
                keeps="neither",
                shingle_from=0.0,
            )


def _cap_width(choices: Choices) -> Inches:
    return choices.shingle.length / choices.cap.from_shingle


def _place(piece: NeededPiece) -> tuple[str, str, int, int]:
    return (piece.plane, piece.row, piece.course, piece.number)


def _cut(shingle: CutShingle, weights: Mapping[tuple[str, str, int, int], int]) -> ShingleCut:
    return ShingleCut(
        number=shingle.number,
        pieces=tuple(
            PieceCut(
                plane=one.piece.plane,
                row=one.piece.row,
                course=one.piece.course,
                number=one.piece.number,
                width=one.piece.width,
                keeps=one.piece.keeps,
                begins=one.begins,
                weight=weights[_place(one.piece)],
            )
            for one in shingle.pieces
        ),
        left_over=shingle.left_over,
        ahead=shingle.ahead,
    )
