"""Windings: how the closing piece of one course comes out of the first shingle of another.

A trim t cuts a strip of that length off the first shingle of a course, which keeps its factory left
end. A course as wide as m shingles and a rest q then ends in a piece t + q wide, or a shingle less
where that is over one. If every strip served a closing piece, from a trim t to one of t + q or
more, and so on, the trims would climb round and round the shingle. Every turn round it takes one
shingle over the m of each course, and what a step is longer than q is waste. So the fewest turns
that come back to where they began give the fewest shingles.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, inf

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Shares:
    """What a course with some trim leaves for others, and what it needs.

    Attributes:
        strip: Width of the strip that is cut off its first shingle.
        needs: Width of the strip that its closing piece comes from, but for float dust.
        over: Its pieces over the whole shingles that its width holds.
    """

    strip: Inches
    needs: Inches
    over: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeUp:
    """How courses of one width are made up of shingles.

    Attributes:
        width: Of a course, trim line to trim line; a shingle or more.
        shingle_length: Length of a shingle.
        kerf: What a cut between two pieces of one shingle takes.
        least_end: Least width of the first and of the last piece.
        mark: Trims are multiples of this, as a tape is marked; 0 for any.
    """

    width: Inches
    shingle_length: Inches
    kerf: Inches
    least_end: Inches
    mark: Inches

    @property
    def dust(self) -> float:
        """Give what is forgiven as float dust."""
        return DUST * self.shingle_length

    @property
    def whole(self) -> int:
        """Give how many shingles the width holds."""
        return floor(self.width / self.shingle_length + DUST)

    @property
    def rest(self) -> float:
        """Give what the width holds besides."""
        return max(0.0, self.width - self.whole * self.shingle_length)

    def closing(self, trim: Inches) -> float:
        """Give the width of the last piece of a course; 0 where it ends with a whole shingle's."""
        ends = trim + self.rest
        return ends - self.shingle_length if ends > self.shingle_length + self.dust else ends

    def over(self, trim: Inches) -> int:
        """Count the pieces of a course over the whole shingles that its width holds."""
        ends = trim + self.rest
        if ends <= self.dust:
            return 0
        return 2 if ends > self.shingle_length + self.dust else 1

    def shares(self, trim: Inches) -> Shares:
        """Give what a course leaves and needs."""
        needs = self.closing(trim) + self.kerf - self.dust
        return Shares(strip=trim, needs=needs, over=self.over(trim))

    def narrowest_end(self, trim: Inches) -> float:
        """Give the width of the narrower of the first and the last piece of a course."""
        first, last = self.shingle_length - trim, self.closing(trim)
        return first if last <= self.dust else min(first, last)

    def holds(self, trim: Inches) -> bool:
        """Tell whether both end pieces of a course are wide enough."""
        return self.narrowest_end(trim) >= self.least_end - self.dust

    def from_on(self, place: Inches) -> float:
        """Give the first place from one on where a trim leaves wide ends, turns being counted on.

        Infinite where no trim does.
        """
        turn = floor(place / self.shingle_length + DUST)
        for least, turns in ((self.within(place), turn), (0.0, turn + 1)):
            found = [trim for trim in self.lowest(least) if self.holds(trim)]
            if found:
                return min(found) + turns * self.shingle_length
        return inf

    def within(self, place: Inches) -> float:
        """Give the trim at a place, turns left out."""
        turn = floor(place / self.shingle_length + DUST)
        return max(0.0, place - turn * self.shingle_length)

    def lowest(self, least: Inches = 0.0) -> list[float]:
        """Give the trims from one up at which the trims that leave wide ends may begin."""
        length, rest = self.shingle_length, self.rest
        edges = (0.0, self.least_end - rest, length - rest + self.least_end)
        trims = (self.marked(max(least, edge)) for edge in edges)
        return [trim for trim in trims if trim < length - self.dust]

    def marked(self, trim: Inches) -> float:
        """Give the next mark."""
        return ceil(trim / self.mark - DUST) * self.mark if self.mark else trim


