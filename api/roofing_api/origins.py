"""Origins: whose pages may ask this service from a browser. The operator says; by default nobody's.

The rules themselves are the framework's; what it leaves out is told to caches here.
"""

from __future__ import annotations

from argparse import ArgumentTypeError
from urllib.parse import urlsplit

from fastapi import FastAPI
from starlette.datastructures import MutableHeaders
from starlette.middleware.cors import CORSMiddleware
from starlette.types import ASGIApp, Message, Receive, Scope, Send

ANY = "*"
WANTED = "an origin such as https://example.org or http://127.0.0.1:8080, without a path, or *"


def origin(text: str) -> str:
    """Read an origin as a browser sends it: scheme, host, and a port that is not the scheme's.

    >>> origin("https://Example.org/")
    'https://example.org'
    """
    if text == ANY:
        return text
    try:
        parts = urlsplit(text)
        port = parts.port
    except ValueError:
        raise ArgumentTypeError(f"{text!r} is no origin: write {WANTED}") from None
    bare = parts.path in ("", "/") and not (parts.query or parts.fragment or parts.username)
    if parts.scheme not in _PORTS or not parts.hostname or not bare:
        raise ArgumentTypeError(f"{text!r} is no origin: write {WANTED}")
    host = f"[{parts.hostname}]" if ":" in parts.hostname else parts.hostname
    shown = f":{port}" if port not in (None, _PORTS[parts.scheme]) else ""
    return f"{parts.scheme}://{host}{shown}"


_PORTS = {"http": 80, "https": 443}


def allow_origins(app: FastAPI, origins: tuple[str, ...]) -> None:
    """Let pages of these origins ask; without any the application stays as it is."""
    if not origins:
        return
    app.add_middleware(
        CORSMiddleware,
        allow_origins=origins,
        allow_methods=("GET", "HEAD", "POST"),
        allow_headers=("Content-Type", "If-None-Match"),
        expose_headers=("ETag", "Retry-After"),
    )
    app.add_middleware(VaryByOrigin)


class VaryByOrigin:
    """Plain ASGI: tell caches that an answer holds for the origin that asked.

    The framework says so only where an origin came along. A cache that kept an answer from before
    would give it, without its permission, to a page that has one.
    """

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        async def send_varied(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).add_vary_header("Origin")
            await send(message)

        await self.app(scope, receive, send_varied if scope["type"] == "http" else send)
