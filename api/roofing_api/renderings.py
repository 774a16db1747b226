"""Renderings: the forms that a result is answered in, one table for all of them.

What a form is asked for by, its media type, how it is made, what goes with it: everything else,
from the Accept header to the OpenAPI document, reads it here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib.util import find_spec
from types import MappingProxyType
from typing import Any

from orjson import dumps
from pydantic import BaseModel

from roofing_api.answering import rendered
from roofing_api.manner import Pictured, formatted
from roofing_api.negotiating import JSON, SVG, TEXT
from roofing_api.pointing import values_at
from roofing_core.measures.units import System

#: Makes the bytes of an answer out of a result and the parameters that say how to answer.
Make = Callable[[Any, Any], bytes]

#: What is opened as a page of its own: it may fetch nothing and run nothing.
SEALED: Mapping[str, str] = MappingProxyType({"Content-Security-Policy": "default-src 'none'"})


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rendering:
    """One form that a result is answered in.

    `word` is what `format` asks for it by, `says` what it is, for the document. `asks` are the
    parameters that it takes beside those of every form; to give one of those named in `implied_by`
    is to ask for the form. `at_once` is whether making it is worth no thread. `needs` is a package
    of the extra `sheets` without which it cannot be made.
    """

    word: str
    media_type: str
    says: str
    make: Make
    asks: tuple[type[BaseModel], ...] = ()
    implied_by: frozenset[str] = frozenset()
    at_once: bool = False
    is_binary: bool = False
    needs: str = ""
    headers: Mapping[str, str] = field(default_factory=dict)


#: Every result comes in this form, and where nothing else is asked for.
AS_JSON = Rendering(
    word="json",
    media_type=JSON,
    says="every field, under one unit system.",
    make=lambda result, manner: dumps(rendered(result, manner.units)),
    at_once=True,
)

#: What `pointer` asks for, whatever else is asked for.
ONE_VALUE = Rendering(
    word="text",
    media_type=TEXT,
    says="the values that `pointer` asks for, or with `problems=text` what is wrong",
    make=lambda result, manner: values_at(
        result, manner.pointer, manner.units, manner.value
    ).encode(),
    at_once=True,
)


def as_text(write: Callable[[Any, System], str]) -> Rendering:
    """Give the form of plain text, out of what writes it."""
    return Rendering(
        word="text",
        media_type=TEXT,
        says="the whole as a sheet of plain text",
        make=lambda result, manner: write(result, manner.units).encode(),
        at_once=True,
    )


def as_drawing(draw: Callable[[Any, Any], str], *, to_choose_from: bool = False) -> Rendering:
    """Give the form of a drawing, out of what draws it; there may be several to choose from."""
    return Rendering(
        word="svg",
        media_type=SVG,
        says="a drawing, to scale",
        make=lambda result, manner: draw(result, manner).encode(),
        asks=(Pictured,) if to_choose_from else (),
        implied_by=frozenset({"drawing"}),
        headers=SEALED,
    )


@cache
def is_there(rendering: Rendering) -> bool:
    """Tell whether what a form needs is installed with this service."""
    return not rendering.needs or find_spec(rendering.needs) is not None


def asked_for(offers: tuple[Rendering, ...], manner: Any) -> Rendering | None:
    """Give the form that the parameters ask for, by its word or by what only one form takes."""
    if manner.pointer is not None:
        return ONE_VALUE
    word = getattr(manner, "format", None)
    given = manner.model_fields_set
    for offer in offers:
        if offer.word == word or (word is None and offer.implied_by & given):
            return offer
    return None


def parameters_of(offers: tuple[Rendering, ...]) -> tuple[type[BaseModel], ...]:
    """Give the parameters by which one of several forms is asked for; none where there is one."""
    words = tuple(offer.word for offer in offers)
    asks = dict.fromkeys(model for offer in offers for model in offer.asks)
    return (formatted(words), *asks) if len(offers) > 1 else ()
