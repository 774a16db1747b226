"""Cautions: what hurts people on such a job, chosen by the job, each with where it is published.

They never take the place of local rules, of printed instructions or of licensed practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt

from roofing_core.job.on_site import UNKNOWN_WORK, Working
from roofing_core.measures.counting import DUST
from roofing_core.measures.published import published, with_figures
from roofing_core.measures.sentences import Amount, Sentence, length, say
from roofing_core.measures.units import Inches, Pitch, Pounds

#: 29 CFR 1926.500(b): a steep roof is steeper than this.
STEEP_ROOF = 4 / 12

#: 29 CFR 1926.501(b): protection against falls from this height above a lower level on.
FALL_HEIGHT = published("6 ft")

#: 29 CFR 1926.451(f)(6), as restated by the state of Washington and in a letter of the federal
#: administration: scaffolds and what is handled on them stay clear of lines of up to 50 kV.
LINES_AWAY = published("10 ft")

#: 29 CFR 1926.1053(b), as restated: the foot of a ladder stands out by this part of its working
#: length, and its rails reach so far above the landing.
FOOT_OUT, RAILS_ABOVE = 1 / 4, published("3 ft")


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
LINES = "29 CFR 1926.451(f)(6), on scaffolds and what is handled on them, as restated"

WET = Caution(
    about="wet decks",
    says=say("Stay off a deck or underlayment that is wet, frosted or windswept."),
    source=PRACTICE,
)
SHARP = Caution(
    about="sharp edges",
    says=say("Wear gloves and eye protection to cut metal and to cut shingles with a knife."),
    source=PRACTICE,
)
RULES = Caution(
    about="rules and instructions",
    says=say(
        "Local code, the instructions printed on the materials, and the advice of those licensed to"
        " give it go before every number here."
    ),
    source="the limits of this calculation",
)
NAIL_GUNS = Caution(
    about="nail guns",
    says=say(
        "Use a full sequential trigger, keep your hand out of the line of the nail, and take the"
        " air hose or battery off to clear a jam."
    ),
    source="NIOSH publication 2011-202, as restated",
)
HEAT = Caution(
    about="heat",
    says=with_figures(
        "Drink a cup of water, {8 fl oz}, every 15 to 20 minutes in the heat, no more than six in"
        " an hour, and rest in the shade. Above {85 F} shingles are soft and mar where they are"
        " trodden on."
    ),
    source="OSHA, Water. Rest. Shade., as restated; a building-practice handbook for shingles",
)
COLD = Caution(
    about="cold",
    says=with_figures(
        "Keep warm and dry, take breaks in the warm, and clear ice and snow off ladder and roof"
        " before anyone goes up. Below {40 F} shingles are brittle; adhesive wants warmth to seal."
    ),
    source="OSHA, Winter Weather; a building-practice handbook for shingles",
)
HOT_ASPHALT = Caution(
    about="hot asphalt",
    says=say(
        "Hot asphalt burns through clothes: wear long sleeves, gloves and a face shield, carry it"
        " in lidded buckets half full, and never up a ladder by hand. Stay upwind of the kettle,"
        " keep its lid shut and its heat as low as will do, and a fire extinguisher by it."
    ),
    source="NIOSH publication 2003-107, on roofers' exposure to fumes, its abstract; on burns "
    + PRACTICE,
)


def cautions(
    pitch: Pitch, *, heaviest: Pounds, lifting_limit: Pounds, working: Working = UNKNOWN_WORK
) -> tuple[Caution, ...]:
    """Give the cautions for a job, chosen by its roof and by what is known of the work.

    What is said not to be there brings no caution; what is not known does.

    Args:
        pitch: Rise over run of the steepest slope.
        heaviest: Weight of the heaviest pack that is carried up.
        lifting_limit: What the lifting guideline lets one person lift at best.
        working: How the work goes on there.

    Returns:
        One entry per caution; those of this roof first.

    Raises:
        Nothing.

    Source:
        Each caution's own.

    >>> [caution.about for caution in cautions(5 / 12, heaviest=40, lifting_limit=51)][:2]
    ['steep roof', 'falls']
    >>> by_hand = Working(nail_gun="no", power_lines="no", alone="no", season="mild")
    >>> [one.about for one in cautions(0.25, heaviest=40, lifting_limit=51, working=by_hand)]
    ['falls', 'ladders', 'wet decks', 'sharp edges', 'rules and instructions']
    """
    return (
        *_of_the_slope(pitch),
        *_of_the_weight(heaviest, lifting_limit),
        _of_falls(pitch, working.eave_height),
        _of_ladders(working.eave_height),
        *_of_the_work(working),
        *_of_the_season(working),
        WET,
        *_of_being_alone(working),
        SHARP,
        RULES,
    )


def _of_the_slope(pitch: float) -> Iterator[Caution]:
    if pitch > STEEP_ROOF + DUST:
        says = say(
            "At ", Amount(pitch, "pitch"), " this is a steep roof: steeper than 4:12 asks for a"
            " guardrail with toeboards, a net, or a harness, whatever else you do."
        )  # fmt: skip
        yield Caution(about="steep roof", says=says, source="29 CFR 1926.500(b), 501(b)(11)")


def _of_the_weight(heaviest: float, lifting_limit: float) -> Iterator[Caution]:
    if heaviest > lifting_limit:
        says = say(
            "The heaviest pack weighs ",
            Amount(heaviest, "lb"),
            "; the lifting guideline stops at ",
            Amount(lifting_limit, "lb"),
            " for one person in the best of positions. Split it, share it or hoist it, and spread"
            " the packs over the roof.",
        )
        yield Caution(about="lifting", says=says, source="NIOSH publication 94-110")


def _of_falls(pitch: float, eave_height: Inches) -> Caution:
    """Tell of falls: by the height of the eave, where it is known."""
    protection = "use a guardrail, a net, or a harness on a sound anchor"
    steep = pitch > STEEP_ROOF + DUST
    if not eave_height:
        says = say(
            "A fall from a low roof can kill. At ", FALL_HEIGHT, " or more above a lower"
            f" level {protection}; on a lower roof wear it too if you can."
        )  # fmt: skip
    elif eave_height < FALL_HEIGHT.value - DUST:
        says = say(
            "The eave is ", length(eave_height), " up, but the top of the roof is higher, and a"
            " fall from a low roof can kill: from ", FALL_HEIGHT, f" above a lower level on"
            f" {protection}, below it wear one too if you can."
        )  # fmt: skip
    else:
        low = "" if steep else "; or a warning line with another measure"
        says = say(
            "The eave is ", length(eave_height), " up: ", FALL_HEIGHT, " or more above a"
            f" lower level asks for protection, all the time: {protection}{low}."
        )  # fmt: skip
    of_the_slope = "(11), on steep roofs" if steep else "(10), on low slopes"
    source = f"29 CFR 1926.501(b)(13), on homes, and (b){of_the_slope}, as restated"
    return Caution(about="falls", says=says, source=source)


def _of_ladders(eave_height: Inches) -> Caution:
    """Tell of ladders: how far out and how long, where the height of the eave is known."""
    told: list[object] = [
        "Set the foot of the ladder out by a quarter of its working length, on firm ground, and"
        " let the rails reach ", RAILS_ABOVE, " above the eave, tied so that they cannot slide.",
    ]  # fmt: skip
    if eave_height:
        working_length = eave_height / sqrt(1 - FOOT_OUT**2)
        rails = (eave_height + RAILS_ABOVE.value) / sqrt(1 - FOOT_OUT**2)
        told += [
            " To an eave ", length(eave_height), " up the foot stands ",
            length(working_length * FOOT_OUT), " out, and the rails are ", length(rails), " long or"
            " more.",
        ]  # fmt: skip
    source = "29 CFR 1926.1053(b)(1) and (5)(i), as restated"
    return Caution(about="ladders", says=say(*told), source=source)


def _of_the_work(working: Working) -> Iterator[Caution]:
    if working.power_lines == "yes":
        says = say(
            "Overhead lines are near: keep people, ladders, metal and hoists at least ",
            LINES_AWAY,
            " away, farther where a line carries over 50 kV, use no metal ladder, and have the"
            " owner of the line cover it, move it or switch it off before anything goes up.",
        )
        source = f"{LINES}; NIOSH publication 89-110 and 29 CFR 1926.1053(b)(12), as restated, for"
        yield Caution(about="overhead lines", says=says, source=f"{source} ladders")
    elif working.power_lines == "unknown":
        says = say(
            "Look for overhead lines before a ladder or a length of metal goes up, and keep at"
            " least ",
            LINES_AWAY,
            " away from them.",
        )
        yield Caution(about="overhead lines", says=says, source=LINES)
    if working.nail_gun != "no":
        yield NAIL_GUNS
    if working.hot_asphalt == "yes":
        yield HOT_ASPHALT


def _of_the_season(working: Working) -> Iterator[Caution]:
    if working.season in ("hot", "unknown"):
        yield HEAT
    if working.season in ("cold", "unknown"):
        yield COLD


def _of_being_alone(working: Working) -> Iterator[Caution]:
    if working.alone == "yes":
        says = say(
            "Nobody is there to see you fall or to get you down from a harness, in which hanging"
            " for minutes can kill. Do not work alone above a fall; if you must, keep a phone on"
            " you, and have someone who knows where you are and calls at set times."
        )
        source = (
            "29 CFR 1926.502(d)(20) on prompt rescue, and an OSHA bulletin of 2004 on hanging in a"
            " harness, both as restated; the rest common practice"
        )
        yield Caution(about="working alone", says=says, source=source)
    elif working.alone == "unknown":
        says = say("Tell someone where you are and when you will be down; keep a phone on you.")
        yield Caution(about="working alone", says=says, source=PRACTICE)
