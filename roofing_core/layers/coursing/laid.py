"""Laid: a course as it lies on its plane, with everything that a person needs to lay it."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.layers.coursing.pieces import SQUARE_CUT, Piece
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches, SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidCourse:
    """One course as it is laid: its lines, its joints, its pieces and its nails.

    Attributes:
        number: From 1 at the eave of its plane.
        butt: Height of the lower edge, up the slope from the outer face of the eave metal.
        snap_line: Height of the chalk line for the tops of the shingles.
        exposure: How much of the course shows.
        top_trim: How much is trimmed off the top of the shingles.
        nailable: Whether it is nailed in its nail zone; if not it closes the roof, or a part of
            it: bedded, top-nailed and dabbed under the ridge metal or the caps.
        nail_line: Height at which it is nailed; where it closes only a part of the plane, there.
        trim: Length trimmed from the left of its first shingle.
        pieces: How many pieces it takes.
        joints: Where its pieces meet on the deck, from the left corner.
        clearance: Least distance from one of its joints, those among them that only the part under
            the next course has, to one of the next course up.
        clearance_two: The same to the second course up.
        overhang: How far the last shingle runs past the trim line before it is trimmed.
        nails: Nails in its pieces.
        laid: One entry per piece, from the left.
        plane: The plane that it lies on.
        length: From its left end to its right end, at its longest.
        exposed_area: Of all that shows of it, past the eave and the rakes too.
        area: Of all its pieces as they lie, what the next courses cover included.
        bedding_area: Of asphalt cement under it, where it closes the roof; 0 for most.
    """

    number: int
    butt: Inches
    snap_line: Inches
    exposure: Inches
    top_trim: Inches
    nailable: bool
    nail_line: Inches
    trim: Inches
    pieces: int
    joints: tuple[Inches, ...]
    clearance: Inches
    clearance_two: Inches
    overhang: Inches
    nails: int
    laid: tuple[Piece, ...]
    plane: str
    length: Inches
    exposed_area: SquareInches
    area: SquareInches
    bedding_area: SquareInches

    def square_ends(self) -> tuple[Piece, ...]:
        """Give the pieces that end square where the course does: at a rake, a wall, an opening."""
        laid = self.laid
        return tuple(
            piece
            for k, piece in enumerate(laid)
            if (_begins(laid, k) and piece.left_angle == SQUARE_CUT)
            or (_begins(laid, k + 1) and piece.right_angle == SQUARE_CUT)
        )


def _begins(laid: tuple[Piece, ...], k: int) -> bool:
    """Tell whether a stretch begins with piece k, or ends before it."""
    return k in (0, len(laid)) or laid[k].left - laid[k - 1].right > DUST
