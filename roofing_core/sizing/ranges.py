"""Ranges: about the size wished for, which sizes of a roof are looked at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from math import prod

from roofing_core.measures.faults import Fault, fault, not_positive, refuse_if_any
from roofing_core.measures.sentences import length, say
from roofing_core.measures.units import Inches
from roofing_core.roof.measuring import AnyRoof
from roofing_core.sizing.walks import whole_steps

#: In steps of a whole inch unless asked for otherwise.
STEP = 1.0

#: More sizes than these are not looked at in one call: counted at once, or each planned.
MOST_AT_ONCE, MOST_PLANNED = 20_000, 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Between:
    """A range of one measurement, with the one wished for in it.

    Attributes:
        least: The least that will do.
        most: The most that will do.
    """

    least: Inches
    most: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranges:
    """Which sizes are looked at: those that are whole steps from the size wished for.

    Attributes:
        eave_length: Range of the eave length of a single slope.
        slope_length: Range of its slope length, where it is given by that.
        run: Range of its run, where it is given by that.
        length: Range of the length of another form.
        width: Range of its width.
        step: From one size to the next.
    """

    eave_length: Between | None = None
    slope_length: Between | None = None
    run: Between | None = None
    length: Between | None = None
    width: Between | None = None
    step: Inches = STEP

    def given(self) -> dict[str, Between]:
        """Give the ranges that were given, by their names."""
        named = ((name, getattr(self, name)) for name in RANGED)
        return {name: between for name, between in named if between is not None}


RANGED = tuple(field.name for field in fields(Ranges) if field.name != "step")


def sizes_within(roof: AnyRoof, ranges: Ranges, *, most: int) -> dict[str, tuple[Inches, ...]]:
    """Give the values of each measurement that are looked at, least first.

    Args:
        roof: The roof of the size wished for.
        ranges: What will do.
        most: The most sizes that are looked at, all measurements together.

    Returns:
        The values of each measurement that has a range, by its name.

    Raises:
        Refused: No range is given, one is of a measurement that the roof was not given by, its
            limits contradict each other or leave out the size wished for, the step is none, or the
            sizes are more than the most; names each.

    Source:
        Arithmetic.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> about = Ranges(eave_length=Between(least=165, most=170), step=2)
    >>> sizes_within(shed, about, most=100)
    {'eave_length': (166, 168, 170)}
    """
    given = ranges.given()
    refuse_if_any([*_alone(roof, ranges), *_together(roof, given)])
    values = {name: _values(getattr(roof, name), one, ranges.step) for name, one in given.items()}
    refuse_if_any(_too_many(prod(len(each) for each in values.values()), most))
    return {name: tuple(each) for name, each in values.items()}


def _alone(roof: AnyRoof, ranges: Ranges) -> Iterator[Fault | None]:
    yield not_positive("step", ranges.step)
    if not ranges.given():
        names = ", ".join(name for name in RANGED if getattr(roof, name, None))
        wanted = f"one range or more, with least and most: {names or 'none fits this form'}"
        yield Fault((), "none", say(wanted))


def _together(roof: AnyRoof, given: dict[str, Between]) -> Iterator[Fault | None]:
    for name, one in given.items():
        wished = getattr(roof, name, None)
        alone = [not_positive(f"{name}.{end}", getattr(one, end)) for end in ("least", "most")]
        yield from alone
        if any(alone):
            continue
        if not wished:
            others = ", ".join(each for each in RANGED if getattr(roof, each, None))
            yield fault(name, "a range", f"left out: the roof is not given by it, but by {others}")
        elif one.least > one.most:
            wanted = ("at most ", length(one.most), ", the most of this range")
            yield fault(f"{name}.least", length(one.least), *wanted)
        elif not one.least <= wished <= one.most:
            at = f"{name}.least" if wished < one.least else f"{name}.most"
            word = "at most " if wished < one.least else "at least "
            came = length(one.least if wished < one.least else one.most)
            yield fault(at, came, word, length(wished), ", the size wished for")


def _values(wished: float, between: Between, step: float) -> list[float]:
    """Give the values in whole steps from the one wished for, which is among them."""
    down = whole_steps(wished - between.least, step)
    up = whole_steps(between.most - wished, step)
    return [wished + k * step for k in range(-min(down, MOST_AT_ONCE), min(up, MOST_AT_ONCE) + 1)]


def _too_many(count: int, most: int) -> Iterator[Fault]:
    if count > most:
        wanted = f"a longer step, or narrower ranges: at most {most} sizes are looked at"
        yield Fault(("step",), f"{count} sizes", say(wanted))
