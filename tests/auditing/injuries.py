"""Injuries: ways to break a good plan, each with the question that has to catch it, and where.

An injury takes what is read of a plan and gives the same with one thing spoilt. What it changes
besides, so that only that one thing is wrong, it says.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import pi

from roofing_core.auditing.finished import (
    FinishedCourse,
    FinishedPiece,
    FinishedPlan,
    FinishedRow,
    FinishedRun,
)

Change = Callable[[FinishedPlan], FinishedPlan]
Pieces = tuple[FinishedPiece, ...]


@dataclass(frozen=True)
class Injury:
    """One way to break a plan, and how it is found."""

    does: Change
    question: str
    part: str
    number: int = 0
    piece: int = 0
    on: str = "shed"


def course(plan: FinishedPlan, number: int) -> FinishedCourse:
    """Give a course of the first plane."""
    return next(one for one in plan.courses if one.number == number)


def with_courses(change: Callable[[FinishedCourse], FinishedCourse]) -> Change:
    """Change every course."""
    return lambda plan: replace(plan, courses=tuple(change(one) for one in plan.courses))


def with_course(number: int, change: Callable[[FinishedCourse], FinishedCourse]) -> Change:
    """Change one course."""
    return with_courses(lambda one: change(one) if one.number == number else one)


def with_laid(number: int, change: Callable[[Pieces], Pieces]) -> Change:
    """Change the pieces of a course."""
    return with_course(number, lambda one: replace(one, laid=change(one.laid)))


def with_piece(number: int, piece: int, change: Callable[[FinishedPiece], FinishedPiece]) -> Change:
    """Change a piece of a course; its number counts from 1."""
    return with_laid(
        number, lambda laid: tuple(change(one) if one.number == piece else one for one in laid)
    )


def with_run(edge: str, change: Callable[[FinishedRun], FinishedRun]) -> Change:
    """Change a run of metal."""
    return lambda plan: replace(
        plan, metal=tuple(change(run) if run.edge == edge else run for run in plan.metal)
    )


def with_rows(
    change: Callable[[tuple[FinishedRow, ...]], tuple[FinishedRow, ...]],
    sheets: str = "underlayment",
) -> Change:
    """Change the rows of the underlayment, or of the ice barrier."""

    def does(plan: FinishedPlan) -> FinishedPlan:
        rows = change(getattr(plan, sheets).rows)
        return replace(plan, **{sheets: replace(getattr(plan, sheets), rows=rows)})

    return does


def with_row(number: int, change: Callable[[FinishedRow], FinishedRow]) -> Change:
    """Change a row of the underlayment."""
    return with_rows(
        lambda rows: tuple(change(one) if one.number == number else one for one in rows)
    )


def moved(piece: FinishedPiece, along: float) -> FinishedPiece:
    """Move a piece with its nails along the eave."""
    return replace(
        piece,
        left=piece.left + along,
        right=piece.right + along,
        nails=tuple(nail + along for nail in piece.nails),
    )


def raised(one: FinishedCourse, by: float) -> FinishedCourse:
    """Raise a course."""
    return replace(one, butt=one.butt + by, snap_line=one.snap_line + by)


def swapped(rows: tuple, first: int) -> tuple:
    """Swap two neighbours in a list; places count from 0."""
    return (*rows[:first], rows[first + 1], rows[first], *rows[first + 2 :])


def without(rows: tuple, place: int) -> tuple:
    """Leave one out of a list."""
    return rows[:place] + rows[place + 1 :]


def _drop_course(plan: FinishedPlan) -> FinishedPlan:
    return replace(plan, courses=tuple(one for one in plan.courses if one.number != 7))


def _swap_heights(plan: FinishedPlan) -> FinishedPlan:
    low, high = course(plan, 5), course(plan, 6)
    exchanged = {
        5: replace(low, butt=high.butt, snap_line=high.snap_line),
        6: replace(high, butt=low.butt, snap_line=low.snap_line),
    }
    return replace(plan, courses=tuple(exchanged.get(one.number, one) for one in plan.courses))


def _lift_exposure(plan: FinishedPlan) -> FinishedPlan:
    """Raise all courses from the ninth on by 1 in, and say so of the exposure of the eighth."""
    return with_courses(
        lambda one: (
            raised(one, 1)
            if one.number > 8
            else replace(one, exposure=one.exposure + 1)
            if one.number == 8
            else one
        )
    )(plan)


def _same_pieces_twice(plan: FinishedPlan) -> FinishedPlan:
    below = course(plan, 5)
    return with_course(6, lambda one: replace(one, laid=below.laid, joints=below.joints))(plan)


def _move_joint(plan: FinishedPlan) -> FinishedPlan:
    """Cut the second piece of course 6 shorter and the third longer, to a joint 1 in off one below.

    The nails beside the joint move with it.
    """
    to = course(plan, 5).joints[1] + 1

    def moved_to(one: FinishedPiece) -> FinishedPiece:
        if one.number == 2:
            return replace(one, right=to, nails=(*one.nails[:-1], to - 1))
        return replace(one, left=to, nails=(to + 1, *one.nails[1:])) if one.number == 3 else one

    laid = tuple(map(moved_to, course(plan, 6).laid))
    joints = tuple(piece.left for piece in laid[1:])
    return with_course(6, lambda one: replace(one, laid=laid, joints=joints))(plan)


def _starter_like_the_first_course(plan: FinishedPlan) -> FinishedPlan:
    [starter] = plan.starters
    laid = tuple(replace(one, nail_height=3.0) for one in course(plan, 1).laid)
    return replace(plan, starters=(replace(starter, laid=laid),))


def _short_starter(plan: FinishedPlan) -> FinishedPlan:
    [starter] = plan.starters
    return replace(plan, starters=(replace(starter, laid=starter.laid[:-1]),))


def _low_starter(plan: FinishedPlan) -> FinishedPlan:
    [starter] = plan.starters
    return replace(plan, starters=(replace(starter, height=4.0),))


def _nail_in_a_joint(plan: FinishedPlan) -> FinishedPlan:
    """Move the second nail of a piece under the nearest joint of the course above."""
    joint = course(plan, 10).joints[1]
    nails = (joint - 12, joint - 0.125)
    return with_piece(9, 2, lambda one: replace(one, nails=nails))(plan)


def _two_as_one(laid: Pieces) -> Pieces:
    """Lay the first two pieces of a course as one."""
    first, second, *others = laid
    one = replace(first, right=second.right, nails=first.nails + second.nails)
    return (one, *(replace(each, number=k) for k, each in enumerate(others, 2)))


def _nail_beside_its_piece(piece: FinishedPiece) -> FinishedPiece:
    return replace(piece, nails=(*piece.nails, piece.right + 0.5))


def _hole(piece: FinishedPiece) -> FinishedPiece:
    """Cut a round hole, or nearly so, into the part of course 5 that shows: 4 in across."""
    corners = ((piece.left, 22.0), (piece.right, 22.0), (piece.right, 35.25), (piece.left, 35.25))
    u = (piece.left + piece.right) / 2
    hole = ((u - 2, 26.0), (u, 24.0), (u + 2, 26.0), (u, 27.0))
    return replace(piece, corners=corners, cutouts=(hole,))


def _clipped_corner(piece: FinishedPiece) -> FinishedPiece:
    """Clip the lower left corner of a piece of course 5, so that what shows is 4 in short there."""
    left, right = piece.left, piece.right
    corners = ((left + 4, 22.0), (right, 22.0), (right, 35.25), (left, 35.25), (left, 26.0))
    return replace(piece, corners=corners)


def _one_dab(plan: FinishedPlan) -> float:
    way = plan.choices.sealing
    return pi / 4 * way.dab_diameter**2 * way.dab_thickness


def forget_a_dab(plan: FinishedPlan) -> FinishedPlan:
    sealant = plan.sealant
    volume = sealant.dab_volume - _one_dab(plan)
    return replace(plan, sealant=replace(sealant, dab_volume=volume))


def _halve_the_cement(plan: FinishedPlan) -> FinishedPlan:
    volume = plan.sealant.bedding_volume / 2
    return replace(plan, sealant=replace(plan.sealant, bedding_volume=volume))


def without_run(edge: str) -> Change:
    """Leave the metal of one kind of edge out."""
    return lambda plan: replace(plan, metal=tuple(run for run in plan.metal if run.edge != edge))


def _thin_metal_lap(run: FinishedRun) -> FinishedRun:
    """Lay the second piece 5 in further on and cut it as much shorter; say so of the lap."""
    first, second = run.lengths
    return replace(run, lengths=(first, second - 5), laps=(run.laps[0] + 5,), lap=run.lap - 5)


def moved_before(plan: FinishedPlan, stage: str, before: str) -> FinishedPlan:
    """Move a stage of the work to before another."""
    moved_ = [step for step in plan.steps if step.stage == stage]
    rest = [step for step in plan.steps if step.stage != stage]
    place = next(k for k, step in enumerate(rest) if step.stage == before)
    ordered = (*rest[:place], *moved_, *rest[place:])
    numbered = tuple(replace(step, number=k) for k, step in enumerate(ordered, 1))
    return replace(plan, steps=numbered)


def without_stage(plan: FinishedPlan, stage: str) -> FinishedPlan:
    """Leave a stage of the work out."""
    return replace(plan, steps=tuple(step for step in plan.steps if step.stage != stage))


def _short_row(row: FinishedRow) -> FinishedRow:
    *others, last = row.pieces
    return replace(row, pieces=(*others, replace(last, right=last.right - 10)))


def _end_lap(by: float) -> Callable[[FinishedRow], FinishedRow]:
    """Move the second piece of a row to the right, and say so of its end lap."""

    def does(row: FinishedRow) -> FinishedRow:
        first, second, *others = row.pieces
        second = replace(second, left=second.left + by)
        laps = (second.left, *row.end_laps[1:])
        return replace(row, pieces=(first, second, *others), end_laps=laps)

    return does


def _stacked_end_laps(plan: FinishedPlan) -> FinishedPlan:
    """Cut the row above one with an end lap 1 ft further on: in two pieces that lap 4 in."""
    row = next(one for one in plan.underlayment.rows if one.end_laps)
    at = row.end_laps[0] + 12
    above = plan.underlayment.rows[row.number]
    [whole] = above.pieces
    pieces = (replace(whole, right=at + 4), replace(whole, left=at))
    return with_row(above.number, lambda one: replace(one, pieces=pieces, end_laps=(at,)))(plan)


def _pitch(pitch: float) -> Change:
    return lambda plan: replace(
        plan, planes=tuple(replace(plane, pitch=pitch) for plane in plan.planes)
    )


def _lift_rows(by: float) -> Callable[[tuple[FinishedRow, ...]], tuple[FinishedRow, ...]]:
    """Raise all rows from the third on."""
    return lambda rows: tuple(
        replace(row, lower=row.lower + by, upper=row.upper + by) if row.number > 2 else row
        for row in rows
    )


INJURIES = {
    "drop a piece": Injury(
        with_laid(5, lambda laid: without(laid, 2)), "shingles.layers", "course", 5
    ),
    "drop the first piece of a course": Injury(
        with_laid(5, lambda laid: without(laid, 0)), "shingles.layers", "course", 5
    ),
    "drop a course": Injury(_drop_course, "shingles.layers", "course", 5),
    "leave the first course out of the count": Injury(_drop_course, "shingles.order", "course", 8),
    "lay two courses in the wrong order": Injury(
        lambda plan: replace(plan, courses=swapped(plan.courses, 4)),
        "shingles.order", "course", 6,
    ),
    "swap the heights of two courses": Injury(_swap_heights, "shingles.order", "course", 6),
    "lift an exposure": Injury(_lift_exposure, "shingles.headlap", "course", 7),
    "state another exposure": Injury(
        with_course(4, lambda one: replace(one, exposure=5.5)), "plan.as_stated", "course", 4
    ),
    "state a joint elsewhere": Injury(
        with_course(4, lambda one: replace(one, joints=(one.joints[0] - 1, *one.joints[1:]))),
        "plan.as_stated", "course", 4,
    ),
    "narrow a headlap": Injury(
        with_course(6, lambda one: replace(one, snap_line=one.snap_line - 0.25)),
        "shingles.headlap", "course", 6,
    ),
    "trim the tops of a course": Injury(
        with_course(6, lambda one: replace(one, top_trim=4.0)), "shingles.layers", "course", 6
    ),
    "cut a piece short": Injury(
        with_piece(5, 2, lambda one: replace(one, right=one.right - 0.5)),
        "shingles.layers", "course", 5, 2,
    ),
    "cut a course short at the rake": Injury(
        with_laid(5, lambda laid: (*laid[:-1], replace(laid[-1], right=166.0))),
        "shingles.layers", "course", 5, 5,
    ),
    "cut a hole into a piece": Injury(
        with_piece(5, 2, _hole), "shingles.layers", "course", 5, 2
    ),
    "clip a corner that shows": Injury(
        with_piece(5, 3, _clipped_corner), "shingles.layers", "course", 5, 3
    ),
    "lay the same pieces twice": Injury(_same_pieces_twice, "shingles.joints", "course", 6, 1),
    "move a joint over a joint": Injury(_move_joint, "shingles.joints", "course", 6, 2),
    "shift a course": Injury(
        with_laid(8, lambda laid: tuple(moved(one, 6) for one in laid)),
        "shingles.joints", "course", 8, 1,
    ),
    "cut the starter as the first course": Injury(
        _starter_like_the_first_course, "shingles.joints", "course", 1, 1
    ),
    "leave the starter out": Injury(
        lambda plan: replace(plan, starters=()), "shingles.layers", "starter"
    ),
    "end the starter early": Injury(_short_starter, "shingles.layers", "starter", 0, 4),
    "take a low starter": Injury(_low_starter, "shingles.layers", "starter"),
    "move a nail into the line of a joint": Injury(
        _nail_in_a_joint, "shingles.nails_clear", "course", 9, 2
    ),
    "nail a piece through what shows": Injury(
        with_piece(9, 3, lambda one: replace(one, nail_height=5.0)),
        "shingles.nails_covered", "course", 9, 3,
    ),
    "nail a course at the edge of the next": Injury(
        with_laid(9, lambda laid: tuple(replace(one, nail_height=5.75) for one in laid)),
        "shingles.nails_covered", "course", 9, 1,
    ),
    "give a strip three nails": Injury(
        with_piece(9, 3, lambda one: replace(one, nails=one.nails[1:])),
        "shingles.nailed", "course", 9, 3,
    ),
    "nail a strip four times at one place": Injury(
        with_piece(9, 3, lambda one: replace(one, nails=one.nails[:1] * 4)),
        "shingles.nailed", "course", 9, 3,
    ),
    "leave a cut piece without nails": Injury(
        with_piece(9, 5, lambda one: replace(one, nails=())), "shingles.nailed", "course", 9, 5
    ),
    "chalk the nail line in what shows": Injury(
        with_course(9, lambda one: replace(one, nail_line=one.nail_line - 2)),
        "shingles.nails_covered", "course", 9,
    ),
    "chalk the line for the tops elsewhere": Injury(
        with_course(9, lambda one: replace(one, snap_line=one.snap_line + 2)),
        "plan.as_stated", "course", 9,
    ),
    "lay shingles on too flat a roof": Injury(_pitch(1.9 / 12), "shingles.pitch", "deck"),
    "lay two pieces as one": Injury(
        with_laid(9, _two_as_one), "plan.fits", "course", 9, 1
    ),
    "lay a piece on its neighbour": Injury(
        with_piece(9, 3, lambda one: replace(one, left=one.left - 3)),
        "shingles.side_by_side", "course", 9, 3,
    ),
    "lay a piece twice": Injury(
        with_laid(9, lambda laid: (laid[0], *laid)), "shingles.side_by_side", "course", 9, 1
    ),
    "leave a joint out": Injury(
        with_course(9, lambda one: replace(one, joints=without(one.joints, 1))),
        "plan.as_stated", "course", 9,
    ),
    "leave a piece of the starter without nails": Injury(
        lambda plan: replace(plan, starters=tuple(
            replace(one, laid=(replace(one.laid[0], nails=()), *one.laid[1:]))
            for one in plan.starters
        )),
        "shingles.nailed", "starter", 0, 1,
    ),
    "leave an eave out of the lines": Injury(
        lambda plan: replace(plan, lines=plan.lines[1:]), "plan.as_stated", "eave"
    ),
    "forget the closing course": Injury(
        lambda plan: without_stage(plan, "closing course"),
        "layers.order", "step: closing course",
    ),
    "state a joint of the starter elsewhere": Injury(
        lambda plan: replace(plan, starters=tuple(
            replace(one, joints=(one.joints[0] + 4, *one.joints[1:])) for one in plan.starters
        )),
        "plan.as_stated", "starter",
    ),
    "number pieces from the right": Injury(
        with_laid(9, lambda laid: tuple(
            replace(one, number=len(laid) + 1 - one.number) for one in laid
        )),
        "plan.counted", "course", 9,
    ),
    "number two steps alike": Injury(
        lambda plan: replace(plan, steps=tuple(
            replace(step, number=3) if step.number == 4 else step for step in plan.steps
        )),
        "plan.counted", "step: underlayment", 3,
    ),
    "count fewer nails of ridge metal, and their dabs": Injury(
        with_run("ridge", lambda run: replace(run, nails=run.nails - 4)),
        "plan.counted", "ridge metal",
    ),
    "take a wider row than the roll": Injury(
        with_row(3, lambda row: replace(row, upper=row.upper + 6)),
        "plan.fits", "underlayment row", 3,
    ),
    "state another head lap": Injury(
        with_row(3, lambda row: replace(row, head_lap=row.head_lap + 2)),
        "plan.as_stated", "underlayment row", 3,
    ),
    "number a row out of its order": Injury(
        with_row(3, lambda row: replace(row, number=9)),
        "plan.counted", "underlayment row", 4, on="long",
    ),
    "cut a piece of a row of another length": Injury(
        with_row(3, lambda row: replace(row, pieces=tuple(
            replace(one, length=one.length - 12) for one in row.pieces
        ))),
        "plan.as_stated", "underlayment row", 3, 1,
    ),
    "cut a piece of metal longer than its stock": Injury(
        with_run("eave", lambda run: replace(run, lengths=(126.0, *run.lengths[1:]))),
        "plan.fits", "eave metal",
    ),
    "take edge metal with a narrow leg": Injury(
        with_run("eave", lambda run: replace(run, deck_leg=1.0)),
        "metal.deck_leg", "eave metal",
    ),
    "take edge metal that ends at the deck's edge": Injury(
        with_run("left_rake", lambda run: replace(run, face_leg=0.0)),
        "metal.face_leg", "left rake metal",
    ),
    "dab nails with less than their heads": Injury(
        lambda plan: replace(plan, choices=replace(plan.choices, sealing=replace(
            plan.choices.sealing, dab_diameter=0.25
        ))),
        "sealing.dab_size", "dab",
    ),
    "nail beside a piece": Injury(
        with_piece(9, 3, _nail_beside_its_piece), "shingles.nails_hold", "course", 9, 3
    ),
    "nail beside the deck": Injury(
        with_piece(9, 1, lambda one: replace(one, nails=(-0.125, *one.nails))),
        "shingles.nails_hold", "course", 9, 1,
    ),
    "take ridge metal with a narrow leg": Injury(
        with_run("ridge", lambda run: replace(run, deck_leg=0.75)),
        "shingles.nails_covered", "course", 20, 1,
    ),
    "leave the ridge metal out": Injury(without_run("ridge"), "metal.spans", "ridge metal"),
    "leave a rake's metal out": Injury(
        without_run("left_rake"), "metal.spans", "left rake metal"
    ),
    "shorten a piece of metal": Injury(
        with_run("eave", lambda run: replace(run, lengths=(120.0, 57.0))),
        "metal.spans", "eave metal",
    ),
    "shorten a run of metal": Injury(
        with_run("eave", lambda run: replace(run, run_length=160.0)), "metal.spans", "eave metal"
    ),
    "lap metal by a hair": Injury(
        with_run("eave", _thin_metal_lap), "metal.lap", "eave metal", 0, 1
    ),
    "state another lap of metal": Injury(
        with_run("eave", lambda run: replace(run, lap=3.0)), "plan.as_stated", "eave metal", 0, 1
    ),
    "turn the laps of a rake": Injury(
        with_run("left_rake", lambda run: replace(run, lap_direction="either")),
        "metal.downhill", "left rake metal",
    ),
    "nail rake metal under the underlayment": Injury(
        lambda plan: moved_before(plan, "rake metal", "underlayment"),
        "layers.order", "step: rake metal", 3,
    ),
    "nail eave metal over the underlayment": Injury(
        lambda plan: moved_before(plan, "eave metal", "rake metal"),
        "layers.order", "step: underlayment", 2,
    ),
    "set the ridge metal before the courses": Injury(
        lambda plan: moved_before(plan, "ridge metal", "starter"),
        "layers.order", "step: ridge metal", 9,
    ),
    "forget a step": Injury(
        lambda plan: without_stage(plan, "starter"), "layers.order", "step: starter"
    ),
    "list the ridge metal first": Injury(
        lambda plan: replace(plan, metal=(plan.metal[-1], *plan.metal[:-1])),
        "layers.order", "metal: ridge", 1,
    ),
    "forget a dab": Injury(forget_a_dab, "sealing.dabs", "sealant"),
    "do not bed the closing course": Injury(
        with_course(20, lambda one: replace(one, bedding_area=0.0)),
        "sealing.bedding", "course", 20,
    ),
    "bed with half the cement": Injury(_halve_the_cement, "sealing.bedding", "cement"),
    "lay steep strips unsealed": Injury(_pitch(22 / 12), "sealing.dabs", "sealant"),
    "drop the strip under the first sheet": Injury(
        with_rows(lambda rows: rows[1:]), "underlayment.layers", "deck"
    ),
    "drop a row of underlayment": Injury(
        with_rows(lambda rows: without(rows, 1)), "underlayment.layers", "deck", on="long"
    ),
    "lay one layer where the pitch asks for two": Injury(
        _pitch(3 / 12), "underlayment.layers", "deck", on="long"
    ),
    "narrow a head lap": Injury(
        with_rows(_lift_rows(2.5)), "underlayment.head_lap", "underlayment row", 2, on="long"
    ),
    "lay a row under the one below it": Injury(
        with_rows(lambda rows: swapped(rows, 1)),
        "underlayment.order", "underlayment row", 2, on="long",
    ),
    "cut a row short at the rake": Injury(
        with_row(2, _short_row), "underlayment.layers", "deck", on="long"
    ),
    "narrow an end lap": Injury(
        with_row(3, _end_lap(1.0)), "underlayment.end_lap", "underlayment row", 3, 1, on="long"
    ),
    "leave a gap between two pieces of a row": Injury(
        with_row(3, _end_lap(5.0)), "underlayment.layers", "deck", on="long"
    ),
    "stack end laps": Injury(
        _stacked_end_laps, "underlayment.end_laps_apart", "underlayment row", 4, on="long"
    ),
    "state an end lap elsewhere": Injury(
        with_row(3, lambda row: replace(row, end_laps=(100.0,))),
        "plan.as_stated", "underlayment row", 3, on="long",
    ),
    "leave the ice barrier out": Injury(
        with_rows(lambda _: (), "ice_barrier"), "underlayment.layers", "deck", on="cold"
    ),
    "lap the ice barrier by too little": Injury(
        with_rows(lambda rows: tuple(
            replace(row, lower=row.lower + 2) if row.number == 1 else row for row in rows
        )),
        "underlayment.over_ice_barrier", "ice barrier row", 2, on="cold",
    ),
    "lap the rows of ice barrier by too little": Injury(
        with_rows(
            lambda rows: tuple(
                replace(row, lower=row.lower + 3) if row.number == 2 else row for row in rows
            ),
            "ice_barrier",
        ),
        "underlayment.head_lap", "ice barrier row", 1, on="cold",
    ),
}  # fmt: skip
