"""The edge metal of a job: which runs there are, and what each is cut from."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Literal

from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.metal import MetalRun, metal_run
from roofing_core.measures.units import Inches, Pounds

RunName = Literal["eave", "left_rake", "right_rake", "ridge"]


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRun(MetalRun):
    """One run of metal on an edge of the roof, cut and nailed.

    Attributes:
        edge: The edge it lies on.
        material: The metal it is cut from.
        deck_leg: The leg on the deck.
        face_leg: The leg over the edge.
        weight: Of the pieces as they lie.
    """

    edge: RunName
    material: str
    deck_leg: Inches
    face_leg: Inches
    weight: Pounds


def _run(metal: str, length: str, *, tab: bool = False, spacing: str) -> Wired[MetalRun]:
    wired = {
        "run_length": length,
        "stock_length": f"{metal}.stock_lengths",
        "lap": "metalwork.lap",
        "nail_spacing": f"metalwork.{spacing}",
        "end_distance": "metalwork.end_distance",
        "least_piece": "metalwork.least_piece",
    }
    return Wired(metal_run, **wired, **({"tab": "metalwork.eave_tab"} if tab else {}))


_EAVE = _run("eave_metal", "roof.eave_length", tab=True, spacing="nail_spacing")
_RAKE = _run("rake_metal", "roof.slope_length", spacing="nail_spacing")
_RIDGE = _run("ridge_metal", "roof.eave_length", spacing="ridge_nail_spacing")

_RUN = tuple(field.name for field in fields(MetalRun))


def lay_metal(site: Site) -> tuple[EdgeRun, ...]:
    """Cut and nail the metal of every edge, in the order in which it goes on.

    The eave's first, with a tab bent round each corner; the rakes', the eave's length up the
    slope; the ridge's last, a little proud of both rakes.

    Args:
        site: The roof with its choices.

    Returns:
        Four runs: eave, left rake, right rake, ridge.

    Raises:
        Refused: A length of stock, lap, tab or spacing cannot be; names the caller's fields.
        TooManyPieces: A run would take more pieces or nails than the limit.

    Source:
        The layers' own; how the edges go over each other is common practice, no published source,
        but for the eave metal under and the rake metal over the underlayment (IRC R905.2.8.5).

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> site = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> [(run.edge, run.pieces) for run in lay_metal(site)]
    [('eave', 2), ('left_rake', 1), ('right_rake', 1), ('ridge', 2)]
    """
    rake = _RAKE(site, lap_direction="upper_over_lower")
    proud = site.choices.metalwork.ridge_proud
    ridge = _RIDGE(site, run_length=site.roof.eave_length + 2 * proud)
    return (
        _edge("eave", _EAVE(site), site),
        _edge("left_rake", rake, site),
        _edge("right_rake", rake, site),
        _edge("ridge", ridge, site),
    )


def _edge(edge: RunName, run: MetalRun, site: Site) -> EdgeRun:
    kind = "rake" if edge.endswith("rake") else edge
    metal = getattr(site.choices, f"{kind}_metal")
    return EdgeRun(
        **{name: getattr(run, name) for name in _RUN},
        edge=edge,
        material=metal.name,
        deck_leg=metal.deck_leg,
        face_leg=metal.face_leg,
        weight=sum(run.lengths) / 12 * metal.weight,
    )
