"""The shape of a roof as plain text: its planes, its lines, and how long each kind of line is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from roofing_core.measures.sentences import write
from roofing_core.measures.units import System
from roofing_core.roof.outlines import RoofLine, Surfaces
from roofing_core.sheets.text import table


def surfaces_text(surfaces: Surfaces, system: System = "us") -> str:
    """Write the surfaces of a roof as plain text: planes, lines one by one, lines of each kind.

    Args:
        surfaces: The planes and lines of a roof.
        system: The unit system of every measurement in it.

    Returns:
        Tables as wide as their columns, every line ended by a newline. The same surfaces give the
        same text.

    Raises:
        Nothing.

    Source:
        The surfaces' own numbers; lengths to the nearest 1/16 in or mm, and they say so by their
        form.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> surfaces_text(surfaces(Hip(length=432, width=288, pitch=6 / 12))).splitlines()[-1]
    'ridge      1         12 ft'
    """
    parts = (
        _whole(surfaces, system),
        _titled("Planes", _planes(surfaces, system)),
        _titled("Lines", _lines(surfaces.lines, system)),
        _titled("Lines of each kind", _kinds(surfaces.lines, system)),
    )
    return "\n".join("\n".join(part) + "\n" for part in parts)


def _titled(title: str, lines: Sequence[str]) -> list[str]:
    return [title.upper(), "-" * len(title), *lines]


def _whole(surfaces: Surfaces, system: System) -> list[str]:
    sloped, level = (write(area, "in2", system) for area in (surfaces.area, surfaces.plan_area))
    squares = write(surfaces.squares, "square", system)
    return [f"SHAPE OF THE ROOF   {sloped} on the slopes, {squares}, {level} seen from above"]


def _planes(surfaces: Surfaces, system: System) -> list[str]:
    rows = [
        (
            plane.name,
            write(plane.pitch, "pitch", system),
            write(plane.area, "in2", system),
            write(plane.plan_area, "in2", system),
            ", ".join(_spelt(kind) for kind in plane.edges),
        )
        for plane in surfaces.planes
    ]
    return table(("plane", "pitch", "area", "from above", "edges from the eave round"), rows)


def _lines(lines: Iterable[RoofLine], system: System) -> list[str]:
    rows = [
        (_spelt(line.kind), write(line.length, "in", system), " and ".join(line.planes))
        for line in lines
    ]
    return table(("line", "length", "planes"), rows)


def _kinds(lines: Sequence[RoofLine], system: System) -> list[str]:
    lengths: dict[str, list[float]] = {}
    for line in lines:
        lengths.setdefault(_spelt(line.kind), []).append(line.length)
    rows = [
        (kind, str(len(each)), write(sum(each), "in", system)) for kind, each in lengths.items()
    ]
    return table(("line", "count", "all together"), rows)


def _spelt(kind: str) -> str:
    return kind.replace("_", " ")
