"""The nails of a job: how many for each use, of which kind, how long they have to be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.job.capping import CapRun
from roofing_core.job.choices import Choices
from roofing_core.job.edges import METALS, EdgeRun
from roofing_core.job.flashing import OpeningFlashed, StepRun
from roofing_core.job.shingles import ShinglesLaid
from roofing_core.layers.coursing.starters import LaidStarter
from roofing_core.layers.fasteners import least_nail_length, nails_per_pound
from roofing_core.materials.kinds import CapNail, Nail
from roofing_core.measures.units import Inches, Pounds

NailUse = Literal[
    "deck",
    "eave metal",
    "valley metal",
    "underlayment",
    "rake metal",
    "pitch break metal",
    "apron metal",
    "flashings",
    "starter",
    "shingles",
    "ridge metal",
    "caps",
]

#: From memory: a nail of 8d, 2 1/2 in, goes into the rafter by 1 1/2 in or more.
DECK_INTO_RAFTER = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class NailsFor:
    """The nails for one use.

    Attributes:
        use: What they fasten.
        nail: The nail, by its name.
        nails: How many.
        weight: Of them, as computed from their size; counts by weight are good to about 15 %.
        through: What a nail passes through above the deck, at its thickest.
        least_length: The length that holds through that in this deck.
        nail_length: The length that the nail has.
    """

    use: NailUse
    nail: str
    nails: int
    weight: Pounds
    through: Inches
    least_length: Inches
    nail_length: Inches


def count_nails(
    choices: Choices,
    *,
    sheets: Inches,
    cap_nails: int,
    deck_nails: int,
    metal: tuple[EdgeRun, ...],
    starters: tuple[LaidStarter, ...],
    shingles: ShinglesLaid,
    caps: tuple[CapRun, ...] = (),
    steps: tuple[StepRun, ...] = (),
    openings: tuple[OpeningFlashed, ...] = (),
) -> tuple[NailsFor, ...]:
    """Count the nails for each use and give the length that each use needs.

    A shingle nail passes through two shingles, the underlayment and, along a rake, the metal there;
    a nail of the ridge metal through two shingles, the underlayment and, in a lap, the metal twice.

    Args:
        choices: The materials, and how the work is done.
        sheets: Thickness of all underlayment and ice barrier, where it is thickest.
        cap_nails: Cap nails in the underlayment.
        deck_nails: Nails in the deck; 0 where it is not part of the job.
        metal: The runs of metal.
        starters: The starters.
        shingles: What the courses come to.
        caps: The caps of hips and ridges.
        steps: The step flashing.
        openings: The openings with their flashings.

    Returns:
        One entry per use, in the order of work.

    Raises:
        Refused: A size of a nail cannot be.

    Source:
        Nail length: IRC R905.2.5, 2018. What a nail passes through is geometry: its zone lies over
        the top of the course below.

    >>> from roofing_core.job.shingles import lay_shingles
    >>> from roofing_core.job.edges import lay_metal
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> site = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> starters, _, shingles = lay_shingles(site)
    >>> uses = count_nails(site.choices, sheets=0.0625, cap_nails=161, deck_nails=0,
    ...                    metal=lay_metal(site), starters=starters, shingles=shingles)
    >>> [(use.use, use.nails) for use in uses if use.use in ("starter", "shingles")]
    [('starter', 17), ('shingles', 345)]
    """
    shingle, covered = 2 * choices.shingle.thickness, sheets + choices.rake_metal.thickness
    metal_nail, shingle_nail = choices.metal_nail, choices.shingle_nail

    def of_metal(use: NailUse, under: float) -> tuple[NailUse, Nail, int, float]:
        """Count the nails of one metal, in a lap through it twice."""
        name = use.replace(" ", "_")
        lapped = 2 * getattr(choices, name).thickness
        nails = sum(run.nails for run in metal if METALS[run.edge] == name)
        return use, metal_nail, nails, under + lapped

    uses: tuple[tuple[NailUse, Nail | CapNail, int, float], ...] = (
        of_metal("eave metal", 0.0),
        of_metal("valley metal", sheets),
        ("underlayment", choices.cap_nail, cap_nails, sheets),
        of_metal("rake metal", sheets),
        of_metal("pitch break metal", sheets + shingle),
        of_metal("apron metal", sheets + shingle),
        (
            "flashings",
            metal_nail,
            sum(run.nails for run in steps) + sum(one.nails() for one in openings),
            sheets
            + shingle
            + 2 * max(choices.flashing_sheet.thickness, choices.step_flashing.thickness),
        ),
        ("starter", shingle_nail, sum(one.nails for one in starters), covered + shingle),
        ("shingles", shingle_nail, shingles.nails, covered + shingle),
        of_metal("ridge metal", sheets + shingle),
        # Two shingles of the courses lie under a cap, and the cap below it.
        ("caps", shingle_nail, sum(run.nails for run in caps), sheets + 2 * shingle),
    )
    return (
        _deck_nails(choices, deck_nails),
        *(_nails(*use, choices) for use in uses),
    )


def _deck_nails(choices: Choices, count: int) -> NailsFor:
    nail, deck = choices.deck_nail, choices.panel.thickness
    return NailsFor(
        use="deck",
        nail=nail.name,
        nails=count,
        weight=count * _weight(nail),
        through=deck,
        least_length=deck + DECK_INTO_RAFTER,
        nail_length=nail.length,
    )


def _nails(
    use: NailUse, nail: Nail | CapNail, count: int, through: float, choices: Choices
) -> NailsFor:
    return NailsFor(
        use=use,
        nail=nail.name,
        nails=count,
        weight=count * _weight(nail),
        through=through,
        least_length=least_nail_length(
            through,
            deck_thickness=choices.panel.thickness,
            into_deck=choices.nailing.deck_penetration,
        ),
        nail_length=nail.length,
    )


def _weight(nail: Nail | CapNail) -> float:
    """Give the weight of one nail: of a cap nail by the box, of another by its size."""
    if isinstance(nail, CapNail):
        return nail.box_weight / nail.per_box
    to_the_pound = nails_per_pound(
        nail.length,
        shank=nail.shank,
        head_diameter=nail.head,
        head_thickness=nail.head_thickness,
    )
    return 1 / to_the_pound
