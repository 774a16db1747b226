"""A calculation over HTTP: a request is read for one function, and its result is written.

Units, one value, the form of an answer, its tag and caching are seen to here, once for all routes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from http import HTTPStatus
from typing import Any, get_type_hints

from fastapi import Request, Response
from orjson import dumps

from roofing_api.answering import rendered
from roofing_api.forms import Form
from roofing_api.inputs import inputs_of, measures
from roofing_api.manner import Bearing, Formatted, Manner, Pictured
from roofing_api.negotiating import JSON, SVG, TEXT, etag, has_it, preferred
from roofing_api.pointing import value_at
from roofing_api.problems import NOT_ACCEPTABLE, Problem, shown, tell
from roofing_api.queries import QueryForm
from roofing_api.strict import read_query
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import System

#: An answer may be kept this long, in seconds: an hour after an upgrade nobody sees old numbers.
KEEP = 3_600

#: A result as plain text under a unit system.
Writer = Callable[[Any, System], str]

#: A result as a drawing, by the parameters that say how to answer.
Drawer = Callable[[Any, Any], str]


@dataclass(slots=True)
class Asked:
    """One request: what came, what the library is called with, and how to answer."""

    request: Request
    form: Form
    tree: Any
    writer: Writer | None
    drawer: Drawer | None
    units: System = "us"
    manner: Any = None
    media_type: str = JSON
    measures: dict[str, Any] = field(default_factory=dict)
    within: tuple[str, ...] = ()
    asking: tuple[Form, Any] = field(init=False)

    def __post_init__(self) -> None:
        self.asking = (self.form, self.tree)

    def errors(self, refusal: Refused) -> list[dict[str, str]]:
        """Tell every fault of a refusal: its place in this request, what came, what is wanted."""
        return [
            tell(fault, *self.form.place((*self.within, *fault.at), self.tree), self.units)
            for fault in refusal.faults
        ]

    def taken(self) -> Any:
        """Read what came by the form."""
        return self.form.taken(self.tree)

    def answer_by(self, manner: Any) -> None:
        """Settle how to answer: by the parameters, or where they say nothing, the Accept header."""
        self.manner, self.units = manner, manner.units
        asked_for = TEXT if manner.pointer is not None else _FORMATS[_format_of(manner)]
        self.media_type = asked_for or self._accepted()

    def reply(self, result: Any) -> Response:
        """Write a result of the library in the form that was asked for."""
        told = _SEALED if self.media_type == SVG else {}
        if self.request.method == "POST":
            headers = {**_ANSWERED, **told}
            return Response(self._written(result), headers=headers, media_type=self.media_type)
        scope = self.request.scope
        tag = etag(scope["path"], scope["query_string"], self.media_type)
        body, kept = self._written(result), {"ETag": tag, **_KEPT, **told}
        if has_it(self.request.headers.get("if-none-match"), tag):
            return Response(status_code=HTTPStatus.NOT_MODIFIED, headers=kept)
        return Response(body, headers=kept, media_type=self.media_type)

    def _accepted(self) -> str:
        accept = self.request.headers.get("accept", "*/*")
        offers = (JSON, *_offers(self))
        found = preferred(accept, offers)
        if found is None:
            detail = f"Accept came as {shown(accept)}: {' or '.join(offers)} is offered here"
            raise Problem(NOT_ACCEPTABLE, detail)
        return found

    def _written(self, result: Any) -> bytes:
        manner = self.manner
        if manner.pointer is not None:
            return value_at(result, manner.pointer, manner.units, manner.value).encode()
        if self.media_type == TEXT and self.writer:
            return self.writer(result, manner.units).encode()
        if self.media_type == SVG and self.drawer:
            # What a drawing refuses lies in how it is asked for, not in the roof.
            (self.form, self.tree), self.within = self.asking, ()
            return self.drawer(result, manner).encode()
        return dumps(rendered(result, manner.units))


def _offers(asked: Asked | Calculation) -> tuple[str, ...]:
    """Give the forms that an answer comes in beside JSON."""
    forms = ((TEXT, asked.writer), (SVG, asked.drawer))
    return tuple(media_type for media_type, made_by in forms if made_by)


_ANSWERED = {"Vary": "Accept", "X-Content-Type-Options": "nosniff"}
#: A drawing is opened as a page of its own: it may fetch nothing and run nothing.
_SEALED = {"Content-Security-Policy": "default-src 'none'"}
_KEPT = {"Cache-Control": f"public, max-age={KEEP}", **_ANSWERED}
_FORMATS = {None: "", "json": JSON, "text": TEXT, "svg": SVG}


def _format_of(manner: Any) -> str | None:
    """Give the form that the parameters ask for; whoever says which drawing wants a drawing."""
    asked_for = manner.format if isinstance(manner, Formatted) else None
    return asked_for or ("svg" if "drawing" in manner.model_fields_set else None)


class Calculation:
    """One function of the library, as a query asks for it, with a worked example, and more.

    `takes` is the dataclass that the function takes, where it does not take measurements itself;
    the fields of its field `lifted` stand in a query without that field's name. `within` is where
    the faults lie that the function finds, when it names them from inside what it takes. `pictures`
    is whether there are several drawings of a result, to choose from.
    """

    def __init__(
        self,
        function: Callable[..., Any],
        *,
        takes: Callable[..., Any] | None = None,
        lifted: str = "",
        within: tuple[str, ...] = (),
        writer: Writer | None = None,
        drawer: Drawer | None = None,
        pictures: bool = False,
        example: dict[str, str],
        more: tuple[dict[str, str], ...] = (),
    ) -> None:
        self.function, self.writer, self.drawer = function, writer, drawer
        self.example, self.more = example, more
        self.takes, self.within = takes or function, within
        self.result: type = get_type_hints(function)["return"]
        self.formatted = (*((Formatted,) if writer else ()), *((Pictured,) if pictures else ()))
        inputs = inputs_of(self.takes, body=False)
        self.form = QueryForm(inputs, Manner, Bearing, *self.formatted, lifted=lifted)

    def read(self, request: Request) -> Asked:
        """Read a request's query; every fault in it is refused at once."""
        given = read_query(request)
        came = Asked(request, self.form, self.form.tree(given), self.writer, self.drawer)
        asked = settled(came, given)
        asked.within = self.within
        return asked

    def called(self, measures: dict[str, Any]) -> Any:
        """Give the library's result for what a request asked with."""
        asked = self.takes(**measures)
        return asked if self.takes is self.function else self.function(asked)


def settled(asked: Asked, given: dict[str, str]) -> Asked:
    """Take the whole of a query: first the units, in which its faults are told."""
    asked.request.scope["asked"] = asked
    if given.get("units") == "metric":
        asked.units = "metric"
    taken = asked.taken()
    asked.answer_by(taken)
    asked.measures = measures(taken)
    return asked
