"""Injuries to roofs of several planes: their caps, valleys, breaks, walls and openings.

As in `injuries`: each spoils one thing, and says what else it changes so that only that is wrong.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from roofing_core.auditing.finished import (
    FinishedCourse,
    FinishedPiece,
    FinishedPlan,
    FinishedRun,
)
from roofing_core.auditing.finished_covers import (
    FinishedBent,
    FinishedCaps,
    FinishedOpening,
    FinishedStepPiece,
    FinishedStepRun,
)
from tests.auditing.injuries import (
    Change,
    Injury,
    forget_a_dab,
    moved_before,
    swapped,
    with_run,
    without,
    without_run,
    without_stage,
)

HIP, RIDGE = 0, -1


def changed(rows: tuple, place: int, change: Callable[[Any], Any]) -> tuple:
    """Change one of a list."""
    place %= len(rows)
    return tuple(change(row) if k == place else row for k, row in enumerate(rows))


def with_caps(place: int, change: Callable[[FinishedCaps], FinishedCaps]) -> Change:
    """Change the caps of one line."""
    return lambda plan: replace(plan, caps=changed(plan.caps, place, change))


def with_choice(name: str, **changes: object) -> Change:
    """Change one of the choices."""
    return lambda plan: replace(
        plan,
        choices=replace(plan.choices, **{name: replace(getattr(plan.choices, name), **changes)}),
    )


def with_steps(place: int, change: Callable[[FinishedStepRun], FinishedStepRun]) -> Change:
    """Change the step flashing of one side."""
    return lambda plan: replace(plan, step_flashings=changed(plan.step_flashings, place, change))


def with_step(
    place: int, piece: int, change: Callable[[FinishedStepPiece], FinishedStepPiece]
) -> Change:
    """Change one piece of step flashing."""
    return with_steps(place, lambda run: replace(run, pieces=changed(run.pieces, piece, change)))


def with_opening(number: int, change: Callable[[FinishedOpening], FinishedOpening]) -> Change:
    """Change an opening; its number counts from 1."""
    return lambda plan: replace(plan, openings=changed(plan.openings, number - 1, change))


def with_apron(change: Callable[[FinishedBent], FinishedBent]) -> Change:
    """Change the apron of the skylight."""
    return with_opening(2, lambda one: replace(one, aprons=tuple(map(change, one.aprons))))


def on_plane(plane: str, number: int, change: Callable[[FinishedCourse], FinishedCourse]) -> Change:
    """Change a course of one plane."""
    return lambda plan: replace(
        plan,
        courses=tuple(
            change(one) if (one.plane, one.number) == (plane, number) else one
            for one in plan.courses
        ),
    )


def at_valley(
    number: int, change: Callable[[FinishedPiece], FinishedPiece | None], plane: str = "side 3"
) -> Change:
    """Change the piece of a course of side 3 that ends at the valley on its right, or drop it."""

    def does(one: FinishedCourse) -> FinishedCourse:
        *others, last = one.laid
        after = change(last)
        joints = one.joints if after else one.joints[:-1]
        return replace(one, laid=(*others, *([after] if after else [])), joints=joints)

    return on_plane(plane, number, does)


def _without_butts(first: int, last: int) -> Callable[[FinishedCaps], FinishedCaps]:
    """Leave caps out, with their nails."""
    return lambda run: replace(
        run,
        butts=run.butts[:first] + run.butts[last + 1 :],
        nail_positions=run.nail_positions[:first] + run.nail_positions[last + 1 :],
    )


def _against_the_wind(plan: FinishedPlan) -> FinishedPlan:
    """Start the caps of the ridge at its left end, with the wind from there."""
    windy = with_choice("capping", wind_from="left")(plan)
    return with_caps(RIDGE, lambda run: replace(run, starts_at="left"))(windy)


def _shorten_valley_metal(run: FinishedRun) -> FinishedRun:
    """Cut the last piece, and so the run, shorter by 20 in."""
    *others, last = run.lengths
    return replace(run, lengths=(*others, last - 20), run_length=run.run_length - 20)


def _metal_ends_at_the_top(run: FinishedRun) -> FinishedRun:
    """Cut the last piece, and so the run, off 1 in above the top of the valley."""
    *others, last = run.lengths
    less = 5.0
    return replace(run, lengths=(*others, last - less), run_length=run.run_length - less)


def _lining_ends_at_the_top(plan: FinishedPlan) -> FinishedPlan:
    """Cut the lining of each valley off 1 in above its top."""
    lining = plan.valley_lining
    pieces = tuple(replace(one, length=one.length - 5) for one in lining.pieces)
    return replace(plan, valley_lining=replace(lining, pieces=pieces))


def _cut_back(piece: FinishedPiece) -> FinishedPiece:
    """Cut a piece 8 in further back from the valley, level: about 6 in square to it."""
    middle = (piece.left + piece.right) / 2
    corners = tuple((u - 8 if u > middle else u, v) for u, v in piece.corners)
    nails = tuple(nail - 8 if nail > middle else nail for nail in piece.nails)
    return replace(piece, corners=corners, right=piece.right - 8, nails=nails)


def _towards_the_valley(piece: FinishedPiece) -> FinishedPiece:
    *others, last = piece.nails
    return replace(piece, nails=(*others, last + 3))


def _run_through_to(short: float) -> Change:
    """Move the ends of all shingles of side 4 that run through the valley back, level."""

    def ends_sooner(one: FinishedPiece) -> FinishedPiece:
        left = min(u for u, _ in one.corners) if one.corners else one.left
        low = min((u, v) for u, v in one.corners)[1] if one.corners else 0.0
        beyond = {(u, v) for u, v in one.corners if u < left + 25 and v <= low + 40}
        corners = tuple((u + short if (u, v) in beyond else u, v) for u, v in one.corners)
        return replace(one, corners=corners, left=one.left + short)

    def does(plan: FinishedPlan) -> FinishedPlan:
        return replace(
            plan,
            courses=tuple(
                replace(one, laid=(ends_sooner(one.laid[0]), *one.laid[1:]))
                if one.plane == "side 4" and 5 <= one.number <= 12 and one.laid[0].corners
                else one
                for one in plan.courses
            ),
        )

    return does


def _drop_course(plane: str, number: int) -> Change:
    return lambda plan: replace(
        plan,
        courses=tuple(one for one in plan.courses if (one.plane, one.number) != (plane, number)),
    )


def _short_of_the_hip(one: FinishedCourse) -> FinishedCourse:
    """Leave out the first piece of a course, at the hip on its left."""
    return replace(one, laid=one.laid[1:], joints=one.joints[1:])


def _drop_row(plane: str) -> Change:
    def does(plan: FinishedPlan) -> FinishedPlan:
        rows = plan.underlayment.rows
        place = [k for k, row in enumerate(rows) if row.plane == plane][1]
        return replace(plan, underlayment=replace(plan.underlayment, rows=without(rows, place)))

    return does


def _raise_first_row(plan: FinishedPlan) -> FinishedPlan:
    """Begin the first row over the pitch break 3 in higher: it laps the rows below by 1 in."""
    rows = plan.underlayment.rows
    place = next(k for k, row in enumerate(rows) if row.plane == "porch")
    return replace(
        plan,
        underlayment=replace(
            plan.underlayment,
            rows=changed(rows, place, lambda row: replace(row, lower=row.lower + 3)),
        ),
    )


def _lining_without(valley: int) -> Change:
    return lambda plan: replace(
        plan,
        valley_lining=replace(
            plan.valley_lining,
            pieces=tuple(one for one in plan.valley_lining.pieces if one.valley != valley),
        ),
    )


def _bed_nothing(plan: FinishedPlan) -> FinishedPlan:
    """Bed no course of the upper slope at the front, and say so of the cement."""
    upper = "front upper"
    left = sum(one.bedding_area for one in plan.courses if one.plane != upper)
    volume = left * plan.choices.sealing.bedding_thickness
    return replace(
        plan,
        courses=tuple(
            replace(one, bedding_area=0.0) if one.plane == upper else one for one in plan.courses
        ),
        sealant=replace(plan.sealant, bedding_volume=volume),
    )


def _no_dabs(plan: FinishedPlan) -> FinishedPlan:
    return replace(plan, sealant=replace(plan.sealant, dab_volume=0.0))


def _head_for_cricket(one: FinishedOpening) -> FinishedOpening:
    """Bend a head flashing for the chimney in place of its cricket."""
    return replace(one, crickets=(), heads=one.aprons)


ROOF_INJURIES = {
    "drop a cap": Injury(
        with_caps(HIP, _without_butts(3, 3)), "caps.headlap", "hip caps", 1, 2, on="house"
    ),
    "drop two caps": Injury(
        with_caps(HIP, _without_butts(3, 4)), "caps.spans", "hip caps", 1, on="house"
    ),
    "leave a hip uncapped": Injury(
        lambda plan: replace(plan, caps=plan.caps[1:]), "caps.spans", "hip caps", 0, on="house"
    ),
    "leave a ridge uncapped": Injury(
        lambda plan: replace(plan, caps=()), "caps.spans", "ridge caps", 0, on="barn"
    ),
    "end caps before the end of a ridge": Injury(
        with_caps(RIDGE, lambda run: replace(
            run, butts=run.butts[:-2], nail_positions=run.nail_positions[:-2]
        )),
        "caps.spans", "ridge caps", 8, on="house",
    ),
    "turn the laps of caps": Injury(
        with_caps(HIP, lambda run: replace(run, starts_at="either")),
        "caps.downhill", "hip caps", 1, on="house",
    ),
    "lay a cap over the one above it": Injury(
        with_caps(HIP, lambda run: replace(run, butts=swapped(run.butts, 4))),
        "caps.downhill", "hip caps", 1, 6, on="house",
    ),
    "lay caps against the wind": Injury(
        _against_the_wind, "caps.downhill", "ridge caps", 8, on="house"
    ),
    "nail caps at the edge of the next": Injury(
        with_caps(RIDGE, lambda run: replace(
            run, nail_positions=tuple(nail - 0.9 for nail in run.nail_positions)
        )),
        "caps.nails_covered", "ridge caps", 8, 1, on="house",
    ),
    "nail caps at their side": Injury(
        with_caps(RIDGE, lambda run: replace(run, nail_from_line=run.half_width - 0.125)),
        "caps.nails_covered", "ridge caps", 8, 1, on="house",
    ),
    "leave a cap without nails": Injury(
        with_caps(HIP, lambda run: replace(run, nail_positions=run.nail_positions[:-1])),
        "caps.nails_hold", "hip caps", 1, on="house",
    ),
    "bend narrow caps": Injury(
        lambda plan: replace(
            plan, caps=tuple(replace(run, half_width=1.5, nail_from_line=1) for run in plan.caps)
        ),
        "shingles.nails_covered", "course", 4, on="house",
    ),
    "cap a ridge before its hips": Injury(
        lambda plan: replace(plan, caps=(plan.caps[-1], *plan.caps[:-1])),
        "layers.order", "hip caps", 3, on="house",
    ),
    "forget the caps": Injury(
        lambda plan: without_stage(plan, "caps"), "layers.order", "step: caps", on="house"
    ),
    "shorten valley metal": Injury(
        with_run("valley", _shorten_valley_metal), "metal.spans", "valley metal", on="house"
    ),
    "cut the last piece of valley metal short": Injury(
        with_run("valley", lambda run: replace(
            run, lengths=(*run.lengths[:-1], run.lengths[-1] - 10)
        )),
        "metal.spans", "valley metal", on="house",
    ),
    "take narrow valley metal": Injury(
        with_run("valley", lambda run: replace(run, deck_leg=7.0)),
        "valleys.lap", "valley", on="house",
    ),
    "leave valley metal out": Injury(
        without_run("valley"), "shingles.layers", "course", 1, on="house"
    ),
    "turn the laps of valley metal": Injury(
        with_run("valley", lambda run: replace(run, lap_direction="either")),
        "metal.downhill", "valley metal", on="house",
    ),
    "lay valley metal under the underlayment": Injury(
        lambda plan: moved_before(plan, "valley metal", "underlayment"),
        "layers.order", "step: valley metal", 15, on="house",
    ),
    "lift a piece off a valley": Injury(
        at_valley(6, lambda _: None), "shingles.layers", "course", 6, on="house"
    ),
    "cut a piece back from a valley": Injury(
        at_valley(6, _cut_back), "valleys.lap", "valley", on="house"
    ),
    "nail within a valley": Injury(
        at_valley(6, _towards_the_valley), "valleys.nails", "course", 6, on="house"
    ),
    "line a closed valley with half a roll": Injury(
        with_choice("valley_lining", width=18.0), "valleys.lining", "valley lining", on="closed"
    ),
    "state another exposure of caps": Injury(
        with_caps(RIDGE, lambda run: replace(run, exposure=run.exposure - 1)),
        "plan.as_stated", "ridge caps", 8, 1, on="house",
    ),
    "state a larger exposure of caps": Injury(
        with_caps(RIDGE, lambda run: replace(run, exposure=run.exposure + 2)),
        "plan.as_stated", "ridge caps", 8, on="house",
    ),
    "state another length of a hip": Injury(
        with_caps(HIP, lambda run: replace(run, line_length=run.line_length + 3)),
        "plan.as_stated", "hip caps", 1, on="house",
    ),
    "bend caps wider than they are": Injury(
        with_caps(HIP, lambda run: replace(run, half_width=run.half_width + 2)),
        "plan.fits", "hip caps", 1, on="house",
    ),
    "nail caps in the line": Injury(
        with_caps(HIP, lambda run: replace(run, nail_from_line=0.0)),
        "caps.nails_hold", "hip caps", 1, on="house",
    ),
    "state another end of a piece than its outline has": Injury(
        at_valley(6, lambda piece: replace(piece, right=piece.right + 3)),
        "plan.as_stated", "course", 6, on="house",
    ),
    "take longer step flashing than there is": Injury(
        with_step(0, 3, lambda one: replace(one, upper=one.upper + 2)),
        "plan.fits", "step flashing", 0, 4, on="porch",
    ),
    "state a larger lap of step flashing": Injury(
        with_steps(0, lambda run: replace(run, lap=run.lap + 1)),
        "plan.as_stated", "step flashing on the left of the wall", 0, on="porch",
    ),
    "state another end of a wall": Injury(
        with_steps(0, lambda run: replace(run, upper=run.upper - 6)),
        "plan.as_stated", "step flashing on the left of the wall", 0, on="porch",
    ),
    "leave a valley unlined": Injury(
        _lining_without(1), "valleys.lined", "valley lining", 1, on="house"
    ),
    "cut short what runs through a closed valley": Injury(
        _run_through_to(10.0), "valleys.lap", "valley", on="closed"
    ),
    "cut what runs through a closed valley at its middle": Injury(
        _run_through_to(20.0), "shingles.layers", "course", 5, on="closed"
    ),
    "drop a course of one plane": Injury(
        _drop_course("side 4", 7), "shingles.layers", "course", 5, on="house"
    ),
    "cut a course short of a hip": Injury(
        on_plane("side 1", 9, _short_of_the_hip), "shingles.layers", "course", 9, on="house"
    ),
    "drop a row of underlayment of one plane": Injury(
        _drop_row("side 4"), "underlayment.layers", "deck", on="house"
    ),
    "lap the rows of a pitch break by too little": Injury(
        _raise_first_row, "underlayment.head_lap", "underlayment row", 3, on="porch"
    ),
    "leave the metal of a pitch break out": Injury(
        without_run("pitch_break"), "metal.spans", "pitch break metal", on="porch"
    ),
    "take narrow metal for a pitch break": Injury(
        with_run("pitch_break", lambda run: replace(run, face_leg=0.5)),
        "shingles.nails_covered", "course", 9, on="porch",
    ),
    "leave the metal at a wall's foot out": Injury(
        without_run("headwall"), "metal.spans", "headwall metal", on="porch"
    ),
    "take narrow metal for a wall's foot": Injury(
        with_run("headwall", lambda run: replace(run, face_leg=3.0)),
        "flashings.legs", "headwall metal", on="porch",
    ),
    "drop a step flashing": Injury(
        with_steps(0, lambda run: replace(run, pieces=without(run.pieces, 3))),
        "flashings.spans", "step flashing on the left of the wall", 0, on="porch",
    ),
    "leave a wall without step flashing": Injury(
        lambda plan: replace(plan, step_flashings=()),
        "flashings.spans", "step flashing on the left of the wall", on="porch",
    ),
    "swap two step flashings": Injury(
        with_steps(0, lambda run: replace(run, pieces=swapped(run.pieces, 3))),
        "flashings.step_lap", "step flashing on the left of the wall", 0, 4, on="porch",
    ),
    "lay a step flashing under the next course": Injury(
        with_step(0, 3, lambda one: replace(one, course=one.course + 1)),
        "flashings.steps", "step flashing on the left of the wall", 0, 4, on="porch",
    ),
    "let a step flashing show": Injury(
        with_step(0, 3, lambda one: replace(one, lower=one.lower - 1)),
        "flashings.steps", "step flashing on the left of the wall", 0, 4, on="porch",
    ),
    "shorten a step flashing": Injury(
        with_step(0, 3, lambda one: replace(one, upper=one.upper - 1)),
        "flashings.step_lap", "step flashing on the left of the wall", 0, 5, on="porch",
    ),
    "take narrow step flashing": Injury(
        with_choice("step_flashing", deck_leg=3.0),
        "flashings.legs", "step flashing on the left of the wall", 0, on="porch",
    ),
    "leave one side of a chimney without step flashing": Injury(
        lambda plan: replace(plan, step_flashings=plan.step_flashings[1:]),
        "flashings.around", "chimney", 1, on="house",
    ),
    "shorten an apron": Injury(
        with_apron(lambda piece: replace(piece, length=piece.length - 6)),
        "flashings.corners", "skylight", 2, on="house",
    ),
    "take a narrow apron": Injury(
        with_apron(lambda piece: replace(piece, deck_leg=2.0)),
        "flashings.legs", "skylight", 2, on="house",
    ),
    "leave an apron out": Injury(
        with_opening(2, lambda one: replace(one, aprons=())),
        "flashings.around", "skylight", 2, on="house",
    ),
    "leave a head flashing out": Injury(
        with_opening(2, lambda one: replace(one, heads=())),
        "flashings.around", "skylight", 2, on="house",
    ),
    "drop the metal of a cricket": Injury(
        with_opening(1, lambda one: replace(
            one, crickets=tuple(replace(each, metal_area=0.0) for each in one.crickets)
        )),
        "flashings.cricket_lap", "chimney", 1, on="house",
    ),
    "state a cricket lower than it is": Injury(
        with_opening(1, lambda one: replace(
            one, crickets=tuple(replace(each, height=each.height - 2) for each in one.crickets)
        )),
        "plan.as_stated", "chimney", 1, on="house",
    ),
    "build no cricket behind a wide chimney": Injury(
        with_opening(1, _head_for_cricket), "flashings.cricket", "chimney", 1, on="house"
    ),
    "take a small base for a pipe": Injury(
        with_choice("pipe_flashing", base_width=8.0),
        "flashings.pipe", "vent pipe", 3, on="house",
    ),
    "leave the flashing of a pipe out": Injury(
        with_opening(3, lambda one: replace(one, pipes=())),
        "flashings.around", "vent pipe", 3, on="house",
    ),
    "flash openings before the underlayment": Injury(
        lambda plan: moved_before(plan, "flashings", "underlayment"),
        "layers.order", "step: flashings", 15, on="house",
    ),
    "cut the metal of a valley off at its top": Injury(
        with_run("valley", _metal_ends_at_the_top), "valleys.top", "valley metal", on="house"
    ),
    "cut the lining of a valley off at its top": Injury(
        _lining_ends_at_the_top, "valleys.top", "valley lining", 1, on="closed"
    ),
    "dab no nails": Injury(_no_dabs, "sealing.dabs", "sealant", on="house"),
    "forget a dab on a roof with openings": Injury(
        forget_a_dab, "sealing.dabs", "sealant", on="house"
    ),
    "forget a dab under the caps of a ridge": Injury(
        forget_a_dab, "sealing.dabs", "sealant", on="barn"
    ),
    "forget a dab beside a wall": Injury(forget_a_dab, "sealing.dabs", "sealant", on="porch"),
    "bed no course under caps": Injury(_bed_nothing, "sealing.bedding", "course", 12, on="barn"),
}  # fmt: skip
