"""The service itself: whether it is up, and what its problems mean."""

from __future__ import annotations

from html import escape

from fastapi import Request, Response
from pydantic import Field
from pydantic_core import to_json

from roofing_api.describing import Answer
from roofing_api.negotiating import JSON
from roofing_api.operations import ALWAYS, problem_responses
from roofing_api.problems import KINDS
from roofing_api.straight import straight_router
from roofing_core.version import VERSION

router = straight_router("Service")


class Health(Answer):
    """The service is up."""

    status: str = Field(description="`ok`, whenever there is an answer at all.")
    version: str = Field(description="Version of the service and of the library.")


HEALTHY = {"status": "ok", "version": VERSION}

_ROWS = "\n".join(
    f'<dt id="{kind.slug}">{kind.status.value} {escape(kind.title)}</dt>'
    f"<dd>{escape(kind.meaning)}</dd>"
    for kind in KINDS
)
PROBLEMS_PAGE = f"""<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Problems</title></head>
<body>
<h1>Problems</h1>
<p>Every answer that is not a success is <code>application/problem+json</code> (RFC 9457); its
<code>type</code> points here.</p>
<dl>
{_ROWS}
</dl>
</body>
</html>
"""


@router.get(
    "/healthz",
    summary="Say whether the service is up.",
    description="Answers as soon as the service takes requests. **Source.** The service itself.",
    response_model=Health,
    openapi_extra={
        "responses": {
            "200": {"content": {JSON: {"example": HEALTHY}}},
            **problem_responses(ALWAYS),
        }
    },
)
async def get_healthz(_: Request) -> Response:
    return Response(to_json(HEALTHY), headers={"Cache-Control": "no-store"}, media_type=JSON)


@router.get("/problems", include_in_schema=False)
async def get_problems(_: Request) -> Response:
    policy = {"Content-Security-Policy": "default-src 'none'"}
    return Response(PROBLEMS_PAGE, headers=policy, media_type="text/html")
