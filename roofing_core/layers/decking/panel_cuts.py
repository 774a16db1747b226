"""Panel cuts: which pieces of a deck are cut from which panel, and the fewest panels that could do.

Pieces keep the long way of the panel: its strength axis lies across the rafters. Where the joints
lie is `panel_joints`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import floor, fsum

from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.units import Inches, SquareInches

#: The finest steps by which the bound weighs a length: as many as a panel spans supports.
STEPS = 16

#: Lengths and slants are alike when they agree to so many places, in inches.
_PLACES = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """What a piece is cut from: the least rectangle that it fits.

    Attributes:
        length: The long way of the panel.
        height: The short way.
        area: Of the piece itself.
        slant: How far one end leans over its height, to the right going up; 0 where both are square
            or both lean.
    """

    length: Inches
    height: Inches
    area: SquareInches
    slant: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelCuts:
    """Which panel each piece is cut from.

    Attributes:
        on: Number of the panel of each piece, from 1.
        panels: How many panels are cut.
    """

    on: tuple[int, ...]
    panels: int


class _Rests:
    """Lengths left over, by size: each is given to the longest piece that fits it best."""

    def __init__(self, dust: float) -> None:
        self.dust = dust
        self.on: dict[float, list[int]] = {}

    def put(self, rest: float, panel: int, times: int = 1) -> None:
        """Keep a rest, so many times over."""
        if rest > self.dust and times:
            self.on.setdefault(rest, []).extend([panel] * times)

    def take(self, size: float) -> tuple[float, int]:
        """Give the shortest rest that is long enough, and its panel; 0 where there is none."""
        rest = min((rest for rest in self.on if rest >= size - self.dust), default=0.0)
        if not rest:
            return 0.0, 0
        panel = self.on[rest].pop()
        if not self.on[rest]:
            del self.on[rest]
        return rest, panel


class _Panels:
    """The panels begun so far: what is left of their length, and of lanes ripped from it."""

    def __init__(self, length: float) -> None:
        self.length, self.count = length, 0
        self.whole = _Rests(DUST * length)
        self.lanes: dict[int, _Rests] = {}

    def cut(self, size: float, in_width: int) -> int:
        """Cut a piece, of which so many lie side by side in a panel; give its panel.

        From a lane begun before, of its own width or else of the next wider one that is long
        enough; else from the full width, where the lanes beside it are kept; else from a new panel.
        """
        for lane in sorted((n for n in self.lanes if n <= in_width), reverse=True):
            rest, panel = self.lanes[lane].take(size)
            if panel:
                self.lanes[lane].put(rest - size, panel)
                return panel
        rest, panel = self.whole.take(size)
        if not panel:
            self.count += 1
            rest, panel = self.length, self.count
        lanes = self.lanes.setdefault(in_width, _Rests(DUST * self.length))
        lanes.put(rest, panel, in_width - 1)
        lanes.put(rest - size, panel)
        return panel

    def cut_whole(self, size: float) -> int:
        """Cut a piece of the full width of a panel; give its panel."""
        rest, panel = self.whole.take(size)
        if not panel:
            self.count += 1
            rest, panel = self.length, self.count
        self.whole.put(rest - size, panel)
        return panel


def cut_panels(blanks: Sequence[Blank], *, panel_length: Inches, panel_width: Inches) -> PanelCuts:
    """Cut pieces from as few panels as can be found.

    Pieces that lean alike at one end are cut in pairs by one cut, the second turned about. Then the
    longest first, each from the shortest rest that it fits: the pieces of full width, then the
    ripped ones, the widest first, side by side from what is left, then from new panels.

    Args:
        blanks: The pieces; none is longer or higher than a panel.
        panel_length: The long way of a panel.
        panel_width: The short way of a panel.

    Returns:
        A panel for each piece, and how many there are.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Best fit, longest first.

    >>> five = [Blank(length=n, height=48, area=48 * n) for n in (96, 72, 48, 96, 24)]
    >>> rips = [Blank(length=n, height=16, area=16 * n) for n in (96, 72)]
    >>> cut_panels([*five, *rips], panel_length=96, panel_width=48).panels
    5
    """
    panels = _Panels(panel_length)
    on = [0] * len(blanks)
    groups = _groups(blanks, panel_length, panel_width)
    for in_width in sorted(groups):
        for size, places in sorted(groups[in_width], key=lambda one: -one[0]):
            panel = panels.cut(size, in_width) if in_width else panels.cut_whole(size)
            for place in places:
                on[place] = panel
    return PanelCuts(on=tuple(on), panels=panels.count)


_Group = list[tuple[float, tuple[int, ...]]]


def _groups(blanks: Sequence[Blank], panel_length: float, panel_width: float) -> dict[int, _Group]:
    """Give lengths to cut, each with the places of its pieces: by how many lie side by side.

    Those of a panel's full width, which take no ripping, stand at 0.
    """
    groups: dict[int, _Group] = {}
    for size, height, places in _in_pairs(blanks, panel_length):
        groups.setdefault(_in_width(height, panel_width), []).append((size, places))
    return groups


def _in_width(height: float, panel_width: float) -> int:
    """Count the pieces that lie side by side in the width of a panel; 0 for one as wide as it."""
    if height >= panel_width * (1 - DUST):
        return 0
    return int(panel_width / height + DUST)


def _in_pairs(
    blanks: Sequence[Blank], panel_length: float
) -> Iterator[tuple[float, float, tuple[int, ...]]]:
    """Give length, height and pieces: two where one slanting cut makes both."""
    alike: dict[tuple[float, float], list[int]] = {}
    for place, blank in enumerate(blanks):
        if blank.slant:
            key = round(blank.slant, _PLACES), round(blank.height, _PLACES)
            alike.setdefault(key, []).append(place)
        else:
            yield blank.length, blank.height, (place,)
    for (slant, _), places in alike.items():
        places.sort(key=lambda place: blanks[place].length)
        yield from _paired(blanks, places, abs(slant), panel_length)


def _paired(
    blanks: Sequence[Blank], places: list[int], slant: float, panel_length: float
) -> Iterator[tuple[float, float, tuple[int, ...]]]:
    """Pair the shortest with the longest that still lies beside it in one panel."""
    first, last = 0, len(places) - 1
    while first <= last:
        short, long = blanks[places[first]], blanks[places[last]]
        both = short.length + long.length - slant
        if first < last and both <= panel_length * (1 + DUST):
            yield both, long.height, (places[last], places[first])
            first += 1
        else:
            yield long.length, long.height, (places[last],)
        last -= 1


def least_panels(blanks: Sequence[Blank], *, panel_length: Inches, panel_width: Inches) -> int:
    """Bound how few panels could hold pieces: no way of cutting them takes fewer.

    The more of two bounds: their area, and for the rectangles among them of full width, with the
    ripped ones of which equally many lie side by side, their lengths weighed so that no panel holds
    more than 1.

    Args:
        blanks: The pieces.
        panel_length: The long way of a panel.
        panel_width: The short way of a panel.

    Returns:
        The bound.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Dual feasible functions (Fekete and Schepers, from memory).

    >>> third = [Blank(length=34, height=48, area=34 * 48)] * 5  # two to a panel
    >>> least_panels(third, panel_length=96, panel_width=48)
    3
    """
    counted: dict[int, Counter[float]] = {0: Counter()}
    for blank in blanks:
        if blank.area >= blank.length * blank.height * (1 - DUST):
            in_width = _in_width(blank.height, panel_width)
            counted.setdefault(in_width, Counter())[blank.length / panel_length] += 1
    whole = [(share, float(n)) for share, n in counted.pop(0).items()]
    by_area = fsum(blank.area for blank in blanks) / (panel_length * panel_width)
    bounds = [by_area, _most(whole)]
    for in_width, sizes in counted.items():
        # Of pieces of one width, in_width lie side by side: each counts for that share of a panel.
        bounds.append(_most([*whole, *((share, n / in_width) for share, n in sizes.items())]))
    return max(map(whole_pieces, bounds))


def _most(counted: Sequence[tuple[float, float]]) -> float:
    limits = {share for share, _ in counted if share <= 1 / 2}
    weights = [_split(0.0), *map(_stepped, range(1, STEPS + 1)), *map(_split, limits)]
    return max(fsum(weight(share) * n for share, n in counted) for weight in weights)


def _stepped(steps: int) -> Callable[[float], float]:
    """Weigh a share of a length: up to steps + 1 equal parts, what is not a whole part counts 0."""

    def weight(share: float) -> float:
        parts = (steps + 1) * share
        return share if abs(parts - round(parts)) < DUST else floor(parts) / steps

    return weight


def _split(at: float) -> Callable[[float], float]:
    """Weigh a share of a length: 1 where it leaves less than a limit, 0 where it is less."""

    def weight(share: float) -> float:
        if share > 1 - at + DUST:
            return 1.0
        return 0.0 if share < at - DUST else share

    return weight
