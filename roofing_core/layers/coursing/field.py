"""The field: every course of one plane, laid piece by piece within its outline.

Heights and trims come from `courses` and from the trim sequence; `pieces` cuts one row. What goes
under the first course is `starters`.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from types import MappingProxyType

from roofing_core.layers.coursing.courses import Course, Courses
from roofing_core.layers.coursing.joint_lines import is_within, joints_on
from roofing_core.layers.coursing.joints import clearance_between
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.nail_room import NEAR_JOINT, ValleyLine
from roofing_core.layers.coursing.pieces import (
    Piece,
    Row,
    Strip,
    pieces_of,
)
from roofing_core.layers.coursing.valley_joints import moved_from_valleys
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import RoofPlane, is_lower
from roofing_core.roof.polygons import signed_area
from roofing_core.roof.slicing import Region, Stretch

#: Courses that are laid alone.
NO_STARTER: Mapping[int, Sequence[Inches]] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One plane made ready for its courses.

    Attributes:
        plane: The plane.
        deck: Its region as it is.
        region: What its shingles cover.
        valleys: Its valleys, of which nails keep clear.
        start_line: The line from which joints are counted, where most courses start.
        sequence: Length trimmed from the first shingle of each course, repeating.
        edge_distance: No nail nearer than this to the top edge of the deck.
        least_valley_piece: No joint nearer than this to the middle of a valley, along the nail
            line.
        minimum_clearance: Least distance to other joints of one that was moved away from there.
    """

    plane: RoofPlane
    deck: Region
    region: Region
    valleys: tuple[ValleyLine, ...]
    start_line: Inches
    sequence: tuple[Inches, ...]
    edge_distance: Inches
    least_valley_piece: Inches = 0.0
    minimum_clearance: Inches = 0.0


def lay_courses(
    field: Field,
    lines: Courses,
    *,
    strip: Strip,
    nail_low: Inches,
    joints_under: Mapping[int, Sequence[Inches]] = NO_STARTER,
) -> tuple[LaidCourse, ...]:
    """Lay every course of a plane.

    Args:
        field: The plane made ready.
        lines: Where its courses lie up the slope, from `courses`.
        strip: What they are cut from.
        nail_low: Low edge of the nail zone above the butt.
        joints_under: Joints of starters that lie right under a course, by its number.

    Returns:
        One entry per course, eave first. Courses of which nothing lies on the plane are left out.
        Courses that are cut alike share their pieces.

    Raises:
        Nothing: `courses` and `joints` check what they are given.

    Source:
        Geometry.

    >>> from roofing_core.layers.coursing.courses import courses
    >>> from roofing_core.roof.forms import Pyramid
    >>> from roofing_core.roof.regions import region_of
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> plane = surfaces(Pyramid(length=96, width=96, pitch=0.75)).planes[0]
    >>> region = region_of(plane, past={"eave": 0.5})
    >>> field = Field(plane=plane, deck=region_of(plane), region=region, valleys=(), start_line=0,
    ...               sequence=(0, 6), edge_distance=0.75)
    >>> lines = courses(60, shingle_height=12, exposure=5)
    >>> strip = Strip(length=36, nails=(1, 13, 23, 35), end_distance=1)
    >>> [course.pieces for course in lay_courses(field, lines, strip=strip, nail_low=5.5)]
    [4, 3, 3, 3, 3, 3, 3, 3, 2, 1, 1, 1, 1]
    """
    laying = _Laying(field, strip, nail_low)
    rows: list[_Row] = []
    for line in lines.courses:
        below = rows[-1].reaching if rows else ()
        row = laying.row(line, lines, below=(*below, *joints_under.get(line.number, ())))
        rows += [row] if row.pieces else []
    rows = [laying.clear_of(row, over) for row, over in pairwise(rows)] + rows[-1:]
    above = [row.joints for row in rows]
    if rows:
        above += laying.as_if_above(rows[-1], 2)
    return tuple(laying.laid(row, above[k + 1], above[k + 2]) for k, row in enumerate(rows))


