"""The whole job: a plan, from a JSON body or from a query."""

from __future__ import annotations

from functools import lru_cache

from anyio import to_thread
from fastapi import Request, Response
from pydantic import create_model

from roofing_api.calculation import Asked, Calculation, settled
from roofing_api.forms import Form, QueryForm
from roofing_api.inputs import Inputs, inputs_of, measures
from roofing_api.manner import Bearing, Formatted, Manner
from roofing_api.operations import body_operation, operation
from roofing_api.straight import straight_router
from roofing_api.strict import read_json, read_query
from roofing_core.job.choices import Job
from roofing_core.job.layout import pieces_needed
from roofing_core.job.plan import plan
from roofing_core.sheets.text import plan_text

router = straight_router("Whole job")

PLAN = Calculation(
    plan,
    takes=Job,
    lifted="roof",
    writer=plan_text,
    example={"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"},
)
EXAMPLE_BODY = {
    "roof": {
        "form": "single_slope",
        "eave_length": "14 ft",
        "slope_length": "9 ft 4 in",
        "pitch": "3:12",
    }
}

MANNER = QueryForm(Inputs, Manner, Formatted)
BODY = Form(create_model("JobInput", __base__=(Bearing, inputs_of(Job, body=True))))


async def read_body(request: Request) -> Asked:
    """Read how to answer from the query, then the job from the body."""
    given = read_query(request)
    asked = settled(Asked(request, MANNER, given, PLAN.writer), given)
    asked.form, asked.tree = BODY, await read_json(request)
    asked.measures = measures(asked.taken())
    return asked


#: The cells of a spreadsheet ask one plan for one value each: it is made once for all of them.
remembered = lru_cache(maxsize=16)(plan)


#: Up to this many pieces a plan and its answer take a few milliseconds, less than a thread is
#: worth; larger ones leave the event loop to everybody else.
AT_ONCE = 2_000


async def planned(asked: Asked) -> Response:
    """Plan a job: here and now, or a large one in a thread."""
    job = Job(**asked.measures)
    if pieces_needed(job) <= AT_ONCE:
        return _answer(asked, job)
    return await to_thread.run_sync(_answer, asked, job)


def _answer(asked: Asked, job: Job) -> Response:
    return asked.reply(remembered(job))


@router.post("/v1/plans", **body_operation(PLAN, MANNER, BODY, EXAMPLE_BODY))
async def post_plans(request: Request) -> Response:
    return await planned(await read_body(request))


@router.get("/v1/plans", **operation(PLAN))
async def get_plans(request: Request) -> Response:
    return await planned(PLAN.read(request))
