"""Choices that no layer looks at by itself, or too late to be told with the rest."""

from __future__ import annotations

from roofing_core.job.choices import Choices
from roofing_core.measures.faults import Fault, fault, negative, not_positive, refuse_if_any
from roofing_core.measures.sentences import length

#: More beads than this do not lie under one leg of the ridge metal.
MOST_BEADS = 4


def check(choices: Choices) -> None:
    """Refuse choices that cannot be, by the caller's names and all at once.

    Args:
        choices: The materials, and how the work is done.

    Raises:
        Refused: A width, depth or count is negative, not finite or too large; names each.

    Source:
        Half a shingle is the most that two joints of a course and one between can be apart:
        geometry. The other limits are those of this library.

    >>> check(Choices())
    """
    coursing, metalwork, sealing = choices.coursing, choices.metalwork, choices.sealing
    refuse_if_any(
        [
            _clearance_fault(coursing.minimum_clearance, choices.shingle.length),
            negative("coursing.minimum_end_piece", coursing.minimum_end_piece),
            negative("metalwork.ridge_proud", metalwork.ridge_proud),
            negative("metalwork.nail_cover", metalwork.nail_cover),
            not_positive("nailing.deck_penetration", choices.nailing.deck_penetration),
            _beads_fault(sealing.beads_per_leg),
            not_positive("sealing.bead_size", sealing.bead_size),
            not_positive("sealing.dab_diameter", sealing.dab_diameter),
            not_positive("sealing.dab_thickness", sealing.dab_thickness),
            not_positive("sealing.bedding_thickness", sealing.bedding_thickness),
        ]
    )


def _clearance_fault(clearance: float, shingle_length: float) -> Fault | None:
    at = "coursing.minimum_clearance"
    if 0 < clearance <= shingle_length / 2:
        return None
    most = length(shingle_length / 2)
    return not_positive(at, clearance) or fault(
        at, length(clearance), "at most half a shingle, ", most
    )


def _beads_fault(beads: int) -> Fault | None:
    if 0 <= beads <= MOST_BEADS:
        return None
    return fault("sealing.beads_per_leg", str(beads), f"0 to {MOST_BEADS}")
