"""Figures of a plan that no formula gives. The lists may only grow shorter."""

from __future__ import annotations

#: Numbers that name a thing by its place and measure nothing, by their last name.
NUMBERS = frozenset(("number", "row", "roll", "panel", "valley", "course", "opening"))

#: The same, of entries: the length that each piece of metal is cut from.
NUMBERED = frozenset(("/metal/*/cut_from/*", "/metal_bought/*/offcuts/*/cut_from"))

#: Parts of a plan that tell where their numbers come from themselves: each finding names its rule.
TELL_THEMSELVES = ("findings", "cautions")

#: What a search decides, and proves by numbers that add up: the weights of a proof.
SEARCHED = frozenset(("/cutting/cut/*/pieces/*/weight",))

#: The same, where a search and nothing else decides: the limit of such a proof where offcuts are
#: used again, and where a run is parted whose lengths are shared with others, but for one piece.
SEARCHED_SOMETIMES = frozenset(
    (
        "/cutting/limit",
        "/metal_bought/*/least_metal",
        "/metal_bought/*/cuts/*/pieces/*/length",
    )
)
