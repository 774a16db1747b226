"""The story pole: every line to snap up a plane, as one list of marks from the eave.

A stick held at the eave carries them to the roof; each is measured from the same end, so that no
error adds up. How it is printed at full size is `drawings.pole_strips`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from roofing_core.job.plan import Plan
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sheets.text import table

MarkKind = Literal["starter", "eave_metal", "butt", "tops", "top_edge"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """One mark on a story pole.

    Attributes:
        kind: What it marks: the starter's lower edge, the outer face of the eave metal, a butt, the
            snap line of a course's tops, the top edge of the plane.
        course: The course that it is for; 0 where it is for none.
        height: Up the slope from the outer face of the eave metal.
        above_starter: The same from the lower edge of the starter.
    """

    kind: MarkKind
    course: int
    height: Inches
    above_starter: Inches

    def says(self) -> str:
        """Give what it marks, in words."""
        if self.kind in {"butt", "tops"}:
            return f"{self.kind} {self.course}"
        return {"starter": "starter", "eave_metal": "eave metal", "top_edge": "top edge"}[self.kind]


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPole:
    """The marks of one plane.

    Attributes:
        plane: The plane that they are for.
        marks: One entry per mark, from the eave up.
    """

    plane: str
    marks: tuple[PoleMark, ...]


def story_pole(plan: Plan, plane: RoofPlane) -> StoryPole:
    """Mark a story pole for one plane: butts and snap lines, cumulative from the eave.

    Tops that are trimmed have no snap line: their course is set by its butt.

    Args:
        plan: A finished plan.
        plane: One of its planes.

    Returns:
        The marks, from the lowest up.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> pole = story_pole(planned, planned.planes[0])
    >>> [(mark.says(), mark.height) for mark in pole.marks][:3]
    [('butt 1', -0.5), ('starter', -0.25), ('eave metal', 0.0)]
    """
    past = plan.choices.coursing.starter_past_metal
    top = max(v for _, v in plane.corners)
    found: list[tuple[float, MarkKind, int]] = [(-past, "starter", 0), (0.0, "eave_metal", 0)]
    for course in plan.courses:
        if course.plane == plane.name:
            found += _marks(course)
    found.append((top, "top_edge", 0))
    marks = (
        PoleMark(kind=kind, course=course, height=height, above_starter=height + past)
        for height, kind, course in sorted(found)
    )
    return StoryPole(plane=plane.name, marks=tuple(marks))


def _marks(course: LaidCourse) -> Iterator[tuple[float, MarkKind, int]]:
    yield course.butt, "butt", course.number
    if course.top_trim <= 0:
        yield course.snap_line, "tops", course.number


def story_pole_text(pole: StoryPole) -> str:
    """Write the marks of a story pole as a table, in feet, inches and sixteenths and in mm.

    Args:
        pole: The marks.

    Returns:
        One line per mark, from the eave up, every line ended by a newline.

    Raises:
        Nothing.

    Source:
        The plan's own numbers; both to the nearest 1/16 in and mm.

    >>> mark = PoleMark(kind="butt", course=2, height=5.125, above_starter=5.375)
    >>> print(story_pole_text(StoryPole(plane="slope", marks=(mark,))), end="")
    mark    from the eave metal          from the starter
    butt 2             5 1/8 in  130 mm          5 3/8 in  137 mm
    """
    rows = [
        (
            mark.says(),
            *(
                write_length(at, system)
                for at in (mark.height, mark.above_starter)
                for system in ("us", "metric")
            ),
        )
        for mark in pole.marks
    ]
    headings = ("mark", "from the eave metal", "", "from the starter", "")
    return "".join(f"{line}\n" for line in table(headings, rows))
