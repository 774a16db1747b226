"""Planes measured by hand: each a polygon in its own coordinates, with a kind on each edge.

For a roof that no plan describes: u along the eave from the left corner, seen from the ground
facing the roof, and v up the slope. Edges in which two planes meet name each other.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import hypot, sqrt
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.faults import Fault, Refused, fault, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.footprints import name_faults
from roofing_core.roof.outlines import EdgeKind, RoofLine, RoofPlane, Surfaces, surfaces_of
from roofing_core.roof.pitch import pitch_fault
from roofing_core.roof.polygons import corner_faults, signed_area

#: Level edges may be out of level by this much, as taped: common practice, no published source.
LEVEL_WITHIN = 0.125

#: An edge may measure differently from its two planes by this much: likewise.
AGREE_WITHIN = 1.0

Lie = Literal["level, below the plane", "level, above the plane", "not level"]

#: How an edge of each kind can lie.
LIES: Mapping[EdgeKind, tuple[Lie, ...]] = MappingProxyType(
    {
        "eave": ("level, below the plane",),
        "pitch_break": ("level, below the plane", "level, above the plane"),
        "ridge": ("level, above the plane",),
        "headwall": ("level, above the plane",),
        "valley": ("not level", "level, below the plane"),
        "hip": ("not level",),
        "rake": ("not level",),
        "sidewall": ("not level",),
    }
)

#: Kinds of edge in which two planes can meet.
SHARED = frozenset({"ridge", "hip", "valley", "pitch_break"})

#: The most planes of one roof. A limit of this library.
MOST_PLANES = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenPlane:
    """One plane as somebody measured it.

    Attributes:
        name: What it is called in findings and steps.
        corners: Corners (u, v), in order round the plane, either way.
        edges: The kind of each edge, the one that leaves the first corner first.
        pitch: Rise over run.
        beyond: For each edge, the name of the plane on its far side, empty where there is none;
            none at all unless given.
    """

    name: str
    corners: tuple[tuple[Inches, Inches], ...]
    edges: tuple[EdgeKind, ...]
    pitch: Pitch
    beyond: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenPlanes:
    """A roof given plane by plane.

    Attributes:
        form: The form of the roof.
        planes: One entry per plane.
        eave_overhang: How far the deck reaches past the walls at the eaves, level. An ice barrier
            is measured from the wall.
    """

    form: Literal["planes"] = "planes"
    planes: tuple[GivenPlane, ...]
    eave_overhang: Inches = 0.0


def given_surfaces(roof: GivenPlanes) -> Surfaces:
    """Give the surfaces of a roof that was measured plane by plane.

    Each plane is turned to start at the left end of its lowest eave or pitch break, which becomes
    the origin. A line that two planes share has the mean of its two measured lengths.

    Args:
        roof: The planes as measured.

    Returns:
        The planes and lines; nothing in space, since nothing says where the planes lie.

    Raises:
        Refused: A plane is no simple polygon, an edge does not lie as its kind does, the lowest
            edge is neither eave nor pitch break, a pitch or name cannot be, or two planes do not
            agree on the edge between them; names each.

    Source:
        Geometry; the tolerances are common practice, no published source.

    >>> given_surfaces(GivenPlanes(planes=(GivenPlane(name="porch", pitch=0.25, corners=((0, 0),
    ...     (168, 0), (168, 112), (0, 112)), edges=("eave", "rake", "headwall", "rake")),))).squares
    1.3066666666666666
    """
    refuse_if_any(_all_faults(roof.planes))
    planes = [_plane(plane) for plane in roof.planes]
    refuse_if_any(_meeting_faults(planes))
    return surfaces_of(planes, list(_lines(planes)))


def _all_faults(planes: Sequence[GivenPlane]) -> Iterator[Fault]:
    """Give all that is wrong with planes one by one, and with their names."""
    if not 1 <= len(planes) <= MOST_PLANES:
        yield fault("planes", f"{len(planes)} planes", f"from 1 to {MOST_PLANES} planes")
    names = [plane.name for plane in planes]
    for place, plane in enumerate(planes):
        found = [*_form_faults(plane), *_name_faults(plane, names)]
        yield from Refused(*(found or _edge_faults(plane))).below("planes", place).faults


def _form_faults(plane: GivenPlane) -> Iterator[Fault]:
    """Give what is wrong with the corners and pitch of a plane, and with how many edges it has."""
    yield from corner_faults(plane.corners, straight=True)
    if (found := pitch_fault(plane.pitch)) is not None:
        yield found
    count = len(plane.corners)
    for name, given in (("edges", plane.edges), ("beyond", plane.beyond)):
        if len(given) != count and (given or name == "edges"):
            yield fault(name, f"{len(given)} of them", f"{count}, one for each corner")


def _name_faults(plane: GivenPlane, names: Sequence[str]) -> Iterator[Fault]:
    """Give what is wrong with the name of a plane and the names of its neighbours."""
    yield from name_faults(plane.name)
    if not plane.name:
        yield fault("name", "an empty text", "a name")
    elif names.count(plane.name) > 1:
        yield fault("name", "a name that another plane has too", "a name of its own")
    for k, (kind, other) in enumerate(zip(plane.edges, plane.beyond, strict=False)):
        if other and (other == plane.name or other not in names):
            wanted = say("the name of another plane, or empty where there is none")
            yield Fault(("beyond", k), "a name that no other plane has", wanted)
        elif other and kind not in SHARED:
            wanted = say(f"left empty: no plane lies beyond the {kind} of this one")
            yield Fault(("beyond", k), "the name of a plane", wanted)


def _edge_faults(plane: GivenPlane) -> Iterator[Fault]:
    """Give the edges that do not lie as their kinds do, and what is missing below."""
    turned = _counter_clockwise(plane)
    for (ax, ay), (bx, by), kind, place in turned:
        lie = _lie(bx - ax, by - ay)
        if lie not in LIES[kind]:
            wanted = say(f"another kind: every {_spelt(kind)} is {' or '.join(LIES[kind])}")
            yield Fault(("edges", place), f"{_spelt(kind)} on an edge that is {lie}", wanted)
    lowest = min(y for (_, y), *_ in turned)
    starts = [ay for (_, ay), _, kind, _ in turned if kind in {"eave", "pitch_break"}]
    if not starts or min(starts) > lowest + LEVEL_WITHIN:
        yield fault("edges", "neither at the lowest corner", "an eave or a pitch break there")


def _spelt(kind: EdgeKind) -> str:
    return kind.replace("_", " ")


def _lie(along: Inches, up: Inches) -> Lie:
    """Tell how an edge lies, walked with the plane on the left."""
    if abs(up) > LEVEL_WITHIN:
        return "not level"
    return "level, below the plane" if along > 0 else "level, above the plane"


_Walked = list[tuple[tuple[float, float], tuple[float, float], EdgeKind, int]]


def _counter_clockwise(plane: GivenPlane) -> _Walked:
    """Give the edges in order with the plane on their left: both ends, kind, and place as given."""
    ahead = (*plane.corners[1:], plane.corners[0])
    edges = list(zip(plane.corners, ahead, plane.edges, range(len(plane.corners)), strict=True))
    if signed_area(plane.corners) > 0:
        return edges
    return [(end, start, kind, place) for start, end, kind, place in reversed(edges)]


def _plane(given: GivenPlane) -> RoofPlane:
    """Give a plane without faults in its own coordinates."""
    walked = _counter_clockwise(given)
    lowest = min(
        (k for k, edge in enumerate(walked) if edge[2] in {"eave", "pitch_break"}),
        key=lambda k: (walked[k][0][1] > _lowest(walked) + LEVEL_WITHIN, walked[k][0][0]),
    )
    walked = walked[lowest:] + walked[:lowest]
    (u0, v0), *_ = walked[0]
    corners = tuple((float(u - u0), float(v - v0)) for (u, v), *_ in walked)
    area = signed_area(corners)
    return RoofPlane(
        name=given.name,
        corners=corners,
        edges=tuple(kind for _, _, kind, _ in walked),
        lengths=tuple(hypot(bx - ax, by - ay) for (ax, ay), (bx, by), _, _ in walked),
        beyond=tuple(given.beyond[place] if given.beyond else "" for *_, place in walked),
        points=(),
        pitch=given.pitch,
        area=area,
        plan_area=area / sqrt(1 + given.pitch**2),
    )


def _lowest(walked: _Walked) -> float:
    return min(v for (_, v), *_ in walked)


_Shared = tuple[str, str, EdgeKind]


def _shared(planes: Sequence[RoofPlane]) -> dict[_Shared, list[float]]:
    """Give the lengths of shared edges by plane, plane beyond and kind, shortest first."""
    found: dict[_Shared, list[float]] = {}
    for plane in planes:
        for kind, other, long in zip(plane.edges, plane.beyond, plane.lengths, strict=True):
            if other:
                found.setdefault((plane.name, other, kind), []).append(long)
    return {edge: sorted(lengths) for edge, lengths in found.items()}


def _meeting_faults(planes: Sequence[RoofPlane]) -> Iterator[Fault]:
    """Give the shared edges that only one of two planes knows, or that measure differently."""
    shared = _shared(planes)
    places = {plane.name: place for place, plane in enumerate(planes)}
    for (name, other, kind), lengths in shared.items():
        theirs = shared.get((other, name, kind), [])
        for k, long in enumerate(lengths):
            if k < len(theirs) and abs(theirs[k] - long) <= AGREE_WITHIN:
                continue
            came = say("a ", _spelt(kind), " of ", length(long)).written()
            wanted = ("one of the same kind", " and length" * bool(theirs), " on the plane beyond")
            yield Fault(("planes", places[name], "beyond"), came, say(*wanted))


def _lines(planes: Sequence[RoofPlane]) -> Iterator[RoofLine]:
    """Give each line once: those of one plane, then those of two."""
    for plane in planes:
        for kind, other, long in zip(plane.edges, plane.beyond, plane.lengths, strict=True):
            if not other:
                yield RoofLine(kind=kind, length=long, planes=(plane.name,), ends=())
    shared = _shared(planes)
    while shared:
        name, other, kind = next(iter(shared))
        ours, theirs = shared.pop((name, other, kind)), shared.pop((other, name, kind))
        for one, two in zip(ours, theirs, strict=True):
            yield RoofLine(kind=kind, length=(one + two) / 2, planes=(name, other), ends=())


def lone_valley_faults(roof: GivenPlanes) -> list[Fault]:
    """Give the valleys that name no plane beyond: nobody can lay a valley from one side alone.

    Args:
        roof: The planes as measured, without other faults.

    Returns:
        One fault per plane with such a valley; none for most roofs.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Shingles and metal of a valley lie on both of its planes.

    >>> porch = GivenPlane(name="porch", pitch=0.5, edges=("eave", "valley", "ridge", "rake"),
    ...     corners=((0, 0), (120, 0), (150, 60), (0, 60)))
    >>> [fault.at for fault in lone_valley_faults(GivenPlanes(planes=(porch,)))]
    [('planes', 0, 'beyond')]
    """
    found = []
    for place, plane in enumerate(roof.planes):
        beyond = plane.beyond or ("",) * len(plane.edges)
        edges = zip(plane.edges, beyond, strict=True)
        lone = sum(kind == "valley" and not other for kind, other in edges)
        if lone:
            wanted = say("the plane on the far side of every valley, which has its valley too")
            found.append(
                Fault(("planes", place, "beyond"), f"none for {lone} of its valleys", wanted)
            )
    return found
