"""Finished: what is read of a plan, and nothing else.

The names are the plan's own, so that a plan can be taken as it is, or read from its JSON. What
later kinds of plan have and earlier ones had not, has a default.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.auditing.finished_covers import (
    FinishedCap,
    FinishedCapping,
    FinishedCaps,
    FinishedFlashing,
    FinishedLegs,
    FinishedLine,
    FinishedLining,
    FinishedOpening,
    FinishedPipeBase,
    FinishedRoll,
    FinishedStepRun,
    FinishedValleying,
)
from roofing_core.auditing.taking import taker
from roofing_core.job.plan import Plan
from roofing_core.measures.units import CubicInches, Inches, Pitch, SquareInches
from roofing_core.roof.outlines import EdgeKind

Point = tuple[Inches, Inches]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPlane:
    """One flat surface of the roof.

    Attributes:
        name: What it is called.
        corners: Corners (u, v), counter-clockwise.
        edges: The kind of each edge, from the edge that leaves the first corner.
        beyond: For each edge, the name of the plane on its far side; empty where there is none.
        pitch: Rise over run.
    """

    name: str
    corners: tuple[Point, ...]
    edges: tuple[EdgeKind, ...]
    beyond: tuple[str, ...]
    pitch: Pitch


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPiece:
    """One piece of a course or of a starter, as it lies.

    Attributes:
        number: From 1 at the left.
        left: Where it begins.
        right: Where it ends.
        nail_height: How far above the butt it is nailed.
        nails: Where each of its nails goes.
        corners: Its outline (u, v); none for a piece that is cut square and as high as its course.
        cutouts: Outlines cut from its inside; none for most.
    """

    number: int
    left: Inches
    right: Inches
    nail_height: Inches
    nails: tuple[Inches, ...]
    corners: tuple[Point, ...]
    cutouts: tuple[tuple[Point, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedCourse:
    """One course of shingles.

    Attributes:
        number: From 1 at the eave of its plane.
        butt: Height of its lower edge.
        snap_line: Height of the tops of its shingles, before they are trimmed.
        exposure: How much of it shows.
        top_trim: How much is trimmed off the tops.
        joints: Where its pieces meet on the deck.
        laid: One entry per piece, from the left.
        plane: The plane that it lies on.
        bedding_area: Of asphalt cement under it.
        nail_line: Height at which it is nailed; 0 where the plan does not say.
        nailable: Whether it is nailed in its nail zone; if not it closes the roof, or a part of it.
    """

    number: int
    butt: Inches
    snap_line: Inches
    exposure: Inches
    top_trim: Inches
    joints: tuple[Inches, ...]
    laid: tuple[FinishedPiece, ...]
    plane: str
    bedding_area: SquareInches
    nail_line: Inches = 0.0
    nailable: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedStarter:
    """The starter along one eave or pitch break.

    Attributes:
        butt: Height of its lower edge.
        height: Of the strip.
        laid: One entry per piece, from the left.
        plane: The plane that it lies on.
        joints: Where its pieces meet on the deck; none where the plan does not say.
        piece_length: Of a whole piece; 0 where the plan does not say.
    """

    butt: Inches
    height: Inches
    laid: tuple[FinishedPiece, ...]
    plane: str
    joints: tuple[Inches, ...] = ()
    piece_length: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedSheetPiece:
    """One piece of a row of a sheet.

    Attributes:
        left: Where it begins.
        right: Where it ends.
        length: From end to end; 0 where the plan does not say.
    """

    left: Inches
    right: Inches
    length: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedRow:
    """One row of underlayment or ice barrier.

    Attributes:
        number: Place in the order of laying.
        lower: Height of its lower edge.
        upper: Height of its upper edge.
        pieces: Its pieces, from the left.
        end_laps: Where each end lap begins.
        plane: The plane that it lies on; empty where the roof has but one.
        width: As it comes off the roll, or is ripped from it; 0 where the plan does not say.
        head_lap: How far it is said to lie over what is below it; 0 for the lowest.
    """

    number: int
    lower: Inches
    upper: Inches
    pieces: tuple[FinishedSheetPiece, ...]
    end_laps: tuple[Inches, ...]
    plane: str = ""
    width: Inches = 0.0
    head_lap: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedSheets:
    """The underlayment, or the ice barrier.

    Attributes:
        rows: Its rows in the order of laying.
    """

    rows: tuple[FinishedRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedRun:
    """One run of metal on an edge.

    Attributes:
        edge: The edge it lies on.
        run_length: Length of edge covered, without the tabs.
        tab: Length bent round the corner at each end.
        lengths: The length of each piece, in the order of laying.
        lap: How far each piece laps the next.
        lap_direction: Which piece of a lap lies over the other.
        laps: Where each lap begins, which is where the next piece begins.
        nails: Nails in all.
        deck_leg: The leg on the deck.
        tabs: At which of its ends it has a tab.
        plane: The plane whose edge it is; empty where the roof has but one.
        beyond: The plane on the edge's far side; empty where there is none.
        face_leg: The leg over the edge; of a valley's metal the one on the plane beyond.
        past_foot: How far the metal of a valley starts below its foot.
        stock_length: Of the longest metal that it is cut from; 0 where the plan does not say.
        nail_positions: Where each nail along it goes; none where the plan does not say.
        nail_lines: Lines of such nails across it.
        tab_nails: Nails in its tabs.
    """

    edge: str
    run_length: Inches
    tab: Inches
    lengths: tuple[Inches, ...]
    lap: Inches
    lap_direction: str
    laps: tuple[Inches, ...]
    nails: int
    deck_leg: Inches
    tabs: str = "both"
    plane: str = ""
    beyond: str = ""
    face_leg: Inches = 0.0
    past_foot: Inches = 0.0
    stock_length: Inches = 0.0
    nail_positions: tuple[Inches, ...] = ()
    nail_lines: int = 1
    tab_nails: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedShingle:
    """The shingle.

    Attributes:
        kind: Laminated strip, or three tabs.
        length: Along the course; 0 where the plan does not say.
        height: From its butt to its top; 0 where the plan does not say.
    """

    kind: str
    length: Inches = 0.0
    height: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedSealing:
    """How things are sealed.

    Attributes:
        dab_diameter: Of the dab on a nail.
        dab_thickness: Of that dab.
        bedding_thickness: Of the cement under a closing course.
    """

    dab_diameter: Inches
    dab_thickness: Inches
    bedding_thickness: Inches


#: How valleys are laid by a plan that does not say it.
_UNTOLD = FinishedValleying()


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedChoices:
    """What was chosen.

    Attributes:
        shingle: The shingle.
        sealing: How things are sealed.
        valley_lining: The lining of valleys.
        cap: The cap.
        capping: How hips and ridges are capped.
        step_flashing: Step flashing.
        pipe_flashing: Flashing for pipes.
        flashing: How openings are flashed.
        valleying: How valleys are laid.
    """

    shingle: FinishedShingle
    sealing: FinishedSealing
    valley_lining: FinishedRoll
    cap: FinishedCap
    capping: FinishedCapping
    step_flashing: FinishedLegs
    pipe_flashing: FinishedPipeBase
    flashing: FinishedFlashing
    valleying: FinishedValleying = _UNTOLD


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedSealant:
    """Sealant and cement.

    Attributes:
        dab_volume: Of the dabs.
        bedding_volume: Of the cement that closing courses are bedded in.
    """

    dab_volume: CubicInches
    bedding_volume: CubicInches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedStep:
    """One step of the work.

    Attributes:
        number: From 1.
        stage: The part of the roof that it is about.
    """

    number: int
    stage: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPlan:
    """What is read of a plan.

    Attributes:
        planes: The planes of the roof.
        lines: Every eave, rake, ridge, hip, valley and pitch break, once.
        choices: The materials, and how the work is done.
        ice_barrier: The ice barrier.
        valley_lining: The lining of the valleys.
        underlayment: The underlayment.
        metal: The runs of metal, in the order in which they go on.
        starters: The starters.
        courses: The courses, plane by plane, in the order in which they are laid.
        caps: The caps of each hip and of each ridge that two planes share, in the order of laying.
        step_flashings: Step flashing, one entry for each side of a wall or an opening.
        openings: What comes through the roof, with what goes round it.
        sealant: Sealant and cement.
        steps: The order of work.
    """

    planes: tuple[FinishedPlane, ...]
    lines: tuple[FinishedLine, ...]
    choices: FinishedChoices
    ice_barrier: FinishedSheets
    valley_lining: FinishedLining
    underlayment: FinishedSheets
    metal: tuple[FinishedRun, ...]
    starters: tuple[FinishedStarter, ...]
    courses: tuple[FinishedCourse, ...]
    caps: tuple[FinishedCaps, ...]
    step_flashings: tuple[FinishedStepRun, ...]
    openings: tuple[FinishedOpening, ...]
    sealant: FinishedSealant
    steps: tuple[FinishedStep, ...]


AnyPlan = Plan | FinishedPlan


def finished(plan: AnyPlan) -> FinishedPlan:
    """Take from a plan what an audit reads of it.

    Args:
        plan: A plan, or what was read of one.

    Returns:
        The same numbers by the same names.

    Raises:
        Nothing: A plan has all of it.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> finished(planned).courses[1].joints == planned.courses[1].joints
    True
    """
    if isinstance(plan, FinishedPlan):
        return plan
    taken: FinishedPlan = taker(FinishedPlan)(plan, {})
    return taken
