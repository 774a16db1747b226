"""Rules on shingles: starter, courses, joints, end pieces, caps and what is left over."""

from __future__ import annotations

from roofing_core.ruling.rule import PRACTICE, Source, rule

HEADLAP = rule(
    "shingles.headlap",
    "Each course reaches at least {} under the course two above it.",
    applies="Every course.",
    at_least=2.0,
    severity="stops_the_job",
    sources=(
        Source(title="Ontario Building Code", edition="", place="9.26.7 (50 mm)"),
    ),
    cure="Let less of each course show, so that {} or more is left.",
    checked="refusal",
)  # fmt: skip

STARTER_HEIGHT = rule(
    "starter.height",
    "The starter reaches at least {} up, under all of the first course that shows.",
    applies="Every eave. The limit is what shows of a course less how far it stands past the"
    " starter; as listed, that of the default materials.",
    at_least=5.375,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use a starter {} high or more.",
)

STARTER_OFFSET = rule(
    "starter.offset",
    "Joints of the starter stand at least {} from those of the first course.",
    applies="Every eave with joints. The limit is the clearance that the job asks for.",
    at_least=4.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Trim the first starter piece by {}.",
)

JOINT_CLEARANCE = rule(
    "joints.clearance",
    "Joints of neighbouring courses stand at least {} apart.",
    applies="Every plane with joints. The limit is the clearance that the job asks for.",
    at_least=4.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use another trim sequence.",
)

END_PIECE = rule(
    "pieces.end_piece",
    "No piece at a rake is narrower than {}.",
    applies="Courses that end at a rake. The limit is the width that the job asks for.",
    at_least=3.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Shift the trim sequence.",
)

CLOSING_COURSES = rule(
    "courses.closing",
    "At most {} course at the top has to be bedded and top-nailed.",
    applies="Every plane.",
    at_most=1.0,
    unit="count",
    severity="worth_knowing",
    sources=PRACTICE,
    cure="Expect more cement, and check that the metal or the caps cover all their nails.",
)

TOP_EXPOSURE = rule(
    "courses.top_exposure",
    "At least {} shows of the top course.",
    applies="Every plane.",
    at_least=1.0,
    severity="worth_knowing",
    sources=PRACTICE,
    cure="Leave the top course out where the ridge metal covers the top edge of the course below,"
    " or share the difference among the courses; check the slope length again first.",
)

CAP_HEADLAP = rule(
    "caps.headlap",
    "Each cap reaches at least {} under the cap two above it.",
    applies="Hips, and ridges that two planes share.",
    at_least=2.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Let {} or less of each cap show.",
)

CAP_COVER = rule(
    "caps.cover",
    "Caps reach at least {} past the nails of the closing courses, on both sides.",
    applies="Ridges that two planes share. The limit is the margin that the job asks for.",
    at_least=1.0,
    severity="against_practice",
    sources=PRACTICE,
    cure="Use caps {} wide or more.",
)

CAP_WIDTH_LAID = rule(
    "caps.width",
    "Caps are at least {} wide, laid flat.",
    applies="Hips, and ridges that two planes share.",
    at_least=300 * 10 / 254,
    severity="worth_knowing",
    sources=(Source(title="Ontario Building Code", edition="", place="9.26.9"),),
    cure="Use caps {} wide or wider.",
)

SPARE_SHINGLES = rule(
    "order.spare_shingles",
    "At least {} shingles are left over, for those that break and for repairs.",
    applies="Every order.",
    at_least=2.0,
    unit="count",
    severity="worth_knowing",
    sources=PRACTICE,
    cure="Buy one bundle more, or be ready to go back for one.",
)

RULES = (
    HEADLAP,
    STARTER_HEIGHT,
    STARTER_OFFSET,
    JOINT_CLEARANCE,
    END_PIECE,
    CLOSING_COURSES,
    TOP_EXPOSURE,
    CAP_HEADLAP,
    CAP_COVER,
    CAP_WIDTH_LAID,
    SPARE_SHINGLES,
)
"""All of these, from the eave up."""
