"""Rules on valleys: how they are laid, and how far from their middle nails stand."""

from __future__ import annotations

from roofing_core.ruling.rule import PRACTICE, Source, rule

VALLEY_LAP = rule(
    "valley.lap",
    "What lies bare in a valley, metal or shingles that run through, reaches at least {} further"
    " under the shingles beside it.",
    applies="Every valley; the metal of an open one where it shows widest, at the foot of the"
    " longest. The source is about open valleys, and reports that the shingle makers' association"
    " asks for {6 in}; that the limit holds in closed ones too is common practice.",
    at_least=4.0,
    severity="against_practice",
    sources=(
        Source(
            title="Professional Roofing, the roofing contractors' journal",
            edition="April 2008",
            place="metal of open valleys",
        ),
    ),
    cure="Use metal with {} or more on each side of the middle, or let the shingles run through by"
    " as much.",
)

VALLEY_NAILS = rule(
    "valley.nails",
    "No nail of a shingle stands nearer than {} to the middle of a valley.",
    applies="Every valley.",
    at_least=6.0,
    severity="against_practice",
    sources=(
        Source(
            title="the shingle makers' association", edition="", place="valleys",
            known="from_memory",
        ),
    ),
    cure="Keep nails {} or more from the middle.",
)  # fmt: skip

VALLEY_TOP = rule(
    "valley.top",
    "The metal and the lining of a valley go on at least {} past its top.",
    applies="Every valley.",
    at_least=2.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Cut them {} or more longer at the top, over the ridge or under the shingles there.",
)

CLOSED_FOOT = rule(
    "valley.closed_foot",
    "No closed valley begins elsewhere than between two eaves: at a pitch break, a wall or another"
    " valley what runs through comes from two sides, and leaves a corner bare.",
    applies="Closed valleys.",
    at_most=0.0,
    unit="count",
    severity="against_practice",
    sources=PRACTICE,
    cure="Lay the valleys open, over metal.",
)

RULES = (VALLEY_LAP, VALLEY_NAILS, VALLEY_TOP, CLOSED_FOOT)
"""All of them, in this order."""
