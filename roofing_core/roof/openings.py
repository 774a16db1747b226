"""Openings: what comes through a plane of the roof, and the rectangle that it takes out of it.

Each lies on one plane, placed from the left end of the plane's lowest eave. How it is flashed is
`layers.flashings`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.faults import (
    LARGEST_LENGTH,
    Fault,
    fault,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import length, say, shown
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.outlines import RoofPlane
from roofing_core.roof.pitch import slope_factor
from roofing_core.roof.slicing import Point, Region

#: Room for flashing between an opening and every edge of its plane. A wood shingle bureau's manual
#: asks for pipe flanges of 6 in all round; as a limit of all openings it is this library's own.
CLEARANCE = 6.0

#: The most openings of one roof. A limit of this library.
MOST_OPENINGS = 200

#: Rectangles nearer than this to an edge, or to each other, touch and do not overlap.
_TOUCHING = 1e-6

#: Edges that rise by no more than this are level: the same as for planes measured by hand.
_LEVEL = 0.125

Rectangle = tuple[Inches, Inches, Inches, Inches]
"""Left, right, lower and upper edge on a plane."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VentPipe:
    """An upright pipe through the roof.

    Attributes:
        kind: The kind of opening.
        plane: The name of the plane that it comes through.
        from_left: To its middle, along the eave from the left end of the plane's lowest eave.
        up_slope: To its middle, up the slope from that eave.
        diameter: Of the pipe, outside.
    """

    kind: Literal["vent_pipe"] = "vent_pipe"
    plane: str
    from_left: Inches
    up_slope: Inches
    diameter: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Skylight:
    """A window in the roof, its sides square to the eave.

    Attributes:
        kind: The kind of opening.
        plane: The name of the plane that it lies in.
        from_left: To its left side, along the eave from the left end of the plane's lowest eave.
        up_slope: To its lower side, up the slope from that eave.
        width: Along the eave.
        height: Up the slope.
    """

    kind: Literal["skylight"] = "skylight"
    plane: str
    from_left: Inches
    up_slope: Inches
    width: Inches
    height: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Chimney:
    """A chimney, its sides square to the eave.

    Attributes:
        kind: The kind of opening.
        plane: The name of the plane that it comes through.
        from_left: To its left side, along the eave from the left end of the plane's lowest eave.
        up_slope: To its lower side, up the slope from that eave.
        width: Along the eave.
        depth: From its lower side to its upper side, level.
    """

    kind: Literal["chimney"] = "chimney"
    plane: str
    from_left: Inches
    up_slope: Inches
    width: Inches
    depth: Inches


Opening = VentPipe | Skylight | Chimney


def rectangle(opening: Opening, pitch: Pitch) -> Rectangle:
    """Give the rectangle that an opening takes out of its plane.

    What is measured level or upright is longer on the slope: the depth of a chimney and the
    diameter of a pipe by the slope factor.

    Args:
        opening: The opening.
        pitch: Of its plane.

    Returns:
        Its left and right edge along the eave, its lower and upper edge up the slope.

    Raises:
        Refused: A measurement is zero, negative or not finite where it may not be, or the pitch is
            none; names each.

    Source:
        Geometry.

    >>> rectangle(Chimney(plane="", from_left=60, up_slope=80, width=36, depth=24), 9 / 12)
    (60, 96, 80, 110.0)
    """
    refuse_if_any(_size_faults(opening))
    left, lower = opening.from_left, opening.up_slope
    if isinstance(opening, Skylight):
        return left, left + opening.width, lower, lower + opening.height
    if isinstance(opening, Chimney):
        return left, left + opening.width, lower, lower + opening.depth * slope_factor(pitch)
    across, up = opening.diameter / 2, opening.diameter / 2 * slope_factor(pitch)
    return left - across, left + across, lower - up, lower + up


def holes_in(plane: RoofPlane, openings: Iterable[Opening]) -> tuple[Rectangle, ...]:
    """Give the rectangles that openings take out of a plane.

    Args:
        plane: The plane.
        openings: All openings of the roof.

    Returns:
        One entry per opening of this plane, in the order of the openings.

    Raises:
        Refused: A measurement of an opening of this plane cannot be; names each.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Gable
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> front, back = surfaces(Gable(length=400, width=240, pitch=3 / 4)).planes
    >>> pipe = VentPipe(plane=front.name, from_left=100, up_slope=60, diameter=4)
    >>> holes_in(front, [pipe]), holes_in(back, [pipe])
    (((98.0, 102.0, 57.5, 62.5),), ())
    """
    return tuple(rectangle(one, plane.pitch) for one in openings if one.plane == plane.name)


