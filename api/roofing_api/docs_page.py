"""The documentation page, which needs no network but this service.

Its script and style come from the files inside an installed package, and the page may load
nothing from anywhere else.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from http import HTTPStatus
from importlib.resources import files

from fastapi import FastAPI, Request, Response

from roofing_api.document import written
from roofing_api.negotiating import JSON, has_it
from roofing_api.problems import NOT_FOUND, Problem, shown
from roofing_api.straight import straight_router

router = straight_router("Documentation", described=False)

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; "
    "img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'self'"
)
_HEADERS: Mapping[str, str] = {"Content-Security-Policy": POLICY}
PAGE = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Roofing calculations: documentation</title>
<link rel="stylesheet" href="/docs/swagger-ui.css">
<link rel="icon" href="/docs/favicon.png">
</head>
<body>
<main id="documentation"></main>
<script src="/docs/swagger-ui-bundle.js"></script>
<script src="/docs/start.js"></script>
</body>
</html>
"""
START = """SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#documentation",
  deepLinking: true,
  docExpansion: "list",
  defaultModelsExpandDepth: 0,
  tryItOutEnabled: true,
  validatorUrl: null,
});
"""

#: The files that the page loads, with their media types; all but the last are the package's.
FILES = {
    "swagger-ui-bundle.js": "text/javascript",
    "swagger-ui.css": "text/css",
    "favicon.png": "image/png",
    "start.js": "text/javascript",
}


@cache
def content_of(name: str) -> bytes:
    """Give the content of one of the files."""
    if name == "start.js":
        return START.encode()
    if name not in FILES:
        raise Problem(NOT_FOUND, f"there is no {shown(name)} among the files of the documentation")
    return files("fastapi_offline").joinpath("static", name).read_bytes()


@cache
def document_of(app: FastAPI) -> bytes:
    """Give the OpenAPI document of the application."""
    return written(app).encode()


def served(
    request: Request, content: bytes, media_type: str, headers: Mapping[str, str] = _HEADERS
) -> Response:
    """Serve fixed content; a browser asks each time whether it is still the same."""
    tag = f'"{sha256(content).hexdigest()[:24]}"'
    kept = {
        "ETag": tag,
        "Cache-Control": "no-cache",
        "X-Content-Type-Options": "nosniff",
        **headers,
    }
    if has_it(request.headers.get("if-none-match"), tag):
        return Response(status_code=HTTPStatus.NOT_MODIFIED, headers=kept)
    return Response(content, headers=kept, media_type=media_type)


@router.get("/docs")
async def get_docs(request: Request) -> Response:
    return served(request, PAGE.encode(), "text/html")


@router.get("/docs/{name}")
async def get_docs_file(request: Request) -> Response:
    name = request.path_params["name"]
    return served(request, content_of(name), FILES[name])


@router.get("/openapi.json")
async def get_document(request: Request) -> Response:
    return served(request, document_of(request.app), JSON)
