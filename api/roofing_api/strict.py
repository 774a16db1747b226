"""Strictness: a query or a JSON body, taken only if it says one thing and says it once."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from typing import Any, NoReturn
from urllib.parse import unquote_plus

from fastapi import Request

from roofing_api.negotiating import JSON
from roofing_api.problems import (
    MOST_ERRORS,
    REFUSED,
    TOO_LARGE,
    TOO_LONG,
    UNREADABLE,
    WRONG_MEDIA_TYPE,
    Problem,
    error,
    fragment,
    shown,
    summed_up,
)

#: A spreadsheet's formula holds 2,048 characters of address; this is room for every parameter.
LONGEST_QUERY = 8_192
LARGEST_BODY = 1_000_000

#: Whole numbers of so many characters are exact as floats too.
LONGEST_WHOLE = 15

TWICE, ONCE = "more than one value", "one value"


class Bare(str):
    """A number of a JSON body in the caller's own digits: no float is made of it, so none is lost.

    ``NaN`` and ``Infinity``, which are no JSON but which some writers write, come as this too, so
    that the field that holds them can be named.
    """

    __slots__ = ()


def read_query(request: Request) -> dict[str, str]:
    """Give the parameters of a query, each of which may stand in it once."""
    raw: bytes = request.scope["query_string"]
    if len(raw) > LONGEST_QUERY:
        raise Problem(TOO_LONG, f"the query has {len(raw)} bytes; at most {LONGEST_QUERY} are read")
    try:
        pairs = [part.partition("=") for part in raw.decode().split("&") if part]
        given = {_decoded(name): _decoded(text) for name, _, text in pairs}
    except UnicodeDecodeError:
        raise Problem(UNREADABLE, "the query is not UTF-8") from None
    if len(given) < len(pairs):
        _refuse_doubled([_decoded(name) for name, _, _ in pairs])
    return given


def _decoded(text: str) -> str:
    return unquote_plus(text, errors="strict") if "%" in text or "+" in text else text


def _refuse_doubled(names: list[str]) -> NoReturn:
    wanted = f"{ONCE}; a list goes into one parameter, with commas"
    doubled = [name for name, times in Counter(names).items() if times > 1]
    _refuse([error({"parameter": shown(name)}, TWICE, wanted) for name in doubled])


def _refuse(errors: list[dict[str, str]]) -> NoReturn:
    raise Problem(REFUSED, summed_up(errors), *errors[:MOST_ERRORS])


async def read_json(request: Request, *kinds: str) -> Any:
    """Give a JSON body: UTF-8, of bounded size, no key twice in one object, numbers as `Bare`.

    `kinds` are the media types of formats that are written in JSON and may come by their names.
    """
    return parsed(await json_body(request, *kinds))


async def json_body(request: Request, *kinds: str, largest: int = LARGEST_BODY) -> bytes:
    """Give the bytes of a body that says that it is JSON, if it is not too large."""
    media_type = request.headers.get("content-type", "nothing")
    if media_type.partition(";")[0].strip().lower() not in (JSON, *kinds):
        read = " or ".join((JSON, *kinds))
        detail = f"Content-Type came as {shown(media_type)}: {read} is what is read here"
        raise Problem(WRONG_MEDIA_TYPE, detail)
    coding = request.headers.get("content-encoding", "identity")
    if coding.lower() != "identity":
        detail = (
            f"Content-Encoding came as {shown(coding)}: a body as it is, not packed, is what is"
        )
        headers = {"Accept-Encoding": "identity"}
        raise Problem(WRONG_MEDIA_TYPE, f"{detail} read here", headers=headers)
    return await _body(request, largest)


async def _body(request: Request, largest: int) -> bytes:
    """Read a body until it is whole or too large, whatever its headers say of its size."""
    body = bytearray()
    async for chunk in request.stream():
        body += chunk
        if len(body) > largest:
            raise Problem(TOO_LARGE, f"the body is larger than {largest} bytes")
    return bytes(body)


def parsed(body: bytes) -> Any:
    """Parse a JSON body; a key that stands twice in one object is refused with its place."""
    doubled: list[tuple[dict[str, Any], list[str]]] = []

    def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        made = {key if key.isascii() else _encodable(key): value for key, value in pairs}
        if len(made) < len(pairs):
            times = Counter(_encodable(key) for key, _ in pairs)
            doubled.append((made, [key for key in made if times[key] > 1]))
        return made

    try:
        tree = json.loads(
            body.decode(),
            object_pairs_hook=once,
            parse_int=Bare,
            parse_float=Bare,
            parse_constant=Bare,
        )
    except UnicodeDecodeError:
        raise Problem(UNREADABLE, "the body is not UTF-8") from None
    except RecursionError:
        raise Problem(UNREADABLE, "the body is nested too deeply") from None
    except ValueError as bad:
        raise Problem(UNREADABLE, f"the body is not JSON: {bad}") from None
    if doubled:
        keys = {id(made): names for made, names in doubled}
        _refuse(
            [
                error({"pointer": fragment((*at, key))}, TWICE, ONCE)
                for at, value in _places(tree)
                for key in keys.get(id(value), ())
            ]
        )
    return tree


def numbered(tree: Any) -> Any:
    """Give the same tree with its numbers made of their digits."""
    top = [tree]
    waiting: list[Any] = [top]
    while waiting:
        holder = waiting.pop()
        places = holder if isinstance(holder, dict) else range(len(holder))
        for place in places:
            value = holder[place]
            if isinstance(value, dict | list):
                holder[place] = value.copy()
                waiting.append(holder[place])
            elif type(value) is Bare:
                holder[place] = _number(value)
    return top[0]


def _number(digits: str) -> int | float:
    """Make a number of its digits; one too long to be an index, or to be exact, is a float."""
    whole = digits.removeprefix("-").isdigit() and len(digits) <= LONGEST_WHOLE
    return int(digits) if whole else float(digits)


def _encodable(key: str) -> str:
    """Give a key with half surrogate pairs, which no answer could hold, written out."""
    return key.encode("utf-8", "backslashreplace").decode()


def _places(tree: Any) -> Iterator[tuple[tuple[object, ...], Any]]:
    """Give every value in a parsed body with the way to it."""
    waiting: list[tuple[tuple[object, ...], Any]] = [((), tree)]
    while waiting:
        at, value = waiting.pop()
        yield at, value
        if isinstance(value, dict):
            waiting += [((*at, key), inner) for key, inner in value.items()]
        if isinstance(value, list):
            waiting += [((*at, place), inner) for place, inner in enumerate(value)]
