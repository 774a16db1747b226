"""The steps of work that lay sheets: ice barrier, lining of valleys, underlayment."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.layout import Layout
from roofing_core.job.telling import all_of, count, listed, on_planes
from roofing_core.layers.underlaying.rolls import SheetRow
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.roof.outlines import RoofPlane


def ice_barrier(layout: Layout) -> Iterator[Sentence]:
    """Say how the ice barrier is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence for each plane that takes it.

    Raises:
        Nothing.

    Source:
        The layer's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(ice_barrier(lay_out(shed)))
    []
    """
    return on_planes(layout, _ice_barrier(layout))


def _ice_barrier(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    laid = layout.ice_barrier
    tops = {plane.name: max(v for _, v in plane.corners) for plane in layout.planes}
    for plane in laid.planes:
        rows = sum(row.plane == plane.plane for row in laid.rows)
        whole = plane.upper >= tops[plane.plane]
        reach = ["over the whole slope"] if whole else ["up to ", length(plane.upper)]
        if rows:
            yield (
                plane.plane,
                say(
                    f"Lay the ice barrier from the eave in {count(rows, 'row')}, ",
                    *reach,
                    "; the code asks for ",
                    length(plane.reach),
                    " up the slope. Roll it down hard.",
                ),
            )


def valley_lining(layout: Layout) -> Iterator[Sentence]:
    """Say how valleys are lined.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence where there are valleys.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(valley_lining(lay_out(shed)))
    []
    """
    laid, way = layout.valley_lining, layout.choices.valleying
    if laid.pieces:
        yield say(
            "Line every valley before the underlayment, the middle of the sheet in the middle of"
            " the valley, ",
            length(way.lining_past_foot),
            " longer at its foot and ",
            length(way.lining_over_top),
            f" at its top: {count(len(laid.pieces), 'piece')}, ",
            *listed(piece.length for piece in laid.pieces),
            f", off {count(laid.rolls, 'roll')}.",
        )


def underlayment(layout: Layout) -> Iterator[Sentence]:
    """Say how the underlayment is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        How each plane is begun, where its rows lie, which are strips and where ends lap.

    Raises:
        Nothing.

    Source:
        The layer's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> next(underlayment(lay_out(shed))).written()[:35]
    'Roll out the underlayment in two la'
    """
    return on_planes(layout, _underlayment(layout))


def _underlayment(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    laid = layout.underlayment
    layers = {one.plane: one.layers for one in laid.planes}
    for plane in layout.planes:
        rows = [row for row in laid.rows if row.plane == plane.name]
        if rows:
            told = _rows(layout, plane, rows, layers[plane.name])
            yield from ((plane.name, sentence) for sentence in told)


def _rows(
    layout: Layout, plane: RoofPlane, rows: list[SheetRow], layers: int
) -> Iterator[Sentence]:
    first, *others = rows
    twice = " in two layers" if layers > 1 else ""
    rolls = {piece.roll for row in rows for piece in row.pieces}
    yield say(
        f"Roll out the underlayment{twice} over the eave metal, its lowest edge ",
        *_from_metal(first.lower),
        f", in {count(len(rows), 'row')} off {count(len(rolls), 'roll')}.",
        *_ends(layout, plane),
    )
    if others:
        edges = listed(dict.fromkeys(row.lower for row in others))
        laps = sorted({row.head_lap for row in others if row.head_lap}, reverse=True)
        lapped = ["; head laps ", *listed(laps)] if laps else []
        yield say("Set the lower edges of the next rows at ", *edges, *lapped, ".")
    for row in rows:
        if row.kind != "full":
            yield say(
                f"Row {row.number} is a strip ", length(row.width), " wide, ripped from a roll."
            )
        if row.end_laps:
            end = "rake" if plane.edges[-1] == "rake" else "corner"
            yield say(
                f"End laps of row {row.number} from the left {end}: ", *listed(row.end_laps), "."
            )
    if any(row.trim for row in rows):
        yield say("Trim the underlayment flush with the top edge.")


def _ends(layout: Layout, plane: RoofPlane) -> list[object]:
    """Say how rows end: cut long at rakes and walls, run over hips, ridges and valleys."""
    how = layout.choices.underlaying
    told: list[object] = []
    squares = [kind for kind in ("rake", "sidewall") if kind in plane.edges]
    if squares:
        both = "both rakes" if plane.edges.count("rake") > 1 else all_of(squares)
        told += [" Cut each row ", length(how.trim_allowance),
                 f" long at {both} and trim it to the deck."]  # fmt: skip
    shared = [
        f"{kind}s"
        for kind in ("hip", "ridge", "valley")
        if any(k == kind and b for k, b in zip(plane.edges, plane.beyond, strict=True))
    ]
    if shared:
        told += [f" Run it over {all_of(shared)} by ", length(how.over_edges), "."]
    return told


def _from_metal(height: float) -> list[object]:
    if height < 0:
        return [length(-height), " past the metal"]
    return [length(height), " above the metal"]
