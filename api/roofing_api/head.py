"""HEAD: answered wherever GET is, with the same headers. Spreadsheets ask it first."""

from __future__ import annotations

from starlette.types import ASGIApp, Message, Receive, Scope, Send


class HeadAsGet:
    """Plain ASGI: send a HEAD through the GET route and leave the body out."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or scope["method"] != "HEAD":
            await self.app(scope, receive, send)
            return

        async def send_head(message: Message) -> None:
            is_body = message["type"] == "http.response.body"
            await send({**message, "body": b""} if is_body else message)

        await self.app({**scope, "method": "GET"}, receive, send_head)
