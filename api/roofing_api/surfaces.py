"""The planes of a roof, whatever its form: its shape alone, before anything is laid on it."""

from __future__ import annotations

from functools import partial

from anyio import to_thread
from fastapi import Request, Response

from roofing_api.calculation import Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.posting import Posted
from roofing_api.straight import straight_router
from roofing_api.worked_forms import BODIES, FLAT, HIP
from roofing_core.roof.whole_roof import surfaces
from roofing_core.sheets.surfaces import surfaces_text

router = straight_router("Shape of a roof")

SURFACES = Calculation(
    surfaces, lifted="roof", within=("roof",), writer=surfaces_text, example=HIP, more=FLAT
)
POSTED = Posted(SURFACES, BODIES)


@router.post("/v1/surfaces", **body_operation(POSTED))
async def post_surfaces(request: Request) -> Response:
    asked = await POSTED.read(request)
    # An outline of many corners takes as long as a hundred of the named forms.
    found = await to_thread.run_sync(partial(surfaces, **asked.measures))
    return asked.reply(found)


@router.get("/v1/surfaces", **operation(SURFACES))
async def get_surfaces(request: Request) -> Response:
    asked = SURFACES.read(request)
    return asked.reply(surfaces(**asked.measures))
