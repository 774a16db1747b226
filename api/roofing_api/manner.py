"""Manner: how an answer is asked for, the same on every path: units, one value, its form."""

from __future__ import annotations

from typing import Annotated, Any, get_args

from pydantic import BaseModel, ConfigDict, Field, WithJsonSchema, create_model

from roofing_api.pointing import Spelling
from roofing_api.problems import Telling
from roofing_api.values import NumberUnit, one_of, page_type
from roofing_core.measures.units import System
from roofing_core.sheets.drawings.all import DrawingKind
from roofing_core.sheets.job_sheet.blocks import PageSize
from roofing_core.sheets.tables.all import TableKind

_Page: Any = page_type()


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
        "value comes alone, as plain text, whatever the Accept header says. Several, with commas "
        "between, come one a line; of several, one past the end of a list is an empty line.",
        json_schema_extra=_as_parameter,
    )
    value: Annotated[Spelling, *one_of(get_args(Spelling))] = Field(
        default="number",
        description="How a value that `pointer` picks is written: as it stands in the JSON, or as "
        "text for people, such as `8 ft 10 3/8 in`.",
        json_schema_extra=_as_parameter,
    )

    problems: Annotated[Telling, *one_of(get_args(Telling))] = Field(
        default="status",
        description="How a problem is told: by its status and as JSON, or as `text`, which is its "
        "one sentence as plain text with status 200, for the cells of a spreadsheet, which show "
        "nothing of an answer with another status. What the service itself does wrong, and a "
        "method that is not answered, are told by their status always.",
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


def formatted(words: tuple[str, ...]) -> type[BaseModel]:
    """Make the parameter that asks for one of several forms by its word."""
    form = Field(
        default=None,
        description="The form of the answer, for clients that cannot set the Accept header.",
        json_schema_extra=_as_parameter,
    )
    wanted = Annotated[str | None, *one_of(words)]
    return create_model("Formatted", format=(wanted, form))


class Pictured(BaseModel):
    """Which drawing."""

    drawing: Annotated[DrawingKind, *one_of(get_args(DrawingKind))] = Field(
        default="plane",
        description="What is drawn. Where it is said, and `format` is not, the answer is SVG.",
        json_schema_extra=_as_parameter,
    )
    page: _Page = Field(
        default=1,
        description="Which of these drawings, from 1: one a plane, or one a page of a list.",
        json_schema_extra=_as_parameter,
    )


class Tabled(BaseModel):
    """Which table."""

    table: Annotated[TableKind, *one_of(get_args(TableKind))] = Field(
        default="order",
        description="Which table is written. Where it is said, and `format` is not, the answer is "
        "CSV.",
        json_schema_extra=_as_parameter,
    )


class Printed(BaseModel):
    """On which paper."""

    page_size: Annotated[PageSize | None, *one_of(get_args(PageSize))] = Field(
        default=None,
        description="What the job sheet is printed on. Letter for US units and A4 for metric ones, "
        "unless said.",
        json_schema_extra=_as_parameter,
    )
