"""Sizes: how near an order is to changing, and which sizes of a roof waste less."""

from __future__ import annotations

from functools import lru_cache

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation, operation
from roofing_api.posting import Posted
from roofing_api.renderings import as_text
from roofing_api.straight import straight_router
from roofing_api.worked_forms import GABLE, SINGLE_SLOPE
from roofing_api.worked_prices import PRICED
from roofing_core.sheets.sizing import cost_fit_text, fit_text, margins_text
from roofing_core.sizing.cost import fit_by_cost
from roofing_core.sizing.fit import FitJob, fit
from roofing_core.sizing.margins import MarginsJob, margins

router = straight_router("Sizes")

MARGINS = Calculation(
    margins, takes=MarginsJob, lifted="roof", renderings=(as_text(margins_text),), long=True,
    example=SINGLE_SLOPE,
)  # fmt: skip
POSTED_MARGINS = Posted(
    MARGINS,
    {
        "single_slope": {"roof": SINGLE_SLOPE},
        "gable": {"roof": GABLE, "reading": {"most_plans": 6}},
    },
)

_ABOUT = {
    "ranges.eave_length.least": "13 ft",
    "ranges.eave_length.most": "15 ft",
    "ranges.slope_length.least": "9 ft",
    "ranges.slope_length.most": "10 ft",
    "ranges.step": "1 in",
}
SIZES = Calculation(
    fit, takes=FitJob, lifted="roof", renderings=(as_text(fit_text),), long=True,
    example=SINGLE_SLOPE | _ABOUT,
)  # fmt: skip
POSTED_SIZES = Posted(
    SIZES,
    {
        "single_slope": {
            "roof": SINGLE_SLOPE,
            "ranges": {
                "eave_length": {"least": "13 ft", "most": "15 ft"},
                "slope_length": {"least": "9 ft", "most": "10 ft"},
                "step": "1 in",
            },
        },
        "by_weight": {
            "roof": SINGLE_SLOPE,
            "ranges": {"eave_length": {"least": "13 ft", "most": "15 ft"}},
            "by": "materials",
        },
        "gable": {
            "roof": GABLE,
            "ranges": {"length": {"least": "23 ft 10 in", "most": "24 ft 2 in"}},
        },
    },
)

_PRICED = {
    "job": {
        "roof": SINGLE_SLOPE,
        "ranges": {"eave_length": {"least": "13 ft", "most": "15 ft"}, "step": "1 in"},
    },
    "prices": PRICED["shed_in_dollars"]["prices"],
}
COST = Calculation(fit_by_cost, renderings=(as_text(cost_fit_text),), example={}, long=True)
POSTED_COST = Posted(COST, {"single_slope": _PRICED})

#: The cells of a spreadsheet ask one job for one value each: it is looked at once for all of them.
looked_around = lru_cache(maxsize=16)(margins)
fitted = lru_cache(maxsize=16)(fit)


@router.post("/v1/margins", **body_operation(POSTED_MARGINS))
async def post_margins(request: Request) -> Response:
    return await aside(_margins, await POSTED_MARGINS.read(request))


@router.get("/v1/margins", **operation(MARGINS))
async def get_margins(request: Request) -> Response:
    return await aside(_margins, MARGINS.read(request))


def _margins(asked: Asked) -> Response:
    return asked.reply(looked_around(MarginsJob(**asked.measures)))


@router.post("/v1/sizes", **body_operation(POSTED_SIZES))
async def post_sizes(request: Request) -> Response:
    return await aside(_sizes, await POSTED_SIZES.read(request))


@router.get("/v1/sizes", **operation(SIZES))
async def get_sizes(request: Request) -> Response:
    return await aside(_sizes, SIZES.read(request))


@router.post("/v1/priced_sizes", **body_operation(POSTED_COST))
async def post_priced_sizes(request: Request) -> Response:
    return await aside(_costs, await POSTED_COST.read(request))


def _costs(asked: Asked) -> Response:
    return asked.reply(fit_by_cost(**asked.measures))


def _sizes(asked: Asked) -> Response:
    return asked.reply(fitted(FitJob(**asked.measures)))
