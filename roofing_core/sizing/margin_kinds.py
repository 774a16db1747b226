"""What margins are made of: lines that grow to one more pack, measurements that change an order."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.job.order_lines import OrderLine, Pack
from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.measures.units import Inches, Pitch
from roofing_core.sizing.measurements import Kind
from roofing_core.sizing.walks import Bought


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChange:
    """One line of an order that comes to something else at another size.

    Attributes:
        line: The line, by its name in the order.
        item: What it is, in trade words.
        pack: What it is bought in.
        packs: Whole packs at the size as given.
        pack_holds: What one of them holds.
        then_packs: Whole packs at the other size.
        then_holds: What one of those holds; another length where metal is then cut from another.
    """

    line: str
    item: str
    pack: Pack
    packs: int
    pack_holds: Amount
    then_packs: int
    then_holds: Amount


def line_change(name: str, line: OrderLine, other: Bought) -> LineChange:
    """Give how one line changes.

    Args:
        name: Its name in the order.
        line: The line at the size as given.
        other: What the other size comes to.

    Returns:
        The change.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.sizing.counting import counter_of
    >>> from roofing_core.sizing.walks import bought
    >>> counter = counter_of(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> wider = SingleSlope(eave_length=190, slope_length=112, pitch=0.25)
    >>> other = bought(counter.amounts([wider]), 0)
    >>> line_change("shingles", counter.order.shingles, other).then_packs
    6
    """
    return LineChange(
        line=name,
        item=line.item,
        pack=line.pack,
        packs=line.packs,
        pack_holds=line.pack_holds,
        then_packs=other.packs[name],
        then_holds=Amount(other.holds[name], line.pack_holds.unit),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Growth:
    """How far a roof can grow in one of its sizes before a line needs more.

    Attributes:
        size: The size that grows: ``eave_length`` or ``slope_length`` of a single slope, ``length``
            or ``width`` of other forms.
        needs_more: Whether the line needs more within what was looked at.
        at: The least growth that needs more; where none does, how far was looked.
        packs: Whole packs then; where none needs more, as now.
        pack_holds: What one of them holds.
    """

    size: str
    needs_more: bool
    at: Inches
    packs: int
    pack_holds: Amount


@dataclass(frozen=True, slots=True, kw_only=True)
class LineMargin:
    """One line of an order, and how near it is to one more pack.

    Attributes:
        line: The line, by its name in the order.
        item: What it is, in trade words.
        material: The material, by its name.
        packs: Whole packs to buy.
        pack: What it is bought in.
        pack_holds: What one pack holds.
        needed: What the roof uses.
        left_over: What is left of the packs bought.
        growth: One entry for each size that the roof grows in.
    """

    line: str
    item: str
    material: str
    packs: int
    pack: Pack
    pack_holds: Amount
    needed: Amount
    left_over: Amount
    growth: tuple[Growth, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OffBy:
    """How far a measurement can be off, one way, before the order changes.

    Attributes:
        changes: Whether the order changes within what was looked at.
        plannable: Whether the roof can still be planned there; where it cannot, no lines are given.
        at: The least that it is off by when the order changes; where it does not, how far was
            looked.
        holds_to: How far off it can be with the order as it is: one step less, or as far as was
            looked.
        lines: The lines that change first, and to what.
    """

    changes: bool
    plannable: bool
    at: Amount
    holds_to: Amount
    lines: tuple[LineChange, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurementMargin:
    """One measurement of a roof, and how far it can be off.

    Attributes:
        measurement: Its dotted place in the roof.
        kind: A length or a pitch.
        given: What was measured.
        tight: Whether the order changes when a length is off by 1/2 in or less.
        less: If the roof is smaller there than was measured.
        more: If it is larger.
        says: All of that in a sentence.
    """

    measurement: str
    kind: Kind
    given: Amount
    tight: bool
    less: OffBy
    more: OffBy
    says: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Margins:
    """How near an order is to changing.

    Attributes:
        says: What to measure again before buying.
        measurements: Every measurement that the roof was given by, those first that change the
            order when they are off by 1/2 in or less.
        lines: Every line of the order that comes to a pack or more, in the order of work.
        step: In which steps lengths were looked at.
        pitch_step: In which steps pitches were.
        growth_step: In which steps the roof grew.
        sizes_looked_at: How many sizes were counted or planned.
        at_once: Whether they were counted all at once; if not, each was planned.
        stopped: Whether the limit of plans stopped it; each entry says how far was looked.
    """

    says: Sentence
    measurements: tuple[MeasurementMargin, ...]
    lines: tuple[LineMargin, ...]
    step: Inches
    pitch_step: Pitch
    growth_step: Inches
    sizes_looked_at: int
    at_once: bool
    stopped: bool
