"""Straight lines as formulas: ``a x + b y = c``, and where two of them cross.

Terms that are nothing are left out and whole constants are put together, so that lines along an
edge read as a person would write them.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.workings.expressions import (
    Applied,
    Constant,
    Expression,
    Step,
    evaluated,
)

#: Sine of the angle under which two lines are too nearly parallel to say where they cross.
_PARALLEL = 1e-7

NOTHING, ONE = Constant(0), Constant(1)


@dataclass(frozen=True, slots=True)
class StraightLine:
    """All points with ``a x + b y = c``.

    Attributes:
        a: What x is multiplied by.
        b: What y is multiplied by.
        c: What both come to.
        name: What the line is.
        unit: The unit inside of c.
    """

    a: Expression
    b: Expression
    c: Expression
    name: str
    unit: str = "in"


def times(one: Expression, other: Expression) -> Expression:
    """Multiply, without what is 0 or 1.

    Args:
        one: A factor.
        other: Another.

    Returns:
        The product.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> times(ONE, Constant(5, "in")), times(NOTHING, Constant(5, "in"))
    (Constant(value=5, unit='in', name=''), Constant(value=0, unit='1', name=''))
    """
    for factor, rest in ((one, other), (other, one)):
        if isinstance(factor, Constant) and not factor.name and factor.value in (-1, 0, 1):
            if factor.value == 0:
                return NOTHING
            return rest if factor.value == 1 else minus(NOTHING, rest)
    return one * other


def plus(one: Expression, other: Expression) -> Expression:
    """Add, without what is 0.

    Args:
        one: A term.
        other: Another.

    Returns:
        The sum.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> plus(NOTHING, Constant(5, "in")), plus(ONE, ONE)
    (Constant(value=5, unit='in', name=''), Constant(value=2, unit='1', name=''))
    """
    if _is_nothing(one):
        return other
    if _is_nothing(other):
        return one
    for each, rest in ((other, one), (one, other)):
        if isinstance(each, Applied) and each.how == "negative":
            return minus(rest, each.parts[0])
    both = _both(one, other)
    return one + other if both is None else Constant(both[0] + both[1], _unit(one, other))


def minus(one: Expression, other: Expression) -> Expression:
    """Take away, without what is 0.

    Args:
        one: A term.
        other: What is taken away.

    Returns:
        The difference.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> minus(Constant(5, "in"), NOTHING), evaluated(minus(NOTHING, Constant(5, "in")))
    (Constant(value=5, unit='in', name=''), -5)
    """
    if _is_nothing(other):
        return one
    if isinstance(other, Applied) and other.how == "negative":
        return plus(other.parts[0], one)
    both = _both(one, other)
    if both is not None:
        return Constant(both[0] - both[1], _unit(one, other))
    if not _is_nothing(one):
        return one - other
    if isinstance(other, Applied) and other.how == "difference":
        return other.parts[1] - other.parts[0]
    return -other


def over(one: Expression, other: Expression) -> Expression:
    """Divide, without a divisor of 1.

    Args:
        one: What is divided.
        other: By what; not 0.

    Returns:
        The ratio.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> over(Constant(5, "in"), ONE)
    Constant(value=5, unit='in', name='')
    """
    if isinstance(other, Constant) and abs(other.value) == 1:
        return times(other, one)
    return NOTHING if _is_nothing(one) else one / other


def _is_nothing(one: Expression) -> bool:
    return isinstance(one, Constant) and one.value == 0 and not one.name


def _both(one: Expression, other: Expression) -> tuple[float, float] | None:
    """Give the values of two plain constants, of one unit or one of them 0."""
    if isinstance(one, Constant) and isinstance(other, Constant):
        alike = one.unit == other.unit or not (one.value and other.value)
        if alike and not (one.name or other.name):
            return one.value, other.value
    return None


def _unit(one: Expression, other: Expression) -> str:
    units = [each.unit for each in (one, other) if isinstance(each, Constant) and each.value]
    return units[0] if units else "1"


def crossing_of(one: StraightLine, other: StraightLine) -> tuple[Expression, Expression] | None:
    """Give where two lines cross, as formulas of x and of y.

    Args:
        one: A line; where one of the two says x or y alone, it had better be this.
        other: Another.

    Returns:
        Both formulas; nothing for lines that are parallel.

    Raises:
        Nothing.

    Source:
        Geometry: two equations with two unknowns.

    >>> level = StraightLine(NOTHING, ONE, Constant(4, "in"), "level")
    >>> hip = StraightLine(ONE, Constant(-1), NOTHING, "hip")
    >>> tuple(map(evaluated, crossing_of(level, hip)))
    (4, 4)
    """
    a, b, c, d = (evaluated(each) for each in (one.a, one.b, other.a, other.b))
    if abs(a * d - b * c) <= _PARALLEL * (abs(a) + abs(b)) * (abs(c) + abs(d)):
        return None
    for first, second in ((one, other), (other, one)):
        if _is_nothing(first.a):
            y = over(first.c, first.b)
            return over(minus(second.c, times(second.b, y)), second.a), y
        if _is_nothing(first.b):
            x = over(first.c, first.a)
            return x, over(minus(second.c, times(second.a, x)), second.b)
    return _by_both(one, other)


def _by_both(one: StraightLine, other: StraightLine) -> tuple[Expression, Expression]:
    (a, b, c), (d, e, f) = _named(one), _named(other)
    under = minus(times(a, e), times(d, b))
    return (
        over(minus(times(c, e), times(f, b)), under),
        over(minus(times(a, f), times(d, c)), under),
    )


def _named(line: StraightLine) -> tuple[Expression, Expression, Expression]:
    """Give the three numbers of a line, each that is worked out on a line of its own."""
    parts = (
        ("a", "1", line.a),
        ("b", "1", line.b),
        ("c", line.unit, line.c),
    )
    a, b, c = (
        part if isinstance(part, Constant) else Step(f"{letter} of {line.name}", unit, part)
        for letter, unit, part in parts
    )
    return a, b, c
