"""Values: how one value of a request is read, and how its schema tells that.

A measurement comes as text and is read by the library's own grammar.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import is_dataclass
from decimal import Decimal
from functools import cache, lru_cache, partial
from inspect import Parameter
from typing import Annotated, Any, Literal, get_args

from pydantic import BeforeValidator, Field, PlainValidator, ValidationInfo, WithJsonSchema

from roofing_api.problems import shown
from roofing_api.strict import Bare
from roofing_core.measures.faults import Refused, fault, refuse_if_any
from roofing_core.measures.reading import read
from roofing_core.measures.sentences import write
from roofing_core.measures.units import Unit, convert
from roofing_core.measures.wording import Wording

NumberUnit = Literal["in", "ft", "mm", "cm", "m"]

#: Units of plain numbers: a ratio or a count is written without a unit.
PLAIN = ("1", "count", "percent")

#: A list of this many is longer than any roof asks for.
LONGEST_LIST = 100
#: As many planes, sides or openings as one roof has at most.
MOST_PARTS = 200
LONGEST_TEXT = 60
LARGEST_COUNT = 999_999_999

#: How money and rates of tax are written in a request.
EXACT = r"^[0-9]{1,18}(\.[0-9]{1,18})?$"

_BARE = re.compile(r"[-0-9 ./⁄¼½¾⅛⅜⅝⅞⅓⅔⅙⅚]+")
_DECIMAL = re.compile(r"-?[0-9]{1,12}(\.[0-9]{1,12})?", re.ASCII)
_MONEY = re.compile(r"-?[0-9]{1,18}(\.[0-9]{1,18})?", re.ASCII)
_COUNT = re.compile(r"[0-9]{1,9}", re.ASCII)


def refusal(wanted: str, came: object) -> Refused:
    """Refuse one value; its place is known to the model that holds it."""
    return Refused(fault("", shown(came), wanted))


@cache
def wanted_of(unit: str) -> str:
    """Say how a measurement of a unit is written, in the library's own words."""
    try:
        read("", unit)
    except Refused as refused:
        return refused.faults[0].wanted.written()
    raise AssertionError(unit)


#: The same few sizes come again and again, and reading one takes 2 us.
_read = lru_cache(maxsize=4_096)(read)


def _measure(unit: str, raw: Any, info: ValidationInfo) -> float:
    if unit == "in" and info.context and isinstance(raw, str) and _BARE.fullmatch(raw):
        raw = f"{raw} {info.context}"
    return (
        _read(raw, unit) if isinstance(raw, str) and len(raw) <= LONGEST_TEXT else read(raw, unit)
    )


def _number(raw: Any) -> float:
    if isinstance(raw, str) and _DECIMAL.fullmatch(raw):
        return float(raw)
    raise refusal("a plain number, such as 0.5", raw)


def _count(kind: type[str], raw: Any) -> int:
    if type(raw) is kind and _COUNT.fullmatch(str(raw)):
        return int(str(raw))
    raise refusal("a whole number under a billion, such as 20", raw)


def _exact(raw: Any) -> Decimal:
    """Read a decimal that no binary float may ever have held: a text, and no number of JSON."""
    if type(raw) is str and _MONEY.fullmatch(raw):
        return Decimal(raw)
    raise refusal('its digits as a text, with a decimal point, such as "12.49"', raw)


def _page(raw: Any) -> int:
    page = _count(str, raw)
    if page:
        return page
    raise refusal("a page from 1", raw)


def _text(least: int, most: int, raw: Any) -> str:
    if type(raw) is str and least <= len(raw) <= most and raw.isprintable():
        return raw
    raise refusal(f"a text of {least} to {most} printable characters", raw)


def _wording(wording: Wording, raw: Any) -> str:
    if type(raw) is not str:
        raise refusal("a text", raw)
    refuse_if_any([wording.fault("", raw)])
    return raw


def _choice(options: tuple[str, ...], raw: Any) -> str:
    if type(raw) is str and raw in options:
        return raw
    raise refusal("one of " + ", ".join(options), raw)