#: Joints that were moved and to where, the pieces, and where they meet on the deck.
_Cut = tuple[tuple[tuple[float, float], ...], tuple[Piece, ...], tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class _Row:
    """A row cut: a course before it is held against those above it.

    What reaches are its joints, with those of the part alone that the next course covers.
    """

    line: Course
    cut: Row
    stretches: tuple[Stretch, ...]
    deck: tuple[Stretch, ...]
    pieces: tuple[Piece, ...]
    joints: tuple[float, ...]
    reaching: tuple[float, ...]
    exposed: float


class _Laying:
    """Lays the courses of one plane. Rows that are cut alike are cut once."""

    def __init__(self, field: Field, strip: Strip, nail_low: float) -> None:
        self.field, self.strip, self.nail_low = field, strip, nail_low
        self.tops = sorted(_level_tops(field.plane))
        # Where valleys leave nothing of its top, shingles end lower than the plane.
        self.height = max(v for _, v in field.plane.corners)
        self._cut_before: dict[object, _Cut] = {}
        self._cleared: dict[object, tuple[Piece, ...]] = {}

    def row(self, line: Course, lines: Courses, *, below: tuple[float, ...]) -> _Row:
        region, deck = self.field.region, self.field.deck
        last = line.number == lines.count
        next_butt = region.highest if last else lines.courses[line.number].butt
        stretches = region.between(line.butt, line.snap_line)
        on_deck = deck.between(line.butt, next_butt)
        cut, pieces, joints = self._cut(line, stretches, on_deck, below)
        showing = region.between(line.butt, next_butt)
        exposed = sum(one.area() for one in showing)
        reaching = self._reaching(line, lines, pieces, joints)
        return _Row(line, cut, stretches, on_deck, pieces, joints, reaching, exposed)

    def _reaching(
        self, line: Course, lines: Courses, pieces: tuple[Piece, ...], joints: tuple[float, ...]
    ) -> tuple[float, ...]:
        """Give the joints of a course that water from those of the next one can come to.

        Where the plane widens upwards some begin under the next course, and show nowhere.
        """
        meet = [two.left for one, two in pairwise(pieces) if abs(two.left - one.right) <= DUST]
        hidden = set(meet) - set(joints)
        if not hidden:
            return joints
        over = [one.butt for one in lines.courses[line.number + 1 : line.number + 2]]
        ends = line.butt, min([self.field.region.highest, *over])
        on_deck, covered = self.field.deck.between(*ends), self.field.region.between(*ends)
        here = (at for at in hidden if is_within(at, on_deck) and is_within(at, covered))
        return tuple(sorted((*joints, *here)))

    def clear_of(self, row: _Row, over: _Row) -> _Row:
        """Give a row with its nails clear of the joints of the one over it."""
        joints = tuple(sorted(over.joints))
        if not any(_are_near(piece.nails, joints) for piece in row.pieces):
            return row
        alike = id(row.pieces), joints
        if alike not in self._cleared:
            cut = replace(row.cut, joints_over=joints)
            self._cleared[alike] = self._pieces(row.stretches, cut)
        return replace(row, pieces=self._cleared[alike])

    def _cut(
        self,
        line: Course,
        stretches: tuple[Stretch, ...],
        on_deck: tuple[Stretch, ...],
        below: tuple[float, ...],
    ) -> tuple[Row, tuple[Piece, ...], tuple[float, ...]]:
        region = self.field.region
        row = Row(
            butt=line.butt,
            lower=max(line.butt, region.lowest),
            upper=min(line.snap_line, self.height),
            start_line=self.field.start_line,
            trim=self._trim(line.number),
            nail_height=line.nail_line - line.butt,
            edge_distance=self.field.edge_distance,
        )
        alike = self._alike(row, stretches, on_deck)
        found = self._cut_before.get(alike) if alike else None
        if found is None:
            # Also joints that only the part under the next course has, or that the deck has not.
            joints = self._joints(row.trim, stretches, stretches)
            nail_line = row.butt + row.nail_height
            above = self._joints(self._trim(line.number + 1), stretches, on_deck)
            moved = self._moved(joints, stretches, nail_line, beside=(*below, *above))
            row = replace(row, moved=tuple(moved.items())) if moved else row
            places = (moved.get(joint, joint) for joint in joints)
            found = (
                row.moved,
                self._pieces(stretches, row),
                tuple(at for at in places if is_within(at, on_deck)),
            )
            if alike:
                self._cut_before[alike] = found
        return replace(row, moved=found[0]), *found[1:]

    def _pieces(self, stretches: tuple[Stretch, ...], row: Row) -> tuple[Piece, ...]:
        return pieces_of(
            stretches,
            row=row,
            strip=self.strip,
            deck=self.field.deck,
            valleys=self.field.valleys,
        )

    def _alike(
        self, row: Row, stretches: tuple[Stretch, ...], on_deck: tuple[Stretch, ...]
    ) -> object:
        """Give what a row of plain rectangles is cut by; None where any is cut on the slope."""
        upright = all(
            one.lower == row.lower and one.upper == row.upper and one.is_rectangle()
            for one in stretches
        )
        if not upright:
            return None
        ends = tuple((one.left, one.right) for one in (*stretches, *on_deck))
        at = row.butt + row.nail_height  # far below the eave that is off the deck
        zones = tuple(valley.zone(at) for valley in self.field.valleys)
        nailed = self.field.deck.at(at)
        return row.trim, row.nail_height, len(stretches), ends, zones, nailed

    def _trim(self, number: int) -> float:
        sequence = self.field.sequence
        return sequence[(number - 1) % len(sequence)]

    def _joints(
        self, trim: float, stretches: Sequence[Stretch], on_deck: Sequence[Stretch]
    ) -> tuple[float, ...]:
        long = self.strip.length
        start = self.field.start_line
        return joints_on(stretches, on_deck, trim=trim, start_line=start, long=long)

    def _moved(
        self,
        joints: tuple[float, ...],
        stretches: Sequence[Stretch],
        nail_line: float,
        *,
        beside: tuple[float, ...],
    ) -> dict[float, float]:
        """Give the joints that stand too near to a valley, and where they go instead."""
        if not (self.field.valleys and self.field.least_valley_piece):
            return {}
        return moved_from_valleys(
            joints,
            stretches=stretches,
            valleys=self.field.valleys,
            v=nail_line,
            least=self.field.least_valley_piece,
            beside=beside,
            clearance=self.field.minimum_clearance,
            long=self.strip.length,
        )

    def as_if_above(self, row: _Row, count: int) -> list[tuple[float, ...]]:
        """Give the joints of the next courses, as the sequence goes on over the last one."""
        return [
            self._joints(self._trim(row.line.number + k), row.stretches, row.deck)
            for k in range(1, count + 1)
        ]

    def laid(self, row: _Row, above: tuple[float, ...], above_two: tuple[float, ...]) -> LaidCourse:
        line, last, low_top = row.line, row.pieces[-1], self._low_top(row.line)
        long = row.stretches[-1].right - row.stretches[0].left
        return LaidCourse(
            number=line.number,
            butt=line.butt,
            snap_line=line.snap_line,
            exposure=line.exposure,
            top_trim=line.top_trim,
            nailable=line.nailable and low_top is None,
            nail_line=line.nail_line if low_top is None else self._under(low_top, line),
            trim=row.cut.trim,
            pieces=len(row.pieces),
            joints=row.joints,
            clearance=clearance_between(row.reaching, above, none=long),
            clearance_two=clearance_between(row.joints, above_two, none=long),
            overhang=max(0.0, self.strip.length - last.shingle_to),
            nails=sum(len(piece.nails) for piece in row.pieces),
            laid=row.pieces,
            plane=self.field.plane.name,
            length=sum(one.right - one.left for one in row.stretches),
            exposed_area=row.exposed,
            area=sum(one.area() for one in row.stretches),
            bedding_area=self._bedding(row),
        )

    def _bedding(self, row: _Row) -> float:
        """Give the area to bed: all of a closing course, or its pieces that a lower edge cuts."""
        line, region = row.line, self.field.region
        if not line.nailable:
            bedded = region.between(max(line.butt, 0.0), region.highest)
            return sum(one.area() for one in bedded)
        if self._low_top(line) is None:
            return 0.0
        height = line.nail_line - line.butt
        return sum(
            signed_area(piece.corners)
            for piece in row.pieces
            if piece.corners and piece.nail_height < height - DUST
        )

    def _low_top(self, line: Course) -> float | None:
        """Give a lower top edge of the plane that leaves no room for the nail zone below it."""
        if not line.nailable:
            return None
        room = self.nail_low + self.field.edge_distance
        low = (top for top in self.tops if top < self.height - DUST)
        return next((top for top in low if DUST < top - line.butt < room - DUST), None)

    def _under(self, top: float, line: Course) -> float:
        """Give where the part of a course that a lower top edge cuts off is nailed."""
        return min(line.nail_line, max(top - self.field.edge_distance, (line.butt + top) / 2))


def _are_near(nails: Sequence[float], joints: Sequence[float]) -> bool:
    """Tell whether a joint stands so near to a nail that it would lay it bare."""
    return bool(nails) and any(
        abs(joints[k] - nail) < NEAR_JOINT
        for nail in nails
        for k in range(
            bisect_left(joints, nail - NEAR_JOINT), bisect_right(joints, nail + NEAR_JOINT)
        )
    )


def _level_tops(plane: RoofPlane) -> Iterator[float]:
    """Give the heights of the level edges that a plane ends in at its top."""
    for k, kind in enumerate(plane.edges):
        if kind in {"ridge", "headwall", "pitch_break"} and not is_lower(plane, k):
            yield plane.corners[k][1]
