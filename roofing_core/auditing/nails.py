"""Nails: whether something covers each nail, how far under its edge it lies, and what it holds."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from roofing_core.auditing.covers import Cover
from roofing_core.auditing.gauges import Gauge, Where
from roofing_core.auditing.rows import PlaneLaid, Row, stacked_rows
from roofing_core.auditing.shapes import Point, Span, Trapezoid, overlaps

Nails = tuple[float, ...]

#: What is nowhere is nowhere at all.
_NOWHERE = (0.0, -1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bare:
    """A piece with nails that no course covers.

    Attributes:
        row: Its row.
        piece: Its place among the pieces of the row, from 0.
        nails: How many of these caps do not cover either.
    """

    row: Row
    piece: int
    nails: int


def ask_nails(
    laid: PlaneLaid, covers: Sequence[Cover], gauges: Mapping[str, Gauge]
) -> tuple[Bare, ...]:
    """Ask of every nail of a plane what covers it, and whether it holds its piece to the deck.

    A nail is covered by the course above its own, or by metal or caps; from the joints of the
    course that covers it it has to stay clear, unless caps lie over those too.

    Args:
        laid: A plane with its rows.
        covers: What covers its edges.
        gauges: Where to note it.

    Returns:
        The pieces with nails that no course covers, from the eave up.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> ask_nails(PlaneLaid(plane=None, deck=(), starters=(), courses=()), (), {})
    ()
    """
    over = {id(below): above for below, above, _ in stacked_rows(laid)}
    return tuple(
        bare
        for row in (*laid.starters, *laid.courses)
        for bare in _Asking(laid, row, over.get(id(row)), covers, gauges).bare()
    )


class _Asking:
    """Asks about the nails of one row."""

    def __init__(
        self,
        laid: PlaneLaid,
        row: Row,
        above: Row | None,
        covers: Sequence[Cover],
        gauges: Mapping[str, Gauge],
    ) -> None:
        self.laid, self.row, self.above, self.covers = laid, row, above, covers
        self.holds = gauges["shingles.nails_hold"]
        self.covered = gauges["shingles.nails_covered"]
        self.clear = gauges["shingles.nails_clear"]
        self.joints = above.joints if above else ()
        self.places = [joint.u for joint in self.joints]
        self.decks: dict[float, list[Span]] = {}

    def bare(self) -> Iterator[Bare]:
        """Ask about every nail; give the pieces with nails that no course covers."""
        left = {k: piece.nails for k, piece in enumerate(self.row.pieces) if piece.nails}
        heights = sorted({self.row.pieces[k].nail_height for k in left})
        for height in heights if self.above else ():
            self._ask_together(self.row.butt + height, height, left)
        for k, nails in left.items():
            over = [self._lies_over(k, u) for u in nails]
            if not all(over):
                yield Bare(row=self.row, piece=k, nails=sum([one is None for one in over]))

    def _ask_together(self, v: float, height: float, left: dict[int, Nails]) -> None:
        """Ask about the nails at one height that are well at a glance, and leave the others.

        They lie under a stretch of the course above that is all of a piece, on the deck, within
        their own pieces, and clear of every joint.
        """
        under = v - self.above.butt if self.above else 0.0
        if self.above is None or under < self.covered.limit:
            return
        plain = overlaps(self.above.plain_below(v), self._across(v))
        well: list[float] = []
        others: dict[int, Nails] = {}
        for k in left:
            if self.row.pieces[k].nail_height == height:
                others[k] = self._told_apart(k, v, plain, well)
        well.sort()
        near, u = self._nearest_joint(well, v)
        if well and near >= self.clear.limit:
            self.holds.see_well(len(well))
            self.covered.see_least(under, len(well), self._where(well[0], v))
            if near < float("inf"):
                self.clear.see_least(near, len(well), self._where(u, v))
            left |= others

    def _told_apart(self, k: int, v: float, plain: Sequence[Span], well: list[float]) -> Nails:
        """Add the nails of a piece that are within it and under plain cover; give the others."""
        left, right = self._own(k, v)
        others = self.row.pieces[k].nails
        for start, end in plain:
            low, high = max(start, left), min(end, right)
            if low <= min(others) and max(others) <= high:
                well += others
                return ()
            well += [u for u in others if low <= u <= high]
            others = tuple([u for u in others if not low <= u <= high])
        return others

    def _where(self, u: float, v: float) -> Where:
        row = self.row
        k = max(0, bisect_right(row.lefts, u) - 1)
        return row.where(u, v, piece=row.pieces[k].number)

    def _own(self, k: int, v: float) -> Span:
        """Give from where to where a piece lies at one height: its longest stretch there."""
        row, piece = self.row, self.row.pieces[k]
        if not piece.corners:
            return (piece.left, piece.right) if row.butt <= v <= row.top else _NOWHERE
        across = [one.at(v) for one in row.shapes[k] if one.lower <= v <= one.upper]
        return max(across, key=_long, default=_NOWHERE)

    def _nearest_joint(self, nails: Sequence[float], v: float) -> tuple[float, float]:
        """Give how far the nearest joint of the course above is from any nail, and from which."""
        found = float("inf"), 0.0
        for joint in self.joints if nails else ():
            if joint.lower <= v <= joint.upper:
                k = bisect_left(nails, joint.u)
                for u in nails[max(0, k - 1) : k + 1]:
                    if abs(u - joint.u) < found[0]:
                        found = abs(u - joint.u), u
        return found

    def _to_joint(self, u: float, v: float) -> float:
        """Give how far the nearest joint of the course above stands from a nail, at its height."""
        k, near = bisect_left(self.places, u), float("inf")
        for joint in self.joints[max(0, k - 1) : k + 1]:
            if joint.lower <= v <= joint.upper:
                near = min(near, abs(joint.u - u))
        return near

    def _across(self, v: float) -> list[Span]:
        """Give where the deck lies at one height."""
        if v not in self.decks:
            self.decks[v] = self.laid.across(v)
        return self.decks[v]

    def _lies_over(self, k: int, u: float) -> bool | None:
        """Ask about one nail; tell whether a course covers it, or if not, None: nor do caps."""
        row, above, piece = self.row, self.above, self.row.pieces[k]
        v = row.butt + piece.nail_height
        where = row.where(u, v, piece=piece.number)
        on_deck = any(_spans(span, (u, u)) for span in self._across(v))
        loose = not (on_deck and _within(row.shapes[k], u, v))
        self.holds.see(loose, where)
        edge = above.edge_below(u, v) if above else None
        under = 0.0 if edge is None else v - edge
        near = float("inf") if edge is None else self._to_joint(u, v)
        caps = 0.0
        if under < self.covered.limit or near < self.clear.limit:
            caps, metal = self._covered_by((u, v))
            under = max(under, caps, metal)  # what lies over the edge may reach further
        self.covered.see(under, where)
        capped = caps >= self.covered.limit
        if edge is None:
            return False if capped else None
        if near < self.clear.limit and capped:
            return True  # the caps lie over that joint too
        if near < float("inf"):
            self.clear.see(near, where)
        return True

    def _covered_by(self, nail: Point) -> tuple[float, float]:
        """Give how far past a nail caps reach, or what lies over the courses; and how far metal."""
        reach = [(cover.is_metal, cover.over(nail)) for cover in self.covers]
        caps = max([far for is_metal, far in reach if not is_metal], default=0.0)
        return caps, max([far for is_metal, far in reach if is_metal], default=0.0)


def _long(span: Span) -> float:
    return span[1] - span[0]


def _spans(span: Span, ends: Span) -> bool:
    return span[0] <= ends[0] and ends[1] <= span[1]


def _within(shape: tuple[Trapezoid, ...], u: float, v: float) -> bool:
    """Tell whether a point lies within a shape."""
    return any(one.lower <= v <= one.upper and _spans(one.at(v), (u, u)) for one in shape)
