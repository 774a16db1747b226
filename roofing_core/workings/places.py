"""Places: where every figure of a plan stands, its number and its unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.measures.units import Unit
from roofing_core.workings.expressions import Path


@cache
def _hints(kind: Any) -> Mapping[str, Any]:
    return get_type_hints(kind, include_extras=True)


def _step(value: Any, hint: Any, name: str | int) -> tuple[Any, Any]:
    """Go one step down; where there is none, raise a KeyError."""
    if isinstance(value, tuple):
        if not (isinstance(name, int) and 0 <= name < len(value)):
            raise KeyError(name)
        hints = get_args(hint)
        return value[name], hints[0 if hints[-1] is Ellipsis else name]
    if isinstance(value, Amount) and name == "value":
        return value.value, Annotated[float, Unit(value.unit)]
    kind: Any = type(value)
    if not is_dataclass(value) or kind is Sentence or name not in _hints(kind):
        raise KeyError(name)
    return getattr(value, str(name)), _hints(kind)[str(name)]


def found_at(plan: Plan, path: Path) -> tuple[Any, str] | None:
    """Find what stands at a place of a plan.

    Args:
        plan: The plan.
        path: The place.

    Returns:
        The value and the unit inside, ``count`` for a whole number; nothing where there is no such
        place.

    Raises:
        Nothing.

    Source:
        The plan's own types.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> found_at(planned, ("courses", 19, "butt")), found_at(planned, ("courses", 99))
    ((106.375, 'in'), None)
    """
    value: Any = plan
    hint: Any = Plan
    try:
        for name in path:
            value, hint = _step(value, hint, name)
    except KeyError:
        return None
    return value, _unit_of(hint)


def _unit_of(hint: Any) -> str:
    # A measurement that may be missing has its unit on what it is where it is there.
    hint = next((one for one in get_args(hint) if get_origin(one) is Annotated), hint)
    if get_origin(hint) is not Annotated:
        return "count"
    return next((one.name for one in get_args(hint)[1:] if isinstance(one, Unit)), "count")


def numbers_in(value: Any, path: Path = ()) -> Iterator[Path]:
    """Give the place of every number in a plan, or in a part of one.

    Args:
        value: The plan or the part.
        path: Where that stands.

    Returns:
        The places in the order of the answer; none within sentences, which are text there.

    Raises:
        Nothing.

    Source:
        The plan's own fields.

    >>> from roofing_core.materials.nominal import FELT_15
    >>> list(numbers_in(FELT_15))[:2]
    [('width',), ('length',)]
    """
    if isinstance(value, bool | str | Sentence):
        return
    if isinstance(value, int | float):
        yield path
    elif isinstance(value, tuple):
        for k, entry in enumerate(value):
            yield from numbers_in(entry, (*path, k))
    elif is_dataclass(value):
        for field in fields(value):
            yield from numbers_in(getattr(value, field.name), (*path, field.name))


def pattern_of(path: Path) -> str:
    """Give the pattern of a place: the same for all entries of a list.

    Args:
        path: The place.

    Returns:
        A JSON Pointer with a star for each number of an entry.

    Raises:
        Nothing.

    Source:
        RFC 6901, and a star.

    >>> pattern_of(("courses", 19, "butt"))
    '/courses/*/butt'
    """
    return "".join(f"/{'*' if isinstance(name, int) else name}" for name in path)


def pointer_to(path: Path) -> str:
    """Write a place as a JSON Pointer.

    Args:
        path: The place.

    Returns:
        The pointer into the plan's JSON.

    Raises:
        Nothing.

    Source:
        RFC 6901; no name of a plan holds what it escapes.

    >>> pointer_to(("courses", 19, "butt"))
    '/courses/19/butt'
    """
    return "".join(f"/{name}" for name in path)


def path_of(pointer: str) -> Path:
    """Read a JSON Pointer as a place.

    Args:
        pointer: The pointer; one that is none gives a place where nothing is.

    Returns:
        The place.

    Raises:
        Nothing.

    Source:
        RFC 6901.

    >>> path_of("/courses/19/butt"), path_of("courses")
    (('courses', 19, 'butt'), ('courses',))
    """
    names = pointer.split("/")
    return tuple(map(_name, names[1:] if not names[0] else names))


def _name(text: str) -> str | int:
    digits = text.isascii() and text.isdigit()
    return int(text) if digits and str(int(text[:20])) == text else text
