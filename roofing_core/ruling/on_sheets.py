"""Rules on the deck and on what is rolled out over it: underlayment, ice barrier, valley lining."""

from __future__ import annotations

from roofing_core.ruling.rule import Source, residential, rule

#: The table of underlayment's application is known by those who quote it.
_TABLE = residential("Table R905.1.1(2)", read=(), restated=("2018",))

#: Those who quote the ice barrier's section give it for each of these editions.
_ICE = residential("R905.1.2", read=(), restated=("2015", "2018", "2021", "2024"))

_NAILING_TABLE = residential("Table R602.3(1)")

DECK_SUPPORTS = rule(
    "deck.support_spacing",
    "The supports of a panel deck stand at most {} apart.",
    applies="A deck that is part of the job, of panels of {7/16 in} or more.",
    at_most=24.0,
    sources=residential("Table R503.2.1.1(1)", read=(), restated=("2018",)),
    cure="Set the rafters {} apart or closer, or have thicker panels chosen by their span rating.",
)

DECK_THICKNESS = rule(
    "deck.thickness",
    "The panels of a deck are at least {} thick.",
    applies="A deck that is part of the job.",
    at_least=0.4375,
    severity="against_practice",
    sources=(Source(title="Alberta roofing trade standard", edition="", place="new work"),),
    cure="Use panels of {} or thicker.",
)

DECK_EDGE_NAILS = rule(
    "deck.edge_spacing",
    "Panels of a deck are nailed at most {} apart along their supported edges.",
    applies="A deck that is part of the job.",
    at_most=6.0,
    sources=_NAILING_TABLE,
    cure="Nail the edges {} apart or closer.",
)

DECK_FIELD_NAILS = rule(
    "deck.field_spacing",
    "Panels of a deck are nailed at most {} apart along the supports between their edges.",
    applies="A deck that is part of the job.",
    at_most=12.0,
    sources=_NAILING_TABLE,
    cure="Nail along these supports {} apart or closer.",
)

TAPE_WIDTH = rule(
    "deck.tape",
    "Tape over the joints of the deck is at least {} wide.",
    applies="A deck that is part of the job.",
    at_least=4.0,
    sources=(Source(title="International Building Code", edition="2018", place="1507.1.1"),),
    cure="Use tape {} wide or wider.",
)

HEAD_LAP = rule(
    "underlayment.head_lap",
    "Each row of underlayment laps the one below by at least {}.",
    applies="Underlayment in one layer, on planes of 4:12 and steeper.",
    at_least=2.0,
    sources=_TABLE,
    cure="Lap the rows by {} or more.",
)

END_LAP = rule(
    "underlayment.end_lap",
    "End laps of underlayment are at least {} long.",
    applies="Where one roll goes on from another within a row.",
    at_least=4.0,
    sources=_TABLE,
    cure="Lap the ends by {} or more.",
)

END_LAP_STAGGER = rule(
    "underlayment.end_lap_stagger",
    "End laps of neighbouring rows stand at least {} apart.",
    applies="Where one roll goes on from another within a row.",
    at_least=72.0,
    sources=_TABLE,
    cure="Cut the rows so that their end laps stand {} apart or more.",
)

ICE_INSIDE_WALL = rule(
    "ice_barrier.inside_wall",
    "An ice barrier reaches from the eave to at least {} inside the exterior wall line, level.",
    applies="Where the area has a history of ice along the eaves: the local authority says so. A"
    " detached building without heated floor area is exempt, as restated.",
    at_least=24.0,
    sources=_ICE,
    cure="Let it reach {} inside the wall line or farther.",
)

ICE_STEEP_REACH = rule(
    "ice_barrier.steep_reach",
    "From a pitch of 8:12 on an ice barrier reaches at least {} up the slope as well.",
    applies="Where an ice barrier is laid on planes of 8:12 and steeper.",
    at_least=36.0,
    severity="worth_knowing",
    sources=tuple(one for one in _ICE if one.edition != "2024"),
    cure="The plan's barrier reaches {} up the slope or farther, whatever the wall line asks.",
)

OVER_ICE_BARRIER = rule(
    "ice_barrier.lap",
    "The underlayment laps over the ice barrier by at least {}.",
    applies="Where an ice barrier is laid.",
    at_least=100 * 10 / 254,
    severity="worth_knowing",
    sources=(Source(title="Ontario Building Code", edition="", place="9.26.6"),),
    cure="Lap the first row of underlayment over it by {} or more.",
)

VALLEY_LINING_WIDTH = rule(
    "valley.lining_width",
    "The lining of a closed valley is at least {} wide.",
    applies="Closed valleys, lined with one ply of smooth roll roofing.",
    at_least=36.0,
    sources=residential("R905.2.8.2"),
    cure="Use lining {} wide or wider.",
)

CAP_WIDTH = rule(
    "nails.cap",
    "The cap of a cap nail is at least {} across.",
    applies="Underlayment fastened with cap nails.",
    at_least=1.0,
    sources=(
        Source(title="International Building Code", edition="2018", place="Table 1507.1.1(3)"),
    ),
    cure="Use nails with a cap {} across or wider.",
)

RULES = (
    DECK_SUPPORTS,
    DECK_THICKNESS,
    DECK_EDGE_NAILS,
    DECK_FIELD_NAILS,
    TAPE_WIDTH,
    HEAD_LAP,
    END_LAP,
    END_LAP_STAGGER,
    ICE_INSIDE_WALL,
    ICE_STEEP_REACH,
    OVER_ICE_BARRIER,
    VALLEY_LINING_WIDTH,
    CAP_WIDTH,
)
"""All of these, the deck first."""
