"""Taking: what an audit reads of a plan, taken from it field by field under the same names."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, fields, is_dataclass
from functools import cache
from operator import attrgetter
from typing import Any, get_args, get_origin, get_type_hints

#: Lists that were taken already, by identity: courses that are cut alike share their pieces.
Taken = dict[int, Any]
Take = Callable[[Any, Taken], Any]


@cache
def taker(hint: Any) -> Take:
    """Make what takes a value of one type from a plan.

    Args:
        hint: The type: one of the dataclasses that an audit reads, or a tuple of such.

    Returns:
        What takes it from a record of a plan, and keeps lists that were taken already.

    Raises:
        Nothing.

    Source:
        The plan's own names.

    >>> taker(float)(2.5, {})
    2.5
    """
    if get_origin(hint) is tuple and is_dataclass(get_args(hint)[0]):
        each = taker(get_args(hint)[0])
        return lambda values, taken: _taken_once(values, taken, each)
    return _record_taker(hint) if is_dataclass(hint) else lambda value, _: value


def _taken_once(values: tuple[Any, ...], taken: Taken, each: Take) -> tuple[Any, ...]:
    if id(values) not in taken:
        taken[id(values)] = tuple([each(value, taken) for value in values])
    found: tuple[Any, ...] = taken[id(values)]
    return found


def _record_taker(kind: Any) -> Take:
    hints = get_type_hints(kind)
    deep = [(one.name, taker(hints[one.name])) for one in fields(kind) if _is_deep(hints, one)]
    later = {one.name for one in fields(kind) if one.default is not MISSING}
    plain = [one.name for one in fields(kind) if one.name not in dict(deep)]

    @cache
    def reader(whole: Any) -> tuple[list[str], Callable[[Any], tuple[Any, ...]]]:
        """Give what a kind of record has of all this: what came later it may lack."""
        lacks = later - {one.name for one in fields(whole)}
        names = [name for name in plain if name not in lacks]
        return names, attrgetter(*names, "__class__", "__class__")  # two or more: always a tuple

    def take(record: Any, taken: Taken) -> Any:
        names, read = reader(record.__class__)
        found = dict(zip(names, read(record), strict=False))
        for name, taker in deep:
            found[name] = taker(getattr(record, name), taken)
        return kind(**found)

    return take


def _is_deep(hints: dict[str, Any], field: Field[Any]) -> bool:
    hint = hints[field.name]
    return is_dataclass(hint) or (get_origin(hint) is tuple and is_dataclass(get_args(hint)[0]))
