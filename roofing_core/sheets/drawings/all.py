"""All drawings of a plan, or those of one kind, in the order in which they are used."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Literal

from roofing_core.job.plan import Plan
from roofing_core.measures.faults import fault, refuse_if_any
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.caps import caps_drawing
from roofing_core.sheets.drawings.flashings import flashings_drawing
from roofing_core.sheets.drawings.metal import metal_drawing
from roofing_core.sheets.drawings.metal_cuts import metal_cuts_drawing
from roofing_core.sheets.drawings.nailing import nailing_drawing
from roofing_core.sheets.drawings.offcuts import offcuts_drawing
from roofing_core.sheets.drawings.paper import Drawing
from roofing_core.sheets.drawings.planes import plane_drawings
from roofing_core.sheets.drawings.pole_strips import pole_strips
from roofing_core.sheets.drawings.rolls import rolls_drawing
from roofing_core.sheets.drawings.roof_plan import roof_plan
from roofing_core.sheets.drawings.sections import sections_drawing
from roofing_core.sheets.drawings.sheet_rows import sheets_drawing
from roofing_core.sheets.drawings.shingle_cuts import shingle_cuts_drawing
from roofing_core.sheets.story_pole import story_pole

DrawingKind = Literal[
    "roof_plan",
    "underlayment",
    "rolls",
    "metal",
    "metal_cuts",
    "plane",
    "nailing",
    "shingle_cuts",
    "offcuts",
    "caps",
    "flashings",
    "sections",
    "story_pole",
]


def drawings(plan: Plan, kind: DrawingKind, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw a plan: its roof from above, its planes, its layers, what to cut and what to mark.

    Args:
        plan: A finished plan.
        kind: What to draw.
        system: The unit system of every measurement in it.

    Returns:
        The drawings of that kind, one a plane or one a page; the same plan gives the same bytes.

    Raises:
        Nothing: Any plan can be drawn.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [drawing.title for drawing in drawings(planned, "metal_cuts")]
    ['Cutting sheet: metal']
    """
    return _MAKERS[kind](plan, system)


def drawing_page(plan: Plan, kind: DrawingKind, *, page: int = 1, system: System = "us") -> Drawing:
    """Draw one page of a kind of drawing.

    Args:
        plan: A finished plan.
        kind: What to draw.
        page: Which of its drawings, from 1: one a plane or one a page.
        system: The unit system of every measurement in it.

    Returns:
        The drawing.

    Raises:
        Refused: The roof has nothing of that kind, or there is no such page; says which there are.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> drawing_page(planned, "story_pole", page=5).title
    'Slope: story pole, page 5 of 5'
    """
    pages = drawings(plan, kind, system=system)
    if not pages:
        wanted = "another drawing: this roof has nothing that it would show"
        refuse_if_any([fault("drawing", kind, wanted)])
    if not 1 <= page <= len(pages):
        refuse_if_any([fault("page", str(page), f"a page from 1 to {len(pages)}")])
    return pages[page - 1]


def _planes(plan: Plan, system: System) -> tuple[Drawing, ...]:
    planes = (plane_drawings(plan, plane, system=system) for plane in plan.planes)
    return tuple(drawing for each in planes for drawing in each)


def _sheets(plan: Plan, system: System) -> tuple[Drawing, ...]:
    return tuple(sheets_drawing(plan, plane, system=system) for plane in plan.planes)


def _poles(plan: Plan, system: System) -> tuple[Drawing, ...]:
    poles = (story_pole(plan, plane) for plane in plan.planes)
    return tuple(page for pole in poles for page in pole_strips(pole, system=system))


_MAKERS: Mapping[DrawingKind, Callable[[Plan, System], tuple[Drawing, ...]]] = MappingProxyType(
    {
        "roof_plan": lambda plan, system: (
            roof_plan(plan.planes, plan.lines, openings=plan.openings, system=system),
        ),
        "underlayment": _sheets,
        "rolls": lambda plan, system: rolls_drawing(plan, system=system),
        "metal": lambda plan, system: metal_drawing(plan, system=system),
        "metal_cuts": lambda plan, system: metal_cuts_drawing(plan, system=system),
        "plane": _planes,
        "nailing": lambda plan, system: (nailing_drawing(plan, system=system),),
        "shingle_cuts": lambda plan, system: shingle_cuts_drawing(plan, system=system),
        "offcuts": lambda plan, system: offcuts_drawing(plan, system=system),
        "caps": lambda plan, system: caps_drawing(plan, system=system),
        "flashings": lambda plan, system: flashings_drawing(plan, system=system),
        "sections": lambda plan, system: sections_drawing(plan, system=system),
        "story_pole": _poles,
    }
)
