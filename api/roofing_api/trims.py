"""Trims: the sequences that lay a job's roof from fewest shingles, from a body or a query."""

from __future__ import annotations

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.posting import Posted
from roofing_api.straight import straight_router
from roofing_api.worked_forms import GABLE, SINGLE_SLOPE
from roofing_core.job.choices import Job
from roofing_core.job.trims import best_trims

router = straight_router("Fewest shingles")

TRIMS = Calculation(best_trims, takes=Job, lifted="roof", long=True, example=SINGLE_SLOPE)
POSTED = Posted(TRIMS, {"single_slope": {"roof": SINGLE_SLOPE}, "gable": {"roof": GABLE}})


@router.post("/v1/trims", **body_operation(POSTED))
async def post_trims(request: Request) -> Response:
    return await aside(_answer, await POSTED.read(request))


@router.get("/v1/trims", **operation(TRIMS))
async def get_trims(request: Request) -> Response:
    return await aside(_answer, TRIMS.read(request))


def _answer(asked: Asked) -> Response:
    return asked.reply(best_trims(Job(**asked.measures)))
