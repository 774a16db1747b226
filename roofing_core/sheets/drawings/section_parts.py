"""What a section cuts through: the layers of a plan, from the deck up, as strips, legs and nails.

Along the roof every place is the plan's own. How thick a layer is drawn, and how far from the next,
is not: laid to scale, felt and metal would be thinner than a line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from roofing_core.job.edges import EdgeRun
from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Millimetres, System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.sheet_rows import sheet_rows

Look = Literal["wood", "metal", "sheet", "shingle", "bead"]

#: How thick layers are drawn, and how far one lies over the next.
THICK: Millimetres = 1.1
STEP: Millimetres = 2.4
_DECK: Millimetres = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A layer as a section cuts through it.

    Attributes:
        look: What it is drawn as.
        start: Where it begins, along the roof.
        end: Where it ends.
        above_start: Height of its underside where it begins, on paper, above the deck.
        above_end: The same where it ends.
        thick: How thick it is drawn.
        says: What it is; what is the same as another layer's says nothing.
    """

    look: Look
    start: Inches
    end: Inches
    above_start: Millimetres
    above_end: Millimetres
    thick: Millimetres = THICK
    says: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """A leg of metal bent down over an edge.

    Attributes:
        at: Where, along the roof.
        long: Its length.
        above: Height of its bend on paper, above the deck.
    """

    at: Inches
    long: Inches
    above: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Nail:
    """A nail as a section shows it.

    Attributes:
        at: Where, along the roof.
        above: Height of its head on paper, above the deck.
    """

    at: Inches
    above: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A section: its layers from the deck up, and what of the roof is shown.

    Attributes:
        title: Where it is.
        beneath: Which way the eye looks.
        left: Where the picture begins, along the roof.
        right: Where it ends.
        strips: The layers.
        legs: Legs of metal over the edge.
        nails: Nails.
    """

    title: str
    beneath: str
    left: Inches
    right: Inches
    strips: tuple[Strip, ...]
    legs: tuple[Leg, ...]
    nails: tuple[Nail, ...]


@dataclass(frozen=True, slots=True)
class Leaning:
    """Shingles as they lean on those below them: a step up for each exposure down the slope.

    Attributes:
        base: Height on paper of the top of a course, above the deck.
        exposure: Of the shingles.
        height: Of the shingles.
    """

    base: Millimetres
    exposure: Inches
    height: Inches

    def above(self, butt: Inches, at: Inches) -> Millimetres:
        """Give how high a course with this butt lies at a place."""
        return self.base + (butt + self.height - at) / self.exposure * STEP


class Parts:
    """The layers of a plan as a section cuts through them between two places.

    Args:
        plan: A finished plan.
        plane: Name of the plane.
        left: Where the picture begins, along the roof.
        right: Where the roof, or the picture of it, ends.
        system: The unit system.
    """

    def __init__(
        self, plan: Plan, plane: str, *, left: Inches, right: Inches, system: System
    ) -> None:
        self.plan, self.plane = plan, plane
        self.left, self.right, self.system = left, right, system

    def written(self, inches: Inches) -> str:
        """Write a length."""
        return write_length(inches, self.system)

    def deck(self, start: Inches) -> Strip:
        """Give the deck."""
        thick = self.written(self.plan.choices.panel.thickness)
        return Strip(look="wood", start=start, end=self.right, above_start=THICK - _DECK,
                     above_end=THICK - _DECK, thick=_DECK, says=f"deck, {thick} thick")  # fmt: skip

    def metal(self, run: EdgeRun, start: Inches, above: Millimetres) -> Strip:
        """Give the leg of metal that lies on the roof."""
        legs = (
            f"{self.written(run.deck_leg)} on the roof, {self.written(run.face_leg)} over the edge"
        )
        end = min(self.right, start + run.deck_leg)
        return Strip(look="metal", start=start, end=end, above_start=above, above_end=above,
                     thick=0.7, says=f"{spelt(run.material)}: {legs}")  # fmt: skip

    def sheets(self, first: int) -> tuple[Strip, ...]:
        """Give the rows of ice barrier and underlayment in the picture, each a step higher."""
        rows = [
            row
            for row in sheet_rows(self.plan)
            if row.plane == self.plane and row.upper > self.left and row.lower < self.right
        ]
        return tuple(self._row(row, (first + k) * STEP) for k, row in enumerate(rows))

    def _row(self, row: SheetRow, above: Millimetres) -> Strip:
        kind = "ice barrier" if row.kind == "ice_barrier" else "underlayment"
        reach = f"from {self.written(row.lower)} to {self.written(row.upper)}"
        start, end = max(self.left, row.lower), min(self.right, row.upper)
        return Strip(look="sheet", start=start, end=end, above_start=above, above_end=above,
                     thick=0.8, says=f"{kind}, row {row.number}: {reach}")  # fmt: skip

    def leaning(self, steps: int) -> Leaning:
        """Give how shingles lie that many steps above the deck."""
        shingle = self.plan.choices.shingle
        return Leaning(steps * STEP, shingle.exposure, shingle.height)

    def shingle(
        self, leaning: Leaning, lean_on: Inches, place: tuple[Inches, Inches], says: str
    ) -> Strip:
        """Give a shingle between two places that leans as a course with a certain butt does."""
        start, end = max(self.left, place[0]), min(self.right, place[1])
        low, high = leaning.above(lean_on, start), leaning.above(lean_on, end)
        return Strip(look="shingle", start=start, end=end, above_start=low, above_end=high,
                     says=says)  # fmt: skip

    def courses(self, leaning: Leaning, courses: Sequence[LaidCourse]) -> tuple[Strip, ...]:
        """Give courses, each over the one below."""
        return tuple(
            self.shingle(
                leaning,
                course.butt,
                (course.butt, course.butt + leaning.height - course.top_trim),
                self._course(course),
            )
            for course in courses
        )

    def _course(self, course: LaidCourse) -> str:
        if course.butt < 0:
            return f"course {course.number}, {self.written(-course.butt)} past the eave metal"
        trim = f", {self.written(course.top_trim)} off its top" if course.top_trim else ""
        closing = "" if course.nailable else ", bedded in cement"
        return f"course {course.number}, butt at {self.written(course.butt)}{trim}{closing}"

    def nails(self, leaning: Leaning, courses: Sequence[LaidCourse]) -> tuple[Nail, ...]:
        """Give the nails of courses that are in the picture."""
        return tuple(
            Nail(at=course.nail_line, above=leaning.above(course.butt, course.nail_line))
            for course in courses
            if self.left < course.nail_line < self.right
        )
