"""The layout: every layer of a roof, laid. This is where the layers meet."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, isfinite

from roofing_core.job.checking import check
from roofing_core.job.choices import Choices, Job
from roofing_core.job.edges import EdgeRun, lay_metal
from roofing_core.job.nails import NailsFor, count_nails
from roofing_core.job.seals import seal
from roofing_core.job.shingles import ShinglesLaid, lay_shingles
from roofing_core.job.wiring import Site, Wired, site_of
from roofing_core.layers.coursing.joints import limit_pieces
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.starters import LaidStarter
from roofing_core.layers.decking.deck import Deck, deck, no_deck
from roofing_core.layers.sealant import Sealant
from roofing_core.layers.underlaying.ice_barrier import (
    IceBarrier,
    ice_barrier,
    no_ice_barrier,
)
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
from roofing_core.layers.underlaying.sheet_fasteners import (
    WINDY_FIELD_LINES,
    WINDY_FIELD_SPACING,
    WINDY_LAP_SPACING,
)
from roofing_core.layers.underlaying.underlaid import Underlayment
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused, fault, refuse_if_any, together
from roofing_core.measures.units import Squares
from roofing_core.roof.outlines import RoofLine, RoofPlane
from roofing_core.roof.planes import Roof, SingleSlope


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A roof with all its layers, from the deck up.

    Attributes:
        squares: Area of the roof in squares of 100 ft2.
        roof: The roof, every measurement worked out.
        choices: The materials and how the work is done, defaults and all.
        planes: The planes of the roof with their edges.
        lines: Every eave, rake, ridge, hip, valley and pitch break, once.
        deck: The panels of the deck; none where it is not part of the job.
        ice_barrier: The ice barrier along the eave; none where it was not asked for.
        underlayment: The underlayment.
        metal: The runs of edge metal, in the order in which they go on.
        starter: The starter along the first eave.
        starters: One entry per eave and per pitch break.
        courses: One entry per course, plane by plane, eave first.
        shingles: What the courses come to.
        nails: The nails, one entry per use.
        sealant: Sealant and cement.
    """

    squares: Squares
    roof: Roof
    choices: Choices
    planes: tuple[RoofPlane, ...]
    lines: tuple[RoofLine, ...]
    deck: Deck
    ice_barrier: IceBarrier
    underlayment: Underlayment
    metal: tuple[EdgeRun, ...]
    starter: LaidStarter
    starters: tuple[LaidStarter, ...]
    courses: tuple[LaidCourse, ...]
    shingles: ShinglesLaid
    nails: tuple[NailsFor, ...]
    sealant: Sealant


_DECK = Wired(
    deck,
    eave_length="roof.eave_length",
    slope_length="roof.slope_length",
    panel_length="panel.length",
    panel_width="panel.width",
    support_spacing="decking.support_spacing",
    edge_spacing="decking.edge_spacing",
    field_spacing="decking.field_spacing",
)

_REACH = Wired(
    ice_barrier_reach,
    eave_overhang="roof.eave_overhang",
    pitch="roof.pitch",
    edition="underlaying.code_edition",
    inside_wall="underlaying.inside_wall",
)

_ICE_BARRIER = Wired(
    ice_barrier,
    eave_length="roof.eave_length",
    slope_length="roof.slope_length",
    roll_width="ice_barrier.width",
    roll_length="ice_barrier.length",
    end_lap="underlaying.ice_barrier_end_lap",
    head_lap="underlaying.ice_barrier_head_lap",
    end_lap_stagger="underlaying.end_lap_stagger",
    past_metal="underlaying.past_metal",
    trim_allowance="underlaying.trim_allowance",
)

_UNDERLAYMENT = Wired(
    underlayment,
    eave_length="roof.eave_length",
    slope_length="roof.slope_length",
    pitch="roof.pitch",
    roll_width="underlayment.width",
    roll_length="underlayment.length",
    head_lap="underlaying.head_lap",
    end_lap="underlaying.end_lap",
    end_lap_stagger="underlaying.end_lap_stagger",
    past_metal="underlaying.past_metal",
    trim_allowance="underlaying.trim_allowance",
    over_ice_barrier="underlaying.over_ice_barrier",
    lap_spacing="underlaying.lap_spacing",
    field_spacing="underlaying.field_spacing",
    field_lines="underlaying.field_lines",
)


