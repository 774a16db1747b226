"""The catalogue: nominal materials without brands, to start from.

Where a size comes from a publication it is named here; everything else in the catalogue (what a
bundle or box holds, weights, thicknesses, the legs of metal) is nominal, from memory, and is to be
replaced by what is printed on the material that was bought.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

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

FEET = 12.0

#: A longer name is told shortened.
LONGEST_NAME = 40

#: 13 1/4 x 39 3/8 in at 5 5/8 in: trade tables. 21 in a bundle cover 32 ft2 (Canadian housing
#: handbook's 3 m2 a bundle). The four trims are common practice, no published source.
METRIC_STRIP = Shingle(
    name="metric_strip",
    kind="laminated",
    length=39.375,
    height=13.25,
    exposure=5.625,
    nail_zone_low=6.125,
    nail_zone_high=7.125,
    sequence=(0.0, 6.0, 11.0, 17.0),
    thickness=0.125,
    per_bundle=21,
    bundle_weight=65.0,
)

METRIC_THREE_TAB = Shingle(
    name="metric_three_tab",
    kind="three_tab",
    length=39.375,
    height=13.25,
    exposure=5.625,
    nail_zone_low=6.125,
    nail_zone_high=7.125,
    sequence=(0.0, 6.5, 13.0, 19.5, 26.0, 32.5),
    thickness=0.09375,
    per_bundle=21,
    bundle_weight=60.0,
)

#: 12 x 36 in at 5 in and 27 in a bundle: Navy Builder manual (NAVEDTRA 14044) ch. 3. Six trims by
#: 6 in: a trade journal's field guide.
INCH_THREE_TAB = Shingle(
    name="inch_three_tab",
    kind="three_tab",
    length=36.0,
    height=12.0,
    exposure=5.0,
    nail_zone_low=5.625,
    nail_zone_high=6.625,
    sequence=(0.0, 6.0, 12.0, 18.0, 24.0, 30.0),
    thickness=0.09375,
    per_bundle=27,
    bundle_weight=67.0,
)

#: One from each shingle, 4 in off the first: common practice, no published source.
SELF_MADE_STARTER = Starter(
    name="self_made_starter",
    made="self_made",
    length=39.375,
    height=7.625,
    trim=4.0,
    per_pack=1,
    pack_weight=0.0,
)

READY_MADE_STARTER = Starter(
    name="ready_made_starter",
    made="ready_made",
    length=39.375,
    height=7.625,
    trim=4.0,
    per_pack=30,
    pack_weight=40.0,
)

#: 36 in by 144 ft and by 72 ft: the felt rolls of the handbooks, 432 and 216 ft2.
FELT_15 = Roll(name="felt_15", width=36.0, length=144 * FEET, thickness=0.03125, weight=45.0)
FELT_30 = Roll(name="felt_30", width=36.0, length=72 * FEET, thickness=0.0625, weight=45.0)
SYNTHETIC = Roll(name="synthetic", width=48.0, length=250 * FEET, thickness=0.015625, weight=28.0)
ICE_BARRIER = Roll(
    name="ice_barrier", width=36.0, length=66 * FEET + 8, thickness=0.04, weight=55.0
)

#: 10 ft is the usual stock length. The legs meet the residential code's least sizes (2 in on the
#: deck); the ridge metal's leg covers the nails of a closing course.
EAVE_METAL = Metal(
    name="eave_metal",
    deck_leg=2.5,
    face_leg=2.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.32,
)
RAKE_METAL = Metal(
    name="rake_metal",
    deck_leg=2.5,
    face_leg=2.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.32,
)
RIDGE_METAL = Metal(
    name="ridge_metal",
    deck_leg=6.0,
    face_leg=3.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.6,
)

#: 11 gauge, 7/16 in head: the roofing nail of the handbooks' tables. 12 gauge is the code's least.
ROOFING_NAIL = Nail(
    name="roofing_nail",
    length=1.25,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
SHORT_ROOFING_NAIL = Nail(
    name="short_roofing_nail",
    length=0.875,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
LONG_ROOFING_NAIL = Nail(
    name="long_roofing_nail",
    length=1.75,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
DECK_NAIL = Nail(
    name="deck_nail", length=2.5, shank=0.131, head=0.281, head_thickness=0.05, box_weight=5.0
)
CAP_NAIL = CapNail(name="cap_nail", length=1.0, cap=1.0, per_box=1000, box_weight=6.0)

#: 10.1 fl oz is 18.23 in3; a US gallon is 231 in3.
CARTRIDGE = Sealant(
    name="sealant_cartridge", pack="cartridge", volume=10.1 * 231 / 128, pack_weight=1.0
)
CEMENT_CAN = Sealant(name="cement_can", pack="can", volume=231.0, pack_weight=11.0)

#: 4 x 8 ft: the trade's panel. 15/32 in is the 32/16 span rating's thickness, from memory.
PLYWOOD = Panel(name="plywood", length=96.0, width=48.0, thickness=0.46875, weight=46.0)
STRAND_BOARD = Panel(name="strand_board", length=96.0, width=48.0, thickness=0.4375, weight=46.0)
BOARDS = Panel(name="boards", length=96.0, width=48.0, thickness=0.75, weight=70.0)

#: 4 in wide or more over panel joints: building code 1507.1.1 and the federal fact sheet 7.2.
JOINT_TAPE = Tape(name="joint_tape", width=4.0, length=75 * FEET, weight=3.0)


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


_CATALOGUE = Catalogue(
    shingles=(METRIC_STRIP, METRIC_THREE_TAB, INCH_THREE_TAB),
    starters=(SELF_MADE_STARTER, READY_MADE_STARTER),
    rolls=(FELT_15, FELT_30, SYNTHETIC, ICE_BARRIER),
    metals=(EAVE_METAL, RAKE_METAL, RIDGE_METAL),
    nails=(ROOFING_NAIL, SHORT_ROOFING_NAIL, LONG_ROOFING_NAIL, DECK_NAIL),
    cap_nails=(CAP_NAIL,),
    sealants=(CARTRIDGE, CEMENT_CAN),
    panels=(PLYWOOD, STRAND_BOARD, BOARDS),
    tapes=(JOINT_TAPE,),
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
        Each size that a publication gives is named in the module; the rest is nominal, from
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
