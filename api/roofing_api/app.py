"""The application: `roofing_api.app:app`."""

from __future__ import annotations

from fastapi import FastAPI
from starlette.exceptions import HTTPException

from roofing_api import (
    audits,
    docs_page,
    drawings,
    metal_across,
    orders,
    plans,
    routes,
    service,
    sizing,
    surfaces,
    trims,
    web_pages,
    workings,
)
from roofing_api.head import HeadAsGet
from roofing_api.origins import allow_origins
from roofing_api.problems import (
    KIND_OF,
    Problem,
    on_http_exception,
    on_our_fault,
    on_problem,
    on_refused,
)
from roofing_core.version import VERSION

TITLE = "Roofing calculations"
ABOUT = (
    "Measurements come as text with their unit, as people write them: `14 ft`, `9'-4\"`, "
    "`39 3/8 in`, `4.27 m`, `4:12`. Answers are under one unit system, stated at their top; "
    "`units=metric` asks for the other. The numbers are not rounded."
)


def make_app(allowed_origins: tuple[str, ...] = ()) -> FastAPI:
    """Make the application, with its routes in the order in which they are tried.

    Pages of the allowed origins may ask it from a browser: `origins` says what one is.
    """
    made = FastAPI(
        title=TITLE,
        description=ABOUT,
        version=VERSION,
        license_info={"name": "MIT", "identifier": "MIT"},
        openapi_url=None,
        docs_url=None,
        redoc_url=None,
        redirect_slashes=False,
    )
    parts = (routes, metal_across, surfaces, drawings, plans, orders, trims, sizing)
    for part in (*parts, workings, audits, service, docs_page, web_pages):
        # The framework's include_router would cost every request a quarter of what it costs now.
        made.router.routes.extend(part.router.routes)
    for refused in KIND_OF:
        made.add_exception_handler(refused, on_refused)
    made.add_exception_handler(Problem, on_problem)
    made.add_exception_handler(HTTPException, on_http_exception)
    made.add_exception_handler(Exception, on_our_fault)
    made.add_middleware(HeadAsGet)
    allow_origins(made, allowed_origins)
    return made


app = make_app()
