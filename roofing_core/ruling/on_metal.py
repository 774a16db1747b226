"""Rules on metal: edges, valleys, walls, the top of a roof, and what goes round openings."""

from __future__ import annotations

from roofing_core.ruling.rule import PRACTICE, Source, residential, rule

#: Edge metal: read in the edition of 2018, quoted by others for 2015 and 2021.
_EDGES = residential("R905.2.8.5", restated=("2015", "2021"))

METAL_LAP = rule(
    "metal.lap",
    "Each length of edge metal laps the next by at least {}.",
    applies="Eaves and rakes whose metal is of more than one length.",
    at_least=2.0,
    sources=_EDGES,
    cure="Lap the lengths by {} or more, upper over lower on a rake.",
)

METAL_NAIL_SPACING = rule(
    "metal.nail_spacing",
    "Edge metal is fastened at most {} apart.",
    applies="Eaves and rakes.",
    at_most=12.0,
    sources=_EDGES,
    cure="Nail it {} apart or closer.",
)

METAL_DECK_LEG = rule(
    "metal.deck_leg",
    "Edge metal reaches at least {} up the deck.",
    applies="Eaves and rakes.",
    at_least=2.0,
    sources=_EDGES,
    cure="Use metal with a leg of {} or more on the deck.",
)

METAL_BELOW_DECK = rule(
    "metal.below_deck",
    "Edge metal reaches at least {} below the deck.",
    applies="Eaves and rakes.",
    at_least=0.25,
    sources=_EDGES,
    cure="Use metal with a leg of {} or more over the edge.",
)

METAL_ORDER = rule(
    "metal.order",
    "No edge has its metal on the wrong side of the underlayment: it lies under it at eaves, over"
    " it at rakes.",
    applies="Eaves and rakes.",
    at_most=0.0,
    unit="count",
    sources=_EDGES,
    cure="Lay eave metal, underlayment and rake metal in this order, as the plan does.",
    checked="audit",
)

FLASHING_LAP = rule(
    "flashing.lap",
    "Each length of metal along a ridge or valley, or at the foot of a wall or of another slope,"
    " laps the next by at least {}.",
    applies="Where that metal is of more than one length.",
    at_least=2.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Lap the lengths by {} or more, in a valley upper over lower.",
)

FLASHING_NAIL_SPACING = rule(
    "flashing.nail_spacing",
    "Metal along a ridge or valley, or at the foot of a wall or of another slope, is fastened at"
    " most {} apart.",
    applies="Ridge metal, valley metal, aprons and metal at pitch breaks.",
    at_most=12.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Nail it {} apart or closer.",
)

VALLEY_WIDTH = rule(
    "metal.valley_width",
    "The metal of an open valley is at least {} wide.",
    applies="Open valleys.",
    at_least=24.0,
    sources=residential("R905.2.8.2"),
    cure="Use metal with {} or more on each side of the middle.",
)

WALL_LEG = rule(
    "metal.wall_leg",
    "Metal at a wall reaches at least {} out over the roof and up the wall.",
    applies="Step flashing and the metal at the foot of walls.",
    at_least=4.0,
    sources=residential("R905.2.8.3"),
    cure="Use metal with legs of {} or more.",
)

FLASHING_THICKNESS = rule(
    "flashing.thickness",
    "Metal for flashings at walls and openings is at least {} thick.",
    applies="Step flashing, aprons, head flashings and crickets.",
    at_least=0.019,
    sources=residential("R905.2.8.1"),
    cure="Use metal {} thick or thicker.",
)

STEP_LAP = rule(
    "flashing.step_lap",
    "Each piece of step flashing laps the one below it by at least {}.",
    applies="Beside walls, chimneys and skylights.",
    at_least=2.0,
    severity="against_practice",
    sources=(Source(title="a residential trade journal", edition="", place="field guide"),),
    cure="Use step flashing {} long or longer: what shows of a course, and the lap.",
)

CRICKET = rule(
    "flashing.cricket",
    "A chimney without a cricket is at most {} wide.",
    applies="Chimneys.",
    at_most=30.0,
    sources=residential("R903.2.2", read=(), restated=("2018",)),
    cure="Build a cricket on its upper side.",
)

RIDGE_METAL_COVER = rule(
    "metal.ridge_cover",
    "The ridge metal reaches at least {} past the nails of the closing courses.",
    applies="Top edges under ridge metal. The limit is the margin that the job asks for.",
    at_least=1.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use ridge metal with a leg of {} or more on the roof.",
)

FOOT_METAL_COVER = rule(
    "metal.foot_cover",
    "The metal at the foot of a wall or of a flatter slope reaches at least {} past the nails of"
    " the closing courses below it.",
    applies="Planes that end at a wall or a pitch break. The limit is the margin that the job asks"
    " for.",
    at_least=1.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use metal with a leg of {} or more on the roof.",
)

RIDGE_METAL_BEADS = rule(
    "metal.ridge_beads",
    "At least {} beads of sealant lie under each leg of the ridge metal.",
    applies="Top edges under ridge metal.",
    at_least=2.0,
    unit="count",
    severity="against_practice",
    sources=PRACTICE,
    cure="Lay {} beads or more under each leg.",
)

RULES = (
    METAL_LAP,
    METAL_NAIL_SPACING,
    METAL_DECK_LEG,
    METAL_BELOW_DECK,
    METAL_ORDER,
    FLASHING_LAP,
    FLASHING_NAIL_SPACING,
    VALLEY_WIDTH,
    WALL_LEG,
    FLASHING_THICKNESS,
    STEP_LAP,
    CRICKET,
    RIDGE_METAL_COVER,
    FOOT_METAL_COVER,
    RIDGE_METAL_BEADS,
)
"""All of these, the edges first."""
