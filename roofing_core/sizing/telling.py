"""Telling: margins and changes of an order in sentences."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from roofing_core.measures.sentences import Sentence, length, say, write
from roofing_core.measures.units import Inches, Ratio
from roofing_core.sizing.fit_kinds import By, FitSize, GivenSize
from roofing_core.sizing.margin_kinds import LineChange, MeasurementMargin, OffBy


def packs(count: int, pack: str) -> str:
    """Write a number of packs.

    Args:
        count: How many.
        pack: What it is bought in.

    Returns:
        Both, one way for one and another for all else.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> packs(1, "box"), packs(2, "box")
    ('1 box', '2 boxes')
    """
    many = f"{pack}es" if pack.endswith("x") else f"{pack}s"
    return f"{count} {pack if count == 1 else many}"


def change_says(change: LineChange) -> Sentence:
    """Say what one line comes to instead.

    Args:
        change: The change of the line.

    Returns:
        A part of a sentence.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.measures.sentences import Amount
    >>> one = LineChange(line="shingles", item="shingles", pack="bundle", packs=5,
    ...                  pack_holds=Amount(21, "count"), then_packs=6,
    ...                  then_holds=Amount(21, "count"))
    >>> change_says(one).written()
    '6 bundles of shingles instead of 5'
    """
    if change.then_holds == change.pack_holds:
        return say(
            f"{packs(change.then_packs, change.pack)} of {change.item} instead of {change.packs}"
        )
    return say(
        f"{packs(change.then_packs, change.pack)} of {change.item}, ",
        change.then_holds,
        f" each, instead of {change.packs} of ",
        change.pack_holds,
    )


def changes_say(changes: Sequence[LineChange]) -> Sentence:
    """Say what several lines come to instead.

    Args:
        changes: The changes, one or more.

    Returns:
        A part of a sentence.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.measures.sentences import Amount
    >>> one = LineChange(line="shingles", item="shingles", pack="bundle", packs=5,
    ...                  pack_holds=Amount(21, "count"), then_packs=6,
    ...                  then_holds=Amount(21, "count"))
    >>> changes_say([one, one]).written()
    '6 bundles of shingles instead of 5 and 6 bundles of shingles instead of 5'
    """
    parts: list[object] = []
    for k, change in enumerate(changes):
        parts += [" and " if k == len(changes) - 1 else ", "] if k else []
        parts.append(change_says(change))
    return say(*parts)


def off_by_says(off: OffBy, way: str) -> Sentence:
    """Say how far a measurement can be off, one way.

    Args:
        off: How far.
        way: Which way, in a word.

    Returns:
        A part of a sentence.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> nothing = OffBy(changes=False, plannable=True, at=length(3), holds_to=length(3), lines=())
    >>> off_by_says(nothing, "more").written()
    'up to 3 in more changes nothing'
    """
    if not off.changes:
        if not off.at.value:
            return say(f"{way} was not looked at")
        return say("up to ", off.at, f" {way} changes nothing")
    if not off.plannable:
        return say(off.at, f" {way} and it cannot be planned")
    return say(off.at, f" {way} takes ", changes_say(off.lines))


def margins_say(measurements: Sequence[MeasurementMargin], *, slip: Inches) -> Sentence:
    """Say what to measure again before buying.

    Args:
        measurements: Every measurement with its margins.
        slip: How far off a length is told first.

    Returns:
        One sentence or two.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> margins_say([], slip=0.5).written()
    'No length that is off by 1/2 in changes this order.'
    """
    tight = [in_words(one.measurement) for one in measurements if one.tight]
    unseen = [
        in_words(one.measurement)
        for one in measurements
        if one.kind == "length" and _unseen(one, slip)
    ]
    parts: list[object] = list(_tight(tight, slip)) or [
        "No length that is off by ", length(slip), " changes this order",
        ", as far as was looked" if unseen else "", ".",
    ]  # fmt: skip
    if unseen:
        parts += [f" Not looked at as far as that: {', '.join(unseen)}."]
    return say(*parts)


def in_words(measurement: str) -> str:
    """Give the name of a measurement in words.

    Args:
        measurement: Its dotted place in the roof.

    Returns:
        The words.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> in_words("eave_length")
    'eave length'
    """
    return measurement.replace("_", " ").replace(".", " ")


def _tight(names: Sequence[str], slip: float) -> Iterator[object]:
    if names:
        yield "Measure again before buying: off by "
        yield length(slip)
        yield f" or less, the order changes with {_all(names)}."


def _all(names: Sequence[str]) -> str:
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last


def _unseen(one: MeasurementMargin, slip: float) -> bool:
    return any(not way.changes and way.at.value < slip for way in (one.less, one.more))


_WHAT: Mapping[By, str] = MappingProxyType(
    {"shingles": "the shingles bought", "materials": "the materials bought, by weight"}
)


def size_says(
    sizes: Sequence[GivenSize],
    *,
    by: By,
    wasted: Ratio,
    saves: Ratio,
    changes: Sequence[LineChange],
) -> Sentence:
    """Say what a size of a roof wastes.

    Args:
        sizes: Its measurements.
        by: What of it is wasted.
        wasted: The share of it.
        saves: How much less of it than at the size wished for.
        changes: What the order comes to instead.

    Returns:
        One sentence or two.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> size_says([GivenSize(measurement="run", length=96)], by="shingles", wasted=0.14, saves=0.05,
    ...           changes=()).written()
    'run 8 ft: 14 % of the shingles bought is wasted, 5 % of them less. The order is the same.'
    """
    said = f": {write(100 * wasted, 'percent')} of {_WHAT[by]} is wasted"
    if not saves:
        return say(size_named(sizes), f"{said}.")
    less = f"{said}, {write(100 * saves, 'percent')} of them less. "
    if not changes:
        return say(size_named(sizes), less, "The order is the same.")
    return say(size_named(sizes), less, "It takes ", changes_say(changes), ".")


def fit_says(kept: Sequence[FitSize], *, by: By, now: Ratio) -> Sentence:
    """Say what was found of better sizes.

    Args:
        kept: The sizes that waste less, the least first.
        by: What of them is wasted.
        now: The share of it at the size wished for.

    Returns:
        One sentence.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> fit_says([], by="shingles", now=0.2).written()
    'No size in these ranges wastes less than the one wished for.'
    """
    if not kept:
        return say("No size in these ranges wastes less than the one wished for.")
    first = kept[0]
    then = first.shingles_wasted if by == "shingles" else first.materials_wasted
    wasted = f": {write(then, 'percent')} of {_WHAT[by]} is wasted instead of "
    return say("The least: ", size_named(first.sizes), wasted, f"{write(100 * now, 'percent')}.")


def size_named(sizes: Sequence[GivenSize]) -> Sentence:
    """Name a size by its measurements.

    Args:
        sizes: Its measurements.

    Returns:
        A part of a sentence.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> size_named([GivenSize(measurement="run", length=96)]).written()
    'run 8 ft'
    """
    parts: list[object] = []
    for k, one in enumerate(sizes):
        parts += [", " if k else "", f"{in_words(one.measurement)} ", length(one.length)]
    return say(*parts)
