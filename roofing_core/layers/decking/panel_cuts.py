"""Panel cuts: which pieces of a deck are cut from which panel, and the fewest panels that could do.

Pieces keep the long way of the panel: its strength axis lies across the rafters. Where the joints
lie is `panel_joints`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise
from math import floor, fsum

from roofing_core.layers.decking.panel_joints import Framing, Joints, layouts
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, Refused, fault
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches

#: Of the layouts that keep the stagger, so many with the fewest pieces are cut to compare them.
LAYOUTS_CUT = 8
#: The finest steps by which the bound weighs a length: as many as a panel spans supports.
STEPS = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelCuts:
    """Which panel each piece is cut from.

    Attributes:
        whole: Number of the panel of each piece of a panel's full width, from 1.
        ripped: Number of the panel of each ripped piece, from 1.
        panels: How many panels are cut.
        least_panels: No way of cutting these pieces takes fewer.
    """

    whole: tuple[int, ...]
    ripped: tuple[int, ...]
    panels: int
    least_panels: int


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


def cut_panels(
    whole: Sequence[Inches], *, ripped: Sequence[Inches], in_width: int, panel_length: Inches
) -> PanelCuts:
    """Cut pieces from as few panels as can be found, and bound how few there could be.

    The longest first, each from the shortest rest that it fits: first the pieces of full width,
    then the ripped ones, side by side from what is left, then from new panels.

    Args:
        whole: Lengths of the pieces of a panel's full width.
        ripped: Lengths of the ripped pieces, all of one width.
        in_width: How many ripped pieces lie side by side in the width of a panel; 1 or more.
        panel_length: The long way of a panel; no piece is longer.

    Returns:
        A panel for each piece, how many there are, and the bound.

    Raises:
        Refused: Nothing of its own; those who call it have checked the measurements.

    Source:
        Best fit, longest first. The bound: no panel holds more than 1 of what is left of the
        pieces when their lengths are weighed by a dual feasible function (Fekete and Schepers,
        from memory).

    >>> cut_panels((96, 72, 48, 96, 24), ripped=(96, 72), in_width=3, panel_length=96).panels
    5
    """
    dust = DUST * panel_length
    rests, lanes = _Rests(dust), _Rests(dust)
    panels = 0
    of_whole, of_ripped = [0] * len(whole), [0] * len(ripped)
    for k in _longest_first(whole):
        rest, panel = rests.take(whole[k])
        if not panel:
            panels += 1
            rest, panel = panel_length, panels
        rests.put(rest - whole[k], panel)
        of_whole[k] = panel
    for k in _longest_first(ripped):
        rest, panel = lanes.take(ripped[k])
        if not panel:
            rest, panel = rests.take(ripped[k])
            if not panel:
                panels += 1
                rest, panel = panel_length, panels
            lanes.put(rest, panel, in_width - 1)
        lanes.put(rest - ripped[k], panel)
        of_ripped[k] = panel
    return PanelCuts(
        whole=tuple(of_whole),
        ripped=tuple(of_ripped),
        panels=panels,
        least_panels=_least(whole, ripped, in_width, panel_length),
    )


def _longest_first(lengths: Sequence[float]) -> list[int]:
    return sorted(range(len(lengths)), key=lambda k: -lengths[k])


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


def _least(
    whole: Sequence[float], ripped: Sequence[float], in_width: int, panel_length: float
) -> int:
    # Of pieces of one width, in_width lie side by side: each counts for that share of a panel.
    counted = [(size / panel_length, float(n)) for size, n in Counter(whole).items()]
    counted += [(size / panel_length, n / in_width) for size, n in Counter(ripped).items()]
    limits = {share for share, _ in counted if share <= 1 / 2}
    weights = [_split(0.0), *map(_stepped, range(1, STEPS + 1)), *map(_split, limits)]
    return max(whole_pieces(fsum(weight(share) * n for share, n in counted)) for weight in weights)


Row = tuple[Inches, Inches, Joints]
"""A row of panels: its lower edge, its upper edge, and its joints."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckPiece:
    """One panel, or part of one, on the deck.

    Attributes:
        row: Number of its row, from 1 at the eave.
        left: u of its left end.
        right: u of its right end.
        lower: v of its lower edge.
        upper: v of its upper edge.
        panel: Number of the bought panel that it is, or is cut from.
    """

    row: int
    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    panel: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidPanels:
    """The rows of a deck, its pieces, and how these are cut.

    Attributes:
        rows: Lower edge, upper edge and joints of each row, from the eave.
        pieces: Every piece, row by row from the eave, left to right.
        cuts: Which panel each piece is cut from.
    """

    rows: tuple[Row, ...]
    pieces: tuple[DeckPiece, ...]
    cuts: PanelCuts


