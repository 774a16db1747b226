"""The order list: whole packs, what is left over, and how much more roof that would cover."""

from __future__ import annotations

from dataclasses import dataclass, fields

from roofing_core.job.flashing_order import flashing_lines
from roofing_core.job.layout import Layout
from roofing_core.job.metal_order import metal_lines
from roofing_core.job.order_lines import Maker, OrderLine
from roofing_core.layers.caps import cap_stock
from roofing_core.layers.weight import Load


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """The order list, in the order of work. Every line is always there; one may come to 0 packs.

    Attributes:
        deck_panels: Panels of the deck.
        deck_nails: Nails for them.
        joint_tape: Tape for their joints.
        eave_metal: Lengths of eave metal.
        valley_metal: Lengths of metal for open valleys.
        ice_barrier: Rolls of ice barrier.
        valley_lining: Rolls of lining for valleys.
        underlayment: Rolls of underlayment.
        cap_nails: Cap nails for it.
        rake_metal: Lengths of rake metal.
        pitch_break_metal: Lengths of metal for pitch breaks.
        apron_metal: Lengths of metal for the feet of walls.
        step_flashing: Packs of step flashing.
        flashing_sheets: Sheets of metal for what is bent round chimneys and skylights.
        pipe_flashings: Flashings for pipes.
        starter: Ready-made starter; 0 where it is cut from shingles.
        shingles: Bundles of shingles, those for a self-made starter among them.
        caps: Ready-made caps, or bundles of shingles that caps are cut from.
        roofing_nails: Nails for starter and shingles, and for metal where it takes the same ones.
        metal_nails: Nails for metal where it takes others.
        ridge_metal: Lengths of ridge metal.
        sealant: Cartridges for beads and dabs.
        cement: Cans of asphalt cement for bedding.
    """

    deck_panels: OrderLine
    deck_nails: OrderLine
    joint_tape: OrderLine
    eave_metal: OrderLine
    valley_metal: OrderLine
    ice_barrier: OrderLine
    valley_lining: OrderLine
    underlayment: OrderLine
    cap_nails: OrderLine
    rake_metal: OrderLine
    pitch_break_metal: OrderLine
    apron_metal: OrderLine
    step_flashing: OrderLine
    flashing_sheets: OrderLine
    pipe_flashings: OrderLine
    starter: OrderLine
    shingles: OrderLine
    caps: OrderLine
    roofing_nails: OrderLine
    metal_nails: OrderLine
    ridge_metal: OrderLine
    sealant: OrderLine
    cement: OrderLine

    def lines(self) -> tuple[OrderLine, ...]:
        """Give the lines that come to one pack or more, in the order of work."""
        return tuple(line for line in self.all_lines() if line.packs)

    def all_lines(self) -> tuple[OrderLine, ...]:
        """Give every line, in the order of work."""
        return tuple(getattr(self, name) for name in _LINES)


_LINES = tuple(field.name for field in fields(Order))


def order(layout: Layout) -> Order:
    """Make the order list of a laid-out roof, in whole packs.

    Packs are counted from the pieces placed: shingles one for each piece or from the fewest, rolls
    from their cutting plan, metal from its cut lists; nails by weight, sealant by volume.

    Args:
        layout: The roof with all its layers.

    Returns:
        One line for each thing to buy, with what is left over.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> order(lay_out(job)).shingles.packs  # 100 and 5 for the starter, 21 in a bundle
    5
    """
    make = Maker(layout.roof.area)
    return Order(
        **_deck_lines(make, layout),
        **_sheet_lines(make, layout),
        **metal_lines(make, layout),
        **flashing_lines(make, layout),
        **_shingle_lines(make, layout),
        **_nail_lines(make, layout),
        **_seal_lines(make, layout),
    )


def loads(ordered: Order) -> tuple[Load, ...]:
    """Give what every line of an order weighs, on the roof and to carry.

    Args:
        ordered: The order list.

    Returns:
        One entry per line that comes to a pack or more.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> [load.name for load in loads(order(lay_out(job)))][:2]
    ['eave metal', 'underlayment']
    """
    return tuple(
        Load(
            name=line.item,
            on_deck=line.used_weight,
            to_carry=line.packs * line.pack_weight,
            heaviest=line.pack_weight * _largest(line),
        )
        for line in ordered.lines()
    )


def _largest(line: OrderLine) -> float:
    """Give how many times as much as the middle one the largest pack of a line holds."""
    return max(size.holds.value for size in line.by_size()) / line.pack_holds.value


