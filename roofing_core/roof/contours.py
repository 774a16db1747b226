"""The outline of a roof at one height: how it moves inward as the height rises, and what it meets.

A roof is built up from below. Its contour starts as the outline of the deck; each stretch of it
lies on one plane and moves inward by 1 / pitch for each inch of rise, and a stretch on a wall
stands still. The corners of the contour draw the hips and valleys. `skeleton` lets it rise.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, inf
from typing import Literal

from roofing_core.measures.units import Inches, Pitch, Ratio

Turn = Literal["outside", "inside", "along", "opposite"]

#: Sine of the angle up to which stretches count as parallel; float dust is 100,000 times less.
PARALLEL = 1e-10


@dataclass(frozen=True, slots=True)
class Stretch:
    """A straight part of a contour: the level line of one plane, or of one wall, at one height.

    The roof lies to the left of its direction.

    Attributes:
        dx: Direction in plan, of length 1.
        dy: The same, across.
        speed: How far it moves inward for each inch of rise, 1 / pitch; 0 on a wall.
        face: The plane or wall that it draws, counted from 0.
        later: The heights at which its pitch changes, lowest first, and the pitches.
    """

    dx: Ratio
    dy: Ratio
    speed: Ratio
    face: int
    later: tuple[tuple[Inches, Pitch], ...]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of a contour, where a stretch starts and the one before it ends.

    Attributes:
        stretch: The stretch that starts here.
        x: Where, in plan.
        y: Where, in plan.
        born: The node in which the hip or valley that this corner draws starts.
    """

    stretch: Stretch
    x: Inches
    y: Inches
    born: int


Contour = Sequence[Corner]
Motions = Sequence[tuple[Inches, Inches]]


def turn(before: Stretch, after: Stretch) -> Turn:
    """Tell how a contour turns from one stretch to the next.

    Args:
        before: The stretch that ends.
        after: The stretch that starts there.

    Returns:
        ``outside`` or ``inside`` for a corner, ``along`` when it goes straight on, ``opposite``
        when it turns back on itself.

    Raises:
        Nothing: Two stretches meet in one of these ways.

    Source:
        Geometry.

    >>> turn(Stretch(1.0, 0.0, 3.0, 0, ()), Stretch(0.0, 1.0, 3.0, 1, ()))
    'outside'
    """
    across = before.dx * after.dy - before.dy * after.dx
    if abs(across) > PARALLEL:
        return "outside" if across > 0 else "inside"
    return "along" if before.dx * after.dx + before.dy * after.dy > 0 else "opposite"


def motions(contour: Contour) -> Motions:
    """Give how far each corner moves for each inch of rise.

    A corner stays on both its stretches: ``normal . motion = speed`` for each of them.

    Args:
        contour: A contour in which no stretch goes straight on or turns back.

    Returns:
        One entry per corner: along x and along y.

    Raises:
        Nothing: Two stretches that are not parallel have one corner.

    Source:
        Geometry.

    >>> ends = (Stretch(1.0, 0.0, 3.0, 0, ()), Stretch(0.0, 1.0, 2.0, 1, ()))
    >>> motions([Corner(ends[0], 0.0, 0.0, 0), Corner(ends[1], 9.0, 0.0, 1)])[1]
    (-2.0, 3.0)
    """
    moving = []
    before = contour[-1].stretch
    for corner in contour:
        after = corner.stretch
        across = before.dx * after.dy - before.dy * after.dx
        x = (after.dx * before.speed - before.dx * after.speed) / across
        y = (after.dy * before.speed - before.dy * after.speed) / across
        moving.append((x, y))
        before = after
    return moving


