"""From a form of roof to all of its planes: the one way that every form goes.

The form gives a footprint, the footprint a deck whose sides rise or stand still, the deck a
skeleton, the skeleton planes.
"""

from __future__ import annotations

from dataclasses import replace

from roofing_core.measures.faults import Fault, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.roof.covering import planes_over, uncovered_fault
from roofing_core.roof.footprints import Deck, Footprint, Side, deck_outline
from roofing_core.roof.form_limits import form_faults
from roofing_core.roof.forms import (
    Form,
    Gable,
    Gambrel,
    Hip,
    Named,
    Pyramid,
    Saltbox,
    deck_sizes,
    oblong,
)
from roofing_core.roof.given_planes import GivenPlanes, given_surfaces
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.planes import SingleSlope, measure, single_surface
from roofing_core.roof.skeleton import Skeleton, skeleton


def surfaces(roof: Form | GivenPlanes) -> Surfaces:
    """Give the planes of a roof, and every eave, rake, ridge, hip, valley and pitch break of it.

    From each eave a plane rises at its own pitch, up to where it meets the next one; up to a gable
    the planes beside it run on. Planes measured by hand stay as they were measured.

    Args:
        roof: The roof as it was measured, in one of the forms.

    Returns:
        The planes with their outlines, and the lines with their lengths.

    Raises:
        Refused: A measurement is missing, left over or cannot be, the outline is none, or the
            gables, heights and pitches do not close over it; names each. For planes measured by
            hand as `given_surfaces`.

    Source:
        Geometry: the straight skeleton of the outline, weighted by the pitches; see `skeleton`.

    >>> surfaces(Hip(length=432, width=288, pitch=6 / 12)).area / 144  # 24 x 36 ft
    965.9813662799091
    """
    if isinstance(roof, SingleSlope):
        return single_surface(measure(roof))
    if isinstance(roof, GivenPlanes):
        return given_surfaces(roof)
    plan = _footprint(roof)
    deck = deck_outline(plan)
    drawn = skeleton(deck.corners, [side.rises for side in deck.sides])
    refuse_if_any(_not_built(plan, deck, drawn))
    found = planes_over(deck, drawn)
    refuse_if_any([uncovered_fault(deck, found)])
    return found


def _footprint(roof: Named | Footprint) -> Footprint:
    """Give the outline of a form, and how the roof rises from its sides, from the front round."""
    if isinstance(roof, Footprint):
        return roof
    refuse_if_any(form_faults(roof))
    if isinstance(roof, Hip):
        return _hip(roof)
    return _pyramid(roof) if isinstance(roof, Pyramid) else _gabled(roof)


def _hip(roof: Hip) -> Footprint:
    """Give the outline of a hip roof: four eaves."""
    end_pitch = roof.pitch if roof.end_pitch is None else roof.end_pitch
    return _four_eaves(roof, roof.pitch, end_pitch)


def _pyramid(roof: Pyramid) -> Footprint:
    """Give the outline of a pyramid: four eaves at pitches that rise as high over half the plan."""
    long, wide = deck_sizes(roof)
    rise = roof.rise
    if rise is None:
        rise = wide / 2 * (roof.pitch or 0.0)  # one of the two is given
    return _four_eaves(roof, rise / (wide / 2), rise / (long / 2))


def _four_eaves(roof: Hip | Pyramid, pitch: float, end_pitch: float) -> Footprint:
    """Give the outline of a roof with a slope from each side."""
    names = (("front", pitch), ("right end", end_pitch), ("back", pitch), ("left end", end_pitch))
    return Footprint(
        corners=oblong(roof.length, roof.width),
        sides=tuple(Side(name=name, pitch=each) for name, each in names),
        measured=roof.measured,
        eave_overhang=roof.eave_overhang,
    )


def _gabled(roof: Gable | Saltbox | Gambrel) -> Footprint:
    """Give the outline of a roof with two eaves and two gables."""
    front, back = _two_eaves(roof)
    return Footprint(
        corners=oblong(roof.length, roof.width),
        sides=(front, Side(end="gable"), back, Side(end="gable")),
        measured=roof.measured,
        eave_overhang=roof.eave_overhang,
        rake_overhang=roof.rake_overhang,
    )


def _two_eaves(roof: Gable | Saltbox | Gambrel) -> tuple[Side, Side]:
    """Give the front and back sides of a roof with two gables."""
    if isinstance(roof, Gambrel):
        front = Side(
            name="front",
            pitch=roof.pitch,
            upper_pitch=roof.upper_pitch,
            break_run=roof.break_run,
        )
        return front, replace(front, name="back")
    back_pitch = roof.pitch if roof.back_pitch is None else roof.back_pitch
    drop = _drop(roof, back_pitch) if isinstance(roof, Saltbox) else 0.0
    front = Side(name="front", pitch=roof.pitch, eave_height=max(drop, 0.0))
    return front, Side(name="back", pitch=back_pitch, eave_height=max(-drop, 0.0))


def _drop(roof: Saltbox, back_pitch: float) -> float:
    """Give how far the back eave of a saltbox lies below its front eave.

    A ridge at a run r from the front eave lies ``pitch * r`` above it, and
    ``back_pitch * (width - r)`` above the back eave.
    """
    if roof.ridge_run is None:
        return roof.back_eave_drop or 0.0  # one of the two is given
    _, wide = deck_sizes(roof)
    run = roof.ridge_run + (roof.eave_overhang if roof.measured == "walls" else 0.0)
    return back_pitch * (wide - run) - roof.pitch * run


def _not_built(plan: Footprint, deck: Deck, drawn: Skeleton) -> list[Fault]:
    """Give what keeps a roof from closing over its plan with all of its planes."""
    faults: list[Fault] = []
    if drawn.open_sides:
        places = sorted(deck.places[side] + 1 for side in drawn.open_sides)
        sides = ", ".join(str(place) for place in places)
        wanted = say("one more eave: nothing closes over the plan between sides ", sides)
        faults.append(Fault(("sides",), "gables round a part of the plan", wanted))
    for side, place, reached in zip(deck.sides, deck.places, drawn.reached, strict=True):
        if reached < len(side.rises):
            given = plan.sides[place]
            at = "break_run" if reached else "eave_height"
            came = length((given.break_run if reached else given.eave_height) or 0.0)
            what = "pitch break" if reached else "eave"
            wanted = say(f"less: the other planes close over the plan below this {what}")
            faults.append(Fault(("sides", place, at), came, wanted))
    return faults
