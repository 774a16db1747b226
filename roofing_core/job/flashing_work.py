"""The steps of work on walls and openings, and what is found about them."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.flashing import OpeningFlashed, StepRun
from roofing_core.job.found import Change, Finding, broken, place_on
from roofing_core.job.layout import Layout
from roofing_core.job.telling import count
from roofing_core.layers.flashings.bent_pieces import BentPiece
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.ruling import on_metal


def flashings(layout: Layout) -> Iterator[Sentence]:
    """Say how walls and openings are flashed, as the courses come to them.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence for the step flashing of each side, one or two for each opening.

    Raises:
        Nothing.

    Source:
        The flashings' own; what goes over what is common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.openings import VentPipe
    >>> from roofing_core.roof.planes import SingleSlope
    >>> pipe = VentPipe(plane="slope", from_left=60, up_slope=50, diameter=3.5)
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> next(flashings(lay_out(Job(roof=roof, openings=(pipe,))))).written()[:41]
    'Vent pipe 1, on slope, its middle 5 ft fr'
    """
    for opening in layout.openings:
        yield from _opening(opening)
    for run in layout.step_flashings:
        yield _step(layout, run)


def _opening(opening: OpeningFlashed) -> Iterator[Sentence]:
    name = f"{_named(opening)}, on {opening.plane}, "
    for pipe in opening.pipes:
        yield say(
            name,
            "its middle ",
            length((opening.left + opening.right) / 2),
            " from the left corner and ",
            length((opening.lower + opening.upper) / 2),
            " up: shingle to below it, set the flashing over the pipe with its lower edge over"
            f" those courses, nail it ({count(pipe.nails, 'nail')}), and cut the courses above"
            " round the collar, over the base.",
        )
    for piece in opening.aprons:
        yield say(
            name,
            "from ",
            length(opening.left),
            " to ",
            length(opening.right),
            " and from ",
            length(opening.lower),
            " to ",
            length(opening.upper),
            " up: shingle to below it; set the apron over those courses, ",
            *_bent(piece),
            " Dab its nails.",
        )
    for piece in opening.heads:
        yield say(
            f"{_named(opening)}: above it set the head flashing, under the courses there, ",
            *_bent(piece),
        )
    for cricket in opening.crickets:
        yield say(
            f"{_named(opening)}: build a cricket behind it, its ridge ",
            length(cricket.height),
            " above the roof at the back and ",
            length(cricket.ridge_length),
            " long, two valleys of ",
            length(cricket.valley_length),
            "; cover it with metal that reaches under the courses beside it.",
        )


def _named(opening: OpeningFlashed) -> str:
    return f"{opening.kind.replace('_', ' ').capitalize()} {opening.number}"


def _bent(piece: BentPiece) -> list[object]:
    return [
        length(piece.length),
        " long, ",
        length(piece.deck_leg),
        " on the roof and ",
        length(piece.wall_leg),
        f" up ({count(piece.nails, 'nail')}).",
    ]


def _step(layout: Layout, run: StepRun) -> Sentence:
    other = "left" if run.side == "right" else "right"
    where = f"the {run.side} wall of {run.plane}"
    if run.opening:
        where = f"the {other} side of {run.beside} {run.opening}"
    return say(
        f"Step flashing along {where}: {count(run.count, 'piece')}, one on each course as it is"
        " laid, ",
        length(layout.choices.flashing.short_of_butt),
        " above the butt of the course that covers it, lapped ",
        length(run.lap),
        f", nailed to the deck alone ({count(run.nails, 'nail')}).",
    )


def of_the_flashings(layout: Layout) -> Iterator[Finding]:
    """Hold step flashing and chimneys against the rules.

    Args:
        layout: The roof with all its layers.

    Returns:
        One entry per breach.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.5)
    >>> list(of_the_flashings(lay_out(Job(roof=roof))))
    []
    """
    if layout.step_flashings:
        yield from _of_the_steps(layout)
    if any(opening.aprons or opening.heads for opening in layout.openings):
        thick, field = layout.choices.flashing_sheet.thickness, "flashing_sheet.thickness"
        rule = on_metal.FLASHING_THICKNESS
        yield from broken(layout, rule, thick, "flashing sheet", fields=(field,))
    for opening in layout.openings:
        if opening.kind == "chimney" and not opening.crickets:
            place = place_on(layout, opening.plane, f"chimney {opening.number}")
            wide, build = opening.right - opening.left, Change(
                field="flashing.cricket", word="where_required"
            )  # fmt: skip
            yield from broken(layout, on_metal.CRICKET, wide, place, changes=(build,))


def _of_the_steps(layout: Layout) -> Iterator[Finding]:
    """Hold the step flashing, all of one kind, against the rules."""
    step, place = layout.choices.step_flashing, "step flashing"
    lap, least = layout.step_flashings[0].lap, min(step.deck_leg, step.wall_leg)
    long = step.length - lap + on_metal.STEP_LAP.limit
    both = ("step_flashing.deck_leg", "step_flashing.wall_leg")
    yield from broken(
        layout, on_metal.STEP_LAP, lap, place, to=long, fields=("step_flashing.length",)
    )  # fmt: skip
    yield from broken(layout, on_metal.WALL_LEG, least, place, fields=both)
    yield from broken(
        layout,
        on_metal.FLASHING_THICKNESS,
        step.thickness,
        place,
        fields=("step_flashing.thickness",),
    )
