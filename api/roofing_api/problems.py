"""Problems: every answer that is not a success, in one shape (RFC 9457)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from http import HTTPStatus
from typing import Any, Literal
from urllib.parse import quote

from fastapi import Request, Response
from pydantic_core import to_json
from starlette.exceptions import HTTPException
from starlette.routing import Match, Route

from roofing_core.measures.faults import Fault, Refused, TooManyPieces
from roofing_core.measures.units import System

MEDIA_TYPE = "application/problem+json"

#: What came is repeated up to this many characters, and so many faults are told one by one.
LONGEST_ECHO, KEPT_OF_LONGER, MOST_ERRORS = 60, 57, 20


#: How a problem is told: by its status and as JSON, or as its sentence alone with status 200.
Telling = Literal["status", "text"]


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of problem, as its `type`, status and title say, and what it means."""

    slug: str
    status: HTTPStatus
    title: str
    meaning: str


UNREADABLE = Kind(
    "unreadable",
    HTTPStatus.BAD_REQUEST,
    "Not readable",
    "The request could not be read: its body is not JSON, or its text is not UTF-8.",
)
NOT_FOUND = Kind(
    "not-found",
    HTTPStatus.NOT_FOUND,
    "Nothing there",
    "There is no such path, or the answer has no value where the pointer points.",
)
METHOD_NOT_ALLOWED = Kind(
    "method-not-allowed",
    HTTPStatus.METHOD_NOT_ALLOWED,
    "Another method is needed",
    "The path is right and the method is not; the Allow header names those that are.",
)
NOT_ACCEPTABLE = Kind(
    "not-acceptable",
    HTTPStatus.NOT_ACCEPTABLE,
    "Not offered in that form",
    "The Accept header asks for a form that this answer does not come in.",
)
TOO_LARGE = Kind(
    "too-large",
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
    "Too large",
    "The body is larger than the service takes.",
)
TOO_LONG = Kind(
    "too-long",
    HTTPStatus.REQUEST_URI_TOO_LONG,
    "Address too long",
    "The query is longer than the service takes. A plan can be asked for with POST instead.",
)
WRONG_MEDIA_TYPE = Kind(
    "wrong-media-type",
    HTTPStatus.UNSUPPORTED_MEDIA_TYPE,
    "Not JSON",
    "The Content-Type header does not say application/json, or another JSON format where one is "
    "read, or the body is packed.",
)
REFUSED = Kind(
    "refused",
    HTTPStatus.UNPROCESSABLE_ENTITY,
    "Understood but impossible",
    "Something asked for cannot be read as a measurement or cannot be built; each is named.",
)
TOO_MANY_PIECES = Kind(
    "too-many-pieces",
    HTTPStatus.UNPROCESSABLE_ENTITY,
    "Too many pieces",
    "The roof would need more pieces than the limit; none was laid.",
)
TOO_SLOW = Kind(
    "too-slow",
    HTTPStatus.SERVICE_UNAVAILABLE,
    "Took too long",
    "There was no answer within the time that a request may take; ask for less at once.",
)
OUR_FAULT = Kind(
    "our-fault",
    HTTPStatus.INTERNAL_SERVER_ERROR,
    "A fault of the service",
    "The service failed. The request may be right; asking again will hardly help.",
)

KINDS = (
    UNREADABLE,
    NOT_FOUND,
    METHOD_NOT_ALLOWED,
    NOT_ACCEPTABLE,
    TOO_LARGE,
    TOO_LONG,
    WRONG_MEDIA_TYPE,
    REFUSED,
    TOO_MANY_PIECES,
    TOO_SLOW,
    OUR_FAULT,
)

#: Never told as a sentence with status 200: nobody's cell can mend them, and who watches over the
#: service, or asks for its methods, goes by the status.
BY_STATUS = (METHOD_NOT_ALLOWED, OUR_FAULT)

#: The one table from what the library raises to what the service answers.
KIND_OF: Mapping[type[Exception], Kind] = {Refused: REFUSED, TooManyPieces: TOO_MANY_PIECES}


class Problem(Exception):  # noqa: N818 - it is not an error of ours, it is an answer
    """Raised to answer with a problem that the library knows nothing of."""

    def __init__(
        self,
        kind: Kind,
        detail: str,
        *errors: Mapping[str, str],
        headers: Mapping[str, str] | None = None,
    ) -> None:
        super().__init__(detail)
        self.kind, self.detail, self.errors, self.headers = kind, detail, errors, headers


