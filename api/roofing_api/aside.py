"""Aside: work longer than a few milliseconds leaves the event loop to everybody else.

The library's searches stop after a stated number of steps and say so, so that the same request has
the same answer. What still takes too long for whoever waits is given up here.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVarTuple, Unpack

from anyio import fail_after, to_thread
from fastapi import Response

from roofing_api.problems import TOO_SLOW, Problem

Given = TypeVarTuple("Given")

#: Seconds that an answer may take. The largest plan takes a tenth of it.
LIMIT = 30.0


async def aside(answer: Callable[[Unpack[Given]], Response], *given: *Given) -> Response:
    """Answer in a thread, or tell that it took too long; the thread then ends by itself."""
    try:
        with fail_after(LIMIT):
            return await to_thread.run_sync(answer, *given, abandon_on_cancel=True)
    except TimeoutError:
        detail = f"no answer within {LIMIT:g} s; ask for a smaller roof or fewer of them"
        raise Problem(TOO_SLOW, detail, headers={"Retry-After": f"{LIMIT:g}"}) from None
