"""Figures of a plan that have no working, or not everywhere. The lists may only grow shorter."""

from __future__ import annotations

#: Numbers that name a thing by its place and measure nothing, by their last name.
NUMBERS = frozenset(("number", "row", "roll", "panel", "valley", "course", "opening"))

#: The same, of entries: the length that each piece of metal is cut from.
NUMBERED = frozenset(("/metal/*/cut_from/*", "/metal_bought/*/offcuts/*/cut_from"))

#: Parts of a plan that tell where their numbers come from themselves: each finding names its rule.
TELL_THEMSELVES = ("findings", "cautions")

#: No formula gives these: a search places them, or the shape of the roof does.
WITHOUT = frozenset(
    (
        # Where things lie in space, and the outlines that the shape of the roof cuts.
        "/deck/pieces/*/corners/*/*",
        # Panels are laid by a search for the fewest; their joints and supports follow from it.
        "/deck/pieces/*/left",
        "/deck/pieces/*/right",
        "/deck/pieces/*/lower",
        "/deck/pieces/*/upper",
        "/deck/least_panels",
        "/deck/end_joints",
        "/deck/end_joint_length",
        "/deck/long_joint_length",
        "/deck/nails",
        "/deck/clips",
        # The area of sheets as they lie, cut off at hips and valleys.
        "/ice_barrier/area_laid",
        "/underlayment/area_laid",
        "/underlayment/fastener_lines/*/left",
        "/underlayment/fastener_lines/*/right",
        "/underlayment/fastener_lines/*/lower",
        "/underlayment/fastener_lines/*/upper",
        # Offcuts are shared by a search, which proves its answer by weights of its own.
        "/cutting/limit",
        "/cutting/most_kept",
        "/cutting/cut/*/pieces/*/begins",
        "/cutting/cut/*/pieces/*/weight",
        # Metal is bought across runs by a search that proves itself; so are its pieces.
        "/metal_bought/*/least_metal",
        "/metal_bought/*/run_by_run",
        "/metal_bought/*/cuts/*/pieces/*/length",
    )
)

#: These have a formula wherever neither a valley, an opening nor a search decides.
SOMETIMES = frozenset(
    (
        "/ice_barrier/rows/*/pieces/*/left",
        "/ice_barrier/rows/*/pieces/*/length",
        "/underlayment/rows/*/pieces/*/left",
        "/underlayment/rows/*/pieces/*/length",
        "/cutting/least",
        # Past the ends of a valley where the deck would lie bare there.
        "/metal/*/past_foot",
        "/metal/*/over_top",
    )
)
