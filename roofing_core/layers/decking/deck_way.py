"""How a deck is laid: its panels, its supports and its nails, and what these can be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from roofing_core.layers.decking.panel_joints import Framing
from roofing_core.measures.faults import Fault, fault, not_positive
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches

#: A panel of 4 by 8 ft.
PANEL_LENGTH, PANEL_WIDTH = 96.0, 48.0
#: Common practice, no published source; 16 in is as usual.
SUPPORT_SPACING = 24.0
#: 8d nails, 6 in on edges and 12 in on the supports between: IRC table R602.3(1).
EDGE_SPACING, FIELD_SPACING = 6.0, 12.0
#: End joints of neighbouring rows stand two supports apart: inspectors' guide to roofs.
JOINT_STAGGER = 2

#: A panel spans no more supports than this.
MOST_SPANS = 16
#: Closer than this, nails split what they hold.
LEAST_NAIL_SPACING = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckWay:
    """The panels of a deck, its supports and its nails.

    Attributes:
        panel_length: The long way of a panel.
        panel_width: The short way of a panel.
        support_spacing: From rafter to rafter; at least 1/16 of the panel's length.
        joint_stagger: How many supports end joints of neighbouring rows stand apart, at least.
        least_spans: How many spans long a piece is, at least; 1 is a piece on two supports.
        edge_spacing: Between nails on the supports under a piece's ends, at most.
        field_spacing: Between nails on the supports between them, at most.
    """

    panel_length: Inches = PANEL_LENGTH
    panel_width: Inches = PANEL_WIDTH
    support_spacing: Inches = SUPPORT_SPACING
    joint_stagger: int = JOINT_STAGGER
    least_spans: int = 1
    edge_spacing: Inches = EDGE_SPACING
    field_spacing: Inches = FIELD_SPACING

    def framing(self) -> Framing:
        """Give the supports, and what panels on them have to keep."""
        return Framing(
            support_spacing=self.support_spacing,
            panel_length=self.panel_length,
            joint_stagger=self.joint_stagger,
            least_spans=self.least_spans,
        )


def deck_faults(way: DeckWay) -> Iterator[Fault | None]:
    """Give the faults of a deck's panels, supports and nails.

    Args:
        way: What was asked for.

    Returns:
        Faults, and None for each measurement that is right.

    Raises:
        Refused: Never; it gives the faults to be raised together with others.

    Source:
        Limits of this library.

    >>> [one.at for one in deck_faults(DeckWay(panel_width=0, least_spans=0)) if one]
    [('panel_width',), ('least_spans',)]
    """
    yield not_positive("panel_length", way.panel_length)
    yield not_positive("panel_width", way.panel_width)
    yield _spacing_fault(way.support_spacing, way.panel_length)
    yield _spans_fault("joint_stagger", way.joint_stagger, least=0)
    yield _spans_fault("least_spans", way.least_spans, least=1)
    yield _nail_fault("edge_spacing", way.edge_spacing)
    yield _nail_fault("field_spacing", way.field_spacing)


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
