"""Inputs: request models made from what the library's functions take.

A name, a unit, a default and a description are written once, in the library; here they become
pydantic models. A measurement comes as text and is read by the library's own grammar.
"""

from __future__ import annotations

import re
import types
from collections.abc import Callable, Mapping
from dataclasses import is_dataclass, replace
from functools import cache
from inspect import Parameter, signature
from types import MappingProxyType
from typing import (
    Annotated,
    Any,
    ClassVar,
    Literal,
    Union,
    cast,
    get_args,
    get_origin,
    get_type_hints,
)

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetJsonSchemaHandler,
    create_model,
)
from pydantic.json_schema import GenerateJsonSchema

from roofing_api.docstrings import attributes, docs
from roofing_api.values import (
    PLAIN,
    PLAIN_TYPES,
    as_written,
    list_type,
    measure_type,
    number_type,
    one_of,
)
from roofing_core.materials import material, names_of
from roofing_core.measures.faults import Fault, Refused, refuse_if_any
from roofing_core.measures.units import Unit


class Inputs(BaseModel):
    """What a function or dataclass of the library is given; only what was asked for is kept.

    A field may have any name that the library uses, so this class has no methods of its own.
    """

    model_config = ConfigDict(extra="forbid")
    made_of: ClassVar[Callable[..., Any]]
    given_unless: ClassVar[Mapping[str, object]] = MappingProxyType({})


def measures(inputs: Inputs) -> dict[str, Any]:
    """Give what the library is called with; what was not asked for has its default there."""
    asked, names = inputs.model_fields_set, inputs.given_unless
    given = {name: getattr(inputs, name) for name in names if name in asked}
    faults: list[Fault] = []
    for name, value in given.items():
        if isinstance(value, Inputs):
            try:
                given[name] = _part(value, names[name])
            except Refused as refused:
                faults += refused.below(name).faults
    refuse_if_any(faults)
    return given


def _part(inputs: Inputs, default: object) -> Any:
    """Make a dataclass: a material or the default with what was given put in, or anew."""
    given, kind = measures(inputs), cast(type, inputs.made_of)
    name = getattr(inputs, "material", None)
    start: Any = default if name is None else material(kind, name)
    return kind(**given) if start is Parameter.empty else replace(start, **given)


@cache
def inputs_of(thing: Callable[..., Any], *, body: bool) -> type[Inputs]:
    """Make the model of what a function or dataclass takes, from a query or from a JSON body."""
    about = attributes(thing) if isinstance(thing, type) else docs(thing).entries("Args")
    hints = get_type_hints(thing, include_extras=True)
    defaults = {name: one.default for name, one in signature(thing).parameters.items()}
    material_names = names_of(thing) if isinstance(thing, type) else ()
    taken: dict[str, Any] = {}
    if material_names:
        described = _described("Name of the material in the catalogue.", None, str)
        choice = Annotated[str, *one_of(material_names)]
        taken["material"] = (choice, Field(None, json_schema_extra=described))
    for name, default in defaults.items():
        needed = default is Parameter.empty and not material_names
        described = _described(about.get(name, ""), default, hints[name])
        field = Field(... if needed else None, json_schema_extra=described)
        taken[name] = (as_input(hints[name], body=body), field)
    title = "".join(word.capitalize() for word in re.split(r"_|(?=[A-Z])", thing.__name__))
    model = create_model(f"{title}Input", __base__=Inputs, __doc__=docs(thing).summary, **taken)
    model.made_of, model.given_unless = thing, defaults
    return model


class AsName:
    """Say in a schema that the name of a material may stand for the object that names it."""

    def __get_pydantic_json_schema__(
        self, core_schema: Any, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Offer the names of the catalogue beside the object."""
        part = handler(core_schema)
        return {"anyOf": [handler.resolve_ref_schema(part)["properties"]["material"], part]}


def _named(raw: Any) -> Any:
    return {"material": raw} if type(raw) is str else raw


def as_input(hint: Any, *, body: bool) -> Any:
    """Turn an annotation of the library into one that pydantic reads a query or a body by."""
    origin: Any = get_origin(hint)
    arguments = get_args(hint)
    if origin is Annotated:
        unit = next(one.name for one in hint.__metadata__ if isinstance(one, Unit))
        return number_type() if unit in PLAIN else measure_type(unit, body=body)
    if origin in (Union, types.UnionType):
        return as_input(next(one for one in arguments if one is not type(None)), body=body)
    if origin is tuple:
        return list_type(as_input(arguments[0], body=body), body=body)
    if origin is Literal:
        return Annotated[hint, *one_of(arguments)]
    if is_dataclass(hint):
        return _part_type(hint, body=body)
    return PLAIN_TYPES[hint](body)


class Untitled(GenerateJsonSchema):
    """Schemas without titles, which would only repeat the names."""

    def field_title_should_be_set(self, _: Any) -> bool:
        """Never."""
        return False


def schema_of(model: type[BaseModel]) -> dict[str, Any]:
    """Give the JSON Schema of what a model takes, its parts under `$defs`."""
    return model.model_json_schema(
        ref_template="#/components/schemas/{model}", schema_generator=Untitled
    )


def _part_type(kind: Any, *, body: bool) -> Any:
    model = inputs_of(kind, body=body)
    if names_of(kind) and body:
        return Annotated[model, BeforeValidator(_named), AsName()]
    return model


def _described(about: str, default: Any, hint: Any) -> Callable[[dict[str, Any]], None]:
    """Put the library's description and default, as a caller writes it, into a field's schema."""

    def change(schema: dict[str, Any]) -> None:
        schema.pop("default", None)
        told = [about, schema.get("description", "")]
        schema["description"] = " ".join(filter(None, told))
        written = as_written(default, hint)
        if written is not None:
            schema["default"] = written

    return change