def respond(
    request: Request,
    kind: Kind,
    detail: str,
    errors: Iterable[Mapping[str, str]] = (),
    headers: Mapping[str, str] | None = None,
) -> Response:
    """Make the answer that tells a problem, in the way that the request asks for."""
    plain = {"X-Content-Type-Options": "nosniff", "Cache-Control": "no-store", **(headers or {})}
    if kind not in BY_STATUS and request.query_params.get("problems") == "text":
        return Response(detail, HTTPStatus.OK.value, plain, "text/plain")
    told: dict[str, Any] = {
        "type": f"/problems#{kind.slug}",
        "title": kind.title,
        "status": kind.status.value,
        "detail": detail,
        "errors": list(errors),
    }
    return Response(to_json(told), kind.status.value, plain, MEDIA_TYPE)


def shown(came: object) -> str:
    """Give what came as short text that is fit to print, in the caller's spelling."""
    match came:
        case "":
            return "an empty text"
        case str():
            short = came if len(came) <= LONGEST_ECHO else f"{came[:KEPT_OF_LONGER]}..."
            return "".join(c if c.isprintable() else ascii(c)[1:-1] for c in short)
        case bool() | None:
            return {None: "null", True: "true", False: "false"}[came]
        case list():
            return f"a list of {len(came)}"
        case _:
            return "an object"


def fragment(at: Iterable[object]) -> str:
    """Give a place in a body as a JSON Pointer in a URI fragment."""
    escaped = (shown(str(part)).replace("~", "~0").replace("/", "~1") for part in at)
    return "#" + "".join("/" + quote(part) for part in escaped)


def error(place: Mapping[str, str], came: str, wanted: str) -> dict[str, str]:
    """Tell one fault: where, what came, what would be right, and all of it as a sentence."""
    where = next(iter(place.values()), "the request")
    return {**place, "came": came, "wanted": wanted, "detail": f"{where} came as {came}: {wanted}"}


def tell(
    fault: Fault, place: Mapping[str, str], came: str | None, system: System
) -> dict[str, str]:
    """Tell a fault of the library, with the caller's own text where there is one."""
    if came is None:
        came = fault.came if isinstance(fault.came, str) else fault.came.written(system)
    return error(place, came, fault.wanted.written(system))


def summed_up(errors: list[dict[str, str]]) -> str:
    """Put all faults into the one sentence of the problem."""
    told = "; ".join(one["detail"] for one in errors[:MOST_ERRORS])
    return f"{told}; and more" if len(errors) > MOST_ERRORS else told


async def on_refused(request: Request, refusal: Exception) -> Response:
    """Answer what the library refused, each fault at its place in this request."""
    assert isinstance(refusal, Refused)
    errors = request.scope["asked"].errors(refusal)
    return respond(request, KIND_OF[type(refusal)], summed_up(errors), errors[:MOST_ERRORS])


async def on_problem(request: Request, problem: Exception) -> Response:
    """Answer a problem that was raised as one."""
    assert isinstance(problem, Problem)
    return respond(request, problem.kind, problem.detail, problem.errors, problem.headers)


async def on_http_exception(request: Request, exception: Exception) -> Response:
    """Answer what the framework refuses: a path or a method that is not there."""
    assert isinstance(exception, HTTPException)
    path = shown(request.url.path)
    if exception.status_code == HTTPStatus.METHOD_NOT_ALLOWED:
        allowed = ", ".join(allowed_methods(request))
        if request.method == "OPTIONS":
            # LibreOffice asks this first, and once more than it must where it is refused.
            return Response(status_code=HTTPStatus.NO_CONTENT, headers={"Allow": allowed})
        detail = f"{shown(request.method)} is not answered at {path}; allowed: {allowed}"
        return respond(request, METHOD_NOT_ALLOWED, detail, headers={"Allow": allowed})
    if exception.status_code == HTTPStatus.NOT_FOUND:
        return respond(
            request, NOT_FOUND, f"there is nothing at {path}; see /docs for what there is"
        )
    return respond(request, UNREADABLE, f"the request could not be read at {path}")


async def on_our_fault(request: Request, _: Exception) -> Response:
    """Answer a bug of ours without a word of our insides; the server's log has them."""
    return respond(request, OUR_FAULT, "the service failed at this request")


def allowed_methods(request: Request) -> list[str]:
    """Give the methods answered at this path; the framework knows those of the first route only."""
    allowed: set[str] = set()
    for route in request.app.routes:
        if isinstance(route, Route) and route.matches(request.scope)[0] is not Match.NONE:
            allowed |= route.methods or set()
    return sorted(allowed | {"HEAD"} if "GET" in allowed else allowed)
