"""The steps of work on edges: metal along eaves, valleys, rakes, breaks, walls and tops; caps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from roofing_core.job.edges import EdgeRun
from roofing_core.job.layout import Layout
from roofing_core.job.telling import all_of, count, listed, on_planes
from roofing_core.measures.sentences import Sentence, length, say


def _run(run: EdgeRun) -> list[object]:
    """Say what a run is cut to, how it laps and where its nails go."""
    parts: list[object] = [f"{count(run.pieces, 'piece')}: ", *_pieces(run)]
    if run.laps:
        parts += [", lapped ", length(run.lap)]
    along = [b - a for a, b in zip(run.nail_positions, run.nail_positions[1:], strict=False)]
    if along:
        parts += [", nailed at most ", length(max(along)), " apart"]
        parts += [" along both sides"] if run.nail_lines > 1 else []
    return [*parts, f" ({count(run.nails, 'nail')})"]


def _pieces(run: EdgeRun) -> list[object]:
    """List the pieces, and where runs share lengths, which length each is cut from."""
    if not run.cut_from:
        return listed(run.lengths)
    parts: list[object] = []
    for long, number in zip(run.lengths, run.cut_from, strict=True):
        parts += [", ", length(long), f" from length {number}"]
    return parts[1:]


def _runs(layout: Layout, *edges: str) -> Iterator[EdgeRun]:
    return (run for run in layout.metal if run.edge in edges)


def eave_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal of the eaves is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence per eave.

    Raises:
        Nothing.

    Source:
        On the deck, under the underlayment: IRC R905.2.8.5, 2018.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> next(eave_metal(lay_out(shed))).written()[:47]
    'Nail the eave metal straight on the deck, 2 pie'
    """
    return on_planes(layout, _eave_metal(layout))


def _eave_metal(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    for run in _runs(layout, "eave"):
        corner = {"both": "each corner", "start": "the left corner", "end": "the right corner"}
        bent = f" bent round {corner[run.tabs]} and nailed once"
        tabs = [", a tab of ", length(run.tab), bent] if run.tab else []
        laid = "Nail the eave metal straight on the deck, "
        yield run.plane, say(laid, *_run(run), *tabs, ".")


def valley_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal of open valleys is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence per valley.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(valley_metal(lay_out(shed)))
    []
    """
    for run in _runs(layout, "valley"):
        yield say(
            f"Between {run.plane} and {run.beyond}: lay the valley metal over the underlayment,"
            " from ",
            length(run.past_foot),
            " below the foot of the valley to ",
            length(run.over_top),
            " over its top, ",
            *_run(run),
            ", the upper length over the lower one, and cut it off along the eaves.",
        )


def rake_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal of the rakes is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence for each plane that has rakes, or for each rake where they differ.

    Raises:
        Nothing.

    Source:
        Over the underlayment: IRC R905.2.8.5, 2018.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> len(list(rake_metal(lay_out(shed))))
    1
    """
    return on_planes(layout, _rake_metal(layout))


def _rake_metal(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    for plane in layout.planes:
        runs = [run for run in _runs(layout, "left_rake", "right_rake") if run.plane == plane.name]
        alike = len({(run.lengths, run.cut_from) for run in runs}) == 1
        for run in runs[:1] if alike else runs:
            which = "each rake " if len(runs) > 1 and alike else f"{run.edge.replace('_', ' ')} "
            yield (
                plane.name,
                say(
                    "Nail the rake metal over the underlayment and over the tabs of the eave"
                    " metal, ",
                    which,
                    *_run(run),
                    ". Start at the eave, so that upper lengths lap over lower ones.",
                ),
            )


def pitch_break_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal of pitch breaks is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence per pitch break.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(pitch_break_metal(lay_out(shed)))
    []
    """
    for run in _runs(layout, "pitch_break"):
        yield say(
            f"When {run.beyond} is shingled to its top: nail the metal of the pitch break over its"
            f" last course, the wide leg up under the courses of {run.plane}, ",
            *_run(run),
            ".",
        )


def apron_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal at the feet of walls is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence per wall.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(apron_metal(lay_out(shed)))
    []
    """
    return on_planes(layout, _apron_metal(layout))


def _apron_metal(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    for run in _runs(layout, "headwall"):
        yield (
            run.plane,
            say(
                "Set the apron metal over the last course and up the wall, under what covers the"
                " wall, ",
                *_run(run),
                ". Bed it in sealant, seal the laps, and dab every nail.",
            ),
        )


def ridge_metal(layout: Layout) -> Iterator[Sentence]:
    """Say how the metal over top edges is laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        One sentence for each top edge that no plane lies beyond.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> next(ridge_metal(lay_out(shed))).written()[:38]
    'Run 2 beads of 1/4 in under each leg o'
    """
    return on_planes(layout, _ridge_metal(layout))


def _ridge_metal(layout: Layout) -> Iterator[tuple[str, Sentence]]:
    sealing = layout.choices.sealing
    beads = f"Run {count(sealing.beads_per_leg, 'bead')} of "
    sealed = [beads, length(sealing.bead_size), " under each leg of the ridge metal. "]
    for run in _runs(layout, "ridge"):
        yield (
            run.plane,
            say(
                *(sealed if sealing.beads_per_leg else []),
                "Set the ridge metal over the top edge and over the rake metal, ",
                length(layout.choices.metalwork.ridge_proud),
                " proud at each end, ",
                *_run(run),
                ". Seal the laps, and dab every nail.",
            ),
        )


def cap_lines(layout: Layout) -> Iterator[Sentence]:
    """Say how the caps of hips and ridges are laid.

    Args:
        layout: The roof with all its layers.

    Returns:
        How caps are made and nailed, then one sentence per hip and per ridge.

    Raises:
        Nothing.

    Source:
        The caps' own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> list(cap_lines(lay_out(shed)))
    []
    """
    if not layout.caps:
        return
    cap, how = layout.choices.cap, layout.choices.capping
    cut: list[object] = [f"Cut caps from shingles, {cap.from_shingle} from each. "]
    yield say(
        *(cut if cap.made == "self_made" else []),
        "Bend each cap over the line, half on each side, ",
        length(cap.exposure),
        " showing, and nail it on both sides ",
        length(how.nail_above),
        " above the butt of the next one and ",
        length(how.side_distance),
        " in from its edge. Snap a line ",
        length(cap.width / 2),
        " off the hip or ridge for their edges.",
    )
    for run in layout.caps:
        yield say(
            f"{run.line.capitalize()} between {all_of(run.planes)}, ",
            length(run.line_length),
            f": {count(run.count, 'cap')}, {_START[run.starts_at]}; the last two show ",
            length(run.last_length),
            f" each ({count(run.nails, 'nail')}).",
            *([" Dab the nails of the last."] if run.exposed_nails else []),
        )


_START: Mapping[str, str] = MappingProxyType(
    {
        "lower": "from its lower end up",
        "either": "from either end, so that the laps open away from the wind that rains",
        **{side: f"from the {side}" for side in ("left", "right", "front", "back")},
    }
)
