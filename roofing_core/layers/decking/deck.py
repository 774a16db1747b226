"""Deck: panels on the rafters, their joints, tape, nails and clips, and how many panels to buy.

Where end joints lie is `panel_joints`, what pieces there are `panel_rows`, how these are cut from
whole panels `panel_cuts`, and what is counted beside them `deck_counts`.
How far a panel may span is for its span rating; nothing here checks it.

Panel sizes are nominal: the gap of 1/8 in at ends and edges is within them, so that the joints
come to lie on the middle of a support.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from math import floor, fsum

from roofing_core.layers.decking.deck_counts import (
    NailSpacing,
    clip_count,
    end_joint_lengths,
    long_joints,
    nail_count,
)
from roofing_core.layers.decking.deck_way import (
    EDGE_SPACING,
    FIELD_SPACING,
    JOINT_STAGGER,
    PANEL_LENGTH,
    PANEL_WIDTH,
    SUPPORT_SPACING,
    DeckWay,
    deck_faults,
)
from roofing_core.layers.decking.panel_cuts import cut_panels, least_panels
from roofing_core.layers.decking.panel_rows import PanelPiece, Panels, panelled, pieces_on
from roofing_core.measures.counting import whole_packs
from roofing_core.measures.faults import TooManyPieces, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.outlines import RoofPlane, rectangle, require_planes
from roofing_core.roof.slopes import too_short

#: One clip a span where edges are unsupported, two at 48 in (the two are from memory).
CLIPS, WIDE_SPAN, CLIPS_IN_WIDE_SPAN = 1, 48.0, 2

#: More panels than this are not laid out.
MOST_PANELS = 5_000


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckPiece(PanelPiece):
    """One panel, or part of one, on the deck.

    Attributes:
        panel: Number of the bought panel that it is, or is cut from.
    """

    panel: int


_PIECE = tuple(field.name for field in fields(PanelPiece))


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The deck of a plane or of a whole roof.

    Attributes:
        rows: How many rows of panels lie up the slopes, of all planes together.
        pieces: Every piece, plane by plane, row by row from the eave, left to right.
        panels: Panels to buy, with their offcuts used again; pieces along hips and valleys in
            pairs by one cut where they match, else as the rectangles that they fit.
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
    way = DeckWay(
        panel_length=panel_length,
        panel_width=panel_width,
        support_spacing=support_spacing,
        joint_stagger=joint_stagger,
        least_spans=least_spans,
        edge_spacing=edge_spacing,
        field_spacing=field_spacing,
    )
    refuse_if_any(
        [
            not_positive("eave_length", eave_length) or too_short("eave_length", eave_length),
            not_positive("slope_length", slope_length) or too_short("slope_length", slope_length),
            *deck_faults(way),
        ]
    )
    plane = rectangle(eave_length, slope_length=slope_length)
    return _limited([plane], way)


def deck_on(planes: Sequence[RoofPlane], *, way: DeckWay) -> Deck:
    """Lay the panels of several planes and cut all of them from the same ones.

    As `deck` on each plane, its supports from the left end of its lowest eave. Rows end at hips and
    valleys, where pieces are cut along the line and lie on the rafter under it.

    Args:
        planes: The planes.
        way: The panels, the supports and the nails.

    Returns:
        Every piece, the panels to buy with the bounds they are held against, joints, tape, nails
        and clips.

    Raises:
        Refused: There is no plane, a measurement is zero, negative or not finite, or no layout of a
            plane keeps the stagger; names each.
        TooManyPieces: More than 5,000 panels.

    Source:
        As `deck`. That pieces along hips and valleys may be shorter than others is common practice,
        no published source: the rafter there holds them.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> laid = deck_on(surfaces(Hip(length=400, width=240, pitch=0.75)).planes, way=DeckWay())
    >>> laid.panels, laid.least_panels
    (32, 27)
    """
    require_planes(planes)
    refuse_if_any(deck_faults(way))
    return _limited(planes, way)


def _limited(planes: Sequence[RoofPlane], way: DeckWay) -> Deck:
    """Lay the panels, unless there are too many; of a single plane the lengths are named."""
    panels = sum(_about(plane, way) for plane in planes)
    if panels <= MOST_PANELS:
        return _laid(planes, way)
    if len(planes) != 1:
        wanted = f"at most {MOST_PANELS} panels on one roof: a smaller roof or larger panels"
        raise TooManyPieces(fault("panels", Amount(float(floor(panels)), "count"), wanted))
    wanted = f"with the other length, at most {MOST_PANELS} panels; this takes {panels:.0f}"
    wide, high = _sizes(planes[0])
    raise TooManyPieces(
        fault("eave_length", length(wide), wanted), fault("slope_length", length(high), wanted)
    )


def _about(plane: RoofPlane, way: DeckWay) -> float:
    """Give about how many panels a plane takes, to refuse too many before any is laid."""
    wide, high = _sizes(plane)
    return max(1.0, wide / way.panel_length) * max(1.0, high / way.panel_width)


def _sizes(plane: RoofPlane) -> tuple[float, float]:
    """Give how wide and how high a plane is."""
    us, vs = [u for u, _ in plane.corners], [v for _, v in plane.corners]
    return max(us) - min(us), max(vs) - min(vs)


def _laid(planes: Sequence[RoofPlane], way: DeckWay) -> Deck:
    framing, size = way.framing(), Panels(length=way.panel_length, width=way.panel_width)
    laid = [panelled(plane, framing=framing, panels=size) for plane in planes]
    pieces = [piece for one in laid for piece in pieces_on(one, framing=framing)]
    blanks = [piece.blank() for piece in pieces]
    cuts = cut_panels(blanks, panel_length=size.length, panel_width=size.width)
    least = least_panels(blanks, panel_length=size.length, panel_width=size.width)
    joints = [long for one in laid for long in end_joint_lengths(one, framing=framing)]
    along = fsum(right - left for one in laid for left, right in long_joints(one))
    spacing = NailSpacing(edge=way.edge_spacing, field=way.field_spacing)
    per_span = CLIPS_IN_WIDE_SPAN if way.support_spacing >= WIDE_SPAN else CLIPS
    area = fsum(one.region.area() for one in laid)
    return Deck(
        rows=sum(len(one.rows) for one in laid),
        pieces=tuple(map(_on_panel, pieces, cuts.on)),
        panels=cuts.panels,
        least_panels=least,
        panels_by_area=whole_packs(area, size.length * size.width),
        area=area,
        left_over=cuts.panels * size.length * size.width - area,
        shortest_piece=min((blank.length for blank in blanks), default=0.0),
        end_joints=len(joints),
        end_joint_length=fsum(joints),
        long_joint_length=along,
        tape_length=fsum(joints) + along,
        nails=sum(nail_count(one, framing=framing, spacing=spacing) for one in laid),
        clips=sum(clip_count(one, framing=framing, per_span=per_span) for one in laid),
    )


def _on_panel(piece: PanelPiece, panel: int) -> DeckPiece:
    return DeckPiece(**{name: getattr(piece, name) for name in _PIECE}, panel=panel)
