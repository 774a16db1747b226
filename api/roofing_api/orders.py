"""Priced orders: a job and a price list as a JSON body, the cheapest order of whole packs back."""

from __future__ import annotations

from fastapi import Request, Response

from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.operations import body_operation
from roofing_api.posting import Posted
from roofing_api.renderings import as_text
from roofing_api.straight import straight_router
from roofing_api.worked_prices import PRICED
from roofing_core.buying.priced import priced_order
from roofing_core.sheets.priced import priced_order_text

router = straight_router("Whole job")

ORDER = Calculation(priced_order, renderings=(as_text(priced_order_text),), example={}, long=True)
POSTED = Posted(ORDER, PRICED)


@router.post("/v1/orders", **body_operation(POSTED))
async def post_orders(request: Request) -> Response:
    # Every size of roll and metal on offer is planned anew.
    return await aside(_answer, await POSTED.read(request))


def _answer(asked: Asked) -> Response:
    return asked.reply(priced_order(**asked.measures))
