"""What is found at valleys: how far what lies bare there reaches on, nails, and where closed."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.found import Change, Finding, broken, place_on
from roofing_core.job.layout import Layout
from roofing_core.measures.sentences import at_least
from roofing_core.roof.outlines import RoofLine, RoofPlane
from roofing_core.ruling import on_valleys


def of_the_valleys(layout: Layout) -> Iterator[Finding]:
    """Hold the valleys of a roof against the rules.

    Args:
        layout: The roof with all its layers.

    Returns:
        One entry per breach, the first of its kind.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.footprints import Footprint
    >>> ell = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    >>> list(of_the_valleys(lay_out(Job(roof=Footprint(corners=ell, pitch=0.5)))))
    []
    """
    valleys = [line for line in layout.lines if line.kind == "valley"]
    if not valleys:
        return
    way, rule = layout.choices.valleying, on_valleys.VALLEY_NAILS
    yield from broken(
        layout, rule, way.nails_clear, "valleys", fields=("valleying.nails_clear",)
    )  # fmt: skip
    rule, lining = on_valleys.VALLEY_TOP, layout.valley_lining.pieces
    tops = [("valley lining", way.lining_over_top, "lining_over_top")] if lining else []
    tops += [("valley metal", way.over_ridge, "over_ridge")] if way.method == "open" else []
    for place, over, name in tops:
        yield from broken(layout, rule, over, place, fields=(f"valleying.{name}",))
    if way.method == "open":
        yield from _of_open_ones(layout, valleys)
        return
    rule, lap = on_valleys.VALLEY_LAP, way.run_through - way.cut_back
    enough, field = rule.limit + way.cut_back, "valleying.run_through"
    yield from broken(layout, rule, lap, "valleys", to=enough, fields=(field,))
    off = sum(not _has_its_foot_at_eaves(layout, line) for line in valleys)
    lay_open = (Change(field="valleying.method", word="open"),)
    yield from broken(layout, on_valleys.CLOSED_FOOT, off, "valleys", changes=lay_open)


def _of_open_ones(layout: Layout, valleys: list[RoofLine]) -> Iterator[Finding]:
    """Hold the metal of the longest valley, which shows widest at its foot, against the rules."""
    way, metal = layout.choices.valleying, layout.choices.valley_metal
    longest = max(valleys, key=lambda line: line.length)
    shows = (way.exposed_width + way.widening * longest.length) / 2
    rule, lap = on_valleys.VALLEY_LAP, min(metal.deck_leg, metal.face_leg) - shows
    here = place_on(layout, longest.planes[0], "valley")
    both, enough = ("valley_metal.deck_leg", "valley_metal.face_leg"), rule.limit + shows
    yield from broken(layout, rule, lap, here, to=at_least(enough).value, fields=both)


def _has_its_foot_at_eaves(layout: Layout, line: RoofLine) -> bool:
    """Tell whether a valley begins between an eave of each of its planes."""
    one, other = (next(p for p in layout.planes if p.name == name) for name in line.planes)
    feet = (_beside_foot(one, other.name, line), _beside_foot(other, one.name, line))
    return feet == ("eave", "eave")


def _beside_foot(plane: RoofPlane, beyond: str, line: RoofLine) -> str:
    """Give the edge of a plane beside the foot of its valley with another one."""
    edges = range(len(plane.edges))
    valleys = [k for k in edges if plane.edges[k] == "valley" and plane.beyond[k] == beyond]
    k = min(valleys, key=lambda k: abs(plane.lengths[k] - line.length))
    after = (k + 1) % len(plane.edges)
    rises = plane.corners[after][1] > plane.corners[k][1]
    return plane.edges[k - 1 if rises else after]
