"""Choices that no layer looks at by itself, or too late to be told with the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from types import MappingProxyType
from typing import get_args, get_type_hints

from roofing_core.job.choices import NAME, NOTES, Choices, Cutting, Job
from roofing_core.job.cutting import TABS
from roofing_core.job.on_site import Loading, Venting, Wind, Working, site_faults
from roofing_core.materials.edge_kinds import Cap
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import (
    Fault,
    fault,
    negative,
    not_one_of,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length
from roofing_core.ruling.listing import edition_fault

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
            *_cutting_faults(choices),
            edition_fault("code_edition", choices.code_edition),
            *site_faults(choices.wind, choices.venting, choices.loading, choices.working),
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
    if is_dataclass(way.default)
    and not hasattr(way.default, "name")
    and not isinstance(way.default, Wind | Venting | Loading | Working)
)


_WORDS = MappingProxyType({name: get_args(hint) for name, hint in get_type_hints(Cutting).items()})


def _cutting_faults(choices: Choices) -> Iterator[Fault | None]:
    how = choices.cutting
    for name, words in _WORDS.items():
        yield not_one_of(f"cutting.{name}", getattr(how, name), words)
    if how.caps_from == "field_shingles":
        wanted = _no_caps(choices)
        yield fault("cutting.caps_from", how.caps_from, *wanted) if wanted else None


def _no_caps(choices: Choices) -> tuple[object, ...]:
    """Say why the shingles of the field give no such caps; nothing where they do.

    Laminated shingles are not bent over a ridge: common practice, no published source.
    """
    shingle, cap = choices.shingle, choices.cap
    if cap.made != "self_made":
        return ("own_bundles, or self-made caps: ready-made ones come in packs",)
    if shingle.kind != "three_tab":
        return ("own_bundles, or three-tab shingles: laminated ones are not bent over a ridge",)
    tab = shingle.length / TABS[shingle.kind]
    if cap.from_shingle == TABS[shingle.kind] and not _larger(cap, tab, shingle.height):
        return ()
    return (
        f"own_bundles, or {TABS[shingle.kind]} caps from a shingle, each at most ",
        length(tab),
        " wide and ",
        length(shingle.height),
        " long",
    )


def _larger(cap: Cap, wide: float, long: float) -> bool:
    return cap.width > wide * (1 + DUST) or cap.length > long * (1 + DUST)


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
