"""The OpenAPI document: the framework's, with what operations share said once."""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from roofing_api import audits, metal_across, orders, plans, sizing, surfaces, trims, workings
from roofing_api.inputs import schema_of
from roofing_api.operations import COMPONENTS, named, worked, worked_bodies
from roofing_api.problems import KINDS, MEDIA_TYPE
from roofing_api.routes import CALCULATIONS

#: What can be asked for with a JSON body.
POSTED = (
    surfaces.POSTED,
    metal_across.POSTED,
    plans.POSTED,
    orders.POSTED,
    trims.POSTED,
    sizing.POSTED_MARGINS,
    sizing.POSTED_SIZES,
    sizing.POSTED_COST,
    workings.POSTED,
)

#: What is asked of a whole roof, or of a whole job, also by a query.
WHOLE = (
    surfaces.SURFACES,
    plans.PLAN,
    trims.TRIMS,
    sizing.MARGINS,
    sizing.SIZES,
    workings.WORKING,
)

_ERROR = {
    "type": "object",
    "description": "One thing wrong: where, what came, and what would be right.",
    "properties": {
        "pointer": {"type": "string", "description": "Its place in the body, as a URI fragment."},
        "parameter": {"type": "string", "description": "The name of the query parameter."},
        "came": {"type": "string", "description": "What came, shortened and escaped."},
        "wanted": {"type": "string", "description": "What would be right."},
        "detail": {"type": "string", "description": "All of it as one sentence."},
    },
    "required": ["came", "wanted", "detail"],
    "additionalProperties": False,
}
_PROBLEM = {
    "type": "object",
    "description": "An answer that is not a success (RFC 9457).",
    "properties": {
        "type": {"type": "string", "format": "uri-reference", "description": "What it means."},
        "title": {"type": "string", "description": "The kind of problem."},
        "status": {"type": "integer", "description": "The HTTP status."},
        "detail": {"type": "string", "description": "What is wrong with this request."},
        "errors": {
            "type": "array",
            "description": "One entry per bad field or parameter, as far as any can be named.",
            "items": {"$ref": "#/components/schemas/ProblemError"},
        },
    },
    "required": ["type", "title", "status", "detail", "errors"],
    "additionalProperties": False,
}


def document(app: FastAPI) -> dict[str, Any]:
    """Make the document: the framework's, with what all operations share added to it."""
    made = get_openapi(
        title=app.title,
        version=app.version,
        description=app.description,
        license_info=app.license_info,
        routes=app.routes,
    )
    components = made["components"]
    for posted in (*POSTED, audits.POSTED):
        body = schema_of(posted.body.model)
        components["schemas"] |= body.pop("$defs") | {posted.body.model.__name__: body}
    components["schemas"] |= {"Problem": _PROBLEM, "ProblemError": _ERROR}
    components["schemas"] = dict(sorted(components["schemas"].items()))
    components["parameters"] = _shared_parameters(made["paths"])
    components["examples"] = {
        named(calculation): {"summary": "Worked out", "value": worked(calculation)}
        for calculation in (*CALCULATIONS, *WHOLE)
    }
    for posted in POSTED:
        components["examples"] |= worked_bodies(posted)
    components["examples"] |= audits.worked_audits(components["examples"])
    problem = {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}}
    components["responses"] = {
        COMPONENTS[kind]: {"description": kind.meaning, "content": problem} for kind in KINDS
    }
    return made


def _shared_parameters(paths: dict[str, dict[str, dict[str, Any]]]) -> dict[str, Any]:
    """Take out of the operations what several of them say of a parameter, and refer to it there.

    What most of them say of a name goes under that name; what only some say stays where it is.
    """
    operations = [told for path in paths.values() for told in path.values() if "parameters" in told]
    said: dict[str, Counter[str]] = {}
    for told in operations:
        for one in told["parameters"]:
            said.setdefault(one["name"], Counter())[json.dumps(one)] += 1
    most = {name: counted.most_common(1)[0] for name, counted in sorted(said.items())}
    shared = {name: json.loads(text) for name, (text, times) in most.items() if times > 1}
    for told in operations:
        told["parameters"] = [
            {"$ref": f"#/components/parameters/{one['name']}"}
            if shared.get(one["name"]) == one
            else one
            for one in told["parameters"]
        ]
    return shared


def written(app: FastAPI) -> str:
    """Give the document as it is committed."""
    return json.dumps(document(app), indent=2, ensure_ascii=False) + "\n"
