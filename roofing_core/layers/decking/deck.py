"""Deck: panels on the rafters, their joints, tape, nails and clips, and how many panels to buy.

Where end joints lie is `panel_joints`, how the pieces are cut from whole panels is `panel_cuts`.
How far a panel may span is for its span rating; nothing here checks it.

Panel sizes are nominal: the gap of 1/8 in at ends and edges is within them, so that the joints
come to lie on the middle of a support.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum

from roofing_core.layers.decking.panel_cuts import DeckPiece, Row, lay_panels
from roofing_core.layers.decking.panel_joints import Framing
from roofing_core.measures.counting import whole_packs, whole_pieces
from roofing_core.measures.faults import (
    Fault,
    TooManyPieces,
    fault,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches, SquareInches

#: A panel of 4 by 8 ft.
PANEL_LENGTH, PANEL_WIDTH = 96.0, 48.0
#: Common practice, no published source; 16 in is as usual.
SUPPORT_SPACING = 24.0
#: 8d nails, 6 in on edges and 12 in on the supports between: IRC table R602.3(1).
EDGE_SPACING, FIELD_SPACING = 6.0, 12.0
#: End joints of neighbouring rows stand two supports apart: inspectors' guide to roofs.
JOINT_STAGGER = 2

#: One clip a span where edges are unsupported, two at 48 in (the two are from memory).
CLIPS, WIDE_SPAN, CLIPS_IN_WIDE_SPAN = 1, 48.0, 2

#: A panel spans no more supports than this.
MOST_SPANS = 16
#: More panels than this are not laid out.
MOST_PANELS = 5_000
#: Closer than this, nails split what they hold.
LEAST_NAIL_SPACING = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The deck of one plane.

    Attributes:
        rows: How many rows of panels lie up the slope.
        pieces: Every piece, row by row from the eave, left to right.
        panels: Panels to buy, with their offcuts used again.
        least_panels: No way of cutting these pieces takes fewer panels than this.
        panels_by_area: Panels that the area alone would take; no deck takes fewer.
        area: Area of the deck.
        left_over: Area of all that is left of the panels.
        shortest_piece: Length of the shortest piece; 0 where there is no deck.
        end_joints: How many joints lie on supports, up the slope.
        end_joint_length: Their length together.
        long_joint_length: Length of the joints along the eave, between rows.
        tape_length: Length of tape that covers every joint.
        nails: How many nails.
        clips: How many panel clips.
    """

    rows: int
    pieces: tuple[DeckPiece, ...]
    panels: int
    least_panels: int
    panels_by_area: int
    area: SquareInches
    left_over: SquareInches
    shortest_piece: Inches
    end_joints: int
    end_joint_length: Inches
    long_joint_length: Inches
    tape_length: Inches
    nails: int
    clips: int


def no_deck() -> Deck:
    """Give the deck of a job that lays none: no panels, no joints, no nails.

    Returns:
        All zero.

    Raises:
        Refused: Never.

    Source:
        None needed.

    >>> no_deck().panels
    0
    """
    return Deck(
        rows=0,
        pieces=(),
        panels=0,
        least_panels=0,
        panels_by_area=0,
        area=0.0,
        left_over=0.0,
        shortest_piece=0.0,
        end_joints=0,
        end_joint_length=0.0,
        long_joint_length=0.0,
        tape_length=0.0,
        nails=0,
        clips=0,
    )


