"""The faces of a roof and the lines in which they meet, while it is drawn from below.

`contours` says how the outline of the roof moves as the height rises; the lines that its corners
leave behind are collected here, and `skeleton` is the whole of them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.units import Pitch
from roofing_core.roof.contours import Contour, Corner, Stretch, Turn, turn

JointKind = Literal["eave", "rake", "ridge", "hip", "valley", "pitch_break", "sidewall"]

#: What the corner of a contour draws between two planes.
BETWEEN_PLANES: Mapping[Turn, JointKind] = MappingProxyType(
    {"outside": "hip", "inside": "valley", "opposite": "ridge", "along": "pitch_break"}
)

#: The same between a plane and a wall. At an inside corner the wall stands above the plane.
AT_A_WALL: Mapping[Turn, JointKind] = MappingProxyType(
    {"outside": "rake", "inside": "sidewall", "opposite": "ridge", "along": "eave"}
)


@dataclass(frozen=True, slots=True)
class Joint:
    """A straight line in which two faces meet; each has it on its left when walked its own way.

    Attributes:
        kind: What it is on the roof.
        left: The face on whose outline it runs from start to end.
        right: The face on whose outline it runs from end to start.
        start: The node it starts in.
        end: The node it ends in.
    """

    kind: JointKind
    left: int
    right: int
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Face:
    """A plane of the roof, or a wall below or beside one.

    Attributes:
        sides: The sides of the deck that it rises from, counted from 0; more than one where planes
            have run into one.
        level: How many pitch changes of its first side it lies above: 0 for a wall, 1 above an
            eave, 2 above a pitch break.
        pitch: Rise over run; 0 for a wall.
    """

    sides: tuple[int, ...]
    level: int
    pitch: Pitch


class Drawing:
    """Nodes, faces and joints drawn so far."""

    def __init__(self, dust: float, dust_up: float) -> None:
        self.dust = dust
        self.dust_up = dust_up
        self.nodes: list[tuple[float, float, float]] = []
        self.faces: list[Face] = []
        self.ran_into: list[int] = []
        self.joints: list[Joint] = []
        self.overtaken: set[int] = set()

    def face(self, sides: tuple[int, ...], level: int, pitch: float) -> int:
        """Add a face; give its number."""
        self.faces.append(Face(sides, level, pitch))
        self.ran_into.append(len(self.ran_into))
        return len(self.faces) - 1

    def face_of(self, stretch: Stretch) -> Face:
        """Give the face that a stretch draws."""
        return self.faces[self.final(stretch.face)]

    def final(self, face: int) -> int:
        """Give the face that a face has run into: mostly itself."""
        while self.ran_into[face] != face:
            face = self.ran_into[face]
        return face

    def run_together(self, one: int, other: int) -> None:
        """Make one face of two that lie in the same plane."""
        one, other = self.final(one), self.final(other)
        if one != other:
            sides = {*self.faces[one].sides, *self.faces[other].sides}
            self.faces[one] = replace(self.faces[one], sides=tuple(sorted(sides)))
            self.ran_into[other] = one

    def overtake(self, winner: int, gone: int, start: int, end: int) -> bool:
        """Give a plane that has only just started to the one that overtakes it, if it has."""
        just_started = any(
            joint.left == gone and (joint.start, joint.end) == (start, end)
            for joint in self.joints
        )  # fmt: skip
        if just_started:
            self.ran_into[self.final(gone)] = self.final(winner)
            self.overtaken.add(gone)
        return just_started

    def node(self, x: float, y: float, height: float) -> int:
        """Give the node at a point, a new one unless there is one."""
        level, up = 2 * self.dust, 2 * self.dust_up
        for number, (other_x, other_y, other) in enumerate(self.nodes):
            near = abs(other_x - x) <= level and abs(other_y - y) <= level
            if near and abs(other - height) <= up:
                return number
        self.nodes.append((x, y, height))
        return len(self.nodes) - 1

    def line(self, before: Stretch, after: Stretch, start: int, end: int) -> None:
        """Draw what a corner between two stretches leaves behind on its way."""
        walls = (before.speed == 0) + (after.speed == 0)
        if start != end and walls < 2:  # noqa: PLR2004 - both: the upright corner of two walls
            kinds = AT_A_WALL if walls else BETWEEN_PLANES
            kind = kinds[turn(before, after)]
            self.joints.append(Joint(kind, before.face, after.face, start, end))

    def corner(self, contour: Contour, k: int, node: int) -> None:
        """Draw the line of a corner up to a node."""
        self.line(contour[k - 1].stretch, contour[k].stretch, contour[k].born, node)

    def first_line(self, below: Stretch, above: Stretch, start: Corner, end: Corner) -> None:
        """Draw the lower edge of a plane that starts above a wall or above another plane."""
        kind: JointKind = "pitch_break" if below.speed else "eave"
        self.joints.append(Joint(kind, above.face, below.face, start.born, end.born))
