"""What is found about metal: along edges, in valleys, at walls and over the top of a roof."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.edges import METALS, EdgeRun
from roofing_core.job.found import Finding, broken, place_on
from roofing_core.job.layout import Layout
from roofing_core.ruling import on_metal

#: The code's section on drip edges is about these; what it asks of them is practice elsewhere.
DRIP_EDGES = frozenset({"eave", "left_rake", "right_rake"})

_OF_DRIP_EDGES = (on_metal.METAL_LAP, on_metal.METAL_NAIL_SPACING)
_OF_FLASHINGS = (on_metal.FLASHING_LAP, on_metal.FLASHING_NAIL_SPACING)


def of_the_metal(layout: Layout) -> Iterator[Finding]:
    """Hold every run of metal against the rules.

    Args:
        layout: The roof with all its layers.

    Returns:
        One entry per breach.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(of_the_metal(lay_out(shed)))
    []
    """
    how = layout.choices.metalwork
    for run in layout.metal:
        place = place_on(layout, run.plane, f"{run.edge.replace('_', ' ')} metal")
        name = "ridge_nail_spacing" if run.edge == "ridge" else "nail_spacing"
        spacing, field = getattr(how, name), f"metalwork.{name}"
        of_laps, of_nails = _OF_DRIP_EDGES if run.edge in DRIP_EDGES else _OF_FLASHINGS
        if run.laps:
            yield from broken(layout, of_laps, run.lap, place, fields=("metalwork.lap",))
        yield from broken(layout, of_nails, spacing, place, fields=(field,))
        yield from _of_legs(layout, run, place)
        if run.edge == "ridge":
            beads, field = layout.choices.sealing.beads_per_leg, "sealing.beads_per_leg"
            yield from broken(layout, on_metal.RIDGE_METAL_BEADS, beads, place, fields=(field,))


def _of_legs(layout: Layout, run: EdgeRun, place: str) -> Iterator[Finding]:
    """Hold the legs of one run of metal against the rules for its edge."""
    metal = METALS[run.edge]
    deck_leg, face_leg = f"{metal}.deck_leg", f"{metal}.face_leg"
    both = (deck_leg, face_leg)
    if run.edge in DRIP_EDGES:
        thick = layout.choices.panel.thickness
        rule, needed = on_metal.METAL_BELOW_DECK, thick + on_metal.METAL_BELOW_DECK.limit
        yield from broken(layout, on_metal.METAL_DECK_LEG, run.deck_leg, place, fields=(deck_leg,))
        yield from broken(
            layout, rule, run.face_leg - thick, place, to=needed, fields=(face_leg,)
        )  # fmt: skip
    elif run.edge == "valley":
        rule, wide = on_metal.VALLEY_WIDTH, run.deck_leg + run.face_leg
        yield from broken(layout, rule, wide, place, to=rule.limit / 2, fields=both)
    elif run.edge == "headwall":
        least = min(run.deck_leg, run.face_leg)
        thick = layout.choices.apron_metal.thickness
        field = "apron_metal.thickness"
        yield from broken(layout, on_metal.WALL_LEG, least, place, fields=both)
        yield from broken(layout, on_metal.FLASHING_THICKNESS, thick, place, fields=(field,))
