"""Bent pieces below and above a chimney or skylight: the apron and the head flashing.

The apron lies over the courses below the opening, the head flashing under those above it. A chimney
wider than a stated limit has a cricket in the head flashing's place: see `crickets`.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.counting import whole_pieces
from roofing_core.measures.faults import fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches, Pitch, Ratio, SquareInches
from roofing_core.roof.footprints import pitch_range_fault
from roofing_core.roof.pitch import slope_factor

#: 4 in or more each way: the residential code's least beside a wall (R905.2.8.3); 10 in wide and
#: bent in the middle as the trade journal's step flashing is.
DECK_LEG, WALL_LEG = 5.0, 5.0

#: Folded round each corner of the opening: common practice, no published source.
PAST_CORNER = 4.0

#: Ontario Building Code 9.26.4.8, for a chimney without a saddle: up the chimney a sixth of its
#: width and 150 mm or more; up the roof to the same height, and 1 1/2 exposures or more.
LEAST_HEIGHT = 6.0
HEIGHT_BY_WIDTH = 1 / 6
LEAST_EXPOSURES = 1.5

#: Nails in metal stand 12 in apart or closer, as the residential code has it for edges.
NAIL_SPACING = 12.0

#: More nails in one piece are refused before any is counted.
MOST_NAILS = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class BentPiece:
    """One bent piece of metal across the width of an opening.

    Attributes:
        length: Along the eave, with what is folded round the corners.
        past_corner: How much of it is folded round each corner.
        deck_leg: The leg on the roof.
        wall_leg: The leg up the opening.
        area: Of the flat piece, before it is bent.
        nails: Nails through the leg on the roof, along its far edge.
    """

    length: Inches
    past_corner: Inches
    deck_leg: Inches
    wall_leg: Inches
    area: SquareInches
    nails: int


def apron(
    width: Inches,
    *,
    deck_leg: Inches = DECK_LEG,
    wall_leg: Inches = WALL_LEG,
    past_corner: Inches = PAST_CORNER,
    nail_spacing: Inches = NAIL_SPACING,
) -> BentPiece:
    """Cut the apron below a chimney or skylight.

    ``length = width + 2 * past_corner``; one nail at each end of the width, and spaces between them
    of at most ``nail_spacing``.

    Args:
        width: Of the opening, along the eave; over 0.
        deck_leg: The leg over the courses below, over 0.
        wall_leg: The leg up the opening, over 0.
        past_corner: Folded round each corner; 0 for none.
        nail_spacing: Most from nail to nail, over 0.

    Returns:
        The piece and its nails, which nothing covers: dab them.

    Raises:
        Refused: Something is zero, negative or not finite where it may not be, or the nails would
            be more than the limit; names each.

    Source:
        Geometry. The residential code asks for 4 in or more each way beside a wall (R905.2.8.3);
        the rest is common practice, no published source.

    >>> piece = apron(24)
    >>> piece.length, piece.nails
    (32.0, 3)
    """
    refuse_if_any(
        [
            not_positive("width", width),
            not_positive("deck_leg", deck_leg),
            not_positive("wall_leg", wall_leg),
            negative("past_corner", past_corner),
            not_positive("nail_spacing", nail_spacing),
        ]
    )
    return _piece(width, deck_leg, wall_leg, past_corner, nail_spacing)


def head_flashing(
    width: Inches,
    *,
    pitch: Pitch,
    exposure: Inches,
    least_height: Inches = LEAST_HEIGHT,
    height_by_width: Ratio = HEIGHT_BY_WIDTH,
    past_corner: Inches = PAST_CORNER,
    nail_spacing: Inches = NAIL_SPACING,
) -> BentPiece:
    """Cut the flashing above a chimney or skylight that has no cricket.

    ``wall_leg = max(least_height, height_by_width * width)``; ``deck_leg``, up the slope, is
    ``max(wall_leg * slope_factor / pitch, 1.5 * exposure)``: up to the height of the other leg.

    Args:
        width: Of the opening, along the eave; over 0.
        pitch: Of the roof, 0.1:12 or more.
        exposure: How much of each course shows, over 0.
        least_height: Least height of the leg up the opening; of a skylight's, no more than its curb
            stands above the roof.
        height_by_width: The leg up the opening for each unit of its width; 0 for none.
        past_corner: Folded round each corner; 0 for none.
        nail_spacing: Most from nail to nail along the upper edge, over 0.

    Returns:
        The piece and its nails, which the courses above cover.

    Raises:
        Refused: Something is zero, negative or not finite where it may not be, the roof is flatter,
            or the nails would be more than the limit; names each.

    Source:
        Ontario Building Code 9.26.4.8. What is folded round the corners is common practice, no
        published source.

    >>> piece = head_flashing(24, pitch=9 / 12, exposure=5)
    >>> piece.wall_leg, piece.deck_leg
    (6.0, 10.0)
    """
    refuse_if_any(
        [
            not_positive("width", width),
            pitch_range_fault(("pitch",), pitch),
            not_positive("exposure", exposure),
            not_positive("least_height", least_height),
            negative("height_by_width", height_by_width, "1"),
            negative("past_corner", past_corner),
            not_positive("nail_spacing", nail_spacing),
        ]
    )
    wall_leg = max(least_height, height_by_width * width)
    deck_leg = max(wall_leg * slope_factor(pitch) / pitch, LEAST_EXPOSURES * exposure)
    return _piece(width, deck_leg, wall_leg, past_corner, nail_spacing)


def _piece(
    width: float, deck_leg: float, wall_leg: float, past_corner: float, nail_spacing: float
) -> BentPiece:
    if width > MOST_NAILS * nail_spacing:
        wanted = f"at most {MOST_NAILS} spaces in one piece: more from nail to nail"
        refuse_if_any([fault("nail_spacing", length(nail_spacing), wanted)])
    long = width + 2 * past_corner
    return BentPiece(
        length=long,
        past_corner=past_corner,
        deck_leg=deck_leg,
        wall_leg=wall_leg,
        area=long * (deck_leg + wall_leg),
        nails=whole_pieces(width / nail_spacing) + 1,
    )
