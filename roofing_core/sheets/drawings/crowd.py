"""Crowd: what stands on a sheet of paper, found again by where it stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import floor

from roofing_core.sheets.drawings.lettering import Box, Spot

#: Side of the squares that the paper is divided into, in millimetres.
_SQUARE = 8.0


class Crowd:
    """Boxes and lines on paper, of which others keep clear."""

    def __init__(self) -> None:
        self._boxes: dict[tuple[int, int], list[Box]] = {}
        self._lines: dict[tuple[int, int], list[tuple[Spot, Spot]]] = {}

    def add_box(self, box: Box) -> None:
        """Add a box."""
        for square in _squares(box.corners):
            self._boxes.setdefault(square, []).append(box)

    def add_line(self, start: Spot, end: Spot) -> None:
        """Add a straight line."""
        for square in _squares((start, end)):
            self._lines.setdefault(square, []).append((start, end))

    def is_clear(self, box: Box) -> bool:
        """Tell whether a box touches no other and is crossed by no line."""
        return not any(
            any(box.touches(other) for other in self._boxes.get(square, ()))
            or any(box.crosses(*line) for line in self._lines.get(square, ()))
            for square in _squares(box.corners)
        )


def _squares(points: Iterable[Spot]) -> Iterator[tuple[int, int]]:
    """Give the squares of the least rectangle round points."""
    xs, ys = zip(*points, strict=True)
    for i in range(floor(min(xs) / _SQUARE), floor(max(xs) / _SQUARE) + 1):
        for k in range(floor(min(ys) / _SQUARE), floor(max(ys) / _SQUARE) + 1):
            yield i, k