def lay_out(job: Job) -> Layout:
    """Lay every layer of a job, from the deck up.

    Args:
        job: The roof, its materials, and how the work is done.

    Returns:
        The roof with all its layers.

    Raises:
        Refused: Something cannot be built; carries the faults of all layers, by the caller's names.
        TooManyPieces: A layer would need more pieces than its limit.

    Source:
        The layers' own.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12))
    >>> lay_out(job).underlayment.layers
    2
    """
    site = _measured(job)
    choices = site.choices
    limit_pieces(_pieces(site))
    decked, (ice, felt), metal, (starters, courses, shingles), _ = together(
        lambda: _DECK(site) if choices.decking.lay else no_deck(),
        lambda: _sheets(site),
        lambda: lay_metal(site),
        lambda: lay_shingles(site),
        lambda: check(choices),
    )
    nails = count_nails(
        choices,
        sheets=felt.layers * choices.underlayment.thickness
        + (choices.ice_barrier.thickness if ice.rows else 0.0),
        cap_nails=felt.fasteners,
        deck_nails=decked.nails,
        metal=metal,
        starters=starters,
        shingles=shingles,
    )
    return Layout(
        squares=site.roof.squares,
        roof=site.roof,
        choices=choices,
        planes=site.surfaces.planes,
        lines=site.surfaces.lines,
        deck=decked,
        ice_barrier=ice,
        underlayment=felt,
        metal=metal,
        starter=starters[0],
        starters=starters,
        courses=courses,
        shingles=shingles,
        nails=nails,
        sealant=seal(site, metal=metal, courses=courses, shingles=shingles),
    )


def pieces_needed(job: Job) -> int:
    """Count about how many pieces of shingle a job needs, without laying any.

    Courses to the top edge times a course's length in shingles and the cut one.

    Args:
        job: The roof, its materials, and how the work is done.

    Returns:
        Pieces, within one a course; 0 where a choice is no number.

    Raises:
        Refused: The roof's measurements cannot be; names each.

    Source:
        Arithmetic.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> pieces_needed(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12)))
    105
    """
    pieces = _pieces(_measured(job))
    return floor(pieces) if isfinite(pieces) else 0


def _pieces(site: Site) -> float:
    """Count the pieces; no number for choices that are none, which `check` or a layer refuses."""
    return sum(_pieces_on(plane, site.choices) for plane in site.surfaces.planes)


def _pieces_on(plane: RoofPlane, choices: Choices) -> float:
    """Count the pieces of a plane as of a rectangle that is as high and has its area."""
    shingle, how = choices.shingle, choices.coursing
    high = max(v for _, v in plane.corners)
    courses = (high + how.starter_past_metal + how.course_past_starter) / shingle.exposure
    if isfinite(courses):
        courses = max(1, ceil(courses - DUST))
    return courses * ((plane.area / high + 2 * how.shingle_past_rake) / shingle.length + 1)


def _measured(job: Job) -> Site:
    """Measure the roof; where that fails, tell what is wrong with the choices too."""
    choices = job.choices()
    try:
        if not isinstance(job.roof, SingleSlope):
            refuse_if_any([fault("form", job.roof.form, "single_slope: no other is planned yet")])
        return site_of(job.roof, choices)
    except Refused as refusal:
        told = refusal.below("roof")
    together(lambda: _refuse(told), lambda: check(choices))
    raise told


def _refuse(refusal: Refused) -> None:
    raise refusal


def _sheets(site: Site) -> tuple[IceBarrier, Underlayment]:
    """Lay the ice barrier, where it was asked for, and the underlayment above it."""
    wanted = site.choices.underlaying.ice_barrier
    ice = _ICE_BARRIER(site, reach=_REACH(site)) if wanted else no_ice_barrier()
    return ice, _UNDERLAYMENT(site, ice_barrier_top=ice.upper, **_pattern(site.choices))


def _pattern(choices: Choices) -> dict[str, float]:
    """Give the pattern of cap nails: as chosen, or in high wind no wider than the code's for it."""
    how = choices.underlaying
    if not choices.nailing.high_wind:
        return {}
    return {
        "lap_spacing": min(how.lap_spacing, WINDY_LAP_SPACING),
        "field_spacing": min(how.field_spacing, WINDY_FIELD_SPACING),
        "field_lines": max(how.field_lines, WINDY_FIELD_LINES),
    }