def opening_faults(
    openings: Sequence[Opening], planes: Sequence[RoofPlane], *, clearance: Inches = CLEARANCE
) -> list[Fault]:
    """Give all that is wrong with the openings of a roof.

    Args:
        openings: The openings.
        planes: All planes of the roof.
        clearance: Least room between an opening and every edge of its plane, along the eave and up
            the slope.

    Returns:
        None where every opening lies wholly within the plane that it names, with that room, and
        overlaps no other. Each fault stands at the place of its opening, counted from 0.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Geometry; the limits are this library's own.

    >>> from roofing_core.roof.forms import Gable
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> roof = surfaces(Gable(length=400, width=240, pitch=3 / 4)).planes
    >>> pipe = VentPipe(plane="front", from_left=100, up_slope=145, diameter=4)
    >>> [one.written() for one in opening_faults([pipe], roof)]  # the ridge is 150 in up
    ['0.up_slope came as 12 ft 1 in: 6 in or more clear of every edge of front, also of its ridge']
    """
    if (wrong_clearance := negative("clearance", clearance)) is not None:
        return [wrong_clearance]
    if len(openings) > MOST_OPENINGS:
        return [Fault((), f"{len(openings)} openings", say(f"at most {MOST_OPENINGS}"))]
    by_name = {plane.name: plane for plane in planes}
    found: list[Fault] = []
    placed: dict[int, Rectangle] = {}
    for k, opening in enumerate(openings):
        wrong = [*_size_faults(opening), _plane_fault(opening, by_name)]
        faults = [one for one in wrong if one is not None]
        if not faults:
            placed[k] = rectangle(opening, by_name[opening.plane].pitch)
            faults = list(_edge_faults(opening, by_name[opening.plane], placed[k], clearance))
        found += [Fault((k, *one.at), one.came, one.wanted) for one in faults]
    return found + list(_overlaps(openings, placed))


def _size_faults(opening: Opening) -> Iterator[Fault | None]:
    if not abs(opening.from_left) <= LARGEST_LENGTH:
        most = length(LARGEST_LENGTH)
        yield fault("from_left", shown(length(opening.from_left)), "at most ", most)
    yield negative("up_slope", opening.up_slope)
    for name in ("diameter", "width", "height", "depth"):
        if (size := getattr(opening, name, None)) is not None:
            yield not_positive(name, size)


def _plane_fault(opening: Opening, by_name: Mapping[str, RoofPlane]) -> Fault | None:
    if opening.plane in by_name:
        return None
    wanted = f"the name of a plane of this roof, such as {next(iter(by_name), 'front')}"
    return fault("plane", "a name that no plane has", wanted)


def _edge_faults(
    opening: Opening, plane: RoofPlane, taken: Rectangle, clearance: float
) -> Iterator[Fault]:
    """Give the edges that an opening comes too near to: level ones are up the slope, others not."""
    left, right, lower, upper = taken
    grown = (left - clearance, right + clearance, lower - clearance, upper + clearance)
    near: dict[str, list[str]] = {"from_left": [], "up_slope": []}
    for start, end, kind in zip(
        plane.corners, (*plane.corners[1:], plane.corners[0]), plane.edges, strict=True
    ):
        if _crosses(start, end, grown):
            place = "up_slope" if abs(end[1] - start[1]) <= _LEVEL else "from_left"
            near[place].append(kind.replace("_", " "))
    room = (length(clearance), f" or more clear of every edge of {plane.name}")
    for place, kinds in near.items():
        if kinds:
            also = f", also of its {' and its '.join(dict.fromkeys(kinds))}"
            yield fault(place, length(getattr(opening, place)), *room, also)
    if not any(near.values()) and not _within(plane, (left + right) / 2, (lower + upper) / 2):
        for place in near:
            yield fault(place, length(getattr(opening, place)), f"a place within {plane.name}")


def _within(plane: RoofPlane, u: float, v: float) -> bool:
    return any(left <= u <= right for left, right in Region([plane.corners]).at(v))


def _crosses(start: Point, end: Point, taken: Rectangle) -> bool:
    """Tell whether a straight edge passes through the inside of a rectangle."""
    left, right, lower, upper = taken
    along, up = end[0] - start[0], end[1] - start[1]
    enters, leaves = 0.0, 1.0
    for step, room in (
        (-along, start[0] - left - _TOUCHING),
        (along, right - _TOUCHING - start[0]),
        (-up, start[1] - lower - _TOUCHING),
        (up, upper - _TOUCHING - start[1]),
    ):
        if step == 0 and room <= 0:
            return False
        if step < 0:
            enters = max(enters, room / step)
        elif step > 0:
            leaves = min(leaves, room / step)
    return enters < leaves


def _overlaps(openings: Sequence[Opening], placed: Mapping[int, Rectangle]) -> Iterator[Fault]:
    """Give each opening that overlaps an earlier one of its plane."""
    for k, one in placed.items():
        for j in range(k):
            if j in placed and openings[j].plane == openings[k].plane and _meet(one, placed[j]):
                other = openings[j]
                wanted = say(
                    f"a place clear of the {other.kind.replace('_', ' ')} ",
                    *(length(other.from_left), " from the left and "),
                    *(length(other.up_slope), " up the slope"),
                )
                yield Fault((k, "from_left"), length(openings[k].from_left), wanted)
                break


def _meet(one: Rectangle, other: Rectangle) -> bool:
    across = min(one[1], other[1]) - max(one[0], other[0])
    up = min(one[3], other[3]) - max(one[2], other[2])
    return across > _TOUCHING and up > _TOUCHING
