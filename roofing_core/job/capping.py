"""The caps of a job: on every hip and on every ridge that two planes share."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from math import dist
from typing import Literal

from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.caps import Caps, WindFrom, caps
from roofing_core.measures.faults import Refused
from roofing_core.roof.outlines import RoofLine

StartsAt = Literal["lower", "left", "right", "front", "back", "either"]

#: Ends of lines nearer to each other than this, in inches, are one point of the roof.
_ONE_POINT = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class CapRun(Caps):
    """The caps on one hip or ridge of a roof.

    Attributes:
        planes: The planes that meet in it.
        starts_at: The end at which laying starts: the lower one of a hip; of a ridge the one away
            from the wind, as seen from the front; either where the wind does not say.
    """

    planes: tuple[str, ...]
    starts_at: StartsAt


_CAPS = Wired(
    caps,
    cap_length="cap.length",
    cap_width="cap.width",
    exposure="cap.exposure",
    from_shingle="cap.from_shingle",
    per_pack="cap.per_pack",
    nail_above="capping.nail_above",
    side_distance="capping.side_distance",
)

_LAID = tuple(field.name for field in fields(Caps))


def lay_caps(site: Site) -> tuple[CapRun, ...]:
    """Lay the caps of every hip, and then of every ridge that two planes share.

    Args:
        site: The roof with its choices.

    Returns:
        One entry per hip and ridge; none for a single slope.

    Raises:
        Refused: A size of a cap or of its nailing cannot be; names the caller's fields.
        TooManyPieces: A line would take more caps than the limit.

    Source:
        Hips first, so that the ridge covers their tops: common practice, no published source.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Hip
    >>> roof = site_of(Hip(length=432, width=288, pitch=6 / 12))
    >>> [(run.line, run.count) for run in lay_caps(roof)][3:]  # 18 ft of hip, 12 ft of ridge
    [('hip', 39), ('ridge', 26)]
    """
    lines = site.surfaces.lines
    hips = [line for line in lines if line.kind == "hip"]
    ridges = [line for line in lines if line.kind == "ridge" and len(line.planes) > 1]
    if not (hips or ridges):
        _laid(site, 1.0, line="ridge")  # what the caller chose is looked at all the same
    return (
        *(_hip(site, line, ridges) for line in hips),
        *(_ridge(site, line) for line in ridges),
    )


def _laid(site: Site, long: float, **given: object) -> Caps:
    try:
        return _CAPS(site, line_length=long, **given)
    except Refused as refusal:
        raise refusal.renamed({"line_length": "roof"}) from None


def _hip(site: Site, line: RoofLine, ridges: list[RoofLine]) -> CapRun:
    covered = any(_meet(line, ridge) for ridge in ridges)
    laid = _laid(site, line.length, line="hip", last_covered=covered)
    return _run(laid, line, "lower")


def _meet(hip: RoofLine, ridge: RoofLine) -> bool:
    """Tell whether a hip's top is where a ridge ends; not known of planes measured by hand."""
    tops = sorted(hip.ends, key=lambda end: end[2])[-1:]
    return any(dist(top, other) < _ONE_POINT for top in tops for other in ridge.ends)


def _ridge(site: Site, line: RoofLine) -> CapRun:
    wind = site.choices.capping.wind_from
    ends = tuple(_ends(line))
    comes: WindFrom = "unknown"
    if ends and wind != "unknown":
        comes = "start" if wind == ends[0] else "end" if wind == ends[1] else "across"
    laid = _laid(site, line.length, line="ridge", wind_from=comes)
    known = laid.reason == "away_from_wind"
    at: StartsAt = ends[0 if laid.laid_from == "start" else 1] if known else "either"
    return _run(laid, line, at)


def _ends(line: RoofLine) -> Iterator[StartsAt]:
    """Give on which sides of the roof the two ends of a ridge lie, seen from the front."""
    if line.ends:
        (ax, ay, _), (bx, by, _) = line.ends
        lengthways = abs(bx - ax) >= abs(by - ay)
        forward = bx > ax if lengthways else by > ay
        sides: tuple[StartsAt, StartsAt] = ("left", "right") if lengthways else ("front", "back")
        yield sides[0] if forward else sides[1]
        yield sides[1] if forward else sides[0]


def _run(laid: Caps, line: RoofLine, starts_at: StartsAt) -> CapRun:
    return CapRun(
        **{name: getattr(laid, name) for name in _LAID},
        planes=line.planes,
        starts_at=starts_at,
    )
