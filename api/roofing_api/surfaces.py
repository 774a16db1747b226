"""The planes of a roof, whatever its form: its shape alone, before anything is laid on it."""

from __future__ import annotations

from typing import Any

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.posting import Posted
from roofing_api.renderings import as_drawing, as_text
from roofing_api.straight import straight_router
from roofing_api.worked_forms import BODIES, FLAT, HIP
from roofing_core.roof.outlines import Surfaces
from roofing_core.roof.whole_roof import surfaces
from roofing_core.sheets.drawings.roof_plan import roof_plan
from roofing_core.sheets.surfaces import surfaces_text

router = straight_router("Shape of a roof")


def _draw(found: Surfaces, manner: Any) -> str:
    return roof_plan(found.planes, found.lines, system=manner.units).svg


SURFACES = Calculation(
    surfaces, lifted="roof", within=("roof",), example=HIP, more=FLAT, long=True,
    renderings=(as_text(surfaces_text), as_drawing(_draw)),
)  # fmt: skip
POSTED = Posted(SURFACES, BODIES)


@router.post("/v1/surfaces", **body_operation(POSTED))
async def post_surfaces(request: Request) -> Response:
    asked = await POSTED.read(request)
    # An outline of many corners takes as long as a hundred of the named forms.
    return await aside(_answer, asked)


@router.get("/v1/surfaces", **operation(SURFACES))
async def get_surfaces(request: Request) -> Response:
    asked = SURFACES.read(request)
    if asked.rendering.at_once:
        return _answer(asked)
    return await aside(_answer, asked)


def _answer(asked: Asked) -> Response:
    return asked.reply(surfaces(**asked.measures))
