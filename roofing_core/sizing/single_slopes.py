"""Single slopes of many sizes: every line of the order of each, counted all at once."""

from __future__ import annotations

import numpy as np

from roofing_core.job.choices import Choices
from roofing_core.job.order import Order
from roofing_core.job.order_lines import OrderLine
from roofing_core.job.wiring import Site
from roofing_core.layers.coursing.joints import MOST_PIECES
from roofing_core.layers.coursing.nailing import HAND_SEALING, hand_sealed
from roofing_core.layers.fasteners import nails_per_pound
from roofing_core.layers.sealant import bead_section, dab_volume
from roofing_core.layers.underlaying.limits import MOST_PIECES as MOST_SHEETS
from roofing_core.materials.kinds import Metal, Nail, Roll
from roofing_core.measures.faults import LARGEST
from roofing_core.sizing.amounts import (
    Amounts,
    Floats,
    LineAmounts,
    Sizes,
    Truths,
    Whole,
    constant,
    whole,
)
from roofing_core.sizing.layered import LayerAmounts, layer_amounts
from roofing_core.sizing.rolled import RolledAmounts
from roofing_core.sizing.runs import RunAmounts


def single_slope_amounts(site: Site, sizes: Sizes, *, order: Order) -> Amounts:
    """Count the orders of single slopes of many sizes.

    Args:
        site: One of them, with the choices for all; without openings.
        sizes: Their sizes.
        order: Of that one; what none of them needs is taken from it.

    Returns:
        One entry per size for each line of the order; the same as its plan's own.

    Raises:
        Refused: A choice cannot be, whatever the size.

    Source:
        The layers' own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> two = Sizes(eave_length=np.array([168.0, 180.0]), slope_length=np.array([112.0, 112.0]),
    ...             pitch=np.array([0.25, 0.25]), eave_overhang=np.array([0.0, 0.0]))
    >>> found = single_slope_amounts(site_of(job.roof), two, order=plan(job).order)
    >>> found.lines["shingles"].needed
    array([105., 110.])
    """
    with np.errstate(all="ignore"):  # what is not finite comes of what is refused
        laid = layer_amounts(site, sizes)
        area = sizes.eave_length * sizes.slope_length
        make = _Lines(site.choices, laid, area, sizes)
        nothing = {name: _nothing(getattr(order, name), area) for name in _NEVER}
        lines = {**nothing, **make.lines()}
        in_order = {name: lines[name] for name in Order.__dataclass_fields__}
        return Amounts(lines=in_order, area=area, refused=make.refused(lines))


#: What no single slope without openings needs.
_NEVER = (
    "valley_metal",
    "valley_lining",
    "pitch_break_metal",
    "apron_metal",
    "step_flashing",
    "flashing_sheets",
    "pipe_flashings",
    "caps",
)


def _nothing(line: OrderLine, like: Floats) -> LineAmounts:
    return _line(constant(0, like), constant(line.pack_holds.value, like), weight=0.0)


def _line(
    needed: Floats,
    holds: Floats,
    *,
    weight: float | Floats,
    packs: Whole | None = None,
    stays: Floats | None = None,
) -> LineAmounts:
    """Make one line of all sizes, as `Maker` makes one of one."""
    bought = whole(needed / holds) if packs is None else packs
    return LineAmounts(
        packs=bought,
        holds=holds,
        needed=needed,
        carried=np.asarray(bought * weight, dtype=np.float64),
        stays=weight * needed / holds if stays is None else stays,
    )


