"""The flashings of a job: step flashing beside walls, and all that goes round each opening."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from typing import Literal

from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.flashings.bent_pieces import BentPiece, apron, head_flashing
from roofing_core.layers.flashings.crickets import Cricket, cricket
from roofing_core.layers.flashings.pipes import PipeFlashed, pipe_flashing
from roofing_core.layers.flashings.step_flashing import StepFlashings, step_flashing
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.openings import Chimney, Opening, Skylight, VentPipe, rectangle
from roofing_core.roof.outlines import RoofPlane

Beside = Literal["wall", "chimney", "skylight"]
SideName = Literal["left", "right"]
OpeningKind = Literal["vent_pipe", "skylight", "chimney"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRun(StepFlashings):
    """The step flashing along one side of a wall, a chimney or a skylight.

    Attributes:
        beside: What it stands beside.
        opening: Number of the opening, from 1; 0 for a wall.
        plane: The plane that it lies on.
        side: On which side of the courses the wall stands: the left or the right end of them.
        lower: Height of the lower end of the wall.
        upper: Height of its upper end.
    """

    beside: Beside
    opening: int
    plane: str
    side: SideName
    lower: Inches
    upper: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningFlashed:
    """An opening in the roof, and what goes round it beside step flashing.

    Attributes:
        number: From 1, in the order in which the openings were given.
        kind: What comes through the roof.
        plane: The plane that it lies in.
        left: Its left side on the plane, from the left corner.
        right: Its right side.
        lower: Its lower side, up the slope.
        upper: Its upper side.
        area: That it takes out of the plane.
        aprons: The apron below it; none for a pipe.
        heads: The head flashing above it; none for a pipe, or where a cricket takes its place.
        crickets: The cricket above it; none for most.
        pipes: The flashing of a pipe; none for the others.
    """

    number: int
    kind: OpeningKind
    plane: str
    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    area: SquareInches
    aprons: tuple[BentPiece, ...]
    heads: tuple[BentPiece, ...]
    crickets: tuple[Cricket, ...]
    pipes: tuple[PipeFlashed, ...]

    def nails(self) -> int:
        """Count the nails in its pieces, those of step flashing not among them."""
        bent = sum(piece.nails for piece in (*self.aprons, *self.heads))
        return bent + sum(pipe.nails for pipe in self.pipes)


_STEPS = Wired(
    step_flashing,
    exposure="shingle.exposure",
    piece_length="step_flashing.length",
    short_of_butt="flashing.short_of_butt",
)
_PIPE = Wired(
    pipe_flashing,
    base_width="pipe_flashing.base_width",
    base_length="pipe_flashing.base_length",
    largest_pipe="pipe_flashing.largest_pipe",
)
_APRON = Wired(
    apron,
    deck_leg="apron_metal.deck_leg",
    wall_leg="apron_metal.face_leg",
    past_corner="flashing.past_corner",
    nail_spacing="metalwork.nail_spacing",
)
_HEAD = Wired(
    head_flashing,
    exposure="shingle.exposure",
    least_height="flashing.head_height",
    past_corner="flashing.past_corner",
    nail_spacing="metalwork.nail_spacing",
)
_CRICKET = Wired(
    cricket,
    under_covering="flashing.under_covering",
    wall_leg="flashing.head_height",
)

_STEP_FIELDS = tuple(field.name for field in fields(StepFlashings))


def lay_flashings(site: Site) -> tuple[tuple[StepRun, ...], tuple[OpeningFlashed, ...]]:
    """Lay the step flashing of every wall, and flash every opening.

    Args:
        site: The roof with its choices and openings.

    Returns:
        The step flashing, walls first; one entry per opening.

    Raises:
        Refused: A size cannot be, or does not fit the pipe or the courses; names the caller's
            fields.
        TooManyPieces: A wall would take more pieces than the limit.

    Source:
        The layers' own; a cricket above a chimney over 30 in wide: IRC R903.2.2.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> chimney = Chimney(plane="slope", from_left=60, up_slope=40, width=36, depth=24)
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> steps, (flashed,) = lay_flashings(site_of(shed, openings=(chimney,)))
    >>> len(steps), flashed.crickets[0].height, flashed.heads
    (2, 9.0, ())
    """
    planes = {plane.name: plane for plane in site.surfaces.planes}
    walls = (step for plane in planes.values() for step in _walls(site, plane))
    beside = (
        step
        for k, opening in enumerate(site.openings)
        for step in _beside(site, planes[opening.plane], opening, k)
    )
    return (
        (*walls, *beside),
        tuple(
            _flashed(site, planes[opening.plane], opening, k)
            for k, opening in enumerate(site.openings)
        ),
    )


def _walls(site: Site, plane: RoofPlane) -> Iterator[StepRun]:
    for k, kind in enumerate(plane.edges):
        if kind == "sidewall":
            (_, start), (_, end) = plane.corners[k], plane.corners[(k + 1) % len(plane.corners)]
            side: SideName = "right" if end > start else "left"
            ends = min(start, end), max(start, end)
            yield _steps(site, plane, *ends, beside="wall", opening=0, side=side)


def _beside(site: Site, plane: RoofPlane, opening: Opening, k: int) -> Iterator[StepRun]:
    if not isinstance(opening, VentPipe):
        _, _, lower, upper = rectangle(opening, plane.pitch)
        sides: tuple[SideName, SideName] = ("right", "left")
        for side in sides:
            yield _steps(site, plane, lower, upper, beside=opening.kind, opening=k + 1, side=side)


def _steps(
    site: Site,
    plane: RoofPlane,
    lower: float,
    upper: float,
    *,
    beside: Beside,
    opening: int,
    side: SideName,
) -> StepRun:
    how = site.choices.coursing
    try:
        laid = _STEPS(
            site,
            lower=max(lower, 0.0),
            upper=upper,
            first_butt=-(how.starter_past_metal + how.course_past_starter),
        )
    except Refused as refusal:
        raise refusal.renamed(
            {"lower": "roof", "upper": "roof", "first_butt": "coursing.starter_past_metal"}
        ) from None
    return StepRun(
        **{name: getattr(laid, name) for name in _STEP_FIELDS},
        beside=beside,
        opening=opening,
        plane=plane.name,
        side=side,
        lower=lower,
        upper=upper,
    )


def _flashed(site: Site, plane: RoofPlane, opening: Opening, k: int) -> OpeningFlashed:
    left, right, lower, upper = rectangle(opening, plane.pitch)
    pieces = _pieces(site, plane, opening, k)
    return OpeningFlashed(
        number=k + 1,
        kind=opening.kind,
        plane=plane.name,
        left=left,
        right=right,
        lower=lower,
        upper=upper,
        area=(right - left) * (upper - lower),
        aprons=tuple(one for one in pieces[:1] if isinstance(one, BentPiece)),
        heads=tuple(one for one in pieces[1:] if isinstance(one, BentPiece)),
        crickets=tuple(one for one in pieces if isinstance(one, Cricket)),
        pipes=tuple(one for one in pieces if isinstance(one, PipeFlashed)),
    )


def _pieces(
    site: Site, plane: RoofPlane, opening: Opening, k: int
) -> tuple[BentPiece | Cricket | PipeFlashed, ...]:
    """Cut what goes round an opening: below it first, then above it."""
    place = f"openings.{k}"
    try:
        if isinstance(opening, VentPipe):
            return (_PIPE(site, diameter=opening.diameter, pitch=plane.pitch),)
        return (
            _APRON(site, width=opening.width),
            _above(site, plane, opening),
        )
    except Refused as refusal:
        names = {"diameter": f"{place}.diameter", "width": f"{place}.width", "pitch": "roof"}
        raise refusal.renamed(names) from None


def _above(site: Site, plane: RoofPlane, opening: Skylight | Chimney) -> BentPiece | Cricket:
    """Cut what goes above a chimney or a skylight: a cricket where it must have one."""
    if isinstance(opening, Chimney):
        behind = _CRICKET(site, width=opening.width, pitch=plane.pitch)
        wanted = {"always": True, "never": False}.get(site.choices.flashing.cricket)
        if behind.required if wanted is None else wanted:
            return behind
    return _HEAD(site, width=opening.width, pitch=plane.pitch)