def fewest_turns(make_up: MakeUp, courses: int) -> int:
    """Give the fewest turns round the shingle that so many courses can close in.

    From trim t the next one stands at ``t + rest + kerf`` or farther; where a turn ends on the way,
    the closing piece may come from a fresh shingle, and the next trim is any. Steps as short as can
    be, from each place where trims may begin: any other round could be slid down to one of these.

    Args:
        make_up: How a course is made up.
        courses: How many courses.

    Returns:
        Turns: shingles over the whole ones in the width of each course, for any trims whatever.
        0 where no trim leaves wide ends.

    Raises:
        Nothing.

    Source:
        Geometry: pieces that share shingles are rounds, and shorter steps never end later.

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> fewest_turns(shed, 20)  # 20 x 4 + 6 = 86 shingles
    6
    """
    starts = filter(make_up.holds, make_up.lowest())
    return min((_turns_from(make_up, start, courses) for start in starts), default=0)


def _turns_from(make_up: MakeUp, start: float, courses: int) -> int:
    """Give the turns of so many courses from one place; rounds that repeat are counted at once."""
    place, k = start, 0
    met: dict[int, tuple[int, float]] = {}
    while k < courses:
        key = round(make_up.within(place) / make_up.dust / 2)
        before, there = met.get(key, (k, place))
        rounds = (courses - k) // (k - before) if before < k else 0
        if rounds:
            place += rounds * (place - there)
            k += rounds * (k - before)
        else:
            met[key] = (k, place)
            place = make_up.from_on(_next(make_up, place))
            k += 1
    return whole_pieces((place - start) / make_up.shingle_length)


def _next(make_up: MakeUp, place: float) -> float:
    """Give the least place for the trim whose strip closes the course of another."""
    ends, length = place + make_up.rest, make_up.shingle_length
    return min(ends + make_up.kerf, whole_pieces(ends / length) * length)


def round_from(make_up: MakeUp, start: Inches, *, trims: int) -> tuple[Inches, ...]:
    """Give trims of which each cuts off the strip that closes the course of the one before.

    Args:
        make_up: How a course is made up.
        start: The first trim.
        trims: How many.

    Returns:
        The trims, with as little waste as can be; empty where no trim leaves wide ends.

    Raises:
        Nothing.

    Source:
        As `fewest_turns`.

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> round_from(shed, 0, trims=5)  # 33 + 11 in is a shingle and 4 5/8 in
    (0.0, 11.0, 22.0, 33.0, 4.625)
    """
    places = [make_up.from_on(start)]
    while len(places) < trims and places[-1] < inf:
        places.append(make_up.from_on(_next(make_up, places[-1])))
    return tuple(map(make_up.within, places)) if places[-1] < inf else ()


def turns_of(make_up: MakeUp, trims: Sequence[Inches], counts: Sequence[int]) -> int:
    """Count the shingles of courses with given trims over the whole ones in each.

    Of the strips cut off first shingles and the closing pieces, as many pairs share a shingle as
    can: ``closing + kerf <= trim``, the narrowest closing pieces from the narrowest strips that
    yield them.

    Args:
        make_up: How a course is made up.
        trims: The trims; end pieces may be of any width.
        counts: How many courses have each trim.

    Returns:
        Turns, the pieces of each course over the whole ones less the pairs.

    Raises:
        Nothing.

    Source:
        Maximum matching, as in `reuse`.

    >>> shed = MakeUp(width=168.5, shingle_length=39.375, kerf=0, least_end=3, mark=0)
    >>> turns_of(shed, (0, 6, 11, 17), (5, 5, 5, 5))  # 100 shingles simply, 90 with offcuts
    10
    """
    return turns([make_up.shares(trim) for trim in trims], counts)


def turns(shares: Sequence[Shares], counts: Sequence[int]) -> int:
    """Count as `turns_of` does, from what each trim leaves and needs.

    Args:
        shares: What courses with each trim leave and need.
        counts: How many courses there are of each.

    Returns:
        Turns.

    Raises:
        Nothing.

    Source:
        As `turns_of`.

    >>> turns([Shares(strip=6, needs=5, over=1)], (2,))
    0
    """
    pieces = sum(one.over * n for one, n in zip(shares, counts, strict=True))
    needs = sorted(
        (one.needs, n) for one, n in zip(shares, counts, strict=True) if one.over
    )  # fmt: skip
    waiting = pairs = k = 0
    for strip, count in sorted((one.strip, n) for one, n in zip(shares, counts, strict=True)):
        while k < len(needs) and needs[k][0] <= strip:
            waiting += needs[k][1]
            k += 1
        served = min(waiting, count)
        waiting -= served
        pairs += served
    return pieces - pairs
