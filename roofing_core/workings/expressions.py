"""Expressions: a formula as a tree over figures of a plan, to be evaluated and to be written.

Formulas are put together with Python's own signs, so that ``at("butt") + at("exposure")`` reads as
it is computed. How a tree is written is `writing`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import atan2, fsum, prod, sqrt
from types import MappingProxyType
from typing import Literal, TypeAlias

from roofing_core.measures.counting import whole_pieces

Path = tuple[str | int, ...]
"""Where a figure stands in a plan, from the outermost name to the innermost."""

How = Literal[
    "sum", "difference", "product", "ratio", "negative", "root", "up", "least", "greatest",
    "distance", "slant", "count",
]  # fmt: skip


class Expression:
    """A formula, or a part of one."""

    __slots__ = ()

    def __add__(self, other: Term) -> Applied:
        return Applied("sum", (self, _wrapped(other)))

    def __radd__(self, other: Term) -> Applied:
        return Applied("sum", (_wrapped(other), self))

    def __sub__(self, other: Term) -> Applied:
        return Applied("difference", (self, _wrapped(other)))

    def __rsub__(self, other: Term) -> Applied:
        return Applied("difference", (_wrapped(other), self))

    def __mul__(self, other: Term) -> Applied:
        return Applied("product", (self, _wrapped(other)))

    def __rmul__(self, other: Term) -> Applied:
        return Applied("product", (_wrapped(other), self))

    def __truediv__(self, other: Term) -> Applied:
        return Applied("ratio", (self, _wrapped(other)))

    def __neg__(self) -> Applied:
        return Applied("negative", (self,))

    def squared(self) -> Applied:
        """Give it times itself."""
        return self * self

    def root(self) -> Applied:
        """Give its square root."""
        return Applied("root", (self,))

    def up(self) -> Applied:
        """Give the whole pieces that make it up."""
        return Applied("up", (self,))

    def least(self, *others: Term) -> Applied:
        """Give the least of it and others."""
        return Applied("least", (self, *map(_wrapped, others)))

    def greatest(self, *others: Term) -> Applied:
        """Give the greatest of it and others."""
        return Applied("greatest", (self, *map(_wrapped, others)))

    def apart(self, other: Expression) -> Applied:
        """Give how far it is from another, without a sign."""
        return Applied("distance", (self, other))

    def slant(self, level: Expression) -> Applied:
        """Give the angle of what rises by this over a level length."""
        return Applied("slant", (self, level))


@dataclass(frozen=True, slots=True)
class Figure(Expression):
    """Another figure of the plan, or one of its inputs.

    Attributes:
        path: Where it stands.
        name: What it is, in trade words.
        value: The number, in the unit inside.
        unit: The unit inside.
    """

    path: Path
    name: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Constant(Expression):
    """A number that a formula brings with it.

    Attributes:
        value: The number.
        unit: Its unit inside, or one that only formulas have; see `writing`.
        name: What it is, where that is not plain from the number.
    """

    value: float
    unit: str = "1"
    name: str = ""


@dataclass(frozen=True, slots=True)
class Applied(Expression):
    """What is done with one or more parts.

    Attributes:
        how: What is done.
        parts: With what, in order.
    """

    how: How
    parts: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Listed(Expression):
    """A sum, a count, or the least or greatest of a list of the plan.

    Attributes:
        how: What is made of the list.
        parts: Its entries; of a count, what is counted.
        name: What the entries are, in trade words.
    """

    how: How
    parts: tuple[Expression, ...]
    name: str


@dataclass(frozen=True, slots=True)
class Step(Expression):
    """A step on the way that the plan does not hold, with a line of its own.

    Attributes:
        name: What it is, in trade words.
        unit: The unit inside.
        formula: How it is worked out.
    """

    name: str
    unit: str
    formula: Expression


Term: TypeAlias = Expression | float | int


def _wrapped(term: Term) -> Expression:
    return term if isinstance(term, Expression) else Constant(term)


def added(parts: Iterable[Expression]) -> Expression:
    """Add several parts.

    Args:
        parts: The parts.

    Returns:
        Their sum; 0 for none.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> added([]), evaluated(added([Constant(1), Constant(2), Constant(4)]))
    (Constant(value=0, unit='1', name=''), 7.0)
    """
    found = tuple(parts)
    if not found:
        return Constant(0)
    return found[0] if len(found) == 1 else Applied("sum", found)


#: What each way comes to. Whole pieces are counted as everywhere, forgiving 1e-9 of a piece.
_COMES_TO: Mapping[How, Callable[[Sequence[float]], float]] = MappingProxyType(
    {
        "sum": fsum,
        "difference": lambda of: of[0] - of[1],
        "product": prod,
        "ratio": lambda of: of[0] / of[1],
        "negative": lambda of: -of[0],
        "root": lambda of: sqrt(max(0.0, of[0])),
        "up": lambda of: whole_pieces(max(0.0, of[0])),
        "least": min,
        "greatest": max,
        "distance": lambda of: abs(of[0] - of[1]),
        "slant": lambda of: atan2(of[0], of[1]),
        "count": len,
    }
)


def evaluated(of: Expression) -> float:  # the unit is that of the figure
    """Give what a formula comes to.

    Args:
        of: The formula.

    Returns:
        The number, in the unit inside.

    Raises:
        Nothing: No formula of a plan divides by nothing.

    Source:
        Arithmetic.

    >>> evaluated((Constant(168.5) / 39.375).up() * 4)
    20
    """
    if isinstance(of, Figure | Constant):
        return of.value
    if isinstance(of, Step):
        return evaluated(of.formula)
    assert isinstance(of, Applied | Listed)
    return _COMES_TO[of.how]([evaluated(part) for part in of.parts])


def put_into(of: Expression) -> Iterator[Figure | Step]:
    """Give the figures and steps that a formula is put together from.

    Args:
        of: The formula.

    Returns:
        In order, each as often as it stands there.

    Raises:
        Nothing.

    Source:
        The formula.

    >>> list(put_into(Constant(2) * 3))
    []
    """
    if isinstance(of, Figure | Step):
        yield of
    elif isinstance(of, Applied | Listed):
        for part in of.parts:
            yield from put_into(part)


def explained_in(of: Expression) -> Iterator[Figure | Step]:
    """Give the figures and steps that a chain goes on to: of a list one stands for all.

    Args:
        of: The formula.

    Returns:
        Those of the formula; of a list the first that is not 0, or the one that is least or
        greatest, or the last that is counted.

    Raises:
        Nothing.

    Source:
        The formula.

    >>> one, two = (Figure(("a", k), "", k, "in") for k in (1, 2))
    >>> [found.path for found in explained_in(Listed("greatest", (one, two), "all"))]
    [('a', 2)]
    """
    if isinstance(of, Figure | Step):
        yield of
    elif isinstance(of, Listed):
        if of.parts:
            yield from explained_in(_standing_for(of))
    elif isinstance(of, Applied):
        for part in of.parts:
            yield from explained_in(part)


def _standing_for(listed: Listed) -> Expression:
    if listed.how in ("least", "greatest"):
        wanted = evaluated(listed)
        return next(part for part in listed.parts if evaluated(part) == wanted)
    if listed.how == "count":
        return listed.parts[-1]
    return next((part for part in listed.parts if evaluated(part)), listed.parts[0])
