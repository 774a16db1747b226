"""Pieces: every piece of a course or of the starter, on any plane, and its nails.

A row is a pattern of joints along a level line, cut off by what bounds the plane there: rakes,
hips, valleys, walls, openings. Counted here is what a person alone with a hook blade uses: each
piece from a shingle of its own, no offcut used again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import atan2, floor, pi
from typing import Literal

from roofing_core.layers.coursing import nail_room as _rooms
from roofing_core.layers.coursing.nail_room import Span, ValleyLine, nail_room, off_joint, shared
from roofing_core.layers.coursing.nailing import LEAST_NAILS
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import require_positive
from roofing_core.measures.units import Inches, Radians, SquareInches
from roofing_core.roof.cutting import Cut, Ring, cut_between
from roofing_core.roof.slicing import Region, Stretch, Trapezoid

End = Literal["factory", "cut"]

#: A cut nearer than this to a factory end is that end.
_SAME = 1e-9

#: What a hip or a valley leaves of a strip is no piece when it is narrower than any knife cuts.
NARROWEST = 0.001

#: The angle of an end that is cut square.
SQUARE_CUT = pi / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece of a course as it lies, and the part of its shingle that it is.

    Attributes:
        number: From 1 at the left.
        left: Where it begins, from the left corner of the deck.
        right: Where it ends.
        left_end: Whether its left end is the factory's or cut.
        right_end: Whether its right end is the factory's or cut, at the trim line.
        left_angle: Of its left end with the butt, inside the piece; square but for hips, valleys
            and rakes that lean.
        right_angle: The same of its right end.
        shingle_from: Where it begins on its shingle, from the shingle's left end.
        shingle_to: Where it ends on its shingle.
        nail_height: How far above the butt line it is nailed.
        nails: Where each of its nails goes, from the left corner of the deck.
        corners: Its outline (u, v) on the plane, counter-clockwise from its lower left corner; none
            for a piece that is cut square and as high as its course.
        cutouts: Outlines cut from its inside, round a pipe for instance; none for most.
    """

    number: int
    left: Inches
    right: Inches
    left_end: End
    right_end: End
    left_angle: Radians
    right_angle: Radians
    shingle_from: Inches
    shingle_to: Inches
    nail_height: Inches
    nails: tuple[Inches, ...]
    corners: tuple[tuple[Inches, Inches], ...]
    cutouts: tuple[tuple[tuple[Inches, Inches], ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """What a row is cut from.

    Attributes:
        length: Of a whole strip.
        nails: Where the nails of a whole strip go, from its left end.
        end_distance: From each end to its nail, where too few of the strip's own are left.
    """

    length: Inches
    nails: tuple[Inches, ...]
    end_distance: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A level row on a plane: what it is cut from and how it lies.

    Attributes:
        butt: Height of its lower edge.
        lower: Height from which it covers the plane, the butt or where the plane begins above it.
        upper: Height of its upper edge, trimmed at the top of the plane.
        start_line: The line from which its joints are counted, which most rows begin on.
        trim: Length trimmed from the strip that begins at the start line.
        nail_height: How far above the butt it is nailed.
        edge_distance: No nail nearer than this to the top of a piece, where that is cut off lower.
        moved: Joints that do not stand where the pattern has them, and where they stand instead.
        joints_over: Joints of the course over it, of which nails keep clear.
    """

    butt: Inches
    lower: Inches
    upper: Inches
    start_line: Inches
    trim: Inches
    nail_height: Inches
    edge_distance: Inches = 0.0
    moved: tuple[tuple[Inches, Inches], ...] = ()
    joints_over: tuple[Inches, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ShingleCount:
    """Shingles for the courses of a roof, and what an area would have said.

    Attributes:
        shingles: One for each piece, no offcut used again.
        least_by_length: What the length laid would take with nothing wasted.
        least_by_area: What the exposed area would take with nothing wasted.
    """

    shingles: int
    least_by_length: int
    least_by_area: int


def pieces_of(
    stretches: Sequence[Stretch],
    *,
    row: Row,
    strip: Strip,
    deck: Region,
    valleys: Sequence[ValleyLine] = (),
) -> tuple[Piece, ...]:
    """Cut the pieces of one row on a plane.

    Joint i stands at ``start_line + length - trim + i * length``, i any whole number; pieces lie
    between joints, cut off by the outline of the plane. The nails of a piece are those of its strip
    that still lie on it and on the deck, in no valley; where fewer than two are left, one near
    each end; none where it has no such place. One that a joint over it would lay bare steps aside.

    Args:
        stretches: Where the row lies on the plane, from the left; see `slicing`.
        row: How the row lies.
        strip: What it is cut from.
        deck: The deck that nails go into.
        valleys: The valleys that bound the plane.

    Returns:
        One entry per piece, from the left. A strip that comes apart, round a notch, gives two.

    Raises:
        Nothing: `courses` and `joints` check what they are given.

    Source:
        Geometry; never fewer than two nails in a cut piece: trade press, as restated.

    >>> from roofing_core.roof.slicing import Region
    >>> end = Region([[(0, 0), (48, 0), (24, 24)]])
    >>> row = Row(butt=0, lower=0, upper=6, start_line=0, trim=0, nail_height=4)
    >>> strip = Strip(length=36, nails=(1, 35), end_distance=1)
    >>> pieces = pieces_of(end.between(0, 6), row=row, strip=strip, deck=end)
    >>> [(piece.left, piece.right, piece.nails) for piece in pieces]
    [(0, 36, (5.0, 35)), (36, 48, (37, 43.0))]
    """
    cutter = _Cutter(row, strip, deck, valleys)
    made: list[Piece] = []
    for stretch in stretches:
        for cell in cutter.cells(stretch):
            made.extend(cutter.pieces(stretch, *cell, number=len(made) + 1))
    return tuple(made)


_Cell = tuple[float, float, float, float]


class _Cutter:
    """Cuts the pieces of one row."""

    def __init__(self, row: Row, strip: Strip, deck: Region, valleys: Sequence[ValleyLine]) -> None:
        self.row, self.strip, self.deck, self.valleys = row, strip, deck, valleys
        self.moved = dict(row.moved)
        self.first_joint = row.start_line + (strip.length - row.trim)
        self.room = nail_room(row.butt + row.nail_height, deck=deck, valleys=valleys)

    def cells(self, stretch: Stretch) -> Iterator[_Cell]:
        """Give each strip that a stretch meets: its ends, and the ends of what it can cover."""
        long, dust = self.strip.length, DUST * self.strip.length
        i = floor((stretch.left + dust - self.first_joint) / long) + 1
        start = self._joint(i - 1) if i else self.row.start_line - self.row.trim
        while True:
            end = self._joint(i)
            yield self._cell(start, end, stretch)
            if end >= stretch.right - dust:
                return
            start, i = end, i + 1

    def _cell(self, start: float, end: float, stretch: Stretch) -> _Cell:
        """Give a strip and what it covers; where a joint was moved away, a strip begins there."""
        left = max(self.moved.get(start, start), stretch.left)
        right = min(self.moved.get(end, end), stretch.right)
        if left < start:
            start, end = left, left + self.strip.length
        elif right > end:
            start, end = right - self.strip.length, right
        return start, end, left, right

    def _joint(self, i: int) -> float:
        return self.first_joint + i * self.strip.length

    def pieces(
        self, stretch: Stretch, start: float, end: float, left: float, right: float, *, number: int
    ) -> Iterator[Piece]:
        """Give the piece of one strip, or its pieces."""
        if _is_whole(stretch, left, right) and self._is_full(stretch):
            room = shared([(left, right)], self.room)
            if left == start and right == end and room == [(left, right)]:
                yield self._whole(start, end, number, room)
            else:
                nails = self._nails(start, room)
                yield self._piece(start, end, left, right, number, nails=nails)
            return
        for cut in cut_between(stretch, left, right):
            if cut.right - cut.left < NARROWEST:
                continue
            yield self._cut(cut, start, end, number)
            number += 1

    def _is_full(self, stretch: Stretch) -> bool:
        return stretch.lower == self.row.lower and stretch.upper == self.row.upper

    def _whole(self, start: float, end: float, number: int, room: Sequence[Span]) -> Piece:
        return Piece(
            number=number,
            left=start,
            right=end,
            left_end="factory",
            right_end="factory",
            left_angle=SQUARE_CUT,
            right_angle=SQUARE_CUT,
            shingle_from=0.0,
            shingle_to=end - start,
            nail_height=self.row.nail_height,
            nails=self._clear([start + nail for nail in self.strip.nails], room),
            corners=(),
            cutouts=(),
        )

    def _cut(self, cut: Cut, start: float, end: float, number: int) -> Piece:
        height = self._nail_height(cut)
        at = self.row.butt + height
        room = (
            self.room
            if height == self.row.nail_height
            else nail_room(at, deck=self.deck, valleys=self.valleys)
        )
        own = shared(cut.at(at), room)
        over_edge = shared(cut.at(max(at - _rooms.OVER_EDGE, cut.lower)), own)
        nails = self._nails(start, over_edge or own)
        return self._piece(
            start, end, cut.left, cut.right, number,
            nails=nails, height=height, corners=cut.corners, cutouts=cut.cutouts,
        )  # fmt: skip

    def _nail_height(self, cut: Cut) -> float:
        """Give where a cut piece is nailed: as its course, as far up as it allows, or in its middle
        where it is wide enough for two nails only further down, or begins higher."""
        butt, middle = self.row.butt, (cut.lower + cut.upper) / 2
        if cut.lower > butt and cut.lower + _rooms.OVER_OPENING > butt + self.row.nail_height:
            return middle - butt
        highest = max(middle, cut.upper - self.row.edge_distance)
        height = min(self.row.nail_height, highest - butt)
        over_edge = max(butt + height - _rooms.OVER_EDGE, cut.lower)
        width = min(_width(cut, butt + height), _width(cut, over_edge))
        if width < 2 * self.strip.end_distance and _width(cut, middle) > _width(cut, butt + height):
            return middle - butt
        return height

    def _nails(self, start: float, room: Sequence[Span]) -> tuple[float, ...]:
        """Give a piece its strip's nails where there is room, or one near each end."""
        own = [start + nail for nail in self.strip.nails]
        kept = [nail for left, right in room for nail in own if left + DUST < nail < right - DUST]
        if len(kept) >= LEAST_NAILS:
            return self._clear(kept, room)
        left, right = max(room, key=lambda one: one[1] - one[0], default=(0.0, 0.0))
        if right - left <= DUST:
            return ()
        inset = min(self.strip.end_distance, (right - left) / 4)
        return self._clear([left + inset, right - inset], room)

    def _clear(self, nails: list[float], room: Sequence[Span]) -> tuple[float, ...]:
        joints = self.row.joints_over
        return tuple([off_joint(nail, joints, room=room) for nail in nails] if joints else nails)

    def _piece(
        self,
        start: float,
        end: float,
        left: float,
        right: float,
        number: int,
        *,
        nails: tuple[float, ...],
        height: float | None = None,
        corners: Ring = (),
        cutouts: tuple[Ring, ...] = (),
    ) -> Piece:
        begins = self.row.trim if left == self.row.start_line and left != start else left - start
        left_angle, right_angle = _angles(corners)
        return Piece(
            number=number,
            left=left,
            right=right,
            left_end="cut" if begins > _SAME else "factory",
            right_end="cut" if end - right > _SAME else "factory",
            left_angle=left_angle,
            right_angle=right_angle,
            shingle_from=begins,
            shingle_to=begins + (right - left),
            nail_height=self.row.nail_height if height is None else height,
            nails=nails,
            corners=corners,
            cutouts=cutouts,
        )


def _width(cut: Cut, v: float) -> float:
    return sum(right - left for left, right in cut.at(v))


def _is_whole(stretch: Stretch, left: float, right: float) -> bool:
    """Tell whether a stretch covers all of its height between two upright lines."""
    parts = stretch.parts
    if len(parts) == 1:
        return _spans(parts[0], left, right)
    floors = {part.lower for part in parts}
    return len({part.lower for part in parts if _spans(part, left, right)}) == len(floors)


def _spans(part: Trapezoid, left: float, right: float) -> bool:
    return (
        part.lower_left <= left
        and part.upper_left <= left
        and part.lower_right >= right
        and part.upper_right >= right
    )


def _angles(corners: Ring) -> tuple[float, float]:
    """Give the angles of the left and right ends with the butt, inside the piece."""
    if not corners:
        return SQUARE_CUT, SQUARE_CUT
    (u, v), *_, (left_u, left_v) = corners
    right = 1 if corners[1][1] == v else 0
    (base_u, base_v), (right_u, right_v) = corners[right], corners[right + 1]
    return atan2(left_v - v, left_u - u), pi - atan2(right_v - base_v, right_u - base_u)


def shingle_count(
    pieces: int,
    *,
    course_lengths: Inches,
    slope_area: SquareInches,
    shingle_length: Inches,
    exposure: Inches,
) -> ShingleCount:
    """Count shingles piece by piece, beside what the length and the area would have said.

    ``least_by_length = course_lengths / shingle_length`` and
    ``least_by_area = slope_area / (shingle_length * exposure)``, in whole shingles.

    Args:
        pieces: Pieces laid.
        course_lengths: Of all courses together, each at its longest.
        slope_area: Of the deck.
        shingle_length: Length of a shingle.
        exposure: How much of each course shows.

    Returns:
        The three counts.

    Raises:
        Refused: A length is zero, negative or not finite.

    Source:
        Arithmetic.

    >>> shingle_count(100, course_lengths=20 * 168.5, slope_area=168 * 112,
    ...               shingle_length=39.375, exposure=5.625)
    ShingleCount(shingles=100, least_by_length=86, least_by_area=85)
    """
    require_positive("in", shingle_length=shingle_length, exposure=exposure)
    return ShingleCount(
        shingles=pieces,
        least_by_length=whole_pieces(course_lengths / shingle_length),
        least_by_area=whole_pieces(slope_area / (shingle_length * exposure)),
    )
