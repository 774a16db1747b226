"""Rules on nails: how many, how thick and how long, and what covers them."""

from __future__ import annotations

from roofing_core.ruling.rule import PRACTICE, Source, residential, rule

NAILS_PER_STRIP = rule(
    "nails.per_strip",
    "Every whole strip has at least {} nails, or as many more as are printed with it.",
    applies="Every plane.",
    at_least=4.0,
    unit="count",
    sources=residential("R905.2.6"),
    cure="Nail each strip with {} nails or more.",
)

PIECE_NAILS = rule(
    "pieces.nails",
    "Every piece has at least {} nails, on the deck and clear of valleys.",
    applies="Every piece wider than a scrap.",
    at_least=2.0,
    unit="count",
    severity="against_practice",
    sources=PRACTICE,
    cure="Start the courses of this plane with another trim sequence, or hold the joint next to the"
    " valley further back.",
)

BARE_NAIL = rule(
    "nails.bare",
    "A nail that no course covers stands within {} of a hip or ridge, under its caps.",
    applies="Pieces cut along hips and ridges. The limit is half the width of a cap; as listed, of"
    " one of {12 in}.",
    at_most=6.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use caps {} wide or more; or cut the piece from a longer part of the strip, or dab its"
    " nails.",
)

NAIL_SHANK = rule(
    "nails.shank",
    "The shank of a roofing nail is at least {} thick, which is 12 gauge.",
    applies="Nails of shingles and of metal.",
    at_least=0.105,
    sources=residential("R905.2.5"),
    cure="Use nails with a shank of {} or thicker: 12 gauge, or 11.",
)

NAIL_HEAD = rule(
    "nails.head",
    "The head of a roofing nail is at least {} wide.",
    applies="Nails of shingles and of metal.",
    at_least=0.375,
    sources=residential("R905.2.5"),
    cure="Use nails with a head of {} or wider.",
)

NAIL_LENGTH = rule(
    "nails.length",
    "A nail reaches through what lies on the deck and far enough into it, or through a thinner"
    " deck, with {} to spare or more.",
    applies="Every nail: {3/4 in} into the deck, or through it where it is thinner; a nail of the"
    " deck itself {1 1/2 in} into the rafter, from memory.",
    at_least=0.0,
    sources=residential("R905.2.5"),
    cure="Use nails of {} or longer.",
)

NAIL_POINT = rule(
    "nails.point",
    "A nail through a thin deck comes out below it by at least {}, so that the full shank holds.",
    applies="Where the deck is thinner than a nail is to reach into it.",
    at_least=0.125,
    severity="against_practice",
    sources=(
        Source(title="printed trade instructions", edition="", place="", known="restated"),
    ),
    cure="Use nails of {} or longer.",
)  # fmt: skip

RULES = (NAILS_PER_STRIP, PIECE_NAILS, BARE_NAIL, NAIL_SHANK, NAIL_HEAD, NAIL_LENGTH, NAIL_POINT)
"""All of these, how many first."""
