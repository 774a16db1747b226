"""Audits: a finished plan, from us or edited, as a JSON body; the query says by which limits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fastapi import Request, Response
from orjson import dumps, loads

from roofing_api import plans
from roofing_api.answering import rendered
from roofing_api.aside import aside
from roofing_api.calculation import Asked, Calculation
from roofing_api.finished_plans import FinishedForm
from roofing_api.operations import body_operation, named
from roofing_api.posting import Bodied
from roofing_api.renderings import as_text
from roofing_api.straight import straight_router
from roofing_api.strict import json_body, parsed
from roofing_core.auditing.audit import audit
from roofing_core.auditing.questions import AuditLimits
from roofing_core.sheets.audit import audit_text

router = straight_router("Audit")

AUDIT = Calculation(audit, takes=AuditLimits, renderings=(as_text(audit_text),), example={})
FORM = FinishedForm()

#: Each body among the examples of plans is planned, and what is answered is the body of an audit.
_EXAMPLES = {
    name: {"$ref": f"#/components/examples/{named(plans.PLAN, name)}"}
    for name in plans.POSTED.examples
}
POSTED = Bodied(AUDIT, manner=AUDIT.form, body=FORM, examples=_EXAMPLES)

#: A plan takes about 300 bytes a piece: 50,000 pieces.
LARGEST_PLAN = 16_000_000


@router.post("/v1/audits", **body_operation(POSTED))
async def post_audits(request: Request) -> Response:
    asked = AUDIT.read(request)
    limits = AuditLimits(**asked.measures)
    body = await json_body(request, largest=LARGEST_PLAN)
    return await aside(_answer, asked, limits, body)


def _answer(asked: Asked, limits: AuditLimits, body: bytes) -> Response:
    asked.form, asked.tree = FORM, parsed(body)
    return asked.reply(audit(FORM.plan(asked.tree), limits=limits))


def worked_audits(examples: Mapping[str, Any]) -> dict[str, Any]:
    """Work out the audits of the plans among the document's examples, by the audits' names."""
    return {
        named(AUDIT, name): {"summary": name, "value": _worked(examples[named(plans.PLAN, name)])}
        for name in _EXAMPLES
    }


def _worked(example: Mapping[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = loads(
        dumps(rendered(audit(FORM.plan(parsed(dumps(example["value"])))), "us"))
    )
    return found
