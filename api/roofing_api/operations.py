"""Operations: what the OpenAPI document says of each calculation, told by the library itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from http import HTTPStatus
from typing import Any

from orjson import dumps, loads

from roofing_api import problems
from roofing_api.answering import rendered
from roofing_api.calculation import Calculation
from roofing_api.describing import answer_of
from roofing_api.docstrings import docs
from roofing_api.inputs import measures
from roofing_api.negotiating import JSON
from roofing_api.posting import Bodied
from roofing_api.queries import Leaf
from roofing_api.renderings import ONE_VALUE, Rendering
from roofing_api.strict import parsed

#: What every operation can answer instead of a success.
ALWAYS = (problems.METHOD_NOT_ALLOWED, problems.OUR_FAULT)
ON_GET = (
    *ALWAYS,
    problems.UNREADABLE,
    problems.NOT_FOUND,
    problems.NOT_ACCEPTABLE,
    problems.TOO_LONG,
    problems.REFUSED,
)
#: What takes its time can take too long.
ON_LONG = (*ON_GET, problems.TOO_SLOW)
ON_POST = (*ON_LONG, problems.TOO_LARGE, problems.WRONG_MEDIA_TYPE)

#: The name of a problem's description among the document's components.
COMPONENTS = {kind: kind.title.title().replace(" ", "") for kind in problems.KINDS}


def operation(calculation: Calculation) -> dict[str, Any]:
    """Describe a GET: its parameters with their examples, and every answer."""
    leaves = calculation.form.leaves.items()
    extra = {
        "parameters": [parameter(name, leaf, calculation.example) for name, leaf in leaves],
        "responses": _responses(calculation, ON_LONG if calculation.long else ON_GET),
    }
    return {**_told(calculation, *_queries(calculation)), "openapi_extra": extra}


def body_operation(posted: Bodied) -> dict[str, Any]:
    """Describe a POST: the parameters that say how to answer, the body, and every answer."""
    schema = {"$ref": f"#/components/schemas/{posted.body.model.__name__}"}
    extra = {
        "parameters": [parameter(name, leaf, {}) for name, leaf in posted.manner.leaves.items()],
        "requestBody": {
            "required": True,
            "content": {JSON: {"schema": schema, "examples": dict(posted.examples)}},
        },
        "responses": _responses(posted.calculation, ON_POST, tuple(posted.examples)),
    }
    return {**_told(posted.calculation), "openapi_extra": extra}


def _queries(calculation: Calculation) -> Iterator[str]:
    """Show the further examples as queries: an example of one parameter goes with one form only."""
    if calculation.more:
        pairs = ([f"{name}={text}" for name, text in one.items()] for one in calculation.more)
        queries = ("&".join(one).replace(" ", "") for one in pairs)
        yield "\n".join(("**For example:**\n", *(f"- `{query}`" for query in queries)))


def _told(calculation: Calculation, *more: str) -> dict[str, Any]:
    """Tell what is calculated, how, and where the formula comes from."""
    told = docs(calculation.function)
    source = f"**Source.** {told.sections['Source']}"
    return {
        "summary": told.summary,
        "description": "\n\n".join(
            filter(None, (told.body, told.sections["Returns"], *more, source))
        ),
        "response_model": answer_of(calculation.result),
        "response_description": "The answer, under one unit system.",
    }


def parameter(name: str, leaf: Leaf, example: Mapping[str, str]) -> dict[str, Any]:
    """Describe one query parameter, with its example if there is one."""
    schema = dict(leaf.schema)
    about = {"name": name, "in": "query", "required": leaf.required}
    if schema["type"] == "array":
        about |= {"style": "form", "explode": False}
    about |= {"description": schema.pop("description", ""), "schema": schema}
    return about | ({"example": _shaped(example[name], leaf)} if name in example else {})


def _shaped(example: str, leaf: Leaf) -> Any:
    """Give an example as the value that its schema means, not as its text in a query."""
    kind = leaf.schema["type"]
    if kind == "array":
        return example.split(",")
    return int(example) if kind == "integer" else example


def _responses(
    calculation: Calculation, kinds: tuple[problems.Kind, ...], forms: tuple[str, ...] = ()
) -> dict[str, Any]:
    names = {form: named(calculation, form) for form in forms} or {"worked": named(calculation)}
    examples = {form: {"$ref": f"#/components/examples/{name}"} for form, name in names.items()}
    content = {**_forms(calculation), JSON: {"examples": examples}}
    success = str(HTTPStatus.OK.value)
    return {success: {"content": content}, **problem_responses(kinds)}


def _forms(calculation: Calculation) -> dict[str, Any]:
    """Describe each form of an answer, by its media type; one value comes as text everywhere."""
    offers: dict[str, list[Rendering]] = {offer.media_type: [] for offer in calculation.offers}
    for offer in (ONE_VALUE, *calculation.offers):
        offers.setdefault(offer.media_type, []).append(offer)
    return {media_type: {"schema": _schema(forms)} for media_type, forms in offers.items()}


def _schema(forms: list[Rendering]) -> dict[str, Any]:
    told = ", or ".join(form.says for form in forms)
    kind = {} if forms[0].is_binary else {"type": "string"}
    return {**kind, "description": f"{told[0].upper()}{told[1:]}."}


def problem_responses(kinds: tuple[problems.Kind, ...]) -> dict[str, Any]:
    """Refer to the description of each kind of problem, by status."""
    return {
        str(kind.status.value): {"$ref": f"#/components/responses/{COMPONENTS[kind]}"}
        for kind in sorted(kinds, key=lambda kind: kind.status)
    }


def named(calculation: Calculation, form: str = "") -> str:
    """Give the name of a worked answer among the document's components: of one form of roof."""
    words = (form or calculation.example.get("form", "")).split("_")
    return "".join((calculation.result.__name__, *(word.title() for word in words), "Example"))


def worked(calculation: Calculation) -> dict[str, Any]:
    """Work the example out, as the service would answer it."""
    form = calculation.form
    return _answered(calculation, form.taken(form.tree(calculation.example)))


def worked_bodies(posted: Bodied) -> dict[str, Any]:
    """Work out the examples of a body, each described by its form, by the names of the answers."""
    return {
        named(posted.calculation, form): {
            "summary": form,
            "value": _answered(posted.calculation, posted.body.taken(parsed(dumps(body["value"])))),
        }
        for form, body in posted.examples.items()
    }


def _answered(calculation: Calculation, taken: Any) -> dict[str, Any]:
    result = calculation.called(measures(taken))
    answer: dict[str, Any] = loads(dumps(rendered(result, "us")))
    return answer