def rise_to_next(contour: Contour, moving: Motions, dust: Inches) -> Inches:
    """Give how much further the contour rises until a stretch vanishes or a corner meets another.

    The least of ``length / shrinking`` over the stretches, and of ``gap / closing`` over the inside
    corners and the stretches that they run into.

    Args:
        contour: The contour.
        moving: The motions of its corners.
        dust: Lengths up to this count as nothing.

    Returns:
        0 or more; infinite when nothing more happens.

    Raises:
        Nothing: A contour rises until something happens, or for ever.

    Source:
        Geometry: every length in a contour changes evenly with the height.

    >>> rise_to_next([], [], 1e-9)
    inf
    """
    rise = inf
    for k, corner in enumerate(contour):
        ahead, stretch = contour[k + 1 - len(contour)], corner.stretch
        move_x, move_y = moving[k]
        ahead_x, ahead_y = moving[k + 1 - len(contour)]
        shrinking = (move_x - ahead_x) * stretch.dx + (move_y - ahead_y) * stretch.dy
        if shrinking > 0:
            along = (ahead.x - corner.x) * stretch.dx + (ahead.y - corner.y) * stretch.dy
            rise = min(rise, along / shrinking)
    for k, corner in enumerate(contour):
        if turn(contour[k - 1].stretch, corner.stretch) == "inside":
            rise = _rise_to_meet(contour, moving, k, rise, dust)
    return max(rise, 0.0)


def _rise_to_meet(contour: Contour, moving: Motions, k: int, rise: float, dust: float) -> float:
    """Give the rise after which an inside corner meets a stretch, if it is less than one known."""
    x, y = contour[k].x, contour[k].y
    move_x, move_y = moving[k]
    for j in range(k + 1 - len(contour), k - 1):  # all but the two stretches of the corner
        corner = contour[j]
        stretch = corner.stretch
        closing = stretch.speed + move_x * stretch.dy - move_y * stretch.dx
        gap = (y - corner.y) * stretch.dx - (x - corner.x) * stretch.dy
        # A corner on the line of a stretch, but not on it, runs along that line if it comes near.
        if closing > 0 and dust < gap < rise * closing:
            meeting = gap / closing
            there = (x + move_x * meeting, y + move_y * meeting)
            # Half the dust that is forgiven later, so that what is foreseen here is found there.
            if _is_between(contour, moving, j, there, rise=meeting, dust=dust / 2):
                rise = meeting
    return rise


def _is_between(
    contour: Contour,
    moving: Motions,
    j: int,
    point: tuple[float, float],
    *,
    rise: float,
    dust: float,
) -> bool:
    """Tell whether a point on the line of a stretch lies between its ends after a rise."""
    here, ahead, stretch = contour[j], contour[j + 1], contour[j].stretch
    start = (point[0] - here.x - moving[j][0] * rise) * stretch.dx
    start += (point[1] - here.y - moving[j][1] * rise) * stretch.dy
    end = (ahead.x + moving[j + 1][0] * rise - point[0]) * stretch.dx
    end += (ahead.y + moving[j + 1][1] * rise - point[1]) * stretch.dy
    return min(start, end) >= -dust


def meeting_corner(contour: Contour, dust: Inches) -> tuple[int, int] | None:
    """Find a corner that lies on a stretch other than its own two.

    Args:
        contour: The contour.
        dust: Distances up to this count as nothing.

    Returns:
        The places of the corner and of the stretch in the contour; ``None`` when there is none.

    Raises:
        Nothing: There is one or there is none.

    Source:
        Geometry.

    >>> meeting_corner([], 1e-9) is None
    True
    """
    count = len(contour)
    for j, corner in enumerate(contour):
        x, y, dx, dy = corner.x, corner.y, corner.stretch.dx, corner.stretch.dy
        ahead = contour[j + 1 - count]
        reach = (ahead.x - x) * dx + (ahead.y - y) * dy + dust
        for k in range(j + 2 - count, j):
            off_x, off_y = contour[k].x - x, contour[k].y - y
            if (
                -dust <= off_y * dx - off_x * dy <= dust
                and -dust <= off_x * dx + off_y * dy <= reach
            ):
                return k % count, j
    return _end_of_spike(contour)


def _end_of_spike(contour: Contour) -> tuple[int, int] | None:
    """Find where a contour turns straight back: its shorter stretch there ends on the longer."""
    for k, corner in enumerate(contour):
        before, ahead = contour[k - 1], contour[k + 1 - len(contour)]
        if turn(before.stretch, corner.stretch) == "opposite":
            shorter = hypot(ahead.x - corner.x, ahead.y - corner.y)
            is_here = shorter <= hypot(before.x - corner.x, before.y - corner.y)
            found = (k + 1, k - 1) if is_here else (k - 1, k)
            return found[0] % len(contour), found[1] % len(contour)
    return None