def _flag(raw: Any) -> bool:
    if raw in (True, False):
        return bool(raw)
    raise refusal("true or false", raw)


def _worded_flag(raw: Any) -> bool:
    return _flag({"true": True, "false": False}.get(raw, raw))


def _split(raw: Any) -> list[str]:
    return [part.strip() for part in raw.split(",")] if raw.strip() else []


def one_of(options: tuple[str, ...]) -> tuple[PlainValidator, WithJsonSchema]:
    """Give what makes a type one out of several words."""
    schema = {"type": "string", "enum": list(options)}
    return PlainValidator(partial(_choice, options)), WithJsonSchema(schema)


def list_type(item: Any, *, body: bool, least: int | None = None, most: int) -> Any:
    items: Any = tuple[item, ...]
    bounded = Annotated[items, Field(min_length=least, max_length=most)]
    return bounded if body else Annotated[bounded, BeforeValidator(_split)]


def measure_type(unit: str, *, body: bool) -> Any:
    kinds = ["string", "number"] if body and unit == "in" else "string"
    schema = {"type": kinds, "description": f"Written as {wanted_of(unit)}.", "x-unit": unit}
    return Annotated[float, PlainValidator(partial(_measure, unit)), WithJsonSchema(schema)]


def number_type(_: bool = False) -> Any:
    return Annotated[float, PlainValidator(_number), WithJsonSchema({"type": "number"})]


def count_type(body: bool) -> Any:
    schema = {"type": "integer", "minimum": 0, "maximum": LARGEST_COUNT}
    kind = Bare if body else str
    return Annotated[int, PlainValidator(partial(_count, kind)), WithJsonSchema(schema)]


def page_type() -> Any:
    schema = {"type": "integer", "minimum": 1, "maximum": LARGEST_COUNT}
    return Annotated[int, PlainValidator(_page), WithJsonSchema(schema)]


def _flag_type(body: bool) -> Any:
    read_flag = _flag if body else _worded_flag
    return Annotated[bool, PlainValidator(read_flag), WithJsonSchema({"type": "boolean"})]


def text_type(least: int, most: int = LONGEST_TEXT) -> Any:
    schema = {"type": "string", "minLength": least, "maxLength": most}
    return Annotated[str, PlainValidator(partial(_text, least, most)), WithJsonSchema(schema)]


def wording_type(wording: Wording) -> Any:
    schema = {"type": "string", "maxLength": wording.longest}
    return Annotated[str, PlainValidator(partial(_wording, wording)), WithJsonSchema(schema)]


def _exact_type(_: bool) -> Any:
    schema = {"type": "string", "pattern": EXACT}
    return Annotated[Decimal, PlainValidator(_exact), WithJsonSchema(schema)]


def _text_type(_: bool) -> Any:
    return text_type(1)


PLAIN_TYPES: Mapping[Any, Callable[[bool], Any]] = {
    float: number_type,
    int: count_type,
    bool: _flag_type,
    Decimal: _exact_type,
    str: _text_type,
}


def as_written(value: Any, hint: Any) -> Any:
    """Write a default as a caller would; None for one that cannot be written as one value."""
    if value is Parameter.empty or is_dataclass(value):
        return getattr(value, "name", None)
    if isinstance(value, tuple):
        return [as_written(one, get_args(hint)[0]) for one in value]
    if isinstance(value, Decimal):
        return f"{value:f}"
    units = [one.name for one in getattr(hint, "__metadata__", ()) if isinstance(one, Unit)]
    return _exactly(value, units[0]) if units and units[0] not in PLAIN else value


def _exactly(value: float, unit: str) -> str:
    """Write a measurement for people, or where that would round it, with its decimals."""
    text = write(value, unit)
    if read(text, unit) == value:
        return text
    named = "in" if unit == "in" else text.partition(" ")[2]
    return f"{convert(value, unit):.12g} {named}"