class _Lines:
    """Makes the lines of many orders from what their layers take."""

    def __init__(self, choices: Choices, laid: LayerAmounts, area: Floats, sizes: Sizes) -> None:
        self.choices, self.laid, self.area, self.sizes = choices, laid, area, sizes

    def holding(self, each: float) -> Floats:
        """Give a column of what one pack holds, the same for all."""
        return constant(each, self.area)

    def lines(self) -> dict[str, LineAmounts]:
        """Make every line that a single slope can need."""
        return {
            **self._deck(),
            "eave_metal": self._metal("eave_metal", self.laid.eave),
            "rake_metal": self._metal("rake_metal", self.laid.rake, times=2),
            "ridge_metal": self._metal("ridge_metal", self.laid.ridge),
            "underlayment": self._rolls(self.choices.underlayment, self.laid.underlayment),
            "ice_barrier": self._rolls(self.choices.ice_barrier, self.laid.ice_barrier),
            "cap_nails": _line(
                self.laid.cap_nails.astype(np.float64),
                self.holding(self.choices.cap_nail.per_box),
                weight=self.choices.cap_nail.box_weight,
            ),
            **self._shingles(),
            **self._nails(),
            **self._sealed(),
        }

    def refused(self, lines: dict[str, LineAmounts]) -> Truths:
        """Tell which sizes cannot be planned."""
        laid, how, shingle = self.laid, self.choices.coursing, self.choices.shingle
        across = (self.sizes.eave_length + 2 * how.shingle_past_rake) / shingle.length + 1
        sheets = (laid.ice_barrier, laid.underlayment)
        found = laid.shingles.refused | (laid.shingles.courses * across > MOST_PIECES)
        for run in (laid.eave, laid.rake, laid.ridge):
            found |= run.refused
        for sheet in sheets:
            found |= sheet.refused | (sheet.pieces > MOST_SHEETS)
        found |= laid.deck.refused
        for line in lines.values():
            found |= ~(line.needed / line.holds <= LARGEST)
        return found

    def _deck(self) -> dict[str, LineAmounts]:
        panel, tape, deck = self.choices.panel, self.choices.joint_tape, self.laid.deck
        return {
            "deck_panels": _line(
                np.where(deck.panels > 0, self.area, 0.0),
                self.holding(panel.length * panel.width),
                weight=panel.weight,
                packs=deck.panels,
            ),
            "deck_nails": self._nailed(self.choices.deck_nail, deck.nails),
            "joint_tape": _line(deck.tape, self.holding(tape.length), weight=tape.weight),
        }

    def _metal(self, name: str, run: RunAmounts, *, times: int = 1) -> LineAmounts:
        metal: Metal = getattr(self.choices, name)
        return _line(
            times * run.cut,
            run.stock_length,
            weight=metal.weight * run.stock_length / 12,
            packs=times * run.pieces,
        )

    def _rolls(self, roll: Roll, cut: RolledAmounts) -> LineAmounts:
        return _line(
            cut.length,
            self.holding(roll.length),
            weight=roll.weight,
            packs=cut.rolls,
            stays=roll.weight * cut.area / (roll.width * roll.length),
        )

    def _shingles(self) -> dict[str, LineAmounts]:
        shingle, starter, laid = self.choices.shingle, self.choices.starter, self.laid.shingles
        ready_made = starter.made == "ready_made"
        none = np.zeros_like(laid.starters)
        each = shingle.bundle_weight / shingle.per_bundle
        return {
            "starter": _line(
                (laid.starters if ready_made else none).astype(np.float64),
                self.holding(starter.per_pack),
                weight=starter.pack_weight,
            ),
            "shingles": _line(
                (laid.pieces + (none if ready_made else laid.starters)).astype(np.float64),
                self.holding(shingle.per_bundle),
                weight=shingle.bundle_weight,
                stays=each * laid.area / (shingle.length * shingle.height),
            ),
        }

    def _nailed(self, nail: Nail, count: Floats | Whole) -> LineAmounts:
        to_the_pound = nails_per_pound(
            nail.length,
            shank=nail.shank,
            head_diameter=nail.head,
            head_thickness=nail.head_thickness,
        )
        each = 1 / to_the_pound
        needed = np.asarray(count * each, dtype=np.float64)
        return _line(needed, self.holding(nail.box_weight), weight=nail.box_weight)

    def _nails(self) -> dict[str, LineAmounts]:
        laid, choices = self.laid, self.choices
        roofing = laid.shingles.nails + laid.shingles.starter_nails
        metal = laid.eave.nails + 2 * laid.rake.nails + laid.ridge.nails
        if choices.metal_nail == choices.shingle_nail:
            roofing, metal = roofing + metal, np.zeros_like(metal)
        return {
            "roofing_nails": self._nailed(choices.shingle_nail, roofing),
            "metal_nails": self._nailed(choices.metal_nail, metal),
        }

    def _sealed(self) -> dict[str, LineAmounts]:
        choices, how = self.choices, self.choices.sealing
        beads = 2 * how.beads_per_leg * self.laid.ridge.run_length
        section = bead_section(how.bead_size, section=how.bead_section)
        each_dab = dab_volume(how.dab_diameter, thickness=how.dab_thickness)
        gunned = section * (beads + self._lap_beads()) + self._dabs() * each_dab
        bedded = self.laid.shingles.bedding * how.bedding_thickness
        return {
            name: _line(volume, self.holding(kind.volume), weight=kind.pack_weight)
            for name, kind, volume in (
                ("sealant", choices.sealant, gunned),
                ("cement", choices.cement, bedded),
            )
        }

    def _lap_beads(self) -> Floats:
        """Give the length of beads across the laps of metal."""
        laid, choices = self.laid, self.choices
        beads = sum(
            (
                times * (run.pieces - 1) * (metal.deck_leg + metal.face_leg)
                for metal, run, times in (
                    (choices.eave_metal, laid.eave, 1),
                    (choices.rake_metal, laid.rake, 2),
                    (choices.ridge_metal, laid.ridge, 1),
                )
            ),
            start=0.0,
        )
        return np.asarray(beads, dtype=np.float64)

    def _dabs(self) -> Whole:
        """Count dabs: on nails of ridge metal and closing courses, and by hand where steep."""
        laid, kind = self.laid, self.choices.shingle.kind
        pitches, at_pitch = np.unique(self.sizes.pitch, return_inverse=True)
        steep = np.array([hand_sealed(pitch) for pitch in pitches.tolist()], dtype=np.bool_)
        by_hand = np.where(steep[at_pitch], laid.shingles.pieces * HAND_SEALING[kind], 0)
        return laid.ridge.nails + laid.shingles.dabbed + by_hand
