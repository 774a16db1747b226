"""How the library says no: faults as data, carried by one exception.

What cannot be built is refused here; what can be built but should not be is a finding on the plan.
Nothing in this module knows of HTTP.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite
from typing import Any, TypeVar, overload

from roofing_core.measures.sentences import Amount, Sentence, say, shown
from roofing_core.measures.units import System

First = TypeVar("First")
Second = TypeVar("Second")
Third = TypeVar("Third")
Fourth = TypeVar("Fourth")
Fifth = TypeVar("Fifth")


Place = tuple[str | int, ...]
"""Where something is, from the outermost name to the innermost."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with what was asked.

    Attributes:
        at: Where it is, from the outermost name to the innermost, such as ("shingle", "exposure").
        came: What came, as text, or a measurement when the caller gave a number.
        wanted: What would be right, as a sentence.
    """

    at: Place
    came: str | Amount
    wanted: Sentence

    def written(self, system: System = "us") -> str:
        """Write the fault as one sentence in a unit system, for instance for a log line."""
        where = ".".join(str(part) for part in self.at) or "the request"
        came = self.came if isinstance(self.came, str) else self.came.unlike(self.wanted, system)
        return f"{where} came as {came}: {self.wanted.written(system)}"


class Refused(ValueError):  # noqa: N818 - it is not an error of ours, it is an answer
    """What was asked cannot be built. Carries every fault found, not only the first.

    Attributes:
        faults: One entry per bad field, in the order of the fields.
    """

    def __init__(self, *faults: Fault) -> None:
        super().__init__("; ".join(fault.written() for fault in faults))
        self.faults = faults

    def __reduce__(self) -> tuple[type[Refused], tuple[Fault, ...]]:
        """Go to another process as faults, of which the sentence is made anew."""
        return type(self), self.faults

    def below(self, *at: str | int) -> Refused:
        """Give the same refusal with its places moved below an outer name."""
        return type(self)(*(replace(fault, at=(*at, *fault.at)) for fault in self.faults))

    def renamed(self, places: Mapping[str, str]) -> Refused:
        """Give the same refusal with each place's first name replaced by a dotted place."""
        return type(self)(*(replace(fault, at=_renamed(fault.at, places)) for fault in self.faults))


def _renamed(at: Place, places: Mapping[str, str]) -> Place:
    first = str(at[0]) if at else ""
    return (*places[first].split("."), *at[1:]) if first in places else at


class TooManyPieces(Refused):
    """The roof would need more pieces than the stated limit; nothing was laid."""


def refuse_if_any(faults: Iterable[Fault | None]) -> None:
    """Raise one refusal with all the faults among those given; pass when there are none."""
    found = [fault for fault in faults if fault is not None]
    if found:
        raise Refused(*found)


def fault(at: str, came: str | Amount, *wanted: object) -> Fault:
    """Make a fault from a dotted place, what came, and the parts of a sentence."""
    return Fault(tuple(at.split(".")), came, say(*wanted))


#: The largest length of any roof, 100,000 ft, and the largest number of any other unit.
LARGEST_LENGTH, LARGEST = 1.2e6, 1e10

#: The least number of any unit that is over zero: no tape or scale shows less, and what is divided
#: by it or by its square stays finite.
SMALLEST = 1e-12


def largest(unit: str) -> float:
    """Give the largest number that a unit inside is taken up to."""
    return LARGEST_LENGTH if unit == "in" else LARGEST


def not_positive(at: str, value: float, unit: str = "in") -> Fault | None:
    """Give a fault unless a value is over zero and of a size a roof can have."""
    if SMALLEST <= value <= (LARGEST_LENGTH if unit == "in" else LARGEST):
        return None
    most = Amount(largest(unit), unit)
    return fault(at, shown(Amount(value, unit)), "more than zero and at most ", most)


def negative(at: str, value: float, unit: str = "in") -> Fault | None:
    """Give a fault unless a value is zero or more and of a size a roof can have."""
    if 0 <= value <= (LARGEST_LENGTH if unit == "in" else LARGEST):
        return None
    most = Amount(largest(unit), unit)
    return fault(at, shown(Amount(value, unit)), "zero or more and at most ", most)


