"""The outline of a roof in plan, and how the roof rises from each of its sides.

A side is an eave, over which a plane rises, or a gable, up to which the planes beside it run.
Every form of roof comes down to one of these; see `forms`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from typing import Literal

from roofing_core.measures.faults import (
    Fault,
    Refused,
    fault,
    is_number,
    negative,
    not_positive,
    refuse_if_any,
)
from roofing_core.measures.sentences import Amount, length, say, shown
from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.pitch import STEEPEST
from roofing_core.roof.polygons import Point, corner_faults, signed_area

#: The flattest plane that a roof of several planes may have, 0.1:12. A limit of this library.
FLATTEST = 0.1 / 12

#: The longest name of a side or plane.
LONGEST_NAME = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of a roof in plan.

    Attributes:
        end: An eave, over which a plane rises, or a gable, up to which the planes beside it run.
        pitch: Of the plane over an eave; that of the whole roof unless given.
        eave_height: How far the eave lies above the lowest eave of the roof.
        upper_pitch: Above the pitch break of a gambrel or mansard.
        break_run: Level, from the eave to below the pitch break.
        name: What the plane is called in findings and steps; ``side 1`` and so on unless given.
    """

    end: Literal["eave", "gable"] = "eave"
    pitch: Pitch | None = None
    eave_height: Inches = 0.0
    upper_pitch: Pitch | None = None
    break_run: Inches | None = None
    name: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Footprint:
    """A roof over any outline: each side an eave with a pitch, or a gable.

    Attributes:
        form: The form of the roof.
        corners: Corners (x, y) in plan, in order round the outline, either way.
        pitch: Of every plane that has none of its own.
        sides: One entry per side, the one that leaves the first corner first; all eaves unless
            given.
        measured: What was measured: the deck from edge to edge, or the walls from outer face to
            outer face, to which the overhangs are then added.
        eave_overhang: How far the deck reaches past the wall at each eave, level.
        rake_overhang: How far the deck reaches past the wall at each gable.
    """

    form: Literal["footprint"] = "footprint"
    corners: tuple[tuple[Inches, Inches], ...]
    pitch: Pitch | None = None
    sides: tuple[Side, ...] = ()
    measured: Literal["deck", "walls"] = "deck"
    eave_overhang: Inches = 0.0
    rake_overhang: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckSide:
    """One side of the deck with everything worked out.

    Attributes:
        name: What its plane is called.
        rises: The heights from which a plane rises here, lowest first, and its pitch; none over a
            gable.
    """

    name: str
    rises: tuple[tuple[Inches, Pitch], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The outline of a roof edge to edge of its deck, and how the roof rises from it.

    Attributes:
        corners: Corners (x, y) in plan, counter-clockwise seen from above.
        sides: One entry per side, the one that leaves the first corner first.
        places: For each side, its place among the sides as they were given, counted from 0.
    """

    corners: tuple[tuple[Inches, Inches], ...]
    sides: tuple[DeckSide, ...]
    places: tuple[int, ...]


def deck_outline(footprint: Footprint) -> Deck:
    """Give the outline of the deck with the heights and pitches of its sides.

    Where the walls were measured, each side moves out by its overhang. The eaves stay level with
    each other unless a height is given, as when the fascias are kept in line: with unequal pitches
    it is the walls that then differ. A pitch break lies at ``eave_height + pitch * break_run``.

    Args:
        footprint: What was measured.

    Returns:
        The deck, counter-clockwise.

    Raises:
        Refused: The corners make no simple outline, a pitch or another measurement is missing,
            left over or cannot be, or no side is an eave; names each.

    Source:
        Geometry. Level eaves are common practice, no published source.

    >>> walls = ((0, 0), (0, 24), (36, 24), (36, 0))
    >>> deck_outline(Footprint(corners=walls, pitch=0.5, measured="walls", eave_overhang=2)).corners
    ((38.0, -2.0), (38.0, 26.0), (-2.0, 26.0), (-2.0, -2.0))
    """
    corners = footprint.corners
    sides = footprint.sides or tuple(Side() for _ in corners)
    refuse_if_any([*corner_faults(corners), *_side_faults(footprint, sides)])
    places = tuple(range(len(corners)))
    if signed_area(corners) < 0:
        corners = tuple(reversed(corners))
        places = (*reversed(places[:-1]), places[-1])
    turned = [sides[place] for place in places]
    if footprint.measured == "walls":
        corners = _moved_out(corners, turned, footprint)
    lowest = min(side.eave_height for side in sides if side.end == "eave")
    return Deck(
        corners=tuple((float(x), float(y)) for x, y in corners),
        sides=tuple(
            _deck_side(side, place, footprint, lowest)
            for side, place in zip(turned, places, strict=True)
        ),
        places=places,
    )


def _deck_side(side: Side, place: int, footprint: Footprint, lowest: float) -> DeckSide:
    """Give a side of the deck from one that has no faults."""
    name = side.name or f"side {place + 1}"
    pitch = footprint.pitch if side.pitch is None else side.pitch
    if side.end == "gable" or pitch is None:
        return DeckSide(name=name, rises=())
    height = side.eave_height - lowest
    rises = [(height, pitch)]
    if side.break_run is not None and side.upper_pitch is not None:
        overhang = footprint.eave_overhang if footprint.measured == "walls" else 0.0
        rises.append((height + pitch * (side.break_run + overhang), side.upper_pitch))
    return DeckSide(name=name, rises=tuple(rises))


def _moved_out(
    corners: Sequence[Point], sides: Sequence[Side], footprint: Footprint
) -> tuple[Point, ...]:
    """Give the corners with each side moved out by its overhang, and refuse what that undoes."""
    out = [
        footprint.eave_overhang if side.end == "eave" else footprint.rake_overhang
        for side in sides
    ]  # fmt: skip
    ways = []
    for (ax, ay), (bx, by) in zip(corners, [*corners[1:], corners[0]], strict=True):
        long = hypot(bx - ax, by - ay)
        ways.append(((bx - ax) / long, (by - ay) / long))
    moved = []
    for k, (x, y) in enumerate(corners):
        (ax, ay), (bx, by) = ways[k - 1], ways[k]
        across = ax * by - ay * bx
        off_x = (ax * out[k] - bx * out[k - 1]) / across
        off_y = (ay * out[k] - by * out[k - 1]) / across
        moved.append((x + off_x, y + off_y))
    turned = any(
        (bx - ax) * dx + (by - ay) * dy <= 0
        for ((ax, ay), (bx, by)), (dx, dy) in zip(pairwise([*moved, moved[0]]), ways, strict=True)
    )
    if turned or corner_faults(moved):
        came = length(max(out))
        wanted = "an overhang that leaves every recess between two walls open"
        refuse_if_any([fault("eave_overhang", came, wanted)])
    return tuple(moved)


def pitch_range_fault(at: tuple[str | int, ...], pitch: Pitch) -> Fault | None:
    """Give the fault of a pitch that no plane of several can have.

    Args:
        at: Where it stands.
        pitch: Rise over run.

    Returns:
        The fault, or ``None`` for a pitch from 0.1:12 to 1000:12.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> pitch_range_fault(("pitch",), 0.0).written()
    'pitch came as 0:12: at least 0.1:12 and at most 1000:12'
    """
    if is_number(pitch) and FLATTEST <= pitch <= STEEPEST:
        return None
    wanted = say("at least ", Amount(FLATTEST, "pitch"), " and at most 1000:12")
    return Fault(at, shown(Amount(pitch, "pitch")), wanted)


def _side_faults(footprint: Footprint, sides: Sequence[Side]) -> list[Fault | None]:
    """Give all that is wrong with the pitches, heights and overhangs of a footprint."""
    count, given = len(footprint.corners), len(sides)
    faults: list[Fault | None] = [
        negative(name, getattr(footprint, name)) for name in ("eave_overhang", "rake_overhang")
    ]
    if footprint.pitch is not None:
        faults.append(pitch_range_fault(("pitch",), footprint.pitch))
    elif any(side.end == "eave" and side.pitch is None for side in sides):
        faults.append(fault("pitch", "none", "a pitch, for the sides that have none of their own"))
    if given != count:
        faults.append(fault("sides", f"{given} sides", f"{count}, one for each corner, or none"))
    elif all(side.end == "gable" for side in sides):
        faults.append(fault("sides", "gables only", "at least one eave, from which a plane rises"))
    names = [side.name for side in sides if side.name]
    if len(set(names)) < len(names):
        faults.append(fault("sides", "one name for two of them", "a name of its own for each"))
    for place, side in enumerate(sides):
        found = _gable_faults(side) if side.end == "gable" else _eave_faults(side)
        faults += Refused(*found).below("sides", place).faults
    return faults


def _gable_faults(side: Side) -> list[Fault]:
    """Give what an eave has and a gable has not."""
    faults = [
        fault(name, shown(Amount(value, unit)), "left out: no plane rises over a gable")
        for name, value, unit in (
            ("pitch", side.pitch, "pitch"),
            ("upper_pitch", side.upper_pitch, "pitch"),
            ("break_run", side.break_run, "in"),
        )
        if value is not None
    ]
    return faults + name_faults(side.name)


def _eave_faults(side: Side) -> list[Fault]:
    """Give what is wrong with one eave."""
    faults = [negative("eave_height", side.eave_height)]
    if side.pitch is not None:
        faults.append(pitch_range_fault(("pitch",), side.pitch))
    if (side.upper_pitch is None) != (side.break_run is None):
        missing, given = "upper_pitch", "break_run"
        if side.break_run is None:
            missing, given = given, missing
        faults.append(fault(missing, "none", f"given too, where {given} is"))
    if side.upper_pitch is not None:
        faults.append(pitch_range_fault(("upper_pitch",), side.upper_pitch))
    if side.break_run is not None:
        faults.append(not_positive("break_run", side.break_run))
    return [one for one in faults if one is not None] + name_faults(side.name)


def name_faults(name: str) -> list[Fault]:
    """Give the fault of a name that does not fit into a sentence.

    Args:
        name: Of a side or a plane.

    Returns:
        The fault, or none.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> [fault.written() for fault in name_faults(61 * "x")]
    ['name came as a name of 61 characters: at most 60 printable characters']
    """
    if len(name) <= LONGEST_NAME and name.isprintable():
        return []
    came = f"a name of {len(name)} characters"
    return [fault("name", came, f"at most {LONGEST_NAME} printable characters")]
