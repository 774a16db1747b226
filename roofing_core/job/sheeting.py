"""The deck and the sheets of a job: panels, ice barrier, underlayment and the lining of valleys."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from roofing_core.job.choices import Choices
from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.decking.deck import Deck, deck_on, no_deck
from roofing_core.layers.decking.deck_way import DeckWay
from roofing_core.layers.underlaying.ice_barrier import IceBarrier, ice_barrier_on, no_ice_barrier
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reaches
from roofing_core.layers.underlaying.sheet_fasteners import (
    WINDY_FIELD_LINES,
    WINDY_FIELD_SPACING,
    WINDY_LAP_SPACING,
)
from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.layers.underlaying.underlaid import Underlayment, UnderlaymentWay
from roofing_core.layers.underlaying.underlayment import underlayment_on
from roofing_core.layers.underlaying.valley_lining import ValleyLining, valley_lining
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import Inches

Made = TypeVar("Made")

_DECK = Wired(
    DeckWay,
    panel_length="panel.length",
    panel_width="panel.width",
    support_spacing="decking.support_spacing",
    edge_spacing="decking.edge_spacing",
    field_spacing="decking.field_spacing",
)

_REACHES = Wired(
    ice_barrier_reaches,
    eave_overhang="roof.eave_overhang",
    edition="code_edition",
    inside_wall="underlaying.inside_wall",
)

_ICE_BARRIER = Wired(
    SheetWay,
    roll_width="ice_barrier.width",
    roll_length="ice_barrier.length",
    end_lap="underlaying.ice_barrier_end_lap",
    head_lap="underlaying.ice_barrier_head_lap",
    end_lap_stagger="underlaying.end_lap_stagger",
    past_metal="underlaying.past_metal",
    trim_allowance="underlaying.trim_allowance",
    over_edges="underlaying.over_edges",
)

_UNDERLAYMENT = Wired(
    UnderlaymentWay,
    roll_width="underlayment.width",
    roll_length="underlayment.length",
    head_lap="underlaying.head_lap",
    end_lap="underlaying.end_lap",
    end_lap_stagger="underlaying.end_lap_stagger",
    past_metal="underlaying.past_metal",
    trim_allowance="underlaying.trim_allowance",
    over_edges="underlaying.over_edges",
    over_ice_barrier="underlaying.over_ice_barrier",
    lap_spacing="underlaying.lap_spacing",
    field_spacing="underlaying.field_spacing",
    field_lines="underlaying.field_lines",
)

_LINING = Wired(
    valley_lining,
    roll_width="valley_lining.width",
    roll_length="valley_lining.length",
    past_foot="valleying.lining_past_foot",
    over_top="valleying.lining_over_top",
    end_lap="valleying.lining_end_lap",
)


def deck_way(site: Site) -> DeckWay:
    """Give how the deck of a job is laid, by its choices.

    Args:
        site: The roof with its choices.

    Returns:
        The panels, the supports and the nails.

    Raises:
        Nothing: What cannot be is refused where it is laid.

    Source:
        The caller's choices.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Gable
    >>> deck_way(site_of(Gable(length=168, width=200, pitch=0.5))).panel_length
    96.0
    """
    return _DECK(site)


def ice_barrier_way(site: Site) -> SheetWay:
    """Give how the ice barrier of a job lies, by its choices.

    Args:
        site: The roof with its choices.

    Returns:
        The roll, and how rows lie.

    Raises:
        Nothing: What cannot be is refused where it is laid.

    Source:
        The caller's choices.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Gable
    >>> ice_barrier_way(site_of(Gable(length=168, width=200, pitch=0.5))).roll_length
    800.0
    """
    return _ICE_BARRIER(site)


def underlayment_way(site: Site) -> UnderlaymentWay:
    """Give how the underlayment of a job lies and is fastened, by its choices.

    Args:
        site: The roof with its choices.

    Returns:
        The roll, how rows lie, and what fastens them: in high wind no wider than the code's.

    Raises:
        Nothing: What cannot be is refused where it is laid.

    Source:
        The caller's choices.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Gable
    >>> underlayment_way(site_of(Gable(length=168, width=200, pitch=0.5))).field_lines
    1
    """
    return _UNDERLAYMENT(site, **_pattern(site.choices))


def ice_reaches(site: Site) -> tuple[Inches, ...]:
    """Give how far up each plane of a job an ice barrier has to reach.

    Args:
        site: The roof with its choices.

    Returns:
        One entry per plane.

    Raises:
        Refused: A length or the edition cannot be; names the caller's fields.

    Source:
        `ice_barrier_reaches`.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> ice_reaches(site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.75)))
    (36.0,)
    """
    return _REACHES(site, planes=site.surfaces.planes)


def lay_deck(site: Site) -> Deck:
    """Lay the panels of all planes, where the deck is part of the job.

    Args:
        site: The roof with its choices.

    Returns:
        The deck; none where it is not part of the job.

    Raises:
        Refused: A size cannot be; names the caller's fields.
        TooManyPieces: More panels than the limit.

    Source:
        The layers' own.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Gable
    >>> lay_deck(site_of(Gable(length=168, width=200, pitch=0.5))).panels
    0
    """
    if not site.choices.decking.lay:
        return no_deck()
    return _by_the_callers_names(
        site, _DECK.places, lambda: deck_on(site.surfaces.planes, way=deck_way(site))
    )


def lay_sheets(site: Site) -> tuple[IceBarrier, Underlayment, ValleyLining]:
    """Lay the ice barrier, where it was asked for, the lining of valleys and the underlayment.

    Args:
        site: The roof with its choices.

    Returns:
        The three; no rows or pieces of what the roof does not take.

    Raises:
        Refused: A size cannot be; names the caller's fields.
        TooManyPieces: More pieces than the limit.

    Source:
        The layers' own.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.forms import Gable
    >>> _, felt, lining = lay_sheets(site_of(Gable(length=168, width=200, pitch=0.5)))
    >>> felt.rolls, len(felt.rows), lining.pieces
    (1, 8, ())
    """
    planes = site.surfaces.planes
    ice = no_ice_barrier()
    tops: tuple[float, ...] = ()
    if site.choices.underlaying.ice_barrier:
        ice = _by_the_callers_names(
            site,
            _ICE_BARRIER.places,
            lambda: ice_barrier_on(planes, reaches=ice_reaches(site), way=ice_barrier_way(site)),
        )
        tops = tuple(one.upper for one in ice.planes)
    way = underlayment_way(site)
    felt = _by_the_callers_names(
        site,
        _UNDERLAYMENT.places,
        lambda: underlayment_on(planes, way=way, ice_barrier_tops=tops),
    )
    valleys = tuple(line.length for line in site.surfaces.lines if line.kind == "valley")
    return ice, felt, _LINING(site, lengths=valleys)


def _by_the_callers_names(site: Site, places: Mapping[str, str], make: Callable[[], Made]) -> Made:
    """Make a layer of all planes; what is refused is told by the names of the caller's fields."""
    single = site.roof.form == "single_slope"
    measured = {
        name: f"roof.{name}" if single else "roof" for name in ("eave_length", "slope_length")
    }
    pitched = site.roof.form not in {"footprint", "planes"}
    try:
        return make()
    except Refused as refusal:
        names = {**measured, "pitch": "roof.pitch" if pitched else "roof", **places}
        raise refusal.renamed(names) from None


def _pattern(choices: Choices) -> dict[str, float]:
    """Give the pattern of cap nails: as chosen, or in high wind no wider than the code's for it."""
    how = choices.underlaying
    if not choices.nailing.high_wind:
        return {}
    return {
        "lap_spacing": min(how.lap_spacing, WINDY_LAP_SPACING),
        "field_spacing": min(how.field_spacing, WINDY_FIELD_SPACING),
        "field_lines": max(how.field_lines, WINDY_FIELD_LINES),
    }
