"""Needs: what the pieces of a roof ask of the shingles that they are cut from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from roofing_core.layers.coursing.offcuts.sharing import Keeps
from roofing_core.layers.coursing.pieces import Piece
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches

RowKind = Literal["starter", "course", "cap"]

#: A shingle has no more tabs than this.
MOST_TABS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededPiece:
    """A piece that a roof needs, and what it asks of the shingle that it is cut from.

    Attributes:
        plane: The plane that it lies on; the line that it covers, for a cap.
        row: Whether it is of a starter, of a course, or a cap.
        course: Number of its course, or which starter or line it is of, from 1.
        number: Its number in the course, from 1 at the left.
        width: Along the course, at its widest.
        keeps: Which of its ends must be the factory's, where they meet another piece.
        shingle_from: Where it begins on the shingle of its place, from the shingle's left end.
    """

    plane: str
    row: RowKind
    course: int
    number: int
    width: Inches
    keeps: Keeps
    shingle_from: Inches


def needed_pieces(
    laid: Sequence[Piece], *, plane: str, row: RowKind = "course", course: int
) -> tuple[NeededPiece, ...]:
    """Give what the pieces of one row ask of their shingles.

    An end that meets another piece of the row must be the factory's, unless it is laid cut there:
    before a joint that was moved. One at a rake, a hip, a valley or a wall may be cut.

    Args:
        laid: The pieces of a row from the left, as `pieces_of` gives them.
        plane: The plane that they lie on.
        row: Whether it is a starter or a course.
        course: Number of the course, or of the starter.

    Returns:
        One entry per piece, in their order.

    Raises:
        Nothing.

    Source:
        Common practice, no published source: factory ends in the field, cut ends at the edges.

    >>> from roofing_core.layers.coursing.pieces import Row, Strip, pieces_of
    >>> from roofing_core.roof.slicing import Region
    >>> slope = Region([[(0, 0), (48, 0), (48, 24), (0, 24)]])
    >>> lies = Row(butt=0, lower=0, upper=12, start_line=0, trim=6, nail_height=6)
    >>> strip = Strip(length=36, nails=(1, 13, 23, 35), end_distance=1)
    >>> laid = pieces_of(slope.between(0, 12), row=lies, strip=strip, deck=slope)
    >>> [(one.width, one.keeps) for one in needed_pieces(laid, plane="front", course=1)]
    [(30, 'right'), (18, 'left')]
    """
    return tuple(
        NeededPiece(
            plane=plane,
            row=row,
            course=course,
            number=piece.number,
            width=piece.right - piece.left,
            keeps=_keeps(
                left=piece.left_end == "factory" and _meet(laid, k - 1),
                right=piece.right_end == "factory" and _meet(laid, k),
            ),
            shingle_from=piece.shingle_from,
        )
        for k, piece in enumerate(laid)
    )


def _meet(laid: Sequence[Piece], k: int) -> bool:
    """Tell whether piece k meets the next one."""
    return 0 <= k < len(laid) - 1 and abs(laid[k + 1].left - laid[k].right) <= DUST


def _keeps(*, left: bool, right: bool) -> Keeps:
    if left:
        return "both" if right else "left"
    return "right" if right else "neither"


def check_needs(
    pieces: Sequence[NeededPiece], *, shingle_length: Inches, kerf: Inches, tabs: int
) -> None:
    """Refuse pieces that no shingle yields.

    Args:
        pieces: The pieces.
        shingle_length: Length of a shingle.
        kerf: What a cut between two pieces of one shingle takes.
        tabs: Into how many tabs a shingle is divided, 0 for none.

    Raises:
        Refused: A piece is no part of a shingle, or a size cannot be; names each.

    Source:
        Geometry.

    >>> check_needs((), shingle_length=39.375, kerf=0, tabs=3)
    """
    refuse_if_any(
        [
            not_positive("shingle_length", shingle_length),
            negative("kerf", kerf),
            None if 0 <= tabs <= MOST_TABS else fault("tabs", str(tabs), f"0 to {MOST_TABS}"),
        ]
    )
    refuse_if_any(
        found
        for k, piece in enumerate(pieces)
        for found in _faults(piece, f"pieces.{k}", shingle_length, on_tabs=tabs > 0)
    )


def _faults(
    piece: NeededPiece, at: str, shingle_length: float, *, on_tabs: bool
) -> Iterator[Fault | None]:
    """Give what is wrong with one piece."""
    dust, width, begins = DUST * shingle_length, piece.width, piece.shingle_from
    yield not_positive(f"{at}.width", width)
    if width > shingle_length + dust:
        yield fault(f"{at}.width", length(width), "at most a shingle, ", length(shingle_length))
    if piece.keeps == "both" and width < shingle_length - dust:
        wanted = ("a whole shingle, ", length(shingle_length), ", to keep both its ends")
        yield fault(f"{at}.width", length(width), *wanted)
    if (
        on_tabs
        and piece.keeps == "neither"
        and not -dust <= begins <= shingle_length - width + dust
    ):
        wanted = (
            "zero to ",
            length(max(0.0, shingle_length - width)),
            ", for it to lie on a shingle",
        )
        yield fault(f"{at}.shingle_from", length(begins), *wanted)
