"""Findings: what on a laid-out roof breaks a rule or is worth knowing, where, and what cures it.

A finding never changes the plan. Where a choice cures it, it says which field takes what.
"""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.cover import of_the_cover
from roofing_core.job.flashing_work import of_the_flashings
from roofing_core.job.found import Finding, broken, place_on
from roofing_core.job.found_at_valleys import of_the_valleys
from roofing_core.job.found_on_metal import of_the_metal
from roofing_core.job.found_on_shingles import of_the_nails, of_the_shingles
from roofing_core.job.found_on_site import of_the_site
from roofing_core.job.layout import Layout
from roofing_core.job.order import Order
from roofing_core.layers.underlaying.ice_reach import STEEP_PITCH as ICE_STEEP
from roofing_core.layers.weight import Weights
from roofing_core.measures.counting import DUST
from roofing_core.roof.pitch import slope_factor
from roofing_core.ruling import on_sheets, on_slopes
from roofing_core.ruling.on_shingles import SPARE_SHINGLES


def findings(layout: Layout, ordered: Order, weighed: Weights) -> tuple[Finding, ...]:
    """Hold a laid-out roof against the rules, in the edition of the code that the job names.

    Args:
        layout: The roof with all its layers.
        ordered: The order list.
        weighed: What the layers weigh.

    Returns:
        One entry per breach, from the roof up through its layers; empty when nothing was found.

    Raises:
        Nothing.

    Source:
        Each rule's own. Local code governs.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [found.rule for found in findings(shed, shed.order, shed.weight)]
    ['underlayment.single_layer_pitch', 'order.spare_shingles']
    """
    return (
        *_of_the_pitch(layout),
        *_of_the_deck(layout),
        *_of_the_ice_barrier(layout),
        *_of_the_underlayment(layout),
        *of_the_metal(layout),
        *of_the_valleys(layout),
        *of_the_shingles(layout),
        *of_the_nails(layout),
        *of_the_cover(layout),
        *of_the_flashings(layout),
        *of_the_site(layout, weighed),
        *broken(layout, SPARE_SHINGLES, ordered.shingles.left_over.value, "order"),
    )


def _of_the_pitch(layout: Layout) -> Iterator[Finding]:
    for plane in layout.planes:
        yield from broken(layout, on_slopes.SINGLE_UNDERLAYMENT_PITCH, plane.pitch, plane.name)
        yield from broken(layout, on_slopes.STEEP_PITCH, plane.pitch, plane.name)


def _of_the_deck(layout: Layout) -> Iterator[Finding]:
    """Hold a deck that is part of the job against the rules."""
    if not layout.deck.panels:
        return
    choices = layout.choices
    thickness, how = choices.panel.thickness, choices.decking
    for rule, value, field in (
        (on_sheets.DECK_THICKNESS, thickness, "panel.thickness"),
        (on_sheets.DECK_SUPPORTS, how.support_spacing, "decking.support_spacing"),
        (on_sheets.DECK_EDGE_NAILS, how.edge_spacing, "decking.edge_spacing"),
        (on_sheets.DECK_FIELD_NAILS, how.field_spacing, "decking.field_spacing"),
        (on_sheets.TAPE_WIDTH, choices.joint_tape.width, "joint_tape.width"),
    ):
        yield from broken(layout, rule, value, "deck", fields=(field,))


def _of_the_ice_barrier(layout: Layout) -> Iterator[Finding]:
    if not layout.ice_barrier.rows:
        return
    how, place = layout.choices.underlaying, "ice barrier"
    for rule, value, field in (
        (on_sheets.ICE_INSIDE_WALL, how.inside_wall, "underlaying.inside_wall"),
        (on_sheets.OVER_ICE_BARRIER, how.over_ice_barrier, "underlaying.over_ice_barrier"),
    ):
        yield from broken(layout, rule, value, place, fields=(field,))
    level = layout.roof.eave_overhang + how.inside_wall
    for plane in layout.planes:
        if "eave" in plane.edges and plane.pitch >= ICE_STEEP - DUST:
            here = place_on(layout, plane.name, place)
            reach = level * slope_factor(plane.pitch)
            yield from broken(layout, on_sheets.ICE_STEEP_REACH, reach, here)


def _of_the_underlayment(layout: Layout) -> Iterator[Finding]:
    how, place = layout.choices.underlaying, "underlayment"
    laps = [(on_sheets.HEAD_LAP, how.head_lap, "head_lap")] if _has_one_layer(layout) else []
    if layout.underlayment.end_laps:
        laps += [
            (on_sheets.END_LAP, how.end_lap, "end_lap"),
            (on_sheets.END_LAP_STAGGER, how.end_lap_stagger, "end_lap_stagger"),
        ]
    for rule, value, name in laps:
        yield from broken(layout, rule, value, place, fields=(f"underlaying.{name}",))
    if layout.underlayment.fasteners:
        cap = layout.choices.cap_nail.cap
        yield from broken(layout, on_sheets.CAP_WIDTH, cap, place, fields=("cap_nail.cap",))
    if layout.valley_lining.pieces and layout.choices.valleying.method != "open":
        wide, field = layout.choices.valley_lining.width, "valley_lining.width"
        rule = on_sheets.VALLEY_LINING_WIDTH
        yield from broken(layout, rule, wide, "valley lining", fields=(field,))


def _has_one_layer(layout: Layout) -> bool:
    return layout.underlayment.layers == 1
