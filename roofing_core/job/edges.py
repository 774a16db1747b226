"""The metal of a job's edges: which runs there are, and what each is cut from."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields
from types import MappingProxyType
from typing import Literal

from roofing_core.job.valley_ends import ValleyEnds, valley_ends
from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.metal.runs import MetalRun, metal_run
from roofing_core.layers.metal.valleys import valley_run
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import Inches, Pounds
from roofing_core.roof.outlines import EdgeKind, RoofLine, RoofPlane, is_lower

RunName = Literal["eave", "valley", "left_rake", "right_rake", "pitch_break", "headwall", "ridge"]

#: The metal that each edge takes, among the choices.
METALS: Mapping[RunName, str] = MappingProxyType(
    {
        "eave": "eave_metal",
        "valley": "valley_metal",
        "left_rake": "rake_metal",
        "right_rake": "rake_metal",
        "pitch_break": "pitch_break_metal",
        "headwall": "apron_metal",
        "ridge": "ridge_metal",
    }
)

Offer = tuple[Inches, ...]

#: Beside an outside corner of the eaves the metal is bent round it.
_BENT_ROUND: frozenset[EdgeKind] = frozenset({"rake", "hip"})


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRun(MetalRun):
    """One run of metal on an edge of the roof, cut and nailed.

    Attributes:
        edge: The edge it lies on.
        material: The metal it is cut from.
        deck_leg: The leg on the deck.
        face_leg: The leg over the edge.
        weight: Of the pieces as they lie.
        plane: The plane whose edge it is.
        beyond: The plane on the edge's far side; empty where there is none.
        past_foot: How far the metal of a valley starts below its foot; 0 on other edges.
        over_top: How far it goes on over its top; 0 on other edges.
        cut_from: Where metal is bought across runs, the number of the length that each piece is
            cut from, as in `MetalBought`; else empty. The run's stock is then the lengths that are
            first cut for it, its offcuts what is left of these, and its stock length the longest
            one that a piece of it is cut from.
    """

    edge: RunName
    material: str
    deck_leg: Inches
    face_leg: Inches
    weight: Pounds
    plane: str
    beyond: str
    past_foot: Inches
    over_top: Inches
    cut_from: tuple[int, ...]


def _run(metal: str, *, spacing: str = "nail_spacing", **more: str) -> Wired[MetalRun]:
    return Wired(
        metal_run,
        stock_length=f"{metal}.stock_lengths",
        lap="metalwork.lap",
        nail_spacing=f"metalwork.{spacing}",
        end_distance="metalwork.end_distance",
        least_piece="metalwork.least_piece",
        **more,
    )


_EAVE = _run("eave_metal", tab="metalwork.eave_tab")
_RAKE = _run("rake_metal")
_PITCH_BREAK = _run("pitch_break_metal")
_APRON = _run("apron_metal")
_RIDGE = _run("ridge_metal", spacing="ridge_nail_spacing")
_VALLEY = Wired(
    valley_run,
    stock_length="valley_metal.stock_lengths",
    lap="metalwork.lap",
    nail_spacing="metalwork.nail_spacing",
    end_distance="metalwork.end_distance",
    least_piece="metalwork.least_piece",
)

_NO_VALLEY = ValleyEnds(past_foot=0.0, over_top=0.0)

_RUN = tuple(field.name for field in fields(MetalRun))


@dataclass(frozen=True, slots=True)
class _Edge:
    """One edge of a plane, and what lies beside it."""

    plane: RoofPlane
    k: int

    @property
    def kind(self) -> EdgeKind:
        return self.plane.edges[self.k]

    @property
    def long(self) -> float:
        return self.plane.lengths[self.k]

    @property
    def beyond(self) -> str:
        return self.plane.beyond[self.k]

    def rises(self) -> bool:
        """Tell whether it is walked upwards, with the plane on its left."""
        corners = self.plane.corners
        return corners[(self.k + 1) % len(corners)][1] > corners[self.k][1]

    def bent(self) -> tuple[bool, bool]:
        """Tell at which of its ends, left and right, it stands at an outside corner."""
        kinds = self.plane.edges
        before, after = kinds[self.k - 1], kinds[(self.k + 1) % len(kinds)]
        return before in _BENT_ROUND, after in _BENT_ROUND


def lay_metal(site: Site) -> tuple[EdgeRun, ...]:
    """Cut and nail the metal of every edge, in the order in which it goes on.

    The eaves' first, with a tab bent round each outside corner; open valleys'; the rakes', the
    eave's length up the slope; that of pitch breaks and at the foot of walls; last that over the
    top edges that no plane lies beyond, a little proud at both ends. Where two planes meet in a hip
    or a ridge the caps take its part.

    Args:
        site: The roof with its choices.

    Returns:
        One entry per run; for a single slope eave, left rake, right rake, ridge.

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
    edges = [_Edge(plane, k) for plane in site.surfaces.planes for k in range(len(plane.edges))]
    valleys = [line for line in site.surfaces.lines if line.kind == "valley"]
    if site.choices.valleying.method != "open":
        valleys = []
    proud = 2 * site.choices.metalwork.ridge_proud
    kinds: tuple[tuple[str, Callable[[Offer], list[EdgeRun]]], ...] = (
        ("eave_metal", lambda offer: [_eave(edge, site, offer) for edge in _of(edges, "eave")]),
        ("valley_metal", lambda offer: [_valley(line, site, offer) for line in valleys]),
        ("rake_metal", lambda offer: [_rake(edge, site, offer) for edge in _rakes(edges)]),
        (
            "pitch_break_metal",
            lambda offer: [
                _laid("pitch_break", _PITCH_BREAK, edge, site, offer)
                for edge in _of(edges, "pitch_break")
                if is_lower(edge.plane, edge.k)
            ],
        ),
        (
            "apron_metal",
            lambda offer: [
                _laid("headwall", _APRON, edge, site, offer) for edge in _of(edges, "headwall")
            ],
        ),
        (
            "ridge_metal",
            lambda offer: [
                _laid("ridge", _RIDGE, edge, site, offer, past=proud)
                for edge in _of(edges, "ridge")
                if not edge.beyond
            ],
        ),
    )
    return tuple(
        run
        for metal, lay in kinds
        for run in _from_one_length(lay, getattr(site.choices, metal).stock_lengths)
    )


