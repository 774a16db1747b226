"""Metal as laid: every run with its pieces, laps and nails."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import groupby, pairwise

from roofing_core.job.edges import EdgeRun
from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Ratio, System
from roofing_core.sheets.drawings.edges import spelt
from roofing_core.sheets.drawings.lettering import SMALL, TEXT, width_of
from roofing_core.sheets.drawings.metal_cuts import edge_of
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words, note_height
from roofing_core.sheets.drawings.plane_paper import capital
from roofing_core.sheets.drawings.svg import FINE, FIRM
from roofing_core.sheets.drawings.views import View, scale_for

#: Height of a piece on paper, of a run and of a length that is cut.
_HIGH = 5.0

#: How much higher than its neighbours every second piece is drawn, to show both ends of a lap.
_STEP = 1.4

#: From here on the places of nails are told by their spacing.
_MOST_NAILS = 40


def metal_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw every run of metal with its pieces, laps and nails.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> [page.title for page in metal_drawing(plan(Job(roof=roof)))]
    ['Metal as laid']
    """
    longest = max((run.cut_length for run in plan.metal), default=1.0)
    scale = scale_for(longest, 0.0, width=SHORT, height=1.0)
    return paged(
        "metal",
        "Metal as laid",
        beneath=(
            "In the order in which it goes on. Laps are hatched; every tick on a run is a nail."
            f" Scale 1:{scale:g} along the run."
        ),
        items=[_run_item(run, edge_of(plan, run), scale, system) for run in plan.metal],
        says=f"{len(plan.metal)} runs of metal with their pieces, laps and nails.",
    )


def _run_item(run: EdgeRun, place: str, scale: Ratio, system: System) -> Item:
    texts = (_heading(run, place, system), *_told(run, system))
    height = note_height(texts[0], width=SHORT)
    height += sum(note_height(text, width=SHORT, size=SMALL) for text in texts[1:])
    return Item(
        height=height + _HIGH + _STEP + 6,
        draw=partial(_draw_run, run=run, texts=texts, scale=scale, system=system),
    )


def _heading(run: EdgeRun, place: str, system: System) -> str:
    legs = f"{write_length(run.deck_leg, system)} by {write_length(run.face_leg, system)}"
    return (
        f"{capital(place)}: {spelt(run.material)}, {legs},"
        f" over {write_length(run.run_length, system)} of edge"
    )


def _told(run: EdgeRun, system: System) -> Iterator[str]:
    tabs = {"both": "at each end", "start": "at its start", "end": "at its end"}[run.tabs]
    tab = f" A tab of {write_length(run.tab, system)} {tabs} is bent round the corner."
    yield f"Pieces: {_listed(run.lengths, system)}.{tab if run.tab else ''}"
    if run.laps:
        over = ", each over the one before it" if run.lap_direction == "upper_over_lower" else ""
        starts = ", ".join(write_length(at, system) for at in run.laps)
        yield f"Laps of {write_length(run.lap, system)}{over}; they begin at {starts}."
    along = run.nail_positions
    lines = f" in each of {run.nail_lines} lines" if run.nail_lines > 1 else ""
    in_tabs = f", and {run.tab_nails} in the tabs" if run.tab_nails else ""
    if len(along) <= _MOST_NAILS:
        nails = ", ".join(write_length(at, system) for at in along)
        yield f"{len(along)} nails{lines}, from the start of the run at {nails}{in_tabs}."
    else:
        apart = write_length(max(b - a for a, b in pairwise(along)), system)
        yield f"{len(along)} nails{lines}, at most {apart} apart{in_tabs}."


def _listed(lengths: Sequence[Inches], system: System) -> str:
    """Write lengths in their order, those that follow each other and are alike once."""
    runs = ((write_length(long, system), len(list(alike))) for long, alike in groupby(lengths))
    return ", ".join(f"{many} of {text}" if many > 1 else text for text, many in runs)


def _draw_run(
    paper: Paper, *, run: EdgeRun, texts: Sequence[str], scale: Ratio, system: System
) -> None:
    paper.y += 1
    paper.note(texts[0], TEXT)
    top = paper.y + 1.6 + _STEP
    first = run.tab if run.tabs != "end" else 0.0
    view = View(scale, first * 25.4 / scale, top)
    pieces = list(enumerate(zip((-first, *run.laps), run.lengths, strict=True)))
    for k, (start, long) in pieces:
        _draw_piece(paper, view, k, start, start + long)
        if k:
            _hatch_lap(paper, view, start, start + run.lap)
    nails = (view.x(at) for at in run.nail_positions)
    paper.draw_all(([(x, top - _STEP - 0.6), (x, top + 0.9)] for x in nails), FINE)
    for k, (start, long) in pieces:
        _name_piece(paper, view, k, (start, long), system)
    paper.y = top + _HIGH + 0.6
    for text in texts[1:]:
        paper.note(text, SMALL)


def _draw_piece(paper: Paper, view: View, k: int, start: Inches, end: Inches) -> None:
    """Draw a piece, every second one a little higher."""
    left, right = view.x(start), view.x(end)
    top = view.foot - (_STEP if k % 2 else 0.0)
    foot = top + _HIGH
    paper.draw([(left, foot), (right, foot), (right, top), (left, top)], FIRM, closed=True)


def _hatch_lap(paper: Paper, view: View, start: Inches, end: Inches) -> None:
    left, right = view.x(start), view.x(end)
    top, foot = view.foot, view.foot + _HIGH - _STEP
    paper.hatch([[(left, foot), (right, foot), (right, top), (left, top)]], 0.8)


def _name_piece(
    paper: Paper, view: View, k: int, place: tuple[Inches, Inches], system: System
) -> None:
    start, long = place
    foot = view.foot + _HIGH / 2 + 0.9 - (_STEP / 2 if k % 2 else 0.0)
    for text in (f"{k + 1}: {write_length(long, system)}", f"{k + 1}"):
        if width_of(text, SMALL) < view.long(long) - 2:
            at = (view.x(start + long / 2), foot)
            paper.write_first([Words(text, at, SMALL, "middle")], ground=True)
            return
