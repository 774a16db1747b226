"""Flashings: step flashing piece by piece, and the flat pieces to cut and bend for openings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from roofing_core.job.flashing import OpeningFlashed, StepRun
from roofing_core.job.plan import Plan
from roofing_core.layers.flashings.bent_pieces import BentPiece
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Ratio, System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import LEADING, SMALL, TEXT
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words, note_height
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.svg import FIRM, Stroke
from roofing_core.sheets.drawings.views import View, scale_for

#: Height of a run of step flashing on paper, and how much higher every second piece is drawn.
_HIGH, _STEP = 5.0, 1.4

#: Where a flat piece is bent.
_FOLD = Stroke(0.3, (2.0, 1.0))


def flashings_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw step flashing as it lies and the flat pieces of each opening.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page; none for a roof without walls and openings.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.openings import Skylight
    >>> from roofing_core.roof.planes import SingleSlope
    >>> light = Skylight(plane="slope", from_left=60, up_slope=30, width=24, height=36)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> flashings_drawing(plan(Job(roof=roof, openings=(light,))))[0].says
    '2 runs of step flashing, and the flashings of 1 opening.'
    """
    runs, openings = plan.step_flashings, plan.openings
    runs_told = "1 run" if len(runs) == 1 else f"{len(runs)} runs"
    openings_told = "1 opening" if len(openings) == 1 else f"{len(openings)} openings"
    return paged(
        "flashings",
        "Flashings",
        beneath=(
            "Step flashing from its lower end, on the left, each piece over the one before it. Flat"
            " pieces are bent along broken lines, the leg on the roof below."
        ),
        items=[
            *(_run_item(run, system) for run in runs),
            *(item for one in openings for item in _opening_items(one, system)),
        ],
        says=f"{runs_told} of step flashing, and the flashings of {openings_told}.",
    )


def _run_item(run: StepRun, system: System) -> Item:
    scale = scale_for(run.upper - run.lower + 24, 0.0, width=SHORT, height=1.0)
    where = "wall" if run.beside == "wall" else f"{run.beside} {run.opening}"
    lower, upper = write_length(run.lower, system), write_length(run.upper, system)
    heading = (
        f"Step flashing on {run.plane}, where the {run.side} ends of courses meet the {where},"
        f" from {lower} to {upper} up the slope."
    )
    first, last = run.pieces[0].course, run.pieces[-1].course
    told = (
        f"{run.count} pieces, under courses {first} to {last}, each lapping the one below by"
        f" {write_length(run.lap, system)}; {run.nails} nails, through the leg on the deck alone."
        f" Scale 1:{scale:g} along it."
    )
    height = note_height(heading, width=SHORT) + note_height(told, width=SHORT, size=SMALL)
    return Item(
        height=height + _HIGH + _STEP + 7,
        draw=partial(_draw_run, run=run, heading=heading, told=told, scale=scale),
    )


def _draw_run(paper: Paper, *, run: StepRun, heading: str, told: str, scale: Ratio) -> None:
    paper.y += 1
    paper.note(heading, TEXT)
    top = paper.y + 1.4 + _STEP
    view = View(scale, -run.pieces[0].lower * 25.4 / scale, top)
    for k, piece in enumerate(run.pieces):
        left, right = view.x(piece.lower), view.x(piece.upper)
        high = top - (_STEP if k % 2 else 0.0)
        foot = high + _HIGH
        paper.draw([(left, foot), (right, foot), (right, high), (left, high)], FIRM, closed=True)
        at = ((left + right) / 2, high + _HIGH / 2 + 0.9)
        paper.write_first([Words(str(piece.course), at, SMALL, "middle")])
    paper.y = top + _HIGH
    paper.note(told, SMALL)


def _opening_items(one: OpeningFlashed, system: System) -> Iterator[Item]:
    pieces = [*(("apron", piece) for piece in one.aprons),
              *(("head flashing", piece) for piece in one.heads)]  # fmt: skip
    told = [*_crickets_told(one, system), *_pipes_told(one, system)]
    title = f"{capital(spelt(one.kind))}, opening {one.number}, on {one.plane}"
    if pieces or told:
        yield _words_item(title, told)
    yield from (_piece_item(name, piece, system) for name, piece in pieces)


def _words_item(title: str, told: Sequence[str]) -> Item:
    def draw(paper: Paper) -> None:
        paper.y += 2
        paper.write(Words(title, (0.0, paper.y + LEADING * TEXT), TEXT, bold=True))
        paper.y += LEADING * TEXT
        for text in told:
            paper.note(text)

    height = 2 + LEADING * TEXT + sum(note_height(text, width=SHORT) for text in told) + 1
    return Item(height=height, draw=draw, heads=not told)


def _crickets_told(one: OpeningFlashed, system: System) -> Iterator[str]:
    for cricket in one.crickets:
        needed = "needed" if cricket.required else "not needed by the code"
        ridge, valley, high, up, wall = (
            write_length(inches, system)
            for inches in (cricket.ridge_length, cricket.valley_length, cricket.height,
                           cricket.up_slope, cricket.wall_length)
        )  # fmt: skip
        yield (
            f"Cricket, {needed}: ridge {ridge} long and level, {high} above the corners; two"
            f" valleys of {valley}, {up} up the roof; {wall} along the back from each corner to the"
            " ridge."
        )


def _pipes_told(one: OpeningFlashed, system: System) -> Iterator[str]:
    for pipe in one.pipes:
        wide, long, side, slope = (
            write_length(inches, system)
            for inches in (pipe.hole_width, pipe.hole_length, pipe.side_flange, pipe.slope_flange)
        )
        yield (
            f"Pipe flashing: a hole {wide} by {long} in the deck; the base reaches {side} past the"
            f" pipe on each side, {slope} above and below it; {pipe.nails} nails."
        )


def _piece_item(name: str, piece: BentPiece, system: System) -> Item:
    deep = piece.deck_leg + piece.wall_leg
    scale = scale_for(piece.length, deep, width=SHORT, height=40.0)
    long, leg, wall, past = (
        write_length(inches, system)
        for inches in (piece.length, piece.deck_leg, piece.wall_leg, piece.past_corner)
    )
    told = (
        f"{capital(name)}: {long} long, {leg} on the roof and {wall} up the opening, {past} folded"
        f" round each corner; {piece.nails} nails. Scale 1:{scale:g}."
    )
    return Item(
        height=note_height(told, width=SHORT) + deep * 25.4 / scale + 7,
        draw=partial(_draw_piece, piece=piece, told=told, scale=scale),
    )


def _draw_piece(paper: Paper, *, piece: BentPiece, told: str, scale: Ratio) -> None:
    paper.y += 1
    paper.note(told, TEXT)
    deep = piece.deck_leg + piece.wall_leg
    view = View(scale, 0.0, paper.y + 2 + deep * 25.4 / scale)
    long, past = piece.length, piece.past_corner
    outline = view.spots(((0.0, 0.0), (long, 0.0), (long, deep), (0.0, deep)))
    paper.draw(outline, FIRM, closed=True)
    folds = (
        ((0.0, piece.deck_leg), (long, piece.deck_leg)),
        ((past, piece.deck_leg), (past, deep)),
        ((long - past, piece.deck_leg), (long - past, deep)),
    )
    paper.draw_all((view.spots(fold) for fold in folds), _FOLD)
    paper.y = view.foot
