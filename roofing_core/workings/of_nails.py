"""The working of nails: how many for each use, what they weigh, how long they have to be."""

from __future__ import annotations

from collections.abc import Callable
from math import pi

from roofing_core.job.edges import METALS
from roofing_core.job.nails import DECK_INTO_RAFTER
from roofing_core.layers.fasteners import PAST_DECK, STEEL
from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, added
from roofing_core.workings.names import words

QUARTER_PI = Constant(pi / 4, "1", "a quarter of pi")
_STEEL = Constant(STEEL, "lb/in3", "density of steel")


def _use(at: At) -> str:
    return str(at.thing().use)


def _of_metal(at: At) -> Expression:
    metal = _use(at).replace(" ", "_")
    return at.all(
        "sum",
        "metal/*/nails",
        f"the nails of all runs of {words(metal)}",
        where=lambda run: METALS[run.edge] == metal,
    )


def _of_flashings(at: At) -> Expression:
    kinds = ("aprons", "heads", "pipes")
    steps = at.each("step_flashings/*/nails")
    bent = [nails for kind in kinds for nails in at.each(f"openings/*/{kind}/*/nails")]
    return added((*steps, *bent))


def _count(at: At) -> Expression:
    use = _use(at)
    if use.endswith("metal"):
        return _of_metal(at)
    if use == "flashings":
        return _of_flashings(at)
    if use in ("deck", "underlayment", "shingles"):
        field = "fasteners" if use == "underlayment" else "nails"
        return at(f"{use}/{field}")
    place, name = ("starters", "starters") if use == "starter" else ("caps", "lines of caps")
    return at.all("sum", f"{place}/*/nails", f"the nails of all {name}")


def _nail(at: At) -> str:
    use = _use(at)
    if use in ("deck", "underlayment"):
        return "deck_nail" if use == "deck" else "cap_nail"
    return "metal_nail" if use.endswith("metal") or use == "flashings" else "shingle_nail"


def _weight(at: At) -> Expression:
    nail = _nail(at)
    if nail == "cap_nail":
        return at.near("nails") * at.choice("cap_nail/box_weight") / at.choice("cap_nail/per_box")
    shank, long, head, thick = (
        at.choice(f"{nail}/{field}") for field in ("shank", "length", "head", "head_thickness")
    )
    steel = QUARTER_PI * (shank.squared() * long + head.squared() * thick)
    return at.near("nails") * (steel * _STEEL)


def _sheets(at: At) -> Expression:
    """Give how thick all sheets are together, where they are thickest."""
    plan = at.plan
    parts: list[Expression] = [at("underlayment/layers") * at.choice("underlayment/thickness")]
    if plan.ice_barrier.rows:
        parts.append(at.choice("ice_barrier/thickness"))
    if plan.valley_lining.pieces:
        parts.append(at.choice("valley_lining/thickness"))
    return added(parts)


def _through(at: At) -> Expression:
    use, sheets, shingle = _use(at), _sheets(at), at.choice("shingle/thickness")
    lapped: dict[str, Callable[[], Expression]] = {
        "deck": lambda: at.choice("panel/thickness"),
        "underlayment": lambda: sheets,
        "flashings": lambda: sheets + 2 * shingle + 2 * _thickest(at),
        "caps": lambda: sheets + 4 * shingle,
    }
    if use in lapped:
        return lapped[use]()
    if use.endswith("metal"):
        return _through_metal(at, use, sheets)
    return sheets + at.choice("rake_metal/thickness") + 2 * shingle


def _through_metal(at: At, use: str, sheets: Expression) -> Expression:
    metal = 2 * at.choice(f"{use.replace(' ', '_')}/thickness")
    if use == "eave metal":
        return metal
    if use in ("valley metal", "rake metal"):
        return sheets + metal
    return sheets + 2 * at.choice("shingle/thickness") + metal


def _thickest(at: At) -> Expression:
    return at.choice("flashing_sheet/thickness").greatest(at.choice("step_flashing/thickness"))


def _least_length(at: At) -> Expression:
    if _use(at) == "deck":
        return at.near("through") + Constant(DECK_INTO_RAFTER, "in", "into the rafter")
    deck, into = at.choice("panel/thickness"), at.choice("nailing/deck_penetration")
    if deck.value < into.value:
        return at.near("through") + deck + Constant(PAST_DECK, "in", "past a thinner deck")
    return at.near("through") + into


NAILS: Table = under(
    "/nails/*",
    table(COUNTED, nails=_count),
    table(
        "From the nail's size and the density of steel; counts by weight are good to about 15 %.",
        weight=_weight,
    ),
    table(GEOMETRY, through=_through),
    table(
        "IRC R905.2.5, 2018; how far a deck nail goes into the rafter is from memory.",
        least_length=_least_length,
    ),
    table("The nail chosen.", nail_length=lambda at: at.choice(f"{_nail(at)}/length")),
)
