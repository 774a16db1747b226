"""The OpenAPI document: made from the routes, and kept under `openapi/` byte for byte.

python -m roofing_api.openapi [--check]
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from roofing_api import audits, metal_across, orders, plans, sizing, surfaces, trims, workings
from roofing_api.inputs import schema_of
from roofing_api.manner import NAMES
from roofing_api.operations import COMPONENTS, described, named, worked, worked_bodies
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

#: Beside the package, in the repository.
COMMITTED = Path(__file__).parents[2].joinpath("openapi", "openapi.json")

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
    components["parameters"] = {
        name: described(name, leaf)
        for name, leaf in plans.PLAN.form.leaves.items()
        if name in NAMES
    }
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


def written(app: FastAPI) -> str:
    """Give the document as it is committed."""
    return json.dumps(document(app), indent=2, ensure_ascii=False) + "\n"


def main(arguments: list[str]) -> int:
    """Write the document, or with --check say whether the committed one is up to date."""
    if arguments not in ([], ["--check"]):
        return _told(__doc__ or "")
    if not COMMITTED.parents[1].joinpath("pyproject.toml").exists():
        return _told("This package is not in its repository, where the document is kept.")
    from roofing_api.app import app  # noqa: PLC0415 - the application serves this document

    text = written(app)
    if arguments == ["--check"]:
        if COMMITTED.exists() and COMMITTED.read_text(encoding="utf-8") == text:
            return 0
        print(f"{COMMITTED} is out of date: python -m roofing_api.openapi", file=sys.stderr)
        return 1
    COMMITTED.parent.mkdir(exist_ok=True)
    COMMITTED.write_text(text, encoding="utf-8", newline="\n")
    return 0


def _told(why: str) -> int:
    print(why, file=sys.stderr)
    return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
