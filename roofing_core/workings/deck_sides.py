"""The sides of a deck as formulas: where each lies in plan, and which planes rise from it.

They go from what was measured, walls or deck, in whatever form, to the outline from which all
planes rise; where they meet is `of_points`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from roofing_core.roof.footprints import Footprint, Side
from roofing_core.roof.forms import Gable, Gambrel, Hip, Pyramid, Saltbox
from roofing_core.roof.polygons import signed_area
from roofing_core.workings.at import At
from roofing_core.workings.expressions import Constant, Expression, Figure, Step, evaluated
from roofing_core.workings.straight_lines import NOTHING, ONE, minus, over, plus, times

_Point = tuple[Expression, Expression]


@dataclass(frozen=True, slots=True)
class Rising:
    """A plane as it rises from a side of the deck.

    Attributes:
        pitch: Rise over run.
        height: From which it rises.
        after: How far inside the side, level, it begins: past a pitch break.
    """

    pitch: Expression
    height: Expression
    after: Expression


@dataclass(frozen=True, slots=True)
class DeckSide:
    """One side of the deck, the roof on its left.

    Attributes:
        name: What it is called.
        start: Where it begins in plan.
        way: Where it leads: how far to the right and to the back for each unit of its length.
        rising: The planes that rise from it, the lowest first; none over a gable.
    """

    name: str
    start: tuple[Expression, Expression]
    way: tuple[Expression, Expression]
    rising: tuple[Rising, ...]


def roof_measured(at: At, *names: str | int) -> Figure:
    """Give a measurement of the roof as it came in.

    Args:
        at: The plan.
        names: Where it stands in what was measured.

    Returns:
        The figure.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> roof_measured(At(shed, ()), "eave_length").value
    168
    """
    return at.figure(("as_measured", "roof", *names))


def deck_sides(at: At) -> tuple[DeckSide, ...]:
    """Give the sides of the deck, counter-clockwise seen from above.

    Args:
        at: The plan.

    Returns:
        One entry per side; none for a single slope, or for planes measured by hand.

    Raises:
        Nothing.

    Source:
        Geometry: each side of what was measured is moved out by its overhang.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> barn = Gable(length=240, width=192, pitch=0.75, measured="walls", eave_overhang=12)
    >>> side = deck_sides(At(plan(Job(roof=barn)), ()))[2]
    >>> side.name, [evaluated(each) for each in side.start]
    ('back', [240, 204.0])
    """
    return at.known.kept("sides of the deck", lambda: _deck_sides(at))


def _deck_sides(at: At) -> tuple[DeckSide, ...]:
    roof = at.plan.as_measured.roof
    if isinstance(roof, Footprint):
        return _of_footprint(at, roof)
    if isinstance(roof, Gable | Saltbox | Gambrel):
        beside, named = "rake_overhang", _gabled(at, roof)
    elif isinstance(roof, Hip | Pyramid):
        beside, named = "eave_overhang", _four_eaves(at, roof)
    else:
        return ()
    long, wide = roof_measured(at, "length"), roof_measured(at, "width")
    corners: list[_Point] = [(NOTHING, NOTHING), (long, NOTHING), (long, wide), (NOTHING, wide)]
    return _sides(at, corners, ["eave_overhang", beside] * 2, named)


_Named = Sequence[tuple[str, tuple[Rising, ...]]]


def _sides(
    at: At, corners: Sequence[_Point], overhangs: Sequence[str], named: _Named
) -> tuple[DeckSide, ...]:
    """Move the sides out where walls were measured, and say what rises from each."""
    ends = zip(corners, [*corners[1:], corners[0]], named, strict=True)
    ways = [_way(start, end, name) for start, end, (name, _) in ends]
    starts = list(corners)
    if getattr(at.plan.as_measured.roof, "measured", "deck") == "walls":
        out = [roof_measured(at, name) for name in overhangs]
        out_ = [each if each.value else NOTHING for each in out]
        starts = [_moved(corner, ways, out_, k) for k, corner in enumerate(corners)]
    return tuple(
        DeckSide(name, start, way, rising)
        for start, way, (name, rising) in zip(starts, ways, named, strict=True)
    )


def _way(start: _Point, end: _Point, name: str) -> _Point:
    """Give where a side leads: exactly along an axis, where it does."""
    (ax, ay), (bx, by) = start, end
    along, back = (evaluated(b) - evaluated(a) for a, b in ((ax, bx), (ay, by)))
    if not back:
        return (ONE if along > 0 else minus(NOTHING, ONE)), NOTHING
    if not along:
        return NOTHING, (ONE if back > 0 else minus(NOTHING, ONE))
    dx = Step(f"{name} as measured, to the right", "in", minus(bx, ax))
    dy = Step(f"{name} as measured, to the back", "in", minus(by, ay))
    long = Step(f"length of {name} as measured", "in", (dx.squared() + dy.squared()).root())
    return (
        Step(f"way of {name} to the right", "1", dx / long),
        Step(f"way of {name} to the back", "1", dy / long),
    )


def _moved(corner: _Point, ways: Sequence[_Point], out: Sequence[Expression], k: int) -> _Point:
    """Move a corner to where the two sides at it meet once each is moved out."""
    (ax, ay), (bx, by) = ways[k - 1], ways[k]
    across = minus(times(ax, by), times(ay, bx))
    off_x = minus(times(ax, out[k]), times(bx, out[k - 1]))
    off_y = minus(times(ay, out[k]), times(by, out[k - 1]))
    return (
        _of_deck(f"place to the right of the deck's corner {k + 1}", corner[0], off_x, across),
        _of_deck(f"place to the back of the deck's corner {k + 1}", corner[1], off_y, across),
    )


def _of_deck(name: str, wall: Expression, off: Expression, across: Expression) -> Expression:
    """Give a number of a moved corner, on a line of its own unless its sides lie along the axes."""
    place = plus(wall, over(off, across))
    return place if isinstance(across, Constant) else Step(name, "in", place)


def _from_eave(pitch: Expression, height: Expression = NOTHING) -> tuple[Rising, ...]:
    return (Rising(pitch, height, NOTHING),)


def _broken(
    at: At, pitch: Expression, height: Expression, upper: Expression, run: Expression
) -> tuple[Rising, ...]:
    """Give the two planes of a side with a pitch break."""
    roof = at.plan.as_measured.roof
    if getattr(roof, "measured", "deck") == "walls" and roof.eave_overhang:
        run = run + roof_measured(at, "eave_overhang")
    return (
        Rising(pitch, height, NOTHING),
        Rising(upper, plus(height, pitch * run), run),
    )


def _gabled(at: At, roof: Gable | Saltbox | Gambrel) -> _Named:
    pitch = roof_measured(at, "pitch")
    if isinstance(roof, Gambrel):
        upper, run = roof_measured(at, "upper_pitch"), roof_measured(at, "break_run")
        front = back = _broken(at, pitch, NOTHING, upper, run)
    else:
        other = pitch if roof.back_pitch is None else roof_measured(at, "back_pitch")
        drop = _drop(at, roof, pitch, other) if isinstance(roof, Saltbox) else NOTHING
        deep = evaluated(drop)
        front = _from_eave(pitch, drop if deep > 0 else NOTHING)
        back = _from_eave(other, minus(NOTHING, drop) if deep < 0 else NOTHING)
    return ("front", front), ("the right gable", ()), ("back", back), ("the left gable", ())


def _drop(at: At, roof: Saltbox, pitch: Expression, back: Expression) -> Expression:
    """Give how far the back eave of a saltbox lies below its front eave."""
    if roof.ridge_run is None:
        drop = roof_measured(at, "back_eave_drop")
        return drop if drop.value else NOTHING
    run: Expression = roof_measured(at, "ridge_run")
    wide: Expression = roof_measured(at, "width")
    if roof.measured == "walls" and roof.eave_overhang:
        overhang = roof_measured(at, "eave_overhang")
        run, wide = run + overhang, wide + 2 * overhang
    run = Step("run from the front eave to the ridge", "in", run)
    fall = back * (wide - run) - pitch * run
    return Step("how far the back eave lies below the front eave", "in", fall)


def _four_eaves(at: At, roof: Hip | Pyramid) -> _Named:
    if isinstance(roof, Hip):
        pitch: Expression = roof_measured(at, "pitch")
        ends = pitch if roof.end_pitch is None else roof_measured(at, "end_pitch")
        return _round((pitch, ends))
    return _round(_of_pyramid(at, roof))


def _of_pyramid(at: At, roof: Pyramid) -> tuple[Expression, Expression]:
    """Give the pitches of a pyramid: its rise over half of each side of its deck."""
    half = [
        Step(f"run over half the {name}", "in", _deck_size(at, roof, name) / 2)
        for name in ("width", "length")
    ]
    if roof.rise is not None:
        rise = roof_measured(at, "rise")
        return rise / half[0], rise / half[1]
    pitch = roof_measured(at, "pitch")
    return pitch, Step("rise of the pyramid", "in", half[0] * pitch) / half[1]


def _deck_size(at: At, roof: Pyramid, name: str) -> Expression:
    size = roof_measured(at, name)
    if roof.measured == "walls" and roof.eave_overhang:
        return size + 2 * roof_measured(at, "eave_overhang")
    return size


def _round(pitches: tuple[Expression, Expression]) -> _Named:
    names = ("front", "right end", "back", "left end")
    return [(name, _from_eave(pitches[k % 2])) for k, name in enumerate(names)]


def _of_footprint(at: At, roof: Footprint) -> tuple[DeckSide, ...]:
    count = len(roof.corners)
    sides = roof.sides or tuple(Side() for _ in roof.corners)
    turned = signed_area(roof.corners) < 0
    places = [*reversed(range(count - 1)), count - 1] if turned else list(range(count))
    corners: list[_Point] = [
        (roof_measured(at, "corners", k, 0), roof_measured(at, "corners", k, 1))
        for k in (reversed(range(count)) if turned else range(count))
    ]
    lowest = min(
        (k for k, side in enumerate(sides) if side.end == "eave"),
        key=lambda k: sides[k].eave_height,
    )
    overhangs = [
        "eave_overhang" if sides[place].end == "eave" else "rake_overhang" for place in places
    ]
    named = [
        (sides[place].name or f"side {place + 1}", _risings(at, sides, place, lowest))
        for place in places
    ]
    return _sides(at, corners, overhangs, named)


def _risings(at: At, sides: Sequence[Side], place: int, lowest: int) -> tuple[Rising, ...]:
    side = sides[place]
    if side.end == "gable":
        return ()

    def own(name: str) -> Figure:
        return roof_measured(at, "sides", place, name)

    pitch = roof_measured(at, "pitch") if side.pitch is None else own("pitch")
    height: Expression = NOTHING
    if side.eave_height != sides[lowest].eave_height:
        base = roof_measured(at, "sides", lowest, "eave_height")
        height = minus(own("eave_height"), base if base.value else NOTHING)
    if side.break_run is None:
        return _from_eave(pitch, height)
    return _broken(at, pitch, height, own("upper_pitch"), own("break_run"))
