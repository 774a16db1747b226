"""Where a job's choices meet a layer's arguments, and a layer's refusals the caller's names.

A layer asks for ``shingle_height``; the caller wrote ``shingle.height``. Each wiring says so once,
for the way in and for the way back.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from operator import attrgetter
from typing import Any, Generic, TypeVar

from roofing_core.job.choices import Choices
from roofing_core.measures.faults import Refused, refuse_if_any
from roofing_core.roof.given_planes import GivenPlanes, lone_valley_faults
from roofing_core.roof.measuring import AnyRoof, measured
from roofing_core.roof.openings import Opening, opening_faults
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.planes import Roof

Made = TypeVar("Made")


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """A measured roof with the choices for it: what every layer is asked from.

    Attributes:
        roof: The roof, measured.
        surfaces: Its planes and lines.
        choices: The materials, and how the work is done.
        openings: What comes through the roof.
    """

    roof: Roof
    surfaces: Surfaces
    choices: Choices
    openings: tuple[Opening, ...] = ()


def site_of(
    roof: AnyRoof, choices: Choices | None = None, *, openings: tuple[Opening, ...] = ()
) -> Site:
    """Measure a roof and put the choices for it beside it.

    Args:
        roof: What was measured.
        choices: The materials, and how the work is done; the defaults unless given.
        openings: What comes through the roof.

    Returns:
        What every layer is asked from.

    Raises:
        Refused: The roof cannot be, or an opening does not fit in it; names the fields of either,
            by the caller's names.

    Source:
        `measured`.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25)).roof.squares
    1.3066666666666666
    """
    try:
        found = measured(roof)
        refuse_if_any(lone_valley_faults(roof) if isinstance(roof, GivenPlanes) else ())
    except Refused as refusal:
        raise refusal.below("roof") from None
    faults = opening_faults(openings, found.surfaces.planes)
    if faults:
        raise Refused(*faults).below("openings")
    return Site(
        roof=found.roof,
        surfaces=found.surfaces,
        choices=Choices() if choices is None else choices,
        openings=openings,
    )


class Wired(Generic[Made]):
    """A layer's function with its arguments taken from the roof and the choices.

    Args:
        function: The layer's function.
        places: For each of its arguments, the dotted place of the value: ``roof.slope_length``,
            or without a prefix among the choices, ``shingle.height``.
    """

    __slots__ = ("_getters", "function", "places")

    def __init__(self, function: Callable[..., Made], **places: str) -> None:
        self.function = function
        self.places = places
        self._getters = tuple(
            (name, attrgetter(place if place.startswith("roof.") else f"choices.{place}"))
            for name, place in places.items()
        )

    def __call__(self, site: Site, **given: Any) -> Made:
        """Call the layer; `given` are arguments that other layers worked out, which go first.

        Raises:
            Refused: The layer refused; its faults name the caller's places.
        """
        arguments = {name: get(site) for name, get in self._getters}
        try:
            return self.function(**{**arguments, **given})
        except Refused as refusal:
            raise refusal.renamed(self.places) from None
