"""Planes from a drawing: GeoJSON or CityJSON comes in, and a roof goes out as a plan takes it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Literal

from fastapi import Request, Response
from orjson import dumps
from pydantic import BaseModel, Field

from roofing_api.aside import aside
from roofing_api.describing import Answer
from roofing_api.docstrings import attributes, docs
from roofing_api.forms import Form, Path
from roofing_api.inputs import inputs_of, measures
from roofing_api.manner import InUnits
from roofing_api.negotiating import JSON, preferred
from roofing_api.operations import ON_POST, parameter, problem_responses
from roofing_api.problems import NOT_ACCEPTABLE, Problem, shown, tell
from roofing_api.queries import QueryForm
from roofing_api.straight import straight_router
from roofing_api.strict import numbered, read_json, read_query
from roofing_api.worked_drawings import DRAWINGS
from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read
from roofing_core.measures.sentences import write
from roofing_core.measures.units import SHOWN, System, convert
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes
from roofing_core.roof.outlines import EdgeKind
from roofing_core.roof.reading_drawings import Picked, planes_from_drawing

router = straight_router("Shape of a roof")

#: The registered media types of both formats; either may come as plain JSON too.
GEOJSON, CITYJSON = "application/geo+json", "application/city+json"

QUERY = QueryForm(inputs_of(Picked, body=False), InUnits)

#: A body of any members: their places are told as they stand.
DOCUMENT = Form(BaseModel)

_PLANE, _ROOF = attributes(GivenPlane), attributes(GivenPlanes)


class WrittenPlane(Answer):
    """One plane of the drawing, in its own coordinates."""

    name: str = Field(description=_PLANE["name"])
    corners: list[tuple[str, str]] = Field(description=_PLANE["corners"])
    edges: list[EdgeKind] = Field(description=_PLANE["edges"])
    pitch: str = Field(description=_PLANE["pitch"])
    beyond: list[str] = Field(description=_PLANE["beyond"])


class WrittenPlanes(Answer):
    """A roof plane by plane, as a body of this service spells it."""

    form: Literal["planes"] = Field(description=_ROOF["form"])
    planes: list[WrittenPlane] = Field(description=_ROOF["planes"])
    eave_overhang: str = Field(description=_ROOF["eave_overhang"])


class DrawnRoof(Answer):
    """A body for `/v1/plans` and `/v1/surfaces`."""

    roof: WrittenPlanes = Field(description="The roof, its measurements as text with their units.")


@dataclass(slots=True)
class Drawn:
    """One request: the drawing that came, and what to take of it."""

    given: dict[str, str]
    units: System = "us"
    picked: Picked = field(default_factory=Picked)
    tree: Any = ...

    def errors(self, refusal: Refused) -> list[dict[str, str]]:
        """Tell every fault of a refusal: its place in this request, what came, what is wanted."""
        return [tell(fault, *self._place(fault.at), self.units) for fault in refusal.faults]

    def _place(self, at: Path) -> tuple[dict[str, str], str | None]:
        if self.tree is ... or (at and at[0] in QUERY.leaves):
            return QUERY.place(at, self.given)
        return DOCUMENT.place(at, self.tree)

    def planes(self) -> GivenPlanes:
        """Give the planes of the drawing."""
        return planes_from_drawing(numbered(self.tree), self.picked)


async def _drawn(request: Request) -> Drawn:
    """Read what to take from the query, then the drawing from the body."""
    drawn = request.scope["asked"] = Drawn(read_query(request))
    if drawn.given.get("units") == "metric":
        drawn.units = "metric"
    taken = QUERY.taken(drawn.given)
    drawn.picked = Picked(**measures(taken))
    accept = request.headers.get("accept", "*/*")
    if preferred(accept, (JSON,)) is None:
        detail = f"Accept came as {shown(accept)}: {JSON} is offered here"
        raise Problem(NOT_ACCEPTABLE, detail)
    drawn.tree = await read_json(request, GEOJSON, CITYJSON)
    return drawn


def written(roof: GivenPlanes, system: System) -> dict[str, Any]:
    """Write a roof as a body that asks for it."""
    planes = [
        {
            "name": plane.name,
            "corners": [[_length(u, system), _length(v, system)] for u, v in plane.corners],
            "edges": plane.edges,
            "pitch": _pitch(plane.pitch),
            "beyond": plane.beyond,
        }
        for plane in roof.planes
    ]
    overhang = _length(roof.eave_overhang, system)
    return {"roof": {"form": roof.form, "planes": planes, "eave_overhang": overhang}}


def _length(inches: float, system: System) -> str:
    """Write a length for people, or where that would round it, with its decimals."""
    text = write(inches, "in", system)
    if read(text, "in") == inches:
        return text
    return f"{_decimals(convert(inches, 'in', system))} {SHOWN['in'][system].unit}"


def _pitch(pitch: float) -> str:
    text = write(pitch, "pitch")
    return text if read(text, "pitch") == pitch else f"{_decimals(convert(pitch, 'pitch'))}:12"


def _decimals(value: float) -> str:
    return f"{value:z.12f}".rstrip("0").rstrip(".")


_DRAWING = docs(planes_from_drawing)
_ANY = {"type": "object", "additionalProperties": True}
_GEOJSON = {
    **_ANY,
    "description": "A GeoJSON feature collection (RFC 7946), one feature a plane.",
    "required": ["type", "features"],
    "properties": {
        "type": {"const": "FeatureCollection"},
        "features": {"type": "array", "items": _ANY, "minItems": 1},
    },
}
_CITYJSON = {
    **_ANY,
    "description": "A CityJSON model (OGC 20-072), version 1.1 or 2.0.",
    "required": ["type", "version", "transform", "CityObjects", "vertices"],
    "properties": {
        "type": {"const": "CityJSON"},
        "version": {"enum": ["1.1", "2.0"]},
        "transform": _ANY,
        "CityObjects": _ANY,
        "vertices": {"type": "array"},
    },
}
_BODIES = {name: {"value": drawing} for name, drawing in DRAWINGS.items()}
_ANSWERS = {
    name: {"value": written(planes_from_drawing(drawing), "us")}
    for name, drawing in DRAWINGS.items()
}


@router.post(
    "/v1/planes",
    summary=_DRAWING.summary,
    description="\n\n".join(
        (_DRAWING.body, _DRAWING.sections["Returns"], f"**Source.** {_DRAWING.sections['Source']}")
    ),
    response_model=DrawnRoof,
    response_description="The roof, to be sent on as it is.",
    openapi_extra={
        "parameters": [parameter(name, leaf, {}) for name, leaf in QUERY.leaves.items()],
        "requestBody": {
            "required": True,
            "content": {
                JSON: {"schema": {"oneOf": [_GEOJSON, _CITYJSON]}, "examples": _BODIES},
                GEOJSON: {"schema": _GEOJSON},
                CITYJSON: {"schema": _CITYJSON},
            },
        },
        "responses": {"200": {"content": {JSON: {"examples": _ANSWERS}}}}
        | problem_responses(ON_POST),
    },
)
async def post_planes(request: Request) -> Response:
    drawn = await _drawn(request)
    # A drawing of hundreds of sides takes longer than anybody else should wait.
    return await aside(_answer, drawn)


def _answer(drawn: Drawn) -> Response:
    told = {"Vary": "Accept", "X-Content-Type-Options": "nosniff"}
    body = dumps(written(drawn.planes(), drawn.units))
    return Response(body, headers=told, media_type=JSON)
