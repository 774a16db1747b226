"""The sharing of shingles: each shingle that gives several pieces, and where these are laid.

Shingles that are cut alike are one picture. Pieces are numbered on it in the order in which they
come up in the work.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from roofing_core.job.cutting import ShingleCut
from roofing_core.job.plan import Plan
from roofing_core.measures.counting import DUST
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import Inches, Ratio, System
from roofing_core.sheets.cutting import piece_named, shared
from roofing_core.sheets.drawings.lettering import LEADING, SMALL, TEXT, lines_of
from roofing_core.sheets.drawings.pages import Item, paged
from roofing_core.sheets.drawings.paper import SHORT, Drawing, Paper, Words
from roofing_core.sheets.drawings.svg import FINE, FIRM
from roofing_core.sheets.drawings.views import View, scale_for

#: Pictures side by side, and what is left between them.
_ACROSS, _APART = 2, 8.0
_WIDE = (SHORT - (_ACROSS - 1) * _APART) / _ACROSS

#: A strip of a shingle is drawn as high as this, whatever the shingle: only its length is shared.
_HIGH = 7.0

#: So many shingles that are cut alike to a picture at most, for their list to be read.
_MOST = 6

#: Room for a number within a piece.
_ROOM = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Card:
    """Shingles that are cut alike: where their pieces lie, and what is told of them."""

    parts: tuple[tuple[Inches, Inches], ...]
    told: tuple[str, ...]


def offcuts_drawing(plan: Plan, *, system: System = "us") -> tuple[Drawing, ...]:
    """Draw the shingles that give more than one piece, where offcuts are used again.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One drawing a page; none where no offcut is used again.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, cutting=Cutting(reuse="best")))
    >>> [page.title for page in offcuts_drawing(planned)]
    ['Cutting sheet: offcuts used again']
    """
    long = plan.choices.shingle.length
    scale = scale_for(long, 1.0, width=_WIDE, height=_HIGH)
    cards = _cards(plan, system)
    return paged(
        "offcuts",
        "Cutting sheet: offcuts used again",
        beneath=(
            f"Shingles {write_length(long, system)} long, seen from the front; each gives the"
            " pieces that are numbered on it. What is hatched is left over. Scale"
            f" 1:{scale:g} along them."
        ),
        items=[_row(cards[k : k + _ACROSS], long, scale) for k in range(0, len(cards), _ACROSS)],
        says="Each shingle that gives more than one piece, and where each piece is laid.",
    )


def _cards(plan: Plan, system: System) -> list[_Card]:
    """Give cards for the shingles, those that are cut alike together."""
    alike: dict[tuple[tuple[Inches, Inches], ...], list[ShingleCut]] = {}
    for shingle in shared(plan):
        parts = tuple((one.begins, one.begins + one.width) for one in shingle.pieces)
        alike.setdefault(parts, []).append(shingle)
    return [
        _Card(parts=parts, told=_told(plan, cut[k : k + _MOST], system))
        for parts, cut in alike.items()
        for k in range(0, len(cut), _MOST)
    ]


def _told(plan: Plan, cut: Sequence[ShingleCut], system: System) -> tuple[str, ...]:
    many = "1 shingle" if len(cut) == 1 else f"{len(cut)} shingles"
    texts = [f"{many}:"]
    for k, piece in enumerate(cut[0].pieces):
        where = ", ".join(piece_named(plan, shingle.pieces[k]) for shingle in cut)
        texts.append(f"{k + 1}: {write_length(piece.width, system)} wide: {where}")
    return tuple(line for text in texts for line in lines_of(text, room=_WIDE, size=SMALL))


def _row(cards: Sequence[_Card], long: Inches, scale: Ratio) -> Item:
    def draw(paper: Paper) -> None:
        for k, card in enumerate(cards):
            view = View(scale, k * (_WIDE + _APART), paper.y + 2 + _HIGH)
            _draw_card(paper, view, card, long)

    lines = max(len(card.told) for card in cards)
    return Item(height=2 + _HIGH + lines * LEADING * SMALL + 4, draw=draw)


def _draw_card(paper: Paper, view: View, card: _Card, long: Inches) -> None:
    top, foot = view.foot - _HIGH, view.foot
    paper.draw(_strip(view, 0.0, long, top, foot), FINE, closed=True)
    ends = [0.0, *(end for part in sorted(card.parts) for end in part), long]
    rests = zip(ends[::2], ends[1::2], strict=True)
    paper.hatch((_strip(view, *rest, top, foot) for rest in rests if rest[1] - rest[0] > DUST), 1.2)
    for k, (left, right) in enumerate(card.parts):
        paper.draw(_strip(view, left, right, top, foot), FIRM, closed=True)
        if view.long(right - left) > _ROOM:
            middle = view.x((left + right) / 2)
            number = Words(str(k + 1), (middle, foot - _HIGH / 2 + TEXT / 3), TEXT, anchor="middle")
            paper.write(number)
    for k, text in enumerate(card.told):
        paper.write(Words(text, (view.left, foot + (k + 1) * LEADING * SMALL), SMALL))


def _strip(
    view: View, left: Inches, right: Inches, top: float, foot: float
) -> list[tuple[float, float]]:
    return [(view.x(u), y) for u, y in ((left, foot), (right, foot), (right, top), (left, top))]
