"""The catalogue: all nominal materials by kind, and each by its name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

from roofing_core.materials import nominal
from roofing_core.materials.edge_kinds import Cap, PipeFlashing, Sheet, StepFlashing
from roofing_core.materials.kinds import (
    CapNail,
    Metal,
    Nail,
    Panel,
    Roll,
    Sealant,
    Shingle,
    Starter,
    Tape,
)
from roofing_core.measures.faults import Refused, fault

#: A longer name is told shortened.
LONGEST_NAME = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """All materials of the catalogue, by kind.

    Attributes:
        shingles: Strip shingles.
        starters: Starter strips.
        rolls: Underlayment and ice barrier.
        metals: Metal for edges.
        nails: Nails by weight.
        cap_nails: Cap nails by count.
        sealants: Sealant and asphalt cement.
        panels: Deck panels.
        tapes: Tape for deck joints.
        caps: Caps for hips and ridges.
        step_flashings: Step flashing for walls and chimneys.
        pipe_flashings: Flashing for pipes.
        flashing_sheets: Flat metal to bend flashings from.
    """

    shingles: tuple[Shingle, ...]
    starters: tuple[Starter, ...]
    rolls: tuple[Roll, ...]
    metals: tuple[Metal, ...]
    nails: tuple[Nail, ...]
    cap_nails: tuple[CapNail, ...]
    sealants: tuple[Sealant, ...]
    panels: tuple[Panel, ...]
    tapes: tuple[Tape, ...]
    caps: tuple[Cap, ...]
    step_flashings: tuple[StepFlashing, ...]
    pipe_flashings: tuple[PipeFlashing, ...]
    flashing_sheets: tuple[Sheet, ...]


_CATALOGUE = Catalogue(
    shingles=(nominal.METRIC_STRIP, nominal.METRIC_THREE_TAB, nominal.INCH_THREE_TAB),
    starters=(nominal.SELF_MADE_STARTER, nominal.READY_MADE_STARTER),
    rolls=(
        nominal.FELT_15,
        nominal.FELT_30,
        nominal.SYNTHETIC,
        nominal.ICE_BARRIER,
        nominal.VALLEY_LINING,
    ),
    metals=(
        nominal.EAVE_METAL,
        nominal.RAKE_METAL,
        nominal.RIDGE_METAL,
        nominal.VALLEY_METAL,
        nominal.APRON_METAL,
        nominal.PITCH_BREAK_METAL,
    ),
    nails=(
        nominal.ROOFING_NAIL,
        nominal.SHORT_ROOFING_NAIL,
        nominal.LONG_ROOFING_NAIL,
        nominal.DECK_NAIL,
    ),
    cap_nails=(nominal.CAP_NAIL,),
    sealants=(nominal.CARTRIDGE, nominal.CEMENT_CAN),
    panels=(nominal.PLYWOOD, nominal.STRAND_BOARD, nominal.BOARDS),
    tapes=(nominal.JOINT_TAPE,),
    caps=(nominal.METRIC_CAP, nominal.INCH_CAP, nominal.READY_MADE_CAP),
    step_flashings=(nominal.STEP_FLASHING, nominal.INCH_STEP_FLASHING),
    pipe_flashings=(nominal.PIPE_FLASHING, nominal.LARGE_PIPE_FLASHING),
    flashing_sheets=(nominal.FLASHING_SHEET,),
)

_BY_KIND: Mapping[type, Mapping[str, object]] = MappingProxyType(
    {
        type(group[0]): MappingProxyType({material.name: material for material in group})
        for group in (getattr(_CATALOGUE, name) for name in Catalogue.__slots__)
    }
)

Material = TypeVar("Material")


def catalogue() -> Catalogue:
    """Give all nominal materials, each with every field that a caller may override.

    Returns:
        The materials by kind.

    Raises:
        Nothing.

    Source:
        Each size that a publication gives is named in `nominal`; the rest is nominal, from
        memory, and to be replaced by what is printed on the material.

    >>> [shingle.name for shingle in catalogue().shingles]
    ['metric_strip', 'metric_three_tab', 'inch_three_tab']
    """
    return _CATALOGUE


def names_of(kind: type) -> tuple[str, ...]:
    """Give the names of all catalogue materials of a kind, such as `Shingle`.

    Args:
        kind: A class of material.

    Returns:
        The names, as `material` takes them.

    Raises:
        Nothing: A kind that the catalogue does not hold has no names.

    Source:
        None: a list.

    >>> names_of(Sealant)
    ('sealant_cartridge', 'cement_can')
    """
    return tuple(_BY_KIND.get(kind, ()))


def material(kind: type[Material], name: str) -> Material:
    """Give the catalogue material of a kind by its name.

    Args:
        kind: A class of material, such as `Shingle`.
        name: Its name in the catalogue.

    Returns:
        The material; `dataclasses.replace` overrides any of its fields.

    Raises:
        Refused: No such material; names those there are.

    Source:
        None: a list.

    >>> material(Panel, "plywood").thickness
    0.46875
    """
    found = _BY_KIND.get(kind, {}).get(name)
    if not isinstance(found, kind):
        came = name if len(name) <= LONGEST_NAME else f"{name[:LONGEST_NAME]}..."
        came = came.encode("ascii", "backslashreplace").decode("ascii")
        raise Refused(fault("material", came, "one of ", ", ".join(names_of(kind))))
    return found
