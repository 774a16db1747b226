"""Questions: what is asked of a plan, each with its limit and where that is published.

The limits are those of water, not of good practice: how wide a margin the trade likes is for the
findings of a plan.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from types import MappingProxyType

from roofing_core.auditing.question import GEOMETRY, NAIL, PRACTICE, Question
from roofing_core.auditing.questions_of_covers import COVERS
from roofing_core.measures.faults import negative, refuse_if_any
from roofing_core.measures.units import Inches

#: Codes and manuals by the words that they are cited in elsewhere.
_SHEETS = "International Residential Code, 2018, Table R905.1.1(2)"
_METAL = "International Residential Code, 2018, R905.2.8.5"
_TWICE = "Ontario Building Code 9.26.7: two thicknesses over the whole roof"
_HEADLAP = "trade tables for strips of every size; Ontario Building Code 9.26.7 asks for 50 mm"


@dataclass(frozen=True, slots=True, kw_only=True)
class AuditLimits:
    """How much keeps water out.

    Attributes:
        headlap: How far each course reaches under the course two above it, and the last ones under
            what covers the top, at least.
        joint_clearance: From a joint to the nearest one in the course below, at least.
        nail_cover: From the middle of a nail to the edge of what covers it, at least.
        head_lap: Of a row of a sheet over the row below, at least.
        end_lap: Of two pieces of a row, at least.
        end_laps_apart: Between end laps of neighbouring rows, at least.
        over_ice_barrier: Of the underlayment over an ice barrier, at least.
        deck_leg: Of metal along an edge up the deck, at least.
        face_leg: Of metal along an edge of the roof down over it, at least.
        metal_lap: Of two pieces of metal, at least, and of an apron past a corner that other metal
            goes round.
        step_lap: Of two pieces of step flashing, at least.
        valley_lap: Of shingles over the metal of a valley or of a cricket, or over those that run
            through a closed valley, at least.
        lining: Of what lines a closed valley, from its middle to each side, at least.
        valley_nails: From the middle of a valley to the nearest nail of a shingle, at least.
        valley_top: Of the metal of a valley, and of its lining, on past its top, at least.
        wall_leg: Of metal beside or below a wall or an opening, out over the roof and up, at least.
        pipe_flange: Of the base of a pipe's flashing, round the pipe, at least.
    """

    headlap: Inches = 2.0
    joint_clearance: Inches = 4.0
    nail_cover: Inches = 3 / 16
    head_lap: Inches = 2.0
    end_lap: Inches = 4.0
    end_laps_apart: Inches = 72.0
    over_ice_barrier: Inches = 1000 / 254
    deck_leg: Inches = 2.0
    face_leg: Inches = 1 / 4
    metal_lap: Inches = 2.0
    step_lap: Inches = 2.0
    valley_lap: Inches = 4.0
    lining: Inches = 18.0
    valley_nails: Inches = 6.0
    valley_top: Inches = 2.0
    wall_leg: Inches = 4.0
    pipe_flange: Inches = 3.0

    def __post_init__(self) -> None:
        """Refuse limits that are negative or not finite."""
        refuse_if_any(negative(one.name, getattr(self, one.name)) for one in fields(self))


def _all(*questions: Question) -> Mapping[str, Question]:
    return MappingProxyType({question.code: question for question in questions})


QUESTIONS = _all(
    Question(
        code="shingles.layers",
        asks="Two layers of shingle lie over every point of the deck that nothing else covers.",
        finds="layers of shingle missing: {} of two",
        unit="count",
        source=_TWICE,
    ),
    Question(
        code="shingles.headlap",
        asks="Each course reaches at least {} under the course two above it, and the last ones"
        " under what covers the top.",
        finds="headlap {}",
        limit="headlap",
        source=_HEADLAP,
    ),
    Question(
        code="shingles.joints",
        asks="Each joint stands at least {} from the joints of the course below.",
        finds="joint {} from the nearest one below",
        limit="joint_clearance",
        source=PRACTICE,
    ),
    Question(
        code="shingles.nails_covered",
        asks="Each nail lies at least {} under the course above it, under metal or under caps.",
        finds="nail {} under what covers it",
        limit="nail_cover",
        source=NAIL,
    ),
    Question(
        code="shingles.nails_clear",
        asks="Each nail stands at least {} from the joints of the course that covers it.",
        finds="nail {} from a joint over it",
        limit="nail_cover",
        source=NAIL,
    ),
    Question(
        code="shingles.nails_hold",
        asks="Each nail goes through its own piece and into the deck.",
        finds="nail beside its piece, or beside the deck",
        unit="count",
        source=GEOMETRY,
    ),
    Question(
        code="shingles.nailed",
        asks="Each whole strip has four nails or more, and each cut piece over {8 in} wide two;"
        " beside a valley as many as stand clear of it.",
        finds="nails missing: {}",
        unit="count",
        source="International Residential Code, 2018, R905.2.6; two in a cut piece: trade press",
    ),
    Question(
        code="shingles.pitch",
        asks="Each plane under shingles is of a pitch of 2:12 or more.",
        finds="flatter than 2:12",
        unit="count",
        source="International Residential Code, 2018, R905.2.2",
    ),
    Question(
        code="shingles.side_by_side",
        asks="The pieces of a course or a starter lie side by side.",
        finds="{} on its neighbour",
        source=GEOMETRY,
    ),
    Question(
        code="shingles.order",
        asks="Each course is laid over the one below it: the next number, with a higher butt.",
        finds="out of its order",
        unit="count",
        source=GEOMETRY,
    ),
    Question(
        code="plan.as_stated",
        asks="Exposures, joints, laps and counts are stated as the pieces come to them.",
        finds="stated {} off what is laid",
        source=GEOMETRY,
    ),
    Question(
        code="plan.fits",
        asks="Each piece is no larger than what it is cut from.",
        finds="{} larger than what it is cut from",
        source=GEOMETRY,
    ),
    Question(
        code="plan.counted",
        asks="Pieces, rows and steps are numbered in their order, and the nails of metal counted.",
        finds="{} miscounted",
        unit="count",
        source=GEOMETRY,
    ),
    Question(
        code="underlayment.layers",
        asks="Every point of the deck lies under an ice barrier or the underlayment, below a pitch"
        " of 4:12 under two layers of it.",
        finds="layers of underlayment missing: {}",
        unit="count",
        source=_SHEETS,
    ),
    Question(
        code="underlayment.head_lap",
        asks="Each row laps the one below by at least {}.",
        finds="head lap {}",
        limit="head_lap",
        source=_SHEETS,
    ),
    Question(
        code="underlayment.over_ice_barrier",
        asks="The underlayment laps the ice barrier by at least {}.",
        finds="lap {}",
        limit="over_ice_barrier",
        source="Ontario Building Code 9.26.6: 100 mm",
    ),
    Question(
        code="underlayment.end_lap",
        asks="The pieces of a row lap each other by at least {}.",
        finds="end lap {}",
        limit="end_lap",
        source=_SHEETS,
    ),
    Question(
        code="underlayment.end_laps_apart",
        asks="End laps of neighbouring rows stand at least {} apart.",
        finds="end laps {} apart",
        limit="end_laps_apart",
        source=_SHEETS,
    ),
    Question(
        code="underlayment.order",
        asks="Rows are laid from the eave up, so that the upper one lies over the lower.",
        finds="under the one below it",
        unit="count",
        source=_SHEETS,
    ),
    Question(
        code="metal.spans",
        asks="Metal covers the whole of each edge that takes it, tabs and all.",
        finds="{} of the edge without metal",
        source=_METAL,
    ),
    Question(
        code="metal.lap",
        asks="Each piece of metal laps the next by at least {}.",
        finds="lap {}",
        limit="metal_lap",
        source=_METAL,
    ),
    Question(
        code="metal.deck_leg",
        asks="Metal along an edge reaches at least {} up the deck.",
        finds="leg of {} up the deck",
        limit="deck_leg",
        source=_METAL,
    ),
    Question(
        code="metal.face_leg",
        asks="Metal along an edge of the roof reaches at least {} down over it.",
        finds="leg of {} down over the edge",
        limit="face_leg",
        source=_METAL,
    ),
    Question(
        code="metal.downhill",
        asks="On rakes and in valleys the upper piece lies over the lower.",
        finds="laps that may face uphill",
        unit="count",
        source=PRACTICE,
    ),
    *COVERS,
    Question(
        code="layers.order",
        asks="Eave metal goes on before the underlayment, rake metal after it, then starter,"
        " courses, and what covers the top.",
        finds="out of its order",
        unit="count",
        source=_METAL,
    ),
    Question(
        code="sealing.dabs",
        asks="Every nail that no shingle covers has its dab, and so has every shingle that is"
        " sealed by hand.",
        finds="dabs missing: {}",
        unit="count",
        source=PRACTICE,
    ),
    Question(
        code="sealing.dab_size",
        asks="A dab reaches at least {} from the middle of its nail: over the whole head.",
        finds="{} from the middle of its nail",
        limit="nail_cover",
        source=NAIL,
    ),
    Question(
        code="sealing.bedding",
        asks="Every course that is nailed through what shows of it is bedded in cement.",
        finds="{} is not bedded",
        unit="in2",
        source=PRACTICE,
    ),
)
"""All questions by their code, in the order in which they are asked."""

#: Those in which nothing may lack tell no margin.
MEASURED = tuple(code for code, question in QUESTIONS.items() if question.limit)
