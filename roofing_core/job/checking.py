"""Choices that no layer looks at by itself, or too late to be told with the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from roofing_core.job.choices import NAME, NOTES, Choices, Job
from roofing_core.layers.underlaying.ice_reach import STEEP_REACH
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
    sealing = choices.sealing
    refuse_if_any(
        [
            _clearance_fault(choices.coursing.minimum_clearance, choices.shingle.length),
            not_positive("nailing.deck_penetration", choices.nailing.deck_penetration),
            _beads_fault(sealing.beads_per_leg),
            not_positive("sealing.bead_size", sealing.bead_size),
            not_positive("sealing.dab_diameter", sealing.dab_diameter),
            not_positive("sealing.dab_thickness", sealing.dab_thickness),
            not_positive("sealing.bedding_thickness", sealing.bedding_thickness),
            _edition_fault(choices.underlaying.code_edition),
            *(negative(at, value) for at, value in _lengths(choices)),
        ]
    )


def check_wording(job: Job) -> None:
    """Refuse a name or notes that are too long, or that have control characters in them.

    Args:
        job: The job, of which nothing else is looked at.

    Raises:
        Refused: One or both; names each.

    Source:
        The limits are those of this library.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> check_wording(Job(roof=roof, name="Tool store", notes="Key under the pot.\\nMind the dog."))
    """
    refuse_if_any([NAME.fault("name", job.name), NOTES.fault("notes", job.notes)])


def _lengths(choices: Choices) -> Iterator[tuple[str, float]]:
    """Give every length among the ways of working, also those that this job does not use."""
    for group, names in _WAYS:
        way = getattr(choices, group)
        for name in names:
            yield f"{group}.{name}", getattr(way, name)


_WAYS = tuple(
    (way.name, tuple(one.name for one in fields(way.default) if isinstance(one.default, float)))
    for way in fields(Choices)
    if is_dataclass(way.default) and not hasattr(way.default, "name")
)


def _edition_fault(edition: str) -> Fault | None:
    if edition in STEEP_REACH:
        return None
    return fault("underlaying.code_edition", edition, "one of ", ", ".join(STEEP_REACH))


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
