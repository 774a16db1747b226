"""The layers of single slopes of many sizes, counted: metal, shingles, sheets and deck.

What depends on the width alone is counted once for each width, what depends on the height once for
each height; for each size both are put together. No piece is placed.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np
from numpy.typing import NDArray

from roofing_core.job.choices import Choices
from roofing_core.job.sheeting import deck_way, ice_barrier_way, underlayment_way
from roofing_core.job.strips import starter_height, starter_strip_on, strip_on
from roofing_core.job.wiring import Site
from roofing_core.layers.coursing.nailing import nails_per_strip
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
from roofing_core.layers.underlaying.layering import LEAST_PITCH
from roofing_core.layers.underlaying.sheeting import SheetWay
from roofing_core.materials.kinds import Metal
from roofing_core.measures.counting import DUST
from roofing_core.roof.outlines import RoofPlane
from roofing_core.sizing.amounts import Floats, Sizes, Truths, Whole, whole
from roofing_core.sizing.coursed import courses_up, row_amounts
from roofing_core.sizing.panelled import DeckAmounts, deck_amounts, no_decks
from roofing_core.sizing.rolled import Placed, RolledAmounts, rolled_amounts
from roofing_core.sizing.rolls_along import cannot_lie
from roofing_core.sizing.runs import RunAmounts, RunWay, run_amounts
from roofing_core.sizing.sheeted_rows import RowsUp, barrier_up, no_rows, underlayment_up


@dataclass(frozen=True, slots=True, kw_only=True)
class ShingledAmounts:
    """What starters and courses take, one entry per size.

    Attributes:
        courses: How many courses.
        pieces: Pieces in all of them.
        starters: Pieces of the starter.
        nails: Nails in the courses.
        starter_nails: Nails in the starter.
        dabbed: Nails of closing courses, which are dabbed.
        bedding: Area that closing courses are bedded on.
        area: Of all pieces as they lie, the starter's among them where it is cut from shingles.
        refused: Which cannot be laid.
    """

    courses: Whole
    pieces: Whole
    starters: Whole
    nails: Whole
    starter_nails: Whole
    dabbed: Whole
    bedding: Floats
    area: Floats
    refused: Truths


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerAmounts:
    """What the layers of many sizes take.

    Attributes:
        eave: The metal along the eave.
        rake: The metal along one rake; the other takes as much.
        ridge: The metal over the top edge.
        shingles: Starters and courses.
        ice_barrier: The ice barrier.
        underlayment: The underlayment.
        cap_nails: Nails in it.
        deck: The deck; none where it is not part of the job.
    """

    eave: RunAmounts
    rake: RunAmounts
    ridge: RunAmounts
    shingles: ShingledAmounts
    ice_barrier: RolledAmounts
    underlayment: RolledAmounts
    cap_nails: Whole
    deck: DeckAmounts


@dataclass(frozen=True, slots=True)
class _Height:
    """One distinct height: up the slope, its pitch, and the overhang at its eave."""

    slope_length: float
    pitch: float
    eave_overhang: float


def layer_amounts(site: Site, sizes: Sizes) -> LayerAmounts:
    """Count what the layers of single slopes take.

    Args:
        site: One of them, with the choices for all.
        sizes: Their sizes.

    Returns:
        One entry per size.

    Raises:
        Refused: A choice cannot be, whatever the size.

    Source:
        The layers' own.

    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> one = Sizes(eave_length=np.array([168.0]), slope_length=np.array([112.0]),
    ...             pitch=np.array([0.25]), eave_overhang=np.array([0.0]))
    >>> layer_amounts(shed, one).shingles.pieces
    array([100])
    """
    return _Layers(site, sizes).counted()


class _Layers:
    """Many sizes, by their distinct widths and heights."""

    def __init__(self, site: Site, sizes: Sizes) -> None:
        self.site, self.choices, self.sizes = site, site.choices, sizes
        widths, at_width = np.unique(sizes.eave_length, return_inverse=True)
        columns = (sizes.slope_length, sizes.pitch, sizes.eave_overhang)
        seen: dict[tuple[float, ...], int] = {}
        at_height = [
            seen.setdefault(each, len(seen))
            for each in zip(*(column.tolist() for column in columns), strict=True)
        ]
        self.heights = [_Height(*each) for each in seen]
        self.slopes = np.array([one.slope_length for one in self.heights])
        self.placed = Placed(
            widths=widths, at_width=at_width, at_height=np.array(at_height, dtype=np.int64)
        )

    def counted(self) -> LayerAmounts:
        how, proud = self.choices.metalwork, 2 * self.choices.metalwork.ridge_proud
        widths, at_width, at_height = (
            self.placed.widths, self.placed.at_width, self.placed.at_height,
        )  # fmt: skip
        eave = run_amounts(widths, _run_way(self.choices, "eave_metal", tab=how.eave_tab))
        rake = run_amounts(self.slopes, _run_way(self.choices, "rake_metal"))
        ridge = run_amounts(widths + proud, _run_way(self.choices, "ridge_metal"))
        barrier, felt, cap_nails = self._sheets()
        return LayerAmounts(
            eave=_taken(eave, at_width),
            rake=_taken(rake, at_height),
            ridge=_taken(ridge, at_width),
            shingles=self._shingles(),
            ice_barrier=barrier,
            underlayment=felt,
            cap_nails=cap_nails,
            deck=self._deck(),
        )

    def _deck(self) -> DeckAmounts:
        if not self.choices.decking.lay:
            return no_decks(len(self.sizes.eave_length))
        sizes = self.sizes
        return deck_amounts(sizes.eave_length, sizes.slope_length, deck_way(self.site))

    def _sheets(self) -> tuple[RolledAmounts, RolledAmounts, Whole]:
        ice, felt = ice_barrier_way(self.site), underlayment_way(self.site)
        barriers = [self._barrier_up(one) for one in self.heights]
        rows = [
            underlayment_up(one.slope_length, pitch=one.pitch, barrier_top=barrier.upper, way=felt)
            if one.pitch >= LEAST_PITCH - DUST
            else no_rows()
            for one, barrier in zip(self.heights, barriers, strict=True)
        ]
        rolled = rolled_amounts(rows, self.placed, felt)
        lines, field = (
            np.array([getattr(one, name) for one in rows])[self.placed.at_height]
            for name in ("lap_lines", "field_lines")
        )
        along = self.sizes.eave_length
        nails = lines * (_spaces(along, felt.lap_spacing) + 1)
        nails += field * (_spaces(along, felt.field_spacing) + 1)
        flat = self.sizes.pitch < LEAST_PITCH - DUST
        rolled = replace(rolled, refused=rolled.refused | flat | self._too_wide(felt))
        barrier = rolled_amounts(barriers, self.placed, ice)
        if self.choices.underlaying.ice_barrier:
            barrier = replace(barrier, refused=barrier.refused | self._too_wide(ice))
        return barrier, rolled, nails + rolled.lap_fasteners

    def _too_wide(self, way: SheetWay) -> Truths:
        wide = [cannot_lie(width, way=way) for width in self.placed.widths.tolist()]
        return np.array(wide, dtype=np.bool_)[self.placed.at_width]

    def _barrier_up(self, height: _Height) -> RowsUp:
        how = self.choices.underlaying
        if not how.ice_barrier:
            return no_rows()
        reach = ice_barrier_reach(
            height.eave_overhang,
            pitch=height.pitch,
            edition=self.choices.code_edition,
            inside_wall=how.inside_wall,
        )
        return barrier_up(height.slope_length, reach=reach, way=ice_barrier_way(self.site))

    def _shingles(self) -> ShingledAmounts:
        tall = starter_height(self.site)
        up = courses_up(self.slopes, self.choices, starter_height=tall)
        at_height, wide = self.placed.at_height, self.sizes.eave_length
        past = 2 * self.choices.coursing.shingle_past_rake
        pieces, nails, starters, starter_nails = self._rows()
        courses = up.courses[at_height]
        self_made = self.choices.starter.made == "self_made"
        strips = up.starter[at_height] if self_made else 0.0
        return ShingledAmounts(
            courses=courses.sum(axis=1),
            pieces=(courses * pieces).sum(axis=1),
            starters=starters,
            nails=(up.nailed[at_height] * nails).sum(axis=1),
            starter_nails=np.where(up.starter_nailed[at_height], starter_nails, 0),
            dabbed=(up.dabbed[at_height] * nails).sum(axis=1),
            bedding=up.bedded[at_height] * (wide + past),
            area=(up.laid[at_height] + strips) * (wide + past),
            refused=up.refused[at_height],
        )

    def _rows(self) -> tuple[Whole, Whole, Whole, Whole]:
        """Give pieces and nails of each size's rows, one column per trim, and of its starter."""
        high_wind = self.choices.nailing.high_wind
        per_strip = [nails_per_strip(one.pitch, high_wind=high_wind) for one in self.heights]
        of_size = np.array(per_strip)[self.placed.at_height]
        shape = len(of_size), len(self.choices.shingle.sequence)
        pieces, nails = np.zeros(shape, dtype=np.int64), np.zeros(shape, dtype=np.int64)
        starter = np.zeros((shape[0], 2), dtype=np.int64)
        for each in sorted(set(per_strip)):
            alike = of_size == each
            pitch = self.heights[per_strip.index(each)].pitch
            plane = replace(self.site.surfaces.planes[0], pitch=pitch)
            along = self.placed.at_width[alike]
            table, strip = self._rows_along(plane)
            pieces[alike], nails[alike] = table[0][along], table[1][along]
            starter[alike] = strip[along]
        return pieces, nails, starter[:, 0], starter[:, 1]

    def _rows_along(self, plane: RoofPlane) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """Give pieces and nails along each width by trim, and those of the starter."""
        past, widths = self.choices.coursing.shingle_past_rake, self.placed.widths
        strip, starter = strip_on(self.site, plane), starter_strip_on(self.site, plane)
        rows = [
            row_amounts(widths, trim=trim, strip=strip, past_rake=past)
            for trim in self.choices.shingle.sequence
        ]
        first = row_amounts(widths, trim=self.choices.starter.trim, strip=starter, past_rake=past)
        table = np.array(
            [[row.pieces for row in rows], [row.nails for row in rows]], dtype=np.int64
        )
        return table.transpose(0, 2, 1), np.stack([first.pieces, first.nails], axis=1)


def _spaces(along: Floats, spacing: float) -> Whole:
    return whole(along / spacing)


def _run_way(choices: Choices, name: str, *, tab: float = 0.0) -> RunWay:
    metal: Metal = getattr(choices, name)
    how = choices.metalwork
    return RunWay(
        stock_lengths=metal.stock_lengths,
        lap=how.lap,
        nail_spacing=how.ridge_nail_spacing if name == "ridge_metal" else how.nail_spacing,
        end_distance=how.end_distance,
        least_piece=how.least_piece,
        tab=tab,
    )


def _taken(runs: RunAmounts, at: Whole) -> RunAmounts:
    """Give for each size what its width or height has."""
    return replace(runs, **{one.name: getattr(runs, one.name)[at] for one in fields(runs)})
