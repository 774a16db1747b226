"""Underlayment rolled out as a crew would: row by row, from one roll after another.

Written from the trade's description alone, in whole ticks. Nothing of the library is used here.
"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass
class Sheet:
    """One row: its height on the slope, and how wide it comes off the roll."""

    kind: str
    lower: int
    upper: int
    width: int
    over_below: int
    pieces: list[tuple[int, int, int]] = field(default_factory=list)
    """Roll, left end and right end, from the left."""


def one_layer(*, slope: int, past: int, width: int, lap: int) -> list[Sheet]:
    """Lay one row over the other until the top edge is covered."""
    sheets: list[Sheet] = []
    lower = -past
    while True:
        upper = min(lower + width, slope)
        over = min(lap, upper - lower) if sheets else 0
        sheets.append(Sheet("full", lower, upper, width, over))
        if lower + width >= slope:
            return sheets
        lower += width - lap


def layers_at(sheets: list[Sheet], at: int) -> int:
    """Count the sheets that lie just above a height."""
    return sum(sheet.lower <= at < sheet.upper for sheet in sheets)


def twice_covered(sheets: list[Sheet], slope: int) -> bool:
    """Look between every two edges for a place with fewer than two sheets."""
    edges = sorted({0, *(e for s in sheets for e in (s.lower, s.upper) if 0 <= e < slope)})
    return all(layers_at(sheets, edge) > 1 for edge in edges)


def two_layers(*, slope: int, past: int, width: int, inch: int) -> list[Sheet]:
    """Lay a strip of half the roll and 1 in, then sheets by that lap, until all lies twice."""
    lap = width // 2 + inch
    sheets = [Sheet("starter_strip", -past, min(lap - past, slope), lap, 0)]
    lower = -past
    while True:
        reached = max(sheet.upper for sheet in sheets[1:]) if sheets[1:] else -past
        kind = "full" if reached < slope else "top_strip"
        wide = width if kind == "full" else slope - lower
        upper = min(lower + width, slope)
        sheets.append(Sheet(kind, lower, upper, wide, min(lap, upper - lower)))
        if twice_covered(sheets, slope):
            return sheets
        lower += width - lap


@dataclass
class Rolls:
    """The rolls opened so far, and how they may be cut."""

    length: int
    width: int
    lap: int
    stagger: int
    least_piece: int
    cuts: list[list[int]] = field(default_factory=list)
    in_hand: int = 0
    beside: tuple[int, int] = (0, 0)
    """The roll that a strip was ripped from, and the width left beside the strip."""

    def walk_back(self, place: int, below: list[int]) -> int:
        """Go back a tick at a time until an end lap is clear of all those in the row below."""
        while any(abs(place - lap) < self.stagger for lap in below):
            place -= 1
        return place

    def unroll(self, span: int, in_hand: int, below: list[int]) -> list[tuple[int, int]] | None:
        """Fill a row from one side: where each piece begins and ends; None where it gets stuck."""
        placed: list[tuple[int, int]] = []
        start = 0
        while start + in_hand < span:
            furthest = min(start + in_hand - self.lap, span - self.least_piece)
            lap_at = self.walk_back(furthest, below)
            if lap_at + self.lap - start < self.least_piece:
                return None
            placed.append((start, lap_at + self.lap))
            start, in_hand = lap_at, self.length
        return [*placed, (start, span)]

    def lay(self, sheet: Sheet, span: int, below: list[int]) -> None:
        """Cut one row the way that uses up the least, and lay it."""
        if sheet.width <= self.beside[1]:
            sheet.pieces = [(self.beside[0], 0, span)]
            self.beside = (0, 0)
            return
        opened, pieces, from_right = self.best(span, below)
        first = len(self.cuts) + 1 if opened == len(pieces) else len(self.cuts)
        self.cuts += [[] for _ in range(opened)]
        lying = []
        for k, (begins, ends) in enumerate(pieces):
            self.cuts[first + k - 1].append(ends - begins)
            left, right = (span - ends, span - begins) if from_right else (begins, ends)
            lying.append((first + k, left, right))
        self.in_hand = self.length - sum(self.cuts[-1])
        sheet.pieces = sorted(lying, key=lambda piece: piece[1])
        if len(pieces) == 1 and sheet.width < self.width:
            self.beside = (first, self.width - sheet.width)

    def best(self, span: int, below: list[int]) -> tuple[int, list[tuple[int, int]], bool]:
        """Try the roll in hand and a new one, from the left and from the right."""
        if self.in_hand >= span:
            return 0, [(0, span)], False
        found = []
        for from_right in (False, True):
            laps = [span - lap - self.lap for lap in below] if from_right else below
            for new, in_hand in ((0, self.in_hand), (1, self.length)):
                pieces = self.unroll(span, in_hand, laps)
                if pieces is not None:
                    opened = new + len(pieces) - 1
                    last = in_hand if len(pieces) == 1 else self.length
                    left = last - (pieces[-1][1] - pieces[-1][0])
                    found.append((opened * self.length - left, opened, pieces, from_right))
        _, opened, pieces, from_right = min(found, key=lambda way: way[0])
        return opened, pieces, from_right


def roll_out(sheets: list[Sheet], rolls: Rolls, *, span: int) -> None:
    """Lay every row in turn, its end laps clear of those in the row below."""
    below: list[int] = []
    for sheet in sheets:
        rolls.lay(sheet, span, below)
        below = [left for _, left, _ in sheet.pieces[1:]]


def nails_along(run: int, spacing: int) -> int:
    """Nail both ends of a line, and between them at most the spacing apart."""
    nails, at = 1, 0
    while at < run:
        at += spacing
        nails += 1
    return nails


def cap_nails(
    sheets: list[Sheet], *, eave: int, slope: int, lap_spacing: int, field_spacing: int, lines: int
) -> int:
    """Count cap nails: along every lower edge, in the lines between, and up every end lap."""
    heights = sorted({sheet.lower for sheet in sheets})
    count = len(heights) * (
        nails_along(eave, lap_spacing) + lines * nails_along(eave, field_spacing)
    )
    for sheet in sheets:
        above = min([height for height in heights if height > sheet.lower], default=slope)
        # Both ends of the line up an end lap stand on lines that are nailed already.
        up = max(0, nails_along(above - sheet.lower, lap_spacing) - 2)
        count += up * (len(sheet.pieces) - 1)
    return count
