"""The working of sealant and cement: beads, dabs, laps and bedding."""

from __future__ import annotations

from math import pi
from typing import Final

from roofing_core.layers.coursing.nailing import HAND_SEALING, hand_sealed
from roofing_core.workings.at import GEOMETRY, PACKS, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, added
from roofing_core.workings.of_nails import QUARTER_PI

#: The section of a bead by its size squared.
_SECTIONS: Final = {
    "round": QUARTER_PI,
    "half_round": Constant(pi / 8, "1", "an eighth of pi"),
    "square": Constant(1, "1", "of a square bead"),
    "fillet": Constant(0.5, "1", "of a fillet"),
}

_LEGS = Constant(2, "count", "legs of the ridge metal")


def _section(at: At) -> Expression:
    return _SECTIONS[at.plan.choices.sealing.bead_section] * (
        at.choice("sealing/bead_size").squared()
    )


def _beads(at: At) -> Expression:
    ridge = at.all(
        "sum",
        "metal/*/run_length",
        "the lengths of all runs of ridge metal",
        where=lambda run: run.edge == "ridge",
    )
    return _section(at) * (_LEGS * at.choice("sealing/beads_per_leg") * ridge)


def _dabs(at: At) -> Expression:
    """Give the dabs: one on every nail that nothing covers, and those of sealing by hand."""
    parts: list[Expression] = [
        at.all(
            "sum",
            "metal/*/nails",
            "the nails through ridge metal and metal at the foot of walls",
            where=lambda run: run.edge in ("ridge", "headwall"),
        ),
        at.all(
            "sum",
            "courses/*/nails",
            "the nails of closing courses",
            where=lambda course: not course.nailable,
        ),
        *at.each("caps/*/exposed_nails"),
        *at.each("openings/*/aprons/*/nails"),
        *(nails / 2 for nails in at.each("openings/*/pipes/*/nails")),
    ]
    steep = [plane.name for plane in at.plan.planes if hand_sealed(plane.pitch)]
    if steep:
        each = HAND_SEALING[at.plan.choices.shingle.kind]
        pieces = at.all(
            "sum",
            "courses/*/pieces",
            "the pieces of courses over 21:12",
            where=lambda course: course.plane in steep,
        )
        parts.append(pieces * Constant(each, "count", "dabs to seal a strip by hand"))
    return added(parts)


def _dabbed(at: At) -> Expression:
    dab = at.choice("sealing/dab_diameter").squared() * at.choice("sealing/dab_thickness")
    return _dabs(at) * (QUARTER_PI * dab)


def _laps(at: At) -> Expression:
    """Give the beads in laps of metal: across both legs, one in each lap."""
    across = [
        at.all("count", "laps/*", f"the laps of metal run {k + 1}", base=("metal", k))
        * (at("metal/*/deck_leg", k) + at("metal/*/face_leg", k))
        for k, run in enumerate(at.plan.metal)
        if run.laps
    ]
    return _section(at) * added(across)


def _gunned(at: At) -> Expression:
    return at.near("total_volume") - at.near("bedding_volume")


def _left(at: At, packs: str, kind: str, used: Expression) -> Expression:
    bought = at.near(packs) * at.choice(f"{kind}/volume")
    return Constant(0, "in3").greatest(bought - used)


def _total(at: At) -> Expression:
    parts = ("bead_volume", "dab_volume", "lap_volume", "bedding_volume")
    return added(at.near(part) for part in parts)


SEALANT: Table = under(
    "/sealant",
    table(
        "Geometry; two beads under each leg, a dab on each exposed nail and a bead in each lap are"
        " common practice, no published source.",
        bead_volume=_beads,
        dab_volume=_dabbed,
        lap_volume=_laps,
        bedding_volume=lambda at: (
            at("shingles/bedding_area") * at.choice("sealing/bedding_thickness")
        ),
    ),
    table(
        GEOMETRY,
        total_volume=_total,
        bead_reach=lambda at: at.choice("sealant/volume") / _section(at),
        spread=lambda at: at.choice("cement/volume") / at.choice("sealing/bedding_thickness"),
        cartridge_left=lambda at: _left(at, "cartridges", "sealant", _gunned(at)),
        can_left=lambda at: _left(at, "cans", "cement", at.near("bedding_volume")),
    ),
    table(
        PACKS,
        cartridges=lambda at: (_gunned(at) / at.choice("sealant/volume")).up(),
        cans=lambda at: (at.near("bedding_volume") / at.choice("cement/volume")).up(),
    ),
)
