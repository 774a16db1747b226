"""Manner: how an answer is asked for, the same on every path: units, one value, text or JSON."""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field, WithJsonSchema

from roofing_api.pointing import Spelling
from roofing_api.values import NumberUnit, one_of
from roofing_core.measures.units import System

Format = Literal["json", "text"]


def _as_parameter(schema: dict[str, Any]) -> None:
    if schema.get("default") is None:
        schema.pop("default", None)


class InUnits(BaseModel):
    """In which units the answer is given."""

    model_config = ConfigDict(extra="forbid")

    units: Annotated[System, *one_of(get_args(System))] = Field(
        default="us",
        description="The unit system of every number and text in the answer.",
        json_schema_extra=_as_parameter,
    )


class Manner(InUnits):
    """How the answer is given."""

    pointer: Annotated[str | None, WithJsonSchema({"type": "string"})] = Field(
        default=None,
        description="A JSON Pointer (RFC 6901) into the answer, such as `/units/length`: that one "
        "value comes alone, as plain text, whatever the Accept header says.",
        json_schema_extra=_as_parameter,
    )
    value: Annotated[Spelling, *one_of(get_args(Spelling))] = Field(
        default="number",
        description="How a value that `pointer` picks is written: as it stands in the JSON, or as "
        "text for people, such as `8 ft 10 3/8 in`.",
        json_schema_extra=_as_parameter,
    )


class Bearing(BaseModel):
    """Which unit bare numbers bear."""

    number_unit: Annotated[NumberUnit | None, *one_of(get_args(NumberUnit))] = Field(
        default=None,
        description="The unit of every length in this request that is a bare number. Without it "
        "a bare number is refused. It says nothing of weights, pitches and the like.",
        json_schema_extra=_as_parameter,
    )


class Formatted(BaseModel):
    """JSON, or a sheet to print."""

    format: Annotated[Format | None, *one_of(get_args(Format))] = Field(
        default=None,
        description="JSON or plain text, for clients that cannot set the Accept header.",
        json_schema_extra=_as_parameter,
    )


#: Every name that says how to answer, and nothing of the roof.
NAMES = frozenset(name for kind in (Manner, Bearing, Formatted) for name in kind.model_fields)