def _of(edges: list[_Edge], kind: EdgeKind) -> Iterator[_Edge]:
    return (edge for edge in edges if edge.kind == kind)


def _from_one_length(lay: Callable[[Offer], list[EdgeRun]], offer: Offer) -> list[EdgeRun]:
    """Lay all runs of a metal from one of its lengths: the one that buys the least metal."""
    runs = lay(offer)
    if len({run.stock_length for run in runs}) <= 1:  # one length serves all
        return runs
    laid = [lay((stock,)) for stock in offer]
    return min(
        laid, key=lambda runs: (sum(run.stock * run.stock_length for run in runs), len(runs))
    )


def _eave(edge: _Edge, site: Site, offer: Offer) -> EdgeRun:
    left, right = edge.bent()
    if not (left or right):
        return _laid("eave", _EAVE, edge, site, offer, tab=0.0)
    tabs = "both" if left and right else "start" if left else "end"
    return _laid("eave", _EAVE, edge, site, offer, tabs=tabs)


def _rakes(edges: list[_Edge]) -> list[_Edge]:
    """Give the rakes plane by plane, of each the left one first."""
    order = {id(edge.plane): n for n, edge in enumerate(edges)}
    return sorted(_of(edges, "rake"), key=lambda edge: (order[id(edge.plane)], edge.rises()))


def _rake(edge: _Edge, site: Site, offer: Offer) -> EdgeRun:
    name: RunName = "right_rake" if edge.rises() else "left_rake"
    return _laid(name, _RAKE, edge, site, offer, lap_direction="upper_over_lower")


def _laid(
    name: RunName,
    wired: Wired[MetalRun],
    edge: _Edge,
    site: Site,
    offer: Offer,
    *,
    past: float = 0.0,
    **more: object,
) -> EdgeRun:
    """Cut and nail the metal of one edge; a fault of its length is one of the roof."""
    try:
        run = wired(site, run_length=edge.long + past, stock_length=offer, **more)
    except Refused as refusal:
        raise refusal.renamed({"run_length": _measured_as(name, site)}) from None
    return _edge_run(name, run, site, plane=edge.plane.name, beyond=edge.beyond)


def _measured_as(name: RunName, site: Site) -> str:
    """Give the caller's name for the length of an edge."""
    if site.roof.form != "single_slope":
        return "roof"
    return "roof.slope_length" if name.endswith("rake") else "roof.eave_length"


def _valley(line: RoofLine, site: Site, offer: Offer) -> EdgeRun:
    ends = valley_ends(site, line)
    try:
        run = _VALLEY(
            site,
            valley_length=line.length,
            past_eave=ends.past_foot,
            over_ridge=ends.over_top,
            stock_length=offer,
        )
    except Refused as refusal:
        raise refusal.renamed(
            {
                "valley_length": "roof",
                "past_eave": "valleying.past_eave",
                "over_ridge": "valleying.over_ridge",
            }
        ) from None
    plane, beyond = line.planes
    return _edge_run("valley", run, site, plane=plane, beyond=beyond, ends=ends)


def _edge_run(
    name: RunName,
    run: MetalRun,
    site: Site,
    *,
    plane: str,
    beyond: str,
    ends: ValleyEnds = _NO_VALLEY,
) -> EdgeRun:
    metal = getattr(site.choices, METALS[name])
    return EdgeRun(
        **{field: getattr(run, field) for field in _RUN},
        edge=name,
        material=metal.name,
        deck_leg=metal.deck_leg,
        face_leg=metal.face_leg,
        weight=sum(run.lengths) / 12 * metal.weight,
        plane=plane,
        beyond=beyond,
        past_foot=ends.past_foot,
        over_top=ends.over_top,
        cut_from=(),
    )
