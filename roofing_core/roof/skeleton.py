"""Where the planes of a roof meet: every ridge, hip, valley and pitch break over an outline.

The contour of the roof rises from the outline of the deck, see `contours`. When a stretch of it
vanishes, a plane ends in a point or at a ridge; when an inside corner runs into a stretch, the
contour parts in two; where a pitch changes, a new plane starts. This is the straight skeleton of
the outline, weighted by the pitches, and no form of roof is a special case of it: a gable is a
side whose contour stands still.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot, inf

from roofing_core.measures.units import Inches, Pitch
from roofing_core.roof.contours import Contour, Corner, Stretch, motions, rise_to_next
from roofing_core.roof.joints import Drawing, Face, Joint
from roofing_core.roof.settling import settle, straightened

#: Lengths in plan up to this part of the whole roof count as nothing.
DUST = 1e-10

Rise = tuple[tuple[Inches, Pitch], ...]
"""The heights from which a side rises at a pitch, lowest first, and the pitches."""


@dataclass(frozen=True, slots=True)
class Skeleton:
    """All the faces over an outline and the lines in which they meet.

    Attributes:
        nodes: Points (x, y, height) in which lines meet.
        faces: One entry per face; `Joint` counts them from 0. Those that ran into another one
            have no joints.
        joints: One entry per line.
        reached: For each side, how many of its pitches came to bear.
        open_sides: The sides round the parts of the plan over which nothing closes.
    """

    nodes: tuple[tuple[Inches, Inches, Inches], ...]
    faces: tuple[Face, ...]
    joints: tuple[Joint, ...]
    reached: tuple[int, ...]
    open_sides: tuple[int, ...]


def skeleton(outline: Sequence[tuple[Inches, Inches]], rises: Sequence[Rise]) -> Skeleton:
    """Let the contour of a roof rise over an outline until nothing is left of it.

    Args:
        outline: The corners of the deck in plan, counter-clockwise seen from above; a simple
            polygon without straight corners.
        rises: How each side rises, the one that leaves the first corner first; a gable not at
            all. At least one side rises.

    Returns:
        Faces, and the lines in which they meet.

    Raises:
        Nothing: What stays open is said in the answer.

    Source:
        Geometry. The procedure is the wavefront of the weighted straight skeleton (Aichholzer and
        Aurenhammer 1996; Eppstein and Erickson 1999; both as later papers cite them).

    >>> found = skeleton([(0, 0), (36, 0), (36, 24), (0, 24)], [((0.0, 0.5),)] * 4)
    >>> sorted(found.nodes)[2:4]  # the ridge of a hip roof
    [(12.0, 12.0, 6.0), (24.0, 12.0, 6.0)]
    """
    wide = max(max(ends) - min(ends) for ends in zip(*outline, strict=True))
    steepest = max(pitch for rise in rises for _, pitch in rise)
    drawing = Drawing(DUST * wide, DUST * wide * max(1.0, steepest))
    heights = sorted({height for rise in rises for height, _ in rise})
    contours: list[Contour] = [_of_walls(outline, rises, heights[0], drawing)]
    open_sides: set[int] = set()
    for height, stop in pairwise([*heights, inf]):
        started = [_started(contour, height, drawing) for contour in contours]
        contours = _risen(started, height, stop, drawing, open_sides)
    return Skeleton(
        nodes=tuple(drawing.nodes),
        faces=tuple(drawing.faces),
        joints=tuple(
            replace(joint, left=drawing.final(joint.left), right=drawing.final(joint.right))
            for joint in drawing.joints
        ),
        reached=tuple(_reached(side, drawing) for side in range(len(outline))),
        open_sides=tuple(sorted(open_sides)),
    )


def _reached(side: int, drawing: Drawing) -> int:
    """Give how many of the pitches of a side came to bear."""
    return max(
        face.level
        for number, face in enumerate(drawing.faces)
        if side in face.sides and number not in drawing.overtaken
    )


def _of_walls(
    outline: Sequence[tuple[float, float]],
    rises: Sequence[Rise],
    height: float,
    drawing: Drawing,
) -> Contour:
    """Give the first contour, before any side rises: all of it stands still."""
    corners = []
    for side, (x, y) in enumerate(outline):
        ahead_x, ahead_y = outline[side + 1 - len(outline)]
        long = hypot(ahead_x - x, ahead_y - y)
        stretch = Stretch(
            dx=(ahead_x - x) / long,
            dy=(ahead_y - y) / long,
            speed=0.0,
            face=drawing.face((side,), 0, 0.0),
            later=rises[side],
        )
        corners.append(Corner(stretch, x, y, drawing.node(x, y, height)))
    return corners


def _started(contour: Contour, height: float, drawing: Drawing) -> Contour:
    """Give the contour with the pitches that hold from a height on, and draw where they start."""
    fresh = [_pitched(corner.stretch, height, drawing) for corner in contour]
    changed = [new is not corner.stretch for new, corner in zip(fresh, contour, strict=True)]
    corners = []
    for k, corner in enumerate(contour):
        born = corner.born
        if changed[k] or changed[k - 1]:
            born = drawing.node(corner.x, corner.y, height)
            drawing.corner(contour, k, born)
        corners.append(Corner(fresh[k], corner.x, corner.y, born))
    for k, corner in enumerate(contour):
        if changed[k]:
            drawing.first_line(corner.stretch, fresh[k], corners[k], corners[k + 1 - len(corners)])
    return corners


def _pitched(stretch: Stretch, height: float, drawing: Drawing) -> Stretch:
    """Give a stretch as it goes on above a height: on a new plane where its pitch changes."""
    if not stretch.later or stretch.later[0][0] > height:
        return stretch
    pitch = stretch.later[0][1]
    below = drawing.face_of(stretch)
    face = drawing.face(below.sides, below.level + 1, pitch)
    return replace(stretch, speed=1 / pitch, face=face, later=stretch.later[1:])


def _risen(
    contours: list[Contour], height: float, stop: float, drawing: Drawing, open_sides: set[int]
) -> list[Contour]:
    """Give the contours at the height of the next change of a pitch; above the last, none."""
    pending = [(contour, height) for contour in contours]
    risen: list[Contour] = []
    while pending:
        before, at = pending.pop()
        contour = straightened(before, at, drawing)
        moving = motions(contour)
        step = min(rise_to_next(contour, moving, drawing.dust), stop - at)
        top = stop if step == stop - at else at + step
        if top == inf:
            for corner in contour:
                open_sides.update(drawing.face_of(corner.stretch).sides)
            continue
        settled = settle(_raised(contour, moving, step), top, drawing)
        if top == stop:
            risen += settled
        elif [len(rest) for rest in settled] != [len(contour)]:
            pending += [(rest, top) for rest in settled]
        # Else nothing came of what was foreseen: the planes will not cover the plan.
    return risen


def _raised(contour: Contour, moving: Sequence[tuple[float, float]], rise: float) -> Contour:
    """Give the contour further up."""
    return [
        Corner(corner.stretch, corner.x + x * rise, corner.y + y * rise, corner.born)
        for corner, (x, y) in zip(contour, moving, strict=True)
    ]
