"""The web form at `/`, its files, and the script by which other pages show a roof.

Plain files, packaged beside this module; none loads anything from elsewhere. What they show comes
from the public paths. The form alone is told one thing when it is served: how a plan can be had.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from functools import cache
from http import HTTPStatus
from importlib.resources import files
from types import MappingProxyType
from urllib.parse import urlencode

from fastapi import Request, Response

from roofing_api.docs_page import served
from roofing_api.plans import PLAN
from roofing_api.renderings import is_there
from roofing_api.straight import straight_router
from roofing_api.strict import read_query

router = straight_router("Web form", described=False)

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'"
)
_HEADERS = MappingProxyType(
    {"Content-Security-Policy": POLICY, "Referrer-Policy": "no-referrer"},
)
#: A script of ours does for a page what that page could do itself: ask the public paths. Whether
#: it gets an answer from them is what the operator settles with `--allow-origin`.
_ANYWHERE = MappingProxyType({**_HEADERS, "Access-Control-Allow-Origin": "*"})

#: The files beside the page, with their media types; those of the second table go anywhere.
OWN: Mapping[str, str] = MappingProxyType(
    {"form.css": "text/css", "form.js": "text/javascript", "icon.svg": "image/svg+xml"}
)
SHARED: Mapping[str, str] = MappingProxyType(
    dict.fromkeys(("embed.js", "asking.js", "showing.js", "measures.js"), "text/javascript")
)


@cache
def content_of(name: str) -> bytes:
    """Give the content of one of the files."""
    return files("roofing_api").joinpath("pages", name).read_bytes()


@cache
def offered() -> tuple[str, ...]:
    """Give the forms in which this service can answer with a plan, by their words."""
    return tuple(offer.word for offer in PLAN.offers if is_there(offer))


@cache
def page() -> bytes:
    """Give the form, which tells its script the forms of an answer that there are."""
    return content_of("form.html").replace(b"{offered}", " ".join(offered()).encode())


@router.get("/")
async def get_form(request: Request) -> Response:
    return served(request, page(), "text/html", _HEADERS)


def _server(
    name: str, media_type: str, headers: Mapping[str, str]
) -> Callable[[Request], Awaitable[Response]]:
    async def get_file(request: Request) -> Response:
        return served(request, content_of(name), media_type, headers)

    return get_file


for _name, _type in OWN.items():
    router.add_api_route(f"/{_name}", _server(_name, _type, _HEADERS))
for _name, _type in SHARED.items():
    router.add_api_route(f"/{_name}", _server(_name, _type, _ANYWHERE))


@router.get("/plan")
async def get_plan(request: Request) -> Response:
    """Answer the form of a browser without scripts, which sends its empty fields too."""
    given = read_query(request)
    filled = {name: text for name, text in given.items() if text.strip()}
    filled["format"] = "html" if "html" in offered() else "text"
    there = {"Location": f"v1/plans?{urlencode(filled)}", "Cache-Control": "no-store"}
    return Response(status_code=HTTPStatus.SEE_OTHER, headers=there)
