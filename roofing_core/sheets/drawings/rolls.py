"""Rolls of underlayment and ice barrier: what is cut from each, in order, and what is left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import accumulate, pairwise

from roofing_core.job.plan import Plan
from roofing_core.layers.underlaying.rolls import RollCut, RollUsed
from roofing_core.layers.underlaying.valley_lining import LiningPiece
from roofing_core.materials.kinds import Roll
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Ratio, System
from roofing_core.sheets.drawings.bars import Part, draw_bar
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import SMALL, TEXT
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, note_height
from roofing_core.sheets.drawings.views import scale_for

#: Height of a bar; the whole width of its roll.
_HIGH = 9.0


def rolls_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw every roll as a bar with its cuts.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page; none where no roll is opened.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> [page.title for page in rolls_drawing(plan(Job(roof=roof)))]
    ['Rolls and their cuts']
    """
    sheets = ((plan.choices.ice_barrier, plan.ice_barrier.roll_plan),
              (plan.choices.underlayment, plan.underlayment.roll_plan))  # fmt: skip
    used = [(roll, one) for roll, rolls in sheets for one in rolls]
    lining = list(_linings(plan))
    longest = max((roll.length for roll, _ in (*used, *lining)), default=1.0)
    scale = scale_for(longest, 0.0, width=SHORT, height=1.0)
    return paged(
        "rolls",
        "Rolls and their cuts",
        beneath=f"Cut in this order; what is left is hatched. Scale 1:{scale:g} along the roll.",
        items=[
            *(_item(roll, one, scale, system) for roll, one in used),
            *(_lining_item(roll, pieces, scale, system) for roll, pieces in lining),
        ],
        says=f"{len(used) + len(lining)} rolls, each as a bar with its cuts.",
    )


def _linings(plan: Plan) -> Iterator[tuple[Roll, list[LiningPiece]]]:
    """Give each roll of valley lining with the pieces that are cut from it."""
    rolls: dict[int, list[LiningPiece]] = {}
    for piece in plan.valley_lining.pieces:
        rolls.setdefault(piece.roll, []).append(piece)
    for number in sorted(rolls):
        yield plan.choices.valley_lining, rolls[number]


def _lining_item(roll: Roll, pieces: Sequence[LiningPiece], scale: Ratio, system: System) -> Item:
    ends = list(accumulate((piece.length for piece in pieces), initial=0.0))
    names = [f"valley {piece.valley}, {write_length(piece.length, system)}" for piece in pieces]
    parts = [
        Part(start=start, end=end, text=name, short=name.partition(",")[0])
        for name, (start, end) in zip(names, pairwise(ends), strict=True)
    ]
    left = roll.length - ends[-1]
    if left > 0:
        parts.append(Part(start=ends[-1], end=roll.length, text="", left_over=True))
    told = f"{'; '.join(names)}; left over {write_length(max(left, 0.0), system)}."
    return _bar_item(roll, pieces[0].roll, parts, told=told, scale=scale, system=system)


def _item(roll: Roll, used: RollUsed, scale: Ratio, system: System) -> Item:
    parts, told = tuple(_parts(used, roll, system)), _told(used, roll, system)
    return _bar_item(roll, used.number, parts, told=told, scale=scale, system=system)


def _bar_item(
    roll: Roll, number: int, parts: Sequence[Part], *, told: str, scale: Ratio, system: System
) -> Item:
    size = f"{write_length(roll.width, system)} by {write_length(roll.length, system)}"
    heading = f"Roll {number} of {spelt(roll.name)}, {size}"
    height = note_height(heading, width=SHORT) + note_height(told, width=SHORT, size=SMALL)
    return Item(
        height=height + _HIGH + 5,
        draw=partial(_draw, heading=heading, parts=parts, told=told, scale=scale, long=roll.length),
    )


def _draw(
    paper: Paper, *, heading: str, parts: Sequence[Part], told: str, scale: Ratio, long: float
) -> None:
    paper.y += 1
    paper.note(heading, TEXT)
    draw_bar(paper, parts, scale=scale, long=long, high=_HIGH)
    paper.note(told, SMALL)


@dataclass(slots=True)
class _Rest:
    """What a strip leaves of the width of its roll: where it begins, its length, what is taken."""

    start: float
    long: float
    taken: float


def _parts(used: RollUsed, roll: Roll, system: System) -> Iterator[Part]:
    """Give the cuts along a roll; what is ripped beside a strip stands over it."""
    start, rests = 0.0, list[_Rest]()
    for cut in used.cuts:
        share = cut.width / roll.width
        if cut.taken_from == "rest_of_width":
            yield _beside(rests, cut, share)
            continue
        long = write_length(cut.length, system)
        text = f"row {cut.row}" if share < 1 else f"row {cut.row}, {long}"
        yield Part(start=start, end=start + cut.length, text=text, short=f"row {cut.row}",
                   upper=share)  # fmt: skip
        if share < 1:
            rests.append(_Rest(start, cut.length, share))
        start += cut.length
    if used.offcut > 0:
        yield Part(start=start, end=start + used.offcut, text="", left_over=True)


def _beside(rests: Sequence[_Rest], cut: RollCut, share: float) -> Part:
    """Rip a strip from the shortest rest that has it."""
    rest = min(
        (one for one in rests if one.long >= cut.length - DUST and one.taken + share <= 1 + DUST),
        key=lambda one: one.long,
    )
    start = rest.start
    rest.start, rest.long = start + cut.length, rest.long - cut.length
    return Part(start=start, end=rest.start, text=f"row {cut.row}",
                lower=rest.taken, upper=rest.taken + share)  # fmt: skip


def _told(used: RollUsed, roll: Roll, system: System) -> str:
    cuts = "; ".join(_cut(cut, roll, system) for cut in used.cuts)
    return f"{cuts}; left over {write_length(used.offcut, system)}."


def _cut(cut: RollCut, roll: Roll, system: System) -> str:
    narrow = f" by {write_length(cut.width, system)}" if cut.width < roll.width else ""
    beside = " beside it" if cut.taken_from == "rest_of_width" else ""
    return f"row {cut.row} {write_length(cut.length, system)}{narrow}{beside}"
