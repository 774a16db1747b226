"""Cautions: what hurts people on such a job, chosen by the job, each with where it is published.

They never take the place of local rules, of printed instructions or of licensed practice.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import Amount, Sentence, say
from roofing_core.measures.units import Pitch, Pounds

#: 29 CFR 1926.500(b): a steep roof is steeper than this.
STEEP_ROOF = 4 / 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution.

    Attributes:
        about: What can go wrong, in a word or two.
        says: What to do about it.
        source: Where it is published, or that it is common practice.
    """

    about: str
    says: Sentence
    source: str


PRACTICE = "common practice, no published source"

_ALWAYS = (
    Caution(
        about="falls",
        says=say(
            "A fall from a low roof can kill. At 6 ft or more above a lower level use a guardrail,"
            " a net, or a harness on a sound anchor; on a lower roof wear it too if you can."
        ),
        source="29 CFR 1926.501(b)",
    ),
    Caution(
        about="ladders",
        says=say(
            "Set the foot of the ladder out by a quarter of its working length, on firm ground, and"
            " let the rails reach 3 ft above the eave, tied so that they cannot slide."
        ),
        source="29 CFR 1926.1053(b)",
    ),
    Caution(
        about="overhead lines",
        says=say(
            "Look for overhead lines before a ladder or a length of metal goes up, and keep at"
            " least 10 ft away from them."
        ),
        source="29 CFR 1926.1408, from memory",
    ),
    Caution(
        about="nail guns",
        says=say(
            "Use a full sequential trigger, keep your hand out of the line of the nail, and take"
            " the air hose or battery off to clear a jam."
        ),
        source="NIOSH publication 2011-202, from memory",
    ),
    Caution(
        about="heat",
        says=say(
            "Drink a cup of water every 15 to 20 minutes in the heat and rest in the shade. Between"
            " 40 and 85 F shingles are fit to work: brittle below, soft above."
        ),
        source="a federal heat guide, from memory; a building-practice handbook for shingles",
    ),
    Caution(
        about="wet decks",
        says=say("Stay off a deck or underlayment that is wet, frosted or windswept."),
        source=PRACTICE,
    ),
    Caution(
        about="working alone",
        says=say("Tell someone where you are and when you will be down; keep a phone on you."),
        source=PRACTICE,
    ),
    Caution(
        about="sharp edges",
        says=say("Wear gloves and eye protection to cut metal and to cut shingles with a knife."),
        source=PRACTICE,
    ),
    Caution(
        about="rules and instructions",
        says=say(
            "Local code, the instructions printed on the materials, and the advice of those"
            " licensed to give it go before every number here."
        ),
        source="the limits of this calculation",
    ),
)


def cautions(pitch: Pitch, *, heaviest: Pounds, lifting_limit: Pounds) -> tuple[Caution, ...]:
    """Give the cautions for a job.

    Args:
        pitch: Rise over run of the steepest slope.
        heaviest: Weight of the heaviest pack that is carried up.
        lifting_limit: What the lifting guideline lets one person lift at best.

    Returns:
        One entry per caution; those of this roof first.

    Raises:
        Nothing.

    Source:
        Each caution's own.

    >>> [caution.about for caution in cautions(5 / 12, heaviest=40, lifting_limit=51)][:2]
    ['steep roof', 'falls']
    """
    steep = say(
        "At ", Amount(pitch, "pitch"), " this is a steep roof: steeper than 4:12 asks for a"
        " guardrail with toeboards, a net, or a harness, whatever else you do."
    )  # fmt: skip
    lifting = say(
        "The heaviest pack weighs ",
        Amount(heaviest, "lb"),
        "; the lifting guideline stops at ",
        Amount(lifting_limit, "lb"),
        " for one person in the best of positions. Split it, share it or hoist it, and spread the"
        " packs over the roof.",
    )
    return (
        *(
            [Caution(about="steep roof", says=steep, source="29 CFR 1926.500(b), 501(b)(11)")]
            if pitch > STEEP_ROOF + DUST
            else []
        ),
        *(
            [Caution(about="lifting", says=lifting, source="NIOSH publication 94-110")]
            if heaviest > lifting_limit
            else []
        ),
        *_ALWAYS,
    )
