"""Rules as data: what each asks, its limit, where it is published, and what cures a breach.

Limits never hide in an ``if``. Local code, and the instructions printed on a material, go before
every rule here.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from roofing_core.job.rule import PRACTICE, Rule, Source, residential, rule

SHINGLE_PITCH = rule(
    "shingles.least_pitch",
    "Asphalt shingles lie on a pitch of {} or steeper.",
    at_least=2 / 12,
    unit="pitch",
    severity="stops_the_job",
    source=residential("R905.2.2"),
    cure="Use a covering made for low slopes, or a steeper roof.",
)

SINGLE_UNDERLAYMENT_PITCH = rule(
    "underlayment.single_layer_pitch",
    "Below a pitch of {} the underlayment is laid in two layers.",
    at_least=4 / 12,
    unit="pitch",
    severity="worth_knowing",
    source=residential("R905.1.1"),
    cure="The plan lays two layers everywhere; order and lap them as listed.",
)

STEEP_PITCH = rule(
    "shingles.steep_pitch",
    "Above a pitch of {} strips get six nails and are sealed by hand.",
    at_most=21 / 12,
    unit="pitch",
    severity="worth_knowing",
    source=residential("R905.2.6"),
    cure="The plan has six nails a strip and the dabs; follow the instructions on the shingle.",
)

HEAD_LAP = rule(
    "underlayment.head_lap",
    "Each row of underlayment laps the one below by at least {}.",
    at_least=2.0,
    source=residential("Table R905.1.1(2)"),
    cure="Lap the rows more.",
)

END_LAP = rule(
    "underlayment.end_lap",
    "End laps of underlayment are at least {} long.",
    at_least=4.0,
    source=residential("Table R905.1.1(2)"),
    cure="Lap the ends more.",
)

END_LAP_STAGGER = rule(
    "underlayment.end_lap_stagger",
    "End laps of neighbouring rows stand at least {} apart.",
    at_least=72.0,
    source=residential("Table R905.1.1(2)"),
    cure="Cut the rows so that their end laps stand further apart.",
)

METAL_LAP = rule(
    "metal.lap",
    "Each length of edge metal laps the next by at least {}.",
    at_least=2.0,
    source=residential("R905.2.8.5"),
    cure="Lap the lengths more, upper over lower on a rake.",
)

METAL_NAIL_SPACING = rule(
    "metal.nail_spacing",
    "Edge metal is fastened at most {} apart.",
    at_most=12.0,
    source=residential("R905.2.8.5"),
    cure="Nail it closer.",
)

METAL_DECK_LEG = rule(
    "metal.deck_leg",
    "Edge metal reaches at least {} up the deck.",
    at_least=2.0,
    source=residential("R905.2.8.5"),
    cure="Use metal with a wider leg on the deck.",
)

METAL_BELOW_DECK = rule(
    "metal.below_deck",
    "Edge metal reaches at least {} below the deck.",
    at_least=0.25,
    source=residential("R905.2.8.5"),
    cure="Use metal with a longer leg over the edge.",
)

VALLEY_WIDTH = rule(
    "metal.valley_width",
    "The metal of an open valley is at least {} wide.",
    at_least=24.0,
    source=residential("R905.2.8.2"),
    cure="Use wider metal.",
)

WALL_LEG = rule(
    "metal.wall_leg",
    "Metal at a wall reaches at least {} out over the roof and up the wall.",
    at_least=4.0,
    source=residential("R905.2.8.3"),
    cure="Use metal with wider legs.",
)

RIDGE_METAL_COVER = rule(
    "metal.ridge_cover",
    "The ridge metal reaches at least {} past the nails of the closing courses.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use ridge metal with a wider leg on the roof.",
)

STEP_LAP = rule(
    "flashing.step_lap",
    "Each piece of step flashing laps the one below it by at least {}.",
    at_least=2.0,
    severity="against_practice",
    source=Source(title="a residential trade journal", edition="", place="field guide"),
    cure="Use step flashing as long as what shows of a course and 2 in.",
)

CRICKET = rule(
    "flashing.cricket",
    "A chimney without a cricket is at most {} wide.",
    at_most=30.0,
    source=residential("R903.2.2"),
    cure="Build a cricket on its upper side.",
)

FOOT_METAL_COVER = rule(
    "metal.foot_cover",
    "The metal at the foot of a wall or of a flatter slope reaches at least {} past the nails of"
    " the closing courses below it.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use metal with a wider leg on the roof.",
)

CAP_HEADLAP = rule(
    "caps.headlap",
    "Each cap reaches at least {} under the cap two above it.",
    at_least=2.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Let less of each cap show.",
)

CAP_COVER = rule(
    "caps.cover",
    "Caps reach at least {} past the nails of the closing courses, on both sides.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use wider caps.",
)

CAP_WIDTH_LAID = rule(
    "caps.width",
    "Caps are at least {} wide, laid flat.",
    at_least=300 * 10 / 254,
    severity="worth_knowing",
    source=Source(title="Ontario Building Code", edition="", place="9.26.9"),
    cure="Use wider caps.",
)

BARE_NAIL = rule(
    "nails.bare",
    "A nail that no course covers stands within {} of a hip or ridge, under its caps.",
    at_most=6.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Cut the piece from a longer part of the strip, or dab its nails.",
)

NAIL_SHANK = rule(
    "nails.shank",
    "The shank of a roofing nail is at least {} thick, which is 12 gauge.",
    at_least=0.105,
    source=residential("R905.2.5"),
    cure="Use nails of 12 gauge or thicker.",
)

NAIL_HEAD = rule(
    "nails.head",
    "The head of a roofing nail is at least {} wide.",
    at_least=0.375,
    source=residential("R905.2.5"),
    cure="Use nails with a wider head.",
)

NAIL_LENGTH = rule(
    "nails.length",
    "A nail reaches through what lies on the deck and far enough into it, or through a thinner"
    " deck, with {} to spare or more.",
    at_least=0.0,
    source=residential("R905.2.5"),
    cure="Use longer nails.",
)

CAP_WIDTH = rule(
    "nails.cap",
    "The cap of a cap nail is at least {} across.",
    at_least=1.0,
    source=Source(title="International Building Code", edition="2018", place="Table 1507.1.1(3)"),
    cure="Use nails with a wider cap.",
)

TAPE_WIDTH = rule(
    "deck.tape",
    "Tape over the joints of the deck is at least {} wide.",
    at_least=4.0,
    source=Source(title="International Building Code", edition="2018", place="1507.1.1"),
    cure="Use wider tape.",
)

JOINT_CLEARANCE = rule(
    "joints.clearance",
    "Joints of neighbouring courses, and of the starter, stand at least {} apart.",
    at_least=4.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use another trim sequence.",
)

END_PIECE = rule(
    "pieces.end_piece",
    "No piece at a rake is narrower than {}.",
    at_least=3.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Shift the trim sequence.",
)

PIECE_NAILS = rule(
    "pieces.nails",
    "Every piece has at least {} nails, on the deck and clear of valleys.",
    at_least=2.0,
    unit="count",
    severity="against_practice",
    source=PRACTICE,
    cure="Start the courses of this plane with another trim sequence, or hold the joint next to the"
    " valley further back.",
)

STARTER_HEIGHT = rule(
    "starter.height",
    "The starter reaches at least {} up, under all of the first course that shows.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use a higher starter.",
)

CLOSING_COURSES = rule(
    "courses.closing",
    "At most {} course at the top has to be bedded and top-nailed.",
    at_most=1.0,
    unit="count",
    severity="worth_knowing",
    source=PRACTICE,
    cure="Expect more cement, and check that the ridge metal covers all their nails.",
)

TOP_EXPOSURE = rule(
    "courses.top_exposure",
    "At least {} shows of the top course.",
    at_least=1.0,
    severity="worth_knowing",
    source=PRACTICE,
    cure="Leave the top course out where the ridge metal covers the top edge of the course below,"
    " or share the difference among the courses; check the slope length again first.",
)

SPARE_SHINGLES = rule(
    "order.spare_shingles",
    "At least {} shingles are left over, for those that break and for repairs.",
    at_least=2.0,
    unit="count",
    severity="worth_knowing",
    source=PRACTICE,
    cure="Buy one bundle more, or be ready to go back for one.",
)

RULES: Mapping[str, Rule] = MappingProxyType(
    {
        one.id: one
        for one in (
            SHINGLE_PITCH,
            SINGLE_UNDERLAYMENT_PITCH,
            STEEP_PITCH,
            HEAD_LAP,
            END_LAP,
            END_LAP_STAGGER,
            METAL_LAP,
            METAL_NAIL_SPACING,
            METAL_DECK_LEG,
            METAL_BELOW_DECK,
            VALLEY_WIDTH,
            WALL_LEG,
            RIDGE_METAL_COVER,
            STEP_LAP,
            CRICKET,
            FOOT_METAL_COVER,
            CAP_HEADLAP,
            CAP_COVER,
            CAP_WIDTH_LAID,
            BARE_NAIL,
            NAIL_SHANK,
            NAIL_HEAD,
            NAIL_LENGTH,
            CAP_WIDTH,
            TAPE_WIDTH,
            STARTER_HEIGHT,
            JOINT_CLEARANCE,
            END_PIECE,
            PIECE_NAILS,
            CLOSING_COURSES,
            TOP_EXPOSURE,
            SPARE_SHINGLES,
        )
    }
)
"""All rules by their id, the roof first."""
