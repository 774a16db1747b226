"""The whole job: a plan, from a JSON body or from a query."""

from __future__ import annotations

from functools import lru_cache

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.plan_renderings import RENDERINGS
from roofing_api.posting import Posted
from roofing_api.straight import straight_router
from roofing_api.worked_forms import SINGLE_SLOPE, WITH_A_CHIMNEY
from roofing_core.job.choices import Job
from roofing_core.job.layout import pieces_needed
from roofing_core.job.plan import plan
from roofing_core.roof.planes import SingleSlope

router = straight_router("Whole job")


PLAN = Calculation(
    plan, takes=Job, lifted="roof", renderings=RENDERINGS, example=SINGLE_SLOPE, long=True
)
POSTED = Posted(
    PLAN, {"single_slope": {"roof": SINGLE_SLOPE}, "gable_with_chimney": WITH_A_CHIMNEY}
)


#: The cells of a spreadsheet ask one plan for one value each: it is made once for all of them.
remembered = lru_cache(maxsize=16)(plan)


#: Up to this many pieces a plan of a single slope and its answer take a few milliseconds, less than
#: a thread is worth; larger ones, other forms and the search for offcuts leave the event loop to
#: everybody else.
AT_ONCE = 2_000


async def planned(asked: Asked) -> Response:
    """Plan a job: here and now, or in a thread if that takes longer or is drawn."""
    job = Job(**asked.measures)
    short = isinstance(job.roof, SingleSlope) and job.cutting.reuse == "none"
    if short and pieces_needed(job) <= AT_ONCE and asked.rendering.at_once:
        return _answer(asked, job)
    return await aside(_answer, asked, job)


def _answer(asked: Asked, job: Job) -> Response:
    return asked.reply(remembered(job))


@router.post("/v1/plans", **body_operation(POSTED))
async def post_plans(request: Request) -> Response:
    return await planned(await POSTED.read(request))


@router.get("/v1/plans", **operation(PLAN))
async def get_plans(request: Request) -> Response:
    return await planned(PLAN.read(request))