def _deck_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    choices, laid = layout.choices, layout.deck
    panel, tape = choices.panel, choices.joint_tape
    deck_nails = sum(use.weight for use in layout.nails if use.use == "deck")
    return {
        "deck_panels": make.line(
            "deck panels",
            panel.name,
            pack="panel",
            needed=layout.roof.area if laid.panels else 0.0,
            holds=panel.length * panel.width,
            unit="in2",
            packs=laid.panels,
            pack_weight=panel.weight,
        ),
        "deck_nails": make.nails("deck nails", choices.deck_nail, deck_nails),
        "joint_tape": make.line(
            "joint tape",
            tape.name,
            pack="roll",
            needed=laid.tape_length,
            holds=tape.length,
            unit="in",
            pack_weight=tape.weight,
        ),
    }


def _sheet_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    choices, felt, ice = layout.choices, layout.underlayment, layout.ice_barrier
    cap, lining = choices.cap_nail, choices.valley_lining
    sheets = (
        ("underlayment", choices.underlayment, felt),
        ("ice_barrier", choices.ice_barrier, ice),
    )
    lines = {
        name: make.line(
            name.replace("_", " "),
            roll.name,
            pack="roll",
            needed=sum(
                cut.length
                for used in laid.roll_plan
                for cut in used.cuts
                if cut.taken_from == "length"
            ),
            holds=roll.length,
            unit="in",
            packs=laid.rolls,
            pack_weight=roll.weight,
            used_weight=roll.weight * laid.area_laid / (roll.width * roll.length),
        )
        for name, roll, laid in sheets
    }
    lined = layout.valley_lining
    lines["valley_lining"] = make.line(
        "valley lining",
        lining.name,
        pack="roll",
        needed=lined.area_cut / lining.width,
        holds=lining.length,
        unit="in",
        packs=lined.rolls,
        pack_weight=lining.weight,
    )
    lines["cap_nails"] = make.line(
        "cap nails",
        cap.name,
        pack="box",
        needed=felt.fasteners,
        holds=cap.per_box,
        unit="count",
        pack_weight=cap.box_weight,
    )
    return lines


def _shingle_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    shingle, starter = layout.choices.shingle, layout.choices.starter
    ready_made = starter.made == "ready_made"
    return {
        "starter": make.line(
            "starter",
            starter.name,
            pack="pack",
            needed=sum(one.pieces for one in layout.starters) if ready_made else 0,
            holds=starter.per_pack,
            unit="count",
            pack_weight=starter.pack_weight,
        ),
        "shingles": make.line(
            "shingles",
            shingle.name,
            pack="bundle",
            needed=layout.cutting.shingles,
            holds=shingle.per_bundle,
            unit="count",
            pack_weight=shingle.bundle_weight,
            used_weight=_shingle_weight(layout),
        ),
        "caps": _cap_line(make, layout),
    }


def _cap_line(make: Maker, layout: Layout) -> OrderLine:
    """Make the line of caps: all hips and ridges share their shingles and packs.

    Caps cut from the shingles of the field are on the line of the shingles.
    """
    cap = layout.choices.cap
    own = "cap" not in layout.cutting.holds
    stock = cap_stock(
        sum(run.count for run in layout.caps) if own else 0,
        from_shingle=cap.from_shingle,
        per_pack=cap.per_pack,
    )
    return make.line(
        "caps",
        cap.name,
        pack="bundle" if cap.made == "self_made" else "pack",
        needed=stock.shingles,
        holds=cap.per_pack,
        unit="count",
        pack_weight=cap.pack_weight,
    )


def _shingle_weight(layout: Layout) -> float:
    """Give the weight of shingles that stays on the roof, trimmed as they are."""
    shingle, cap = layout.choices.shingle, layout.choices.cap
    area = sum(course.area for course in layout.courses)
    if "starter" in layout.cutting.holds:
        area += sum(strip.area for strip in layout.starters)
    if "cap" in layout.cutting.holds:
        area += cap.length * cap.width * sum(run.count for run in layout.caps)
    each = shingle.bundle_weight / shingle.per_bundle
    return each * area / (shingle.length * shingle.height)


def _nail_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    choices = layout.choices
    metal = sum(use.weight for use in layout.nails if use.use.endswith("metal"))
    roofing = sum(use.weight for use in layout.nails if use.use in ("starter", "shingles", "caps"))
    if choices.metal_nail == choices.shingle_nail:
        roofing, metal = roofing + metal, 0.0
    return {
        "roofing_nails": make.nails("roofing nails", choices.shingle_nail, roofing),
        "metal_nails": make.nails("metal nails", choices.metal_nail, metal),
    }


def _seal_lines(make: Maker, layout: Layout) -> dict[str, OrderLine]:
    choices, used = layout.choices, layout.sealant
    gunned = used.total_volume - used.bedding_volume
    both = (
        ("sealant", "sealant", choices.sealant, gunned),
        ("cement", "asphalt cement", choices.cement, used.bedding_volume),
    )
    return {
        name: make.line(
            item,
            kind.name,
            pack=kind.pack,
            needed=volume,
            holds=kind.volume,
            unit="in3",
            pack_weight=kind.pack_weight,
        )
        for name, item, kind, volume in both
    }