def deck(
    eave_length: Inches,
    *,
    slope_length: Inches,
    panel_length: Inches = PANEL_LENGTH,
    panel_width: Inches = PANEL_WIDTH,
    support_spacing: Inches = SUPPORT_SPACING,
    joint_stagger: int = JOINT_STAGGER,
    least_spans: int = 1,
    edge_spacing: Inches = EDGE_SPACING,
    field_spacing: Inches = FIELD_SPACING,
) -> Deck:
    """Lay the panels of one plane, the long way across the rafters, and count what they take.

    Rows of ``panel_width`` from the eave, the top one ripped. Supports stand every
    ``support_spacing`` from the left rake, and under the right one. Rows alternate between two sets
    of end joints, each on supports, ``joint_stagger`` supports apart; of the 8 layouts with the
    fewest pieces the one is taken that needs the fewest panels. Nails on each support that a piece
    crosses: ``whole_pieces(height / spacing) + 1``.

    Args:
        eave_length: Along the eave, rake to rake.
        slope_length: Up the slope, eave to top edge.
        panel_length: The long way of a panel.
        panel_width: The short way of a panel.
        support_spacing: From rafter to rafter; at least 1/16 of the panel's length.
        joint_stagger: How many supports end joints of neighbouring rows stand apart, at least.
        least_spans: How many spans long a piece is, at least; 1 is a piece on two supports.
        edge_spacing: Between nails on the supports under a piece's ends, at most.
        field_spacing: Between nails on the supports between them, at most.

    Returns:
        Every piece, the panels to buy with the bounds they are held against, joints, tape, nails
        and clips.

    Raises:
        Refused: A measurement is zero, negative or not finite, or no layout keeps the stagger and
            the least piece; names each.
        TooManyPieces: More than 5,000 panels.

    Source:
        Nails 6 in on edges and 12 in between: IRC table R602.3(1) and an inspectors' guide, which
        also asks for end joints on supports, two supports apart, and a clip a span where edges are
        unsupported. That a piece may be one span long is common practice, no published source: the
        guide asks for two spans or more.

    >>> laid = deck(168, slope_length=112)
    >>> laid.panels, laid.panels_by_area
    (5, 5)
    """
    framing = Framing(
        eave_length=eave_length,
        support_spacing=support_spacing,
        panel_length=panel_length,
        joint_stagger=joint_stagger,
        least_spans=least_spans,
    )
    refuse_if_any(
        [
            not_positive("eave_length", eave_length),
            not_positive("slope_length", slope_length),
            not_positive("panel_length", panel_length),
            not_positive("panel_width", panel_width),
            _spacing_fault(support_spacing, panel_length),
            _spans_fault("joint_stagger", joint_stagger, least=0),
            _spans_fault("least_spans", least_spans, least=1),
            _nail_fault("edge_spacing", edge_spacing),
            _nail_fault("field_spacing", field_spacing),
        ]
    )
    _refuse_too_many(eave_length, slope_length, panel_length=panel_length, panel_width=panel_width)
    laid = lay_panels(framing, slope_length=slope_length, panel_width=panel_width)
    end_joints = [upper - lower for lower, upper, joints in laid.rows for _ in joints]
    long_joint_length = eave_length * (len(laid.rows) - 1)
    per_span = CLIPS_IN_WIDE_SPAN if support_spacing >= WIDE_SPAN else CLIPS
    area = eave_length * slope_length
    return Deck(
        rows=len(laid.rows),
        pieces=laid.pieces,
        panels=laid.cuts.panels,
        least_panels=laid.cuts.least_panels,
        panels_by_area=whole_packs(area, panel_length * panel_width),
        area=area,
        left_over=laid.cuts.panels * panel_length * panel_width - area,
        shortest_piece=min(piece.right - piece.left for piece in laid.pieces),
        end_joints=len(end_joints),
        end_joint_length=fsum(end_joints),
        long_joint_length=long_joint_length,
        tape_length=fsum(end_joints) + long_joint_length,
        nails=_nails(framing, laid.rows, edge_spacing, field_spacing),
        clips=(len(laid.rows) - 1) * framing.spans * per_span,
    )


def _nails(
    framing: Framing,
    rows: tuple[Row, ...],
    edge_spacing: float,
    field_spacing: float,
) -> int:
    count = 0
    for lower, upper, joints in rows:
        at_ends = 2 * (len(joints) + 1)
        between = framing.spans - 1 - len(joints)
        count += at_ends * (whole_pieces((upper - lower) / edge_spacing) + 1)
        count += between * (whole_pieces((upper - lower) / field_spacing) + 1)
    return count


def _spacing_fault(support_spacing: float, panel_length: float) -> Fault | None:
    if not panel_length / MOST_SPANS > support_spacing > 0 and not support_spacing > panel_length:
        return not_positive("support_spacing", support_spacing)
    least, most = length(panel_length / MOST_SPANS), length(panel_length)
    wanted = (least, " or more and at most ", most, ", the length of a panel")
    return fault("support_spacing", length(support_spacing), *wanted)


def _spans_fault(name: str, spans: int, *, least: int) -> Fault | None:
    if least <= spans <= MOST_SPANS:
        return None
    return fault(name, Amount(spans, "count"), f"{least} or more and at most {MOST_SPANS}")


def _nail_fault(name: str, spacing: float) -> Fault | None:
    if 0 < spacing < LEAST_NAIL_SPACING:
        return fault(name, length(spacing), length(LEAST_NAIL_SPACING), " or more")
    return not_positive(name, spacing)


def _refuse_too_many(
    eave_length: float, slope_length: float, *, panel_length: float, panel_width: float
) -> None:
    panels = max(1.0, eave_length / panel_length) * max(1.0, slope_length / panel_width)
    if panels <= MOST_PANELS:
        return
    wanted = f"with the other length, at most {MOST_PANELS} panels; this takes {panels:.0f}"
    raise TooManyPieces(
        fault("eave_length", length(eave_length), wanted),
        fault("slope_length", length(slope_length), wanted),
    )