def lay_panels(framing: Framing, *, slope_length: Inches, panel_width: Inches) -> LaidPanels:
    """Lay rows of panels up a plane and cut them: of the first layouts, from the fewest panels.

    Args:
        framing: The supports, and what panels on them have to keep.
        slope_length: Up the slope; the top row is ripped to what is left of it.
        panel_width: The short way of a panel.

    Returns:
        The rows, their pieces and the panels.

    Raises:
        Refused: No layout keeps the stagger and the least piece.

    Source:
        Counting; the rules are those of `Framing`.

    >>> frame = Framing(
    ...     eave_length=96, support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1
    ... )
    >>> lay_panels(frame, slope_length=144, panel_width=48).cuts.panels
    3
    """
    lowers = [k * panel_width for k in range(whole_pieces(slope_length / panel_width))]
    edges = list(pairwise([*lowers, slope_length]))
    pairs = islice(layouts(framing, rows=len(edges)), LAYOUTS_CUT)
    laid = (
        _cut(framing, [(*edge, pair[k % 2]) for k, edge in enumerate(edges)], panel_width)
        for pair in pairs
    )
    area = framing.eave_length * slope_length / (framing.panel_length * panel_width)
    fewest = _fewest(laid, whole_pieces(area))
    if fewest is None:
        raise Refused(_stuck_fault(framing))
    return fewest


def _fewest(laid: Iterable[LaidPanels], by_area: int) -> LaidPanels | None:
    """Give the layout of the fewest panels; none can have fewer than the area takes."""
    fewest = None
    for one in laid:
        if fewest is None or one.cuts.panels < fewest.cuts.panels:
            fewest = one
        if fewest.cuts.panels <= by_area:
            break
    return fewest


def _cut(framing: Framing, rows: list[Row], panel_width: float) -> LaidPanels:
    bare = [
        (number, left, right, lower, upper)
        for number, (lower, upper, joints) in enumerate(rows, 1)
        for left, right in pairwise(framing.ends(joints))
    ]
    lower, upper, top_joints = rows[-1]
    in_width = int(panel_width / (upper - lower) + DUST)
    ripped = len(top_joints) + 1 if upper - lower < panel_width * (1 - DUST) else 0
    sizes = [right - left for _, left, right, _, _ in bare]
    split = len(sizes) - ripped
    cuts = cut_panels(
        sizes[:split], ripped=sizes[split:], in_width=in_width, panel_length=framing.panel_length
    )
    pieces = tuple(
        DeckPiece(row=row, left=left, right=right, lower=lower, upper=upper, panel=panel)
        for (row, left, right, lower, upper), panel in zip(
            bare, cuts.whole + cuts.ripped, strict=True
        )
    )
    return LaidPanels(rows=tuple(rows), pieces=pieces, cuts=cuts)


def _stuck_fault(framing: Framing) -> Fault:
    return fault(
        "joint_stagger",
        Amount(framing.joint_stagger, "count"),
        "fewer supports, or closer ones, or a smaller least_spans: rows of whole panels ",
        length(framing.panel_length),
        " long, cut only near the rakes, on supports ",
        length(framing.support_spacing),
        f" apart cannot keep end joints {framing.joint_stagger} supports apart and every piece on ",
        f"{framing.least_spans + 1} supports or more",
    )
