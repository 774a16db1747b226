"""Workings: how a figure of a plan came about, from a body or a query."""

from __future__ import annotations

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.posting import Posted
from roofing_api.renderings import as_text
from roofing_api.straight import straight_router
from roofing_api.worked_forms import SINGLE_SLOPE, WITH_A_CHIMNEY
from roofing_core.sheets.working import working_text
from roofing_core.workings.asking import FigureAsked, figure_worked

router = straight_router("Whole job")

WORKING = Calculation(
    figure_worked,
    takes=FigureAsked,
    lifted="roof",
    long=True,
    renderings=(as_text(working_text),),
    example={**SINGLE_SLOPE, "figure": "/courses/19/butt"},
)
POSTED = Posted(
    WORKING,
    {
        "single_slope": {"roof": SINGLE_SLOPE, "figure": "/courses/19/butt"},
        "shingles_to_buy": {"roof": SINGLE_SLOPE, "figure": "/order/shingles/packs"},
        "gable_with_chimney": {**WITH_A_CHIMNEY, "figure": "/openings/1/crickets/0/metal_area"},
    },
)


@router.post("/v1/working", **body_operation(POSTED))
async def post_working(request: Request) -> Response:
    return await aside(_answer, await POSTED.read(request))


@router.get("/v1/working", **operation(WORKING))
async def get_working(request: Request) -> Response:
    return await aside(_answer, WORKING.read(request))


def _answer(asked: Asked) -> Response:
    return asked.reply(figure_worked(FigureAsked(**asked.measures)))
