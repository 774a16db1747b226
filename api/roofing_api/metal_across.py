"""Metal across runs: runs and the stock lengths on offer as a JSON body, what to buy back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation
from roofing_api.posting import Posted
from roofing_api.renderings import as_text
from roofing_api.straight import straight_router
from roofing_core.layers.metal.shared import shared_metal
from roofing_core.sheets.shared_metal import shared_metal_text

router = straight_router("Single calculations")

#: A bicycle shed and a lean-to, whose edges take one profile; two legs of one long ridge.
BODIES: Mapping[str, Any] = {
    "least_metal": {
        "runs": [
            {"name": "eave of the shed", "run_length": "11 ft 4 in", "tab": "2 in"},
            {"name": "left rake of the shed", "run_length": "7 ft 3 1/2 in"},
            {"name": "right rake of the shed", "run_length": "7 ft 3 1/2 in"},
            {"name": "eave of the lean-to", "run_length": "17 ft", "tab": "2 in", "tabs": "end"},
        ],
        "offers": [{"length": "10 ft"}, {"length": "8 ft"}],
    },
    "least_cost": {
        "runs": [
            {"name": "eave", "run_length": "23 ft 5 in", "tab": "2 in"},
            {"name": "left rake", "run_length": "13 ft 1 in"},
            {"name": "right rake", "run_length": "13 ft 1 in"},
        ],
        "offers": [
            {"length": "8 ft", "price": "6.15"},
            {"length": "10 ft", "price": "7.40"},
            {"length": "12 ft", "price": "9.95"},
        ],
        "lap": "4 in",
    },
    "laps_apart": {
        "runs": [
            {"name": "front leg", "run_length": "19 ft 6 in"},
            {"name": "back leg", "run_length": "19 ft 6 in", "beside": "front leg"},
        ],
        "offers": [{"length": "3000 mm"}, {"length": "10 ft"}],
        "stagger": "12 in",
    },
}

SHARED = Calculation(shared_metal, renderings=(as_text(shared_metal_text),), example={}, long=True)
POSTED = Posted(SHARED, BODIES)


@router.post("/v1/metal", **body_operation(POSTED))
async def post_metal(request: Request) -> Response:
    # A search may take all the steps that it is given.
    return await aside(_answer, await POSTED.read(request))


def _answer(asked: Asked) -> Response:
    return asked.reply(shared_metal(**asked.measures))