def not_one_of(at: str, value: str, choices: Sequence[str]) -> Fault | None:
    """Give a fault unless a word is one of those that it can be.

    Args:
        at: The name to put into the fault.
        value: The word.
        choices: What it can be.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        None: a list.

    >>> not_one_of("tabs", "both", ("both", "start")) is None
    True
    """
    if value in choices:
        return None
    return fault(at, str(value), f"one of {', '.join(choices)}")


def require_positive(unit: str, /, **values: float) -> None:
    """Refuse values that are zero, negative or not finite, naming each.

    Args:
        unit: The unit they share, such as ``in``.
        values: The values by the names that the caller knows them by.

    Raises:
        Refused: One or more values are not over zero, finite, and of a size a roof can have.

    Source:
        A limit of this library.

    >>> require_positive("in", exposure=5.625)
    """
    most = largest(unit)
    if all(SMALLEST <= value <= most for value in values.values()):
        return
    refuse_if_any(not_positive(name, value, unit) for name, value in values.items())


def require_not_negative(unit: str, /, **values: float) -> None:
    """Refuse values that are negative or not finite, naming each. Zero passes.

    Args:
        unit: The unit they share, such as ``in``.
        values: The values by the names that the caller knows them by.

    Raises:
        Refused: One or more values are negative, not finite, or larger than any roof.

    Source:
        A limit of this library.

    >>> require_not_negative("in", overhang=0)
    """
    most = largest(unit)
    if all(0 <= value <= most for value in values.values()):
        return
    refuse_if_any(negative(name, value, unit) for name, value in values.items())


@overload
def together(
    first: Callable[[], First], second: Callable[[], Second], /
) -> tuple[First, Second]: ...


@overload
def together(
    first: Callable[[], First],
    second: Callable[[], Second],
    third: Callable[[], Third],
    fourth: Callable[[], Fourth],
    /,
) -> tuple[First, Second, Third, Fourth]: ...


@overload
def together(
    first: Callable[[], First],
    second: Callable[[], Second],
    third: Callable[[], Third],
    fourth: Callable[[], Fourth],
    fifth: Callable[[], Fifth],
    /,
) -> tuple[First, Second, Third, Fourth, Fifth]: ...


def together(*makers: Callable[[], Any]) -> tuple[Any, ...]:
    """Make parts that do not need each other, and report the faults of all of them at once.

    Args:
        makers: A call that makes each part.

    Returns:
        The parts, in the order of their calls.

    Raises:
        Refused: One or more parts were refused; carries the faults of all, each place once.
        TooManyPieces: All that were refused were refused for that.

    Source:
        None: a way of telling.

    >>> together(lambda: 1, lambda: 2)
    (1, 2)
    """
    made: list[Any] = []
    refusals: list[Refused] = []
    for make in makers:
        try:
            made.append(make())
        except Refused as refusal:
            refusals.append(refusal)
    if refusals:
        faults: dict[tuple[str | int, ...], Fault] = {}
        for fault_ in (one for refusal in refusals for one in refusal.faults):
            faults.setdefault(fault_.at, fault_)
        kinds = {type(refusal) for refusal in refusals}
        raise (kinds.pop() if len(kinds) == 1 else Refused)(*faults.values())
    return tuple(made)


def each_made(make: Callable[[First], Second], things: Iterable[First]) -> tuple[Second, ...]:
    """Make one thing of each of several, and report the faults of all of them at once.

    Args:
        make: A call that makes one of one.
        things: What they are made of.

    Returns:
        What was made, in the order of the things.

    Raises:
        Refused: One or more were refused; carries the faults of all.

    Source:
        None: a way of telling.

    >>> each_made(float, ["1", "2"])
    (1.0, 2.0)
    """
    made: list[Second] = []
    faults: list[Fault] = []
    for thing in things:
        try:
            made.append(make(thing))
        except Refused as refusal:
            faults += refusal.faults
    refuse_if_any(faults)
    return tuple(made)


def is_number(value: object) -> bool:
    """Tell whether a value is a finite number that can be measured with (a bool is not)."""
    return isinstance(value, int | float) and not isinstance(value, bool) and isfinite(value)
