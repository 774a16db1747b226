"""Across: where level and upright lines cross a plane, each end as a formula of the edge there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from roofing_core.measures.units import Inches
from roofing_core.roof.regions import region_of
from roofing_core.roof.slicing import Region, Stretch
from roofing_core.roof.uprights import upright
from roofing_core.workings.at import At
from roofing_core.workings.bounds import Bound, Places
from roofing_core.workings.covered import deck_bounds
from roofing_core.workings.expressions import Expression, Figure, evaluated
from roofing_core.workings.of_points import agrees


@dataclass(frozen=True, slots=True)
class Across:
    """A plane with its edges as formulas.

    Attributes:
        region: What is covered.
        places: Its edges, and the heights and places along the eave that things end at.
    """

    region: Region
    places: Places

    def ends(self, height: Expression) -> list[tuple[Expression, Expression]]:
        """Give where a level line enters and leaves what is covered, from the left."""
        level = evaluated(height)
        found = []
        for left, right in self.region.at(level):
            ends = [self.side(u, level, height) for u in (left, right)]
            if ends[0] is not None and ends[1] is not None:
                found.append((ends[0], ends[1]))
        return found

    def side(self, u: Inches, v: Inches, height: Expression) -> Expression | None:
        """Give where along the eave an edge is at a height."""
        straight = self.places.u(u)
        if straight is not None:
            return straight
        tried = (
            one.across(height)
            for one in self.places.bounds
            if one.lies == "sloping" and one.is_at(u, v)
        )
        return next((one for one in tried if agrees(one, u)), None)

    def height(self, u: Inches, v: Inches, place: Expression) -> Expression | None:
        """Give how high an edge or a level line is at a place along the eave."""
        straight = self.places.v(v)
        if straight is not None:
            return straight
        tried = (
            one.up(place) for one in self.places.bounds if one.lies == "sloping" and one.is_at(u, v)
        )
        return next((one for one in tried if agrees(one, v)), None)

    def lengths_up(self, stretch: Stretch, place: Expression) -> list[Expression]:
        """Give how long the parts of an upright line within a stretch are."""
        u = evaluated(place)
        found: list[Expression] = []
        for low, high in upright(stretch, u):
            ends = [self.height(u, v, place) for v in (low, high)]
            if ends[0] is not None and ends[1] is not None:
                found.append(ends[1] - ends[0])
        return found


def corner_heights(at: At, plane: int) -> tuple[Figure, ...]:
    """Give the heights of the corners of a plane.

    Args:
        at: The plan.
        plane: The plane, from 0.

    Returns:
        One entry per corner.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [one.value for one in corner_heights(At(shed, ()), 0)]
    [0.0, 0.0, 112, 112]
    """
    count = len(at.plan.planes[plane].corners)
    return tuple(at("planes/*/corners/*/*", plane, n, 1) for n in range(count))


def deck_across(
    at: At,
    plane: int,
    *,
    along: Sequence[Expression] = (),
    heights: Sequence[Expression] = (),
) -> Across:
    """Give a plane as it is, without its openings.

    Args:
        at: The plan.
        plane: The plane, from 0.
        along: Further places along the eave that things end at.
        heights: Further heights.

    Returns:
        The plane with its edges.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> from roofing_core.workings.expressions import Constant
    >>> ((left, right),) = deck_across(At(shed, ()), 0).ends(Constant(48, "in"))
    >>> evaluated(right - left)
    168.0
    """
    one: Any = at.plan.planes[plane]
    bounds: tuple[Bound, ...] = deck_bounds(at, plane)
    region = at.known.kept(("region of the deck", plane), lambda: region_of(one))
    return Across(region, Places(bounds, tuple(along), (*heights, *corner_heights(at, plane))))
