"""At: what a formula is made from, the plan seen from the place of one of its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeAlias, TypeVar

from roofing_core.job.plan import Plan
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.workings.expressions import Expression, Figure, How, Listed, Path
from roofing_core.workings.names import name_of
from roofing_core.workings.places import found_at

Found = TypeVar("Found")


class Known:
    """What was found out of one plan, so that it is not worked out again for the next figure."""

    __slots__ = ("_found",)

    def __init__(self) -> None:
        self._found: dict[object, Any] = {}

    def kept(self, key: object, make: Callable[[], Found]) -> Found:
        """Give what is known by a key, or find it out and keep it."""
        if key not in self._found:
            self._found[key] = make()
        found: Found = self._found[key]
        return found


@dataclass(frozen=True, slots=True)
class At:
    """A plan, seen from the place of one of its figures.

    Attributes:
        plan: The plan.
        path: The place of the figure that is worked out.
        known: What was found out of the plan for other figures.
    """

    plan: Plan
    path: Path
    known: Known = field(default_factory=Known, compare=False, repr=False)

    def __call__(self, place: str, *entries: int | str) -> Figure:
        """Give the figure at a place such as ``courses/*/butt``, with a star for each entry."""
        given = iter(entries)
        return self.figure(tuple(next(given) if n == "*" else n for n in place.split("/")))

    def choice(self, place: str, *entries: int) -> Figure:
        """Give one of the choices."""
        return self(f"choices/{place}", *entries)

    def figure(self, path: Path) -> Figure:
        """Give the figure at a path, which every formula knows to be there."""
        return self.known.kept(path, lambda: self._figure(path))

    def _figure(self, path: Path) -> Figure:
        found = found_at(self.plan, path)
        assert found is not None, path
        value, unit = found
        return Figure(path, name_of(self.plan, path), value, unit)

    def near(self, *names: str | int, back: int = 1) -> Figure:
        """Give the figure that stands beside this one, or beside what it is part of."""
        return self.figure((*self.path[: len(self.path) - back], *names))

    def base(self, back: int = 1) -> Path:
        """Give the place of what the figure is a part of."""
        return self.path[: len(self.path) - back]

    def thing(self, back: int = 1) -> Any:
        """Give what the figure is a part of."""
        value: Any = self.plan
        for name in self.base(back):
            value = value[name] if isinstance(name, int) else getattr(value, str(name))
        return value

    def value(self) -> float:
        """Give the figure's own number, for a formula to be chosen by."""
        found = found_at(self.plan, self.path)
        assert found is not None
        return float(found[0])

    def each(
        self, place: str, *, where: Callable[[Any], bool] = lambda _: True, base: Path = ()
    ) -> tuple[Figure, ...]:
        """Give all figures of a pattern such as ``courses/*/butt``, of the entries that are meant.

        `where` is asked of the innermost entry that has the figure.
        """
        paths = _matching(self._at(base), base, tuple(place.split("/")), None, where)
        return tuple(self.figure(path) for path in paths)

    def all(
        self,
        how: How,
        place: str,
        name: str,
        *,
        where: Callable[[Any], bool] = lambda _: True,
        base: Path = (),
    ) -> Listed:
        """Give a sum, a count, or the least or greatest of all figures of a pattern."""
        return Listed(how, self.each(place, where=where, base=base), name)

    def _at(self, base: Path) -> Any:
        value: Any = self.plan
        for name in base:
            value = value[name] if isinstance(name, int) else getattr(value, str(name))
        return value


def _matching(
    value: Any, path: Path, names: Path, entry: Any, where: Callable[[Any], bool]
) -> Iterator[Path]:
    if not names:
        if entry is None or where(entry):
            yield path
        return
    name, *rest = names
    if name == "*":
        for k, one in enumerate(value):
            inner = one if not isinstance(one, int | float) else entry
            yield from _matching(one, (*path, k), tuple(rest), inner, where)
    elif str(name).isdigit():
        yield from _matching(value[int(name)], (*path, int(name)), tuple(rest), entry, where)
    else:
        yield from _matching(getattr(value, str(name)), (*path, name), tuple(rest), entry, where)


Make: TypeAlias = Callable[[At], Expression | None]


@dataclass(frozen=True, slots=True)
class Formula:
    """How a figure is worked out, and on whose word.

    Attributes:
        make: Gives the formula of one figure; none where this one has none.
        source: Where the rule or the formula comes from.
    """

    make: Make
    source: str


Table: TypeAlias = Mapping[str, Formula]

GEOMETRY = "Geometry."
ARITHMETIC = "Arithmetic."
PRACTICE = "Common practice, no published source."
COUNTED = "Counted in the plan."
PACKS = "Whole packs, rounded up; 1e-9 of a pack is forgiven."


def same(one: Inches, other: Inches) -> bool:
    """Tell whether two places are one, but for float dust.

    Args:
        one: A place.
        other: Another.

    Returns:
        Whether they are.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> same(0.1 + 0.2, 0.3)
    True
    """
    return abs(one - other) <= DUST


def table(source: str, **formulas: Make) -> dict[str, Formula]:
    """Make a part of the table, of figures under one source.

    Args:
        source: Where their formulas come from.
        formulas: Each figure's formula, by its name within what it is part of.

    Returns:
        The formulas by those names.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> list(table(GEOMETRY, butt=lambda at: at.near("number")))
    ['butt']
    """
    return {name: Formula(make, source) for name, make in formulas.items()}


def under(place: str, *parts: Mapping[str, Formula]) -> dict[str, Formula]:
    """Put parts of the table under a place.

    Args:
        place: The pattern of what the figures are part of, such as ``/courses/*``.
        parts: The formulas by names within it.

    Returns:
        The formulas by their whole patterns; ``__`` in a name parts its steps, and an ``i``
        is any entry of a list.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> list(under("/courses/*", table(GEOMETRY, joints__i=lambda at: None)))
    ['/courses/*/joints/*']
    """
    return {
        f"{place}/{'/'.join('*' if step == 'i' else step for step in name.split('__'))}": formula
        for part in parts
        for name, formula in part.items()
    }
