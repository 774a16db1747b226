"""Pointing: single values out of an answer, as plain text, for cells of a spreadsheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import is_dataclass
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, Literal, get_args, get_origin, get_type_hints

from roofing_api.answering import unit_in, units_of
from roofing_api.problems import NOT_FOUND, REFUSED, Kind, Problem, error, shown
from roofing_api.variants import kinds_in
from roofing_core.measures.sentences import Amount, Sentence, write
from roofing_core.measures.units import SHOWN, System, Unit

Spelling = Literal["number", "text"]

PLACE = "a place in the answer"


class PastTheEnd(Problem):
    """The pointer leads past the end of a list."""


#: No name in an answer holds one.
BETWEEN_POINTERS = ","


def values_at(result: Any, pointers: str, system: System, spelling: Spelling) -> str:
    """Give the value at a pointer, or of several with commas between, one a line.

    Among several, one that leads past the end of a list is an empty line: how long lists such as
    the findings are changes from roof to roof, and the other values are still wanted.
    """
    if BETWEEN_POINTERS not in pointers:
        return value_at(result, pointers, system, spelling)
    asked = pointers.split(BETWEEN_POINTERS)
    return "\n".join(_line(result, pointer, system, spelling) for pointer in asked)


def _line(result: Any, pointer: str, system: System, spelling: Spelling) -> str:
    try:
        return value_at(result, pointer, system, spelling)
    except PastTheEnd:
        return ""


def value_at(result: Any, pointer: str, system: System, spelling: Spelling) -> str:
    """Give the one value at a JSON Pointer (RFC 6901) into an answer.

    ``number`` gives it as it stands in the JSON; ``text`` as it is written for people.
    """
    value, hint = _found(result, pointer, system)
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Sentence):
        return value.written(system)
    if isinstance(value, Decimal):
        return f"{value:f}"
    hint = kinds_in(hint)[0]
    if get_origin(hint) is Annotated:
        unit = unit_in(hint)
        return write(value, unit, system) if spelling == "text" else _plain(value, unit, system)
    if isinstance(value, str | int | float):
        return str(value)
    raise _no(REFUSED, pointer, "one value; this is an object or a list", _names_in(value))


def _plain(value: float, unit: str, system: System) -> str:
    return repr(SHOWN[unit][system].shown(value))


def _found(result: Any, pointer: str, system: System) -> tuple[Any, Any]:
    """Walk down from the answer, keeping each value's annotation."""
    if pointer and not pointer.startswith("/"):
        raise _no(REFUSED, pointer, "a JSON Pointer, which starts with /", _names_in(result))
    value, hint = result, type(result)
    tokens = pointer.split("/")[1:]  # no name in an answer holds a ~ or /, so none is escaped
    if tokens[:1] == ["units"]:
        value, hint, tokens = units_of(system), dict, tokens[1:]
    for token in tokens:
        try:
            value, hint = _step(value, hint, token, system)
        except IndexError:
            raise _no(NOT_FOUND, pointer, PLACE, _names_in(value), PastTheEnd) from None
        except (KeyError, ValueError):
            raise _no(NOT_FOUND, pointer, PLACE, _names_in(value)) from None
    return value, hint


def _step(value: Any, hint: Any, token: str, system: System) -> tuple[Any, Any]:
    """Go one step down; a step that cannot be gone raises KeyError, IndexError or ValueError."""
    if isinstance(value, tuple):
        if not token.isascii() or not token.isdigit() or str(int(token)) != token:
            raise KeyError(token)
        hints = get_args(hint)
        return value[int(token)], hints[0 if hints[-1] is Ellipsis else int(token)]
    if isinstance(value, dict):
        return value[token], str
    if isinstance(value, Amount):
        unit = {"value": Annotated[float, Unit(value.unit)], "unit": str}
        return {"value": value.value, "unit": SHOWN[value.unit][system].unit}[token], unit[token]
    hint = _hints_of(value)[token]
    return getattr(value, token), hint


def _hints_of(value: Any) -> Mapping[str, Any]:
    kind: Any = type(value)
    if kind is Sentence or not is_dataclass(value):
        return {}
    return _hints(kind)


@cache
def _hints(kind: Any) -> Mapping[str, Any]:
    return get_type_hints(kind, include_extras=True)


def _names_in(value: Any) -> str:
    """Say what can be pointed at from here."""
    if isinstance(value, tuple):
        return f"whole numbers from 0, under {len(value)}" if value else "nothing"
    names = value if isinstance(value, dict) else _hints_of(value)
    return ", ".join(names) or "nothing more"


def _no(
    kind: Kind, pointer: str, wanted: str, there: str, problem: type[Problem] = Problem
) -> Problem:
    told = error({"parameter": "pointer"}, shown(pointer), f"{wanted}; here there is {there}")
    return problem(kind, told["detail"], told)
