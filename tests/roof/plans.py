"""Random roofs: outlines with square corners, some on a coarse grid so that much happens at once.

Half of them lie on a grid of 4 ft: sides in line, wings of one width, ridges that meet in a point.
The rest have nothing in common but their directions.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import cos, pi, sin
from random import Random

from shapely import Polygon, box, unary_union

from roofing_core.roof.footprints import Footprint, Side

Corners = tuple[tuple[float, float], ...]

GRID = 48.0
MOST_CORNERS = 16

#: 3:12 to 12:12.
PITCHES = (3 / 12, 4 / 12, 6 / 12, 8 / 12, 1.0)


def square_cornered(seed: int) -> Corners:
    """Draw an outline with 4 to 16 square corners: boxes run together, without a court inside."""
    chance = Random(seed)
    for _ in range(1000):
        boxes = [_box(chance, on_grid=seed % 2 == 1) for _ in range(chance.randint(1, 5))]
        whole = unary_union(boxes)
        if isinstance(whole, Polygon) and not whole.interiors:
            corners = _turning([(x, y) for x, y, *_ in whole.exterior.normalize().coords][:-1])
            if len(corners) <= MOST_CORNERS and min(_lengths(corners)) >= 1:
                return corners
    raise AssertionError("nothing fits")


def _box(chance: Random, *, on_grid: bool) -> Polygon:
    if on_grid:
        x, y = chance.randint(0, 12), chance.randint(0, 12)
        wide, long = chance.randint(2, 9), chance.randint(2, 9)
        return box(GRID * x, GRID * y, GRID * (x + wide), GRID * (y + long))
    left, front = chance.uniform(0, 600), chance.uniform(0, 600)
    return box(left, front, left + chance.uniform(96, 432), front + chance.uniform(96, 432))


def _lengths(corners: Corners) -> Iterator[float]:
    for (ax, ay), (bx, by) in pairwise((*corners, corners[0])):
        yield abs(bx - ax) + abs(by - ay)


def _turning(corners: list[tuple[float, float]]) -> Corners:
    """Leave out the corners at which the outline goes straight on."""
    ahead = corners[1:] + corners[:1]
    return tuple(
        corners[k]
        for k in range(len(corners))
        if not (
            corners[k - 1][0] == corners[k][0] == ahead[k][0]
            or corners[k - 1][1] == corners[k][1] == ahead[k][1]
        )
    )


def hip_roof(seed: int) -> Footprint:
    """Draw a roof of eaves at one pitch."""
    return Footprint(corners=square_cornered(seed), pitch=Random(seed).choice(PITCHES))


def mixed_roof(seed: int) -> Footprint:
    """Draw a roof with pitches of its own for each eave, and some gables."""
    chance = Random(seed)
    corners = square_cornered(seed)
    gables = chance.choice((0.0, 0.2, 0.35))
    one_pitch = chance.random() < 0.4
    sides = [
        Side(end="gable")
        if chance.random() < gables
        else Side(pitch=0.5 if one_pitch else _pitch(chance, on_grid=seed % 2 == 1))
        for _ in corners
    ]
    sides[chance.randrange(len(sides))] = Side(pitch=0.5)
    return Footprint(corners=corners, sides=tuple(sides))


def stepped_roof(seed: int) -> Footprint:
    """Draw a roof with eaves at different heights, pitch breaks and gables."""
    chance = Random(seed)
    corners = square_cornered(seed)
    sides = []
    for _ in corners:
        pitch = _pitch(chance, on_grid=seed % 2 == 1)
        side = Side(pitch=pitch, eave_height=chance.choice((0.0, 0.0, 6.0, 12.0)))
        if chance.random() < 0.5:
            upper = _pitch(chance, on_grid=seed % 2 == 1)
            side = Side(pitch=pitch, upper_pitch=upper, break_run=chance.choice((12.0, 24.0)))
        sides.append(Side(end="gable") if chance.random() < 0.15 else side)
    sides[0] = Side(pitch=0.5)
    return Footprint(corners=corners, sides=tuple(sides))


def _pitch(chance: Random, *, on_grid: bool) -> float:
    return chance.choice(PITCHES) if on_grid else chance.uniform(0.1, 2)


def round_about(seed: int) -> Corners:
    """Draw an outline with 3 to 14 corners of any angle, each seen from a point in the middle."""
    chance = Random(seed)
    count = chance.randint(3, 14)
    turns = [(k + chance.uniform(-0.35, 0.35)) * 2 * pi / count for k in range(count)]
    reaches = [chance.uniform(120, 480) for _ in turns]
    return tuple((r * cos(t), r * sin(t)) for r, t in zip(reaches, turns, strict=True))


def convex(seed: int) -> Corners:
    """Draw an outline with 3 to 10 outside corners of any angle: points on an oval."""
    chance = Random(seed)
    count = chance.randint(3, 10)
    turns = [(k + chance.uniform(-0.4, 0.4)) * 2 * pi / count for k in range(count)]
    long, wide = chance.uniform(200, 500), chance.uniform(200, 500)
    return tuple((long * cos(t), wide * sin(t)) for t in turns)
