"""Rules as data: what each asks, its limit, where it is published, and what cures a breach.

Limits never hide in an ``if``. Local code, and the instructions printed on a material, go before
every rule here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.sentences import Amount

Severity = Literal["stops_the_job", "breaks_code", "against_practice", "worth_knowing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a rule is published.

    Attributes:
        title: The publication, or ``common practice``.
        edition: Its edition, empty for practice.
        place: The section in it, or ``no published source``.
    """

    title: str
    edition: str
    place: str

    def text(self) -> str:
        """Write the source as people cite it."""
        return ", ".join(part for part in (self.title, self.edition, self.place) if part)


PRACTICE = Source(title="common practice", edition="", place="no published source")


def _residential(place: str) -> Source:
    return Source(title="International Residential Code", edition="2018", place=place)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One thing that is asked of a roof, with its limit.

    Attributes:
        id: Stable code, the layer first.
        asks: What it asks, in our words; the limit goes where the braces are.
        bound: Whether the limit is the least or the most.
        limit: The limit, in the unit inside.
        unit: Its unit.
        severity: How bad a breach is.
        source: Where it is published.
        cure: What puts it right.
    """

    id: str
    asks: str
    bound: Literal["at_least", "at_most"]
    limit: float
    unit: str
    severity: Severity
    source: Source
    cure: str

    def asks_with(self, limit: Amount) -> tuple[str | Amount, ...]:
        """Give what it asks with a limit in its place: the parts of a sentence."""
        before, _, after = self.asks.partition("{}")
        return (before, limit, after)

    def kept_by(self, value: float) -> bool:
        """Tell whether a value keeps the rule, forgiving float dust."""
        dust = 1e-9 * max(1.0, abs(self.limit))
        if self.bound == "at_least":
            return value >= self.limit - dust
        return value <= self.limit + dust


def _rule(
    rule_id: str,
    asks: str,
    *,
    at_least: float | None = None,
    at_most: float | None = None,
    unit: str = "in",
    severity: Severity = "breaks_code",
    source: Source,
    cure: str,
) -> Rule:
    bound: Literal["at_least", "at_most"] = "at_least" if at_most is None else "at_most"
    return Rule(
        id=rule_id,
        asks=asks,
        bound=bound,
        limit=at_least or at_most or 0.0,
        unit=unit,
        severity=severity,
        source=source,
        cure=cure,
    )


SHINGLE_PITCH = _rule(
    "shingles.least_pitch",
    "Asphalt shingles lie on a pitch of {} or steeper.",
    at_least=2 / 12,
    unit="pitch",
    severity="stops_the_job",
    source=_residential("R905.2.2"),
    cure="Use a covering made for low slopes, or a steeper roof.",
)

SINGLE_UNDERLAYMENT_PITCH = _rule(
    "underlayment.single_layer_pitch",
    "Below a pitch of {} the underlayment is laid in two layers.",
    at_least=4 / 12,
    unit="pitch",
    severity="worth_knowing",
    source=_residential("R905.1.1"),
    cure="The plan lays two layers everywhere; order and lap them as listed.",
)

STEEP_PITCH = _rule(
    "shingles.steep_pitch",
    "Above a pitch of {} strips get six nails and are sealed by hand.",
    at_most=21 / 12,
    unit="pitch",
    severity="worth_knowing",
    source=_residential("R905.2.6"),
    cure="The plan has six nails a strip and the dabs; follow the instructions on the shingle.",
)

HEAD_LAP = _rule(
    "underlayment.head_lap",
    "Each row of underlayment laps the one below by at least {}.",
    at_least=2.0,
    source=_residential("Table R905.1.1(2)"),
    cure="Lap the rows more.",
)

END_LAP = _rule(
    "underlayment.end_lap",
    "End laps of underlayment are at least {} long.",
    at_least=4.0,
    source=_residential("Table R905.1.1(2)"),
    cure="Lap the ends more.",
)

END_LAP_STAGGER = _rule(
    "underlayment.end_lap_stagger",
    "End laps of neighbouring rows stand at least {} apart.",
    at_least=72.0,
    source=_residential("Table R905.1.1(2)"),
    cure="Cut the rows so that their end laps stand further apart.",
)

METAL_LAP = _rule(
    "metal.lap",
    "Each length of edge metal laps the next by at least {}.",
    at_least=2.0,
    source=_residential("R905.2.8.5"),
    cure="Lap the lengths more, upper over lower on a rake.",
)

METAL_NAIL_SPACING = _rule(
    "metal.nail_spacing",
    "Edge metal is fastened at most {} apart.",
    at_most=12.0,
    source=_residential("R905.2.8.5"),
    cure="Nail it closer.",
)

METAL_DECK_LEG = _rule(
    "metal.deck_leg",
    "Edge metal reaches at least {} up the deck.",
    at_least=2.0,
    source=_residential("R905.2.8.5"),
    cure="Use metal with a wider leg on the deck.",
)

METAL_BELOW_DECK = _rule(
    "metal.below_deck",
    "Edge metal reaches at least {} below the deck.",
    at_least=0.25,
    source=_residential("R905.2.8.5"),
    cure="Use metal with a longer leg over the edge.",
)

VALLEY_WIDTH = _rule(
    "metal.valley_width",
    "The metal of an open valley is at least {} wide.",
    at_least=24.0,
    source=_residential("R905.2.8.2"),
    cure="Use wider metal.",
)

WALL_LEG = _rule(
    "metal.wall_leg",
    "Metal at a wall reaches at least {} out over the roof and up the wall.",
    at_least=4.0,
    source=_residential("R905.2.8.3"),
    cure="Use metal with wider legs.",
)

RIDGE_METAL_COVER = _rule(
    "metal.ridge_cover",
    "The ridge metal reaches at least {} past the nails of the closing courses.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use ridge metal with a wider leg on the roof.",
)

FOOT_METAL_COVER = _rule(
    "metal.foot_cover",
    "The metal at the foot of a wall or of a flatter slope reaches at least {} past the nails of"
    " the closing courses below it.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use metal with a wider leg on the roof.",
)

CAP_HEADLAP = _rule(
    "caps.headlap",
    "Each cap reaches at least {} under the cap two above it.",
    at_least=2.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Let less of each cap show.",
)

CAP_COVER = _rule(
    "caps.cover",
    "Caps reach at least {} past the nails of the closing courses, on both sides.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use wider caps.",
)

CAP_WIDTH_LAID = _rule(
    "caps.width",
    "Caps are at least {} wide, laid flat.",
    at_least=300 * 10 / 254,
    severity="worth_knowing",
    source=Source(title="Ontario Building Code", edition="", place="9.26.9"),
    cure="Use wider caps.",
)

BARE_NAIL = _rule(
    "nails.bare",
    "A nail that no course covers stands within {} of a hip or ridge, under its caps.",
    at_most=6.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Cut the piece from a longer part of the strip, or dab its nails.",
)

NAIL_SHANK = _rule(
    "nails.shank",
    "The shank of a roofing nail is at least {} thick, which is 12 gauge.",
    at_least=0.105,
    source=_residential("R905.2.5"),
    cure="Use nails of 12 gauge or thicker.",
)

NAIL_HEAD = _rule(
    "nails.head",
    "The head of a roofing nail is at least {} wide.",
    at_least=0.375,
    source=_residential("R905.2.5"),
    cure="Use nails with a wider head.",
)

NAIL_LENGTH = _rule(
    "nails.length",
    "A nail reaches through what lies on the deck and far enough into it, or through a thinner"
    " deck, with {} to spare or more.",
    at_least=0.0,
    source=_residential("R905.2.5"),
    cure="Use longer nails.",
)

CAP_WIDTH = _rule(
    "nails.cap",
    "The cap of a cap nail is at least {} across.",
    at_least=1.0,
    source=Source(title="International Building Code", edition="2018", place="Table 1507.1.1(3)"),
    cure="Use nails with a wider cap.",
)

TAPE_WIDTH = _rule(
    "deck.tape",
    "Tape over the joints of the deck is at least {} wide.",
    at_least=4.0,
    source=Source(title="International Building Code", edition="2018", place="1507.1.1"),
    cure="Use wider tape.",
)

JOINT_CLEARANCE = _rule(
    "joints.clearance",
    "Joints of neighbouring courses, and of the starter, stand at least {} apart.",
    at_least=4.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use another trim sequence.",
)

END_PIECE = _rule(
    "pieces.end_piece",
    "No piece at a rake is narrower than {}.",
    at_least=3.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Shift the trim sequence.",
)

PIECE_NAILS = _rule(
    "pieces.nails",
    "Every piece has at least {} nails, on the deck and clear of valleys.",
    at_least=2.0,
    unit="count",
    severity="against_practice",
    source=PRACTICE,
    cure="Start the courses of this plane with another trim sequence, or hold the joint next to the"
    " valley further back.",
)

STARTER_HEIGHT = _rule(
    "starter.height",
    "The starter reaches at least {} up, under all of the first course that shows.",
    at_least=0.0,
    severity="against_practice",
    source=PRACTICE,
    cure="Use a higher starter.",
)

CLOSING_COURSES = _rule(
    "courses.closing",
    "At most {} course at the top has to be bedded and top-nailed.",
    at_most=1.0,
    unit="count",
    severity="worth_knowing",
    source=PRACTICE,
    cure="Expect more cement, and check that the ridge metal covers all their nails.",
)

TOP_EXPOSURE = _rule(
    "courses.top_exposure",
    "At least {} shows of the top course.",
    at_least=1.0,
    severity="worth_knowing",
    source=PRACTICE,
    cure="Leave the top course out where the ridge metal covers the top edge of the course below,"
    " or share the difference among the courses; check the slope length again first.",
)

SPARE_SHINGLES = _rule(
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
        rule.id: rule
        for rule in (
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
