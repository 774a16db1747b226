"""A calculation over HTTP: a request is read for one function, and its result is written.

Units, one value, the form of an answer, its tag and caching are seen to here, once for all routes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from http import HTTPStatus
from typing import Any, get_type_hints

from fastapi import Request, Response

from roofing_api.forms import Form
from roofing_api.inputs import inputs_of, measures
from roofing_api.manner import Bearing, Manner
from roofing_api.negotiating import etag, has_it, preferred
from roofing_api.problems import NOT_ACCEPTABLE, Problem, shown, tell
from roofing_api.queries import QueryForm
from roofing_api.renderings import AS_JSON, Rendering, asked_for, is_there, parameters_of
from roofing_api.strict import read_query
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import System

#: An answer may be kept this long, in seconds: an hour after an upgrade nobody sees old numbers.
KEEP = 3_600


@dataclass(slots=True)
class Asked:
    """One request: what came, what the library is called with, and how to answer."""

    request: Request
    form: Form
    tree: Any
    offers: tuple[Rendering, ...] = (AS_JSON,)
    units: System = "us"
    manner: Any = None
    rendering: Rendering = AS_JSON
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
        self.rendering = asked_for(self.offers, manner) or self._accepted()
        if not is_there(self.rendering):
            word, extra = self.rendering.word, "pip install 'roofing-core[sheets]'"
            raise Problem(NOT_ACCEPTABLE, f"{word} is not installed with this service: {extra}")

    def reply(self, result: Any) -> Response:
        """Write a result of the library in the form that was asked for."""
        rendering, told = self.rendering, {**_ANSWERED, **self.rendering.headers}
        if self.request.method == "POST":
            return Response(self._written(result), headers=told, media_type=rendering.media_type)
        scope = self.request.scope
        tag = etag(scope["path"], scope["query_string"], rendering.media_type)
        body, kept = self._written(result), {"ETag": tag, **_KEPT, **told}
        if has_it(self.request.headers.get("if-none-match"), tag):
            return Response(status_code=HTTPStatus.NOT_MODIFIED, headers=kept)
        return Response(body, headers=kept, media_type=rendering.media_type)

    def _accepted(self) -> Rendering:
        accept = self.request.headers.get("accept", "*/*")
        offers = {offer.media_type: offer for offer in self.offers if is_there(offer)}
        found = preferred(accept, tuple(offers))
        if found is None:
            detail = f"Accept came as {shown(accept)}: {' or '.join(offers)} is offered here"
            raise Problem(NOT_ACCEPTABLE, detail)
        return offers[found]

    def _written(self, result: Any) -> bytes:
        # What a form refuses lies in how it is asked for, not in what the result is made from.
        (self.form, self.tree), self.within = self.asking, ()
        return self.rendering.make(result, self.manner)


_ANSWERED = {"Vary": "Accept", "X-Content-Type-Options": "nosniff"}
_KEPT = {"Cache-Control": f"public, max-age={KEEP}"}


class Calculation:
    """One function of the library, as a query asks for it, with a worked example, and more.

    `takes` is the dataclass that the function takes, where it does not take measurements itself;
    the fields of its field `lifted` stand in a query without that field's name. `within` is where
    the faults lie that the function finds, when it names them from inside what it takes.
    `renderings` are the forms that the result is answered in beside JSON; `long`, whether a GET of
    it may take longer than others should wait.
    """

    def __init__(
        self,
        function: Callable[..., Any],
        *,
        takes: Callable[..., Any] | None = None,
        lifted: str = "",
        within: tuple[str, ...] = (),
        renderings: tuple[Rendering, ...] = (),
        long: bool = False,
        example: dict[str, str],
        more: tuple[dict[str, str], ...] = (),
    ) -> None:
        self.function, self.offers = function, (AS_JSON, *renderings)
        self.example, self.more, self.long = example, more, long
        self.takes, self.within = takes or function, within
        self.result: type = get_type_hints(function)["return"]
        self.forms = parameters_of(self.offers)
        inputs = inputs_of(self.takes, body=False)
        self.form = QueryForm(inputs, Manner, Bearing, *self.forms, lifted=lifted)

    def read(self, request: Request) -> Asked:
        """Read a request's query; every fault in it is refused at once."""
        given = read_query(request)
        came = Asked(request, self.form, self.form.tree(given), self.offers)
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
