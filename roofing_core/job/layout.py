"""The layout: every layer of a roof, laid. This is where the layers meet."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, isfinite

from roofing_core.job.capping import CapRun, lay_caps
from roofing_core.job.checking import check
from roofing_core.job.choices import Choices, Job
from roofing_core.job.cutting import ShinglesCut, cut_shingles
from roofing_core.job.edges import EdgeRun, lay_metal
from roofing_core.job.flashing import OpeningFlashed, StepRun, lay_flashings
from roofing_core.job.metal_bought import MetalBought, buy_across
from roofing_core.job.nails import NailsFor, count_nails
from roofing_core.job.seals import seal
from roofing_core.job.sheeting import lay_deck, lay_sheets
from roofing_core.job.shingles import ShinglesLaid, lay_shingles
from roofing_core.job.wiring import Site, site_of
from roofing_core.layers.coursing.joints import limit_pieces
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.starters import LaidStarter
from roofing_core.layers.decking.deck import Deck
from roofing_core.layers.sealant import Sealant
from roofing_core.layers.underlaying.ice_barrier import (
    IceBarrier,
)
from roofing_core.layers.underlaying.underlaid import Underlayment
from roofing_core.layers.underlaying.valley_lining import ValleyLining
from roofing_core.measures.counting import DUST
from roofing_core.measures.faults import Refused, together
from roofing_core.measures.units import Squares
from roofing_core.roof.given_planes import GivenPlanes
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.openings import Chimney, Skylight, VentPipe
from roofing_core.roof.outlines import RoofLine, RoofPlane
from roofing_core.roof.planes import Roof

Flashed = tuple[tuple[StepRun, ...], tuple[OpeningFlashed, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class AsMeasured:
    """What was measured, as it came in: a plan holds it, so that every figure goes back to it.

    Attributes:
        roof: The roof, in the form and by the measurements that it was given by; null where its
            form has a measurement that was not given, such as a run where the slope was.
        openings: What comes through it, each where it was measured.
    """

    roof: AnyRoof
    openings: tuple[VentPipe | Skylight | Chimney, ...]


#: What a plan has from before it kept what was measured: a roof of no planes.
NOT_KEPT = AsMeasured(roof=GivenPlanes(planes=()), openings=())


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A roof with all its layers, from the deck up.

    Attributes:
        squares: Area of the roof in squares of 100 ft2.
        as_measured: The roof and its openings as they came in; planes measured by hand, and none
            of them, in a plan from before that was kept.
        roof: The roof, every measurement worked out.
        choices: The materials and how the work is done, defaults and all.
        planes: The planes of the roof with their edges.
        lines: Every eave, rake, ridge, hip, valley and pitch break, once.
        deck: The panels of the deck; none where it is not part of the job.
        ice_barrier: The ice barrier along the eave; none where it was not asked for.
        valley_lining: The lining of the valleys; no pieces where there are none.
        underlayment: The underlayment.
        metal: The runs of edge metal, in the order in which they go on.
        metal_bought: What metal is bought across runs, one entry per profile; none where each run
            is cut from lengths of its own.
        starter: The starter along the first eave.
        starters: One entry per eave and per pitch break.
        courses: One entry per course, plane by plane, eave first.
        shingles: What the courses come to.
        cutting: How many shingles all pieces come from, and which offcut serves where.
        caps: The caps of each hip and of each ridge that two planes share.
        step_flashings: Step flashing, one entry for each side of a wall or an opening.
        openings: What comes through the roof, with what goes round it.
        nails: The nails, one entry per use.
        sealant: Sealant and cement.
    """

    squares: Squares
    as_measured: AsMeasured = NOT_KEPT
    roof: Roof
    choices: Choices
    planes: tuple[RoofPlane, ...]
    lines: tuple[RoofLine, ...]
    deck: Deck
    ice_barrier: IceBarrier
    valley_lining: ValleyLining
    underlayment: Underlayment
    metal: tuple[EdgeRun, ...]
    metal_bought: tuple[MetalBought, ...]
    starter: LaidStarter
    starters: tuple[LaidStarter, ...]
    courses: tuple[LaidCourse, ...]
    shingles: ShinglesLaid
    cutting: ShinglesCut
    caps: tuple[CapRun, ...]
    step_flashings: tuple[StepRun, ...]
    openings: tuple[OpeningFlashed, ...]
    nails: tuple[NailsFor, ...]
    sealant: Sealant


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
    decked, sheets, ((metal, bought), (caps, flashed)), (starters, courses, shingles), _ = together(
        lambda: lay_deck(site),
        lambda: lay_sheets(site),
        lambda: together(
            lambda: buy_across(site, lay_metal(site)), lambda: _caps_and_flashings(site)
        ),
        lambda: lay_shingles(site),
        lambda: check(choices),
    )
    ice, felt, lining = sheets
    nails = count_nails(
        choices,
        sheets=felt.layers * choices.underlayment.thickness
        + (choices.ice_barrier.thickness if ice.rows else 0.0)
        + (choices.valley_lining.thickness if lining.pieces else 0.0),
        cap_nails=felt.fasteners,
        deck_nails=decked.nails,
        metal=metal,
        starters=starters,
        shingles=shingles,
        caps=caps,
        steps=flashed[0],
        openings=flashed[1],
    )
    return Layout(
        squares=site.roof.squares,
        as_measured=AsMeasured(roof=job.roof, openings=job.openings),
        roof=site.roof,
        choices=choices,
        planes=site.surfaces.planes,
        lines=site.surfaces.lines,
        deck=decked,
        ice_barrier=ice,
        valley_lining=lining,
        underlayment=felt,
        metal=metal,
        metal_bought=bought,
        starter=starters[0],
        starters=starters,
        courses=courses,
        shingles=shingles,
        cutting=cut_shingles(choices, starters=starters, courses=courses, caps=caps),
        caps=caps,
        step_flashings=flashed[0],
        openings=flashed[1],
        nails=nails,
        sealant=seal(
            site, metal=metal, courses=courses, shingles=shingles, caps=caps, openings=flashed[1]
        ),
    )


def _caps_and_flashings(site: Site) -> tuple[tuple[CapRun, ...], Flashed]:
    return together(lambda: lay_caps(site), lambda: lay_flashings(site))


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
        return site_of(job.roof, choices, openings=job.openings)
    except Refused as refusal:
        told = refusal
    together(lambda: _refuse(told), lambda: check(choices))
    raise told


def _refuse(refusal: Refused) -> None:
    raise refusal
